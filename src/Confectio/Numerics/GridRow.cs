namespace Confectio.Numerics;

/// <summary>A condition low ≤ coefficients·k ≤ high on whole numbers of steps.</summary>
internal sealed class GridRow(double[] coefficients, double low, double high)
{
    public double[] Coefficients { get; } = coefficients;

    public double Low { get; } = low;

    public double High { get; } = high;
}
