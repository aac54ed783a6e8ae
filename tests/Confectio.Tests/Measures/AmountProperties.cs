using System.Globalization;
using Confectio.Measures;
using Confectio.Tests.Properties;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Measures;

/// <summary>What must hold of every amount and every text.</summary>
public sealed class AmountProperties
{
    [Property(Arbitrary = [typeof(MeasureGenerators)], MaxTest = 5000)]
    public void WhatIsWrittenReadsBack(Amount amount)
    {
        foreach (string format in new[] { "G", "V" })
        {
            string text = amount.ToString(format);
            Assert.Equal(amount, Amount.Parse(text));
            Assert.Equal(text, Amount.Parse(text).ToString(format));
        }
    }

    [Property(Arbitrary = [typeof(MeasureGenerators)], MaxTest = 10000)]
    public void AnyTextIsReadOrRefused(AnyText text) => ReadOrRefused(text.Value);

    [Property(Arbitrary = [typeof(MeasureGenerators)], MaxTest = 10000)]
    public void AnEditedAmountIsReadOrRefused(NearlyAmountText text) => ReadOrRefused(text.Value);

    [Property(MaxTest = 1000)]
    public void AnyStringIsReadOrRefused(string? text) => ReadOrRefused(text ?? "");

    [Fact]
    public void EditsReachBothSides()
    {
        // The property above would prove nothing if every edited text were refused.
        FsCheck.Arbitrary<NearlyAmountText> texts = MeasureGenerators.EditedTexts();
        NearlyAmountText[] sample = FsCheck.Fluent.Gen.Sample(texts.Generator, 1000).ToArray();
        int read = sample.Count(text => Amount.TryParse(text.Value, out _));
        Assert.InRange(read, 20, 980);
    }

    [Fact]
    public void NoCultureChangesReadingOrWriting()
    {
        (string Text, string Plain, string Vulgar)[] samples =
        [
            ("1234567.5 g", "1234567.5 g", "1234567.5 g"), ("1 1/2 CUPS", "1 1/2 cups", "1½ cups"), ("3 STICKS", "3 sticks", "3 sticks"),
            ("2 PINTS + 1 LITRE", "2 pints + 1 L", "2 pints + 1 L"), ("-1 g", "", ""), ("1,5 g", "", ""), ("\u0661 g", "", ""),
        ];
        CultureInfo before = CultureInfo.CurrentCulture, beforeUi = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo[] cultures = CultureInfo.GetCultures(CultureTypes.AllCultures);
            Assert.NotEmpty(cultures);
            string refusal = Assert.Throws<FormatException>(() => Amount.Parse("1,5 g")).Message;
            string unit = Assert.Throws<ArgumentException>(() => MeasuringSystem.Metric.MillilitresPer(KitchenUnit.Pint)).Message;
            foreach (CultureInfo culture in cultures)
            {
                CultureInfo.CurrentCulture = culture;
                CultureInfo.CurrentUICulture = culture;
                foreach ((string text, string plain, string vulgar) in samples)
                {
                    bool read = Interfaces.TryParse(text, culture, out Amount amount);
                    Assert.True(read == (plain.Length > 0), $"{culture.Name}: {text}");
                    if (!read)
                        continue;
                    Assert.True(amount.ToString() == plain, $"{culture.Name}: {amount}");
                    Assert.True(((IFormattable)amount).ToString("V", culture) == vulgar, $"{culture.Name}: {amount:V}");
                    Assert.True(string.Create(culture, $"{amount}") == plain, $"{culture.Name}: {amount}");
                    Assert.True(Interfaces.Parse<Amount>(plain, culture) == amount, $"{culture.Name}: {plain}");
                }
                Assert.Equal("-1234567/2", new Fraction(-1234567, 2).ToString());
                Assert.Equal(refusal, Assert.Throws<FormatException>(() => Amount.Parse("1,5 g")).Message);
                Assert.Equal(unit, Assert.Throws<ArgumentException>(() => MeasuringSystem.Metric.MillilitresPer(KitchenUnit.Pint)).Message);
                Assert.Contains("-1/2", Assert.Throws<ArgumentOutOfRangeException>(() => Amount.Of(new(-1, 2), KitchenUnit.Cup)).Message.Split('\n')[0], StringComparison.Ordinal);
                Assert.Equal("1 2/3 cups (-1.4 %)", PracticalMeasure.Find(400, MeasuringTools.Usual(MeasuringSystem.UsCustomary))!.ToString());
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
            CultureInfo.CurrentUICulture = beforeUi;
        }
    }

    [Property(Arbitrary = [typeof(MeasureGenerators)])]
    public void MoreOfAUnitIsMoreVolume(Quantity one, Quantity other)
    {
        foreach (MeasuringSystem system in MeasuringSystem.All)
        {
            foreach (KitchenUnit unit in Enum.GetValues<KitchenUnit>().Where(unit => unit.IsVolume() && system.Defines(unit)))
            {
                double a = Amount.Of(one.Value, unit).Millilitres(system), b = Amount.Of(other.Value, unit).Millilitres(system);
                Assert.True(double.IsFinite(a) && a >= 0);
                if (one.Value < other.Value)
                    Assert.True(a <= b * (1 + 1e-15), $"{one.Value} and {other.Value} {unit} of {system}");
            }
        }
    }

    [Property(Arbitrary = [typeof(MeasureGenerators)])]
    public void TheMiddleLiesBetweenTheEnds(Quantity one, Quantity other)
    {
        (Fraction low, Fraction high) = one.Value < other.Value ? (one.Value, other.Value) : (other.Value, one.Value);
        Amount volume = Amount.Between(low, high, KitchenUnit.Cup), mass = Amount.Between(low, high, KitchenUnit.Ounce);
        MeasuringSystem us = MeasuringSystem.UsCustomary;
        Assert.InRange(volume.Millilitres(us), volume.LowMillilitres(us), volume.HighMillilitres(us));
        Assert.InRange(mass.Grams(us), mass.LowGrams(us), mass.HighGrams(us));
    }

    private static void ReadOrRefused(string text)
    {
        foreach (AmountReading reading in Enum.GetValues<AmountReading>())
        {
            if (Amount.TryParse(text, reading, out Amount amount))
            {
                Assert.Equal(amount, Amount.Parse(text, reading));
                Assert.Equal(amount, Amount.Parse(amount.ToString()));
                Assert.InRange(amount.PartCount, 1, 8);
            }
            else
            {
                Assert.Equal(default, amount);
                FormatException thrown = Assert.Throws<FormatException>(() => Amount.Parse(text, reading));
                Assert.Matches(@"(?s) is not an amount: at character \d+, \S.*\.$", thrown.Message);
                Assert.DoesNotContain(thrown.Message, c => char.IsControl(c) || char.IsSurrogate(c));
            }
        }
    }
}
