using Confectio.Ingredients;
using System.Globalization;
using Confectio.Measures;
using Confectio.Text;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>Bad input: each a clear message with its place, and the good rows are still judged.</summary>
public sealed class BadTableTests
{
    private const string Header = "ingredient,measure,grams\n";

    [Fact]
    public void AnEmptyFileIsUnreadable() => Unreadable("", 1, "empty");

    [Fact]
    public void AHeaderAloneHasNoRows()
    {
        TableVerdict verdict = Vet(Header);
        Assert.False(verdict.IsReadable);
        Assert.Empty(verdict.Rows);
        Assert.Null(verdict.System);
    }

    // Whatever the columns are called, what they hold says what they are.
    [Theory]
    [InlineData("stuff,measure,grams\nsugar,1 cup,200\n")]
    [InlineData("ingredient,amount,grams\nsugar,1 cup,200\n")]
    [InlineData("ingredient,measure,weight\nsugar,1 cup,200\n")]
    [InlineData("Zutat,Menge,Gewicht\nsugar,1 cup,200 g\n")]
    public void AHeadingOfOtherWordsIsUnderstood(string csv)
    {
        TableVerdict verdict = Vet(csv);
        Assert.Equal((2, 200.0), (Assert.Single(verdict.Rows).Line, verdict.Rows[0].PrintedGrams));
        Assert.Empty(verdict.Problems);
        Assert.NotEmpty(verdict.Layout);
    }

    [Fact]
    public void TwoColumnsOfWeightsAreHeldAgainstEachOther() =>
        Assert.Equal([410], Assert.Single(Vet("ingredient,measure,grams,grams\nsugar,1 cup,200,410\n").Wrong).OtherPrintedGrams);

    // 8 oz for 250 g all through is the habit of a table; one row of it is a mistake.
    [Fact]
    public void AnOunceThatIsNoneIsAHabitOfAWholeTable()
    {
        const string Habit = "ingredient,measure,oz,grams\nmilk,1 cup,8,250\nbutter,1 cup,8,250\nwater,1 cup,8,250\n";
        Assert.DoesNotContain(Vet(Habit).Rows, row => row.Explanation.Contains("contradict", StringComparison.Ordinal));
        Assert.Contains("contradict", Vet("ingredient,measure,oz,grams\nmilk,1 cup,8.6,244\nbutter,1 cup,8,227\nwater,1 cup,8.4,237\nhoney,1 cup,12,375\n").Rows[3].Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void AHeaderBelowBlankLinesIsNamedByItsOwnLine()
    {
        Assert.Contains(Vet("\n\nstuff,measure\nsugar,1 cup\n").Problems, problem => problem.Line == 3 && problem.Message.Contains("weights", StringComparison.Ordinal));
        Assert.All(TemperatureTableVetter.Vet(new StringReader("\n\nthing\noven\n"), IngredientTable.BuiltIn).Problems, problem => Assert.Equal(3, problem.Line));
    }

    [Fact]
    public void BytesThatAreNotUtf8AreSaidAndTheRowIsStillJudged()
    {
        // The second row's name is Latin-1: 0xE8 is no UTF-8.
        byte[] latin = [.. "ingredient,measure,grams\nflour,1 cup,125\ncr"u8, 0xE8, .. "me,1 cup,200\nsugar,1 cup,200\n"u8];
        using StreamReader text = new(new MemoryStream(latin));
        TableVerdict verdict = ConversionTableVetter.Vet(text, IngredientTable.BuiltIn);
        Assert.Equal([2, 3, 4], verdict.Rows.Select(row => row.Line));
        Problem problem = Assert.Single(verdict.Problems);
        Assert.Equal(3, problem.Line);
        Assert.Contains("UTF-8", problem.Message, StringComparison.Ordinal);
        byte[] oven = [.. "what,celsius\ncr"u8, 0xE8, .. "me br\n\noven,180\n"u8];
        using StreamReader temperatures = new(new MemoryStream(oven));
        Assert.Contains(TemperatureTableVetter.Vet(temperatures, IngredientTable.BuiltIn).Problems, found => found.Line == 2 && found.Message.Contains("UTF-8", StringComparison.Ordinal));
    }

    // Names that are in no table are groups of their own, and a group is summed over some 200 nodes in six systems: 10 kB a set of
    // sums. The bound is several times what a row needs, and half of one such set.
    [Theory]
    [InlineData("thing", 10_000, 1)]
    [InlineData("granulated suger", 10_000, 1)]
    [InlineData("thing", 2_000, 2)]
    [InlineData("thing", 2_000, 4)]
    [InlineData("thing", 2_000, 5)]
    public void AnUnknownNameCostsLittle(string name, int rows, int rowsOfAName)
    {
        string table = Header + string.Concat(Enumerable.Range(0, rows).Select(i => $"{name} {i / rowsOfAName},1 cup,{100 + (i % 100)}\n"));
        Vet(Header + "flour,1 cup,125\n"); // what is made once is made
        long before = GC.GetAllocatedBytesForCurrentThread();
        TableVerdict verdict = Vet(table);
        long perRow = (GC.GetAllocatedBytesForCurrentThread() - before) / rows;
        Assert.Equal(rows, verdict.Rows.Count);
        // From three rows on, rows of an unknown name are held against each other.
        Assert.Equal(rowsOfAName < 3 ? rows : 0, verdict.Count(Verdict.Unknown));
        Assert.True(perRow < 5_000, $"{perRow} bytes a row");
    }

    [Fact]
    public void BinaryJunkIsUnreadable()
    {
        byte[] junk = new byte[100_000];
        new Random(1).NextBytes(junk);
        using StreamReader reader = new(new MemoryStream(junk));
        TableVerdict verdict = ConversionTableVetter.Vet(reader, IngredientTable.BuiltIn);
        Assert.False(verdict.IsReadable);
        Assert.NotEmpty(verdict.Problems);
        Assert.All(verdict.Problems, problem => Assert.True(problem.ToString().Length < 400));
    }

    [Theory]
    [InlineData("sugar,1 cup,-200", "grams", "-200")]
    [InlineData("sugar,1 cup,0", "grams", "0.01 g")]
    [InlineData("sugar,1 cup,NaN", "grams", "NaN")]
    [InlineData("sugar,1 cup,1e308", "grams", "1e308")]
    [InlineData("sugar,1 cup,99999999999999999", "grams", "1 000 000 g")]
    [InlineData("sugar,1 cup,∞", "grams", "∞")]
    [InlineData("sugar,1 cup,", "grams", "empty")]
    [InlineData("sugar,1 cup", "grams", "empty")]
    [InlineData("sugar,1 cup,1.2.3", "grams", "1.2.3")]
    [InlineData("sugar,1/0 cup,200", "measure", "0 below its line")]
    [InlineData("sugar,cups,200", "measure", "number was expected")]
    [InlineData("sugar,0 cups,200", "measure", "no amount")]
    [InlineData("sugar,1 blorp,200", "measure", "unit is not known")]
    [InlineData("butter,1 knob,15", "measure", "a guess of 10-25 g")]
    [InlineData("sugar,,200", "measure", "empty")]
    public void ABadRowIsAProblemAndTheRestIsJudged(string row, string column, string words)
    {
        TableVerdict verdict = Vet(Header + "water,1 cup,237\n" + row + "\nmilk,1 cup,244\n");
        Problem problem = Assert.Single(verdict.Problems);
        Assert.Equal(3, problem.Line);
        Assert.Equal(column, problem.Column);
        Assert.Contains(words, problem.Message, StringComparison.Ordinal);
        Assert.Equal([2, 4], verdict.Rows.Select(good => good.Line));
        Assert.All(verdict.Rows, good => Assert.Equal(Verdict.Agrees, good.Verdict));
        Assert.True(verdict.IsReadable);
    }

    // A decimal comma is found out from the table, and never mixed with a point in silence.
    [Fact]
    public void AMixedDecimalMarkIsAProblem()
    {
        TableVerdict verdict = Vet(Header + "water,1 cup,236.6\nsugar,1 Tbsp,\"12,5\"\nmilk,1 Tbsp,15.3\n");
        Assert.Equal((3, "grams"), (Assert.Single(verdict.Problems).Line, verdict.Problems[0].Column));
        Assert.Contains("point", verdict.Problems[0].Message, StringComparison.Ordinal);
        Assert.Contains("comma", verdict.Layout, StringComparison.Ordinal);
    }

    [Fact]
    public void AFirstRowWithoutANameIsAProblem()
    {
        TableVerdict verdict = Vet(Header + ",1 cup,237\nmilk,1 cup,244\n,1 Tbsp,15\n");
        Assert.Equal((2, "ingredient"), (Assert.Single(verdict.Problems).Line, verdict.Problems[0].Column));
        Assert.Equal(["milk", "milk"], verdict.Rows.Select(row => row.Ingredient));
    }

    [Theory]
    [InlineData("244.00000000000000")]
    [InlineData("244.000000000")]
    [InlineData("0.01")]
    [InlineData("1000000")]
    [InlineData("1/999999999999")]
    public void ExtremePrintsAreJudgedWithANumber(string grams)
    {
        foreach (string measure in (string[])["1 cup", "999999999999 cups", "1/999999999 tsp", "1 kg", "1-1000000 cups"])
        {
            TableVerdict verdict = Vet(Header + "water,1 cup,237\n" + $"milk,{measure},{grams}\n");
            Assert.All(verdict.Rows, row => Assert.InRange(row.ProbabilityRight, 0, 1));
            Assert.True(verdict.Rows.Count + verdict.Problems.Count == 2);
        }
    }

    [Fact]
    public void MixedDecimalSignsAreNotGuessed()
    {
        TableVerdict verdict = Vet("ingredient;measure;grams\nwater;1 cup;236.6\nmilk;1 cup;244,0\n");
        Assert.Equal(3, Assert.Single(verdict.Problems).Line);
        TableVerdict comma = ConversionTableVetter.Vet(new StringReader("ingredient;measure;grams\nwater;1 cup;236.6\nmilk;1 cup;244,0\n"), IngredientTable.BuiltIn,
            new VettingOptions { Reading = AmountReading.DecimalComma });
        Assert.Equal(2, Assert.Single(comma.Problems).Line);
        Assert.Equal(244, Assert.Single(comma.Rows).PrintedGrams);
    }

    [Fact]
    public void AMillionCharactersInAFieldCostOneRow()
    {
        TableVerdict verdict = Vet(Header + "water,1 cup,237\n" + new string('x', 1_000_000) + ",1 cup,100\nsugar," + new string('1', 1_000_000) + ",100\nmilk,1 cup,244\n");
        Assert.Equal([2, 3, 5], verdict.Rows.Select(row => row.Line));
        Assert.Equal(Verdict.Unknown, verdict.Rows[1].Verdict);
        Assert.Equal(4, Assert.Single(verdict.Problems).Line);
        Assert.True(verdict.Problems[0].Message.Length < 250);
    }

    [Fact]
    public void AMillionColumnsCostOneRow()
    {
        TableVerdict verdict = Vet(Header + "water,1 cup,237\n" + new string(',', 1_000_000) + "\nmilk,1 cup,244\n");
        Assert.Equal([2, 4], verdict.Rows.Select(row => row.Line));
        Assert.All(verdict.Problems, problem => Assert.Equal(3, problem.Line));
    }

    [Fact]
    public void ALineOfTenMegabytesCostsOneRow()
    {
        TableVerdict verdict = Vet(Header + "water,1 cup,237\nsugar,1 cup," + new string('7', 10_000_000) + "\nmilk,1 cup,244\n");
        Assert.Equal([2, 4], verdict.Rows.Select(row => row.Line));
        Assert.Contains(verdict.Problems, problem => problem.Line == 3);
    }

    [Fact]
    public void AForgottenQuoteCostsOneRow()
    {
        TableVerdict verdict = Vet(Header + "water,1 cup,237\n\"sugar,1 cup,200\nmilk,1 cup,244\n");
        Assert.Equal([2, 4], verdict.Rows.Select(row => row.Line));
        Assert.Contains(verdict.Problems, problem => problem.Line == 3 && problem.Message.Contains("quotation", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("ingredient,measure,grams\r\n\"sugar, granulated\",1 cup,200\r\n")]
    [InlineData("ingredient;measure;grams\n\"sugar, granulated\";1 cup;200\n")]
    [InlineData("ingredient\tmeasure\tgrams\nsugar, granulated\t1 cup\t200\n")]
    [InlineData("\uFEFFingredient,measure,grams\n\"sugar, granulated\",1 cup,200")]
    [InlineData("Ingredient , MEASURE,Grams\n \"sugar, granulated\",1 cup, 200 g\n")]
    [InlineData("grams,note,measure,ingredient\n200,x,1 cup,\"sugar, granulated\"\n")]
    public void TheUsualShapesOfFilesAreRead(string csv)
    {
        TableVerdict verdict = Vet(csv);
        Assert.Empty(verdict.Problems);
        RowFinding row = Assert.Single(verdict.Rows);
        Assert.Equal("sugar-granulated", row.Matched!.Id);
        Assert.Equal(200, row.PrintedGrams);
    }

    [Fact]
    public void AnUnitThatASystemLacksIsStillJudged()
    {
        TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(Header + "milk,1 pint,488\nmilk,1 cup,257\n"), IngredientTable.BuiltIn, new VettingOptions { System = MeasuringSystem.Metric });
        Assert.Empty(verdict.Problems);
        Assert.All(verdict.Rows, row => Assert.Equal(Verdict.Agrees, row.Verdict));
    }

    [Fact]
    public void EveryCultureJudgesAlike()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            string expected = Describe();
            foreach (CultureInfo culture in CultureInfo.GetCultures(CultureTypes.AllCultures))
            {
                CultureInfo.CurrentCulture = culture;
                Assert.True(expected == Describe(), culture.Name);
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        static string Describe()
        {
            TableVerdict verdict = Tables.Vet(["ICING SUGAR|1½ CUPS|SIFTED|342", "Milk|1 cup|244", "salt|1 tsp|0.6", "iceing|1 cup|3", "sugar|1 TBSP|12.5"]);
            return verdict.System + string.Concat(verdict.Rows.Select(row => row.Explanation + row.ProbabilityRight.ToString("R", CultureInfo.InvariantCulture)));
        }
    }

    [Fact]
    public void AReaderThatTricklesIsReadAlike()
    {
        string csv = new SeededTables(5).Next(new SeededSetting(40, true)).ToCsv();
        TableVerdict whole = Vet(csv), trickled = ConversionTableVetter.Vet(new Trickle(csv), IngredientTable.BuiltIn);
        Assert.Equal(whole.Rows.Select(row => (row.Line, row.Ingredient, row.ProbabilityRight)), trickled.Rows.Select(row => (row.Line, row.Ingredient, row.ProbabilityRight)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-0.1)]
    [InlineData(0.6)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void OptionsHaveRanges(double value)
    {
        Assert.Contains("FalseDiscoveryRate", Assert.Throws<ArgumentOutOfRangeException>(() => new VettingOptions { FalseDiscoveryRate = value }).Message, StringComparison.Ordinal);
        Assert.Contains("ExpectedWrong", Assert.Throws<ArgumentOutOfRangeException>(() => new VettingOptions { ExpectedWrong = value }).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NothingIsRefused() => Assert.Throws<ArgumentNullException>("table", () => ConversionTableVetter.Vet((TextReader)null!, IngredientTable.BuiltIn));

    private static void Unreadable(string csv, int line, string words)
    {
        TableVerdict verdict = Vet(csv);
        Assert.False(verdict.IsReadable);
        Assert.False(verdict.HasMistakes);
        Problem problem = Assert.Single(verdict.Problems);
        Assert.Equal(line, problem.Line);
        Assert.Contains(words, problem.Message, StringComparison.Ordinal);
    }

    private static TableVerdict Vet(string csv) => ConversionTableVetter.Vet(new StringReader(csv), IngredientTable.BuiltIn);

    /// <summary>A slow stream: never more than three characters at a time.</summary>
    private sealed class Trickle(string text) : TextReader
    {
        private int _at;

        public override int Read(char[] buffer, int index, int count)
        {
            int n = Math.Min(Math.Min(3, count), text.Length - _at);
            text.CopyTo(_at, buffer, index, n);
            _at += n;
            return n;
        }

        public override int Read(Span<char> buffer)
        {
            int n = Math.Min(Math.Min(3, buffer.Length), text.Length - _at);
            text.AsSpan(_at, n).CopyTo(buffer);
            _at += n;
            return n;
        }
    }
}
