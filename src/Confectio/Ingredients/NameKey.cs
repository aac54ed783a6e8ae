using System.Buffers;
using System.Globalization;
using System.Text;

namespace Confectio.Ingredients;

/// <summary>Folds a name to the form in which names are compared: lower case, no accents, one space, straight apostrophes.</summary>
internal static class NameKey
{
    /// <summary>Longer texts are not names; what follows is dropped, and the key says so.</summary>
    private const int Longest = 200;

    // Values that need no folding at all; nearly every printed name is one.
    private const string Plain = "abcdefghijklmnopqrstuvwxyz0123456789'&/.()-";

    private static readonly SearchValues<char> s_plain = SearchValues.Create(Plain), s_plainOrSpace = SearchValues.Create(Plain + " ");

    /// <summary>The key; the name itself where it needs no folding, so that a table holds it once.</summary>
    public static string Of(string name)
    {
        bool isKey = name.Length is > 0 and < Longest - 2 && name[0] != ' ' && name[^1] != ' '
            && !name.AsSpan().ContainsAnyExcept(s_plainOrSpace) && !name.Contains("  ", StringComparison.Ordinal);
        return isKey ? name : Of(name.AsSpan());
    }

    public static string Of(ReadOnlySpan<char> name)
    {
        Span<char> folded = stackalloc char[Longest];
        return folded[..Fold(name, folded)].ToString();
    }

    private static int Fold(ReadOnlySpan<char> name, Span<char> folded)
    {
        name = name.Trim();
        int length = 0;
        bool space = false;
        foreach (char c in name)
        {
            // An accent written as a character of its own, as some systems decompose names.
            if (c is >= '\u0300' and <= '\u036F')
                continue;
            if (length >= Longest - 2)
            {
                folded[length++] = '\u2026';
                break;
            }
            char f = s_plain.Contains(c) ? c : Fold(c);
            if (f == ' ')
            {
                space = true;
                continue;
            }
            if (space && length > 0)
                folded[length++] = ' ';
            space = false;
            folded[length++] = f;
        }
        return length;
    }

    private static char Fold(char c) => c switch
    {
        >= 'A' and <= 'Z' => (char)(c | 0x20),
        '\u2018' or '\u2019' or '\u02BC' or '`' or '\u00B4' => '\'',
        // Commas, semicolons and spaces of any kind only part words: "sugar, granulated" is "sugar granulated".
        ',' or ';' => ' ',
        _ when char.IsWhiteSpace(c) => ' ',
        'à' or 'á' or 'â' or 'ä' or 'ã' or 'å' or 'À' or 'Á' or 'Â' or 'Ä' or 'Ã' or 'Å' => 'a',
        'è' or 'é' or 'ê' or 'ë' or 'È' or 'É' or 'Ê' or 'Ë' => 'e',
        'ì' or 'í' or 'î' or 'ï' or 'Ì' or 'Í' or 'Î' or 'Ï' => 'i',
        'ò' or 'ó' or 'ô' or 'ö' or 'õ' or 'Ò' or 'Ó' or 'Ô' or 'Ö' or 'Õ' => 'o',
        'ù' or 'ú' or 'û' or 'ü' or 'Ù' or 'Ú' or 'Û' or 'Ü' => 'u',
        'ç' or 'Ç' => 'c',
        'ñ' or 'Ñ' => 'n',
        _ => char.ToLowerInvariant(c),
    };

    /// <summary>A name as letters from a to z, digits and hyphens, such as an id has; empty where it has none of them.</summary>
    public static string SlugOf(string name)
    {
        char[] letters = [.. string.Concat(name.Take(200).Where(c => !char.IsSurrogate(c)))
            .Normalize(NormalizationForm.FormD).ToLowerInvariant()
            .Where(c => CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark).Take(72)
            .Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')];
        return string.Join('-', new string(letters).Split('-', StringSplitOptions.RemoveEmptyEntries));
    }
}
