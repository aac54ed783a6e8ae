using System.Globalization;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Eggs;

/// <summary>
/// What a kitchen rule gives with one powder and one set of cups: its grams, its solids, and how they compare with fresh and pasteurised
/// white.
/// </summary>
public sealed class ReconstitutionResult
{
    internal ReconstitutionResult(ReconstitutionRule rule, EggForm powder, MeasuringSystem system, double replacesGrams, Spread powderGrams,
        Spread waterGrams)
    {
        Rule = rule;
        Powder = powder;
        MeasuringSystem = system;
        ReplacesGrams = replacesGrams;
        PowderGrams = powderGrams;
        WaterGrams = waterGrams;
    }

    /// <summary>The rule.</summary>
    public ReconstitutionRule Rule { get; }

    /// <summary>The powder, at its moisture.</summary>
    public EggForm Powder { get; }

    /// <summary>Whose cups and spoons.</summary>
    public MeasuringSystem MeasuringSystem { get; }

    /// <summary>The whites that the rule says this replaces, g.</summary>
    public double ReplacesGrams { get; }

    /// <summary>The powder, g: exact by mass, with the spread of the density by spoons.</summary>
    public Spread PowderGrams { get; }

    /// <summary>The water, g.</summary>
    public Spread WaterGrams { get; }

    /// <summary>What is made, g.</summary>
    public Spread TotalGrams => Spread.Sum([KeyValuePair.Create("one kitchen", PowderGrams),
        KeyValuePair.Create("one kitchen", WaterGrams)]);

    /// <summary>
    /// The solids of what is made, per cent: from the least powder in the most water to the most in the least, and from the wettest powder
    /// to the driest of <see cref="EggForm.SolidsFraction"/>. The water counts as pure. A rule by mass with a powder whose moisture was
    /// stated is arithmetic: all three are the same. Worked number: 12 to 88 with dried white, 10.98, to 11.04 with the powder of the
    /// specification.
    /// </summary>
    public Spread SolidsPercent => new(Percent(PowderGrams.Low, WaterGrams.High, Powder.SolidsFraction.Low),
        Percent(PowderGrams.Likely, WaterGrams.Likely, Powder.SolidsFraction.Likely),
        Percent(PowderGrams.High, WaterGrams.Low, Powder.SolidsFraction.High),
        Spread.Worse(Spread.Worse(PowderGrams.Basis, WaterGrams.Basis), Powder.SolidsFraction.Basis));

    /// <summary>The protein of what is made, per cent, likely.</summary>
    public double ProteinPercent => 100 * PowderGrams.Likely * Powder.ProteinFraction / TotalGrams.Likely;

    /// <summary>How many points of solids it is above fresh white (12.43 %); below 0 where it is weaker.</summary>
    public double PointsAboveFresh => SolidsPercent.Likely - 100 * Powder.Forms.FreshWhite.SolidsFraction.Likely;

    /// <summary>How many points of solids it is above pasteurised white (11.03 %); below 0 where it is weaker.</summary>
    public double PointsAbovePasteurised => SolidsPercent.Likely - 100 * Powder.Forms.PasteurisedWhite.SolidsFraction.Likely;

    /// <summary>The white that it comes nearer to in solids, fresh or pasteurised.</summary>
    public EggForm Nearest => Math.Abs(PointsAboveFresh) <= Math.Abs(PointsAbovePasteurised) ? Powder.Forms.FreshWhite
        : Powder.Forms.PasteurisedWhite;

    /// <summary>What is made over what it is said to replace, by mass: 1 where the rule gives as much.</summary>
    public double MassShare => TotalGrams.Likely / ReplacesGrams;

    /// <summary>The solids that are made over those of the fresh white it is said to replace: 1 where the rule gives as much.</summary>
    public double SolidsShare => PowderGrams.Likely * Powder.SolidsFraction.Likely / (ReplacesGrams
        * Powder.Forms.FreshWhite.SolidsFraction.Likely);

    /// <summary>One line, such as <c>12 : 88 by mass: 12 g powder + 88 g water, 11.04 % solids</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Rule.Name}: {PowderGrams.Likely:0.##} g powder + {WaterGrams.Likely:0.##} g water, {SolidsPercent.Likely:0.00} % solids");

    private static double Percent(double powder, double water, double solids) => 100 * powder * solids / (powder + water);
}
