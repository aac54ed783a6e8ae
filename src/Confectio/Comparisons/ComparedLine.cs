using System.Globalization;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Comparisons;

/// <summary>An ingredient in two formulas: what is put in of it, and its share of all that is put in. The shares do not mind how much either makes.</summary>
public sealed class ComparedLine
{
    internal ComparedLine(Ingredient ingredient, double? firstGrams, double? secondGrams, ComparedFigure percent, double? firstBakers, double? secondBakers)
    {
        Ingredient = ingredient;
        FirstGrams = firstGrams;
        SecondGrams = secondGrams;
        Percent = percent;
        FirstBakersPercent = firstBakers;
        SecondBakersPercent = secondBakers;
    }

    /// <summary>The ingredient.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>What is put in of it in the first, g; <see langword="null"/> where no line has it.</summary>
    public double? FirstGrams { get; }

    /// <summary>What is put in of it in the second, g; <see langword="null"/> where no line has it.</summary>
    public double? SecondGrams { get; }

    /// <summary>Its share of what is put in, per cent.</summary>
    public ComparedFigure Percent { get; }

    /// <summary>Its share on the flour of the first, per cent; <see langword="null"/> where one of the two has no flour.</summary>
    public double? FirstBakersPercent { get; }

    /// <summary>Its share on the flour of the second, per cent; <see langword="null"/> where one of the two has no flour.</summary>
    public double? SecondBakersPercent { get; }

    /// <summary>Whether only the first has a line of it.</summary>
    public bool IsOnlyInFirst => SecondGrams is null;

    /// <summary>Whether only the second has a line of it.</summary>
    public bool IsOnlyInSecond => FirstGrams is null;

    /// <summary>One line, such as <c>unsalted butter: 250 g (33.3 %) and 300 g (36.4 %)</c>.</summary>
    public override string ToString() => $"{VisibleText.Of(Ingredient.Name)}: {Text(FirstGrams, Percent.First)} and {Text(SecondGrams, Percent.Second)}";

    private static string Text(double? grams, Spread? percent) => grams is double mass ? string.Create(CultureInfo.InvariantCulture, $"{mass:0.##} g ({percent?.Likely ?? 0:0.0} %)") : "none";
}
