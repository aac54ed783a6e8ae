namespace Confectio.Labels;

/// <summary>A figure of a nutrition panel for 100 g or for a portion: what was worked out, and how it would be printed.</summary>
public sealed class NutritionFigure
{
    internal NutritionFigure(Spread value, string printed, string printedLow, string printedHigh)
    {
        Value = value;
        Printed = printed;
        PrintedLow = printedLow;
        PrintedHigh = printedHigh;
    }

    /// <summary>The figure that was not rounded, in kJ, kcal, g or mg.</summary>
    public Spread Value { get; }

    /// <summary>As a panel prints the likely value, such as <c>22 g</c>.</summary>
    public string Printed { get; }

    /// <summary>As a panel would print the low end of it.</summary>
    public string PrintedLow { get; }

    /// <summary>As a panel would print the high end of it.</summary>
    public string PrintedHigh { get; }

    /// <summary>What is printed, and what it may be printed as: <c>22 g (21 g to 23 g)</c>.</summary>
    public override string ToString() => PrintedLow == PrintedHigh ? Printed : $"{Printed} ({PrintedLow} to {PrintedHigh})";
}
