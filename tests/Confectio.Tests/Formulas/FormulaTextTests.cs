using System.Globalization;
using System.Text;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Formulas;

public sealed class FormulaTextTests
{
    [Theory]
    [InlineData("1 1/2 cups sifted icing sugar", "sugar-icing", "1 1/2 cups", Packing.Sifted)]
    [InlineData("1½ c. sifted icing sugar", "sugar-icing", "1 1/2 cups", Packing.Sifted)]
    [InlineData("1 cup, sifted, icing sugar", "sugar-icing", "1 cup", Packing.Sifted)]
    [InlineData("250 g butter", "butter-unsalted", "250 g", null)]
    [InlineData("250g of butter", "butter-unsalted", "250 g", null)]
    [InlineData("2 sticks unsalted butter (softened)", "butter-unsalted", "2 sticks", Packing.Softened)]
    [InlineData("3 large egg whites", "egg-white", "3 large", null)]
    [InlineData("8 large egg white", "egg-white", "8 large", null)]
    [InlineData("2 large eggs", "egg-whole", "2 large", null)]
    [InlineData("2 tbsp + 1 tsp vanilla extract", "vanilla-extract", "2 Tbsp + 1 tsp", null)]
    [InlineData("2-3 tsp vanilla extract", "vanilla-extract", "2-3 tsp", null)]
    [InlineData("1 cup firmly packed brown sugar", "sugar-brown", "1 cup", Packing.Packed)]
    [InlineData("1 lb 4 oz butter", "butter-unsalted", "1 lb + 4 oz", null)]
    [InlineData("two cups sugar", "sugar-granulated", "2 cups", null)]
    [InlineData("butter, softened, 225 g", "butter-unsalted", "225 g", Packing.Softened)]
    [InlineData("1 x 397 g tin sweetened condensed milk", "milk-condensed", "397 g", null)]
    [InlineData("• ½ cup (1 stick) melted butter", "butter-unsalted", "1/2 cup", Packing.Melted)]
    [InlineData("• ½ cup (1 stick) butter, melted", "butter-unsalted", "1/2 cup", null)]
    [InlineData("115 g butter, melted", "butter-unsalted", "115 g", Packing.Melted)]
    public void ALineIsReadAsACookWritesIt(string text, string id, string amount, Packing? packing)
    {
        FormulaLine line = Assert.Single(Formula.ParseText("x", text, IngredientTable.BuiltIn, MeasuringSystem.UsCustomary).Lines);
        Assert.Equal((id, Amount.Parse(amount), packing), (line.Ingredient.Id, line.AsWritten!.Value, line.Packing));
    }

    [Fact]
    public void ABadLineIsAProblemAndHidesNoOther()
    {
        const string Text = "\uFEFF# Fennmarsh Hall buttercream\r\n250 g butter\r\n\r\n  \r\n5 lemons\r1 cup icing suger\n1 cup butter, sifted\nsalt\n3 sticks egg whites\n1 cup\n2 cups icing sugar";
        Formula? formula = Formula.ReadText("x", new StringReader(Text), IngredientTable.BuiltIn, MeasuringSystem.UsCustomary).Told(out IReadOnlyList<Problem> problems);
        Assert.Equal(["butter-unsalted", "sugar-icing"], formula!.Lines.Select(line => line.Ingredient.Id));
        Assert.Equal([(5, "amount"), (6, "ingredient"), (7, "packing"), (8, "amount"), (9, "amount"), (10, "ingredient")],
            problems.Select(problem => (problem.Line, problem.Column!)));
        Assert.Contains("near names: icing sugar", problems[1].Message, StringComparison.Ordinal);
        Assert.Contains("known pieces: large", problems[4].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("# nothing\n\n")]
    [InlineData("5 lemons")]
    [InlineData("0 g butter")]
    public void WhereNothingCanBeUsedThereIsNoFormulaAndAProblemSaysWhy(string text)
    {
        Formula? formula = Formula.ReadText("x", new StringReader(text), IngredientTable.BuiltIn, MeasuringSystem.Metric).Told(out IReadOnlyList<Problem> problems);
        Assert.Null(formula);
        Assert.NotEmpty(problems);
        Assert.Throws<FormatException>(() => Formula.ParseText("x", text, IngredientTable.BuiltIn, MeasuringSystem.Metric));
    }

    [Fact]
    public void ParsingTellsAllProblemsUpToTwenty()
    {
        FormatException thrown = Assert.Throws<FormatException>(() => Formula.ParseText("x", "250 g butter\n5 lemons\n1 cup icing suger", IngredientTable.BuiltIn, MeasuringSystem.Metric));
        Assert.Contains("line 2, column amount", thrown.Message, StringComparison.Ordinal);
        Assert.Contains("line 3, column ingredient", thrown.Message, StringComparison.Ordinal);
        string many = Assert.Throws<FormatException>(() => Formula.ParseText("x", string.Concat(Enumerable.Repeat("?\n", 100)), IngredientTable.BuiltIn, MeasuringSystem.Metric)).Message;
        Assert.Contains("and 81 more", many, StringComparison.Ordinal); // 100 lines, and that nothing was left of them
    }

    [Fact]
    public void AHugeLineCostsThatLine()
    {
        string text = "250 g butter\n1 cup " + new string('x', 10_000_000) + "\n100 g water";
        Formula? formula = Formula.ReadText("x", new StringReader(text), IngredientTable.BuiltIn, MeasuringSystem.Metric).Told(out IReadOnlyList<Problem> problems);
        Assert.Equal(2, formula!.Lines.Count);
        Assert.Equal(2, Assert.Single(problems).Line);
        Assert.Contains("1000", problems[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ReadingStopsAtTheMostLines()
    {
        string text = string.Concat(Enumerable.Repeat("1 g butter\n\n", 100_000));
        Formula? formula = Formula.ReadText("x", new StringReader(text), IngredientTable.BuiltIn, MeasuringSystem.Metric).Told(out IReadOnlyList<Problem> problems);
        Assert.Equal(1000, formula!.Lines.Count);
        Assert.Equal(2001, Assert.Single(problems).Line);
    }

    [Theory]
    [InlineData("a\nb\r\nc\rd", "1a 2b 3c 4d")]
    [InlineData("\uFEFFa\n\n\nb\n", "1a 2 3 4b")]
    [InlineData("\r\r\n\n", "1 2 3")]
    [InlineData("", "")]
    [InlineData("abcdefghij\nk", "1abcdefgh! 2k")]
    public void LinesAreCountedHoweverTheyEnd(string text, string expected)
    {
        foreach (TextReader reader in (TextReader[])[new StringReader(text), new StreamReader(new OneByteStream(Encoding.UTF8.GetBytes(text)))])
            Assert.Equal(expected, string.Join(' ', ShortLines.Of(reader, 8).Select(line => line.Number.ToString(CultureInfo.InvariantCulture) + line.Text + (line.IsCut ? "!" : ""))));
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    public void TheCultureChangesNothing(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Formula formula = Formula.ParseText("x", "1.5 CUPS SIFTED ICING SUGAR\n0.5 g butter", IngredientTable.BuiltIn, MeasuringSystem.UsCustomary);
            Assert.Equal("1 1/2 cups sifted icing sugar (146.2 g)", formula.Lines[0].ToString());
            Assert.Equal("x, 146.7 g", formula.ToString());
            Assert.True(FormulaPart.TryRead("MILK-FAT", out _)); // a Turkish capital I is another letter
            Assert.Contains("water-phase", FormulaPart.All.Select(part => part.Word));
            Assert.StartsWith("water: 0.", Balance.Of(formula).ToString(), StringComparison.Ordinal);
            string json = formula.ToJson();
            Assert.Contains("0.5", json, StringComparison.Ordinal);
            Assert.Equal(json, Formula.ParseJson(json, IngredientTable.BuiltIn).ToJson());
            Assert.Contains("0.5", Assert.Throws<ArgumentOutOfRangeException>(() => FormulaLine.Of(formula.Lines[0].Ingredient, -0.5)).Message, StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    /// <summary>A stream that never gives more than a byte at a time.</summary>
    private sealed class OneByteStream(byte[] bytes) : MemoryStream(bytes)
    {
        public override int Read(byte[] buffer, int offset, int count) => base.Read(buffer, offset, Math.Min(count, 1));

        public override int Read(Span<byte> buffer) => base.Read(buffer[..Math.Min(buffer.Length, 1)]);
    }
}
