using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;

namespace Confectio.Eggs;

/// <summary>Egg white replaced by a foam former, in grams. The mass need not be that of the white: the spoons of the kitchen are followed.</summary>
/// <remarks>Caution: <see cref="EggCaution.Text"/></remarks>
public sealed class FoamFormerReplacement
{
    /// <summary>The white of a US large egg, g, by which the spoons are counted (USDA SR).</summary>
    internal const double WhiteOfALargeEgg = 33;

    internal FoamFormerReplacement(FoamFormer former, double whiteGrams, Ingredient comesIn, Spread grams, Ingredient water, Spread waterGrams)
    {
        Former = former;
        WhiteGrams = whiteGrams;
        ComesIn = comesIn;
        Grams = grams;
        Water = water;
        WaterGrams = waterGrams;
    }

    /// <summary>The foam former.</summary>
    public FoamFormer Former { get; }

    /// <summary>The white that goes out, g.</summary>
    public double WhiteGrams { get; }

    /// <summary>What comes in.</summary>
    public Ingredient ComesIn { get; }

    /// <summary>How much of it, g: as uncertain as its spoon.</summary>
    public Spread Grams { get; }

    /// <summary>The water that comes with it, g; 0 where none does.</summary>
    public Spread WaterGrams { get; }

    /// <summary>The sugars that it brings with it, g: to be taken off the formula.</summary>
    public double SugarGrams => Grams.Likely * FormulaPart.Sugars.FractionIn(ComesIn);

    private Ingredient Water { get; }

    /// <summary>The formula with the white replaced.</summary>
    /// <param name="formula">A formula with as much fresh egg white as goes out, or more.</param>
    /// <returns>The formula at the likely grams: its total is what it was, less the white, and what comes in.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentException">The formula has less white than that, or too many lines.</exception>
    public Formula In(Formula formula)
    {
        string id = EggForms.FreshId(EggPart.White);
        double there = Guard.NotNull(formula).Lines.Where(line => line.Ingredient.Id == id).Sum(line => line.Grams.Likely), left = there - WhiteGrams;
        if (left < -1e-9 * there || there <= 0)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(formula)} has {there:0.###} g of fresh egg white, and {WhiteGrams:0.###} g are to go out."), nameof(formula));
        List<FormulaLine> lines = [];
        foreach (FormulaLine line in formula.Lines)
        {
            double kept = line.Ingredient.Id == id ? line.Grams.Likely * Math.Max(0, left) / there : line.Grams.Likely;
            if (line.Ingredient.Id != id)
                lines.Add(line);
            else if (kept > 0)
                lines.Add(FormulaLine.Of(line.Ingredient, kept));
        }
        lines.Add(FormulaLine.Of(ComesIn, Grams.Likely));
        if (WaterGrams.Likely > 0)
            lines.Add(FormulaLine.Of(Water, WaterGrams.Likely));
        return Formula.Of(formula.Name, lines, formula.BoiledOffGrams);
    }

    /// <summary>One line, such as <c>33 g of egg white: 8.6 g of meringue powder (6.6 to 11.1) and 29.5 g of water</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{WhiteGrams:0.#} g of egg white: {Grams.Likely:0.0} g of {ComesIn.Name} ({Grams.Low:0.0} to {Grams.High:0.0}){(WaterGrams.Likely > 0 ? $" and {WaterGrams.Likely:0.0} g of water" : "")}");
}
