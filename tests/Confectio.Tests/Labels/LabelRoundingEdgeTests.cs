using Confectio.Formulas.Solving;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Labels;

/// <summary>The edges of the rounding rules that no printed example shows: each step of each rule from both sides.</summary>
public sealed class LabelRoundingEdgeTests
{
    // 21 CFR 101.9(c)(8)(iii), as quoted by others: vitamins and minerals to 10 % by 2, to 50 % by 5, above by 10; of a nutrient with a reference value by 1 (recalled). Half goes up, as the printed 5.0 % that becomes 6.
    [Theory]
    [InlineData(0.9, true, 0)]
    [InlineData(1, true, 2)]
    [InlineData(2.9, true, 2)]
    [InlineData(3, true, 4)]
    [InlineData(9, true, 10)]
    [InlineData(10, true, 10)]
    [InlineData(10.1, true, 10)]
    [InlineData(12.4, true, 10)]
    [InlineData(12.5, true, 15)]
    [InlineData(47.5, true, 50)]
    [InlineData(50, true, 50)]
    [InlineData(50.1, true, 50)]
    [InlineData(54.9, true, 50)]
    [InlineData(55, true, 60)]
    [InlineData(104, true, 100)]
    [InlineData(0.4, false, 0)]
    [InlineData(0.5, false, 1)]
    [InlineData(12.5, false, 13)]
    public void DailyValuesAtTheirEdges(double percent, bool isMineral, int printed) => Assert.Equal(printed, LabelRounding.DailyValuePercent(percent, isMineral));

    // 21 CFR 101.9(b)(8), as quoted by others: from 2 to 5 by halves, above by wholes, what lies half-way up.
    [Theory]
    [InlineData(2, "2")]
    [InlineData(2.24, "about 2")]
    [InlineData(2.25, "about 2.5")]
    [InlineData(2.5, "2.5")]
    [InlineData(2.75, "about 3")]
    [InlineData(4.74, "about 4.5")]
    [InlineData(4.75, "about 5")]
    [InlineData(5, "5")]
    [InlineData(5.1, "about 5")]
    [InlineData(5.5, "about 6")]
    [InlineData(12.5, "about 13")]
    [InlineData(13, "13")]
    public void ServingsAtTheirEdges(double servings, string printed) => Assert.Equal(printed, LabelRounding.PrintServings(servings));

    // The sugars alcohols of 21 CFR 101.9(c)(6)(iv) as carbohydrate; trans fat as fat.
    [Theory]
    [InlineData(LabelNutrient.Polyols, 0.49, "0 g")]
    [InlineData(LabelNutrient.Polyols, 0.5, "less than 1 g")]
    [InlineData(LabelNutrient.Polyols, 1.5, "2 g")]
    [InlineData(LabelNutrient.TransFat, 0.49, "0 g")]
    [InlineData(LabelNutrient.TransFat, 0.74, "0.5 g")]
    [InlineData(LabelNutrient.TransFat, 0.75, "1 g")]
    [InlineData(LabelNutrient.Saturates, 4.75, "5 g")]
    [InlineData(LabelNutrient.Cholesterol, 5.1, "5 mg")]
    [InlineData(LabelNutrient.Cholesterol, 12.5, "15 mg")]
    [InlineData(LabelNutrient.Sodium, 7.4, "5 mg")]
    [InlineData(LabelNutrient.Sodium, 7.5, "10 mg")]
    [InlineData(LabelNutrient.Sodium, 155, "160 mg")]
    [InlineData(LabelNutrient.Kilocalories, 7.4, "5 kcal")]
    [InlineData(LabelNutrient.Kilocalories, 7.5, "10 kcal")]
    [InlineData(LabelNutrient.Fibre, 0.99, "less than 1 g")]
    [InlineData(LabelNutrient.Fibre, 2.5, "3 g")]
    public void TheUnitedStatesAtTheEdges(LabelNutrient nutrient, double value, string printed) => Assert.Equal(printed, LabelRounding.Print(nutrient, LabelRules.UnitedStates, value));

    // Commission guidance of December 2012, section 6, as restated by others; where a tie goes is not stated there, and up is ours.
    [Theory]
    [InlineData(LabelNutrient.Kilojoules, 0.4, "0 kJ")]
    [InlineData(LabelNutrient.Kilojoules, 1499.5, "1500 kJ")]
    [InlineData(LabelNutrient.Kilocalories, 89.5, "90 kcal")]
    [InlineData(LabelNutrient.Starch, 0.5, "0 g")]
    [InlineData(LabelNutrient.Starch, 0.55, "0.6 g")]
    [InlineData(LabelNutrient.Polyols, 9.94, "9.9 g")]
    [InlineData(LabelNutrient.Polyols, 10, "10 g")]
    [InlineData(LabelNutrient.Fibre, 0.51, "0.5 g")]
    [InlineData(LabelNutrient.Protein, 10.5, "11 g")]
    [InlineData(LabelNutrient.Saturates, 9.94, "9.9 g")]
    [InlineData(LabelNutrient.Saturates, 10.4, "10 g")]
    [InlineData(LabelNutrient.Salt, 0.994, "0.99 g")]
    [InlineData(LabelNutrient.Salt, 1, "1.0 g")]
    [InlineData(LabelNutrient.Salt, 1.25, "1.3 g")]
    public void TheEuropeanUnionAtTheEdges(LabelNutrient nutrient, double value, string printed) => Assert.Equal(printed, LabelRounding.Print(nutrient, LabelRules.EuropeanUnion, value));

    // A larger figure is never printed smaller, across every step.
    [Property(MaxTest = 2000)]
    public Property MoreIsNeverPrintedAsLess() => Prop.ForAll(Gen.Choose(0, 200_000).ToArbitrary(), Gen.Choose(0, 2000).ToArbitrary(), Gen.Choose(0, 100).ToArbitrary(), (thousandths, more, line) =>
    {
        LabelRules rules = line % 2 == 0 ? LabelRules.UnitedStates : LabelRules.EuropeanUnion;
        LabelNutrient nutrient = LabelRounding.Lines(rules)[line % LabelRounding.Lines(rules).Count];
        return Number(LabelRounding.Print(nutrient, rules, thousandths / 1000.0)) <= Number(LabelRounding.Print(nutrient, rules, (thousandths + more) / 1000.0));
    });

    // "Less than 5 mg" is less than five.
    private static double Number(string printed) => printed.StartsWith("less than ", StringComparison.Ordinal) ? Number(printed[10..]) - 0.5
        : double.Parse(printed.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
}
