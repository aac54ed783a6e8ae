using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Textures;

/// <summary>What is stirred into an icing to change its consistency. Half first, then look: the bands are no measurement.</summary>
public sealed class ConsistencyStep
{
    private const double GramsOfAPound = 453.59237;

    internal ConsistencyStep(Ingredient stirredIn, bool thickens, Spread grams, double icingGrams)
    {
        StirredIn = stirredIn;
        Thickens = thickens;
        Grams = grams;
        IcingGrams = icingGrams;
    }

    /// <summary>What is stirred in.</summary>
    public Ingredient StirredIn { get; }

    /// <summary>Whether it thickens: then so much less of the liquid would have done, too.</summary>
    public bool Thickens { get; }

    /// <summary>How much, g: from the nearer end of the band to the farther.</summary>
    public Spread Grams { get; }

    /// <summary>The icing it goes into, g.</summary>
    public double IcingGrams { get; }

    /// <summary>Grams to a pound (454 g) of the icing.</summary>
    public double GramsPerPound => Grams.Likely * GramsOfAPound / IcingGrams;

    /// <summary>Teaspoons of a liquid like water to a pound of the icing.</summary>
    /// <param name="system">Whose teaspoons.</param>
    /// <returns>The teaspoons, 1 g of the liquid taken as 1 mL; of sugar it says nothing, for it is not weighed by the spoon so.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="system"/> is null.</exception>
    /// <exception cref="InvalidOperationException">What is stirred in is sugar.</exception>
    public double TeaspoonsPerPound(MeasuringSystem system) => Thickens
        ? throw new InvalidOperationException($"{StirredIn.Name} is not counted in spoons of water.")
        : GramsPerPound / Guard.NotNull(system).MillilitresPer(KitchenUnit.Teaspoon);

    /// <summary>A line of text.</summary>
    public override string ToString() => Grams.High == 0 ? "nothing: it is there already" : string.Create(CultureInfo.InvariantCulture,
        $"{Grams.Likely:0.#} g of {StirredIn.Name}{(Grams.High > Grams.Low ? $" ({Grams.Low:0.#} to {Grams.High:0.#})" : "")} to {IcingGrams:0.#} g");
}
