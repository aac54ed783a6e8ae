using System.Globalization;

namespace Confectio.Cooking;

/// <summary>A pot of syrup and a stage that it is cooked to.</summary>
public sealed class PotTarget
{
    internal PotTarget(SyrupPot start, StageTarget stage)
    {
        Stage = stage;
        Low = End(start, stage.Low);
        High = End(start, stage.High);
    }

    /// <summary>The stage for the sugars in the pot, in this kitchen.</summary>
    public StageTarget Stage { get; }

    /// <summary>The pot at the low end, with the most water; <see langword="null"/> where syrup no longer boils at this stage.</summary>
    public PotEnd? Low { get; }

    /// <summary>The pot at the high end, with the least water; <see langword="null"/> where syrup no longer boils there.</summary>
    public PotEnd? High { get; }

    /// <summary>One line, such as <c>soft ball: 106.6 to 109.8 °C (224 to 230 °F), 774.7 to 749.6 g</c>.</summary>
    public override string ToString() => Low is null ? $"{Stage.Stage}: beyond boiling"
        : string.Create(CultureInfo.InvariantCulture, $"{Stage.Stage}: {Stage.Low.Celsius:0.0} to {Stage.High.Celsius:0.0} °C "
            + $"({CookingStage.ToFahrenheit(Stage.Low.Celsius):0} to {CookingStage.ToFahrenheit(Stage.High.Celsius):0} °F), "
            + $"{Low.FinalGrams.Likely:0.0}")
            + (High is null ? " g and less" : string.Create(CultureInfo.InvariantCulture, $" to {High.FinalGrams.Likely:0.0} g"));

    private static PotEnd? End(SyrupPot start, StageEnd end) => end.Solution is null ? null : start.CookTo(end);
}
