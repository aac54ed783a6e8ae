using System.Globalization;
using Confectio.Measures;

namespace Confectio.Formulas;

/// <summary>A formula times a factor, in measures that a kitchen has: 5 teaspoons twelve times are 1 1/4 cups, and not 60 teaspoons.</summary>
/// <remarks>
/// A line in cups or spoons is scaled as a volume, exactly, so that its packing stays and its density does not come in; then the fewest fills of the tools that come within 2 %, or else within 5 %, or else
/// within what is allowed, are taken (<see cref="PracticalMeasure"/>). A line that was weighed stays weighed. Pieces stay pieces where they come out whole or in halves. What no filling comes near is weighed, and says so.
/// Worked number: 5 tsp of vanilla extract times 12 are 295.7 mL, 1 1/4 US cups exactly.
/// </remarks>
public sealed class ScaledFormula
{
    // In cups nobody measures more closely than the first; of small spoons there is often nothing within the second.
    private const double FirstAllowed = 0.02, SecondAllowed = 0.05;

    private const double MostMillilitres = 1_000_000, LeastMillilitres = 0.01;

    private ScaledFormula(Formula from, double factor, ScaledLine[] lines)
    {
        From = from;
        Factor = factor;
        Lines = lines;
        Formula = Formula.Of(from.Name, lines.Select(line => line.Line), Math.Min(from.BoiledOffGrams * factor, Formula.WaterOf(lines.Select(line => line.Line))));
    }

    /// <summary>The formula that was scaled.</summary>
    public Formula From { get; }

    /// <summary>The factor.</summary>
    public double Factor { get; }

    /// <summary>The lines, in their order.</summary>
    public IReadOnlyList<ScaledLine> Lines { get; }

    /// <summary>The formula as it is measured: by the errors of its measures it is not quite the factor times the other.</summary>
    public Formula Formula { get; }

    /// <summary>How far what is put in is off the factor times the formula, as a fraction.</summary>
    public double RelativeError => Formula.PutInGrams / (Factor * From.PutInGrams) - 1;

    /// <summary>Scales a formula into measures.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="factor">The factor, above 0, so that no line is above 1e12 g.</param>
    /// <param name="tools">The cups and spoons in the drawer.</param>
    /// <param name="allowedError">How far a measure may be off where none within 2 % is found, as a fraction from 0 to 0.2.</param>
    /// <returns>The scaled formula.</returns>
    /// <exception cref="ArgumentNullException">The formula or the tools are null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static ScaledFormula Of(Formula formula, double factor, MeasuringTools tools, double allowedError = 0.1)
    {
        Guard.NotNull(formula);
        Guard.NotNull(tools);
        Guard.InRange(allowedError, 0, 0.2);
        // Sees to the range of the factor, by its name.
        Formula weighed = formula.Scale(factor);
        return new ScaledFormula(formula, factor, [.. formula.Lines.Select((line, i) => Scaled(line, weighed.Lines[i], factor, tools, allowedError))]);
    }

    /// <summary>The factor and the lines, such as <c>× 12: 1 1/4 cups vanilla extract (260 g), +0.0 %</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"× {Factor:0.####}: {string.Join("; ", Lines)}");

    private static ScaledLine Scaled(FormulaLine line, FormulaLine scaled, double factor, MeasuringTools tools, double allowedError)
    {
        double grams = scaled.Grams.Likely;
        if (line.AsWritten is not Amount written || grams == 0)
            return new ScaledLine(grams, scaled, null, "");
        // Nobody weighs 145 5/6 g; a quarter of a pound is weighed by scales that have ounces.
        if (written.IsMass)
        {
            bool isRead = scaled.AsWritten is { } mass && Enumerable.Range(0, mass.PartCount).All(i => mass.Part(i) is var part && 4 % part.Low.Denominator == 0 && 4 % part.High.Denominator == 0
                && (part.Low.IsWhole || part.Unit is not (KitchenUnit.Gram or KitchenUnit.Kilogram)));
            return new ScaledLine(grams, isRead ? scaled : FormulaLine.Of(line.Ingredient, grams), null, "");
        }
        if (written.IsPiece)
        {
            // A dozen and a half is a number of eggs, and 2 1/3 is none.
            bool isCount = scaled.AsWritten is { } pieces && Enumerable.Range(0, pieces.PartCount).All(i => pieces.Part(i) is var part && 2 % part.Low.Denominator == 0 && 2 % part.High.Denominator == 0);
            return isCount ? new ScaledLine(grams, scaled, null, "") : new ScaledLine(grams, FormulaLine.Of(line.Ingredient, grams), null, "weighed: it comes out at no whole or half number of pieces");
        }
        double millilitres = written.Millilitres(line.MeasuringSystem!) * factor;
        if (millilitres is < LeastMillilitres or > MostMillilitres)
            return new ScaledLine(grams, FormulaLine.Of(line.Ingredient, grams), null, millilitres < LeastMillilitres ? "weighed: no spoon is so small" : "weighed: more than a thousand litres");
        foreach (double allowed in (ReadOnlySpan<double>)[Math.Min(FirstAllowed, allowedError), Math.Min(SecondAllowed, allowedError), allowedError])
        {
            if (PracticalMeasure.Find(millilitres, tools, allowed) is PracticalMeasure measure)
            {
                FormulaLine made = FormulaLine.Of(line.Ingredient, Math.Min(grams * (measure.Millilitres / millilitres), 1e12), measure.Amount, tools.MeasuringSystem, line.Packing);
                return new ScaledLine(grams, made, measure, "");
            }
        }
        return new ScaledLine(grams, FormulaLine.Of(line.Ingredient, grams), null,
            string.Create(CultureInfo.InvariantCulture, $"weighed: no filling of the cups and spoons comes within {100 * allowedError:0.##} %"));
    }
}
