using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;

namespace Confectio.Text;

/// <summary>
/// Stands between a JSON text of a stranger and the generated readers: refuses what they would take too much of or take silently,
/// and says of every refusal where it stands.
/// </summary>
internal static class JsonGuard
{
    private const int MostMistakes = 20;

    /// <summary>Reads a text from its bytes to what it stands for, and refuses it with all that is wrong.</summary>
    /// <param name="utf8">The text; it may begin with a byte-order mark.</param>
    /// <param name="maxDepth">How many arrays and objects may stand inside one another.</param>
    /// <param name="maxBytes">How long the text may be.</param>
    /// <param name="what">What it should be, such as <c>a formula</c>.</param>
    /// <param name="type">The generated reader.</param>
    /// <param name="expected">What is expected of a path, as a sentence.</param>
    /// <param name="build">Makes it of the document and notes mistakes, by path; what it makes beside a mistake is dropped.</param>
    /// <exception cref="FormatException">The text is refused; the message says where and why.</exception>
    public static TMade Read<TDocument, TMade>(ReadOnlySpan<byte> utf8, int maxDepth, int maxBytes, string what, JsonTypeInfo<TDocument> type, Func<string, string> expected,
        Func<TDocument, List<(string Path, string Message)>, TMade?> build) where TDocument : class, new() where TMade : class
    {
        utf8 = WithoutMark(utf8);
        Check(utf8, maxDepth, maxBytes, what);
        TDocument document = Deserialize(utf8, type, what, expected) ?? new TDocument();
        List<(string Path, string Message)> mistakes = [];
        return build(document, mistakes) is TMade made && mistakes.Count == 0 ? made : throw Mistakes(utf8, what, mistakes);
    }

    /// <summary>
    /// Refuses a text that is too long, is not UTF-8, is not JSON (comments and trailing commas are not), goes too deep, names a
    /// member twice in one object, or has a number beyond the range of double.
    /// </summary>
    /// <param name="utf8">The text.</param>
    /// <param name="maxDepth">How many arrays and objects may stand inside one another.</param>
    /// <param name="maxBytes">How long the text may be.</param>
    /// <param name="what">What it should be, such as <c>a formula</c>.</param>
    /// <exception cref="FormatException">The text is refused; the message says where and why.</exception>
    private static void Check(ReadOnlySpan<byte> utf8, int maxDepth, int maxBytes, string what)
    {
        if (utf8.Length > maxBytes)
            throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"This cannot be read as {what}: it is longer than {maxBytes} bytes."));
        if (!Utf8.IsValid(utf8))
            throw Refusal(utf8, what, FirstInvalid(utf8), null, "the bytes are not UTF-8");
        JsonWalker walker = new(utf8, maxDepth);
        try
        {
            while (walker.Read())
            {
            }
        }
        catch (JsonException e)
        {
            // The reader of the platform has a place of its own; ours is where the token begins.
            int offset = e.LineNumber is long line ? OffsetOf(utf8, line, e.BytePositionInLine ?? 0) : (int)walker.Offset;
            throw Refusal(utf8, what, offset, walker.Path, Reason(e));
        }
    }

    /// <summary>Reads a text that <see cref="Check"/> has let pass.</summary>
    /// <param name="utf8">The text.</param>
    /// <param name="type">The generated reader.</param>
    /// <param name="what">What it should be, such as <c>a formula</c>.</param>
    /// <param name="expected">What is expected of a path, as a sentence; <see langword="null"/> where the path has no such member.</param>
    /// <exception cref="FormatException">A member has the wrong type, or is not known; the message says where.</exception>
    private static T? Deserialize<T>(ReadOnlySpan<byte> utf8, JsonTypeInfo<T> type, string what, Func<string, string> expected)
    {
        try
        {
            return JsonSerializer.Deserialize(utf8, type);
        }
        catch (JsonException e)
        {
            (string path, int offset) = LastBefore(utf8, OffsetOf(utf8, e.LineNumber ?? 0, e.BytePositionInLine ?? 0));
            throw Refusal(utf8, what, offset, path, expected(path));
        }
    }

    /// <summary>The exception for what cannot be used though it could be read: every mistake with its place, at most 20.</summary>
    /// <param name="utf8">The text.</param>
    /// <param name="what">What it should be, such as <c>a formula</c>.</param>
    /// <param name="mistakes">The path of each mistake, and what is wrong there.</param>
    private static FormatException Mistakes(ReadOnlySpan<byte> utf8, string what, List<(string Path, string Message)> mistakes)
    {
        Dictionary<string, int> offsets = mistakes.Take(MostMistakes).Select(mistake => mistake.Path).Distinct().ToDictionary(path => path, _ => 0);
        JsonWalker walker = new(utf8, 0);
        int missing = offsets.Count;
        while (missing > 0 && walker.Read())
        {
            if (walker.IsValue && walker.Path is string path && offsets.ContainsKey(path))
            {
                offsets[path] = (int)walker.Offset;
                missing--;
            }
        }
        StringBuilder message = new($"This cannot be used as {what}: ");
        for (int i = 0; i < mistakes.Count && i < MostMistakes; i++)
            message.Append(i > 0 ? "; " : "").Append(Place(utf8, offsets[mistakes[i].Path], mistakes[i].Path)).Append(mistakes[i].Message.TrimEnd('.'));
        if (mistakes.Count > MostMistakes)
            message.Append(CultureInfo.InvariantCulture, $"; and {mistakes.Count - MostMistakes} more");
        return new FormatException(message.Append('.').ToString());
    }

    /// <summary>The text without the byte-order mark that some editors put before it.</summary>
    private static ReadOnlySpan<byte> WithoutMark(ReadOnlySpan<byte> utf8) => utf8.StartsWith(Encoding.UTF8.Preamble) ? utf8[Encoding.UTF8.Preamble.Length..] : utf8;

    private static FormatException Refusal(ReadOnlySpan<byte> utf8, string what, int offset, string? path, string reason) =>
        new($"This cannot be read as {what}: {Place(utf8, offset, path)}{reason.TrimEnd('.')}.");

    private static string Place(ReadOnlySpan<byte> utf8, int offset, string? path)
    {
        ReadOnlySpan<byte> before = utf8[..Math.Min(offset, utf8.Length)];
        int line = before.Count((byte)'\n') + 1, column = Encoding.UTF8.GetCharCount(before[(before.LastIndexOf((byte)'\n') + 1)..]) + 1;
        return string.Create(CultureInfo.InvariantCulture, $"at line {line}, column {column}{(path is null ? "" : $" ({path})")}, ");
    }

    // The platform says how far it had read: the token that ends there is the one it would not take.
    private static (string Path, int Offset) LastBefore(ReadOnlySpan<byte> utf8, int end)
    {
        int tokens = 0;
        for (JsonWalker ahead = new(utf8, 0); ahead.Read() && ahead.Offset < end;)
            tokens++;
        JsonWalker walker = new(utf8, 0);
        while (tokens-- > 0)
            walker.Read();
        return (walker.Path, (int)walker.Offset);
    }

    private static int OffsetOf(ReadOnlySpan<byte> utf8, long line, long byteInLine)
    {
        int offset = 0;
        for (; line > 0 && utf8[offset..].IndexOf((byte)'\n') is int end and >= 0; line--)
            offset += end + 1;
        return offset + (int)byteInLine;
    }

    private static int FirstInvalid(ReadOnlySpan<byte> utf8)
    {
        int offset = 0;
        while (Rune.DecodeFromUtf8(utf8[offset..], out _, out int length) == System.Buffers.OperationStatus.Done)
            offset += length;
        return offset;
    }

    // The platform adds its own words for the place.
    private static string Reason(JsonException e) => e.Message.Split(" LineNumber:")[0];
}
