using System.Globalization;

namespace Confectio.Text;

/// <summary>Something a reader could not use, and where it stood. A problem with one row never hides the other rows.</summary>
public sealed class TableProblem
{
    private readonly string? _message;
    private readonly long _more;

    internal TableProblem(int line, string? column, string message)
    {
        Line = line;
        Column = column;
        _message = message;
    }

    /// <summary>Stands for so many more that are not listed.</summary>
    internal TableProblem(int line, long more)
    {
        Line = line;
        _more = more;
    }

    /// <summary>The line of the text, counted from 1; the header is line 1 unless empty lines stand before it.</summary>
    public int Line { get; }

    /// <summary>The name of the column, or <see langword="null"/> when the whole line is meant.</summary>
    public string? Column { get; }

    /// <summary>What was read, and what was expected.</summary>
    public string Message => _message ?? ProblemList.WordsFor(_more);

    /// <summary>The problem in one line, such as <c>line 4, column grams: '-3' is not a mass above 0</c>.</summary>
    public override string ToString() => Column is null
        ? string.Create(CultureInfo.InvariantCulture, $"line {Line}: {Message}")
        : string.Create(CultureInfo.InvariantCulture, $"line {Line}, column {Column}: {Message}");
}
