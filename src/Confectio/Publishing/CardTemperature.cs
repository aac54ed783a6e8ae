using System.Globalization;

namespace Confectio.Publishing;

/// <summary>A temperature that a card tells in both scales, such as that of an oven or of a syrup.</summary>
/// <remarks>
/// The scale it is given in keeps its own digits; the other has as many decimals, by F = 1.8·C + 32. A least temperature is never converted
/// to less than it is and a greatest never to more: where the nearest whole degree would, a decimal is told. Worked number: at least 74 °C is
/// 165.2 °F and not 165 °F; 180 °C is 356 °F.
/// </remarks>
public sealed class CardTemperature
{
    private const double Lowest = -100;
    private const double Highest = 500;
    private const int MostDecimals = 2;
    private const int LongestName = 200;

    private readonly bool _isFahrenheit;
    private readonly CardTemperatureBound _bound;

    private CardTemperature(string name, double low, double high, bool isFahrenheit, CardTemperatureBound bound)
    {
        Name = name;
        (LowCelsius, HighCelsius) = isFahrenheit ? (ToCelsius(low), ToCelsius(high)) : (low, high);
        (LowFahrenheit, HighFahrenheit) = isFahrenheit ? (low, high) : (ToFahrenheit(low), ToFahrenheit(high));
        _isFahrenheit = isFahrenheit;
        _bound = bound;
    }

    /// <summary>What has it, such as <c>oven</c>.</summary>
    public string Name { get; }

    /// <summary>The low end, °C.</summary>
    public double LowCelsius { get; }

    /// <summary>The high end, °C; the same as the low where it is no range.</summary>
    public double HighCelsius { get; }

    /// <summary>The low end, °F.</summary>
    public double LowFahrenheit { get; }

    /// <summary>The high end, °F; the same as the low where it is no range.</summary>
    public double HighFahrenheit { get; }

    /// <summary>What its figure means: that temperature, at least, or at most.</summary>
    public CardTemperatureBound Bound => _bound;

    /// <summary>A temperature in degrees Celsius.</summary>
    /// <param name="name">What has it, 1 to 200 characters.</param>
    /// <param name="celsius">The temperature, from -100 to 500 °C.</param>
    /// <param name="bound">Whether it is that temperature, the least or the greatest.</param>
    /// <returns>The temperature. Worked number: 180 °C is told as 180 °C (356 °F).</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException">The name is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range, or the bound no defined value.</exception>
    public static CardTemperature Of(string name, double celsius, CardTemperatureBound bound = CardTemperatureBound.None)
    {
        Guard.InRange(celsius, Lowest, Highest);
        return new(Named(name), celsius, celsius, isFahrenheit: false, Guard.Defined(bound));
    }

    /// <summary>A range of temperatures in degrees Celsius.</summary>
    /// <param name="name">What has it, 1 to 200 characters.</param>
    /// <param name="lowCelsius">The low end, from -100 to 500 °C.</param>
    /// <param name="highCelsius">The high end, from <paramref name="lowCelsius"/> to 500 °C.</param>
    /// <returns>The temperatures. Worked number: 116 to 118 °C is told as 116 to 118 °C (241 to 244 °F).</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException">The name is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A temperature is outside its range.</exception>
    public static CardTemperature Between(string name, double lowCelsius, double highCelsius)
    {
        Guard.InRange(lowCelsius, Lowest, Highest);
        return new(Named(name), lowCelsius, Guard.InRange(highCelsius, lowCelsius, Highest), isFahrenheit: false, CardTemperatureBound.None);
    }

    /// <summary>A temperature in degrees Fahrenheit, which is told first.</summary>
    /// <param name="name">What has it, 1 to 200 characters.</param>
    /// <param name="fahrenheit">The temperature, from -148 to 932 °F.</param>
    /// <param name="bound">Whether it is that temperature, the least or the greatest.</param>
    /// <returns>The temperature. Worked number: 350 °F is told as 350 °F (177 °C).</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException">The name is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range, or the bound no defined value.</exception>
    public static CardTemperature OfFahrenheit(string name, double fahrenheit, CardTemperatureBound bound = CardTemperatureBound.None)
    {
        Guard.InRange(fahrenheit, ToFahrenheit(Lowest), ToFahrenheit(Highest));
        return new(Named(name), fahrenheit, fahrenheit, isFahrenheit: true, Guard.Defined(bound));
    }

    /// <summary>A range that is told in Fahrenheit first.</summary>
    internal static CardTemperature BetweenFahrenheit(string name, double low, double high) => new(name, low, high, isFahrenheit: true, CardTemperatureBound.None);

    /// <summary>The name and the temperature in both scales, the same in every culture: <c>oven: 180 °C (356 °F)</c>.</summary>
    public override string ToString() => $"{Name}: {Told(SheetNumbers.Invariant)}";

    /// <summary>The temperature in both scales.</summary>
    internal string Told(SheetNumbers numbers)
    {
        string word = _bound switch
        {
            CardTemperatureBound.AtLeast => "at least ",
            CardTemperatureBound.AtMost => "at most ",
            _ => "",
        };
        (double low, double high) = _isFahrenheit ? (LowFahrenheit, HighFahrenheit) : (LowCelsius, HighCelsius);
        int decimals = Math.Max(Decimals(low), Decimals(high));
        string own = Range(low, high, decimals), unit = _isFahrenheit ? "°F" : "°C", other = _isFahrenheit ? "°C" : "°F";
        return $"{word}{own} {unit} ({Converted(decimals)} {other})";

        string Range(double from, double to, int digits) => from == to ? numbers.At(from, -digits) : $"{numbers.At(from, -digits)} to {numbers.At(to, -digits)}";

        string Converted(int digits)
        {
            (double from, double to) = _isFahrenheit ? (LowCelsius, HighCelsius) : (LowFahrenheit, HighFahrenheit);
            double nearest = Math.Round(from, digits, MidpointRounding.AwayFromZero);
            if ((_bound == CardTemperatureBound.AtLeast && nearest < from - 1e-9) || (_bound == CardTemperatureBound.AtMost && nearest > from + 1e-9))
            {
                digits++;
                double scale = Math.Pow(10, digits);
                from = to = (_bound == CardTemperatureBound.AtLeast ? Math.Ceiling(from * scale - 1e-6) : Math.Floor(from * scale + 1e-6)) / scale;
            }
            return Range(from, to, digits);
        }
    }

    private static int Decimals(double degrees)
    {
        for (int decimals = 0; decimals < MostDecimals; decimals++)
        {
            if (Math.Abs(degrees - Math.Round(degrees, decimals)) < 1e-9)
                return decimals;
        }
        return MostDecimals;
    }

    private static double ToFahrenheit(double celsius) => 1.8 * celsius + 32;

    private static double ToCelsius(double fahrenheit) => (fahrenheit - 32) / 1.8;

    private static string Named(string name) => !string.IsNullOrWhiteSpace(Guard.NotNull(name)) && name.Length <= LongestName ? name
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(name)} has {name.Length} characters; from 1 to {LongestName}, not blank, are expected."), nameof(name));
}
