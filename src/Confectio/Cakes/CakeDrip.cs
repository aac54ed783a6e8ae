using System.Globalization;

namespace Confectio.Cakes;

/// <summary>A glaze that is poured on the top and runs down the side in drips: its pool, and the drips.</summary>
/// <remarks>
/// The pool covers the coated top to its edge. A drip is half a round of width 2b that lies against the side and ends in a quarter of a
/// ball: π·b²/2·(l − b) + π·b³/3 for the length l, the end included.
/// </remarks>
public sealed class CakeDrip
{
    private CakeDrip(string icing, double pool, int drips, double width, double length)
    {
        Icing = icing;
        PoolCentimetres = pool;
        Drips = drips;
        DripWidthCentimetres = width;
        DripLengthCentimetres = length;
        double b = width / 2;
        DripMillilitres = Math.PI * b * b * ((length - b) / 2 + b / 3);
    }

    /// <summary>The name of the glaze.</summary>
    public string Icing { get; }

    /// <summary>The thickness of the pool on the top, cm.</summary>
    public double PoolCentimetres { get; }

    /// <summary>How many drips.</summary>
    public int Drips { get; }

    /// <summary>The width of a drip, cm.</summary>
    public double DripWidthCentimetres { get; }

    /// <summary>How far a drip runs down, on average, cm.</summary>
    public double DripLengthCentimetres { get; }

    /// <summary>What one drip takes, mL.</summary>
    public double DripMillilitres { get; }

    /// <summary>A drip glaze.</summary>
    /// <param name="icing">The name of the glaze, from 1 to 100 characters.</param>
    /// <param name="pool">The thickness of the pool on the top, cm, from 0 to 10.</param>
    /// <param name="drips">How many drips, from 0 to 10 000.</param>
    /// <param name="dripWidth">The width of a drip, cm, from 0.01 to 10; 1 where nothing is said.</param>
    /// <param name="dripLength">How far a drip runs down, on average, cm, from its width to 100; 5 where nothing is said.</param>
    /// <returns>The glaze. Worked number: a drip 1 cm wide and 5 cm long takes 1.898 mL.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="icing"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="icing"/> is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeDrip Of(string icing, CakeLength pool, int drips = 0, CakeLength? dripWidth = null, CakeLength? dripLength = null)
    {
        IcingName.Check(icing);
        double thick = pool.Within(0, 10);
        Guard.InRange(drips, 0, 10_000);
        double width = dripWidth?.Within(0.01, 10, nameof(dripWidth)) ?? 1;
        return new CakeDrip(icing, thick, drips, width, dripLength?.Within(width, 100, nameof(dripLength)) ?? 5);
    }

    /// <summary>One line, such as <c>drip of ganache: 3 mm on the top, 24 drips</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"drip of {Icing}: {10 * PoolCentimetres:0.##} mm on the top, {Drips} drips");
}
