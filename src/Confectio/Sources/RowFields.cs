using System.Globalization;
using Confectio.Text;

namespace Confectio.Sources;

/// <summary>Reads the fields of one row by column name and notes what is wrong with them.</summary>
internal readonly ref struct RowFields(DelimitedTable table, DelimitedRow row, ProblemList problems)
{
    private readonly DelimitedTable _table = table;
    private readonly DelimitedRow _row = row;
    private readonly ProblemList _problems = problems;

    public long ProblemCount => _problems.Total;

    public void Problem(string column, string message) => _problems.Add(new Problem(_row.Line, column, message));

    /// <summary>Whether the table has a column.</summary>
    public bool HasColumn(string column) => _table.Find(column) >= 0;

    /// <summary>The field as it stands in the text of the row.</summary>
    public ReadOnlySpan<char> Field(string column) => _row[_table.Find(column)];

    /// <summary>The field as text; empty where it is blank or the column is absent.</summary>
    public string Word(string column) => _row[_table.Find(column)].ToString();

    public string Required(string column)
    {
        string word = Word(column);
        if (word.Length == 0)
            Problem(column, "the field is empty");
        return word;
    }

    /// <summary>A number in invariant form, or <see langword="null"/> where the field is blank or wrong; wrong is noted.</summary>
    public double? Number(string column, double low, double high)
    {
        ReadOnlySpan<char> field = _row[_table.Find(column)];
        if (field.IsEmpty)
            return null;
        if (double.TryParse(field, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture,
            out double value)
            && value >= low && value <= high)
            return value;
        Problem(column, string.Create(CultureInfo.InvariantCulture,
            $"{Excerpt.Of(field)} is not a number from {low:R} to {high:R} with a decimal point"));
        return null;
    }

    /// <summary>A number that must be there; what is blank or wrong is noted, and 0 given.</summary>
    public double RequiredNumber(string column, double low, double high) =>
        Required(column).Length == 0 ? 0 : Number(column, low, high) ?? 0;

    /// <summary>
    /// The spread in the columns <c>low</c>, <c>likely</c> and <c>high</c>, with what the kind of evidence of its ends makes of it; a blank
    /// low or high is the likely one.
    /// </summary>
    public Spread Spread(double lowest, double highest, Evidence ends)
    {
        double likely = RequiredNumber("likely", lowest, highest);
        return new Spread(Number("low", lowest, highest) ?? likely, likely, Number("high", lowest, highest) ?? likely,
            ends.BasisOfRange());
    }

    /// <summary>
    /// A value of an enum by its word, such as <c>sugar-per-white</c>; a word that is none is noted, and the first value given.
    /// </summary>
    public T Enum<T>(string column) where T : struct, Enum
    {
        string word = Required(column);
        T value = default;
        if (word.Length > 0 && !EnumWords.TryRead(word, StringComparison.OrdinalIgnoreCase, out value))
            Problem(column, EnumWords.NoneOf<T>(word));
        return value;
    }

    /// <summary>A source and a kind of evidence. A source that the bibliography does not list is taken as your own citation.</summary>
    public Provenance Provenance(string sourceColumn, string kindColumn, string locator, string note)
    {
        string key = Required(sourceColumn);
        if (!Bibliography.TryGet(key, out Source? source))
            source = new Source(key, key, key, "", "", "named by the table it came with");
        if (!EvidenceText.TryRead(Word(kindColumn), out Evidence evidence))
        {
            Problem(kindColumn, $"{Excerpt.Of(Word(kindColumn))} is not a kind of evidence; expected one of: "
                + string.Join(", ", System.Enum.GetValues<Evidence>().Select(known => known.ToWord())));
        }
        return new Provenance(source, evidence, locator, note);
    }
}
