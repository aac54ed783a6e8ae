using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Layouts;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Text;

namespace Confectio.Cards;

/// <summary>
/// What stands on somebody's card, as it was read: the lines with every amount, percentages, what it makes, temperatures, nutrition, what it
/// says of allergens, how it makes up dried egg; each with its place.
/// </summary>
/// <remarks>
/// A card is plain text, Markdown, columns, a web page, structured data of schema.org in a page or alone, or a formula in our own JSON.
/// Nothing is fetched and nothing is run. What could not be read is a problem of the reading; what says nothing that is judged, such as an
/// image, stands in <see cref="NotUsed"/>. Nothing is thrown for what stands in the text.
/// </remarks>
public sealed class PrintedCard
{
    /// <summary>The most characters that are read: 16 million.</summary>
    public const int MaximumCharacters = 16_000_000;

    internal PrintedCard(CardForm form) => Form = form;

    /// <summary>What form it came in.</summary>
    public CardForm Form { get; }

    /// <summary>Its title; empty where none was found.</summary>
    public string Title { get; internal init; } = "";

    /// <summary>How it was understood, in a sentence.</summary>
    public string Layout { get; internal init; } = "";

    /// <summary>The lines that name an ingredient, in the order of the card.</summary>
    public IReadOnlyList<PrintedLine> Lines { get; internal init; } = [];

    /// <summary>What it makes, in portions and grams, how high its kitchen stands, its stated sums.</summary>
    public IReadOnlyList<CardFigure> Figures { get; internal init; } = [];

    /// <summary>Its nutrition statement.</summary>
    public IReadOnlyList<CardFigure> Nutrition { get; internal init; } = [];

    /// <summary>Its temperatures.</summary>
    public IReadOnlyList<WrittenTemperature> Temperatures { get; internal init; } = [];

    /// <summary>What it says of allergens.</summary>
    public IReadOnlyList<AllergenClaim> AllergenClaims { get; internal init; } = [];

    /// <summary>How it makes up dried egg.</summary>
    public IReadOnlyList<PowderRatio> PowderRatios { get; internal init; } = [];

    /// <summary>What says nothing that is judged and was not read: times, pictures, columns of notes; each with its place.</summary>
    public IReadOnlyList<Problem> NotUsed { get; internal init; } = [];

    /// <summary>Everything that is not an ingredient, line by line, for those who look for words.</summary>
    internal IReadOnlyList<SourceText> Texts { get; init; } = [];

    /// <summary>The formula of our own JSON, where the card is one.</summary>
    internal Formula? Formula { get; init; }

    internal IngredientTable Ingredients { get; init; } = IngredientTable.Empty;

    /// <summary>Reads a card from the bytes of a file: UTF-8 and UTF-16 with or without their mark, and Windows-1252 where the bytes are neither.</summary>
    /// <param name="file">The bytes.</param>
    /// <param name="ingredients">The ingredients.</param>
    /// <param name="options">How it is read; <see langword="null"/> for <see cref="CardReadingOptions.Default"/>.</param>
    /// <returns>As of a text.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredients"/> is null.</exception>
    public static Reading<PrintedCard> Read(ReadOnlySpan<byte> file, IngredientTable ingredients, CardReadingOptions? options = null)
    {
        Guard.NotNull(ingredients);
        DecodedText decoded = DecodedText.Of(file);
        // A picture or a program is a text in no encoding: its bytes hold what no printer prints.
        return decoded.IsAssumed && decoded.Text.AsSpan().ContainsAnyInRange('\0', '\b')
            ? CardReader.None(1, "the bytes are no text; UTF-8, UTF-16 or Windows-1252 is expected", ProblemCodes.Row) : Read(decoded.Text, ingredients, options);
    }

    /// <summary>Reads a card. The text is read the same in every culture.</summary>
    /// <param name="text">The text of the card or of the page; at most <see cref="MaximumCharacters"/>.</param>
    /// <param name="ingredients">The ingredients.</param>
    /// <param name="options">How it is read; <see langword="null"/> for <see cref="CardReadingOptions.Default"/>.</param>
    /// <returns>
    /// The card and every part of it that was not understood, with its place; no card where nothing on it is an ingredient. Of a card at
    /// most 10 000 lines are read, and of a line at most 8 000 characters; what is left out is said.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> or <paramref name="ingredients"/> is null.</exception>
    public static Reading<PrintedCard> Read(string text, IngredientTable ingredients, CardReadingOptions? options = null) =>
        new CardReader(Guard.NotNull(text), Guard.NotNull(ingredients), options ?? CardReadingOptions.Default).Read();

    /// <summary>The formula of the card: each line by its mass where it has one, else by its measure.</summary>
    /// <param name="system">Whose cups and spoons, where the card does not say.</param>
    /// <returns>The formula of the lines that can be weighed; every other line is a problem. Optional lines count, too.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="system"/> is null.</exception>
    public Reading<Formula> ToFormula(MeasuringSystem system)
    {
        Guard.NotNull(system);
        const string Lead = "The card cannot be weighed whole";
        if (Formula is not null)
            return new Reading<Formula>(Formula, Lead, [], 0);
        ProblemList problems = [];
        List<FormulaLine> lines = [];
        foreach (PrintedLine line in Lines)
        {
            if (WeighedLine(line, system, out string? reason) is FormulaLine made && lines.Count < Formulas.Formula.MaximumLines)
                lines.Add(made);
            else
                problems.Add(new Problem(line.Place.Line, line.Place.Column, line.Place.Path, ProblemCodes.Row,
                    $"{Excerpt.Of(line.Phrase.Text)} was not weighed: {reason ?? string.Create(CultureInfo.InvariantCulture, $"a formula has at most {Formulas.Formula.MaximumLines} lines")}"));
        }
        return lines.Sum(line => line.Grams.Likely) > 0 ? new Reading<Formula>(Formulas.Formula.Of(Title, lines), Lead, problems, problems.Total)
            : Reading<Formula>.None(Lead, problems.Count > 0 ? problems : [new Problem(0, null, "no line of the card has a weight")], Math.Max(1, problems.Total));
    }

    /// <summary>The line of a formula, by the mass where the card prints one: the measure beside it says how it is measured.</summary>
    internal static FormulaLine? WeighedLine(PrintedLine line, MeasuringSystem system, out string? reason)
    {
        MeasuringSystem own = system;
        foreach (WrittenAmount amount in line.Amounts)
        {
            if (amount.Amount.IsVolume && line.SystemOf(amount) is MeasuringSystem stated)
            {
                own = stated;
                break;
            }
        }
        return FormulaLine.OfPhrase(line.Phrase, own, out reason, out _);
    }

    /// <summary>The title, and how the card was understood.</summary>
    public override string ToString() => $"{(Title.Length == 0 ? "a card" : Excerpt.Of(Title))}: {Layout}";
}
