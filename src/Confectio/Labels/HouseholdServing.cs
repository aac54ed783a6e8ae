using System.Globalization;
using Confectio.Measures;

namespace Confectio.Labels;

/// <summary>A serving in the household measures of an American label: cups of 240 mL, tablespoons of 15 and teaspoons of 5, in the steps that the law allows.</summary>
/// <remarks>
/// 21 CFR 101.9(b)(5) and (b)(7), read in an inspection guide up to a quarter of a cup and recalled above: under a teaspoon by quarters of one; from one teaspoon by whole ones to
/// under a tablespoon; from one tablespoon to two 1, 1 1/3, 1 1/2, 1 2/3 and 2; above two by whole ones to under a quarter of a cup; from there by quarters or thirds of a cup. The
/// measure of the class in which the volume falls is taken, and of two that are as near the larger. Worked numbers: 33 mL are 2 tablespoons, 52 mL 3, and 85 mL 1/3 cup.
/// </remarks>
public sealed class HouseholdServing
{
    private const int Teaspoon = 5, Tablespoon = 15, Cup = 240;

    private HouseholdServing(Amount amount, double wanted)
    {
        Amount = amount;
        WantedMillilitres = wanted;
    }

    /// <summary>The measure, such as <c>2 Tbsp</c>.</summary>
    public Amount Amount { get; }

    /// <summary>The volume that was asked for, mL.</summary>
    public double WantedMillilitres { get; }

    /// <summary>What the measure holds by the sizes of labels, mL.</summary>
    public double Millilitres => Amount.Millilitres(MeasuringSystem.UsLabelling);

    /// <summary>The household measure of a serving.</summary>
    /// <param name="millilitres">Its volume, mL, from 0.5 to 10 000.</param>
    /// <returns>The measure.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="millilitres"/> is outside its range.</exception>
    public static HouseholdServing Of(double millilitres)
    {
        Guard.InRange(millilitres, 0.5, 10_000);
        // As decimal, so that a third of a cup is one.
        decimal volume = (decimal)millilitres;
        Amount amount = volume < Teaspoon ? Nearest(volume, Teaspoon, KitchenUnit.Teaspoon, 4)
            : volume < Tablespoon ? Nearest(volume, Teaspoon, KitchenUnit.Teaspoon, 1)
            : volume < 2 * Tablespoon ? Nearest(volume, Tablespoon, KitchenUnit.Tablespoon, 2, 3)
            : volume < Cup / 4 ? Nearest(volume, Tablespoon, KitchenUnit.Tablespoon, 1)
            : Nearest(volume, Cup, KitchenUnit.Cup, 4, 3);
        return new HouseholdServing(amount, millilitres);
    }

    /// <summary>The measure and what it holds, such as <c>2 Tbsp (30 mL)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Amount} ({Millilitres:0.##} mL)");

    // The nearest whole number of quarters, halves or thirds of the measure; at least one of them, and of two as near the larger.
    private static Amount Nearest(decimal volume, int measure, KitchenUnit unit, params ReadOnlySpan<int> parts)
    {
        Fraction best = default;
        decimal miss = decimal.MaxValue;
        foreach (int part in parts)
        {
            long count = Math.Max(1, (long)Math.Round(volume * part / measure, MidpointRounding.AwayFromZero));
            Fraction size = new(count, part);
            decimal off = Math.Abs((decimal)measure * count / part - volume);
            if (off < miss || off == miss && size > best)
                (best, miss) = (size, off);
        }
        return Amount.Of(best, unit);
    }
}
