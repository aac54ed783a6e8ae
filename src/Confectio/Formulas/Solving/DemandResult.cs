using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>What a demand got.</summary>
public sealed class DemandResult
{
    // Of a limit: a thousandth of it. Of what is to be hit: what half a step of one line moves it by.
    private const double OfALimit = 1e-3;

    private readonly double _halfAStep;

    internal DemandResult(Demand demand, double achieved, double halfAStep = 0)
    {
        Demand = demand;
        _halfAStep = halfAStep;
        // A ratio to nothing is no number.
        Achieved = double.IsFinite(achieved) ? achieved : null;
        // A property that there is none of is not kept.
        MissedBy = Achieved is null ? double.IsPositiveInfinity(demand.HighEnd) && demand is not Demand.PropertyValue ? 0 : null
            : achieved < demand.LowEnd ? achieved - demand.LowEnd : achieved > demand.HighEnd ? achieved - demand.HighEnd : 0;
    }

    // An option is no demand on the masses: it is the choice itself.
    internal static DemandResult[] Of(FormulaProblem problem, double[] grams, double boiledOffGrams)
    {
        int count = 0;
        foreach (Demand demand in problem.Demands)
            count += demand.IsChoice ? 0 : 1;
        DemandResult[] results = new DemandResult[count];
        int at = 0;
        foreach (Demand demand in problem.Demands)
        {
            if (!demand.IsChoice)
                results[at++] = demand is Demand.PropertyValue property ? OfProperty(property, problem, grams, boiledOffGrams)
                    : new DemandResult(demand, demand.Measure(problem, grams, boiledOffGrams));
        }
        return results;
    }

    private static DemandResult OfProperty(Demand.PropertyValue demand, FormulaProblem problem, double[] grams, double boiledOffGrams)
    {
        double value = demand.Measure(problem, grams, boiledOffGrams);
        // The closest formula of demands that cannot be met may be asked to boil off water that it has not: that is no formula.
        double water = problem.GramsOf(FormulaPart.Water, grams, boiledOffGrams), all = problem.GramsOf(FormulaPart.Everything, grams, boiledOffGrams);
        if (!double.IsFinite(value) || !(all > 0) || water < -1e-9 * all)
            return new DemandResult(demand, value);
        Formula formula = FormulaMaker.Make(problem, grams, boiledOffGrams);
        return new DemandResult(demand, value) { Known = new Property(demand.Asked.SpreadOf(formula), demand.Asked.CautionsOf(formula)) };
    }

    /// <summary>The same of a rounded formula, with what the steps can do.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="grams">The rounded masses.</param>
    /// <param name="boiledOffGrams">What boils off with them.</param>
    /// <param name="exact">What each demand got before rounding.</param>
    /// <param name="steps">The step of every line; 0 of one that is not rounded.</param>
    internal static DemandResult[] OfRounded(FormulaProblem problem, double[] grams, double boiledOffGrams, IReadOnlyList<DemandResult> exact,
        double[] steps)
    {
        DemandResult[] results = Of(problem, grams, boiledOffGrams);
        for (int i = 0; i < results.Length; i++)
        {
            // A target has a tolerance of its own, and what was missed before rounding is not missed by the rounding.
            if (results[i].IsMet || !exact[i].IsMet || results[i].Demand.Aim is not null)
                continue;
            double reach = 0;
            for (int j = 0; j < grams.Length; j++)
            {
                foreach (double half in (double[])[steps[j] / 2, -steps[j] / 2])
                {
                    double[] moved = [.. grams];
                    moved[j] = Math.Max(0, grams[j] + half);
                    double change = Math.Abs(results[i].Demand.Measure(problem, moved, boiledOffGrams) - (results[i].Achieved ?? double.NaN));
                    reach = double.IsFinite(change) ? Math.Max(reach, change) : reach;
                }
            }
            results[i] = new DemandResult(results[i].Demand, results[i].Achieved ?? double.PositiveInfinity, reach) { Known = results[i].Known };
        }
        return results;
    }

    /// <summary>The demand.</summary>
    public Demand Demand { get; }

    /// <summary>
    /// What the formula has, in the unit of the demand's ends; <see langword="null"/> of a ratio to an ingredient of which there is
    /// nothing.
    /// </summary>
    public double? Achieved { get; }

    /// <summary>
    /// Of a property, how well the figure is known: what was achieved is its likely value. <see langword="null"/> of a share or a mass, or
    /// where nobody has said how far off it may be.
    /// </summary>
    public Spread? Spread => Known?.Spread;

    /// <summary>Of a property, what the figure leaves out or takes for granted, in sentences.</summary>
    public IReadOnlyList<string> Cautions => Known?.Cautions ?? [];

    // Few demands are on a property, and a formula has many demands.
    private Property? Known { get; init; }

    /// <summary>
    /// How far that is outside the demand: below 0 where it falls short, above 0 where it is too much, 0 inside;
    /// <see langword="null"/> of a ratio to nothing that has a high end, which is missed by more than any number.
    /// </summary>
    public double? MissedBy { get; }

    /// <summary>Whether the demand is met: a requirement to a billionth, a target within its tolerance.</summary>
    public bool IsMet => MissedBy is double missed && Demand.Allows(missed, Slack);

    /// <summary>
    /// Whether it is missed, but only by the rounding and as near as the steps allow, so that nobody has to act on it. It was met before
    /// rounding; it was proved that no formula within the steps does better; and the miss is small: of one value, such as a ratio of 4 or a
    /// total, no more than half a step of one line moves it, for no scale shows half a step; of a limit besides no more than a thousandth of it.
    /// A target has a tolerance of its own, and is met or missed.
    /// </summary>
    public bool IsAsNearAsSteps => !IsMet && _halfAStep > 0 && MissedBy is double missed && Math.Abs(missed) <= Slack
        + (Demand.IsOneValue ? _halfAStep : Math.Min(_halfAStep, OfALimit * Math.Abs(missed < 0 ? Demand.LowEnd : Demand.HighEnd)));

    private double Slack => 1e-9 * Math.Max(1, Math.Abs(Achieved ?? 0));

    /// <summary>A line of text: <c>fat 36 %: 35.42 % (0.58 below)</c>.</summary>
    public override string ToString() => $"{Demand}: {AchievedText}{(MissText.Length > 0 ? $" ({MissText})" : "")}";

    /// <summary>What the formula has, in words: <c>35.42 %</c>.</summary>
    public string AchievedText => Demand.SayMeasure(Achieved);

    /// <summary>By how much that is outside, in words: <c>0.58 below</c>; empty inside.</summary>
    public string MissText => MissedBy is not double by || Math.Abs(by) <= Slack ? ""
        : $"{Demand.Figure(Math.Abs(by) * Demand.Factor, 2)} {(by < 0 ? "below" : "above")}{(!IsAsNearAsSteps ? "" : Demand is Demand.Total ? ", within half a step" : ", as near as the steps allow")}";

    private sealed record Property(Spread? Spread, IReadOnlyList<string> Cautions);
}
