using System.Globalization;
using Confectio.Sources;

namespace Confectio.Ingredients;

/// <summary>
/// One number of an equation for one substance: what it is, where it holds, how far the equation is off with it, and where it comes from.
/// The table coefficients.csv has a row for each.
/// </summary>
internal sealed class Coefficient
{
    internal Coefficient(string equation, Substance substance, string name, double value, string unit, Provenance provenance)
    {
        EquationKey = equation;
        Substance = substance;
        Name = name;
        Value = value;
        Unit = unit;
        Provenance = provenance;
    }

    /// <summary>All of them, in the order of the table.</summary>
    public static IReadOnlyList<Coefficient> All => CoefficientTable.BuiltIn.All;

    /// <summary>The key of the equation, such as <c>activity-norrish</c>.</summary>
    public string EquationKey { get; }

    /// <summary>The substance that it is for.</summary>
    public Substance Substance { get; }

    /// <summary>What it is called in the equation, such as <c>k</c>.</summary>
    public string Name { get; }

    /// <summary>The number.</summary>
    public double Value { get; }

    /// <summary>Its unit; <c>1</c> where it has none.</summary>
    public string Unit { get; }

    /// <summary>
    /// The least of what it holds for, in <see cref="RangeUnit"/>; <see langword="null"/> where that is not known or not asked.
    /// </summary>
    public double? Lowest { get; internal init; }

    /// <summary>
    /// The most of what it holds for, in <see cref="RangeUnit"/>; <see langword="null"/> where that is not known or not asked.
    /// </summary>
    public double? Highest { get; internal init; }

    /// <summary>Of what the two are and in which unit, such as <c>g/g</c> of the solution; empty where there are none.</summary>
    public string RangeUnit { get; internal init; } = "";

    /// <summary>The lowest temperature that it holds for, °C; <see langword="null"/> where that is not known or not asked.</summary>
    public double? MinimumCelsius { get; internal init; }

    /// <summary>The highest temperature that it holds for, °C; <see langword="null"/> where that is not known or not asked.</summary>
    public double? MaximumCelsius { get; internal init; }

    /// <summary>
    /// How far the equation with it is from what it was fitted to, at most, in <see cref="FitErrorUnit"/>; of an estimate, how far that may
    /// be off. <see langword="null"/> where it is not known.
    /// </summary>
    public double? FitError { get; internal init; }

    /// <summary>The unit of <see cref="FitError"/>; empty where there is none.</summary>
    public string FitErrorUnit { get; internal init; } = "";

    /// <summary>Where the number comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>One line, such as <c>activity-norrish of sucrose: k = 6.47</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{EquationKey} of {Substance.Key}: {Name} = {Value:R}{(Unit == "1" ? "" : " " + Unit)}");
}
