using System.Text.Json;
using System.Globalization;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>What vetting found in a conversion table.</summary>
public sealed class TableVerdict
{
    internal TableVerdict(SystemFinding? system, IReadOnlyList<RowFinding> rows, IReadOnlyList<Problem> problems, string grid,
        string layout, bool readable)
    {
        System = system;
        Rows = rows;
        Problems = problems;
        RoundingGrid = grid;
        Layout = layout;
        IsReadable = readable;
    }

    /// <summary>Which measuring system the table uses; <see langword="null"/> where no row is a volume of something known.</summary>
    public SystemFinding? System { get; }

    /// <summary>The rows that could be read, in the order of the table.</summary>
    public IReadOnlyList<RowFinding> Rows { get; }

    /// <summary>What could not be read, with its line and column.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>
    /// The grid that the printed masses keep to beyond their digits, such as <c>5 g</c> or <c>1/4 oz</c>; empty where they keep to none.
    /// </summary>
    public string RoundingGrid { get; }

    /// <summary>How the document was understood, in a sentence or two; empty where no row could be read.</summary>
    public string Layout { get; }

    /// <summary>Whether at least one row could be read.</summary>
    public bool IsReadable { get; }

    /// <summary>How many rows got a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    public int Count(Verdict verdict) => Rows.Count(row => row.Verdict == verdict);

    /// <summary>The rows that are wrong or impossible, in the order of the table.</summary>
    public IReadOnlyList<RowFinding> Wrong => [.. Rows.Where(row => row.Verdict is Verdict.Wrong or Verdict.Impossible)];

    /// <summary>Whether any row is wrong or impossible.</summary>
    public bool HasMistakes => Rows.Any(row => row.Verdict is Verdict.Wrong or Verdict.Impossible);

    /// <summary>How many rows, and how many of them are wrong, such as <c>30 rows, 8 wrong, 0 not read</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Rows.Count} rows, {Wrong.Count} wrong, {Problems.Count} not read whole");

    /// <summary>Writes the verdict as one JSON object, for other programs. The form is described in docs/guide/vetting.md.</summary>
    /// <param name="writer">Where the object goes.</param>
    /// <exception cref="ArgumentNullException"><paramref name="writer"/> is null.</exception>
    public void WriteTo(Utf8JsonWriter writer) => VerdictJson.Write(this, writer);
}
