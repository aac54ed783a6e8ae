using System.Globalization;
using Confectio.Sources;
using UnitsNet;

namespace Confectio.Conversions;

/// <summary>
/// A volume that a mass was turned into: low, likely and high in millilitres, and the conversion that says why.
/// <see langword="default"/> is 0 mL, exactly, by no conversion.
/// </summary>
public readonly struct ConvertedVolume : IEquatable<ConvertedVolume>
{
    internal ConvertedVolume(double low, double likely, double high, Conversion by)
    {
        LowMillilitres = low;
        LikelyMillilitres = likely;
        HighMillilitres = high;
        By = by;
    }

    /// <summary>The low end, in millilitres: the mass at the high end of the density.</summary>
    public double LowMillilitres { get; }

    /// <summary>The likely volume, in millilitres.</summary>
    public double LikelyMillilitres { get; }

    /// <summary>The high end, in millilitres: the mass at the low end of the density.</summary>
    public double HighMillilitres { get; }

    /// <summary>The conversion, with its density, source and cautions.</summary>
    public Conversion? By { get; }

    /// <summary>The three numbers together, in millilitres.</summary>
    public Spread Millilitres => new(LowMillilitres, LikelyMillilitres, HighMillilitres);

    /// <summary>The likely volume as a UnitsNet quantity.</summary>
    public Volume ToVolume() => Volume.FromMilliliters(LikelyMillilitres);

    /// <inheritdoc/>
    public bool Equals(ConvertedVolume other) => LowMillilitres.Equals(other.LowMillilitres) && LikelyMillilitres.Equals(other.LikelyMillilitres)
        && HighMillilitres.Equals(other.HighMillilitres) && ReferenceEquals(By, other.By);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is ConvertedVolume other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(LowMillilitres, LikelyMillilitres, HighMillilitres);

    /// <summary>Whether two volumes are the same.</summary>
    public static bool operator ==(ConvertedVolume left, ConvertedVolume right) => left.Equals(right);

    /// <summary>Whether two volumes differ.</summary>
    public static bool operator !=(ConvertedVolume left, ConvertedVolume right) => !left.Equals(right);

    /// <summary>Invariant text, such as <c>690.8 mL (600.5 to 794.6)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{LikelyMillilitres:G4} mL ({LowMillilitres:G4} to {HighMillilitres:G4})");
}
