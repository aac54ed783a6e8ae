using System.Globalization;

namespace Confectio.Cakes;

/// <summary>A portion by its size: so much of the plan of a tier, whatever its shape, through its whole height.</summary>
/// <remarks>
/// The two sizes that are given here are common practice, for tiers of about 4 in (10 cm). A round cannot be cut into such pieces without
/// rests, and counts as if it could. How two institutions cut a sheet is in docs/tables/cakes.md.
/// </remarks>
public sealed class Portion
{
    private Portion(double widthCentimetres, double lengthCentimetres)
    {
        WidthCentimetres = widthCentimetres;
        LengthCentimetres = lengthCentimetres;
    }

    /// <summary>1 by 2 in of a tier 4 in high; common practice.</summary>
    public static Portion OneByTwoInches { get; } = new(CakeLength.CentimetresPerInch, 2 * CakeLength.CentimetresPerInch);

    /// <summary>1½ by 2 in of a tier 4 in high; common practice.</summary>
    public static Portion OneAndAHalfByTwoInches { get; } = new(1.5 * CakeLength.CentimetresPerInch, 2 * CakeLength.CentimetresPerInch);

    /// <summary>The width, cm.</summary>
    public double WidthCentimetres { get; }

    /// <summary>The length, cm.</summary>
    public double LengthCentimetres { get; }

    /// <summary>The area of the plan that it takes, cm². Worked number: 1 by 2 in have 12.9032.</summary>
    public double AreaSquareCentimetres => WidthCentimetres * LengthCentimetres;

    /// <summary>A portion of your own.</summary>
    /// <param name="width">The width, cm, from 0.1 to 100.</param>
    /// <param name="length">The length, cm, from 0.1 to 100.</param>
    /// <returns>The portion.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Portion Of(CakeLength width, CakeLength length) => new(width.Within(0.1, 100), length.Within(0.1, 100));

    /// <summary>How many go on the widest cut through a body: its area over that of the portion.</summary>
    /// <param name="body">The body, without its coats, as tins are named.</param>
    /// <returns>The number, not rounded. Worked number: of 1 by 2 in on a 10 in round: 39.27; on an 8 in square: 32.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    public double CountOn(CakeBody body) => Guard.NotNull(body).WidestCutSquareCentimetres / AreaSquareCentimetres;

    /// <summary>How many whole ones go on the widest cut through a body.</summary>
    /// <param name="body">The body.</param>
    /// <returns>
    /// The number; a hair short of a whole one is forgiven. Worked number: of 1 by 2 in on a 10 in round: 39, where the trade says 38 to
    /// 42.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    public long WholeCountOn(CakeBody body) => (long)Math.Floor(CountOn(body) * (1 + 1e-12));

    /// <summary>The size in both measures, such as <c>1 × 2 in (2.54 × 5.08 cm)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Inches(WidthCentimetres)} × {Inches(LengthCentimetres)} in ({WidthCentimetres:0.##} × {LengthCentimetres:0.##} cm)");

    private static string Inches(double centimetres) =>
        (centimetres / CakeLength.CentimetresPerInch).ToString("0.##", CultureInfo.InvariantCulture);
}
