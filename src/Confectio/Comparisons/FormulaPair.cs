using Confectio.Formulas;
using Confectio.Ingredients;

namespace Confectio.Comparisons;

/// <summary>Two formulas side by side: their ingredients once each, and the difference of anything that is so much in a gram of each ingredient.</summary>
internal sealed class FormulaPair
{
    private readonly Dictionary<Ingredient, double> _first, _second;

    public FormulaPair(Formula first, Formula second)
    {
        First = first;
        Second = second;
        _first = Grams(first);
        _second = Grams(second);
        Ingredients = [.. _first.Keys.Concat(_second.Keys).Distinct()];
        Basis = first.Lines.Concat(second.Lines).Select(line => line.Grams.Basis).Append(SpreadBasis.Coverage).Aggregate(Spread.Worse);
    }

    public Formula First { get; }

    public Formula Second { get; }

    /// <summary>Every ingredient once, in the order of the first and then of the second.</summary>
    public IReadOnlyList<Ingredient> Ingredients { get; }

    /// <summary>The less sure of coverage and what any measured line is.</summary>
    public SpreadBasis Basis { get; }

    /// <summary>Its share of what comes out, in the first and in the second: x/M.</summary>
    public (double First, double Second) Share(Ingredient ingredient) =>
        (_first.GetValueOrDefault(ingredient) / First.TotalGrams, _second.GetValueOrDefault(ingredient) / Second.TotalGrams);

    /// <summary>The errors of the difference of what is so much in a gram of each ingredient, less so much in a gram of water that boils off.</summary>
    public SharedErrors ErrorsOf(Func<Ingredient, double> inAGram, Func<Ingredient, double> standardUncertainty, double inBoiledOffWater, out double first, out double second)
    {
        double a = Sum(_first, First, inAGram, inBoiledOffWater), b = Sum(_second, Second, inAGram, inBoiledOffWater);
        SharedErrors errors = new();
        foreach (Ingredient ingredient in Ingredients)
        {
            (double inFirst, double inSecond) = Share(ingredient);
            Ingredient mine = First.Own(ingredient), other = Second.Own(ingredient);
            if (mine.IsMadeAs(other))
            {
                errors.AddAlone((inSecond - inFirst) * standardUncertainty(mine));
            }
            else
            {
                // Two tables that disagree about a food: two foods.
                errors.AddAlone(inFirst * standardUncertainty(mine));
                errors.AddAlone(inSecond * standardUncertainty(other));
            }
        }
        errors.AddMeasures(First, ingredient => -(inAGram(ingredient) - a) / First.TotalGrams);
        errors.AddMeasures(Second, ingredient => (inAGram(ingredient) - b) / Second.TotalGrams);
        (first, second) = (a, b);
        return errors;
    }

    /// <summary>A part of both, in per cent of what comes out.</summary>
    public ComparedFigure Part(FormulaPart part, Balance first, Balance second)
    {
        SharedErrors errors = ErrorsOf(part.FractionIn, part.StandardUncertaintyIn, part.FractionOfBoiledOffWater, out double a, out double b);
        return new ComparedFigure(part.Name, "%", first[part].Fraction * 100, second[part].Fraction * 100, errors.Around(b - a, Basis) * 100, "");
    }

    private static double Sum(Dictionary<Ingredient, double> grams, Formula formula, Func<Ingredient, double> inAGram, double inBoiledOffWater)
    {
        double sum = -inBoiledOffWater * formula.BoiledOffGrams;
        foreach ((Ingredient ingredient, double mass) in grams)
            sum += mass * inAGram(ingredient);
        return sum / formula.TotalGrams;
    }

    private static Dictionary<Ingredient, double> Grams(Formula formula)
    {
        Dictionary<Ingredient, double> grams = [];
        foreach (FormulaLine line in formula.Lines)
            grams[line.Ingredient] = grams.GetValueOrDefault(line.Ingredient) + line.Grams.Likely;
        return grams;
    }
}
