using System.ComponentModel;
using System.Text.Json;
using System.Text.Json.Serialization;
using Confectio.Text;

namespace Confectio.Sugars;

/// <summary>A pressure as JSON: <c>{"kilopascals":84}</c>. Public, because code that the serialiser generates makes one.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public sealed class AirPressureJsonConverter : JsonConverter<AirPressure>
{
    /// <inheritdoc/>
    public override AirPressure Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        ValueJson.ReadNumber(ref reader, "kilopascals", AirPressure.FromKilopascals);

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, AirPressure value, JsonSerializerOptions options) =>
        ValueJson.WriteNumber(Guard.NotNull(writer), "kilopascals", value.Kilopascals);
}
