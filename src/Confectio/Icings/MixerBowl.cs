using System.Globalization;
using Confectio.Measures;

namespace Confectio.Icings;

/// <summary>The bowl of a mixer, and how full it may get.</summary>
public sealed class MixerBowl
{
    private MixerBowl(string name, double millilitres, double usable)
    {
        Name = name;
        Millilitres = millilitres;
        UsableFraction = usable;
    }

    /// <summary>What to call it, such as <c>5-quart bowl</c>.</summary>
    public string Name { get; }

    /// <summary>What it holds to the brim, mL.</summary>
    public double Millilitres { get; }

    /// <summary>The share of it that may be full while the whisk runs.</summary>
    public double UsableFraction { get; }

    /// <summary>What may be in it, mL.</summary>
    public double UsableMillilitres => UsableFraction * Millilitres;

    /// <summary>A bowl.</summary>
    /// <param name="millilitres">What it holds to the brim, mL, from 100 to 1e6.</param>
    /// <param name="usableFraction">
    /// The share that may be full while the whisk runs, from 0.05 to 1. It is yours to know: two thirds to three quarters is an estimate of
    /// ours, and makers state it of their bowls.
    /// </param>
    /// <param name="name">What to call it.</param>
    /// <returns>The bowl.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static MixerBowl Of(double millilitres, double usableFraction, string? name = null)
    {
        Guard.InRange(millilitres, 100, 1e6);
        return new MixerBowl(name ?? string.Create(CultureInfo.InvariantCulture, $"{millilitres / 1000:0.##}-litre bowl"), millilitres,
            Guard.InRange(usableFraction, 0.05, 1));
    }

    /// <summary>A bowl by US liquid quarts, as mixers are sold.</summary>
    /// <param name="quarts">What it holds to the brim, US quarts of 946.353 mL, from 1 to 1000.</param>
    /// <param name="usableFraction">The share that may be full while the whisk runs, from 0.05 to 1.</param>
    /// <returns>The bowl. Worked number: 5 quarts hold 4731.8 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static MixerBowl OfQuarts(double quarts, double usableFraction)
    {
        Guard.InRange(quarts, 1, 1000);
        return Of(quarts * MeasuringSystem.UsCustomary.MillilitresPer(KitchenUnit.Quart), usableFraction,
            string.Create(CultureInfo.InvariantCulture, $"{quarts:0.##}-quart bowl"));
    }

    /// <summary>The name and how full it may get, such as <c>5-quart bowl, 3312 of 4732 mL</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Name}, {UsableMillilitres:0} of {Millilitres:0} mL");
}
