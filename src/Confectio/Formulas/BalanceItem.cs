using System.Globalization;
using Confectio.Sources;

namespace Confectio.Formulas;

/// <summary>How much of one part a formula has when it is done.</summary>
public sealed class BalanceItem
{
    internal BalanceItem(FormulaPart part, Spread grams, Spread fraction)
    {
        Part = part;
        Grams = grams;
        Fraction = fraction;
    }

    /// <summary>The part.</summary>
    public FormulaPart Part { get; }

    /// <summary>Its mass in grams.</summary>
    public Spread Grams { get; }

    /// <summary>Its share of the total, as a mass fraction from 0 to 1; of a sweetness it may be more.</summary>
    public Spread Fraction { get; }

    /// <summary>The part in one line, such as <c>fat: 405.6 g, 40.6 % (39.6 to 41.5)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Part}: {Grams.Likely:0.#} g, {100 * Fraction.Likely:0.0} % ({100 * Fraction.Low:0.0} to {100 * Fraction.High:0.0})");
}
