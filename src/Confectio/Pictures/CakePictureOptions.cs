namespace Confectio.Pictures;

/// <summary>How <see cref="CakePicture"/> draws.</summary>
public sealed class CakePictureOptions
{
    /// <summary>Both measures, 760 pixels wide.</summary>
    public static CakePictureOptions Default { get; } = new();

    /// <summary>The measure in which lengths are written.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a defined one.</exception>
    public PictureLengths Lengths
    {
        get;
        init => field = Guard.Defined(value, nameof(Lengths));
    }

    /// <summary>
    /// How wide the picture is shown at first, pixels, from 100 to 10 000. It is drawn in lines, not in pixels, and sharp at any size.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its range.</exception>
    public double WidthPixels
    {
        get;
        init => field = Guard.InRange(value, 100, 10_000, nameof(WidthPixels));
    } = 760;

    /// <summary>The measures and the width, such as <c>Both, 760 pixels</c>.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture,
        $"{Lengths}, {WidthPixels:0} pixels");
}
