using System.Globalization;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Ingredients;

/// <summary>What a kitchen weighed itself: the same measure of a food, filled and weighed one or more times.</summary>
/// <remarks>
/// The mean has the standard uncertainty u of JCGM 100:2008 (GUM): u² = (½·t·s/√n)² + d²/12, with the standard deviation s of n weighings
/// (4.2.2, 4.2.3), Student's factor t for 95 % and n − 1 degrees of freedom (G.3, table G.2), so that 2u is the interval of 95 %, and the
/// resolution d of the scales (F.2.2.1), which all weighings share. Of one weighing s is not known. Worked number: 108, 112 and 109 g on
/// scales of 1 g: mean 109.67 g, s = 2.08 g, t = 4.30, u = 2.60 g.
/// </remarks>
public sealed class Weighings
{
    private readonly double[] _grams;

    private Weighings(Amount amount, MeasuringSystem? system, Packing packing, double[] grams, double resolution, bool assumed)
    {
        Amount = amount;
        MeasuringSystem = system;
        Packing = packing;
        _grams = grams;
        ResolutionGrams = resolution;
        ResolutionWasAssumed = assumed;
        double mean = grams.Sum() / grams.Length, squares = grams.Sum(one => (one - mean) * (one - mean)), u = resolution / Math.Sqrt(12);
        if (grams.Length > 1)
        {
            StandardDeviationGrams = Math.Sqrt(squares / (grams.Length - 1));
            u = double.Hypot(u, StandardDeviationGrams.Value / Math.Sqrt(grams.Length) * StudentFactor.Of95Percent(grams.Length - 1) / 2);
        }
        MeanGrams = new Spread(Math.Max(0, mean - 2 * u), mean, mean + 2 * u, u, SpreadBasis.Coverage);
    }

    /// <summary>The measure that was filled, such as <c>1 cup</c>.</summary>
    public Amount Amount { get; }

    /// <summary>Whose cup it is; <see langword="null"/> for millilitres.</summary>
    public MeasuringSystem? MeasuringSystem { get; }

    /// <summary>How it was filled.</summary>
    public Packing Packing { get; }

    /// <summary>The masses, g.</summary>
    public IReadOnlyList<double> Grams => _grams;

    /// <summary>The step of the scales, g.</summary>
    public double ResolutionGrams { get; }

    /// <summary>Whether nobody said the step of the scales, so that the last digit of the masses was taken for it.</summary>
    public bool ResolutionWasAssumed { get; }

    /// <summary>
    /// The standard deviation of one fill to the next, g; <see langword="null"/> of one weighing, which says nothing of it. 0 where all
    /// are equal: then no more is known than the scales show.
    /// </summary>
    public double? StandardDeviationGrams { get; }

    /// <summary>The mean, g, with the standard uncertainty of the mean; of one weighing only that of the scales.</summary>
    public Spread MeanGrams { get; }

    /// <summary>The volume of the measure, mL.</summary>
    internal double Millilitres => Amount.Millilitres(MeasuringSystem ?? MeasuringSystem.OfNobody);

    /// <summary>Weighings of one measure.</summary>
    /// <param name="amount">The measure, such as <c>1 cup</c>: one volume, no range.</param>
    /// <param name="system">Whose cups and spoons; <see langword="null"/> for millilitres and litres.</param>
    /// <param name="packing">How it was filled.</param>
    /// <param name="grams">What it held, one a fill, without the cup; from 1 to 1000 masses of 0.001 to 1 000 000 g.</param>
    /// <param name="resolutionGrams">
    /// The step of the scales, g, from 0.0001 to 1000; <see langword="null"/> for the last digit that the masses have, at most 1 g, which
    /// <see cref="ResolutionWasAssumed"/> says.
    /// </param>
    /// <returns>The weighings.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="grams"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range, or the packing is not a defined value.</exception>
    /// <exception cref="ArgumentException">
    /// The amount is no single volume, the system lacks its unit, or there is no mass or too many.
    /// </exception>
    public static Weighings Of(Amount amount, MeasuringSystem? system, Packing packing, IReadOnlyList<double> grams,
        double? resolutionGrams = null)
    {
        Guard.Defined(packing);
        int count = Guard.NotNull(grams).Count;
        if (!amount.IsVolume || amount.IsRange || amount.PartCount > 1 || !(amount.Part(0).Low.ToDouble() > 0))
            throw new ArgumentException($"{nameof(amount)} was {amount}; one volume above zero, such as 1 cup or 100 mL, was expected.", nameof(amount));
        if (amount.Part(0).Unit is not (KitchenUnit.Millilitre or KitchenUnit.Litre) && system?.Defines(amount.Part(0).Unit) != true)
            throw new ArgumentException($"{nameof(amount)} was {amount}; whose it is must be said, and {system?.Name ?? "nobody"} has no such unit.",
                nameof(amount));
        if (count is < 1 or > 1000)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(grams)} has {count} masses; from 1 to 1000 are expected."), nameof(grams));
        double[] masses = [.. grams.Select(mass => Guard.InRange(mass, 0.001, 1e6, nameof(grams)))];
        double resolution = resolutionGrams is double given ? Guard.InRange(given, 1e-4, 1000, nameof(resolutionGrams)) : LastDigit(masses);
        return new Weighings(amount, system, packing, masses, resolution, resolutionGrams is null);
    }

    /// <summary>The mean, how many and how they differ, such as <c>1 cup sifted: 109.7 g (104.5 to 114.9), 3 weighings</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Amount} {Packing.ToWord()}: {MeanGrams.ToString("0.#", " g")}, {_grams.Length} weighing{(_grams.Length == 1 ? "" : "s")}");

    /// <summary>The weighings as a figure among the published ones.</summary>
    internal WeightFact ToFact(string foodName) => new(Amount, MeasuringSystem, Packing, MeanGrams, ResolutionGrams / 2, _grams.Length,
        StandardDeviationGrams, votes: true, new Provenance(
            new Source("own-weighings", "own weighings", $"Weighings of {foodName} in the kitchen that uses them.", "", "the owner's own", ""),
            Evidence.Measured, "", ResolutionWasAssumed ? "The step of the scales was taken from the digits." : ""))
    {
        Weighings = this,
    };

    private static double LastDigit(double[] grams)
    {
        foreach (double step in (double[])[1, 0.1, 0.01])
        {
            if (Array.TrueForAll(grams, mass => Math.Abs(mass / step - Math.Round(mass / step)) < 1e-6))
                return step;
        }
        return 0.001;
    }
}
