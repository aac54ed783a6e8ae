namespace Confectio.Cakes;

/// <summary>Inches and centimetres: 1 in is 2.54 cm exactly.</summary>
public static class Inches
{
    /// <summary>The centimetres of an inch, exactly, since the agreement of 1959 on the yard.</summary>
    public const double CentimetresPerInch = 2.54;

    /// <summary>Inches as centimetres.</summary>
    /// <param name="inches">The length, in, from −1e6 to 1e6.</param>
    /// <returns>cm. Worked number: 8 in is 20.32 cm.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="inches"/> is outside its range.</exception>
    public static double ToCentimetres(double inches) => Guard.InRange(inches, -1e6, 1e6) * CentimetresPerInch;

    /// <summary>Centimetres as inches.</summary>
    /// <param name="centimetres">The length, cm, from −1e6 to 1e6.</param>
    /// <returns>in. Worked number: 25.4 cm is 10 in.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="centimetres"/> is outside its range.</exception>
    public static double FromCentimetres(double centimetres) => Guard.InRange(centimetres, -1e6, 1e6) / CentimetresPerInch;
}
