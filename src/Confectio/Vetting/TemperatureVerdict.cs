using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>What vetting found in a temperature table.</summary>
public sealed class TemperatureVerdict
{
    internal TemperatureVerdict(IReadOnlyList<TemperatureFinding> rows, IReadOnlyList<TableProblem> problems, bool readable)
    {
        Rows = rows;
        Problems = problems;
        IsReadable = readable;
    }

    /// <summary>The rows that could be read, in the order of the table.</summary>
    public IReadOnlyList<TemperatureFinding> Rows { get; }

    /// <summary>What could not be read, with its line and column.</summary>
    public IReadOnlyList<TableProblem> Problems { get; }

    /// <summary>Whether the header was understood and at least one row could be read.</summary>
    public bool IsReadable { get; }

    /// <summary>How many rows got a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    public int Count(Verdict verdict) => Rows.Count(row => row.Verdict == verdict);

    /// <summary>Whether any row is wrong or impossible.</summary>
    public bool HasMistakes => Rows.Any(row => row.Verdict is Verdict.Wrong or Verdict.Impossible);
}
