using System.Globalization;
using Confectio.Sources;

namespace Confectio.Eggs;

/// <summary>What one source prints of a meringue.</summary>
internal sealed class MeringueFigure
{
    internal MeringueFigure(MeringueQuantity quantity, double low, double high, string printedAs, Provenance provenance)
    {
        Quantity = quantity;
        Low = low;
        High = high;
        PrintedAs = printedAs;
        Provenance = provenance;
    }

    /// <summary>What the figure is about, and its unit.</summary>
    public MeringueQuantity Quantity { get; }

    /// <summary>The low end.</summary>
    public double Low { get; }

    /// <summary>The high end; the low one where there is one figure.</summary>
    public double High { get; }

    /// <summary>What the source prints.</summary>
    public string PrintedAs { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>One line, such as <c>SyrupCelsius 115 to 121: Common practice (common-practice)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Quantity} {Low:0.##}")
        + (High > Low ? string.Create(CultureInfo.InvariantCulture, $" to {High:0.##}") : "") + $": {Provenance}";
}
