using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Vetting;

/// <summary>A row of a table while it is judged. What the caller gets is the <see cref="RowFinding"/> made of it at the end.</summary>
internal sealed class TableRow(int line, string ingredient, Ingredient? matched, Packing? packing, Amount amount, PrintedMass printed)
{
    public int Line { get; } = line;

    public string Ingredient { get; } = ingredient;

    public Ingredient? Matched { get; } = matched;

    public Packing? Packing { get; } = packing;

    /// <summary>Whether the packing stands in the name only.</summary>
    public bool PackingIsFromName { get; init; }

    public Amount Amount { get; } = amount;

    public PrintedMass Printed { get; } = printed;

    /// <summary>A second mass beside the one that is judged, such as ounces beside grams.</summary>
    public PrintedMass? Second => Others?.Second;

    /// <summary>A third mass, such as one in a bracket beside the measure.</summary>
    public PrintedMass? Third => Others?.Third;

    /// <summary>The other masses; most rows have none, and pay for none.</summary>
    public OtherMasses? Others { get; init; }

    /// <summary>The figure that is most likely wrong, where more than one mass is given and that can be told.</summary>
    public RowFigure? Suspect { get; set; }

    /// <summary>Whether the masses contradict each other.</summary>
    public bool Contradicts { get; set; }

    public int Group { get; set; }

    public Verdict Verdict { get; set; }

    public double ProbabilityRight { get; set; }

    public Reason? Reason { get; set; }

    public Spread? ExpectedGrams { get; set; }

    public Packing? ExpectedPacking { get; set; }

    /// <summary>The packing that was weighed, where the expected one was not.</summary>
    public Packing? TakenFrom { get; set; }
}
