using System.Text.RegularExpressions;
using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>
/// Whether a document writes 12.5 or 12,5, found from its own numbers. A mark with one, two, or more than three digits behind it can only
/// be decimal; with three it is decimal or parts thousands, and says nothing.
/// </summary>
internal sealed partial class DecimalMark
{
    private DecimalMark(int points, int commas)
    {
        Points = points;
        Commas = commas;
    }

    /// <summary>Numbers that can only have a decimal point.</summary>
    public int Points { get; }

    /// <summary>Numbers that can only have a decimal comma.</summary>
    public int Commas { get; }

    public AmountReading Reading => Commas > Points ? AmountReading.DecimalComma : AmountReading.DecimalPoint;

    /// <summary>Counts the numbers of some cells.</summary>
    public static DecimalMark Of(IEnumerable<string> cells)
    {
        int points = 0, commas = 0;
        foreach (string cell in cells)
        {
            // "1,2,3" and "1.2.2026" are lists and dates.
            foreach (ValueMatch match in Decimal().EnumerateMatches(cell))
            {
                ReadOnlySpan<char> number = cell.AsSpan(match.Index, match.Length);
                int mark = number.IndexOfAny('.', ',');
                int behind = number.Length - mark - 1;
                if (behind == 3 && number[0] != '0')
                    continue;
                if (number[mark] == '.')
                    points++;
                else
                    commas++;
            }
        }
        return new DecimalMark(points, commas);
    }

    [GeneratedRegex(@"(?<![\d.,/])[0-9]+[.,][0-9]+(?![\d]|[.,/]\d)", RegexOptions.CultureInvariant)]
    private static partial Regex Decimal();
}
