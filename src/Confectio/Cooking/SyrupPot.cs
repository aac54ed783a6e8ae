using System.Globalization;
using Confectio.Formulas;
using Confectio.Sources;
using Confectio.Sugars;

namespace Confectio.Cooking;

/// <summary>
/// A pot of syrup by what is in it: how much water has to boil off for a stage, how far it has got by the scales, how much water brings an
/// overcooked one back. Only water leaves or joins; the solids stay.
/// </summary>
/// <remarks>
/// Caution: syrup burns deeply and sticks. See <see cref="CookingStage.Caution"/>, most of all before water is added to hot syrup.
/// </remarks>
public sealed class SyrupPot
{
    private const double LeastElevationKelvin = 1e-6;

    private SyrupPot(SugarSolution solution, double solutionGrams, double otherGrams)
    {
        Solution = solution;
        SolutionGrams = solutionGrams;
        OtherGrams = otherGrams;
    }

    /// <summary>The sugars and the water, all dissolved.</summary>
    public SugarSolution Solution { get; }

    /// <summary>What the pot holds, g.</summary>
    public double Grams => SolutionGrams + OtherGrams;

    /// <summary>The water in it, g.</summary>
    public double WaterGrams => SolutionGrams * Solution.Water;

    /// <summary>The dissolved solids in it, g.</summary>
    public double SolidsGrams => SolutionGrams * Solution.Solids;

    internal double SolutionGrams { get; }

    /// <summary>What is in it beside the solution, g: fat, protein, salt. It is weighed, and takes no part in boiling points.</summary>
    public double OtherGrams { get; }

    /// <summary>
    /// The lowest temperature at which all the sugar is dissolved, °C; <see langword="null"/> where some stays even at 100 °C, and where
    /// there is no water. See <see cref="Crystallisation.DissolvedAtCelsius"/>.
    /// </summary>
    public double? DissolvedAtCelsius => Solution.Water > 0 ? Crystallisation.DissolvedAtCelsius(Solution) : null;

    /// <summary>A pot of a solution.</summary>
    /// <param name="solution">The solution.</param>
    /// <param name="grams">How much of it, g, above 0 to 1e12.</param>
    /// <exception cref="ArgumentNullException"><paramref name="solution"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public static SyrupPot Of(SugarSolution solution, double grams) =>
        new(Guard.NotNull(solution), Guard.InRange(grams, Guard.Trace, 1e12), 0);

    /// <summary>A pot of what a formula puts in, less what it says boils off.</summary>
    /// <param name="formula">The formula, such as sugar, water, glucose syrup and cream of tartar.</param>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentException">There is neither water in it nor anything that dissolves.</exception>
    public static SyrupPot Of(Formula formula)
    {
        SugarSolution solution = SugarSolution.Of(formula);
        double other = formula.TotalGrams * solution.LeftOut;
        return new SyrupPot(solution, formula.TotalGrams - other, other);
    }

    /// <summary>The same solids when the pot has another mass: what the scales say now.</summary>
    /// <param name="grams">The mass in the pot, g, from that of the solids to 1e12.</param>
    /// <returns>The pot, with the water that makes up the mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range: solids do not boil off.</exception>
    public SyrupPot Weighing(double grams)
    {
        double solids = SolidsGrams, solution = Guard.InRange(grams, OtherGrams + solids, 1e12) - OtherGrams;
        if (grams == Grams)
            return this;
        return solution > 0 ? With(Solution.WithSolids(Math.Min(1, solids / solution)), solution)
            : throw new ArgumentOutOfRangeException(nameof(grams), grams,
                $"{nameof(grams)} must leave something of the solution; it is above {OtherGrams:R} g.");
    }

    /// <summary>To a temperature at which the pot boils.</summary>
    /// <param name="celsius">
    /// The true temperature, °C, from a millionth above where water boils to where the strongest syrup of these solids does.
    /// </param>
    /// <param name="pressure">The pressure of the kitchen.</param>
    /// <returns>
    /// The pot at its end. Worked number: 600 g of sucrose and 200 g of water at 116 °C and sea level: 693.5 g, 106.5 g of water gone.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The pot holds pure water.</exception>
    public PotEnd CookTo(double celsius, AirPressure pressure)
    {
        if (SolidsGrams == 0)
            throw new InvalidOperationException("Pure water has no solids to be concentrated.");
        // Where water itself boils the pot would hold no end of it.
        Guard.InRange(celsius, pressure.WaterBoilsCelsius + LeastElevationKelvin,
            Solution.MaximumBoilingCelsius(pressure) + ActivityOfWater.SlackKelvin);
        SugarSolution end = Solution.BoilingAt(celsius, pressure),
            other = celsius <= Solution.MaximumBoilingCelsius(pressure, BoilingModel.StarzakMathlouthi)
            ? Solution.BoilingAt(celsius, pressure, BoilingModel.StarzakMathlouthi) : Solution.WithSolids(Solution.MaximumSolids);
        double likely = end.Solids;
        return new PotEnd(this, At(likely), new Spread(Math.Min(likely, other.Solids), likely, Math.Max(likely, other.Solids),
            SpreadBasis.Models));
    }

    /// <summary>To a strength.</summary>
    /// <param name="solids">The mass fraction of solids in the solution, above 0 to 1.</param>
    /// <returns>The pot at its end, whatever it boils at.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="solids"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The pot holds pure water.</exception>
    public PotEnd CookToSolids(double solids)
    {
        Guard.InRange(solids, Guard.Trace, 1);
        return SolidsGrams > 0 ? new PotEnd(this, At(solids), Spread.Exactly(solids))
            : throw new InvalidOperationException("Pure water has no solids to be concentrated.");
    }

    /// <summary>To a stage: its low and its high end.</summary>
    /// <param name="stage">The stage.</param>
    /// <param name="pressure">The pressure of the kitchen.</param>
    /// <exception cref="ArgumentNullException"><paramref name="stage"/> is null.</exception>
    /// <exception cref="InvalidOperationException">The pot holds pure water.</exception>
    public PotTarget CookTo(CookingStage stage, AirPressure pressure) => new(this, Guard.NotNull(stage).At(pressure, Solution));

    /// <summary>Masses in a line, such as <c>800 g: solids 600, water 200</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Grams:0.#} g: solids {SolidsGrams:0.#}, water {WaterGrams:0.#}")
        + (OtherGrams > 0 ? string.Create(CultureInfo.InvariantCulture, $", other {OtherGrams:0.#}") : "");

    internal PotEnd CookTo(StageEnd end) => new(this, At(end.Solution!.Solids), end.Solids!.Value);

    private SyrupPot At(double solids) => solids == Solution.Solids ? this : With(Solution.WithSolids(solids), SolidsGrams / solids);

    private SyrupPot With(SugarSolution solution, double solutionGrams) => new(solution, solutionGrams, OtherGrams);
}
