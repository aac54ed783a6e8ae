using System.Globalization;
using Confectio.Formulas;

namespace Confectio.Eggs;

/// <summary>How many eggs of a size a formula takes, and by what to scale it so that it takes a whole number of them.</summary>
public sealed class EggScale
{
    private const double MostEggs = 1e6;

    private EggScale(Formula formula, EggSize size, EggPart part, double grams)
    {
        Formula = formula;
        Size = size;
        Part = part;
        Grams = grams;
    }

    /// <summary>The formula.</summary>
    public Formula Formula { get; }

    /// <summary>The size of the eggs.</summary>
    public EggSize Size { get; }

    /// <summary>The part of the egg that the formula takes.</summary>
    public EggPart Part { get; }

    /// <summary>What the formula has of it, fresh, g.</summary>
    public double Grams { get; }

    /// <summary>How many eggs that is; by the likely egg it need not be whole.</summary>
    public EggCount Eggs => EggCount.FromGrams(Grams, Part, Size);

    /// <summary>The nearest whole number of eggs, at least 1.</summary>
    public double NearestEggs => Math.Max(1, Math.Round(Eggs.Eggs.Likely, MidpointRounding.AwayFromZero));

    /// <summary>By what to scale the formula so that it takes so many eggs.</summary>
    /// <param name="eggs">How many, from 0.5 to 1e6.</param>
    /// <returns>The factor. Worked number: 300 g of white are 9.09 US large eggs of 33 g; to 12 eggs the factor is 1.32.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="eggs"/> is outside its range.</exception>
    public double FactorTo(double eggs) => Guard.InRange(eggs, 0.5, MostEggs) * Size.Grams(Part).Likely / Grams;

    /// <summary>The eggs of a formula.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="size">The size of the eggs.</param>
    /// <param name="part">The part that is counted: whites, yolks or whole eggs.</param>
    /// <returns>The scale.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="part"/> is not a defined value.</exception>
    /// <exception cref="ArgumentException">The formula has none of that part fresh, less than 0.001 g, or more than 1e9 g; or the part is the shell.</exception>
    public static EggScale Of(Formula formula, EggSize size, EggPart part = EggPart.White)
    {
        Guard.NotNull(formula);
        Guard.NotNull(size);
        string id = EggForms.FreshId(part);
        double grams = formula.Lines.Where(line => line.Ingredient.Id == id).Sum(line => line.Grams.Likely);
        return grams is >= 0.001 and <= 1e9 ? new EggScale(formula, size, part, grams)
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(formula)} has {grams:R} g of {id}; from 0.001 to 1E+09 g are expected."), nameof(formula));
    }

    /// <summary>The eggs, such as <c>9.09 US large eggs</c>.</summary>
    public override string ToString() => Eggs.ToString();
}
