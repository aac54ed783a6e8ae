namespace Confectio.Phrases;

/// <summary>The words that say how full a measure is.</summary>
internal static class FillWords
{
    private const int Longest = 10;

    /// <summary>What one word says; case does not matter. Full, good and generous are left to who sees what follows them.</summary>
    public static bool TryGet(ReadOnlySpan<char> word, out MeasureFill fill)
    {
        fill = MeasureFill.NotStated;
        Span<char> lower = stackalloc char[Longest];
        if (word.Length is < 3 or > Longest || word.ToLowerInvariant(lower) < 0)
            return false;
        fill = lower[..word.Length] switch
        {
            "level" or "levelled" or "leveled" or "flat" or "lvl" or "lev" => MeasureFill.Level,
            "heaped" or "heaping" or "hpd" or "mounded" => MeasureFill.Heaped,
            "rounded" or "rnd" => MeasureFill.Rounded,
            "scant" or "scanty" => MeasureFill.Scant,
            "generous" => MeasureFill.Generous,
            _ => MeasureFill.NotStated,
        };
        return fill != MeasureFill.NotStated;
    }

    /// <summary>Finds the first word of a text that says that a measure is not level.</summary>
    public static bool TryFindNotLevel(ReadOnlySpan<char> text, out MeasureFill fill, out Range word)
    {
        for (int at = 0; at < text.Length; at++)
        {
            int from = at;
            while (at < text.Length && char.IsLetterOrDigit(text[at]))
                at++;
            if (TryGet(text[from..at], out fill) && fill != MeasureFill.Level)
            {
                word = from..at;
                return true;
            }
        }
        (fill, word) = (MeasureFill.NotStated, default);
        return false;
    }
}
