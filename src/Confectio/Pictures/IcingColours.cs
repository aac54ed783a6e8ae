using Confectio.Cakes;

namespace Confectio.Pictures;

/// <summary>A colour for every icing of a cake, the lightest for the one that covers most.</summary>
internal sealed class IcingColours
{
    public const string Sponge = "#f4e2bd";

    public const string Paper = "#d9d4cc";

    // Light and dark ones in turn, told apart in grey and by those who see no red.
    private static readonly string[] s_colours = ["#f6ccd4", "#a3324e", "#a9d3f0", "#7b5a46", "#cfe8b4", "#5b6fb0", "#f2c14e", "#8e6fae"];

    private readonly Dictionary<string, string> _byName = [];

    public IcingColours(CakeCoverage coverage)
    {
        foreach (string icing in coverage.Icings.OrderByDescending(coverage.Millilitres))
            _byName.Add(icing, s_colours[_byName.Count % s_colours.Length]);
    }

    /// <summary>The colour of an icing; after the eighth they come again.</summary>
    public string this[string icing] => _byName[icing];
}
