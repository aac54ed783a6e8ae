using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Layouts;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Sources;

namespace Confectio.Vetting;

/// <summary>A weight of a table while it is judged. What the caller gets is the <see cref="RowFinding"/> made of it at the end.</summary>
internal sealed class TableRow(TableEntry entry, NameMatch match, PrintedMass printed, int column)
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

    public ref readonly Amount Amount => ref entry.MeasureInPlace;

    /// <summary>What a heaped measure or a pinch was taken for; <see langword="null"/> where the measure is level.</summary>
    public RoughMeasure? Rough => entry.Rough;

    /// <summary>The heading above the row with which its name was read; <see langword="null"/> where the name needed none.</summary>
    public string? NamedBySection => Matched is not null && Match.Text != entry.Name ? entry.Section : null;

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

    /// <summary>Whether no other row has its ingredient.</summary>
    public bool IsAlone { get; set; }

    /// <summary>Whether the row states no packing, and the expectation is for whatever lies between those that are known.</summary>
    public bool IsOfAnyPacking { get; set; }

    /// <summary>The packing that was weighed, where the expected one was not.</summary>
    public Packing? TakenFrom { get; set; }
}
