using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sugars;
using Confectio.Tests.Examples;
using Json.Schema;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>docs/schema/answer.json and what is written say the same, both ways; the judge is a JSON Schema evaluator that is not ours.</summary>
public sealed class AnswerSchemaTests
{
    private static readonly string s_text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "answer.json"));
    private static readonly JsonSchema s_schema = JsonSchema.FromText(s_text);

    // What the example adds to the object; ExampleAnswersKeepTheSchema looks at those.
    private static readonly string[] s_ofTheExample = ["$.answer", "$.everyDemandMet", "$.boilingCaution", "$.contains", "$.oftenContains", "$.label", "$.cautions", "$.cautions.code", "$.cautions.text", "$.cautions.source"];

    public static TheoryData<string> Problems => ["shortening-buttercream", "chocolate-buttercream", "impossible-buttercream", "summer-ganache", "high-ratio-cake", "marshmallow", "soft-caramel", "raspberry-sorbet", "dairy-free-buttercream", "cheaper-praline", "label-spread", "blended-chocolate"];

    [Fact]
    public void WhatIsWrittenAndWhatTheSchemaHasAreTheSame()
    {
        SortedSet<string> written = new(StringComparer.Ordinal);
        foreach (string name in Problems.Select(row => row.Data))
        {
            SolvedFormula answer = FormulaProblem.ParseJson(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Examples", $"fennmarsh-{name}.json")), IngredientTable.BuiltIn).Solve();
            RoundedFormula?[] rounded = [null, answer.Round(RoundingGrid.Grams(5)), answer.Round(RoundingGrid.Spoons(MeasuringSystem.Metric))];
            foreach (RoundedFormula? one in rounded)
            {
                string json = Written(writer => answer.WriteTo(writer, one, MeasuringSystem.Metric, FormulaPart.OfIngredient(answer.Problem.Ingredients[0])));
                using JsonDocument document = JsonDocument.Parse(json);
                Assert.True(s_schema.Evaluate(document.RootElement).IsValid, $"{name}: {json}");
                Paths("$", JsonNode.Parse(json), written);
            }
            using JsonDocument plain = JsonDocument.Parse(Written(writer => answer.WriteTo(writer)));
            Assert.True(s_schema.Evaluate(plain.RootElement).IsValid, name);
        }
        // A property that is met, and one that cannot be: no mix of sugar and water is below the activity of a saturated one.
        foreach (double most in (double[])[0.92, 0.70])
        {
            SolvedFormula curved = FormulaProblem.StartingFrom(Formula.Of("Fennmarsh Hall syrup", [FormulaLine.Of(IngredientTable.BuiltIn.Get("granulated sugar"), 600), FormulaLine.Of(IngredientTable.BuiltIn.Get("water"), 400)]))
                .WithPropertyLimit(SugarProperties.WaterActivity(25), double.NegativeInfinity, most).Solve();
            string json = Written(writer => curved.WriteTo(writer));
            using JsonDocument document = JsonDocument.Parse(json);
            Assert.True(s_schema.Evaluate(document.RootElement).IsValid, json);
            Paths("$", JsonNode.Parse(json), written);
        }
        SortedSet<string> published = new(StringComparer.Ordinal);
        Published("$", JsonNode.Parse(s_text)!.AsObject(), published);
        Assert.Equal(published.Except(s_ofTheExample), written);
    }

    [Theory(Skip = "needs the built examples in CONFECTIO_EXAMPLES", SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    [MemberData(nameof(Problems))]
    public void ExampleAnswersKeepTheSchema(string name)
    {
        using JsonDocument document = JsonDocument.Parse(ExampleProgram.Run("balance", ExampleProgram.Data($"fennmarsh-{name}.json"), "--round", "5g", "--system", "metric", "--json").Output);
        Assert.True(s_schema.Evaluate(document.RootElement).IsValid, name);
        // Hot syrup has its caution wherever water boils off sugar, and nothing else has.
        Assert.Equal(name is "marshmallow" or "soft-caramel", document.RootElement.TryGetProperty("boilingCaution", out _));
        Assert.Equal("rounded", document.RootElement.GetProperty("answer").GetString());
    }

    private static string Written(Action<Utf8JsonWriter> write)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter writer = new(bytes))
            write(writer);
        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    private static void Paths(string at, JsonNode? node, SortedSet<string> found)
    {
        if (node is JsonObject members)
        {
            foreach ((string name, JsonNode? inner) in members)
            {
                found.Add($"{at}.{name}");
                Paths($"{at}.{name}", inner, found);
            }
        }
        foreach (JsonNode? element in node as JsonArray ?? [])
            Paths(at, element, found);
    }

    private static void Published(string at, JsonObject schema, SortedSet<string> found)
    {
        if (schema["$ref"] is JsonNode reference)
            schema = schema.Root["$defs"]![Regex.Match(reference.GetValue<string>(), "[^/]+$").Value]!.AsObject();
        if (schema["items"] is JsonObject items)
            Published(at, items, found);
        foreach ((string name, JsonNode? inner) in schema["properties"]?.AsObject() ?? [])
        {
            // The base is told once; only rounding has steps; none of these has a property.
            if ((at, name) is ("$.rounded.demands", "baseAchieved" or "spread" or "cautions") or ("$.demands", "asNearAsSteps"))
                continue;
            found.Add($"{at}.{name}");
            Published($"{at}.{name}", inner!.AsObject(), found);
        }
    }
}
