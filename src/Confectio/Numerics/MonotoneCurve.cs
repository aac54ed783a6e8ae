using MathNet.Numerics.Interpolation;

namespace Confectio.Numerics;

/// <summary>
/// A smooth curve through points that rises only where they rise and falls only where they fall (piecewise cubic Hermite, Fritsch and
/// Butland), flat beyond the first and the last.
/// </summary>
internal sealed class MonotoneCurve
{
    private readonly double[] _x, _y;
    private readonly CubicSpline? _spline;

    /// <summary>A curve through at least two points with rising <paramref name="x"/>.</summary>
    public MonotoneCurve(double[] x, double[] y)
    {
        _x = x;
        _y = y;
        // Of two points it would be a straight line; MathNet asks for three.
        _spline = x.Length > 2 ? CubicSpline.InterpolatePchipSorted(x, y) : null;
    }

    /// <summary>The height at a place.</summary>
    public double At(double x)
    {
        if (x <= _x[0])
            return _y[0];
        if (x >= _x[^1])
            return _y[^1];
        int above = Array.BinarySearch(_x, x);
        if (above >= 0)
            return _y[above];
        above = ~above;
        double left = _y[above - 1], right = _y[above];
        double value = _spline?.Interpolate(x) ?? left + (right - left) * (x - _x[above - 1]) / (_x[above] - _x[above - 1]);
        // Between two points it stays between their heights but for rounding.
        return Math.Clamp(value, Math.Min(left, right), Math.Max(left, right));
    }
}
