using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>Reads a printed conversion table: columns ingredient, measure, grams or ounces, and perhaps packing.</summary>
internal sealed class ConversionTableReader(IngredientTable ingredients, VettingOptions options, ProblemList problems)
{
    /// <summary>Looking for near names is slow beside judging a row, and nobody reads more suggestions than this.</summary>
    private const int MostSuggestions = 50;

    private readonly Dictionary<string, (Ingredient? Ingredient, Packing? Packing)> _names = new(StringComparer.Ordinal);
    private readonly List<TableRow> _rows = [];

    /// <summary>The rows that could be read.</summary>
    public IReadOnlyList<TableRow> Rows => _rows;

    /// <summary>Names that are in no table, with the nearest that are.</summary>
    public Dictionary<string, IReadOnlyList<string>> Suggestions { get; } = new(StringComparer.Ordinal);

    /// <summary>Names that mean more foods than one, or another food than they seem to, with a sentence each.</summary>
    public Dictionary<string, string> Unclear { get; } = new(StringComparer.Ordinal);

    public void Read(TextReader text) => DelimitedTable.Read(text, problems, table =>
    {
        int ingredient = table.Find("ingredient"), measure = table.Find("measure"), packing = table.Find("packing");
        int grams = table.Find("grams"), ounces = table.Find("ounces");
        long before = problems.Total;
        table.RequireColumns(["ingredient", "measure"], problems, "; a header line with ingredient, measure and grams (or ounces) was expected");
        table.RequireEither("grams", "ounces", problems);
        if (problems.Total > before)
            return null;
        return row => ReadRow(row, ingredient, measure, packing, grams, ounces);
    });

    private void ReadRow(DelimitedRow row, int ingredientColumn, int measureColumn, int packingColumn, int gramsColumn, int ouncesColumn)
    {
        long before = problems.Total;
        ReadOnlySpan<char> name = row[ingredientColumn];
        if (name.IsEmpty)
            problems.Add(new Problem(row.Line, "ingredient", "the field is empty"));

        ReadOnlySpan<char> measure = row[measureColumn];
        AmountReader reader = new(measure, options.Reading);
        Packing? packing = null;
        PrintedMass? bracketed = null;
        if (!reader.TryRead(out Amount amount))
        {
            problems.Add(new Problem(row.Line, "measure", measure.IsEmpty ? "the field is empty" : reader.Refusal));
        }
        else if (reader.Position < measure.Length && !TryReadPacking(measure[reader.Position..], out packing, out bracketed))
        {
            problems.Add(new Problem(row.Line, "measure", $"{Excerpt.Of(measure)} ends in words that are not a packing: {Excerpt.Of(measure[reader.Position..].Trim())}"));
        }
        else if (amount.Part(0).Low == 0 && amount.PartCount == 1)
        {
            problems.Add(new Problem(row.Line, "measure", $"{Excerpt.Of(measure)} is no amount at all"));
        }

        bool useOunces = gramsColumn < 0 || (row[gramsColumn].IsEmpty && ouncesColumn >= 0);
        ReadOnlySpan<char> mass = row[useOunces ? ouncesColumn : gramsColumn];
        if (!PrintedMass.TryRead(mass, useOunces, options.Reading, out PrintedMass printed, out string problem))
            problems.Add(new Problem(row.Line, useOunces ? "ounces" : "grams", mass.IsEmpty ? "the field is empty" : problem));

        PrintedMass? second = null;
        if (!useOunces && ouncesColumn >= 0 && !row[ouncesColumn].IsEmpty)
        {
            if (PrintedMass.TryRead(row[ouncesColumn], ounces: true, options.Reading, out PrintedMass ounces, out string why))
                second = ounces;
            else
                problems.Add(new Problem(row.Line, "ounces", why));
        }

        ReadOnlySpan<char> packingText = row[packingColumn];
        if (!packingText.IsEmpty)
        {
            if (PackingText.TryRead(packingText, out Packing stated))
                packing = stated;
            else
                problems.Add(new Problem(row.Line, "packing", $"{Excerpt.Of(packingText)} is not a packing"));
        }
        if (problems.Total > before)
            return;

        string printedName = name.Length <= 200 ? name.ToString() : name[..200].ToString();
        (Ingredient? matched, Packing? namedPacking) = Match(printedName);
        _rows.Add(new TableRow(row.Line, printedName, matched, packing ?? namedPacking, amount, printed)
        {
            PackingIsFromName = packing is null && namedPacking is not null, Others = (second ?? bracketed) is PrintedMass other ? new OtherMasses(other, second is null ? null : bracketed) : null,
        });
    }

    /// <summary>A name may carry its packing: "sifted icing sugar", "brown sugar, packed", "walnuts (chopped)".</summary>
    private (Ingredient?, Packing?) Match(string name)
    {
        if (_names.TryGetValue(name, out (Ingredient?, Packing?) known))
            return known;
        NameMatch match = ingredients.MatchName(name);
        if (match.Ingredient is null && Suggestions.Count < MostSuggestions)
            Suggestions[name] = ingredients.Suggest(name);
        if (match.IsUnclear && Unclear.Count < MostSuggestions)
            Unclear[name] = match.Reason;
        _names.Add(name, (match.Ingredient, match.Packing));
        return (match.Ingredient, match.Packing);
    }

    /// <summary>What may follow a measure: a packing, and in brackets anything (the 4.86 eggs that fill a cup), which is not read.</summary>
    private bool TryReadPacking(ReadOnlySpan<char> words, out Packing? packing, out PrintedMass? mass)
    {
        packing = null;
        mass = null;
        words = words.Trim();
        int open = words.IndexOf('(');
        if (open >= 0 && words[^1] == ')')
        {
            ReadOnlySpan<char> inside = words[(open + 1)..^1].Trim();
            if (PackingText.TryRead(inside, out Packing bracketed))
                packing = bracketed;
            else if (MassUnit(inside) is bool ounces && PrintedMass.TryRead(inside, ounces, options.Reading, out PrintedMass inBracket, out _))
                mass = inBracket;
            words = words[..open];
        }
        words = words.Trim(", ");
        if (PackingText.TryRead(words, out Packing read))
            packing = read;
        else if (!words.IsEmpty)
            return false;
        return true;
    }

    /// <summary>Whether a number ends in ounces or in grams; 14 halves are neither.</summary>
    private static bool? MassUnit(ReadOnlySpan<char> text)
    {
        int letters = text.Length;
        while (letters > 0 && (char.IsAsciiLetter(text[letters - 1]) || text[letters - 1] == '.'))
            letters--;
        ReadOnlySpan<char> unit = text[letters..].TrimEnd('.');
        if (letters == 0 || text[..letters].ContainsAnyInRange('a', 'z') || text[..letters].ContainsAnyInRange('A', 'Z'))
            return null;
        return unit.Equals("oz", StringComparison.OrdinalIgnoreCase) || unit.StartsWith("ounce", StringComparison.OrdinalIgnoreCase) ? true
            : unit.Equals("g", StringComparison.OrdinalIgnoreCase) || unit.StartsWith("gram", StringComparison.OrdinalIgnoreCase) ? false : null;
    }
}
