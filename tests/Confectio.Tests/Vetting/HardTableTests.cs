using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>Tables that no simple rule gets right.</summary>
public sealed class HardTableTests
{
    [Fact]
    public void ATableOfEightOuncesForEverythingIsCaught()
    {
        string[] names = ["granulated sugar", "icing sugar", "plain flour", "cornflour", "cocoa", "brown sugar", "honey", "skimmed milk powder", "desiccated coconut", "ground almonds"];
        TableVerdict verdict = Tables.Vet([.. names.Select(name => $"{name}|1 cup|227"), "water|1 cup|237", "butter|1 cup|227"]);
        foreach (string light in names.Except(["brown sugar", "granulated sugar"]))
        {
            RowFinding row = verdict.Rows.First(row => row.Ingredient == light);
            Assert.True(row.Verdict is Verdict.Wrong or Verdict.Impossible or Verdict.Doubtful, $"{light}: {row.Verdict}");
            Assert.Equal(Reason.CupCountedAsEightOunces, row.Reason);
        }
        Assert.True(verdict.Count(Verdict.Wrong) + verdict.Count(Verdict.Impossible) >= 7);
        // What really weighs eight ounces a cup stays right.
        Assert.Equal(Verdict.Agrees, verdict.Rows[^1].Verdict);
    }

    [Fact]
    public void ATableMadeFromQuarterOuncesAgrees()
    {
        // USDA SR cups rounded to a quarter ounce, then printed in whole grams: 200 g is 7 oz is 198 g.
        TableVerdict verdict = Tables.Vet(Tables.RightByStandardReference.Select(row =>
        {
            string[] parts = row.Split('|');
            double quarters = Math.Round(double.Parse(parts[^1], System.Globalization.CultureInfo.InvariantCulture) / 28.349523125 * 4);
            return string.Join('|', parts[..^1].Append(Math.Round(quarters / 4 * 28.349523125).ToString(System.Globalization.CultureInfo.InvariantCulture)));
        }));
        Assert.Equal("1/4 oz", verdict.RoundingGrid);
        Assert.All(verdict.Rows, row => Assert.Equal(Verdict.Agrees, row.Verdict));
        Assert.Equal("us", verdict.System!.Family);
    }

    [Fact]
    public void ATableRoundedToFiveGramsAgrees()
    {
        TableVerdict verdict = Tables.Vet(Tables.RightByStandardReference.Select(row =>
        {
            string[] parts = row.Split('|');
            return string.Join('|', parts[..^1].Append((Math.Round(int.Parse(parts[^1], System.Globalization.CultureInfo.InvariantCulture) / 5.0) * 5).ToString(System.Globalization.CultureInfo.InvariantCulture)));
        }));
        Assert.Equal("5 g", verdict.RoundingGrid);
        Assert.All(verdict.Rows, row => Assert.Equal(Verdict.Agrees, row.Verdict));
    }

    [Fact]
    public void ThreeRowsAreJudgedWithoutOverclaiming()
    {
        TableVerdict verdict = Tables.Vet(["icing sugar|1 cup|120", "plain flour|1 cup|125", "granulated sugar|1 cup|200"]);
        Assert.All(verdict.Rows, row => Assert.Equal(Verdict.Agrees, row.Verdict));
        Assert.False(verdict.System!.IsDistinguishable);
    }

    [Fact]
    public void WithoutLiquidsTheTwoUsCupsAreNotToldApart()
    {
        TableVerdict verdict = Tables.Vet(
        [
            "granulated sugar|1 cup|200", "icing sugar|1 cup|spooned|118", "brown sugar|1 cup|packed|215", "plain flour|1 cup|spooned|126", "cornflour|1 cup|126",
            "shortening|1 cup|packed|195", "caster sugar|1 cup|192", "strong flour|1 cup|spooned|123", "salt|1 cup|290", "unsalted butter|1 cup|packed|225",
            "chopped walnuts|1 cup|117", "cream cheese|1 cup|packed|232",
        ]);
        Assert.Equal("us", verdict.System!.Family);
        Assert.False(verdict.System.IsDistinguishable);
        Assert.Contains("236.6 and 240 mL cannot be told apart", verdict.System.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("us-customary", 236.5882365, 14.78676478125)]
    [InlineData("us-labelling", 240, 15)]
    [InlineData("metric", 250, 15)]
    [InlineData("australian", 250, 20)]
    [InlineData("imperial", 284.130625, 17.7581640625)]
    [InlineData("japanese", 200, 15)]
    public void LiquidsSettleTheSystem(string key, double cup, double tablespoon)
    {
        // Weights by composition densities at 20 C (Choi and Okos 1986): water 0.9957, milk 1.0233, honey 1.42 (USDA SR cup 339 g).
        (string Name, double Density)[] liquids = [("water", 0.998), ("whole milk", 1.030), ("heavy cream", 1.0), ("vegetable oil", 0.92), ("honey", 1.43)];
        TableVerdict verdict = Tables.Vet(liquids.SelectMany(liquid => new[]
        {
            $"{liquid.Name}|1 cup|levelled|{Math.Round(cup * liquid.Density)}", $"{liquid.Name}|1/2 cup|levelled|{Math.Round(cup / 2 * liquid.Density)}",
            $"{liquid.Name}|4 Tbsp|levelled|{Math.Round(4 * tablespoon * liquid.Density)}",
        }));
        Assert.Equal(key, verdict.System!.Best.Key);
        Assert.DoesNotContain(verdict.Rows, row => row.Verdict is Verdict.Wrong or Verdict.Impossible);
    }

    [Fact]
    public void CupAndSpoonOfAnUnknownPowderTellTheCupWithoutAnyDensity()
    {
        // 16 tablespoons to a cup is American, 12.5 Australian; what the powder weighs does not matter.
        string[] american = [.. Enumerable.Range(1, 6).SelectMany(i => new[] { $"unheard-of powder {i}|1 cup|{160 + 16 * i}", $"unheard-of powder {i}|1 Tbsp|{10 + i}", $"unheard-of powder {i}|2 cups|{320 + 32 * i}" })];
        string[] australian = [.. Enumerable.Range(1, 6).SelectMany(i => new[] { $"unheard-of powder {i}|1 cup|{150 + 25 * i}", $"unheard-of powder {i}|1 Tbsp|{12 + 2 * i}", $"unheard-of powder {i}|2 cups|{300 + 50 * i}" })];
        // One row of something known, so that the volumes matter at all; it weighs the same in either by its wide spread.
        Assert.True(Probability(Tables.Vet([.. american, "cocoa|1 cup|100"]), "us") > 0.8);
        Assert.True(Probability(Tables.Vet([.. australian, "cocoa|1 cup|100"]), "metric") > 0.8);
    }

    [Fact]
    public void RowsOfOneUnknownIngredientOutvoteTheOddOne()
    {
        TableVerdict verdict = Tables.Vet(["moon dust|1 cup|120", "moon dust|1/2 cup|60", "moon dust|1/4 cup|30", "moon dust|1/3 cup|80"]);
        Assert.Equal([Verdict.Agrees, Verdict.Agrees, Verdict.Agrees, Verdict.Wrong], verdict.Rows.Select(row => row.Verdict));
        Assert.Equal(Reason.HalvedOrDoubled, verdict.Rows[3].Reason);
        Assert.Null(verdict.Rows[3].ExpectedGrams);
        Assert.Contains("other rows", verdict.Rows[3].Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void AKnownIngredientIsHeldAgainstItsOwnRows()
    {
        // 46 g is within what a third of a cup of flour may weigh, but not beside the other rows of this table.
        TableVerdict verdict = Tables.Vet(["flour|1 cup|spooned|120", "flour|1/2 cup|spooned|60", "flour|1/4 cup|spooned|30", "flour|3/4 cup|spooned|90", "flour|2 cups|spooned|240", "flour|1/3 cup|spooned|47"]);
        Assert.True(verdict.Rows[^1].ProbabilityRight < 0.5, $"{verdict.Rows[^1].ProbabilityRight}");
        Assert.True(verdict.Rows[^1].ExpectedGrams!.Value.Contains(47));
        Assert.Contains("does not fit the other rows", verdict.Rows[^1].Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void AnUnknownIngredientIsNotGuessed()
    {
        RowFinding row = Tables.Vet([.. Tables.RightByStandardReference, "iceing sugar|1 cup|120"]).Rows[^1];
        Assert.Equal(Verdict.Unknown, row.Verdict);
        Assert.Null(row.Matched);
        Assert.Null(row.Reason);
        Assert.Contains("icing sugar", row.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void OuncesAreReadInTheirOwnColumn()
    {
        const string Csv = "ingredient,measure,ounces\ngranulated sugar,1 cup,7\nicing sugar,1 cup,4 1/4\nplain flour,1 cup,4½\nwater,1 cup,8.35\nhoney,1 cup,340\n";
        TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(Csv), IngredientTable.BuiltIn);
        Assert.Empty(verdict.Problems);
        Assert.Equal(7 * 28.349523125, verdict.Rows[0].PrintedGrams, 1e-9);
        Assert.Equal(4.25 * 28.349523125, verdict.Rows[1].PrintedGrams, 1e-9);
        Assert.All(verdict.Rows.SkipLast(1), row => Assert.Equal(Verdict.Agrees, row.Verdict));
        Assert.Equal(Reason.GramsAsOunces, verdict.Rows[^1].Reason);
    }

    private static double Probability(TableVerdict verdict, string family) =>
        verdict.System!.Probabilities.Where(candidate => candidate.System.Family == family).Sum(candidate => candidate.Probability);
}
