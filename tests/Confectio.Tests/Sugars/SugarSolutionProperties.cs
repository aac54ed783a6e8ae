using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sugars;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>What holds for every syrup, whatever is dissolved in it.</summary>
public sealed class SugarSolutionProperties
{
    // Sums of eleven numbers, twenty roundings of 1.1e-16 at most.
    private const double Relative = 1e-14;

    private static readonly Constituent[] s_all = Enum.GetValues<Constituent>();

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 300)]
    public void WhatIsInItAddsUpToOne(Syrup syrup)
    {
        Assert.Equal(1, s_all.Sum(part => syrup.Solution[part]), Relative);
        Assert.Equal(syrup.Solution.Solids, SugarGenerators.Dissolving.Sum(part => syrup.Solution[part]), Relative);
        Assert.Equal(1, syrup.Solution.Solids + syrup.Solution.Water, Relative);
        Assert.All(s_all, part => Assert.InRange(syrup.Solution[part], 0, 1));
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 300)]
    public void MixingLosesNothingInEitherOrder(Syrup first, Syrup second, Share share)
    {
        double a = 1000 * share.Value, b = 1000 - a;
        SugarSolution mixed = SugarSolution.Mix(first.Solution, a, second.Solution, b), other = SugarSolution.Mix(second.Solution, b, first.Solution, a);
        Assert.All(s_all, part =>
        {
            Assert.Equal(a * first.Solution[part] + b * second.Solution[part], 1000 * mixed[part], 1000 * Relative);
            Assert.Equal(mixed[part], other[part], Relative);
        });
        // Molecules are conserved too: those above maltose are mixed by their number.
        Assert.Equal(a * Moles(first.Solution) + b * Moles(second.Solution), 1000 * Moles(mixed), 1e-10);
        Assert.Equal(mixed.HigherSaccharidesMolarMass, other.HigherSaccharidesMolarMass, 1e-10 * mixed.HigherSaccharidesMolarMass);
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 300)]
    public void WaterChangesNothingInTheSolids(Syrup syrup, Share share)
    {
        SugarSolution other = syrup.Solution.WithSolids(share.Value);
        Assert.Equal(share.Value, other.Solids, Relative);
        Assert.Equal(syrup.Solution.HigherSaccharidesMolarMass, other.HigherSaccharidesMolarMass);
        Assert.All(SugarGenerators.Dissolving, part => Assert.Equal(syrup.Solution[part] / syrup.Solution.Solids * share.Value, other[part], Relative));
        if (share.Value > 0)
        {
            Assert.Equal(syrup.Solution.MeanMolarMass, other.MeanMolarMass, 1e-12 * other.MeanMolarMass);
            Assert.Equal(syrup.Solution.MaximumSolids, other.MaximumSolids, 1e-12);
        }
    }

    // A gram of sucrose takes 18.012/342.30 g of water and becomes glucose and fructose in equal parts.
    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 300)]
    public void InversionKeepsTheMass(Syrup syrup, Share share)
    {
        double sucrose = syrup.Solution[Constituent.Sucrose] * share.Value, taken = sucrose * (2 * 180.156 - 342.30) / 342.30;
        if (taken > syrup.Solution.Water)
        {
            Assert.Throws<InvalidOperationException>(() => syrup.Solution.Inverted(share.Value));
            return;
        }
        SugarSolution inverted = syrup.Solution.Inverted(share.Value);
        Assert.Equal(1, s_all.Sum(part => inverted[part]), Relative);
        Assert.Equal(syrup.Solution[Constituent.Sucrose] - sucrose, inverted[Constituent.Sucrose], Relative);
        Assert.Equal(syrup.Solution.Water - taken, inverted.Water, Relative);
        Assert.Equal(syrup.Solution[Constituent.Glucose] + (sucrose + taken) / 2, inverted[Constituent.Glucose], Relative);
        Assert.Equal(syrup.Solution[Constituent.Fructose] + (sucrose + taken) / 2, inverted[Constituent.Fructose], Relative);
    }

    // Fructose weighs and binds as glucose does in these models: a mix of the two is the one. Other sugars stand for a disaccharide with
    // maltose's constant.
    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 300)]
    public void ASoluteSplitInTwoBindsTheSameWater(Syrup syrup, Share share)
    {
        SugarSolution whole = Split(syrup.Solution, 0), split = Split(syrup.Solution, share.Value);
        foreach (WaterActivityModel model in (ReadOnlySpan<WaterActivityModel>)
            [WaterActivityModel.StarzakPeacock, WaterActivityModel.StarzakMathlouthi, WaterActivityModel.Norrish, WaterActivityModel.MoneyBorn])
            Assert.Equal(whole.WaterActivityAllDissolved(25, model), split.WaterActivityAllDissolved(25, model), 1e-11);
        Assert.Equal(whole.BoilingCelsius(AirPressure.SeaLevel).Likely, split.BoilingCelsius(AirPressure.SeaLevel).Likely, 1e-7);
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 200)]
    public void TheRefractometerShowsTheSucroseThatBendsLightAsMuch(Syrup syrup, Share share)
    {
        double celsius = 80 * share.Value;
        if (syrup.Solution.RefractiveIndex(celsius) > SugarSolution.OfSucrose(0.95).RefractiveIndex(celsius))
        {
            Assert.Throws<InvalidOperationException>(() => syrup.Solution.RefractometerReading(celsius));
            return;
        }
        Brix reading = syrup.Solution.RefractometerReading(celsius);
        // Water alone is the bottom of the scale.
        if (reading.Percent > 0)
            Assert.Equal(syrup.Solution.RefractiveIndex(celsius), SugarSolution.OfSucrose(reading.Fraction).RefractiveIndex(celsius), 1e-12);
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 200)]
    public void TheStrengthComesBackFromTheBoilingPoint(Syrup syrup, Share share)
    {
        AirPressure pressure = AirPressure.FromKilopascals(20 + 85 * share.Value);
        double celsius = syrup.Solution.BoilingCelsius(pressure).Likely;
        Assert.True(celsius > pressure.WaterBoilsCelsius - 1e-9);
        SugarSolution back = syrup.Solution.WithSolids(0.3).BoilingAt(celsius, pressure);
        Assert.Equal(celsius, back.BoilingCelsius(pressure).Likely, 1e-7);
        // The curve is nearly flat at the very top, and where there is next to nothing in the water.
        Assert.Equal(syrup.Solution.Solids, back.Solids, 1e-5);
    }

    // Dextrin of 20 kg/mol, 0.33 % water: a fixed point that is no boiling point stood at 348 °C. By the definition, at every degree to
    // 220, where activities end, its water presses less than the air does.
    [Fact]
    public void WhatBoilsNowhereIsRefused()
    {
        SugarSolution dextrin = SugarSolution.FromGrams([new(Constituent.HigherSaccharides, 99.67), new(Constituent.Water, 0.33)], 20000);
        AirPressure pressure = AirPressure.FromKilopascals(104.57);
        for (int celsius = 1; celsius <= 220; celsius++)
            Assert.True(dextrin.WaterActivityAllDissolved(celsius, WaterActivityModel.StarzakPeacock) * SaturatedWater.PressureKilopascals(celsius) < pressure.Kilopascals);
        Assert.Throws<InvalidOperationException>(() => dextrin.BoilingCelsius(pressure));
    }

    // Water boils where a·p° is the pressure: the definition, for mixtures as for sucrose.
    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 200)]
    public void TheActivityAtTheBoilingPointIsThePressureOverThatOfWater(Syrup syrup, Share share)
    {
        AirPressure pressure = AirPressure.FromKilopascals(1 + 119 * share.Value);
        SugarSolution solution = syrup.Solution;
        foreach ((BoilingModel boiling, WaterActivityModel activity) in (ReadOnlySpan<(BoilingModel, WaterActivityModel)>)
            [(BoilingModel.StarzakPeacock, WaterActivityModel.StarzakPeacock), (BoilingModel.StarzakMathlouthi, WaterActivityModel.StarzakMathlouthi)])
        {
            double celsius = solution.BoilingCelsius(pressure, boiling);
            Assert.InRange(celsius, pressure.WaterBoilsCelsius - 1e-9, 373.946);
            // An activity is worked out to 220 °C.
            if (celsius <= 220)
                Assert.Equal(pressure.Kilopascals / SaturatedWater.PressureKilopascals(celsius), solution.WaterActivityAllDissolved(celsius, activity), 1e-9);
        }
    }

    // A rule of the trade may be out of its range; the others always answer.
    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 300)]
    public void TheActivityIsFromNothingToOneAndFallsWithSolids(Syrup syrup, Share share)
    {
        SugarSolution weaker = syrup.Solution.WithSolids(share.Value * syrup.Solution.Solids);
        foreach (WaterActivityModel model in Enum.GetValues<WaterActivityModel>())
        {
            double? strong = Activity(syrup.Solution, model), weak = Activity(weaker, model);
            Assert.True(model == WaterActivityModel.Grover || (strong.HasValue && weak.HasValue));
            if (strong is double a)
                Assert.InRange(a, double.Epsilon, 1);
            if (weak is double b)
                Assert.InRange(b, strong ?? 0, 1);
        }

        static double? Activity(SugarSolution solution, WaterActivityModel model)
        {
            try
            {
                return solution.WaterActivityAllDissolved(25, model);
            }
            catch (InvalidOperationException) when (model == WaterActivityModel.Grover)
            {
                return null;
            }
        }
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 200)]
    public void MoreOfEverythingBoilsHotterAndWeighsMore(Syrup syrup, Share share)
    {
        SugarSolution weaker = syrup.Solution.WithSolids(share.Value * syrup.Solution.Solids);
        foreach (BoilingModel model in Enum.GetValues<BoilingModel>())
        {
            double celsius = syrup.Solution.BoilingCelsius(AirPressure.SeaLevel, model);
            Assert.True(weaker.BoilingCelsius(AirPressure.SeaLevel, model) <= celsius + 1e-9);
            Assert.True(syrup.Solution.BoilingCelsius(AirPressure.SeaLevel).Contains(celsius));
        }
        Assert.True(weaker.GramsPerMillilitre(20) <= syrup.Solution.GramsPerMillilitre(20) + 1e-12);
        Assert.True(weaker.RefractiveIndex() <= syrup.Solution.RefractiveIndex() + 1e-12);
    }

    // The masses of the formula by its balance, which goes another way; the number of heavy molecules is that of its ingredients.
    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 200)]
    public void AFormulaIsTheSolutionOfItsBalance(Formula formula)
    {
        SugarSolution solution = SugarSolution.Of(formula);
        Balance balance = Balance.Of(formula);
        Dictionary<Constituent, double> grams = SugarGenerators.Dissolving.Append(Constituent.Water)
            .ToDictionary(part => part, part => Math.Max(0, balance[FormulaPart.Of(part)].Grams.Likely));
        SugarSolution other = SugarSolution.FromGrams(grams, solution.HigherSaccharidesMolarMass);
        double kept = grams.Values.Sum(), whole = formula.TotalGrams;
        // What boils off may leave next to nothing of the water: the rounding is that of what was put in.
        Assert.All(s_all, part => Assert.Equal(other[part], solution[part], 1e-12 * formula.PutInGrams / kept));
        // The constituents of an ingredient may add up to 100.01 % by the rounding of the table.
        Assert.Equal(Math.Max(0, 1 - kept / whole), solution.LeftOut, 1.1e-4 * formula.PutInGrams / whole);
    }

    private static double Moles(SugarSolution solution) => solution.MeanMolarMass > 0 ? solution.Solids / solution.MeanMolarMass : 0;

    private static SugarSolution Split(SugarSolution solution, double share)
    {
        double single = solution[Constituent.Glucose] + solution[Constituent.Fructose];
        double doubles = solution[Constituent.Maltose] + solution[Constituent.OtherSugars];
        Dictionary<Constituent, double> masses = SugarGenerators.Dissolving.Append(Constituent.Water).ToDictionary(part => part, part => solution[part]);
        masses[Constituent.Glucose] = (1 - share) * single;
        masses[Constituent.Fructose] = share * single;
        masses[Constituent.Maltose] = (1 - share) * doubles;
        masses[Constituent.OtherSugars] = share * doubles;
        return SugarSolution.FromGrams(masses, solution.HigherSaccharidesMolarMass);
    }
}
