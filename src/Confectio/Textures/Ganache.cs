using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Sugars;

namespace Confectio.Textures;

/// <summary>A ganache, or a coating without water: its fat and its water phase, what it is like at a temperature, and how near it is to splitting.</summary>
/// <remarks>
/// Solid fat is that of all its fats together (<see cref="SolidFat"/>), never that of the chocolate alone: the melting temperature of every ganache is below that of its chocolate, because
/// milk fat mixes with cocoa butter (McGill and Hartel 2018, abstract). Cocoa butter that set without tempering is taken to melt 6.3 K lower, as its form IV (27.5 °C) does beside form V
/// (33.8 °C; Wille and Lutton), an estimate. From 3 % of the whole solid it is called pipeable and from 17 % firm: estimates, drawn so that dark chocolate and cream two to one are
/// firm and one to one pipeable at 20 °C, and both pour at 35 °C (common practice). No limit of fat to water for splitting was found in print; those here are estimates, drawn above two
/// parts of dark chocolate to one of cream (1.7 g of fat to 1 g of water), which the trade makes every day.
/// </remarks>
public sealed class Ganache
{
    // Estimates, see the remarks.
    private const double UntemperedLower = 33.8 - 27.5, RaisedAbove = 1.7, HighAbove = 2.3;

    // Notter 2011: a ganache that split fell to 74 to 85 °F, and is reheated to 90 °F.
    private const double ColdEnoughToSplit = 29.4;

    private Ganache(Formula formula)
    {
        Formula = formula;
        Balance balance = Balance.Of(formula);
        double Grams(FormulaPart part) => balance[part].Grams.Likely;
        FatGrams = Grams(FormulaPart.FatPhase);
        MilkFatGrams = Grams(FormulaPart.MilkFat);
        WaterPhaseGrams = Grams(FormulaPart.Water) > 0 ? Grams(FormulaPart.WaterPhase) : 0;
        double water = Grams(FormulaPart.Water);
        FatToWater = water > 0 && FatGrams / water is var ratio && double.IsFinite(ratio) ? ratio : null;
        WaterPhaseVolume = IcingConsistency.WaterPhaseOf(formula);
        // What nearly no water is in is a coating, and has nothing to split from.
        bool isCoating = water < 0.03 * formula.TotalGrams;
        SplitRisk = FatToWater is not double to || isCoating ? null : to > HighAbove ? Textures.SplitRisk.High : to > RaisedAbove ? Textures.SplitRisk.Raised : Textures.SplitRisk.Low;
    }

    /// <summary>The formula.</summary>
    public Formula Formula { get; }

    /// <summary>The fat phase, chocolate and cream together, g.</summary>
    public double FatGrams { get; }

    /// <summary>The milk fat in it, which softens cocoa butter, g.</summary>
    public double MilkFatGrams { get; }

    /// <summary>The water with the sugars that are in it, g; those that do not dissolve counted in. 0 without water.</summary>
    public double WaterPhaseGrams { get; }

    /// <summary>Water and what dissolves in it at 20 °C, as a share of the volume; <see langword="null"/> where no solution is known.</summary>
    public Spread? WaterPhaseVolume { get; }

    /// <summary>Grams of fat to a gram of water; <see langword="null"/> without water. Worked number: dark chocolate (45 to 59 %) and heavy cream one to one: 1.16.</summary>
    public double? FatToWater { get; }

    /// <summary>How near it is to splitting by its fat and its water: an estimate; <see langword="null"/> of a coating with less than 3 % of water.</summary>
    public SplitRisk? SplitRisk { get; }

    /// <summary>A ganache or a coating.</summary>
    /// <param name="formula">The formula, with fat.</param>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no fat in it.</exception>
    public static Ganache Of(Formula formula)
    {
        Ganache ganache = new(Guard.NotNull(formula));
        return ganache.FatGrams > 0 ? ganache : throw new ArgumentException($"{nameof(formula)} has no fat; a ganache or a coating has.", nameof(formula));
    }

    /// <summary>The same while it is stirred at a temperature: fat that has begun to set is beaten out.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <returns>At 29.4 °C (85 °F) and colder no better than raised (Notter 2011: warm it to 32.2 °C, 90 °F, first); <see langword="null"/> of a coating.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public SplitRisk? RiskStirredAt(double celsius) => Guard.InRange(celsius, 0, 100) <= ColdEnoughToSplit && SplitRisk == Textures.SplitRisk.Low ? Textures.SplitRisk.Raised : SplitRisk;

    /// <summary>What it is like at a temperature.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 60.</param>
    /// <param name="isTempered">Whether its cocoa butter set tempered; <see langword="null"/> where that is not known: then the range covers both.</param>
    /// <param name="curves">Whose melting curves: the built-in ones where none are given.</param>
    /// <returns>The state; <see langword="null"/> where the melting of none of its fat is known.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public GanacheState? At(double celsius, bool? isTempered = null, FatCurves? curves = null)
    {
        SolidFat fat = Formula.SolidFat(Guard.InRange(celsius, 0, 60), curves);
        if (fat.PercentOfFat is not Spread tempered)
            return null;
        bool hasCocoaButter = fat.Fats.Any(IsCocoaButter);
        Spread untempered = hasCocoaButter ? Untempered(fat, tempered) : tempered,
            percent = isTempered switch
            {
                true => tempered,
                false => untempered,
                _ => new Spread(Math.Min(tempered.Low, untempered.Low), (tempered.Likely + untempered.Likely) / 2, Math.Max(tempered.High, untempered.High),
                    hasCocoaButter ? SpreadBasis.Judged : tempered.Basis),
            };
        List<string> cautions = [];
        if (hasCocoaButter && isTempered is null)
            cautions.Add("Was its chocolate tempered, and kept below 34 °C since? It was not told: the range covers both, and the likely value stands between them.");
        if (hasCocoaButter && isTempered != true)
            cautions.Add("Cocoa butter that set without tempering is taken to melt 6.3 K lower (estimated from the melting points of its forms).");
        cautions.Add("Where pourable, pipeable and firm part is an estimate; the more water and the less cocoa without fat, the softer. Set a spoonful before you fill a cake.");
        cautions.AddRange(fat.Cautions.Where(caution => isTempered == true || !caution.Contains("tempered 40 h", StringComparison.Ordinal)));
        return new GanacheState(celsius, isTempered, percent * (fat.FatGrams / Formula.TotalGrams), cautions);
    }

    /// <summary>The fat, the water and the risk in a line.</summary>
    public override string ToString() => SplitRisk is not Textures.SplitRisk risk
        ? string.Create(CultureInfo.InvariantCulture, $"{100 * FatGrams / Formula.TotalGrams:0.0} % fat, next to no water")
        : string.Create(CultureInfo.InvariantCulture, $"{100 * FatGrams / Formula.TotalGrams:0.0} % fat, {FatToWater:0.00} g of it to 1 g of water: risk of splitting {risk.ToString().ToLowerInvariant()} (estimated)");

    private static bool IsCocoaButter(FatOfFormula fat) => fat.Curve.Key == "cocoa-butter";

    // By the same lowering of the low end for fats that soften each other.
    private static Spread Untempered(SolidFat fat, Spread tempered)
    {
        double low = 0, likely = 0, high = 0, lowTempered = 0, highTempered = 0;
        foreach (FatOfFormula one in fat.Fats)
        {
            Spread percent = IsCocoaButter(one) ? one.Curve.PercentAt(fat.Celsius + UntemperedLower) : one.Percent;
            low += one.Grams * percent.Low;
            likely += one.Grams * percent.Likely;
            high += one.Grams * percent.High;
            lowTempered += one.Grams * one.Percent.Low;
            highTempered += one.Grams * one.Percent.High;
        }
        likely /= fat.KnownFatGrams;
        double factor = lowTempered > 0 ? Math.Min(1, tempered.Low * fat.FatGrams / lowTempered) : 1;
        return new Spread(Math.Min(likely, factor * low / fat.FatGrams), likely, Math.Max(likely, Math.Min(tempered.High, tempered.High + (high - highTempered) / fat.FatGrams)), SpreadBasis.Judged);
    }
}
