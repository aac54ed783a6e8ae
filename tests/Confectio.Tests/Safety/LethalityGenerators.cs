using Confectio.Heat;
using Confectio.Safety;
using FsCheck;
using FsCheck.Fluent;

namespace Confectio.Tests.Safety;

/// <summary>A log of a mix that is warmed, held and cooled as chance has it.</summary>
public sealed record RandomLog((double Minutes, double Celsius)[] Pairs)
{
    public override string ToString() => string.Join("; ", Pairs.Select(pair => FormattableString.Invariant($"({pair.Minutes:R}, {pair.Celsius:R})")));
}

/// <summary>A kinetic set, and the lethal rate in a minute that it means: written down here a second time, from its numbers.</summary>
public sealed record RandomSet(string Text, KineticSet Set, Func<double, double> Rate)
{
    public override string ToString() => Text;
}

/// <summary>Logs and sets: some logs stand still, some meet the ends of a set to the bit, and many cross them.</summary>
public static class LethalityGenerators
{
    // Mattick and others (2001), Table 7, at water activity 0.86: 67 min for 1.5 log at 55 °C, 9.5 and 1.2 min for 3 log at 65 and 74. D as it is rounded in
    // the library, since a quadrature to 1e-8 would see the rounding.
    private static readonly (double Celsius, double Minutes)[] s_mattick = [(55, 44.67), (65, 3.1667), (74, 0.4)];

    private static Gen<double> Celsius { get; } = Gen.Frequency(
        (1, Gen.Elements(20.0, 52, 55, 60, 65, 74)),
        (5, Gen.Choose(1500, 9500).Select(hundredths => hundredths / 100.0)));

    private static Gen<(double Minutes, double Celsius)> Reading { get; } =
        from step in Gen.Frequency((1, Gen.Constant(0.01)), (4, Gen.Choose(1, 200).Select(twentieths => twentieths / 20.0))) from celsius in Celsius select (step, celsius);

    private static Gen<RandomLog> LogGen { get; } =
        from count in Gen.Choose(2, 15)
        from steps in Reading.ArrayOf(count)
        from level in Gen.Choose(0, 3)
        select new RandomLog(Rising(steps, level));

    private static Gen<RandomSet> OwnSet { get; } =
        from reference in Gen.Choose(40, 80)
        from hundredths in Gen.Choose(5, 1000)
        from tenths in Gen.Choose(30, 120)
        from low in Gen.Elements(-50, 40, 52, 55)
        from high in Gen.Elements(60, 74, 200)
        select Own(reference, hundredths / 100.0, tenths / 10.0, low, high);

    private static Gen<RandomSet> SetGen { get; } = Gen.Frequency((1, Gen.Fresh(Mattick)), (2, OwnSet));

    public static Arbitrary<RandomLog> Logs() => Arb.From(LogGen);

    public static Arbitrary<RandomSet> Sets() => Arb.From(SetGen);

    private static (double Minutes, double Celsius)[] Rising((double Step, double Celsius)[] steps, int level)
    {
        (double Minutes, double Celsius)[] pairs = new (double, double)[steps.Length];
        double minutes = 0;
        for (int i = 0; i < steps.Length; i++)
        {
            minutes += steps[i].Step;
            // One reading in a few stands as the one before did.
            pairs[i] = (minutes, level > 0 && i % (level + 1) == level ? pairs[i - 1].Celsius : steps[i].Celsius);
        }
        return pairs;
    }

    private static RandomSet Own(double reference, double minutes, double z, double low, double high) =>
        new(FormattableString.Invariant($"D {minutes:R} at {reference:R}, z {z:R}, {low:R} to {high:R}"), KineticSet.Of("own", reference, minutes, z, low, high),
            celsius => celsius < low ? 0 : Math.Pow(10, (Math.Min(celsius, high) - reference) / z) / minutes);

    private static RandomSet Mattick() => new("mattick", KineticSet.Get("mattick"), celsius =>
    {
        if (celsius < s_mattick[0].Celsius)
            return 0;
        double at = Math.Min(celsius, s_mattick[2].Celsius);
        ((double T, double D) from, (double T, double D) to) = at < s_mattick[1].Celsius ? (s_mattick[0], s_mattick[1]) : (s_mattick[1], s_mattick[2]);
        return 1 / (from.D * Math.Pow(to.D / from.D, (at - from.T) / (to.T - from.T)));
    });
}
