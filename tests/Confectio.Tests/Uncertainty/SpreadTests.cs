using System.Text.Json;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Uncertainty;

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
        Assert.Equal(SpreadBasis.Exact, default(Spread).Basis);
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

    // GUM (JCGM 100:2008) 5.1.2: independent uncertainties combine by squares. 3-4-5.
    [Fact]
    public void IndependentNumbersCombineBySquares()
    {
        Spread sum = Spread.Exactly(100).WithUncertainty(3) + Spread.Exactly(50).WithUncertainty(4);
        Assert.Equal((140, 150, 160, 5), (sum.Low, sum.Likely, sum.High, sum.StandardUncertainty));
        Spread difference = Spread.Exactly(100).WithUncertainty(3) - Spread.Exactly(50).WithUncertainty(4);
        Assert.Equal((40, 50, 60, 5), (difference.Low, difference.Likely, difference.High, difference.StandardUncertainty));
        // The ways down and up apart: 100 (97 to 101) + 50 (46 to 50) is down 5 and up 1.
        Spread skew = new Spread(97, 100, 101) + new Spread(46, 50, 50);
        Assert.Equal((145, 150, 151), (skew.Low, skew.Likely, skew.High));
        // Relative uncertainties of a product: 0.03 and 0.04 are 0.05.
        Spread product = Spread.Exactly(10).WithRelativeUncertainty(0.03) * Spread.Exactly(20).WithRelativeUncertainty(0.04);
        Assert.Equal(200, product.Likely, 1e-12);
        Assert.Equal(0.05, product.RelativeUncertainty!.Value, 1e-12);
        Assert.Equal(200 * Math.Exp(-0.1), product.Low, 1e-10);
        Assert.Equal(200 * Math.Exp(0.1), product.High, 1e-10);
    }

    // GUM 5.2.2, note 1: where every correlation is 1 the uncertainties add up.
    [Fact]
    public void WhatSharesAnErrorAddsUp()
    {
        Spread cup = Spread.Exactly(100).WithUncertainty(3), other = Spread.Exactly(50).WithUncertainty(4);
        Spread sum = Spread.Sum<string>([new("flour", cup), new("flour", cup), new("sugar", other), new("flour", cup)]);
        Assert.Equal(350, sum.Likely);
        Assert.Equal(Math.Sqrt(81 + 16), sum.StandardUncertainty, 1e-12);
        Assert.Equal(350 - 2 * Math.Sqrt(97), sum.Low, 1e-12);
    }

    [Fact]
    public void NothingIsSurerThanTheWorstOfIt()
    {
        Spread exact = Spread.Exactly(1), judged = new(1, 2, 3, SpreadBasis.Judged), sources = new(1, 2, 3);
        Assert.Equal(SpreadBasis.Judged, (sources + judged).Basis);
        Assert.Equal(SpreadBasis.Judged, (judged * exact).Basis);
        Assert.Equal(SpreadBasis.Sources, (exact - sources).Basis);
        Assert.Equal(SpreadBasis.Exact, (exact + exact * 3).Basis);
        Assert.Equal(SpreadBasis.Exact, new Spread(2, 2, 2, SpreadBasis.Judged).Basis);
    }

    [Property]
    public bool ArithmeticKeepsItsOrderAndIsNoSurerThanItsParts(int a, byte down, byte up, int b, byte down2, byte up2, sbyte factor)
    {
        Spread one = new((double)a - down, a, (double)a + up), two = new((double)b - down2, b, (double)b + up2);
        return Ordered(one + two) && Ordered(one - two) && Ordered(one * factor) && Ordered(-one) && one + two == two + one && -(-one) == one
            && (one + two).StandardUncertainty >= Math.Max(one.StandardUncertainty, two.StandardUncertainty)
            && (one + two).Low >= one.Low + two.Low - 1e-6 && (one + two).High <= one.High + two.High + 1e-6
            && one + Spread.Exactly(b) == new Spread((double)a + b - down, (double)a + b, (double)a + b + up)
            && (factor <= 0 || Math.Abs((one * factor / factor).Likely - a) <= 1e-9 * Math.Abs((double)a));

        static bool Ordered(Spread spread) => spread.Low <= spread.Likely && spread.Likely <= spread.High && spread.StandardUncertainty >= 0;
    }

    // By hand, GUM 7.2.6: u = 8.8 leaves the gram; 0.21 two digits of it; 1234 the hundred (12.34 hundreds have two digits: 1200).
    [Theory]
    [InlineData(146.2, 8.8, "146 (129 to 164)")]
    [InlineData(9.8127, 0.21, "9.81 (9.39 to 10.23)")]
    [InlineData(123456, 1234, "123500 (121000 to 125900)")]
    [InlineData(123456, 7300, "123000 (109000 to 138000)")]
    [InlineData(0.004567, 0.00036, "0.0046 (0.0038 to 0.0053)")]
    [InlineData(12, 0, "12")]
    public void DigitsFollowTheUncertainty(double likely, double u, string text)
    {
        Assert.Equal(text, Spread.Exactly(likely).WithUncertainty(u).ToString("U"));
        Assert.Equal(text, $"{Spread.Exactly(likely).WithUncertainty(u):U}");
    }

    [Fact]
    public void AMassWritesItselfInAnyFormat()
    {
        ConvertedMass mass = Conversion.Of(IngredientTable.BuiltIn.Get("icing sugar"), Packing.Sifted, MeasuringSystem.UsCustomary).ToMass(Amount.Parse("1 1/2 cups"));
        Assert.Equal("146.2 g (129.6 to 164.9)", $"{mass:0.0}");
        Assert.Equal("146 g (130 to 165)", $"{mass:U}");
        Assert.Equal("146.2 g (129.6 to 164.9)", mass.ToString());
        ConvertedVolume volume = mass.By!.ToVolume(146.2);
        Assert.Equal($"{volume.Millilitres.Likely:0} mL ({volume.Millilitres.Low:0} to {volume.Millilitres.High:0})", $"{volume:0}");
        // The same conversion made twice is the same.
        Assert.Equal(mass, Conversion.Of(IngredientTable.BuiltIn.Get("icing sugar"), Packing.Sifted, MeasuringSystem.UsCustomary).ToMass(Amount.Parse("1 1/2 cups")));
        Assert.NotEqual(mass, Conversion.Of(IngredientTable.BuiltIn.Get("icing sugar"), Packing.Sifted, MeasuringSystem.UsCustomary, ConversionOptions.HouseholdTools).ToMass(Amount.Parse("1 1/2 cups")));
    }

    [Property]
    public bool JsonReadsBackTheSame(double low, double up, double more, byte basis)
    {
        if (!(Math.Abs(low) <= 1e300) || !double.IsFinite(low + Math.Abs(up)) || !double.IsFinite(low + Math.Abs(up) + Math.Abs(more)))
            return true;
        Spread spread = new(low, low + Math.Abs(up), low + Math.Abs(up) + Math.Abs(more), (SpreadBasis)(1 + basis % 4));
        string json = JsonSerializer.Serialize(spread, ValueJsonContext.Default.Spread);
        return JsonSerializer.Deserialize(json, ValueJsonContext.Default.Spread) == spread;
    }

    [Theory]
    [InlineData("\"x\"")]
    [InlineData("{}")]
    [InlineData("1e999")]
    [InlineData("{\"likely\":1,\"low\":2}")]
    [InlineData("{\"likely\":1,\"hihg\":2}")]
    [InlineData("{\"likely\":1,\"standardUncertainty\":-2}")]
    [InlineData("{\"likely\":1,\"basis\":\"sure\"}")]
    [InlineData("{\"likely\":-1e308,\"high\":1e308}")]
    [InlineData("{\"likely\":\"1\"}")]
    [InlineData("[1]")]
    [InlineData("{\"likely\":1,\"low\":0,\"high\":2,\"basis\":\"exact\"}")]
    [InlineData("{\"likely\":1,\"basis\":null}")]
    public void OtherJsonIsRefused(string json) => Assert.ThrowsAny<JsonException>(() => JsonSerializer.Deserialize(json, ValueJsonContext.Default.Spread));
}
