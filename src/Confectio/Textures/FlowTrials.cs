using System.Globalization;

namespace Confectio.Textures;

/// <summary>
/// A kitchen's own calibration of an icing that flows: seconds until a cut through it has closed, at several amounts of water. The logarithm of
/// the seconds is taken as a straight line in the water, fitted by least squares; nothing is told outside of the water that was tried.
/// </summary>
public sealed class FlowTrials
{
    private readonly double _slope, _middle, _level, _spread, _sum;
    private readonly int _count;

    private FlowTrials((double Water, double Seconds)[] trials)
    {
        _count = trials.Length;
        LowWater = trials.Min(trial => trial.Water);
        HighWater = trials.Max(trial => trial.Water);
        _middle = trials.Average(trial => trial.Water);
        _level = trials.Average(trial => Math.Log(trial.Seconds));
        _sum = trials.Sum(trial => (trial.Water - _middle) * (trial.Water - _middle));
        _slope = trials.Sum(trial => (trial.Water - _middle) * (Math.Log(trial.Seconds) - _level)) / _sum;
        double rest = trials.Sum(trial => Math.Pow(Math.Log(trial.Seconds) - _level - _slope * (trial.Water - _middle), 2));
        _spread = Math.Sqrt(rest / (_count - 2));
    }

    /// <summary>The least water that was tried, g to 100 g of sugars.</summary>
    public double LowWater { get; }

    /// <summary>The most water that was tried.</summary>
    public double HighWater { get; }

    /// <summary>Fits the trials.</summary>
    /// <param name="trials">Water, g to 100 g of sugars from 1 to 100, and seconds from 0.5 to 3600: from 3 to 100 trials of at least two amounts of water.</param>
    /// <returns>The calibration.</returns>
    /// <exception cref="ArgumentException">There are too few trials or too many, all have the same water, or more water does not flow faster.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its range.</exception>
    public static FlowTrials Of(params ReadOnlySpan<(double WaterPer100Sugars, double Seconds)> trials)
    {
        if (trials.Length is < 3 or > 100)
            throw new ArgumentException($"{nameof(trials)} has {trials.Length} trials; from 3 to 100 are expected.", nameof(trials));
        foreach ((double water, double seconds) in trials)
        {
            Guard.InRange(water, 1, 100, nameof(trials));
            Guard.InRange(seconds, 0.5, 3600, nameof(trials));
        }
        FlowTrials fitted = new(trials.ToArray());
        if (!(fitted._sum > 1e-6))
            throw new ArgumentException($"{nameof(trials)} all have the same water; at least two amounts of it are needed.", nameof(trials));
        return fitted._slope < 0 ? fitted
            : throw new ArgumentException($"{nameof(trials)}: with more water it flows no faster; something else changed between them.", nameof(trials));
    }

    /// <summary>The seconds at an amount of water.</summary>
    /// <param name="waterPer100Sugars">Grams of water to 100 g of sugars, within what was tried.</param>
    /// <returns>The seconds, with the range in which 95 of 100 further trials would lie (Student's factor for so few).</returns>
    /// <exception cref="ArgumentOutOfRangeException">It is outside what was tried.</exception>
    public Spread SecondsAt(double waterPer100Sugars)
    {
        double from = Guard.InRange(waterPer100Sugars, LowWater, HighWater) - _middle;
        double likely = _level + _slope * from, half = StudentFactor.Of95Percent(_count - 2) * _spread * Math.Sqrt(1 + 1.0 / _count + from * from / _sum);
        // Trials that lie on a line by chance are read to a tenth of a second at best.
        half = Math.Max(half, 0.05 / Math.Exp(likely));
        return new Spread(Math.Exp(likely - half), Math.Exp(likely), Math.Exp(likely + half), SpreadBasis.Coverage);
    }

    /// <summary>The water that gives so many seconds.</summary>
    /// <param name="seconds">The seconds wanted.</param>
    /// <returns>Grams of water to 100 g of sugars; worked number: trials of 20, 23 and 26 g with 40, 20 and 10 s give 23 g for 20 s.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The trials do not reach so far.</exception>
    public double WaterFor(double seconds)
    {
        double slowest = Math.Exp(_level + _slope * (LowWater - _middle)), fastest = Math.Exp(_level + _slope * (HighWater - _middle));
        return _middle + (Math.Log(Guard.InRange(seconds, fastest, slowest)) - _level) / _slope;
    }

    /// <summary>How many trials, and over what water.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{_count} trials from {LowWater:0.#} to {HighWater:0.#} g of water to 100 g of sugars");
}
