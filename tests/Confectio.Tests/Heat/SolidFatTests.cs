using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Tests.Data;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Heat;

/// <summary>Solid fat curves against the few ranges that could be read, and what must hold for every curve.</summary>
public sealed class SolidFatTests
{
    // Versteeg, Logan and Muller (2016), abstract: 19 Australian sites over two years, NMR, 5 and 20 °C. Sherlock, Smith and Mitchell (1996), abstract: 30 New
    // Zealand herds on one day, 10 °C. The mid curve is an estimate, and must stand within what was measured.
    [Theory]
    [InlineData(5, 49.9, 66.1, "versteeg-2016")]
    [InlineData(10, 49.6, 59.8, "sherlock-1996")]
    [InlineData(20, 14.6, 29.6, "versteeg-2016")]
    public void MilkFatStandsInTheMeasuredRanges(double celsius, double low, double high, string source)
    {
        Spread percent = SolidFatCurve.MilkFat.PercentAt(celsius);
        Assert.Equal((low, high), (percent.Low, percent.High));
        Assert.InRange(percent.Likely, low, high);
        SolidFatFigure figure = SolidFatCurve.MilkFat.Figures.Single(point => point.Celsius == celsius);
        Assert.Equal(Evidence.Estimated, figure.Provenance.Evidence);
        Assert.Equal((source, Evidence.Measured), (figure.RangeProvenance.Source.Key, figure.RangeProvenance.Evidence));
        // Summer and winter are estimates too: at 5 and 20 °C they stand within the two years of Versteeg and others, at 10 °C within the herds.
        Assert.InRange(SolidFatCurve.Get("milk-fat-summer").PercentAt(celsius).Likely, low, high);
        Assert.InRange(SolidFatCurve.Get("milk-fat-winter").PercentAt(celsius).Likely, low, high);
    }

    // Trade specification of a palm-based filling fat: the ranges at five temperatures, and their middles.
    [Theory]
    [InlineData(20, 23, 28, 33)]
    [InlineData(25, 13, 17.5, 22)]
    [InlineData(30, 7, 10.5, 14)]
    [InlineData(35, 5, 8, 11)]
    [InlineData(40, 2, 5, 8)]
    public void PalmShorteningIsItsSpecification(double celsius, double low, double likely, double high)
    {
        // The sheet gives ranges and names no maker: the middle is our judgement.
        Assert.Equal(new Spread(low, likely, high, SpreadBasis.Judged), SolidFatCurve.Get("palm-shortening").PercentAt(celsius));
        Assert.Equal(Evidence.Estimated, SolidFatCurve.Get("palm-shortening").Figures.Single(point => point.Celsius == celsius).Provenance.Evidence);
    }

    // Melting points that were read: palm kernel oil 27.3 to 28.0 °C (Ibrahim 2013), coconut fat 20 to 28 °C and cocoa butter 28 to 36 °C (Belitz, Grosch and Schieberle,
    // Tables 14.8 and 14.9), milk fat dropping at 30.5 to 35.4 °C (Versteeg and others 2016). Above them next to nothing is solid.
    [Theory]
    [InlineData("palm-kernel", 30, 0)]
    [InlineData("coconut", 30, 0)]
    [InlineData("cocoa-butter", 36, 1.1)]
    [InlineData("milk-fat", 35.4, 1.5)]
    public void AboveItsMeltingPointAFatIsLiquid(string fat, double celsius, double most) => Assert.InRange(SolidFatCurve.Get(fat).PercentAt(celsius).Likely, 0, most);

    // Wojnar and Ptasznik (Warsaw, year not noted), abstract, pulsed NMR: block margarines 43 % at 10 °C on the average and next to nothing at 40; puff margarines 57 to 76 %
    // and 8 to 13 %. The figures recalled before were 30 and 0, 41 and 16. Food Chemicals Codex, Lard (Unhydrogenated): melts completely at 42 °C.
    [Theory]
    [InlineData("margarine-block", 10, 43, 43)]
    [InlineData("margarine-block", 40, 0, 0.5)]
    [InlineData("margarine-puff", 10, 57, 76)]
    [InlineData("margarine-puff", 40, 8, 13)]
    [InlineData("lard", 42, 0, 0)]
    [InlineData("lard", 60, 0, 0)]
    public void MargarineAndLardAreAsTheyWereMeasured(string fat, double celsius, double low, double high) =>
        Assert.InRange(SolidFatCurve.Get(fat).PercentAt(celsius).Likely, low, high);

    [Fact] // FAT-07
    public void ACurveNeverRisesAndStaysInItsEnds() => Assert.All(SolidFatCurve.All, curve =>
    {
        Spread before = curve.PercentAt(-40);
        for (int i = 1; i <= 1900; i++)
        {
            Spread now = curve.PercentAt(-40 + i / 10.0);
            Assert.True(now.Low <= before.Low && now.Likely <= before.Likely && now.High <= before.High);
            Assert.InRange(now.Low, 0, now.Likely);
            Assert.InRange(now.High, now.Likely, 100);
            before = now;
        }
    });

    [Fact]
    public void ACurvePassesThroughItsPoints() => Assert.All(SolidFatCurve.All, curve =>
        Assert.All(curve.Figures, figure => Assert.Equal(figure.Percent, curve.PercentAt(figure.Celsius))));

    [Fact]
    public void BeyondItsPointsACurveIsFlat() => Assert.All(SolidFatCurve.All, curve =>
    {
        Assert.Equal(curve.Figures[0].Percent, curve.PercentAt(-40));
        Assert.Equal(curve.Figures[^1].Percent, curve.PercentAt(150));
        // Of lard the end of melting was read too.
        Assert.Equal((5.0, curve.Key == "lard" ? 42.0 : 40.0), (curve.Figures[0].Celsius, curve.Figures[^1].Celsius));
    });

    // The heat between two temperatures is L·(S₁ − S₂)/100, so that a detour costs nothing.
    [Property(MaxTest = 200)]
    public void MeltingAddsUp(byte fat, byte first, byte second, byte third)
    {
        SolidFatCurve curve = SolidFatCurve.All[fat % SolidFatCurve.All.Count];
        double a = first / 5.0, b = second / 5.0, c = third / 5.0;
        Assert.Equal(curve.MeltingKilojoulesPerKilogram(a, c), curve.MeltingKilojoulesPerKilogram(a, b) + curve.MeltingKilojoulesPerKilogram(b, c), 1e-11);
    }

    [Fact]
    public void ACurveOfYourOwn()
    {
        SolidFatCurve own = SolidFatCurve.Of(" Fennmarsh butter ", [new(5, new Spread(50, 58, 66)), new(25, new Spread(8, 11, 14))], new Spread(75, 80, 90));
        Assert.Equal("Fennmarsh butter", own.Key);
        Assert.Equal(58, own.PercentAt(0).Likely);
        Assert.Equal((58 + 11) / 2.0, own.PercentAt(15).Likely, 1e-12);
        Assert.Equal(80 * 0.47, own.MeltingKilojoulesPerKilogram(5, 25), 1e-12);
        Assert.Equal(Evidence.Estimated, own.Figures[0].Provenance.Evidence);
        Assert.DoesNotContain(own, SolidFatCurve.All);
    }

    [Fact]
    public void WhatIsRememberedOrJudgedIsNotPresentedAsPublished()
    {
        IEnumerable<Provenance> all = SolidFatCurve.All.SelectMany(curve => curve.Figures).SelectMany(figure => new[] { figure.Provenance, figure.RangeProvenance })
            .Concat(HeatFigure.All.SelectMany(figure => new[] { figure.Provenance, figure.RangeProvenance })).Concat(ThermalEquation.All.Select(equation => equation.Provenance))
            .Concat(IngredientFat.All.Select(fat => fat.Provenance));
        Assert.All(all, provenance =>
        {
            Assert.Equal(provenance.Evidence == Evidence.FromMemory, provenance.Source.Key == "memory");
            Assert.Equal(provenance.Evidence == Evidence.Estimated, provenance.Source.Key == "confectio");
            Assert.Equal(provenance.Source, Bibliography.Get(provenance.Source.Key));
        });
        Assert.All(HeatFigure.All.Where(figure => figure.Provenance.Evidence == Evidence.Estimated), figure => Assert.True(figure.Value.Low < figure.Value.High));
    }

    // Abd El-Rahman, Shalabi and Kilara (1998), abstract: 80.8 J/g. The range about it is still recalled, and says so.
    [Fact]
    public void TheHeatOfMilkFatWasMeasured()
    {
        HeatFigure milk = HeatFigure.All.Single(figure => figure is { Key: "milk-fat", Quantity: "melting" });
        Assert.Equal((75, 80.8, 90), (milk.Value.Low, milk.Value.Likely, milk.Value.High));
        Assert.Equal((Evidence.Measured, "abd-el-rahman-1998"), (milk.Provenance.Evidence, milk.Provenance.Source.Key));
        Assert.Equal(Evidence.FromMemory, milk.RangeProvenance.Evidence);
        Assert.Same(HeatFigure.MeltingOfIce.Provenance, HeatFigure.MeltingOfIce.RangeProvenance);
    }

    [Fact]
    public void TheTablesInTheAssemblyAreReadWhole()
    {
        Assert.Equal(Tables.Of("solid_fat").Count, SolidFatCurve.All.Sum(curve => curve.Figures.Count));
        Assert.Equal(Tables.Of("heats").Count, HeatFigure.All.Count);
        Assert.Equal(Tables.Of("ingredient_fats").Count, IngredientFat.All.Count);
    }

    [Fact]
    public void AFatIsOfAnIngredientThatExistsAndHasFatBesideMilkFat() => Assert.All(IngredientFat.All, fat =>
    {
        Composition composition = IngredientTable.BuiltIn.Get(fat.IngredientId).Composition;
        Assert.True(composition[Constituent.Fat] > composition.MilkFat);
    });

    [Theory]
    [InlineData("lard", "lard")]
    [InlineData("cocoa-butter", "cocoa-butter")]
    [InlineData("shortening-palm", "palm-shortening")]
    [InlineData("oil-coconut", "coconut")]
    [InlineData("couverture-milk-34", "cocoa-butter")]
    [InlineData("egg-yolk", null)]
    [InlineData("chocolate-compound", null)]
    [InlineData("butter-unsalted", null)] // all milk fat
    public void TheFatOfAnIngredient(string id, string? curve) =>
        Assert.Equal(curve, IngredientFat.TryGet(IngredientTable.BuiltIn.Get(id), out IngredientFat? fat) ? fat.Curve.Key : null);
}
