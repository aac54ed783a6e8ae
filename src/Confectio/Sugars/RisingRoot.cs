namespace Confectio.Sugars;

/// <summary>The zero of a rising function between two ends: false position made safe (the Illinois rule), to rounding.</summary>
internal static class RisingRoot
{
    public static double Find(Func<double, double> function, double low, double high)
    {
        double below = function(low), above = function(high);
        if (below >= 0)
            return low;
        if (above <= 0)
            return high;
        int side = 0;
        for (int i = 0; i < 200; i++)
        {
            double x = (low * above - high * below) / (above - below);
            if (!(x > low && x < high))
                x = (low + high) / 2;
            if (x <= low || x >= high)
                break;
            double value = function(x);
            if (value == 0)
                return x;
            if (value < 0)
            {
                (low, below) = (x, value);
                if (side == -1)
                    above /= 2;
                side = -1;
            }
            else
            {
                (high, above) = (x, value);
                if (side == 1)
                    below /= 2;
                side = 1;
            }
            if (high - low <= 4e-16 * Math.Max(Math.Abs(low), Math.Abs(high)))
                break;
        }
        return (low + high) / 2;
    }
}
