using Confectio.Sources;

namespace Confectio.Heat;

/// <summary>The time for a tenfold fall in number, D, at one temperature.</summary>
public sealed class KineticPoint
{
    internal KineticPoint(double celsius, Spread decimalReductionMinutes)
    {
        Celsius = celsius;
        DecimalReductionMinutes = decimalReductionMinutes;
    }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>D, minutes.</summary>
    public Spread DecimalReductionMinutes { get; }
}
