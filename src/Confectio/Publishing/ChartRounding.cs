namespace Confectio.Publishing;

/// <summary>To what a chart rounds its weights. A weight that is surer is rounded finer, and one that is less sure no finer than it is.</summary>
public enum ChartRounding
{
    /// <summary>To the gram.</summary>
    Gram,

    /// <summary>To 5 g.</summary>
    FiveGrams,

    /// <summary>To 10 g.</summary>
    TenGrams,

    /// <summary>To the quarter of an ounce; the chart is in ounces.</summary>
    QuarterOunce,
}
