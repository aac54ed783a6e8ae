using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Formulas;

public sealed class BalanceTests
{
    private static readonly Ingredient s_butter = Get("unsalted butter"), s_sugar = Get("granulated sugar"), s_white = Get("egg white");

    // Fennmarsh Hall meringue buttercream, its butter in two lines, without its coffee and salt: 1065 g.
    private static Formula Buttercream(double boiledOff = 0) => Formula.Of("buttercream",
        [FormulaLine.Of(s_white, 210), FormulaLine.Of(s_sugar, 385), FormulaLine.Of(s_butter, 300), FormulaLine.Of(s_butter, 170)], boiledOff);

    [Fact]
    public void ABalanceWorkedByHand()
    {
        // USDA SR, g per 100 g. NDB 01124 egg white: water 87.57, fat 0.17, protein 10.90, sugars 0.71. NDB 19335 granulated sugar:
        // water 0.02, sugars 99.80. NDB 01145 unsalted butter: water 17.94, fat 81.11, protein 0.85, sugars 0.06. 40 g boil off.
        // Water 183.897 + 0.077 + 84.318 - 40 = 228.292; fat 0.357 + 381.217 = 381.574; protein 22.89 + 3.995 = 26.885;
        // sugars 1.491 + 384.23 + 0.282 = 386.003; solids 1065 - 268.292 = 796.708.
        Balance balance = Balance.Of(Buttercream(40));
        AssertPart(balance, FormulaPart.Water, 2.10 * 87.57 + 3.85 * 0.02 + 4.70 * 17.94 - 40);
        AssertPart(balance, FormulaPart.Fat, 2.10 * 0.17 + 4.70 * 81.11);
        AssertPart(balance, FormulaPart.MilkFat, 4.70 * 81.11);
        AssertPart(balance, FormulaPart.Protein, 2.10 * 10.90 + 4.70 * 0.85);
        AssertPart(balance, FormulaPart.Sugars, 2.10 * 0.71 + 3.85 * 99.80 + 4.70 * 0.06);
        AssertPart(balance, FormulaPart.Of(Constituent.Sucrose), 3.85 * 99.80);
        AssertPart(balance, FormulaPart.Solids, 1065 - (2.10 * 87.57 + 3.85 * 0.02 + 4.70 * 17.94));
        // Regulation (EU) No 1169/2011, Annex XIV: fat 37 kJ and 9 kcal, protein and carbohydrate 17 kJ and 4 kcal a gram.
        double fat = 381.574, others = 26.885 + 386.003;
        Assert.Equal(37 * fat + 17 * others, balance.Kilojoules, 1e-8);
        Assert.Equal(9 * fat + 4 * others, balance.Kilocalories, 1e-8);
        Assert.Equal(100 * balance.Kilojoules / 1025, balance.KilojoulesPer100Grams, 1e-9);
        Assert.Equal(100 * balance.Kilocalories / 1025, balance.KilocaloriesPer100Grams, 1e-9);
    }

    private static void AssertPart(Balance balance, FormulaPart part, double grams)
    {
        Assert.Equal(grams, balance[part].Grams.Likely, 1e-9);
        Assert.Equal(grams / 1025, balance[part].Fraction.Likely, 1e-12);
        Assert.Contains(balance.Items, item => item.Part == part);
    }

    [Fact]
    public void ASpreadWorkedByHand()
    {
        // u(c) of the fat of butter is 0.05 x (1 - 0.8111) and the printed rounding; sugar has no fat. Half of the mass is butter.
        double u = Math.Sqrt(Math.Pow(0.05 * 0.1889, 2) + Math.Pow(0.00005, 2) / 3) / 2;
        BalanceItem fat = Balance.Of(Formula.Of("x", [FormulaLine.Of(s_butter, 500), FormulaLine.Of(s_sugar, 500)]))[FormulaPart.Fat];
        Assert.Equal(0.40555, fat.Fraction.Likely, 1e-12);
        Assert.Equal(0.40555 - 2 * u, fat.Fraction.Low, 1e-12);
        Assert.Equal(0.40555 + 2 * u, fat.Fraction.High, 1e-12);
        Assert.Equal(405.55 + 2000 * u, fat.Grams.High, 1e-9);
        Assert.Equal("fat: 405.6 g, 40.6 % (39.6 to 41.5)", fat.ToString());
    }

    [Fact]
    public void LinesOfOneIngredientAreOneVariable()
    {
        Formula split = Buttercream();
        Assert.Equal(Balance.Of(split.Combined())[FormulaPart.Fat].Fraction, Balance.Of(split)[FormulaPart.Fat].Fraction);
    }

    [Fact]
    public void TheSpreadIsThatOfAMonteCarloRun()
    {
        // JCGM 101:2008, propagation of distributions: 100 000 draws, normal inputs. The standard deviation of so many draws is known
        // to 0.22 %, and a spread of some per cent bends the share by less than a per cent: 2 % holds both.
        // The draws are the same both ways and a spread of a density is not, so both ways are taken together.
        Formula formula = Formula.Of("Fennmarsh icing",
        [
            FormulaLine.Of(Get("icing sugar"), Amount.Parse("1 1/2 cups"), MeasuringSystem.UsCustomary, Packing.Sifted),
            FormulaLine.Of(Get("icing sugar"), Amount.Parse("2 Tbsp"), MeasuringSystem.UsCustomary, Packing.Sifted),
            FormulaLine.Of(s_butter, 90),
            FormulaLine.Of(s_white, Amount.Parse("2-3 large"), MeasuringSystem.UsCustomary),
            FormulaLine.Of(Get("vanilla extract"), Amount.Parse("2-3 tsp"), MeasuringSystem.UsCustomary),
        ], boiledOffGrams: 20);
        Ingredient[] ingredients = [.. formula.Lines.Select(line => line.Ingredient).Distinct()];
        double[] grams = [.. ingredients.Select(ingredient => formula.GramsOf(ingredient) ?? 0)];
        double[] spread = [grams[0] * Conversion.Of(Get("icing sugar"), Packing.Sifted, MeasuringSystem.UsCustomary).LogUncertainty, 0,
            formula.Lines[3].Measured!.Value.Grams.StandardUncertainty, formula.Lines[4].Measured!.Value.Grams.StandardUncertainty];
        Balance balance = Balance.Of(formula);
        Random random = new(20261125);
        foreach (FormulaPart part in (FormulaPart[])[FormulaPart.Water, FormulaPart.Fat, FormulaPart.Sugars, FormulaPart.Protein, FormulaPart.Solids, FormulaPart.Everything])
        {
            double boiled = part == FormulaPart.Water || part == FormulaPart.Everything ? 20 : 0;
            double[] means = [.. ingredients.Select(part.FractionIn)], errors = [.. ingredients.Zip(means, CompositionSpread.StandardUncertainty)];
            double sumF = 0, squaresF = 0, sumG = 0, squaresG = 0;
            const int Draws = 100_000;
            for (int n = 0; n < Draws; n++)
            {
                double has = -boiled, total = -20;
                for (int i = 0; i < ingredients.Length; i++)
                {
                    double x = grams[i] + spread[i] * Normal(random);
                    total += x;
                    has += x * (means[i] + errors[i] * Normal(random));
                }
                double share = has / total;
                (sumF, squaresF, sumG, squaresG) = (sumF + share, squaresF + share * share, sumG + has, squaresG + has * has);
            }
            BalanceItem item = balance[part];
            Assert.Equal(sumF / Draws, item.Fraction.Likely, 0.003);
            AssertSpread(Math.Sqrt(squaresF / Draws - sumF * sumF / Draws / Draws), (item.Fraction.High - item.Fraction.Low) / 4);
            AssertSpread(Math.Sqrt(squaresG / Draws - sumG * sumG / Draws / Draws), (item.Grams.High - item.Grams.Low) / 4);
        }
    }

    private static void AssertSpread(double drawn, double computed) => Assert.Equal(drawn, computed, 0.02 * drawn + 1e-7);

    // Box and Muller (1958).
    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    [Fact]
    public void WhatIsNotThereIsNotListedAndIsNothing()
    {
        Balance balance = Balance.Of(Buttercream());
        Assert.DoesNotContain(balance.Items, item => item.Part == FormulaPart.Alcohol);
        Assert.Equal(0, balance[FormulaPart.Alcohol].Grams.High);
        Assert.Equal(0, balance[FormulaPart.Alcohol].Fraction.High);
    }

    [Fact]
    public void TheConstituentsAddUpToTheTotal()
    {
        Balance balance = Balance.Of(Buttercream(40));
        double sum = Enum.GetValues<Constituent>().Sum(constituent => balance[FormulaPart.Of(constituent)].Grams.Likely);
        // Printed compositions close to a few hundredths of a per cent.
        Assert.Equal(1025, sum, 1025 * 5e-4);
    }

    [Fact]
    public void EveryListedSpreadStandsInOrderAndWithinItsLimits() => Assert.All(IngredientTable.BuiltIn.All, ingredient =>
        Assert.All(Balance.Of(Formula.Of("x", [FormulaLine.Of(ingredient, 1)])).Items, item => Assert.True(item.Fraction.Low >= 0 && item.Fraction.High <= 1 && item.Grams.High <= 1)));

    private static Ingredient Get(string name) => IngredientTable.BuiltIn.Get(name);
}
