namespace Confectio.Vetting;

/// <summary>A row of a temperature table as printed.</summary>
internal readonly struct PrintedTemperature(int line, string what, double? fahrenheit, double? celsius)
{
    private static readonly string[] s_differences = ["difference", "rise", "drop", "per 1000"];

    public int Line { get; } = line;

    public string What { get; } = what;

    public double? Fahrenheit { get; } = fahrenheit;

    public double? Celsius { get; } = celsius;

    /// <summary>Whether it is a difference of temperatures, which is turned without the 32.</summary>
    public bool IsDifference => OffsetOf(What) == 0;

    /// <summary>What is taken from degrees Fahrenheit before dividing by 1.8: 32, or nothing where the words speak of a difference.</summary>
    public static double OffsetOf(string what) =>
        Array.Exists(s_differences, word => what.Contains(word, StringComparison.OrdinalIgnoreCase)) ? 0 : 32;
}
