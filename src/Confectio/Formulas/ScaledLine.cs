using System.Globalization;
using Confectio.Measures;

namespace Confectio.Formulas;

/// <summary>A line of a formula that was scaled: what it should be, and what a kitchen measures for it.</summary>
public sealed class ScaledLine
{
    internal ScaledLine(double wantedGrams, FormulaLine line, PracticalMeasure? measure, string why)
    {
        WantedGrams = wantedGrams;
        Line = line;
        Measure = measure;
        Why = why;
    }

    /// <summary>The likely mass of the line times the factor, g.</summary>
    public double WantedGrams { get; }

    /// <summary>The line as it is measured or weighed.</summary>
    public FormulaLine Line { get; }

    /// <summary>The measures that were found; <see langword="null"/> where the line is weighed or counted.</summary>
    public PracticalMeasure? Measure { get; }

    /// <summary>How far the measure is off what the line should be, as a fraction; 0 where it is weighed.</summary>
    public double RelativeError => WantedGrams > 0 ? Line.Grams.Likely / WantedGrams - 1 : 0;

    /// <summary>Why a line that was measured is weighed now; empty where it is not.</summary>
    public string Why { get; }

    /// <summary>The line and its error, such as <c>1 1/4 cups whole milk (305 g), +0.0 %</c>.</summary>
    public override string ToString() => $"{Line}{(Measure is null ? "" : string.Create(CultureInfo.InvariantCulture, $", {100 * RelativeError:+0.0;-0.0;0.0} %"))}{(Why.Length > 0 ? $", {Why}" : "")}";
}
