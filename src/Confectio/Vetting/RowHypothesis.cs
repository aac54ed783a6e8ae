namespace Confectio.Vetting;

/// <summary>One way in which the printed digits may have come about, with its prior share.</summary>
internal readonly struct RowHypothesis
{
    /// <summary>The codes of the mistakes are the values of <see cref="Reason"/>; the row being right comes after them.</summary>
    public const int RightCode = (int)Reason.Unexplained + 1;

    public const int CodeCount = RightCode + 1;

    /// <summary>Beyond this many standard deviations nothing is left.</summary>
    public const double UsualReach = 5.5;

    private RowHypothesis(int code, double share, double low, double high, double deviation)
    {
        Code = code;
        Share = share;
        Low = low;
        High = high;
        Deviation = deviation;
    }

    public int Code { get; }

    /// <summary>The prior share; of a constant hypothesis, the prior share times the probability of the digits.</summary>
    public double Share { get; }

    /// <summary>The interval of t in which the digits would be printed.</summary>
    public double Low { get; }

    public double High { get; }

    /// <summary>The standard deviation of a single row about its group; 0 where the probability does not depend on t.</summary>
    public double Deviation { get; }

    public bool IsConstant => Deviation == 0;

    public static RowHypothesis Constant(int code, double share) => new(code, share, 0, 0, 0);

    public static RowHypothesis Interval(int code, double share, double low, double high, double deviation) =>
        new(code, share, low, high, deviation);

    /// <summary>The same hypothesis for a measure whose logarithm is <paramref name="volume"/> instead of 0, at another share.</summary>
    public RowHypothesis For(double volume, double share) => IsConstant ? new(Code, share, 0, 0, 0)
        : new(Code, share, Low - volume, High - volume, Deviation);
}
