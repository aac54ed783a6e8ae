using System.Globalization;
using Confectio.Sources;

namespace Confectio.Cooking;

/// <summary>A pot of syrup and what it comes to: how much water leaves or joins on the way.</summary>
public sealed class PotEnd
{
    internal PotEnd(SyrupPot start, SyrupPot pot, Spread solids)
    {
        Start = start;
        Pot = pot;
        Solids = solids;
        FinalGrams = new Spread(GramsAt(solids.High), pot.Grams, GramsAt(solids.Low), SpreadBasis.Models);
    }

    /// <summary>The pot as it was.</summary>
    public SyrupPot Start { get; }

    /// <summary>The pot as it comes to be; cook it on, or dilute it back.</summary>
    public SyrupPot Pot { get; }

    /// <summary>The water to boil off, g; below 0, the water to add because the pot is stronger already.</summary>
    public double WaterToBoilOffGrams => Start.WaterGrams - Pot.WaterGrams;

    /// <summary>The mass fraction of solids in the solution, over both models of the boiling point.</summary>
    public Spread Solids { get; }

    /// <summary>
    /// The mass in the pot, g, over the same models: cook to the likely one on the scales. Where it is wide, near the strongest syrups,
    /// the thermometer is the better guide than the scales.
    /// </summary>
    public Spread FinalGrams { get; }

    /// <summary>What of the mass put in is left, from 0 up. Worked number: 800 g that come to 693.5 g give 0.867.</summary>
    public double Yield => FinalGrams.Likely / Start.Grams;

    /// <summary>
    /// How far a pot on the way is, by its mass: the share of the water gone that has to go; below 0 before the start, above 1 beyond the
    /// end.
    /// </summary>
    /// <param name="gramsNow">The mass in the pot now, g, from 0 to 1e12.</param>
    /// <returns>The share. Worked number: 750 g on the way from 800 g to 693.5 g is 0.469.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gramsNow"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The start and the end are the same.</exception>
    public double Progress(double gramsNow)
    {
        Guard.InRange(gramsNow, 0, 1e12);
        return Math.Abs(WaterToBoilOffGrams) >= Guard.Trace ? (Start.Grams - gramsNow) / WaterToBoilOffGrams
            : throw new InvalidOperationException("The pot is at its end already: no water has to go.");
    }

    /// <summary>The volume of the solution, mL, what else is in the pot left out.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 100; 20 unless stated.</param>
    /// <returns>Millilitres. Worked number: 693.5 g of 86.5 % sucrose at 20 °C: 476.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double Millilitres(double celsius = 20) => Pot.SolutionGrams / Pot.Solution.GramsPerMillilitre(celsius);

    /// <summary>One line, such as <c>693.5 g, 106.5 g of water gone</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{FinalGrams.Likely:0.0} g, {Math.Abs(WaterToBoilOffGrams):0.0} g of water {(WaterToBoilOffGrams < 0 ? "added" : "gone")}");

    // Rounding must not carry an end past the middle.
    private double GramsAt(double solids) => solids == Solids.Likely ? Pot.Grams : Pot.OtherGrams + Pot.SolidsGrams / solids;
}
