using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>What a demand got.</summary>
public sealed class DemandResult
{
    private readonly double _roundingGrams;

    internal DemandResult(Demand demand, double achieved, double roundingGrams = 0)
    {
        Demand = demand;
        _roundingGrams = demand is Demand.Total ? roundingGrams : 0;
        // A ratio to nothing is no number.
        Achieved = double.IsFinite(achieved) ? achieved : null;
        MissedBy = Achieved is null ? double.IsPositiveInfinity(demand.HighEnd) ? 0 : null
            : achieved < demand.LowEnd ? achieved - demand.LowEnd : achieved > demand.HighEnd ? achieved - demand.HighEnd : 0;
    }

    // An option is no demand on the masses: it is the choice itself.
    // Rounding: by how much a total that stands on no grid may be off, g.
    internal static DemandResult[] Of(FormulaProblem problem, double[] grams, double boiledOffGrams, double roundingGrams = 0) =>
    [
        .. problem.Demands.Where(demand => !demand.IsChoice)
            .Select(demand => new DemandResult(demand, demand.Measure(problem, grams, boiledOffGrams), roundingGrams)),
    ];

    /// <summary>The demand.</summary>
    public Demand Demand { get; }

    /// <summary>
    /// What the formula has, in the unit of the demand's ends; <see langword="null"/> of a ratio to an ingredient of which there is
    /// nothing.
    /// </summary>
    public double? Achieved { get; }

    /// <summary>
    /// How far that is outside the demand: below 0 where it falls short, above 0 where it is too much, 0 inside;
    /// <see langword="null"/> of a ratio to nothing that has a high end, which is missed by more than any number.
    /// </summary>
    public double? MissedBy { get; }

    /// <summary>
    /// Whether the demand is met: a requirement to a billionth, a target within its tolerance; of a rounded formula a total that stands on
    /// no grid of the asked step to half of that step.
    /// </summary>
    public bool IsMet => MissedBy is double missed && Demand.Allows(missed, Slack + _roundingGrams);

    private double Slack => 1e-9 * Math.Max(1, Math.Abs(Achieved ?? 0));

    /// <summary>A line of text: <c>fat 36 %: 35.42 % (0.58 below)</c>.</summary>
    public override string ToString()
    {
        string missed = MissedBy is not double by || Math.Abs(by) <= Slack ? ""
            : string.Create(CultureInfo.InvariantCulture, $" ({Math.Abs(by) * Demand.Factor:0.####} {(by < 0 ? "below" : "above")})");
        return $"{Demand}: {Demand.SayMeasure(Achieved)}{missed}";
    }
}
