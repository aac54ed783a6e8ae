using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>
/// How far the food in the bowl may be from its printed composition: food tables give a mean, and real butter varies.
/// An estimate of this library, not a published rule.
/// </summary>
/// <remarks>
/// For a mass fraction f of a constituent, or of a group of them, the standard uncertainty is u = √((r·min(f, 1 − f))² + h²/3), and
/// 0 where f is 0 or 1: a food does not vary in what it does not hold, nor where it holds nothing else.
/// r goes by the kind of evidence of the composition (table composition_spreads.csv, all estimates): 0.05 for what was measured,
/// compiled, computed or fitted, 0.10 for what was estimated, is common practice or from memory.
/// h = 0.00005 is half a unit of the last digit that food tables print, 0.01 g per 100 g.
/// The uncertainties of two constituents of one food are not independent: what one has more, others have less.
/// </remarks>
public static class CompositionSpread
{
    private const double RoundingHalfUnit = 0.00005;

    // A composition may add up to a little more than 1, and so may a group of its constituents.
    private const double HighestFraction = 1.02;

    private static readonly double[] s_relative = ReadBuiltIn();

    /// <summary>The standard uncertainty of a mass fraction in an ingredient, as a mass fraction.</summary>
    /// <param name="ingredient">The ingredient; only the kind of evidence of its composition counts.</param>
    /// <param name="fraction">
    /// The mass fraction of a constituent or of a group, from 0 to 1.02; printed compositions add up to a little more than 1, and what is above 1 counts as 1.
    /// </param>
    /// <returns>The standard uncertainty, g/g. Worked number: the fat of unsalted butter, 0.8111 and compiled, gives 0.05 × 0.1889 = 0.0094.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fraction"/> is outside its range.</exception>
    public static double StandardUncertainty(Ingredient ingredient, double fraction)
    {
        return StandardUncertainty(Guard.NotNull(ingredient).CompositionProvenance.Evidence, Guard.InRange(fraction, 0, HighestFraction));
    }

    /// <summary>The standard uncertainty of one constituent, which may be worse known than the composition it stands in.</summary>
    internal static double StandardUncertainty(Ingredient ingredient, Constituent constituent) =>
        StandardUncertainty(ingredient.EvidenceOf(constituent), ingredient.Composition[constituent]);

    private static double StandardUncertainty(Evidence evidence, double fraction)
    {
        double relative = s_relative[(int)evidence];
        double smaller = Math.Min(fraction, 1 - fraction);
        if (smaller <= 0)
            return 0;
        double variation = relative * smaller;
        return Math.Sqrt(variation * variation + RoundingHalfUnit * RoundingHalfUnit / 3);
    }

    private static double[] ReadBuiltIn()
    {
        double[] relative = new double[Enum.GetValues<Evidence>().Length];
        EmbeddedTable.Read("composition_spreads.csv", (table, _) =>
        {
            int kind = table.Find("evidence"), value = table.Find("relative_standard_uncertainty");
            return row =>
            {
                if (EvidenceText.TryRead(row[kind], out Evidence evidence))
                    relative[(int)evidence] = double.Parse(row[value], CultureInfo.InvariantCulture);
            };
        });
        return relative;
    }
}
