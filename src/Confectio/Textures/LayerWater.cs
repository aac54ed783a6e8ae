using System.Globalization;
using Confectio.Formulas;
using Confectio.Sugars;

namespace Confectio.Textures;

/// <summary>Which way water goes between two layers that touch.</summary>
public enum WaterMove
{
    /// <summary>Their ranges overlap, or one is not known: no verdict.</summary>
    NotTold,

    /// <summary>Out of the lower layer into the upper one.</summary>
    Up,

    /// <summary>Out of the upper layer into the lower one.</summary>
    Down,
}

/// <summary>
/// Water between two layers, such as a meringue on a filling or an icing on fruit: it goes from where it is more active to where it is less, and that layer softens and weeps.
/// </summary>
/// <remarks>
/// Both activities are computed as the layers will stand (<see cref="SugarProperties.WaterActivity"/>), with the spread of their models; where those overlap nothing is told. How fast is
/// not told either: fat between them, a glaze or a gel slows it. A drop of syrup under a meringue may also be white that was not cooked through, which no activity tells.
/// Worked number: raspberries (some 0.99) under icing sugar and butter two to one (some 0.85): water goes up into the icing.
/// </remarks>
public sealed class LayerWater
{
    private LayerWater(Formula upper, Formula lower, double celsius)
    {
        Celsius = celsius;
        FormulaProperty activity = SugarProperties.WaterActivity(celsius);
        Upper = activity.SpreadOf(upper);
        Lower = activity.SpreadOf(lower);
        if (Upper is not Spread above || Lower is not Spread below)
            return;
        Difference = below - above;
        Move = below.Low > above.High ? WaterMove.Up : above.Low > below.High ? WaterMove.Down : WaterMove.NotTold;
    }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>The water activity of the upper layer; <see langword="null"/> where no model gives one.</summary>
    public Spread? Upper { get; }

    /// <summary>The water activity of the lower layer; <see langword="null"/> where no model gives one.</summary>
    public Spread? Lower { get; }

    /// <summary>That of the lower layer less that of the upper one: what drives the water up.</summary>
    public Spread? Difference { get; }

    /// <summary>Which way the water goes.</summary>
    public WaterMove Move { get; }

    /// <summary>Compares two layers.</summary>
    /// <param name="upper">The upper layer: icing, meringue.</param>
    /// <param name="lower">The lower layer: filling, fruit.</param>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <exception cref="ArgumentNullException">A layer is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static LayerWater Between(Formula upper, Formula lower, double celsius = 20) => new(Guard.NotNull(upper), Guard.NotNull(lower),
        Guard.InRange(celsius, Solubility.MinimumCelsius, Solubility.MaximumCelsius));

    /// <summary>Which way it goes and by how much.</summary>
    public override string ToString() => Upper is not Spread above || Lower is not Spread below
        ? $"not told: the water activity of the {(Upper is null ? "upper" : "lower")} layer is not known"
        : string.Create(CultureInfo.InvariantCulture, $"{Words}: water activity {above.Likely:0.00} ({above.Low:0.00} to {above.High:0.00}) above, {below.Likely:0.00} ({below.Low:0.00} to {below.High:0.00}) below, at {Celsius:0.#} °C, computed");

    private string Words => Move switch
    {
        WaterMove.Up => "water goes up into the upper layer",
        WaterMove.Down => "water goes down into the lower layer",
        _ => "not told, for the ranges overlap",
    };
}
