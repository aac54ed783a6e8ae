using System.Globalization;

namespace Confectio.Text;

/// <summary>
/// Something a reader could not use, or found odd, and where it stood: the line and column of a table, or the line, character and path of a
/// JSON text. A problem with one row never hides the other rows.
/// </summary>
public sealed class Problem
{
    private readonly string? _message;
    private readonly long _more;

    internal Problem(int line, string? column, string message, string? code = null)
    {
        Line = line;
        Column = column;
        _message = message;
        Code = code ?? (column is null ? ProblemCodes.Row : ProblemCodes.Field);
    }

    /// <summary>A problem of a JSON text.</summary>
    internal Problem(int line, int character, string? path, string code, string message)
    {
        Line = line;
        Character = character;
        Path = path;
        Code = code;
        _message = message.TrimEnd('.');
    }

    /// <summary>Stands for so many more that are not listed.</summary>
    internal Problem(int line, long more)
    {
        Line = line;
        Code = ProblemCodes.More;
        _more = more;
    }

    /// <summary>
    /// The line of the text, counted from 1; the header of a table is line 1 unless empty lines stand before it. 0 where no line is meant.
    /// </summary>
    public int Line { get; }

    /// <summary>The name of the column of a table, or <see langword="null"/> when the whole line is meant.</summary>
    public string? Column { get; }

    /// <summary>The character of the line at which it stands, counted from 1, in JSON; 0 where only the line is known.</summary>
    public int Character { get; }

    /// <summary>The path in JSON, such as <c>$.lines[2].grams</c>; <see langword="null"/> elsewhere.</summary>
    public string? Path { get; }

    /// <summary>
    /// What kind of problem it is, in a word that stays when the sentence is put better: of a table <c>row</c>, <c>field</c> or
    /// <c>more</c>; of a log also <c>gap</c>; of JSON <c>not-json</c>, <c>too-long</c>, <c>wrong-type</c>, <c>missing</c>,
    /// <c>unknown-member</c>, <c>wrong-version</c>, <c>too-many</c>, <c>unknown-name</c> or <c>wrong-value</c>.
    /// </summary>
    public string Code { get; }

    /// <summary>What was read, and what was expected.</summary>
    public string Message => _message ?? ProblemList.WordsFor(_more);

    /// <summary>Where it stands, such as <c>line 4, column 21 ($.name)</c>; empty where no line is meant.</summary>
    internal string Place
    {
        get
        {
            string column = Character > 0 ? Character.ToString(CultureInfo.InvariantCulture) : Column ?? "";
            return Line == 0 ? "" : string.Create(CultureInfo.InvariantCulture,
                $"line {Line}{(column.Length == 0 ? "" : ", column ")}{column}{(Path is null ? "" : $" ({Path})")}");
        }
    }

    /// <summary>
    /// The problem in one line, such as <c>line 4, column grams: '-3' is not a mass above 0</c>, or <c>line 4, column 21 ($.name): ...</c>.
    /// </summary>
    public override string ToString() => Line == 0 ? Message : $"{Place}: {Message}";
}
