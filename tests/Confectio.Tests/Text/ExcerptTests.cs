using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Text;

/// <summary>What a message quotes of its input.</summary>
public sealed class ExcerptTests
{
    [Theory]
    [InlineData("", "''")]
    [InlineData("1 cup", "'1 cup'")]
    [InlineData("a\tb\nc", "'a\uFFFDb\uFFFDc'")]
    public void ShortTextIsQuotedWithItsControlCharactersMadeVisible(string text, string quoted) => Assert.Equal(quoted, Excerpt.Of(text));

    [Fact]
    public void HalfACharacterIsMadeVisible() => Assert.Equal("'\uFFFD'", Excerpt.Of("\uD800"));

    [Fact]
    public void LongTextIsCut()
    {
        Assert.Equal("'" + new string('x', 60) + "'", Excerpt.Of(new string('x', 60)));
        Assert.Equal("'" + new string('x', 57) + "...'", Excerpt.Of(new string('x', 61)));
        Assert.Equal(62, Excerpt.Of(new string('x', 1_000_000)).Length);
    }
}
