using System.Text.Json;
using System.Text.RegularExpressions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using FsCheck.Xunit;
using Json.Schema;
using Xunit;

namespace Confectio.Tests.Formulas;

/// <summary>docs/schema/formula.json and the library say the same; the judge is a JSON Schema evaluator that is not ours.</summary>
public sealed class FormulaSchemaTests
{
    private static readonly JsonSchema s_schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "formula.json")));

    [Property(Arbitrary = [typeof(FormulaGenerators)], MaxTest = 100)]
    public void WhatIsWrittenKeepsTheSchema(Formula formula) => Assert.True(IsValid(formula.ToJson()));

    [Fact]
    public void TheExamplesOfTheGuideKeepTheSchemaAndCanBeRead()
    {
        string page = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "formulas.md"));
        string[] examples = [.. Regex.Matches(page, "```(json|text)\n(\\{.*?\n\\})\n```", RegexOptions.Singleline).Select(match => match.Groups[2].Value)];
        Assert.NotEmpty(examples);
        Assert.All(examples, example =>
        {
            Assert.True(IsValid(example));
            Assert.NotEmpty(Formula.ParseJson(example, IngredientTable.BuiltIn).Lines);
        });
    }

    [Fact]
    public void TheSystemsOfTheSchemaAreThoseOfTheLibrary()
    {
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "formula.json")));
        JsonElement line = schema.RootElement.GetProperty("properties").GetProperty("lines").GetProperty("items").GetProperty("properties");
        Assert.Equal(MeasuringSystem.All.Select(system => system.Key), line.GetProperty("system").GetProperty("enum").EnumerateArray().Select(key => key.GetString()!));
        Assert.Equal(FormulaJson.Version, schema.RootElement.GetProperty("properties").GetProperty("confectioFormula").GetProperty("const").GetInt32());
        Assert.Equal(Formula.MaximumLines, schema.RootElement.GetProperty("properties").GetProperty("lines").GetProperty("maxItems").GetInt32());
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{ "confectioFormula": 2, "lines": [{ "ingredient": "water", "grams": 1 }] }""")]
    [InlineData("""{ "confectioFormula": 1, "lines": [] }""")]
    [InlineData("""{ "confectioFormula": 1, "lines": [{ "ingredient": "water" }] }""")]
    [InlineData("""{ "confectioFormula": 1, "lines": [{ "grams": 1 }] }""")]
    [InlineData("""{ "confectioFormula": 1, "lines": [{ "ingredient": "water", "grams": "1" }] }""")]
    [InlineData("""{ "confectioFormula": 1, "lines": [{ "ingredient": "water", "grams": -1 }] }""")]
    [InlineData("""{ "confectioFormula": 1, "lines": [{ "ingredient": "water", "gram": 1, "grams": 1 }] }""")]
    [InlineData("""{ "confectioFormula": 1, "lines": [{ "ingredient": "water", "grams": 1, "system": "metric" }] }""")]
    [InlineData("""{ "confectioFormula": 1, "lines": [{ "ingredient": "water", "amount": "1 cup", "system": "us" }] }""")]
    [InlineData("""{ "confectioFormula": 1, "lines": [{ "ingredient": "water", "grams": 1 }], "boiledOffGrams": -1 }""")]
    [InlineData("""{ "confectioFormula": 1, "lines": [{ "ingredient": "water", "grams": 1 }], "boilOff": 1 }""")]
    public void WhatTheSchemaRefusesTheReaderRefuses(string json)
    {
        Assert.False(IsValid(json));
        Assert.Throws<FormatException>(() => Formula.ParseJson(json, IngredientTable.BuiltIn));
    }

    private static bool IsValid(string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        return s_schema.Evaluate(document.RootElement).IsValid;
    }
}
