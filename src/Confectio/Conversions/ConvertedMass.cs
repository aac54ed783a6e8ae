using System.Globalization;
using Confectio.Sources;
using UnitsNet;

namespace Confectio.Conversions;

/// <summary>
/// A mass that a measure was turned into: low, likely and high in grams, and the conversion that says why.
/// <see langword="default"/> is 0 g, exactly, by no conversion.
/// </summary>
public readonly struct ConvertedMass : IEquatable<ConvertedMass>
{
    internal ConvertedMass(double low, double likely, double high, double standardUncertainty, Conversion? by, bool throughDensity)
    {
        LowGrams = low;
        LikelyGrams = likely;
        HighGrams = high;
        StandardUncertaintyGrams = standardUncertainty;
        By = by;
        ThroughDensity = throughDensity;
    }

    /// <summary>The low end, in grams.</summary>
    public double LowGrams { get; }

    /// <summary>The likely mass, in grams.</summary>
    public double LikelyGrams { get; }

    /// <summary>The high end, in grams.</summary>
    public double HighGrams { get; }

    /// <summary>The standard uncertainty in grams: likely × u(ln m). Where the amount was a volume, its part that comes from the density is shared by every mass of the same <see cref="By"/>.</summary>
    public double StandardUncertaintyGrams { get; }

    /// <summary>The conversion, with its density, source and cautions; <see langword="null"/> where the amount was a mass already.</summary>
    public Conversion? By { get; }

    /// <summary>Whether the uncertainty holds that of the density of <see cref="By"/>; that of a counted piece does not.</summary>
    internal bool ThroughDensity { get; }

    /// <summary>The three numbers together, in grams.</summary>
    public Spread Grams => new(LowGrams, LikelyGrams, HighGrams);

    /// <summary>The likely mass as a UnitsNet quantity.</summary>
    public Mass ToMass() => Mass.FromKilograms(LikelyGrams / 1000);

    /// <inheritdoc/>
    public bool Equals(ConvertedMass other) => LowGrams.Equals(other.LowGrams) && LikelyGrams.Equals(other.LikelyGrams)
        && HighGrams.Equals(other.HighGrams) && StandardUncertaintyGrams.Equals(other.StandardUncertaintyGrams) && ReferenceEquals(By, other.By);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is ConvertedMass other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(LowGrams, LikelyGrams, HighGrams);

    /// <summary>Whether two masses are the same.</summary>
    public static bool operator ==(ConvertedMass left, ConvertedMass right) => left.Equals(right);

    /// <summary>Whether two masses differ.</summary>
    public static bool operator !=(ConvertedMass left, ConvertedMass right) => !left.Equals(right);

    /// <summary>Invariant text, such as <c>146.2 g (129.6 to 164.9)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{LikelyGrams:G4} g ({LowGrams:G4} to {HighGrams:G4})");
}
