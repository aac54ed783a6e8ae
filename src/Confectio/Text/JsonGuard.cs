using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace Confectio.Text;

/// <summary>
/// Stands between a JSON text of a stranger and what is made of it: refuses what would take too much or be taken silently, and says of
/// every problem where it stands.
/// </summary>
internal static class JsonGuard
{
    /// <summary>Reads a text from its bytes to what it stands for, or to all that is wrong with it.</summary>
    /// <param name="utf8">The text; it may begin with a byte-order mark.</param>
    /// <param name="maxDepth">How many arrays and objects may stand inside one another.</param>
    /// <param name="maxBytes">How long the text may be.</param>
    /// <param name="what">What it should be, such as <c>a formula</c>.</param>
    /// <param name="read">Makes it of the outermost object and notes mistakes; what it makes beside a mistake is dropped.</param>
    public static Reading<T> Read<T>(ReadOnlySpan<byte> utf8, int maxDepth, int maxBytes, string what, Func<JsonFields,
        T?> read) where T : class
    {
        // Some editors put a byte-order mark before a text.
        utf8 = utf8.StartsWith(Encoding.UTF8.Preamble) ? utf8[Encoding.UTF8.Preamble.Length..] : utf8;
        if (Refusal(utf8, maxDepth, maxBytes) is Problem refused)
            return Reading<T>.None($"This cannot be read as {what}", [refused], 1);
        Utf8JsonReader reader = new(utf8, new JsonReaderOptions { MaxDepth = maxDepth });
        using JsonDocument document = JsonDocument.ParseValue(ref reader);
        JsonMistakes mistakes = new();
        T? made = JsonFields.Root(document.RootElement, mistakes).Read(read);
        return mistakes.Count == 0 && made is not null ? new Reading<T>(made, "", [], 0)
            : Reading<T>.None($"This cannot be used as {what}", mistakes.Located(utf8), mistakes.Count);
    }

    /// <summary>The text of a member of the outermost object; <see langword="null"/> where there is none, or the text is no JSON.</summary>
    public static string? RawMember(string json, string member)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = 64 });
            return document.RootElement.ValueKind == JsonValueKind.Object && document.RootElement.TryGetProperty(member, out JsonElement value) ? value.GetRawText() : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>A stream to its end, or to a byte more than may be read: that is enough to be refused.</summary>
    public static ReadOnlySpan<byte> Bytes(Stream json, int maxBytes)
    {
        Guard.NotNull(json);
        byte[] buffer = new byte[64 * 1024];
        using MemoryStream all = new();
        while (all.Length <= maxBytes && json.Read(buffer) is int got and > 0)
            all.Write(buffer, 0, got);
        return all.GetBuffer().AsSpan(0, (int)all.Length);
    }

    /// <summary>Where something stands.</summary>
    public static Problem ProblemAt(ReadOnlySpan<byte> utf8, int offset, string? path, string code, string message)
    {
        ReadOnlySpan<byte> before = utf8[..Math.Min(offset, utf8.Length)];
        return new Problem(before.Count((byte)'\n') + 1, Encoding.UTF8.GetCharCount(before[(before.LastIndexOf((byte)'\n') + 1)..]) + 1,
            path, code, message);
    }

    // A text that is too long, is not UTF-8, is not JSON (comments and trailing commas are not), goes too deep, names a member twice in one
    // object, or has a number beyond the range of double.
    private static Problem? Refusal(ReadOnlySpan<byte> utf8, int maxDepth, int maxBytes)
    {
        if (utf8.Length > maxBytes)
            return new Problem(0, 0, null, ProblemCodes.TooLong, string.Create(CultureInfo.InvariantCulture,
                $"it is longer than {maxBytes} bytes"));
        if (!Utf8.IsValid(utf8))
            return ProblemAt(utf8, FirstInvalid(utf8), null, ProblemCodes.NotJson, "the bytes are not UTF-8");
        JsonWalker walker = new(utf8, maxDepth);
        while (walker.Read())
        {
        }
        return walker.Refusal is string why ? ProblemAt(utf8, walker.Offset, walker.Path, ProblemCodes.NotJson, why) : null;
    }

    private static int FirstInvalid(ReadOnlySpan<byte> utf8)
    {
        int offset = 0;
        while (Rune.DecodeFromUtf8(utf8[offset..], out _, out int length) == System.Buffers.OperationStatus.Done)
            offset += length;
        return offset;
    }
}
