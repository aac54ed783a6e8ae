using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Sugars;

/// <summary>One figure of a sweetener, with where it comes from.</summary>
public sealed class SweetenerFigure
{
    internal SweetenerFigure(SweetenerQuantity quantity, double? celsius, Spread value, Provenance provenance)
    {
        Quantity = quantity;
        Celsius = celsius;
        Value = value;
        Provenance = provenance;
    }

    /// <summary>What it is a figure of.</summary>
    public SweetenerQuantity Quantity { get; }

    /// <summary>The temperature that it holds for, °C; <see langword="null"/> where none is meant.</summary>
    public double? Celsius { get; }

    /// <summary>The figure, with its range where the source has one.</summary>
    public Spread Value { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The figure and its source, such as <c>solubility percent at 20 °C: 66.5, Hartel et al. 2011 (compiled)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{EnumWords.Of(Quantity, ' ')}{(Celsius is double celsius ? $" at {celsius:0.##} °C" : "")}: {Value}, {Provenance}");
}
