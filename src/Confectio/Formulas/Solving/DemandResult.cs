using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>What a demand got.</summary>
public sealed class DemandResult
{
    internal DemandResult(Demand demand, double achieved)
    {
        Demand = demand;
        Achieved = achieved;
        MissedBy = achieved < demand.Low ? achieved - demand.Low : achieved > demand.High ? achieved - demand.High : 0;
    }

    /// <summary>The demand.</summary>
    public Demand Demand { get; }

    /// <summary>What the formula has, in the unit of the demand's ends.</summary>
    public double Achieved { get; }

    /// <summary>How far that is outside the demand: below 0 where it falls short, above 0 where it is too much, 0 inside.</summary>
    public double MissedBy { get; }

    /// <summary>Whether the demand is met: a requirement to a billionth, a target within its tolerance.</summary>
    public bool IsMet => Math.Abs(MissedBy) <= Slack;

    private double Slack => Demand.Kind == DemandKind.Target ? Demand.Tolerance : 1e-9 * Math.Max(1, Math.Abs(Achieved));

    /// <summary>A line of text: <c>fat 36 %: 35.42 % (0.58 below)</c>.</summary>
    public override string ToString()
    {
        bool isShare = Demand.Kind is DemandKind.Target or DemandKind.Requirement;
        double factor = isShare ? 100 : 1;
        string unit = isShare ? " %" : Demand.Kind == DemandKind.Ratio ? "" : " g";
        string missed = Math.Abs(MissedBy) <= 1e-9 * Math.Max(1, Math.Abs(Achieved)) ? ""
            : string.Create(CultureInfo.InvariantCulture, $" ({Math.Abs(MissedBy) * factor:0.####} {(MissedBy < 0 ? "below" : "above")})");
        return string.Create(CultureInfo.InvariantCulture, $"{Demand}: {Achieved * factor:0.####}{unit}{missed}");
    }
}
