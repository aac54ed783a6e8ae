using System.Text.Json;
using Confectio.Ingredients;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>What was taken for granted to judge a row is said with it: a heaped spoon, a pinch, a heading with which a name was read.</summary>
public sealed class AssumedTests
{
    /// <summary>
    /// A level tablespoon of flour is 7.8 g (USDA SR: 125 g a cup of sixteen), and twice that, from one and a half to two and a half times, is the
    /// estimate of rough_measures.csv: 17 g lies in it and 1.7 does not.
    /// </summary>
    [Fact]
    public void AHeapedSpoonIsJudgedWide()
    {
        TableVerdict verdict = Vet("plain flour,1 heaped Tbsp,17\nplain flour,1 Tbsp (heaped),1.7\ncornflour,1 rounded tsp,4.5\ncocoa powder,1 scant cup,80\n");
        Assert.Empty(verdict.Problems);
        RowFinding[] rows = [.. verdict.Rows.TakeLast(4)];
        Assert.Equal([Verdict.Agrees, Verdict.Wrong, Verdict.Agrees, Verdict.Agrees], rows.Select(row => row.Verdict));
        Assert.Equal(Reason.DecimalShift, rows[1].Reason);
        Spread(rows[0], 8, 28);
        Assert.Equal("heaped was taken for 1.5 to 2.5 times the level measure, likely 2, an estimate", Assert.Single(rows[0].Assumed));
        Assert.Contains("1 Tbsp, heaped, should be about", rows[1].Explanation, StringComparison.Ordinal);
        Assert.Contains("heaped was taken for 1.5 to 2.5 times", rows[1].Explanation, StringComparison.Ordinal);
    }

    /// <summary>A heap says nothing of the system, and takes no vote among the level rows of its ingredient.</summary>
    [Fact]
    public void AHeapedSpoonSaysNothingOfTheLevelOnes()
    {
        TableVerdict alone = Vet("plain flour,1 Tbsp,8\n"), beside = Vet("plain flour,1 Tbsp,8\nplain flour,1 heaped Tbsp,24\n");
        RowFinding one = alone.Rows[^1], other = beside.Rows[^2];
        Assert.Equal(one.ExpectedGrams!.Value.Low, other.ExpectedGrams!.Value.Low, 0.15);
        Assert.Equal(one.ExpectedGrams!.Value.High, other.ExpectedGrams!.Value.High, 0.15);
        Assert.Equal(one.ProbabilityRight, other.ProbabilityRight, 0.02);
    }

    /// <summary>A pinch is a sixteenth to an eighth of a teaspoon (common practice), and a teaspoon of salt 6 g (USDA SR): 0.4 to 0.75 g.</summary>
    [Fact]
    public void APinchIsJudgedWide()
    {
        TableVerdict verdict = Vet("table salt,1 pinch,0.5\ntable salt,1 pinch,5\n");
        Assert.Empty(verdict.Problems);
        Assert.Equal([Verdict.Agrees, Verdict.Wrong], verdict.Rows.TakeLast(2).Select(row => row.Verdict));
        Spread(verdict.Rows[^2], 0.4, 0.75);
        Assert.Contains("1/16 to 1/8 tsp was taken for the pinch", Assert.Single(verdict.Rows[^2].Assumed), StringComparison.Ordinal);
    }

    /// <summary>
    /// A cup is heaped by 1.1 to 1.4 (a cone on it, <c>FigureTests</c>): 200 g of sugar become 220 to 280. A handful is a quarter to half a
    /// cup, an estimate: of almonds (143 g whole, 92 g sliced a cup, USDA SR) 23 to 72 g. A few drops are 3 to 6 of 0.03 to 0.07 mL.
    /// </summary>
    [Theory]
    [InlineData("sugar,1 heaped cup,240", Verdict.Agrees, "heaped was taken for 1.1 to 1.4 times")]
    [InlineData("sugar,1 heaped cup,500", Verdict.Wrong, "heaped was taken for 1.1 to 1.4 times")]
    [InlineData("almonds,1 handful,30", Verdict.Agrees, "1/4 to 1/2 cup was taken for the handful, an estimate")]
    [InlineData("almonds,a handful,300", Verdict.Wrong, "1/4 to 1/2 cup was taken for the handful, an estimate")]
    [InlineData("almond extract,a few drops,0.2", Verdict.Agrees, "0.09 to 0.42 mL was taken for the drop")]
    [InlineData("vanilla extract,1 splash,5", Verdict.Agrees, "1/2-3 tsp was taken for the splash, an estimate")]
    public void WhatHasAnEstimateIsJudgedByIt(string row, Verdict expected, string said)
    {
        TableVerdict verdict = Vet(row + "\n");
        Assert.Empty(verdict.Problems);
        Assert.Equal(expected, verdict.Rows[^1].Verdict);
        Assert.Contains(said, Assert.Single(verdict.Rows[^1].Assumed), StringComparison.Ordinal);
    }

    /// <summary>What no figure can be judged by stays unread, with the reason.</summary>
    [Theory]
    [InlineData("butter,1 knob,15", "a knob is itself a guess of 10-25 g")]
    [InlineData("honey,a drizzle,15", "'a drizzle' cannot be read as an amount: it has no size")]
    [InlineData("lemon juice,juice of 1 lemon,45", "what a fruit gives differs")]
    public void WhatHasNoEstimateIsNotRead(string row, string why)
    {
        TableVerdict verdict = Vet(row + "\n");
        Assert.Contains(why, Assert.Single(verdict.Problems).Message, StringComparison.Ordinal);
        Assert.DoesNotContain(verdict.Rows, finding => finding.Line == 6);
    }

    [Fact]
    public void TheHeadingThatCompletesANameIsSaid()
    {
        TableVerdict verdict = ConversionTableVetter.Vet(new StringReader("Sugars\ngranulated, 1 cup = 200 g\nhoney, 1 cup = 340 g\nFlours\nplain, 1 cup = 125 g\n"), IngredientTable.BuiltIn);
        Assert.Equal(["'granulated' below the heading 'Sugars' was read as granulated sugar"], verdict.Rows[0].Assumed);
        Assert.Empty(verdict.Rows[1].Assumed);
        Assert.Contains("'plain' below the heading 'Flours' was read as plain flour", verdict.Rows[2].Explanation, StringComparison.Ordinal);
        using MemoryStream written = new();
        using (Utf8JsonWriter writer = new(written))
            verdict.WriteTo(writer);
        using JsonDocument json = JsonDocument.Parse(written.ToArray());
        JsonElement rows = json.RootElement.GetProperty("rows");
        Assert.Equal("'granulated' below the heading 'Sugars' was read as granulated sugar", rows[0].GetProperty("assumed")[0].GetString());
        Assert.False(rows[1].TryGetProperty("assumed", out _));
    }

    private static TableVerdict Vet(string rows) =>
        ConversionTableVetter.Vet(new StringReader("ingredient,measure,grams\nwater,1 cup,237\ngranulated sugar,1 cup,200\nwhole milk,1 cup,244\nhoney,1 cup,339\n" + rows), IngredientTable.BuiltIn);

    // At least what the estimate spans; our own spread comes on top.
    private static void Spread(RowFinding row, double low, double high) =>
        Assert.True(row.ExpectedGrams!.Value.Low <= low + 1 && row.ExpectedGrams.Value.High >= high - 1 && row.ExpectedGrams.Value.High <= 2 * high, row.ToString());
}
