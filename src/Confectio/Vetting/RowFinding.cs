using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Vetting;

/// <summary>One row of a vetted table: what it says, what was expected, and the verdict with its reason.</summary>
public sealed class RowFinding
{
    internal RowFinding(int line, string ingredient, Ingredient? matched, Packing? packing, Amount amount, PrintedMass printed)
    {
        Line = line;
        Ingredient = ingredient;
        Matched = matched;
        Packing = packing;
        Amount = amount;
        Printed = printed;
    }

    internal PrintedMass Printed { get; }

    internal int Group { get; set; }

    internal Explanations? Explanations { get; set; }

    /// <summary>The line of the table, counted from 1.</summary>
    public int Line { get; }

    /// <summary>The ingredient as printed.</summary>
    public string Ingredient { get; }

    /// <summary>The ingredient it was matched with; <see langword="null"/> where nothing goes by that name. Never a guess.</summary>
    public Ingredient? Matched { get; }

    /// <summary>The packing that the row states; <see langword="null"/> where it states none, and any known packing is then allowed.</summary>
    public Packing? Packing { get; }

    /// <summary>The measure.</summary>
    public Amount Amount { get; }

    /// <summary>The printed mass in grams; printed ounces are turned at 28.349523125 g.</summary>
    public double PrintedGrams => Printed.Grams;

    /// <summary>The verdict.</summary>
    public Verdict Verdict { get; internal set; }

    /// <summary>How likely the row is right as printed, from 0 to 1.</summary>
    public double ProbabilityRight { get; internal set; }

    /// <summary>The most likely reason where the row is doubtful, wrong or impossible; <see langword="null"/> elsewhere.</summary>
    public Reason? Reason { get; internal set; }

    /// <summary>What was expected, in grams, in the table's measuring system; <see langword="null"/> where nothing is known.</summary>
    public Spread? ExpectedGrams { get; internal set; }

    /// <summary>The packing the expectation is for; <see langword="null"/> for pieces and masses.</summary>
    public Packing? ExpectedPacking { get; internal set; }

    /// <summary>The verdict in a sentence for a reader.</summary>
    public string Explanation => field ??= Explanations?.Of(this) ?? "";
}
