namespace Confectio.Pictures;

/// <summary>The measure in which a picture writes lengths.</summary>
public enum PictureLengths
{
    /// <summary>Centimetres, and inches in brackets.</summary>
    Both,

    /// <summary>Centimetres alone; thicknesses in millimetres.</summary>
    Centimetres,

    /// <summary>Inches alone.</summary>
    Inches,
}
