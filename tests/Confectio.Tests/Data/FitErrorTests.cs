using Confectio.Ingredients;
using Confectio.Sugars;
using Confectio.Tests.Sugars;
using Xunit;

namespace Confectio.Tests.Data;

/// <summary>
/// The errors of the fits that were made for this library, worked out again from the tables in Oracles/sugar-solutions: each is the
/// greatest there is within
/// the range of the row, rounded up, and no more than a fifth above it.
/// </summary>
public sealed class FitErrorTests
{
    private static readonly Constituent[] s_inTheHandbook =
        [Constituent.Glucose, Constituent.Fructose, Constituent.Maltose, Constituent.Glycerol, Constituent.Lactose, Constituent.Polyols,
            Constituent.Acids];

    // CRC Handbook, 102nd edition (2021), concentrative properties of aqueous solutions, 20 °C.
    [Fact]
    public void DensitiesOfOtherSolutes() => Assert.All(s_inTheHandbook, solute =>
        Meets("density-others", solute, row => SolutionOf(row).GramsPerMillilitre(20) - row.DensityGramsPerMillilitre));

    [Fact]
    public void IndicesOfOtherSolutes() => Assert.All(s_inTheHandbook, solute =>
        Meets("refraction-mixtures", solute, row => SolutionOf(row).RefractiveIndex(20) - row.RefractiveIndex));

    [Fact] // the ranges are those of the handbook's rows, or narrower
    public void NoRangeIsWiderThanTheRowsItWasFittedTo() => Assert.All(s_inTheHandbook, solute =>
    {
        double[] there = [.. SugarOracles.Aqueous.Where(row => Syrups.Named(row.Solute) == solute).Select(row => row.MassPercent)];
        Assert.All(["density-others", "refraction-mixtures"], equation => Assert.True(Of(equation,
            solute).Highest * 100 <= there.Max() + 1e-9));
    });

    [Fact] // ICUMSA 1974
    public void IndexOfSucrose() => Close(Of("refraction-sucrose", Constituent.Sucrose),
        SugarOracles.Icumsa1974.Max(row => Math.Abs(Brix.FromPercent(row.Percent).RefractiveIndex!.Value - row.RefractiveIndex)));

    [Fact] // NBS Circular 440, Table 114
    public void DegreesPlato() => Close(Of("plato", Constituent.Sucrose),
        SugarOracles.C440Table114.Where(row => row.Percent > 0).Max(row =>
            Math.Abs(Brix.FromApparentSpecificGravity(row.SpecificGravity).Plato - row.Percent)));

    private static void Meets(string equation, Constituent solute, Func<AqueousRow, double> off)
    {
        Coefficient row = Of(equation, solute);
        AqueousRow[] rows = [.. SugarOracles.Aqueous.Where(known => Syrups.Named(known.Solute) == solute
            && known.MassPercent >= row.Lowest * 100 - 1e-9 && known.MassPercent <= row.Highest * 100 + 1e-9)];
        Assert.True(rows.Length >= 5);
        Close(row, rows.Max(known => Math.Abs(off(known))));
    }

    private static void Close(Coefficient row, double greatest) => Assert.True(greatest <= row.FitError && greatest > row.FitError / 1.2,
        FormattableString.Invariant($"{row}: the table says {row.FitError}, the oracle {greatest}"));

    private static SugarSolution SolutionOf(AqueousRow row) => Syrups.Of(row);

    private static Coefficient Of(string equation, Constituent solute) =>
        Equation.Get(equation).Coefficients.First(row => row.Substance.Constituent == solute && (solute == Constituent.Sucrose
            || row.Name is "v0" or "r0"));
}
