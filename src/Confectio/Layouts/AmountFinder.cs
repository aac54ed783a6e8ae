using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Text;

namespace Confectio.Layouts;

/// <summary>The amounts of a cell or a line, as the scanner of phrases finds them, in the shape in which a table has them.</summary>
internal static class AmountFinder
{
    /// <summary>Finds them from left to right. Time grows with the length of the text.</summary>
    public static void Find(ReadOnlySpan<char> text, AmountReading reading, List<FoundAmount> found)
    {
        AmountScanner scanner = new(text, reading);
        while (scanner.TryNext(out WrittenAmount written))
        {
            if (written.Reason is not null)
                continue;
            int end = written.Start + written.Length;
            if (written.IsCount)
            {
                // "5 egg whites" counts by the name of the food, which is left to be read as its name; "= 200" is a weight without a unit.
                if (EggWords.At(text[end..], out _) is string piece && written.CountLow == written.CountHigh)
                    found.Add(new FoundAmount(written.Start, end, Amount.OfPieces(written.CountLow, piece), IsBare: false));
                else
                    found.Add(new FoundAmount(written.Start, end, default, IsBare: true));
                continue;
            }
            RoughMeasure? rough = written.Assumed is { Length: > 1 } word ? RoughMeasure.Find(word) : RoughMeasure.Of(written.Fill, written.Amount);
            found.Add(new FoundAmount(written.Start, end, In(written.Amount, written.MeasuringSystem), IsBare: false, rough));
        }
    }

    /// <summary>Why the first amount of a text is none, such as a drizzle; <see langword="null"/> where there is nothing like one.</summary>
    public static string? WhyNone(ReadOnlySpan<char> text, AmountReading reading)
    {
        AmountScanner scanner = new(text, reading);
        return scanner.TryNext(out WrittenAmount written) && written.IsVague
            ? $"{Excerpt.Of(text.Slice(written.Start, written.Length))} cannot be read as an amount: {written.Reason}" : null;
    }

    /// <summary>"1 metric cup" is 250 mL in a table of any system.</summary>
    private static Amount In(Amount amount, MeasuringSystem? system)
    {
        if (system is null || !amount.IsVolume || amount.PartCount > 1 || !system.Defines(amount.Part(0).Unit)
            || amount.Part(0).Unit.IsMetric())
            return amount;
        AmountPart part = amount.Part(0);
        Fraction each = system.ExactMillilitresPer(part.Unit);
        return Fraction.TryMultiply(part.Low, each, out Fraction low) && Fraction.TryMultiply(part.High, each, out Fraction high)
            ? Amount.Between(low, high, KitchenUnit.Millilitre) : amount;
    }
}
