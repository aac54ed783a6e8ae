using System.Reflection;
using System.Text;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>The built-in foods are read when somebody asks for them, and are then what reading their whole tables gives.</summary>
public sealed class CarriedFoodsTests
{
    public static TheoryData<string> Carried => [.. typeof(IngredientTable).Assembly.GetManifestResourceNames()
        .Where(name => name.EndsWith(".csv", StringComparison.Ordinal)).Select(name => name["Confectio.Data.".Length..])];

    // The general reader is Sep, behind the guard of lines: another parser than the one for carried tables.
    [Theory]
    [MemberData(nameof(Carried))]
    public void EveryCarriedTableIsReadAsAStrangersIs(string fileName)
    {
        List<string> carried = [], strangers = [];
        using (TextReader text = EmbeddedTable.Open(fileName))
            DelimitedTable.ReadCarried(text, [], table => Noting(carried, table));
        ProblemList problems = [];
        using (TextReader text = EmbeddedTable.Open(fileName))
            DelimitedTable.Read(text, problems, table => Noting(strangers, table));
        Assert.Empty(problems);
        Assert.NotEmpty(strangers);
        Assert.Equal(strangers, carried);

        // And a row at a time, in any order: no line is blank, and none is missed.
        CarriedRows rows = new(fileName, EmbeddedTable.Bytes(fileName));
        LineCells cells = new();
        Assert.Equal(strangers.Count - 1, rows.Count);
        for (int i = rows.Count - 1; i >= 0; i--)
            Assert.Equal(strangers[i + 1], Noted(rows.Row(i, cells)));
    }

    [Fact]
    public void EveryFoodIsWhatReadingTheWholeTablesGives()
    {
        // This also reads every row strictly: a mistake in a table of the library is a failure here, with its line and column.
        IngredientTable whole = Whole(), lazy = IngredientTable.BuiltIn;
        Assert.Equal(whole.All.Select(food => food.Id), lazy.All.Select(food => food.Id));
        foreach ((Ingredient expected, Ingredient actual) in whole.All.Zip(lazy.All))
        {
            // Backwards and forwards: what is asked first must not matter.
            Assert.Equal(expected.Weights.Select(Told), actual.Weights.Select(Told));
            Assert.Equal(Told(expected), Told(actual));
            Assert.Equal(expected.Densities.Select(density => density.ToString()), actual.Densities.Select(density => density.ToString()));
            Assert.Equal(expected.Pieces.Select(piece => piece.ToString()), actual.Pieces.Select(piece => piece.ToString()));
            Assert.True(expected.IsMadeAs(actual));
            Assert.All(Enum.GetValues<Constituent>(), constituent =>
            {
                Assert.Equal(expected.Composition[constituent], actual.Composition[constituent]);
                Assert.Equal(expected.EvidenceOf(constituent), actual.EvidenceOf(constituent));
            });
        }
    }

    [Fact]
    public void WhatNobodyAsksForIsNotRead()
    {
        IngredientTable table = new(CarriedFoods.Read());
        Conversion.Of(table.Get("powdered sugar"), Packing.Sifted, MeasuringSystem.UsCustomary).ToMass(Amount.Parse("1 cup"));
        // Names are matched by class, too ("whole milk, cold"): that must not read compositions either.
        Assert.Equal("milk-whole", table.MatchName("cold whole milk").Ingredient?.Id);
        Assert.NotEmpty(table.Suggest("powdred sugar"));
        Assert.Equal([], table.All.Where(IsRead).Select(food => food.Id));
        _ = table.Get("powdered sugar").Composition;
        Assert.Equal(["sugar-icing"], table.All.Where(IsRead).Select(food => food.Id));
        _ = table.WithoutWeightsFrom("usda-sr").WithAmericanNames();
        Assert.Equal(["sugar-icing"], table.All.Where(IsRead).Select(food => food.Id));
    }

    [Fact]
    public void AllWhoAskAtOnceGetTheSameObjects()
    {
        IngredientTable table = new(CarriedFoods.Read());
        foreach (Ingredient food in table.All)
        {
            object[][] told = new object[4][];
            using Barrier together = new(told.Length);
            Thread[] threads = [.. Enumerable.Range(0, told.Length).Select(i => new Thread(() =>
            {
                together.SignalAndWait();
                told[i] = [food.Composition, food.Weights, food.Densities, food.Pieces, food.Aliases,
                    food.TryGetNearestDensity(food.DefaultPacking, out BulkDensity? density) ? density : food];
            }))];
            Array.ForEach(threads, thread => thread.Start());
            Array.ForEach(threads, thread => thread.Join());
            Assert.All(told, others => Assert.All(others.Zip(told[0]), pair => Assert.Same(pair.Second, pair.First)));
        }
    }

    [Theory]
    [InlineData("water_percent", "99x", "'99x' is not a number")]
    [InlineData("water_percent", "50", "add up to 50 %")]
    [InlineData("default_packing", "heaped up", "'heaped up' is not a packing")]
    [InlineData("kind", "heard", "'heard' is not a kind of evidence")]
    public void AMistakeInARowStopsWhoAsksForIt(string column, string wrong, string message)
    {
        Dictionary<string, string> row = new()
        {
            ["id"] = "well-water", ["name"] = "well water", ["class"] = "liquid", ["default_packing"] = "levelled",
            ["water_percent"] = "100", ["source"] = "confectio", ["kind"] = "estimated",
        };
        row[column] = wrong;
        Ingredient[] foods = CarriedFoods.Read(Encoding.UTF8.GetBytes($"{string.Join(',', row.Keys)}\n{string.Join(',', row.Values)}\n"),
            "ingredient,amount\n"u8.ToArray());
        Assert.Equal("well water", Assert.Single(foods).Name);
        for (int i = 0; i < 2; i++)
        {
            string told = Assert.Throws<InvalidOperationException>(() => foods[0].Composition).Message;
            Assert.StartsWith("ingredients.csv: line 2", told, StringComparison.Ordinal);
            Assert.Contains(message, told, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void AWeightOfNoFoodAndANameThatCannotBeReadStopTheTable()
    {
        byte[] water = "id,name,class\nwell-water,well water,liquid\n"u8.ToArray();
        Assert.Contains("weights.csv: 'wall-water'", Assert.Throws<InvalidOperationException>(() =>
            CarriedFoods.Read(water, "ingredient\nwall-water\n"u8.ToArray())).Message, StringComparison.Ordinal);
        Assert.Contains("'Well Water' is not an id", Assert.Throws<InvalidOperationException>(() =>
            CarriedFoods.Read("id,name,class\nWell Water,well water,liquid\n"u8.ToArray(), "ingredient\n"u8.ToArray())).Message,
            StringComparison.Ordinal);
        Ingredient food = Assert.Single(CarriedFoods.Read(water,
            "ingredient,amount,packing,grams,kind,source\nwell-water,1 cup,levelled,237,compiled,usda-sr\n"u8.ToArray()));
        Assert.Contains("weights.csv: line 2, column system", Assert.Throws<InvalidOperationException>(() => food.Densities).Message,
            StringComparison.Ordinal);
    }

    private static DelimitedTable.RowReader Noting(List<string> rows, DelimitedTable table)
    {
        rows.Add(string.Join('\u001F', table.Header.Prepend($"{table.Line}")));
        return row => rows.Add(Noted(row));
    }

    private static string Noted(DelimitedRow row)
    {
        StringBuilder noted = new($"{row.Line}");
        for (int i = 0; i < row.Count; i++)
            noted.Append('\u001F').Append(row[i]);
        return noted.ToString();
    }

    private static IngredientTable Whole()
    {
        using TextReader ingredients = EmbeddedTable.Open("ingredients.csv");
        using TextReader weights = EmbeddedTable.Open("weights.csv");
        return IngredientTable.Empty.LayerIngredients(ingredients).OrThrow().LayerWeights(weights).OrThrow();
    }

    private static bool IsRead(Ingredient food) =>
        typeof(Ingredient).GetField("_record", BindingFlags.NonPublic | BindingFlags.Instance)!.GetValue(food) is not null;

    private static string Told(Ingredient food) => string.Join('\n', food.Name, food.Class, food.DefaultPacking, food.StandardReferenceNumber,
        food.DextroseEquivalent, food.Composition, food.Composition.MilkFat, food.CompositionProvenance, food.CompositionProvenance.Note,
        food.SugarsProvenance, food.Note, string.Join('|', food.Aliases.Select(alias => $"{alias.Text} {alias.Region}")),
        string.Join('|', food.Allergens), string.Join('|', food.OftenContains));

    private static string Told(WeightFact fact) => $"{fact} {fact.Grams:R} {fact.RoundingHalfUnit} {fact.Samples} {fact.StandardDeviationGrams} "
        + $"{fact.Votes} {fact.MeasuringSystem} {fact.Packing} {fact.Provenance.Note}";
}
