using System.Globalization;

namespace Confectio.Keeping;

/// <summary>
/// The air of a room, and where its water settles: a cake that comes out of the cold with a surface below the dew point sweats.
/// </summary>
/// <remarks>
/// Magnus' equation with the constants of Alduchov and Eskridge, Journal of Applied Meteorology 35 (1996) 601-609, read as quoted by three
/// programs that agree: e = 6.1094 hPa · exp(17.625 t / (243.04 + t)). Within 0.3 % of IAPWS-IF97 from 0 to 50 °C; other sets of constants give
/// dew points within 0.02 K of these.
/// </remarks>
public sealed class RoomAir
{
    private const double Hectopascals = 6.1094, Slope = 17.625, Offset = 243.04;

    private RoomAir(double celsius, double relativeHumidity)
    {
        Celsius = celsius;
        RelativeHumidity = relativeHumidity;
    }

    /// <summary>The coldest air or surface, °C.</summary>
    public static double MinimumCelsius => -40;

    /// <summary>The warmest air or surface, °C.</summary>
    public static double MaximumCelsius => 50;

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>The relative humidity, above 0 to 1.</summary>
    public double RelativeHumidity { get; }

    /// <summary>The temperature at which the water of the air settles, °C. Worked number: 20 °C at 0.50 gives 9.26 °C.</summary>
    public double DewPointCelsius
    {
        get
        {
            double gamma = Math.Log(RelativeHumidity) + Slope * Celsius / (Offset + Celsius);
            return Offset * gamma / (Slope - gamma);
        }
    }

    /// <summary>The air of a room.</summary>
    /// <param name="roomCelsius">The temperature, °C, from −40 to 50: 72 is no room in °C.</param>
    /// <param name="relativeHumidity">The relative humidity, from 0.001 to 1: 60 is per cent and no fraction.</param>
    /// <returns>The air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static RoomAir Of(double roomCelsius, double relativeHumidity) =>
        new(Guard.InRange(roomCelsius, MinimumCelsius, MaximumCelsius), Guard.InRange(relativeHumidity, 1e-3, 1));

    /// <summary>The humidity that the air has beside a surface of another temperature; above 1 its water settles there.</summary>
    /// <param name="surfaceCelsius">The temperature of the surface, °C, from −40 to 50.</param>
    /// <returns>The humidity. Worked number: a surface of 15 °C in a room of 22 °C and 0.60 has 0.93.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="surfaceCelsius"/> is outside its range.</exception>
    public double HumidityBeside(double surfaceCelsius) =>
        RelativeHumidity * Pressure(Celsius) / Pressure(Guard.InRange(surfaceCelsius, MinimumCelsius, MaximumCelsius));

    /// <summary>Whether a surface sweats, or its sugar takes up water though it does not.</summary>
    /// <param name="surfaceCelsius">The temperature of the surface, °C, from −40 to 50.</param>
    /// <param name="waterActivity">
    /// The water activity of the surface, 0 to 1: above that humidity it takes up water. Saturated sucrose has 0.85, sorbitol some 0.73, fructose
    /// some 0.62.
    /// </param>
    /// <returns>What happens. Worked number: 12 °C in a room of 22 °C and 0.60, whose dew point is 13.9 °C, sweats.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public SurfaceWater Beside(double surfaceCelsius, double waterActivity = 0.85)
    {
        Guard.InRange(waterActivity, 0, 1);
        double there = HumidityBeside(surfaceCelsius);
        return there >= 1 ? SurfaceWater.Sweats : there > waterActivity ? SurfaceWater.TakesUpWater : SurfaceWater.StaysDry;
    }

    /// <summary>The temperature, the humidity and the dew point.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Celsius:0.#} °C, {100 * RelativeHumidity:0} % humidity, dew point {DewPointCelsius:0.0} °C");

    private static double Pressure(double celsius) => Hectopascals * Math.Exp(Slope * celsius / (Offset + celsius));
}
