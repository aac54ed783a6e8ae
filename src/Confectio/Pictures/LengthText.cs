using System.Globalization;
using Confectio.Cakes;

namespace Confectio.Pictures;

/// <summary>Lengths as a picture writes them: short, not exact.</summary>
internal sealed class LengthText(PictureLengths lengths) : ISizeWords
{
    private readonly PictureLengths _lengths = lengths;

    public string Of(double centimetres) => _lengths switch
    {
        PictureLengths.Centimetres => Centimetres(centimetres),
        PictureLengths.Inches => Inches(centimetres),
        _ => $"{Centimetres(centimetres)} ({Inches(centimetres)})",
    };

    public string Pair(double width, double length)
    {
        string Both(Func<double, string> one) => $"{one(width).Split(' ')[0]} × {one(length)}";
        return _lengths switch
        {
            PictureLengths.Centimetres => Both(Centimetres),
            PictureLengths.Inches => $"{Inches(width)} × {Inches(length)}",
            _ => $"{Both(Centimetres)} ({Inches(width)} × {Inches(length)})",
        };
    }

    /// <summary>A thickness: millimetres unless inches alone are written.</summary>
    public string Thickness(double centimetres) => _lengths == PictureLengths.Inches
        ? string.Create(CultureInfo.InvariantCulture, $"{centimetres / CakeLength.CentimetresPerInch:0.##} in")
        : string.Create(CultureInfo.InvariantCulture, $"{10 * centimetres:0.#} mm");

    private static string Centimetres(double centimetres) => string.Create(CultureInfo.InvariantCulture, $"{centimetres:0.#} cm");

    private static string Inches(double centimetres)
    {
        double inches = centimetres / CakeLength.CentimetresPerInch, sixteenths = 16 * inches;
        // A stack of large tiers can be longer than a length that is read.
        return Math.Abs(sixteenths - Math.Round(sixteenths)) < 1e-6 && centimetres <= CakeLength.MaximumCentimetres
            ? CakeLength.FromCentimetres(centimetres).ToString("in")
            : string.Create(CultureInfo.InvariantCulture, $"{inches:0.#} in");
    }
}
