using Confectio.Sources;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Sources;

/// <summary>Low, likely and high of an uncertain number.</summary>
public sealed class SpreadTests
{
    [Fact]
    public void TheDefaultIsZeroKnownExactly()
    {
        Assert.Equal(new Spread(0, 0, 0), default);
        Assert.Equal("0", default(Spread).ToString());
        Assert.Equal("11.04", $"{new Spread(11.04, 11.04, 11.04):0.00}"); // an interval of no width claims a range that nobody gave
        Assert.Equal("11.04 (11.04 to 11.05)", $"{new Spread(11.04, 11.04, 11.05):0.00}");
        Assert.True(default(Spread).Contains(0));
    }

    [Fact]
    public void TheThreeNumbersMustRise()
    {
        Assert.Throws<ArgumentOutOfRangeException>("likely", () => new Spread(2, 1, 3));
        Assert.Throws<ArgumentOutOfRangeException>("high", () => new Spread(1, 2, 1.5));
        Assert.Equal(2, new Spread(2, 2, 2).High); // limits are inclusive
    }

    [Theory]
    [InlineData(109.1, true)]
    [InlineData(118.2, true)]
    [InlineData(109.0, false)]
    [InlineData(118.3, false)]
    [InlineData(double.NaN, false)]
    public void TheEndsBelongToIt(double value, bool inside) => Assert.Equal(inside, new Spread(109.1, 113.5, 118.2).Contains(value));

    [Fact]
    public void TextIsShortByDefaultAndFormatsEachNumber()
    {
        Spread spread = new(109.123, 113.456, 118.234);
        Assert.Equal("113.5 (109.1 to 118.2)", spread.ToString());
        Assert.Equal("113.46 (109.12 to 118.23)", spread.ToString("F2"));
        Assert.Equal("113 (109 to 118)", $"{spread:F0}");
        Span<char> room = stackalloc char[22];
        Assert.True(((ISpanFormattable)spread).TryFormat(room, out int written, default, null));
        Assert.Equal("113.5 (109.1 to 118.2)", room[..written].ToString());
        Assert.False(((ISpanFormattable)spread).TryFormat(room[..21], out written, default, null));
        Assert.Equal(0, written);
    }

    // As an interpolated string would call it; the provider changes nothing.
    private static bool TryFormat<T>(T value, Span<char> room, out int written) where T : ISpanFormattable =>
        value.TryFormat(room, out written, default, null);

    [Property]
    public bool EqualityIsThatOfTheThreeNumbers(int low, byte up, byte more)
    {
        Spread one = new(low, low + up, low + up + more), same = new(low, low + up, low + up + more), other = new(low, low + up, low + up + more + 1);
        return one == same && one.GetHashCode() == same.GetHashCode() && one.Equals((object)same) && one != other && !one.Equals(null);
    }
}
