namespace Confectio.Numerics;

/// <summary>The ellipse, whose perimeter has no elementary closed form.</summary>
internal static class Ellipse
{
    /// <summary>
    /// The perimeter of an ellipse of half axes a and b by the arithmetic-geometric mean (Abramowitz and Stegun 1964, 17.6); 4a where b is
    /// 0.
    /// </summary>
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

    /// <summary>The area and the length round of the points of an ellipse that lie at least a distance t inside it.</summary>
    /// <remarks>
    /// They are bounded by the parallel curve p − t·n. Up to the least radius of curvature b²/a that is all of it, and by Steiner the area
    /// is A − P·t + π·t². Beyond, the curve crosses itself on the long axis, at the angle of the ellipse where its height b − t·a/g is 0,
    /// g² = b²·cos² + a²·sin². From there on, a quarter of the area by Green: the part of the ellipse, less t times its length, and t²
    /// times the turn of the normal, and what the cut at the crossing adds.
    /// </remarks>
    public static (double Area, double Perimeter) Inset(double a, double b, double t)
    {
        if (a < b)
            (a, b) = (b, a);
        if (t >= b)
            return (0, 0);
        double perimeter = Perimeter(a, b);
        if (t <= b * (b / a))
            return (Math.PI * a * b - t * perimeter + Math.PI * t * t, perimeter - 2 * Math.PI * t);
        double square = (t * a / b - b) * (t * a / b + b) / ((a - b) * (a + b)), sine = Math.Sqrt(square), cosine = Math.Sqrt(1 - square),
            from = Math.Atan2(sine, cosine);
        double g = t * a / b, length = Length(a, b, from), turn = Math.Atan2(b * cosine, a * sine);
        double quarter = (a * b * (Math.PI / 2 - from) + t * (a - b) * (a + b) * sine * cosine / g + t * t * turn) / 2 - t * length;
        return (Math.Max(4 * quarter, 0), Math.Max(4 * (length - t * turn), 0));
    }

    // The length of the ellipse from an angle to the end of its short axis. Towards the tip of a flat one it bends within b/a of it: parts
    // that halve see that.
    private static double Length(double a, double b, double from)
    {
        double sum = 0, to = Math.PI / 2;
        for (int k = 0; k < 40 && to > from; k++)
        {
            double middle = k == 39 ? from : from + (to - from) / 2;
            sum += Quadrature.GaussLegendre(angle => Math.Sqrt(Square(b * Math.Cos(angle)) + Square(a * Math.Sin(angle))), middle, to, 16);
            to = middle;
        }
        return sum;
    }

    private static double Square(double x) => x * x;
}
