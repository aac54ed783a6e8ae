using Confectio.Ingredients;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>The real tables as they were printed, and with planted mistakes.</summary>
public sealed class RealTableScoreTests
{
    private static readonly int s_seeds = int.Parse(Environment.GetEnvironmentVariable("CONFECTIO_REAL_SEEDS") ?? "2", System.Globalization.CultureInfo.InvariantCulture);

    [Fact]
    public void TheTablesAsPrinted()
    {
        foreach (RealTable table in RealTable.All)
        {
            TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(table.ToCsv()), IngredientTable.BuiltIn);
            TestContext.Current.TestOutputHelper?.WriteLine($"== {table.Name}: {table.Rows.Count} rows; grid {verdict.RoundingGrid}; {verdict.System}; unread {verdict.Problems.Count}");
            foreach (RowFinding row in verdict.Rows.Where(row => row.Verdict != Verdict.Agrees || row.ProbabilityRight < 0.8 || RealFault.In(table.Name, table.Rows[(int)row.Line - 2]) is not null))
            {
                RealRow printed = table.Rows[(int)row.Line - 2];
                TestContext.Current.TestOutputHelper?.WriteLine($"  {row.Verdict} {row.ProbabilityRight:0.000} {row.Reason} {RealFault.In(table.Name, printed)?.Why}: {row.Explanation} [{row.Ingredient} {row.Amount} {printed.Packing} = {printed.Printed}]");
            }
            foreach (var p in verdict.Problems) TestContext.Current.TestOutputHelper?.WriteLine($"  {p}");
        }
    }

    [Fact]
    public void PlantedMistakes()
    {
        RealTableScore all = new();
        foreach (RealTable table in RealTable.All)
        {
            RealTableScore score = new();
            for (int seed = 1; seed <= s_seeds; seed++)
            {
                score.Add(table, new PlantedErrors(seed).Plant(table));
                all.Add(table, new PlantedErrors(seed).Plant(table));
            }
            TestContext.Current.TestOutputHelper?.WriteLine($"{table.Name}: {score}");
        }
        TestContext.Current.TestOutputHelper?.WriteLine(all.ToString());
        TestContext.Current.TestOutputHelper?.WriteLine(all.Details());
    }
}
