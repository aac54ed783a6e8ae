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
/// 4. The standard uncertainty of its logarithm is u = √(max(technique, kitchens, range, sample)² + rounding²), where
///    <c>technique</c> is what one careful cook to the next brings for this class and packing (T, table spreads.csv, estimates): the least
///    that it is, because figures that agree do not show that cooks do,
///    <c>kitchens</c> is how far a kitchen is from the mean of n figures that disagree, by the moderated variance of Smyth (2004): τ̂² =
///    (ν₀·τ₀² + S)/(ν₀ + n − 1) with the squares S of the logarithms about their mean, ν₀ = 5 and τ₀ = T·√2/t(ν₀), and kitchens = ½·t(ν₀ + n −
///    1)·τ̂·√(1 + 1/n) with Student's factor t for 95 %; of one figure it is T,
///    <c>range</c> = ln(high/low)/√12 of a figure that has a range (GUM 4.3.7, two bounds and nothing known between),
///    <c>sample</c> is the source's relative standard deviation where it gives one,
///    and <c>rounding</c> is the printed half unit / √3.
/// 5. Low and high are likely × e^∓2u, about 95 % of careful kitchens, widened where a figure still lies outside.
/// 6. A kitchen's own weighings are combined with it (<see cref="Weighings"/>): each weighs by 1/u², the published figures with 4, the
///    own mean with what one fill differs from the next, over √n, and the scales. What is given is the next fill of this kitchen. Where the
///    two are more than two standard uncertainties apart they are not averaged: the own stand alone, and <see cref="Disagreement"/> says so.
/// Worked number: shortening, 205 g and 187 g a US cup (USDA SR, HERR-41) and T = 0.02: likely 195.8 g a cup, S = 0.00422, τ̂ = 0.0284,
/// u = 0.0425, low 179.8 and high 213.2.
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

    /// <summary>How many foods have both packings, whose mean ratio was taken; 0 where the packing was taken as it is.</summary>
    internal int RatioFoods { get; private init; }

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

    /// <summary>The kitchen's own weighings that are in it; <see langword="null"/> where there are none.</summary>
    public Weighings? Weighings { get; private init; }

    /// <summary>
    /// What the published figures still add to <see cref="Weighings"/>: their weight in the mean, from 0 to 1. <see langword="null"/> where
    /// nobody weighed at home, or nothing else is known; 0 where the two disagree.
    /// </summary>
    public double? PublishedShare { get; private init; }

    /// <summary>
    /// That own weighings and published figures disagree, and by how much, in a sentence; <see langword="null"/> where they do not.
    /// </summary>
    public string? Disagreement { get; private init; }

    /// <summary>The density and its sources, such as <c>0.8276 (0.7601 to 0.9011) g/mL, packed; USDA SR28, HERR 41</c>.</summary>
    public override string ToString() =>
        $"{GramsPerMillilitre} g/mL, {HowPacked}; "
        + string.Join(", ", ContributingFigures.Select(figure => figure.Provenance.Source.ShortName));

    /// <summary>The packing, and where it was taken from: <c>softened, taken as packed</c>.</summary>
    internal string HowPacked => TakenFrom is Packing known ? $"{Packing.ToWord()}, taken as {known.ToWord()}" : Packing.ToWord();

    /// <summary>
    /// This density times a ratio for a packing that nobody weighed, widened: u² = u² + extra². So many foods have both packings; 0 where
    /// the ratio is none.
    /// </summary>
    internal BulkDensity TakenFor(Packing packing, double extra, double logRatio, int foods)
    {
        double u = Math.Sqrt(LogUncertainty * LogUncertainty + extra * extra), wider = Math.Exp(2 * (u - LogUncertainty)),
            ratio = Math.Exp(logRatio), likely = GramsPerMillilitre.Likely * ratio;
        // The ends are moved and not made anew: one that a far figure holds out would not move.
        Spread spread = new(Math.Min(likely, GramsPerMillilitre.Low * ratio / wider), likely,
            Math.Max(likely, GramsPerMillilitre.High * ratio * wider), likely * u, SpreadBasis.Judged);
        return new BulkDensity(packing, spread, u, Facts, ContributingFigures, this)
        {
            Weighings = Weighings, PublishedShare = PublishedShare, Disagreement = Disagreement, RatioFoods = foods,
        };
    }

    internal static BulkDensity FromFacts(IngredientClass @class, Packing packing, IReadOnlyList<WeightFact> facts)
    {
        WeightFact? own = facts.LastOrDefault(fact => fact.Weighings is not null);
        if (own is null)
            return FromPublished(@class, packing, facts);
        WeightFact[] others = [.. facts.Where(fact => fact.Weighings is null)];
        return Combined(@class, packing, own, others.Any(fact => fact.Votes) ? FromPublished(@class, packing, others) : null, facts);
    }

    private static BulkDensity FromPublished(IngredientClass @class, Packing packing, IReadOnlyList<WeightFact> facts)
    {
        List<WeightFact> figures = FiguresOf(facts);
        double[] logs = new double[figures.Count];
        double lowest = double.MaxValue, highest = 0, range = 0, sample = 0, rounding = 0;
        for (int i = 0; i < logs.Length; i++)
        {
            WeightFact figure = figures[i];
            double volume = figure.Millilitres;
            logs[i] = Math.Log(figure.Grams.Likely / volume);
            lowest = Math.Min(lowest, figure.Grams.Low / volume);
            highest = Math.Max(highest, figure.Grams.High / volume);
            range = Math.Max(range, Math.Log(figure.Grams.High / figure.Grams.Low) / Math.Sqrt(12));
            sample = Math.Max(sample, (figure.StandardDeviationGrams ?? 0) / figure.Grams.Likely);
            rounding = Math.Max(rounding, figure.RoundingHalfUnit / Math.Sqrt(3) / figure.Grams.Likely);
        }
        double likely = Math.Exp(logs.Sum() / logs.Length);
        double technique = TechniqueSpreads.For(@class, packing);
        double main = Math.Max(Math.Max(technique, FigureSpread.OfAKitchen(logs, technique)), Math.Max(range, sample));
        double u = Math.Sqrt(main * main + rounding * rounding);
        Spread spread = new(Math.Min(likely * Math.Exp(-2 * u), lowest), likely, Math.Max(likely * Math.Exp(2 * u), highest), likely * u,
            figures.TrueForAll(IsPublished) ? SpreadBasis.Coverage : SpreadBasis.Judged);
        return new BulkDensity(packing, spread, u, facts, figures);
    }

    // The published figures say where kitchens are, and this kitchen's weighings where it is: two voices of its mean, by their variances.
    private static BulkDensity Combined(IngredientClass @class, Packing packing, WeightFact own, BulkDensity? published,
        IReadOnlyList<WeightFact> facts)
    {
        Weighings weighings = own.Weighings!;
        double mean = weighings.MeanGrams.Likely, log = Math.Log(mean / weighings.Millilitres);
        double scales = weighings.ResolutionGrams / Math.Sqrt(12) / mean;
        double[] fills = [.. weighings.Grams.Select(grams => Math.Log(grams))];
        double fill = FigureSpread.HalfFactor(fills.Length) * FigureSpread.Between(fills, TechniqueSpreads.For(@class, packing));
        double variance = fill * fill / fills.Length + scales * scales;
        double? share = null;
        string? disagreement = null;
        SpreadBasis basis = weighings.Grams.Count > 1 ? SpreadBasis.Coverage : SpreadBasis.Judged;
        if (published is not null)
        {
            double theirs = published.LogUncertainty * published.LogUncertainty, apart = Math.Abs(log - published.LogLikely)
                / Math.Sqrt(variance + theirs);
            share = apart > 2 ? 0 : variance / (variance + theirs);
            if (apart > 2)
            {
                disagreement = string.Create(global::System.Globalization.CultureInfo.InvariantCulture,
                    $"Your own weighings ({weighings}) and the published figures ({published.GramsPerMillilitre.Likely * weighings.Millilitres:0.#} g) are ")
                    + string.Create(global::System.Globalization.CultureInfo.InvariantCulture,
                        $"{apart:0.0} standard uncertainties apart. Yours alone were taken: was it this cup, this packing, and the cup not weighed with it?");
            }
            else
            {
                log += share.Value * (published.LogLikely - log);
                variance = variance * theirs / (variance + theirs);
                basis = Spread.Worse(basis, published.GramsPerMillilitre.Basis);
            }
        }
        double likely = Math.Exp(log), u = Math.Sqrt(variance + fill * fill);
        // Every fill of one's own lies within, but not every published figure: another kitchen's cup is not this one's.
        double lowest = weighings.Grams.Min() / weighings.Millilitres, highest = weighings.Grams.Max() / weighings.Millilitres;
        Spread spread = new(Math.Min(likely * Math.Exp(-2 * u), lowest), likely, Math.Max(likely * Math.Exp(2 * u), highest), likely * u, basis);
        return new BulkDensity(packing, spread, u, facts, share is > 0 ? [own, .. published!.ContributingFigures] : [own])
        {
            Weighings = weighings, PublishedShare = share, Disagreement = disagreement,
        };
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
