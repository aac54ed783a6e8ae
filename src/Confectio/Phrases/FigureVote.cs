namespace Confectio.Phrases;

/// <summary>
/// Holds figures of one amount against each other, two by two, and finds the one that agrees with the fewest others. What a figure stands
/// for is an interval of grams, which a line of a recipe and a row of a table make each in its own way: a line may mean any cup and any
/// packing, a table has shown its rounding and its ounces.
/// </summary>
internal static class FigureVote
{
    /// <summary>Whether two figures can be the same mass; one that is not known (NaN) agrees with everything.</summary>
    public static bool Meet((double Low, double High) left, (double Low, double High) right) =>
        double.IsNaN(left.Low) || double.IsNaN(right.Low) || (left.Low <= right.High && right.Low <= left.High);

    /// <summary>Whether any two contradict each other.</summary>
    /// <param name="figures">The figures, eight at most.</param>
    /// <param name="witness">What is expected, which has a vote and is not judged; where there is none, it meets everything.</param>
    /// <param name="suspect">The first of those that agree with the fewest others; -1 where none contradicts another.</param>
    /// <param name="isAlone">Whether no other agrees with as few.</param>
    public static bool Contradict(ReadOnlySpan<(double Low, double High)> figures, (double Low, double High) witness, out int suspect,
        out bool isAlone)
    {
        (suspect, isAlone) = (-1, false);
        Span<int> against = stackalloc int[figures.Length];
        bool any = false;
        for (int i = 0; i < figures.Length; i++)
        {
            for (int j = 0; j < figures.Length; j++)
                against[i] += i != j && !Meet(figures[i], figures[j]) ? 1 : 0;
            any |= against[i] > 0;
        }
        if (!any)
            return false;
        int most = 0;
        for (int i = 0; i < figures.Length; i++)
        {
            int votes = against[i] + (Meet(figures[i], witness) ? 0 : 1);
            if (votes > most)
                (most, suspect, isAlone) = (votes, i, true);
            else if (votes == most)
                isAlone = false;
        }
        return true;
    }
}
