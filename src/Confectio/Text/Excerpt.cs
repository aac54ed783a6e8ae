using System.Text;

namespace Confectio.Text;

/// <summary>
/// Quotes a reader's input in a message: short enough to print whatever the input was, with control characters made visible.
/// </summary>
internal static class Excerpt
{
    private const int Longest = 60;

    public static string Of(ReadOnlySpan<char> text)
    {
        StringBuilder quoted = new(Longest + 8);
        quoted.Append('\'');
        foreach (char c in text.Length > Longest ? text[..(Longest - 3)] : text)
        {
            // A lone surrogate or a control character would garble a terminal or a JSON writer.
            quoted.Append(char.IsControl(c) || char.IsSurrogate(c) ? '\uFFFD' : c);
        }
        if (text.Length > Longest)
            quoted.Append("...");
        return quoted.Append('\'').ToString();
    }
}
