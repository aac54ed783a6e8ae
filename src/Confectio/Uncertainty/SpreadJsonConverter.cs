using System.ComponentModel;
using System.Text.Json;
using System.Text.Json.Serialization;
using Confectio.Text;

namespace Confectio.Uncertainty;

/// <summary>
/// A spread as JSON: <c>{"likely":146.2,"low":129.6,"high":164.9,"standardUncertainty":8.8,"basis":"coverage"}</c>, and a plain number for
/// one that is exact. Every double is written so that it reads back the same. Public, because code that the serialiser generates makes one.
/// </summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public sealed class SpreadJsonConverter : JsonConverter<Spread>
{
    /// <inheritdoc/>
    public override Spread Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.Number)
            return reader.GetDouble() is double exact && Math.Abs(exact) <= 1e300 ? Spread.Exactly(exact)
                : throw new JsonException("A number from -1e300 to 1e300 was expected.");
        if (reader.TokenType != JsonTokenType.StartObject)
            throw new JsonException("A number, or an object with likely, low and high was expected.");
        double? likely = null, low = null, high = null, u = null;
        SpreadBasis basis = SpreadBasis.Sources;
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            string? member = reader.GetString();
            reader.Read();
            switch (member)
            {
                case "likely":
                    likely = reader.GetDouble();
                    break;
                case "low":
                    low = reader.GetDouble();
                    break;
                case "high":
                    high = reader.GetDouble();
                    break;
                case "standardUncertainty":
                    u = reader.GetDouble();
                    break;
                case "basis":
                    if (!EnumWords.TryRead(reader.GetString() ?? "", StringComparison.Ordinal, out basis))
                        throw new JsonException("basis: one of exact, coverage, sources, models, judged was expected.");
                    break;
                default:
                    throw new JsonException("A spread has the members likely, low, high, standardUncertainty and basis.");
            }
        }
        if (likely is not double middle)
            throw new JsonException("likely is missing.");
        double bottom = low ?? middle, top = high ?? middle;
        if (!(bottom <= middle && middle <= top) || u is < 0 || !double.IsFinite(top - bottom))
            throw new JsonException("low, likely and high must be finite and rise, and standardUncertainty must be 0 or more.");
        double standard = u ?? (top - bottom) / 4;
        return basis == SpreadBasis.Exact && (bottom < top || standard > 0) ? throw new JsonException("What is exact has no width.")
            : new Spread(bottom, middle, top, standard, basis);
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Spread value, JsonSerializerOptions options)
    {
        Guard.NotNull(writer);
        if (value.Basis == SpreadBasis.Exact)
        {
            writer.WriteNumberValue(value.Likely);
            return;
        }
        writer.WriteStartObject();
        writer.WriteNumber("likely", value.Likely);
        writer.WriteNumber("low", value.Low);
        writer.WriteNumber("high", value.High);
        writer.WriteNumber("standardUncertainty", value.StandardUncertainty);
        writer.WriteString("basis", EnumWords.Of(value.Basis, '-'));
        writer.WriteEndObject();
    }
}
