using MathNet.Numerics.Integration;

namespace Confectio.Numerics;

/// <summary>Integrals of smooth functions.</summary>
internal static class Quadrature
{
    /// <summary>The integral by the rule of Gauss and Legendre: exact for polynomials of degree below twice the number of points.</summary>
    public static double GaussLegendre(Func<double, double> function, double from, double to, int points)
    {
        GaussLegendreRule rule = new(from, to, points);
        double sum = 0;
        for (int i = 0; i < points; i++)
            sum += rule.GetWeight(i) * function(rule.GetAbscissa(i));
        return sum;
    }
}
