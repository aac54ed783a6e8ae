using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sugars;
using FsCheck;
using FsCheck.Fluent;

namespace Confectio.Tests.Sugars;

/// <summary>A syrup of any solutes, at most as strong as boiling points are worked out for, that boils under 120 kPa.</summary>
public sealed record Syrup(SugarSolution Solution)
{
    public override string ToString() => FormattableString.Invariant($"{Solution}; higher saccharides {Solution.HigherSaccharidesMolarMass:R} g/mol");
}

/// <summary>A share from 0 to 1, its ends among the usual ones.</summary>
public sealed record Share(double Value);

/// <summary>Solutions of one to ten solutes, and formulas of ingredients that have water or sugars in them.</summary>
public static class SugarGenerators
{
    public static readonly Constituent[] Dissolving =
    [
        Constituent.Sucrose, Constituent.Glucose, Constituent.Fructose, Constituent.Lactose, Constituent.Maltose, Constituent.OtherSugars,
        Constituent.HigherSaccharides, Constituent.Polyols, Constituent.Glycerol, Constituent.Acids,
    ];

    private static readonly Ingredient[] s_ingredients = [.. IngredientTable.BuiltIn.All.Where(ingredient => ingredient.Composition[Constituent.Water] > 0.05)];

    private static Gen<double> ShareGen { get; } = Gen.Frequency(
        (1, Gen.Elements(0.0, 1.0)),
        (8, Gen.Choose(0, 1_000_000).Select(millionths => millionths / 1e6)));

    // Some masses are nothing, some a thousand times others.
    private static Gen<double> Mass { get; } = Gen.Frequency(
        (2, Gen.Constant(0.0)),
        (3, from exponent in Gen.Choose(-1, 2) from mantissa in Gen.Choose(1000, 9999) select mantissa / 1000.0 * Math.Pow(10, exponent)));

    private static Gen<double> HigherMolarMass { get; } = Gen.Frequency(
        (1, Gen.Elements(504.0, 772.0, 20000.0)),
        (2, Gen.Choose(504, 2500).Select(value => (double)value)));

    private static Gen<Syrup> SyrupGen { get; } =
        from masses in Mass.ArrayOf(Dissolving.Length)
        from first in Gen.Choose(0, Dissolving.Length - 1)
        from higher in HigherMolarMass
        from share in Gen.Choose(1, 1_000_000)
        select Make(masses, first, higher, share / 1e6);

    private static Gen<FormulaLine> Line { get; } =
        from ingredient in Gen.Elements(s_ingredients) from grams in Gen.Choose(1, 500_000) select FormulaLine.Of(ingredient, grams / 100.0);

    private static Gen<Formula> FormulaGen { get; } =
        from count in Gen.Choose(1, 8)
        from lines in Line.ArrayOf(count)
        from percent in Gen.Elements(0, 0, 10, 60, 95)
        select Formula.Of("Fennmarsh random", lines, percent / 100.0 * lines.Sum(line => line.Grams.Likely * line.Ingredient.Composition[Constituent.Water]));

    public static Arbitrary<Syrup> Syrups() => Arb.From(SyrupGen);

    public static Arbitrary<Share> Shares() => Arb.From(ShareGen.Select(value => new Share(value)));

    public static Arbitrary<Formula> Formulas() => Arb.From(FormulaGen);

    private static Syrup Make(double[] masses, int first, double higher, double share)
    {
        if (masses[first] == 0)
            masses[first] = 1;
        SugarSolution dry = SugarSolution.FromGrams(Dissolving.Zip(masses, KeyValuePair.Create), higher);
        // Dextrins of high molar mass bind water so strongly, by these equations, that they boil nowhere: such a syrup is thinned.
        SugarSolution solution = dry.WithSolids(share * dry.MaximumSolids);
        while (BoilsNowhere(solution))
            solution = solution.WithSolids(solution.Solids / 2);
        return new Syrup(solution);
    }

    private static bool BoilsNowhere(SugarSolution solution)
    {
        try
        {
            _ = solution.BoilingCelsius(AirPressure.FromKilopascals(120));
            return false;
        }
        catch (InvalidOperationException nowhere) when (nowhere.Message.Contains("boils nowhere", StringComparison.Ordinal))
        {
            return true;
        }
    }
}
