using System.Globalization;
using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Measures;
using Confectio.Layouts;
using Confectio.Text;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Layouts;

/// <summary>
/// Sheets in the layouts that people type, print and export, each with the rows that a person reads in it, written down before the reader
/// was. The sheets are invented; one row of each is wrong.
/// </summary>
public sealed class LayoutTests
{
    private static readonly string s_folder = Path.Combine(AppContext.BaseDirectory, "Layouts", "Sheets");

    public static TheoryData<string> Sheets => [.. Directory.GetFiles(s_folder, "*.rows").Select(file => Path.GetFileNameWithoutExtension(file)!).Order(StringComparer.Ordinal)];

    [Fact]
    public void ThereAreFortySheetsOrMore() => Assert.True(Sheets.Count >= 40);

    [Theory]
    [MemberData(nameof(Sheets))]
    public void EveryRowIsReadAndNothingElse(string sheet)
    {
        Reading<TableText> reading = TableText.Read(Bytes(sheet));
        Assert.True(reading.TryGet(out TableText? table), reading.ToString());
        Assert.Equal(Expected(sheet).Select(row => row.Said), table.Rows.Select(Said));
        Assert.Empty(reading.Problems);
        Assert.NotEqual("", table.Layout);
    }

    /// <summary>The wrong row is called wrong, impossible or doubtful, whichever layout it stands in; no other row is called wrong.</summary>
    [Theory]
    [MemberData(nameof(Sheets))]
    public void ThePlantedMistakeIsFoundAndNoCleanRowIsWrong(string sheet)
    {
        TableVerdict verdict = ConversionTableVetter.Vet(Bytes(sheet), IngredientTable.BuiltIn);
        (int Line, string Said, string Mark)[] expected = [.. Expected(sheet)];
        foreach (RowFinding row in verdict.Rows)
        {
            NameMatch match = IngredientTable.BuiltIn.MatchName(row.Ingredient);
            bool planted = expected.Any(one => one.Line == row.Line && one.Mark.Length > 0 && one.Said.Contains($"{match.Ingredient?.Id ?? row.Ingredient} | {row.Amount}", StringComparison.Ordinal));
            Assert.True(planted || row.Verdict is Verdict.Agrees or Verdict.Unknown or Verdict.Doubtful, row.ToString());
        }
        foreach ((int line, _, _) in expected.Where(one => one.Mark == "!"))
            Assert.Contains(verdict.Rows, row => row.Line == line && row.Verdict is Verdict.Wrong or Verdict.Impossible or Verdict.Doubtful);
    }

    internal static byte[] Bytes(string sheet) => File.ReadAllBytes(Directory.GetFiles(s_folder, sheet + ".*").Single(file => !file.EndsWith(".rows", StringComparison.Ordinal)));

    internal static IEnumerable<(int Line, string Said, string Mark)> Expected(string sheet)
    {
        foreach (string line in File.ReadAllLines(Path.Combine(s_folder, sheet + ".rows")))
        {
            string[] parts = line.Split('|', StringSplitOptions.TrimEntries);
            int blank = parts[0].IndexOf(' ', StringComparison.Ordinal);
            int number = int.Parse(parts[0][..blank], CultureInfo.InvariantCulture);
            string mark = parts.Length > 3 && parts[^1].EndsWith('!') ? "!" : parts.Length > 3 && parts[^1].EndsWith('?') ? "?" : "";
            string word = parts.Length > 3 ? parts[3].TrimEnd('!', '?').Trim() : "";
            Packing? packing = PackingText.TryRead(word, out Packing stated) ? stated : null;
            yield return (number, Said(number, parts[0][(blank + 1)..], Amount.Parse(parts[1]), double.Parse(parts[2], CultureInfo.InvariantCulture), packing), mark);
        }
    }

    // The packing is said apart, or with the name; either way the food is what is left.
    private static string Said(TableEntry row)
    {
        TableFigure figure = row.Figures.FirstOrDefault(one => one.Unit is FigureUnit.Gram or FigureUnit.Kilogram, row.Figures[0]);
        return Said(row.Line, row.Name, row.Measure, figure.Value * TableReader.GramsPer(figure.Unit), row.Packing);
    }

    private static string Said(int line, string name, Amount measure, double grams, Packing? packing)
    {
        NameMatch match = IngredientTable.BuiltIn.MatchName(name);
        return string.Create(CultureInfo.InvariantCulture,
            $"{line} {match.Ingredient?.Id ?? name} | {measure} | {grams:0.###} | {(packing ?? match.Packing)?.ToWord()}");
    }
}
