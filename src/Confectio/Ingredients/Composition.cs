using System.Globalization;
using System.Numerics;
using Confectio.Sources;

namespace Confectio.Ingredients;

/// <summary>
/// What an ingredient is made of: mass fractions that add up to one, within the rounding of their source.
/// </summary>
public sealed class Composition
{
    // Component densities at 20 °C, kg/m³: those of the thermal properties, so that a food has one density whoever is asked.
    private static readonly double[] s_densities = Constituents.ByPlace(DensityAtTwenty);

    // Conversion factors of Regulation (EU) No 1169/2011, Annex XIV, kJ/g and kcal/g. Glycerol has three hydroxyl groups, and Annex I calls
    // an alcohol with more than two a polyol.
    private static readonly double[] s_kilojoules = Factors("energy-kilojoules"), s_kilocalories = Factors("energy-kilocalories");

    private readonly double[] _fractions;

    internal Composition(double[] fractions, double milkFat)
    {
        _fractions = fractions;
        MilkFat = milkFat;
    }

    /// <summary>Where the conversion factors of the energy come from.</summary>
    public static Source EnergySource { get; } = Bibliography.Get("eu-1169-2011");

    /// <summary>The mass fraction of a constituent: grams in a gram, from 0 to 1.</summary>
    /// <param name="constituent">The constituent.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="constituent"/> is not a defined value.</exception>
    public double this[Constituent constituent] => _fractions[Constituents.PlaceOf(Guard.Defined(constituent))];

    /// <summary>
    /// The part of the fat that is milk fat, as a mass fraction of the whole: from 0 to the fraction of <see cref="Constituent.Fat"/>,
    /// which counts it already. Where the source does not tell it from other fat it is estimated, and the note of the ingredient says so.
    /// </summary>
    public double MilkFat { get; }

    /// <summary>Whether every fraction is the same in another.</summary>
    internal bool HasFractionsOf(Composition other) => MilkFat.Equals(other.MilkFat) && _fractions.AsSpan().SequenceEqual(other._fractions);

    /// <summary>Some constituents together, as a mass fraction; a bit for each place (<see cref="Constituents"/>).</summary>
    internal double Together(uint constituents)
    {
        double sum = 0;
        for (uint left = constituents; left != 0; left &= left - 1)
            sum += _fractions[BitOperations.TrailingZeroCount(left)];
        return sum;
    }

    /// <summary>All sugars (mono- and disaccharides), as a mass fraction.</summary>
    public double Sugars => this[Constituent.Sucrose] + this[Constituent.Glucose] + this[Constituent.Fructose]
        + this[Constituent.Lactose] + this[Constituent.Maltose] + this[Constituent.OtherSugars];

    /// <summary>
    /// The energy in kJ/g for the label, Σ(x·k) with the factors k of Regulation (EU) No 1169/2011, Annex XIV: fat 37, alcohol 29,
    /// protein and carbohydrate 17, organic acids 13, polyols and glycerol 10, fibre 8. Water, salt, ash and
    /// <see cref="Constituent.Other"/> have none.
    /// </summary>
    /// <remarks>
    /// What a source leaves over has no factor, so a food with much of it reads low. Erythritol is no constituent of its own: it counts
    /// as the polyol it is, 10 kJ/g, where the regulation counts 0.
    /// Worked number: unsalted butter (fat 81.11, protein 0.85, lactose 0.06 %) gives 30.165 kJ/g.
    /// </remarks>
    public double KilojoulesPerGram => Weighted(s_kilojoules);

    /// <summary>
    /// The energy in kcal/g for the label, Σ(x·k) with the factors k of Regulation (EU) No 1169/2011, Annex XIV: fat 9, alcohol 7,
    /// protein and carbohydrate 4, organic acids 3, polyols and glycerol 2.4, fibre 2. It is summed with its own factors, as the
    /// regulation has it, and not converted from <see cref="KilojoulesPerGram"/>, whose remarks hold here too.
    /// </summary>
    /// <remarks>Worked number: unsalted butter (fat 81.11, protein 0.85, lactose 0.06 %) gives 7.336 kcal/g.</remarks>
    public double KilocaloriesPerGram => Weighted(s_kilocalories);

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
            for (int i = 0; i < _fractions.Length; i++)
            {
                mass += _fractions[i];
                volume += _fractions[i] / s_densities[i];
            }
            return mass / volume / 1000;
        }
    }

    /// <summary>The factors of the label, a number for each constituent, kJ/g or kcal/g.</summary>
    internal static double[] EnergyFactors(bool isKilojoules) => isKilojoules ? s_kilojoules : s_kilocalories;

    private double Weighted(double[] factors)
    {
        double sum = 0;
        double[] fractions = _fractions;
        for (int i = 0; i < fractions.Length; i++)
            sum += fractions[i] * factors[i];
        return sum;
    }

    private static double[] Factors(string equation) => Constituents.ByPlace(constituent =>
        Substance.Of(constituent).EnergyClass is { Length: > 0 } known
        ? CoefficientTable.BuiltIn.Get(equation, known)["factor"] : 0);

    private static double DensityAtTwenty(Constituent constituent)
    {
        double[] abc = CoefficientTable.BuiltIn.Get("thermal-density", Substance.Of(constituent).ThermalComponent).Terms("a", "b", "c");
        return abc[0] + 20 * (abc[1] + 20 * abc[2]);
    }

    /// <summary>Water, fat and sugars, such as <c>water 17.9 %, fat 81.1 %, sugars 0.1 %</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"water {100 * this[Constituent.Water]:0.0} %, fat {100 * this[Constituent.Fat]:0.0} %, sugars {100 * Sugars:0.0} %");
}
