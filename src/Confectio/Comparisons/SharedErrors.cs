using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Ingredients;

namespace Confectio.Comparisons;

/// <summary>
/// The errors of two formulas by what they are of: the composition of an ingredient, the density in a packing, the tools. One that both have is one, with the sign
/// that it has in each; what is left is added up by squares.
/// </summary>
/// <remarks>
/// With F = Σ xᵢ·cᵢ/M in both, D = F₂ − F₁: an error of cᵢ moves D by xᵢ₂/M₂ − xᵢ₁/M₁, and one of a measured xᵢ by ±(cᵢ − F)/M (GUM, JCGM 100:2008, 5.1.2 and 5.2.2).
/// </remarks>
internal sealed class SharedErrors
{
    private readonly Dictionary<object, double> _byKey = [];
    private double _squares;

    /// <summary>The standard uncertainty of the difference.</summary>
    public double StandardUncertainty => Math.Sqrt(_squares + _byKey.Values.Sum(way => way * way));

    /// <summary>Adds what an error moves the difference by, by its sign; errors of one key are one.</summary>
    public void Add(object key, double way) => _byKey[key] = _byKey.GetValueOrDefault(key) + way;

    /// <summary>Adds an error that nothing else has.</summary>
    public void AddAlone(double way) => _squares += way * way;

    /// <summary>Adds the errors of the lines of a formula that are measured: a gram more of a line moves the difference by so much.</summary>
    public void AddMeasures(Formula formula, Func<Ingredient, double> perGram)
    {
        foreach (FormulaLine line in formula.Lines)
        {
            if (line.Measured is not ConvertedMass mass || mass.Grams.StandardUncertainty <= 0)
                continue;
            double slope = perGram(line.Ingredient), u = mass.Grams.StandardUncertainty, density = 0, tool = 0;
            if (mass is { ThroughDensity: true, By: Conversion by })
            {
                density = mass.Grams.Likely * by.Density.LogUncertainty;
                tool = mass.Grams.Likely * by.Options.ToolTolerance / Math.Sqrt(3);
                // As in a total of masses: by the id and the packing that was weighed.
                Add((by.Ingredient, (by.Density.Basis ?? by.Density).Packing), slope * density);
                Add("tools", slope * tool);
            }
            AddAlone(slope * Math.Sqrt(Math.Max(0, u * u - density * density - tool * tool)));
        }
    }

    /// <summary>A difference with these errors, low and high two standard uncertainties away.</summary>
    public Spread Around(double difference, SpreadBasis basis)
    {
        double u = StandardUncertainty;
        return u > 0 ? new Spread(difference - 2 * u, difference, difference + 2 * u, basis) : Spread.Exactly(difference);
    }
}
