using System.Globalization;
using Confectio.Sources;

namespace Confectio.Heat;

/// <summary>How much of a fat is solid at one temperature.</summary>
internal sealed class SolidFatFigure
{
    internal SolidFatFigure(double celsius, Spread percent, string method, Provenance provenance, Provenance rangeProvenance)
    {
        Celsius = celsius;
        Percent = percent;
        Method = method;
        Provenance = provenance;
        RangeProvenance = rangeProvenance;
    }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>Grams of solid fat in 100 g of the fat.</summary>
    public Spread Percent { get; }

    /// <summary>How it is measured, for methods differ: pulsed NMR is no dilatometry, and tempering raises it.</summary>
    public string Method { get; }

    /// <summary>Where the likely figure comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>Where the low and the high come from; of milk fat, measured ranges stand about an estimate.</summary>
    public Provenance RangeProvenance { get; }

    /// <summary>One line, such as <c>21 % solid at 20 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Percent.Likely:R} % solid at {Celsius:R} °C");
}
