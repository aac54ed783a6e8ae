using Confectio.Measures;
using Confectio.Tests.Consistency;
using Xunit;

namespace Confectio.Tests.Measures;

/// <summary>
/// Quantities as people write them. Expected values by hand from the definitions: 2.54 cm to the inch and 0.3048 m to the foot (agreement
/// of 1959), 3386.389 Pa to the inch of mercury and 133.322387415 Pa to the millimetre (conventional), °C = (°F − 32)/1.8.
/// </summary>
public sealed class QuantityTextTests
{
    private delegate double Reader(ReadOnlySpan<char> text);

    private delegate bool Tryer(ReadOnlySpan<char> text, out double value);

    private static readonly Dictionary<string, (Reader Parse, Tryer TryParse)> s_readers = new()
    {
        ["celsius"] = (QuantityText.ParseCelsius, QuantityText.TryParseCelsius),
        ["metres"] = (QuantityText.ParseMetres, QuantityText.TryParseMetres),
        ["kilopascals"] = (QuantityText.ParseKilopascals, QuantityText.TryParseKilopascals),
        ["seconds"] = (QuantityText.ParseSeconds, QuantityText.TryParseSeconds),
        ["grams"] = (QuantityText.ParseGrams, QuantityText.TryParseGrams),
    };

    [Theory]
    [InlineData("celsius", "240F", 115.55555555555556)]
    [InlineData("celsius", "240 °F", 115.55555555555556)]
    [InlineData("celsius", "240 degrees F", 115.55555555555556)]
    [InlineData("celsius", "240 Fahrenheit", 115.55555555555556)]
    [InlineData("celsius", "116 °C", 116)]
    [InlineData("celsius", "116C", 116)]
    [InlineData("celsius", "116,5 °C", 116.5)]
    [InlineData("celsius", "-40F", -40)]
    [InlineData("celsius", "−18 °C", -18)]
    [InlineData("celsius", "+5 ℃", 5)]
    [InlineData("celsius", "0.0 °F", -17.77777777777778)]
    [InlineData("celsius", "-459.67 °F", -273.15)]
    [InlineData("metres", "9 in", 0.2286)]
    [InlineData("metres", "9\"", 0.2286)]
    [InlineData("metres", "22.9 cm", 0.229)]
    [InlineData("metres", "9 1/2 in", 0.2413)]
    [InlineData("metres", "229 mm", 0.229)]
    [InlineData("metres", "1600 m", 1600)]
    [InlineData("metres", "5200 ft", 1584.96)]
    [InlineData("metres", "5200ft", 1584.96)]
    [InlineData("metres", "5,200 ft", 1584.96)]
    [InlineData("metres", "12,345.5 feet", 3762.9084)]
    [InlineData("metres", "1,6 km", 1600)]
    [InlineData("metres", "-28 m", -28)]
    [InlineData("kilopascals", "30.1 inHg", 101.9303089)]
    [InlineData("kilopascals", "30.1 in Hg", 101.9303089)]
    [InlineData("kilopascals", "1013 hPa", 101.3)]
    [InlineData("kilopascals", "101.3 kPa", 101.3)]
    [InlineData("kilopascals", "101,3 kPa", 101.3)]
    [InlineData("kilopascals", "760 mmHg", 101.3250144354)]
    [InlineData("seconds", "12 min 30 s", 750)]
    [InlineData("seconds", "12min30s", 750)]
    [InlineData("seconds", "1 h 5 min", 3900)]
    [InlineData("seconds", "90 s", 90)]
    [InlineData("seconds", "1 1/2 hours", 5400)]
    [InlineData("seconds", "1,5 min", 90)]
    [InlineData("seconds", "1:30:00", 5400)]
    [InlineData("seconds", "0:00:07", 7)]
    [InlineData("grams", "600g", 600)]
    [InlineData("grams", "1.4 kg", 1400)]
    [InlineData("grams", "1 lb 4 oz", 566.9904625)]
    public void TextIsReadInEveryCulture(string quantity, string text, double value) => InEveryCulture(() =>
    {
        // Decimals round once as they are read and once as the unit changes.
        Assert.Equal(value, s_readers[quantity].Parse(text), 4e-16 * Math.Abs(value));
        Assert.True(s_readers[quantity].TryParse($"  {text} ", out double tried));
        Assert.Equal(s_readers[quantity].Parse(text), tried);
    });

    [Theory]
    [InlineData("celsius", "240", "the unit is missing")]
    [InlineData("celsius", "240 K", "the unit is not known")]
    [InlineData("celsius", "240 F or so", "the unit is not known")]
    [InlineData("celsius", "1,160 °C", "a comma before three digits may stand between thousands or for a decimal point")]
    [InlineData("celsius", "NaN °C", "a number was expected")]
    [InlineData("celsius", "∞ °C", "a number was expected")]
    [InlineData("celsius", "Infinity °C", "a number was expected")]
    [InlineData("celsius", "-460 °F", "it is below all that can be")]
    [InlineData("celsius", "1e+999 °C", "the number is too large")]
    [InlineData("celsius", "--5 °C", "a number cannot be negative")]
    [InlineData("celsius", "-", "a number was expected")]
    [InlineData("metres", "", "it is empty")]
    [InlineData("metres", "5200", "the unit is missing")]
    [InlineData("metres", "1.600 m", "a point before three digits may stand between thousands or for a decimal point")]
    [InlineData("metres", "5,20,0 ft", "a number has at most one decimal mark and nothing between thousands")]
    [InlineData("metres", "5 200 ft", "the unit is not known")]
    [InlineData("kilopascals", "14.7 psi", "the unit is not known")]
    [InlineData("kilopascals", "1,013 hPa", "a comma before three digits may stand between thousands or for a decimal point")]
    [InlineData("kilopascals", "-84 kPa", "a number cannot be negative")]
    [InlineData("seconds", "1:30", "it may be of hours and minutes or of minutes and seconds")]
    [InlineData("seconds", "1:60:00", "a clock has hours, minutes below 60 and seconds below 60")]
    [InlineData("seconds", "-1:00:00", "a clock has hours, minutes below 60 and seconds below 60")]
    [InlineData("seconds", "30 s 12 min", "each unit must be smaller than the one before it")]
    [InlineData("seconds", "5 min 5 min", "each unit must be smaller than the one before it")]
    [InlineData("seconds", "1 h 30", "the unit is missing")]
    [InlineData("seconds", "5 m", "the unit is not known")]
    [InlineData("grams", "2 cups", "it is no mass")]
    [InlineData("grams", "4-5 oz", "it is a range")]
    public void WhatIsNoneIsRefusedWithItsReason(string quantity, string text, string reason) => InEveryCulture(() =>
    {
        Assert.False(s_readers[quantity].TryParse(text, out double none));
        Assert.Equal(0, none);
        string said = Assert.Throws<FormatException>(() => s_readers[quantity].Parse(text)).Message;
        Assert.StartsWith($"'{text}' is not a", said, StringComparison.Ordinal);
        Assert.Contains($": {reason}.", said, StringComparison.Ordinal);
    });

    [Fact]
    public void AHugeTextIsRefusedWithoutACopyOfIt() => Assert.All(s_readers.Values, reader =>
    {
        foreach (string text in (string[])[new string('8', 10_000_000) + " m", new string(' ', 10_000_000), "8 " + new string('F', 10_000_000),
            new string('8', 10_000_000) + ":00:00"])
        {
            Assert.InRange(Allocated.Least(() => Assert.False(reader.TryParse(text, out _)), 10_000), 0, 10_000);
            Assert.True(Assert.Throws<FormatException>(() => reader.Parse(text)).Message.Length < 300);
        }
    });

    private static void InEveryCulture(Action action) => Cultures.InEach(["", "tr-TR", "de-DE", "fa-IR"], action);
}
