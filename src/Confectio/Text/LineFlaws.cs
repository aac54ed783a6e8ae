using System.Globalization;

namespace Confectio.Text;

/// <summary>What can be wrong with a line before anything on it is read, in the words that every reader of lines has for it.</summary>
internal static class LineFlaws
{
    public const string OpenQuote = "a quotation mark is not closed on its line; it was read as if it closed at the end of the line";

    public const string Garbled = "the line holds U+FFFD, which stands for bytes that are no text in the encoding it was read with; save "
        + "the table as UTF-8";

    public static string Cut { get; } = string.Create(CultureInfo.InvariantCulture,
        $"the line is longer than {LineGuard.LongestLine} characters; the rest of it was not read");
}
