using System.Text;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Formulas;

public sealed class FormulaJsonTests
{
    private const string Good = """
        {
          "confectioFormula": 1,
          "name": "Fennmarsh Hall icing",
          "lines": [
            { "ingredient": "sugar-icing", "amount": "1 1/2 cups", "packing": "sifted", "system": "us-customary" },
            { "ingredient": "butter-unsalted", "grams": 113.4, "amount": "1 stick" },
            { "ingredient": "water", "grams": 30 }
          ],
          "boiledOffGrams": 5
        }
        """;

    [Property(Arbitrary = [typeof(FormulaGenerators)], MaxTest = 500)]
    public void WhatIsWrittenReadsBack(Formula formula)
    {
        string json = formula.ToJson();
        Formula read = Formula.ParseJson(json, IngredientTable.BuiltIn);
        Assert.Equal(formula.Name, read.Name);
        Assert.Equal(formula.BoiledOffGrams, read.BoiledOffGrams);
        Assert.Equal(formula.Lines.Count, read.Lines.Count);
        foreach ((FormulaLine before, FormulaLine after) in formula.Lines.Zip(read.Lines))
        {
            Assert.Same(before.Ingredient, after.Ingredient);
            Assert.Equal((before.Grams.Likely, before.AsWritten, before.Packing, before.MeasuringSystem), (after.Grams.Likely, after.AsWritten, after.Packing, after.MeasuringSystem));
            Assert.Equal(before.Grams.Low, after.Grams.Low, 1e-14 * before.Grams.Likely);
            Assert.Equal(before.Grams.High, after.Grams.High, 1e-14 * before.Grams.High);
        }
        Assert.Equal(json, read.ToJson());
    }

    [Fact]
    public void StreamsAndBytesAreReadAlike()
    {
        Formula formula = Formula.ParseJson(Good, IngredientTable.BuiltIn);
        string json = formula.ToJson();
        Assert.DoesNotContain('\r', json);
        using MemoryStream stream = new(Encoding.UTF8.GetBytes(json));
        Assert.Equal(json, Formula.ReadJson(stream, IngredientTable.BuiltIn).OrThrow().ToJson());
        Assert.Equal(json, Formula.ReadJson(Encoding.UTF8.GetBytes("\uFEFF" + json), IngredientTable.BuiltIn).OrThrow().ToJson());
    }

    [Fact]
    public void ALineHasGramsOrAnAmountOrBoth()
    {
        IReadOnlyList<FormulaLine> lines = Formula.ParseJson(Good, IngredientTable.BuiltIn).Lines;
        Assert.Equal(1.5 * Math.Sqrt(9500), lines[0].Grams.Likely, 1e-9); // USDA SR NDB 19336 and HERR 41: 100 and 95 g a cup
        Assert.Equal((113.4, Amount.Parse("1 stick")), (lines[1].Grams.Likely, lines[1].AsWritten!.Value));
        Assert.Null(lines[2].AsWritten);
    }

    [Fact]
    public void NamesOfAnyLettersAreKept()
    {
        Formula formula = Formula.Of("Crème \"brûlée\" + 1 <b> \u2028 \U0001F370\r\n", [FormulaLine.Of(IngredientTable.BuiltIn.Get("water"), 1)]);
        Assert.Equal(formula.Name, Formula.ParseJson(formula.ToJson(), IngredientTable.BuiltIn).Name);
    }

    public static TheoryData<string, string> BadTexts => new()
    {
        { "", "at line 1, column 1" },
        { "null", "confectioFormula is missing" },
        { "[]", "an object is expected" },
        { "{}", "confectioFormula is missing" },
        { With("\"confectioFormula\": 1", "\"confectioFormula\": 2"), "at line 2, column 23 ($.confectioFormula), version 2 was read and 1 is expected" },
        { With("\"confectioFormula\": 1", "\"confectioFormula\": \"1\""), "at line 2, column 23 ($.confectioFormula), the version is expected" },
        { With("\"boiledOffGrams\": 5", "\"boiledOffGrams\": 500"), "at line 9, column 21 ($.boiledOffGrams), boiledOffGrams was 500; it must be from 0 to " },
        { With("\"boiledOffGrams\"", "\"boilOff\""), "($.boilOff), there is no such member" },
        { With("\"boiledOffGrams\"", "\"boil_off\""), "at line 9, column 3 ($['boil_off']), there is no such member" },
        { With("\"boiledOffGrams\"", "\"größe.lines[1]\""), "at line 9, column 3 ($['größe.lines[1]']), there is no such member" },
        { With("30 }", "[30] }"), "($.lines[2].grams), a number is expected" },
        { With("113.4", "\"113.4\""), "at line 6, column 49 ($.lines[1].grams), a number is expected" },
        { With("113.4", "-1"), "($.lines[1].grams), grams was -1; it must be from 0 to 1000000000000" },
        { With("113.4", "1e400"), "at line 6, column 49 ($.lines[1].grams), the number is too large" },
        { With("113.4", "1e13"), "($.lines[1].grams), grams was 10000000000000;" },
        { With("113.4", "NaN"), "($.lines[1].grams)" },
        { With("113.4", "null, \"grams\": 3"), "($.lines[1].grams), the member 'grams' stands twice" },
        { With("\"1 stick\"", "\"1 bundle\""), "($.lines[1].amount), '1 bundle' is not an amount: at character 3" },
        { With("\"1 stick\"", "\"1 leaf\""), "($.lines[1].amount), A 'leaf' of unsalted butter is not known; known pieces:" },
        { With("\"1 stick\"", "\"1 cup\""), "($.lines[1]), system is missing" },
        { With("sifted", "shaken"), "at line 5, column 71 ($.lines[0].packing), 'shaken' is not a packing" },
        { With("sifted", "melted"), "($.lines[0].packing), No density of icing sugar is known melted: a powder or crystals are measured dry; known packings:" },
        { With("us-customary", "us"), "($.lines[0].system), 'us' is not a measuring system; one of these is expected: us-customary" },
        { With("sugar-icing", "icing suger"), "at line 5, column 21 ($.lines[0].ingredient), 'icing suger' is not an ingredient of this table; near names: icing sugar" },
        { With("\"grams\": 30", "\"gram\": 30"), "($.lines[2].gram), there is no such member" },
        { With(", \"grams\": 30", ""), "at line 7, column 5 ($.lines[2]), grams or amount is expected" },
        { With("\"grams\": 30", "\"grams\": 30, \"packing\": \"sifted\""), "($.lines[2].packing), there is no amount for it" },
        { With("\"grams\": 30", "\"grams\": 30,"), "($.lines[2]" }, // a trailing comma
        { With("\"grams\": 30", "\"grams\": 30 // scant"), "'/' cannot stand here in JSON" },
        { With("\"water\"", "5"), "at line 7, column 21 ($.lines[2].ingredient), a text is expected" },
        { With("\"water\"", "\"\\ud800\""), "the escape of half a character stands alone" },
        { With("\"ingredient\": \"water\", ", ""), "($.lines[2]), ingredient is missing" },
        { Good[..^30], "the text ends before it is complete" },
        { Good + "{}", "at line 10, column 2 ($)" },
        { "{\"confectioFormula\":1,\"lines\":[null]}", "($.lines[0]), null was read" },
        { "{\"confectioFormula\":1,\"lines\":[[]]}", "($.lines[0]), an object is expected" },
        { "{\"confectioFormula\":1,\"lines\":[]}", "from 1 to 1000 are expected" },
        { "{\"confectioFormula\":1,\"lines\":{}}", "($.lines), an array is expected" },
        { "{\"confectioFormula\":1}", "lines is missing" },
        { "{\"confectioFormula\":1,\"lines\":[{\"ingredient\":\"water\",\"grams\":0}]}", "a total above 0 g" },
        { new string('[', 100_000), "at line 1, column 17" },
        { string.Concat(Enumerable.Repeat("{\"a\":", 100_000)), "it goes deeper than 16 objects or arrays in one another" },
        { "{\"confectioFormula\":1,\"lines\":[" + string.Join(',', Enumerable.Repeat("{\"ingredient\":\"water\",\"grams\":1}", 100_000)) + "]}", "there are 100000 lines; from 1 to 1000 are expected" },
        { new string(' ', 5 << 20), "longer than 4194304 bytes" },
    };

    private static string With(string old, string fresh) => Good.Replace(old, fresh, StringComparison.Ordinal);

    [Theory]
    [MemberData(nameof(BadTexts))]
    public void ABadTextIsRefusedWithItsPlace(string json, string expected)
    {
        string message = Assert.Throws<FormatException>(() => Formula.ParseJson(json, IngredientTable.BuiltIn)).Message;
        Assert.Contains(expected, message, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", message, StringComparison.Ordinal);
        Assert.True(message.Length < 5000);
    }

    [Fact]
    public void BytesThatAreNoUtf8AreRefused()
    {
        byte[] bytes = Encoding.UTF8.GetBytes(Good);
        bytes[Good.IndexOf("icing\"", StringComparison.Ordinal)] = 0xC3;
        Assert.Contains("at line 3, column 27, the bytes are not UTF-8", Assert.Throws<FormatException>(() => Formula.ReadJson(bytes, IngredientTable.BuiltIn).OrThrow()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryBadLineIsNamedUpToTwenty()
    {
        string json = "{\"confectioFormula\":1,\"lines\":[" + string.Join(',', Enumerable.Repeat("{\"ingredient\":\"watr\",\"grams\":1}", 25)) + "]}";
        string message = Assert.Throws<FormatException>(() => Formula.ParseJson(json, IngredientTable.BuiltIn)).Message;
        Assert.Contains("$.lines[0].ingredient", message, StringComparison.Ordinal);
        Assert.Contains("$.lines[19].ingredient", message, StringComparison.Ordinal);
        Assert.DoesNotContain("$.lines[20]", message, StringComparison.Ordinal);
        Assert.EndsWith("; and 5 more.", message, StringComparison.Ordinal);
    }

    [Fact]
    public void AStreamWithoutEndIsGivenUp()
    {
        using EndlessStream stream = new();
        Assert.Throws<FormatException>(() => Formula.ReadJson(stream, IngredientTable.BuiltIn).OrThrow());
        Assert.InRange(stream.Given, FormulaJson.MaximumBytes, FormulaJson.MaximumBytes + (1 << 17));
    }

    [Fact]
    public void AnEditedTextIsReadOrRefused()
    {
        // Anything but a formula or a FormatException would escape here.
        Random random = new(1);
        byte[] good = Encoding.UTF8.GetBytes(Good);
        byte[] alphabet = [.. "{}[]\",:0123456789.eE+-\\u truefalsnl"u8, 0x00, 0x80, 0xC3, 0xFF];
        int read = 0;
        for (int n = 0; n < 5000; n++)
        {
            List<byte> bytes = [.. good];
            for (int edits = random.Next(1, 4); edits > 0; edits--)
            {
                int at = random.Next(bytes.Count);
                switch (random.Next(3))
                {
                    case 0:
                        bytes[at] = alphabet[random.Next(alphabet.Length)];
                        break;
                    case 1:
                        bytes.Insert(at, alphabet[random.Next(alphabet.Length)]);
                        break;
                    default:
                        bytes.RemoveRange(at, Math.Min(random.Next(1, 20), bytes.Count - at));
                        break;
                }
            }
            try
            {
                Formula.ReadJson([.. bytes], IngredientTable.BuiltIn).OrThrow();
                read++;
            }
            catch (FormatException)
            {
            }
        }
        Assert.InRange(read, 20, 4980);
    }

    private sealed class EndlessStream : Stream
    {
        public long Given { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => Given; set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            buffer.AsSpan(offset, count).Fill((byte)' ');
            Given += count;
            return count;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
