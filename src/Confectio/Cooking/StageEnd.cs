using System.Globalization;
using Confectio.Sources;
using Confectio.Sugars;

namespace Confectio.Cooking;

/// <summary>
/// One end of a cooking stage in one kitchen: the temperature to cook to, what the rule of thumb says, and the strength that both are
/// after.
/// </summary>
/// <remarks>
/// The strength is that of a syrup of the same solids that boils at the printed temperature at sea level (101.325 kPa), and
/// <see cref="Celsius"/> is where that strength boils here. A mix with glucose syrup or invert sugar is cooked to the same printed
/// temperature as sucrose, as the trade does, and is then a little weaker or stronger in solids. Above the strength where measurements end
/// there is hardly water left: sugar melts and browns there, which the air has no part in. Then <see cref="Solution"/> is
/// <see langword="null"/>, and the temperature is the printed one. The top of hard crack, 310 °F, is a fraction of a kelvin above where the
/// strongest syrup boils; up to 1 K above, the end is taken as that syrup's, and <see cref="IsAtLimit"/> says so.
/// </remarks>
public sealed class StageEnd
{
    private const double LimitKelvin = 1;

    internal StageEnd(double seaLevelCelsius, AirPressure pressure, SugarSolution solids)
    {
        SeaLevelCelsius = seaLevelCelsius;
        Celsius = seaLevelCelsius;
        // The rule knows no more than the altitude; the pressure stands for the altitude where it is usual.
        RuleOfThumbCelsius = seaLevelCelsius - 2 / 1.8 * (pressure.StandardAltitudeMetres / AirPressure.MetresPerFoot / 1000);
        double highest = solids.MaximumBoilingCelsius(AirPressure.SeaLevel);
        if (seaLevelCelsius > highest + LimitKelvin)
            return;
        IsAtLimit = seaLevelCelsius > highest;
        Solution = solids.BoilingAt(Math.Min(seaLevelCelsius, highest), AirPressure.SeaLevel);
        Celsius = Solution.BoilingCelsius(pressure, BoilingModel.StarzakPeacock) + Math.Max(0, seaLevelCelsius - highest);
        double other = seaLevelCelsius <= solids.MaximumBoilingCelsius(AirPressure.SeaLevel, BoilingModel.StarzakMathlouthi)
            ? solids.BoilingAt(seaLevelCelsius, AirPressure.SeaLevel, BoilingModel.StarzakMathlouthi).Solids
            : solids.MaximumSolids;
        Solids = new Spread(Math.Min(Solution.Solids, other), Solution.Solids, Math.Max(Solution.Solids, other), SpreadBasis.Models);
    }

    /// <summary>The temperature at sea level, as printed, °C.</summary>
    public double SeaLevelCelsius { get; }

    /// <summary>The temperature to cook to here, °C.</summary>
    public double Celsius { get; }

    /// <summary>The same, °F.</summary>
    public double Fahrenheit => CookingStage.ToFahrenheit(Celsius);

    /// <summary>What the rule of the extension services gives, °C: 2 °F less for every 1000 ft of standard altitude (305 m).</summary>
    public double RuleOfThumbCelsius { get; }

    /// <summary>The same, °F.</summary>
    public double RuleOfThumbFahrenheit => CookingStage.ToFahrenheit(RuleOfThumbCelsius);

    /// <summary>How much too high the rule is, K; below 0 where it is too low.</summary>
    public double RuleOfThumbError => RuleOfThumbCelsius - Celsius;

    /// <summary>The syrup at this end; <see langword="null"/> where it no longer boils.</summary>
    public SugarSolution? Solution { get; }

    /// <summary>
    /// Whether the stage ends a little above the strongest syrup that is followed: <see cref="Solution"/> is that one, and the syrup at the
    /// stage is at least as strong.
    /// </summary>
    public bool IsAtLimit { get; }

    /// <summary>
    /// Its solids as a mass fraction, over both models of the boiling point; <see langword="null"/> where it no longer boils.
    /// </summary>
    public Spread? Solids { get; }

    /// <summary>What to cook to here, and what that is at sea level.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Celsius:0.0} °C ({SeaLevelCelsius:0.0} at sea level)");
}
