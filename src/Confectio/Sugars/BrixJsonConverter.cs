using System.ComponentModel;
using System.Text.Json;
using System.Text.Json.Serialization;
using Confectio.Text;

namespace Confectio.Sugars;

/// <summary>A strength as JSON: <c>{"brix":62.5}</c>. Public, because code that the serialiser generates makes one.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public sealed class BrixJsonConverter : JsonConverter<Brix>
{
    /// <inheritdoc/>
    public override Brix Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        ValueJson.ReadNumber(ref reader, "brix", Brix.FromPercent);

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Brix value, JsonSerializerOptions options) =>
        ValueJson.WriteNumber(Guard.NotNull(writer), "brix", value.Percent);
}
