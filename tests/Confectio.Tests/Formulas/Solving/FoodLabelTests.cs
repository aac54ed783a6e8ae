using System.Globalization;
using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>Foods from labels: truth known, label made from it by the rules, and the limits must hold the truth.</summary>
public sealed class FoodLabelTests
{
    private static readonly Constituent[] s_all = Enum.GetValues<Constituent>();

    private static readonly LabelOptions s_rounding = new() { Spread = LabelSpread.Rounding };

    private static readonly Constituent[] s_sugars =
        [Constituent.Sucrose, Constituent.Glucose, Constituent.Fructose, Constituent.Lactose, Constituent.Maltose, Constituent.OtherSugars];

    // ---- what is printed ----

    // 21 CFR 101.9(c) with the examples of the Food Labeling Guide, Appendix H (FDA, 2009): value -> label. The label must hold the value.
    [Theory]
    [InlineData(LabelNutrient.Fat, 0.49, "0 g")]
    [InlineData(LabelNutrient.Fat, 0.5, "0.5 g")]
    [InlineData(LabelNutrient.Fat, 4.74, "4.5 g")]
    [InlineData(LabelNutrient.Fat, 4.75, "5 g")]
    [InlineData(LabelNutrient.Fat, 4.99, "5 g")]
    [InlineData(LabelNutrient.Fat, 5.4, "5 g")]
    [InlineData(LabelNutrient.Fat, 5.5, "6 g")]
    [InlineData(LabelNutrient.Sodium, 4.9, "0 mg")]
    [InlineData(LabelNutrient.Sodium, 137.5, "140 mg")]
    [InlineData(LabelNutrient.Sodium, 144.9, "140mg")]
    [InlineData(LabelNutrient.Sodium, 145, "150 mg")]
    [InlineData(LabelNutrient.Carbohydrate, 0.49, "0g")]
    [InlineData(LabelNutrient.Sugars, 0.5, "less than 1 g")]
    [InlineData(LabelNutrient.Sugars, 0.99, "less than 1g")]
    [InlineData(LabelNutrient.Protein, 1.49, "1 g")]
    [InlineData(LabelNutrient.Kilocalories, 47.4, "45")]
    [InlineData(LabelNutrient.Kilocalories, 50.1, "50")]
    [InlineData(LabelNutrient.Kilocalories, 54.9, "50")]
    [InlineData(LabelNutrient.Kilocalories, 55, "60")]
    public void AnAmericanFigureHoldsEveryValueThatIsPrintedSo(LabelNutrient nutrient, double value, string printed)
    {
        PanelFigure figure = NutritionPanel.Of(LabelRules.UnitedStates, 30, (nutrient, printed)).Figures[0];
        Assert.InRange(value, figure.Low, figure.High);
        // And no step more than the rule has: 1 g, 10 mg or kcal.
        Assert.True(figure.High - figure.Low <= (nutrient is LabelNutrient.Sodium or LabelNutrient.Kilocalories ? 10 : 1), $"{figure}");
    }

    // Commission guidance of December 2012, section 6, as restated by others: value -> label.
    [Theory]
    [InlineData(LabelNutrient.Fat, 9.94, "9.9 g", 0.1)]
    [InlineData(LabelNutrient.Fat, 9.96, "10 g", 1)]
    [InlineData(LabelNutrient.Fat, 10.4, "10 g", 1)]
    [InlineData(LabelNutrient.Sugars, 0.5, "0 g", 0.5)]
    [InlineData(LabelNutrient.Sugars, 0.5, "<0.5 g", 0.5)]
    [InlineData(LabelNutrient.Sugars, 0.51, "0,5 g", 0.1)]
    [InlineData(LabelNutrient.Saturates, 0.1, "0 g", 0.1)]
    [InlineData(LabelNutrient.Saturates, 0.11, "0.1 g", 0.1)]
    [InlineData(LabelNutrient.Salt, 1.04, "1.0 g", 0.1)]
    [InlineData(LabelNutrient.Salt, 0.0125, "0 g", 0.0125)]
    [InlineData(LabelNutrient.Salt, 0.013, "0.01 g", 0.01)]
    [InlineData(LabelNutrient.Kilojoules, 2278.4, "2,278 kJ", 1)]
    // Makers print finer than they must: its last digit counts then.
    [InlineData(LabelNutrient.Fat, 31.63, "31.6 g", 0.1)]
    [InlineData(LabelNutrient.Salt, 0.107, "107 mg", 0.001)]
    public void AEuropeanFigureHoldsEveryValueThatIsPrintedSo(LabelNutrient nutrient, double value, string printed, double width)
    {
        PanelFigure figure = NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (nutrient, printed)).Figures[0];
        Assert.InRange(value, figure.Low, figure.High);
        Assert.Equal(width, figure.High - figure.Low, 1e-9);
    }

    [Fact]
    public void APanelIsReadAsItIsCopied()
    {
        NutritionPanel european = NutritionPanel.Parse("""
            Typical values per 100 g:
            per 100 g
            Energy 2278 kJ / 546 kcal
            Fat 31,6 g
            - of which saturates: 11 g
            Carbohydrate 57 g
            - of which sugars 56.3g
            Protein 6.0 g
            Salt 0.107 g
            """, LabelRules.EuropeanUnion);
        Assert.Equal(100, european.Grams);
        Assert.Equal(31.6, european[LabelNutrient.Fat]!.Value);
        Assert.Equal(546, european[LabelNutrient.Kilocalories]!.Value);
        Assert.Equal(56.3, european[LabelNutrient.Sugars]!.Value);
        Assert.Null(european[LabelNutrient.Fibre]);

        NutritionPanel american = NutritionPanel.Parse("""
            Nutrition Facts
            8 servings per container
            Serving size 2 tbsp (37g)
            Amount per serving
            Calories 200
            % Daily Value*
            Total Fat 12g 15%
              Saturated Fat 4g 20%
              Trans Fat 0g
            Cholesterol 0mg 0%
            Sodium 15mg 1%
            Total Carbohydrate 23g 8%
              Dietary Fiber less than 1g 3%
              Total Sugars 21g
                Includes 19g Added Sugars 38%
            Protein 2g
            Vitamin D 0mcg 0%
            """, LabelRules.UnitedStates);
        Assert.Equal(37, american.Grams);
        Assert.Equal([200, 12, 4, 23, 21, 2, 15], new[] { LabelNutrient.Kilocalories, LabelNutrient.Fat, LabelNutrient.Saturates,
            LabelNutrient.Carbohydrate, LabelNutrient.Sugars, LabelNutrient.Protein, LabelNutrient.Sodium }.Select(n => american[n]!.Value));
        Assert.True(american[LabelNutrient.Fibre]!.IsLimit);
        Assert.Contains(american.Unused, line => line.Contains("Added", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("fat 31 g", "per 100 g")]
    [InlineData("per 100 g", "no figure")]
    [InlineData("per 100 g\nfat 31 kJ", "g or mg")]
    [InlineData("per 100 g\nfat 3 g\nfat 4 g", "twice")]
    [InlineData("per 100 g\nfat", "no figure")]
    [InlineData("per 100 g\nfat 3 g\nglorp 4 g", "glorp")]
    [InlineData("per 100 g\nper 30 g\nfat 3 g", "second mass")]
    [InlineData("per 100 g\nfat NaN", "no figure")]
    [InlineData("per 100 g\nfat 9999999 g", "31.6 g")]
    public void ALineThatCannotBeReadIsAProblem(string text, string words)
    {
        Assert.Contains(NutritionPanel.Read(text, LabelRules.EuropeanUnion).Problems, problem => problem.Message.Contains(words, StringComparison.Ordinal));
        Assert.Throws<FormatException>(() => NutritionPanel.Parse(text, LabelRules.EuropeanUnion));
    }

    // ---- the limits hold the truth ----

    /// <summary>A food of 100 g that is made of anything, and the serving that its label is for.</summary>
    public sealed record TrueFood(double[] Percent, double ServingGrams)
    {
        public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{string.Join(' ', Percent.Select(p => p.ToString("0.##", CultureInfo.InvariantCulture)))}; {ServingGrams}");
    }

    public static Arbitrary<TrueFood> Foods() => Arb.From(
        from parts in Gen.ArrayOf(Gen.Frequency((4, Gen.Constant(0)), (2, Gen.Choose(1, 50)), (3, Gen.Choose(50, 3000))), s_all.Length)
        from tenths in Gen.Choose(50, 3000)
        let sum = Math.Max(1, parts.Sum())
        select new TrueFood(parts.Sum() == 0 ? [100, .. new double[s_all.Length - 1]] : [.. parts.Select(part => 100.0 * part / sum)], tenths / 10.0));

    [Property(Arbitrary = [typeof(FoodLabelTests)], MaxTest = 150)]
    public void TheLimitsHoldWhateverTheFoodIsMadeOfEuropean(TrueFood food, bool fibre, bool salt, bool sugars, bool kilocalories, bool tolerance) =>
        AssertHeld(food, EuropeanLabel(food, fibre, salt, sugars, kilocalories), tolerance);

    [Property(Arbitrary = [typeof(FoodLabelTests)], MaxTest = 150)]
    public void TheLimitsHoldWhateverTheFoodIsMadeOfAmerican(TrueFood food, bool polyols, bool tolerance) =>
        AssertHeld(food, AmericanLabel(food, polyols), tolerance);

    // An American panel is for a serving: one that is printed as 100 g may have been 100.4 g, and its salt was then less than it seemed.
    [Fact]
    public void AServingOfAHundredGramsIsAServing()
    {
        TrueFood food = new([16.11, 12.97, 7.01, 0, 14.91, 1.45, 0, 13.69, 10.27, 0, 0.26, 0, 0, 0, 0, 0, 9.6, 2.38, 11.35], 100.4);
        AssertHeld(food, AmericanLabel(food, polyols: false), tolerance: false);
        // By the words of a panel too: per 100 g is 100 g, a serving of 100 g is 99.5 to 100.5 g.
        Spread per = FatOf("per 100 g"), serving = FatOf("Serving size 1 cup (100 g)");
        Assert.True(serving.Low < per.Low && serving.High > per.High, $"{serving} and {per}");

        static Spread FatOf(string mass) => CompositionSpread.Of(Ingredient.FromLabel("test",
            NutritionPanel.Parse($"{mass}\nfat 50 g\ncarbohydrate 30 g\nprotein 10 g", LabelRules.UnitedStates), s_rounding), Constituent.Fat);
    }

    private static void AssertHeld(TrueFood food, NutritionPanel panel, bool tolerance)
    {
        Ingredient made = Ingredient.FromLabel("test", panel, tolerance ? null : s_rounding);
        Assert.Equal(1, made.Composition.Sum, 1e-9);
        foreach (Constituent constituent in s_all)
            AssertWithin(food.Percent[(int)constituent] / 100, CompositionSpread.Of(made, constituent), $"{constituent}; {panel}");
        AssertWithin(Together(food, s_sugars) / 100, CompositionSpread.Of(made, s_sugars), $"sugars; {panel}");
        AssertWithin(Together(food, [Constituent.Water, Constituent.Alcohol]) / 100, CompositionSpread.Of(made, Constituent.Water, Constituent.Alcohol), "volatile");
        // A group that nobody prepared.
        Constituent[] odd = [Constituent.Fat, Constituent.Lactose, Constituent.Protein, Constituent.OtherAsh];
        AssertWithin(Together(food, odd) / 100, CompositionSpread.Of(made, odd), "milk");
    }

    private static void AssertWithin(double truth, Spread spread, string what) =>
        Assert.True(truth >= spread.Low - 1e-7 && truth <= spread.High + 1e-7, $"{what}: {truth} outside {spread}");

    private static double Together(TrueFood food, Constituent[] constituents) => constituents.Sum(constituent => food.Percent[(int)constituent]);

    // Published compositions (USDA SR28 and Ciqual 2020, as the table has them), rounded to labels, give their composition back.
    [Theory]
    [InlineData("butter-unsalted")]
    [InlineData("cream-heavy")]
    [InlineData("chocolate-semisweet")]
    [InlineData("marshmallows")]
    [InlineData("flour-all-purpose")]
    [InlineData("honey")]
    [InlineData("egg-white")]
    [InlineData("almonds")]
    public void APublishedCompositionComesBackFromItsLabel(string id)
    {
        Ingredient published = IngredientTable.BuiltIn.Get(id);
        TrueFood food = new([.. s_all.Select(constituent => 100 * published.Composition[constituent] / published.Composition.Sum)], 40);
        NutritionPanel panel = EuropeanLabel(food, fibre: true, salt: true, sugars: true, kilocalories: false);
        Ingredient made = Ingredient.FromLabel(published.Name, panel, s_rounding);
        AssertHeld(food, panel, tolerance: false);
        AssertHeld(food, AmericanLabel(food, polyols: true), tolerance: false);
        // What the panel prints comes back within its rounding: half a gram from 10 g up, 0.05 g below.
        foreach (Constituent constituent in (Constituent[])[Constituent.Fat, Constituent.Protein, Constituent.Fibre])
            Assert.InRange(100 * Math.Abs(made.Composition[constituent] - food.Percent[(int)constituent] / 100), 0, 0.5 + 1e-6);
        Assert.InRange(100 * Math.Abs(made.Composition.Sugars - Together(food, s_sugars) / 100), 0, 0.5 + 1e-6);
    }

    // ---- what the label does not say ----

    [Fact]
    public void WhatTheLabelDoesNotSayIsSaidToBeMissing()
    {
        NutritionPanel panel = NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Fat, "31.6 g"), (LabelNutrient.Carbohydrate, "57 g"),
            (LabelNutrient.Sugars, "56 g"), (LabelNutrient.Protein, "6.0 g"), (LabelNutrient.Salt, "0.11 g"));
        FoodLabel label = FoodLabel.Of("hazelnut cream", panel, s_rounding);
        Ingredient food = label.Ingredient;
        Assert.Equal("label-hazelnut-cream", food.Id);
        Assert.Contains(Constituent.Water, food.NotStated);
        Assert.Contains(Constituent.Fibre, food.NotStated);
        Assert.DoesNotContain(Constituent.Fat, food.NotStated);
        Assert.Equal(Evidence.Estimated, food.EvidenceOf(Constituent.Water));
        Assert.Equal(Evidence.Computed, food.EvidenceOf(Constituent.Fat));
        Assert.Equal(Evidence.Estimated, food.EvidenceOf(Constituent.Sucrose));
        // By hand: 100 - 31.55 - 56.5 - 5.95 - 0.105 = 5.895 g are left at most, 100 - 31.65 - 57.5 - 6.05 - 0.115 = 4.685 g at least.
        Spread water = CompositionSpread.Of(food, Constituent.Water), fibre = CompositionSpread.Of(food, Constituent.Fibre);
        Assert.Equal(0, water.Low, 1e-6);
        Assert.Equal(0.05895, water.High, 1e-6);
        Assert.Equal(0.05895, fibre.High, 1e-6);
        Assert.Equal(0.0529, water.Likely, 1e-6);
        Assert.Equal(SpreadBasis.Sources, water.Basis);
        Assert.Contains(label.Remarks, remark => remark.Contains("water", StringComparison.Ordinal) && remark.Contains("fibre", StringComparison.Ordinal));
        Assert.Contains("The packet wins", food.Note, StringComparison.Ordinal);
        Assert.Empty(food.Allergens);
        // Sugars of which the kind is not known are of no kind; all of one kind at most.
        Assert.Equal(0.56, food.Composition[Constituent.OtherSugars], 1e-6);
        Assert.Equal(0.01, food.Composition[Constituent.Starch], 1e-6);
        Assert.Equal(0, food.Composition[Constituent.Sucrose]);
        Assert.Equal(0, CompositionSpread.Of(food, Constituent.Sucrose).Low, 1e-6);
        Assert.Equal(0.565, CompositionSpread.Of(food, Constituent.Sucrose).High, 1e-6);
        Assert.Equal(SpreadBasis.Judged, CompositionSpread.Of(Ingredient.FromLabel("x", panel), Constituent.Fat).Basis);
        // The guidance lets fat of 31.6 g be 20 % off (from memory): 25.23 to 37.97 g with the rounding.
        Assert.Equal(0.2523, CompositionSpread.Of(Ingredient.FromLabel("x", panel), Constituent.Fat).Low, 1e-6);
    }

    [Fact]
    public void TheEnergyOfThePanelSaysWhatIsLeft()
    {
        // 40 g of fat and 60 g that is not printed: 1480 kJ says water or ash, 2640 kJ of 60 g says alcohol at 29 kJ/g and less.
        (LabelNutrient, string)[] figures = [(LabelNutrient.Fat, "40.0 g"), (LabelNutrient.Carbohydrate, "0 g"), (LabelNutrient.Protein, "0 g")];
        Ingredient wet = Ingredient.FromLabel("wet", NutritionPanel.Of(LabelRules.EuropeanUnion, 100, [.. figures, (LabelNutrient.Kilojoules, "1480 kJ")]), s_rounding);
        Assert.True(CompositionSpread.Of(wet, Constituent.Alcohol).High < 0.02, $"{CompositionSpread.Of(wet, Constituent.Alcohol)}");
        Ingredient strong = Ingredient.FromLabel("strong", NutritionPanel.Of(LabelRules.EuropeanUnion, 100, [.. figures, (LabelNutrient.Kilojoules, "2640 kJ")]), s_rounding);
        Assert.True(CompositionSpread.Of(strong, Constituent.Water).High < 0.30, $"{CompositionSpread.Of(strong, Constituent.Water)}");
        // An energy that no such food has is left out, and said.
        FoodLabel odd = FoodLabel.Of("odd", NutritionPanel.Of(LabelRules.EuropeanUnion, 100, [.. figures, (LabelNutrient.Kilojoules, "3900 kJ")]), s_rounding);
        Assert.Contains(odd.Remarks, remark => remark.Contains("energy", StringComparison.Ordinal));
    }

    [Fact]
    public void FiguresThatContradictEachOtherAreRefused()
    {
        Assert.Contains("contradicts itself", Assert.Throws<ArgumentException>("panel", () => Ingredient.FromLabel("x", NutritionPanel.Of(LabelRules.EuropeanUnion, 100,
            (LabelNutrient.Fat, "60 g"), (LabelNutrient.Carbohydrate, "57 g")), s_rounding)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("panel", () => Ingredient.FromLabel("x", NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Sugars, "60 g"), (LabelNutrient.Carbohydrate, "50 g")), s_rounding));
        Assert.Throws<ArgumentException>("panel", () => Ingredient.FromLabel("x", NutritionPanel.Of(LabelRules.UnitedStates, 15, (LabelNutrient.Fat, "30 g"))));
        Assert.Throws<ArgumentException>("panel", () => Ingredient.FromLabel("x", NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Kilojoules, "2000 kJ"))));
        Assert.Throws<ArgumentException>("name", () => Ingredient.FromLabel(" ", NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Fat, "20 g"))));
        Assert.Throws<ArgumentException>("ingredientList", () => Ingredient.FromLabel("x", NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Fat, "20 g")), " , ", IngredientTable.BuiltIn));
        Assert.Throws<FormatException>(() => NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Fat, "much")));
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => NutritionPanel.Of(LabelRules.EuropeanUnion, double.NaN, (LabelNutrient.Fat, "20 g")));
        Assert.Throws<ArgumentException>("figures", () => NutritionPanel.Of(LabelRules.EuropeanUnion, 100));
    }

    // ---- the list ----

    [Fact]
    public void AListSaysWhatThePanelLeavesOpen()
    {
        Random random = new(17);
        string[] names = ["granulated sugar", "unsalted butter", "all-purpose flour", "whole milk", "honey", "cornstarch", "egg yolk", "heavy cream"];
        for (int run = 0; run < 25; run++)
        {
            Ingredient[] chosen = [.. names.OrderBy(_ => random.Next()).Take(random.Next(2, 5)).Select(IngredientTable.BuiltIn.Get)];
            double[] shares = [.. chosen.Select(_ => random.NextDouble() + 0.05).OrderDescending()];
            double total = shares.Sum();
            double[] percent = [.. s_all.Select(constituent => 100 * chosen.Select((food, j) => food.Composition[constituent] / food.Composition.Sum * shares[j] / total).Sum())];
            TrueFood truth = new(percent, 50);
            NutritionPanel panel = EuropeanLabel(truth, fibre: false, salt: true, sugars: true, kilocalories: true);
            FoodLabel label = FoodLabel.Of("mix", panel, string.Join(", ", chosen.Select(food => food.Name)), IngredientTable.BuiltIn, s_rounding);
            Assert.Equal(chosen.Length, label.Shares.Count);
            for (int j = 0; j < chosen.Length; j++)
                AssertWithin(100 * shares[j] / total, label.Shares[j].Range!.Value, $"{run} {chosen[j]}");
            Ingredient alone = Ingredient.FromLabel("mix", panel, s_rounding);
            foreach (Constituent constituent in s_all)
            {
                Spread listed = CompositionSpread.Of(label.Ingredient, constituent), panelOnly = CompositionSpread.Of(alone, constituent);
                AssertWithin(percent[(int)constituent] / 100, listed, $"{run} {constituent}");
                Assert.True(listed.High - listed.Low <= panelOnly.High - panelOnly.Low + 1e-2, $"{run} {constituent}: {listed} {panelOnly}");
            }
            Assert.Equal(1, label.Ingredient.Composition.Sum, 1e-9);
        }
    }

    [Fact]
    public void AllergensAreReadFromTheWordsOfTheList()
    {
        NutritionPanel panel = NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Fat, "30 g"), (LabelNutrient.Sugars, "50 g"));
        Ingredient food = Ingredient.FromLabel("spread", panel,
            "Sugar, palm oil, hazelnuts (13 %), skimmed milk powder (8.7%), fat-reduced cocoa (7.4 %), emulsifier: lecithins (soya), vanillin. May contain traces of peanuts and wheat.",
            IngredientTable.BuiltIn);
        Assert.Equal([Allergen.Milk, Allergen.Soy, Allergen.Hazelnut], food.Allergens);
        Assert.Contains(Allergen.Peanut, food.OftenContains);
        Assert.Contains(Allergen.Wheat, food.OftenContains);
        Assert.Contains("The packet wins", food.Note, StringComparison.Ordinal);
        // Plants and words that only sound like it.
        Ingredient plain = Ingredient.FromLabel("plain", panel, "sugar, cocoa butter, coconut milk, cream of tartar, rice flour, gluten-free starch", IngredientTable.BuiltIn);
        Assert.Empty(plain.Allergens);
        // Sulphites, and a nut that is not named.
        Ingredient fruit = Ingredient.FromLabel("fruit", panel, "sugar, dried apricots (preservative: sulphur dioxide), mixed nuts. Contains: milk.", IngredientTable.BuiltIn);
        Assert.Contains(Allergen.Sulphites, fruit.Allergens);
        Assert.Contains(Allergen.Milk, fruit.Allergens);
        Assert.Contains("any nut", fruit.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void AnItemThatNoTableKnowsMayBeOfAnything()
    {
        NutritionPanel panel = NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Fat, "41 g"), (LabelNutrient.Carbohydrate, "50 g"),
            (LabelNutrient.Sugars, "50 g"), (LabelNutrient.Protein, "0.4 g"), (LabelNutrient.Salt, "0 g"));
        FoodLabel label = FoodLabel.Of("odd cream", panel, "sugar, unsalted butter, glorp gum", IngredientTable.BuiltIn, s_rounding);
        Assert.Equal(["glorp gum"], label.Unmatched);
        Assert.Equal(2, label.Shares.Count);
        // 50 g of sugar and 41 g of fat: at least 50 g of butter, were the gum no fat. The truth 50/50/0 is inside.
        Assert.True(label.Shares[0].Range!.Value.Contains(50) && label.Shares[1].Range!.Value.Contains(50), label.ToString());
        Assert.Contains(label.Remarks, remark => remark.Contains("glorp gum", StringComparison.Ordinal));
        // A list that cannot have these figures is not believed.
        FoodLabel wrong = FoodLabel.Of("wrong", panel, "granulated sugar, honey", IngredientTable.BuiltIn, s_rounding);
        Assert.Empty(wrong.Shares);
        Assert.Contains(wrong.Remarks, remark => remark.Contains("panel alone", StringComparison.Ordinal));
        Assert.Equal(0.41, wrong.Ingredient.Composition[Constituent.Fat], 0.006);
    }

    [Fact]
    public void WhatTheListMakesOfAFigureIsSaid()
    {
        // 22 % of butter and egg bring about 19 g of fat, where 25 g are printed: within the tolerance of the law, and worth a word.
        NutritionPanel panel = NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Fat, "25 g"), (LabelNutrient.Carbohydrate, "55 g"),
            (LabelNutrient.Sugars, "30 g"), (LabelNutrient.Protein, "6.0 g"));
        FoodLabel label = FoodLabel.Of("biscuit", panel, "Wheat flour (45 %), sugar, butter (22 %), whole egg", IngredientTable.BuiltIn);
        Assert.True(label.Shares.Count == 0 ? label.Remarks.Any(remark => remark.Contains("panel alone", StringComparison.Ordinal))
            : label.Remarks.Any(remark => remark.StartsWith("By the list fat is likely", StringComparison.Ordinal)), label.ToString());
    }

    [Fact]
    public void HostileListsAreReadOrRefused()
    {
        NutritionPanel panel = NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Fat, "25 g"), (LabelNutrient.Sugars, "40 g"));
        foreach (string list in (string[])[new('(', 19_000), string.Concat(Enumerable.Repeat("1%(", 6000)), string.Join(", ", Enumerable.Range(0, 60).Select(i => "glorp " + new string('x', i + 1)))])
        {
            FoodLabel label = FoodLabel.Of("x", panel, list, IngredientTable.BuiltIn);
            Assert.Equal(1, label.Ingredient.Composition.Sum, 1e-9);
            Assert.True(label.Ingredient.Note.Length < 2000, $"{label.Ingredient.Note.Length}");
        }
        Assert.Throws<ArgumentException>("ingredientList", () => FoodLabel.Of("x", panel, new string('a', 20_001), IngredientTable.BuiltIn));
        Assert.Throws<ArgumentException>("ingredientList", () => FoodLabel.Of("x", panel, string.Join(",", Enumerable.Repeat("sugar", 61)), IngredientTable.BuiltIn));
        // Percentages that are more than there is are not believed.
        Assert.Empty(FoodLabel.Of("x", panel, "sugar (60 %), butter (60 %)", IngredientTable.BuiltIn).Shares);
    }

    // ---- it is an ingredient like any other ----

    [Fact]
    public void AFoodFromALabelIsUsedLikeAnyOther()
    {
        NutritionPanel panel = NutritionPanel.Parse("per 100 g\nfat 82 g\nof which saturates 54 g\ncarbohydrate 0.7 g\nof which sugars 0.7 g\nprotein 0.7 g\nsalt 0.02 g", LabelRules.EuropeanUnion);
        Ingredient butter = Ingredient.FromLabel("Fennmarsh butter", panel, new LabelOptions { Spread = LabelSpread.Rounding });
        IngredientTable table = IngredientTable.BuiltIn.With(butter);
        // By mass in a phrase, in a formula, in its balance.
        Formula formula = Formula.ParseText("cream", "500 g Fennmarsh butter\n500 g granulated sugar", table, MeasuringSystem.Metric);
        BalanceItem fat = Balance.Of(formula)[FormulaPart.Fat];
        Assert.Equal(410, fat.Grams.Likely, 0.5);
        Assert.True(fat.Grams.Contains(407.5 + 1e-6) && fat.Grams.Contains(412.5 - 1e-6), $"{fat.Grams}");
        // Water is not on the label, and the balance does not claim to know it.
        BalanceItem water = Balance.Of(formula)[FormulaPart.Water];
        Assert.True(water.Grams.Low < 1, $"{water.Grams}");
        // A cup of it nobody weighed; by the id of a butter it takes that butter's place and its cups.
        Assert.Throws<ArgumentException>(() => Conversion.Of(butter, MeasuringSystem.UsCustomary));
        Ingredient known = IngredientTable.BuiltIn.Get("unsalted butter");
        Ingredient instead = IngredientTable.BuiltIn.With(Ingredient.FromLabel("our butter", panel, new LabelOptions { Id = known.Id })).Get("our butter");
        Assert.Equal(known.Densities[0].GramsPerMillilitre, instead.Densities[0].GramsPerMillilitre);
        // The solver: 40 % of fat by arithmetic is 400/0.82 = 487.8 g of this butter in 1000 g.
        SolvedFormula solved = FormulaProblem.Of("solved", 1000, [butter, IngredientTable.BuiltIn.Get("granulated sugar")])
            .WithTarget(FormulaPart.Fat, 0.40).Solve();
        Assert.Equal(400 / butter.Composition[Constituent.Fat], solved.ToFormula().Lines.Single(line => line.Ingredient == butter).Grams.Likely, 0.1);
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    public void TextIsTheSameInEveryCulture(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        NutritionPanel panel = NutritionPanel.Parse("per 100 g\nfat 31.6 g\nsugars 50 g", LabelRules.EuropeanUnion);
        string invariant = FoodLabel.Of("INCI İ", panel, "sugar, butter", IngredientTable.BuiltIn).ToString() + panel + panel.Figures[0];
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            NutritionPanel again = NutritionPanel.Parse("PER 100 G\nFAT 31.6 g\nSUGARS 50 g", LabelRules.EuropeanUnion);
            Assert.Equal(invariant, FoodLabel.Of("INCI İ", panel, "sugar, butter", IngredientTable.BuiltIn).ToString() + panel + panel.Figures[0]);
            Assert.Equal(31.6, again[LabelNutrient.Fat]!.Value);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    // ---- labels, made by the rules and not by the code under test ----

    private static NutritionPanel EuropeanLabel(TrueFood food, bool fibre, bool salt, bool sugars, bool kilocalories)
    {
        double P(Constituent constituent) => food.Percent[(int)constituent];
        double sum = Together(food, s_sugars), polyols = P(Constituent.Polyols) + P(Constituent.Glycerol);
        double carbohydrate = sum + P(Constituent.HigherSaccharides) + P(Constituent.Starch) + polyols;
        // Annex XIV of Regulation (EU) No 1169/2011.
        double kilojoules = 37 * P(Constituent.Fat) + 17 * (carbohydrate - polyols + P(Constituent.Protein)) + 10 * polyols + 8 * P(Constituent.Fibre)
            + 29 * P(Constituent.Alcohol) + 13 * P(Constituent.Acids);
        double calories = 9 * P(Constituent.Fat) + 4 * (carbohydrate - polyols + P(Constituent.Protein)) + 2.4 * polyols + 2 * P(Constituent.Fibre)
            + 7 * P(Constituent.Alcohol) + 3 * P(Constituent.Acids);
        List<(LabelNutrient, string)> figures =
        [
            kilocalories ? (LabelNutrient.Kilocalories, Text(Math.Round(calories), 0)) : (LabelNutrient.Kilojoules, Text(Math.Round(kilojoules), 0)),
            (LabelNutrient.Fat, European(P(Constituent.Fat))), (LabelNutrient.Carbohydrate, European(carbohydrate)),
            (LabelNutrient.Protein, European(P(Constituent.Protein))), (LabelNutrient.Polyols, European(polyols)),
        ];
        if (sugars)
            figures.Add((LabelNutrient.Sugars, European(sum)));
        if (fibre)
            figures.Add((LabelNutrient.Fibre, European(P(Constituent.Fibre))));
        if (salt)
            figures.Add((LabelNutrient.Salt, P(Constituent.Salt) <= 0.0125 ? "0 g" : P(Constituent.Salt) < 1 ? Text(P(Constituent.Salt), 2) : Text(P(Constituent.Salt), 1)));
        return NutritionPanel.Of(LabelRules.EuropeanUnion, 100, [.. figures]);
    }

    private static string European(double grams) => grams <= 0.5 ? "0 g" : grams < 10 ? Text(grams, 1) : Text(grams, 0);

    private static NutritionPanel AmericanLabel(TrueFood food, bool polyols)
    {
        // What is printed is worked out of the serving as it is, and the serving is then rounded to whole grams.
        double serving = food.ServingGrams;
        double P(Constituent constituent) => food.Percent[(int)constituent] * serving / 100;
        double carbohydrate = (Together(food, s_sugars) + food.Percent[(int)Constituent.HigherSaccharides] + food.Percent[(int)Constituent.Starch]
            + food.Percent[(int)Constituent.Polyols] + food.Percent[(int)Constituent.Glycerol] + food.Percent[(int)Constituent.Fibre]
            + food.Percent[(int)Constituent.Acids] + food.Percent[(int)Constituent.Other]) * serving / 100;
        double sodium = P(Constituent.Salt) / 2.5 * 1000;
        List<(LabelNutrient, string)> figures =
        [
            (LabelNutrient.Fat, P(Constituent.Fat) < 0.5 ? "0 g" : P(Constituent.Fat) < 5 ? Text(Math.Floor(P(Constituent.Fat) * 2 + 0.5) / 2, 1) : Text(Math.Floor(P(Constituent.Fat) + 0.5), 0)),
            (LabelNutrient.Carbohydrate, American(carbohydrate)), (LabelNutrient.Sugars, American(Together(food, s_sugars) * serving / 100)),
            (LabelNutrient.Fibre, American(P(Constituent.Fibre))), (LabelNutrient.Protein, American(P(Constituent.Protein))),
            (LabelNutrient.Sodium, Text(sodium < 5 ? 0 : sodium <= 140 ? Math.Floor(sodium / 5 + 0.5) * 5 : Math.Floor(sodium / 10 + 0.5) * 10, 0)),
        ];
        if (polyols)
            figures.Add((LabelNutrient.Polyols, American(P(Constituent.Polyols))));
        return NutritionPanel.Of(LabelRules.UnitedStates, Math.Floor(serving + 0.5), [.. figures]);
    }

    private static string American(double grams) => grams < 0.5 ? "0 g" : grams < 1 ? "less than 1 g" : Text(Math.Floor(grams + 0.5), 0);

    private static string Text(double value, int decimals) => value.ToString("F" + decimals, CultureInfo.InvariantCulture);
}
