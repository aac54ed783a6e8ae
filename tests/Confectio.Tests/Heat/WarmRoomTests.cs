using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Sources;
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
    public void WhatIsNotKnownIsDoubtful()
    {
        WarmRoom yolk = Formula.Of("", [FormulaLine.Of(s_table.Get("egg yolk"), 100)]).InWarmRoom(30);
        Assert.Equal(WindowAnswer.Doubtful, yolk.Stands);
        Assert.Contains("not known", yolk.Why, StringComparison.Ordinal);
        Assert.All(yolk.Windows, window => Assert.Equal(WindowAnswer.Doubtful, window.Value));
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
