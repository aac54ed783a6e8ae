using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Tests.Uncertainty;
using Xunit;

namespace Confectio.Tests.Conversions;

/// <summary>A line, a total and a balance of it have one spread; and the ends of what is counted, ranged and clamped.</summary>
public sealed class OneSpreadTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    private static void AssertSame(Spread expected, Spread actual)
    {
        Assert.Equal(expected.Low, actual.Low, 1e-9 * expected.High);
        Assert.Equal(expected.Likely, actual.Likely, 1e-9 * expected.High);
        Assert.Equal(expected.High, actual.High, 1e-9 * expected.High);
    }

    [Fact]
    public void SiftedIcingSugarHasOneSpread()
    {
        // By hand in ConversionTests: 146.2 g (129.6 to 164.9).
        FormulaLine line = FormulaLine.Of(s_table.Get("icing sugar"), Amount.Parse("1 1/2 cups"), MeasuringSystem.UsCustomary, Packing.Sifted);
        AssertSame(line.Grams, MassTotal.Of([line.Measured!.Value]));
        AssertSame(line.Grams, Balance.Of(Formula.Of("Fennmarsh Hall", [line]))[FormulaPart.Everything].Grams);
        Assert.Equal(129.65, line.Grams.Low, 0.01);
    }

    /// <summary>Every ingredient in every packing it has, or can be taken for, in every system, whole and as a range.</summary>
    [Fact]
    public void LineTotalAndBalanceAgreeForOneLine()
    {
        foreach (MeasuringSystem system in MeasuringSystem.All)
        {
            foreach (Ingredient food in s_table.All)
            {
                foreach (Packing packing in Enum.GetValues<Packing>().Where(packing => food.TryGetNearestDensity(packing, out _)))
                {
                    foreach (string amount in (string[])["1 1/2 Tbsp", "2-3 tsp", "100 mL"])
                        Check(FormulaLine.Of(food, Amount.Parse(amount), system, packing));
                }
                foreach (PieceWeight piece in food.Pieces)
                    Check(FormulaLine.Of(food, Amount.OfPieces(3, piece.Piece), system));
            }
        }
        Check(FormulaLine.Of(s_table.Get("water"), Amount.Parse("100-300 g"), MeasuringSystem.Metric));
    }

    private static void Check(FormulaLine line)
    {
        AssertSame(line.Grams, MassTotal.Of([line.Measured!.Value]));
        AssertSame(line.Grams, Balance.Of(Formula.Of("Fennmarsh Hall", [line]))[FormulaPart.Everything].Grams);
    }

    [Fact]
    public void ARangeOfPiecesHasItsMiddleAndTheWidthOfBothEnds()
    {
        // USDA SR 01145: a stick of 113 g, rounded to a gram, so 112.5 to 113.5. 2 to 4 sticks: 225 to 454, likely 3 x 113.
        Ingredient butter = s_table.Get("unsalted butter");
        Spread stick = butter.Piece("stick").Grams;
        ConvertedMass mass = Conversion.Of(butter, MeasuringSystem.UsCustomary).ToMass(Amount.Parse("2-4 sticks"));
        Assert.Equal(3 * stick.Likely, mass.Grams.Likely, 1e-9);
        Assert.Equal(339, mass.Grams.Likely, 1e-9);
        Assert.Equal(225, mass.Grams.Low, 1e-9);
        Assert.Equal(454, mass.Grams.High, 1e-9);
        Assert.Equal((454 - 225) / Math.Sqrt(12), mass.Grams.StandardUncertainty, 1e-9); // GUM 4.3.7
    }

    [Fact]
    public void ARangeOfMassesHasItsMiddleAndItsWidth()
    {
        // GUM 4.3.7: a rectangle from 100 to 300 has the middle 200 and u = 200/√12.
        ConvertedMass mass = Conversion.Of(s_table.Get("water"), MeasuringSystem.Metric).ToMass(Amount.Parse("100-300 g"));
        Assert.Equal((100, 200, 300), mass.Grams.Ends());
        Assert.Equal(200 / Math.Sqrt(12), mass.Grams.StandardUncertainty, 1e-12);
        FormulaLine line = FormulaLine.Of(s_table.Get("water"), Amount.Parse("100-300 g"), MeasuringSystem.Metric);
        Assert.Equal(200 / Math.Sqrt(12), line.Measured!.Value.Grams.StandardUncertainty, 1e-12);
        Assert.Equal(200, line.Grams.Likely);
    }

    [Fact]
    public void TheSmallestVolumeHasMeasuresInEveryDensity()
    {
        // 0.01 mL is in the range; grams and back may lose its last bit, which the lower clamp mends.
        MeasuringTools tools = MeasuringTools.Of(MeasuringSystem.Metric, Amount.Of(new(1, 100), KitchenUnit.Millilitre));
        int lost = 0;
        foreach (Ingredient food in s_table.All.Where(food => food.Densities.Count > 0))
        {
            Conversion conversion = Conversion.Of(food, food.Densities[0].Packing, MeasuringSystem.Metric);
            double grams = 0.01 * conversion.Density.GramsPerMillilitre.Likely;
            lost += grams / conversion.Density.GramsPerMillilitre.Likely < 0.01 ? 1 : 0;
            Assert.Equal(1, conversion.ToMeasures(grams, tools)!.Fills);
        }
        Assert.True(lost > 0, "no density lost the last bit: the clamp was not tried");
    }

    [Fact]
    public void MinusNothingIsNothing()
    {
        Conversion water = Conversion.Of(s_table.Get("water"), MeasuringSystem.Metric);
        Assert.DoesNotContain("-", water.ToMass(-0.0).ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("-", water.ToVolume(-0.0).ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("-", FormulaLine.Of(s_table.Get("water"), -0.0).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void ColumnsMayBeTheSameMemoryButNotShifted()
    {
        Conversion honey = Conversion.Of(s_table.Get("honey"), MeasuringSystem.Metric);
        double[] same = [.. Enumerable.Range(1, 40).Select(i => (double)i)], apart = [.. same], result = new double[40];
        honey.ToGrams(apart, result);
        honey.ToGrams(same, same);
        Assert.Equal(result, same);
        Assert.Throws<ArgumentException>("grams", () => honey.ToGrams(apart.AsSpan(0, 30), apart.AsSpan(1, 30)));
        Assert.Throws<ArgumentException>("grams", () => honey.ToGrams(apart.AsSpan(1, 30), apart.AsSpan(0, 30)));
        Assert.Throws<ArgumentException>("millilitres", () => honey.ToMillilitres(apart.AsSpan(0, 30), apart.AsSpan(1, 30)));
        honey.ToGrams(apart.AsSpan(0, 20), apart.AsSpan(20, 20)); // beside each other
        Assert.Equal(result.Take(20), apart.Skip(20));
    }
}
