using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Heat;

/// <summary>
/// How much of the fat of a formula is solid at a temperature: S = Σ mᵢ·Sᵢ / Σ mᵢ over its fats, each by its own curve and by mass.
/// </summary>
/// <remarks>
/// The sum takes the fats as if they did not know of each other, which is a ceiling: fats that dissolve in each other have less
/// solid than that, cocoa butter with milk fat much less (<see cref="Cautions"/> say which are in it, and the low end is lowered by a
/// judged factor). Most curves are from memory or estimated, so that nothing here may be called measured but where
/// <see cref="Evidence"/> says so. It is the part of the fat that is solid, not how firm an icing is: across different fats firmness does
/// not follow it (of published abstracts none found a correlation across shortenings or across tub margarines).
/// Worked number: equal masses of butter (81.11 % fat) and lard at 20 °C: (81.11·21 + 100·21)/181.11 = 21 % of the fat.
/// </remarks>
public sealed class SolidFat
{
    // Cocoa in a buttercream brings some; of a share above this the windows say nothing. An estimate of our own.
    private const double MostCocoaButter = 0.1;

    private SolidFat(double celsius, double grams, double fatGrams, FatOfFormula[] fats, Ingredient[] without)
    {
        Celsius = celsius;
        FatGrams = fatGrams;
        Fats = fats;
        WithoutCurve = without;
        KnownFatGrams = fats.Sum(fat => fat.Grams);
        List<string> cautions = [];
        if (fatGrams <= 0)
            cautions.Add("There is no fat in it.");
        if (without.Length > 0)
            cautions.Add(string.Create(CultureInfo.InvariantCulture, $"{fatGrams - KnownFatGrams:0.###} g of {fatGrams:0.#} g of fat has no known "
                + $"melting curve: {WithoutCurveNames}. It is not counted as liquid: the range allows for all and nothing of it."));
        if (KnownFatGrams > 0)
        {
            PercentOfFat = OfFat(cautions);
            PercentOfFormula = PercentOfFat.Value * (fatGrams / grams);
            Evidence = fats.Max(fat => fat.Provenance.Evidence);
        }
        Cautions = cautions;
    }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>
    /// Grams of solid in 100 g of the fat; <see langword="null"/> where there is no fat, or none with a known curve. Likely is of the fat
    /// whose curve is known.
    /// </summary>
    public Spread? PercentOfFat { get; }

    /// <summary>Grams of solid fat in 100 g of the formula: what windows in per cent of the product are about.</summary>
    public Spread? PercentOfFormula { get; }

    /// <summary>The fat of the formula, g.</summary>
    public double FatGrams { get; }

    /// <summary>The fat of which a curve is known, g.</summary>
    public double KnownFatGrams { get; }

    /// <summary>The fats, one for each curve, the most first.</summary>
    public IReadOnlyList<FatOfFormula> Fats { get; }

    /// <summary>Ingredients with fat of which no curve is known.</summary>
    public IReadOnlyList<Ingredient> WithoutCurve { get; }

    /// <summary>What the answer leaves out or takes for granted, in sentences.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>Their names, for a sentence.</summary>
    internal string WithoutCurveNames => string.Join(", ", WithoutCurve.Select(food => food.Name));

    /// <summary>Why no published window may be held against it; <see langword="null"/> where one may.</summary>
    internal string? NotJudgedWhy
    {
        get
        {
            if (PercentOfFat is null)
                return "how much of its fat is solid is not known";
            double cocoa = Fats.Where(fat => fat.Curve.Key.StartsWith("cocoa-butter", StringComparison.Ordinal)).Sum(fat => fat.Grams);
            return cocoa <= MostCocoaButter * FatGrams ? null : string.Create(CultureInfo.InvariantCulture, $"{100 * cocoa / FatGrams:0} % of its fat is cocoa butter, and the "
                + $"windows were found for buttercreams without: whether it stands they do not say. It goes by whether it was tempered too");
        }
    }

    /// <summary>The least sure kind of evidence that it stands on; <see langword="null"/> where there is no answer.</summary>
    public Evidence? Evidence { get; }

    internal static SolidFat Of(Formula formula, double celsius, FatCurves? curves)
    {
        Guard.NotNull(formula);
        Guard.InRange(celsius, SolidFatCurve.MinimumCelsius, SolidFatCurve.MaximumCelsius);
        curves ??= FatCurves.BuiltIn;
        List<(SolidFatCurve Curve, double Grams, List<Ingredient> Foods)> fats = [];
        List<Ingredient> without = [];
        double all = 0;
        foreach (FormulaLine line in formula.Lines)
        {
            foreach ((SolidFatCurve? curve, double perGram) in curves.Of(line.Ingredient))
            {
                double grams = perGram * line.Grams.Likely;
                if (grams <= 0)
                    continue;
                all += grams;
                if (curve is null)
                {
                    if (!without.Contains(line.Ingredient))
                        without.Add(line.Ingredient);
                    continue;
                }
                int at = fats.FindIndex(fat => ReferenceEquals(fat.Curve, curve));
                if (at < 0)
                {
                    at = fats.Count;
                    fats.Add((curve, 0, []));
                }
                List<Ingredient> foods = fats[at].Foods;
                if (!foods.Contains(line.Ingredient))
                    foods.Add(line.Ingredient);
                fats[at] = (curve, fats[at].Grams + grams, foods);
            }
        }
        return new SolidFat(celsius, formula.TotalGrams, all,
            [.. fats.OrderByDescending(fat => fat.Grams).Select(fat => new FatOfFormula(fat.Curve, fat.Grams, fat.Foods, celsius))],
            [.. without]);
    }

    /// <summary>The share of the fat and of the formula, such as <c>at 25 °C 12 % of the fat is solid (9 to 15)</c>.</summary>
    public override string ToString() => PercentOfFat is not Spread percent
        ? string.Create(CultureInfo.InvariantCulture, $"at {Celsius:0.#} °C: not known. {string.Join(" ", Cautions)}")
        : string.Create(CultureInfo.InvariantCulture, $"at {Celsius:0.#} °C {percent.Likely:0.#} % of the fat is solid ({percent.Low:0.#} to "
            + $"{percent.High:0.#}; {Evidence!.Value.ToWord()}), {PercentOfFormula!.Value.Likely:0.#} % of the whole");

    private Spread OfFat(List<string> cautions)
    {
        double low = 0, likely = 0, high = 0;
        SpreadBasis basis = SpreadBasis.Exact;
        foreach (FatOfFormula fat in Fats)
        {
            low += fat.Grams * fat.Percent.Low;
            likely += fat.Grams * fat.Percent.Likely;
            high += fat.Grams * fat.Percent.High;
            basis = Spread.Worse(basis, fat.Percent.Basis);
        }
        double unknown = Math.Max(0, FatGrams - KnownFatGrams), factor = 1;
        FatMixture[] mixtures = [.. FatMixture.All.Where(mixture => mixture.IsIn(Fats, KnownFatGrams))];
        foreach (FatMixture mixture in mixtures)
            factor = Math.Min(factor, mixture.LowFactor);
        foreach (string words in mixtures.Select(mixture => mixture.ToString()).Distinct())
            cautions.Add($"Not an ideal mixture: {words}. The sum is a ceiling; its low end is lowered by a judgement.");
        foreach (FatOfFormula fat in Fats.Where(fat => fat.IsBeyond))
            cautions.Add(string.Create(CultureInfo.InvariantCulture, $"The curve of {fat.Curve.Key} ends before {Celsius:0.#} °C and goes on flat."));
        foreach (FatOfFormula fat in Fats.Where(fat => fat.Method.Contains("tempered 40 h", StringComparison.Ordinal)))
            cautions.Add($"The curve of {fat.Curve.Key} is of fat tempered 40 h at 26 °C; set without that it has less solid and melts lower.");
        if (Fats.Select(fat => fat.Method).Where(method => method is not ("none" or "own")).Distinct().Count() > 1)
            cautions.Add($"The curves were not measured alike: {string.Join("; ", Fats.Select(fat => $"{fat.Curve.Key} {fat.Method}"))}.");
        if (unknown > 0 || mixtures.Length > 0)
            basis = SpreadBasis.Judged;
        likely /= KnownFatGrams;
        return new Spread(Math.Min(likely, factor * low / FatGrams), likely,
            Math.Max(likely, Math.Min(100, (high + 100 * unknown) / FatGrams)), basis);
    }
}
