using Confectio.Conversions;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Eggs;

/// <summary>One form of egg for another: the balance of solids, protein and water, the kitchen's rules, spoons, and whole formulas.</summary>
public sealed class EggReplacementTests
{
    private static readonly MeasuringSystem s_us = MeasuringSystem.UsCustomary;
    private static readonly EggSize s_usLarge = EggSizeSystem.Get("us").Size("large");

    // USDA Standard Reference: 100 less the water, and the protein, g/100 g.
    [Theory]
    [InlineData("fresh-white", "01124", 12.43, 10.90)]
    [InlineData("pasteurised-white", "01172", 11.03, 9.30)]
    [InlineData("frozen-white", "01172", 11.03, 9.30)]
    [InlineData("dried-white", "01136", 91.46, 82.40)]
    [InlineData("dried-white-flakes", "01135", 85.38, 76.92)]
    [InlineData("dried-white-sugar-in", "01173", 94.20, 81.10)]
    [InlineData("fresh-yolk", "01125", 47.69, 15.86)]
    [InlineData("pasteurised-yolk", "01126", 43.23, 15.33)]
    [InlineData("sugared-yolk", "01127", 48.77, 13.87)]
    [InlineData("fresh-whole", "01123", 23.85, 12.56)]
    public void FormsHaveTheSolidsAndProteinOfTheFoodTables(string key, string number, double solids, double protein)
    {
        EggForm form = Forms.Get(key);
        Assert.Equal(number, form.Ingredient.StandardReferenceNumber);
        Assert.Equal(solids, 100 * form.SolidsFraction.Likely, 1e-9);
        Assert.Equal(protein, 100 * form.ProteinFraction, 1e-9);
        Assert.Equal(key.Contains("dried", StringComparison.Ordinal), form.IsDry);
    }

    // NDB 01124: 87.57 + 10.90 + 0.17 + 0.63 + 0.73.
    [Fact]
    public void TheFreshWhiteClosesAtAHundred() => Assert.Equal(100.00, 100 * Forms.FreshWhite.Ingredient.Composition.Sum, 0.05);

    // C03 and C04: the USDA's own factors of egg (4.36, 9.02, 3.68 kcal/g) and of butter (4.27, 8.79, 3.87), on the compositions that are built in, with carbohydrate by
    // difference as the tables have it; SR prints 52 and 717.
    [Theory]
    [InlineData("egg-white", 4.36, 9.02, 3.68, 51.74, 52)]
    [InlineData("butter-unsalted", 4.27, 8.79, 3.87, 716.82, 717)]
    public void TheEnergyByTheFactorsOfTheFoodTablesIsThatOfTheFoodTables(string id, double protein, double fat, double carbohydrate, double expected, double printed)
    {
        Composition made = IngredientTable.BuiltIn.Get(id).Composition;
        double ash = made[Constituent.Salt] + made[Constituent.OtherAsh];
        double rest = 1 - made[Constituent.Water] - made[Constituent.Protein] - made[Constituent.Fat] - ash;
        double kilocalories = 100 * (protein * made[Constituent.Protein] + fat * made[Constituent.Fat] + carbohydrate * rest);
        Assert.Equal(expected, kilocalories, 0.01);
        Assert.Equal(printed, Math.Round(kilocalories));
    }

    // 4-9-4 on the printed macros of NDB 01124 is 48.05 kcal; the library counts no energy for the 0.02 g that is no sugar, 0.08 kcal.
    // The factors of the USDA for egg (4.36, 9.02, 3.68) are not in the library, so 51.74 kcal is not a number it can give.
    [Fact]
    public void TheEnergyOfWhiteByTheFactorsOfTheUnion() =>
        Assert.Equal(4 * 10.90 + 9 * 0.17 + 4 * 0.73, 100 * Forms.FreshWhite.Ingredient.Composition.KilocaloriesPerGram + 4 * 0.02, 1e-9);

    // Mass balance (1 − m)/s − 1, worked out by hand for the moistures of NDB 01136 and 01173, and for 12 % solids of 8 % moisture.
    [Theory]
    [InlineData(0.0854, 0.1243, 6.358)]
    [InlineData(0.0854, 0.1103, 7.292)]
    [InlineData(0.08, 0.12, 6.667)]
    [InlineData(0.0580, 0.1243, 6.578)]
    public void WaterForAGramOfPowder(double moisture, double solids, double water)
    {
        Assert.Equal(water, EggReplacement.WaterPerGram(moisture, solids), 5e-4);
        EggReplacement made = EggReplacement.Of(Forms.FreshWhite, 100, Forms.DriedWhite.WithMoisture(moisture), targetSolids: solids);
        Assert.Equal(water, made.WaterGrams / made.IncomingGrams.Likely, 5e-4);
        Assert.Equal(100 / (1 + water), made.IncomingGrams.Likely, 0.002);
    }

    // The table that belongs on the wall: whatever moisture and target, the powder's solids are all the solids there are.
    [Fact]
    public void TheReconstitutionTableIsABalance()
    {
        for (double moisture = 0.04; moisture < 0.1201; moisture += 0.005)
        {
            EggForm powder = Forms.DriedWhite.WithMoisture(moisture);
            Assert.Equal(1 - moisture, powder.SolidsFraction.Likely, 1e-12);
            for (double solids = 0.105; solids < 0.1251; solids += 0.0025)
            {
                double water = EggReplacement.WaterPerGram(moisture, solids);
                Assert.Equal(solids, (1 - moisture) / (1 + water), 1e-12);
                EggReplacement made = EggReplacement.Of(Forms.PasteurisedWhite, 250, powder, targetSolids: solids);
                Assert.Equal(100 * solids, made.SolidsPercent, 1e-9);
                Assert.Equal(water, made.WaterGrams / made.IncomingGrams.Likely, 1e-9);
                Assert.Equal(250, made.IncomingGrams.Likely + made.WaterGrams, 1e-9);
            }
        }
    }

    // 8.54 to 8.0 %: protein 82.40 × 0.92/0.9146.
    [Fact]
    public void AnotherMoistureKeepsEverythingElseInProportion()
    {
        EggForm dry = Forms.DriedWhite.WithMoisture(0.08);
        Assert.Equal(82.40 * 0.92 / 0.9146, 100 * dry.ProteinFraction, 1e-9);
        Assert.Equal(0.08, dry.WaterFraction);
        Assert.All(Enum.GetValues<Constituent>().Where(part => part != Constituent.Water), part =>
            Assert.Equal(Forms.DriedWhite.Ingredient.Composition[part] * 0.92 / 0.9146, dry.Ingredient.Composition[part], 1e-15));
        Assert.Same(Forms.DriedWhite.Ingredient, Forms.DriedWhite.WithMoisture(0.0854).Ingredient);
        Assert.Same(Forms.Get("dried-whole"), Forms.Get("dried-whole").WithMoisture(Forms.Get("dried-whole").WaterFraction));
        Assert.Equal(Evidence.Computed, dry.Ingredient.CompositionProvenance.Evidence);
        Assert.Equal("egg-white-dried-moisture-8", dry.Ingredient.Id);
        Assert.Equal("egg-white-dried-moisture-6-25", Forms.DriedWhite.WithMoisture(0.0625).Ingredient.Id);
        Assert.Equal(Forms.DriedWhite.Ingredient.Allergens, dry.Ingredient.Allergens);
        // And back again.
        Assert.Equal(0.824, dry.WithMoisture(0.0854).ProteinFraction, 1e-12);
    }

    // Worked by hand: 100·0.109/0.824 = 13.228 g at equal protein, 100·0.1243/0.9146 = 13.591 g at equal solids.
    [Fact]
    public void SolidsAndProteinAskForDifferentPowder()
    {
        EggReplacement solids = EggReplacement.Of(Forms.FreshWhite, 100, Forms.DriedWhite), protein = EggReplacement.Of(Forms.FreshWhite, 100, Forms.DriedWhite, EggMatch.Protein);
        Assert.Equal(12.43 / 0.9146, solids.IncomingGrams.Likely, 1e-9);
        Assert.Equal(10.9 / 0.824, protein.IncomingGrams.Likely, 1e-9);
        Assert.Equal(100 - 12.43 / 0.9146, solids.WaterGrams, 1e-9);
        Assert.Equal(1, solids.SolidsKept, 1e-12);
        Assert.Equal(1, protein.ProteinKept, 1e-12);
        Assert.Equal(12.43 / 0.9146 * 0.824 / 10.9, solids.ProteinKept, 1e-9);
        Assert.Equal(12.43, solids.SolidsPercent, 1e-9);
        Assert.NotEmpty(solids.Preparation);
        Assert.Contains("minutes", solids.Preparation, StringComparison.Ordinal);
    }

    // By count (USDA 33 g), by cup (the density of the table) and by gram it is the same replacement.
    [Fact]
    public void WhitesAreReplacedByCountByCupAndByGram()
    {
        EggReplacement counted = EggReplacement.Of(EggCount.Of(6, s_usLarge), Forms.DriedWhite), weighed = EggReplacement.Of(Forms.FreshWhite, 198, Forms.DriedWhite);
        Assert.Equal(weighed.IncomingGrams.Likely, counted.IncomingGrams.Likely, 1e-9);
        Assert.Equal(198 * 0.1243 / 0.9146, counted.IncomingGrams.Likely, 1e-9);
        Assert.Equal(weighed.WaterGrams, counted.WaterGrams, 1e-9);
        Assert.True(counted.IncomingGrams.High > counted.IncomingGrams.Likely);
        Assert.Equal(weighed.IncomingGrams.Likely, weighed.IncomingGrams.High);
        EggReplacement cup = EggReplacement.Of(Forms.FreshWhite, Amount.Parse("1 cup"), s_us, Forms.DriedWhite);
        Assert.Equal(243, cup.ReplacedGrams.Likely, 0.5); // USDA prints whole grams; with the voice of Choi and Okos it is 243.3
        EggReplacement piece = EggReplacement.Of(Forms.FreshWhite, Amount.Parse("6 large"), s_us, Forms.DriedWhite);
        Assert.Equal(198, piece.ReplacedGrams.Likely, 1e-9);
        Assert.Equal(17, EggReplacement.Of(EggCount.Of(1, s_usLarge), Forms.Get("dried-yolk")).ReplacedGrams.Likely);
        Assert.Equal(50, EggReplacement.Of(EggCount.Of(1, s_usLarge), Forms.Get("dried-whole")).ReplacedGrams.Likely);
    }

    // Pasteurised white has less in it: 100 g of fresh need 112.69 g, and the formula gives up 12.69 g of water.
    [Fact]
    public void AWetterWhiteTakesWaterFromTheFormula()
    {
        EggReplacement made = EggReplacement.Of(Forms.FreshWhite, 100, Forms.PasteurisedWhite);
        Assert.Equal(100 * 12.43 / 11.03, made.IncomingGrams.Likely, 1e-9);
        Assert.Equal(100 - 100 * 12.43 / 11.03, made.WaterGrams, 1e-9);
        Assert.Contains("12.69 g water less", made.ToString(), StringComparison.Ordinal);
        Assert.Null(made.InMeasures(s_us).Water);
    }

    // NDB 01127: 48.77 % solids, of which 10.13 sucrose (total sugars 10.30 less 0.17). 47.69/38.64 of sugared yolk, with its sugar off the formula.
    [Fact]
    public void TheSugarOfSugaredYolkIsCounted()
    {
        EggReplacement made = EggReplacement.Of(Forms.Get("fresh-yolk"), 100, Forms.Get("sugared-yolk"));
        double yolk = 100 * 47.69 / 38.64;
        Assert.Equal(yolk, made.IncomingGrams.Likely, 1e-9);
        Assert.Equal(0.1013 * yolk, made.AddedSugarGrams, 1e-9);
        // The water stays: 52.31 g go out, 51.23 % of the sugared yolk come in, the rest is given up.
        Assert.Equal(52.31 - 0.5123 * yolk, made.WaterGrams, 1e-9);
        Assert.Equal(1, made.SolidsKept, 1e-12);
        EggReplacement back = EggReplacement.Of(Forms.Get("sugared-yolk"), yolk, Forms.Get("fresh-yolk"));
        Assert.Equal(100, back.IncomingGrams.Likely, 1e-9);
        Assert.Equal(-made.AddedSugarGrams, back.AddedSugarGrams, 1e-9);
        Assert.Equal(-made.WaterGrams, back.WaterGrams, 1e-9);
    }

    // USDA NDB 01136: 7.0 g a US tablespoon, so 13.59 g are 1.94 tablespoons.
    [Fact]
    public void SpoonsAndCups()
    {
        EggReplacement made = EggReplacement.Of(Forms.FreshWhite, 100, Forms.DriedWhite);
        EggMeasures measures = made.InMeasures(s_us);
        Assert.Equal(12.43 / 0.9146 / 7.0, measures.Incoming.Millilitres.Likely / s_us.MillilitresPer(KitchenUnit.Tablespoon), 1e-6);
        Assert.Equal("2 Tbsp", measures.IncomingMeasure!.Amount.ToString());
        Assert.InRange(Math.Abs(measures.IncomingMeasure.RelativeError), 0, 0.05);
        Assert.InRange(Math.Abs(measures.WaterMeasure!.RelativeError), 0, 0.05);
        // What the spoons hold: two spoons of 7.0 g in their water; the water's density is within 0.3 % of one.
        double water = measures.WaterMeasure.Millilitres;
        Assert.Equal(100 * 14 * 0.9146 / (14 + water), measures.SolidsPercent!.Value, 0.04);
        Assert.StartsWith("dried egg white: 2 Tbsp; water: ", measures.ToString(), StringComparison.Ordinal);
        // A thousandth of a gram fills no spoon.
        Assert.Null(EggReplacement.Of(Forms.FreshWhite, 0.001, Forms.DriedWhite).InMeasures(s_us).IncomingMeasure);
        Assert.Null(EggReplacement.Of(Forms.FreshWhite, 0.001, Forms.DriedWhite).InMeasures(s_us).SolidsPercent);
    }

    // 12 : 88 by mass: 0.12·0.92 = 11.04 % solids of a powder with 8.0 % moisture, 10.98 % with 8.54 %: pasteurised white (11.03), not fresh (12.43).
    [Theory]
    [InlineData(0.08, 11.04)]
    [InlineData(0.0854, 10.9752)]
    public void TwelveToEightyEightIsPasteurisedWhite(double moisture, double solids)
    {
        ReconstitutionResult result = ReconstitutionRule.Get("twelve-eighty-eight").ApplyTo(100, Forms.DriedWhite.WithMoisture(moisture), s_us);
        Assert.Equal(12.0, result.PowderGrams.Likely, 1e-9);
        Assert.Equal(88.0, result.WaterGrams.Likely, 1e-9);
        Assert.Equal(solids, result.SolidsPercent.Likely, 1e-9);
        Assert.Equal(result.SolidsPercent.Low, result.SolidsPercent.High);
        Assert.Equal(solids - 11.03, result.PointsAbovePasteurised, 1e-9);
        Assert.Equal(solids - 12.43, result.PointsAboveFresh, 1e-9);
        Assert.Same(Forms.PasteurisedWhite, result.Nearest);
        Assert.Equal(1, result.MassShare, 1e-12);
        Assert.Equal(7.333, result.WaterGrams.Likely / result.PowderGrams.Likely, 5e-4);
    }

    // The food table has 8.54 % moisture, a purchase specification of spray-dried white at most 8.0 % and at least 92 % solids: 0.12 of 91.46 to 92.00. Whoever states the
    // moisture, even that of the table, has a rule of mass without a spread.
    [Fact]
    public void AMoistureThatNobodyStatedIsASpread()
    {
        Assert.Equal(new Spread(0.9146, 0.9146, 0.92), Forms.DriedWhite.SolidsFraction);
        Spread unstated = ReconstitutionRule.Get("twelve-eighty-eight").Apply(Forms.DriedWhite, s_us).SolidsPercent;
        Assert.Equal(10.9752, unstated.Low, 1e-9);
        Assert.Equal(10.9752, unstated.Likely, 1e-9);
        Assert.Equal(11.04, unstated.High, 1e-9);
        Assert.Equal("10.98 (10.98 to 11.04)", $"{unstated:0.00}");
        Assert.Equal("11.43 (11.43 to 11.50)", $"{ReconstitutionRule.Get("one-to-seven").Apply(Forms.DriedWhite, s_us).SolidsPercent:0.00}"); // an eighth of each
        Assert.Equal("10.98", $"{ReconstitutionRule.Get("twelve-eighty-eight").Apply(Forms.DriedWhite.WithMoisture(0.0854), s_us).SolidsPercent:0.00}");
        Assert.Equal("11.04", $"{ReconstitutionRule.Get("twelve-eighty-eight").Apply(Forms.DriedWhite.WithMoisture(0.08), s_us).SolidsPercent:0.00}");
        // By spoons the spread of the spoon is multiplied with it.
        ReconstitutionRule spoons = ReconstitutionRule.Get("spoon-rule");
        Spread dry = spoons.Apply(Forms.DriedWhite, s_us).SolidsPercent, stated = spoons.Apply(Forms.DriedWhite.WithMoisture(0.0854), s_us).SolidsPercent;
        Assert.Equal(stated.High * 0.92 / 0.9146, dry.High, 1e-9);
        Assert.Equal(stated.Low, dry.Low, 1e-9);
        // Nobody specifies flakes here: no spread is made up.
        EggForm flakes = Forms.Get("dried-white-flakes");
        Assert.Equal((flakes.SolidsFraction.Likely, flakes.SolidsFraction.Likely), (flakes.SolidsFraction.Low, flakes.SolidsFraction.High));
    }

    // The low end by hand: AMS 56 large is at least 56.699 g, and the least white of the sources 57.0 % of it (Japan Poultry Association); the most is that of the next class, 63.786 g
    // and 63.4 %. At equal solids 12.43/91.46 of it is powder.
    [Fact]
    public void TheEndsOfThePowderAreThoseOfTheEggs()
    {
        Spread powder = EggReplacement.Of(EggCount.Of(6, s_usLarge), Forms.DriedWhite).IncomingGrams;
        Assert.Equal(6 * 56.699 * 0.570 * 12.43 / 91.46, powder.Low, 0.001);
        Assert.Equal(6 * 33 * 12.43 / 91.46, powder.Likely, 1e-9);
        Assert.Equal(6 * 63.786 * 0.634 * 12.43 / 91.46, powder.High, 0.001);
    }

    // Half of the last digit that is printed, 0.01 g: less is no line of the kitchen's. NDB 01127: a gram of fresh yolk brings 0.1013·47.69/38.64 g of sugar.
    [Theory]
    [InlineData(0.0049, "")]
    [InlineData(0.0051, ", 0.01 g sugar less")]
    public void SugarBelowHalfACentigramIsNotPrinted(double sugar, string printed)
    {
        double yolk = sugar / (0.1013 * 47.69 / 38.64);
        EggReplacement into = EggReplacement.Of(Forms.Get("fresh-yolk"), yolk, Forms.Get("sugared-yolk"));
        Assert.Equal(sugar, into.AddedSugarGrams, 1e-9);
        Assert.Contains($"less{printed}, ", into.ToString(), StringComparison.Ordinal);
        EggReplacement back = EggReplacement.Of(Forms.Get("sugared-yolk"), sugar / 0.1013, Forms.Get("fresh-yolk"));
        Assert.Equal(-sugar, back.AddedSugarGrams, 1e-9);
        Assert.Contains($" g water{printed.Replace("less", "more", StringComparison.Ordinal)}, ", back.ToString(), StringComparison.Ordinal);
    }

    // Nothing that a rule refuses is let in before it: the caller hears of what he said.
    [Theory]
    [InlineData(5e-324)]
    [InlineData(1e-13)]
    [InlineData(1e8)] // 3.3e9 g of white
    public void ATraceOfEggAndTooManyAreRefusedWhereTheyAreSaid(double count)
    {
        ArgumentException thrown = Assert.Throws<ArgumentException>("eggs", () => EggReplacement.Of(EggCount.Of(count, s_usLarge), Forms.DriedWhite).ByRule(ReconstitutionRule.All[0], s_us));
        Assert.Contains("it must be from 1E-09 to 1000000000 g", thrown.Message, StringComparison.Ordinal);
        Assert.StartsWith("eggs was ", thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ATraceOfAnAmountIsRefusedWhereItIsSaid()
    {
        Assert.Contains("amount was ", Assert.Throws<ArgumentException>("amount", () => EggReplacement.Of(Forms.FreshWhite, Amount.Parse("0.0000000001 g"), s_us, Forms.DriedWhite)
            .ByRule(ReconstitutionRule.All[0], s_us)).Message, StringComparison.Ordinal);
        // A trace that is there has every rule.
        Assert.All(ReconstitutionRule.All, rule => Assert.True(EggReplacement.Of(Forms.FreshWhite, 1e-9, Forms.DriedWhite).ByRule(rule, s_us).SolidsPercent.Likely > 10));
    }

    // 1 : 7: an eighth of 91.46.
    [Fact]
    public void OneToSevenIsBetweenTheTwo()
    {
        ReconstitutionRule rule = ReconstitutionRule.Get("one-to-seven");
        ReconstitutionResult result = rule.Apply(Forms.DriedWhite, s_us);
        Assert.Equal(91.46 / 8, result.SolidsPercent.Likely, 1e-9);
        Assert.InRange(result.SolidsPercent.Likely, 11.03, 12.43);
        Assert.Equal(Evidence.FromMemory, rule.Provenance.Evidence);
        Assert.Equal("memory", rule.Provenance.Source.Key);
    }

    // Common practice, kept as a check value only: four tablespoons of powder and three quarters of a cup of water for a cup of whites.
    // USDA: 7.0 g a US tablespoon of powder; water 237 g a cup. 28·0.9146/(28 + 0.75·237) = 12.46; the library's water is 0.2 % lighter.
    // The strength is that of fresh white, but the cup is not full: 205.75 g for 243. No table and no output has it.
    [Fact]
    public void FourSpoonsAndThreeQuartersOfACupAreStrongEnoughButShort()
    {
        double powder = Conversion.Of(Forms.DriedWhite.Ingredient, s_us).ToMass(Amount.Parse("4 tbsp")).Grams.Likely;
        double water = Conversion.Of(IngredientTable.BuiltIn.Get("water"), s_us).ToMass(Amount.Parse("3/4 cup")).Grams.Likely;
        double whites = Conversion.Of(Forms.FreshWhite.Ingredient, s_us).ToMass(Amount.Parse("1 cup")).Grams.Likely;
        Assert.Equal(28.0, powder, 0.01);
        Assert.Equal(100 * 28 * 0.9146 / (28 + 0.75 * 237), 100 * powder * Forms.DriedWhite.SolidsFraction.Likely / (powder + water), 0.05);
        Assert.Equal(205.75 / 243, (powder + water) / whites, 0.005);
        Assert.False(ReconstitutionRule.TryGet("cup-rule", out _));
        Assert.Equal(["twelve-eighty-eight", "one-to-seven", "spoon-rule"], ReconstitutionRule.All.Select(rule => rule.Key));
    }

    // 2 tsp are two thirds of a tablespoon, 4.667 g; 2 Tbsp of water an eighth of 237 g: 12.46 % solids, and a little more than the 33 g of a white.
    [Fact]
    public void TheSpoonRuleHasTheStrengthOfFreshWhite()
    {
        ReconstitutionResult spoon = ReconstitutionRule.Get("spoon-rule").Apply(Forms.DriedWhite, s_us);
        Assert.Equal(14.0 / 3, spoon.PowderGrams.Likely, 0.002);
        Assert.Equal(100 * 28 * 0.9146 / (28 + 0.75 * 237), spoon.SolidsPercent.Likely, 0.05);
        Assert.Equal(33, spoon.ReplacesGrams, 1e-9);
        Assert.Equal((14.0 / 3 + 237.0 / 8) / 33, spoon.MassShare, 0.005);
        // With an Australian tablespoon, of four teaspoons, the water is a third more: 9.7 %.
        Assert.Equal(100 * 4.733 * 0.9146 / (4.733 + 39.9), ReconstitutionRule.Get("spoon-rule").Apply(Forms.DriedWhite, MeasuringSystem.Australian).SolidsPercent.Likely, 0.05);
    }

    [Fact]
    public void WhatARuleWouldHaveGivenStandsBesideTheBalance()
    {
        EggReplacement made = EggReplacement.Of(EggCount.Of(6, s_usLarge), Forms.DriedWhite);
        Assert.All(ReconstitutionRule.All, rule =>
        {
            ReconstitutionResult result = made.ByRule(rule, s_us);
            Assert.Equal(198, result.ReplacesGrams, 1e-9);
            Assert.Equal(rule.Apply(Forms.DriedWhite, s_us).SolidsPercent.Likely, result.SolidsPercent.Likely, 1e-9);
        });
        // Six whites by the spoon rule are six times its 14/3 g.
        Assert.Equal(6 * 14.0 / 3, made.ByRule(ReconstitutionRule.Get("spoon-rule"), s_us).PowderGrams.Likely, 0.01);
        Assert.Equal(198 * 0.12, made.ByRule(ReconstitutionRule.Get("twelve-eighty-eight"), s_us).PowderGrams.Likely, 1e-9);
        Assert.Equal(3, ReconstitutionRule.All.Count);
    }

    [Theory]
    [InlineData(100, EggMatch.Solids)]
    [InlineData(40, EggMatch.Solids)]
    [InlineData(100, EggMatch.Protein)]
    [InlineData(12.5, EggMatch.Protein)]
    public void AFormulaKeepsWhatItWasToKeep(double grams, EggMatch match)
    {
        Formula before = Icing(0);
        EggFormulaReplacement made = EggReplacement.InFormula(before, Forms.FreshWhite, grams, Forms.DriedWhite.WithMoisture(0.07), match);
        Assert.True(made.IsExact);
        Assert.Equal(before.TotalGrams, made.After.TotalGrams, 1e-9);
        Assert.Equal(100 - grams, (made.After.GramsOf(Forms.FreshWhite.Ingredient) ?? 0), 1e-9);
        Assert.Equal(500, made.After.GramsOf(IngredientTable.BuiltIn.Get("icing sugar")));
        Assert.All(match == EggMatch.Solids ? (FormulaPart[])[FormulaPart.Water, FormulaPart.Solids, FormulaPart.Everything] : [FormulaPart.Protein, FormulaPart.Everything],
            part => Assert.Equal(GramsOf(before, part), GramsOf(made.After, part), 1e-9));
        // The water of the table is 99.90 % water; with pure water it would be the replacement of the kitchen.
        Assert.Equal(made.Replacement.IncomingGrams.Likely, made.IncomingGrams, 0.01 * made.IncomingGrams);
    }

    [Fact]
    public void AFormulaGivesUpTheWaterItHas()
    {
        Formula before = Icing(30);
        EggFormulaReplacement made = EggReplacement.InFormula(before, Forms.FreshWhite, 100, Forms.PasteurisedWhite);
        Assert.True(made.IsExact);
        Assert.True(made.WaterGrams < 0);
        Assert.Equal(GramsOf(before, FormulaPart.Water), GramsOf(made.After, FormulaPart.Water), 1e-9);
        Assert.Equal(GramsOf(before, FormulaPart.Solids), GramsOf(made.After, FormulaPart.Solids), 1e-9);
        EggFormulaReplacement dry = EggReplacement.InFormula(Icing(0), Forms.FreshWhite, 100, Forms.PasteurisedWhite);
        Assert.False(dry.IsExact);
        Assert.Equal(0, dry.WaterGrams, 1e-12);
        Assert.Equal(-made.WaterGrams, dry.MissingWaterGrams, 1e-9);
        EggFormulaReplacement scant = EggReplacement.InFormula(Icing(5), Forms.FreshWhite, 100, Forms.PasteurisedWhite);
        Assert.Equal(-5, scant.WaterGrams, 1e-9);
        Assert.Equal(-made.WaterGrams - 5, scant.MissingWaterGrams, 1e-9);
        Assert.Equal(0, (scant.After.GramsOf(IngredientTable.BuiltIn.Get("water")) ?? 0), 1e-12);
    }

    [Fact]
    public void AFormulaGoesThereAndBack()
    {
        Formula before = Icing(30);
        EggFormulaReplacement there = EggReplacement.InFormula(before, Forms.FreshWhite, 100, Forms.DriedWhite);
        EggFormulaReplacement back = EggReplacement.InFormula(there.After, Forms.DriedWhite, there.IncomingGrams, Forms.FreshWhite);
        Assert.True(back.IsExact);
        Assert.All(before.Combined().Lines, line => Assert.Equal(line.Grams.Likely, (back.After.GramsOf(line.Ingredient) ?? 0), 1e-9));
    }

    [Fact]
    public void SugaredYolkInAFormulaKeepsEggSolidsAndWater()
    {
        Ingredient sugar = IngredientTable.BuiltIn.Get("granulated sugar"), water = IngredientTable.BuiltIn.Get("water");
        EggForm fresh = Forms.Get("fresh-yolk"), sugared = Forms.Get("sugared-yolk");
        Formula before = Formula.Of("Fennmarsh custard", [FormulaLine.Of(fresh.Ingredient, 100), FormulaLine.Of(sugar, 200), FormulaLine.Of(water, 300)]);
        EggFormulaReplacement made = EggReplacement.InFormula(before, fresh, 100, sugared);
        Assert.True(made.IsExact);
        Assert.Equal(GramsOf(before, FormulaPart.Water), GramsOf(made.After, FormulaPart.Water), 1e-9);
        Assert.Equal(GramsOf(before, FormulaPart.Solids) + made.AddedSugarGrams, GramsOf(made.After, FormulaPart.Solids), 1e-9);
        Assert.Equal(made.IncomingGrams * 0.1013, made.AddedSugarGrams, 1e-9);
        Assert.Equal(before.TotalGrams + made.AddedSugarGrams, made.After.TotalGrams, 1e-9);
    }

    [Fact]
    public void TwoFormsOfOneCompositionChangeNothing()
    {
        Formula before = Icing(0);
        EggFormulaReplacement made = EggReplacement.InFormula(before, Forms.FreshWhite, 100, Forms.Get("in-shell-pasteurised-white"));
        Assert.Same(before, made.After);
        Assert.True(made.IsExact);
        Assert.Contains("200 %", Forms.Get("in-shell-pasteurised-white").Note, StringComparison.Ordinal); // Singh et al. 2018
    }

    // A label of one's own: 6 % moisture, 80 % protein. 12.43/94 of it, and 10.9/80, for a gram of fresh white; and a water without minerals.
    [Fact]
    public void APowderOfOnesOwn()
    {
        IngredientTable own = IngredientTable.BuiltIn.LayerIngredients(new StringReader("""
            id,name,class,default_packing,water_percent,protein_percent,other_percent,allergens,source,kind
            fennmarsh-albumen,Fennmarsh albumen,powder,spooned,6,80,14,egg,label,compiled
            water,water,liquid,levelled,100,0,0,,label,compiled
            """)).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Empty(problems);
        EggForm powder = EggForm.Of("Fennmarsh albumen", EggPart.White, own.Get("fennmarsh-albumen"), EggForms.Of(own));
        Assert.True(powder.IsDry);
        Assert.Null(powder.Provenance);
        Assert.Equal(12.43 / 0.94, EggReplacement.Of(Forms.FreshWhite, 100, powder).IncomingGrams.Likely, 1e-9);
        Assert.Equal(10.9 / 0.80, EggReplacement.Of(Forms.FreshWhite, 100, powder, EggMatch.Protein).IncomingGrams.Likely, 1e-9);
        // No density of it is known, and none is made up.
        Assert.Throws<ArgumentException>(() => EggReplacement.Of(Forms.FreshWhite, 100, powder).InMeasures(s_us));
        Formula before = Formula.Of("Fennmarsh meringue", [FormulaLine.Of(Forms.FreshWhite.Ingredient, 100), FormulaLine.Of(own.Get("water"), 1)]);
        EggFormulaReplacement made = EggReplacement.InFormula(before, Forms.FreshWhite, 100, powder);
        Assert.Equal(12.43 / 0.94, made.IncomingGrams, 1e-9);
        Assert.Equal(101 - 12.43 / 0.94, (made.After.GramsOf(own.Get("water")) ?? 0), 1e-9);
    }

    // The caution names no mix as safe.
    [Fact]
    public void NoWordOfTheRoomClearsAMix()
    {
        Assert.DoesNotContain(" safe", EggCaution.Text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Salmonella", EggCaution.Text, StringComparison.Ordinal);
        Assert.Contains("cold", EggCaution.Text, StringComparison.Ordinal);
        Assert.Contains("follow the packet", EggCaution.Text, StringComparison.Ordinal);
        Assert.Contains("local codes", EggCaution.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(Meringue.All.SelectMany(kind => kind.Figures), figure =>
            (figure.PrintedAs + figure.Provenance.Note).Contains("safe", StringComparison.OrdinalIgnoreCase));
    }

    private static Formula Icing(double water)
    {
        FormulaLine sugar = FormulaLine.Of(IngredientTable.BuiltIn.Get("icing sugar"), 500), white = FormulaLine.Of(Forms.FreshWhite.Ingredient, 100);
        return Formula.Of("Fennmarsh royal icing", water > 0 ? [sugar, white, FormulaLine.Of(IngredientTable.BuiltIn.Get("water"), water)] : [sugar, white]);
    }

    private static double GramsOf(Formula formula, FormulaPart part) => formula.Lines.Sum(line => line.Grams.Likely * part.FractionIn(line.Ingredient));
}
