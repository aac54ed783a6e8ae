using Confectio.Formulas;
using Confectio.Ingredients;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Formulas;

/// <summary>No mass and no constituent is made or lost, whatever is done to a formula.</summary>
public sealed class FormulaConservation
{
    private const int Constituents = (int)Constituent.Other + 1;

    // A formula has at most 12 lines here, and every mass goes through fewer than 100 roundings of 1.1e-16.
    private const double Relative = 1e-12;

    [Property(Arbitrary = [typeof(FormulaGenerators)], MaxTest = 500)]
    public void ScalingMultipliesEverything(Formula formula, ScaleFactor factor) => AssertTimes(formula, factor.Value, formula.Scale(factor.Value));

    [Property(Arbitrary = [typeof(FormulaGenerators)], MaxTest = 500)]
    public void ScalingToAMassReachesIt(Formula formula, ScaleFactor grams)
    {
        Formula scaled = formula.ScaleToMass(grams.Value);
        Assert.Equal(grams.Value, scaled.TotalGrams, Relative * scaled.PutInGrams);
        AssertTimes(formula, grams.Value / formula.TotalGrams, scaled);
    }

    [Property(Arbitrary = [typeof(FormulaGenerators)], MaxTest = 200)]
    public void ScalingToPiecesReachesTheirMass(Formula formula, ScaleFactor each)
    {
        Formula scaled = formula.ScaleToPieces(48, each.Value);
        Assert.Equal(48 * each.Value, scaled.TotalGrams, Relative * scaled.PutInGrams);
        AssertTimes(formula, 48 * each.Value / formula.TotalGrams, scaled);
    }

    [Property(Arbitrary = [typeof(FormulaGenerators)], MaxTest = 500)]
    public void ScalingToAnIngredientTakesWhatThereIsOfIt(Formula formula, ScaleFactor grams)
    {
        Ingredient ingredient = formula.Lines[0].Ingredient;
        if (grams.Value / formula.GramsOf(ingredient) * formula.PutInGrams > 1e12)
            return; // another line would be beyond what a line may have
        Formula scaled = formula.ScaleToIngredient(ingredient, grams.Value);
        Assert.Equal(grams.Value, (scaled.GramsOf(ingredient) ?? 0), Relative * grams.Value);
        AssertTimes(formula, grams.Value / (formula.GramsOf(ingredient) ?? 0), scaled);
    }

    [Property(Arbitrary = [typeof(FormulaGenerators)], MaxTest = 500)]
    public void MergingAddsUp(Formula first, Formula second)
    {
        double[] a = Masses(first), b = Masses(second), sum = Masses(Formula.Merge("both", first, second));
        for (int i = 0; i < sum.Length; i++)
            Assert.Equal(a[i] + b[i], sum[i], Relative * (a[i] + b[i]));
    }

    [Property(Arbitrary = [typeof(FormulaGenerators)], MaxTest = 500)]
    public void CombiningKeepsEveryMassAndHasEachIngredientOnce(Formula formula)
    {
        Formula combined = formula.Combined();
        AssertTimes(formula, 1, combined);
        Assert.Equal(formula.Lines.Select(line => line.Ingredient).Distinct(), combined.Lines.Select(line => line.Ingredient));
        Assert.All(combined.Lines, line => Assert.Equal((formula.GramsOf(line.Ingredient) ?? 0), line.Grams.Likely, Relative * line.Grams.Likely));
    }

    [Property(Arbitrary = [typeof(FormulaGenerators)], MaxTest = 500)]
    public void PercentagesStayWhenScaledAndAddUpTo100(Formula formula, ScaleFactor factor)
    {
        IReadOnlyList<double> before = formula.PercentOf(FormulaPart.Everything), after = formula.Scale(factor.Value).PercentOf(FormulaPart.Everything);
        Assert.Equal(100, before.Sum(), 1e-10);
        Assert.Equal(before, after, (x, y) => Math.Abs(x - y) <= 100 * Relative);
    }

    [Property(Arbitrary = [typeof(FormulaGenerators)], MaxTest = 300)]
    public void TheBalanceHasEveryConstituentAndItsGramsAreItsShareOfTheTotal(Formula formula)
    {
        Balance balance = Balance.Of(formula);
        double[] masses = Masses(formula);
        for (int i = 0; i < Constituents; i++)
        {
            BalanceItem item = balance[FormulaPart.Of((Constituent)i)];
            // What boils off may leave next to nothing of the water: the rounding is that of what was put in.
            Assert.Equal(masses[i], item.Grams.Likely, Relative * formula.PutInGrams);
            Assert.Equal(Math.Clamp(masses[i] / formula.TotalGrams, 0, 1), item.Fraction.Likely, Relative * formula.PutInGrams / formula.TotalGrams);
        }
        BalanceItem everything = balance[FormulaPart.Everything];
        Assert.Equal(1, everything.Fraction.Likely, Relative * formula.PutInGrams / formula.TotalGrams);
        Assert.Equal(formula.TotalGrams, everything.Grams.Likely, Relative * formula.PutInGrams);
    }

    [Property(Arbitrary = [typeof(FormulaGenerators)], MaxTest = 300)]
    public void AMeasuredLineScalesWithItsSpread(Formula formula, ScaleFactor factor)
    {
        Formula scaled = formula.Scale(factor.Value);
        foreach ((FormulaLine before, FormulaLine after) in formula.Lines.Zip(scaled.Lines))
        {
            if (after.AsWritten is null)
            {
                Assert.Equal(after.Grams.Likely, after.Grams.High);
                continue;
            }
            Assert.Equal(after.Grams.Likely, after.Grams.Likely);
            Assert.Equal(before.Grams.Low * factor.Value, after.Grams.Low, Relative * after.Grams.Likely);
            Assert.Equal(before.Grams.High * factor.Value, after.Grams.High, Relative * after.Grams.High);
            // The amount that is kept weighs what the line says.
            FormulaLine again = FormulaLine.Of(after.Ingredient, after.AsWritten.Value, after.MeasuringSystem!, after.Packing);
            Assert.Equal(again.Grams.Likely, after.Grams.Likely, 2e-12 * after.Grams.Likely);
        }
    }

    private static void AssertTimes(Formula before, double factor, Formula after)
    {
        double[] a = Masses(before), b = Masses(after), scale = Masses(before, boiledOff: false);
        for (int i = 0; i < a.Length; i++)
            Assert.Equal(a[i] * factor, b[i], Relative * scale[i] * factor);
    }

    // The mass of each constituent, and the total last, without going through parts or balances.
    private static double[] Masses(Formula formula, bool boiledOff = true)
    {
        double[] masses = new double[Constituents + 1];
        foreach (FormulaLine line in formula.Lines)
        {
            masses[Constituents] += line.Grams.Likely;
            for (int i = 0; i < Constituents; i++)
                masses[i] += line.Grams.Likely * line.Ingredient.Composition[(Constituent)i];
        }
        if (boiledOff)
        {
            masses[(int)Constituent.Water] -= formula.BoiledOffGrams;
            masses[Constituents] -= formula.BoiledOffGrams;
        }
        return masses;
    }
}
