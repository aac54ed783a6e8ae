using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;
using Confectio.Uncertainty;

namespace Confectio.Baking;

/// <summary>What one publication says of one part of a cake at a height.</summary>
/// <remarks>Between two printed heights the range is that of both rows: nothing is interpolated.</remarks>
public sealed class AltitudeChange
{
    internal AltitudeChange(IReadOnlyList<AltitudeRule> rules, Ingredient? ingredient, double gramsAtSeaLevel, Spread? grams, bool isBeyond)
    {
        Rules = rules;
        Ingredient = ingredient;
        GramsAtSeaLevel = gramsAtSeaLevel;
        Grams = grams;
        IsBeyond = isBeyond;
    }

    /// <summary>The rows that stand on either side of the height; one where it is printed, or none is above it.</summary>
    public IReadOnlyList<AltitudeRule> Rules { get; }

    /// <summary>What it is about.</summary>
    public BatterPart Part => Rules[0].Part;

    /// <summary>Who printed it.</summary>
    public Source Source => Rules[0].Provenance.Source;

    /// <summary>The ingredient that changes; <see langword="null"/> of the oven.</summary>
    public Ingredient? Ingredient { get; }

    /// <summary>Grams of it in the formula; 0 of the oven.</summary>
    public double GramsAtSeaLevel { get; }

    /// <summary>Grams of it at the height, from the least to the most that is printed, likely in the middle of them; <see langword="null"/> of the oven.</summary>
    public Spread? Grams { get; }

    /// <summary>Whether the height is above the highest that this publication has a row for: its last row stands then, and goes no further.</summary>
    public bool IsBeyond { get; }

    /// <summary>How much hotter the oven, in kelvins: 15 to 25 °F are 8.3 to 13.9 K. <see langword="null"/> of an ingredient.</summary>
    public Spread? OvenKelvins => Part != BatterPart.Oven ? null
        : BatterAtAltitude.Between(Rules.Min(rule => rule.Low) / 1.8, Rules.Max(rule => rule.High) / 1.8);

    /// <summary>
    /// One line, such as <c>baking powder: 12 g at sea level, 9 to 10.5 g there (take 1/8 to 1/4 tsp of each tsp; Univ. of Wyoming Extension)</c>.
    /// </summary>
    public override string ToString()
    {
        string printed = string.Join("; ", Rules.Select(rule => string.Create(CultureInfo.InvariantCulture, $"at {rule.Feet} ft {rule.AsPrinted}")));
        string beyond = IsBeyond ? "; it has no row for a place so high" : "";
        string change = Grams is Spread grams
            ? $"{Ingredient!.Name}: {Number(GramsAtSeaLevel)} g at sea level, {Range(grams)} g there"
            : $"oven: {Range(new Spread(1.8 * OvenKelvins!.Value.Low, 1.8 * OvenKelvins.Value.Likely, 1.8 * OvenKelvins.Value.High, SpreadBasis.Sources))} °F ({Range(OvenKelvins.Value)} K) hotter";
        return $"{change} ({Source.ShortName}: {printed}{beyond})";
    }

    private static string Range(Spread spread) => Number(spread.Low) == Number(spread.High) ? Number(spread.Low) : $"{Number(spread.Low)} to {Number(spread.High)}";

    private static string Number(double value) => value.ToString(Math.Abs(value) < 100 ? "0.#" : "0", CultureInfo.InvariantCulture);
}
