namespace Confectio.Numerics;

/// <summary>
/// Adds the probability between two limits that move down by equal steps: target[i] += weight P(low - i step &lt; Z &lt; high - i step).
/// Not for two threads at once: it remembers what the last width and step made.
/// </summary>
/// <remarks>
/// A normal density at equal steps is a product of two geometric series, so an interval up to 1.2 wide takes two or three
/// Gauss-Legendre points (relative error below 1 % at 5 standard deviations, 1e-5 at the centre) and no exponential a step.
/// Wider ones take the table of the tail.
/// </remarks>
internal sealed class NormalSteps
{
    // Gauss-Legendre nodes on (-1/2, 1/2), of two and of three points.
    private const double OfTwo = 0.288675134594812882, OfThree = 0.387298334620741689;

    /// <summary>Widths nearer to each other than this differ by rounding only.</summary>
    private const double SameWidth = 1e-12;

    /// <summary>Beyond this many standard deviations nothing is added.</summary>
    public double Reach { get; init; } = 5.5;

    private double _width = double.NaN;
    private double _step;
    private double _away;
    private double _square;
    private double _tiltStep;
    private double _outer;

    public void AddBetween(Span<double> target, double weight, double low, double high, double step)
    {
        double width = high - low;
        if (width >= 1.2)
        {
            for (int i = 0; i < target.Length; i++)
                target[i] += weight * NormalDistribution.Between(low - i * step, high - i * step);
            return;
        }
        bool three = width >= 0.4;
        if (!(Math.Abs(width - _width) <= SameWidth) || step != _step)
        {
            (_width, _step) = (width, step);
            _away = width * (three ? OfThree : OfTwo);
            _square = Math.Exp(-step * step);
            _tiltStep = Math.Exp(_away * step);
            _outer = width * NormalDistribution.InverseSqrtTwoPi * Math.Exp(-_away * _away / 2) * (three ? 5 / 18.0 : 0.5);
        }
        // The points stand about the middle, so that their exponentials are those of the middle times those of the distance.
        double middle = (low + high) / 2, square = _square;
        double density = weight * Math.Exp(-middle * middle / 2), ratio = Math.Exp(middle * step - step * step / 2);
        double tilt = Math.Exp(middle * _away), outer = density * _outer;
        double below = outer * tilt, above = outer / tilt, belowRatio = ratio / _tiltStep, aboveRatio = ratio * _tiltStep;
        if (!three)
        {
            for (int i = 0; i < target.Length; i++)
            {
                target[i] += below + above;
                below *= belowRatio;
                above *= aboveRatio;
                belowRatio *= square;
                aboveRatio *= square;
            }
            return;
        }
        density *= width * NormalDistribution.InverseSqrtTwoPi * 4 / 9;
        for (int i = 0; i < target.Length; i++)
        {
            target[i] += below + above + density;
            below *= belowRatio;
            above *= aboveRatio;
            density *= ratio;
            belowRatio *= square;
            aboveRatio *= square;
            ratio *= square;
        }
    }
}
