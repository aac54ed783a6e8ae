using System.Globalization;
using Confectio.Formulas;
using Confectio.Text;

namespace Confectio.Costs;

/// <summary>What a line of a formula costs.</summary>
public sealed class CostLine
{
    internal CostLine(FormulaLine line, Price? price)
    {
        Line = line;
        Price = price;
    }

    /// <summary>The line.</summary>
    public FormulaLine Line { get; }

    /// <summary>The price; <see langword="null"/> where there is none.</summary>
    public Price? Price { get; }

    /// <summary>What it costs, not rounded; <see langword="null"/> where there is no price, which is no 0.</summary>
    public decimal? Cost { get; internal init; }

    /// <summary>What is printed of it: whole coins, so that the printed lines add up to the printed sum (the largest remainders are rounded up).</summary>
    public decimal? Printed { get; internal init; }

    /// <summary>The cost with its spread, by how sure the measure of the line and the mass of the pack are.</summary>
    public Spread? Spread { get; internal init; }

    /// <summary>Its share of all that has a price, from 0 to 1; <see langword="null"/> where it has none, or nothing costs anything.</summary>
    public double? Share { get; internal init; }

    /// <summary>The same in per cent as it is printed, to a tenth: the printed shares add up to 100.0.</summary>
    public decimal? PrintedPercent { get; internal init; }

    /// <summary>One line, such as <c>250 g unsalted butter: 1.74, 62.3 %</c>.</summary>
    public override string ToString() => $"{VisibleText.Of(Line.ToString())}: " + (Printed is decimal printed && Price is not null
        ? $"{printed.ToString(CultureInfo.InvariantCulture)}{(PrintedPercent is decimal percent ? $", {percent.ToString("0.0", CultureInfo.InvariantCulture)} %" : "")}" : "no price");
}
