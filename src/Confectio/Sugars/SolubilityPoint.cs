using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Sugars;

/// <summary>How much of a sugar a saturated solution of it alone holds at one temperature, as a table has it.</summary>
internal sealed class SolubilityPoint
{
    internal SolubilityPoint(Constituent sugar, double celsius, double fraction, Provenance provenance)
    {
        Sugar = sugar;
        Celsius = celsius;
        Fraction = fraction;
        Provenance = provenance;
    }

    /// <summary>The sugar.</summary>
    public Constituent Sugar { get; }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>The mass fraction of the sugar, without the water of its crystals, from 0 to 1.</summary>
    public double Fraction { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    // Nearly straight over temperature, which the fraction itself is not.
    internal double LogRatio => Math.Log(Fraction / (1 - Fraction));

    /// <summary>The sugar, the temperature and the solubility, such as <c>Lactose at 25 °C: 17.8 %</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Sugar} at {Celsius:0.##} °C: {100 * Fraction:0.##} %");
}
