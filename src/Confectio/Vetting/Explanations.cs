using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>Says a finding in a sentence. Made when somebody reads it: a long table is mostly rows that agree.</summary>
internal sealed class Explanations(SystemFinding? system)
{
    public string Of(TableRow row) => string.Join("; ", Assumed(row).Prepend(Found(row)));

    /// <summary>What was taken for granted.</summary>
    public static IReadOnlyList<string> Assumed(TableRow row)
    {
        if (row.Rough is null && row.NamedBySection is null)
            return [];
        List<string> assumed = [];
        if (row.NamedBySection is string section)
            assumed.Add($"{Excerpt.Of(row.Ingredient)} below the heading {Excerpt.Of(section)} was read as {row.Matched!.Name}");
        if (row.Rough is RoughMeasure { IsFill: true } fill)
            assumed.Add(string.Create(CultureInfo.InvariantCulture, $"{fill.Word} was taken for {fill.Low:0.##} to {fill.High:0.##} times "
                + $"the level measure, likely {fill.Likely:0.##}, an estimate"));
        else if (row.Rough is RoughMeasure rough)
            assumed.Add($"{row.Amount} was taken for the {rough.Word}, {rough.Evidence}");
        return assumed;
    }

    private string Found(TableRow row) => row.Contradicts ? Contradiction(row) : row.Verdict switch
    {
        Verdict.Unknown => WhyUnknown(row),
        Verdict.Agrees => row.ExpectedGrams is null ? "agrees with the other rows of the same name" : $"agrees; {Expected(row)} expected",
        Verdict.Impossible => $"{Subject(row)}, and no {row.Matched!.Name} can weigh that in any cup; {Why(row)}",
        _ when row.Suspect == RowFigure.Measure => $"{Subject(row)}; {Why(row)}; the masses agree with each other, so that the measure is "
            + $"most likely wrong",
        _ => $"{Subject(row)}; {Why(row)}",
    };

    private static string Contradiction(TableRow row)
    {
        string figures = string.Join(", ", new[] { (PrintedMass?)row.Printed, row.Second, row.Third }.OfType<PrintedMass>().Select(Mass));
        string which = row.Suspect switch
        {
            RowFigure.Mass => $"most likely {Mass(row.Printed)} is wrong",
            RowFigure.SecondMass => $"most likely {Mass(row.Second!.Value)} is wrong",
            RowFigure.ThirdMass => $"most likely {Mass(row.Third!.Value)} is wrong",
            _ => "which of them is wrong the row does not tell",
        };
        string expected = row.ExpectedGrams is null ? "" : $"; {Expected(row)} expected";
        return $"the masses of {Measure(row)} contradict each other: {figures}{expected}; {which}";
    }

    private static string Mass(PrintedMass mass) => mass.IsOunces
        ? string.Create(CultureInfo.InvariantCulture, $"{mass.Value:0.###} oz ({Grams(mass.Grams)} g)")
        : string.Create(CultureInfo.InvariantCulture, $"{mass.Value:0.###} g");

    private static string Measure(TableRow row) => row.Rough is not RoughMeasure rough ? row.Amount.ToString()
        : rough.IsFill ? $"{row.Amount}, {rough.Word}," : $"the {rough.Word}";

    private static string Grams(double grams) => grams.ToString(grams < 1 ? "0.##" : grams < 20 ? "0.#" : "0", CultureInfo.InvariantCulture);

    private string Why(TableRow row) => row.Reason == Reason.Unexplained
        ? "no usual slip explains it" + Guess(row)
        : $"{(row.Verdict == Verdict.Doubtful ? "perhaps" : "most likely")} {Cause(row)}";

    /// <summary>
    /// What may have happened all the same: a cup of syrup that is not scraped out gives less than it holds, and many charts print that, or
    /// round ounces (312 g of corn syrup, which is 11 oz).
    /// </summary>
    private static string Guess(TableRow row)
    {
        if (row.ExpectedGrams is not Spread expected || !row.Amount.IsVolume || row.Matched is not { Class: IngredientClass.Syrup }
            || row.Printed.Grams / expected.Likely is not (> 0.88 and < 0.98))
            return "";
        double ounces = Math.Round(row.Printed.Grams / PrintedMass.GramsPerOunce);
        return (!row.Printed.IsOunces && Math.Abs(row.Printed.Grams - ounces * PrintedMass.GramsPerOunce) <= 0.51
            ? string.Create(CultureInfo.InvariantCulture, $"; it is {ounces:0} oz, and so much") : "; so much")
            + " may come out of a measure that is not scraped";
    }

    private static string WhyUnknown(TableRow row)
    {
        if (row.Matched is Ingredient known)
        {
            return row.Amount.IsPiece
                ? $"no weight of a {row.Amount.Part(0).Piece} of {known.Name} is known"
                : $"no density of {known.Name} is known {(row.Packing ?? known.DefaultPacking).ToWord()}";
        }
        string why = row.Match.Reason, missing = row.Match.IsUnclear
            ? "not matched with an ingredient: " + char.ToLowerInvariant(why[0]) + why[1..].TrimEnd('.')
                : "not in the table of ingredients";
        string near = string.Join(", ", row.Match.Suggestions.Select(suggestion => suggestion.Name));
        return near.Length > 0 ? $"{missing}; near names: {near}" : missing;
    }

    private static string Subject(TableRow row)
    {
        string printed = Mass(row.Printed);
        if (row.ExpectedGrams is not Spread expected)
            return $"{Measure(row)} cannot be {printed} beside the other rows of the same name";
        return expected.Contains(row.Printed.Grams)
            ? $"{Measure(row)} may be {printed} by itself, but "
                + (row.IsAlone ? "a mistake is likelier" : "that does not fit the other rows of the same ingredient")
            : $"{Measure(row)} should be {Expected(row)}, not {printed}";
    }

    private static string Expected(TableRow row)
    {
        Spread grams = row.ExpectedGrams!.Value;
        string packing = row.PackingIsFromName ? $" {row.Packing!.Value.ToWord()}, as the name says,"
            : row.Packing is null && row.ExpectedPacking is Packing assumed && row.Matched!.Densities.Count > 1 && !row.Matched.FindsItsLevel(assumed)
                ? $" {assumed.ToWord()}"
                : "";
        string taken = row.TakenFrom is Packing known ? $", taken from {known.ToWord()} because nobody weighed it "
            + $"{row.ExpectedPacking!.Value.ToWord()}" : "";
        string any = row.IsOfAnyPacking ? ", as nothing says how it is packed" : "";
        return row.Amount.IsMass || grams.High - grams.Low < 0.01 * grams.Likely
            ? $"{Grams(grams.Likely)} g{packing.TrimEnd(',')}{taken}"
            : $"about {Grams(grams.Likely)} g{packing} ({Grams(grams.Low)} to {Grams(grams.High)}{taken}{any})";
    }

    private string Cause(TableRow row)
    {
        // Beside rows of a name that nobody knows, nothing tells too much from too little.
        if (row.ExpectedGrams is not Spread expected)
        {
            return row.Reason switch
            {
                Reason.HalvedOrDoubled => "the figure was halved or doubled",
                Reason.SpoonSwap => "teaspoon and tablespoon were confused",
                Reason.OtherMeasure => "this is the figure of another measure of the same",
                _ => Cause(row, false),
            };
        }
        return Cause(row, row.Printed.Grams > expected.Likely);
    }

    private string Cause(TableRow row, bool heavy)
    {
        return row.Reason switch
        {
            Reason.CupCountedAsEightOunces => "the cup was counted as eight ounces of weight, whatever is in it",
            Reason.SpoonSwap => row.Amount.Part(0).Unit == KitchenUnit.Tablespoon == heavy
                ? "teaspoon and tablespoon were confused: the figure is for " + (heavy ? "three times the spoon" : "a third of the spoon")
                : heavy ? "this is the weight of the tablespoon" : "this is the weight of the teaspoon",
            Reason.HalvedOrDoubled => heavy ? "the figure was doubled" : "the figure was halved",
            Reason.DecimalShift => "the decimal mark is one place off",
            Reason.OuncesAsGrams => "the figure is in ounces, not in grams",
            Reason.GramsAsOunces => "grams were taken for ounces",
            Reason.ThirtyGramOunce => "ounces were turned into grams at 30 g each instead of 28.35",
            Reason.FluidOunceAsOunce => "fluid ounces were counted as ounces of weight, whatever is in them",
            Reason.DigitsSwapped => "two digits changed places",
            Reason.DigitLost => "a digit was lost",
            Reason.DigitDoubled => "a digit was printed twice",
            Reason.OtherPacking => OtherPacking(row),
            Reason.OtherCup => OtherCup(row),
            Reason.RowSlip => "the figure belongs to the row above or below: it fits that ingredient",
            Reason.OtherMeasure => heavy ? "this is the figure of a larger measure of the same"
                : "this is the figure of a smaller measure of the same",
            Reason.VolumeAsMass => "the millilitres of the measure were printed as grams, whatever is in it",
            Reason.PieceAsMeasure => "this is the weight of one piece, not of the measure",
            _ => "this is the figure of the row above or below",
        };
    }

    private string OtherPacking(TableRow row)
    {
        double density = row.Printed.Grams / Millilitres(row, system?.Best);
        BulkDensity nearest = row.Matched!.Densities.Where(other => other.Packing != (row.TakenFrom ?? row.Packing))
            .MinBy(other => Math.Abs(Math.Log(density / other.GramsPerMillilitre.Likely)))!;
        return $"the figure is for {nearest.Packing.ToWord()}, not for {row.Packing!.Value.ToWord()}";
    }

    private string OtherCup(TableRow row)
    {
        if (row.ExpectedGrams is not Spread expected)
            return "another system's measure was used than in the other rows";
        double ratio = row.Printed.Grams / expected.Likely * Millilitres(row, system?.Best);
        KitchenUnit unit = row.Amount.Part(0).Unit;
        MeasuringSystem nearest = MeasuringSystem.All.Where(other => other.Defines(unit) && other != system?.Best)
            .MinBy(other => Math.Abs(Math.Log(ratio / Millilitres(row, other))))!;
        return $"this row was measured with the {nearest.Name} {unit.ToWord()}, unlike the rest";
    }

    private static double Millilitres(TableRow row, MeasuringSystem? system) =>
        RowHypotheses.Measure(row, system ?? MeasuringSystem.UsCustomary);
}
