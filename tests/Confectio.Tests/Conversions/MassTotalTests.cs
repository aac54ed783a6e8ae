using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Conversions;

/// <summary>Totals of converted masses: a density used twice is wrong twice in the same direction.</summary>
public sealed class MassTotalTests
{
    // Two powders of 0.5 g/mL whose density is uncertain by 6 % (a sifted powder) and no more: the last digit is a microgram.
    private static readonly IngredientTable s_powders = Powders();

    private static IngredientTable Powders()
    {
        IngredientTable table = IngredientTable.Empty
            .LayerIngredients(new StringReader("id,name,class,default_packing,starch_percent,source,kind\none,one,powder,sifted,100,own,measured\ntwo,two,powder,sifted,100,own,measured\n")).Told(out IReadOnlyList<Problem> first)!
            .LayerWeights(new StringReader("ingredient,amount,packing,grams,kind,source\none,100 mL,sifted,50.000000,measured,own\ntwo,100 mL,sifted,50.000000,measured,own\n")).Told(out IReadOnlyList<Problem> second)!;
        Assert.Empty(first.Concat(second));
        return table;
    }

    private static Conversion Of(string id, double tolerance = 0) =>
        Conversion.Of(s_powders.Get(id), Packing.Sifted, MeasuringSystem.Metric, new ConversionOptions { ToolTolerance = tolerance });

    // What a mass of u(ln m) = 2 u above and below by: m (e^2u - 1) and m (1 - e^-2u).
    private static double Above(double grams, double u) => grams * (Math.Exp(2 * u) - 1);

    private static double Below(double grams, double u) => grams * (1 - Math.Exp(-2 * u));

    private static double Root(params double[] ways) => Math.Sqrt(ways.Sum(way => way * way));

    [Fact]
    public void OneDensityTwiceAddsUpInFull()
    {
        // 100 g and 50 g of u = 6 % are 150 g of 6 %.
        Spread total = MassTotal.Of([Of("one").ToMass(200.0), Of("one").ToMass(100.0)]);
        Assert.Equal(150, total.Likely, 1e-12);
        Assert.Equal(150 * Math.Exp(0.12), total.High, 1e-5);
        Assert.Equal(150 * Math.Exp(-0.12), total.Low, 1e-5);
    }

    [Fact]
    public void TwoDensitiesAddUpBySquares()
    {
        Spread total = MassTotal.Of([Of("one").ToMass(200.0), Of("two").ToMass(100.0)]);
        Assert.Equal(150 + Root(Above(100, 0.06), Above(50, 0.06)), total.High, 1e-5);
        Assert.Equal(150 - Root(Below(100, 0.06), Below(50, 0.06)), total.Low, 1e-5);
    }

    [Fact]
    public void TheToolsAreOneSet()
    {
        // u(ln V) = 10 %/√3 beside u(ln ρ) = 6 %, together u: each part has its share of the way, as of the variance.
        double tool = 0.1 / Math.Sqrt(3), u = Root(tool, 0.06);
        Spread total = MassTotal.Of([Of("one", 0.1).ToMass(200.0), Of("two", 0.1).ToMass(100.0)]);
        Assert.Equal(150 + Root(Above(150, u) * tool / u, Above(100, u) * 0.06 / u, Above(50, u) * 0.06 / u), total.High, 1e-5);
    }

    [Fact]
    public void TheUncertaintyIsThatOfTheMatrices()
    {
        // J U Jᵀ (JCGM 100:2008, 5.2.2) in full: the variables are ln ρ of each of three densities, ln V of the tools, and the
        // place in its range of each amount that is one; J holds the derivative of each line by each variable.
        IngredientTable table = IngredientTable.BuiltIn;
        ConversionOptions tools = new() { ToolTolerance = 0.05 };
        Conversion sugar = Conversion.Of(table.Get("granulated sugar"), Packing.Levelled, MeasuringSystem.UsCustomary, tools);
        Conversion sugarAgain = Conversion.Of(table.Get("granulated sugar"), Packing.Levelled, MeasuringSystem.Metric, tools);
        Conversion icing = Conversion.Of(table.Get("icing sugar"), Packing.Sifted, MeasuringSystem.UsCustomary, tools);
        Conversion butter = Conversion.Of(table.Get("unsalted butter"), Packing.Packed, MeasuringSystem.UsCustomary, tools);
        ConvertedMass[] lines =
        [
            sugar.ToMass(Amount.Parse("2 cups")), sugarAgain.ToMass(Amount.Parse("3 Tbsp")), icing.ToMass(Amount.Parse("1 1/2 cups")),
            butter.ToMass(Amount.Parse("1 cup")), sugar.ToMass(Amount.Parse("2-3 tsp")),
        ];
        double m0 = lines[0].Grams.Likely, m1 = lines[1].Grams.Likely, m2 = lines[2].Grams.Likely, m3 = lines[3].Grams.Likely, m4 = lines[4].Grams.Likely;
        double range = sugar.ToMass(Amount.Parse("3 tsp")).Grams.Likely - sugar.ToMass(Amount.Parse("2 tsp")).Grams.Likely;
        double[,] jacobian =
        {
            // ln ρ sugar, ln ρ icing sugar, ln ρ butter, ln V, place in the range
            { m0, 0, 0, m0, 0 },
            { m1, 0, 0, m1, 0 },
            { 0, m2, 0, m2, 0 },
            { 0, 0, m3, m3, 0 },
            { m4, 0, 0, m4, range },
        };
        double[] variances =
        [
            Math.Pow(sugar.Density.LogUncertainty, 2), Math.Pow(icing.Density.LogUncertainty, 2), Math.Pow(butter.Density.LogUncertainty, 2),
            0.05 * 0.05 / 3, 1.0 / 12,
        ];
        // Each line reaches up by its own way, which is not 2u for a spread that is not the same both ways.
        double[] reach = [.. lines.Select(line => (line.Grams.High - line.Grams.Likely) / (2 * line.Grams.StandardUncertainty)
            * Math.Max(1, 4 * line.Grams.StandardUncertainty / (line.Grams.High - line.Grams.Low)))];
        for (int row = 0; row < lines.Length; row++)
        {
            for (int column = 0; column < variances.Length; column++)
                jacobian[row, column] *= reach[row];
        }
        double variance = 0;
        for (int row = 0; row < lines.Length; row++)
        {
            for (int column = 0; column < lines.Length; column++)
            {
                for (int k = 0; k < variances.Length; k++)
                    variance += jacobian[row, k] * variances[k] * jacobian[column, k];
            }
        }
        Spread total = MassTotal.Of(lines);
        Assert.Equal(m0 + m1 + m2 + m3 + m4, total.Likely, 1e-9);
        Assert.Equal(2 * Math.Sqrt(variance), total.High - total.Likely, 1e-9);
    }

    [Fact]
    public void APieceBringsItsOwnUncertaintyAndNoDensity()
    {
        // USDA SR 01145: a stick of 113 g, rounded to a gram: u = 1/√12 g. The density of packed butter has no part in it.
        ConvertedMass stick = Conversion.Of(IngredientTable.BuiltIn.Get("unsalted butter"), Packing.Packed, MeasuringSystem.UsCustomary).ToMass(Amount.Parse("1 stick"));
        Assert.Equal(1 / Math.Sqrt(12), stick.Grams.StandardUncertainty, 1e-12);
        Assert.Equal(stick.Grams, MassTotal.Of([stick]));
        // Two sorts of stick are off by 2u each, by squares: 2/√12 · √2 g, which is less than both at the worst, 1 g.
        Assert.Equal(226 + Math.Sqrt(2) / Math.Sqrt(3), MassTotal.Of([stick, stick]).High, 1e-9);
    }

    [Fact]
    public void AMassThatWasWeighedAddsNoUncertainty()
    {
        Conversion one = Of("one");
        Spread total = MassTotal.Of([one.ToMass(200.0), one.ToMass(Amount.Parse("400 g"))]);
        Assert.Equal(500, total.Likely, 1e-12);
        Assert.Equal(500 + Above(100, 0.06), total.High, 1e-5);
    }

    [Fact]
    public void TheTotalOfOneIsItself()
    {
        ConvertedMass mass = Of("one", 0.05).ToMass(200.0);
        Assert.Equal(mass.Grams.High, MassTotal.Of([mass]).High, 1e-9);
        Assert.Equal(mass.Grams.Low, MassTotal.Of([mass]).Low, 1e-9);
    }

    [Fact]
    public void NothingAddsUpToNothingAndLowIsNeverNegative()
    {
        Assert.Equal(new Spread(0, 0, 0), MassTotal.Of([]));
        Assert.Equal(new Spread(0, 0, 0), MassTotal.Of([default, default]));
        Assert.Throws<ArgumentNullException>("masses", () => MassTotal.Of(null!));
        Spread wide = MassTotal.Of([Of("one").ToMass(Amount.Parse("0-200 mL"))]);
        Assert.Equal(0, wide.Low);
        Assert.Equal(50, wide.Likely, 1e-9);
    }
}
