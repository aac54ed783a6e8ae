using System.Text;

namespace Confectio.Text;

/// <summary>Text that stands for itself in HTML, between tags and in a quoted attribute.</summary>
internal static class Markup
{
    /// <summary>Appends the text with the five signs of markup escaped.</summary>
    public static StringBuilder AppendEscaped(this StringBuilder html, string text)
    {
        foreach (char c in text)
        {
            _ = c switch
            {
                '&' => html.Append("&amp;"),
                '<' => html.Append("&lt;"),
                '>' => html.Append("&gt;"),
                '"' => html.Append("&quot;"),
                '\'' => html.Append("&#39;"),
                _ => html.Append(c),
            };
        }
        return html;
    }
}
