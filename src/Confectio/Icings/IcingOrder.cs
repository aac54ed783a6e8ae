using Confectio.Cakes;

namespace Confectio.Icings;

/// <summary>A cake with its icings, the waste and the bowls at hand: what <see cref="IcingOrderJson"/> reads.</summary>
public sealed class IcingOrder
{
    internal IcingOrder(Cake cake, Icing[] icings, double wasteFraction, MixerBowl[] bowls)
    {
        Cake = cake;
        Icings = icings;
        WasteFraction = wasteFraction;
        Bowls = bowls;
    }

    /// <summary>The cake.</summary>
    public Cake Cake { get; }

    /// <summary>The icings; every one that the cake asks for.</summary>
    public IReadOnlyList<Icing> Icings { get; }

    /// <summary>The share of what is taken that is lost.</summary>
    public double WasteFraction { get; }

    /// <summary>The bowls at hand; may be none.</summary>
    public IReadOnlyList<MixerBowl> Bowls { get; }

    /// <summary>The plan for one bowl, or for none.</summary>
    /// <param name="bowl">The bowl; without one each icing is one batch.</param>
    /// <returns>The plan.</returns>
    /// <exception cref="ArgumentException">The bowl is too small: see <see cref="IcingPlan.Of"/>.</exception>
    public IcingPlan Plan(MixerBowl? bowl = null) => IcingPlan.Of(Cake, Icings, WasteFraction, bowl);

    /// <summary>The cake, such as <c>garden wedding, 3 tiers</c>.</summary>
    public override string ToString() => Cake.ToString();
}
