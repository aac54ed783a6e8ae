// The one place where the tests of heat name the type of a reading.
global using ProbeReading = Confectio.Measures.ThermometerReading;
using Confectio.Heat;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Sources;

namespace Confectio.Tests.Safety;

/// <summary>Readings of a probe from pairs of minutes and °C, in one place.</summary>
internal static class Readings
{
    public static ProbeReading[] Of(params (double Minutes, double Celsius)[] pairs) => [.. pairs.Select(pair => new ProbeReading(pair.Minutes, pair.Celsius))];

    /// <summary>Longer than any log, s: every step counts as measured. Tests of the arithmetic state it; tests of gaps do not.</summary>
    public const double NoGapSeconds = 1.2e8;

    public static ProbeLog Log(params (double Minutes, double Celsius)[] pairs) => ProbeLog.Of(Of(pairs), NoGapSeconds);

    public static Spread Unbroken(this KineticSet set, ReadOnlySpan<ProbeReading> readings) => set.LogReduction(readings, NoGapSeconds);

    public static double UnbrokenTrapezoid(this KineticSet set, ReadOnlySpan<ProbeReading> readings) => set.LogReductionByTrapezoid(readings, NoGapSeconds);

    public static ProbeLog FahrenheitLog(params (double Minutes, double Fahrenheit)[] pairs) =>
        Log([.. pairs.Select(pair => (pair.Minutes, Celsius(pair.Fahrenheit)))]);

    /// <summary>The definition: a Fahrenheit degree is 5/9 of a kelvin, and ice melts at 32.</summary>
    public static double Celsius(double fahrenheit) => (fahrenheit - 32) * 5 / 9;
}
