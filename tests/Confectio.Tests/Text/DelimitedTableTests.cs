using Confectio.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Text;

/// <summary>Tables read from delimited text, with the line each row stands on.</summary>
public sealed class DelimitedTableTests
{
    private sealed record Row(int Line, string[] Fields);

    private static (string[] Header, List<Row> Rows, ProblemList Problems) Read(string text)
    {
        string[] header = [];
        List<Row> rows = [];
        ProblemList problems = [];
        DelimitedTable.Read(new StringReader(text), problems, table =>
        {
            header = [.. table.Header];
            return row =>
            {
                string[] fields = new string[row.Count];
                for (int i = 0; i < fields.Length; i++)
                    fields[i] = row[i].ToString();
                rows.Add(new Row(row.Line, fields));
            };
        });
        return (header, rows, problems);
    }

    [Theory]
    [InlineData("a,b\n1,2\n3,4\n")]
    [InlineData("a,b\r\n1,2\r\n3,4\r\n")]
    [InlineData("a,b\r1,2\r3,4\r")]
    [InlineData("a;b\n1;2\n3;4")]
    [InlineData("a\tb\n1\t2\n3\t4")]
    [InlineData("\uFEFFa,b\n1,2\n3,4")]
    [InlineData(" a , b \n 1, 2 \n3 ,4")]
    [InlineData("\"a\",\"b\"\n\"1\",\"2\"\n\"3\",\"4\"")]
    [InlineData("\uFEFF\"a\",\"b\"\n1,2\n3,4")]
    public void EveryWayOfWritingTheSameTableReadsTheSame(string text)
    {
        (string[] header, List<Row> rows, ProblemList problems) = Read(text);
        Assert.Empty(problems);
        Assert.Equal(["a", "b"], header);
        Assert.Equal([2, 3], rows.Select(row => row.Line));
        Assert.Equal(["1", "2"], rows[0].Fields);
        Assert.Equal(["3", "4"], rows[1].Fields);
    }

    [Theory]
    [InlineData("a,b\n\n1,2\n\n\n3,4\n", 3, 6)]
    [InlineData("a,b\r\n\r\n1,2\r\n\r\n\r\n3,4\r\n", 3, 6)]
    [InlineData("a,b\r\r1,2\r\r\r3,4\r", 3, 6)]
    [InlineData("\n\na,b\n1,2\n3,4", 4, 5)]
    [InlineData("\r\na;b\r\n1;2\r\n3;4", 3, 4)]
    [InlineData("   \na\tb\n1\t2\n3\t4", 3, 4)]
    public void BlankLinesAreCountedAndNotRead(string text, int first, int second)
    {
        (string[] header, List<Row> rows, ProblemList problems) = Read(text);
        Assert.Empty(problems);
        Assert.Equal(["a", "b"], header);
        Assert.Equal([first, second], rows.Select(row => row.Line));
        Assert.Equal(["3", "4"], rows[1].Fields);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n\n")]
    [InlineData("   ")]
    [InlineData("\uFEFF")]
    public void AnEmptyTableIsAProblemOfLineOne(string text)
    {
        (_, List<Row> rows, ProblemList problems) = Read(text);
        Assert.Empty(rows);
        Problem problem = Assert.Single(problems);
        Assert.Equal(1, problem.Line);
        Assert.Null(problem.Column);
        Assert.StartsWith("line 1: the table is empty", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void AHeaderAloneIsATableWithoutRows()
    {
        (string[] header, List<Row> rows, ProblemList problems) = Read("a,b");
        Assert.Equal(["a", "b"], header);
        Assert.Empty(rows);
        Assert.Empty(problems);
    }

    [Fact]
    public void AQuoteThatIsNotClosedCostsOneLineOnly()
    {
        (_, List<Row> rows, ProblemList problems) = Read("a,b,c\n1,\"2,3\n4,5,6\n7,8,\"9");
        Assert.Equal([(2, "1|2,3"), (3, "4|5|6"), (4, "7|8|9")], rows.Select(row => (row.Line, string.Join("|", row.Fields))));
        Assert.Equal([2, 4], problems.Select(problem => problem.Line));
        Assert.All(problems, problem => Assert.Contains("quotation mark", problem.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void DoubledQuotesAreOneQuoteAndSeparatorsInsideQuotesAreText()
    {
        (_, List<Row> rows, ProblemList problems) = Read("a,b\n\"say \"\"yes\"\"\",\"x,y\"\n\"\"\"\",\"\"\n");
        Assert.Empty(problems);
        Assert.Equal(["say \"yes\"", "x,y"], rows[0].Fields);
        Assert.Equal(["\"", ""], rows[1].Fields);
    }

    [Fact]
    public void AnInchMarkInTheMiddleOfAFieldCostsItsLineOnly()
    {
        (_, List<Row> rows, ProblemList problems) = Read("a,b\n9\" pan,2\n3,4");
        Assert.Equal([2], problems.Select(problem => problem.Line));
        Assert.Equal([2, 3], rows.Select(row => row.Line));
        Assert.Equal(["3", "4"], rows[1].Fields);
    }

    [Fact]
    public void ALineThatIsTooLongIsOneProblemAndTheNextLineIsRead()
    {
        (_, List<Row> rows, ProblemList problems) = Read("a,b\n1," + new string('x', LineGuard.LongestLine) + "\n3,4\n");
        Problem problem = Assert.Single(problems);
        Assert.Equal(2, problem.Line);
        Assert.Contains("4194304 characters", problem.Message, StringComparison.Ordinal);
        Assert.Equal(["3", "4"], rows[^1].Fields);
        Assert.Equal(3, rows[^1].Line);
    }

    [Fact]
    public void ShortAndLongRowsAreReadAsFarAsTheyGo()
    {
        (_, List<Row> rows, ProblemList problems) = Read("a,b,c\n1\n1,2,3,4\n");
        Assert.Empty(problems);
        Assert.Equal([1, 4], rows.Select(row => row.Fields.Length));
    }

    [Fact]
    public void AFieldThatIsNotThereIsEmpty()
    {
        List<string> read = [];
        DelimitedTable.Read(new StringReader("a,b\n1\n"), [], table =>
        {
            int b = table.Find("B"), none = table.Find("none");
            Assert.Equal(1, b);
            Assert.Equal(-1, none);
            return row =>
            {
                read.Add(row[b].ToString());
                read.Add(row[none].ToString());
            };
        });
        Assert.Equal(["", ""], read);
    }

    [Fact]
    public void TheFirstColumnThatStandsTwiceIsNamed()
    {
        DelimitedTable.Read(new StringReader("a,b,B,a\n"), [], table =>
        {
            Assert.Equal("B", table.Repeated);
            return null;
        });
    }

    [Property(MaxTest = 300)]
    public Property ATableWrittenByTheRulesReadsBackTheSame()
    {
        Gen<char> letters = Gen.Elements('a', 'Z', '7', ',', ';', '\t', '"', '\'', 'é', '½', ' ', '漢', '\u00A0', '.', '-');
        Gen<string> field = letters.ListOf().Select(list => new string([.. list]).Trim());
        Gen<(string[][] Rows, char Separator, string End)> table =
            from columns in Gen.Choose(2, 6)
            from count in Gen.Choose(0, 12)
            from rows in field.ArrayOf(columns).ArrayOf(count)
            from separator in Gen.Elements(',', ';', '\t')
            from end in Gen.Elements("\n", "\r\n", "\r")
            select (rows, separator, end);
        return Prop.ForAll(table.ToArbitrary(), written =>
        {
            string[] header = [.. Enumerable.Range(0, written.Rows.Length == 0 ? 2 : written.Rows[0].Length).Select(i => "column" + i)];
            string text = Rfc4180.Write([header, .. written.Rows], written.Separator, written.End);
            (string[] names, List<Row> rows, ProblemList problems) = Read(text);
            return problems.Count == 0 && names.SequenceEqual(header)
                && rows.Select(row => row.Fields).Zip(written.Rows, (read, wrote) => read.SequenceEqual(wrote)).All(same => same)
                && rows.Count == written.Rows.Length
                && rows.Select(row => row.Line).SequenceEqual(Enumerable.Range(2, rows.Count));
        });
    }
}
