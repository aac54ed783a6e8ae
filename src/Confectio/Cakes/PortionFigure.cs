using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>How many wedding or party portions the trade says a tier has.</summary>
public sealed class PortionFigure
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

    private enum PortionName
    {
        Wedding,
        Party,
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

    /// <summary>One line, such as <c>round, 25.4 × 25.4 cm: 38 to 42 wedding portions</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Plan}: {Low}{(High > Low ? $" to {High}" : "")} {Portion.Name} portions");

    private static PortionFigure[] ReadBuiltIn()
    {
        List<PortionFigure> figures = [];
        EmbeddedTable.Read("portion_figures.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            figures.Add(new PortionFigure(fields.Enum<PortionName>("portion") == PortionName.Wedding ? Portion.Wedding : Portion.Party, TinPlan.Read(fields),
                (int)fields.Number("low", 1, 1000)!.Value, (int)fields.Number("high", 1, 1000)!.Value, fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"))));
        });
        return [.. figures];
    }
}
