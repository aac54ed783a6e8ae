using System.Diagnostics.CodeAnalysis;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Text;

namespace Confectio.Cooking;

/// <summary>
/// A stage that boiling syrup is cooked to, such as soft ball: a range of temperature at sea level, with what each source prints for it.
/// </summary>
/// <remarks>
/// A stage is a strength of the syrup, told by how a drop of it behaves in cold water; the temperature only stands for it, and only at one
/// pressure. <see cref="At(AirPressure, SugarSolution?)"/> turns the range into the temperatures that mean the same strength elsewhere.
/// Caution: syrup at these temperatures burns deeply and sticks. See <see cref="Caution"/>.
/// </remarks>
public sealed class CookingStage
{
    /// <summary>What everybody at the stove must know.</summary>
    public const string Caution = "Boiling sugar is far hotter than water and sticks to the skin: keep children and bystanders away, use a "
        + "deep dry pot, long "
        + "sleeves and dry tools, and know where the cold tap is. Cool a burn at once under cool running water for 20 minutes, no ice, and "
        + "see a doctor. "
        + "Adding water or cream to hot syrup makes it boil up: take the pot off the heat, stand back and pour slowly.";

    private const double Slack = 1e-6; // K: a temperature that was worked out may be past an end by its last bits

    private static readonly CookingStage[] s_all = ReadBuiltIn();

    private CookingStage(string key, double lowFahrenheit, double highFahrenheit, IReadOnlyList<StageFigure> figures)
    {
        Key = key;
        LowFahrenheit = lowFahrenheit;
        HighFahrenheit = highFahrenheit;
        Figures = figures;
    }

    /// <summary>The stages of the trade, from thread to caramel.</summary>
    public static IReadOnlyList<CookingStage> All => s_all;

    /// <summary>The key, such as <c>soft-ball</c>.</summary>
    public string Key { get; }

    /// <summary>The name, such as <c>soft ball</c>.</summary>
    public string Name => Key.Replace('-', ' ');

    /// <summary>The low end at sea level, °F: common practice.</summary>
    public double LowFahrenheit { get; }

    /// <summary>The high end at sea level, °F: common practice.</summary>
    public double HighFahrenheit { get; }

    /// <summary>The low end at sea level, °C.</summary>
    public double LowCelsius => ToCelsius(LowFahrenheit);

    /// <summary>The high end at sea level, °C.</summary>
    public double HighCelsius => ToCelsius(HighFahrenheit);

    /// <summary>What the sources print, side by side; the first is common practice. Empty of a stage of your own.</summary>
    internal IReadOnlyList<StageFigure> Figures { get; }

    /// <summary>The stage of a key or name.</summary>
    /// <param name="name">The key or the name, such as <c>soft-ball</c> or <c>Soft ball</c>.</param>
    /// <exception cref="ArgumentException">There is no such stage; the message lists those there are.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public static CookingStage Get(string name) => Get(name, nameof(name));

    /// <summary>The same for a caller whose parameter has another name.</summary>
    internal static CookingStage Get(string name, string parameter) =>
        Keyed.Get(s_all, name, "stage", "stages", known => known.Key, known => known.Name, parameter);

    /// <summary>The stage of a key or name, where there is one.</summary>
    /// <param name="name">The key or the name, such as <c>soft-ball</c> or <c>Soft ball</c>.</param>
    /// <param name="stage">The stage, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public static bool TryGet(string name, [NotNullWhen(true)] out CookingStage? stage) =>
        (stage = Keyed.Find(s_all, name, known => known.Key, known => known.Name)) is not null;

    /// <summary>A stage of your own.</summary>
    /// <param name="name">The name.</param>
    /// <param name="lowCelsius">The low end at sea level, °C, from 100 (syrup cannot boil below water) to 220.</param>
    /// <param name="highCelsius">The high end, °C, from <paramref name="lowCelsius"/> to 220.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A temperature is outside its range.</exception>
    public static CookingStage Of(string name, double lowCelsius, double highCelsius)
    {
        if (string.IsNullOrWhiteSpace(Guard.NotNull(name)))
            throw new ArgumentException($"{nameof(name)} was {Excerpt.Of(name)}; a stage needs a name.", nameof(name));
        Guard.InRange(lowCelsius, 100, 220);
        Guard.InRange(highCelsius, lowCelsius, 220);
        return new CookingStage(name.Trim(), ToFahrenheit(lowCelsius), ToFahrenheit(highCelsius), []);
    }

    /// <summary>The stages whose strength a boiling syrup has: from the thermometer back to the stage.</summary>
    /// <param name="celsius">The temperature of the boiling syrup, °C, from where water boils at the pressure to 220.</param>
    /// <param name="pressure">The pressure.</param>
    /// <param name="solids">What is dissolved, whatever its strength here; sucrose unless stated.</param>
    /// <returns>
    /// One within a stage; between two stages both neighbours, the lower first, for what some call the one others call the other. None only
    /// below the first and above the last stage. Worked number: 116.5 °C at sea level lies between soft ball and firm ball.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static IReadOnlyList<CookingStage> StagesAt(double celsius, AirPressure pressure, SugarSolution? solids = null)
    {
        Guard.InRange(celsius, pressure.WaterBoilsCelsius - ActivityOfWater.SlackKelvin, 220);
        StageTarget[] targets = [.. s_all.Select(stage => stage.At(pressure, solids))];
        CookingStage[] within = [.. targets.Where(target => celsius >= target.Low.Celsius - Slack
            && celsius <= target.High.Celsius + Slack).Select(target => target.Stage)];
        int above = Array.FindIndex(targets, target => target.Low.Celsius > celsius);
        return within.Length > 0 ? within : above > 0 ? [s_all[above - 1], s_all[above]] : [];
    }

    /// <summary>What the stage is in a kitchen: the temperatures at which the syrup has the strength that it has at sea level.</summary>
    /// <param name="pressure">The pressure of the kitchen.</param>
    /// <param name="solids">What is dissolved, whatever its strength here; sucrose unless stated.</param>
    /// <returns>
    /// The target. Worked number: soft ball of sucrose at 1600 m is 106.6 to 109.8 °C, where the rule of thumb gives 106.4 to 109.7.
    /// </returns>
    /// <exception cref="InvalidOperationException">The solids are those of pure water.</exception>
    public StageTarget At(AirPressure pressure, SugarSolution? solids = null) => solids is { Solids: 0 }
        ? throw new InvalidOperationException("Pure water has no stages.")
            : new StageTarget(this, pressure, solids ?? SugarSolution.OfSucrose(0.5));

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    internal static double ToCelsius(double fahrenheit) => (fahrenheit - 32) / 1.8;

    internal static double ToFahrenheit(double celsius) => celsius * 1.8 + 32;

    private static CookingStage[] ReadBuiltIn()
    {
        List<(string Stage, StageFigure Figure)> rows = [];
        EmbeddedTable.Read("stages.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            rows.Add((fields.Required("stage"), new StageFigure(fields.Required("printed_as"), Fahrenheit(fields, "low_fahrenheit")!.Value,
                Fahrenheit(fields, "high_fahrenheit"), fields.Number("sugar_percent", 0, 100),
                fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note")))));
        });
        return [.. rows.GroupBy(row => row.Stage).Select(group => new CookingStage(group.Key, group.First().Figure.LowFahrenheit,
            group.First().Figure.HighFahrenheit!.Value, [.. group.Select(row => row.Figure)]))];
    }

    private static double? Fahrenheit(RowFields fields, string column) => fields.Number(column, 212, 500);
}
