using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Nodes;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Measures;
using Confectio.Publishing;
using Xunit;
using static Confectio.Tests.Publishing.Cards;

namespace Confectio.Tests.Publishing;

/// <summary>What the schemas of docs/schema say of a card and a chart: their members, and which are always there.</summary>
public sealed class PublishedJsonTests
{
    [Fact]
    public void ACardHasTheMembersOfItsSchema()
    {
        JsonNode schema = Schema("card.json");
        foreach (CardOptions options in (CardOptions[])[CardOptions.Default, new()
        {
            MeasuringSystems = MeasuringSystem.All, Portions = 24, Rules = LabelRules.UnitedStates, Basis = FormulaPart.Sugars, Steps = ["Whip."],
            Temperatures = [CardTemperature.Of("mix", 71, CardTemperatureBound.AtLeast), CardTemperature.Of("room", 20)],
        }])
            Check(JsonNode.Parse(FormulaCard.Of(Formula.Of("", [.. Buttercream.Lines, Line("table salt", 0.01)]), options).ToJson())!, schema, schema);
    }

    [Fact]
    public void AChartHasTheMembersOfItsSchema()
    {
        JsonNode schema = Schema("chart.json");
        Check(JsonNode.Parse(ConversionChart.Of(ChartFood.All(Table.Get("icing sugar")), [Amount.Parse("1 cup")], MeasuringSystem.Imperial, new ChartOptions { Rounding = ChartRounding.QuarterOunce }).ToJson())!, schema, schema);
    }

    private static JsonNode Schema(string name, [CallerFilePath] string source = "") =>
        JsonNode.Parse(File.ReadAllText(Path.Combine(Path.GetDirectoryName(source)!, "..", "..", "..", "docs", "schema", name)))!;

    // The words of JSON Schema 2020-12 that these two use.
    private static void Check(JsonNode value, JsonNode schema, JsonNode root)
    {
        if (schema["$ref"]?.GetValue<string>() is string reference)
        {
            if (reference.StartsWith("#/$defs/", StringComparison.Ordinal))
                Check(value, root["$defs"]![reference["#/$defs/".Length..]]!, root);
            else
                Assert.Equal(1, value["confectioFormula"]!.GetValue<int>());
            return;
        }
        if (schema["const"] is JsonNode constant)
            Assert.True(JsonNode.DeepEquals(constant, value));
        if (schema["enum"] is JsonArray words)
            Assert.Contains(words, word => JsonNode.DeepEquals(word, value));
        switch (schema["type"]?.GetValue<string>())
        {
            case "object":
                foreach (KeyValuePair<string, JsonNode?> member in value.AsObject())
                {
                    Assert.True(schema["properties"]![member.Key] is not null, member.Key);
                    Check(member.Value!, schema["properties"]![member.Key]!, root);
                }
                Assert.All(schema["required"]!.AsArray(), name => Assert.True(value[name!.GetValue<string>()] is not null, name.GetValue<string>()));
                break;
            case "array":
                foreach (JsonNode? item in value.AsArray())
                    Check(item!, schema["items"]!, root);
                break;
            case "string":
                Assert.Equal(JsonValueKind.String, value.GetValueKind());
                break;
            case "number":
                Assert.Equal(JsonValueKind.Number, value.GetValueKind());
                break;
        }
    }
}
