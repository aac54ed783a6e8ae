using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;

namespace Confectio.Text;

/// <summary>What came of reading a document: the value, or none, and every problem with its place.</summary>
/// <typeparam name="T">What was to be read.</typeparam>
/// <remarks>
/// Nothing is thrown for what stands in a document of a stranger. Whoever wants an exception calls <see cref="OrThrow"/>; whoever writes an
/// editor shows the <see cref="Problems"/>.
/// </remarks>
public sealed class Reading<T> where T : notnull
{
    private const int MostTold = 20;

    private readonly T? _value;
    private readonly string _lead;

    internal Reading(T value, string lead, IReadOnlyList<Problem> problems, long total)
        : this(true, value, lead, problems, total)
    {
    }

    // The default of a value type is a value like another: 0 g is not nothing, so that whether there is one is kept apart.
    private Reading(bool hasValue, T? value, string lead, IReadOnlyList<Problem> problems, long total) =>
        (HasValue, _value, _lead, Problems, TotalProblems) = (hasValue, value, lead, problems, total);

    internal static Reading<T> None(string lead, IReadOnlyList<Problem> problems, long total) =>
        new(false, default, lead, problems, total);

    /// <summary>Whether there is a value.</summary>
    public bool HasValue { get; }

    /// <summary>
    /// The problems, in the order in which they stand in the text: the first 1000, and one that says how many more there are.
    /// </summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>How many problems there are, listed or not.</summary>
    public long TotalProblems { get; }

    /// <summary>The value, where there is one.</summary>
    /// <param name="value">The value.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGet([NotNullWhen(true)] out T? value)
    {
        value = _value;
        return HasValue;
    }

    /// <summary>
    /// The value; an exception with the problems where there are any, even such as a value was read in spite of: for those there is
    /// <see cref="TryGet"/>.
    /// </summary>
    /// <exception cref="FormatException">There are problems; the message has the first 20 with their places, and how many more there
    /// are.</exception>
    public T OrThrow() => HasValue && TotalProblems == 0 ? _value! : throw new FormatException(ToString());

    /// <summary>The value as text where it was read, otherwise all of it that <see cref="OrThrow"/> would say.</summary>
    public override string ToString()
    {
        if (HasValue && TotalProblems == 0)
            return _value!.ToString() ?? "";
        StringBuilder text = new(_lead);
        text.Append(": ");
        for (int i = 0; i < Problems.Count && i < MostTold; i++)
            text.Append(i > 0 ? "; " : "").Append(Problems[i].Line == 0
                ? "" : $"at {Problems[i].Place}, ").Append(Problems[i].Message.TrimEnd('.'));
        if (TotalProblems > MostTold)
            text.Append(CultureInfo.InvariantCulture, $"; and {TotalProblems - MostTold} more");
        return text.Append('.').ToString();
    }
}
