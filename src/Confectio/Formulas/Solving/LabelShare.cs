using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Formulas.Solving;

/// <summary>What a label says about one ingredient.</summary>
public sealed class LabelShare
{
    internal LabelShare(Ingredient ingredient, double percent, Spread? range)
    {
        Ingredient = ingredient;
        Percent = percent;
        Range = range;
    }

    /// <summary>The ingredient.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>The estimate: grams used for 100 g of the finished product.</summary>
    public double Percent { get; }

    /// <summary>
    /// The least and the most of it with which the label could still be printed as it is; null where no formula fits the label.
    /// </summary>
    public Spread? Range { get; }

    /// <summary>A line of text: <c>granulated sugar 41 % (38.9 to 42.3)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Ingredient.Name} {Percent:0.#} %")
        + (Range is Spread range ? string.Create(CultureInfo.InvariantCulture, $" ({range.Low:0.#} to {range.High:0.#})") : "");
}
