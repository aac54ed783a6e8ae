namespace Confectio.Vetting;

/// <summary>The codes of verdicts and reasons in machine output.</summary>
public static class ReasonText
{
    private static readonly string[] s_codes =
    [
        "cup-counted-as-eight-ounces", "spoon-swap", "halved-or-doubled", "decimal-shift", "ounces-as-grams", "grams-as-ounces",
        "thirty-gram-ounce", "fluid-ounce-as-ounce", "digits-swapped", "other-packing", "other-cup", "copied-row",
        "row-slip", "other-measure", "volume-as-mass", "piece-as-measure", "digit-lost", "digit-doubled",
        "unexplained",
    ];

    /// <summary>The code of a reason, such as <c>spoon-swap</c>.</summary>
    /// <param name="reason">The reason.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="reason"/> is not a defined value.</exception>
    public static string ToCode(this Reason reason) => s_codes[(int)Guard.Defined(reason)];

    /// <summary>The code of a verdict, such as <c>wrong</c>.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="verdict"/> is not a defined value.</exception>
    public static string ToCode(this Verdict verdict) => Guard.Defined(verdict) switch
    {
        Verdict.Agrees => "agrees",
        Verdict.Doubtful => "doubtful",
        Verdict.Wrong => "wrong",
        Verdict.Impossible => "impossible",
        _ => "unknown",
    };

    /// <summary>The code of a figure, such as <c>second-mass</c>.</summary>
    /// <param name="figure">The figure.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="figure"/> is not a defined value.</exception>
    public static string ToCode(this RowFigure figure) => Guard.Defined(figure) switch
    {
        RowFigure.Measure => "measure",
        RowFigure.Mass => "mass",
        RowFigure.SecondMass => "second-mass",
        _ => "third-mass",
    };
}
