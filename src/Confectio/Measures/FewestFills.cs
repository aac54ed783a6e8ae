namespace Confectio.Measures;

/// <summary>
/// Branch and bound over how often each tool is filled, largest tool first, in whole multiples of the tools' common measure.
/// The bound is the count that the next tool alone would need, so the first answers are near the best and most branches close at once.
/// </summary>
/// <remarks>
/// Three more bounds keep a search short that has no answer, or many of equal count: what is missing must hold a multiple of the common
/// measure of the tools that are left; it must not need more fills of the largest of them than fit of the smallest; and a branch that can
/// only equal the best count must be able to come nearer. Without them 1 L within 0.0001 %, which has no answer, was not settled in a
/// minute. Odd tools still make a search of astronomic length (a cup of 236.5882365 mL beside spoons of 7 and 11 mL has a common measure of
/// 1e-7 mL), so it stops after <see cref="MostWork"/> looks, and says that it did.
/// </remarks>
internal struct FewestFills
{
    // The volume asked for is a double; a target that is met exactly must count as met.
    private const double Rounding = 1e-12;

    /// <summary>
    /// How often a count of a tool is looked at before the search is given up: a count and not a clock, so that the answer is the same on
    /// every machine.
    /// </summary>
    public const int MostWork = 2_000_000;

    private readonly long[] _sizes;
    private readonly long[] _steps;
    private readonly double _wanted;
    private readonly long _low;
    private readonly long _high;
    private readonly double _leastError;
    private readonly long[] _counts;
    private long[]? _best;
    private long _bestFills;
    private double _bestError;
    private int _work;

    public FewestFills(MeasuringTools tools, double wanted, double allowedError)
    {
        _sizes = tools.Sizes;
        _steps = new long[_sizes.Length];
        long step = 0;
        for (int i = _sizes.Length - 1; i >= 0; i--)
            _steps[i] = step = GreatestCommonDivisor(_sizes[i], step);
        _counts = new long[_sizes.Length];
        _wanted = wanted / tools.CommonMeasure.ToDouble();
        _low = (long)Math.Ceiling(_wanted * (1 - allowedError - Rounding));
        _high = (long)Math.Floor(_wanted * (1 + allowedError + Rounding));
        _leastError = Math.Abs(Math.Round(_wanted) - _wanted);
        _bestFills = long.MaxValue;
        _bestError = double.PositiveInfinity;
    }

    /// <summary>Whether everything was looked at, so that the answer is the fewest, or that there is none.</summary>
    public readonly bool IsSettled => _work < MostWork;

    /// <summary>Finds the counts, and what they hold in common measures.</summary>
    public bool TryFind(out int[] counts, out long filled)
    {
        if (_low <= _high)
            Search(0, 0, 0);
        // The smallest tool and the largest volume keep every count within 32 bits.
        counts = _best is null ? [] : Array.ConvertAll(_best, count => (int)count);
        filled = 0;
        for (int i = 0; i < counts.Length; i++)
            filled += counts[i] * _sizes[i];
        return _best is not null;
    }

    // Always called with something missing: filled < _low.
    private void Search(int tool, long fills, long filled)
    {
        long size = _sizes[tool];
        // Enough of this tool alone. More of it only adds to the count, which can never be better.
        long count = DivideUp(_low - filled, size);
        if (filled + count * size <= _high)
            Offer(tool, count, fills + count, filled + count * size);
        if (tool + 1 == _sizes.Length)
            return;

        long next = _sizes[tool + 1], step = _steps[tool + 1], smallest = _sizes[^1];
        for (count--; count >= 0 && _work < MostWork; count--)
        {
            _work++;
            long now = filled + count * size;
            long atLeast = DivideUp(_low - now, next), total = fills + count + atLeast;
            // Fewer of this tool needs more of the next: from here the count only rises and what so many fills can hold only falls.
            if (total > _bestFills || (total == _bestFills && ErrorAtLeast(now + atLeast * next) >= _bestError))
                break;
            if (atLeast > (_high - now) / smallest || DivideUp(_low - now, step) * step > _high - now)
                continue;
            _counts[tool] = count;
            Search(tool + 1, fills + count, now);
        }
        _counts[tool] = 0;
    }

    private void Offer(int tool, long count, long fills, long filled)
    {
        double error = Math.Abs(filled - _wanted);
        if (fills > _bestFills || (fills == _bestFills && error >= _bestError))
            return;
        _bestFills = fills;
        _bestError = error;
        _best = (long[])_counts.Clone();
        _best[tool] = count;
    }

    private readonly double ErrorAtLeast(long mostFilled) => Math.Max(_leastError, _wanted - mostFilled);

    private static long DivideUp(long value, long divisor) => (value + divisor - 1) / divisor;

    private static long GreatestCommonDivisor(long a, long b)
    {
        while (b != 0)
            (a, b) = (b, a % b);
        return a;
    }
}
