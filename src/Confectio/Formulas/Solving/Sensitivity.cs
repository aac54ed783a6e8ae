using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>How the answer moves when one end of a demand moves.</summary>
public sealed class Sensitivity
{
    internal Sensitivity(Demand demand, bool ofLowEnd, double from, double to, IReadOnlyList<double> gramsPerUnit)
    {
        Demand = demand;
        OfLowEnd = ofLowEnd;
        ValidFrom = from;
        ValidTo = to;
        GramsPerUnit = gramsPerUnit;
    }

    /// <summary>The demand.</summary>
    public Demand Demand { get; }

    /// <summary>Whether it is the low end that moves; otherwise the high one. Where the demand asks for one value, both.</summary>
    public bool OfLowEnd { get; }

    /// <summary>The lowest place of the end for which the same demands bind, in the unit of the demand.</summary>
    public double ValidFrom { get; }

    /// <summary>The highest place of the end for which the same demands bind.</summary>
    public double ValidTo { get; }

    /// <summary>
    /// For every ingredient of the problem, in order: grams more for one unit more of the end. The unit is a percentage point for a
    /// share, a gram for a mass, 1 for a ratio.
    /// </summary>
    public IReadOnlyList<double> GramsPerUnit { get; }

    /// <summary>The demand, the end that moves, and for how long the answer moves with it in a straight line.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{(OfLowEnd ? "low" : "high")} end of {Demand}, from {ValidFrom:G4} to {ValidTo:G4}");
}
