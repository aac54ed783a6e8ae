using System.Buffers;
using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Phrases;

/// <summary>
/// A recipe as a cook types it or copies it from a page: headings, ingredients, instructions and whatever stands round them, line by line.
/// </summary>
/// <remarks>
/// What a line is follows from its words, and where they do not tell, from where it stands: before the first amount stand titles, and
/// behind a heading such as Method only instructions, until a heading says ingredients again.
/// </remarks>
public sealed class RecipeText
{
    private static readonly SearchValues<char> s_digits = SearchValues.Create("0123456789½⅓⅔¼¾⅕⅛⅜⅝⅞");

    private const int MostLines = 10_000;

    /// <summary>Looking for near names is slow beside reading a line, and nobody reads more suggestions than this.</summary>
    private const int MostSuggestions = 50;

    private RecipeText(IReadOnlyList<RecipeLine> lines, string layout) => (Lines, Layout) = (lines, layout);

    /// <summary>Every line that is not empty.</summary>
    public IReadOnlyList<RecipeLine> Lines { get; }

    /// <summary>The lines that are ingredients; of two in one line, each.</summary>
    public IEnumerable<RecipeLine> Ingredients
    {
        get
        {
            foreach (RecipeLine line in Lines)
            {
                if (line.Phrase.Kind != PhraseKind.Ingredient)
                    continue;
                for (Phrase? phrase = line.Phrase; phrase is not null; phrase = phrase.Also)
                    yield return new RecipeLine(line.Number, phrase);
            }
        }
    }

    /// <summary>How the text was understood, in one sentence.</summary>
    public string Layout { get; }

    /// <summary>Reads a recipe.</summary>
    /// <param name="text">The text.</param>
    /// <param name="table">The ingredients.</param>
    /// <param name="options">How phrases are read; <see langword="null"/> for <see cref="PhraseOptions.Default"/>.</param>
    /// <returns>The recipe, and every line of which something was not understood or contradicts itself.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> or <paramref name="table"/> is null.</exception>
    public static Reading<RecipeText> Read(string text, IngredientTable table, PhraseOptions? options = null)
    {
        Guard.NotNull(table);
        options ??= PhraseOptions.Default;
        bool comma = options.Reading == AmountReading.DecimalPoint && HasDecimalCommas(Guard.NotNull(text));
        if (comma)
            options = new PhraseOptions { MeasuringSystem = options.MeasuringSystem, AcceptSpelling = options.AcceptSpelling,
                Reading = AmountReading.DecimalComma, ChecksFigures = options.ChecksFigures };
        using StringReader reader = new(Guard.NotNull(text));
        List<RecipeLine> lines = [];
        int number = 0, unknown = 0;
        bool cut = false;
        // Characters that do not belong to a line are dropped with it: a longer line is not read, and nobody keeps it.
        foreach ((int at, string whole, bool isCut) in ShortLines.Of(reader, Phrase.LongestText + 1))
        {
            number = at;
            if (lines.Count == MostLines)
            {
                cut = true;
                break;
            }
            if (whole.AsSpan().Trim().Length == 0)
                continue;
            lines.Add(new RecipeLine(at, PhraseReader.Read(isCut ? whole.PadRight(Phrase.LongestText + 1, '.') : whole, table, options, at,
                suggests: unknown < MostSuggestions)));
            unknown += lines[^1].Phrase is { Kind: PhraseKind.Ingredient, Ingredient: null } ? 1 : 0;
        }
        Settle(lines);
        ProblemList problems = [];
        foreach (RecipeLine line in lines)
        {
            if (line.Phrase.Kind != PhraseKind.Ingredient && line.Phrase.Problems.Count == 0)
                continue;
            for (Phrase? phrase = line.Phrase; phrase is not null; phrase = phrase.Also)
            {
                foreach (Problem problem in phrase.Problems)
                    problems.Add(problem);
                // What has no problem of its own and was not understood is one.
                foreach (PhrasePart part in phrase.Unread)
                {
                    if (phrase.Problems.Count == 0)
                        problems.Add(new Problem(line.Number, part.Start + 1, null, "unread",
                            $"{Excerpt.Of(part.Text)} was not understood"));
                }
            }
        }
        if (cut)
            problems.Add(new Problem(number, null, string.Create(CultureInfo.InvariantCulture,
                $"a recipe has at most {MostLines} lines; from here on nothing was read")));
        return new Reading<RecipeText>(new RecipeText(lines, LayoutOf(lines) + (comma ? "; decimals have a comma, as none has a point"
            : "")), "The recipe cannot be read whole", problems, problems.Total);
    }

    /// <summary>The sentence about the layout.</summary>
    public override string ToString() => Layout;

    /// <summary>What the words of a line do not tell, its place does.</summary>
    private static void Settle(List<RecipeLine> lines)
    {
        int first = lines.FindIndex(line => line.Phrase is { Kind: PhraseKind.Ingredient, Amount: not null, Ingredient: not null });
        // A list without amounts has no title that could be told from it.
        bool method = false, listed = first < 0;
        for (int i = 0; i < lines.Count; i++)
        {
            Phrase phrase = lines[i].Phrase;
            ReadOnlySpan<char> text = phrase.Text.AsSpan()[LineKinds.AfterBullet(phrase.Text)..].Trim();
            if (phrase.Kind == PhraseKind.Heading)
            {
                if (LineKinds.OpensMethod(text))
                    method = true;
                else if (LineKinds.OpensIngredients(text))
                    (method, listed) = (false, true);
            }
            else if (phrase.Kind == PhraseKind.Ingredient && method
                && (phrase.Amount is null || phrase.Ingredient is null || text[^1] == '.'))
            {
                lines[i] = new RecipeLine(lines[i].Number, new Phrase(phrase.Text, PhraseKind.Instruction));
            }
            else if (phrase.Kind == PhraseKind.Ingredient && phrase.Amount is null
                && ((i < first && !listed && !s_digits.Contains(text[0])) || OpensPart(lines, i, text)))
            {
                lines[i] = new RecipeLine(lines[i].Number, new Phrase(phrase.Text, PhraseKind.Heading));
            }
        }
    }

    /// <summary>
    /// Whether a line without an amount is the name of a part of the recipe, such as <c>Caramel sauce</c>: something that is made, alone
    /// behind a blank line, with an ingredient and its amount right below.
    /// </summary>
    private static bool OpensPart(List<RecipeLine> lines, int index, ReadOnlySpan<char> text) =>
        index > 0 && index + 1 < lines.Count
        && lines[index].Number > lines[index - 1].Number + 1 && lines[index + 1].Number == lines[index].Number + 1
        && lines[index + 1].Phrase is { Kind: PhraseKind.Ingredient, Amount: not null }
        && !text.ContainsAny(',', '(') && LineKinds.EndsAsPart(text);

    /// <summary>
    /// Whether the decimals of a recipe have a comma: one stands where no thousands can be meant (<c>0,5</c>, <c>1,25</c>), and nowhere
    /// does a point stand between digits. A text with both is not guessed at: its commas are listed as unread.
    /// </summary>
    internal static bool HasDecimalCommas(string text)
    {
        bool comma = false;
        for (int i = 1; i + 1 < text.Length; i++)
        {
            if (text[i] is not ('.' or ',') || !char.IsAsciiDigit(text[i - 1]) || !char.IsAsciiDigit(text[i + 1]))
                continue;
            if (text[i] == '.')
                return false;
            int end = i + 1;
            while (end < text.Length && char.IsAsciiDigit(text[end]))
                end++;
            bool whole = i >= 2 && char.IsAsciiDigit(text[i - 2]) || text[i - 1] != '0';
            // "1,500 g" may be either, and settles nothing.
            if (end - i - 1 == 3 && whole)
                continue;
            comma = true;
        }
        return comma;
    }

    private static string LayoutOf(List<RecipeLine> lines)
    {
        int Count(PhraseKind kind) => lines.Count(line => line.Phrase.Kind == kind);
        return string.Create(CultureInfo.InvariantCulture,
            $"a recipe, a line each: {Count(PhraseKind.Ingredient)} ingredients, {Count(PhraseKind.Heading)} headings, "
                + $"{Count(PhraseKind.Instruction)} instructions, {Count(PhraseKind.Note)} other lines");
    }
}
