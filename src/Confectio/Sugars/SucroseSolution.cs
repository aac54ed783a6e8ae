namespace Confectio.Sugars;

/// <summary>
/// Sucrose and water as plain numbers, for long columns: nothing is allocated. For anything else in the pot use
/// <see cref="SugarSolution"/>, which gives the same answers for sucrose alone.
/// </summary>
internal static class SucroseSolution
{
    /// <summary>The most sucrose that boiling points are worked out for, as a mass fraction: there the measurements end.</summary>
    public const double MaximumBoilingFraction = 0.98;

    /// <summary>The density, g/mL, by the polynomial of the PTB (ICUMSA SPS-4).</summary>
    /// <param name="fraction">The mass fraction of sucrose, from 0 to 1; measured to about 0.85.</param>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <returns>Grams per millilitre. Worked number: 0.60 at 20 °C gives 1.28661.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double GramsPerMillilitre(double fraction, double celsius) =>
        SolutionDensity.Sucrose(Guard.InRange(fraction, 0, 1), Guard.InRange(celsius, 0, 100)) / 1000;

    /// <summary>The boiling point, °C; see <see cref="SugarSolution.BoilingCelsius(AirPressure, BoilingModel)"/>.</summary>
    /// <param name="fraction">The mass fraction of sucrose, from 0 to 0.98.</param>
    /// <param name="kilopascals">The pressure, kPa, from 1 to 200.</param>
    /// <param name="model">The model of the activity of water.</param>
    /// <returns>Degrees Celsius. Worked number: 0.85 at 101.325 kPa gives 113.99.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double BoilingCelsius(double fraction, double kilopascals, BoilingModel model = BoilingModel.StarzakPeacock)
    {
        Guard.InRange(fraction, 0, MaximumBoilingFraction);
        Guard.InRange(kilopascals, AirPressure.MinimumKilopascals, AirPressure.MaximumKilopascals);
        return ActivityOfWater.BoilingKelvin(MoleFraction(fraction), 1, kilopascals, Guard.Defined(model)) - SaturatedWater.ZeroCelsius;
    }

    /// <summary>A column of boiling points, °C.</summary>
    /// <param name="fractions">Mass fractions of sucrose, each from 0 to 0.98.</param>
    /// <param name="kilopascals">The pressure, kPa, from 1 to 200.</param>
    /// <param name="celsius">Where they are put, at least as long.</param>
    /// <param name="model">The model of the activity of water.</param>
    /// <exception cref="ArgumentException"><paramref name="celsius"/> is too short.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static void BoilingCelsius(ReadOnlySpan<double> fractions, double kilopascals, Span<double> celsius,
        BoilingModel model = BoilingModel.StarzakPeacock)
    {
        if (celsius.Length < fractions.Length)
            throw new ArgumentException($"{nameof(celsius)} has room for {celsius.Length} numbers; {fractions.Length} are needed.",
                nameof(celsius));
        for (int i = 0; i < fractions.Length; i++)
            celsius[i] = BoilingCelsius(fractions[i], kilopascals, model);
    }

    /// <summary>
    /// The mass fraction of sucrose that boils at a temperature: the inverse of <see cref="BoilingCelsius(double, double, BoilingModel)"/>.
    /// </summary>
    /// <param name="celsius">The temperature, °C, from where water boils to where 98 % does.</param>
    /// <param name="kilopascals">The pressure, kPa, from 1 to 200.</param>
    /// <param name="model">The model of the activity of water.</param>
    /// <returns>The mass fraction. Worked number: 115.56 °C (240 °F) at 101.325 kPa gives 0.862.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double FractionBoilingAt(double celsius, double kilopascals, BoilingModel model = BoilingModel.StarzakPeacock)
    {
        Guard.InRange(kilopascals, AirPressure.MinimumKilopascals, AirPressure.MaximumKilopascals);
        Guard.Defined(model);
        double water = SaturatedWater.BoilingKelvin(kilopascals) - SaturatedWater.ZeroCelsius;
        double x = celsius >= water - ActivityOfWater.SlackKelvin
            ? ActivityOfWater.SoluteBoilingAt(celsius + SaturatedWater.ZeroCelsius, 1, kilopascals, model, ActivityOfWater.MostSolute)
            : double.NaN;
        // Where the range ends is only worked out for whom it may stop.
        if (!(x < ActivityOfWater.MostSolute))
        {
            double most = ActivityOfWater.BoilingKelvin(ActivityOfWater.MostSolute, 1, kilopascals, model) - SaturatedWater.ZeroCelsius;
            Guard.InRange(celsius, water - ActivityOfWater.SlackKelvin, most + ActivityOfWater.SlackKelvin);
        }
        double sucrose = x * Solutes.SucroseMolarMass;
        return sucrose / (sucrose + (1 - x) * Solutes.WaterMolarMass);
    }

    /// <summary>The activity of water; see <see cref="SugarSolution.WaterActivityAllDissolved"/>.</summary>
    /// <param name="fraction">The mass fraction of sucrose, from 0 to 0.98.</param>
    /// <param name="celsius">The temperature, °C, from 0 to 220.</param>
    /// <param name="model">The model of the activity of water.</param>
    /// <returns>The activity. Worked number: 0.60 at 25 °C gives 0.8947.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double WaterActivity(double fraction, double celsius, BoilingModel model = BoilingModel.StarzakPeacock)
    {
        Guard.InRange(fraction, 0, MaximumBoilingFraction);
        Guard.InRange(celsius, 0, 220);
        return ActivityOfWater.Of(MoleFraction(fraction), 1, celsius + SaturatedWater.ZeroCelsius, Guard.Defined(model));
    }

    private static double MoleFraction(double fraction)
    {
        double sucrose = fraction / Solutes.SucroseMolarMass;
        return sucrose / (sucrose + (1 - fraction) / Solutes.WaterMolarMass);
    }
}
