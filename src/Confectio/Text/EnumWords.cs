using System.Text;

namespace Confectio.Text;

/// <summary>The words in the name of an enum's value.</summary>
internal static class EnumWords
{
    /// <summary>
    /// The value of a word with hyphens; words are compared one by one, for Enum.TryParse would also take numbers and lists.
    /// </summary>
    public static bool TryRead<T>(string word, StringComparison comparison, out T value) where T : struct, Enum
    {
        foreach (T known in Enum.GetValues<T>())
        {
            if (Of(known, '-').Equals(word, comparison))
            {
                value = known;
                return true;
            }
        }
        value = default;
        return false;
    }

    /// <summary>That a word is no value, and which there are.</summary>
    public static string NoneOf<T>(string word, T[]? known = null) where T : struct, Enum =>
        $"{Excerpt.Of(word)} is not one of: {string.Join(", ", (known ?? Enum.GetValues<T>()).Select(one => Of(one, '-')))}";

    /// <summary>The words in lower case, such as <c>specific-heat</c> for <c>SpecificHeat</c> with a hyphen between.</summary>
    public static string Of<T>(T value, char between) where T : struct, Enum => WordsOf(value.ToString(), between);

    /// <summary>The words of every value, in the order of the values; the place is the value where they are numbered from 0.</summary>
    public static string[] All<T>(char between) where T : struct, Enum
    {
        string[] names = Enum.GetNames<T>();
        for (int i = 0; i < names.Length; i++)
            names[i] = WordsOf(names[i], between);
        return names;
    }

    private static string WordsOf(string name, char between)
    {
        StringBuilder words = new();
        foreach (char c in name)
        {
            if (char.IsUpper(c) && words.Length > 0)
                words.Append(between);
            words.Append(char.ToLowerInvariant(c));
        }
        return words.ToString();
    }
}
