using System.Globalization;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>How much icing an institutional recipe allows for a cake, and how thick it would lie there if it were even.</summary>
internal sealed class IcingUsage
{
    private static readonly IcingUsage[] s_all = ReadBuiltIn();

    private IcingUsage(string name, double printedCups, PlanShape plan, int layers, Spread? heightCentimetres, Provenance provenance)
    {
        Name = name;
        PrintedCups = printedCups;
        Plan = plan;
        Layers = layers;
        HeightCentimetres = heightCentimetres;
        Provenance = provenance;
    }

    /// <summary>The usages.</summary>
    public static IReadOnlyList<IcingUsage> All => s_all;

    /// <summary>The cake, such as <c>9 in round of two layers</c>.</summary>
    public string Name { get; }

    /// <summary>What is printed, US cups.</summary>
    public double PrintedCups { get; }

    /// <summary>What is printed, mL.</summary>
    public double PrintedMillilitres => PrintedCups * MeasuringSystem.UsCustomary.MillilitresPer(KitchenUnit.Cup);

    /// <summary>The plan of the cake.</summary>
    public PlanShape Plan { get; }

    /// <summary>Its layers; between them is the same icing.</summary>
    public int Layers { get; }

    /// <summary>Its height, cm, an estimate, since no source states it; <see langword="null"/> where the top alone is iced.</summary>
    public Spread? HeightCentimetres { get; }

    /// <summary>
    /// How thick the printed volume lies on top, side and fillings, mm. Worked number: 2 cups on a 9 in round of two layers, 3 in high:
    /// 3.46, from 3.05 to 3.71.
    /// </summary>
    public Spread MeanMillimetres => HeightCentimetres is Spread height
        ? new Spread(Thickness(height.High), Thickness(height.Likely), Thickness(height.Low), height.Basis) : Spread.Exactly(Thickness(0));

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>What the icing lies on at a height of the cake: top, side and one filling fewer than layers.</summary>
    /// <param name="heightCentimetres">The height, cm, from 0, which is the top and fillings alone, to 100.</param>
    /// <returns>cm². Worked number: a 9 in round of two layers, 3 in high: 1368.1.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="heightCentimetres"/> is outside its range.</exception>
    public double IcedSquareCentimetres(double heightCentimetres) =>
        Layers * Plan.AreaSquareCentimetres + Plan.PerimeterCentimetres * Guard.InRange(heightCentimetres, 0, 100);

    /// <summary>One line, such as <c>18 by 26 in sheet: 4 cups, 3.1 mm</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Name}: {PrintedCups:0.##} cups, {MeanMillimetres.Likely:0.0} mm");

    private double Thickness(double height) => 10 * PrintedMillilitres / IcedSquareCentimetres(height);

    private static IcingUsage[] ReadBuiltIn()
    {
        List<IcingUsage> usages = [];
        EmbeddedTable.Read("icing_usages.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            Spread? height = TinPlan.Length(fields, "likely_height_inches")?.Centimetres is double likely
                ? new Spread(TinPlan.Length(fields, "low_height_inches")?.Centimetres
                    ?? likely, likely, TinPlan.Length(fields, "high_height_inches")?.Centimetres ?? likely, SpreadBasis.Judged) : null;
            usages.Add(new IcingUsage(fields.Required("usage"), fields.RequiredNumber("printed_cups", 0.1, 1000), TinPlan.Read(fields),
                (int)fields.RequiredNumber("layers", 1, 20), height,
                fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"))));
        });
        return [.. usages];
    }
}
