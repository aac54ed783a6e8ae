using System.Globalization;

namespace Confectio.Vetting;

/// <summary>What usually happens to a number in print, for figures that no finer model judges.</summary>
internal static class CardSlips
{
    // What stays in the bowl may part it from the half by so much: a judgement.
    private const double NearTwice = 0.17;

    /// <summary>
    /// The cause, where one of the usual slips turns the number into what was expected; of several the one that comes nearest to
    /// <paramref name="expected"/>.
    /// </summary>
    public static string Cause(double printed, double step, Func<double, bool> fits, double expected = double.NaN)
    {
        string best = "unexplained";
        double nearest = double.PositiveInfinity;
        foreach (double other in Swaps(printed, step))
            Try(other, "digits-swapped");
        foreach (double factor in (ReadOnlySpan<double>)[10, 0.1, 100, 0.01])
            Try(printed * factor, "decimal-shift");
        foreach (double factor in (ReadOnlySpan<double>)[2, 0.5])
        {
            // A wide window takes in twice of much that nobody doubled.
            if (double.IsNaN(expected) || expected <= 0 || Math.Abs(Math.Log(printed * factor / expected)) <= NearTwice)
                Try(printed * factor, "halved-or-doubled");
        }
        return best;

        void Try(double other, string cause)
        {
            if (!fits(other))
                return;
            // Without a target the first that fits is as good as another.
            double apart = double.IsNaN(expected) || expected <= 0 || other <= 0 ? 1 : Math.Abs(Math.Log(other / expected));
            if (apart < nearest)
                (best, nearest) = (cause, apart);
        }
    }

    public static string Words(string cause) => cause switch
    {
        "digits-swapped" => "most likely two digits changed places",
        "decimal-shift" => "most likely the decimal mark is off",
        "halved-or-doubled" => "most likely it was halved or doubled",
        "other-unit" => "most likely it is in the other unit",
        "spoon-swap" => "most likely a teaspoon was taken for a tablespoon, or the other way round",
        "other-cup" => "it is that of other cups than the rest of the card",
        _ => "no usual slip explains it",
    };

    private static IEnumerable<double> Swaps(double value, double step)
    {
        double scale = step is > 0 and < 1 ? Math.Round(1 / step) : 1;
        string digits = Math.Round(value * scale).ToString("0", CultureInfo.InvariantCulture);
        for (int i = 0; i + 1 < digits.Length && digits.Length < 12; i++)
        {
            // Nobody prints a nought first.
            if (digits[i] == digits[i + 1] || (i == 0 && digits[1] == '0'))
                continue;
            char[] swapped = digits.ToCharArray();
            (swapped[i], swapped[i + 1]) = (swapped[i + 1], swapped[i]);
            yield return double.Parse(swapped, CultureInfo.InvariantCulture) / scale;
        }
    }
}
