using Confectio.Comparisons;
using Confectio.Costs;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Labels;
using Confectio.Measures;
using Confectio.Tests.Consistency;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Labels;

/// <summary>Lists of ingredients by the rules of two laws, as far as those were read or are recalled; each rule with the paragraph it stands in.</summary>
public sealed class IngredientDeclarationTests
{
    private const LabelRules Europe = LabelRules.EuropeanUnion, America = LabelRules.UnitedStates;

    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    // Regulation (EU) 1169/2011, Article 18(1): falling weight as recorded at the time of use; Article 21(1)(b): the allergen stands out (recalled).
    [Fact]
    public void InTheEuropeanUnionAllergensStandOut()
    {
        IngredientDeclaration list = Of("100 g unsalted butter\n300 g granulated sugar\n60 g egg white\n200 g plain flour\n50 g whole milk\n20 g almonds", Europe);
        Assert.Equal("Ingredients: sugar, WHEAT flour, butter (MILK), EGG white, MILK, ALMONDS.\n", list.ToText());
        Assert.Equal("Ingredients: sugar, **wheat** flour, butter (**milk**), **egg** white, **milk**, **almonds**.\n", list.ToMarkdown());
        Assert.Equal("<p class=\"ingredients\">Ingredients: sugar, <strong>wheat</strong> flour, butter (<strong>milk</strong>), <strong>egg</strong> white, <strong>milk</strong>, <strong>almonds</strong>.</p>\n", list.ToHtml());
        Assert.Equal("", list.Contains);
        Assert.Equal([Allergen.Milk, Allergen.Egg, Allergen.Wheat, Allergen.Almond], list.Allergens); // wheat says its gluten
    }

    // 21 USC 343(w), FALCPA: a statement behind the list, tree nuts by their kind; sesame since 2023 (FASTER Act).
    [Fact]
    public void InTheUnitedStatesAStatementFollows()
    {
        IngredientDeclaration list = IngredientDeclaration.Of(Read("300 g granulated sugar\n60 g egg white\n50 g whole milk\n20 g almonds\n10 g pecans\n5 g tahini\n4 g soy lecithin\n3 g wheat starch"), America);
        Assert.Equal("Ingredients: sugar, egg white, milk, almonds, pecans, tahini, soy lecithin, wheat starch.\nContains: Milk, Egg, Wheat, Soy, Almonds, Pecans, Sesame.\n", list.ToText());
        // Cereals with gluten other than wheat, and sulphites, are no major allergens there.
        Assert.Equal("", Of("10 g oat bran\n10 g red wine", America).Contains);
        Assert.Contains("oat", Of("10 g oat bran", Europe).ToMarkdown(), StringComparison.Ordinal);
        Assert.Contains("**oat**", Of("10 g oat bran", Europe).ToMarkdown(), StringComparison.Ordinal);
    }

    // What nobody told is asked for, and never made up; what a pack lists is expanded in its order.
    [Fact]
    public void CompoundIngredientsAreExpandedWhereTheirPartsAreTold()
    {
        Formula glaze = Read("200 g heavy cream\n300 g dark couverture 55 %");
        IngredientDeclaration unknown = IngredientDeclaration.Of(glaze, Europe);
        Assert.Equal("Ingredients: dark couverture 55 % (parts not known: read the pack), cream (MILK).\n", unknown.ToText());
        Assert.Contains(unknown.Remarks, remark => remark.Contains("dark couverture 55 % often contains milk, soy", StringComparison.Ordinal) || remark.Contains("dark couverture 55 % often contains soy", StringComparison.Ordinal));
        IngredientDeclaration told = IngredientDeclaration.Of(glaze, Europe, new()
        {
            Compounds = [CompoundIngredient.Of(s_table.Get("dark couverture 55 %"), "cocoa mass", "sugar", "cocoa butter", "emulsifier: soya lecithin", "whole milk powder")],
        });
        Assert.Equal("Ingredients: dark couverture 55 % (cocoa mass, sugar, cocoa butter, emulsifier: SOYA lecithin, whole MILK powder), cream (MILK).\n", told.ToText());
        Assert.Equal([Allergen.Milk, Allergen.Soy], told.Allergens);
        Assert.DoesNotContain(told.Remarks, remark => remark.Contains("Parts not known", StringComparison.Ordinal));
    }

    // Directive 2001/111/EC and 21 CFR 101.4(b)(20), recalled: granulated and caster sugar are sugar, and a list names it once, by what both are together.
    [Fact]
    public void WhatGoesByOneNameStandsOnce()
    {
        Formula formula = Read("60 g granulated sugar\n100 g honey\n50 g caster sugar\n20 g whole milk\n10 g skim milk");
        Assert.Equal("Ingredients: sugar, honey, MILK.\n", IngredientDeclaration.Of(formula, Europe).ToText());
        Assert.Equal("Ingredients: sugar 46 %, honey, milk.\nContains: Milk.\n", IngredientDeclaration.Of(formula, America, new() { Quantified = [s_table.Get("caster sugar")] }).ToText()); // 110 of 240 g
    }

    // A ganache in a cake: 100 g of it stand before 90 g of flour and behind 150 g of sugar, with its own parts by its own formula; deeper brackets are square.
    [Fact]
    public void APartThatIsMadeApartStandsWithItsParts()
    {
        IngredientDeclaration list = IngredientDeclaration.Of(Read("150 g granulated sugar\n90 g plain flour\n60 g whole egg"), Europe, new()
        {
            Compounds = [CompoundIngredient.Of("ganache", Read("60 g heavy cream\n40 g dark couverture 55 %"), 100), CompoundIngredient.Of(s_table.Get("dark couverture 55 %"), "cocoa mass", "sugar")],
            QuantifiedParts = ["ganache"],
        });
        Assert.Equal("Ingredients: sugar, ganache 25 % (cream (MILK), dark couverture 55 % [cocoa mass, sugar]), WHEAT flour, EGG.\n", list.ToText());
        Assert.Contains("Milk, Egg, Wheat", IngredientDeclaration.Of(Read("150 g granulated sugar\n90 g plain flour\n60 g whole egg"), America, new() { Compounds = [CompoundIngredient.Of("ganache", Read("60 g heavy cream"), 100)] }).Contains, StringComparison.Ordinal);
    }

    // Annex VIII, the arithmetic recalled: 60 g of almonds in a batch that leaves the oven at 125 g are 48 %; 150 g of fruit boiled to 120 g are 125 g per 100 g.
    [Fact]
    public void QuantitiesAreOfTheFinishedFood()
    {
        Ingredient almonds = s_table.Get("almonds"), fruit = s_table.Get("strawberries");
        Formula baked = Formula.Of("", [FormulaLine.Of(almonds, 60), FormulaLine.Of(s_table.Get("granulated sugar"), 55), FormulaLine.Of(s_table.Get("water"), 30)], 20);
        IngredientDeclaration list = IngredientDeclaration.Of(baked, Europe, new() { Quantified = [almonds] });
        Assert.Equal(48, list.Items[0].Quantity!.Value.Likely, 9);
        Assert.Equal("Ingredients: ALMONDS 48 %, sugar, water.\n", list.ToText());
        Formula boiled = Formula.Of("", [FormulaLine.Of(fruit, 150), FormulaLine.Of(s_table.Get("granulated sugar"), 60)], 90);
        IngredientDeclaration jam = IngredientDeclaration.Of(boiled, Europe, new() { Quantified = [fruit] });
        Assert.Equal("Ingredients: strawberries, sugar.\nPrepared with 125 g of strawberries per 100 g.\n", jam.ToText());
        // A tenth below five per cent (recalled).
        Assert.Contains("honey 2.5 %", IngredientDeclaration.Of(Read("25 g honey\n975 g granulated sugar"), Europe, new() { Quantified = [s_table.Get("honey")] }).ToText(), StringComparison.Ordinal);
    }

    // Annex VII, part A, point 1 (recalled): added water is the finished food less the rest, and up to 5 % is not listed. 100 g of 200 g is left of it; of 1000 g at the edge 50 g.
    [Theory]
    [InlineData(200, 100, 900, "sugar, water")]
    [InlineData(51, 0, 949, "sugar, water")]
    [InlineData(50, 0, 950, "sugar")]
    [InlineData(300, 299, 900, "sugar")]
    public void AddedWaterInTheEuropeanUnion(double water, double boiledOff, double sugar, string listed)
    {
        Formula syrup = Formula.Of("", [FormulaLine.Of(s_table.Get("granulated sugar"), sugar), FormulaLine.Of(s_table.Get("water"), water)], boiledOff);
        Assert.Equal($"Ingredients: {listed}.\n", IngredientDeclaration.Of(syrup, Europe).ToText());
    }

    // In the United States water stands by what was put in (21 CFR 101.4(a)(1)), unless all of it goes (101.4(c), recalled).
    [Theory]
    [InlineData(200, 100, "water, sugar")]
    [InlineData(20, 0, "sugar, water")]
    [InlineData(200, 199.8, "sugar")]
    public void AddedWaterInTheUnitedStates(double water, double boiledOff, string listed)
    {
        Formula syrup = Formula.Of("", [FormulaLine.Of(s_table.Get("granulated sugar"), 150), FormulaLine.Of(s_table.Get("water"), water)], boiledOff);
        Assert.Equal($"Ingredients: {listed}.\n", IngredientDeclaration.Of(syrup, America).ToText());
    }

    // 21 CFR 101.4(a)(2): 2 per cent or less may be gathered behind a note.
    [Fact]
    public void WhatIsLittleIsGathered()
    {
        Formula formula = Read("980 g granulated sugar\n20.1 g almonds\n1 g agar powder");
        Assert.Equal("Ingredients: sugar, almonds, contains 2 % or less of: agar.\nContains: Almonds.\n", IngredientDeclaration.Of(formula, America, new() { GathersSmall = true }).ToText());
    }

    // Annex II exempts what is made of wheat so far that it brings no allergen; sulphites count from 10 mg/kg; neither is known of a formula, and both are said.
    [Fact]
    public void WhatIsNotKnownIsSaidAndNothingIsCalledFree()
    {
        foreach (LabelRules rules in (LabelRules[])[Europe, America])
        {
            IngredientDeclaration list = Of("300 g granulated sugar\n100 g glucose syrup 42 DE\n5 g powdered gelatine", rules);
            Assert.Contains(list.Remarks, remark => remark.Contains("of wheat", StringComparison.Ordinal));
            Assert.Contains(list.Remarks, remark => remark.Contains(rules == Europe ? "10 mg/kg" : "10 parts per million", StringComparison.Ordinal));
            Assert.Contains(list.Remarks, remark => remark.Contains("often contains fish", StringComparison.Ordinal));
            Assert.Contains(list.Remarks, remark => remark.Contains("not said to be absent", StringComparison.Ordinal));
            Assert.DoesNotMatch(@"(?i)\bfree (from|of)\b|-free\b", list + string.Join(" ", list.Remarks));
        }
    }

    [Fact]
    public void CupsThatDoNotTellTheOrderAreToldSo()
    {
        Formula cups = Formula.ParseText("", "2 cups plain flour\n1 1/4 cups granulated sugar", s_table, MeasuringSystem.UsCustomary);
        Assert.Contains(IngredientDeclaration.Of(cups, Europe).Remarks, remark => remark.Contains("cannot be told from cups", StringComparison.Ordinal));
        Assert.DoesNotContain(Of("240 g plain flour\n250 g granulated sugar", Europe).Remarks, remark => remark.Contains("cannot be told", StringComparison.Ordinal));
    }

    // Hostile names of a kitchen's own ingredients and parts: nothing of them is HTML, Markdown or hidden.
    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("**milk** [x](javascript:alert(1)) `y` <b>")]
    [InlineData("\u202Ebutter\u001b[2J\nmilk\u2028")]
    [InlineData("=HYPERLINK(\"http://x\")'\"&amp;")]
    public void HostileNamesAreEscaped(string name)
    {
        Formula formula = Read("100 g granulated sugar");
        IngredientDeclaration list = IngredientDeclaration.Of(formula, Europe, new() { Compounds = [CompoundIngredient.Of(name, formula, 50), CompoundIngredient.Of(formula.Lines[0].Ingredient, name)] });
        string html = list.ToHtml(), markdown = list.ToMarkdown(), text = list.ToText();
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<b>", html, StringComparison.OrdinalIgnoreCase);
        Assert.Matches("^<p class=\"ingredients\">([^<>\"']|<strong>|</strong>)*</p>\n$", html);
        Assert.DoesNotMatch(@"(?<!\\)[<`\[\]]", markdown);
        foreach (string form in (string[])[html, markdown, text])
            Assert.DoesNotContain(form, c => c != '\n' && char.IsControl(c) || c is '\u202E' or '\u2028');
        Assert.Single(text.TrimEnd('\n').Split('\n'));
    }

    // The name of a kitchen's own food, in every answer about it.
    [Fact]
    public void AHostileFoodIsMadeFitInEveryAnswer()
    {
        Ingredient food = FoodLabel.Of("\u202E<script>\u001b[2J|x", NutritionPanel.Of(Europe, 100, (LabelNutrient.Carbohydrate, "10 g"), (LabelNutrient.Sugars, "10 g"), (LabelNutrient.Fat, "50 g"), (LabelNutrient.Protein, "1.0 g"),
            (LabelNutrient.Fibre, "0 g"), (LabelNutrient.Salt, "0 g"))).Ingredient;
        Formula formula = Formula.Of("\u2066bidi\n", [FormulaLine.Of(food, 100), FormulaLine.Of(s_table.Get("honey"), 50)]), other = Read("100 g unsalted butter");
        Price price = Price.Of(food, 1, Currency.Get("EUR"), Amount.Parse("1 kg"), MeasuringSystem.Metric);
        BatchCost cost = BatchCost.Of(formula, PriceList.Of(price)), bare = BatchCost.Of(formula, PriceList.Of(Price.Of(s_table.Get("honey"), 1, Currency.Get("EUR"), Amount.Parse("1 kg"), MeasuringSystem.Metric)));
        FormulaComparison comparison = FormulaComparison.Of(formula, other);
        IngredientDeclaration list = IngredientDeclaration.Of(formula, Europe);
        string[] said =
        [
            price.ToString(), cost.ToString(), bare.ToString(), .. cost.Remarks, .. bare.Remarks, .. cost.Lines.Select(line => line.ToString()), .. cost.Purchases.Select(pack => pack.ToString()),
            comparison.ToString(), .. comparison.Lines.Select(line => line.ToString()), .. comparison.Parts.Concat(comparison.SolidFat).Select(figure => figure.ToString()), comparison.WaterActivity.ToString(),
            list.ToString(), list.ToHtml(), list.ToMarkdown(), .. list.Remarks, .. list.Items.Select(item => item.ToString()),
        ];
        Assert.All(said, text => Assert.DoesNotContain(text, c => c != '\n' && char.IsControl(c) || c is '\u202E' or '\u2066'));
        Assert.DoesNotContain("<script", list.ToHtml(), StringComparison.Ordinal);
        Assert.Contains("\\<script\\>", list.ToMarkdown(), StringComparison.Ordinal);
    }

    // Nuts by their kind (Annex II, 8): a pack that says only nuts is asked again.
    [Fact]
    public void NutsWithoutAKindAreAskedFor() => Assert.Contains(IngredientDeclaration.Of(Read("100 g feuilletine"), Europe, new() { Compounds = [CompoundIngredient.Of(s_table.Get("feuilletine"), "wheat flour", "nuts")] }).Remarks,
        remark => remark.StartsWith("Nuts are declared by their kind", StringComparison.Ordinal));

    // Whatever the formula, each ingredient stands once, in falling order, and every allergen that Annex II names and a line has is emphasised somewhere.
    [Property(MaxTest = 300)]
    public void EveryIngredientStandsOnceInOrderWithItsAllergens(ushort[] picks)
    {
        FormulaLine[] lines = [.. picks.Take(12).Select((pick, i) => FormulaLine.Of(s_table.All[pick % s_table.All.Count], 1 + (pick * 7 + i) % 500))];
        if (lines.Length == 0)
            return;
        Formula formula = Formula.Of("", lines);
        IngredientDeclaration list = IngredientDeclaration.Of(formula, Europe);
        Assert.Equal(list.Items.Count, list.Items.Select(item => item.Name).Distinct().Count());
        Assert.All(list.Items.Zip(list.Items.Skip(1)), pair => Assert.True(pair.First.Grams >= pair.Second.Grams));
        Assert.Equal(formula.Lines.Select(line => line.Ingredient.Id).Distinct().Except(["water"]).Order(), list.Items.SelectMany(item => item.Ingredients).Select(food => food.Id).Except(["water"]).Order());
        Assert.All(list.Items, item => Assert.Equal(item.Ingredients.Any(food => food.Allergens.Count > 0), item.Words.Any(word => word.IsEmphasised)));
        string statement = IngredientDeclaration.Of(formula, America).Contains;
        Assert.Equal(formula.Allergens.Any(allergen => allergen is not (Allergen.Gluten or Allergen.Sulphites)), statement.Length > 0);
    }

    [Fact]
    public void BadInputIsRefused()
    {
        Formula formula = Read("100 g honey");
        Ingredient honey = s_table.Get("honey"), butter = s_table.Get("unsalted butter");
        Assert.Throws<ArgumentException>("options", () => IngredientDeclaration.Of(formula, Europe, new() { Quantified = [butter] }));
        Assert.Throws<ArgumentException>("options", () => IngredientDeclaration.Of(formula, Europe, new() { QuantifiedParts = ["cake"] }));
        Assert.Throws<ArgumentException>("options", () => IngredientDeclaration.Of(formula, Europe, new() { Compounds = [CompoundIngredient.Of(butter, "cream")] }));
        Assert.Throws<ArgumentException>("options", () => IngredientDeclaration.Of(formula, Europe, new() { Compounds = [CompoundIngredient.Of(honey, "a"), CompoundIngredient.Of(honey, "b")] }));
        // Honey made of honey.
        Assert.Throws<ArgumentException>("options", () => IngredientDeclaration.Of(formula, Europe, new() { Compounds = [CompoundIngredient.Of(honey, formula)] }));
        Assert.Throws<ArgumentException>("parts", () => CompoundIngredient.Of(honey, (string[])[]));
        Assert.Throws<ArgumentException>("parts", () => CompoundIngredient.Of(honey, " "));
        Assert.Throws<ArgumentException>("name", () => CompoundIngredient.Of(" ", formula, 1));
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => CompoundIngredient.Of("x", formula, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("rules", () => IngredientDeclaration.Of(formula, (LabelRules)9));
    }

    [Fact]
    public void IsTheSameInEveryCulture() => Cultures.InEach(["de-DE", "tr-TR"], () =>
        Assert.Equal("Ingredients: MILK, honey 2.5 %.\n", IngredientDeclaration.Of(Read("975 g whole milk\n25 g honey"), Europe, new() { Quantified = [s_table.Get("honey")] }).ToText()));

    // Names of an American kitchen, where the law has none of its own.
    [Fact]
    public void NamesAreThoseOfTheTableThatIsAskedFor()
    {
        Formula formula = Read("100 g bicarbonate of soda\n50 g icing sugar\n20 g smooth peanut butter");
        Assert.Equal("Ingredients: baking soda, powdered sugar (parts not known: read the pack), smooth peanut butter (parts not known: read the pack).\nContains: Peanuts.\n", IngredientDeclaration.Of(formula, America).ToText());
        Assert.StartsWith("Ingredients: raising agent: sodium bicarbonate, icing sugar (", IngredientDeclaration.Of(formula, Europe).ToText(), StringComparison.Ordinal);
    }

    private static IngredientDeclaration Of(string text, LabelRules rules) => IngredientDeclaration.Of(Read(text), rules);

    private static Formula Read(string text) => Formula.ParseText("", text, s_table, MeasuringSystem.Metric);
}
