namespace Confectio.Vetting;

/// <summary>
/// What most likely happened to a temperature that is not right. The codes in machine output are the same words with hyphens.
/// </summary>
public enum TemperatureReason
{
    /// <summary>The two columns changed places: <c>columns-swapped</c>.</summary>
    ColumnsSwapped,

    /// <summary>The figure in one column is in the unit of the other: <c>other-unit</c>.</summary>
    OtherUnit,

    /// <summary>The temperature was turned as if it were a difference, without the 32: <c>point-as-difference</c>.</summary>
    PointAsDifference,

    /// <summary>A difference of temperatures was turned as if it were a temperature, with the 32: <c>difference-as-point</c>.</summary>
    DifferenceAsPoint,

    /// <summary>Two neighbouring digits changed places: <c>digits-swapped</c>.</summary>
    DigitsSwapped,

    /// <summary>The decimal mark is one place off: <c>decimal-shift</c>.</summary>
    DecimalShift,

    /// <summary>The figure is that of the row above or below: <c>copied-row</c>.</summary>
    CopiedRow,

    /// <summary>The temperature is outside what the process can have: <c>outside-process</c>.</summary>
    OutsideProcess,

    /// <summary>None of these explains it: <c>unexplained</c>.</summary>
    Unexplained,
}

/// <summary>The codes of temperature reasons in machine output.</summary>
public static class TemperatureReasonText
{
    private static readonly string[] s_codes =
    [
        "columns-swapped", "other-unit", "point-as-difference", "difference-as-point", "digits-swapped", "decimal-shift", "copied-row",
        "outside-process", "unexplained",
    ];

    /// <summary>The code of a reason, such as <c>columns-swapped</c>.</summary>
    /// <param name="reason">The reason.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="reason"/> is not a defined value.</exception>
    public static string ToCode(this TemperatureReason reason) => s_codes[(int)Guard.Defined(reason)];
}
