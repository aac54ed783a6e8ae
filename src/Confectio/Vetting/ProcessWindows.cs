namespace Confectio.Vetting;

/// <summary>
/// Which temperatures a process of the trade can have. Wide on purpose: they only tell degrees Fahrenheit from Celsius.
/// </summary>
internal static class ProcessWindows
{
    // Common practice of the trade; tempering 26 to 50, sugar stages 106 to 180 and ovens 70 to 290 degrees Celsius.
    private static readonly (string Word, double LowCelsius, double HighCelsius)[] s_windows =
    [
        ("temper", 26, 50), ("chocolate", 26, 50),
        ("thread", 104, 180), ("ball", 106, 180), ("crack", 106, 180), ("caramel", 106, 190), ("syrup", 100, 180),
            ("sugar stage", 106, 180),
        ("meringue oven", 70, 130), ("oven", 70, 290), ("bake", 70, 290),
        ("refrigerator", -2, 10), ("fridge", -2, 10), ("freezer", -35, -10), ("room", 15, 32),
        ("egg", 50, 85), ("swiss", 45, 85), ("pasteur", 50, 90), ("water boils", 80, 101),
    ];

    public static bool TryGet(string what, out double lowCelsius, out double highCelsius)
    {
        foreach ((string word, double low, double high) in s_windows)
        {
            if (what.Contains(word, StringComparison.OrdinalIgnoreCase))
            {
                (lowCelsius, highCelsius) = (low, high);
                return true;
            }
        }
        (lowCelsius, highCelsius) = (0, 0);
        return false;
    }
}
