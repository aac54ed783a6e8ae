using System.Globalization;
using Confectio.Numerics;

namespace Confectio.Cakes;

/// <summary>The way back: so much icing is there; what can it cover?</summary>
/// <remarks>
/// Every answer is the zero of a volume that rises with what is asked for, found to rounding, so that covering it takes what was there.
/// </remarks>
public sealed class IcingCover
{
    private const double MostThickness = 100;

    private IcingCover(double millilitres) => Millilitres = millilitres;

    /// <summary>What there is to put on a cake, mL, all waste taken off.</summary>
    public double Millilitres { get; }

    /// <summary>What a volume of icing covers.</summary>
    /// <param name="millilitres">What there is, mL, from 0.001 to 1e9.</param>
    /// <returns>What it covers.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="millilitres"/> is outside its range.</exception>
    public static IcingCover Of(double millilitres) => new(Guard.InRange(millilitres, 0.001, 1e9));

    /// <summary>What a volume covers that was worked out, however small or large.</summary>
    internal static IcingCover OfAny(double millilitres) => new(millilitres);

    /// <summary>How thick a coat over the top and side of a body it makes.</summary>
    /// <param name="body">The body.</param>
    /// <param name="edge">How the coat goes round the edges.</param>
    /// <returns>
    /// cm; 100 where there is enough for more. Worked number: 672.674 mL over a round of 20 cm, 12 cm high, rounded: 0.6 cm.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    /// <exception cref="ArgumentException">All trials together would take more than <see cref="Cake.MaximumSteps"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="edge"/> is not a defined value.</exception>
    public double CoatThicknessCentimetres(CakeBody body, CoatEdge edge = CoatEdge.Rounded)
    {
        Guard.NotNull(body);
        Guard.Defined(edge);
        OutlineWork work = new(nameof(body));
        // No coat is thicker than area times thickness would make it, but for one that closes a notch or a hole.
        return Rising(t => body.CoatMillilitres(t, edge, work) / Millilitres - 1, 0, Millilitres / body.CoatedAreaSquareCentimetres,
            MostThickness) ?? 0;
    }

    /// <summary>The largest round cake with straight walls of which it coats top and side.</summary>
    /// <param name="height">The height of the cake, cm, from 0.001 to 10 000.</param>
    /// <param name="thickness">The thickness of the coat, cm, from 0.01 to 100, and no more than the height.</param>
    /// <param name="edge">How the coat goes round the edges.</param>
    /// <returns>The diameter, cm; <see langword="null"/> where there is not enough for the smallest. At most 10 000.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public double? MaximumRoundCentimetres(CakeLength height, CakeLength thickness, CoatEdge edge = CoatEdge.Rounded)
    {
        // A coat thicker than the cake is high is a height given for a thickness.
        double thick = thickness.Within(0.01, Math.Min(MostThickness, height.Checked()));
        Guard.Defined(edge);
        double Left(double diameter) =>
            CakeBody.Prism(PlanShape.Round(CakeLength.FromCentimetres(diameter)), height).CoatMillilitres(thick, edge) / Millilitres - 1;
        return Left(PlanShape.MinimumCentimetres) > 0 ? null : Roots.Rising(Left, PlanShape.MinimumCentimetres,
            PlanShape.MaximumCentimetres);
    }

    /// <summary>
    /// By what factor the tiers of a cake may grow, with coats, fillings and borders as thick as they are, until an icing is used up.
    /// </summary>
    /// <param name="cake">The cake.</param>
    /// <param name="icing">The name of the icing that there is.</param>
    /// <returns>
    /// The factor: 1 where it is just enough for the cake as it is. <see langword="null"/> where it is not enough for the smallest such
    /// cake, of a fiftieth of the size or as low as its fillings allow, or where the size of the tiers does not matter. At most 50.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">All trials together would take more than <see cref="Cake.MaximumSteps"/>.</exception>
    public double? MaximumScale(Cake cake, string icing) =>
        MaximumScale(Guard.NotNull(cake), Guard.NotNull(icing), new OutlineWork(nameof(cake)));

    /// <summary>The same within a budget.</summary>
    internal double? MaximumScale(Cake cake, string icing, OutlineWork work)
    {
        double low = 0.02, high = 50;
        foreach (CakeTier tier in cake.Tiers)
        {
            (double least, double most) = tier.Body.ScaleLimits;
            double fillings = tier.Fillings.Sum(filling => filling.ThicknessCentimetres) / tier.Body.HeightCentimetres;
            (low, high) = (Math.Max(low, Math.Max(least, fillings * (1 + 1e-9))), Math.Min(high, most));
        }
        // Fillings as thick as the tier but for a hair leave nothing between.
        if (low >= high)
            return null;
        double Left(double factor) => cake.Scaled(factor, work).Cover().Millilitres(icing) / Millilitres - 1;
        return Rising(Left, low, 1, high, mustRise: true);
    }

    /// <summary>By what factor the coats of an icing may be thicker, on a cake as large as it is, until it is used up.</summary>
    /// <param name="cake">The cake.</param>
    /// <param name="icing">The name of the icing that there is.</param>
    /// <returns>
    /// The factor: 1 where it is just enough for the cake as it is. <see langword="null"/> where the cake takes more of it for other
    /// things, or has no coat of it. Where no coat would become thicker than 100 cm.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">All trials together would take more than <see cref="Cake.MaximumSteps"/>.</exception>
    public double? CoatFactor(Cake cake, string icing) =>
        CoatFactor(Guard.NotNull(cake), Guard.NotNull(icing), new OutlineWork(nameof(cake)));

    /// <summary>The same within a budget.</summary>
    internal double? CoatFactor(Cake cake, string icing, OutlineWork work)
    {
        double thickest = cake.Tiers.SelectMany(tier => tier.Coats).Where(coat => coat.Icing == icing)
            .Select(coat => coat.ThicknessCentimetres).DefaultIfEmpty(0).Max();
        if (thickest == 0)
            return null;
        double Left(double factor) => cake.WithCoats(icing, factor, work).Cover().Millilitres(icing) / Millilitres - 1;
        return Rising(Left, 0, 1, Math.Min(1000, MostThickness / thickest * (1 - 1e-15)));
    }

    /// <summary>How many whole rosettes or swirls it makes.</summary>
    /// <param name="piece">One of them.</param>
    /// <returns>The number, a hair short of a whole one forgiven.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="piece"/> is null.</exception>
    public long Pieces(Swirl piece) => Whole(Guard.NotNull(piece).Millilitres);

    /// <summary>How many whole cupcakes it ices.</summary>
    /// <param name="like">Cupcakes of the kind; their number does not matter.</param>
    /// <returns>The number, a hair short of a whole one forgiven.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="like"/> is null.</exception>
    public long CupcakesLike(Cupcakes like) => Whole(Guard.NotNull(like).MillilitresEach);

    /// <summary>What there is, such as <c>cover from 850 mL</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"cover from {Millilitres:0.#} mL");

    // The zero of a function that rises, sought from a likely place outward, since far from it a cake can be much more work; nothing where
    // it is below the lowest, or where the function does not rise and should.
    private static double? Rising(Func<double, double> left, double low, double likely, double high, bool mustRise = false)
    {
        double from = Math.Clamp(likely, low, high), to = from, atFrom = left(from), atTo = atFrom;
        while (atFrom > 0 && from > low)
        {
            (to, atTo) = (from, atFrom);
            from = from / 2 > low + 1e-6 * high ? from / 2 : low;
            atFrom = left(from);
        }
        if (atFrom > 0)
            return null;
        while (atTo < 0 && to < high)
        {
            (from, atFrom) = (to, atTo);
            to = Math.Min(2 * Math.Max(to, 1e-6 * high), high);
            atTo = left(to);
        }
        if (from == to)
            (from, atFrom) = from > low ? (low, left(low)) : (from, atFrom);
        return mustRise && atTo - atFrom <= 1e-12 * Math.Abs(atFrom) ? null : Roots.Rising(left, from, to);
    }

    private long Whole(double each) => each > 0 ? (long)Math.Min(Math.Floor(Millilitres / each * (1 + 1e-12)), long.MaxValue / 2) : 0;
}
