namespace Confectio.Uncertainty;

/// <summary>The factor of Student's distribution for 95 %, by degrees of freedom: what few figures cost (GUM, JCGM 100:2008, G.3).</summary>
internal static class StudentFactor
{
    // From here on the factor is the same to three digits.
    private const int Most = 1000;

    // 0 until it was asked for; two threads that ask at once find the same.
    private static readonly double[] s_known = new double[Most + 1];

    /// <summary>
    /// t for which −t to t has a probability of 95 %, by the finite series of Abramowitz and Stegun, 26.7.3 and 26.7.4, for whole degrees
    /// of freedom.
    /// </summary>
    /// <param name="degreesOfFreedom">From 1 up. Worked numbers: 12.71 for 1, 4.30 for 2, 2.23 for 10 (GUM, table G.2).</param>
    public static double Of95Percent(int degreesOfFreedom)
    {
        int freedom = Math.Min(Guard.InRange(degreesOfFreedom, 1, int.MaxValue), Most);
        if (s_known[freedom] > 0)
            return s_known[freedom];
        double low = 1, high = 20;
        while (high - low > 1e-12)
        {
            double middle = (low + high) / 2;
            (low, high) = Within(middle, freedom) < 0.95 ? (middle, high) : (low, middle);
        }
        return s_known[freedom] = (low + high) / 2;
    }

    private static double Within(double t, int freedom)
    {
        double angle = Math.Atan(t / Math.Sqrt(freedom)), cosine = Math.Cos(angle), square = cosine * cosine;
        bool odd = freedom % 2 == 1;
        double sum = 0, term = odd ? cosine : 1;
        for (int k = odd ? 1 : 0; k <= freedom - 2; k += 2)
        {
            sum += term;
            term *= square * (k + 1) / (k + 2);
        }
        return odd ? 2 / Math.PI * (angle + Math.Sin(angle) * sum) : Math.Sin(angle) * sum;
    }
}
