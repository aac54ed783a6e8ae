using System.Globalization;
using Confectio.Sources;

namespace Confectio.Safety;

/// <summary>The time for a tenfold fall in number, D, at one temperature.</summary>
internal sealed class KineticPoint
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

    /// <summary>The temperature and D, such as <c>57 °C: D 3.6 (3 to 4.2) min</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Celsius:0.##} °C: D {DecimalReductionMinutes} min");
}
