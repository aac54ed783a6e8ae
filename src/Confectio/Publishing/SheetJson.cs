using System.Text.Json;
using Confectio.Text;

namespace Confectio.Publishing;

/// <summary>JSON that may stand in a page: what could end a script element there, and all that is not ASCII, is escaped.</summary>
internal static class SheetJson
{
    /// <summary>A member that is a list of texts.</summary>
    public static void Texts(Utf8JsonWriter writer, string name, IEnumerable<string> texts)
    {
        writer.WriteStartArray(name);
        foreach (string text in texts)
            writer.WriteStringValue(text);
        writer.WriteEndArray();
    }

    public static string Write(Action<Utf8JsonWriter> write) => IndentedJson.Write(write) + "\n";
}
