using System.Globalization;
using System.Text.RegularExpressions;
using Confectio.Cards;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>
/// Judges a card: its measures against its weights in one measuring system for all lines, temperatures in both scales and against the
/// process, sums, yield and portions, percentages, sugar stages at the stated height, dried egg and water, nutrition and allergens.
/// </summary>
/// <remarks>
/// A finding is something that rounding, the spread of the foods and common practice do not explain. What could not be judged is said in
/// <see cref="CardVerdict.NotJudged"/>, and that nothing was found never means that a card is right or safe. The model of measures is that
/// of <see cref="ConversionTableVetter"/>; how often each kind of planted mistake is found is told in docs/guide/vetting-cards.md.
/// Worked example: <c>1 cup (227 g) honey</c> is called wrong: a cup was counted as eight ounces, and 340 g were expected.
/// </remarks>
public static partial class CardVetter
{
    /// <summary>What stands beside every verdict.</summary>
    public const string Caution = "That nothing was found does not say that a card is right or its food safe. Allergens differ between makers: read every label. Times and temperatures that "
        + "make food safe are decided by local codes and licensed practice.";

    /// <summary>Judges a card.</summary>
    /// <param name="card">The card, as <see cref="PrintedCard.Read(string, IngredientTable, CardReadingOptions?)"/> reads it.</param>
    /// <param name="options">How to judge; <see langword="null"/> for the defaults.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="card"/> is null.</exception>
    public static CardVerdict Vet(PrintedCard card, CardVettingOptions? options = null) => Vet(Guard.NotNull(card), [], options);

    /// <summary>Judges a card with what of it could not be read.</summary>
    /// <param name="card">The reading of the card.</param>
    /// <param name="options">How to judge; <see langword="null"/> for the defaults.</param>
    /// <returns>The verdict; <see langword="null"/> where there is no card.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="card"/> is null.</exception>
    public static CardVerdict? Vet(Reading<PrintedCard> card, CardVettingOptions? options = null) =>
        Guard.NotNull(card).TryGet(out PrintedCard? read) ? Vet(read, card.Problems, options) : null;

    private static CardVerdict Vet(PrintedCard card, IReadOnlyList<Problem> problems, CardVettingOptions? options)
    {
        CardJudgement judgement = new(card, options ?? CardVettingOptions.Default);
        CardMeasures.Judge(judgement);
        CardSums.Judge(judgement);
        CardTemperatures.Judge(judgement);
        CardPowders.Judge(judgement);
        CardNutrition.Judge(judgement);
        CardAllergens.Judge(judgement);
        int unread = card.Lines.Count(line => line.Phrase.Ingredient is null);
        if (unread > 0)
            judgement.NotJudged.Add(string.Create(CultureInfo.InvariantCulture, $"{unread} of {card.Lines.Count} lines {(unread == 1 ? "names" : "name")} no ingredient that is known"));
        if (card.Texts.Any(text => text.Text.Length <= 1000 && Keeping().IsMatch(text.Text)))
            judgement.NotJudged.Add("how long it keeps, and where: local codes and licensed practice decide");
        CardFinding[] findings = [.. judgement.Findings.OrderBy(finding => Rank(finding.Issue)).ThenBy(finding => finding.Place.Line).ThenBy(finding => finding.Place.Column)];
        return new CardVerdict(card, findings, judgement.SystemFound, judgement.NotJudged, problems, judgement.JudgedLines);
    }

    [GeneratedRegex(@"\b(?:keeps?|holds?|store[sd]?|good for|use within|up to|lasts?|freezes?)\b[^.;]{0,60}\d\s*(?:-|–|to)?\s*\d*\s*(?:hours?|days?|weeks?|months?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Keeping();

    private static int Rank(CardIssue issue) => issue switch
    {
        CardIssue.AllergenContradicted => 0,
        CardIssue.AllergenMissing => 1,
        CardIssue.UnsafeTemperature => 2,
        _ => 3,
    };
}

/// <summary>A card while it is judged: what was found so far, and what every check needs to know.</summary>
internal sealed class CardJudgement(PrintedCard card, CardVettingOptions options)
{
    private (double Low, double Likely, double High)?[]? _grams;

    public PrintedCard Card { get; } = card;

    public CardVettingOptions Options { get; } = options;

    public List<CardFinding> Findings { get; } = [];

    public List<string> NotJudged { get; } = [];

    public SystemFinding? SystemFound { get; set; }

    /// <summary>Lines whose measure and weight do not fit: their grams are doubted by every other check.</summary>
    public Dictionary<PrintedLine, double?> Doubted { get; } = [];

    public int JudgedLines { get; set; }

    /// <summary>Whose cups: as told, as found, and where neither is, US customary.</summary>
    public MeasuringSystem System => Options.System ?? SystemFound?.Best ?? MeasuringSystem.UsCustomary;

    /// <summary>Whether nobody's cups are told or clear, so that a volume is less sure.</summary>
    public bool SystemIsUnsure => Options.System is null && (SystemFound is null || SystemFound.FamilyProbability < SystemFinding.Sure);

    /// <summary>What each line weighs; null where that is not known.</summary>
    public (double Low, double Likely, double High)?[] Grams => _grams ??= [.. Card.Lines.Select(Of)];

    /// <summary>The formula of the card; null where a line cannot be weighed, but for those without an amount.</summary>
    public Formula? Formula
    {
        get
        {
            Reading<Formula> reading = Card.ToFormula(System);
            return reading.TryGet(out Formula? formula) && !Card.Lines.Where((line, i) => Grams[i] is null && line.Phrase.Amount is not null).Any()
                && !Card.Lines.Any(line => line.Phrase.Ingredient is null) ? formula : null;
        }
    }

    public CardFigure? Figure(CardFigureKind kind) => Card.Figures.FirstOrDefault(figure => figure.Kind == kind);

    private (double, double, double)? Of(PrintedLine line)
    {
        // A mass that is printed is as sure as its last digit; what is measured is as sure as its food.
        (double, double, double)? best = null;
        (bool IsOther, double Half) least = default;
        foreach (Phrases.WrittenAmount amount in line.Amounts)
        {
            if (!amount.Amount.IsMass || amount.IsApproximate)
                continue;
            double low = amount.Amount.LowGrams(System), high = amount.Amount.HighGrams(System), half = Custom((low + high) / 2, PrintedStep(line, amount)) / 2;
            // Grams are grams everywhere; an ounce of a label is 28 of them. Of two of a kind the finer is taken.
            (bool, double) rank = (amount.Amount.Part(0).Unit is not (KitchenUnit.Gram or KitchenUnit.Kilogram), half);
            if (best is null || rank.CompareTo(least) < 0)
                (best, least) = ((low - half, (low + high) / 2, high + half), rank);
        }
        if (best is not null)
            return best;
        if (PrintedCard.WeighedLine(line, System, out _) is not FormulaLine weighed)
            return null;
        double widen = SystemIsUnsure && line.Amounts.Any(amount => amount.Amount.IsVolume) ? 0.06 : 0;
        return (weighed.Grams.Low * (1 - widen), weighed.Grams.Likely, weighed.Grams.High * (1 + widen));
    }

    /// <summary>What a printed figure was rounded to by custom: tens from a hundred on where it ends in a nought, fifties from two thousand.</summary>
    public static double Custom(double value, double step) => step != 1 ? step : value >= 2000 && value % 100 == 0 ? 50 : value >= 100 && value % 10 == 0 ? 10 : step;

    /// <summary>So many lines that have something, in words.</summary>
    public static string Lines(int count) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? "line has" : "lines have")}");

    /// <summary>What the last digit of a printed mass counts, in grams.</summary>
    public static double PrintedStep(PrintedLine line, Phrases.WrittenAmount amount)
    {
        Measures.AmountPart part = amount.Amount.Part(amount.Amount.PartCount - 1);
        double unit = MeasuringSystem.UsCustomary.GramsPer(part.Unit);
        long denominator = part.Low.Denominator;
        // 12.50 was printed with two digits; the fraction has forgotten them.
        string text = amount.Start >= 0 && amount.Start + amount.Length <= line.Phrase.Text.Length ? line.Phrase.Text.Substring(amount.Start, amount.Length) : "";
        int mark = text.IndexOfAny(['.', ',']);
        int decimals = 0;
        for (int i = mark + 1; mark >= 0 && i < text.Length && char.IsAsciiDigit(text[i]); i++)
            decimals++;
        return unit * (mark >= 0 && decimals is > 0 and < 5 ? Math.Pow(10, -decimals) : denominator == 1 ? 1 : Math.Min(0.5, 1.0 / denominator));
    }
}
