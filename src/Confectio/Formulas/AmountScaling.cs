using Confectio.Measures;

namespace Confectio.Formulas;

/// <summary>Written amounts times a factor: 2 Tbsp + 1 tsp doubled is 4 Tbsp + 2 tsp, exactly.</summary>
internal static class AmountScaling
{
    /// <summary>A cook halves, thirds and doubles; 5/17 of a cup is no measure.</summary>
    private const int LargestDenominator = 16;

    /// <summary>
    /// The factor as a fraction with a denominator up to 16, where it is one to 1e-12 of itself: a quotient of sums is off by as much.
    /// </summary>
    public static Fraction? FractionOf(double factor)
    {
        if (factor > 1e9)
            return null;
        for (int denominator = 1; denominator <= LargestDenominator; denominator++)
        {
            double numerator = Math.Round(factor * denominator);
            if (numerator >= 1 && Math.Abs(numerator / denominator - factor) <= 1e-12 * factor)
                return new Fraction((long)numerator, denominator);
        }
        return null;
    }

    /// <summary>The product, where it fits in exact fractions.</summary>
    public static bool TryScale(Amount amount, Fraction factor, out Amount scaled)
    {
        scaled = default;
        AmountPart[] parts = new AmountPart[amount.PartCount];
        for (int i = 0; i < parts.Length; i++)
        {
            AmountPart part = amount.Part(i);
            if (!Fraction.TryMultiply(part.Low, factor, out Fraction low) || !Fraction.TryMultiply(part.High, factor, out Fraction high))
                return false;
            parts[i] = new AmountPart(low, high, part.Unit, part.Piece);
        }
        scaled = new Amount(parts[0], parts.Length > 1 ? parts[1..] : null);
        return true;
    }
}
