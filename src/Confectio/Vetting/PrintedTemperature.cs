namespace Confectio.Vetting;

/// <summary>A row of a temperature table as printed.</summary>
internal readonly struct PrintedTemperature(int line, string what, double? fahrenheit, double? celsius, bool isDifference = false)
{
    private static readonly string[] s_differences = ["difference", "rise", "drop", "per 1000"];

    public int Line { get; } = line;

    public string What { get; } = what;

    public double? Fahrenheit { get; } = fahrenheit;

    public double? Celsius { get; } = celsius;

    /// <summary>Whether its words speak of a difference of temperatures.</summary>
    public bool IsDifference { get; } = isDifference || Array.Exists(s_differences, word => what.Contains(word, StringComparison.OrdinalIgnoreCase));

    /// <summary>What is taken from degrees Fahrenheit before dividing by 1.8: 32, or nothing from a difference.</summary>
    public double Offset => IsDifference ? 0 : 32;

    public double? ExpectedCelsius => (Fahrenheit - Offset) / 1.8;
}
