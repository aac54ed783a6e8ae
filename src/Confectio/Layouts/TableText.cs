using System.Globalization;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Layouts;

/// <summary>
/// A conversion table as people print, type and export it, read into rows with their places: delimited text with any heading or none, a
/// column for each measure, aligned columns, typed lines, lists, Markdown, HTML; cups per pound as well as pounds per cup.
/// </summary>
/// <remarks>
/// Nothing is guessed in silence: <see cref="Layout"/> says how the document was understood, and what could not be read stands among the
/// problems of the reading with its line. Titles, headings and notes that hold no amount are no rows and no problems.
/// Worked example: <c>TableText.Read("Honey   1 cup = 340 g")</c> has one row, 1 cup of honey.
/// </remarks>
public sealed class TableText
{
    internal TableText(IReadOnlyList<TableEntry> rows, string layout, string? encoding, AmountReading reading,
        IReadOnlyList<StatedMeasure> measures)
    {
        Rows = rows;
        Layout = layout;
        Encoding = encoding;
        Decimals = reading;
        StatedMeasures = measures;
    }

    /// <summary>The rows, in the order of the document.</summary>
    public IReadOnlyList<TableEntry> Rows { get; }

    /// <summary>How the document was understood, in a sentence or two.</summary>
    public string Layout { get; }

    /// <summary>The encoding in which the bytes were found to be; <see langword="null"/> where the text came as text.</summary>
    public string? Encoding { get; }

    /// <summary>Whether its numbers have a decimal point or a decimal comma; a point where none has either.</summary>
    public AmountReading Decimals { get; }

    /// <summary>What the document itself says its measures hold, such as <c>1 cup = 250 mL</c>.</summary>
    public IReadOnlyList<StatedMeasure> StatedMeasures { get; }

    /// <summary>Reads a document from its bytes; the encoding is found out and said.</summary>
    /// <param name="document">The bytes: UTF-8, UTF-16 or Windows-1252.</param>
    /// <param name="decimals">Whether decimals have a point or a comma; <see langword="null"/> to find out.</param>
    /// <returns>The table and what of it could not be read; no table where no row could be.</returns>
    public static Reading<TableText> Read(ReadOnlySpan<byte> document, AmountReading? decimals = null)
    {
        DecodedText decoded = DecodedText.Of(document);
        return TableReader.Read(decoded.Text, decoded, decimals);
    }

    /// <summary>Reads a document.</summary>
    /// <param name="document">The text.</param>
    /// <param name="decimals">Whether decimals have a point or a comma; <see langword="null"/> to find out.</param>
    /// <returns>The table and what of it could not be read; no table where no row could be.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="document"/> is null.</exception>
    public static Reading<TableText> Read(string document, AmountReading? decimals = null) =>
        TableReader.Read(Guard.NotNull(document), null, decimals);

    /// <summary>How many rows, and the layout.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Rows.Count} {(Rows.Count == 1 ? "row" : "rows")}. {Layout}");
}
