using System.Globalization;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Costs;

/// <summary>The whole packs of an ingredient that a batch takes, and what is left of them.</summary>
public sealed class PackPurchase
{
    internal PackPurchase(Price price, Spread neededGrams, double packs, double packsToBeSure)
    {
        Price = price;
        NeededGrams = neededGrams;
        Packs = packs;
        PacksToBeSure = packsToBeSure;
    }

    /// <summary>The ingredient.</summary>
    public Ingredient Ingredient => Price.Ingredient;

    /// <summary>The price of a pack.</summary>
    public Price Price { get; }

    /// <summary>What the batch takes of it, g, as it is used: after the waste.</summary>
    public Spread NeededGrams { get; }

    /// <summary>How many packs, by the likely masses.</summary>
    public double Packs { get; }

    /// <summary>How many packs are enough where the measures and the pack are at their worst.</summary>
    public double PacksToBeSure { get; }

    /// <summary>What the packs cost, in the currency of the price.</summary>
    public decimal Cost => Price.Amount * (decimal)Packs;

    /// <summary>What is left of the packs, g, as it is used, by the likely masses.</summary>
    public double LeftOverGrams => Math.Max(0, Packs * Price.UsableGrams.Likely - NeededGrams.Likely);

    /// <summary>One line, such as <c>1 × 1 kg unsalted butter, EUR 6.95, 750 g left over</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Packs:0} × {Price.Pack} {VisibleText.Of(Ingredient.Name)}, {Price.Currency.Write(Cost)}, {LeftOverGrams:0.#} g left over")
        + (PacksToBeSure > Packs ? string.Create(CultureInfo.InvariantCulture, $"; {PacksToBeSure:0} to be sure") : "");
}
