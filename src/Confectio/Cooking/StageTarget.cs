using System.Globalization;
using Confectio.Sugars;

namespace Confectio.Cooking;

/// <summary>A cooking stage in one kitchen, for one mix of solids.</summary>
public sealed class StageTarget
{
    internal StageTarget(CookingStage stage, AirPressure pressure, SugarSolution solids)
    {
        Stage = stage;
        Pressure = pressure;
        Low = new StageEnd(stage.LowCelsius, pressure, solids);
        High = new StageEnd(stage.HighCelsius, pressure, solids);
    }

    /// <summary>The stage.</summary>
    public CookingStage Stage { get; }

    /// <summary>The pressure of the kitchen.</summary>
    public AirPressure Pressure { get; }

    /// <summary>The low end.</summary>
    public StageEnd Low { get; }

    /// <summary>The high end.</summary>
    public StageEnd High { get; }

    /// <summary>One line, such as <c>soft ball at 83.53 kPa: 106.6 to 109.8 °C</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Stage} at {Pressure}: {Low.Celsius:0.0} to {High.Celsius:0.0} °C");
}
