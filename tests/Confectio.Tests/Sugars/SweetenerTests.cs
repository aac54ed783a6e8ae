using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Uncertainty;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>Figures of single sweeteners, against print and against each other.</summary>
public sealed class SweetenerTests
{
    // Hartel, Ergun and Vogel 2011, table of solubility, per cent of the solution at 20 and 50 °C.
    public static TheoryData<string, double, double> Solubilities => new()
    {
        { "sucrose", 66.5, 72.1 }, { "glucose", 47.8, 70.9 }, { "fructose", 78.9, 86.9 }, { "lactose", 16, 30.3 }, { "maltose", 44, 58.3 },
        { "sorbitol", 73.0, 83 }, { "mannitol", 20, 31 }, { "xylitol", 63, 80 }, { "maltitol", 60, 70 }, { "isomalt", 25, 45 },
        { "lactitol", 52, 74 }, { "erythritol", 37, 55 },
    };

    [Theory]
    [MemberData(nameof(Solubilities))]
    public void SolubilitiesAreThoseOfTheTableAndRise(string key, double at20, double at50)
    {
        Sweetener sweetener = Sweetener.Get(key);
        Assert.Equal((20, 50), sweetener.SolubilityRange);
        Assert.Equal(at20 / 100, sweetener.Solubility(20), 1e-12);
        Assert.Equal(at50 / 100, sweetener.Solubility(50), 1e-12);
        double before = 0;
        for (double celsius = 20; celsius <= 50; celsius += 0.5)
        {
            Assert.True(sweetener.Solubility(celsius) > before);
            before = sweetener.Solubility(celsius);
        }
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => sweetener.Solubility(19.9));
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => sweetener.Solubility(double.NaN));
        Assert.All(sweetener.Figures.Where(figure => figure.Quantity == SweetenerQuantity.SolubilityPercent), figure => Assert.Equal(Evidence.Compiled, figure.Provenance.Evidence));
    }

    // Two independent tables of one substance: Vavrinecz, Gillis 1924 and Hudson, which the models of syrups read. Half a per cent of the
    // solution is what the older tables differ by.
    [Theory]
    [InlineData("sucrose", Constituent.Sucrose, 25)]
    [InlineData("sucrose", Constituent.Sucrose, 50)]
    [InlineData("maltose", Constituent.Maltose, 21)]
    [InlineData("maltose", Constituent.Maltose, 49.4)]
    [InlineData("lactose", Constituent.Lactose, 20)]
    [InlineData("lactose", Constituent.Lactose, 49)]
    public void SolubilitiesAgreeWithTheOtherTables(string key, Constituent constituent, double celsius) =>
        // Between 20 and 50 °C the straight line is 0.5 % off for sucrose, whose logarithm is curved.
        Assert.Equal(Solubility.Of(constituent, celsius), Sweetener.Get(key).Solubility(celsius), 0.007);

    // Gordon and Taylor by hand: sucrose of 60 °C, k 4.7, 3 % of water: (0.97 × 60 − 4.7 × 0.03 × 135)/(0.97 + 4.7 × 0.03) = 35.25. The
    // recalled 62 °C (Roos 1993) gives 37.0 and lies inside.
    [Fact]
    public void WaterLowersTheGlassTransition()
    {
        Spread tg = Sweetener.Get("sucrose").GlassTransitionWith(0.03);
        Assert.Equal((0.97 * 60 - 4.7 * 0.03 * 135) / (0.97 + 4.7 * 0.03), tg.Likely, 1e-9);
        Assert.True(tg.Contains(37.0), $"{tg}");
        Assert.Equal(-135, Sweetener.Get("sucrose").GlassTransitionWith(1).Likely, 1e-9);
        double before = double.MaxValue;
        for (double water = 0; water <= 1; water += 0.01)
        {
            Spread here = Sweetener.Get("lactose").GlassTransitionWith(water);
            Assert.True(here.Likely < before);
            before = here.Likely;
        }
        // Roos 2002 (Lait 82, 475-484, abstract): lactose with 6.8 g of water on 100 g turns near room temperature.
        Assert.True(Sweetener.Get("lactose").GlassTransitionWith(6.8 / 106.8).Contains(25));
        Assert.Throws<ArgumentOutOfRangeException>("waterFraction", () => Sweetener.Get("sucrose").GlassTransitionWith(1.01));
        Assert.Throws<InvalidOperationException>(() => Sweetener.Get("isomalt").GlassTransitionWith(0.03));
        Assert.Throws<InvalidOperationException>(() => Sweetener.Get("gentiobiose").Solubility(20));
    }

    // The order of the dry sugars is published: trehalose, lactose, sucrose, glucose, fructose (Roe and Labuza 2005, Haque and others 2006,
    // Carbohydrate Research 1990).
    [Fact]
    public void TheDrySugarsStandInTheirOrder()
    {
        double[] order = [.. new[] { "trehalose", "lactose", "sucrose", "glucose", "fructose" }.Select(key => Sweetener.Get(key).GlassTransitionCelsius!.Value.Likely)];
        Assert.Equal(order.OrderDescending(), order);
        // Fructose: two published figures, 6.85 and 12.85; the 373 K that circulate are in neither.
        Spread fructose = Sweetener.Get("fructose").GlassTransitionCelsius!.Value;
        Assert.Equal(9.85, fructose.Likely, 1e-9);
        Assert.True(fructose.High < 20);
        // Maltose is recalled only, and the 43 °C of a damp sample that circulates is not taken.
        Assert.Equal(87, Sweetener.Get("maltose").GlassTransitionCelsius!.Value.Likely);
        Assert.All(Sweetener.Get("maltose").Figures.Where(figure => figure.Quantity == SweetenerQuantity.GlassTransitionCelsius), figure => Assert.Equal(Evidence.FromMemory, figure.Provenance.Evidence));
        // A published figure stands before a remembered one: sucrose 60, not between 60 and 62.
        Assert.Equal(60, Sweetener.Get("sucrose").GlassTransitionCelsius!.Value.Likely);
    }

    // Mäkinen 2010, Table 3, at 25 °C.
    [Theory]
    [InlineData("glycerol", 1.16)]
    [InlineData("erythritol", 1.34)]
    [InlineData("xylitol", 1.66)]
    [InlineData("ribitol", 1.49)]
    [InlineData("sorbitol", 1.65)]
    [InlineData("mannitol", 0.906)]
    public void NorrishConstantsOfPolyolsAreThoseOfTheTable(string key, double k)
    {
        Assert.Equal(k, Sweetener.Get(key).NorrishK!.Value.Likely);
        Assert.Equal(SpreadBasis.Exact, Sweetener.Get(key).NorrishK!.Value.Basis);
    }

    // The syrups' models have the same constants where both have one.
    [Theory]
    [InlineData("sucrose", Constituent.Sucrose)]
    [InlineData("glucose", Constituent.Glucose)]
    [InlineData("fructose", Constituent.Fructose)]
    [InlineData("lactose", Constituent.Lactose)]
    [InlineData("maltose", Constituent.Maltose)]
    public void OneSubstanceHasOneConstant(string key, Constituent constituent)
    {
        Assert.Equal(CoefficientTable.BuiltIn.Get("activity-norrish", constituent)["k"], Sweetener.Get(key).NorrishK!.Value.Likely);
        Assert.Equal(CoefficientTable.BuiltIn.Get("glass-transition", constituent)["k"], Sweetener.Get(key).GordonTaylorK!.Value.Likely);
    }

    [Fact]
    public void WhatIsNotKnownIsAbsent()
    {
        Assert.Equal(12, Sweetener.All.Count(known => known.SolubilityRange is not null));
        Assert.False(Sweetener.TryGet("water", out _));
        Assert.Null(Sweetener.Get("lactitol").GlassTransitionCelsius);
        Assert.Contains("isomalt", Assert.Throws<ArgumentException>("key", () => Sweetener.Get("glorp")).Message, StringComparison.Ordinal);
        Assert.All(Sweetener.All.SelectMany(known => known.Figures), figure => Assert.Equal(figure.Provenance.Evidence == Evidence.FromMemory, figure.Provenance.Source.Key == "memory"));
    }
}
