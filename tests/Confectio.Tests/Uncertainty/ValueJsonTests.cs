using System.Text.Json;
using Confectio.Cakes;
using Confectio.Measures;
using Confectio.Sugars;
using Confectio.Tests.Properties;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Uncertainty;

/// <summary>Every value is written as JSON and read back the same, to the last bit, by source-generated code and in every culture.</summary>
public sealed class ValueJsonTests
{
    [Property(Arbitrary = [typeof(MeasureGenerators)])]
    public bool AnAmountReadsBack(Amount amount) => Back(amount, ValueJsonContext.Default.Amount).Equals(amount);

    [Property(Arbitrary = [typeof(MeasureGenerators)])]
    public bool AFractionReadsBack(long numerator, int denominator)
    {
        Fraction fraction = new(numerator, Math.Max(1, Math.Abs((long)denominator)));
        return Back(fraction, ValueJsonContext.Default.Fraction) == fraction;
    }

    [Property]
    public bool QuantitiesReadBack(ushort part, uint fine)
    {
        double share = (part + fine / 4294967296.0) / 65536;
        AirPressure pressure = AirPressure.FromKilopascals(1 + 199 * share);
        CakeLength length = CakeLength.FromInches(share * 100);
        Brix strength = Brix.FromPercent(100 * share);
        ThermometerReading reading = new(share * 1000, 20 + 100 * share);
        PlanPoint point = new(share * 30, -share);
        return Back(pressure, ValueJsonContext.Default.AirPressure) == pressure && Back(length, ValueJsonContext.Default.CakeLength) == length
            && Back(strength, ValueJsonContext.Default.Brix) == strength && Back(reading, ValueJsonContext.Default.ThermometerReading) == reading
            && Back(point, ValueJsonContext.Default.PlanPoint) == point;
    }

    [Fact]
    public void TheUnitIsInTheName()
    {
        Assert.Equal("""{"kilopascals":84}""", JsonSerializer.Serialize(AirPressure.FromKilopascals(84), ValueJsonContext.Default.AirPressure));
        Assert.Equal("""{"brix":62.5}""", JsonSerializer.Serialize(Brix.FromPercent(62.5), ValueJsonContext.Default.Brix));
        Assert.Equal("""{"centimetres":20.32}""", JsonSerializer.Serialize(CakeLength.FromInches(8), ValueJsonContext.Default.CakeLength));
        Assert.Equal("\"3/2\"", JsonSerializer.Serialize(new Fraction(6, 4), ValueJsonContext.Default.Fraction));
        Assert.Equal("\"1 1/2 cups\"", JsonSerializer.Serialize(Amount.Parse("1½ c."), ValueJsonContext.Default.Amount));
        Assert.Equal(AirPressure.SeaLevel, Back(default(AirPressure), ValueJsonContext.Default.AirPressure));
    }

    [Theory]
    [InlineData("84")]
    [InlineData("{}")]
    [InlineData("{\"kilopascals\":\"84\"}")]
    [InlineData("{\"kilopascals\":84,\"more\":1}")]
    [InlineData("{\"hectopascals\":840}")]
    [InlineData("{\"kilopascals\":1e9}")]
    [InlineData("{\"kilopascals\":1e999}")]
    [InlineData("null")]
    public void ANumberWithoutItsUnitIsRefused(string json) => Assert.ThrowsAny<JsonException>(() => JsonSerializer.Deserialize(json, ValueJsonContext.Default.AirPressure));

    [Theory]
    [InlineData("\"1/0\"")]
    [InlineData("\"1/2/3\"")]
    [InlineData("\"half\"")]
    [InlineData("1.5")]
    [InlineData("\"1/-2\"")]
    public void NoFractionIsRefused(string json) => Assert.ThrowsAny<JsonException>(() => JsonSerializer.Deserialize(json, ValueJsonContext.Default.Fraction));

    [Fact]
    public void NoAmountIsRefused() => Assert.ThrowsAny<JsonException>(() => JsonSerializer.Deserialize("\"a lot\"", ValueJsonContext.Default.Amount));

    private static T Back<T>(T value, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> type) =>
        JsonSerializer.Deserialize(JsonSerializer.Serialize(value, type), type)!;
}
