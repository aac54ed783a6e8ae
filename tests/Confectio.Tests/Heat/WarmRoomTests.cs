using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Uncertainty;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Heat;

/// <summary>Whether an icing stands in the warm: what every pastry cook knows, and that the windows are those that were printed.</summary>
public sealed class WarmRoomTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    // Common practice: buttercream of butter slumps above 28 °C, of shortening it stands on a summer's day; half of each is a risk, and the tables do not say more than they know.
    [Theory]
    [InlineData(1000, 0, 31, WindowAnswer.Doubtful)] // what is known of milk fat there reaches 8 %, and the scales part by 2
    [InlineData(1000, 0, 33, WindowAnswer.No)]
    [InlineData(1000, 0, 35, WindowAnswer.No)]
    [InlineData(1000, 0, 20, WindowAnswer.Yes)]
    [InlineData(0, 1000, 31, WindowAnswer.Yes)]
    [InlineData(0, 1000, 24, WindowAnswer.Yes)]
    [InlineData(500, 500, 31, WindowAnswer.Doubtful)]
    [InlineData(1000, 0, 26, WindowAnswer.Doubtful)]
    public void ButterSlumpsAndShorteningStands(double butter, double shortening, double celsius, WindowAnswer answer) =>
        Assert.Equal(answer, Cream(butter, shortening).InWarmRoom(celsius).Stands);

    // Journal of Home Economics of Japan 35(4) (1984) 235 and 38(11) (1987) 977, abstracts.
    [Fact]
    public void TheWindowsAreThoseThatWerePrinted()
    {
        Assert.Equal([("stands", 10.0, 100.0), ("creams", 11, 12), ("roses", 10, 13.9), ("stars", 6.9, 11.8), ("roses", 14.2, 17.7), ("stars", 10.6, 14.7)],
            FatWindow.All.Select(window => (window.Use, window.Low, window.High)));
        Assert.All(FatWindow.All, window => Assert.Equal(Evidence.Measured, window.Provenance.Evidence));
        WarmRoom room = Cream(1000, 0).InWarmRoom(34);
        Assert.Equal(FatWindow.All, room.Windows.Select(window => window.Key));
        Assert.Contains("J. Home Econ. Japan 1984", room.Why, StringComparison.Ordinal);
        Assert.StartsWith("does not stand: ", room.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsNotKnownIsNotJudged()
    {
        WarmRoom yolk = Formula.Of("", [FormulaLine.Of(s_table.Get("egg yolk"), 100)]).InWarmRoom(30);
        Assert.Equal(WindowAnswer.NotJudged, yolk.Stands);
        Assert.Contains("not known", yolk.Why, StringComparison.Ordinal);
        Assert.All(yolk.Windows, window => Assert.Equal(WindowAnswer.NotJudged, window.Value));
    }

    // The buttercreams of the two papers were of margarine and shortening; a ganache is held against no window of theirs.
    [Theory]
    [InlineData("couverture-dark-64", 200, "heavy cream", 200, true)]
    [InlineData("cocoa butter", 80, "unsalted butter", 150, true)]
    [InlineData("cocoa-natural", 30, "unsalted butter", 250, false)] // 30 g of cocoa bring some 4 g of cocoa butter to 200 g of fat
    [InlineData("white shortening", 100, "unsalted butter", 125, false)]
    public void CocoaButterIsNotJudgedByTheWindowsOfShortening(string first, double grams, string second, double others, bool notJudged)
    {
        Formula formula = Formula.Of("", [FormulaLine.Of(s_table.Get(first), grams), FormulaLine.Of(s_table.Get(second), others)]);
        foreach (double celsius in (double[])[20, 24, 31, 35, 40])
        {
            WarmRoom room = formula.InWarmRoom(celsius);
            Assert.Equal(notJudged, room.Stands == WindowAnswer.NotJudged);
            Assert.Equal(notJudged, room.ToString().StartsWith("not judged: ", StringComparison.Ordinal));
            Assert.Equal(notJudged, room.Why.Contains("cocoa butter", StringComparison.Ordinal));
        }
        Assert.All(FatWindow.All, window => Assert.Equal(notJudged, formula.Until(window) is { UntilCelsius: null, NotJudgedWhy.Length: > 0 }));
    }

    // More shortening in the place of butter, at equal fat, never has less solid fat where its curve lies above butter's: by each of the three ends.
    [Property(MaxTest = 100)]
    public void MoreShorteningAtEqualFatIsNeverSofter(byte warm, byte share)
    {
        double celsius = 24 + warm % 16, butter = share * 3.9;
        // 81.11 % of butter is fat, and all of shortening.
        Spread less = Cream(butter, 811.1 - butter * 0.8111).SolidFat(celsius).PercentOfFat!.Value;
        Spread more = Cream(butter / 2, 811.1 - butter / 2 * 0.8111).SolidFat(celsius).PercentOfFat!.Value;
        Assert.True(more.Low >= less.Low - 1e-9 && more.Likely >= less.Likely - 1e-9 && more.High >= less.High - 1e-9);
    }

    [Theory]
    [InlineData(19.9)]
    [InlineData(88)]
    [InlineData(double.NaN)]
    public void FahrenheitAndColdAreRefused(double celsius) =>
        Assert.Throws<ArgumentOutOfRangeException>(nameof(celsius), () => Cream(500, 500).InWarmRoom(celsius));

    // A colder room is never worse, and more of a shortening whose curve lies above never makes it fall.
    [Property(MaxTest = 200)]
    public void AColderRoomIsNeverWorse(byte warm, byte share)
    {
        double celsius = 21 + warm % 19, butter = share * 3.9;
        Assert.True(Rank(Cream(butter, 1000 - butter).InWarmRoom(celsius - 1).Stands) >= Rank(Cream(butter, 1000 - butter).InWarmRoom(celsius).Stands));
        if (celsius >= 24)
            Assert.True(Rank(Cream(butter / 2, 1000 - butter / 2).InWarmRoom(celsius).Stands) >= Rank(Cream(butter, 1000 - butter).InWarmRoom(celsius).Stands));
    }

    private static int Rank(WindowAnswer answer) => answer switch { WindowAnswer.Yes => 2, WindowAnswer.Doubtful => 1, _ => 0 };

    private static Formula Cream(double butter, double shortening) => Formula.Of("", [FormulaLine.Of(s_table.Get("icing sugar"), 1500),
        .. butter > 0 ? [FormulaLine.Of(s_table.Get("unsalted butter"), butter)] : Array.Empty<FormulaLine>(),
        .. shortening > 0 ? [FormulaLine.Of(s_table.Get("white shortening"), shortening)] : Array.Empty<FormulaLine>()]);
}
