using Confectio.Sources;

namespace Confectio.Ingredients;

/// <summary>
/// How much of an ingredient fills a millilitre in one packing: low, likely and high, and every figure it was made from.
/// </summary>
/// <remarks>
/// The rule, the same for every ingredient:
/// 1. Each source has one figure that counts: that for its largest measure, which suffers least from rounding. One that is known to be
///    wrong has none (<see cref="WeightFact.Votes"/>).
/// 2. Published and computed figures speak; remembered and estimated ones only where there is no other.
/// 3. Likely is the geometric mean of the figures.
/// 4. The standard uncertainty of its logarithm is u = √(max(technique, between, sample)² + rounding²), where
///    <c>between</c> = ln(highest/lowest)/√12 over the figures and their own ranges (GUM 4.3.7, two bounds and nothing known between),
///    <c>sample</c> is the source's relative standard deviation where it gives one,
///    <c>technique</c> is what one careful cook to the next brings for this class and packing (table spreads.csv, estimates),
///    and <c>rounding</c> is the printed half unit / √3.
/// 5. Low and high are likely × e^∓2u, about 95 % of careful kitchens, widened where a figure still lies outside.
/// Worked number: shortening, 205 g and 187 g a US cup (USDA SR, HERR-41): likely 195.8 g a cup, between 0.0265, low 185.7 and high 206.5.
/// </remarks>
public sealed class BulkDensity
{
    private BulkDensity(Packing packing, Spread gramsPerMillilitre, double logUncertainty, IReadOnlyList<WeightFact> facts,
        IReadOnlyList<WeightFact> figures, BulkDensity? basis = null)
    {
        Basis = basis;
        Packing = packing;
        GramsPerMillilitre = gramsPerMillilitre;
        LogUncertainty = logUncertainty;
        LogLikely = Math.Log(gramsPerMillilitre.Likely);
        Facts = facts;
        ContributingFigures = figures;
    }

    /// <summary>The packing.</summary>
    public Packing Packing { get; }

    /// <summary>
    /// The packing that was weighed, where nobody weighed this one and the nearest was taken, widened; <see langword="null"/> where
    /// this packing was weighed itself.
    /// </summary>
    public Packing? TakenFrom => Basis?.Packing;

    /// <summary>The density this one was taken from.</summary>
    internal BulkDensity? Basis { get; }

    /// <summary>Grams in a millilitre.</summary>
    public Spread GramsPerMillilitre { get; }

    /// <summary>
    /// The standard uncertainty of the natural logarithm of the density; for small values the relative standard uncertainty.
    /// </summary>
    public double LogUncertainty { get; }

    /// <summary>The natural logarithm of the likely density.</summary>
    internal double LogLikely { get; }

    /// <summary>Every figure known for this packing (or for <see cref="TakenFrom"/>), the disagreeing ones too.</summary>
    public IReadOnlyList<WeightFact> Facts { get; }

    /// <summary>The figures that the spread was made from: one a source.</summary>
    public IReadOnlyList<WeightFact> ContributingFigures { get; }

    /// <summary>The density and its sources, such as <c>0.8276 (0.7847 to 0.8727) g/mL, packed; USDA SR28, HERR 41</c>.</summary>
    public override string ToString() =>
        $"{GramsPerMillilitre} g/mL, {HowPacked}; "
        + string.Join(", ", ContributingFigures.Select(figure => figure.Provenance.Source.ShortName));

    /// <summary>The packing, and where it was taken from: <c>softened, taken as packed</c>.</summary>
    internal string HowPacked => TakenFrom is Packing known ? $"{Packing.ToWord()}, taken as {known.ToWord()}" : Packing.ToWord();

    /// <summary>This density for a packing so many steps away, widened: u² = u² + (steps × width)².</summary>
    internal BulkDensity TakenFor(Packing packing, double extra)
    {
        double u = Math.Sqrt(LogUncertainty * LogUncertainty + extra * extra), wider = Math.Exp(2 * (u - LogUncertainty));
        // The ends are moved and not made anew: one that a far figure holds out would not move.
        Spread spread = new(GramsPerMillilitre.Low / wider, GramsPerMillilitre.Likely, GramsPerMillilitre.High * wider,
            GramsPerMillilitre.Likely * u,
            SpreadBasis.Judged);
        return new BulkDensity(packing, spread, u, Facts, ContributingFigures, this);
    }

    internal static BulkDensity FromFacts(IngredientClass @class, Packing packing, IReadOnlyList<WeightFact> facts)
    {
        List<WeightFact> figures = FiguresOf(facts);
        double sum = 0, lowest = double.MaxValue, highest = 0, sample = 0, rounding = 0;
        foreach (WeightFact figure in figures)
        {
            double volume = figure.Millilitres;
            sum += Math.Log(figure.Grams.Likely / volume);
            lowest = Math.Min(lowest, figure.Grams.Low / volume);
            highest = Math.Max(highest, figure.Grams.High / volume);
            sample = Math.Max(sample, (figure.StandardDeviationGrams ?? 0) / figure.Grams.Likely);
            rounding = Math.Max(rounding, figure.RoundingHalfUnit / Math.Sqrt(3) / figure.Grams.Likely);
        }
        double likely = Math.Exp(sum / figures.Count);
        double between = Math.Log(highest / lowest) / Math.Sqrt(12);
        double main = Math.Max(Math.Max(TechniqueSpreads.For(@class, packing), between), sample);
        double u = Math.Sqrt(main * main + rounding * rounding);
        Spread spread = new(Math.Min(likely * Math.Exp(-2 * u), lowest), likely, Math.Max(likely * Math.Exp(2 * u), highest), likely * u,
            figures.TrueForAll(IsPublished) ? SpreadBasis.Coverage : SpreadBasis.Judged);
        return new BulkDensity(packing, spread, u, facts, figures);
    }

    private static List<WeightFact> FiguresOf(IReadOnlyList<WeightFact> facts)
    {
        // Of each source the largest measure, which was weighed best.
        List<WeightFact> figures = [];
        foreach (WeightFact fact in facts)
        {
            if (!fact.Votes)
                continue;
            int known = figures.FindIndex(figure => figure.Provenance.Source.Key == fact.Provenance.Source.Key);
            if (known < 0)
                figures.Add(fact);
            else if (fact.Millilitres > figures[known].Millilitres)
                figures[known] = fact;
        }
        if (figures.Exists(IsPublished))
            figures.RemoveAll(figure => !IsPublished(figure));
        return figures;
    }

    private static bool IsPublished(WeightFact fact) =>
        fact.Provenance.Evidence is Evidence.Measured or Evidence.Compiled or Evidence.Computed or Evidence.Fitted;
}
