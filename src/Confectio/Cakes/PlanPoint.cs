using System.Globalization;
using System.Text.Json.Serialization;

namespace Confectio.Cakes;

/// <summary>A point of a plan seen from above. The default is (0, 0).</summary>
public readonly struct PlanPoint : IEquatable<PlanPoint>
{
    private const double Most = 1e8;

    /// <summary>A point.</summary>
    /// <param name="xCentimetres">To the right, cm, from −1e8 to 1e8.</param>
    /// <param name="yCentimetres">To the back, cm, from −1e8 to 1e8.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    [JsonConstructor]
    public PlanPoint(double xCentimetres, double yCentimetres)
    {
        XCentimetres = Guard.InRange(xCentimetres, -Most, Most);
        YCentimetres = Guard.InRange(yCentimetres, -Most, Most);
    }

    /// <summary>How far to the right, cm.</summary>
    public double XCentimetres { get; }

    /// <summary>How far to the back, cm.</summary>
    public double YCentimetres { get; }

    /// <summary>Whether two points are the same.</summary>
    public static bool operator ==(PlanPoint left, PlanPoint right) => left.Equals(right);

    /// <summary>Whether two points are not the same.</summary>
    public static bool operator !=(PlanPoint left, PlanPoint right) => !left.Equals(right);

    /// <summary>Whether the other point is the same.</summary>
    public bool Equals(PlanPoint other) => XCentimetres == other.XCentimetres && YCentimetres == other.YCentimetres;

    /// <summary>Whether the other is the same point.</summary>
    public override bool Equals(object? obj) => obj is PlanPoint other && Equals(other);

    /// <summary>A hash of both coordinates.</summary>
    public override int GetHashCode() => HashCode.Combine(XCentimetres, YCentimetres);

    /// <summary>Both coordinates, such as <c>(2.5, 10) cm</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({XCentimetres:0.###}, {YCentimetres:0.###}) cm");
}
