using System.Runtime.CompilerServices;

namespace Confectio.Ingredients;

/// <summary>
/// a + x·(b + x·(c + x·d)) of a number that is held within the range it was fitted for: beyond, the value at the end holds.
/// </summary>
internal readonly struct HeldPolynomial(double a, double b, double c, double d, double low, double high)
{
    private readonly double _a = a, _b = b, _c = c, _d = d, _low = low, _high = high;

    [MethodImpl(MethodImplOptions.AggressiveInlining)] // once for every solute of every density
    public double At(double x)
    {
        x = x < _low ? _low : x > _high ? _high : x;
        return _a + x * (_b + x * (_c + x * _d));
    }
}
