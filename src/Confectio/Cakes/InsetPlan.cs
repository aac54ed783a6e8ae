using System.Globalization;

namespace Confectio.Cakes;

/// <summary>What is left of a plan inside a band of even width along its edge.</summary>
internal sealed class InsetPlan
{
    internal InsetPlan(double thickness, double area, double perimeter, double band)
    {
        ThicknessCentimetres = thickness;
        AreaSquareCentimetres = area;
        PerimeterCentimetres = perimeter;
        BandSquareCentimetres = band;
    }

    /// <summary>The width of the band, cm.</summary>
    public double ThicknessCentimetres { get; }

    /// <summary>The area of what is left, cm²; 0 where nothing is.</summary>
    public double AreaSquareCentimetres { get; }

    /// <summary>The length of its edge, cm, of all pieces together; 0 where nothing is left.</summary>
    public double PerimeterCentimetres { get; }

    /// <summary>The area of the band, cm².</summary>
    public double BandSquareCentimetres { get; }

    /// <summary>The width, the area and the length, such as <c>inside 1 cm: 324 cm², 72 cm round</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"inside {ThicknessCentimetres:0.###} cm: {AreaSquareCentimetres:0.##} cm², {PerimeterCentimetres:0.##} cm round");
}
