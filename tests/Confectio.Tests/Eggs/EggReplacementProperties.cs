using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Eggs;

/// <summary>Two forms of one part, a mass of the first, and what is to stay.</summary>
public sealed record EggSwap(EggForm Outgoing, double Grams, EggForm Incoming, EggMatch Match)
{
    public override string ToString() => FormattableString.Invariant($"{Grams:R} g {Outgoing} by {Incoming}, {Match}");
}

/// <summary>So many eggs of a size.</summary>
public sealed record EggBasket(EggSize Size, double Eggs);

/// <summary>Swaps of any two forms of a part, powders at any moisture; baskets of any size of egg.</summary>
public static class EggGenerators
{
    private static Gen<double> Mass { get; } = from exponent in Gen.Choose(-2, 5) from mantissa in Gen.Choose(1000, 9999) select mantissa / 1000.0 * Math.Pow(10, exponent);

    private static Gen<EggSwap> SwapGen { get; } =
        from outgoing in Gen.Elements(Forms.All.ToArray()).SelectMany(AtAnyMoisture)
        from incoming in Gen.Elements(Forms.All.Where(form => form.Part == outgoing.Part).ToArray()).SelectMany(AtAnyMoisture)
        from grams in Mass
        from match in Gen.Elements(EggMatch.Solids, EggMatch.Protein)
        select new EggSwap(outgoing, grams, incoming, match);

    private static Gen<EggBasket> BasketGen { get; } =
        from size in Gen.Elements(EggSizeSystem.All.SelectMany(system => system.Sizes).ToArray())
        from eggs in Gen.Choose(1, 40_000)
        select new EggBasket(size, eggs / 4.0);

    public static Arbitrary<EggSwap> Swaps() => Arb.From(SwapGen);

    public static Arbitrary<EggBasket> Baskets() => Arb.From(BasketGen);

    private static Gen<EggForm> AtAnyMoisture(EggForm form) => form.IsDry ? Gen.Choose(1, 2000).Select(basisPoints => form.WithMoisture(basisPoints / 10000.0)) : Gen.Constant(form);
}

/// <summary>What holds for every replacement of one form of egg by another.</summary>
public sealed class EggReplacementProperties
{
    // A dozen roundings of 1.1e-16 on numbers that cancel at most 50-fold.
    private const double Relative = 1e-12;

    [Property(Arbitrary = [typeof(EggGenerators)], MaxTest = 300)]
    public void MassAndWhatIsMatchedStay(EggSwap swap)
    {
        EggReplacement made = EggReplacement.Of(swap.Outgoing, swap.Grams, swap.Incoming, swap.Match);
        Assert.Equal(swap.Grams, made.IncomingGrams.Likely + made.WaterGrams - made.AddedSugarGrams, Relative * Scale(made));
        double goes = swap.Match == EggMatch.Solids ? swap.Outgoing.EggSolidsFraction : swap.Outgoing.ProteinFraction;
        double comes = swap.Match == EggMatch.Solids ? swap.Incoming.EggSolidsFraction : swap.Incoming.ProteinFraction;
        Assert.Equal(goes * swap.Grams, comes * made.IncomingGrams.Likely, Relative * Scale(made));
        // The sugar that was added is counted, and nothing else is.
        Assert.Equal(swap.Incoming.Ingredient.Composition[Constituent.Sucrose] * made.IncomingGrams.Likely
            - swap.Outgoing.Ingredient.Composition[Constituent.Sucrose] * swap.Grams, made.AddedSugarGrams, Relative * Scale(made));
        // At equal solids the water stays too.
        if (swap.Match == EggMatch.Solids)
            Assert.Equal(swap.Outgoing.WaterFraction * swap.Grams, swap.Incoming.WaterFraction * made.IncomingGrams.Likely + made.WaterGrams, Relative * Scale(made));
    }

    [Property(Arbitrary = [typeof(EggGenerators)], MaxTest = 300)]
    public void ThereAndBackIsWhereItWas(EggSwap swap)
    {
        EggReplacement there = EggReplacement.Of(swap.Outgoing, swap.Grams, swap.Incoming, swap.Match);
        EggReplacement back = EggReplacement.Of(swap.Incoming, there.IncomingGrams.Likely, swap.Outgoing, swap.Match);
        Assert.Equal(swap.Grams, back.IncomingGrams.Likely, Relative * Scale(there));
        Assert.Equal(0, there.WaterGrams + back.WaterGrams, Relative * Scale(there));
        Assert.Equal(0, there.AddedSugarGrams + back.AddedSugarGrams, Relative * Scale(there));
    }

    [Property(Arbitrary = [typeof(EggGenerators)], MaxTest = 300)]
    public void PartsOfAReplacementAddUpToTheWhole(EggSwap swap)
    {
        EggReplacement whole = EggReplacement.Of(swap.Outgoing, swap.Grams, swap.Incoming, swap.Match);
        EggReplacement part = EggReplacement.Of(swap.Outgoing, 0.3 * swap.Grams, swap.Incoming, swap.Match), rest = EggReplacement.Of(swap.Outgoing, 0.7 * swap.Grams, swap.Incoming, swap.Match);
        Assert.Equal(whole.IncomingGrams.Likely, part.IncomingGrams.Likely + rest.IncomingGrams.Likely, Relative * Scale(whole));
        Assert.Equal(whole.WaterGrams, part.WaterGrams + rest.WaterGrams, Relative * Scale(whole));
    }

    [Property(Arbitrary = [typeof(EggGenerators)], MaxTest = 200)]
    public void AFormulaWithWaterEnoughKeepsWhatIsMatched(EggSwap swap)
    {
        Ingredient water = IngredientTable.BuiltIn.Get("water"), sugar = IngredientTable.BuiltIn.Get("icing sugar");
        double grams = swap.Grams;
        Formula before = Formula.Of("Fennmarsh batter", [FormulaLine.Of(swap.Outgoing.Ingredient, 2 * grams), FormulaLine.Of(sugar, grams), FormulaLine.Of(water, 20 * grams)]);
        EggFormulaReplacement made = EggReplacement.InFormula(before, swap.Outgoing, grams, swap.Incoming, swap.Match);
        Assert.True(made.IsExact);
        // 1e-9 of what the formula holds, as the replacement in the solver has it.
        double tolerance = 1e-9 * 23 * grams;
        Assert.Equal(before.TotalGrams + made.AddedSugarGrams, made.After.TotalGrams, tolerance);
        if (swap.Match == EggMatch.Protein)
        {
            Assert.Equal(Grams(before, FormulaPart.Protein), Grams(made.After, FormulaPart.Protein), tolerance);
            return;
        }
        Assert.Equal(Grams(before, FormulaPart.Water), Grams(made.After, FormulaPart.Water), tolerance);
        Assert.Equal(Grams(before, FormulaPart.Solids) + made.AddedSugarGrams, Grams(made.After, FormulaPart.Solids), tolerance);
    }

    [Property(Arbitrary = [typeof(EggGenerators)], MaxTest = 200)]
    public void EggsBecomeGramsAndEggsAgain(EggBasket basket)
    {
        EggCount count = EggCount.Of(basket.Eggs, basket.Size);
        Assert.All(Enum.GetValues<EggPart>(), part =>
        {
            EggCount back = EggCount.FromGrams(count.Grams(part).Likely, part, basket.Size);
            Assert.Equal(basket.Eggs, back.Eggs.Likely, Relative * basket.Eggs);
            Assert.True(back.Eggs.Low <= back.Eggs.Likely && back.Eggs.Likely <= back.Eggs.High);
        });
        Assert.Equal(Math.Ceiling(basket.Eggs), EggCount.FromGrams(count.Grams(EggPart.White).Likely, EggPart.White, basket.Size).EggsToBreak);
    }

    [Property(Arbitrary = [typeof(EggGenerators)], MaxTest = 200)]
    public void EggsBecomeCupsAndEggsAgain(EggBasket basket) => Assert.All(MeasuringSystem.All.Where(system => system.Defines(KitchenUnit.Cup)), system =>
    {
        EggCount count = EggCount.Of(basket.Eggs, basket.Size);
        double cups = count.Cups(Forms.FreshWhite, system).Likely, thousandths = Math.Round(1000 * cups);
        EggCount back = EggCount.FromAmount(Amount.Of(new Fraction((long)thousandths, 1000), KitchenUnit.Cup), Forms.FreshWhite, basket.Size, system);
        // The cup is written to a thousandth.
        Assert.Equal(basket.Eggs * thousandths / (1000 * cups), back.Eggs.Likely, Relative * basket.Eggs);
    });

    private static double Scale(EggReplacement made) => made.ReplacedGrams.Likely + made.IncomingGrams.Likely + Math.Abs(made.WaterGrams);

    private static double Grams(Formula formula, FormulaPart part) => formula.Lines.Sum(line => line.Grams.Likely * part.FractionIn(line.Ingredient));
}
