using System.Globalization;

namespace Confectio.Publishing;

/// <summary>What rounding the weights of a card does to their sum.</summary>
public sealed class CardRounding
{
    internal CardRounding(double worst, double actual)
    {
        WorstGrams = worst;
        ActualGrams = actual;
    }

    /// <summary>How far the printed weights together may be off at worst, g: half a unit of the last digit of each line that was rounded.</summary>
    public double WorstGrams { get; }

    /// <summary>How much more the printed weights add up to than the exact ones, g; below 0 where it is less.</summary>
    public double ActualGrams { get; }

    /// <summary>Both, such as <c>the printed weights add up to 0.2 g less than the exact ones; at worst it could be 1.5 g</c>.</summary>
    public override string ToString() => Told(SheetNumbers.Invariant);

    internal string Told(SheetNumbers numbers) => WorstGrams == 0 ? "no weight was rounded"
        : $"the printed weights add up to {(Math.Abs(ActualGrams) < 5e-4 ? "the exact sum" : $"{numbers.Short(Math.Abs(ActualGrams), 3)} g {(ActualGrams < 0 ? "less" : "more")} than the exact ones")}; "
            + $"at worst they could be {numbers.Short(WorstGrams, 3)} g off";
}
