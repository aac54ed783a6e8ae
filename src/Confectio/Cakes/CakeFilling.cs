using System.Globalization;

namespace Confectio.Cakes;

/// <summary>A filling between two layers, and the dam of stiffer icing that may hold it in.</summary>
public sealed class CakeFilling
{
    private CakeFilling(string icing, double thickness, string? damIcing, double damWidth)
    {
        Icing = icing;
        ThicknessCentimetres = thickness;
        DamIcing = damIcing;
        DamWidthCentimetres = damWidth;
    }

    /// <summary>The name of what fills it.</summary>
    public string Icing { get; }

    /// <summary>The thickness, cm.</summary>
    public double ThicknessCentimetres { get; }

    /// <summary>The icing of the dam; <see langword="null"/> where there is none.</summary>
    public string? DamIcing { get; }

    /// <summary>The width of the dam along the edge, cm; it is as high as the filling.</summary>
    public double DamWidthCentimetres { get; }

    /// <summary>A filling that reaches to the edge.</summary>
    /// <param name="icing">The name of what fills it, from 1 to 100 characters.</param>
    /// <param name="thickness">The thickness, cm, from 0 to 100.</param>
    /// <returns>The filling.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="icing"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="icing"/> is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="thickness"/> is outside its range.</exception>
    public static CakeFilling Of(string icing, CakeLength thickness) => new(IcingName.Check(icing), thickness.Within(0, 100), null, 0);

    /// <summary>The same filling inside a dam.</summary>
    /// <param name="icing">The icing of the dam, from 1 to 100 characters.</param>
    /// <param name="width">Its width along the edge, cm, from 0 to 100. In a ring a dam goes along both edges.</param>
    /// <exception cref="ArgumentNullException"><paramref name="icing"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="icing"/> is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="width"/> is outside its range.</exception>
    public CakeFilling InDam(string icing, CakeLength width) =>
        new(Icing, ThicknessCentimetres, IcingName.Check(icing), width.Within(0, 100));

    /// <summary>One line, such as <c>6 mm of jam in a dam of buttercream, 10 mm wide</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{10 * ThicknessCentimetres:0.##} mm of {Icing}")
        + (DamIcing is null ? ""
            : string.Create(CultureInfo.InvariantCulture, $" in a dam of {DamIcing}, {10 * DamWidthCentimetres:0.##} mm wide"));
}
