using System.Text.Json;
using System.Globalization;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>What vetting found in a temperature table.</summary>
public sealed class TemperatureVerdict
{
    internal TemperatureVerdict(IReadOnlyList<TemperatureFinding> rows, IReadOnlyList<Problem> problems, bool readable, bool namesEgg)
    {
        Rows = rows;
        Problems = problems;
        IsReadable = readable;
        NamesEgg = namesEgg;
    }

    /// <summary>The rows that could be read, in the order of the table.</summary>
    public IReadOnlyList<TemperatureFinding> Rows { get; }

    /// <summary>What could not be read, with its line and column.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>Whether the header was understood and at least one row could be read.</summary>
    public bool IsReadable { get; }

    /// <summary>
    /// Whether a row names egg, or a food made with it, whether or not the rest of that row could be read: a name of an ingredient of the
    /// built-in table that contains egg, or often does; <c>egg</c>, <c>yolk</c> or <c>whites</c>; or a dish that is usually made with egg
    /// (our list, common practice), such as <c>custard</c>.
    /// </summary>
    /// <remarks>
    /// No is not known from it: a dish that is not in the list may have egg in it, and the table does not say. A name of
    /// <c>egg-free custard</c> counts too.
    /// </remarks>
    public bool NamesEgg { get; }

    /// <summary>How many rows got a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    public int Count(Verdict verdict) => Rows.Count(row => row.Verdict == verdict);

    /// <summary>Whether any row is wrong or impossible.</summary>
    public bool HasMistakes => Rows.Any(row => row.Verdict is Verdict.Wrong or Verdict.Impossible);

    /// <summary>How many rows, and how many of them are wrong.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Rows.Count} rows, "
        + $"{Rows.Count(row => row.Verdict is Verdict.Wrong or Verdict.Impossible)} wrong, {Problems.Count} not read whole");

    /// <summary>Writes the verdict as one JSON object, for other programs. The form is described in docs/guide/vetting.md.</summary>
    /// <param name="writer">Where the object goes.</param>
    /// <exception cref="ArgumentNullException"><paramref name="writer"/> is null.</exception>
    public void WriteTo(Utf8JsonWriter writer) => VerdictJson.Write(this, writer);
}
