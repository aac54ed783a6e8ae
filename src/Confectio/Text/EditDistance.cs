namespace Confectio.Text;

/// <summary>How many slips of a finger lie between two words.</summary>
internal static class EditDistance
{
    /// <summary>The longest word that is compared.</summary>
    public const int Longest = 60;

    /// <summary>Optimal string alignment: insertions, deletions, substitutions and swaps of neighbours. Three rows are enough.</summary>
    public static int Of(ReadOnlySpan<char> a, ReadOnlySpan<char> b)
    {
        Span<int> before = stackalloc int[Longest + 1], last = stackalloc int[Longest + 1], row = stackalloc int[Longest + 1];
        for (int j = 0; j <= b.Length; j++)
            last[j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int cost = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(last[j], row[j - 1]) + 1, last[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
            }
            Span<int> free = before;
            before = last;
            last = row;
            row = free;
        }
        return last[b.Length];
    }
}
