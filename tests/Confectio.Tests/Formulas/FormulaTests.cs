using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Formulas;

public sealed class FormulaTests
{
    private static readonly Ingredient s_butter = Get("unsalted butter"), s_sugar = Get("granulated sugar"), s_icing = Get("icing sugar"),
        s_water = Get("water"), s_flour = Get("plain flour"), s_salt = Get("table salt"), s_white = Get("egg white");

    private static Formula Syrup(double boiledOff = 0) => Formula.Of("syrup", [FormulaLine.Of(s_sugar, 400), FormulaLine.Of(s_water, 200)], boiledOff);

    [Fact]
    public void TheTotalIsWhatIsPutInLessWhatBoilsOff()
    {
        Formula syrup = Syrup(120);
        Assert.Equal(600, syrup.PutInGrams);
        Assert.Equal(480, syrup.TotalGrams);
        Assert.Equal("syrup, 480 g", syrup.ToString());
    }

    [Fact]
    public void AWeighedLineIsExact()
    {
        FormulaLine line = FormulaLine.Of(s_butter, 250);
        Assert.Null(line.AsWritten);
        Assert.Null(line.Measured);
        Assert.Equal(250, line.Grams.Low);
        Assert.Equal(250, line.Grams.High);
        Assert.Equal("250 g unsalted butter", line.ToString());
    }

    [Fact]
    public void AVolumeBringsTheSpreadOfItsDensity()
    {
        // USDA SR NDB 19336 gives 100 g a cup sifted, USDA HERR 41 gives 95 g: the geometric mean of the two.
        FormulaLine line = FormulaLine.Of(s_icing, Amount.Parse("1 1/2 cups"), MeasuringSystem.UsCustomary, Packing.Sifted);
        Assert.Equal(1.5 * Math.Sqrt(100 * 95), line.Grams.Likely, 1e-9);
        Assert.Equal(line.Grams.Likely, line.Grams.Likely);
        Assert.True(line.Grams.Low < 1.5 * 95 && line.Grams.High > 1.5 * 100);
        Assert.Equal("1 1/2 cups sifted icing sugar (146.2 g)", line.ToString());
    }

    [Fact]
    public void PiecesWeighWhatTheIngredientSays() =>
        // USDA SR NDB 01124: a large egg white is 33 g; NDB 01145: a stick of butter is 113 g.
        Assert.Equal([99.0, 226.0],
            [FormulaLine.Of(s_white, Amount.Parse("3 large"), MeasuringSystem.Metric).Grams.Likely, FormulaLine.Of(s_butter, Amount.Parse("2 sticks"), MeasuringSystem.Metric).Grams.Likely]);

    [Fact]
    public void PiecesNeedNoDensity()
    {
        IngredientTable pods = IngredientTable.Empty.LayerIngredients(new StringReader(
            "id,name,class,default_packing,water_percent,fibre_percent,source,kind\nvanilla-pod,vanilla pod,pieces,whole,35,65,Fennmarsh Hall,estimated\n")).Told(out _)!
            .LayerWeights(new StringReader("ingredient,amount,grams,kind,source\nvanilla-pod,1 piece,3,measured,Fennmarsh Hall scales\n")).Told(out _)!;
        Assert.Equal(6, FormulaLine.Of(pods.Get("vanilla pod"), Amount.Parse("2 pieces"), MeasuringSystem.Metric).Grams.Likely);
    }

    [Fact]
    public void AMassIsWhatItSays() => Assert.Equal(20 * 28.349523125, FormulaLine.Of(s_butter, Amount.Parse("1 lb 4 oz"), MeasuringSystem.UsCustomary).Grams.Likely, 1e-9);

    [Fact]
    public void ARangeCountsWithItsMiddle()
    {
        FormulaLine line = FormulaLine.Of(s_butter, Amount.Parse("200-300 g"), MeasuringSystem.Metric);
        Assert.Equal((200.0, 250.0, 300.0), (line.Grams.Low, line.Grams.Likely, line.Grams.High));
    }

    [Fact]
    public void GramsOfTheFormulasOwnKeepTheSpreadInProportion()
    {
        FormulaLine by = FormulaLine.Of(s_icing, Amount.Parse("1 cup"), MeasuringSystem.UsCustomary, Packing.Sifted);
        FormulaLine own = FormulaLine.Of(s_icing, 110, Amount.Parse("1 cup"), MeasuringSystem.UsCustomary, Packing.Sifted);
        Assert.Equal(110, own.Grams.Likely);
        Assert.Equal(by.Grams.Low / by.Grams.Likely, own.Grams.Low / 110, 1e-12);
        Assert.Equal(by.Grams.High / by.Grams.Likely, own.Grams.High / 110, 1e-12);
    }

    [Theory]
    [InlineData(2, "3 cups")]
    [InlineData(0.5, "3/4 cup")]
    [InlineData(1.0 / 3, "1/2 cup")]
    [InlineData(5.0 / 16, "15/32 cup")]
    [InlineData(0.7853981, null)] // no fraction a cook would know
    [InlineData(2.0 / 17, null)]
    public void AWrittenAmountScalesBySimpleFractionsOnly(double factor, string? amount)
    {
        Formula formula = Formula.Of("x", [FormulaLine.Of(s_icing, Amount.Parse("1 1/2 cups"), MeasuringSystem.UsCustomary, Packing.Sifted)]);
        FormulaLine line = formula.Scale(factor).Lines[0];
        Assert.Equal(amount, line.AsWritten?.ToString());
        Assert.Equal(amount is null, line.Grams.Low == line.Grams.Likely);
        Assert.Equal(amount is null ? null : Packing.Sifted, line.Packing);
        Assert.Equal(1.5 * Math.Sqrt(9500) * factor, line.Grams.Likely, 1e-9);
    }

    [Fact]
    public void AnAmountTooLargeForExactFractionsIsDropped()
    {
        Formula formula = Formula.Of("x", [FormulaLine.Of(s_butter, Amount.Parse("1/9007199254740993 g"), MeasuringSystem.Metric), FormulaLine.Of(s_butter, 1)]);
        Assert.NotNull(formula.Scale(2).Lines[0].AsWritten);
        Assert.Null(formula.Scale(1.0 / 16).Scale(1.0 / 16).Scale(1.0 / 16).Lines[0].AsWritten);
    }

    [Fact]
    public void BakersPercentagesAreExact()
    {
        // 100 x/B in decimal arithmetic: lean bread on two flours of 700 and 300 g.
        decimal[] grams = [700m, 300m, 650m, 18m, 12.5m];
        Ingredient second = Get("bread flour");
        Formula dough = Formula.Of("dough",
            [FormulaLine.Of(s_flour, 700), FormulaLine.Of(second, 300), FormulaLine.Of(s_water, 650), FormulaLine.Of(s_salt, 18), FormulaLine.Of(s_butter, 12.5)]);
        IReadOnlyList<double> percent = dough.PercentOf(FormulaPart.OfIngredients("flour", s_flour, second));
        Assert.Equal(grams.Select(x => (double)(100m * x / 1000m)), percent);
        decimal whole = grams.Sum();
        Assert.Equal(grams.Select(x => (double)(100m * x / whole)), dough.PercentOf(FormulaPart.Everything), (a, b) => Math.Abs(a - b) < 1e-13);
    }

    [Fact]
    public void PercentagesAreOfWhatIsPutIn()
    {
        Assert.Equal(Syrup().PercentOf(FormulaPart.Everything), Syrup(150).PercentOf(FormulaPart.Everything));
        Assert.Equal([0.04, 99.96], Syrup(150).PercentWithin(FormulaPart.Water), (a, b) => Math.Abs(a - b) < 0.01);
    }

    [Fact]
    public void ThePercentagesWithinAPhaseSayWhoBringsIt()
    {
        // USDA SR, fat in 100 g: heavy cream NDB 01053 37.00, unsalted butter NDB 01145 81.11.
        IReadOnlyList<double> percent = Formula.Of("x", [FormulaLine.Of(Get("heavy cream"), 100), FormulaLine.Of(s_butter, 100), FormulaLine.Of(s_sugar, 100)])
            .PercentWithin(FormulaPart.FatPhase);
        Assert.Equal([3700 / 118.11, 8111 / 118.11, 0], percent, (a, b) => Math.Abs(a - b) < 1e-12);
    }

    [Fact]
    public void ABasisOfNothingIsRefused()
    {
        ArgumentException thrown = Assert.Throws<ArgumentException>("basis", () => Syrup().PercentOf(FormulaPart.Fat));
        Assert.Contains("fat", thrown.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("phase", () => Syrup().PercentWithin(FormulaPart.MilkFat));
        Assert.Throws<ArgumentException>("ingredient", () => Syrup().ScaleToIngredient(s_butter, 100));
    }

    [Fact]
    public void NoLinesAndTooManyAreRefused()
    {
        Assert.Throws<ArgumentException>("lines", () => Formula.Of("x", []));
        FormulaLine line = FormulaLine.Of(s_butter, 1);
        Assert.Equal(1000, Formula.Of("x", Enumerable.Repeat(line, 1000)).Lines.Count);
        ArgumentException thrown = Assert.Throws<ArgumentException>("lines", () => Formula.Of("x", Endless()));
        Assert.Contains("1000", thrown.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("lines", () => Formula.Of("x", [line, null!]));

        IEnumerable<FormulaLine> Endless()
        {
            while (true)
                yield return line;
        }
    }

    [Fact]
    public void ATotalOfNothingIsRefused()
    {
        Assert.Throws<ArgumentException>("lines", () => Formula.Of("x", [FormulaLine.Of(s_butter, 0)]));
        IngredientTable pure = IngredientTable.Empty.LayerIngredients(new StringReader(
            "id,name,class,default_packing,water_percent,source,kind\nice,ice,liquid,levelled,100,Fennmarsh Hall,estimated\n")).Told(out _)!;
        Assert.Throws<ArgumentException>("lines", () => Formula.Of("x", [FormulaLine.Of(pure.Get("ice"), 100)], 100));
    }

    [Theory]
    [InlineData(200.2)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void MoreWaterThanThereIsCannotBoilOff(double loss)
    {
        ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>("boiledOffGrams", () => Syrup(loss));
        // 99.9 % of 200 g of tap water and 0.02 % of 400 g of sugar (USDA SR NDB 14429 and 19335).
        Assert.Contains("from 0 to 199.88", thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALossComputedToTheLastBitIsTaken() => Assert.Equal(Syrup(199.88).BoiledOffGrams, Syrup(199.88 * (1 + 1e-15)).BoiledOffGrams, 1e-12);

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e12)] // 400 g of sugar would be 4e14 g
    public void AFactorOutOfRangeIsRefused(double factor)
    {
        Assert.Throws<ArgumentOutOfRangeException>(nameof(factor), () => Syrup().Scale(factor));
        if (factor != 1e12)
        {
            Assert.Throws<ArgumentOutOfRangeException>("grams", () => Syrup().ScaleToMass(factor));
            Assert.Throws<ArgumentOutOfRangeException>("pieces", () => Syrup().ScaleToPieces(factor, 8));
            Assert.Throws<ArgumentOutOfRangeException>("gramsPerPiece", () => Syrup().ScaleToPieces(48, factor));
            Assert.Throws<ArgumentOutOfRangeException>("gramsAtHand", () => Syrup().ScaleToIngredient(s_sugar, factor));
        }
    }

    [Fact]
    public void WhatAnArgumentMayBeStopsWhereALineWouldOutgrowItself()
    {
        // 400 g of 600 are sugar: it reaches 1e12 g at a total of 1.5e12.
        Assert.Equal(1e12, Syrup().ScaleToMass(1e12).TotalGrams, 1);
        Assert.Equal(1e12, Syrup().ScaleToIngredient(s_sugar, 1e12).Lines[0].Grams.Likely);
        Assert.Equal(1e12, Syrup().Scale(2.5e9).Lines[0].Grams.Likely);
        Assert.Contains("to 500000000000.", Assert.Throws<ArgumentOutOfRangeException>("gramsAtHand", () => Syrup().ScaleToIngredient(s_water, 6e11)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("pieces", () => Syrup().ScaleToPieces(1e9, 2000));
        Assert.Contains("to 2500000000.", Assert.Throws<ArgumentOutOfRangeException>("factor", () => Syrup().Scale(2.6e9)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AnAmountBeyondALineIsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>("amount", () => FormulaLine.Of(s_butter, Amount.Parse("9000000000000 kg"), MeasuringSystem.Metric));

    [Fact]
    public void AnUnknownPackingListsTheKnownOnes() => Assert.Contains("packed", Assert.Throws<ArgumentException>("packing",
        () => FormulaLine.Of(s_butter, Amount.Parse("1 cup"), MeasuringSystem.Metric, Packing.Sifted)).Message, StringComparison.Ordinal);

    [Fact]
    public void LinesThatAreJoinedAreWeighedAndOthersStay()
    {
        FormulaLine cup = FormulaLine.Of(s_icing, Amount.Parse("1 cup"), MeasuringSystem.UsCustomary, Packing.Sifted);
        Formula combined = Formula.Of("x", [cup, FormulaLine.Of(s_butter, 100), FormulaLine.Of(s_butter, 50)]).Combined();
        Assert.Same(cup, combined.Lines[0]);
        Assert.Equal(150, combined.Lines[1].Grams.Likely);
        Assert.Equal(2, combined.Lines.Count);
    }

    [Fact]
    public void MergingNeedsAFormula()
    {
        Assert.Throws<ArgumentException>("formulas", () => Formula.Merge("x"));
        Assert.Throws<ArgumentNullException>("formulas", () => Formula.Merge("x", Syrup(), null!));
        Assert.Equal(50, Formula.Merge("x", Syrup(20), Syrup(30)).BoiledOffGrams);
    }

    private static Ingredient Get(string name) => IngredientTable.BuiltIn.Get(name);
}
