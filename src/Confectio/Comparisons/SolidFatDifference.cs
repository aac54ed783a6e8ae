using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;

namespace Confectio.Comparisons;

/// <summary>The difference of the solid fat of two formulas at a temperature: a curve that both follow is off in both alike.</summary>
internal sealed class SolidFatDifference
{
    // Of the fat: less than that of another fat does not make it another.
    private const double LeastShare = 0.05;

    private SolidFatDifference(ComparedFigure figure, bool haveOneFat, string whyNot)
    {
        Figure = figure;
        HaveOneFat = haveOneFat;
        WhyNot = whyNot;
    }

    /// <summary>Solid fat in per cent of the whole.</summary>
    public ComparedFigure Figure { get; }

    /// <summary>Whether the fat of both follows the same curves: across different fats firmness does not follow solid fat.</summary>
    public bool HaveOneFat { get; }

    /// <summary>Why softness cannot be told by it; empty where it can.</summary>
    public string WhyNot { get; }

    public static SolidFatDifference Of(FormulaPair pair, double celsius, FatCurves curves)
    {
        string name = string.Create(CultureInfo.InvariantCulture, $"solid fat at {celsius:0.##} °C");
        SolidFat a = pair.First.SolidFat(celsius, curves), b = pair.Second.SolidFat(celsius, curves);
        string[] unknown = [.. new[] { ("the first", a), ("the second", b) }.Where(one => one.Item2.PercentOfFormula is null)
            .Select(one => one.Item2.FatGrams <= 0 ? $"{one.Item1} has no fat" : $"no melting curve is known of the fat of {one.Item1}")];
        if (a.PercentOfFormula is not Spread first || b.PercentOfFormula is not Spread second)
            return new SolidFatDifference(new ComparedFigure(name, "%", a.PercentOfFormula, b.PercentOfFormula, null, string.Join(", ", unknown)), false, string.Join(", ", unknown));
        double Solid(Ingredient ingredient) => curves.Of(ingredient).Sum(fat => fat.Curve is SolidFatCurve curve ? fat.PerGram * curve.PercentAt(celsius).Likely : 0);
        SharedErrors errors = pair.ErrorsOf(Solid, ingredient => FormulaPart.Fat.FractionIn(ingredient) is > 0 and double fat
            ? Solid(ingredient) / fat * FormulaPart.Fat.StandardUncertaintyIn(ingredient) : 0, 0, out _, out _);
        double without = 0;
        foreach (Ingredient ingredient in pair.Ingredients)
        {
            (double inFirst, double inSecond) = pair.Share(ingredient);
            foreach ((SolidFatCurve? curve, double perGram) in curves.Of(ingredient))
            {
                double more = (inSecond - inFirst) * perGram;
                if (curve is null)
                    without += 100 * more; // all of it solid, or nothing
                else if (curve.PercentAt(celsius) is var percent)
                    errors.Add(curve, more * (percent.High - percent.Low) / 4);
            }
        }
        // The likely figures stand for fat without a curve too; fats that soften each other lower the one end.
        double likely = second.Likely - first.Likely, reach = 2 * errors.StandardUncertainty;
        double low = likely - double.Hypot(reach, Softened(b, second)) - Math.Abs(without), high = likely + double.Hypot(reach, Softened(a, first)) + Math.Abs(without);
        Spread difference = low < high ? new Spread(low, likely, high, SpreadBasis.Judged) : Spread.Exactly(likely);
        string evidence = a.Evidence is { } kind && b.Evidence is { } other ? Sources.EvidenceText.ToWord((Sources.Evidence)Math.Max((int)kind, (int)other)) : "";
        // A trace without a curve is in the range.
        Ingredient[] dark = [.. new[] { a, b }.Where(fat => fat.FatGrams - fat.KnownFatGrams > LeastShare * fat.FatGrams).SelectMany(fat => fat.WithoutCurve).Distinct()];
        bool haveOne = Kinds(a).SetEquals(Kinds(b)) && dark.Length == 0;
        string whyNot = haveOne ? "" : dark.Length > 0
            ? $"no melting curve is known of the fat of {string.Join(", ", dark.Select(food => food.Name))}"
            : $"their fats differ ({string.Join(", ", Kinds(a).Order(StringComparer.Ordinal))}; {string.Join(", ", Kinds(b).Order(StringComparer.Ordinal))}), and across different fats firmness does not follow how much is solid";
        return new SolidFatDifference(new ComparedFigure(name, "%", first, second, difference, evidence.Length > 0 ? $"by melting curves of which the least sure is {evidence}" : ""), haveOne, whyNot);
    }

    private static HashSet<string> Kinds(SolidFat fat) => [.. fat.Fats.Where(one => one.Grams >= LeastShare * fat.FatGrams).Select(one => one.Curve.Key)];

    // By how much the low end was lowered for fats that soften each other, per cent of the whole.
    private static double Softened(SolidFat fat, Spread ofFormula)
    {
        double plain = fat.Fats.Sum(one => one.Grams * one.Percent.Low) / fat.FatGrams, told = fat.PercentOfFat!.Value.Low;
        return plain > 0 && fat.PercentOfFat.Value.Likely > 0 ? Math.Max(0, plain - told) * ofFormula.Likely / fat.PercentOfFat.Value.Likely : 0;
    }
}
