using System.Text.Json;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Json.Schema;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>docs/schema/problem.json and the library say the same; the judge is a JSON Schema evaluator that is not ours.</summary>
public sealed class ProblemSchemaTests
{
    private static readonly JsonSchema s_schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "problem.json")));

    [Theory]
    [InlineData("fennmarsh-shortening-buttercream.json", SolutionStatus.Solved)]
    [InlineData("fennmarsh-chocolate-buttercream.json", SolutionStatus.Solved)]
    [InlineData("fennmarsh-impossible-buttercream.json", SolutionStatus.Impossible)]
    public void TheProblemsOfFennmarshHallKeepTheSchemaAndAreAnswered(string file, SolutionStatus status)
    {
        string json = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Examples", file));
        Assert.True(IsValid(json));
        Assert.Equal(status, FormulaProblem.ParseJson(json, IngredientTable.BuiltIn).Solve().Status);
    }

    [Theory]
    [InlineData("""{ "confectioProblem": 2, "ingredients": [{ "ingredient": "water", "baseGrams": 1 }] }""")]
    [InlineData("""{ "confectioProblem": 1, "ingredients": [] }""")]
    [InlineData("""{ "confectioProblem": 1, "ingredients": [{ "baseGrams": 1 }] }""")]
    [InlineData("""{ "confectioProblem": 1, "ingredients": [{ "ingredient": "water", "baseGrams": -1 }] }""")]
    [InlineData("""{ "confectioProblem": 1, "ingredients": [{ "ingredient": "water", "grams": 1 }] }""")]
    [InlineData("""{ "confectioProblem": 1, "ingredients": [{ "ingredient": "water", "baseGrams": 1 }], "prefer": "cheapest" }""")]
    [InlineData("""{ "confectioProblem": 1, "ingredients": [{ "ingredient": "water", "baseGrams": 1 }], "targets": [{ "part": "water", "percent": 101 }] }""")]
    [InlineData("""{ "confectioProblem": 1, "ingredients": [{ "ingredient": "water", "baseGrams": 1 }], "targets": [{ "part": "water", "percent": 50, "priority": 5 }] }""")]
    [InlineData("""{ "confectioProblem": 1, "ingredients": [{ "ingredient": "water", "baseGrams": 1 }], "requirements": [{ "part": "water", "percent": 50, "priority": 1 }] }""")]
    [InlineData("""{ "confectioProblem": 1, "ingredients": [{ "ingredient": "water", "baseGrams": 1 }], "boilOff": {} }""")]
    public void WhatTheSchemaRefusesTheReaderRefuses(string json)
    {
        Assert.False(IsValid(json));
        Assert.Throws<FormatException>(() => FormulaProblem.ParseJson(json, IngredientTable.BuiltIn));
    }

    [Fact]
    public void TheLimitsOfTheSchemaAreThoseOfTheLibrary()
    {
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "problem.json")));
        JsonElement members = schema.RootElement.GetProperty("properties");
        Assert.Equal(ProblemJson.Version, members.GetProperty("confectioProblem").GetProperty("const").GetInt32());
        Assert.Equal(FormulaProblem.MaximumIngredients, members.GetProperty("ingredients").GetProperty("maxItems").GetInt32());
    }

    private static bool IsValid(string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        return s_schema.Evaluate(document.RootElement).IsValid;
    }
}
