using System.Globalization;
using System.Text;
using System.Text.Json;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>Problems and answers in JSON.</summary>
public sealed class ProblemJsonTests
{
    private const string Head = "{\"confectioProblem\":1,\"name\":\"x\",\"ingredients\":[{\"ingredient\":\"unsalted butter\",\"baseGrams\":500},{\"ingredient\":\"granulated sugar\",\"baseGrams\":500}]";

    public static TheoryData<string, string> Bad => new()
    {
        { "", "" },
        { "[]", "" },
        { "null", "confectioProblem" },
        { "{}", "confectioProblem is missing" },
        { "{\"confectioProblem\":2}", "($.confectioProblem), version 2 was read and 1 is expected" },
        { "{\"confectioProblem\":1}", "ingredients is missing" },
        { "{\"confectioProblem\":1,\"ingredients\":[null]}", "($.ingredients[0]), null was read" },
        { Head + ",\"extra\":1}", "extra" },
        { Head + ",\"confectioProblem\":1}", "confectioProblem" },
        { Head, "" },
        { Head + "} x", "" },
        { Head + ",\"targets\":[{\"part\":\"fat\"}]}", "($.targets[0]), either percent or lowPercent and highPercent" },
        { Head + ",\"targets\":[{\"part\":\"fat\",\"percent\":136}]}", "($.targets[0].percent), percent was 136; from 0 to 100 per cent of everything is expected" },
        { Head + ",\"targets\":[{\"part\":\"fst\",\"percent\":36}]}", "($.targets[0].part), 'fst' is neither a part nor an ingredient" },
        { Head + ",\"targets\":[{\"part\":\"alcohol\",\"percent\":36}]}", "none of the 2 ingredients holds any" },
        { Head + ",\"targets\":[{\"part\":\"fat\",\"percent\":\"36\"}]}", "($.targets[0].percent), a number is expected" },
        { Head + ",\"targets\":[{\"part\":\"fat\",\"percent\":1e400}]}", "targets[0]" },
        { Head + ",\"requirements\":[{\"part\":\"fat\",\"lowPercent\":36,\"priority\":1}]}", "($.requirements[0]), a requirement has no tolerance and no priority" },
        { Head + ",\"ratios\":[{\"ingredient\":\"unsalted butter\",\"to\":\"unsalted butter\",\"ratio\":1}]}", "a ratio needs two" },
        { Head + ",\"ratios\":[{\"ingredient\":\"unsalted butter\",\"ratio\":1}]}", "($.ratios[0]), to is missing" },
        { Head + ",\"prefer\":\"cheapest\"}", "($.prefer), 'cheapest' was read" },
        { Head + ",\"boilOff\":{}}", "($.boilOff), highGrams was NaN" },
        { Head + ",\"totalGrams\":-5}", "($.totalGrams), totalGrams was -5" },
        { "{\"confectioProblem\":1,\"ingredients\":[{\"ingredient\":\"unslated butter\"}]}", "unsalted butter" },
        { "{\"confectioProblem\":1,\"ingredients\":[{\"ingredient\":\"unsalted butter\"},{\"ingredient\":\"butter, unsalted\",\"baseGrams\":1}]}", "is in the problem already" },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void ABadProblemIsRefusedWithItsPlace(string json, string words)
    {
        FormatException refused = Assert.Throws<FormatException>(() => FormulaProblem.ParseJson(json, IngredientTable.BuiltIn));
        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SeveralMistakesAreAllNamed()
    {
        FormatException refused = Assert.Throws<FormatException>(() => FormulaProblem.ParseJson(
            Head + ",\"targets\":[{\"part\":\"fst\",\"percent\":36},{\"part\":\"fat\"}],\"prefer\":\"cheap\"}", IngredientTable.BuiltIn));
        Assert.Contains("targets[0].part", refused.Message, StringComparison.Ordinal);
        Assert.Contains("targets[1]", refused.Message, StringComparison.Ordinal);
        Assert.Contains("prefer", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void HostileTextIsRefusedAndCostsNoMoreThanItsText()
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        string lines = string.Concat(Enumerable.Repeat("{\"ingredient\":\"unsalted butter\"},", 100_000));
        Assert.Throws<FormatException>(() => FormulaProblem.ParseJson("{\"confectioProblem\":1,\"ingredients\":[" + lines.TrimEnd(',') + "]}", IngredientTable.BuiltIn));
        Assert.Throws<FormatException>(() => FormulaProblem.ParseJson(new string('[', 100_000), IngredientTable.BuiltIn));
        Assert.Throws<FormatException>(() => FormulaProblem.ParseJson("{\"a\":" + new string('[', 100_000) + new string(']', 100_000) + "}", IngredientTable.BuiltIn));
        Assert.Throws<FormatException>(() => FormulaProblem.ParseJson("{\"name\":\"" + new string('x', 10_000_000) + "\"}", IngredientTable.BuiltIn));
        Assert.Throws<FormatException>(() => FormulaProblem.ReadJson([0x7B, 0x22, 0xFF, 0xFE, 0x22, 0x3A, 0x31, 0x7D], IngredientTable.BuiltIn).OrThrow());
        // 17 million characters in all, as text and once more as bytes, twice while they are joined: no more than ten bytes each, and no square of anything.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 300_000_000);
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    public void AProblemReadsTheSameInEveryCulture(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            FormulaProblem problem = FormulaProblem.ParseJson(Head + ",\"targets\":[{\"part\":\"fat\",\"percent\":36.5}],\"totalGrams\":1000}", IngredientTable.BuiltIn);
            Assert.Equal(0.365, problem.Demands.OfType<Demand.Share>().Single(share => share.IsTarget).LowFraction);
            Assert.Contains("\"status\":\"solved\"", Json(problem.Solve()), StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void WhatIsReadIsWhatTheBuilderBuilds()
    {
        FormulaProblem read = FormulaProblem.ParseJson(Head + ",\"targets\":[{\"part\":\"fat\",\"percent\":36,\"tolerancePercent\":0.5,\"priority\":2}],"
            + "\"requirements\":[{\"part\":\"sugars\",\"of\":\"water-phase\",\"lowPercent\":10}],\"ratios\":[{\"ingredient\":\"granulated sugar\",\"to\":\"unsalted butter\",\"lowRatio\":0.5,\"highRatio\":2}],"
            + "\"boilOff\":{\"highGrams\":20},\"prefer\":\"nearness-traded\",\"nearness\":0.03}", IngredientTable.BuiltIn);
        Assert.Equal(["a total of 1000 g", "fat 36 %", "sugars at least 10 % of the water phase", "granulated sugar from 0.5 to 2 times unsalted butter", "water boiled off from 0 to 20 g"],
            read.Demands.Select(demand => demand.Sentence));
        Demand.Share target = Assert.IsType<Demand.Share>(read.Demands[1]);
        Assert.Equal(0.005, target.Tolerance);
        Assert.Equal(2, target.Priority);
        Assert.Equal(Preference.ClosenessTraded, read.Preference);
        Assert.Equal(0.03, read.Closeness);
        Assert.Equal([500, 500], read.Candidates.Select(candidate => candidate.BaseGrams));
    }

    [Fact]
    public void AGroupIsAPartAndAShareMayBeKeptAsInTheBase()
    {
        const string Sponge = """
            {"confectioProblem":1,"ingredients":[{"ingredient":"cake flour","baseGrams":300},{"ingredient":"all-purpose flour","baseGrams":100},
            {"ingredient":"granulated sugar","baseGrams":400},{"ingredient":"whole milk","baseGrams":200}],
            """;
        SolvedFormula answer = FormulaProblem.ParseJson(Sponge + """
            "groups":[{"name":"all flours","ingredients":["cake flour","plain flour"]}],
            "targets":[{"part":"granulated sugar","of":"All Flours","percent":120}],"requirements":[{"part":"whole milk","of":"all flours","asInBase":true}]}
            """, IngredientTable.BuiltIn).Solve();
        double flours = answer.Grams[0] + answer.Grams[1];
        Assert.Equal(1.2, answer.Grams[2] / flours, 1e-9);
        Assert.Equal(0.5, answer.Grams[3] / flours, 1e-9);
        Assert.Equal("whole milk 50 % of the all flours", answer.Problem.Demands.OfType<Demand.Share>().Single(share => !share.IsTarget).Sentence);
        foreach ((string more, string words) in new[]
        {
            ("\"groups\":[{\"name\":\"fat\",\"ingredients\":[\"water\"]}]}", "($.groups[0].name), 'fat' is a part already"),
            ("\"groups\":[{\"name\":\"x\",\"ingredients\":[\"watre\"]}]}", "($.groups[0].ingredients[0]), 'watre' is not an ingredient"),
            ("\"groups\":[{\"name\":\"x\",\"ingredients\":[]}]}", "a group has at least one ingredient"),
            ("\"requirements\":[{\"part\":\"fat\",\"asInBase\":true,\"percent\":3}]}", "($.requirements[0]), either percent or lowPercent and highPercent is expected, or asInBase alone"),
        })
        {
            FormatException refused = Assert.Throws<FormatException>(() => FormulaProblem.ParseJson(Sponge + more, IngredientTable.BuiltIn));
            Assert.Contains(words, refused.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void AnAnswerIsOneObjectWithItsProofAndItsRounding()
    {
        SolvedFormula answer = FormulaProblem.ParseJson(Head + ",\"targets\":[{\"part\":\"fat\",\"percent\":36}]}", IngredientTable.BuiltIn).Solve();
        using JsonDocument json = JsonDocument.Parse(Json(answer, answer.Round(RoundingGrid.Grams(5))));
        Assert.Equal("solved", json.RootElement.GetProperty("status").GetString());
        Assert.Equal(answer.Grams[0], json.RootElement.GetProperty("lines")[0].GetProperty("grams").GetDouble());
        Assert.True(json.RootElement.GetProperty("certificate").GetProperty("holds").GetBoolean());
        Assert.True(json.RootElement.GetProperty("rounded").GetProperty("proven").GetBoolean());
        Assert.Equal(answer.Results.Count, json.RootElement.GetProperty("demands").GetArrayLength());
    }

    private static string Json(SolvedFormula answer, RoundedFormula? rounded = null)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter writer = new(stream))
            answer.WriteTo(writer, rounded);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
