namespace Confectio.Ingredients;

/// <summary>
/// What an ingredient is made of: mass fractions that add up to one, within the rounding of their source.
/// </summary>
public sealed class Composition
{
    /// <summary>How many constituents there are.</summary>
    internal const int Count = (int)Constituent.Other + 1;

    // Component densities at 20 C, kg/m3: water, fat, protein, carbohydrate, fibre and ash by Choi & Okos (1986) as in
    // ASHRAE Refrigeration 2006 ch. 9; glycerol and ethanol are handbook values (CRC; ethanol from memory).
    private static readonly double[] s_densities =
    [
        995.740, 917.239, 1319.532, 1592.891, 1592.891, 1592.891, 1592.891, 1592.891, 1592.891, 1592.891,
        1592.891, 1304.182, 1592.891, 1261.1, 789.3, 1592.891, 2418.187, 2418.187, 1592.891,
    ];

    private readonly double[] _fractions;

    internal Composition(double[] fractions) => _fractions = fractions;

    /// <summary>The mass fraction of a constituent: grams in a gram, from 0 to 1.</summary>
    /// <param name="constituent">The constituent.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="constituent"/> is not a defined value.</exception>
    public double this[Constituent constituent] => _fractions[(int)Guard.Defined(constituent)];

    /// <summary>All sugars (mono- and disaccharides), as a mass fraction.</summary>
    public double Sugars => this[Constituent.Sucrose] + this[Constituent.Glucose] + this[Constituent.Fructose]
        + this[Constituent.Lactose] + this[Constituent.Maltose] + this[Constituent.OtherSugars];

    /// <summary>What the constituents add up to; 1 where the source closes exactly.</summary>
    public double Sum
    {
        get
        {
            double sum = 0;
            foreach (double fraction in _fractions)
                sum += fraction;
            return sum;
        }
    }

    /// <summary>
    /// The density at 20 °C that the ingredient would have without any air, in g/mL: no packing can be heavier.
    /// ρ = Σx / Σ(x/ρᵢ) with the component densities of Choi &amp; Okos (1986).
    /// </summary>
    /// <remarks>Worked number: unsalted butter (water 17.94, fat 81.11, protein 0.85, the rest 0.10 %) gives 0.933 g/mL.</remarks>
    public double AirFreeGramsPerMillilitre
    {
        get
        {
            double mass = 0, volume = 0;
            for (int i = 0; i < Count; i++)
            {
                mass += _fractions[i];
                volume += _fractions[i] / s_densities[i];
            }
            return mass / volume / 1000;
        }
    }
}
