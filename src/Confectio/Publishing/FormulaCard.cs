using System.Globalization;
using Confectio.Conversions;
using Confectio.Cooking;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Labels;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Publishing;

/// <summary>
/// A formula as a card to hand out: each line in grams, ounces and the cups and spoons of one or more kitchens, percentages, yield, portions,
/// temperatures in both scales, the balance, allergens, the cautions it deserves, and what is not known.
/// </summary>
/// <remarks>
/// Digits are those that the weight or the measure has (<see cref="CardLine"/>). Where no filling of cups and spoons comes near enough the card
/// says to weigh. Names, titles and steps are text in every form: they are escaped, and what cannot be seen or turns the direction of writing
/// round is shown as U+FFFD. Forms: text and Markdown, whose ingredient lines <c>Phrase.Read</c> reads again; a whole HTML document without
/// scripts; schema.org Recipe as JSON-LD; and JSON of our own, which holds the formula to the last bit.
/// A card claims no more than the formula does: an allergen that is not listed is not said to be absent, and no card says how long food keeps.
/// </remarks>
public sealed class FormulaCard
{
    private const double SyrupCelsius = 101;
    private const double LeastSugars = 0.2;

    private static readonly string[] s_stages = ["soft ball", "firm ball", "hard ball", "soft crack", "hard crack", "soft-ball", "firm-ball", "hard-ball", "soft-crack", "hard-crack", "caramelis", "caramelize"];

    private FormulaCard(Formula formula, CardOptions options, bool isQuotient)
    {
        Formula = formula;
        Options = options;
        Title = SafeText.Name(options.Title.Length > 0 ? options.Title : formula.Name);
        if (Title.Length == 0)
            Title = "Formula";
        IReadOnlyList<double> shares = formula.PercentOf(FormulaPart.Everything);
        IReadOnlyList<double>? basis = options.Basis is FormulaPart part ? formula.PercentOf(part) : null;
        CardLine[] lines = new CardLine[formula.Lines.Count];
        for (int i = 0; i < lines.Length; i++)
            lines[i] = new CardLine(formula.Lines[i], options, shares[i], basis?[i], isQuotient);
        Lines = lines;
        Balance = Balance.Of(formula);
        Nutrition = options.Rules is LabelRules rules ? NutritionEstimate.Of(formula, rules, PortionGrams) : null;
        PutInGrams = MassTotal.Of(formula.Lines.Select(line => line.Measured ?? ConvertedMass.Exactly(line.Grams.Likely)));
        Rounding = new CardRounding(lines.Sum(line => line.RoundingGrams), lines.Sum(line => line.PrintedGrams - line.Line.Grams.Likely));
        Cautions = FindCautions();
        Assumptions = FindAssumptions();
        NotKnown = FindNotKnown();
    }

    /// <summary>The formula.</summary>
    public Formula Formula { get; }

    /// <summary>What was asked for.</summary>
    public CardOptions Options { get; }

    /// <summary>The title: that of the options, the formula's name, or <c>Formula</c>.</summary>
    public string Title { get; }

    /// <summary>The lines, in the order of the formula.</summary>
    public IReadOnlyList<CardLine> Lines { get; }

    /// <summary>What is put in, g: as sure as its measures are.</summary>
    public Spread PutInGrams { get; }

    /// <summary>The mass of a portion, g; <see langword="null"/> where nobody says.</summary>
    public double? PortionGrams => Options.PortionGrams ?? (Options.Portions is double portions ? Formula.TotalGrams / portions : null);

    /// <summary>How many portions it makes; <see langword="null"/> where nobody says.</summary>
    public double? Portions => Options.Portions ?? (Options.PortionGrams is double grams ? Formula.TotalGrams / grams : null);

    /// <summary>The portions that are whole; 0 where nobody says.</summary>
    internal double WholePortions => Portions is double portions ? Math.Floor(portions * (1 + 1e-12)) : 0;

    /// <summary>What it is made of.</summary>
    public Balance Balance { get; }

    /// <summary>The nutrition panel; <see langword="null"/> where none was asked for.</summary>
    public NutritionEstimate? Nutrition { get; }

    /// <summary>What rounding the weights does to their sum.</summary>
    public CardRounding Rounding { get; }

    /// <summary>The cautions that the formula, its temperatures and the spoons on the card deserve, with where they come from.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>What was taken for granted to turn weights into measures and back.</summary>
    public IReadOnlyList<string> Assumptions { get; }

    /// <summary>What is not known, a sentence each.</summary>
    public IReadOnlyList<string> NotKnown { get; }

    /// <summary>A card of a formula.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="options">What it shows; <see langword="null"/> for weights alone.</param>
    /// <returns>
    /// The card. Worked number: 250 g of unsalted butter with US and metric measures is <c>250 g (8.82 oz; 1 US cup + 2 Tbsp; 1 metric cup + 1
    /// Tbsp) unsalted butter, packed</c>.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentException">
    /// The options name both the portions and the mass of one, ask for percentages of a basis of which the formula has none, or for an American
    /// panel without portions.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">The portions of the options are below 0.1 g or above 1e5 g, and a panel is asked for.</exception>
    public static FormulaCard Of(Formula formula, CardOptions? options = null)
    {
        Guard.NotNull(formula);
        options ??= CardOptions.Default;
        if (options is { Portions: not null, PortionGrams: not null })
            throw new ArgumentException($"{nameof(options)} has both {nameof(CardOptions.Portions)} and {nameof(CardOptions.PortionGrams)}; one of them is expected.", nameof(options));
        if (options.Basis is FormulaPart basis && !(formula.Lines.Sum(line => basis.FractionIn(line.Ingredient) * line.Grams.Likely) > 1e-9 * formula.PutInGrams))
            throw new ArgumentException($"{nameof(options)} has the {nameof(CardOptions.Basis)} {basis}; there is none of it in the formula.", nameof(options));
        if (options is { Rules: LabelRules.UnitedStates, Portions: null, PortionGrams: null })
            throw new ArgumentException($"{nameof(options)} asks for an American panel, which is one of a portion: {nameof(CardOptions.Portions)} or {nameof(CardOptions.PortionGrams)} is expected.", nameof(options));
        if (options is { Rules: not null, Portions: double portions } && formula.TotalGrams / portions is not (>= 0.1 and <= 1e5) and double grams)
            throw new ArgumentOutOfRangeException(nameof(options), portions, string.Create(CultureInfo.InvariantCulture, $"{nameof(options)} has {portions:R} {nameof(CardOptions.Portions)} of {grams:R} g; a panel is of one from 0.1 to 100000 g."));
        return new FormulaCard(formula, options, isQuotient: false);
    }

    /// <summary>A card of what was worked out to fill a bowl: no digit of its weights was chosen by anybody.</summary>
    internal static FormulaCard OfBatch(Formula formula, CardOptions options) => new(formula, options, isQuotient: true);

    /// <summary>The card as plain text.</summary>
    /// <returns>Lines that end in a line feed.</returns>
    public string ToText() => TextSheet.Write(CardSheet.Of(this, isHtml: false));

    /// <summary>The card in Markdown (CommonMark, and tables as GitHub has them).</summary>
    /// <returns>Lines that end in a line feed.</returns>
    public string ToMarkdown() => MarkdownSheet.Write(CardSheet.Of(this, isHtml: false));

    /// <summary>The card as a whole HTML document: no script, nothing from elsewhere; for a screen of any width, the dark, and paper.</summary>
    /// <returns>The document.</returns>
    public string ToHtml() => HtmlSheet.Write(CardSheet.Of(this, isHtml: true));

    /// <summary>
    /// The card as structured data of a web page: a Recipe of the open vocabulary schema.org, in JSON-LD. It can stand in a script element as it
    /// is. The same in every culture.
    /// </summary>
    /// <returns>The JSON.</returns>
    public string ToJsonLd() => CardJsonLd.Write(this);

    /// <summary>
    /// The card for other programs, version 1. Its member <c>formula</c> is what <see cref="Formula.ToJson"/> writes, and reads back as the same
    /// formula. The same in every culture.
    /// </summary>
    /// <returns>The JSON.</returns>
    public string ToJson() => CardJson.Write(this);

    /// <summary>The title, the number of lines and the mass, such as <c>Fennmarsh ganache: 3 lines, 520 g</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Title}: {Lines.Count} {(Lines.Count == 1 ? "line" : "lines")}, {Formula.TotalGrams:0.##} g");

    /// <summary>The word of an allergen; a nut is said to be one.</summary>
    internal static string Word(Allergen allergen) =>
        EnumWords.Of(allergen, ' ') + (AllergenWord.IsTreeNut(allergen) ? " (tree nut)" : allergen == Allergen.Gluten ? " (cereals)" : "");

    /// <summary>The foods of which nobody has said which allergens they have.</summary>
    internal IEnumerable<string> AllergensNotStated => Formula.Lines.Where(line => line.Grams.Likely > 0 && !line.Ingredient.AllergensAreStated)
        .Select(line => Options.NameOf(line.Ingredient)).Distinct();

    /// <summary>The caution of boiling sugar, where it is boiled.</summary>
    internal bool IsBoiled => Balance[FormulaPart.Sugars].Fraction.Likely >= LeastSugars
        && (Formula.BoiledOffGrams > 0
            || Options.Temperatures.Any(temperature => temperature.HighCelsius > SyrupCelsius && !Says(temperature.Name, "oven") && !Says(temperature.Name, "bak"))
            || Options.Steps.Any(step => s_stages.Any(stage => Says(step, stage)) || (Says(step, "syrup") && (Says(step, "boil") || Says(step, "cook")))));

    private static bool Says(string text, string word) => text.Contains(word, StringComparison.OrdinalIgnoreCase);

    private string[] FindCautions()
    {
        List<string> cautions = [.. Formula.Cautions.Select(caution => $"{caution.Text} ({caution.Source})")];
        if (IsBoiled)
            cautions.Add(CookingStage.Caution);
        // Of a unit that stands on the card.
        foreach (CardMeasure measure in Lines.SelectMany(line => line.Measures))
        {
            for (int i = 0; i < (measure.Amount?.PartCount ?? 0); i++)
            {
                if (measure.MeasuringSystem.CautionFor(measure.Amount!.Value.Part(i).Unit) is string caution)
                    cautions.Add($"{Capital(measure.MeasuringSystem.Name)}: {caution}");
            }
        }
        return [.. cautions.Distinct()];
    }

    private string[] FindAssumptions()
    {
        List<string> assumed = [];
        foreach (CardLine line in Lines)
        {
            foreach (string sentence in line.Line.Measured?.Assumed ?? [])
                assumed.Add($"{line.Name}: {sentence}.");
            // What was converted for the formula, and what for the card.
            foreach (Conversion by in line.Measures.Where(measure => measure.Amount is not null).Select(measure => measure.By).Append(line.Line.Measured?.By).OfType<Conversion>())
            {
                HashSet<string> units = [.. new[] { KitchenUnit.Tablespoon, KitchenUnit.Cup }.Select(by.MeasuringSystem.CautionFor).OfType<string>()];
                assumed.AddRange(by.Cautions.Where(caution => !units.Contains(caution)).Select(caution => $"{line.Name}: {caution}"));
            }
        }
        return [.. assumed.Distinct()];
    }

    private List<string> FindNotKnown()
    {
        List<string> unknown = [];
        string[] unstated = [.. AllergensNotStated];
        if (unstated.Length > 0)
            unknown.Add($"Which allergens are in {string.Join(", ", unstated)}: nobody has said.");
        foreach (CardLine line in Lines.DistinctBy(line => line.Line.Ingredient).Where(line => line.Line.Grams.Likely > 0))
        {
            Ingredient food = line.Line.Ingredient;
            if (food.NotStated.Count > 0)
                unknown.Add($"How much {string.Join(", ", food.NotStated.Select(constituent => EnumWords.Of(constituent, ' ')))} is in {line.Name}: its label does not say, and a figure within limits was taken.");
            if (food.CompositionProvenance.Evidence is Evidence.Estimated or Evidence.CommonPractice or Evidence.FromMemory)
                unknown.Add($"What {line.Name} is made of, to the digit: its composition is {(food.CompositionProvenance.Evidence == Evidence.FromMemory ? "from memory" : "an estimate")}, and the balance is no surer.");
        }
        string[] unweighed = [.. Lines.Where(line => line.Measures.Any(measure => measure.Amount is null && measure.By is null && line.Line.Grams.Likely > 0)).Select(line => line.Name).Distinct()];
        if (unweighed.Length > 0)
            unknown.Add($"What a cup or spoon holds of {string.Join(", ", unweighed)}: nobody weighed it.");
        foreach (NutrientNotKnown nutrient in Nutrition?.NotKnown ?? [])
            unknown.Add($"{Capital(EnumWords.Of(nutrient.Nutrient, ' '))} on the panel: {nutrient.Why}.");
        unknown.Add("How long it keeps, and how cold: this card does not say. Local codes and licensed practice decide.");
        return unknown;
    }

    internal static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
