using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Vetting;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>
/// A table says the same whatever the order of its rows; only that a figure was copied from the row above, or slipped by one, depends on
/// which row that is.
/// </summary>
public sealed class OrderOfRowsTests
{
    private static readonly VettingOptions s_withoutNeighbours = new() { HearsNeighbours = false };

    private static readonly string[] s_names =
        ["granulated sugar", "plain flour", "unsalted butter", "honey", "water", "whole milk", "icing sugar", "vegetable oil", "table salt", "walnuts", "no such food"];

    private static readonly string[] s_measures = ["1 cup", "1/2 cup", "1/4 cup", "1 Tbsp", "2 tsp", "100 mL", "2 cups", "1 oz"];

    /// <summary>From a tenth of a gram a millilitre to three: right rows, slips and nonsense.</summary>
    private static readonly Gen<RealRow> s_row =
        from name in Gen.Elements(s_names)
        from measure in Gen.Elements(s_measures)
        from packing in Gen.Elements("", "", "", "sifted", "packed")
        from hundredths in Gen.Choose(10, 300)
        from slip in Gen.Elements(1, 1, 1, 1, 0.5, 10, 3)
        select new RealRow(name, measure, packing, Figure(measure, hundredths / 100.0 * slip), false);

    public static Arbitrary<(RealRow[] Rows, int Seed)> Tables { get; } =
        (from size in Gen.Choose(2, 40)
         from rows in s_row.ArrayOf(size)
         from seed in Gen.Choose(1, 1_000_000)
         select (rows, seed)).ToArbitrary();

    private static string Figure(string measure, double density)
    {
        double millilitres = measure switch { "1 cup" => 237, "1/2 cup" => 118, "1/4 cup" => 59, "1 Tbsp" => 15, "2 tsp" => 10, "100 mL" => 100, "2 cups" => 473, _ => 28 };
        double grams = millilitres * density;
        return grams.ToString(grams < 10 ? "0.0" : "0", CultureInfo.InvariantCulture);
    }

    [Property(MaxTest = 150)]
    public Property AnyTable() => Prop.ForAll(Tables, table => Compare(table.Rows, table.Seed, s_withoutNeighbours));

    [Theory]
    [MemberData(nameof(RealTableScoreTests.Names), MemberType = typeof(RealTableScoreTests))]
    public void ARealTable(string name)
    {
        RealTable table = RealTable.All.First(table => table.Name == name);
        for (int seed = 1; seed <= 5; seed++)
        {
            Compare([.. table.Rows], seed, s_withoutNeighbours);
            Compare([.. new PlantedErrors(seed).Plant(table, 0.2).Select(row => row.Row)], seed, s_withoutNeighbours);
        }
    }

    /// <summary>Of a long table a share is heard; which, is no matter of the order.</summary>
    [Fact]
    public void ALongTable()
    {
        Random random = new(5);
        RealRow[] rows = [.. Enumerable.Range(0, 3000).Select(_ =>
        {
            string measure = s_measures[random.Next(s_measures.Length)];
            return new RealRow(random.Next(4) == 0 ? "food " + random.Next(300) : s_names[random.Next(s_names.Length)], measure, "", Figure(measure, 0.3 + 1.1 * random.NextDouble()), false);
        })];
        Compare(rows, 3, s_withoutNeighbours);
    }

    /// <summary>With the rows above and below heard, no row turns from right to wrong but one that is called a copy or a slip.</summary>
    [Theory]
    [MemberData(nameof(RealTableScoreTests.Names), MemberType = typeof(RealTableScoreTests))]
    public void OnlyCopiesAndSlipsDependOnTheOrder(string name)
    {
        RealTable table = RealTable.All.First(table => table.Name == name);
        for (int seed = 1; seed <= 5; seed++)
        {
            RealRow[] rows = [.. new PlantedErrors(seed).Plant(table, 0.1).Select(row => row.Row)];
            (RowFinding[] before, RowFinding[] after, _, _) = Vet(rows, seed, VettingOptions.Default);
            for (int i = 0; i < rows.Length; i++)
            {
                // A copy that stands out in one order only tells a little of all rows of its ingredient, so that what is nearly even may turn.
                bool beside = before[i].Reason is Reason.CopiedRow or Reason.RowSlip || after[i].Reason is Reason.CopiedRow or Reason.RowSlip;
                if (!beside && before[i].Verdict == Verdict.Agrees)
                    Assert.True(after[i].Verdict is Verdict.Agrees or Verdict.Doubtful, after[i].ToString());
                if (!beside && after[i].Verdict == Verdict.Agrees)
                    Assert.True(before[i].Verdict is Verdict.Agrees or Verdict.Doubtful, before[i].ToString());
                Assert.Equal(before[i].ExpectedGrams?.Likely, after[i].ExpectedGrams?.Likely);
            }
        }
    }

    private static void Compare(RealRow[] rows, int seed, VettingOptions options)
    {
        (RowFinding[] before, RowFinding[] after, TableVerdict one, TableVerdict other) = Vet(rows, seed, options);
        Assert.Equal(one.RoundingGrid, other.RoundingGrid);
        Assert.Equal(one.System?.Best, other.System?.Best);
        for (int i = 0; i < rows.Length; i++)
        {
            Assert.Equal(before[i].ProbabilityRight, after[i].ProbabilityRight, 1e-6);
            Assert.Equal((before[i].Verdict, before[i].Reason, before[i].Suspect), (after[i].Verdict, after[i].Reason, after[i].Suspect));
            Assert.Equal(before[i].ExpectedGrams is null, after[i].ExpectedGrams is null);
            if (before[i].ExpectedGrams is not Spread expected || after[i].ExpectedGrams is not Spread shuffled)
                continue;
            // Sums in another order differ in their last digits.
            Assert.Equal(expected.Low, shuffled.Low, 1e-5 * expected.Likely);
            Assert.Equal(expected.Likely, shuffled.Likely, 1e-5 * expected.Likely);
            Assert.Equal(expected.High, shuffled.High, 1e-5 * expected.Likely);
        }
    }

    private static (RowFinding[] Before, RowFinding[] After, TableVerdict One, TableVerdict Other) Vet(RealRow[] rows, int seed, VettingOptions options)
    {
        int[] order = [.. Enumerable.Range(0, rows.Length)];
        new Random(seed).Shuffle(order);
        TableVerdict before = Vet(rows, options), shuffled = Vet([.. order.Select(i => rows[i])], options);
        RowFinding[] after = new RowFinding[rows.Length];
        for (int i = 0; i < order.Length; i++)
            after[order[i]] = shuffled.Rows[i];
        return ([.. before.Rows], after, before, shuffled);
    }

    private static TableVerdict Vet(RealRow[] rows, VettingOptions options)
    {
        TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(RealTable.ToCsv(rows)), IngredientTable.BuiltIn, options);
        Assert.Equal(rows.Length, verdict.Rows.Count);
        return verdict;
    }
}
