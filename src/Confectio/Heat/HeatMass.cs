using System.Globalization;

namespace Confectio.Heat;

/// <summary>
/// So much of something for a mix, its temperature not said yet. Mass and temperature are two calls, so that nobody gives one for the
/// other.
/// </summary>
public sealed class HeatMass
{
    private readonly Func<double, HeatLine> _at;

    internal HeatMass(string name, double grams, Func<double, HeatLine> at) => (Name, Grams, _at) = (name, grams, at);

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>The mass, g.</summary>
    public double Grams { get; }

    /// <summary>It at a temperature: a line of a mix.</summary>
    /// <param name="celsius">
    /// The temperature, °C: from −40 to 150; with water from 0; with sucrose crystals from 0 to 100; ice from −40 to 0.
    /// </param>
    /// <returns>The line, such as <c>250 g unsalted butter at 18 °C</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public HeatLine At(double celsius) => _at(celsius);

    /// <summary>The mass and the name, such as <c>250 g unsalted butter</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Grams:0.##} g {Name}");
}
