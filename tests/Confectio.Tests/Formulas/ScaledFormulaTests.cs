using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Uncertainty;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Formulas;

/// <summary>Scaling into measures that a kitchen has, against volumes added up by hand.</summary>
public sealed class ScaledFormulaTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;
    private static readonly MeasuringTools s_tools = MeasuringTools.Usual(MeasuringSystem.UsCustomary);

    // By hand: a cup is 16 tablespoons of 3 teaspoons; 60 teaspoons are 1 1/4 cups.
    [Theory]
    [InlineData("5 tsp vanilla extract", 12, "1 1/4 cups")]
    [InlineData("1 tsp vanilla extract", 3, "1 Tbsp")]
    [InlineData("4 Tbsp whole milk", 1, "1/4 cup")]
    [InlineData("16 Tbsp whole milk", 2.5, "2 1/2 cups")]
    [InlineData("1 1/2 cups sifted icing sugar", 2, "3 cups")]
    [InlineData("2 Tbsp + 1 tsp whole milk", 3, "7 Tbsp")]
    [InlineData("1 cup whole milk", 0.5, "1/2 cup")]
    public void MeasuresThatAKitchenHas(string line, double factor, string measure)
    {
        ScaledLine scaled = Assert.Single(ScaledFormula.Of(Read(line), factor, s_tools).Lines);
        Assert.Equal(0, scaled.RelativeError, 9);
        Assert.Equal(Amount.Parse(measure).Millilitres(MeasuringSystem.UsCustomary), scaled.Line.AsWritten!.Value.Millilitres(MeasuringSystem.UsCustomary), 6);
        Assert.True(scaled.Measure!.Fills <= 7, scaled.ToString());
    }

    [Fact]
    public void SixtyTeaspoonsAreNoMeasure()
    {
        ScaledLine scaled = Assert.Single(ScaledFormula.Of(Read("5 tsp vanilla extract"), 12, s_tools).Lines);
        Assert.Equal("1 1/4 cups", scaled.Line.AsWritten!.Value.ToString());
        Assert.Equal(2, scaled.Measure!.Fills);
    }

    // By a factor that no fraction is, the packing stays: 1 1/2 cups of sifted sugar times 2.37 are 3.555 cups; 3 1/2 are 1.5 % short.
    [Fact]
    public void ThePackingStaysByAnyFactor()
    {
        ScaledFormula scaled = ScaledFormula.Of(Read("1 1/2 cups sifted icing sugar"), 2.37, s_tools);
        Assert.Equal(Packing.Sifted, scaled.Lines[0].Line.Packing);
        Assert.Equal("3 1/2 cups", scaled.Lines[0].Line.AsWritten!.Value.ToString());
        Assert.Equal(3.5 / 3.555 - 1, scaled.Lines[0].RelativeError, 6);
        Assert.Equal(scaled.Lines[0].RelativeError, scaled.RelativeError, 6);
    }

    [Fact]
    public void WhatIsWeighedOrCountedStays()
    {
        ScaledFormula scaled = ScaledFormula.Of(Read("250 g unsalted butter\n3 large egg whites\n1/8 tsp fine sea salt"), 1.5, s_tools);
        Assert.Equal("375 g unsalted butter", scaled.Lines[0].Line.ToString());
        Assert.StartsWith("4 1/2 large egg white", scaled.Lines[1].Line.ToString(), StringComparison.Ordinal);
        ScaledFormula third = ScaledFormula.Of(Read("250 g unsalted butter\n3 large egg whites\n1/8 tsp fine sea salt"), 1 / 6.0, s_tools);
        // 145 5/6 g is on no scale; half a pound is.
        Assert.Equal("145.83 g unsalted butter", ScaledFormula.Of(Read("250 g unsalted butter"), 7 / 12.0, s_tools).Lines[0].Line.ToString());
        Assert.Equal("1/2 lb unsalted butter (226.8 g)", ScaledFormula.Of(Read("1 lb unsalted butter"), 0.5, s_tools).Lines[0].Line.ToString());
        // 7/12 of a teaspoon: a half and an eighth are 7.1 % more, and say so.
        Assert.Equal(0.625 / (7 / 12.0) - 1, ScaledFormula.Of(Read("1 tsp vanilla extract"), 7 / 12.0, s_tools).Lines[0].RelativeError, 9);
        Assert.Null(ScaledFormula.Of(Read("4 large egg whites"), 1 / 3.0, s_tools).Lines[0].Line.AsWritten); // 1 1/3 eggs
        Assert.StartsWith("1/2 large egg white", third.Lines[1].Line.ToString(), StringComparison.Ordinal);
        Assert.Null(third.Lines[2].Line.AsWritten); // 1/48 of a teaspoon is nobody's spoon
        Assert.StartsWith("weighed: no filling", third.Lines[2].Why, StringComparison.Ordinal);
        Assert.Equal(0, third.Lines[2].RelativeError, 9);
    }

    [Property(MaxTest = 300)]
    public Property EveryLineIsWithinWhatIsAllowedAndTheWholeToo() => Prop.ForAll(Gen.Choose(1, 4000).ToArbitrary(), Gen.Choose(1, 200).ToArbitrary(), (eighths, hundredths) =>
    {
        Formula formula = Formula.Of("", [FormulaLine.Of(s_table.Get("whole milk"), Amount.Of(new Fraction(eighths, 8), KitchenUnit.Teaspoon), MeasuringSystem.UsCustomary), FormulaLine.Of(s_table.Get("honey"), 100)], 0);
        ScaledFormula scaled = ScaledFormula.Of(formula, hundredths / 20.0, s_tools);
        ScaledLine milk = scaled.Lines[0];
        return (Math.Abs(milk.RelativeError) <= 0.1 + 1e-9 && Math.Abs(scaled.RelativeError) <= 0.1 + 1e-9 && scaled.Lines[1].RelativeError == 0
            && Math.Abs(milk.WantedGrams - formula.Lines[0].Grams.Likely * hundredths / 20.0) <= 1e-9 * milk.WantedGrams
            && (milk.Measure is null) == (milk.Why.Length > 0)).Label(milk.ToString());
    });

    // 300 g of white are 9.09 eggs of 33 g (USDA SR 01124): to 12 eggs the factor is 12·33/300.
    [Fact]
    public void ByEggs()
    {
        EggSize large = EggSizeSystem.Get("us").Size("large");
        Formula meringue = Formula.Of("", [FormulaLine.Of(s_table.Get("egg white"), 300), FormulaLine.Of(s_table.Get("granulated sugar"), 600)]);
        EggScale scale = EggScale.Of(meringue, large);
        Assert.Equal(12 * 33 / 300.0, scale.FactorTo(12), 9);
        Assert.Equal(9, scale.NearestEggs);
        Assert.Equal(9.09, scale.Eggs.Eggs.Likely, 0.01);
        ScaledFormula scaled = Kitchen.UsCustomary.ScaleToEggs(meringue, "12 large");
        Assert.Equal(12 * 33, scaled.Formula.Lines[0].Grams.Likely, 6);
        Assert.Equal(12 * 66, scaled.Formula.Lines[1].Grams.Likely, 6);
        Assert.Throws<ArgumentException>("formula", () => EggScale.Of(meringue, large, EggPart.Yolk));
        Assert.Throws<ArgumentOutOfRangeException>("eggs", () => scale.FactorTo(0));
        Assert.Throws<FormatException>(() => Kitchen.UsCustomary.ScaleToEggs(meringue, "12 medium-rare"));
    }

    // A bowl of 5 US quarts, two thirds of it usable, is 3154.5 mL: at 0.5 g/mL and no rise 1577 g fit, so that 788.6 g go in twice.
    [Fact]
    public void ByTheBowl()
    {
        Formula cream = Formula.Of("", [FormulaLine.Of(s_table.Get("heavy cream"), 788.627455)]);
        MixerBowl bowl = MixerBowl.OfQuarts(5, 2 / 3.0);
        Icing icing = Icing.Of("cream", 0.5, cream);
        Assert.Equal(2, icing.LargestFactorIn(bowl), 5);
        Assert.Equal(2 * 788.627455, Kitchen.UsCustomary.ScaleToBowl(icing, bowl).Formula.TotalGrams, 2);
        Assert.Throws<InvalidOperationException>(() => Icing.Of("jam", 1.3).LargestFactorIn(bowl));
    }

    [Fact]
    public void BadInputIsRefused()
    {
        Formula formula = Read("1 cup whole milk");
        Assert.Throws<ArgumentOutOfRangeException>("factor", () => ScaledFormula.Of(formula, 0, s_tools));
        Assert.Throws<ArgumentOutOfRangeException>("factor", () => ScaledFormula.Of(formula, double.NaN, s_tools));
        Assert.Throws<ArgumentOutOfRangeException>("allowedError", () => ScaledFormula.Of(formula, 1, s_tools, 0.5));
    }

    private static Formula Read(string text) => Formula.ParseText("", text, s_table, MeasuringSystem.UsCustomary);
}
