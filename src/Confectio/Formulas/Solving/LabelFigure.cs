using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>One figure of a nutrition label, as printed: it stands for all values that round to it.</summary>
public sealed class LabelFigure
{
    private LabelFigure(FormulaPart part, double gramsPer100, double roundingUnit)
    {
        Part = part;
        GramsPer100 = gramsPer100;
        RoundingUnit = roundingUnit;
    }

    /// <summary>What it is a figure of.</summary>
    public FormulaPart Part { get; }

    /// <summary>The printed figure, g in 100 g.</summary>
    public double GramsPer100 { get; }

    /// <summary>What the figure was rounded to, g in 100 g: the truth lies within half of it.</summary>
    public double RoundingUnit { get; }

    internal double Low => Math.Max(0, GramsPer100 - RoundingUnit / 2);

    internal double High => Math.Min(100, GramsPer100 + RoundingUnit / 2);

    /// <summary>Makes a figure.</summary>
    /// <param name="part">What it is a figure of.</param>
    /// <param name="gramsPer100">The printed figure, g in 100 g, from 0 to 100.</param>
    /// <param name="roundingUnit">
    /// What it was rounded to, g in 100 g, from 1e-6 to 100: 0.1 for <c>15.2 g</c>, 1 for <c>15 g</c>. It is not above the figure by more
    /// than 1 %, unless the figure is 0: rounded to more than itself a figure would be 0.
    /// </param>
    /// <exception cref="ArgumentNullException"><paramref name="part"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static LabelFigure Of(FormulaPart part, double gramsPer100, double roundingUnit)
    {
        Guard.NotNull(part);
        double figure = Guard.InRange(gramsPer100, 0, 100);
        // A figure of a serving brought to 100 g is a little off the multiple that was printed.
        double most = figure == 0 ? 100 : Math.Clamp(figure * 1.01, 1e-6, 100);
        return new LabelFigure(part, figure, Guard.InRange(roundingUnit, 1e-6, most));
    }

    /// <summary>The part and its figure, such as <c>sugars 50 g in 100 g</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Part} {GramsPer100:0.##} g in 100 g");
}
