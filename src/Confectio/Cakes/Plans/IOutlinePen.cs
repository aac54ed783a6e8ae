namespace Confectio.Cakes.Plans;

/// <summary>
/// Draws an outline as a plan describes it: counter-clockwise, in centimetres from its centroid, to the right and to the back.
/// </summary>
internal interface IOutlinePen
{
    /// <summary>Begins at a point.</summary>
    void Start(double x, double y);

    /// <summary>Goes straight to a point.</summary>
    void Line(double x, double y);

    /// <summary>Goes to a point along an arc of a radius, at most half a round.</summary>
    void Arc(double radius, double x, double y);

    /// <summary>Goes to a point along half of an oval that lies along the axes.</summary>
    void HalfOval(double halfWidth, double halfLength, double x, double y);
}
