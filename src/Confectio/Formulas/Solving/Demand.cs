using System.Globalization;
using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>One thing that is asked of a formula: a target, a limit, a ratio, a total.</summary>
public sealed class Demand
{
    internal Demand(DemandKind kind, double low, double high)
    {
        Kind = kind;
        Low = low;
        High = high;
    }

    /// <summary>What kind of thing is asked.</summary>
    public DemandKind Kind { get; }

    /// <summary>
    /// The low end: a mass fraction for a target or requirement, grams of the first ingredient to a gram of the second for a ratio,
    /// otherwise grams. Minus infinity where there is none.
    /// </summary>
    public double Low { get; }

    /// <summary>The high end, in the unit of <see cref="Low"/>; equal to it where one value is asked for. Infinity where there is none.</summary>
    public double High { get; }

    /// <summary>The part whose share is asked for; null for other kinds.</summary>
    public FormulaPart? Part { get; internal init; }

    /// <summary>The part it is a share of; null for other kinds.</summary>
    public FormulaPart? Of { get; internal init; }

    /// <summary>The ingredient a limit, a fixed line, an option or a ratio is about; null for other kinds.</summary>
    public Ingredient? Ingredient { get; internal init; }

    /// <summary>The second ingredient of a ratio; null for other kinds.</summary>
    public Ingredient? ToIngredient { get; internal init; }

    /// <summary>For a target: the miss that counts as one, as a mass fraction. Targets are weighed against each other by it.</summary>
    public double Tolerance { get; internal init; }

    /// <summary>For a target: 1 comes before 2. 0 for other kinds, which must be kept.</summary>
    public int Priority { get; internal init; }

    /// <summary>The demand in words: <c>fat at least 40 %</c>, <c>chocolate from 300 to 600 g</c>.</summary>
    public string Sentence => Say(Low, High);

    /// <summary>The same as <see cref="Sentence"/>.</summary>
    public override string ToString() => Sentence;

    // A limit has two ends, and often only one of them is to blame.
    internal string SayEnd(int side) =>
        Say(side > 0 ? Low : double.NegativeInfinity, side > 0 ? double.PositiveInfinity : High, Low == High);

    internal Demand Between(double low, double high) => new(Kind, low, high)
    {
        Part = Part,
        Of = Of,
        Ingredient = Ingredient,
        ToIngredient = ToIngredient,
        Tolerance = Tolerance,
        Priority = Priority,
    };

    private string Say(double low, double high, bool oneValue = false) => Kind switch
    {
        DemandKind.Target or DemandKind.Requirement => $"{Part} {Ends(low, high, oneValue, 100, " %")}{(Of!.Equals(FormulaPart.Everything) ? "" : $" of the {Of}")}",
        DemandKind.Ratio => $"{Ingredient!.Name} {Ends(low, high, oneValue, 1, "")} times {ToIngredient!.Name}",
        DemandKind.Total => $"a total of {Ends(low, high, oneValue, 1, " g")}",
        DemandKind.BoilOff => $"water boiled off {Ends(low, high, oneValue, 1, " g")}",
        DemandKind.Optional => $"{Ingredient!.Name} left out or {Ends(low, high, oneValue, 1, " g")}",
        _ => $"{Ingredient!.Name} {Ends(low, high, oneValue, 1, " g")}",
    };

    // One value is one value, whichever of its ends is to blame.
    private static string Ends(double low, double high, bool oneValue, double factor, string unit)
    {
        if (oneValue)
            low = high = double.IsFinite(low) ? low : high;
        if (low == high)
            return Number(low * factor) + unit;
        if (double.IsNegativeInfinity(low) && double.IsPositiveInfinity(high))
            return "without a limit";
        if (double.IsNegativeInfinity(low))
            return "at most " + Number(high * factor) + unit;
        if (double.IsPositiveInfinity(high))
            return "at least " + Number(low * factor) + unit;
        return $"from {Number(low * factor)} to {Number(high * factor)}{unit}";
    }

    internal static string Number(double value) => Math.Round(value, 4).ToString("0.####", CultureInfo.InvariantCulture);
}
