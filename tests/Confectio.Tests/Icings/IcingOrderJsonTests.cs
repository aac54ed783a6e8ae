using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Confectio.Cakes;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Tests.Cakes;
using Confectio.Tests.Consistency;
using FsCheck.Xunit;
using Json.Schema;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Icings;

/// <summary>Orders are read as they say, every mistake has its line and its path, and the schemas say what the library does.</summary>
public sealed class IcingOrderJsonTests
{
    private const string Icings = """ "icings": [{ "name": "cream", "gramsPerMillilitre": 0.8 }] """;

    private static readonly JsonSchema s_order = Schema("order.json"), s_plan = Schema("plan.json");

    private static string Wedding { get; } = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Examples", "fennmarsh-garden-wedding.json"));

    // By hand: three rounds of 4 in; the bodies are 4 in³·π(36 + 20.25 + 9).
    [Fact]
    public void TheExampleIsRead()
    {
        IcingOrder order = IcingOrder.ParseJson(Wedding, IngredientTable.BuiltIn);
        Assert.Equal(["meringue buttercream", "raspberry jam"], order.Icings.Select(icing => icing.Name));
        Assert.Equal([5, 20], order.Bowls.Select(bowl => Math.Round(bowl.Millilitres / 946.352946)));
        Assert.Equal(0.08, order.WasteFraction, 1e-15);
        IcingPlan plan = order.Plan(order.Bowls[0]);
        Assert.Equal(Math.PI * 65.25 * 4 * 16.387064, plan.Coverage.BodyMillilitres, 1e-8);
        CakeTier top = order.Cake.Tiers[2];
        Assert.Equal(3, top.Layers);
        Assert.Equal(["crumb coat", "coat"], top.Coats.Select(coat => coat.Name));
        Assert.Equal(0.4, top.Fillings[1].ThicknessCentimetres);
        Assert.Equal(8, top.Pieces[0].Count);
        Assert.Equal(EggPart.White, order.Icings[0].EggPart);
        Assert.Equal(6, order.Icings[0].Rise.Low);
        // To a gram is asked.
        Assert.All(order.Bowls.Select(order.Plan).SelectMany(one => one.Needs), need => Assert.Equal(need.PlannedGrams.Likely, need.MadeGrams - need.WasteGrams - need.LeftOverGrams, 1e-6));
    }

    // Every shape with the members it has, beside the same body made in code.
    public static TheoryData<string, string> Shapes => new()
    {
        { """ "shape": "round", "diameter": "20 cm", "height": "10 cm" """, "round, 20 × 20 cm, 10 cm high" },
        { """ "shape": "square", "side": "8 in", "height": "4 in" """, "square, 20.32 × 20.32 cm, 10.16 cm high" },
        { """ "shape": "rectangle", "width": "20 cm", "length": "30 cm", "height": "10 cm" """, "rectangle, 20 × 30 cm, 10 cm high" },
        { """ "shape": "rectangle", "width": "20 cm", "length": "30 cm", "height": "10 cm", "cornerRadius": "2 cm" """, "rectangle, 20 × 30 cm, 10 cm high" },
        { """ "shape": "oval", "width": "20 cm", "length": "15 cm", "height": "10 cm" """, "oval, 20 × 15 cm, 10 cm high" },
        { """ "shape": "regular-polygon", "sides": 6, "acrossFlats": "20 cm", "height": "10 cm" """, "hexagon, 23.09 × 20 cm, 10 cm high" },
        { """ "shape": "regular-polygon", "sides": 6, "acrossCorners": "20 cm", "height": "10 cm" """, "hexagon, 20 × 17.32 cm, 10 cm high" },
        { """ "shape": "heart", "width": "10 in", "height": "8 cm" """, "heart, 25.4 × 23.22 cm, 8 cm high" },
        { """ "shape": "petal", "lobes": 4, "lobeWidth": "10 cm", "height": "8 cm" """, CakeBody.Prism(PlanShape.Petal(4, Cm(10)), Cm(8)).ToString() },
        { """ "shape": "tapered-round", "bottomDiameter": "20 cm", "topDiameter": "16 cm", "height": "6 cm" """, CakeBody.TaperedRound(Cm(20), Cm(16), Cm(6)).ToString() },
        { """ "shape": "tapered-square", "bottomSide": "20 cm", "topSide": "14 cm", "height": "4 cm" """, CakeBody.TaperedSquare(Cm(20), Cm(14), Cm(4)).ToString() },
        { """ "shape": "half-ball", "diameter": "20 cm" """, CakeBody.HalfBall(Cm(20)).ToString() },
        { """ "shape": "ball", "diameter": "20 cm", "flatDiameter": "12 cm" """, CakeBody.Ball(Cm(20), Cm(12)).ToString() },
        { """ "shape": "ball", "diameter": "20 cm" """, CakeBody.Ball(Cm(20)).ToString() },
        { """ "shape": "cap", "ballRadius": "10 cm", "height": "4 cm" """, CakeBody.Cap(Cm(10), Cm(4)).ToString() },
        { """ "shape": "ring", "outerDiameter": "24 cm", "innerDiameter": "8 cm", "height": "9 cm" """, CakeBody.Ring(Cm(24), Cm(8), Cm(9)).ToString() },
        { """ "shape": "polygon", "outline": { "unit": "in", "points": [[0, 0], [10, 0], [10, 5], [0, 5]] }, "height": "9 cm" """, "polygon, 25.4 × 12.7 cm, 9 cm high" },
    };

    [Theory]
    [MemberData(nameof(Shapes))]
    public void EveryShapeIsRead(string members, string body)
    {
        string json = Order($$"""{ {{members}} }""");
        Assert.True(IsValid(s_order, json));
        IcingOrder order = IcingOrder.ParseJson(json, IngredientTable.BuiltIn);
        Assert.Equal(body, order.Cake.Tiers[0].Body.ToString());
        if (members.Contains("cornerRadius", StringComparison.Ordinal))
            Assert.Equal(600 - 4 * (4 - Math.PI), order.Cake.Tiers[0].Body.TopAreaSquareCentimetres, 1e-9);
    }

    [Fact]
    public void EverythingOnATierIsRead()
    {
        string json = Order("""
            { "shape": "square", "side": "20 cm", "height": "10 cm",
              "fillings": [{ "icing": "cream", "thickness": "5 mm" }, { "icing": "cream", "thickness": "1/4 in", "damIcing": "cream", "damWidth": "1 cm" }],
              "coats": [{ "icing": "cream", "thickness": "0,25 in", "edge": "sharp", "place": "side", "name": "crumb coat" }],
              "borders": [{ "icing": "cream", "kind": "full-round", "width": "8 mm", "place": "top-edge" }],
              "pieces": [{ "icing": "cream", "count": 4, "swirl": { "diameter": "3 cm", "height": "2 cm", "turns": 2, "beadWidth": "8 mm" } }],
              "drip": { "icing": "cream", "pool": "3 mm", "drips": 12, "dripLength": "4 cm" } },
            { "shape": "round", "diameter": "12 cm", "height": "8 cm", "right": "-1 cm", "back": "2 cm", "turnedDegrees": 30 },
            { "shape": "half-ball", "diameter": "12 cm", "raised": true }
            """);
        Assert.True(IsValid(s_order, json));
        Cake cake = IcingOrder.ParseJson(json, IngredientTable.BuiltIn).Cake;
        CakeTier tier = cake.Tiers[0];
        Assert.Equal(["5 mm of cream", "6.35 mm of cream in a dam of cream, 10 mm wide"], tier.Fillings.Select(filling => filling.ToString()));
        Assert.Equal((0.635, CoatEdge.Sharp, CoatPlace.Side, "crumb coat"), (tier.Coats[0].ThicknessCentimetres, tier.Coats[0].Edge, tier.Coats[0].Place, tier.Coats[0].Name));
        Assert.Equal((BorderKind.FullRound, BorderPlace.TopEdge), (tier.Borders[0].Kind, tier.Borders[0].Place));
        Assert.Equal(Swirl.UpCone(Cm(3), Cm(2), 2, Cm(0.8)).Millilitres * 4, tier.Pieces[0].Millilitres, 1e-12);
        Assert.Equal(("drip of cream: 3 mm on the top, 12 drips", 4.0), (tier.Drip!.ToString(), tier.Drip.DripLengthCentimetres));
        Assert.Equal((-1, 2, 30), (cake.Tiers[1].RightCentimetres, cake.Tiers[1].BackCentimetres, cake.Tiers[1].TurnedDegrees));
        Assert.True(cake.Tiers[2].IsRaised);
    }

    [Theory]
    [InlineData(""" "specificGravity": 0.85 """, 0.85 * 0.9982)]
    [InlineData(""" "airFreeGramsPerMillilitre": 1.288, "overrunPercent": 43.1 """, 1.288 / 1.431)]
    [InlineData(""" "gramsPerMillilitre": 0.9, "lowGramsPerMillilitre": 0.8 """, 0.9)]
    public void TheDensityIsReadInThreeWays(string members, double density)
    {
        string json = $$"""{ "confectioOrder": 1, "cupcakes": [{ "icing": "cream", "count": 3, "topDiameter": "6 cm", "thickness": "5 mm", "dome": "1 cm" }], "icings": [{ "name": "cream", {{members}} }] }""";
        Assert.True(IsValid(s_order, json));
        Assert.Equal(density, IcingOrder.ParseJson(json, IngredientTable.BuiltIn).Icings[0].GramsPerMillilitre.Likely, 1e-12);
    }

    // Each mistake with where it stands; every one in turn, and none hides the other.
    [Theory]
    [InlineData("""{ "shape": "rounded", "height": "10 cm" }""", "$.tiers[0].shape", "'rounded' is no shape")]
    [InlineData("""{ "height": "10 cm" }""", "$.tiers[0]", "shape is missing")]
    [InlineData("""{ "shape": "round", "height": "10 cm" }""", "$.tiers[0]", "diameter is missing")]
    [InlineData("""{ "shape": "round", "diameter": "20", "height": "10 cm" }""", "$.tiers[0].diameter", "'20' is no length")]
    [InlineData("""{ "shape": "round", "diameter": "20 feet", "height": "10 cm" }""", "$.tiers[0].diameter", "'20 feet' is no length")]
    [InlineData("""{ "shape": "round", "diameter": "-20 cm", "height": "10 cm" }""", "$.tiers[0].diameter", "'-20 cm' is no length")]
    [InlineData("""{ "shape": "round", "diameter": "0 cm", "height": "10 cm" }""", "$.tiers[0]", "0.001")]
    [InlineData("""{ "shape": "round", "diameter": "NaN cm", "height": "10 cm" }""", "$.tiers[0].diameter", "is no length")]
    [InlineData("""{ "shape": "round", "diameter": "20 cm", "side": "20 cm", "height": "10 cm" }""", "$.tiers[0].side", "a round has no such size; it has diameter, height")]
    [InlineData("""{ "shape": "half-ball", "diameter": "20 cm", "height": "10 cm" }""", "$.tiers[0].height", "a half-ball has no such size")]
    [InlineData("""{ "shape": "regular-polygon", "sides": 6, "height": "10 cm" }""", "$.tiers[0]", "one of acrossFlats and acrossCorners")]
    [InlineData("""{ "shape": "polygon", "outline": { "unit": "ft", "points": [[0, 0], [1, 0], [0, 1]] }, "height": "10 cm" }""", "$.tiers[0].outline.unit", "cm, mm or in is expected")]
    [InlineData("""{ "shape": "polygon", "outline": { "unit": "cm", "points": [[0, 0], [10], [0, 10]] }, "height": "10 cm" }""", "$.tiers[0].outline.points[1]", "two numbers are expected")]
    [InlineData("""{ "shape": "round", "diameter": "20 cm", "height": "10 cm", "layers": 3 }""", "$.tiers[0].layers", "3 layers have 2 fillings between them, and 0 are there")]
    [InlineData("""{ "shape": "round", "diameter": "20 cm", "height": "10 cm", "layers": 0, "filling": { "icing": "cream", "thickness": "5 mm" } }""", "$.tiers[0].layers", "from 1 to 101 layers")]
    [InlineData("""{ "shape": "round", "diameter": "20 cm", "height": "1 cm", "layers": 3, "filling": { "icing": "cream", "thickness": "5 mm" } }""", "$.tiers[0]", "must leave a height for the layers")]
    [InlineData("""{ "shape": "round", "diameter": "20 cm", "height": "10 cm", "coats": [{ "icing": "cream", "thickness": "5 mm", "edge": "fluffy" }] }""", "$.tiers[0].coats[0].edge", "'fluffy' is not one of: rounded, sharp")]
    [InlineData("""{ "shape": "round", "diameter": "20 cm", "height": "10 cm", "coats": [null] }""", "$.tiers[0].coats[0]", "null was read and an object is expected")]
    [InlineData("""{ "shape": "round", "diameter": "20 cm", "height": "10 cm", "borders": [{ "icing": "cream", "width": "5 mm" }] }""", "$.tiers[0].borders[0]", "kind is missing")]
    [InlineData("""{ "shape": "round", "diameter": 20, "height": "10 cm" }""", "$.tiers[0].diameter", "a text is expected, such as")]
    [InlineData("""{ "shape": "round", "diametre": "20 cm", "height": "10 cm" }""", "$.tiers[0].diametre", "")]
    [InlineData("""{ "shape": "round", "diameter": "10 cm", "height": "10 cm" }, { "shape": "round", "diameter": "20 cm", "height": "10 cm" }""", "$", "tier 2 (round, 20 × 20 cm, 10 cm high) cannot stand on tier 1")]
    [InlineData("""{ "shape": "round", "diameter": "20 cm", "height": "10 cm", "coats": [{ "icing": "jam", "thickness": "5 mm" }] }""", "$", "lacks jam")]
    public void AMistakeIsNamedWithItsPlace(string tiers, string path, string message)
    {
        FormatException refused = Assert.Throws<FormatException>(() => IcingOrder.ParseJson(Order(tiers), IngredientTable.BuiltIn));
        Assert.Contains(message, refused.Message, StringComparison.Ordinal);
        Assert.Contains(path, refused.Message, StringComparison.Ordinal);
        Assert.Contains("line ", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ManyMistakesAreNamedAtOnce()
    {
        string json = """
            { "confectioOrder": 1, "wastePercent": 120, "hiddenTops": "hairy",
              "tiers": [{ "shape": "round", "diameter": "20", "height": "10 cm" }, { "shape": "square", "height": "10" }],
              "icings": [{ "name": "cream" }, { "name": "jam", "gramsPerMillilitre": 7 }, { "name": "foam", "gramsPerMillilitre": 0.8,
                "formula": { "confectioFormula": 1, "lines": [{ "ingredient": "egg wite", "grams": 10 }] }, "wholeEggs": { "system": "mars", "size": "large" } }],
              "bowls": [{ "usablePercent": 70 }, { "quarts": 5 }] }
            """;
        string message = Assert.Throws<FormatException>(() => IcingOrder.ParseJson(json, IngredientTable.BuiltIn)).Message;
        Assert.All((string[])["$.wastePercent", "$.hiddenTops", "$.tiers[0].diameter", "$.tiers[1].height", "side is missing", "$.icings[0]", "$.icings[1]", "$.icings[2].formula.lines[0]",
            "$.icings[2].wholeEggs.system", "one of quarts and litres", "usablePercent is missing"], part => Assert.Contains(part, message, StringComparison.Ordinal));
    }

    // A mistake in the cake is no reason to say anything of a formula that is right.
    [Fact]
    public void AMistakeElsewhereDoesNotTakeTheFormulaAway()
    {
        string wrong = Wedding.Replace("\"diameter\": \"12 in\"", "\"diameter\": \"12 feet\"", StringComparison.Ordinal);
        string message = Assert.Throws<FormatException>(() => IcingOrder.ParseJson(wrong, IngredientTable.BuiltIn)).Message;
        Assert.Contains("$.tiers[0].diameter", message, StringComparison.Ordinal);
        Assert.DoesNotContain("$.icings", message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "")]
    [InlineData("null", "confectioOrder")]
    [InlineData("[]", "")]
    [InlineData("{}", "confectioOrder is missing")]
    [InlineData("""{ "confectioOrder": 2 }""", "version 2 was read and 1 is expected")]
    [InlineData("""{ "confectioOrder": 1 }""", "there are no cupcakes")]
    [InlineData("""{ "confectioOrder": 1, "confectioOrder": 1 }""", "twice")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [{ """, "")]
    [InlineData("""{ "confectioOrder": 1e99 }""", "the version is expected")]
    public void WhatIsNoOrderIsRefused(string json, string message) =>
        Assert.Contains(message, Assert.Throws<FormatException>(() => IcingOrder.ParseJson(json, IngredientTable.BuiltIn)).Message, StringComparison.Ordinal);

    [Fact]
    public void TooMuchIsRefusedBeforeItIsRead()
    {
        Assert.Contains("4194304", Refusal(new string(' ', 5 << 20)), StringComparison.Ordinal);
        Assert.Contains("200", Refusal(Order(string.Join(", ", Enumerable.Repeat("""{ "shape": "half-ball", "diameter": "20 cm", "raised": true }""", 200)))), StringComparison.Ordinal);
        Assert.Contains("'20", Refusal(Order($$"""{ "shape": "round", "diameter": "20{{new string('0', 1_000_000)}} cm", "height": "10 cm" }""")), StringComparison.Ordinal);
        Assert.NotNull(Refusal($$"""{ "confectioOrder": 1, "tiers": {{string.Concat(Enumerable.Repeat("[", 1000))}}"""));
        Assert.Throws<ArgumentNullException>("ingredients", () => IcingOrder.ParseJson("{}", null!));
        Assert.Throws<ArgumentNullException>("json", () => IcingOrder.ParseJson((string)null!, IngredientTable.BuiltIn));
        static string Refusal(string json) => Assert.Throws<FormatException>(() => IcingOrder.ParseJson(json, IngredientTable.BuiltIn)).Message;
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("fa-IR")]
    public void EveryCultureReadsAndWritesTheSame(string culture)
    {
        IcingOrder order = IcingOrder.ParseJson(Wedding, IngredientTable.BuiltIn);
        string expected = Written(order.Plan(order.Bowls[0]));
        Cultures.In(culture, () =>
        {
            IcingOrder again = IcingOrder.ParseJson(Wedding, IngredientTable.BuiltIn);
            Assert.Equal(expected, Written(again.Plan(again.Bowls[0])));
        });
    }

    [Property(MaxTest = 100)]
    public void WhatIsWrittenKeepsTheSchemaAndAddsUp(ushort seed)
    {
        Formula formula = Formula.Of("", [FormulaLine.Of(IngredientTable.BuiltIn.Get("egg white"), 210), FormulaLine.Of(IngredientTable.BuiltIn.Get("unsalted butter"), 470)]);
        IcingPlan plan = IcingPlan.Of(RandomCakes.Of(seed), [Icing.Of("cream", 0.8, formula).InWholeEggs(EggSizeSystem.Get("us").Size("large")), Icing.Of("jam", 1.3), Icing.Of("glaze", 1.2)], 0.07,
            seed % 2 == 0 ? MixerBowl.OfQuarts(5, 0.7) : null);
        string json = Written(plan);
        Assert.True(IsValid(s_plan, json));
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement root = document.RootElement;
        Assert.Equal(plan.Coverage.TotalMillilitres, root.GetProperty("parts").EnumerateArray().Sum(part => part.GetProperty("millilitres").GetDouble()), 1e-6);
        Assert.All(root.GetProperty("icings").EnumerateArray(), icing =>
        {
            double made = icing.GetProperty("batches").EnumerateArray().Sum(batch => batch.GetProperty("count").GetInt64() * batch.GetProperty("grams").GetDouble());
            Assert.Equal(icing.GetProperty("plannedGrams").GetDouble(), made - icing.GetProperty("wasteGrams").GetDouble() - icing.GetProperty("leftOverGrams").GetDouble(), 1e-6);
            Assert.All(icing.GetProperty("batches").EnumerateArray().Where(batch => batch.TryGetProperty("lines", out _)), batch =>
                Assert.Equal(batch.GetProperty("grams").GetDouble(), batch.GetProperty("lines").EnumerateArray().Sum(line => line.GetProperty("grams").GetDouble()), 1e-6));
        });
    }

    // By hand: egg white has egg and butter milk; the dark couverture of the second formula has soy in many makes (its lecithin). Nothing is known of the jam.
    [Theory]
    [InlineData("unsalted butter", new[] { "milk", "egg" }, new string[0])]
    [InlineData("dark couverture 64 %", new[] { "egg" }, new[] { "soy" })]
    public void APlanInJsonSaysTheAllergensOfEachIcingAndWhereTheyAreNotKnown(string fat, string[] contains, string[] often)
    {
        IcingOrder order = IcingOrder.ParseJson(Wedding.Replace("unsalted butter", fat, StringComparison.Ordinal), IngredientTable.BuiltIn);
        string json = Written(order.Plan());
        Assert.True(IsValid(s_plan, json));
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement[] icings = [.. document.RootElement.GetProperty("icings").EnumerateArray().OrderBy(icing => icing.GetProperty("name").GetString(), StringComparer.Ordinal)];
        Assert.Equal(contains, icings[0].GetProperty("contains").EnumerateArray().Select(word => word.GetString()!));
        string[] said = [.. icings[0].GetProperty("oftenContains").EnumerateArray().Select(word => word.GetString()!)];
        Assert.All(often, word => Assert.Contains(word, said));
        Assert.Equal(["raspberry jam", "null", "null"], [icings[1].GetProperty("name").GetString()!, icings[1].GetProperty("contains").GetRawText(), icings[1].GetProperty("oftenContains").GetRawText()]);
        Assert.Contains("not said to be absent", document.RootElement.GetProperty("label").GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public void TheOrderOfTheGuideKeepsTheSchemaAndIsReadAndEveryShapeStandsThere()
    {
        string page = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "cakes.md"));
        string json = Assert.Single(Regex.Matches(page, "```json\n(\\{.*?\n\\})\n```", RegexOptions.Singleline)).Groups[1].Value;
        Assert.True(IsValid(s_order, json));
        IcingOrder order = IcingOrder.ParseJson(json, IngredientTable.BuiltIn);
        Assert.Equal(2, order.Plan(order.Bowls[0]).Needs.Count);
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "order.json")));
        foreach (JsonElement shape in schema.RootElement.GetProperty("$defs").GetProperty("tier").GetProperty("oneOf").EnumerateArray())
        {
            string row = Assert.Single(page.Split('\n'), line => line.StartsWith($"| `{shape.GetProperty("properties").GetProperty("shape").GetProperty("const").GetString()}` |", StringComparison.Ordinal));
            Assert.All(shape.GetProperty("properties").EnumerateObject().Where(size => size.Name is not ("shape" or "height")), size => Assert.Contains($"`{size.Name}`", row, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void TheExampleKeepsTheSchema() => Assert.True(IsValid(s_order, Wedding));

    // The judge is an evaluator of JSON Schema that is not ours.
    [Theory]
    [InlineData("{}")]
    [InlineData("""{ "confectioOrder": 1 }""")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [] }""")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [{ "shape": "half-ball", "diameter": "20 cm", "height": "3 cm" }] }""")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [{ "shape": "round", "diameter": "20 cm" }] }""")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [{ "shape": "round", "diameter": "20 cm", "side": "3 cm", "height": "3 cm" }] }""")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [{ "shape": "half-ball", "diameter": 20 }] }""")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [{ "shape": "half-ball", "diameter": "20 cm", "coats": [{ "icing": "cream" }] }] }""")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [{ "shape": "half-ball", "diameter": "20 cm", "raised": "yes" }] }""")]
    [InlineData("""{ "confectioOrder": 1, "wastePercent": 91, "tiers": [{ "shape": "half-ball", "diameter": "20 cm" }] }""")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [{ "shape": "half-ball", "diameter": "20 cm" }], "icings": [{ "name": "cream" }] }""")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [{ "shape": "half-ball", "diameter": "20 cm" }], "icings": [{ "name": "cream", "gramsPerMillilitre": 0.8, "specificGravity": 0.8 }] }""")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [{ "shape": "half-ball", "diameter": "20 cm" }], "bowls": [{ "quarts": 5, "litres": 5, "usablePercent": 70 }] }""")]
    [InlineData("""{ "confectioOrder": 1, "tiers": [{ "shape": "half-ball", "diameter": "20 cm" }], "ovens": [] }""")]
    public void WhatTheSchemaRefusesTheReaderRefuses(string json)
    {
        Assert.False(IsValid(s_order, json));
        Assert.Throws<FormatException>(() => IcingOrder.ParseJson(json, IngredientTable.BuiltIn));
    }

    [Fact]
    public void TheSchemaHasTheWordsAndLimitsOfTheLibrary()
    {
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "order.json")));
        using JsonDocument formula = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "formula.json")));
        JsonElement all = schema.RootElement.GetProperty("properties"), kinds = schema.RootElement.GetProperty("$defs");
        Assert.Equal(IcingOrderJson.Version, all.GetProperty("confectioOrder").GetProperty("const").GetInt32());
        Assert.Equal(Confectio.Cakes.Cake.MaximumTiers, all.GetProperty("tiers").GetProperty("maxItems").GetInt32());
        Assert.Equal(IcingOrderJson.MaximumIcings, all.GetProperty("icings").GetProperty("maxItems").GetInt32());
        Assert.Equal(IcingOrderJson.MaximumBowls, all.GetProperty("bowls").GetProperty("maxItems").GetInt32());
        Assert.Equal(CakeTier.MaximumOfEach, kinds.GetProperty("tier").GetProperty("properties").GetProperty("coats").GetProperty("maxItems").GetInt32());
        Assert.Equal(EggSizeSystem.All.Select(system => system.Key),
            kinds.GetProperty("icing").GetProperty("properties").GetProperty("wholeEggs").GetProperty("properties").GetProperty("system").GetProperty("enum").EnumerateArray().Select(key => key.GetString()!));
        // The formula inside is the formula by itself.
        Assert.True(JsonElement.DeepEquals(formula.RootElement.GetProperty("properties"), kinds.GetProperty("formula").GetProperty("properties")));
        Assert.True(JsonElement.DeepEquals(formula.RootElement.GetProperty("required"), kinds.GetProperty("formula").GetProperty("required")));
    }

    private static JsonSchema Schema(string name) => JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", name)));

    private static string Order(string tiers) => $$"""
        { "confectioOrder": 1,
          "tiers": [ {{tiers}} ],
          {{Icings}} }
        """;

    private static string Written(IcingPlan plan)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter writer = new(stream))
            plan.WriteTo(writer);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static bool IsValid(JsonSchema schema, string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        return schema.Evaluate(document.RootElement).IsValid;
    }
}
