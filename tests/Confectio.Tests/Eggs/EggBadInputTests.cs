using System.Globalization;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sugars;
using Confectio.Textures;
using Xunit;

namespace Confectio.Tests.Eggs;

/// <summary>Bad numbers and names in the room of egg whites: refused at once, by name, value and range.</summary>
public sealed class EggBadInputTests
{
    private const double AboveNothing = 1e-9;

    private static readonly MeasuringSystem s_us = MeasuringSystem.UsCustomary;
    private static readonly EggSize s_large = EggSizeSystem.Get("us").Size("large");
    private static readonly EggForm s_fresh = Forms.FreshWhite, s_dried = Forms.DriedWhite;
    private static readonly MeringueBase s_base = MeringueBase.Of(Forms.FreshWhite, 100, 200);

    private static readonly Formula s_formula = Formula.Of("Fennmarsh icing", [FormulaLine.Of(Forms.FreshWhite.Ingredient, 100)]);

    // The call; its parameter; the range that is stated. Both ends are in it.
    public static TheoryData<string, Action<double>, string, double, double> Ranges => new()
    {
        { "moisture", value => s_dried.WithMoisture(value), "moisture", AboveNothing, 0.2 },
        { "moisture of the formula", value => EggReplacement.WaterPerGram(value, 0.1), "moisture", AboveNothing, 0.2 },
        { "solids of the formula", value => EggReplacement.WaterPerGram(0.08, value), "solids", AboveNothing, 0.92 },
        { "target", value => EggReplacement.Of(s_fresh, 100, s_dried, targetSolids: value), "targetSolids", AboveNothing, s_dried.SolidsFraction.Likely },
        { "target of eggs", value => EggReplacement.Of(EggCount.Of(1, s_large), s_dried, targetSolids: value), "targetSolids", AboveNothing, s_dried.SolidsFraction.Likely },
        { "grams", value => EggReplacement.Of(s_fresh, value, s_dried), "grams", AboveNothing, 1e9 },
        { "formula", value => EggReplacement.InFormula(s_formula, s_fresh, value, s_dried), "grams", AboveNothing, 100 },
        { "eggs", value => EggCount.Of(value, s_large), "eggs", 0, 1e9 },
        { "eggs of grams", value => EggCount.FromGrams(value, EggPart.White, s_large), "grams", 0, 1e9 },
        { "error of eggs", value => EggCount.Of(2, s_large).InMeasures(Forms.FreshWhite, s_us, value), "allowedError", 0, 0.5 },
        { "error", value => EggReplacement.Of(s_fresh, 100, s_dried).InMeasures(s_us, value), "allowedError", 0, 0.5 },
        { "classify", value => EggSizeSystem.Get("eu").Classify(value), "grams", AboveNothing, 1000 },
        { "rule", value => ReconstitutionRule.All[0].ApplyTo(value, s_dried, s_us), "whiteGrams", AboveNothing, 1e9 },
        { "white", value => MeringueBase.Of(s_fresh, value, 1), "whiteGrams", AboveNothing, 1e9 },
        { "sugar", value => MeringueBase.Of(s_fresh, 100, value), "sugarGrams", 0, 1e9 },
        { "acid", value => MeringueBase.Of(s_fresh, 100, 100, value), "acidGrams", 0, 1e9 },
        { "water", value => MeringueBase.Of(s_fresh, 100, 100, 0, value), "waterGrams", 0, 1e9 },
        { "dissolves", value => s_base.CanDissolveAt(value), "celsius", 0, 100 },
        { "undissolved", value => s_base.UndissolvedGrams(value), "celsius", 0, 100 },
        { "foam of white", value => s_base.WhiteFoam(value), "times", 1, 100 },
        { "liquid", value => Foam.Of(value).ToTimes(7), "airFreeGramsPerMillilitre", 0.5, 2 },
        { "times", value => Foam.Of(1).ToTimes(value), "times", 1, 100 },
        { "foam", value => Foam.Of(1).ToDensity(value), "foamGramsPerMillilitre", 0.01, 1 },
        { "syrup", value => s_base.ItalianSyrup(value, AirPressure.SeaLevel), "waterGrams", AboveNothing, 1e9 },
    };

    [Theory]
    [MemberData(nameof(Ranges))]
    public void ANumberOutsideItsRangeIsRefusedByNameValueAndRange(string call, Action<double> action, string parameter, double low, double high)
    {
        Assert.NotEmpty(call);
        string range = $"from {low.ToString("R", CultureInfo.InvariantCulture)} to {high.ToString("R", CultureInfo.InvariantCulture)}.";
        double[] outside = [low == AboveNothing ? 0 : Math.BitDecrement(low), low - 1, Math.BitIncrement(high), high * 10, double.NaN, double.PositiveInfinity, double.NegativeInfinity, -1e300];
        Assert.All(outside, value =>
        {
            ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>(parameter, () => action(value));
            Assert.Equal(value, thrown.ActualValue);
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{parameter} was {value:R}; it must be {range}"), thrown.Message, StringComparison.Ordinal);
        });
        // The ends themselves are in the range; just above 0 many things have no mass left to answer with.
        action(high);
        if (low != AboveNothing)
            action(low);
    }

    // 0 and 100 % moisture are fields that nobody filled in or somebody mistook.
    [Theory]
    [InlineData(0.0)]
    [InlineData(1.0)]
    [InlineData(8.54)]
    public void AMoistureThatNoPowderHasIsRefused(double moisture) => Assert.Throws<ArgumentOutOfRangeException>(nameof(moisture), () => s_dried.WithMoisture(moisture));

    [Fact]
    public void OnlyAPowderHasAMoisture() => Assert.Throws<InvalidOperationException>(() => s_fresh.WithMoisture(0.1));

    [Fact]
    public void AFormReplacesOneOfTheSamePart()
    {
        Assert.Throws<ArgumentException>("incoming", () => EggReplacement.Of(s_fresh, 100, Forms.Get("dried-yolk")));
        Assert.Throws<ArgumentException>("incoming", () => EggReplacement.Of(Forms.Get("fresh-yolk"), 100, s_dried));
        Assert.Throws<ArgumentException>("incoming", () => EggReplacement.InFormula(s_formula, s_fresh, 50, Forms.Get("dried-whole")));
        Assert.Throws<ArgumentException>("white", () => MeringueBase.Of(Forms.Get("fresh-yolk"), 100, 100));
        Assert.Throws<ArgumentException>("white", () => MeringueBase.Of(s_dried, 100, 100));
        Assert.Throws<ArgumentException>("powder", () => ReconstitutionRule.All[0].Apply(s_fresh, s_us));
        Assert.Throws<ArgumentException>("powder", () => ReconstitutionRule.All[0].Apply(Forms.Get("dried-yolk"), s_us));
        Assert.Throws<InvalidOperationException>(() => EggReplacement.Of(s_dried, 100, s_fresh).ByRule(ReconstitutionRule.All[0], s_us));
    }

    [Fact]
    public void ATargetOfSolidsGoesWithSolids() =>
        Assert.Throws<ArgumentException>("targetSolids", () => EggReplacement.Of(s_fresh, 100, s_dried, EggMatch.Protein, 0.12));

    [Fact]
    public void WhatIsNotThereIsNotReplaced()
    {
        Assert.Throws<ArgumentException>("outgoing", () => EggReplacement.InFormula(s_formula, s_dried, 1, s_fresh));
        Assert.Throws<ArgumentException>("eggs", () => EggReplacement.Of(EggCount.Of(0, s_large), s_dried));
        Assert.Throws<ArgumentException>("amount", () => EggReplacement.Of(s_fresh, Amount.Parse("0 g"), s_us, s_dried));
    }

    [Fact]
    public void TheShellFillsNoCup()
    {
        Assert.Throws<ArgumentException>("form", () => EggCount.Of(1, s_large).Cups(Forms.DriedWhite, s_us));
        Assert.Throws<ArgumentException>("form", () => EggCount.FromAmount(Amount.Parse("1 cup"), Forms.Get("dried-yolk"), s_large, s_us));
        Assert.Throws<ArgumentException>("amount", () => EggCount.FromAmount(Amount.Parse("3 large"), Forms.FreshWhite, s_large, s_us));
        Assert.Throws<ArgumentException>("part", () => EggForm.Of("shells", EggPart.Shell, s_fresh.Ingredient, s_fresh.Forms));
        Assert.Throws<ArgumentException>("ingredient", () => EggForm.Of("sweet", EggPart.White, IngredientTable.BuiltIn.Get("granulated sugar"), s_fresh.Forms));
        Assert.Throws<ArgumentException>("name", () => EggForm.Of(" ", EggPart.White, s_fresh.Ingredient, s_fresh.Forms));
    }

    [Fact]
    public void ValuesOfNoEnumAreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>("part", () => s_large.Grams((EggPart)9));
        Assert.Throws<ArgumentOutOfRangeException>("part", () => s_large.ProvenanceOf((EggPart)9));
        Assert.Throws<ArgumentOutOfRangeException>("part", () => EggFraction.RangeOf((EggPart)(-1)));
        Assert.Throws<ArgumentOutOfRangeException>("match", () => EggReplacement.Of(s_fresh, 1, s_dried, (EggMatch)5));
        Assert.Throws<ArgumentOutOfRangeException>("quantity", () => Meringue.French.FiguresOf((MeringueQuantity)99));
    }

    [Fact]
    public void UnknownNamesAreAnsweredWithThoseThereAre()
    {
        string huge = new('x', 10_000_000);
        Assert.All(new (Action Call, string Known)[]
        {
            (() => Forms.Get("powder"), "dried-white"), (() => ReconstitutionRule.Get("powder"), "spoon-rule"), (() => Meringue.Get("powder"), "french, swiss, italian"),
            (() => Forms.Get(huge), "dried-white"), (() => EggSizeSystem.Get(huge), "us, eu, japan"),
        }, item =>
        {
            string message = Assert.Throws<ArgumentException>("name", item.Call).Message;
            Assert.Contains(item.Known, message, StringComparison.Ordinal);
            Assert.True(message.Length < 600);
        });
    }

    [Fact]
    public void NullIsRefusedByName()
    {
        Assert.Throws<ArgumentNullException>("name", () => EggSizeSystem.Get(null!));
        Assert.Throws<ArgumentNullException>("name", () => EggSizeSystem.Get("us").Size(null!));
        Assert.Throws<ArgumentNullException>("name", () => Forms.Get(null!));
        Assert.Throws<ArgumentNullException>("name", () => Meringue.Get(null!));
        Assert.Throws<ArgumentNullException>("name", () => ReconstitutionRule.Get(null!));
        Assert.Throws<ArgumentNullException>("size", () => EggCount.Of(1, null!));
        Assert.Throws<ArgumentNullException>("size", () => EggCount.FromGrams(1, EggPart.White, null!));
        Assert.Throws<ArgumentNullException>("outgoing", () => EggReplacement.Of(null!, 1, s_dried));
        Assert.Throws<ArgumentNullException>("incoming", () => EggReplacement.Of(s_fresh, 1, null!));
        Assert.Throws<ArgumentNullException>("incoming", () => EggReplacement.Of(EggCount.Of(1, s_large), null!));
        Assert.Throws<ArgumentNullException>("formula", () => EggReplacement.InFormula(null!, s_fresh, 1, s_dried));
        Assert.Throws<ArgumentNullException>("system", () => EggReplacement.Of(s_fresh, 1, s_dried).InMeasures(null!));
        Assert.Throws<ArgumentNullException>("rule", () => EggReplacement.Of(s_fresh, 1, s_dried).ByRule(null!, s_us));
        Assert.Throws<ArgumentNullException>("white", () => MeringueBase.Of(null!, 1, 1));
        Assert.Throws<ArgumentNullException>("syrup", () => s_base.WithSyrup(null!));
        Assert.Throws<ArgumentNullException>("stage", () => s_base.ItalianSyrup(10, AirPressure.SeaLevel, null!));
    }
}
