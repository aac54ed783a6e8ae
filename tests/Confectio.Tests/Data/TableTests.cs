using System.Globalization;
using System.Text.RegularExpressions;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Data;

/// <summary>The built-in tables: what is in them, that it hangs together, and that it can be true.</summary>
public sealed class TableTests
{
    private static readonly IReadOnlyList<Ingredient> s_all = IngredientTable.BuiltIn.All;

    // Used by the text of an equation or a constant, not by a row: ConversionOptions and MeasuringSystem.ToolTolerance, Conversion and MassTotal.
    private static readonly string[] s_usedByEquations = ["gum-2008", "tool-tolerance"];

    // These numbers pin the data, so that no row is lost or changed unseen; they are counted from the tables themselves.
    public static TheoryData<string, string, int, string> Pins => new()
    {
        { "ingredients", "water_percent", 337, "9517.692" },
        { "ingredients", "fat_percent", 337, "6217.029" },
        { "ingredients", "protein_percent", 337, "2321.088" },
        { "ingredients", "sucrose_percent", 337, "3890.565" },
        { "ingredients", "glucose_percent", 337, "1189.440" },
        { "ingredients", "fructose_percent", 337, "914.310" },
        { "ingredients", "lactose_percent", 337, "532.017" },
        { "ingredients", "maltose_percent", 337, "277.51" },
        { "ingredients", "other_sugars_percent", 337, "143.27" },
        { "ingredients", "higher_saccharides_percent", 337, "808.28" },
        { "ingredients", "starch_percent", 337, "1819.21" },
        { "ingredients", "fibre_percent", 337, "2473.94" },
        { "ingredients", "polyols_percent", 337, "672.341" },
        { "ingredients", "glycerol_percent", 337, "119.3" },
        { "ingredients", "alcohol_percent", 337, "308.35" },
        { "ingredients", "acids_percent", 337, "326.245" },
        { "ingredients", "salt_percent", 337, "446.612" },
        { "ingredients", "other_ash_percent", 337, "672.196" },
        { "ingredients", "other_percent", 337, "1051.275" },
        { "ingredients", "milk_fat_percent", 337, "988.97" },
        { "ingredients", "dextrose_equivalent", 10, "398" },
        { "weights", "grams", 684, "70154.74" },
        { "weights", "low_grams", 124, "9007.5" },
        { "weights", "high_grams", 124, "10996.6" },
        { "weights", "samples", 65, "1111" },
        { "weights", "sd_grams", 43, "352.116" },
        { "spreads", "log_standard_uncertainty", 17, "1.061" },
        { "composition_spreads", "relative_standard_uncertainty", 7, "0.50" },
        { "composition_voices", "water_percent", 44, "1442.857" },
        { "composition_voices", "fat_percent", 38, "1043.41" },
        { "composition_voices", "protein_percent", 40, "536.27" },
        { "composition_voices", "sucrose_percent", 22, "537.62" },
        { "composition_voices", "fibre_percent", 23, "102.99" },
        { "solubilities", "celsius", 25, "1063.7" },
        { "solubilities", "percent", 25, "1365.74" },
        { "sweetness", "likely", 26, "18.72" },
        { "substances", "molar_mass", 12, "3044.355" },
        { "coefficients", "low_celsius", 214, "-1095" },
        { "coefficients", "high_celsius", 214, "22174.460" },
        { "coefficients", "low", 122, "-2978.752" },
        { "coefficients", "high", 122, "54972.32096" },
        { "coefficients", "fit_error", 134, "515.98961" },
        { "equations", "coefficients", 45, "307" },
        { "pans", "width_inches", 11, "80.25" },
        { "pans", "depth_inches", 11, "22.5" },
        { "pans", "printed_cups", 11, "87" },
        { "icing_usages", "printed_cups", 2, "6" },
        { "portion_figures", "low", 8, "409" },
        { "portion_figures", "high", 8, "426" },
    };

    [Theory]
    [InlineData("sources", 136)]
    [InlineData("altitude_rules", 20)]
    [InlineData("altitude_leavening", 9)]
    [InlineData("saturates", 202)]
    [InlineData("reference_intakes", 15)]
    [InlineData("traffic_lights", 4)]
    [InlineData("currencies", 155)]
    [InlineData("label_names", 197)]
    [InlineData("reference_amounts", 29)]
    [InlineData("sweetener_figures", 71)]
    [InlineData("packing_ratios", 10)]
    [InlineData("allergen_words", 24)]
    [InlineData("ingredients", 337)]
    [InlineData("weights", 684)]
    [InlineData("spreads", 17)]
    [InlineData("composition_spreads", 7)]
    [InlineData("composition_voices", 44)]
    [InlineData("stages", 42)]
    [InlineData("solubilities", 25)]
    [InlineData("sweetness", 26)]
    [InlineData("equations", 48)]
    [InlineData("substances", 25)]
    [InlineData("coefficients", 307)]
    [InlineData("egg_sizes", 16)]
    [InlineData("egg_fractions", 15)]
    [InlineData("egg_forms", 13)]
    [InlineData("reconstitution_rules", 3)]
    [InlineData("meringues", 18)]
    [InlineData("pans", 11)]
    [InlineData("icing_usages", 2)]
    [InlineData("portion_figures", 8)]
    [InlineData("kinetic_sets", 17)]
    [InlineData("kinetic_points", 10)]
    [InlineData("hold_times", 81)]
    [InlineData("hold_time_tables", 4)]
    [InlineData("consistencies", 11)]
    [InlineData("icing_densities", 14)]
    [InlineData("icing_airs", 17)]
    [InlineData("ganache_ratios", 9)]
    [InlineData("food_standards", 20)]
    [InlineData("foam_formers", 2)]
    [InlineData("gelatine_leaves", 4)]
    [InlineData("grit_thresholds", 5)]
    [InlineData("troubles", 43)]
    [InlineData("trouble_words", 139)]
    [InlineData("keeping_times", 38)]
    [InlineData("kept_foods", 16)]
    [InlineData("cold_rules", 8)]
    [InlineData("growth_limits", 26)]
    [InlineData("solid_fat", 107)]
    [InlineData("fat_mixtures", 11)]
    [InlineData("fat_windows", 6)]
    [InlineData("heats", 20)]
    [InlineData("ingredient_fats", 86)]
    [InlineData("american_names", 54)]
    [InlineData("rough_measures", 20)]
    public void TheNumberOfRowsIsPinned(string table, int rows) => Assert.Equal(rows, Tables.Of(table).Count);

    [Theory]
    [MemberData(nameof(Pins))]
    public void TheSumOfAColumnIsPinned(string table, string column, int filled, string sum)
    {
        decimal[] values = [.. Tables.Of(table).Select(row => row[column]).Where(field => field.Length > 0).Select(field => decimal.Parse(field, CultureInfo.InvariantCulture))];
        Assert.Equal(filled, values.Length);
        Assert.Equal(decimal.Parse(sum, CultureInfo.InvariantCulture), values.Sum());
    }

    [Theory] // pins too: a figure that turns from remembered to published must be seen
    [InlineData("ingredients", "kind", "common-practice 3, compiled 228, computed 35, estimated 26, from-memory 45")]
    [InlineData("ingredients", "sugars_kind", "blank 155, common-practice 2, compiled 1, computed 89, estimated 65, from-memory 25")]
    [InlineData("weights", "kind", "common-practice 5, compiled 431, computed 132, estimated 112, from-memory 4")]
    [InlineData("spreads", "kind", "estimated 17")]
    [InlineData("composition_spreads", "kind", "estimated 7")]
    [InlineData("composition_voices", "kind", "compiled 44")]
    [InlineData("solubilities", "kind", "from-memory 9, measured 16")]
    [InlineData("sweetness", "kind", "compiled 24, estimated 2")]
    [InlineData("equations", "kind", "compiled 10, computed 4, estimated 4, fitted 13, from-memory 17")]
    [InlineData("egg_sizes", "kind", "compiled 16")]
    [InlineData("egg_fractions", "kind", "common-practice 3, compiled 9, computed 3")]
    [InlineData("egg_forms", "kind", "common-practice 10, compiled 2, measured 1")]
    [InlineData("reconstitution_rules", "kind", "common-practice 1, compiled 1, from-memory 1")]
    [InlineData("meringues", "kind", "common-practice 11, compiled 5, from-memory 2")]
    [InlineData("pans", "kind", "common-practice 11")]
    [InlineData("icing_usages", "kind", "compiled 2")]
    [InlineData("portion_figures", "kind", "common-practice 6, compiled 2")]
    [InlineData("kinetic_sets", "kind", "computed 7, estimated 1, fitted 1, measured 8")]
    [InlineData("hold_times", "kind", "compiled 81")]
    [InlineData("consistencies", "kind", "common-practice 3, estimated 8")]
    [InlineData("troubles", "kind", "common-practice 23, compiled 6, estimated 6, fitted 4, measured 4")]
    [InlineData("keeping_times", "kind", "common-practice 10, compiled 28")]
    [InlineData("cold_rules", "kind", "compiled 8")]
    [InlineData("growth_limits", "kind", "compiled 14, from-memory 12")]
    [InlineData("solid_fat", "kind", "compiled 1, estimated 43, from-memory 61, measured 2")]
    [InlineData("fat_windows", "kind", "measured 6")]
    [InlineData("fat_mixtures", "kind", "estimated 9, from-memory 2")]
    [InlineData("substances", "kind", "blank 13, compiled 6, computed 4, estimated 2")]
    [InlineData("coefficients", "kind", "compiled 31, computed 39, estimated 29, fitted 128, from-memory 80")]
    [InlineData("rough_measures", "kind", "common-practice 4, compiled 2, estimated 13, from-memory 1")]
    [InlineData("heats", "kind", "compiled 1, estimated 6, from-memory 12, measured 1")]
    [InlineData("ingredient_fats", "kind", "common-practice 86")]
    public void TheKindsOfEvidenceArePinned(string table, string column, string counts) => Assert.Equal(counts, string.Join(", ",
        Tables.Of(table).GroupBy(row => row[column].Length == 0 ? "blank" : row[column]).OrderBy(kind => kind.Key, StringComparer.Ordinal)
            .Select(kind => string.Create(CultureInfo.InvariantCulture, $"{kind.Key} {kind.Count()}"))));

    [Fact]
    public void WhatIsReadIsWhatIsWritten()
    {
        Assert.Equal(Tables.Ingredients.Select(row => row["id"]), s_all.Select(food => food.Id));
        Assert.Equal(Tables.Weights.Count, s_all.Sum(food => food.Weights.Count));
        Assert.Equal(Tables.Sources.Select(row => row["key"]).Order(StringComparer.Ordinal), Bibliography.All.Select(source => source.Key));
    }

    [Fact]
    public void ThereAreAtLeastAHundredAndThirtyIngredients() => Assert.True(s_all.Count >= 130);

    [Fact]
    public void EverySourceKeyOfATableResolves() => Assert.All(Tables.SourceKeys.Distinct(), key => Assert.Equal(key, Bibliography.Get(key).Key));

    [Fact]
    public void EverySourceIsUsed()
    {
        HashSet<string> used = [.. s_usedByEquations, .. Tables.SourceKeys, Composition.EnergySource.Key, PrintedHeatEquations.SiebelSource.Key, ConePenetration.Source.Key];
        used.UnionWith(MeasuringSystem.All.SelectMany(system => Enum.GetValues<KitchenUnit>().Where(system.Defines).Select(unit => system.SourceOf(unit).Key)));
        Assert.Empty(Bibliography.All.Select(source => source.Key).Except(used));
        Assert.Empty(used.Except(Bibliography.All.Select(source => source.Key)));
    }

    [Fact]
    public void EverySourceSaysWhatItIs() => Assert.All(Bibliography.All, source =>
    {
        Assert.Matches("^[a-z0-9-]+$", source.Key);
        Assert.NotEmpty(source.ShortName);
        Assert.NotEmpty(source.Citation);
        Assert.NotEmpty(source.Edition);
        Assert.NotEmpty(source.Licence);
        Assert.DoesNotContain("http", source.Citation + source.Note, StringComparison.OrdinalIgnoreCase);
    });

    [Fact]
    public void NothingRememberedOrJudgedIsPresentedAsPublished()
    {
        IEnumerable<Provenance> all = s_all.SelectMany(food => food.Weights.Select(fact => fact.Provenance).Append(food.CompositionProvenance).Append(food.SugarsProvenance));
        Assert.All(all, provenance =>
        {
            if (provenance.Source.Key == "memory")
                Assert.Equal(Evidence.FromMemory, provenance.Evidence);
            if (provenance.Source.Key == "confectio")
                Assert.True(provenance.Evidence is Evidence.Estimated or Evidence.Computed);
            if (provenance.Evidence == Evidence.FromMemory)
                Assert.Equal("memory", provenance.Source.Key);
        });
    }

    [Fact]
    public void EveryEstimatedWeightHasARange() =>
        Assert.All(s_all.SelectMany(food => food.Weights).Where(fact => fact.Provenance.Evidence == Evidence.Estimated),
            fact => Assert.True(fact.Grams.Low < fact.Grams.Likely && fact.Grams.Likely < fact.Grams.High));

    [Fact]
    public void CompositionsAddUp() => Assert.All(s_all, food =>
    {
        // Food tables are rounded to two digits a figure: 0.05 is ten such roundings.
        Assert.InRange(food.Composition.Sum * 100, 99.95 - 1e-9, 100.05 + 1e-9);
        foreach (Constituent constituent in Enum.GetValues<Constituent>())
            Assert.InRange(food.Composition[constituent], 0, 1);
    });

    // Foods that nobody fills a measure with and nobody has: they have no density, and say so when they are asked.
    private static readonly string[] s_noDensity = ["sweets-caramel", "almonds-sugared", "chestnuts-candied"];

    [Fact]
    public void WhatNobodyMeasuresByVolumeSaysSo()
    {
        Assert.Equal(s_noDensity, s_all.Where(food => food.Densities.Count == 0).Select(food => food.Id));
        Assert.All(s_noDensity, id =>
        {
            string message = Assert.Throws<ArgumentException>(() => IngredientTable.BuiltIn.Get(id).NearestDensity(Packing.Whole)).Message;
            Assert.Contains("none is known in any packing", message, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void EveryIngredientHasADensityInItsUsualPacking() =>
        Assert.All(s_all.Where(food => !s_noDensity.Contains(food.Id)), food => Assert.Equal(food.DefaultPacking, food.Density(food.DefaultPacking).Packing));

    // Denser than 1.06 times its parts without air; the model is good to about 1 %, a rounded spoon to 6 %. Lecithin was, while all of it
    // counted as fat: the source has its phosphorus as ash.
    [Fact]
    public void NoPackingIsHeavierThanTheIngredientWithoutAirOrLighterThanFluff() => Assert.Empty(
        s_all.SelectMany(food => food.Densities.Select(density => (food, density)))
            .Where(pair => pair.density.GramsPerMillilitre.Likely > 1.06 * pair.food.Composition.AirFreeGramsPerMillilitre || pair.density.GramsPerMillilitre.Likely < 0.03)
            .Select(pair => $"{pair.food.Id} {pair.density.Packing.ToWord()}"));

    [Fact]
    public void NoSingleFigureIsHeavierEither() => Assert.Equal(
        [
            "syrup-corn-light 1 Tbsp", // 22 g is rounded to a whole gram: 21.5 g would pass
            "drink-almond 1 cup", // 262 g of seven samples cannot be: it is 6 % heavier than water; it does not vote
        ],
        s_all.SelectMany(food => food.Weights.Where(fact => fact.Amount.IsVolume).Select(fact => (food, fact)))
            .Where(pair => pair.fact.Grams.Likely / pair.fact.Millilitres > 1.06 * pair.food.Composition.AirFreeGramsPerMillilitre)
            .Select(pair => $"{pair.food.Id} {pair.fact.Amount}"));

    // A liquid leaves no gaps, so that a measure of it weighs what its composition does, free of air: within 3 %, of which the model has 1 and a
    // kitchen's meniscus the rest, and the rounding of the figure. The others are known, and why.
    [Fact]
    public void ALiquidWeighsWhatItsCompositionDoes() => Assert.Equal(
        [
            "molasses 1 cup", // 309 g of the quoted report; the database has 337 g
            "syrup-corn-light 1 Tbsp", // 22 g, rounded up; the cup is 2.9 % high
            "syrup-high-fructose 1 cup", "syrup-high-fructose 1 Tbsp", // light for 76 % solids, both
            "syrup-maple 1/4 cup", // 5 % above a quarter of the cup of the same row
            "vanilla-extract 1 tsp", "vanilla-extract 1 Tbsp", "vanilla-extract 1 cup", "vanilla-imitation 1 tsp", // light beside their alcohol: oddities kept
            "puree-strawberry 1 cup", // a cup as pureed, with what air stays in
            "liqueur-coffee 1 fl oz", // its composition is recalled
        ],
        Liquids().Where(pair => Apart(pair.Food, pair.Fact) > 0.03).Select(pair => $"{pair.Food.Id} {pair.Fact.Amount}"));

    [Fact]
    public void ThereAreManyPublishedFiguresOfLiquids() => Assert.True(Liquids().Count() > 100);

    private static IEnumerable<(Ingredient Food, WeightFact Fact)> Liquids() =>
        s_all.Where(food => food.Class is IngredientClass.Liquid or IngredientClass.Syrup).SelectMany(food => food.Weights
            .Where(fact => fact.Votes && fact.Packing == Packing.Levelled && fact.Provenance.Evidence is Evidence.Compiled or Evidence.Measured)
            .Select(fact => (food, fact)));

    private static double Apart(Ingredient food, WeightFact fact)
    {
        double made = food.Composition.AirFreeGramsPerMillilitre * fact.Millilitres;
        return Math.Max(0, Math.Abs(fact.Grams.Likely - made) - fact.RoundingHalfUnit) / made;
    }

    [Fact]
    public void EveryDensityRises() => Assert.All(s_all.SelectMany(food => food.Densities), density =>
    {
        Assert.InRange(density.LogUncertainty, 0.005, 0.5);
        Assert.True(density.GramsPerMillilitre.Low < density.GramsPerMillilitre.Likely && density.GramsPerMillilitre.Likely < density.GramsPerMillilitre.High);
        Assert.All(density.ContributingFigures, voice => Assert.InRange(voice.Grams.Likely / voice.Millilitres, density.GramsPerMillilitre.Low, density.GramsPerMillilitre.High));
    });

    [Fact]
    public void PackingsOfOneFoodStandInTheirOrder()
    {
        // Sifted is never heavier than spooned, loose never heavier than packed, whipped never heavier than fluid.
        (Packing Light, Packing Heavy)[] pairs =
            [(Packing.Sifted, Packing.Spooned), (Packing.Spooned, Packing.Scooped), (Packing.Loose, Packing.Packed), (Packing.Whipped, Packing.Levelled), (Packing.Whipped, Packing.Packed)];
        // The source prints a whole-gram tablespoon that is lighter than its own sifted cup; oddity kept and noted in the table.
        string[] oddities = ["egg-whole-dried", "egg-yolk-dried"];
        Assert.All(pairs, pair => Assert.Equal(pair.Light == Packing.Sifted ? oddities : [],
            s_all.Where(food => food.TryGetDensity(pair.Light, out BulkDensity? light) && food.TryGetDensity(pair.Heavy, out BulkDensity? heavy)
                && light.GramsPerMillilitre.Likely > heavy.GramsPerMillilitre.Likely).Select(food => food.Id)));
    }

    // Fulton, Matthews and Davis, Home Economics Research Report 41, USDA 1969, revised 1977: grams in a US cup.
    public static TheoryData<string, Packing, double> HomeEconomicsReport41 => new()
    {
        { "flour-all-purpose", Packing.Spooned, 126 },
        { "flour-all-purpose", Packing.Sifted, 116 },
        { "flour-bread", Packing.Spooned, 123 },
        { "flour-bread", Packing.Sifted, 117 },
        { "flour-cake", Packing.Spooned, 111 },
        { "flour-cake", Packing.Sifted, 99 },
        { "starch-corn", Packing.Spooned, 125 },
        { "sugar-granulated", Packing.Levelled, 196 },
        { "sugar-icing", Packing.Spooned, 113 },
        { "sugar-icing", Packing.Sifted, 95 },
        { "sugar-brown", Packing.Packed, 211 },
        { "shortening-white", Packing.Packed, 187 },
        { "margarine-stick", Packing.Packed, 225 },
        { "oil-vegetable", Packing.Levelled, 209 },
        { "molasses", Packing.Levelled, 309 },
    };

    [Theory]
    [MemberData(nameof(HomeEconomicsReport41))]
    public void TheReport41CupsAreKeptExactly(string id, Packing packing, double grams)
    {
        WeightFact fact = Assert.Single(IngredientTable.BuiltIn.Get(id).Density(packing).Facts, fact => fact.Provenance.Source.Key == "herr-41");
        Assert.Equal(grams, fact.Grams.Likely);
        Assert.Equal(Amount.Of(1, KitchenUnit.Cup), fact.Amount);
        Assert.Same(MeasuringSystem.UsCustomary, fact.MeasuringSystem);
        Assert.Equal(Evidence.Compiled, fact.Provenance.Evidence);
    }

    [Fact]
    public void ThereAreNoOtherReport41Cups() =>
        Assert.Equal(HomeEconomicsReport41.Count, s_all.SelectMany(food => food.Weights).Count(fact => fact.Provenance.Source.Key == "herr-41"));

    [Fact]
    public void NoNameBelongsToTwoIngredients()
    {
        IEnumerable<(string Key, string Id)> names = s_all.SelectMany(food => food.Aliases.Select(alias => alias.Text).Append(food.Name).Append(food.Id)
            .Select(name => NameKey.Of(name)).Distinct().Select(key => (key, food.Id)));
        Assert.Empty(names.GroupBy(name => name.Key).Where(group => group.Count() > 1).Select(group => $"{group.Key}: {string.Join(", ", group.Select(name => name.Id))}"));
    }

    [Fact]
    public void NoNameStandsTwiceInOneRow() => Assert.All(s_all, food =>
        // With its accents or its comma a name is another text for a reader, though the same name.
        Assert.Distinct(food.Aliases.Select(alias => alias.Text).Append(food.Name)));

    // What the law of the food says is in it: 21 USC 321(qq) and Regulation (EU) 1169/2011, Annex II.
    [Theory]
    [InlineData("unsalted butter", new[] { Allergen.Milk })]
    [InlineData("egg white", new[] { Allergen.Egg })]
    [InlineData("plain flour", new[] { Allergen.Wheat, Allergen.Gluten })]
    [InlineData("almond paste", new[] { Allergen.Almond })]
    [InlineData("tahini", new[] { Allergen.Sesame })]
    [InlineData("smooth peanut butter", new[] { Allergen.Peanut })]
    [InlineData("soy lecithin", new[] { Allergen.Soy })]
    [InlineData("malt extract syrup", new[] { Allergen.Gluten })]
    [InlineData("granulated sugar", new Allergen[0])]
    public void AllergensAreThoseOfTheFood(string name, Allergen[] allergens) => Assert.Equal(allergens, IngredientTable.BuiltIn.Get(name).Allergens);

    // What many makes have and others have not. Lecithin stands in the couvertures' own reckoning, so it may not be silent here.
    [Theory]
    [InlineData("couverture-dark-70", new[] { Allergen.Milk, Allergen.Soy })]
    [InlineData("couverture-white-28", new[] { Allergen.Soy })]
    [InlineData("chocolate-semisweet", new[] { Allergen.Milk, Allergen.Soy })]
    [InlineData("almond-extract", new[] { Allergen.Almond })]
    [InlineData("jam-apricot", new[] { Allergen.Sulphites })]
    [InlineData("syrup-glucose-de42", new[] { Allergen.Sulphites })]
    [InlineData("granulated sugar", new Allergen[0])]
    public void WhatIsOftenInItIsSaidApart(string name, Allergen[] allergens) => Assert.Equal(allergens, IngredientTable.BuiltIn.Get(name).OftenContains);

    [Fact]
    public void ANoteThatNamesAnAllergenIsNotTheOnlyPlaceOfIt()
    {
        (string Words, Allergen Allergen)[] said =
            [("lecithin", Allergen.Soy), ("traces of milk", Allergen.Milk), ("sulphites", Allergen.Sulphites), ("fish gelatine", Allergen.Fish), ("caseinate", Allergen.Milk)];
        Assert.All(s_all, food =>
        {
            Assert.Empty(food.OftenContains.Intersect(food.Allergens));
            Assert.All(said.Where(pair => food.Note.Contains(pair.Words, StringComparison.OrdinalIgnoreCase)),
                pair => Assert.Contains(pair.Allergen, food.Allergens.Concat(food.OftenContains)));
        });
    }

    [Fact]
    public void ANameThatStatesAFatMeansThatFat()
    {
        // "cream 36 %" once meant 37 %. Half a point is what a whole number leaves open.
        (double Stated, double Has, string Name)[] stated = [.. s_all.SelectMany(food => food.Aliases.Select(alias => alias.Text).Append(food.Name)
            .Select(name => (name, match: Regex.Match(name, "(cream|butter).* ([0-9]+) %", RegexOptions.CultureInvariant)))
            .Where(pair => pair.match.Success)
            .Select(pair => (double.Parse(pair.match.Groups[2].Value, CultureInfo.InvariantCulture), food.Composition[Constituent.Fat] * 100, pair.name)))];
        Assert.True(stated.Length >= 7);
        // But for butter: the fat of its grade is the least it may have, and the source found 82.9 % in what is sold as 82 %.
        Assert.All(stated, pair => Assert.True(pair.Name.Contains("butter", StringComparison.Ordinal)
            ? pair.Has >= pair.Stated && pair.Has <= pair.Stated + 1 : Math.Abs(pair.Stated - pair.Has) <= 0.5, pair.Name));
        Assert.False(IngredientTable.BuiltIn.TryGet("cream 36 %", out _));
    }

    [Theory] // names of more foods than one, or nobody's but one house's
    [InlineData("candy coating")]
    [InlineData("almond bark")]
    [InlineData("confectionery coating")]
    [InlineData("melting wafers")]
    [InlineData("cake and icing shortening")]
    public void ANameThatDoesNotTellIsNotAnswered(string name) => Assert.False(IngredientTable.BuiltIn.TryGet(name, out _));

    [Fact]
    public void WheatIsAlwaysGlutenToo() =>
        Assert.All(s_all.Where(food => food.Allergens.Contains(Allergen.Wheat)), food => Assert.Contains(Allergen.Gluten, food.Allergens));

    [Fact]
    public void MilkFoodsDeclareMilk()
    {
        // Every food with lactose or a dairy id, but for those that are named milk and are not.
        string[] notMilk = ["coconut-milk", "coconut-cream", "cream-of-tartar"];
        Assert.All(s_all.Where(food => food.Composition[Constituent.Lactose] > 0
                || (food.Id.StartsWith("milk-", StringComparison.Ordinal) || food.Id.StartsWith("cream-", StringComparison.Ordinal) || food.Id.StartsWith("butter-", StringComparison.Ordinal))
                && !notMilk.Contains(food.Id)),
            food => Assert.Contains(Allergen.Milk, food.Allergens));
    }

    // Milk is declared and there is fat, but none of it is milk fat.
    private static readonly string[] s_milkWithoutMilkFat =
    [
        "margarine-stick", "margarine-stick-unsalted", "margarine-tub", // vegetable fat with whey
        "creamer-powder", // vegetable fat with caseinate
        "spread-hazelnut", // vegetable fat and hazelnut oil with skimmed milk
    ];

    // The fat is milk fat in part only, or the source does not say that all of it is: estimated, and the note says so.
    private static readonly string[] s_milkFatEstimated =
    [
        "dulce-de-leche", "chocolate-white", "couverture-milk-34", "couverture-white-28", "spread-hazelnut", "sauce-chocolate-fudge",
        "sauce-caramel", "feuilletine", "sweets-caramel",
    ];

    [Fact]
    public void MilkFatIsPartOfTheFatOfFoodsThatDeclareMilk() => Assert.All(s_all, food =>
    {
        Assert.InRange(food.Composition.MilkFat, 0, food.Composition[Constituent.Fat]);
        if (food.Composition.MilkFat > 0)
            Assert.Contains(Allergen.Milk, food.Allergens);
    });

    [Fact]
    public void OnlyTheListedFoodsDeclareMilkAndHaveNoMilkFat() => Assert.Equal(s_milkWithoutMilkFat.Order(StringComparer.Ordinal),
        s_all.Where(food => food.Allergens.Contains(Allergen.Milk) && food.Composition[Constituent.Fat] > 0 && food.Composition.MilkFat == 0)
            .Select(food => food.Id).Order(StringComparer.Ordinal));

    [Fact]
    public void AnEstimatedMilkFatIsNotedAndAllOthersAreTheWholeFatOrNone()
    {
        Assert.Equal(s_milkFatEstimated.Order(StringComparer.Ordinal),
            s_all.Where(food => food.Note.Contains("Milk fat estimated", StringComparison.Ordinal)).Select(food => food.Id).Order(StringComparer.Ordinal));
        Assert.All(s_all.Where(food => !s_milkFatEstimated.Contains(food.Id)),
            food => Assert.True(food.Composition.MilkFat == 0 || food.Composition.MilkFat == food.Composition[Constituent.Fat]));
    }

    [Theory] // the sums stand in the notes: whole milk powder holds 26.71 % fat, 26.32 % protein, 38.42 % lactose (NDB 01090)
    [InlineData("couverture-milk-34", 22 * 0.2671)]
    [InlineData("couverture-white-28", 24 * 0.2671)]
    [InlineData("chocolate-white", 5.87 * 26.71 / 26.32)]
    [InlineData("sauce-chocolate-fudge", 1.4)]
    public void AnEstimatedMilkFatFollowsFromItsNote(string id, double percent) =>
        Assert.Equal(percent, IngredientTable.BuiltIn.Get(id).Composition.MilkFat * 100, 0.005); // two digits are written

    // What the name or the note of the row says. The corn syrups and the high-maltose syrup are "about 42 DE", the dried one "about 36
    // to 40": its middle. Dextrose has none: its note quotes the least that the standard of identity allows, and it is no syrup.
    public static TheoryData<string, double, string> DextroseEquivalents => new()
    {
        { "maltodextrin-de10", 10, "maltodextrin 10 DE" },
        { "syrup-corn-light", 42, "about 42 DE" },
        { "syrup-corn-dark", 42, "about 42 DE" },
        { "syrup-glucose-de28", 28, "glucose syrup 28 DE" },
        { "syrup-glucose-de36", 36, "glucose syrup 36 DE" },
        { "syrup-glucose-de42", 42, "glucose syrup 42 DE" },
        { "syrup-glucose-de54", 54, "glucose syrup 54 DE" },
        { "syrup-glucose-de64", 64, "glucose syrup 64 DE" },
        { "syrup-glucose-dried", 38, "About 36 to 40 DE; 38 taken" },
        { "syrup-glucose-high-maltose", 42, "About 42 DE" },
    };

    [Theory]
    [MemberData(nameof(DextroseEquivalents))]
    public void ADextroseEquivalentIsWhatItsRowSays(string id, double equivalent, string says)
    {
        Ingredient syrup = IngredientTable.BuiltIn.Get(id);
        Assert.Equal(equivalent, syrup.DextroseEquivalent);
        Assert.Contains(says, syrup.Name + "; " + syrup.Note, StringComparison.Ordinal);
        // But for the one that was analysed, none is a published figure, and nothing that a caller reads beside it may look as if it were.
        Assert.True(syrup.SugarsProvenance.Evidence is Evidence.Estimated or Evidence.FromMemory || id == "syrup-glucose-de64" && syrup.SugarsProvenance.Source.Key == "wartman");
    }

    [Fact]
    public void OnlyTheListedFoodsHaveADextroseEquivalent() =>
        Assert.Equal(DextroseEquivalents.Select(row => row.Data.Item1), s_all.Where(food => food.DextroseEquivalent is not null).Select(food => food.Id));

    [Theory]
    [MemberData(nameof(DextroseEquivalents))]
    public void ADextroseEquivalentLeavesTheHigherSaccharidesTheirReducingEnds(string id, double equivalent, string says)
    {
        Assert.NotEmpty(says);
        // The arithmetic of the definition on the raw row: a gram of dry solids holds DE/18016 moles of reducing ends. Glucose and
        // fructose 180.156 g/mol, maltose and other disaccharides 342.296 (sums of atomic masses). Sucrose has no reducing end.
        Dictionary<string, string> row = Assert.Single(Tables.Ingredients, row => row["id"] == id);
        double Percent(string name) => double.Parse(row[name + "_percent"], CultureInfo.InvariantCulture);
        Assert.Equal(equivalent, double.Parse(row["dextrose_equivalent"], CultureInfo.InvariantCulture));
        double moles = equivalent / 180.16 * (100 - Percent("water")) / 100;
        double left = moles - (Percent("glucose") + Percent("fructose")) / 180.156 - (Percent("maltose") + Percent("other_sugars")) / 342.296;
        Assert.True(left > 0, $"{id}: the sugars alone have more reducing ends than DE {row["dextrose_equivalent"]} gives");
        Assert.InRange(Percent("higher_saccharides") / left, 504, double.MaxValue); // a trisaccharide is the lightest of them
    }

    [Fact]
    public void EveryKindOfEvidenceHasACompositionSpread() =>
        Assert.Equal(Enum.GetValues<Evidence>().Select(kind => kind.ToWord()).Order(StringComparer.Ordinal),
            Tables.CompositionSpreads.Select(row => row["evidence"]).Order(StringComparer.Ordinal));

    [Fact]
    public void EveryClassHasASpreadForEveryPacking()
    {
        foreach (IngredientClass @class in Enum.GetValues<IngredientClass>())
        {
            foreach (Packing packing in Enum.GetValues<Packing>())
                Assert.InRange(TechniqueSpreads.For(@class, packing), 0.001, 0.2);
        }
        Assert.Equal(0.07, TechniqueSpreads.For(IngredientClass.Powder, Packing.Spooned));
        Assert.Equal(0.06, TechniqueSpreads.For(IngredientClass.Powder, Packing.Sifted));
        Assert.Equal(0.05, TechniqueSpreads.For(IngredientClass.Powder, Packing.Packed));
    }
}
