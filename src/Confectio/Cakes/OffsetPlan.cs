using System.Globalization;

namespace Confectio.Cakes;

/// <summary>A plan grown outward by a thickness: the foot of a cake with its coat.</summary>
internal sealed class OffsetPlan
{
    internal OffsetPlan(double thickness, CoatEdge edge, double area, double perimeter, bool fillsNotches, bool isExact)
    {
        ThicknessCentimetres = thickness;
        Edge = edge;
        AreaSquareCentimetres = area;
        PerimeterCentimetres = perimeter;
        FillsNotches = fillsNotches;
        IsExact = isExact;
    }

    /// <summary>The thickness t, cm.</summary>
    public double ThicknessCentimetres { get; }

    /// <summary>How it goes round the corners.</summary>
    public CoatEdge Edge { get; }

    /// <summary>The area, cm². A hole that the coat closes in and does not fill is not part of it.</summary>
    public double AreaSquareCentimetres { get; }

    /// <summary>The length of its edge, cm, with the edge of a hole that it closes in.</summary>
    public double PerimeterCentimetres { get; }

    /// <summary>
    /// Whether the plan has notches that the coat fills in part: then the area is below A + P·t + π·t², which counts what lies in a notch
    /// twice.
    /// </summary>
    public bool FillsNotches { get; }

    /// <summary>
    /// Whether the figures are exact. Where they are not, both are upper bounds: sharp corners of a plan with notches may run into one
    /// another.
    /// </summary>
    public bool IsExact { get; }

    /// <summary>The thickness, area and perimeter, such as <c>grown by 0.6 cm: 352.99 cm², 66.6 cm round</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"grown by {ThicknessCentimetres:0.###} cm: {AreaSquareCentimetres:0.##} cm², {PerimeterCentimetres:0.##} cm round");
}
