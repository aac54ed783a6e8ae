using System.Numerics;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>
/// How far the food in the bowl may be from its printed composition: food tables give a mean, and real butter varies.
/// An estimate of this library, not a published rule.
/// </summary>
/// <remarks>
/// For a mass fraction f of a constituent, or of a group of them, the standard uncertainty is u = √((r·min(f, 1 − f))² + h²/3), and 0 where
/// f is 0 or 1: a food does not vary in what it does not hold, nor where it holds nothing else. r goes by the kind of evidence of the
/// composition (table composition_spreads.csv, all estimates): 0.05 for what was measured, compiled, computed or fitted, 0.10 for what was
/// estimated, is common practice or from memory. h = 0.00005 is half a unit of the last digit that food tables print, 0.01 g per 100 g.
/// Where another food table has the food too (table composition_voices.csv), r·min(f, 1 − f) gives way to |x − y|/√2, the standard
/// deviation of the two figures, for a constituent or a group on which they are farther apart than that: two tables that agree are no proof
/// that foods do, and two that disagree show that they do not. The likely figure stays that of the row, whose parts add up. Worked number:
/// the fat of hazelnuts is 60.75 % in one and 56.9 % in the other, so u = 3.85 %/√2 = 2.72 %, where the kind alone gives 0.05 × 39.25 % =
/// 1.96 %. The uncertainties of two constituents of one food are not independent: what one has more, others have less.
/// </remarks>
public static class CompositionSpread
{
    private const double RoundingHalfUnit = 0.00005;

    // A composition may add up to a little more than 1, and so may a group of its constituents.
    private const double HighestFraction = 1.02;

    private const string FileName = "composition_spreads.csv";

    private static readonly double[] s_relative = ByEvidence();

    /// <summary>The standard uncertainty of a mass fraction in an ingredient, as a mass fraction.</summary>
    /// <param name="ingredient">
    /// The ingredient; only the kind of evidence of its composition counts, because a fraction does not say of what.
    /// </param>
    /// <param name="fraction">
    /// The mass fraction of a constituent or of a group, from 0 to 1.02; printed compositions add up to a little more than 1, and what is
    /// above 1 counts as 1.
    /// </param>
    /// <returns>
    /// The standard uncertainty, g/g. Worked number: the fat of unsalted butter, 0.8111 and compiled, gives 0.05 × 0.1889 = 0.0094.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fraction"/> is outside its range.</exception>
    public static double StandardUncertainty(Ingredient ingredient, double fraction)
    {
        return StandardUncertainty(Guard.NotNull(ingredient).CompositionProvenance.Evidence, Guard.InRange(fraction, 0, HighestFraction));
    }

    /// <summary>The mass fraction of a constituent, or of a group of them together, with its spread.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="constituents">The constituents, at least one.</param>
    /// <returns>
    /// Of a food from a label, all that the label leaves open; of a food of a table likely ∓ 2u, cut at 0 and 1. Worked number: the fat of
    /// unsalted butter is 0.8111 (0.7922 to 0.83).
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no constituent.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A constituent is not a defined value.</exception>
    public static Spread Of(Ingredient ingredient, params ReadOnlySpan<Constituent> constituents)
    {
        Guard.NotNull(ingredient);
        if (constituents.IsEmpty)
            throw new ArgumentException($"{nameof(constituents)} is empty; at least one is expected.", nameof(constituents));
        uint bits = 0;
        foreach (Constituent constituent in constituents)
            bits |= 1u << Constituents.PlaceOf(Guard.Defined(constituent, nameof(constituents)));
        double fraction = ingredient.Composition.Together(bits);
        if (ingredient.Record.Stated is StatedComposition stated)
            return stated.Of(bits, fraction);
        bool alone = BitOperations.IsPow2(bits);
        double u = alone ? StandardUncertainty(ingredient, Constituents.At(BitOperations.TrailingZeroCount(bits)))
            : StandardUncertainty(ingredient, fraction, bits);
        Evidence evidence = alone ? ingredient.EvidenceOf(Constituents.At(BitOperations.TrailingZeroCount(bits)))
            : ingredient.CompositionProvenance.Evidence;
        return new Spread(Math.Max(0, fraction - 2 * u), fraction, Math.Max(fraction, Math.Min(1, fraction + 2 * u)), u,
            Spread.Worse(SpreadBasis.Coverage, evidence.BasisOfRange()));
    }

    /// <summary>The standard uncertainty of one constituent, which may be worse known than the composition it stands in.</summary>
    internal static double StandardUncertainty(Ingredient ingredient, Constituent constituent) =>
        ingredient.Record.Stated is StatedComposition stated
        ? stated.Of(1u << Constituents.PlaceOf(constituent), ingredient.Composition[constituent]).StandardUncertainty
        : StandardUncertainty(ingredient.EvidenceOf(constituent), ingredient.Composition[constituent],
            CompositionVoices.Difference(ingredient, 1u << Constituents.PlaceOf(constituent)));

    /// <summary>
    /// The standard uncertainty of the mass fraction of a group of constituents, a bit for each, or of all that is not one of them.
    /// </summary>
    internal static double StandardUncertainty(Ingredient ingredient, double fraction, uint constituents) =>
        ingredient.Record.Stated is StatedComposition stated ? stated.Of(constituents, ingredient.Composition.Together(constituents)).StandardUncertainty
        : StandardUncertainty(ingredient.CompositionProvenance.Evidence, fraction, CompositionVoices.Difference(ingredient, constituents));

    private static double StandardUncertainty(Evidence evidence, double fraction, double difference = 0)
    {
        double relative = s_relative[(int)evidence];
        double smaller = Math.Min(fraction, 1 - fraction);
        if (smaller <= 0)
            return 0;
        double variation = Math.Max(relative * smaller, Math.Abs(difference) / Math.Sqrt(2));
        return Math.Sqrt(variation * variation + RoundingHalfUnit * RoundingHalfUnit / 3);
    }

    /// <summary>Reads a table that has every kind of evidence once.</summary>
    /// <exception cref="InvalidOperationException">The table has a problem; the message has the first, with its line.</exception>
    internal static Dictionary<Evidence, double> Read(TextReader text)
    {
        Dictionary<Evidence, double> relative = [];
        EmbeddedTable.Read(text, FileName, (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            Evidence evidence = fields.Enum<Evidence>("evidence");
            if (!relative.TryAdd(evidence, fields.RequiredNumber("relative_standard_uncertainty", 0, 1)))
                fields.Problem("evidence", $"{Excerpt.Of(fields.Word("evidence"))} stands twice");
        }, ["evidence", "relative_standard_uncertainty"], problems =>
        {
            foreach (Evidence evidence in Enum.GetValues<Evidence>().Where(evidence => !relative.ContainsKey(evidence)))
                problems.Add(new Problem(1, "evidence", $"there is no row of {evidence.ToWord()}"));
        });
        return relative;
    }

    private static double[] ByEvidence()
    {
        using TextReader text = EmbeddedTable.Open(FileName);
        Dictionary<Evidence, double> read = Read(text);
        double[] relative = new double[1 + read.Keys.Max(evidence => (int)evidence)];
        foreach ((Evidence evidence, double value) in read)
            relative[(int)evidence] = value;
        return relative;
    }
}
