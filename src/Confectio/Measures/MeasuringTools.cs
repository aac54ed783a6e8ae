namespace Confectio.Measures;

/// <summary>The cups and spoons that are in the drawer: of each unit, the fractions there is a tool for.</summary>
public sealed class MeasuringTools
{
    private static readonly Amount[] s_decilitreTools =
    [
        Amount.Of(100, KitchenUnit.Millilitre), Amount.Of(50, KitchenUnit.Millilitre), Amount.Of(1, KitchenUnit.Tablespoon),
            Amount.Of(1, KitchenUnit.Teaspoon),
        Amount.Of(new(1, 2), KitchenUnit.Teaspoon), Amount.Of(new(1, 4), KitchenUnit.Teaspoon), Amount.Of(new(1, 8), KitchenUnit.Teaspoon),
    ];

    private static readonly Amount[] s_moreCups = [Amount.Of(new(3, 4), KitchenUnit.Cup), Amount.Of(new(2, 3), KitchenUnit.Cup),
        Amount.Of(new(1, 8), KitchenUnit.Cup)];

    private readonly AmountPart[] _tools;

    private MeasuringTools(MeasuringSystem system, AmountPart[] tools, Fraction commonMeasure)
    {
        MeasuringSystem = system;
        _tools = tools;
        CommonMeasure = commonMeasure;
        Sizes = Array.ConvertAll(tools, tool => (Volume(tool, system) / commonMeasure).Numerator);
    }

    /// <summary>Whose cups and spoons they are.</summary>
    public MeasuringSystem MeasuringSystem { get; }

    /// <summary>The tools, from the largest to the smallest.</summary>
    public IReadOnlyList<AmountPart> Tools => _tools;

    /// <summary>The largest volume in millilitres that every tool is a whole multiple of: counting fills is then exact.</summary>
    internal Fraction CommonMeasure { get; }

    /// <summary>How many common measures each tool holds.</summary>
    internal long[] Sizes { get; }

    /// <summary>
    /// The set most kitchens have: cups of 1, 1/2, 1/3 and 1/4, a tablespoon, and teaspoons of 1, 1/2, 1/4 and 1/8; where there is no
    /// cup, a decilitre and half of one.
    /// </summary>
    /// <param name="system">Whose cups and spoons.</param>
    /// <exception cref="ArgumentNullException"><paramref name="system"/> is null.</exception>
    public static MeasuringTools Usual(MeasuringSystem system) => !Guard.NotNull(system).Defines(KitchenUnit.Cup)
        ? Of(system, s_decilitreTools) : Of(system,
        Amount.Of(1, KitchenUnit.Cup), Amount.Of(new(1, 2), KitchenUnit.Cup), Amount.Of(new(1, 3), KitchenUnit.Cup),
        Amount.Of(new(1, 4), KitchenUnit.Cup), Amount.Of(1, KitchenUnit.Tablespoon), Amount.Of(1, KitchenUnit.Teaspoon),
        Amount.Of(new(1, 2), KitchenUnit.Teaspoon), Amount.Of(new(1, 4), KitchenUnit.Teaspoon), Amount.Of(new(1, 8), KitchenUnit.Teaspoon));

    /// <summary>
    /// A full set: cups of 1, 3/4, 2/3, 1/2, 1/3, 1/4 and 1/8, tablespoons of 1 and 1/2, and teaspoons of 1, 3/4, 1/2, 1/4 and 1/8; where
    /// there is no cup, decilitres of 5, 1 and 1/2.
    /// </summary>
    /// <param name="system">Whose cups and spoons.</param>
    /// <exception cref="ArgumentNullException"><paramref name="system"/> is null.</exception>
    public static MeasuringTools Full(MeasuringSystem system) => Of(system,
        [.. Usual(system).Tools.Select(tool => Amount.Of(tool.Low, tool.Unit)),
        .. system.Defines(KitchenUnit.Cup) ? s_moreCups : [Amount.Of(500, KitchenUnit.Millilitre)],
        Amount.Of(new(1, 2), KitchenUnit.Tablespoon), Amount.Of(new(3, 4), KitchenUnit.Teaspoon)]);

    /// <summary>A set of your own.</summary>
    /// <param name="system">Whose cups and spoons.</param>
    /// <param name="tools">What each tool holds, such as <c>1/3 cup</c>; at least one and at most 64.</param>
    /// <returns>The set.</returns>
    /// <exception cref="ArgumentException">
    /// A tool is not a single volume from 0.01 to 1 000 000 mL that the system has, two hold the same, or their sizes have no
    /// common part of at least 1e-11 mL.
    /// </exception>
    public static MeasuringTools Of(MeasuringSystem system, params Amount[] tools)
    {
        Guard.NotNull(system);
        Guard.NotNull(tools);
        if (tools.Length is 0 or > 64)
            throw new ArgumentException($"There were {tools.Length} tools; 1 to 64 are needed.", nameof(tools));
        foreach (Amount tool in tools)
        {
            if (!tool.IsVolume || tool.PartCount != 1 || tool.IsRange)
                throw new ArgumentException($"The tool {tool} is not a single volume.", nameof(tools));
            if (tool.Millilitres(system) is not (>= 0.01 and <= 1_000_000))
                throw new ArgumentException($"The tool {tool} does not hold from 0.01 to 1000000 mL.", nameof(tools));
        }
        AmountPart[] sorted = [.. tools.Select(tool => tool.Part(0))];
        if (!TryCommonMeasure(sorted, system, out Fraction commonMeasure))
            throw new ArgumentException("The sizes of the tools have no common part of at least 1e-11 mL.", nameof(tools));
        Array.Sort(sorted, (left, right) => Volume(right, system).CompareTo(Volume(left, system)));
        for (int i = 1; i < sorted.Length; i++)
        {
            if (Volume(sorted[i], system) == Volume(sorted[i - 1], system))
                throw new ArgumentException($"The tools {sorted[i - 1]} and {sorted[i]} hold the same.", nameof(tools));
        }
        return new MeasuringTools(system, sorted, commonMeasure);
    }

    // Below 1e-11 mL the sizes would not fit in 64 bits with room to add; no tool in a drawer comes near.
    private static bool TryCommonMeasure(AmountPart[] tools, MeasuringSystem system, out Fraction common)
    {
        common = Fraction.Zero;
        foreach (AmountPart tool in tools)
        {
            Fraction perUnit = system.ExactMillilitresPer(tool.Unit);
            if (!Fraction.TryMultiply(tool.Low, perUnit, out Fraction volume))
                return false;
            Int128 a = (Int128)volume.Numerator * common.Denominator, b = (Int128)common.Numerator * volume.Denominator;
            while (b != 0)
                (a, b) = (b, a % b);
            if (!Fraction.TryReduce(a, (Int128)volume.Denominator * common.Denominator, out common) || common.ToDouble() < 1e-11)
                return false;
        }
        return true;
    }

    internal static Fraction Volume(AmountPart tool, MeasuringSystem system) => tool.Low * system.ExactMillilitresPer(tool.Unit);

    /// <summary>The system and its tools, such as <c>US customary: 1 cup, 1/2 cup</c>.</summary>
    public override string ToString() => $"{MeasuringSystem}: {string.Join(", ", _tools)}";
}
