namespace Confectio.Numerics;

/// <summary>The ellipse, whose perimeter has no elementary closed form.</summary>
internal static class Ellipse
{
    /// <summary>The perimeter of an ellipse of half axes a and b by the arithmetic-geometric mean (Abramowitz and Stegun 1964, 17.6); 4a where b is 0.</summary>
    /// <remarks>The two formulas of Ramanujan are as short and always too small: at b/a = 0.1 by 8.4e-4 and 1.2e-5.</remarks>
    public static double Perimeter(double a, double b)
    {
        if (a < b)
            (a, b) = (b, a);
        if (b == 0)
            return 4 * a;
        // In units of a: no square can overflow.
        double x = 1, y = b / a, left = 0.5 * (1 + y * y), weight = 1;
        // The differences at least halve in each step, and square once they are small: 40 is never reached.
        for (int k = 0; k < 40; k++)
        {
            double c = 0.5 * (x - y);
            (x, y) = (0.5 * (x + y), Math.Sqrt(x * y));
            left -= weight * c * c;
            weight *= 2;
            if (c <= 1e-9 * x)
                break;
        }
        return 2 * Math.PI * a * left / (0.5 * (x + y));
    }
}
