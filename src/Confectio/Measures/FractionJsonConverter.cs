using System.ComponentModel;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Confectio.Measures;

/// <summary>
/// A fraction as JSON: <c>"3/2"</c> or <c>"2"</c>; a whole number may be a number. Public, because code that the serialiser generates
/// makes one.
/// </summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public sealed class FractionJsonConverter : JsonConverter<Fraction>
{
    /// <inheritdoc/>
    public override Fraction Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.Number && reader.TryGetInt64(out long number))
            return new Fraction(number, 1);
        string[] parts = reader.TokenType == JsonTokenType.String ? reader.GetString()!.Split('/') : [];
        return parts.Length is 1 or 2 && TryWhole(parts[0], NumberStyles.AllowLeadingSign, out long numerator)
            && TryWhole(parts.Length == 2 ? parts[1] : "1", NumberStyles.None, out long denominator) && denominator > 0
            ? new Fraction(numerator, denominator)
            : throw new JsonException("A fraction such as \"3/2\" was expected.");
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Fraction value, JsonSerializerOptions options) =>
        Guard.NotNull(writer).WriteStringValue(value.ToString());

    private static bool TryWhole(string text, NumberStyles style, out long whole) =>
        long.TryParse(text, style, CultureInfo.InvariantCulture, out whole);
}
