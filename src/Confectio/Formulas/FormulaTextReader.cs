using System.Globalization;
using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Formulas;

/// <summary>Reads the lines of a formula as a cook writes them: an amount, then an ingredient with its packing before or behind it.</summary>
internal sealed class FormulaTextReader(IngredientTable ingredients, MeasuringSystem system)
{
    private const string Lead = "This cannot be read as a formula";

    private const int LongestLine = 1000;

    /// <summary>Looking for near names is slow beside reading a line, and nobody reads more suggestions than this.</summary>
    private const int MostSuggestions = 50;

    private readonly ProblemList _problems = [];
    private readonly List<FormulaLine> _lines = [];
    private int _suggested;

    public Reading<Formula> Read(string name, TextReader text)
    {
        int count = 0, last = 1;
        foreach ((int number, string whole, bool isCut) in ShortLines.Of(text, LongestLine))
        {
            last = number;
            string line = whole.Trim();
            if (line.Length == 0 || line[0] == '#')
                continue;
            if (++count > Formula.MaximumLines)
            {
                Add(number, null, string.Create(CultureInfo.InvariantCulture, $"a formula has at most {Formula.MaximumLines} lines; from here on nothing was read"));
                break;
            }
            if (isCut)
                Add(number, null, string.Create(CultureInfo.InvariantCulture, $"the line is longer than {LongestLine} characters; it was not read"));
            else
                ReadLine(number, line);
        }
        if (_lines.Sum(line => line.Grams.Likely) > 0)
            return new Reading<Formula>(Formula.Of(name, _lines), Lead, _problems, _problems.Total);
        Add(last, null, _lines.Count == 0 ? "no line could be used; a line such as 250 g butter was expected" : "the lines add up to 0 g; a formula needs some mass");
        return Reading<Formula>.None(Lead, _problems, _problems.Total);
    }

    private void ReadLine(int number, string line)
    {
        AmountReader reader = new(line, AmountReading.DecimalPoint);
        if (!reader.TryRead(out Amount amount))
        {
            Add(number, "amount", reader.Refusal);
            return;
        }
        string words = line[reader.Position..].Trim(' ', '\t', ',');
        if (words.StartsWith("of ", StringComparison.OrdinalIgnoreCase))
            words = words[3..].TrimStart();
        // In "3 egg whites" the egg was read as the piece, but it belongs to the name.
        string? piece = amount.Part(amount.PartCount - 1).Piece;
        NameMatch match = ingredients.MatchName(words);
        if (match.Ingredient is null && piece is not null)
            match = ingredients.MatchName($"{piece} {words}") is { Ingredient: not null } whole ? whole : match;
        if (match.Ingredient is not Ingredient ingredient)
        {
            Add(number, "ingredient", words.Length == 0 ? "an ingredient was expected after the amount" : Unknown(match));
            return;
        }
        try
        {
            _lines.Add(FormulaLine.Of(ingredient, amount, system, match.Packing));
        }
        catch (ArgumentException e)
        {
            Add(number, e.ParamName == "packing" ? "packing" : "amount", Guard.ReasonOf(e).TrimEnd('.'));
        }
    }

    private string Unknown(NameMatch match) => FormulaLineReader.Unknown(match, "not an ingredient of this table", ingredients, _suggested++ < MostSuggestions);

    private void Add(int line, string? column, string message) => _problems.Add(new Problem(line, column, message));
}
