using System.Globalization;
using Confectio.Cakes;
using Confectio.Tests.Consistency;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Cakes;

/// <summary>Lengths as they are written on tins and orders.</summary>
public sealed class CakeLengthTests
{
    // By hand, at 2.54 cm to the inch.
    [Theory]
    [InlineData("8 in", 20.32)]
    [InlineData("8in", 20.32)]
    [InlineData("8 in.", 20.32)]
    [InlineData("8 IN", 20.32)]
    [InlineData("  8  inches ", 20.32)]
    [InlineData("1 inch", 2.54)]
    [InlineData("8\"", 20.32)]
    [InlineData("8 ″", 20.32)]
    [InlineData("8”", 20.32)]
    [InlineData("9-inch", 22.86)]
    [InlineData("33 in", 83.82)]
    [InlineData("8 1/2 in", 21.59)]
    [InlineData("8-1/2-inch", 21.59)]
    [InlineData("8½ in", 21.59)]
    [InlineData("8½\"", 21.59)]
    [InlineData("8 ½ in", 21.59)]
    [InlineData("8.5 in", 21.59)]
    [InlineData("8,5 in", 21.59)]
    [InlineData("1/8 in", 0.3175)]
    [InlineData("3/16\"", 0.47625)]
    [InlineData("1⁄8 in", 0.3175)]
    [InlineData(".5 in", 1.27)]
    [InlineData("half an inch", 1.27)]
    [InlineData("two and a half inches", 6.35)]
    [InlineData("20 cm", 20)]
    [InlineData("20,5 cm", 20.5)]
    [InlineData("20.5 cm", 20.5)]
    [InlineData("0,125 cm", 0.125)]
    [InlineData("20.125 cm", 20.125)]
    [InlineData("20,25 centimetres", 20.25)]
    [InlineData("1 centimeter", 1)]
    [InlineData("6 mm", 0.6)]
    [InlineData("6mm", 0.6)]
    [InlineData("3 millimetres", 0.3)]
    [InlineData("11.3 mm", 1.13)]
    [InlineData("0 cm", 0)]
    [InlineData("0.0 in", 0)]
    [InlineData("1000000 cm", 1e6)]
    [InlineData("1E-05 cm", 1e-5)]
    [InlineData("2.5e-7 cm", 2.5e-7)]
    public void TextIsReadInEveryCulture(string text, double centimetres)
    {
        Cultures.InEach(["", "en-GB", "de-DE", "tr-TR", "fa-IR"], () =>
        {
            // Decimals round once as they are read, and once when the unit changes.
            Assert.Equal(centimetres, CakeLength.Parse(text).Centimetres, 3e-16 * centimetres);
            Assert.True(CakeLength.TryParse(text, out CakeLength length));
            Assert.Equal(CakeLength.Parse(text), length);
            Assert.Equal(length, Generic<CakeLength>(text, CultureInfo.CurrentCulture));
        });
    }

    [Theory]
    [InlineData("", "it is empty")]
    [InlineData("   ", "it is empty")]
    [InlineData("8", "the unit is missing")]
    [InlineData("8 1/2", "the unit is missing")]
    [InlineData("20,5 ", "the unit is missing")]
    [InlineData("8 m", "the unit is not known")]
    [InlineData("8 min", "the unit is not known")]
    [InlineData("8 cm high", "the unit is not known")]
    [InlineData("8 in x 8 in", "the unit is not known")]
    [InlineData("8-9 in", "the unit is not known")]
    [InlineData("1.5 1/2 in", "the unit is not known")]
    [InlineData("20, 5 cm", "the unit is not known")]
    [InlineData("20. cm", "the unit is not known")]
    [InlineData("8--inch", "the unit is not known")]
    [InlineData("8 -", "the unit is not known")]
    [InlineData("2E5 cm", "the unit is not known")]
    [InlineData("1,250 cm", "a comma before three digits may stand between thousands or for a decimal point")]
    [InlineData("1,250.5 cm", "a number has at most one decimal mark and nothing between thousands")]
    [InlineData("1.2.3 cm", "a number has at most one decimal mark and nothing between thousands")]
    [InlineData("-8 in", "a number cannot be negative")]
    [InlineData("+8 in", "a number was expected")]
    [InlineData("in", "a number was expected")]
    [InlineData("NaN cm", "a number was expected")]
    [InlineData("∞ cm", "a number was expected")]
    [InlineData("٨ in", "a number was expected")]
    [InlineData("8 1/0 in", "a fraction cannot have 0 below its line")]
    [InlineData("8 3/2 in", "the fraction of a mixed number must be below 1")]
    [InlineData("1/ in", "a fraction needs a whole number below its line")]
    [InlineData("123456789012345678901 in", "the number is too long")]
    [InlineData("1000001 cm", "it is longer than 1000000 cm")]
    [InlineData("393701 in", "it is longer than 1000000 cm")]
    [InlineData("1e+300 mm", "it is longer than 1000000 cm")]
    [InlineData("1e+999 mm", "it is longer than 1000000 cm")]
    public void TextThatIsNoLengthIsRefusedWithItsReason(string text, string reason)
    {
        Assert.False(CakeLength.TryParse(text, out CakeLength length));
        Assert.Equal(default, length);
        FormatException refusal = Assert.Throws<FormatException>(() => CakeLength.Parse(text));
        Assert.Equal($"'{text}' is not a length: {reason}. A number with in, cm or mm was expected, such as 8 1/2 in or 20.5 cm.", refusal.Message);
    }

    [Fact]
    public void LongTextIsRefusedAtOnce()
    {
        foreach (string text in (string[])[new string('8', 10_000_000) + " in", new string(' ', 10_000_000), "8 " + new string('i', 10_000_000)])
        {
            // A copy of the text, or a number of all its digits, would be megabytes.
            Assert.InRange(Allocated.Least(() => Assert.False(CakeLength.TryParse(text, out _)), 10_000), 0, 10_000);
            Assert.True(Assert.Throws<FormatException>(() => CakeLength.Parse(text)).Message.Length < 250);
        }
        Assert.Throws<ArgumentNullException>("s", () => Generic<CakeLength>(null!, null));
    }

    [Fact]
    public void UnitsAgree()
    {
        Assert.Equal(20.32, CakeLength.FromInches(8).Centimetres);
        Assert.Equal(203.2, CakeLength.FromInches(8).Millimetres, 1e-12);
        Assert.Equal(0.6, CakeLength.FromMillimetres(6).Centimetres);
        Assert.Equal(10, CakeLength.FromCentimetres(25.4).Inches, 1e-14);
        Assert.Equal(2.54, CakeLength.CentimetresPerInch);
        for (int sixteenths = 0; sixteenths <= 1600; sixteenths++)
        {
            CakeLength length = CakeLength.FromInches(sixteenths / 16.0);
            // 254/1600 cm to the sixteenth, in exact decimals.
            Assert.Equal((double)(sixteenths * 0.15875m), length.Centimetres);
            Assert.Equal(sixteenths / 16.0, length.Inches, 1e-15 * sixteenths);
            Assert.Equal(length, CakeLength.Parse(length.ToString("in")));
        }
    }

    [Fact]
    public void LengthsAreWritten()
    {
        Cultures.In("de-DE", () =>
        {
            CakeLength length = CakeLength.FromInches(8.5);
            Assert.Equal("21.59 cm", length.ToString());
            Assert.Equal("21.59 cm", length.ToString("cm"));
            Assert.Equal("215.9 mm", length.ToString("mm"));
            Assert.Equal("8 1/2 in", length.ToString("in"));
            Assert.Equal("8 in, 83.82 cm", string.Create(CultureInfo.CurrentCulture, $"{CakeLength.FromInches(8):in}, {CakeLength.FromInches(33)}"));
            Assert.Equal("5/16 in", CakeLength.FromInches(0.3125).ToString("in"));
            Assert.Equal("0 in", default(CakeLength).ToString("in"));
            Assert.Equal("0 cm", CakeLength.FromCentimetres(-0.0).ToString());
            Assert.Equal("11.3 mm", CakeLength.FromMillimetres(11.3).ToString("mm"));
            // 20/2.54 is 7.874 015 748 031 496...
            Assert.Equal("7.8740157480315 in", CakeLength.FromCentimetres(20).ToString("in"));
            Assert.Equal("393700 in", CakeLength.FromInches(393_700).ToString("in"));
            FormatException refusal = Assert.Throws<FormatException>(() => length.ToString("ft"));
            Assert.Equal("'ft' is not a format of a length; cm, mm and in are.", refusal.Message);
            Span<char> room = stackalloc char[8];
            Assert.True(((ISpanFormattable)length).TryFormat(room, out int written, "in", null));
            Assert.Equal("8 1/2 in", room[..written].ToString());
            Assert.False(((ISpanFormattable)length).TryFormat(room[..7], out written, "in", null));
            Assert.Equal(0, written);
        });
    }

    [Property(MaxTest = 1000)]
    public void WhatIsWrittenReadsBack(long bits)
    {
        // Any double of the range, tiny ones included.
        double centimetres = Math.Abs(BitConverter.Int64BitsToDouble(bits));
        if (!(centimetres <= 1e6))
            centimetres = (ulong)bits * (1e6 / ulong.MaxValue);
        CakeLength length = CakeLength.FromCentimetres(centimetres);
        Assert.Equal(length, CakeLength.Parse(length.ToString()));
        Assert.Equal(centimetres, CakeLength.Parse(length.ToString("mm")).Centimetres, 1e-14 * centimetres + double.Epsilon);
        Assert.Equal(centimetres, CakeLength.Parse(length.ToString("in")).Centimetres, 1e-14 * centimetres + 2.6e-9);
    }

    [Property]
    public void LengthsCompareAsTheirCentimetres(ushort a, ushort b)
    {
        CakeLength left = CakeLength.FromMillimetres(a), right = CakeLength.FromMillimetres(b), same = CakeLength.FromMillimetres(a);
        Assert.True(left == same && left.Equals((object)same) && left.GetHashCode() == same.GetHashCode() && left <= same && left >= same && !(left != same));
        Assert.Equal(a < b, left < right);
        Assert.Equal(a > b, left > right);
        Assert.Equal(a <= b, left <= right);
        Assert.Equal(a >= b, left >= right);
        Assert.Equal(a == b, left == right);
        Assert.Equal(Math.Sign(a.CompareTo(b)), Math.Sign(left.CompareTo(right)));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(1.1e7)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void BadNumbersAreRefusedByName(double bad)
    {
        PlanShapeTests.Refused("inches", bad, () => CakeLength.FromInches(bad));
        PlanShapeTests.Refused("centimetres", bad, () => CakeLength.FromCentimetres(bad));
        PlanShapeTests.Refused("millimetres", bad, () => CakeLength.FromMillimetres(bad));
    }

    private static T Generic<T>(string text, IFormatProvider? provider) where T : struct, IParsable<T> => T.Parse(text, provider);
}
