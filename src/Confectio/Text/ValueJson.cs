using System.Text.Json;

namespace Confectio.Text;

/// <summary>How the value types write themselves as JSON and read themselves back to the last bit.</summary>
internal static class ValueJson
{
    /// <summary>One number whose member names the unit, <c>{"kilopascals":84}</c>, so that nobody has to guess it.</summary>
    public static T ReadNumber<T>(ref Utf8JsonReader reader, string member, Func<double, T> make)
    {
        if (reader.TokenType != JsonTokenType.StartObject || !reader.Read() || reader.TokenType != JsonTokenType.PropertyName
            || !reader.ValueTextEquals(member)
            || !reader.Read() || reader.TokenType != JsonTokenType.Number)
            throw Expected(member);
        double value = reader.GetDouble();
        if (!reader.Read() || reader.TokenType != JsonTokenType.EndObject)
            throw Expected(member);
        try
        {
            return make(value);
        }
        catch (ArgumentOutOfRangeException refused)
        {
            throw new JsonException(refused.Message, refused);
        }
    }

    public static void WriteNumber(Utf8JsonWriter writer, string member, double value)
    {
        writer.WriteStartObject();
        writer.WriteNumber(member, value);
        writer.WriteEndObject();
    }

    /// <summary>The text that the type writes and reads itself.</summary>
    public static T ReadText<T>(ref Utf8JsonReader reader) where T : struct, ISpanParsable<T>
    {
        string? text = reader.TokenType == JsonTokenType.String ? reader.GetString() : null;
        return T.TryParse(text, null, out T value) ? value : throw new JsonException(text is null ? "A text was expected."
            : $"{Excerpt.Of(text)} cannot be read.");
    }

    private static JsonException Expected(string member) => new($$"""An object such as {"{{member}}":1} was expected.""");
}
