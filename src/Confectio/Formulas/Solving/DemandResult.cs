using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>What a demand got.</summary>
public sealed class DemandResult
{
    internal DemandResult(Demand demand, double achieved)
    {
        Demand = demand;
        // A ratio to nothing is no number.
        Achieved = double.IsFinite(achieved) ? achieved : null;
        MissedBy = Achieved is null ? double.IsPositiveInfinity(demand.High) ? 0 : null
            : achieved < demand.Low ? achieved - demand.Low : achieved > demand.High ? achieved - demand.High : 0;
    }

    /// <summary>The demand.</summary>
    public Demand Demand { get; }

    /// <summary>What the formula has, in the unit of the demand's ends; <see langword="null"/> of a ratio to an ingredient of which there is nothing.</summary>
    public double? Achieved { get; }

    /// <summary>
    /// How far that is outside the demand: below 0 where it falls short, above 0 where it is too much, 0 inside; <see langword="null"/> of a ratio to nothing that has a
    /// high end, which is missed by more than any number.
    /// </summary>
    public double? MissedBy { get; }

    /// <summary>Whether the demand is met: a requirement to a billionth, a target within its tolerance.</summary>
    public bool IsMet => MissedBy is double missed && Math.Abs(missed) <= (Demand.Kind == DemandKind.Target ? Demand.Tolerance : Slack);

    private double Slack => 1e-9 * Math.Max(1, Math.Abs(Achieved ?? 0));

    /// <summary>A line of text: <c>fat 36 %: 35.42 % (0.58 below)</c>.</summary>
    public override string ToString()
    {
        bool isShare = Demand.Kind is DemandKind.Target or DemandKind.Requirement;
        double factor = isShare ? 100 : 1;
        string unit = isShare ? " %" : Demand.Kind == DemandKind.Ratio ? "" : " g";
        if (Achieved is null)
            return $"{Demand}: there is nothing of {Demand.ToIngredient!.Name}";
        string missed = MissedBy is not double by || Math.Abs(by) <= Slack ? ""
            : string.Create(CultureInfo.InvariantCulture, $" ({Math.Abs(by) * factor:0.####} {(by < 0 ? "below" : "above")})");
        return string.Create(CultureInfo.InvariantCulture, $"{Demand}: {Achieved * factor:0.####}{unit}{missed}");
    }
}
