using System.Globalization;
using System.Text;
using Confectio.Ingredients;
using Confectio.Layouts;
using Confectio.Measures;
using Confectio.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Layouts;

/// <summary>One table in many layouts is one table; and no text of any kind throws or takes more than its length.</summary>
public sealed class LayoutPropertyTests
{
    private static readonly string[] s_names = ["granulated sugar", "plain flour", "butter", "honey", "water", "milk", "cocoa powder", "icing sugar", "vegetable oil", "salt"];
    private static readonly string[] s_measures = ["1 cup", "1/2 cup", "1 1/2 cups", "1 Tbsp", "2 tsp", "100 mL", "3/4 cup", "1 pint"];

    public sealed record Row(string Name, string Measure, string Grams);

    private static readonly Gen<Row[]> s_tables =
        (from name in Gen.Elements(s_names)
         from measure in Gen.Elements(s_measures)
         from tenths in Gen.Choose(11, 9999)
         from whole in Gen.Elements(true, false)
         select new Row(name, measure, whole ? (tenths / 10 + 1).ToString(CultureInfo.InvariantCulture) : (tenths / 10.0).ToString("0.0", CultureInfo.InvariantCulture)))
        .ArrayOf(8);

    public static Arbitrary<Row[]> Tables { get; } = s_tables.ToArbitrary();

    private static readonly (string Name, Func<Row[], string> Write)[] s_layouts =
    [
        ("commas", rows => "ingredient,measure,grams\n" + Lines(rows, row => $"{row.Name},{row.Measure},{row.Grams}")),
        ("semicolons", rows => "Item;Quantity;Weight (g)\r\n" + Lines(rows, row => $"{row.Name};{row.Measure};{row.Grams}", "\r\n")),
        ("tabs", rows => "Food\tVolume\tMass, g\n" + Lines(rows, row => $"{row.Name}\t{row.Measure}\t{row.Grams} g")),
        ("quoted", rows => "\"Ingredient\",\"Amount\",\"Grams\"\n" + Lines(rows, row => $"\"{row.Name}\",\"{row.Measure}\",\"{row.Grams}\"")),
        ("other order", rows => "weight in grams,ingredient,measure\n" + Lines(rows, row => $"{row.Grams},{row.Name},{row.Measure}")),
        ("title and notes", rows => "Sheet of the class\n\nIngredient,Measure,Grams\n" + Lines(rows, row => $"{row.Name},{row.Measure},{row.Grams}") + "\nlevel measures\n"),
        ("no heading", rows => Lines(rows, row => $"{row.Name},{row.Measure},{row.Grams} g")),
        ("markdown", rows => "| Ingredient | Measure | Grams |\n|---|---|--:|\n" + Lines(rows, row => $"| {row.Name} | {row.Measure} | {row.Grams} |")),
        ("bars", rows => Lines(rows, row => $"{row.Name} | {row.Measure} | {row.Grams} g")),
        ("blanks", rows => "Ingredient          Measure      Grams\n" + Lines(rows, row => $"{row.Name,-20}{row.Measure,-13}{row.Grams,5}")),
        ("html", rows => "<table><tr><th>Ingredient</th><th>Measure</th><th>Grams</th></tr>\n" + Lines(rows, row => $"<tr><td>{row.Name}</td><td>{row.Measure}</td><td>{row.Grams}</td></tr>") + "</table>"),
        ("list of a page", rows => "<ul>\n" + Lines(rows, row => $"<li>{row.Measure} {row.Name} = {row.Grams} g</li>") + "</ul>"),
        ("typed, measure first", rows => Lines(rows, row => $"{row.Measure} {row.Name} = {row.Grams} g")),
        ("typed, name first", rows => Lines(rows, row => $"{row.Name}: {row.Measure} = {row.Grams} g")),
        ("typed, weight first", rows => Lines(rows, row => $"{row.Grams} g {row.Name} = {row.Measure}")),
        ("typed, leaders", rows => Lines(rows, row => $"{row.Name}, {row.Measure} ........ {row.Grams} g")),
        ("typed, bracket", rows => Lines(rows, row => $"- {row.Measure} ({row.Grams} g) {row.Name}")),
        ("measure in the name", rows => "ingredient,grams\n" + Lines(rows, row => $"{row.Measure} {row.Name},{row.Grams}")),
        ("number and unit apart", rows => "Food,Qty,Unit,Weight (g)\n" + Lines(rows, row => $"{row.Name},{row.Measure[..row.Measure.LastIndexOf(' ')]},{row.Measure[(row.Measure.LastIndexOf(' ') + 1)..]},{row.Grams}")),
    ];

    private static string Lines(Row[] rows, Func<Row, string> line, string end = "\n") => string.Concat(rows.Select(row => line(row) + end));

    public static TheoryData<string> Layouts => [.. s_layouts.Select(layout => layout.Name)];

    [Theory]
    [MemberData(nameof(Layouts))]
    public void AnyLayoutOfATableHasItsRows(string layout)
    {
        Func<Row[], string> write = s_layouts.Single(one => one.Name == layout).Write;
        Prop.ForAll(Tables, rows =>
        {
            string text = write(rows);
            Reading<TableText> reading = TableText.Read(text);
            string[] expected = [.. rows.Select(row => $"{row.Name} | {Amount.Parse(row.Measure)} | {row.Grams}")];
            string[] actual = reading.TryGet(out TableText? table) ? [.. table.Rows.Select(Said)] : [];
            return (expected.SequenceEqual(actual) && reading.TotalProblems == 0).Label($"{text}\n{reading}\n{string.Join("\n", actual)}");
        }).QuickCheckThrowOnFailure();
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("fa-IR")]
    public void TheCultureOfTheMachineChangesNothing(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            string[] here = [.. LayoutTests.Sheets.Select(sheet => Read(LayoutTests.Bytes(sheet.Data)))];
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(here, LayoutTests.Sheets.Select(sheet => Read(LayoutTests.Bytes(sheet.Data))));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
        static string Read(byte[] bytes)
        {
            Reading<TableText> reading = TableText.Read(bytes);
            return reading.TryGet(out TableText? table) ? table + string.Join('\n', table.Rows) + string.Join('\n', reading.Problems) : reading.ToString();
        }
    }

    [Property(MaxTest = 2000)]
    public void NoBytesThrow(byte[] bytes) => TableText.Read(bytes);

    [Property(MaxTest = 2000)]
    public bool NoTextThrowsAndEveryPlaceIsInIt(NonNull<string> text)
    {
        Reading<TableText> reading = TableText.Read(text.Get);
        int lines = text.Get.Split('\n', '\r').Length;
        return reading.Problems.All(problem => problem.Line >= 1 && problem.Line <= Math.Max(lines, 1));
    }

    private static readonly Gen<string> s_scraps = Gen.Elements(
        "1 cup", "200 g", "butter", ",", ";", "\t", "|", "---", "\n", "\r\n", "<table>", "<tr>", "<td>", "</td>", "<li>", "Ingredient", "Grams", "(oz)", "½", "1/", "-", "=", "....", "\"", "1,5", "1.5",
        "cups per pound", "about", "7 oz", "é", "\u0000", "\uFFFD", "&amp;", "1e400", "99999999999999999999", "0", "- [ ]", "**", "per", "to the pound", "NaN", "<sup>", "rowspan=99999999", "colspan=99999999", "<td rowspan=1000 colspan=1000>");

    [Fact]
    public void NoJumbleOfScrapsThrows() => Prop.ForAll(s_scraps.ListOf(30).ToArbitrary(), scraps =>
    {
        Reading<TableText> reading = TableText.Read(string.Concat(scraps));
        return reading.HasValue || reading.TotalProblems > 0;
    }).Check(Config.QuickThrowOnFailure.WithMaxTest(3000));

    // Twenty times the text may allocate about twenty times as much; a reader that looks again from the start would take four hundred.
    [Theory]
    [InlineData("1 ")]
    [InlineData("1/")]
    [InlineData("one ")]
    [InlineData("(")]
    [InlineData(")")]
    [InlineData("1 cup ")]
    [InlineData("1 cup (")]
    [InlineData("=.,;:")]
    [InlineData("about ")]
    [InlineData("|")]
    [InlineData(",")]
    [InlineData("\"")]
    [InlineData("\n")]
    [InlineData("a,1 cup,2\n")]
    [InlineData("a 1 cup = 2 g\n")]
    [InlineData("<td>")]
    [InlineData("<div>")]
    [InlineData("<table><tr><td rowspan=1000>")]
    [InlineData("per a lb ")]
    public void WorkGrowsWithTheText(string scrap)
    {
        long small = Allocated(string.Concat(Enumerable.Repeat(scrap, 2_000)));
        long large = Allocated(string.Concat(Enumerable.Repeat(scrap, 40_000)));
        Assert.True(large < 60 * Math.Max(small, 200_000), $"{small} bytes for 2 000, {large} for 40 000");
    }

    // Behind a whole statement the signs and words round its name are looked at, too.
    [Theory]
    [InlineData("of ")]
    [InlineData("( ")]
    [InlineData("about the ")]
    [InlineData(") of ")]
    [InlineData("1 cup 2 g ")]
    public void WorkGrowsWithWhatStandsBehindAStatement(string scrap)
    {
        long small = Allocated("1 cup = 2 g " + string.Concat(Enumerable.Repeat(scrap, 2_000)));
        long large = Allocated("1 cup = 2 g " + string.Concat(Enumerable.Repeat(scrap, 40_000)));
        Assert.True(large < 60 * Math.Max(small, 200_000), $"{small} bytes for 2 000, {large} for 40 000");
    }

    private static long Allocated(string text)
    {
        TableText.Read(text[..Math.Min(text.Length, 100)]);
        long before = GC.GetAllocatedBytesForCurrentThread();
        TableText.Read(text);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    // Found by hand: the product of a number of 17 digits and 250 mL does not fit.
    [Theory]
    [InlineData("Food,Metric cup,Grams\nsugar,99999999999999999,200\nwater,1,250\n", 2)]
    [InlineData("Food,Cups,Grams\nsugar,99999999999999999,200\nwater,1,237\n", 0)]
    [InlineData("Food,Cups per pound\nsugar,0.00000000000000001\nwater,2\n", 0)]
    [InlineData("Food,Metric cup,Grams\nsugar,2 tubs,200\nwater,1,250\n", 2)]
    public void ANumberThatDoesNotFitIsAProblem(string text, int line)
    {
        Reading<TableText> reading = TableText.Read(text);
        Assert.Equal(line == 0 ? [] : [line], reading.Problems.Select(problem => problem.Line));
    }

    private static string Said(TableEntry row) => $"{row.Name} | {row.Measure} | {row.Figures[0].Value.ToString(row.Figures[0].Decimals == 1 ? "0.0" : "0", CultureInfo.InvariantCulture)}";
}
