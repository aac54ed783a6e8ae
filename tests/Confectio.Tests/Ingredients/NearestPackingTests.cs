using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>A packing that nobody weighed falls back to the nearest that was, widened, and says so.</summary>
public sealed class NearestPackingTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    private static Ingredient Get(string name) => s_table.Get(name);

    [Fact]
    public void SoftenedButterIsPackedButterAndWider()
    {
        BulkDensity packed = Get("unsalted butter").Density(Packing.Packed), softened = Get("unsalted butter").NearestDensity(Packing.Softened);
        Assert.Equal(Packing.Packed, softened.TakenFrom);
        Assert.Equal(Packing.Softened, softened.Packing);
        Assert.Equal(packed.GramsPerMillilitre.Likely, softened.GramsPerMillilitre.Likely, 1e-9);
        Assert.Equal(Math.Sqrt(packed.LogUncertainty * packed.LogUncertainty + 0.015 * 0.015), softened.LogUncertainty, 1e-12);
        Assert.True(softened.GramsPerMillilitre.Low < packed.GramsPerMillilitre.Low && softened.GramsPerMillilitre.High > packed.GramsPerMillilitre.High);
        Assert.Contains("softened, taken as packed", softened.ToString(), StringComparison.Ordinal);
        Assert.Same(softened, Get("unsalted butter").NearestDensity(Packing.Softened));
        Assert.Null(packed.TakenFrom);
    }

    [Fact]
    public void TheFallbackTravels()
    {
        Conversion conversion = Conversion.Of(Get("unsalted butter"), Packing.Softened, MeasuringSystem.UsCustomary);
        const string Says = "Nobody weighed unsalted butter softened; the nearest known packing, packed, was taken, and the spread widened.";
        Assert.Contains(Says, conversion.Cautions);
        Assert.Equal("unsalted butter, softened, taken as packed, US customary", conversion.ToString());

        Formula formula = Formula.ParseText("Fennmarsh Hall", "2 cups butter, softened", s_table, MeasuringSystem.UsCustomary);
        Assert.Equal(454, formula.TotalGrams, 0.02 * 454); // twice the 227 g of USDA SR 01145; other sources say a little less
        Assert.Contains(formula.Lines[0].Measured!.Value.By!.Cautions, caution => caution.Contains("the nearest known packing, packed, was taken", StringComparison.Ordinal));

        TableVerdict verdict = ConversionTableVetter.Vet(new StringReader("ingredient,measure,packing,grams\nunsalted butter,1 cup,softened,227\nunsalted butter,2 cups,packed,454\ngranulated sugar,1 cup,,200\nwater,1 cup,,237\nhoney,1 cup,,339\n"), IngredientTable.BuiltIn);
        RowFinding row = verdict.Rows[0];
        Assert.Equal(Verdict.Agrees, row.Verdict);
        Assert.Equal(Packing.Packed, row.ExpectedPackingTakenFrom);
        Assert.Contains("taken from packed because nobody weighed it softened", row.Explanation, StringComparison.Ordinal);
        Assert.Null(verdict.Rows[1].ExpectedPackingTakenFrom);
    }

    [Theory]
    [InlineData("unsalted butter", Packing.Sifted, "does not go through a sieve")]
    [InlineData("plain flour", Packing.Melted, "measured dry")]
    [InlineData("granulated sugar", Packing.Sliced, "not cut into pieces")]
    [InlineData("water", Packing.Packed, "finds its own level")]
    [InlineData("almonds", Packing.Sifted, "do not go through a sieve")]
    [InlineData("almonds", Packing.Pureed, "closes the gaps")]
    [InlineData("honey", Packing.Whipped, "how much air")]
    public void WhatMakesNoSenseSaysSo(string name, Packing packing, string why)
    {
        Assert.False(Get(name).TryGetNearestDensity(packing, out _));
        ArgumentException thrown = Assert.Throws<ArgumentException>(nameof(packing), () => Conversion.Of(Get(name), packing, MeasuringSystem.UsCustomary));
        Assert.Contains(why, thrown.Message, StringComparison.Ordinal);
        Assert.Contains("known packings:", thrown.Message, StringComparison.Ordinal);
    }

    /// <summary>Every packing of every ingredient: weighed, taken from one that was and wider, or refused for a reason.</summary>
    [Fact]
    public void EveryPackingOfEveryIngredient()
    {
        foreach (Ingredient food in s_table.All)
        {
            foreach (Packing packing in Enum.GetValues<Packing>())
            {
                string what = $"{food.Name}, {packing}";
                bool weighed = food.TryGetDensity(packing, out BulkDensity? own), found = food.TryGetNearestDensity(packing, out BulkDensity? nearest);
                if (weighed)
                {
                    Assert.Same(own, nearest);
                    continue;
                }
                if (!found)
                {
                    // Without a reason of the class there is nothing weighed to take it from.
                    Assert.True(PackingNearness.WhySenseless(food.Class, packing) is not null
                        || food.Densities.All(known => PackingNearness.Steps(food.Class, known.Packing, packing) is null), what);
                    continue;
                }
                BulkDensity basis = food.Density(nearest!.TakenFrom!.Value);
                Assert.Null(PackingNearness.WhySenseless(food.Class, packing));
                // Times the mean ratio of the foods that have both, where there are such; else as it is.
                double ratio = PackingRatios.TryGet(food.Class, basis.Packing, packing, 1, out double log, out _, out _) ? Math.Exp(log) : 1;
                Assert.Equal(basis.GramsPerMillilitre.Likely * ratio, nearest.GramsPerMillilitre.Likely, 1e-12);
                Assert.True(nearest.LogUncertainty > basis.LogUncertainty, what);
                Assert.True(nearest.GramsPerMillilitre.Low < basis.GramsPerMillilitre.Low * ratio && nearest.GramsPerMillilitre.High > basis.GramsPerMillilitre.High * ratio, what);
                // No other weighed packing leaves less uncertainty.
                Assert.All(food.Densities, known => Assert.False(PackingNearness.Take(food.Class, known, packing)?.LogUncertainty < nearest.LogUncertainty, what));
            }
        }
    }

    /// <summary>
    /// The rule beside what was weighed: each figure in two packings is foretold from the other. 19 of 20 of the ranges of two
    /// standard uncertainties should hold it.
    /// </summary>
    [Fact]
    public void WhatWasWeighedLiesWithinWhatTheRuleForetells()
    {
        int all = 0, held = 0;
        List<string> missed = [];
        foreach (Ingredient food in s_table.All)
        {
            foreach (BulkDensity from in food.Densities)
            {
                foreach (BulkDensity to in food.Densities)
                {
                    if (from == to || PackingNearness.Take(food.Class, from, to.Packing) is not BulkDensity taken)
                        continue;
                    all++;
                    if (taken.GramsPerMillilitre.Contains(to.GramsPerMillilitre.Likely))
                        held++;
                    else
                        missed.Add($"{food.Name}: {from.Packing} {from.GramsPerMillilitre.Likely:0.000} for {to.Packing} {to.GramsPerMillilitre.Likely:0.000}");
                }
            }
        }
        Assert.True(all >= 40, $"{all} pairs");
        Assert.True(held >= 0.95 * all, $"{held} of {all}; " + string.Join("; ", missed));
    }
}
