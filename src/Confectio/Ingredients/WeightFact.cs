using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Ingredients;

/// <summary>One published, remembered or estimated figure: so many grams in such a measure.</summary>
public sealed class WeightFact
{
    internal WeightFact(Amount amount, MeasuringSystem? system, Packing? packing, Spread grams, double roundingHalfUnit,
        int? samples, double? standardDeviationGrams, bool votes, Provenance provenance)
    {
        Amount = amount;
        MeasuringSystem = system;
        Packing = packing;
        Grams = grams;
        RoundingHalfUnit = roundingHalfUnit;
        Samples = samples;
        StandardDeviationGrams = standardDeviationGrams;
        Votes = votes;
        Provenance = provenance;
    }

    /// <summary>The measure, such as <c>1 cup</c> or <c>1 stick</c>.</summary>
    public Amount Amount { get; }

    /// <summary>Whose cup it is; <see langword="null"/> for millilitres and pieces.</summary>
    public MeasuringSystem? MeasuringSystem { get; }

    /// <summary>How the measure was filled; <see langword="null"/> for pieces.</summary>
    public Packing? Packing { get; }

    /// <summary>The mass in grams, with the range where the source gives one.</summary>
    public Spread Grams { get; }

    /// <summary>Half a unit of the last printed digit, in grams.</summary>
    public double RoundingHalfUnit { get; }

    /// <summary>How many samples were weighed, where the source says.</summary>
    public int? Samples { get; }

    /// <summary>The standard deviation between samples in grams, where the source says.</summary>
    public double? StandardDeviationGrams { get; }

    /// <summary>
    /// Whether it takes part in the density. A figure that cannot be true, such as 0.93 g/mL of a heavy syrup, is kept as evidence of
    /// itself and does not vote; its note says why.
    /// </summary>
    public bool Votes { get; }

    /// <summary>The kitchen's own weighings, where it is the mean of them; else <see langword="null"/>.</summary>
    public Weighings? Weighings { get; internal init; }

    /// <summary>Where the figure comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The volume of the measure in millilitres; 0 for pieces.</summary>
    internal double Millilitres => Amount.IsVolume ? Amount.Millilitres(MeasuringSystem ?? MeasuringSystem.OfNobody) : 0;

    /// <summary>The figure and its source, such as <c>1 cup sifted = 100 g, USDA SR, NDB 19336 (compiled)</c>.</summary>
    public override string ToString() => string.Create(global::System.Globalization.CultureInfo.InvariantCulture,
        $"{Amount}{(Packing is Packing packing ? " " + packing.ToWord() : "")} = {Grams.Likely:0.###} g, {Provenance}");
}
