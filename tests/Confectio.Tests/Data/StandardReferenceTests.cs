using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Data;

/// <summary>
/// The table of ingredients and the table of weights against copies of the USDA National Nutrient Database for Standard
/// Reference, Release 28 (2015) and earlier (Oracles/usda-sr). Every difference is listed with its reason.
/// </summary>
public sealed class StandardReferenceTests
{
    /// <summary>Half a unit of the last printed digit.</summary>
    private const double Printed = 0.005 + 1e-9;

    /// <summary>A constituent found by difference carries the rounding of two others.</summary>
    private const double ByDifference = 0.01 + 1e-9;

    private static readonly Dictionary<string, Dictionary<string, string>> s_reference =
        Tables.StandardReference.ToDictionary(row => row["ndb"]);

    // Rows read in Release 26, which the extract does not hold.
    private static readonly string[] s_notInTheExtract = ["butter-oil", "shortening-high-ratio", "chocolate-semisweet", "chocolate-white"];

    // The source's own figures do not add up to 100; what is missing stands in "other".
    private static readonly Dictionary<string, double> s_sourceDoesNotClose = new()
    {
        ["malt-extract"] = 0.10, // water, protein, fat, ash and carbohydrate add up to 99.90
        ["spread-hazelnut"] = 0.19, // 99.81
        ["baking-soda"] = 62.9, // carbohydrate 0 and ash 36.9: the carbonic acid and water of the bicarbonate go unreported
    };

    // Total sugars of the source are not ours, on purpose.
    private static readonly Dictionary<string, string> s_sugarsDiffer = new()
    {
        ["syrup-corn-light"] = "the source counts every saccharide of a glucose syrup as a sugar",
        ["syrup-corn-dark"] = "the source counts every saccharide of a glucose syrup as a sugar",
        ["malt-extract"] = "the source counts the dextrin as sugar",
        ["syrup-maple"] = "the source's sugars (67.90) exceed its carbohydrate by difference (67.04)",
        ["milk-whole"] = "the source's sugars (5.05) exceed its carbohydrate by difference (4.80)",
        ["milk-skim"] = "the source's sugars (5.09) exceed its carbohydrate by difference (4.96)",
        ["creamer-powder"] = "the source counts glucose syrup as sugar",
        ["creamer-liquid"] = "the source counts glucose syrup as sugar",
    };

    // The source gives no sugars; the split is estimated.
    private static readonly string[] s_sugarsNotGiven = ["sauce-caramel", "vanilla-imitation", "coconut-milk", "coconut-cream"];

    public static TheoryData<string> Foods =>
        new(IngredientTable.BuiltIn.All.Where(food => food.StandardReferenceNumber is not null && !s_notInTheExtract.Contains(food.Id)).Select(food => food.Id));

    [Fact]
    public void EveryFoodNumberIsInTheExtractButForTheListedOnes()
    {
        string[] notKept =
        [
            "43216", // tabletop fructose: its sugars (92.7) do not fill its carbohydrate (100); only its weights are used
            "19911", // Canadian maple syrup: only its weight is used, with that of maple syrup
            "20481", "20581", // unenriched and unbleached plain flour: the proximates of 20081
        ];
        Assert.Equal(s_reference.Keys.Except(notKept).Order(StringComparer.Ordinal),
            Foods.Select(row => IngredientTable.BuiltIn.Get(row.Data).StandardReferenceNumber!).Order(StringComparer.Ordinal));
        foreach (string id in s_notInTheExtract)
        {
            Ingredient food = IngredientTable.BuiltIn.Get(id);
            Assert.False(s_reference.ContainsKey(food.StandardReferenceNumber!));
            Assert.Equal("usda-sr-26", food.CompositionProvenance.Source.Key);
        }
    }

    [Theory]
    [MemberData(nameof(Foods))]
    public void TheCompositionIsThatOfTheSource(string id)
    {
        Ingredient food = IngredientTable.BuiltIn.Get(id);
        Composition made = food.Composition;
        Dictionary<string, string> source = s_reference[food.StandardReferenceNumber!];

        Near(source["water_g"], made[Constituent.Water], Printed, "water");
        Near(source["fat_g"], made[Constituent.Fat], Printed, "fat");
        Near(source["protein_g"], made[Constituent.Protein], Printed, "protein");
        Near(source["ash_g"], made[Constituent.Salt] + made[Constituent.OtherAsh], Printed, "ash");
        if (source["fibre_g"].Length > 0)
            Near(source["fibre_g"], made[Constituent.Fibre], Printed, "fibre");
        else
            Assert.Equal(0, made[Constituent.Fibre]); // none is given, so none is claimed; the note says so

        double carbohydrate = made.Sugars + made[Constituent.HigherSaccharides] + made[Constituent.Starch] + made[Constituent.Fibre]
            + made[Constituent.Polyols] + made[Constituent.Glycerol] + made[Constituent.Acids] + made[Constituent.Other];
        double gap = s_sourceDoesNotClose.GetValueOrDefault(id);
        Near(Number(source["carbohydrate_g"]) + gap, carbohydrate, ByDifference, "carbohydrate");

        double proximates = Number(source["water_g"]) + Number(source["fat_g"]) + Number(source["protein_g"]) + Number(source["ash_g"]) + Number(source["carbohydrate_g"]);
        if (gap > 0)
            Near(100 - proximates, gap / 100, ByDifference, "what the source leaves open");
        else
            Near(100 - proximates, made[Constituent.Alcohol], 2 * ByDifference, "alcohol, by difference");
    }

    [Theory]
    [MemberData(nameof(Foods))]
    public void TheSugarsAddUpToThoseOfTheSource(string id)
    {
        Ingredient food = IngredientTable.BuiltIn.Get(id);
        string total = s_reference[food.StandardReferenceNumber!]["sugars_g"];
        if (s_sugarsNotGiven.Contains(id))
        {
            Assert.Empty(total);
            Assert.NotEqual(Confectio.Sources.Evidence.Compiled, food.SugarsProvenance.Evidence);
        }
        else if (s_sugarsDiffer.ContainsKey(id))
        {
            Assert.True(food.Composition.Sugars * 100 < Number(total) - Printed);
        }
        else
        {
            Near(total.Length > 0 ? total : "0", food.Composition.Sugars, Printed, "sugars");
        }
    }

    [Fact]
    public void EveryListedExceptionIsAFoodOfTheTable() =>
        Assert.All(s_sourceDoesNotClose.Keys.Concat(s_sugarsDiffer.Keys).Concat(s_sugarsNotGiven), id => Assert.Contains(id, Foods.Select(row => row.Data)));

    // ------------------------------------------------------------------------------------------------ household weights

    private const double Cup = 236.5882365; // 231 cubic inches / 16

    private static readonly (string Word, double Millilitres)[] s_units =
    [
        ("cup", Cup), ("tbsp", Cup / 16), ("tablespoon", Cup / 16), ("tsp", Cup / 48), ("fl oz", Cup / 8),
        ("pint", Cup * 2), ("quart", Cup * 4), ("milliliter", 1), ("liter", 1000),
    ];

    // Household volumes that a kitchen cannot use, or that are of a food we do not keep.
    private static readonly Dictionary<(string Ndb, string Measure), string> s_unusable = new()
    {
        [("19334", "tsp brownulated")] = "a granulated brown sugar: another product",
        [("19860", "tablespoon (label 2011)")] = "from the label of one maker",
        [("20481", "cup")] = "unenriched flour: the same cup as 20081, a food we do not keep apart",
        [("20581", "cup")] = "unbleached flour: the same cup as 20081, a food we do not keep apart",
        [("09302", "pint as purchased, yields")] = "bought in a pint, weighed after cleaning: not a filled measure",
        [("09316", "pint as purchased, yields")] = "bought in a pint, weighed after cleaning: not a filled measure",
        [("09063", "cup, with pits, yields")] = "weighed after stoning: not a filled measure",
        [("12036", "cup, with hulls, edible yield")] = "seeds in their hulls",
        [("02030", "tsp, whole")] = "peppercorns: a food we do not keep",
        [("12155", "cup, in shell, edible yield (7 nuts)")] = "nuts in the shell",
    };

    public static TheoryData<string, string, string, string> HouseholdVolumes
    {
        get
        {
            TheoryData<string, string, string, string> data = new();
            foreach (Dictionary<string, string> row in Tables.AllHouseholdWeights.Where(row => Volume(row["amount"], row["measure"]) is not null))
                data.Add(row["ndb"], row["amount"], row["measure"], row["grams"]);
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(HouseholdVolumes))]
    public void EveryUsableHouseholdVolumeIsInTheTableOfWeights(string ndb, string amount, string measure, string grams)
    {
        double millilitres = Volume(amount, measure)!.Value;
        bool found = Facts(ndb).Any(fact => fact.Amount.IsVolume && fact.Grams.Likely == Number(grams)
            // A third is printed as .333; nothing else is off by so much.
            && Math.Abs((fact.Amount.Millilitres(fact.MeasuringSystem ?? MeasuringSystem.Metric) / millilitres) - 1) < (amount == ".333" ? 2e-3 : 1e-9));
        Assert.Equal(!s_unusable.ContainsKey((ndb, measure)), found);
    }

    [Fact]
    public void EveryUnusableMeasureIsInTheSource() =>
        Assert.All(s_unusable.Keys, key => Assert.Contains(Tables.AllHouseholdWeights, row => row["ndb"] == key.Ndb && row["measure"] == key.Measure));

    [Fact]
    public void EveryWeightThatNamesTheSourceIsInIt()
    {
        // The other way round: a figure we call theirs is theirs, with its samples and deviation.
        WeightFact[] ours = [.. IngredientTable.BuiltIn.All.SelectMany(food => food.Weights).Where(fact => fact.Provenance.Source.Key == "usda-sr")];
        Assert.True(ours.Length > 200);
        Assert.All(ours, fact =>
        {
            string ndb = FoodNumber(fact)!;
            Assert.Contains(Tables.AllHouseholdWeights, row => row["ndb"] == ndb
                && Math.Abs((Number(row["grams"]) / (fact.Amount.IsPiece ? Number(row["amount"]) : 1)) - fact.Grams.Likely) < 1e-9
                && (fact.Samples is null || Number(row["samples"]) == fact.Samples)
                && (fact.StandardDeviationGrams is null || Number(row["sd_g"]) == fact.StandardDeviationGrams)
                && (fact.Amount.IsPiece || Volume(row["amount"], row["measure"]) is not double volume
                    || Math.Abs((fact.Millilitres / volume) - 1) < 2e-3));
        });
    }

    private static IEnumerable<WeightFact> Facts(string ndb) =>
        IngredientTable.BuiltIn.All.SelectMany(food => food.Weights).Where(fact => fact.Provenance.Source.Key == "usda-sr" && FoodNumber(fact) == ndb);

    private static string? FoodNumber(WeightFact fact)
    {
        string locator = fact.Provenance.Locator;
        return locator.StartsWith("NDB ", StringComparison.Ordinal) ? locator.Substring(4, 5) : null;
    }

    private static double? Volume(string amount, string measure)
    {
        string words = measure.Replace("serving ", "", StringComparison.Ordinal).ToLowerInvariant();
        double count = Number(amount);
        if (words.StartsWith("1/4 ", StringComparison.Ordinal))
            (count, words) = (count / 4, words[4..]);
        else if (words.Length > 2 && char.IsAsciiDigit(words[0]) && words[1] == ' ')
            (count, words) = (count * (words[0] - '0'), words[2..]);
        foreach ((string word, double millilitres) in s_units)
        {
            if (words.StartsWith(word, StringComparison.Ordinal) && (words.Length == word.Length || words[word.Length] is ' ' or ','))
                return count * millilitres;
        }
        return null;
    }

    private static void Near(string percent, double fraction, double tolerance, string what) => Near(Number(percent), fraction, tolerance, what);

    private static void Near(double percent, double fraction, double tolerance, string what) =>
        Assert.True(Math.Abs((fraction * 100) - percent) <= tolerance,
            string.Create(CultureInfo.InvariantCulture, $"{what}: {fraction * 100:0.####} in the table, {percent:0.####} in the source"));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
