using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>One thing that is asked of a formula: a share, the mass of an ingredient, a ratio, a total, what boils off.</summary>
/// <remarks>
/// The family is closed: each of its members is a class inside this one, has its ends in its own unit and is made by a method of
/// <see cref="FormulaProblem"/>. Worked example: <c>problem.Demands.OfType&lt;Demand.Share&gt;()</c> are the shares, and
/// <see cref="Share.LowFraction"/> of <c>fat at least 40 %</c> is 0.4.
/// </remarks>
public abstract partial class Demand
{
    // A demand has room where the answer is farther from its end than this, relative to it, g or fractions.
    private const double Room = 1e-8;

    private Demand(double low, double high)
    {
        LowEnd = low;
        HighEnd = high;
    }

    /// <summary>The demand in words: <c>fat at least 40 %</c>, <c>chocolate from 300 to 600 g</c>.</summary>
    public string Sentence => Say(Ends(LowEnd, HighEnd));

    /// <summary>The low end in the demand's own unit, for what is the same with all of them; minus infinity where there is none.</summary>
    internal double LowEnd { get; }

    /// <summary>The high end in the demand's own unit; infinity where there is none.</summary>
    internal double HighEnd { get; }

    /// <summary>Whether both ends are one value.</summary>
    internal bool IsOneValue => LowEnd == HighEnd;

    /// <summary>Whether it is no demand on the masses but the choice to leave an ingredient out.</summary>
    internal virtual bool IsChoice => false;

    /// <summary>Whether it gives a mass, so that it binds by its nature: to say so would hide the limits that tell something.</summary>
    internal virtual bool IsGiven => false;

    /// <summary>Of a target the miss that counts as one, in the demand's own unit, and its priority; null of what must be kept.</summary>
    internal virtual (double Tolerance, int Priority)? Aim => null;

    /// <summary>Whether it gives way before the masses of ingredients do where not all can be kept.</summary>
    internal virtual bool GivesWayFirst => false;

    /// <summary>Whether it is kept even in the formula that comes nearest to what cannot be kept.</summary>
    internal virtual bool NeverGivesWay => IsChoice;

    /// <summary>Whether its ends are numbers that can be moved to see what the answer does.</summary>
    internal virtual bool HasMovableEnds => true;

    /// <summary>Of a choice: how many there are; 1 of what is none.</summary>
    internal virtual int Alternatives => IsChoice ? 2 : 1;

    /// <summary>How many of the units that people read one unit of the ends is: 100 % for a share.</summary>
    internal virtual double Factor => 1;

    /// <summary>The unit that people read, with the space before it.</summary>
    internal virtual string UnitText => " g";

    /// <summary>The same as <see cref="Sentence"/>.</summary>
    public sealed override string ToString() => Sentence;

    /// <summary>The sentence with one end only: a limit has two, and often only one of them is to blame.</summary>
    internal string SayEnd(int side)
    {
        // One value is one value, whichever of its ends is to blame.
        if (IsOneValue)
            return Sentence;
        return Say(side > 0 ? Ends(LowEnd, double.PositiveInfinity) : Ends(double.NegativeInfinity, HighEnd));
    }

    /// <summary>What the formula has of it, in words.</summary>
    internal virtual string SayMeasure(double? achieved) => $"{Figure((achieved ?? double.NaN) * Factor, 3)}{UnitText}";

    /// <summary>A number to two decimals, of a small one to so many digits: what is weighed or read has no more.</summary>
    internal static string Figure(double value, int digits) => double.IsFinite(value) && value != 0
        ? Math.Round(value, Math.Clamp(digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 2, 12))
            .ToString("0.############", CultureInfo.InvariantCulture)
        : value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>The same demand with other ends, in its own unit.</summary>
    internal abstract Demand Between(double low, double high);

    /// <summary>What a formula has of what is asked, in the demand's own unit; worked out from the masses and nothing else.</summary>
    internal abstract double Measure(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams);

    /// <summary>Whether a miss is none: what must be kept allows for rounding only.</summary>
    internal virtual bool Allows(double missedBy, double slack) => Math.Abs(missedBy) <= slack;

    /// <summary>How far an end that stands somewhere may be moved to see what the answer does.</summary>
    internal virtual double MaximumEnd(double at) => 2 * at + 1;

    /// <summary>Between what an end may be asked for at all.</summary>
    internal virtual (double Least, double Most) EndRange => (0, FormulaProblem.MaximumGrams);

    /// <summary>Puts it into numbers.</summary>
    /// <param name="assembly">Where it goes.</param>
    /// <param name="used">Of a choice: whether the ingredient is used.</param>
    internal abstract void AddTo(Assembly assembly, bool used);

    /// <summary>Puts one choice into numbers; of what is none, the demand.</summary>
    /// <param name="assembly">Where it goes.</param>
    /// <param name="alternative">Which of <see cref="Alternatives"/>, from 0.</param>
    internal virtual void AddChoice(Assembly assembly, int alternative) => AddTo(assembly, alternative == 0);

    /// <summary>Whether the masses could move on before they meet an end, so that it does not bind.</summary>
    internal virtual bool HasRoom(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams, int side)
    {
        double end = side > 0 ? LowEnd : HighEnd;
        return !(Math.Abs(Measure(problem, grams, boiledOffGrams) - end) <= Room * Math.Max(1, Math.Abs(end)));
    }

    private protected abstract string Say(string ends);

    private string Ends(double low, double high)
    {
        if (low == high)
            return Number(low) + UnitText;
        if (double.IsNegativeInfinity(low) && double.IsPositiveInfinity(high))
            return "without a limit";
        if (double.IsNegativeInfinity(low))
            return "at most " + Number(high) + UnitText;
        if (double.IsPositiveInfinity(high))
            return "at least " + Number(low) + UnitText;
        return $"from {Number(low)} to {Number(high)}{UnitText}";
    }

    private string Number(double value) => Math.Round(value * Factor, 4).ToString("0.####", CultureInfo.InvariantCulture);
}
