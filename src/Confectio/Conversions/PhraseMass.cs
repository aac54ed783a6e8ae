using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;

namespace Confectio.Conversions;

/// <summary>What a phrase weighs.</summary>
public static class PhraseMass
{
    /// <summary>How far "about" reaches, as a fraction to either side: a judgement.</summary>
    private const double About = 0.1;

    /// <summary>The mass of what a phrase names.</summary>
    /// <remarks>
    /// Of several figures that say the same, a mass is taken before a count of pieces, and that before a volume; the figure that is most
    /// likely wrong is not taken. A heaped or scant measure, and one that is only about so much, widen the spread.
    /// Worked number: <c>1 cup (7 oz, 340 g) honey</c> is 340 g, for 7 oz agrees with neither of the others.
    /// </remarks>
    /// <param name="phrase">The phrase.</param>
    /// <param name="system">Whose cups and spoons, where the phrase does not say.</param>
    /// <param name="mass">The mass; 0 g where there is none.</param>
    /// <param name="reason">Why there is none, in words; <see langword="null"/> where there is one.</param>
    /// <param name="options">What the spread takes in; <see langword="null"/> for the density alone.</param>
    /// <returns>Whether there is a mass.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="phrase"/> or <paramref name="system"/> is null.</exception>
    public static bool TryToMass(this Phrase phrase, MeasuringSystem system, out ConvertedMass mass, out string? reason,
        ConversionOptions? options = null)
    {
        Guard.NotNull(phrase);
        Guard.NotNull(system);
        mass = default;
        if (phrase.Ingredient is not Ingredient ingredient)
        {
            reason = phrase.Kind == PhraseKind.Ingredient ? "the ingredient is not known" : "it is no ingredient";
            return false;
        }
        if (phrase.Amount is not WrittenAmount first)
        {
            reason = "there is no amount";
            return false;
        }
        WrittenAmount taken = Taken(phrase, first);
        try
        {
            mass = ToMass(ingredient, phrase.Packing, taken, taken.MeasuringSystem ?? system, options);
            IReadOnlyList<string> assumed = mass is { ThroughDensity: true, By: Conversion by }
                && Conversion.TakenSentence(ingredient, by.Density) is string other ? [.. phrase.Assumed, other] : phrase.Assumed;
            mass = mass with { Sentences = assumed.Count == 0 ? null : assumed };
            reason = null;
            return true;
        }
        catch (ArgumentException e)
        {
            reason = Guard.ReasonOf(e).TrimEnd('.');
            return false;
        }
    }

    private static WrittenAmount Taken(Phrase phrase, WrittenAmount first)
    {
        WrittenAmount best = first;
        int rank = phrase.Suspect == first.Start ? 9 : Rank(first);
        foreach (WrittenAmount second in phrase.SecondAmounts)
        {
            if (second.Start != phrase.Suspect && Rank(second) < rank)
                (best, rank) = (second, Rank(second));
        }
        return best;
    }

    // A stick is as good as a mass; a large egg is not.
    private static int Rank(WrittenAmount amount) => amount.Amount.IsMass ? 0
        : amount.Amount.IsVolume ? 2 : amount.Amount.Part(0).Piece is "large" or "medium" or "small" or "extra large" or "jumbo" ? 3 : 1;

    private static ConvertedMass ToMass(Ingredient ingredient, Packing? packing, WrittenAmount written, MeasuringSystem system,
        ConversionOptions? options)
    {
        Amount amount = written.Amount;
        ConvertedMass mass;
        if (amount.IsMass)
        {
            double low = amount.LowGrams(system), high = amount.HighGrams(system);
            mass = new ConvertedMass(low, low / 2 + high / 2, high, (high - low) / Math.Sqrt(12), SpreadBasis.Sources, null,
                throughDensity: false);
        }
        else if (amount.IsPiece)
        {
            mass = Conversion.MassOfPieces(ingredient, amount, null);
        }
        else
        {
            mass = (packing is Packing stated ? Conversion.Of(ingredient, stated, system, options)
                : Conversion.Of(ingredient, system, options)).ToMass(amount);
        }
        if (RoughMeasure.Of(written.Fill, written.Amount) is RoughMeasure fill)
            return Widened(mass, fill.Low, fill.Likely, fill.High);
        return written.IsApproximate && !amount.IsRange ? Widened(mass, 1 - About, 1, 1 + About) : mass;
    }

    private static ConvertedMass Widened(ConvertedMass mass, double low, double likely, double high)
    {
        // The factor is independent of the mass: the squares of the relative uncertainties add up.
        Spread was = mass.Grams;
        double factor = (high - low) / likely / Math.Sqrt(12), own = was.Likely == 0 ? 0 : was.StandardUncertainty / was.Likely;
        double grams = was.Likely * likely;
        return new ConvertedMass(was.Low * low, grams, was.High * high, grams * Math.Sqrt(own * own + factor * factor), SpreadBasis.Judged,
            mass.By, mass.ThroughDensity);
    }
}
