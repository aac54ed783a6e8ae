using System.Globalization;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Publishing;

/// <summary>A row of a chart: what a measure of a food weighs, rounded as far as it may be, with its spread and where it comes from.</summary>
/// <remarks>
/// The step is the coarsest, from the chosen one down, whose own uncertainty (step/√12, GUM 4.3.7) is at most half of that of the weight, so
/// that rounding adds little to what cooks differ by; and it is never finer than the digits in which there is sense (GUM 7.2.6). Low is rounded
/// down and high up.
/// Worked number: a US teaspoon of granulated sugar is about 4.2 g with u near 0.1 g; to 5 g it would be wrong, and it is printed as 4.2 g.
/// </remarks>
public sealed class ChartRow
{
    // Below the chosen step only those that the digits tell: 0.60 for 0.6 to the nearest 0.05 would claim hundredths.
    private static readonly double[] s_grams = [10, 5, 1, 0.1, 0.01];
    private static readonly double[] s_ounces = [0.25, 0.125, 0.01, 0.001];

    internal ChartRow(string name, Amount measure, Conversion by, ChartRounding rounding)
    {
        Name = name;
        Measure = measure;
        By = by;
        Grams = by.ToMass(measure).Grams;
        IsOunces = rounding == ChartRounding.QuarterOunce;
        Step = StepOf(Grams * (1 / Unit), IsOunces ? s_ounces : s_grams, rounding switch
        {
            ChartRounding.TenGrams => 10,
            ChartRounding.FiveGrams => 5,
            ChartRounding.Gram => 1,
            _ => 0.25,
        });
    }

    /// <summary>The name of the food, in the table that the chart asks for.</summary>
    public string Name { get; }

    /// <summary>The measure.</summary>
    public Amount Measure { get; }

    /// <summary>By what weight of a measure, with its sources and cautions.</summary>
    public Conversion By { get; }

    /// <summary>What the measure weighs, g, not rounded.</summary>
    public Spread Grams { get; }

    /// <summary>Whether the chart is in ounces.</summary>
    public bool IsOunces { get; }

    /// <summary>The step to which it is rounded, in the unit of the chart.</summary>
    public double Step { get; }

    /// <summary>The weight as it is printed, in the unit of the chart.</summary>
    public double Printed => Rounded(Math.Round(Grams.Likely / Unit / Step, MidpointRounding.AwayFromZero));

    /// <summary>The low end as it is printed: rounded down.</summary>
    public double PrintedLow => Rounded(Math.Floor(Grams.Low / Unit / Step + 1e-9));

    /// <summary>The high end as it is printed: rounded up.</summary>
    public double PrintedHigh => Rounded(Math.Ceiling(Grams.High / Unit / Step - 1e-9));

    /// <summary>The kind of knowledge behind it: the worst of the figures that it was made from.</summary>
    public Evidence Evidence => By.Density.ContributingFigures.Max(figure => figure.Provenance.Evidence);

    /// <summary>Where the figures come from, by the short names of the bibliography.</summary>
    public string Source => string.Join("; ", By.Density.ContributingFigures.Select(figure => figure.Provenance.Source.ShortName).Distinct());

    /// <summary>The row in a line, such as <c>1 cup icing sugar, sifted: 97 g (86 to 110); USDA SR28</c>.</summary>
    public override string ToString() => $"{Measure} {Name}, {By.Density.HowPacked}: {Text(Printed, SheetNumbers.Invariant)} {(IsOunces ? "oz" : "g")} "
        + $"({Text(PrintedLow, SheetNumbers.Invariant)} to {Text(PrintedHigh, SheetNumbers.Invariant)}); {Source} ({Evidence.ToWord()})";

    /// <summary>A number of the row with the decimals of its step; a quarter or an eighth is a fraction, for 2.00 would claim hundredths.</summary>
    internal string Text(double value, SheetNumbers numbers)
    {
        if (Step is 0.25 or 0.125)
        {
            long eighths = (long)Math.Round(8 * value), whole = eighths / 8;
            Fraction rest = new(eighths % 8, 8);
            return rest == 0 ? numbers.At(whole, 0) : whole == 0 ? rest.ToString() : $"{numbers.At(whole, 0)} {rest}";
        }
        int decimals = 0;
        for (double step = Step; decimals < 6 && Math.Abs(step - Math.Round(step)) > 1e-9; step *= 10)
            decimals++;
        return numbers.At(value, -decimals);
    }

    private double Unit => IsOunces ? CardLine.GramsPerOunce : 1;

    // Twenty hundredths are 0.2 to the last bit, and 20 × 0.01 is not.
    private double Rounded(double steps) => Step >= 1 ? steps * Step : Math.Round(steps * Step, 9);

    private static double StepOf(Spread value, double[] ladder, double chosen)
    {
        double u = Math.Max(value.StandardUncertainty, (value.High - value.Low) / 4), most = Math.Sqrt(3) * u;
        double step = ladder[^1];
        foreach (double candidate in ladder)
        {
            // Of a weight that is known exactly the digits are its own.
            if (candidate <= chosen && (u > 0 ? candidate <= most : candidate <= 0.005 * value.Likely))
            {
                step = candidate;
                break;
            }
        }
        return value.LastPlace() is int place ? Math.Max(step, Math.Pow(10, place)) : step;
    }
}
