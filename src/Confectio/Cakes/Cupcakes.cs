using System.Globalization;

namespace Confectio.Cakes;

/// <summary>So many cupcakes with one icing: a flat coat over a flat or domed top, or a swirl.</summary>
public sealed class Cupcakes
{
    /// <summary>The most cupcakes of a kind.</summary>
    public const int MaximumCupcakes = 100_000;

    private Cupcakes(string icing, int count, double millilitresEach, Swirl? swirl, double topDiameter, double thickness, double dome)
    {
        Icing = icing;
        Count = count;
        MillilitresEach = millilitresEach;
        Swirl = swirl;
        TopDiameterCentimetres = topDiameter;
        ThicknessCentimetres = thickness;
        DomeCentimetres = dome;
    }

    /// <summary>The name of the icing.</summary>
    public string Icing { get; }

    /// <summary>How many.</summary>
    public int Count { get; }

    /// <summary>What one takes, mL.</summary>
    public double MillilitresEach { get; }

    /// <summary>The swirl; <see langword="null"/> where the coat is flat.</summary>
    public Swirl? Swirl { get; }

    /// <summary>The diameter of the top under a flat coat, cm; under a swirl that of its foot.</summary>
    public double TopDiameterCentimetres { get; }

    /// <summary>The thickness of a flat coat, cm; 0 under a swirl.</summary>
    public double ThicknessCentimetres { get; }

    /// <summary>How far the top under a flat coat rises in the middle, cm.</summary>
    public double DomeCentimetres { get; }

    /// <summary>What all of them take, mL.</summary>
    public double Millilitres => Count * MillilitresEach;

    /// <summary>Cupcakes with a coat of one thickness on a flat top; on a risen one, see <see cref="Domed"/>.</summary>
    /// <param name="icing">The name of the icing, from 1 to 100 characters.</param>
    /// <param name="count">How many, from 0 to 100 000.</param>
    /// <param name="topDiameter">The diameter of the top, cm, from 0.1 to 100.</param>
    /// <param name="thickness">
    /// The thickness t of the coat, cm, from 0 to 10; a cake whose coat is thicker than its top is wide has a finding.
    /// </param>
    /// <returns>The cupcakes. Worked number: 6.5 cm across with 0.5 cm: a disc of 16.59 mL each.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="icing"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="icing"/> is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Cupcakes Flat(string icing, int count, CakeLength topDiameter, CakeLength thickness) =>
        Coated(icing, count, topDiameter, thickness, default);

    /// <summary>The same with tops that rise in the middle: the coat is the shell over a slice of a ball and ends at the paper.</summary>
    /// <param name="dome">How far the top rises in the middle, cm, from 0 to half its diameter.</param>
    /// <returns>The cupcakes. Worked number: 6.5 cm across with 0.5 cm, domed by 1 cm: 19.78 mL each.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="dome"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The cupcakes have a swirl, which stands on a flat top.</exception>
    public Cupcakes Domed(CakeLength dome) => Swirl is null
        ? Coated(Icing, Count, CakeLength.FromCentimetres(TopDiameterCentimetres), CakeLength.FromCentimetres(ThicknessCentimetres), dome)
        : throw new InvalidOperationException("Cupcakes with a swirl have no dome: a swirl is worked out on a flat top.");

    private static Cupcakes Coated(string icing, int count, CakeLength topDiameter, CakeLength thickness, CakeLength dome)
    {
        double radius = topDiameter.Within(0.1, 100) / 2, t = thickness.Within(0, 10), rise = dome.Within(0, radius);
        // Of the ball of the dome, radius R, the shell between the rays to the rim: its share of the ball's surface is that of the cap. R
        // grows without end as the dome sinks, so the cap's area 2π·R·h = π(r² + h²) stands for what R would be multiplied with.
        double cap = Math.PI * (radius * radius + rise * rise), curvature = 2 * rise / (radius * radius + rise * rise);
        double each = cap * t * (1 + curvature * t * (1 + curvature * t / 3));
        return new Cupcakes(IcingName.Check(icing), Guard.InRange(count, 0, MaximumCupcakes), each, null, topDiameter.Centimetres, t, rise);
    }

    /// <summary>Cupcakes with a swirl.</summary>
    /// <param name="icing">The name of the icing, from 1 to 100 characters.</param>
    /// <param name="count">How many, from 0 to 100 000.</param>
    /// <param name="swirl">The swirl.</param>
    /// <returns>The cupcakes.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="icing"/> is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is outside its range.</exception>
    public static Cupcakes Swirled(string icing, int count, Swirl swirl) =>
        new(IcingName.Check(icing), Guard.InRange(count, 0, MaximumCupcakes), Guard.NotNull(swirl).Millilitres, swirl,
            swirl.FootDiameterCentimetres, 0, 0);

    /// <summary>One line, such as <c>24 cupcakes with buttercream, 32.8 mL each</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Count} cupcakes with {Icing}, {MillilitresEach:0.#} mL each");
}
