using System.Globalization;
using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Measures;

/// <summary>What each system's cups, spoons and ounces hold, against the texts that define them.</summary>
public sealed class MeasuringSystemTests
{
    // Each figure is the published one, or the published definition worked out by hand to its last digit; the source is in the last column.
    public static TheoryData<string, KitchenUnit, string, string> Volumes => new()
    {
        { "us-customary", KitchenUnit.Gallon, "3785.411784", "NIST Handbook 44, Appendix C: 231 in³ of 16.387064 mL" },
        { "us-customary", KitchenUnit.Quart, "946.352946", "NIST Handbook 44, Appendix C: a quarter of a gallon" },
        { "us-customary", KitchenUnit.Pint, "473.176473", "NIST Handbook 44, Appendix C: half a quart" },
        { "us-customary", KitchenUnit.Cup, "236.5882365", "NIST Handbook 44, Appendix C: half a pint" },
        { "us-customary", KitchenUnit.FluidOunce, "29.5735295625", "NIST Handbook 44, Appendix C: 1/128 gallon" },
        { "us-customary", KitchenUnit.Tablespoon, "14.78676478125", "NIST Handbook 44, Appendix C: 1/16 cup" },
        { "us-customary", KitchenUnit.Teaspoon, "4.92892159375", "NIST Handbook 44, Appendix C: 1/3 tablespoon" },
        { "us-customary", KitchenUnit.Dessertspoon, "9.8578431875", "common practice, FROM MEMORY: two teaspoons; no US standard has it" },
        { "us-labelling", KitchenUnit.Cup, "240", "21 CFR 101.9(b)(5)(viii)" },
        { "us-labelling", KitchenUnit.FluidOunce, "30", "21 CFR 101.9(b)(5)(viii)" },
        { "us-labelling", KitchenUnit.Tablespoon, "15", "21 CFR 101.9(b)(5)(viii)" },
        { "us-labelling", KitchenUnit.Teaspoon, "5", "21 CFR 101.9(b)(5)(viii)" },
        { "metric", KitchenUnit.Cup, "250", "New Zealand kitchen measures; as proposed in NBS SP 430 (1975)" },
        { "metric", KitchenUnit.Tablespoon, "15", "New Zealand kitchen measures; as proposed in NBS SP 430 (1975)" },
        { "metric", KitchenUnit.Teaspoon, "5", "New Zealand kitchen measures; as proposed in NBS SP 430 (1975)" },
        { "metric", KitchenUnit.Dessertspoon, "10", "common practice, FROM MEMORY" },
        { "australian", KitchenUnit.Cup, "250", "Standards Association of Australia, in NSW Health's kitchen measures (AS 1325: number FROM MEMORY)" },
        { "australian", KitchenUnit.Tablespoon, "20", "Standards Association of Australia, in NSW Health's kitchen measures (AS 1325: number FROM MEMORY)" },
        { "australian", KitchenUnit.Teaspoon, "5", "Standards Association of Australia, in NSW Health's kitchen measures (AS 1325: number FROM MEMORY)" },
        { "australian", KitchenUnit.Dessertspoon, "10", "common practice, FROM MEMORY" },
        { "imperial", KitchenUnit.Gallon, "4546.09", "UK Weights and Measures Act 1985, schedule 1" },
        { "imperial", KitchenUnit.Quart, "1136.5225", "UK Weights and Measures Act 1985, schedule 1: a quarter of a gallon" },
        { "imperial", KitchenUnit.Pint, "568.26125", "UK Weights and Measures Act 1985, schedule 1: 1/8 gallon" },
        { "imperial", KitchenUnit.FluidOunce, "28.4130625", "UK Weights and Measures Act 1985, schedule 1: 1/20 pint" },
        { "imperial", KitchenUnit.Cup, "284.130625", "British Standards Institution cup: half a pint" },
        { "imperial", KitchenUnit.Tablespoon, "17.7581640625", "legacy British spoon, 5/8 fl oz; ambiguous" },
        { "imperial", KitchenUnit.Dessertspoon, "11.838776041666666666666666667", "legacy British spoon, two teaspoons; ambiguous" },
        { "imperial", KitchenUnit.Teaspoon, "5.9193880208333333333333333333", "legacy British spoon, 1/3 of 5/8 fl oz; ambiguous" },
        { "japanese", KitchenUnit.Cup, "200", "modern Japanese kitchen cup" },
        { "japanese", KitchenUnit.Tablespoon, "15", "modern Japanese kitchen spoons" },
        { "japanese", KitchenUnit.Teaspoon, "5", "modern Japanese kitchen spoons" },
        { "decilitre", KitchenUnit.Tablespoon, "15", "Fineli, release 20 (THL): tablespoon 15 mL" },
        { "decilitre", KitchenUnit.Teaspoon, "5", "Fineli, release 20 (THL): teaspoon 5 mL" },
    };

    [Theory]
    [MemberData(nameof(Volumes))]
    public void HoldsThePublishedVolume(string key, KitchenUnit unit, string millilitres, string source)
    {
        Assert.True(MeasuringSystem.TryGet(key, out MeasuringSystem? system));
        double expected = double.Parse(millilitres, CultureInfo.InvariantCulture);
        Near(expected, system.MillilitresPer(unit), 1e-12, source);
        Near(expected, system.ExactMillilitresPer(unit).ToDouble(), 1e-12, source);
    }

    [Fact]
    public void EveryCupAndSpoonIsChecked()
    {
        HashSet<(string, KitchenUnit)> rows = [.. Volumes.Select(row => (row.Data.Item1, row.Data.Item2))];
        IEnumerable<(string, KitchenUnit)> all =
            from system in MeasuringSystem.All
            from unit in Enum.GetValues<KitchenUnit>()
            where system.Defines(unit) && unit is > KitchenUnit.Litre and < KitchenUnit.Piece
            select (system.Key, unit);
        Assert.DoesNotContain(all, pair => !rows.Contains(pair));
        Assert.Equal(33, rows.Count);
    }

    // NIST SP 430 and the household table of NIST print these rounded: cup 237, tablespoon 15, teaspoon 4.9, fluid ounce 30, pint 473, quart 946 mL.
    [Theory]
    [InlineData(KitchenUnit.Cup, 237, 0.5)]
    [InlineData(KitchenUnit.Tablespoon, 15, 0.5)]
    [InlineData(KitchenUnit.Teaspoon, 4.9, 0.05)]
    [InlineData(KitchenUnit.FluidOunce, 30, 0.5)]
    [InlineData(KitchenUnit.Pint, 473, 0.5)]
    [InlineData(KitchenUnit.Quart, 946, 0.5)]
    public void RoundsToTheHouseholdTable(KitchenUnit unit, double printed, double half) =>
        Assert.InRange(MeasuringSystem.UsCustomary.MillilitresPer(unit), printed - half, printed + half);

    // International yard and pound agreement of 1959: 0.45359237 kg, 16 ounces. 21 CFR 101.9(b)(5)(viii): an ounce of 28 g on a label.
    [Fact]
    public void WeighsThePublishedMass()
    {
        foreach (MeasuringSystem system in MeasuringSystem.All)
        {
            Assert.Equal(1, system.GramsPer(KitchenUnit.Gram));
            Assert.Equal(1000, system.GramsPer(KitchenUnit.Kilogram));
            Assert.Equal(453.59237, system.GramsPer(KitchenUnit.Pound));
            Assert.Equal(system == MeasuringSystem.UsLabelling ? 28 : 28.349523125, system.GramsPer(KitchenUnit.Ounce));
            Assert.Equal(1, system.MillilitresPer(KitchenUnit.Millilitre));
            Assert.Equal(1000, system.MillilitresPer(KitchenUnit.Litre));
        }
    }

    [Theory]
    [InlineData("us-customary", KitchenUnit.Tablespoon, 16, KitchenUnit.Cup)]
    [InlineData("us-customary", KitchenUnit.Teaspoon, 3, KitchenUnit.Tablespoon)]
    [InlineData("us-customary", KitchenUnit.Teaspoon, 48, KitchenUnit.Cup)]
    [InlineData("us-customary", KitchenUnit.FluidOunce, 8, KitchenUnit.Cup)]
    [InlineData("us-customary", KitchenUnit.Tablespoon, 2, KitchenUnit.FluidOunce)]
    [InlineData("us-customary", KitchenUnit.Cup, 2, KitchenUnit.Pint)]
    [InlineData("us-customary", KitchenUnit.Pint, 2, KitchenUnit.Quart)]
    [InlineData("us-customary", KitchenUnit.Quart, 4, KitchenUnit.Gallon)]
    [InlineData("us-customary", KitchenUnit.FluidOunce, 128, KitchenUnit.Gallon)]
    [InlineData("us-labelling", KitchenUnit.Tablespoon, 16, KitchenUnit.Cup)]
    [InlineData("us-labelling", KitchenUnit.FluidOunce, 8, KitchenUnit.Cup)]
    [InlineData("us-labelling", KitchenUnit.Teaspoon, 3, KitchenUnit.Tablespoon)]
    [InlineData("imperial", KitchenUnit.FluidOunce, 20, KitchenUnit.Pint)]
    [InlineData("imperial", KitchenUnit.FluidOunce, 10, KitchenUnit.Cup)]
    [InlineData("imperial", KitchenUnit.Pint, 8, KitchenUnit.Gallon)]
    [InlineData("imperial", KitchenUnit.Tablespoon, 16, KitchenUnit.Cup)]
    [InlineData("imperial", KitchenUnit.Teaspoon, 3, KitchenUnit.Tablespoon)]
    [InlineData("imperial", KitchenUnit.Teaspoon, 2, KitchenUnit.Dessertspoon)]
    [InlineData("metric", KitchenUnit.Teaspoon, 3, KitchenUnit.Tablespoon)]
    [InlineData("metric", KitchenUnit.Cup, 4, KitchenUnit.Litre)]
    [InlineData("australian", KitchenUnit.Teaspoon, 4, KitchenUnit.Tablespoon)]
    [InlineData("australian", KitchenUnit.Dessertspoon, 2, KitchenUnit.Tablespoon)]
    [InlineData("japanese", KitchenUnit.Cup, 5, KitchenUnit.Litre)]
    public void RelationsAreExact(string key, KitchenUnit small, int count, KitchenUnit large)
    {
        Assert.True(MeasuringSystem.TryGet(key, out MeasuringSystem? system));
        Assert.Equal(system.ExactMillilitresPer(large), count * system.ExactMillilitresPer(small));
    }

    [Fact]
    public void TheUsCupIsAnExactFraction() =>
        Assert.Equal(Fraction.FromDecimal(236.5882365m), MeasuringSystem.UsCustomary.ExactMillilitresPer(KitchenUnit.Cup));

    [Fact]
    public void LargerUnitsHoldMore()
    {
        KitchenUnit[] order =
        [
            KitchenUnit.Millilitre, KitchenUnit.Teaspoon, KitchenUnit.Dessertspoon, KitchenUnit.Tablespoon, KitchenUnit.FluidOunce,
            KitchenUnit.Cup, KitchenUnit.Pint, KitchenUnit.Quart, KitchenUnit.Gallon,
        ];
        foreach (MeasuringSystem system in MeasuringSystem.All)
        {
            KitchenUnit[] has = [.. order.Where(system.Defines)];
            for (int i = 1; i < has.Length; i++)
            {
                Assert.True(system.MillilitresPer(has[i - 1]) < system.MillilitresPer(has[i]), $"{system}: {has[i - 1]}, {has[i]}");
                Assert.True(system.ExactMillilitresPer(has[i - 1]) < system.ExactMillilitresPer(has[i]), $"{system}: {has[i - 1]}, {has[i]}");
            }
        }
    }

    [Theory]
    [InlineData("us-labelling", KitchenUnit.Pint, "us-customary, imperial")]
    [InlineData("us-labelling", KitchenUnit.Quart, "us-customary, imperial")]
    [InlineData("us-labelling", KitchenUnit.Gallon, "us-customary, imperial")]
    [InlineData("us-labelling", KitchenUnit.Dessertspoon, "us-customary, metric, australian, imperial")]
    [InlineData("metric", KitchenUnit.FluidOunce, "us-customary, us-labelling, imperial")]
    [InlineData("australian", KitchenUnit.Pint, "us-customary, imperial")]
    [InlineData("japanese", KitchenUnit.Dessertspoon, "us-customary, metric, australian, imperial")]
    public void AMissingUnitIsNamedWithTheSystemsThatHaveIt(string key, KitchenUnit unit, string others)
    {
        Assert.True(MeasuringSystem.TryGet(key, out MeasuringSystem? system));
        Assert.False(system.Defines(unit));
        foreach (Action ask in new Action[] { () => system.MillilitresPer(unit), () => system.ExactMillilitresPer(unit), () => system.SourceOf(unit) })
        {
            ArgumentException thrown = Assert.Throws<ArgumentException>(nameof(unit), ask);
            Assert.Contains(system.Name, thrown.Message, StringComparison.Ordinal);
            Assert.Contains($"has no {unit.ToWord()};", thrown.Message, StringComparison.Ordinal);
            Assert.Contains(others + ".", thrown.Message, StringComparison.Ordinal);
        }
        Assert.Null(system.CautionFor(unit));
    }

    [Fact]
    public void UnitsOfTheWrongKindAreRefused()
    {
        foreach (MeasuringSystem system in MeasuringSystem.All)
        {
            foreach (KitchenUnit unit in new[] { KitchenUnit.Gram, KitchenUnit.Ounce, KitchenUnit.Piece, (KitchenUnit)(-1), (KitchenUnit)99 })
            {
                Assert.Contains("not a unit of volume", Assert.Throws<ArgumentException>("unit", () => system.MillilitresPer(unit)).Message, StringComparison.Ordinal);
                Assert.Throws<ArgumentException>("unit", () => system.ExactMillilitresPer(unit));
            }
            foreach (KitchenUnit unit in new[] { KitchenUnit.Cup, KitchenUnit.FluidOunce, KitchenUnit.Piece, (KitchenUnit)(-1), (KitchenUnit)99 })
                Assert.Contains("not a unit of mass", Assert.Throws<ArgumentException>("unit", () => system.GramsPer(unit)).Message, StringComparison.Ordinal);
            Assert.False(system.Defines(KitchenUnit.Piece));
            Assert.False(system.Defines((KitchenUnit)(-1)));
        }
    }

    [Fact]
    public void KeysFindTheSystemsInAnyCase()
    {
        Assert.Equal(["us-customary", "us-labelling", "metric", "australian", "imperial", "japanese", "decilitre"], MeasuringSystem.All.Select(system => system.Key));
        foreach (MeasuringSystem system in MeasuringSystem.All)
        {
            Assert.True(MeasuringSystem.TryGet(system.Key.ToUpperInvariant(), out MeasuringSystem? found));
            Assert.Same(system, found);
            Assert.Equal(system.Name, system.ToString());
        }
        Assert.False(MeasuringSystem.TryGet("us", out MeasuringSystem? none));
        Assert.Null(none);
        Assert.False(MeasuringSystem.TryGet("", out _));
    }

    [Fact]
    public void CupsThatAKitchenCannotTellApartShareAFamily()
    {
        // A decilitre kitchen has no cup that another's could be taken for.
        Assert.All(MeasuringSystem.All, system => Assert.Equal(system.Defines(KitchenUnit.Cup), system != MeasuringSystem.Decilitre));
        MeasuringSystem[] cups = [.. MeasuringSystem.All.Where(system => system.Defines(KitchenUnit.Cup))];
        foreach (MeasuringSystem one in cups)
        {
            foreach (MeasuringSystem other in cups)
            {
                double ratio = one.MillilitresPer(KitchenUnit.Cup) / other.MillilitresPer(KitchenUnit.Cup);
                Assert.Equal(ratio is > 0.98 and < 1.02, one.Family == other.Family);
            }
        }
        // Household measures may be 5 % off, so a 250 mL cup and a 284 mL cup are still told apart.
        Assert.Equal(0.05, MeasuringSystem.ToolTolerance);
    }

    [Fact]
    public void EveryUnitNamesItsSourceAndDoubtfulOnesWarn()
    {
        foreach (MeasuringSystem system in MeasuringSystem.All)
        {
            foreach (KitchenUnit unit in Enum.GetValues<KitchenUnit>().Where(system.Defines))
                Assert.NotEmpty(system.SourceOf(unit).Citation);
        }
        Assert.Null(MeasuringSystem.UsCustomary.CautionFor(KitchenUnit.Cup));
        foreach (KitchenUnit spoon in new[] { KitchenUnit.Tablespoon, KitchenUnit.Teaspoon, KitchenUnit.Dessertspoon })
            Assert.Contains("ambiguous", MeasuringSystem.Imperial.CautionFor(spoon), StringComparison.Ordinal);
        Assert.Contains("labelling only", MeasuringSystem.UsLabelling.CautionFor(KitchenUnit.Ounce), StringComparison.Ordinal);
    }

    private static void Near(double expected, double actual, double relative, string because) =>
        Assert.True(Math.Abs(actual / expected - 1) <= relative, $"{because}: {expected:R} expected, {actual:R} found");
}
