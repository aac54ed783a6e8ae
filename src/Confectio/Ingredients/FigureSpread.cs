namespace Confectio.Ingredients;

/// <summary>
/// How far a careful kitchen may be from the mean of a few published figures, which is more than the figures show when there are two of
/// them and less than two figures alone allow to say.
/// </summary>
/// <remarks>
/// Figures and kitchens are drawn from one normal distribution of the logarithm of the density, whose variance τ² is that of the food and
/// its packing. Of τ² the class says something before any figure does (spreads.csv: T, so that 2T covers 95 % of kitchens about one figure),
/// and it says as much as <see cref="Freedom"/> degrees of freedom do. With the squares S of n figures about their mean:
/// τ̂² = (ν₀·τ₀² + S)/(ν₀ + n − 1), τ₀ = T·√2/t(ν₀), and u = ½·t(ν₀ + n − 1)·τ̂·√(1 + 1/n), so that likely × e^∓2u covers 95 % of kitchens:
/// the moderated variance of Smyth (2004), which is the conjugate rule of a normal sample (scaled inverse χ²). Of one figure u = T. Worked
/// number: shortening, 205 and 187 g a cup, T = 0.02: S = 0.00422, τ̂ = 0.0284, u = 0.0425. By simulation it covers 95 % at any n where τ² is
/// drawn as the class has it; the random-effects rule of Paule and Mandel with ∓2u covers 70 % at two figures, 81 % at three.
/// </remarks>
internal static class FigureSpread
{
    /// <summary>
    /// ν₀: what the class says is worth as much as this many differences between figures. Of the foods of the table with two figures it is
    /// the most likely: ln d of the differences over their T, for each ν₀, with Student's distribution (a test works it again).
    /// </summary>
    public const int Freedom = 5;

    /// <summary>τ₀, the standard deviation of figures of which nothing is known but the class.</summary>
    public static double Before(double technique) => technique * Math.Sqrt(2) / StudentFactor.Of95Percent(Freedom);

    /// <summary>τ̂, the standard deviation of one figure or fill to the next.</summary>
    /// <param name="logs">Logarithms of the figures, at least one.</param>
    /// <param name="technique">T.</param>
    public static double Between(ReadOnlySpan<double> logs, double technique)
    {
        double mean = 0, squares = 0, before = Before(technique);
        foreach (double log in logs)
            mean += log / logs.Length;
        foreach (double log in logs)
            squares += (log - mean) * (log - mean);
        return Math.Sqrt((Freedom * before * before + squares) / (Freedom + logs.Length - 1));
    }

    /// <summary>u of one more of so many figures whose standard deviation is known: <see cref="OfAKitchen"/>.</summary>
    public static double OfTheNext(int figures, double standardDeviation, double technique)
    {
        double before = Before(technique), squares = (figures - 1) * standardDeviation * standardDeviation;
        return HalfFactor(figures) * Math.Sqrt((Freedom * before * before + squares) / (Freedom + figures - 1)) * Math.Sqrt(1 + 1.0 / figures);
    }

    /// <summary>Half of Student's factor for so many figures: what makes of a standard deviation a u of which 2u is 95 %.</summary>
    public static double HalfFactor(int figures) => StudentFactor.Of95Percent(Freedom + figures - 1) / 2;

    /// <summary>u of a kitchen that nobody weighed, about the mean of the figures.</summary>
    public static double OfAKitchen(ReadOnlySpan<double> logs, double technique) =>
        HalfFactor(logs.Length) * Between(logs, technique) * Math.Sqrt(1 + 1.0 / logs.Length);
}
