using Confectio.Keeping;
using FsCheck;
using FsCheck.Fluent;
using Xunit;

namespace Confectio.Tests.Keeping;

/// <summary>The dew point against figures worked out with another program from the same and from other published constants.</summary>
public sealed class RoomAirTests
{
    [Theory] // worked by hand with Alduchov and Eskridge (1996); the last with 17.62 and 243.12, which differ by less than 0.02 K
    [InlineData(20, 0.50, 9.261, 0.005)]
    [InlineData(22, 0.45, 9.52, 0.006)]
    [InlineData(25, 0.60, 16.70, 0.006)]
    [InlineData(18, 0.65, 11.32, 0.006)]
    [InlineData(30, 0.80, 26.17, 0.006)]
    [InlineData(25, 0.60, 16.693, 0.02)]
    [InlineData(22, 0.60, 13.9, 0.1)]
    public void TheDewPointIsThatOfThePublishedConstants(double room, double humidity, double dewPoint, double within) =>
        Assert.Equal(dewPoint, RoomAir.Of(room, humidity).DewPointCelsius, within);

    [Theory]
    [InlineData(12, SurfaceWater.Sweats)]
    [InlineData(15, SurfaceWater.TakesUpWater)]
    [InlineData(20, SurfaceWater.StaysDry)]
    public void ACakeOutOfTheColdSweatsBelowTheDewPoint(double surface, SurfaceWater what) => Assert.Equal(what, RoomAir.Of(22, 0.60).Beside(surface));

    [Fact]
    public void TheDewPointIsBelowTheRoomRisesWithHumidityAndIsWhereTheAirIsFull() =>
        Prop.ForAll(Gen.Choose(0, 5000).ToArbitrary(), Gen.Choose(1, 999).ToArbitrary(), (t, h) =>
        {
            double room = t / 100.0, humidity = h / 1000.0, dew = RoomAir.Of(room, humidity).DewPointCelsius;
            Assert.True(dew <= room + 1e-9);
            Assert.True(RoomAir.Of(room, humidity + 0.001).DewPointCelsius > dew);
            if (dew >= RoomAir.MinimumCelsius)
                Assert.Equal(1, RoomAir.Of(room, humidity).HumidityBeside(dew), 1e-9);
        }).QuickCheckThrowOnFailure();

    [Theory]
    [InlineData(22, 60)]
    [InlineData(22, 1.2)]
    [InlineData(22, 0)]
    [InlineData(72, 0.6)]
    [InlineData(double.NaN, 0.6)]
    [InlineData(22, double.NaN)]
    public void BadInputIsNamed(double room, double humidity) => Assert.Throws<ArgumentOutOfRangeException>(() => RoomAir.Of(room, humidity).DewPointCelsius);
}
