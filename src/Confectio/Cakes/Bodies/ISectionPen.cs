namespace Confectio.Cakes.Bodies;

/// <summary>Draws a coated body that is cut from left to right, in centimetres from its middle and over its foot.</summary>
internal interface ISectionPen
{
    /// <summary>A piece with straight walls, upright or sloping, under a rounded coat that ends on the table.</summary>
    /// <param name="footLeft">Where it begins at its foot.</param>
    /// <param name="footRight">Where it ends at its foot.</param>
    /// <param name="topLeft">Where it begins at its top.</param>
    /// <param name="topRight">Where it ends at its top.</param>
    /// <param name="height">Its height.</param>
    /// <param name="rounded">The thickness of the coat; 0 for none.</param>
    void Walls(double footLeft, double footRight, double topLeft, double topRight, double height, double rounded);

    /// <summary>A ball or a part of one under such a coat.</summary>
    /// <param name="radius">The radius of the ball.</param>
    /// <param name="height">The height over the table.</param>
    /// <param name="rounded">The thickness of the coat; 0 for none.</param>
    void Dome(double radius, double height, double rounded);
}
