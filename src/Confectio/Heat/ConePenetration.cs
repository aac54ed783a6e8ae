using System.Globalization;
using Confectio.Sources;

namespace Confectio.Heat;

/// <summary>How firm a fat or an icing is by a cone that sinks into it: the yield value after Haighton, C = K·W/p^1.6 with p in tenths of a millimetre.</summary>
/// <remarks>
/// The equation was found for cones of 15 to 90° and 45 to 8300 g/cm² on margarine, fat, shortening and butter (Haighton 1959). The constants of the two
/// usual cones and the words are FROM MEMORY; give the constant that came with your cone where you have it. It is a measurement of your own at the
/// temperature at which you took it: kneaded fat is softer, for most of the hardness of margarine and butter is a network that kneading breaks (Haighton
/// 1965). Worked number: a cone of 40° and 79.03 g that sinks 10 mm (p = 100) gives 291.2 g/cm²: plastic and spreadable.
/// </remarks>
public sealed class ConePenetration
{
    /// <summary>The constant of a cone of 40°, from memory.</summary>
    public const double ConstantOf40Degrees = 5840;

    /// <summary>The constant of a cone of 60°, from memory and less sure.</summary>
    public const double ConstantOf60Degrees = 2815;

    private static readonly (double Below, string Words)[] s_words =
    [
        (50, "very soft, just pourable"), (100, "very soft, not spreadable"), (200, "soft, spreadable"), (800, "plastic and spreadable"),
        (1000, "hard, still spreadable"), (1500, "too hard, at the limit of spreading"), (double.PositiveInfinity, "too hard"),
    ];

    private ConePenetration(double yieldValue, Evidence evidence)
    {
        YieldValue = yieldValue;
        Evidence = evidence;
    }

    /// <summary>The yield value, g/cm².</summary>
    public double YieldValue { get; }

    /// <summary>The least sure of what it stands on: from memory where the constant is, else measured.</summary>
    public Evidence Evidence { get; }

    /// <summary>Whether it is within the 45 to 8300 g/cm² over which the equation was found to hold.</summary>
    public bool IsWithinTheTrials => YieldValue is >= 45 and <= 8300;

    /// <summary>The usual word for such a yield value, from memory: up to 50 g/cm² it just pours, from 200 to 800 it is plastic, above 1500 too hard.</summary>
    public string Words => s_words.First(word => YieldValue < word.Below).Words;

    /// <summary>Where the equation comes from.</summary>
    public static Source Source { get; } = Bibliography.Get("haighton-1959");

    /// <summary>The yield value of a penetration.</summary>
    /// <param name="coneGrams">The mass of the cone with its stem, g, from 30 to 2000.</param>
    /// <param name="millimetres">How deep it has sunk after 5 s, mm, from 0.1 to 29.9.</param>
    /// <param name="constant">
    /// The constant K that came with your own cone, from 100 to 100 000; that of a cone of 40°, the usual one for spreads, from memory where nothing is said.
    /// <see cref="ConstantOf40Degrees"/> and <see cref="ConstantOf60Degrees"/> are from memory when you give them too.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static ConePenetration Of(double coneGrams, double millimetres, double? constant = null) =>
        new(Guard.InRange(constant ?? ConstantOf40Degrees, 100, 1e5, nameof(constant)) * Guard.InRange(coneGrams, 30, 2000)
            / Math.Pow(10 * Guard.InRange(millimetres, 0.1, 29.9), 1.6), constant is null or ConstantOf40Degrees or ConstantOf60Degrees ? Evidence.FromMemory : Evidence.Measured);

    /// <summary>The yield value and its word, such as <c>291 g/cm²: plastic and spreadable (from-memory)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{YieldValue:0.#} g/cm²: {Words}, the words from memory")
        + (Evidence == Evidence.FromMemory ? " and the constant of the cone too" : "")
        + (IsWithinTheTrials ? "" : "; outside the 45 to 8300 g/cm² over which the equation was tried");
}
