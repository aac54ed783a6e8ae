using System.ComponentModel;
using System.Text.Json;
using System.Text.Json.Serialization;
using Confectio.Text;

namespace Confectio.Measures;

/// <summary>
/// An amount as JSON: the text that it writes and reads, <c>"1 1/2 cups"</c>. Public, because code that the serialiser generates makes one.
/// </summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public sealed class AmountJsonConverter : JsonConverter<Amount>
{
    /// <inheritdoc/>
    public override Amount Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        ValueJson.ReadText<Amount>(ref reader);

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Amount value, JsonSerializerOptions options) =>
        Guard.NotNull(writer).WriteStringValue(value.ToString());
}
