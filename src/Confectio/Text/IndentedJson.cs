using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Confectio.Text;

/// <summary>JSON for people too: indented, with line feeds on every machine.</summary>
internal static class IndentedJson
{
    /// <summary>What is written, without a line feed at its end.</summary>
    /// <param name="write">Writes one value.</param>
    /// <param name="encoder">What is escaped; what may not stand in a page, and all that is not ASCII, where nothing is said.</param>
    public static string Write(Action<Utf8JsonWriter> write, JavaScriptEncoder? encoder = null)
    {
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter writer = new(buffer, new JsonWriterOptions { Indented = true, Encoder = encoder }))
            write(writer);
        // The .NET 8 writer knows no line ending but the machine's. Within a text it is escaped, so no other is touched.
        return Encoding.UTF8.GetString(buffer.WrittenSpan).Replace("\r\n", "\n", StringComparison.Ordinal);
    }
}
