using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Text;

/// <summary>What stands between a text and the parser: one bad line costs one line.</summary>
public sealed class LineGuardTests
{
    [Theory]
    [InlineData("")]
    [InlineData("a,b\n1,2\n")]
    [InlineData("a,b\r\n1,2\r\n")]
    [InlineData("a,b\r1,2\r")]
    [InlineData("a,\"b,c\"\n\n\"d \"\"e\"\"\",f")]
    public void ATextWithNothingWrongPassesUnchanged(string text)
    {
        LineGuard guard = new(new StringReader(text));
        Assert.Equal(text, guard.ReadToEnd());
        Assert.Empty(guard.OpenQuotes);
        Assert.Empty(guard.CutLines);
    }

    [Theory]
    [InlineData("a\n\"b,c\nd", "a\n\"b,c\"\nd", 2)]
    [InlineData("a\r\n\"b,c\r\nd", "a\r\n\"b,c\"\r\nd", 2)]
    [InlineData("a\r\"b,c\rd", "a\r\"b,c\"\rd", 2)]
    [InlineData("a\n\n\n\"b", "a\n\n\n\"b\"", 4)]
    [InlineData("a\r\n\r\n\"b", "a\r\n\r\n\"b\"", 3)]
    [InlineData("\"a\nb", "\"a\"\nb", 1)]
    public void AQuoteThatIsStillOpenIsClosedAtTheEndOfItsLine(string text, string passed, int line)
    {
        LineGuard guard = new(new StringReader(text));
        Assert.Equal(passed, guard.ReadToEnd());
        Assert.Equal([line], guard.OpenQuotes);
    }

    // 0xE8 alone, as Latin-1 writes è, is no UTF-8: the platform's decoder puts U+FFFD there.
    [Theory]
    [InlineData("a\nb\n", new int[0])]
    [InlineData("a\ncr\u00E8me\n", new int[0])]
    [InlineData("a\ncr\uFFFDme\uFFFD\nb\n\uFFFD", new[] { 2, 4 })]
    [InlineData("\uFFFD\r\n\r\n\"\uFFFD\r\nb", new[] { 1, 3 })]
    public void ALineWithBytesThatWereNoTextIsNoted(string text, int[] lines)
    {
        LineGuard guard = new(new StringReader(text));
        guard.ReadToEnd();
        Assert.Equal(lines, guard.GarbledLines);
    }

    [Fact]
    public void AByteOrderMarkIsNotPartOfTheText() => Assert.Equal("a,b", new LineGuard(new StringReader("\uFEFFa,b")).ReadToEnd());

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(4096)]
    public void TheSizeOfTheReadDoesNotMatter(int size)
    {
        string text = string.Concat(Enumerable.Repeat("abc,\"de\"\"f\",ghi\r\n\"open,1\r\n\n", 3000));
        string expected = text.Replace("\"open,1", "\"open,1\"", StringComparison.Ordinal);
        LineGuard guard = new(new StringReader(text));
        System.Text.StringBuilder passed = new();
        char[] buffer = new char[size];
        for (int got; (got = guard.Read(buffer, 0, size)) > 0;)
            passed.Append(buffer, 0, got);
        Assert.Equal(expected, passed.ToString());
        Assert.Equal(Enumerable.Range(0, 3000).Select(i => (3 * i) + 2), guard.OpenQuotes);
    }

    [Fact]
    public void OneCharacterAtATimeReadsTheSame()
    {
        LineGuard guard = new(new StringReader("a\n\"b\nc"));
        List<char> passed = [];
        for (int c; (c = guard.Read()) >= 0;)
            passed.Add((char)c);
        Assert.Equal("a\n\"b\"\nc", new string([.. passed]));
    }

    [Fact]
    public void ALineThatIsTooLongIsCutAndTheNextOneIsWhole()
    {
        string text = "a,b\n" + new string('x', LineGuard.LongestLine + 1000) + "\nc,d";
        LineGuard guard = new(new StringReader(text));
        Assert.Equal("a,b\n" + new string('x', LineGuard.LongestLine) + "\nc,d", guard.ReadToEnd());
        Assert.Equal([2], guard.CutLines);
    }

    [Fact]
    public void ALineOfTheGreatestLengthIsNotCut()
    {
        LineGuard guard = new(new StringReader(new string('x', LineGuard.LongestLine) + "\n"));
        Assert.Equal(LineGuard.LongestLine + 1, guard.ReadToEnd().Length);
        Assert.Empty(guard.CutLines);
    }
}
