namespace Confectio.Vetting;

/// <summary>One row of a vetted temperature table.</summary>
public sealed class TemperatureFinding
{
    internal TemperatureFinding(PrintedTemperature printed, Verdict verdict, TemperatureReason? reason, string explanation)
    {
        Line = printed.Line;
        What = printed.What;
        Fahrenheit = printed.Fahrenheit;
        Celsius = printed.Celsius;
        ExpectedCelsius = printed.ExpectedCelsius;
        Verdict = verdict;
        Reason = reason;
        Explanation = explanation;
    }

    /// <summary>The line of the table, counted from 1.</summary>
    public int Line { get; }

    /// <summary>What the temperature is for, as printed.</summary>
    public string What { get; }

    /// <summary>The printed degrees Fahrenheit; <see langword="null"/> where the field is empty.</summary>
    public double? Fahrenheit { get; }

    /// <summary>The printed degrees Celsius; <see langword="null"/> where the field is empty.</summary>
    public double? Celsius { get; }

    /// <summary>The verdict: <see cref="Verdict.Doubtful"/> where two readings are possible.</summary>
    public Verdict Verdict { get; }

    /// <summary>The most likely reason where the row is not right; <see langword="null"/> elsewhere.</summary>
    public TemperatureReason? Reason { get; }

    /// <summary>
    /// What the Celsius figure should be: (F - 32) / 1.8, of a difference F / 1.8; <see langword="null"/> where no Fahrenheit figure is
    /// printed.
    /// </summary>
    public double? ExpectedCelsius { get; }

    /// <summary>The verdict in a sentence for a reader.</summary>
    public string Explanation { get; }

    /// <summary>The line, what it names and the verdict.</summary>
    public override string ToString() => $"line {Line}: {What}: {Explanation}";
}
