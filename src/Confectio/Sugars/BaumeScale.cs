using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Sugars;

/// <summary>
/// One of the scales that degrees Baumé are read on: d = m − m/s, where m is the modulus and s the specific gravity against water of
/// the same temperature, in vacuum.
/// </summary>
public sealed class BaumeScale
{
    private BaumeScale(string name, string equation)
    {
        CoefficientSet scale = CoefficientTable.BuiltIn.Get(equation, Constituent.Sucrose);
        Name = name;
        Modulus = scale["modulus"];
        ReferenceCelsius = scale["celsius"];
        Provenance = scale.Find("modulus")!.Provenance;
    }

    /// <summary>
    /// Modulus 145 at 20 °C: the scale of the United States and of the sugar tables. It goes by the true specific gravity, not by the one
    /// in air.
    /// </summary>
    public static BaumeScale Modulus145 { get; } = new("modulus 145", "baume");

    /// <summary>Modulus 144.3 at 15 °C, the rational scale; from memory.</summary>
    public static BaumeScale Rational { get; } = new("rational, modulus 144.3", "baume-rational");

    /// <summary>Modulus 146.78, Gerlach's scale; its 17.5 °C is from memory.</summary>
    public static BaumeScale Gerlach { get; } = new("Gerlach, modulus 146.78", "baume-gerlach");

    /// <summary>Modulus 144, the old scale of Holland; that it was read at 15 °C is from memory.</summary>
    public static BaumeScale OldDutch { get; } = new("old Dutch, modulus 144", "baume-old-dutch");

    /// <summary>All scales.</summary>
    public static IReadOnlyList<BaumeScale> All { get; } = [Modulus145, Rational, Gerlach, OldDutch];

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>The modulus.</summary>
    public double Modulus { get; }

    /// <summary>The temperature of the syrup and of the water it is compared with, °C.</summary>
    public double ReferenceCelsius { get; }

    /// <summary>Where the modulus comes from; the temperature may be worse known.</summary>
    public Provenance Provenance { get; }

    /// <summary>The specific gravity of a commercial degree of glucose syrup: read at 140 °F against water at 60 °F, plus one.</summary>
    /// <param name="degrees">Commercial degrees Baumé, from 1 to 60.</param>
    /// <returns>
    /// s = 145/(145 − (d − 1)) for a syrup at 140 °F (60 °C) against water at 60 °F (15.56 °C). Worked number: 43 gives 1.4078.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="degrees"/> is outside its range.</exception>
    public static double CommercialSpecificGravity(double degrees) => Modulus145.ToSpecificGravity(Guard.InRange(degrees, 1, 60) - 1);

    /// <summary>Degrees from a specific gravity.</summary>
    /// <param name="specificGravity">s, from 1 to 3.</param>
    /// <returns>Degrees Baumé. Worked number: 1.2609 at modulus 145 gives 30.00.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="specificGravity"/> is outside its range.</exception>
    public double FromSpecificGravity(double specificGravity) => Modulus - Modulus / Guard.InRange(specificGravity, 1, 3);

    /// <summary>The specific gravity of a degree.</summary>
    /// <param name="degrees">Degrees Baumé, from 0 to 90.</param>
    /// <returns>s = m/(m − d). Worked number: 30 at modulus 145 gives 1.2609.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="degrees"/> is outside its range.</exception>
    public double ToSpecificGravity(double degrees) => Modulus / (Modulus - Guard.InRange(degrees, 0, 90));

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
