namespace Confectio.Tests.Properties;

/// <summary>Calls the parsing interfaces, which our types implement explicitly.</summary>
internal static class Interfaces
{
    public static T Parse<T>(string text, IFormatProvider? provider) where T : IParsable<T> => T.Parse(text, provider);

    public static T ParseSpan<T>(ReadOnlySpan<char> text, IFormatProvider? provider) where T : ISpanParsable<T> => T.Parse(text, provider);

    public static bool TryParse<T>(string? text, IFormatProvider? provider, out T value) where T : IParsable<T> => T.TryParse(text, provider, out value!);

    public static bool TryParseSpan<T>(ReadOnlySpan<char> text, IFormatProvider? provider, out T value) where T : ISpanParsable<T> =>
        T.TryParse(text, provider, out value!);
}
