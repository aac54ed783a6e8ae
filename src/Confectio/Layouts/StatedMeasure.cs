using System.Globalization;
using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>What a document itself says one of its measures holds, such as <c>1 cup = 250 mL</c>.</summary>
public sealed class StatedMeasure
{
    internal StatedMeasure(KitchenUnit unit, double millilitres, int line) => (Unit, Millilitres, Line) = (unit, millilitres, line);

    /// <summary>The measure.</summary>
    public KitchenUnit Unit { get; }

    /// <summary>What one of it is said to hold, in millilitres.</summary>
    public double Millilitres { get; }

    /// <summary>The line that says it, counted from 1.</summary>
    public int Line { get; }

    /// <summary>Such as <c>1 cup = 250 mL</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"1 {Unit.ToWord()} = {Millilitres:0.###} mL");
}
