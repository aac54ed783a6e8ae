using Confectio.Comparisons;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Keeping;
using Confectio.Measures;
using Confectio.Sugars;
using Confectio.Uncertainty;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Comparisons;

/// <summary>Comparisons by hand, by draws of what is shared, and by what must hold of every pair.</summary>
public sealed class FormulaComparisonTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;
    private static readonly string[] s_foods = ["unsalted butter", "icing sugar", "whole milk", "granulated sugar", "heavy cream", "honey", "white shortening", "egg white", "cocoa butter", "plain flour", "glucose syrup 42 DE", "fine sea salt"];

    // By hand, with USDA SR: butter 81.11 % fat, milk 3.25 %; 202.775/750 = 27.04 %, 203.75/780 = 26.12 %.
    [Fact]
    public void TwoButtercreamsByHand()
    {
        FormulaComparison comparison = FormulaComparison.Of(Read("a", "250 g unsalted butter\n500 g icing sugar"), Read("b", "250 g unsalted butter\n500 g icing sugar\n30 g whole milk"));
        Assert.Equal(3, comparison.Lines.Count);
        Assert.True(comparison.Lines[2].IsOnlyInSecond);
        Assert.Equal(100 * 250 / 750.0, comparison.Lines[0].Percent.First!.Value.Likely, 9);
        Assert.Equal(100 * 250 / 780.0, comparison.Lines[0].Percent.Second!.Value.Likely, 9);
        Assert.Equal(ComparedAnswer.First, comparison.Lines[0].Percent.Answer); // weighed: exact
        ComparedFigure fat = comparison.Parts.Single(part => part.Name == "fat");
        Assert.Equal(100 * (250 * 0.8111 + 30 * 0.0325) / 780 - 100 * 250 * 0.8111 / 750, fat.Difference!.Value.Likely, 9);
        Assert.Equal(ComparedAnswer.First, fat.Answer);
        Assert.Equal(ComparedAnswer.Second, comparison.Parts.Single(part => part.Name == "water").Answer);
        Assert.Equal(ComparedAnswer.First, comparison.Sweeter.Answer);
        Assert.StartsWith("a is sweeter by the sugars in it: ", comparison.Sweeter.Sentence, StringComparison.Ordinal);
        Assert.Equal(ComparedAnswer.Second, comparison.Softer[0].Answer); // the same butter, less of it
        Assert.False(comparison.AreTheSame);
        Assert.Null(comparison.Lines[0].FirstBakersPercent);
    }

    [Fact]
    public void OnTheFlour()
    {
        FormulaComparison comparison = FormulaComparison.Of(Read("a", "200 g plain flour\n100 g unsalted butter"), Read("b", "400 g plain flour\n100 g unsalted butter\n80 g honey"));
        Assert.Equal((50, 25), (comparison.Lines[1].FirstBakersPercent, comparison.Lines[1].SecondBakersPercent));
        Assert.Equal((null, 20), (comparison.Lines[2].FirstBakersPercent, comparison.Lines[2].SecondBakersPercent));
    }

    // What is the same is the same, however far off its butter may be; and how much is made says nothing.
    [Property(MaxTest = 150)]
    public Property AFormulaIsAsItself() => Prop.ForAll(Formulas(), Gen.Choose(1, 5000).ToArbitrary(), (formula, factor) =>
    {
        foreach (FormulaComparison same in new[] { FormulaComparison.Of(formula, formula), FormulaComparison.Of(formula, formula.Scale(factor / 100.0)) })
        {
            ComparedAnswer[] answers = [.. same.Lines.Select(line => line.Percent.Answer), .. same.Parts.Select(part => part.Answer), same.Sweeter.Answer,
                .. same.Softer.Select(verdict => verdict.Answer).Where(answer => answer != ComparedAnswer.NotKnown), .. new[] { same.WaterActivity.Answer }.Where(answer => answer != ComparedAnswer.NotKnown),
                .. same.KeepsLonger.Select(verdict => verdict.Answer).Where(answer => answer != ComparedAnswer.NotKnown)];
            if (!same.AreTheSame || answers.Any(answer => answer != ComparedAnswer.Same))
                return false.Label($"{string.Join("; ", formula.Lines)}: {string.Join(", ", answers)}");
        }
        return true.ToProperty();
    });

    [Property(MaxTest = 200)]
    public Property TurnedRoundEveryAnswerTurnsRound() => Prop.ForAll(Formulas(), Formulas(), (a, b) =>
    {
        FormulaComparison one = FormulaComparison.Of(a, b), other = FormulaComparison.Of(b, a);
        bool Mirrored(ComparedFigure x, ComparedFigure y) => Turned(x.Answer) == y.Answer && Near(x.First, y.Second) && Near(x.Second, y.First)
            && (x.Difference is not Spread d || Near(-d, y.Difference));
        string? off = one.Lines.All(line => Mirrored(line.Percent, other.Lines.Single(same => same.Ingredient == line.Ingredient).Percent)) ? null : "lines";
        off ??= one.Parts.All(part => Mirrored(part, other.Parts.Single(same => same.Name == part.Name))) ? null : "parts";
        off ??= Mirrored(one.Sweetness, other.Sweetness) ? null : "sweetness";
        off ??= one.SolidFat.Zip(other.SolidFat).All(pair => Mirrored(pair.First, pair.Second)) ? null : "solid fat";
        off ??= Mirrored(one.WaterActivity, other.WaterActivity) ? null : $"activity {one.WaterActivity} | {other.WaterActivity}";
        (ComparisonVerdict, ComparisonVerdict)[] verdicts = [(one.Sweeter, other.Sweeter), .. one.Softer.Zip(other.Softer), .. one.KeepsLonger.Zip(other.KeepsLonger)];
        off ??= verdicts.All(pair => Turned(pair.Item1.Answer) == pair.Item2.Answer) ? null : "verdicts";
        // A winner is told in the same words, whichever of the two was named first.
        // Two of one name are called the first and the second, and those turn round.
        off ??= a.Name == b.Name || verdicts.Where(pair => pair.Item1.Answer is ComparedAnswer.First or ComparedAnswer.Second).All(pair => pair.Item1.Sentence == pair.Item2.Sentence) ? null : "sentences";
        return (off is null).Label($"{off}: {string.Join("; ", a.Lines)} | {string.Join("; ", b.Lines)}");
    });

    // 20 000 draws: one fat content of the butter and one of the cream for both formulas, one filling of the cup for both, one of the milk by itself.
    [Fact]
    public void TheDifferenceIsThatOfDrawsOfWhatIsShared()
    {
        Formula a = Formula.ParseText("a", "250 g unsalted butter\n2 cups icing sugar", s_table, MeasuringSystem.UsCustomary);
        Formula b = Formula.ParseText("b", "300 g unsalted butter\n3 cups icing sugar\n50 g heavy cream", s_table, MeasuringSystem.UsCustomary);
        ComparedFigure fat = FormulaComparison.Of(a, b).Parts.Single(part => part.Name == "fat");
        Ingredient butter = s_table.Get("unsalted butter"), sugar = s_table.Get("icing sugar"), cream = s_table.Get("heavy cream");
        double cup = a.Lines[1].Grams.Likely / 2, uCup = a.Lines[1].Grams.StandardUncertainty / a.Lines[1].Grams.Likely;
        Random random = new(3);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double sum = 0, squares = 0;
        const int Draws = 20_000;
        for (int i = 0; i < Draws; i++)
        {
            double ofButter = 0.8111 + CompositionSpread.Of(butter, Constituent.Fat).StandardUncertainty * Normal(), filled = cup * Math.Exp(uCup * Normal());
            double ofCream = cream.Composition[Constituent.Fat] + CompositionSpread.Of(cream, Constituent.Fat).StandardUncertainty * Normal(), ofSugar = sugar.Composition[Constituent.Fat];
            double first = (250 * ofButter + 2 * filled * ofSugar) / (250 + 2 * filled), second = (300 * ofButter + 3 * filled * ofSugar + 50 * ofCream) / (300 + 3 * filled + 50);
            double difference = 100 * (second - first);
            sum += difference;
            squares += difference * difference;
        }
        double u = Math.Sqrt(squares / Draws - sum / Draws * (sum / Draws));
        // A linear sum against draws of a quotient: 5 % of u.
        Assert.Equal(1, fat.Difference!.Value.StandardUncertainty / u, 0.05);
        // Taken as independent it would be far wider.
        double apart = 100 * double.Hypot(Balance.Of(a)[FormulaPart.Fat].Fraction.StandardUncertainty, Balance.Of(b)[FormulaPart.Fat].Fraction.StandardUncertainty);
        Assert.True(apart > 3 * u, $"{apart} {u}");
    }

    // Joined table: sucrose 1, glucose and fructose with their ranges. By hand of sucrose alone: 500 g of granulated sugar (99.8 %) in 750 g are 66.53 g in 100 g.
    [Fact]
    public void SweetnessByHand()
    {
        FormulaComparison comparison = FormulaComparison.Of(Read("a", "500 g granulated sugar\n250 g unsalted butter"), Read("b", "400 g granulated sugar\n350 g unsalted butter"));
        // USDA SR 01145 has 0.06 g of sugars in 100 g of butter, lactose, which adds next to nothing.
        Assert.Equal(100 * 500 * 0.998 / 750, comparison.Sweetness.First!.Value.Likely, 0.05);
        Assert.Equal(ComparedAnswer.First, comparison.Sweeter.Answer);
        Assert.Equal(-100 * 100 * 0.998 / 750, comparison.Sweetness.Difference!.Value.Likely, 0.05);
        // Glucose for sucrose: 0.5 to 0.8 as sweet in the tables, so that less sweet is told; fructose is told sweeter.
        Assert.Equal(ComparedAnswer.First, FormulaComparison.Of(Read("a", "100 g granulated sugar\n100 g water"), Read("b", "100 g anhydrous dextrose\n100 g water")).Sweeter.Answer);
        Assert.Equal(ComparedAnswer.Second, FormulaComparison.Of(Read("a", "100 g granulated sugar\n100 g water"), Read("b", "100 g crystalline fructose\n100 g water")).Sweeter.Answer);
    }

    [Fact]
    public void AcrossFatsSoftnessIsNotTold()
    {
        FormulaComparison fats = FormulaComparison.Of(Read("butter", "250 g unsalted butter\n500 g icing sugar"), Read("shortening", "200 g white shortening\n500 g icing sugar"));
        Assert.Equal(ComparedAnswer.CannotBeTold, fats.Softer[0].Answer);
        Assert.Contains("across different fats firmness does not follow", fats.Softer[0].Sentence, StringComparison.Ordinal);
        FormulaComparison syrups = FormulaComparison.Of(Read("a", "100 g granulated sugar\n50 g water"), Read("b", "250 g unsalted butter\n500 g icing sugar"));
        Assert.Equal(ComparedAnswer.NotKnown, syrups.Softer[0].Answer);
        Assert.Contains("a has no fat", syrups.Softer[0].Sentence, StringComparison.Ordinal);
        // Where all has melted there is none to compare.
        FormulaComparison hot = FormulaComparison.Of(Read("a", "250 g unsalted butter\n500 g icing sugar"), Read("b", "200 g unsalted butter\n500 g icing sugar"), new() { Celsius = [18, 24, 60] });
        Assert.Equal([ComparedAnswer.Second, ComparedAnswer.Second, ComparedAnswer.Same], hot.Softer.Select(verdict => verdict.Answer));
        Assert.Equal(["softer at 18 °C", "softer at 24 °C", "softer at 60 °C"], hot.Softer.Select(verdict => verdict.Question));
    }

    // 60 and 62 % sucrose: 0.895 and, by the same model, less. The one is surely drier, though each alone is known to 0.02 at best; two that are saturated are the same.
    [Fact]
    public void ActivitiesOfOneModelAreToldApart()
    {
        FormulaComparison syrups = FormulaComparison.Of(Read("a", "600 g granulated sugar\n400 g water"), Read("b", "620 g granulated sugar\n380 g water"));
        Spread difference = syrups.WaterActivity.Difference!.Value;
        Assert.Equal(SugarSolution.OfSucrose(620 * 0.998 / (620 * 0.998 + 380)).WaterActivityAllDissolved() - SugarSolution.OfSucrose(600 * 0.998 / (600 * 0.998 + 400)).WaterActivityAllDissolved(), difference.Likely, 0.001);
        Assert.Equal(ComparedAnswer.First, syrups.WaterActivity.Answer);
        Assert.True(syrups.WaterActivity.First!.Value.Low < syrups.WaterActivity.Second!.Value.High); // they overlap by themselves
        FormulaComparison saturated = FormulaComparison.Of(Read("a", "800 g granulated sugar\n100 g water"), Read("b", "900 g granulated sugar\n100 g water"));
        Assert.Equal(0, saturated.WaterActivity.Difference!.Value.Likely, 4); // what little else is in the sugar is more of it in the one
        Assert.NotEqual(ComparedAnswer.First, saturated.WaterActivity.Answer);
        Assert.Equal(ComparedAnswer.NotKnown, FormulaComparison.Of(Read("a", "100 g cocoa butter"), Read("b", "100 g water")).WaterActivity.Answer);
    }

    // Keeping says what it says by itself, and nothing more.
    [Fact]
    public void KeepingIsThatOfKeeping()
    {
        Formula plain = Read("plain", "250 g unsalted butter\n500 g icing sugar"), cheese = Read("cheese", "250 g cream cheese\n500 g icing sugar");
        FormulaComparison comparison = FormulaComparison.Of(plain, cheese);
        KeepingAnswer first = KeepingAnswer.Of(plain), second = KeepingAnswer.Of(cheese);
        for (int i = 0; i < comparison.KeepsLonger.Count; i++)
        {
            ComparedAnswer answer = (first.Places[i].Days, second.Places[i].Days) switch
            {
                // "No longer than its butter" is a bound: the food may keep less long.
                (double a, double b) when first.Places[i].Sentence != second.Places[i].Sentence && (a >= b && IsBound(first.Places[i]) || b >= a && IsBound(second.Places[i])) => ComparedAnswer.CannotBeTold,
                (double a, double b) when a > b => ComparedAnswer.First,
                (double a, double b) when a < b => ComparedAnswer.Second,
                (double, double) => ComparedAnswer.Same,
                _ => ComparedAnswer.NotKnown,
            };
            Assert.Equal(answer, comparison.KeepsLonger[i].Answer);
        }
        Assert.Contains(comparison.KeepsLonger, verdict => verdict.Sentence.Contains("printed", StringComparison.Ordinal));
        Assert.DoesNotContain(comparison.KeepsLonger, verdict => verdict.Sentence.Contains("safe", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void WhatTheSecondBringsIsTold()
    {
        FormulaComparison comparison = FormulaComparison.Of(Read("a", "250 g unsalted butter\n500 g icing sugar"), Read("b", "250 g unsalted butter\n500 g icing sugar\n60 g egg white\n10 g honey"));
        Assert.Equal([Allergen.Egg], comparison.NewAllergens);
        Assert.Contains(comparison.SecondCautions, caution => caution.Code == "raw-egg");
        Assert.Contains(comparison.SecondCautions, caution => caution.Code == "honey");
        Assert.DoesNotContain(comparison.FirstCautions, caution => caution.Code == "raw-egg");
    }

    [Theory]
    [InlineData("", "b", "the first")]
    [InlineData("a", "a", "the first")]
    [InlineData("a\u202E\u001b[2J\n", "b", "a\uFFFD\uFFFD[2J")]
    public void NamesAreMadeFit(string first, string second, string called)
    {
        FormulaComparison comparison = FormulaComparison.Of(Read(first, "100 g unsalted butter"), Read(second, "100 g icing sugar"));
        Assert.Equal(called, comparison.FirstName);
        Assert.DoesNotContain(comparison.ToString(), c => char.IsControl(c) || c == '\u202E');
    }

    [Fact]
    public void BadInputIsRefused()
    {
        Formula formula = Read("a", "100 g honey");
        Assert.Throws<ArgumentNullException>("second", () => FormulaComparison.Of(formula, null!));
        Assert.Throws<ArgumentException>("Celsius", () => new ComparisonOptions { Celsius = [] });
        Assert.Throws<ArgumentOutOfRangeException>("Celsius", () => new ComparisonOptions { Celsius = [double.NaN] });
        Assert.Throws<ArgumentOutOfRangeException>("FirstPh", () => new ComparisonOptions { FirstPh = Spread.Exactly(15) });
    }

    private static bool IsBound(PlaceVerdict verdict) => verdict.Sentence.StartsWith("no longer than its ", StringComparison.Ordinal);

    private static ComparedAnswer Turned(ComparedAnswer answer) => answer switch { ComparedAnswer.First => ComparedAnswer.Second, ComparedAnswer.Second => ComparedAnswer.First, _ => answer };

    private static bool Near(Spread? one, Spread? other) => one is not Spread a ? other is null : other is Spread b && Near(a.Low, b.Low) && Near(a.Likely, b.Likely) && Near(a.High, b.High);

    // The order in which sums are added up moves their last bits.
    private static bool Near(double a, double b) => Math.Abs(a - b) <= 1e-9 * (1 + Math.Abs(a));

    private static Formula Read(string name, string text) => Formula.ParseText(name, text, s_table, MeasuringSystem.Metric);

    private static Arbitrary<Formula> Formulas() => (from lines in (from food in Gen.Choose(0, s_foods.Length - 1)
                                                                      from grams in Gen.Choose(1, 900)
                                                                      from measured in Gen.Choose(0, 2)
                                                                      select (food, grams, measured)).ArrayOf().Where(lines => lines.Length is > 0 and <= 6)
                                                     from name in Gen.Choose(0, 1000)
                                                     select Formula.Of($"formula {name}", lines.Select(line => line.measured == 0
                                                         ? FormulaLine.Of(s_table.Get(s_foods[line.food]), Amount.Of(new Fraction(line.grams, 8), KitchenUnit.Cup), MeasuringSystem.UsCustomary)
                                                         : FormulaLine.Of(s_table.Get(s_foods[line.food]), line.grams)))).ToArbitrary();
}
