using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Keeping;
using Confectio.Sugars;

namespace Confectio.Comparisons;

/// <summary>The difference of two water activities: a model is off in both alike, and so is the water of an ingredient.</summary>
/// <remarks>
/// Likely is the difference of what <see cref="KeepingAnswer"/> says. Its range is that of the differences by each model that reaches both, widened by how much farther
/// models and measurements part at the one activity than at the other, by what salt may do (none of it counts at the high end of an activity), by the water of each
/// ingredient, and by measures.
/// </remarks>
internal static class ActivityDifference
{
    private static readonly WaterActivityModel[] s_models = [WaterActivityModel.StarzakPeacock, WaterActivityModel.Norrish, WaterActivityModel.Ross];

    public static ComparedFigure Of(FormulaPair pair, KeepingAnswer first, KeepingAnswer second)
    {
        const string Name = "water activity at 25 °C";
        if (first.WaterActivity is not Spread a || second.WaterActivity is not Spread b)
        {
            string why = string.Join("; ", new[] { ("the first", first), ("the second", second) }.Where(one => one.Item2.WaterActivity is null).Select(one => $"of {one.Item1}: {one.Item2.WhyNoActivity.TrimEnd('.')}"));
            return new ComparedFigure(Name, "", first.WaterActivity, second.WaterActivity, null, why);
        }
        double likely = b.Likely - a.Likely, low = likely, high = likely;
        SugarSolution one = SugarSolution.Of(pair.First).AsItStands(first.Celsius), other = SugarSolution.Of(pair.Second).AsItStands(second.Celsius);
        double salt = b.Likely / Default(other) * Default(one) / a.Likely; // 1 where both have as much of it in their water
        foreach (WaterActivityModel model in s_models)
        {
            if (Of(one, model) is double x && Of(other, model) is double y)
            {
                double difference = y * (b.Likely / Default(other)) - x * (a.Likely / Default(one));
                (low, high) = (Math.Min(low, difference), Math.Max(high, difference));
            }
        }
        // Half the width at the one end: from likely to the high end no salt counts, so that this is of the models and their least error.
        double least = Math.Abs((b.High - Default(other)) - (a.High - Default(one))), salted = Math.Abs(Math.Log(salt)) * Math.Max(a.Likely, b.Likely);
        double u = ErrorsOf(pair, Default(one), Default(other));
        double widen = Math.Sqrt(4 * u * u + least * least + salted * salted);
        return new ComparedFigure(Name, "", a, b, low - widen < high + widen ? new Spread(low - widen, likely, high + widen, SpreadBasis.Models) : Spread.Exactly(likely),
            "a model is taken to be off in both alike");
    }

    private static double Default(SugarSolution standing) => standing.WaterActivityAllDissolved(25);

    private static double? Of(SugarSolution standing, WaterActivityModel model)
    {
        try
        {
            return standing.WaterActivityAllDissolved(25, model);
        }
        catch (InvalidOperationException)
        {
            return null; // beyond what the rule is for
        }
    }

    // Each error moved by one standard uncertainty, in both formulas at once; what moves the activity beyond what models reach is left out.
    private static double ErrorsOf(FormulaPair pair, double first, double second)
    {
        SharedErrors errors = new();
        foreach (Ingredient ingredient in pair.Ingredients)
        {
            double a = Drier(pair.First, ingredient) is double x ? x - first : 0, b = Drier(pair.Second, ingredient) is double y ? y - second : 0;
            errors.AddAlone(b - a);
        }
        foreach ((Formula formula, double at, int sign) in new[] { (pair.First, first, -1), (pair.Second, second, 1) })
        {
            for (int i = 0; i < formula.Lines.Count; i++)
            {
                if (formula.Lines[i].Measured is not ConvertedMass mass || !(mass.Grams.StandardUncertainty > 0))
                    continue;
                int place = i;
                Formula more = Formula.Of("", formula.Lines.Select((line, j) => FormulaLine.Of(line.Ingredient, line.Grams.Likely + (j == place ? mass.Grams.StandardUncertainty : 0))), formula.BoiledOffGrams);
                if (ActivityOf(more) is not double moved)
                    continue;
                if (mass is { ThroughDensity: true, By: Conversion by })
                    errors.Add((by.Ingredient, (by.Density.Basis ?? by.Density).Packing), sign * (moved - at));
                else
                    errors.AddAlone(moved - at);
            }
        }
        return errors.StandardUncertainty;
    }

    // With one standard uncertainty less of water in an ingredient, as if that had boiled off.
    private static double? Drier(Formula formula, Ingredient ingredient)
    {
        double water = formula.Lines.Where(line => line.Ingredient == ingredient).Sum(line => line.Grams.Likely * FormulaPart.Water.StandardUncertaintyIn(line.Ingredient));
        if (water <= 0)
            return null;
        try
        {
            return ActivityOf(Formula.Of("", formula.Lines, formula.BoiledOffGrams + water));
        }
        catch (ArgumentException)
        {
            return null; // there is not so much water in it
        }
    }

    private static double? ActivityOf(Formula formula)
    {
        try
        {
            double activity = SugarSolution.Of(formula).AsItStands(25).ActivityOrNone(25);
            return double.IsFinite(activity) ? activity : null;
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException)
        {
            return null;
        }
    }
}
