using System.Globalization;
using Confectio.Sources;

namespace Confectio.Safety;

/// <summary>One row of a published table: a product, a temperature, and how long it is to be held there.</summary>
public sealed class HoldTime
{
    internal HoldTime(string product, FoodMatrix matter, double fahrenheit, double seconds, Provenance provenance)
    {
        Product = product;
        Matter = matter;
        Fahrenheit = fahrenheit;
        Seconds = seconds;
        Provenance = provenance;
    }

    /// <summary>The product as the table names it.</summary>
    public string Product { get; }

    /// <summary>What the product is; <see cref="FoodMatrix.Food"/> of a row for any egg.</summary>
    public FoodMatrix Matter { get; }

    /// <summary>The temperature as printed, °F.</summary>
    public double Fahrenheit { get; }

    /// <summary>The temperature, °C.</summary>
    public double Celsius => (Fahrenheit - 32) / 1.8;

    /// <summary>The time, s; 0 where reaching the temperature is all that is asked.</summary>
    public double Seconds { get; }

    /// <summary>Where it is printed.</summary>
    public Provenance Provenance { get; }

    /// <summary>
    /// Whether a log shows the temperature held without a break for the time; a gap of the log is a break. It is a reading of the table and
    /// no more: the table is for the product it names, and for its date.
    /// </summary>
    /// <param name="log">The log.</param>
    /// <exception cref="ArgumentNullException"><paramref name="log"/> is null.</exception>
    public bool IsHeldBy(ProbeLog log) => Guard.NotNull(log).LongestMinutesAtOrAbove(Celsius) is double minutes
        && minutes * 60 >= Seconds - 1e-6;

    /// <summary>One line, such as <c>whole egg: 140 °F (60.0 °C) for 210 s (9 CFR 590.570)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Product}: {Fahrenheit:0} °F ({Celsius:0.0} °C)")
        + (Seconds > 0 ? string.Create(CultureInfo.InvariantCulture, $" for {Seconds:0} s") : ", reached") + $" ({Provenance.Source.ShortName})";
}
