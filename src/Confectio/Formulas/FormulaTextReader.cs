using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Text;

namespace Confectio.Formulas;

/// <summary>
/// Reads the lines of a formula as a cook writes them, each as a <see cref="Phrase"/> of which everything has to be understood.
/// </summary>
internal sealed class FormulaTextReader(IngredientTable ingredients, MeasuringSystem system)
{
    private const string Lead = "This cannot be read as a formula";

    private const int LongestLine = 1000;

    /// <summary>Looking for near names is slow beside reading a line, and nobody reads more suggestions than this.</summary>
    private const int MostSuggestions = 50;

    private readonly PhraseOptions _options = new() { MeasuringSystem = system };
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
                Add(number, null, string.Create(CultureInfo.InvariantCulture,
                    $"a formula has at most {Formula.MaximumLines} lines; from here on nothing was read"));
                break;
            }
            if (isCut)
                Add(number, null, string.Create(CultureInfo.InvariantCulture,
                    $"the line is longer than {LongestLine} characters; it was not read"));
            else
                ReadLine(number, line);
        }
        if (_lines.Sum(line => line.Grams.Likely) > 0)
            return new Reading<Formula>(Formula.Of(name, _lines), Lead, _problems, _problems.Total);
        Add(last, null, _lines.Count == 0 ? "no line could be used; a line such as 250 g butter was expected"
            : "the lines add up to 0 g; a formula needs some mass");
        return Reading<Formula>.None(Lead, _problems, _problems.Total);
    }

    private void ReadLine(int number, string line)
    {
        Phrase phrase = PhraseReader.Read(line, ingredients, _options, number, suggests: _suggested < MostSuggestions);
        // A heading that says it is one, and what is to be done, weigh nothing.
        if (phrase.Kind is PhraseKind.Heading or PhraseKind.Instruction && !phrase.IsKindGuessed)
            return;
        if (phrase.Kind != PhraseKind.Ingredient)
        {
            Add(number, "amount", $"{Excerpt.Of(line)} has no amount; a line such as 250 g butter was expected");
            return;
        }
        for (Phrase? one = phrase; one is not null; one = one.Also)
            ReadPhrase(number, one);
    }

    private void ReadPhrase(int number, Phrase phrase)
    {
        if (phrase.Ingredient is null)
            _suggested++;
        if (phrase.Amount is null && phrase.Problems.Count == 0)
            Add(number, "amount", $"{Excerpt.Of(phrase.Text)} has no amount; a line such as 250 g butter was expected");
        else if (phrase.Problems.Count > 0)
            Add(number, phrase.Amount is null ? "amount" : phrase.Ingredient is null ? "ingredient" : null,
                string.Join("; ", phrase.Problems.Select(problem => problem.Message)));
        else if (phrase.Unread.Count > 0)
            Add(number, null, $"not understood: {string.Join(", ", phrase.Unread.Select(part => Excerpt.Of(part.Text)))}");
        else if (phrase.Ingredient is null)
            Add(number, "ingredient", "an ingredient was expected beside the amount");
        else if (FormulaLine.OfPhrase(phrase, system, out string? reason, out string column) is FormulaLine made)
            _lines.Add(made);
        else
            Add(number, column, reason!);
    }

    private void Add(int line, string? column, string message) => _problems.Add(new Problem(line, column, message));
}
