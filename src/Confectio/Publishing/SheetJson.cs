using System.Buffers;
using System.Text;
using System.Text.Json;

namespace Confectio.Publishing;

/// <summary>JSON that may stand in a page: what could end a script element there, and all that is not ASCII, is escaped.</summary>
internal static class SheetJson
{
    private static readonly JsonWriterOptions s_writing = new() { Indented = true };

    /// <summary>A member that is a list of texts.</summary>
    public static void Texts(Utf8JsonWriter writer, string name, IEnumerable<string> texts)
    {
        writer.WriteStartArray(name);
        foreach (string text in texts)
            writer.WriteStringValue(text);
        writer.WriteEndArray();
    }

    public static string Write(Action<Utf8JsonWriter> write)
    {
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter writer = new(buffer, s_writing))
            write(writer);
        // The .NET 8 writer knows no line ending but the machine's. Within a text it is escaped, so no other is touched.
        return Encoding.UTF8.GetString(buffer.WrittenSpan).Replace("\r\n", "\n", StringComparison.Ordinal) + "\n";
    }
}
