using System.ComponentModel;
using System.Text.Json;
using System.Text.Json.Serialization;
using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>A length as JSON: <c>{"centimetres":20.32}</c>. Public, because code that the serialiser generates makes one.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public sealed class CakeLengthJsonConverter : JsonConverter<CakeLength>
{
    /// <inheritdoc/>
    public override CakeLength Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        ValueJson.ReadNumber(ref reader, "centimetres", CakeLength.FromCentimetres);

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, CakeLength value, JsonSerializerOptions options) =>
        ValueJson.WriteNumber(Guard.NotNull(writer), "centimetres", value.Centimetres);
}
