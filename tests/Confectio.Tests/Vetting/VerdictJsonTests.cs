using System.Text.Json;
using Confectio.Ingredients;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Vetting;

public sealed class VerdictJsonTests
{
    [Fact]
    public void AConversionTableIsOneObjectOfTheDocumentedForm()
    {
        TableVerdict verdict = Tables.Vet([.. Tables.RightByStandardReference, "granulated sugar|1 Tbsp|37.5", "moon dust|1 cup|100", "sugar|cups|3"]);
        JsonElement root = Write(verdict.WriteTo);

        Assert.Equal(["system", "rows", "problems", "layout", "unread"], root.EnumerateObject().Select(property => property.Name));
        JsonElement system = root.GetProperty("system");
        Assert.Equal("us-customary", system.GetProperty("best").GetString());
        Assert.Equal("us", system.GetProperty("family").GetString());
        Assert.Equal(JsonValueKind.True, system.GetProperty("distinguishable").ValueKind);
        JsonElement probabilities = system.GetProperty("probabilities");
        Assert.Equal(["us-customary", "us-labelling", "metric", "australian", "imperial", "japanese", "decilitre"], probabilities.EnumerateObject().Select(property => property.Name));
        Assert.Equal(1, probabilities.EnumerateObject().Sum(property => property.Value.GetDouble()), 1e-3);

        JsonElement wrong = root.GetProperty("rows")[15];
        Assert.Equal(["line", "place", "ingredient", "matched", "verdict", "probabilityRight", "reason", "printedGrams", "expectedGrams"], wrong.EnumerateObject().Select(property => property.Name));
        Assert.Equal(17, wrong.GetProperty("line").GetInt32());
        Assert.Equal("sugar-granulated", wrong.GetProperty("matched").GetString());
        Assert.Equal("impossible", wrong.GetProperty("verdict").GetString());
        Assert.Equal("spoon-swap", wrong.GetProperty("reason").GetString());
        Assert.Equal(37.5, wrong.GetProperty("printedGrams").GetDouble());
        JsonElement expected = wrong.GetProperty("expectedGrams");
        // 12.25 g to 12.5 g a tablespoon by HERR-41 and USDA SR (196 and 200 g a cup).
        Assert.InRange(expected.GetProperty("likely").GetDouble(), 12.25, 12.5);
        Assert.True(expected.GetProperty("low").GetDouble() < 12.25 && expected.GetProperty("high").GetDouble() > 12.5);

        JsonElement unknown = root.GetProperty("rows")[16];
        Assert.Equal(JsonValueKind.Null, unknown.GetProperty("matched").ValueKind);
        Assert.Equal(JsonValueKind.Null, unknown.GetProperty("reason").ValueKind);
        Assert.Equal(JsonValueKind.Null, unknown.GetProperty("expectedGrams").ValueKind);

        JsonElement problem = Assert.Single(root.GetProperty("problems").EnumerateArray());
        Assert.Equal(19, problem.GetProperty("line").GetInt32());
        Assert.Equal("measure", problem.GetProperty("column").GetString());
    }

    [Fact]
    public void ATableWithoutVolumesHasNoSystem()
    {
        JsonElement root = Write(Tables.Vet(["butter|8 oz|227", "butter|1 stick|113"]).WriteTo);
        Assert.Equal(JsonValueKind.Null, root.GetProperty("system").ValueKind);
        Assert.Equal(["agrees", "agrees"], root.GetProperty("rows").EnumerateArray().Select(row => row.GetProperty("verdict").GetString()));
    }

    [Fact]
    public void NastyTextStaysValidJson()
    {
        JsonElement root = Write(Tables.Vet(["\u0001\ud800 <b>\u2028|1 cup|100", "sugar|1 cup \u0007|100"]).WriteTo);
        // What is not level, packed or known stays in the name, which then means nothing.
        Assert.Equal(2, root.GetProperty("rows").GetArrayLength());
        Assert.All(root.GetProperty("rows").EnumerateArray(), row => Assert.Equal(JsonValueKind.Null, row.GetProperty("matched").ValueKind));
    }

    [Fact]
    public void ATemperatureTableIsOneObject()
    {
        TemperatureVerdict verdict = TemperatureTableVetter.Vet(new StringReader("what,fahrenheit,celsius\nchoux,400,240\nthing,,95\n"), IngredientTable.BuiltIn);
        JsonElement root = Write(verdict.WriteTo);
        JsonElement wrong = root.GetProperty("rows")[0];
        Assert.Equal("digits-swapped", wrong.GetProperty("reason").GetString());
        Assert.Equal(204.44, wrong.GetProperty("expectedCelsius").GetDouble());
        Assert.Equal(JsonValueKind.Null, root.GetProperty("rows")[1].GetProperty("expectedCelsius").ValueKind);
    }

    private static JsonElement Write(Action<Utf8JsonWriter> write)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter writer = new(stream))
            write(writer);
        return JsonDocument.Parse(stream.ToArray()).RootElement;
    }
}
