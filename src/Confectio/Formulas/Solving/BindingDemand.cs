namespace Confectio.Formulas.Solving;

/// <summary>A demand that binds: without it the answer would be another.</summary>
public sealed class BindingDemand
{
    internal BindingDemand(Demand demand, int side, bool costsTargets)
    {
        Demand = demand;
        AtLowEnd = side > 0;
        CostsTargets = costsTargets;
    }

    /// <summary>The demand.</summary>
    public Demand Demand { get; }

    /// <summary>Whether it binds at its low end; otherwise at its high one.</summary>
    public bool AtLowEnd { get; }

    /// <summary>
    /// Whether it keeps a target from being met better; otherwise it only keeps the formula from its base, or from costing less.
    /// </summary>
    public bool CostsTargets { get; }

    /// <summary>The end that binds, in words.</summary>
    public override string ToString() => Demand.SayEnd(AtLowEnd ? 1 : -1);
}
