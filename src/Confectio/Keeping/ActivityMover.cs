using System.Globalization;
using Confectio.Ingredients;

namespace Confectio.Keeping;

/// <summary>What a line of a formula does to its water activity.</summary>
public sealed class ActivityMover
{
    internal ActivityMover(Ingredient ingredient, double change)
    {
        Ingredient = ingredient;
        Change = change;
    }

    /// <summary>The ingredient.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>By how much the activity would change with a tenth more of the ingredient, by the likely model.</summary>
    public double Change { get; }

    /// <summary>A line of text: <c>a tenth more honey: -0.012</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"a tenth more {Ingredient.Name}: {Change:+0.000;-0.000}");
}
