using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Measures;

/// <summary>Amounts in millilitres and grams. Every expected figure is worked by hand from the published size of the unit.</summary>
public sealed class AmountArithmeticTests
{
    // US cup 236.5882365 mL, Tbsp 14.78676478125, tsp 4.92892159375 (231 in³ gallon, NIST Handbook 44, Appendix C).
    // Label cup 240, Tbsp 15, tsp 5 (21 CFR 101.9(b)(5)(viii)). Imperial fl oz 28.4130625 (Weights and Measures Act 1985).
    [Theory]
    [InlineData("1 1/2 cups", "us-customary", 354.88235475)]
    [InlineData("1 1/2 cups", "us-labelling", 360)]
    [InlineData("1 1/2 cups", "metric", 375)]
    [InlineData("1 1/2 cups", "imperial", 426.1959375)]
    [InlineData("1 1/2 cups", "japanese", 300)]
    [InlineData("3/3 cup", "us-customary", 236.5882365)]
    [InlineData("2 Tbsp + 1 tsp", "us-customary", 34.50245115625)]
    [InlineData("2 Tbsp + 1 tsp", "australian", 45)]
    [InlineData("1 cup + 2 Tbsp", "us-labelling", 270)]
    [InlineData("8 fl oz", "us-customary", 236.5882365)]
    [InlineData("8 fl oz", "us-labelling", 240)]
    [InlineData("20 fl oz", "imperial", 568.26125)]
    [InlineData("2.5 dl", "japanese", 250)]
    [InlineData("1 l", "imperial", 1000)]
    [InlineData("0 cups", "metric", 0)]
    public void Volumes(string text, string key, double millilitres)
    {
        Assert.True(MeasuringSystem.TryGet(key, out MeasuringSystem? system));
        Amount amount = Amount.Parse(text);
        Assert.True(amount.IsVolume && !amount.IsMass && !amount.IsPiece);
        Near(millilitres, amount.Millilitres(system));
        Assert.Equal(amount.Millilitres(system), amount.LowMillilitres(system));
        Assert.Equal(amount.Millilitres(system), amount.HighMillilitres(system));
    }

    // Pound 453.59237 g (1959 agreement), ounce 1/16 of it; label ounce 28 g (21 CFR 101.9(b)(5)(viii)).
    [Theory]
    [InlineData("1 lb 4 oz", "us-customary", 566.9904625)]
    [InlineData("1 lb 4 oz", "imperial", 566.9904625)]
    [InlineData("1 lb 4 oz", "us-labelling", 565.59237)]
    [InlineData("1 oz", "us-labelling", 28)]
    [InlineData("1 oz", "metric", 28.349523125)]
    [InlineData("16 oz", "japanese", 453.59237)]
    [InlineData("454 g", "us-customary", 454)]
    [InlineData("1 kg + 250 g", "australian", 1250)]
    [InlineData("500 mg", "metric", 0.5)]
    public void Masses(string text, string key, double grams)
    {
        Assert.True(MeasuringSystem.TryGet(key, out MeasuringSystem? system));
        Amount amount = Amount.Parse(text);
        Assert.True(amount.IsMass && !amount.IsVolume && !amount.IsPiece);
        Near(grams, amount.Grams(system));
        Assert.Equal(amount.Grams(system), amount.LowGrams(system));
        Assert.Equal(amount.Grams(system), amount.HighGrams(system));
    }

    [Fact]
    public void ThreeThirdsAreOneCupToTheLastBit()
    {
        foreach (MeasuringSystem system in MeasuringSystem.All.Where(system => system.Defines(KitchenUnit.Cup)))
        {
            double cup = system.MillilitresPer(KitchenUnit.Cup);
            Assert.Equal(cup, Amount.Of(3 * new Fraction(1, 3), KitchenUnit.Cup).Millilitres(system));
            Near(cup, Amount.Parse("1/3 cup + 1/3 cup + 1/3 cup").Millilitres(system));
            Near(cup, 3 * Amount.Parse("1/3 cup").Millilitres(system));
        }
        // A third of a label cup is 80 mL, as the table of NIST has it.
        Assert.Equal(80, Amount.Parse("1/3 cup").Millilitres(MeasuringSystem.UsLabelling));
    }

    [Fact]
    public void ARangeHasALowAMiddleAndAHigh()
    {
        Amount spoons = Amount.Parse("2-3 tsp");
        Assert.Equal(10, spoons.LowMillilitres(MeasuringSystem.Metric));
        Assert.Equal(12.5, spoons.Millilitres(MeasuringSystem.Metric));
        Assert.Equal(15, spoons.HighMillilitres(MeasuringSystem.Metric));
        Amount ounces = Amount.Parse("4 to 5 oz");
        Assert.Equal(112, ounces.LowGrams(MeasuringSystem.UsLabelling));
        Assert.Equal(126, ounces.Grams(MeasuringSystem.UsLabelling));
        Assert.Equal(140, ounces.HighGrams(MeasuringSystem.UsLabelling));
    }

    [Fact]
    public void TheWrongKindIsRefused()
    {
        MeasuringSystem us = MeasuringSystem.UsCustomary;
        foreach (string text in new[] { "8 oz", "1 stick", "1 lb 4 oz", "2-3 g" })
        {
            Amount amount = Amount.Parse(text);
            foreach (Func<MeasuringSystem, double> ask in new Func<MeasuringSystem, double>[] { amount.Millilitres, amount.LowMillilitres, amount.HighMillilitres })
                Assert.Contains("not a unit of volume", Assert.Throws<ArgumentException>(() => ask(us)).Message, StringComparison.Ordinal);
        }
        foreach (string text in new[] { "8 fl oz", "1 stick", "1 cup + 1 Tbsp", "2-3 tsp" })
        {
            Amount amount = Amount.Parse(text);
            foreach (Func<MeasuringSystem, double> ask in new Func<MeasuringSystem, double>[] { amount.Grams, amount.LowGrams, amount.HighGrams })
                Assert.Contains("not a unit of mass", Assert.Throws<ArgumentException>(() => ask(us)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void AUnitThatTheSystemLacksIsRefusedInAnyPart()
    {
        foreach (string text in new[] { "1 pint", "1 cup + 1 pint", "1-2 pints" })
        {
            string message = Assert.Throws<ArgumentException>(() => Amount.Parse(text).Millilitres(MeasuringSystem.Metric)).Message;
            Assert.Contains("has no pint", message, StringComparison.Ordinal);
            Assert.Contains("us-customary", message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void ASystemIsAlwaysNeeded()
    {
        Assert.Throws<ArgumentNullException>("system", () => Amount.Parse("1 cup").Millilitres(null!));
        Assert.Throws<ArgumentNullException>("system", () => Amount.Parse("1-2 cups").HighMillilitres(null!));
        Assert.Throws<ArgumentNullException>("system", () => Amount.Parse("1 g").Grams(null!));
        Assert.Throws<ArgumentNullException>("system", () => Amount.Parse("1-2 g").HighGrams(null!));
    }

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-12 * expected);
}
