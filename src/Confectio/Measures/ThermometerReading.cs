using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Confectio.Measures;

/// <summary>
/// What a thermometer showed at a time, in a pot or in a bowl: <c>new ThermometerReading { Minutes = 12.5, Celsius = 110 }</c>.
/// <see langword="default"/> is 0 °C at the start.
/// </summary>
public readonly struct ThermometerReading : IEquatable<ThermometerReading>
{
    internal ThermometerReading(double minutes, double celsius)
    {
        Minutes = minutes;
        Celsius = celsius;
    }

    /// <summary>Minutes since any start, from −1e6 to 1e6.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its range.</exception>
    public double Minutes { get; init => field = Guard.InRange(value, -1e6, 1e6, "minutes"); }

    /// <summary>The temperature, °C, from −60 to 220.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its range.</exception>
    public double Celsius { get; init => field = Guard.InRange(value, -60, 220, "celsius"); }

    /// <inheritdoc/>
    public bool Equals(ThermometerReading other) => Minutes.Equals(other.Minutes) && Celsius.Equals(other.Celsius);

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is ThermometerReading other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Minutes, Celsius);

    /// <summary>Invariant text, such as <c>12.5 min: 110 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Minutes:0.###} min: {Celsius:0.###} °C");

    /// <summary>Whether two readings are the same.</summary>
    public static bool operator ==(ThermometerReading left, ThermometerReading right) => left.Equals(right);

    /// <summary>Whether two readings differ.</summary>
    public static bool operator !=(ThermometerReading left, ThermometerReading right) => !left.Equals(right);

    /// <summary>Readings in order of time, checked.</summary>
    internal static ThermometerReading[] Rising(IEnumerable<ThermometerReading> readings, int most)
    {
        ThermometerReading[] all = [.. Guard.NotNull(readings).Take(most + 1)];
        if (all.Length < 2 || all.Length > most)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(readings)} has {(all.Length < 2 ? $"{all.Length}" : $"more than {most}")}; from 2 to {most} are expected."),
                    nameof(readings));
        for (int i = 1; i < all.Length; i++)
        {
            if (all[i].Minutes <= all[i - 1].Minutes)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"{nameof(readings)}: number {i + 1} is at {all[i].Minutes:R} minutes, not after {all[i - 1].Minutes:R}."),
                        nameof(readings));
        }
        return all;
    }
}
