using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Vetting;

/// <summary>One row of a vetted table: what it says, what was expected, and the verdict with its reason.</summary>
public sealed class RowFinding
{
    private readonly TableRow _row;
    private readonly Explanations _explanations;

    internal RowFinding(TableRow row, Explanations explanations)
    {
        _row = row;
        _explanations = explanations;
    }

    /// <summary>The line of the table, counted from 1.</summary>
    public int Line => _row.Line;

    /// <summary>The character of the line at which the weight stands, counted from 1.</summary>
    public int Column => _row.Column;

    /// <summary>The ingredient as printed.</summary>
    public string Ingredient => _row.Ingredient;

    /// <summary>The ingredient it was matched with; <see langword="null"/> where nothing goes by that name. Never a guess.</summary>
    public Ingredient? Matched => _row.Matched;

    /// <summary>
    /// The packing that the row states; <see langword="null"/> where it states none, and any known packing is then allowed.
    /// </summary>
    public Packing? Packing => _row.Packing;

    /// <summary>
    /// Whether the packing was taken from the name ("icing sugar, sifted"), where no other column states one. The explanation says it too.
    /// </summary>
    public bool PackingIsFromName => _row.PackingIsFromName;

    /// <summary>
    /// What was taken for granted to judge the row, a sentence each: with which heading a name was read, what a heaped spoon or a pinch was
    /// taken for; empty where nothing was. The explanation says it too.
    /// </summary>
    public IReadOnlyList<string> Assumed => Explanations.Assumed(_row);

    /// <summary>The measure; of a heaped one the level one, and of a pinch what was taken for it.</summary>
    public Amount Amount => _row.Amount;

    /// <summary>The printed mass in grams; printed ounces are turned at 28.349523125 g.</summary>
    public double PrintedGrams => _row.Printed.Grams;

    /// <summary>
    /// The other masses of the row in grams, where it has any: ounces beside grams, a mass in a bracket beside the measure.
    /// </summary>
    public IReadOnlyList<double> OtherPrintedGrams => [.. new[] { _row.Second,
        _row.Third }.OfType<PrintedMass>().Select(mass => mass.Grams)];

    /// <summary>
    /// The figure that is most likely wrong in a row with more than one mass, being the one that agrees with the fewest others;
    /// <see langword="null"/> where all agree or the row does not tell.
    /// </summary>
    public RowFigure? Suspect => _row.Suspect;

    /// <summary>The verdict.</summary>
    public Verdict Verdict => _row.Verdict;

    /// <summary>How likely the row is right as printed, from 0 to 1.</summary>
    public double ProbabilityRight => _row.ProbabilityRight;

    /// <summary>The most likely reason where the row is doubtful, wrong or impossible; <see langword="null"/> elsewhere.</summary>
    public Reason? Reason => _row.Reason;

    /// <summary>What was expected, in grams, in the table's measuring system; <see langword="null"/> where nothing is known.</summary>
    public Spread? ExpectedGrams => _row.ExpectedGrams;

    /// <summary>The packing the expectation is for; <see langword="null"/> for pieces and masses.</summary>
    public Packing? ExpectedPacking => _row.ExpectedPacking;

    /// <summary>
    /// The packing that was weighed, where nobody weighed <see cref="ExpectedPacking"/> and the nearest was taken, widened
    /// (<see cref="Ingredient.NearestDensity"/>); <see langword="null"/> elsewhere. The explanation says it too.
    /// </summary>
    public Packing? ExpectedPackingTakenFrom => _row.TakenFrom;

    /// <summary>The verdict in a sentence for a reader.</summary>
    public string Explanation => _explanations.Of(_row);

    /// <summary>The line, what it says and the verdict, such as <c>line 4: 1 Tbsp powdered sugar = 24 g: ...</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"line {Line}: {Amount} {Ingredient} = {PrintedGrams:0.##} g: {Explanation}");
}
