using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>How many portions of a size a tier has: by the trade (common practice), or as two institutions cut a sheet.</summary>
internal sealed class PortionFigure
{
    private static readonly PortionFigure[] s_all = ReadBuiltIn();

    private PortionFigure(Portion portion, PlanShape plan, int low, int high, Provenance provenance)
    {
        Portion = portion;
        Plan = plan;
        Low = low;
        High = high;
        Provenance = provenance;
    }

    /// <summary>The figures.</summary>
    public static IReadOnlyList<PortionFigure> All => s_all;

    /// <summary>The portion.</summary>
    public Portion Portion { get; }

    /// <summary>The plan of the tier.</summary>
    public PlanShape Plan { get; }

    /// <summary>The fewest that is said.</summary>
    public int Low { get; }

    /// <summary>The most that is said.</summary>
    public int High { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>One line, such as <c>round, 25.4 × 25.4 cm: 38 to 42 of 1 × 2 in (2.54 × 5.08 cm)</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Plan}: {Low}{(High > Low ? $" to {High}" : "")} of {Portion}");

    private static PortionFigure[] ReadBuiltIn()
    {
        List<PortionFigure> figures = [];
        EmbeddedTable.Read("portion_figures.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            PlanShape plan = TinPlan.Read(fields);
            // Of a sheet that is cut so many times across and along the portion is what comes out.
            Portion portion = fields.Number("cut_across", 1, 100) is double across
                ? Portion.Of(CakeLength.FromCentimetres(plan.WidthCentimetres / across),
                CakeLength.FromCentimetres(plan.LengthCentimetres / fields.RequiredNumber("cut_along", 1, 100)))
                : Portion.Of(TinPlan.Length(fields, "portion_width_inches")!.Value, TinPlan.Length(fields, "portion_length_inches")!.Value);
            figures.Add(new PortionFigure(portion, plan, (int)fields.RequiredNumber("low", 1, 1000),
                (int)fields.RequiredNumber("high", 1, 1000),
                fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"))));
        });
        return [.. figures];
    }
}
