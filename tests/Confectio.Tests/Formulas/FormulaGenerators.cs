using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using FsCheck;
using FsCheck.Fluent;

namespace Confectio.Tests.Formulas;

/// <summary>A factor that a formula may be scaled by.</summary>
public sealed record ScaleFactor(double Value);

/// <summary>Formulas of built-in ingredients: weighed and measured lines, some ingredients twice, some with water boiled off.</summary>
public static class FormulaGenerators
{
    private static readonly Ingredient[] s_ingredients = [.. IngredientTable.BuiltIn.All.Where(ingredient => ingredient.Densities.Count > 0)];

    private static Gen<double> Grams { get; } =
        from exponent in Gen.Choose(-3, 5) from mantissa in Gen.Choose(1000, 9999) select mantissa / 1000.0 * Math.Pow(10, exponent);

    private static Gen<Amount> Volume { get; } =
        from numerator in Gen.Choose(1, 30) from denominator in Gen.Elements(1, 2, 3, 4, 8) from width in Gen.Choose(0, 1)
        from unit in Gen.Elements(KitchenUnit.Cup, KitchenUnit.Tablespoon, KitchenUnit.Teaspoon)
        select Amount.Between(new Fraction(numerator, denominator), new Fraction(numerator, denominator) + width, unit);

    // Few ingredients to choose from, so that some stand in several lines.
    private static Gen<FormulaLine> Line(Ingredient[] choice) => Gen.OneOf(
        from ingredient in Gen.Elements(choice) from grams in Grams select FormulaLine.Of(ingredient, grams),
        from ingredient in Gen.Elements(choice) from volume in Volume from system in Gen.Elements(MeasuringSystem.All.Where(system => system.Defines(KitchenUnit.Cup)).ToArray())
        from stated in Gen.Elements(true, false)
        select FormulaLine.Of(ingredient, volume, system, stated ? ingredient.Densities[^1].Packing : null));

    private static Gen<Formula> FormulaGen { get; } =
        from choice in Gen.Elements(s_ingredients).ArrayOf(6)
        from count in Gen.Choose(1, 12)
        from lines in Line(choice).ArrayOf(count)
        from percent in Gen.Elements(0, 0, 10, 50, 99)
        select Formula.Of("Fennmarsh random", lines, percent / 100.0 * lines.Sum(line => line.Grams.Likely * line.Ingredient.Composition[Constituent.Water]));

    private static Gen<ScaleFactor> FactorGen { get; } = Gen.OneOf(
        from numerator in Gen.Choose(1, 40) from denominator in Gen.Choose(1, 20) select new ScaleFactor((double)numerator / denominator),
        Grams.Select(value => new ScaleFactor(value / 100)));

    public static Arbitrary<Formula> Formulas() => Arb.From(FormulaGen);

    public static Arbitrary<ScaleFactor> Factors() => Arb.From(FactorGen);
}
