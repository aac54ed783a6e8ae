using System.Globalization;
using Confectio.Formulas.Solving;
using Confectio.Measures;
using Confectio.Sugars;

namespace Confectio.Vetting;

/// <summary>How a card is judged. Every default stands here.</summary>
public sealed class CardVettingOptions
{
    /// <summary>The defaults.</summary>
    public static CardVettingOptions Default { get; } = new();

    /// <summary>The measuring system the card is said to use; <see langword="null"/> (the default) finds it from all lines together.</summary>
    public MeasuringSystem? System { get; init; }

    /// <summary>
    /// The air of the kitchen, which decides where syrup boils; <see langword="null"/> (the default) for the height that the card states,
    /// and sea level where it states none.
    /// </summary>
    public AirPressure? Pressure { get; init; }

    /// <summary>By whose rules its nutrition is held against the ingredients: carbohydrate has fibre in it in the United States.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a defined one.</exception>
    public LabelRules? NutritionRules
    {
        get;
        init => field = value is LabelRules rules ? Guard.Defined(rules, nameof(NutritionRules)) : null;
    }

    /// <summary>The expected share of right lines among those called wrong, at most: 0.05.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not from 0.0001 to 0.5.</exception>
    public double FalseDiscoveryRate
    {
        get;
        init => field = Guard.InRange(value, 0.0001, 0.5, nameof(FalseDiscoveryRate));
    } = 0.05;

    /// <summary>What the card is judged by.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{System?.Name ?? "any measuring system"}, {(Pressure is AirPressure pressure ? pressure.ToString() : "the height that the card states")}, false discovery {FalseDiscoveryRate:0.####}");
}
