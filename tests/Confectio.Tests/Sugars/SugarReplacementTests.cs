using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Sugars;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>Sugar replaced by sugar: the total, the other lines and one thing more stay, by sums that are done again here.</summary>
public sealed class SugarReplacementTests
{
    private static readonly Ingredient s_sugar = Named("granulated sugar"), s_glucose = Named("glucose syrup 42 DE"), s_invert = Named("invert syrup"),
        s_fructose = Named("crystalline fructose"), s_dextrose = Named("dextrose monohydrate"), s_water = Named("water"), s_butter = Named("unsalted butter"),
        s_cream = Named("heavy cream");

    private static readonly SweetnessTable s_biester = SweetnessTable.Get("biester-1925");

    // Per 100 g: sugar 0.02 of water, the syrup 19.7, the water 99.9. In for 100 g of sugar come x of syrup and 100 − x of water with as much solids:
    // 0.803·x + 0.001·(100 − x) = 99.98, so x = 99.88/0.802 = 124.54 and 24.54 g of water go.
    [Fact]
    public void EqualSolidsByHand()
    {
        SugarReplacement replaced = SugarReplacement.AtEqualSolids(Ganache(), s_sugar, 100, s_glucose, s_water);
        Assert.Equal((99.98 - 0.1) / (0.803 - 0.001), replaced.IncomingGrams, 1e-3);
        Assert.Equal(100 - (99.98 - 0.1) / (0.803 - 0.001), replaced.WaterGrams, 1e-3);
        Assert.True(replaced.IsKept);
        Assert.Equal("124.5 g in, 24.5 g of water out", replaced.ToString());
        Assert.Equal(Solids(replaced.Before), Solids(replaced.After), 1e-3);
        Kept(replaced, s_sugar, 100, s_glucose, s_water);
    }

    // 100 g of sugar are as sweet as 99.8 g of sucrose; 1.73·0.997 to the gram of fructose: 57.86 g, and 42.14 g of water to fill up.
    [Fact]
    public void EqualSweetnessByHand()
    {
        SugarReplacement replaced = SugarReplacement.AtEqualSweetness(Ganache(), s_sugar, 100, s_fructose, s_water, s_biester);
        Assert.Equal(99.8 / (1.73 * 0.998), replaced.IncomingGrams, 1e-3);
        Assert.Equal(100 - 99.8 / (1.73 * 0.998), replaced.WaterGrams, 1e-3);
        Assert.True(replaced.IsKept);
        Assert.Equal("57.8 g in, 42.2 g of water in", replaced.ToString());
        Assert.Equal(s_biester.Of(replaced.Before).Value.Likely, s_biester.Of(replaced.After).Value.Likely, 2e-6);
        Kept(replaced, s_sugar, 100, s_fructose, s_water);
        // By another table another mass: 1.65 in 2011.
        Assert.Equal(99.8 / (1.65 * 0.998), SugarReplacement.AtEqualSweetness(Ganache(), s_sugar, 100, s_fructose, s_water, SweetnessTable.Get("review-2011")).IncomingGrams, 1e-3);
    }

    [Theory]
    [InlineData(WaterActivityModel.StarzakPeacock)]
    [InlineData(WaterActivityModel.StarzakMathlouthi)]
    [InlineData(WaterActivityModel.Norrish)]
    [InlineData(WaterActivityModel.Ross)]
    [InlineData(WaterActivityModel.MoneyBorn)]
    public void EqualActivityOfTheWater(WaterActivityModel model) => Assert.All([s_glucose, s_invert, s_fructose, s_dextrose], incoming =>
    {
        SugarReplacement replaced = SugarReplacement.AtEqualWaterActivityAllDissolved(Ganache(), s_sugar, 100, incoming, s_water, model);
        Assert.True(replaced.IsKept);
        Assert.Equal(SugarSolution.Of(replaced.Before).WaterActivityAllDissolved(25, model), SugarSolution.Of(replaced.After).WaterActivityAllDissolved(25, model), 1e-9);
        Kept(replaced, s_sugar, 100, incoming, s_water);
        // A single sugar has near twice the molecules to the gram: less of it does.
        Assert.True(incoming != s_fructose || replaced.IncomingGrams < 100);
    });

    // Money and Born count molecules only: 99.8 g of sucrose (342.30 g/mol) against fructose (180.156), with the molecules to the gram of all the water.
    [Fact]
    public void EqualActivityByHand()
    {
        Formula syrup = Formula.Of("syrup", [FormulaLine.Of(s_sugar, 500), FormulaLine.Of(s_water, 300)]);
        double x = SugarReplacement.AtEqualWaterActivityAllDissolved(syrup, s_sugar, 500, s_fructose, s_water, WaterActivityModel.MoneyBorn).IncomingGrams;
        double before = 0.998 * 500 / 342.30 / (0.0002 * 500 + 0.999 * 300), after = 0.998 * x / 180.156 / (0.002 * x + 0.999 * (800 - x));
        Assert.Equal(before, after, 1e-9);
    }

    // Dissolved, the two would be alike. But the crystals of the sugar bind no water: saturated sucrose is 0.85 whoever prints it (0.842 to 0.853 from 20 to
    // 30 °C, Hartel, Ergun and Vogel 2011 and Norrish's equation), and the glucose that kept it lower is gone. Nothing short of drying it out brings it back.
    [Fact]
    public void SugarForSyrupDoesNotKeepWhenItCrystallises()
    {
        Formula filling = Formula.Of("filling", [FormulaLine.Of(s_sugar, 700), FormulaLine.Of(s_glucose, 250), FormulaLine.Of(s_water, 80)]);
        SugarReplacement replaced = SugarReplacement.AtEqualWaterActivity(filling, s_glucose, 250, s_sugar, s_water);
        Assert.False(replaced.IsKept);
        Assert.InRange(SugarSolution.Of(replaced.Before).WaterActivity().Likely, 0.78, 0.81);
        Assert.Equal(0.847, SugarSolution.Of(replaced.After).WaterActivity().Likely, 0.008);
        // Among all that are as far off, the water moves least.
        Assert.Equal(250, replaced.IncomingGrams, 1e-6);
        SugarReplacement dissolved = SugarReplacement.AtEqualWaterActivityAllDissolved(filling, s_glucose, 250, s_sugar, s_water);
        Assert.True(dissolved.IsKept);
        Assert.True(SugarSolution.Of(dissolved.After).WaterActivity().Likely > SugarSolution.Of(filling).WaterActivity().Likely + 0.03);
        Kept(replaced, s_glucose, 250, s_sugar, s_water);
    }

    // Adding sucrose past saturation does nothing to the activity: the phase rule.
    [Theory]
    [InlineData(700)]
    [InlineData(900)]
    [InlineData(990)]
    public void SugarPastSaturationLeavesTheActivity(double sugar)
    {
        Formula formula = Formula.Of("f", [FormulaLine.Of(s_sugar, sugar), FormulaLine.Of(s_water, 1000 - sugar)]);
        // The moisture and the trace of glucose of the sugar are within a thousandth or so.
        Assert.Equal(0.847, SugarSolution.Of(formula).WaterActivity().Likely, 0.008);
        Assert.True(SugarSolution.OfSucrose(sugar / 1000).WaterActivity().Low < SugarSolution.OfSucrose(sugar / 1000).WaterActivity().Likely);
        Assert.Equal(SugarSolution.OfSucrose(0.75).WaterActivity().Likely, SugarSolution.OfSucrose(sugar / 1000).WaterActivity().Likely, 1e-9);
    }

    [Fact]
    public void TheActivityAsItStandsIsKept()
    {
        foreach (Ingredient incoming in (ReadOnlySpan<Ingredient>)[s_glucose, s_invert, s_fructose, s_dextrose])
        {
            SugarReplacement replaced = SugarReplacement.AtEqualWaterActivity(Ganache(), s_sugar, 100, incoming, s_water);
            Assert.True(replaced.IsKept);
            Assert.Equal(SugarSolution.Of(replaced.Before).WaterActivity().Likely, SugarSolution.Of(replaced.After).WaterActivity().Likely, 1e-9);
            Kept(replaced, s_sugar, 100, incoming, s_water);
        }
    }

    // Sorption of amorphous sucrose (Sloan and Labuza 1975): 14, 20, 35 and 65 g of water to 100 g at 0.60, 0.70, 0.80 and 0.90. Those are supersaturated or
    // nearly so, and all of it is dissolved there: compare that.
    [Theory]
    [InlineData(35, 0.80, 0.03)]
    [InlineData(65, 0.90, 0.03)]
    public void MeasuredSorptionIsNearTheDissolvedOne(double water, double activity, double tolerance) =>
        Assert.Equal(activity, SugarSolution.OfSucrose(100 / (100 + water)).WaterActivityAllDissolved(), tolerance);

    // Honey of 17.2 % water: 0.57, 0.533 and 0.508 by lines through three countries' measurements, which part by 0.06. The sugars are those of White's mean honey.
    // Our likely one is above them all, and our range does not reach down to the lowest.
    [Theory]
    [InlineData(0.570)]
    [InlineData(0.533)]
    public void TheRangeOfHoneyHoldsMeasuredOnes(double measured)
    {
        SugarSolution honey = SugarSolution.FromGrams([new(Constituent.Water, 17.2), new(Constituent.Fructose, 38.38), new(Constituent.Glucose, 30.31),
            new(Constituent.Sucrose, 1.31), new(Constituent.Maltose, 7.3), new(Constituent.HigherSaccharides, 1.5)]);
        Spread activity = honey.WaterActivity();
        Assert.True(activity.Contains(measured), $"{activity.Low} to {activity.High}");
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 60)]
    public void WhateverTheFormulaTheTotalAndTheOtherLinesStay(Formula formula, Share share)
    {
        Ingredient? outgoing = formula.Lines.Select(line => line.Ingredient).FirstOrDefault(item => item != s_water && item != s_fructose && item.Composition.Sugars > 0.05);
        if (outgoing is null)
            return;
        double grams = (formula.GramsOf(outgoing) ?? 0) * Math.Max(0.01, share.Value);
        SugarReplacement replaced = SugarReplacement.AtEqualSolids(formula, outgoing, grams, s_fructose, s_water);
        Kept(replaced, outgoing, grams, s_fructose, s_water);
        if (replaced.IsKept)
            Assert.Equal(Solids(formula), Solids(replaced.After), 2e-6 * formula.PutInGrams);
    }

    // The incoming sugar may be there already; its own line stays, and there is one more.
    [Fact]
    public void MoreOfWhatIsThere()
    {
        Formula formula = Formula.Of("f", [FormulaLine.Of(s_sugar, 500), FormulaLine.Of(s_glucose, 100), FormulaLine.Of(s_water, 200)]);
        SugarReplacement replaced = SugarReplacement.AtEqualSolids(formula, s_sugar, 100, s_glucose, s_water);
        Assert.Equal((99.98 - 0.1) / (0.803 - 0.001), replaced.IncomingGrams, 1e-3);
        Assert.Equal(100 + replaced.IncomingGrams, (replaced.After.GramsOf(s_glucose) ?? 0), 1e-9);
        Kept(replaced, s_sugar, 100, s_glucose, s_water);
    }

    // All of it may go: 500 g in two lines.
    [Fact]
    public void AllOfIt()
    {
        Formula formula = Formula.Of("f", [FormulaLine.Of(s_sugar, 300), FormulaLine.Of(s_water, 200), FormulaLine.Of(s_sugar, 200)]);
        SugarReplacement replaced = SugarReplacement.AtEqualSolids(formula, s_sugar, 500, s_dextrose, s_water);
        Assert.Null(replaced.After.GramsOf(s_sugar));
        Assert.DoesNotContain(replaced.After.Lines, line => line.Ingredient == s_sugar);
        Kept(replaced, s_sugar, 500, s_dextrose, s_water);
    }

    // A dry mix has no water to give up for that of a syrup: 100 g of syrup come in for 100 g, and it says so.
    [Fact]
    public void ADryFormulaIsNotKept()
    {
        Formula dry = Formula.Of("dry", [FormulaLine.Of(s_sugar, 1000)]);
        SugarReplacement replaced = SugarReplacement.AtEqualSolids(dry, s_sugar, 100, s_glucose, s_water);
        Assert.False(replaced.IsKept);
        Assert.Equal(100, replaced.IncomingGrams, 1e-6);
        Assert.Equal(0, replaced.WaterGrams, 1e-6);
        Assert.Contains("does not allow", replaced.ToString(), StringComparison.Ordinal);
        Kept(replaced, s_sugar, 100, s_glucose, s_water);
        // As sweet it is even less: a gram of the syrup is 0.15.
        Assert.False(SugarReplacement.AtEqualSweetness(dry, s_sugar, 100, s_glucose, s_water, s_biester).IsKept);
        // Its water has no activity to keep.
        Assert.Throws<InvalidOperationException>(() => SugarReplacement.AtEqualWaterActivityAllDissolved(dry, s_sugar, 100, s_glucose, s_water));
    }

    // What the formula says boils off still does. The sums are of what is put in, so that they are as before.
    [Fact]
    public void ABoiledFormulaBoilsOffAsMuch()
    {
        Formula boiled = Formula.Of("toffee", [FormulaLine.Of(s_sugar, 600), FormulaLine.Of(s_water, 200), FormulaLine.Of(s_butter, 100)], 150);
        foreach (SugarReplacement replaced in (ReadOnlySpan<SugarReplacement>)
            [SugarReplacement.AtEqualSolids(boiled, s_sugar, 200, s_glucose, s_water), SugarReplacement.AtEqualWaterActivity(boiled, s_sugar, 200, s_glucose, s_water)])
        {
            Assert.True(replaced.IsKept);
            Assert.Equal(150, replaced.After.BoiledOffGrams);
            Assert.Equal(750, replaced.After.TotalGrams, 1e-9);
            Kept(replaced, s_sugar, 200, s_glucose, s_water);
        }
        Assert.Equal(2 * (99.98 - 0.1) / (0.803 - 0.001), SugarReplacement.AtEqualSolids(boiled, s_sugar, 200, s_glucose, s_water).IncomingGrams, 2e-3);
        // Water that must be there to boil off cannot be given up: dry fructose in for syrup leaves it.
        SugarReplacement tight = SugarReplacement.AtEqualSolids(Formula.Of("f", [FormulaLine.Of(s_glucose, 600), FormulaLine.Of(s_water, 200)], 199), s_glucose, 600, s_fructose, s_water);
        Assert.True(tight.IsKept);
        Assert.Equal(601, tight.After.TotalGrams, 1e-9);
    }

    [Fact]
    public void BadArgumentsAreNamed()
    {
        Assert.Throws<ArgumentNullException>("formula", () => SugarReplacement.AtEqualSolids(null!, s_sugar, 100, s_glucose, s_water));
        Assert.Throws<ArgumentNullException>("incoming", () => SugarReplacement.AtEqualSolids(Ganache(), s_sugar, 100, null!, s_water));
        Assert.Throws<ArgumentNullException>("water", () => SugarReplacement.AtEqualSolids(Ganache(), s_sugar, 100, s_glucose, null!));
        Assert.Throws<ArgumentNullException>("table", () => SugarReplacement.AtEqualSweetness(Ganache(), s_sugar, 100, s_glucose, s_water, null!));
        Assert.Throws<ArgumentException>("outgoing", () => SugarReplacement.AtEqualSolids(Ganache(), s_fructose, 100, s_glucose, s_water));
        Assert.Throws<ArgumentException>("incoming", () => SugarReplacement.AtEqualSolids(Ganache(), s_sugar, 100, s_sugar, s_water));
        Assert.Throws<ArgumentException>("water", () => SugarReplacement.AtEqualSolids(Ganache(), s_sugar, 100, s_glucose, s_sugar));
        Assert.Throws<ArgumentException>("water", () => SugarReplacement.AtEqualSolids(Ganache(), s_sugar, 100, s_glucose, s_glucose));
        Assert.Throws<ArgumentOutOfRangeException>("model", () => SugarReplacement.AtEqualWaterActivity(Ganache(), s_sugar, 100, s_glucose, s_water, (WaterActivityModel)99));
        Assert.All([0, -1, 500.0000001, double.NaN, double.PositiveInfinity, double.NegativeInfinity], value =>
        {
            Assert.Throws<ArgumentOutOfRangeException>("grams", () => SugarReplacement.AtEqualSolids(Ganache(), s_sugar, value, s_glucose, s_water));
            Assert.Throws<ArgumentOutOfRangeException>("grams", () => SugarReplacement.AtEqualSweetness(Ganache(), s_sugar, value, s_glucose, s_water, s_biester));
            Assert.Throws<ArgumentOutOfRangeException>("grams", () => SugarReplacement.AtEqualWaterActivity(Ganache(), s_sugar, value, s_glucose, s_water));
        });
    }

    [Fact]
    public void SweeterThanSucroseCannotBeKept() => Assert.Contains("sweet", Assert.Throws<InvalidOperationException>(() => SugarReplacement.AtEqualSweetness(
        Formula.Of("f", [FormulaLine.Of(s_fructose, 500), FormulaLine.Of(s_water, 10)]), s_fructose, 100, s_sugar, s_water, s_biester)).Message, StringComparison.Ordinal);

    [Fact]
    public void ANullOutgoingSugarIsNamed() =>
        Assert.Throws<ArgumentNullException>("outgoing", () => SugarReplacement.AtEqualSolids(Ganache(), null!, 100, s_glucose, s_water));

    [Fact]
    public void NothingSweetIsNamed()
    {
        Ingredient isomalt = Named("isomalt");
        Formula formula = Formula.Of("f", [FormulaLine.Of(isomalt, 500), FormulaLine.Of(s_water, 200)]);
        Exception thrown = Assert.ThrowsAny<Exception>(() => SugarReplacement.AtEqualSweetness(formula, isomalt, 100, Named("sorbitol powder"), s_water, s_biester));
        Assert.NotEqual("part", (thrown as ArgumentException)?.ParamName);
    }

    // Nearly all the water boils off, and the formula cannot spare what a dry sugar or what stands for the water would take. Kept, closest, or refused by what the caller said.
    [Fact]
    public void LessWaterThanBoilsOffIsLaidToTheGramsThatWereSaid()
    {
        int refused = 0, kept = 0;
        Ingredient[] sugars = [Named("granulated sugar"), Named("honey"), Named("anhydrous dextrose"), Named("dextrose monohydrate"), s_glucose, s_invert, s_fructose];
        foreach (Ingredient outgoing in sugars)
        {
            foreach (Ingredient incoming in sugars.Where(incoming => incoming != outgoing))
            {
                foreach (Ingredient water in new[] { s_water, s_cream, s_butter })
                {
                    foreach (double left in new[] { 0, 1e-9, 1, 20, 60 })
                    {
                        FormulaLine[] lines = [FormulaLine.Of(outgoing, 500), FormulaLine.Of(s_water, 110)];
                        double most = lines.Sum(line => line.Grams.Likely * FormulaPart.Water.FractionIn(line.Ingredient)) - left;
                        Formula boiled = Formula.Of("f", lines, most);
                        Assert.All<Func<SugarReplacement>>([
                            () => SugarReplacement.AtEqualSweetness(boiled, outgoing, 500, incoming, water, s_biester),
                            () => SugarReplacement.AtEqualSweetness(boiled, outgoing, 100, incoming, water, s_biester),
                            () => SugarReplacement.AtEqualSolids(boiled, outgoing, 500, incoming, water)], replace =>
                        {
                            try
                            {
                                SugarReplacement made = replace();
                                Assert.True(Formula.Of("f", made.After.Lines, most).TotalGrams > 0);
                                kept++;
                            }
                            catch (ArgumentOutOfRangeException e)
                            {
                                Assert.Equal("grams", e.ParamName);
                                Assert.StartsWith("grams was ", e.Message, StringComparison.Ordinal);
                                Assert.Contains(" boil off", e.Message, StringComparison.Ordinal);
                                refused++;
                            }
                            catch (InvalidOperationException e)
                            {
                                Assert.Contains(" is as sweet as ", e.Message, StringComparison.Ordinal);
                            }
                        });
                    }
                }
            }
        }
        Assert.True(refused > 50 && kept > 50, $"{refused} refused, {kept} kept");
    }

    // 500 g of sugar, 200 of water, 200 of cream, 100 of butter.
    private static Formula Ganache() => Formula.Of("Fennmarsh",
        [FormulaLine.Of(s_sugar, 500), FormulaLine.Of(s_water, 200), FormulaLine.Of(s_cream, 200), FormulaLine.Of(s_butter, 100)]);

    private static double Solids(Formula formula) => formula.Lines.Sum(line => line.Grams.Likely * FormulaPart.Solids.FractionIn(line.Ingredient));

    // The total, the name, what boils off and the lines of all other ingredients are as they were; the three that move add up.
    private static void Kept(SugarReplacement replaced, Ingredient outgoing, double grams, Ingredient incoming, Ingredient water)
    {
        double rounding = 1e-9 * replaced.Before.PutInGrams;
        Assert.Equal(replaced.Before.Name, replaced.After.Name);
        Assert.Equal(replaced.Before.TotalGrams, replaced.After.TotalGrams, rounding);
        Assert.Equal(replaced.Before.BoiledOffGrams, replaced.After.BoiledOffGrams, rounding);
        Assert.Equal((replaced.Before.GramsOf(outgoing) ?? 0) - grams, (replaced.After.GramsOf(outgoing) ?? 0), rounding);
        Assert.Equal((replaced.Before.GramsOf(incoming) ?? 0) + replaced.IncomingGrams, (replaced.After.GramsOf(incoming) ?? 0), rounding);
        Assert.Equal((replaced.Before.GramsOf(water) ?? 0) + replaced.WaterGrams, (replaced.After.GramsOf(water) ?? 0), rounding);
        Assert.Equal(grams, replaced.IncomingGrams + replaced.WaterGrams, rounding);
        Assert.True(replaced.IncomingGrams >= -rounding);
        FormulaLine[] others = [.. replaced.Before.Lines.Where(line => line.Ingredient != outgoing && line.Ingredient != incoming && line.Ingredient != water)];
        Assert.All(others, line => Assert.Contains(line, replaced.After.Lines));
    }

    private static Ingredient Named(string name) => IngredientTable.BuiltIn.Get(name);
}
