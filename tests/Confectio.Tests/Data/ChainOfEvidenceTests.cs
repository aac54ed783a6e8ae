using Confectio.Eggs;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Data;

/// <summary>A figure is never of a better kind than the worst it was made from: the chain is walked from every row to its ends.</summary>
public sealed class ChainOfEvidenceTests
{
    // Where a kind of evidence stands, and the column that says what it was made from.
    private static readonly (string Table, string Key, string Kind, string MadeFrom)[] s_columns =
    [
        ("ingredients", "id", "kind", "made_from"),
        ("ingredients", "id", "sugars_kind", "sugars_made_from"),
        ("weights", "ingredient", "kind", "made_from"),
        ("egg_fractions", "part", "kind", "made_from"), ("icing_densities", "name", "kind", "made_from"),
        ("egg_sizes", "size", "parts_kind", "parts_made_from"),
        ("kinetic_sets", "key", "kind", "made_from"),
        ("substances", "key", "kind", "made_from"),
        ("equations", "key", "kind", "made_from"),
        ("coefficients", "equation", "kind", "made_from"),
        ("packing_ratios", "class", "kind", "made_from"), ("saturates", "ingredient", "kind", "made_from"),
    ];

    // What a density counts as one: however a row shares it out, the volume is the same.
    private static readonly string[] s_oneVolume = ["starch", "other", "acids", "higher_saccharides", "maltose", "salt", "other_ash", "milk_fat"];

    private static readonly Dictionary<string, Dictionary<string, string>> s_foods = Tables.Ingredients.ToDictionary(row => row["id"]);

    /// <summary>0 was published, 1 is common practice, 2 was estimated or recalled.</summary>
    private static int Rank(string kind)
    {
        Assert.True(EvidenceText.TryRead(kind, out Evidence evidence), kind);
        return evidence switch { Evidence.CommonPractice => 1, Evidence.Estimated or Evidence.FromMemory => 2, _ => 0 };
    }

    private static int RankOfReference(string reference, int depth)
    {
        Assert.True(depth < 10, reference + ": the chain runs in a circle");
        string[] parts = reference.Split(':');
        switch (parts[0])
        {
            case "definition":
                return 0;
            case "source":
                Assert.Equal(parts[1], Bibliography.Get(parts[1]).Key);
                return parts[1] switch { "memory" or "confectio" => 2, "trade" => 1, _ => 0 };
            case "composition":
                return RankOfRow(s_foods[parts[1]], "kind", "made_from", depth);
            case "sugars":
                Dictionary<string, string> food = s_foods[parts[1]];
                return food["sugars_kind"].Length == 0 ? RankOfRow(food, "kind", "made_from", depth) : RankOfRow(food, "sugars_kind", "sugars_made_from", depth);
            default:
                Assert.Single(parts);
                return Rank(reference);
        }
    }

    private static int RankOfRow(Dictionary<string, string> row, string kind, string madeFrom, int depth) =>
        Math.Max(Rank(row[kind]), MadeFrom(row, madeFrom).Select(reference => RankOfReference(reference, depth + 1)).DefaultIfEmpty(0).Max());

    private static string[] MadeFrom(Dictionary<string, string> row, string column) => row[column].Split('|', StringSplitOptions.RemoveEmptyEntries);

    [Fact]
    public void NothingIsSurerThanTheWorstItWasMadeFrom()
    {
        List<string> wrong = [];
        int walked = 0;
        foreach ((string table, string key, string kind, string madeFrom) in s_columns)
        {
            foreach (Dictionary<string, string> row in Tables.Of(table).Where(row => row[kind].Length > 0))
            {
                if (row[kind] == "computed" && row[madeFrom].Length == 0)
                    wrong.Add($"{table} {row[key]} {kind}: computed from nothing");
                int worst = MadeFrom(row, madeFrom).Select(reference => RankOfReference(reference, 0)).DefaultIfEmpty(0).Max();
                walked += row[madeFrom].Length > 0 ? 1 : 0;
                if (Rank(row[kind]) < worst)
                    wrong.Add($"{table} {row[key]} {kind}: {row[kind]}, made from {row[madeFrom]}");
            }
        }
        Assert.Empty(wrong);
        Assert.True(walked > 150);
    }

    // No table is forgotten: whatever has a computed row is walked.
    [Fact]
    public void EveryTableWithAComputedFigureIsWalked() => Assert.All(Tables.Names, name => Assert.All(Tables.Of(name).SelectMany(row => row.Where(field => field.Value == "computed" && field.Key.EndsWith("kind", StringComparison.Ordinal))),
        field => Assert.Contains(s_columns, column => column.Table == name && column.Kind == field.Key)));

    // A set that borrows its z names the study it is from; Garibaldi and others (1969) have z 4.6, 4.2 to 5.3.
    [Fact]
    public void ABorrowedSlopeIsInTheChain() => Assert.All(Tables.Of("kinetic_sets"), row =>
    {
        Assert.Equal(row["note"].Contains("z borrowed from Garibaldi", StringComparison.Ordinal), row["made_from"].Contains("source:garibaldi-1969", StringComparison.Ordinal));
        Assert.Equal(row["note"].Contains("recalled", StringComparison.Ordinal), row["made_from"].Contains("from-memory", StringComparison.Ordinal));
        if (row["made_from"].Length > 0)
            Assert.Contains("source:" + row["source"], row["made_from"], StringComparison.Ordinal);
    });

    [Fact]
    public void ASourceOfOurOwnOrOfTheTradeIsNeverPublished() => Assert.All(Tables.Names.SelectMany(name => Tables.Of(name)
        .Where(row => row.ContainsKey("source") && row.ContainsKey("kind") && row["source"] is "trade" or "memory").Select(row => (name, row))),
        pair => Assert.True(Rank(pair.row["kind"]) >= 1, pair.name + ": " + string.Join(',', pair.row.Values)));

    [Fact]
    public void AComputedDensityNamesItsOwnComposition() => Assert.All(
        Tables.Weights.Where(row => row["source"] == "choi-okos-1986"), row =>
        {
            Assert.Equal($"source:choi-okos-1986|composition:{row["ingredient"]}", row["made_from"]);
            foreach (string guess in s_foods[row["ingredient"]]["guessed"].Split('|', StringSplitOptions.RemoveEmptyEntries))
                Assert.Contains(guess.Split(':')[0], s_oneVolume);
        });

    [Theory]
    [InlineData("cocoa-natural", Constituent.Starch, Evidence.Computed)]
    [InlineData("cocoa-natural", Constituent.Fat, Evidence.Compiled)]
    [InlineData("chocolate-semisweet", Constituent.Salt, Evidence.Computed)]
    [InlineData("jam", Constituent.Acids, Evidence.Estimated)]
    [InlineData("syrup-golden", Constituent.Glucose, Evidence.FromMemory)]
    [InlineData("juice-lemon", Constituent.Acids, Evidence.Computed)]
    [InlineData("juice-lemon", Constituent.Glucose, Evidence.Computed)]
    [InlineData("syrup-corn-light", Constituent.HigherSaccharides, Evidence.Estimated)]
    [InlineData("syrup-invert-medium", Constituent.Sucrose, Evidence.Compiled)]
    [InlineData("butter-unsalted", Constituent.Water, Evidence.Compiled)]
    public void WhatIsGuessedWithinARowIsNoBetterThanTheGuess(string id, Constituent constituent, Evidence evidence) =>
        Assert.Equal(evidence, IngredientTable.BuiltIn.Get(id).EvidenceOf(constituent));

    [Fact]
    public void ANoteThatOwnsToAGuessIsInTheColumn() => Assert.All(Tables.Ingredients.Where(row => Rank(row["kind"]) == 0), row =>
    {
        Assert.Equal(row["note"].Contains("Milk fat estimated", StringComparison.Ordinal), row["guessed"].Contains("milk_fat:estimated", StringComparison.Ordinal));
        if (row["note"].Contains("64.9 % is starch", StringComparison.Ordinal))
            Assert.Contains("starch:computed", row["guessed"], StringComparison.Ordinal);
        if (row["note"].Contains("salt is held at the ash", StringComparison.Ordinal))
            Assert.Contains("salt:estimated", row["guessed"], StringComparison.Ordinal);
    });

    [Fact]
    public void SaltThatIsLessThanTheSodiumSaysSo()
    {
        // Sodium x 2.5 (Regulation (EU) 1169/2011, Annex I). It is not salt in leavens and tartar; elsewhere it is held at the ash in three rows.
        string[] notSalt = ["cream-of-tartar", "baking-soda", "baking-powder", "baking-powder-low-sodium"];
        Dictionary<string, Dictionary<string, string>> reference = Tables.StandardReference.ToDictionary(row => row["ndb"]);
        string[] held = [.. Tables.Ingredients.Where(row => reference.TryGetValue(row["ndb"], out Dictionary<string, string>? source) && source["sodium_mg"].Length > 0
            && Number(source["sodium_mg"]) * 0.0025 > Number(row["salt_percent"]) + 0.01 && !notSalt.Contains(row["id"])).Select(row => row["id"])];
        Assert.Equal(["sauce-caramel", "pectin-dry-mix", "marshmallow-cream"], held);
        Assert.All(held, id => Assert.Contains("salt is held at the ash", s_foods[id]["note"], StringComparison.Ordinal));
    }

    [Fact]
    public void GuessesThatCannotBeReadAreReported()
    {
        const string header = "id,name,class,default_packing,water_percent,sucrose_percent,guessed,source,kind\n";
        IngredientTable table = IngredientTable.BuiltIn.LayerIngredients(new StringReader(header + "a,a glaze,syrup,levelled,20,80,water:estimated|milk_fat:estimated,mine,measured\n"
            + "b,b glaze,syrup,levelled,20,80,sand:estimated,mine,measured\nc,c glaze,syrup,levelled,20,80,water:surely,mine,measured\nd,d glaze,syrup,levelled,20,80,water,mine,measured\n")).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Equal(Evidence.Estimated, table.Get("a").EvidenceOf(Constituent.Water));
        Assert.Equal(Evidence.Measured, table.Get("a").EvidenceOf(Constituent.Sucrose));
        Assert.Equal([3, 4, 5], problems.Where(problem => problem.Column == "guessed").Select(problem => problem.Line));
    }

    // USDA SR28, weight file: figures that cannot be true of the food, or are of another one. They stand in the table and not in the density.
    [Theory]
    [InlineData("syrup-agave", Packing.Levelled, 55, 1.397)] // 1/4 cup: 0.93 g/mL of a syrup of 77 % solids
    [InlineData("vanilla-imitation-alcohol-free", Packing.Levelled, 13, 1.0526)] // 0.88 g/mL of a watery syrup; its parts give 1.05
    [InlineData("coconut-milk", Packing.Levelled, 226, 1.006)] // 0.955 g/mL; its fat and water give 1.00
    [InlineData("water", Packing.Levelled, 237, 0.998)] // above the density of water, 0.9982 g/mL at 20 °C
    [InlineData("oil-vegetable", Packing.Levelled, 209, 0.917)] // HERR 41: a cup not quite full; oils are 0.91 to 0.92
    [InlineData("sorbitol-syrup", Packing.Levelled, 135, 1.29)] // polyols reckoned as carbohydrate
    [InlineData("chocolate-semisweet", Packing.Whole, 182, 0.710)] // large chips
    public void WhatIsKnownToBeWrongIsKeptAndDoesNotVote(string id, Packing packing, double grams, double density)
    {
        BulkDensity known = IngredientTable.BuiltIn.Get(id).Density(packing);
        WeightFact fact = Assert.Single(known.Facts, fact => fact.Grams.Likely == grams);
        Assert.False(fact.Votes);
        Assert.DoesNotContain(fact, known.ContributingFigures);
        Assert.Contains("does not vote", fact.Provenance.Note, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(density, known.GramsPerMillilitre.Likely, 0.01 * density);
    }

    [Fact]
    public void AFigureThatDoesNotVoteGivesNoDensityAlone()
    {
        const string header = "ingredient,amount,packing,grams,kind,source,votes\n";
        IngredientTable table = IngredientTable.BuiltIn.LayerWeights(new StringReader(header + "sugar-pearl,100 mL,ground,50,measured,mine,no\nsugar-pearl,100 mL,packed,50,measured,mine,maybe\n")).Told(out IReadOnlyList<Problem> problems)!;
        Assert.False(table.Get("sugar-pearl").TryGetDensity(Packing.Ground, out _));
        Assert.Contains(table.Get("sugar-pearl").Weights, fact => !fact.Votes);
        Assert.Equal("votes", Assert.Single(problems).Column);
    }

    // Wartman, Bridges and Eliason, Journal of Chemical and Engineering Data 25 (1980), Table I: per cent of the dry substance.
    [Theory]
    [InlineData("syrup-hfcs-42", 70.7, 43.2, 49.0, 0, 3.9, 3.9)]
    [InlineData("syrup-hfcs-55", 76.9, 55.4, 40.3, 0, 3.0, 1.3)]
    [InlineData("syrup-invert-medium", 77.9, 28.8, 28.6, 42.6, 0, 0)]
    [InlineData("syrup-glucose-de64", 82.0, 0, 38.2, 0, 29.7, 32.1)]
    public void TheSyrupsAreThoseOfTheAnalyses(string id, double dry, double fructose, double glucose, double sucrose, double two, double more)
    {
        Composition made = IngredientTable.BuiltIn.Get(id).Composition;
        Assert.Equal(100 - dry, made[Constituent.Water] * 100, 1e-9);
        foreach ((Constituent constituent, double share) in new[] { (Constituent.Fructose, fructose), (Constituent.Glucose, glucose), (Constituent.Sucrose, sucrose), (Constituent.Maltose, two), (Constituent.HigherSaccharides, more) })
            Assert.Equal(dry * share / 100, made[constituent] * 100, 0.0051);
    }

    // USDA SR28, weight file: one US cup, or one tablespoon.
    [Theory]
    [InlineData("shortening-high-ratio", Packing.Packed, 205)]
    [InlineData("chocolate-semisweet", Packing.Whole, 168)]
    [InlineData("chocolate-semisweet", Packing.Miniature, 173)]
    [InlineData("flour-rice", Packing.Spooned, 158)]
    [InlineData("zest-lemon", Packing.Grated, 6.0 * 16)]
    [InlineData("zest-orange", Packing.Grated, 6.0 * 16)]
    [InlineData("coffee-instant", Packing.Levelled, 1.0 * 48)]
    public void WhatWasEstimatedAndIsPublishedIsThePublishedFigure(string id, Packing packing, double cup) =>
        Assert.Equal(cup, IngredientTable.BuiltIn.Get(id).Density(packing).GramsPerMillilitre.Likely * 236.5882365, 1e-6 * cup);

    [Fact]
    public void WhatIsWhippedHasTheSpreadOfFoams()
    {
        // Before, whipped cream was as sure as a liquid: 0.6 %.
        Assert.All(IngredientTable.BuiltIn.All.Where(food => food.TryGetDensity(Packing.Whipped, out _)),
            food => Assert.True(food.Density(Packing.Whipped).LogUncertainty >= 0.12, food.Id));
        Assert.All(IngredientTable.BuiltIn.All.Where(food => food.Class == IngredientClass.Foam).SelectMany(food => food.Densities),
            density => Assert.True(density.LogUncertainty >= 0.12));
    }

    [Fact]
    public void AMeringueHasTheSpreadOfFoams() => Assert.All(Meringue.All.SelectMany(kind => kind.FiguresOf(MeringueQuantity.FoamDensity)),
        // Twice 0.12 of the logarithm to each side; three digits are written.
        figure => Assert.True(Math.Log(figure.High / figure.Low) >= 4 * 0.12 - 0.015, figure.ToString()));

    [Theory]
    [InlineData("egg-whole", EggPart.Whole)]
    [InlineData("egg-white", EggPart.White)]
    [InlineData("egg-yolk", EggPart.Yolk)]
    public void APieceOfEggHasTheSpreadOfItsSizeClass(string id, EggPart part)
    {
        Ingredient egg = IngredientTable.BuiltIn.Get(id);
        Assert.NotEmpty(egg.Pieces);
        Assert.All(egg.Pieces, piece =>
        {
            Spread size = EggSizeSystem.Get("us").Sizes.Single(size => size.Name == piece.Piece).Grams(part);
            Assert.Equal(Math.Min(size.Low, piece.Fact.Grams.Likely - 0.5), piece.Grams.Low, 0.06); // the food table rounds to whole grams
            Assert.Equal(size.Likely, piece.Grams.Likely, 0.06);
            Assert.Equal(size.High, piece.Grams.High, 0.06);
        });
    }

    [Fact]
    public void MarzipanStandsBesideAlmondPaste()
    {
        // Both are packed: the share of air is alike, whatever the sugar. Almond paste is published: 227 g a cup (USDA SR, NDB 12071).
        Ingredient paste = IngredientTable.BuiltIn.Get("almond-paste"), marzipan = IngredientTable.BuiltIn.Get("marzipan");
        double filled = paste.Density(Packing.Packed).GramsPerMillilitre.Likely / paste.Composition.AirFreeGramsPerMillilitre;
        Assert.Equal(filled, marzipan.Density(Packing.Packed).GramsPerMillilitre.Likely / marzipan.Composition.AirFreeGramsPerMillilitre, 0.01);
    }

    [Fact]
    public void WhiteChocolateHasTheLactoseThatWasMeasured()
    {
        // Ciqual 2020, white chocolate bar: lactose 10.7, sucrose 43.4, glucose 0.18 of 100 g.
        Composition made = IngredientTable.BuiltIn.Get("chocolate-white").Composition;
        Assert.Equal(10.7 / 43.4, made[Constituent.Lactose] / made[Constituent.Sucrose], 0.001);
    }

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
