using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Layouts;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Vetting;

/// <summary>A weight of a table while it is judged. What the caller gets is the <see cref="RowFinding"/> made of it at the end.</summary>
internal sealed class TableRow(TableEntry entry, NameMatch match, PrintedMass printed, int column, int first)
{
    public int Line => entry.Line;

    public int Column { get; } = column;

    public string Ingredient => entry.Name;

    public NameMatch Match { get; } = match;

    public Ingredient? Matched => Match.Ingredient;

    /// <summary>What the row says of the packing, in a column of its own, beside the measure, or in the name.</summary>
    public Packing? Packing => entry.Packing ?? Match.Packing;

    /// <summary>Whether the packing stands in the name only.</summary>
    public bool PackingIsFromName => entry.Packing is null && Match.Packing is not null;

    public Amount Amount => entry.Measure;

    public PrintedMass Printed { get; } = printed;

    /// <summary>The place among all weights of the first one that is printed with this; the same for all of one row.</summary>
    public int First { get; } = first;

    public int Group { get; set; }

    public Verdict Verdict { get; set; }

    public double ProbabilityRight { get; set; }

    public Reason? Reason { get; set; }

    public Spread? ExpectedGrams { get; set; }

    public Packing? ExpectedPacking { get; set; }

    /// <summary>The packing that was weighed, where the expected one was not.</summary>
    public Packing? TakenFrom { get; set; }

    /// <summary>Another weight of the same row that cannot be right beside this one.</summary>
    public TableRow? Contradicted { get; set; }
}
