using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Text;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Text;

/// <summary>What a hostile text may cost is bounded, and the bound is said.</summary>
public sealed class BoundsTests
{
    [Fact]
    public void ProblemsAreListedUpToAThousandAndTheRestIsCounted()
    {
        TableVerdict verdict = ConversionTableVetter.Vet(new StringReader("ingredient,measure,grams\n" + string.Concat(Enumerable.Repeat("x,1 cup,z\n", 50_000)) + "water,1 cup,237\n"), IngredientTable.BuiltIn);
        Assert.Equal(1001, verdict.Problems.Count);
        Assert.Single(verdict.Rows); // the good row after them all is read
        Assert.Equal(1002, verdict.Problems[^1].Line);
        Assert.Contains("49000 more problems", verdict.Problems[^1].ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(verdict.Problems.Take(1000), problem => problem.Message.Contains("more problems", StringComparison.Ordinal));
    }

    [Fact]
    public void ProblemsOfALayerAreBoundedToo()
    {
        IngredientTable.BuiltIn.LayerWeights(new StringReader("ingredient,amount,packing,grams,kind,source\n" + string.Concat(Enumerable.Repeat(",,,,,\n", 5000)) + "water,-,,,,\n")).Told(out IReadOnlyList<Problem> problems);
        Assert.Equal(1001, problems.Count);
    }

    [Fact]
    public void AThousandProblemsAreListedWhole()
    {
        ProblemList problems = [];
        for (int i = 1; i <= 1000; i++)
            problems.Add(new Problem(1001 - i, null, "wrong"));
        problems.SortByLine();
        Assert.Equal(Enumerable.Range(1, 1000), problems.Select(problem => problem.Line));
        problems.Add(new Problem(7, null, "wrong"));
        Assert.Equal("line 7: 1 more problems, of this line and others, are not listed; at most 1000 are", problems[^1].ToString());
        Assert.Equal(1001, problems.Total);
    }

    [Fact]
    public void ALineOfMoreCharactersThanAnIntCountsIsCutOnce()
    {
        LineGuard guard = new(new Endless((1L << 31) + 100_000));
        char[] buffer = new char[1 << 16];
        long passed = 0;
        for (int got; (got = guard.Read(buffer)) > 0;)
            passed += got;
        Assert.Equal(LineGuard.LongestLine, passed);
        Assert.Equal([1], guard.CutLines);
        Assert.Empty(guard.OpenQuotes);
    }

    [Theory]
    [InlineData("F100000000")]
    [InlineData("E999999999")]
    [InlineData("F100")]
    [InlineData("F000000000000000000000000000000001")]
    public void AFormatOfAHundredMillionDigitsIsRefused(string format)
    {
        Assert.Throws<FormatException>(() => new Spread(1, 2, 3).ToString(format));
        Assert.Throws<FormatException>(() => Brix.FromPercent(60).ToString(format));
        Assert.Throws<FormatException>(() => AirPressure.SeaLevel.ToString(format));
    }

    [Fact]
    public void UsualFormatsAreNot()
    {
        Assert.Equal("2.00 (1.00 to 3.00)", new Spread(1, 2, 3).ToString("F2"));
        Assert.Equal("2 (1 to 3)", new Spread(1, 2, 3).ToString("G99"));
        Assert.Equal("2.0 (1.0 to 3.0)", new Spread(1, 2, 3).ToString("0.0"));
    }

    /// <summary>The formula of a stranger, 4 kB, that cost 100 MB: near names were looked for on every line, with a table of edits for each name.</summary>
    [Fact]
    public void FourKilobytesOfUnknownNamesCostLittle()
    {
        string text = string.Concat(Enumerable.Range(0, 90).Select(i => $"46 c. of strawberry, sliarine {i}\n"));
        _ = IngredientTable.BuiltIn.Suggest("strawberry"); // the tables are read first
        IReadOnlyList<Problem> problems = [];
        long cost = Allocated.Least(() => Formula.ReadText("Fennmarsh Hall", new StringReader(text), IngredientTable.BuiltIn, MeasuringSystem.UsCustomary)
            .Told(out problems), 2_000_000);
        Assert.Equal(91, problems.Count);
        Assert.True(cost < 2_000_000, $"{cost} bytes");
    }

    [Fact]
    public void AnUnknownNameAllocatesNextToNothing()
    {
        _ = IngredientTable.BuiltIn.Suggest("strawberry");
        IReadOnlyList<string> near = IngredientTable.BuiltIn.Suggest("granluated sugar");
        long cost = Allocated.Least(() => IngredientTable.BuiltIn.Suggest("granluated sugar"), 20_000);
        Assert.Equal("granulated sugar", near[0]);
        Assert.True(cost < 20_000, $"{cost} bytes");
    }

    [Fact]
    public void ADeviationAboveTheMassIsAProblem()
    {
        // The row of a stranger: 26 g with a standard deviation of 100 kg had a spread without end, and an exception.
        const string Header = "ingredient,amount,system,packing,grams,low_grams,high_grams,samples,sd_grams,kind,source,locator,note\n";
        IngredientTable.BuiltIn.LayerWeights(new StringReader(Header + "coffee-instant,100 mL,,levelled,26,18,38,,100000,estimated,confectio,,\ncoffee-instant,100 mL,,sifted,26,18,38,,26,estimated,confectio,,\n")).Told(out IReadOnlyList<Problem> problems);
        Problem problem = Assert.Single(problems);
        Assert.Equal((2, "sd_grams"), (problem.Line, problem.Column));
    }

    /// <summary>One line of so many characters, and no memory for it.</summary>
    private sealed class Endless(long length) : TextReader
    {
        private long _left = length;

        public override int Read(char[] buffer, int index, int count)
        {
            int give = (int)Math.Min(count, _left);
            _left -= give;
            if (buffer[index] == '\0')
                Array.Fill(buffer, 'x', index, give);
            return give;
        }
    }
}
