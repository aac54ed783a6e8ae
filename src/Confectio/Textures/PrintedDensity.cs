using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Textures;

/// <summary>What an icing was printed to weigh, with its spread.</summary>
public sealed class PrintedDensity
{
    private PrintedDensity(string name, string sort, IcingLightness? says, Spread density, Provenance provenance)
    {
        Name = name;
        Sort = sort;
        Says = says;
        GramsPerMillilitre = density;
        Provenance = provenance;
    }

    /// <summary>All of them.</summary>
    public static IReadOnlyList<PrintedDensity> All { get; } = ReadBuiltIn();

    /// <summary>What it is, such as <c>vanilla frosting, creamy, ready to eat</c>.</summary>
    public string Name { get; }

    /// <summary>The sort of icing whose air it tells of: a key of <see cref="IcingAir"/>.</summary>
    public string Sort { get; }

    /// <summary>What the source calls such a density; <see langword="null"/> where it is a figure of one icing.</summary>
    public IcingLightness? Says { get; }

    /// <summary>The density, g/mL. Where the source printed no deviation, its ends are an estimate.</summary>
    public Spread GramsPerMillilitre { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>One line, such as <c>vanilla frosting, creamy, ready to eat: 1.12 g/mL (1.05 to 1.18), USDA SR28 (compiled)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Name}: {GramsPerMillilitre.Likely:0.00} g/mL ({GramsPerMillilitre.Low:0.00} to {GramsPerMillilitre.High:0.00}), {Provenance}");

    private static PrintedDensity[] ReadBuiltIn()
    {
        List<PrintedDensity> all = [];
        EmbeddedTable.Read("icing_densities.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            if (!EvidenceText.TryRead(fields.Word("range_kind"), out Evidence range))
                fields.Problem("range_kind", $"{Excerpt.Of(fields.Word("range_kind"))} is no kind of evidence");
            IcingLightness? says = fields.Word("says").Length > 0 ? fields.Enum<IcingLightness>("says") : null;
            all.Add(new PrintedDensity(fields.Required("name"), fields.Required("sort"), says, fields.Spread(IcingYield.MinimumDensity, IcingYield.MaximumDensity, range),
                fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"))));
        });
        return [.. all];
    }
}
