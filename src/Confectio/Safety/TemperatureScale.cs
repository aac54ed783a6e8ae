namespace Confectio.Safety;

/// <summary>The scale of a thermometer.</summary>
public enum TemperatureScale
{
    /// <summary>Celsius.</summary>
    Celsius,

    /// <summary>Fahrenheit.</summary>
    Fahrenheit,
}
