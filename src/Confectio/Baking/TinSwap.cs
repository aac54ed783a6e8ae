using System.Globalization;
using Confectio.Cakes;

namespace Confectio.Baking;

/// <summary>A cake moved to another tin: what the formula is multiplied by, how deep the batter stands, and what the trade advises where the depth changes.</summary>
/// <remarks>
/// Volumes are those of the tins. The advice on times and on glass is common practice that nobody owns, and no rule: watch the cake and not the clock.
/// Worked number: from a round of 8 in to one of 9 in, both 2 in deep, half full: times 1.2656; the same batter would stand 20.1 mm deep for 25.4.
/// </remarks>
public sealed class TinSwap
{
    // Common practice: within half an inch of the depth the time stays.
    private const double SameDepthCentimetres = 1.27;

    private TinSwap(CakePan from, CakePan to, double fill, bool toIsGlass)
    {
        From = from;
        To = to;
        Fill = fill;
        ToIsGlass = toIsGlass;
        BatterMillilitres = from.BatterMillilitres(fill);
        Factor = from.FactorTo(to);
        // Poured over as it is.
        SameBatterFill = BatterMillilitres <= to.BrimMillilitres ? to.FillOf(BatterMillilitres) : null;
        double depth = fill * from.DepthCentimetres;
        FactorAsDeep = depth >= 0.1 && depth <= Math.Min(from.DepthCentimetres, to.DepthCentimetres) ? from.FactorAsHighTo(to, CakeLength.FromCentimetres(depth)) : null;
        Advice = [.. Advise(depth)];
    }

    /// <summary>The tin that the formula is for.</summary>
    public CakePan From { get; }

    /// <summary>The tin at hand.</summary>
    public CakePan To { get; }

    /// <summary>To what share of its depth the first tin is filled.</summary>
    public double Fill { get; }

    /// <summary>Whether the tin at hand is of glass.</summary>
    public bool ToIsGlass { get; }

    /// <summary>The batter in the first tin, mL.</summary>
    public double BatterMillilitres { get; }

    /// <summary>What the formula is multiplied by to fill the other to the same share of its brim.</summary>
    public double Factor { get; }

    /// <summary>What it is multiplied by to stand as deep as in the first; <see langword="null"/> where the other is not so deep.</summary>
    public double? FactorAsDeep { get; }

    /// <summary>To what share of its depth the same batter fills the other; <see langword="null"/> where it does not go in.</summary>
    public double? SameBatterFill { get; }

    /// <summary>What the trade advises, each with what it stands on.</summary>
    public IReadOnlyList<string> Advice { get; }

    /// <summary>From one tin to another.</summary>
    /// <param name="from">The tin that the formula is for.</param>
    /// <param name="to">The tin at hand.</param>
    /// <param name="fill">
    /// To what share of its depth the first is filled, from 0.05 to 1; cakes usually 1/2 to 2/3 (<see cref="CakePan.MinimumUsualFill"/>).
    /// </param>
    /// <param name="toIsGlass">Whether the tin at hand is of glass.</param>
    /// <exception cref="ArgumentNullException">A tin is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fill"/> is outside its range.</exception>
    public static TinSwap Of(CakePan from, CakePan to, double fill, bool toIsGlass = false) =>
        new(Guard.NotNull(from), Guard.NotNull(to), Guard.InRange(fill, 0.05, 1), toIsGlass);

    /// <summary>The factor and the advice.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{From.Name} to {To.Name}: times {Factor:0.###}. ") + string.Join(" ", Advice);

    private IEnumerable<string> Advise(double depth)
    {
        if (SameBatterFill is not double fill)
            yield return string.Create(CultureInfo.InvariantCulture, $"The same batter, {BatterMillilitres:0} mL, does not go into {To.Name}, which holds {To.BrimMillilitres:0} mL to the brim.");
        else
        {
            double after = fill * To.DepthCentimetres;
            if (fill > CakePan.MaximumUsualFill + 1e-9)
                yield return string.Create(CultureInfo.InvariantCulture, $"The same batter would fill it to {100 * fill:0} % of its depth; cakes are usually filled to 1/2 to 2/3 (common practice): it may run over.");
            yield return string.Create(CultureInfo.InvariantCulture, $"The same batter would stand {10 * after:0} mm deep for {10 * depth:0} mm: ") + (Math.Abs(after - depth) <= SameDepthCentimetres
                ? "within half an inch, so that the time stays about the same (common practice)."
                : after < depth ? "begin to look after three quarters of the time (common practice)."
                : "it takes about a quarter longer (common practice).");
        }
        if (ToIsGlass)
            yield return "In glass bake 25 °F (14 K) less hot (common practice).";
        yield return "Watch the cake and not the clock: it is done when a skewer comes out clean of batter.";
    }
}
