using System.Text;

namespace Confectio.Layouts;

/// <summary>
/// The text that some bytes hold, and in which encoding it was found: UTF-8 or UTF-16 by their mark, UTF-16 by its zero bytes, UTF-8 where
/// every byte obeys its rules, and Windows-1252, in which every byte is a character, where they do not.
/// </summary>
internal readonly record struct DecodedText(string Text, string Encoding, bool IsAssumed)
{
    private static readonly UTF8Encoding s_strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static DecodedText Of(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
            return new(System.Text.Encoding.UTF8.GetString(bytes[3..]), "UTF-8", false);
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
            return new(System.Text.Encoding.Unicode.GetString(bytes[2..]), "UTF-16", false);
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            return new(System.Text.Encoding.BigEndianUnicode.GetString(bytes[2..]), "UTF-16", false);
        if (UnmarkedUtf16(bytes) is { } unmarked)
            return new(unmarked.GetString(bytes), "UTF-16", true);
        try
        {
            return new(s_strict.GetString(bytes), "UTF-8", false);
        }
        catch (DecoderFallbackException)
        {
            return new(CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetString(bytes), "Windows-1252", true);
        }
    }

    /// <summary>Latin letters in UTF-16 leave every other byte zero; no other text does.</summary>
    private static Encoding? UnmarkedUtf16(ReadOnlySpan<byte> bytes)
    {
        ReadOnlySpan<byte> start = bytes[..Math.Min(bytes.Length & ~1, 4096)];
        int even = 0, odd = 0;
        for (int i = 0; i < start.Length; i += 2)
        {
            even += start[i] == 0 ? 1 : 0;
            odd += start[i + 1] == 0 ? 1 : 0;
        }
        int most = start.Length / 2 * 3 / 4;
        return start.Length < 8 ? null : odd > most && even == 0 ? System.Text.Encoding.Unicode
            : even > most && odd == 0 ? System.Text.Encoding.BigEndianUnicode : null;
    }
}
