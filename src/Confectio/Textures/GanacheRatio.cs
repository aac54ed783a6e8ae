using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Textures;

/// <summary>How much chocolate to cream the trade takes for a use and a season: common practice, and of the seasons from memory.</summary>
public sealed class GanacheRatio
{
    private GanacheRatio(string use, string chocolate, string season, double parts, Provenance provenance)
    {
        Use = use;
        Chocolate = chocolate;
        Season = season;
        ChocolateToCream = parts;
        Provenance = provenance;
    }

    /// <summary>The ratios.</summary>
    public static IReadOnlyList<GanacheRatio> All { get; } = ReadBuiltIn();

    /// <summary>What for: <c>glaze</c>, <c>filling</c>, <c>truffle</c>, <c>coat</c>.</summary>
    public string Use { get; }

    /// <summary>The chocolate: <c>dark</c>, <c>milk</c>, <c>white</c>.</summary>
    public string Chocolate { get; }

    /// <summary>The season: <c>cool</c> or <c>hot</c>; empty where it makes no difference.</summary>
    public string Season { get; }

    /// <summary>Parts of chocolate by mass to one of cream of 35 to 40 % fat.</summary>
    public double ChocolateToCream { get; }

    /// <summary>What it rests on.</summary>
    public Provenance Provenance { get; }

    /// <summary>One line, such as <c>coat, dark, hot: 2 of chocolate to 1 of cream (common practice)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Use}, {Chocolate}{(Season.Length > 0 ? ", " + Season : "")}: {ChocolateToCream:0.##} of chocolate to 1 of cream ({Provenance.Evidence.ToWord().Replace('-', ' ')})");

    private static GanacheRatio[] ReadBuiltIn()
    {
        List<GanacheRatio> all = [];
        EmbeddedTable.Read("ganache_ratios.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            all.Add(new GanacheRatio(fields.Required("use"), fields.Required("chocolate"), fields.Word("season"), fields.RequiredNumber("chocolate_to_cream", 0.1, 10),
                fields.Provenance("source", "kind", "", fields.Word("note"))));
        });
        return [.. all];
    }
}
