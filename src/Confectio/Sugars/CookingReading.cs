using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Confectio.Sugars;

/// <summary>What a thermometer in the pot showed at a time. <see langword="default"/> is 0 °C at the start.</summary>
public readonly struct CookingReading : IEquatable<CookingReading>
{
    /// <summary>A reading.</summary>
    /// <param name="minutes">Minutes since any start, from −1e6 to 1e6.</param>
    /// <param name="celsius">The temperature, °C, from 0 to 220.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public CookingReading(double minutes, double celsius)
    {
        Minutes = Guard.InRange(minutes, -1e6, 1e6);
        Celsius = Guard.InRange(celsius, 0, 220);
    }

    /// <summary>Minutes since the start.</summary>
    public double Minutes { get; }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <inheritdoc/>
    public bool Equals(CookingReading other) => Minutes.Equals(other.Minutes) && Celsius.Equals(other.Celsius);

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is CookingReading other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Minutes, Celsius);

    /// <summary>Invariant text, such as <c>12.5 min: 110 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Minutes:0.###} min: {Celsius:0.###} °C");

    /// <summary>Whether two readings are the same.</summary>
    public static bool operator ==(CookingReading left, CookingReading right) => left.Equals(right);

    /// <summary>Whether two readings differ.</summary>
    public static bool operator !=(CookingReading left, CookingReading right) => !left.Equals(right);
}
