using Confectio.Ingredients;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>Where syrup boils, by both models, against published tables and against the equation solved another way.</summary>
public sealed class BoilingTests
{
    // GNU Units takes water to boil at 100 °C exactly.
    private static readonly AirPressure s_waterAt100 = AirPressure.FromBoilingWater(100);

    public static TheoryData<double> Pressures => [1, 5, 20, 60, 84.307, 101.325, 200];

    [Theory] // Starzak and Peacock (1997) with IF97, worked out by another program
    [InlineData(0.20, 101.325, 0.393, 0.02)]
    [InlineData(0.40, 101.325, 1.146, 0.05)]
    [InlineData(0.60, 101.325, 2.94, 0.1)]
    [InlineData(0.70, 101.325, 4.99, 0.15)]
    [InlineData(0.80, 101.325, 9.46, 0.3)]
    [InlineData(0.85, 101.325, 14.0, 0.4)]
    [InlineData(0.90, 101.325, 22.4, 0.8)]
    [InlineData(0.95, 101.325, 39.4, 2.5)]
    [InlineData(0.60, 20, 2.34, 0.1)]
    [InlineData(0.85, 84.307, 13.67, 0.4)]
    public void ElevationIsThatOfStarzakAndPeacock(double fraction, double kilopascals, double expected, double tolerance) =>
        Assert.Equal(expected, SugarSolution.OfSucrose(fraction).BoilingPointElevation(AirPressure.FromKilopascals(kilopascals)), tolerance);

    [Theory] // the same program to its last printed digit: per cent; 101.325, 84.307, 50 and 20 kPa; then Starzak and Mathlouthi at 101.325
    [InlineData(10, 0.17, 0.16, 0.15, 0.13, 0.17)]
    [InlineData(30, 0.70, 0.68, 0.63, 0.55, 0.71)]
    [InlineData(50, 1.82, 1.77, 1.64, 1.44, 1.87)]
    [InlineData(60, 2.94, 2.86, 2.65, 2.34, 3.01)]
    [InlineData(70, 4.99, 4.86, 4.51, 4.00, 5.10)]
    [InlineData(80, 9.46, 9.22, 8.59, 7.65, 9.57)]
    [InlineData(85, 14.02, 13.67, 12.75, 11.38, 14.00)]
    [InlineData(90, 22.43, 21.87, 20.42, 18.25, 21.96)]
    [InlineData(95, 39.40, 38.39, 35.76, 31.84, 37.27)]
    [InlineData(97, 49.44, 48.09, 44.58, 39.38, 45.35)]
    public void ElevationIsThatOfAnotherProgram(double percent, double sea, double mile, double half, double fifth, double mathlouthi)
    {
        SugarSolution syrup = SugarSolution.OfSucrose(percent / 100);
        Assert.All([(101.325, sea), (84.307, mile), (50, half), (20, fifth)], pair =>
            Assert.Equal(pair.Item2, syrup.BoilingPointElevation(AirPressure.FromKilopascals(pair.Item1)), 0.0061));
        Assert.Equal(mathlouthi, syrup.BoilingPointElevation(AirPressure.SeaLevel, BoilingModel.StarzakMathlouthi), 0.0061);
    }

    // The published equations as printed, x·γ(T)·p°(T) = P, solved by halving. The vapour pressure is held to the release elsewhere. The equation of
    // 2006 was fitted to 150 °C and bends beyond, so that its temperature term stays what it is there: a choice of ours.
    [Theory]
    [MemberData(nameof(Pressures))]
    public void TheBoilingPointSolvesThePublishedEquation(double kilopascals) => Assert.All(Enumerable.Range(1, 98), percent =>
    {
        double w = percent / 100.0, x = w / 342.30 / (w / 342.30 + (1 - w) / 18.015);
        Assert.Equal(Halve(t => (1 - x) * Math.Exp(-17638 / (8.314462618 * (t + 273.15)) * x * x * (1 - 1.0038 * x - 0.24653 * x * x))),
            SucroseSolution.BoilingCelsius(w, kilopascals), 1e-7);
        Assert.Equal(Halve(t => (1 - x) * Math.Exp(Mathlouthi((Math.Min(t, 150) + 273.15) / 298.15) * x * x * (1 - 1.9831 * x + 0.92730 * x * x))),
            SucroseSolution.BoilingCelsius(w, kilopascals, BoilingModel.StarzakMathlouthi), 1e-7);

        double Halve(Func<double, double> activity)
        {
            double low = 0, high = 250;
            for (int i = 0; i < 60; i++)
            {
                double middle = (low + high) / 2;
                (low, high) = activity(middle) * SaturatedWater.PressureKilopascals(middle) < kilopascals ? (middle, high) : (low, middle);
            }
            return low;
        }

        static double Mathlouthi(double t) => -268.59 / t - 861.42 - 1102.3 * Math.Log(t) + 1399.9 * t - 277.88 * t * t;
    });

    // GNU Units, all rows to 98 %: the closed form after the same authors. The equation itself is solved here; the two part as the form was
    // seen to: less than 0.01 K to 75 %, then 0.03, 0.08, 0.25 and 0.31 K. It was made for 100 °C, so the pressure is the one at which
    // water boils there.
    [Theory]
    [InlineData(0, 75, 0.002)]
    [InlineData(76, 85, 0.03)]
    [InlineData(85.5, 90, 0.08)]
    [InlineData(90.5, 95, 0.25)]
    [InlineData(95.5, 98, 0.31)]
    public void ElevationIsNearTheClosedForm(double from, double to, double bound) => Syrups.Within(bound,
        SugarOracles.GnuUnitsBoiling.Where(row => row.Percent >= from && row.Percent <= to),
        row => SugarSolution.OfSucrose(row.Percent / 100).BoilingPointElevation(s_waterAt100) - row.ElevationKelvin);

    // Beyond 98 % the closed form climbs without meaning, and nothing is worked out here.
    [Fact]
    public void NothingIsSaidWhereTheClosedFormRunsAway() => Assert.All(SugarOracles.GnuUnitsBoiling.Where(row => row.Percent > 98), row =>
        Assert.Throws<InvalidOperationException>(() => SugarSolution.OfSucrose(row.Percent / 100).BoilingCelsius(AirPressure.SeaLevel)));

    // A textbook's table in whole degrees, its source not named and its pressure not stated; rows to 98 %. Named disagreement: 80 % at 112
    // °C is 2.5 K above the equation (109.5), whose own error is 0.3 K there. The rest is within a degree and its rounding; 97 % at 151 is
    // 1.6 K above, where the two models differ by 4.
    [Fact]
    public void TheTextbookAgreesButForOneRow()
    {
        double Off((double Celsius, double Percent) row) => row.Celsius - SucroseSolution.BoilingCelsius(row.Percent / 100, s_waterAt100.Kilopascals);
        Syrups.Within(1.1, SugarOracles.TextbookBoiling.Where(row => row.Percent <= 95 && row.Percent != 80), Off);
        Assert.InRange(Off(SugarOracles.TextbookBoiling.Single(row => row.Percent == 80)), 2.4, 2.7);
        Assert.InRange(Off(SugarOracles.TextbookBoiling.Single(row => row.Percent == 97)), 1.4, 1.7);
    }

    [Theory] // °F; from both equations by another program: per cent by Starzak and Peacock, by Starzak and Mathlouthi
    [InlineData(215, 48.4, 47.9)]
    [InlineData(230, 80.8, 80.7)]
    [InlineData(240, 86.2, 86.3)]
    [InlineData(250, 89.4, 89.6)]
    [InlineData(266, 92.7, 93.0)]
    [InlineData(290, 95.8, 96.5)]
    [InlineData(300, 96.9, 97.9)]
    public void StrengthAtATemperature(double fahrenheit, double peacock, double mathlouthi)
    {
        double celsius = Syrups.ToCelsius(fahrenheit);
        Assert.Equal(peacock, 100 * SucroseSolution.FractionBoilingAt(celsius, 101.325), 0.051);
        Assert.Equal(mathlouthi, 100 * SucroseSolution.FractionBoilingAt(celsius, 101.325, BoilingModel.StarzakMathlouthi), 0.051);
    }

    [Theory] // °F for per cent at altitudes: the same program; its altitudes are geopotential, 0.02 °F at 10 000 feet
    [InlineData(80, 229.0, 225.2, 219.4, 214.6, 209.8)]
    [InlineData(85, 237.2, 233.3, 227.4, 222.5, 217.6)]
    [InlineData(90, 252.3, 248.3, 242.2, 237.1, 232.0)]
    [InlineData(95, 282.9, 278.5, 271.9, 266.5, 261.0)]
    [InlineData(97, 300.9, 296.3, 289.4, 283.6, 277.8)]
    public void BoilingPointAtAltitude(double percent, double sea, double feet2000, double feet5000, double feet7500, double feet10000) =>
        Assert.All([(0, sea), (2000, feet2000), (5000, feet5000), (7500, feet7500), (10000, feet10000)], pair => Assert.Equal(pair.Item2,
            Syrups.ToFahrenheit(SugarSolution.OfSucrose(percent / 100).BoilingCelsius(AirPressure.FromAltitudeFeet(pair.Item1)).Likely), 0.071));

    // The elevation shrinks with the pressure: whoever carries that of sea level up to 5000 feet cooks 85 % syrup 0.35 K too hot.
    [Fact]
    public void TheElevationOfSeaLevelIsTooMuchInTheMountains()
    {
        SugarSolution syrup = SugarSolution.OfSucrose(0.85);
        Assert.Equal(0.35, syrup.BoilingPointElevation(AirPressure.SeaLevel) - syrup.BoilingPointElevation(AirPressure.FromAltitudeFeet(5000)), 0.005);
    }

    // 60 % in a vacuum pan of 20 kPa.
    [Fact]
    public void TheVacuumPan() => Assert.Equal(62.40, SucroseSolution.BoilingCelsius(0.60, 20), 0.15);

    // No measured table of glucose was found. Two models side by side: Norrish with the constant of 25 °C (2.25), by another program, is
    // known to say too much in strong and hot syrup; the default model lets the strength fade with heat as that of sucrose does. It is 2 %
    // lower at 40 % and 9 % at 70. Crapiste and Lozano (1988, coefficients from memory) would have 4.85 at 60 %, between the two.
    [Theory]
    [InlineData(40, 2.07)]
    [InlineData(50, 3.22)]
    [InlineData(60, 5.07)]
    [InlineData(70, 8.34)]
    public void GlucoseIsBelowNorrishByATenthAtMost(double percent, double norrish) =>
        Assert.InRange(Syrups.Of(Constituent.Glucose, percent / 100).BoilingPointElevation(AirPressure.SeaLevel), 0.9 * norrish, norrish);

    [Theory] // the coefficients of the second model are from memory: it meets the first, which is not, to 85 %
    [InlineData(0, 85, 0.13)]
    [InlineData(86, 90, 0.5)]
    [InlineData(91, 95, 2.2)]
    [InlineData(96, 97, 4.1)]
    public void TheTwoModelsAgreeBelow85(int from, int to, double bound) => Syrups.Within(bound, Enumerable.Range(from, to - from + 1),
        percent => SucroseSolution.BoilingCelsius(percent / 100.0, 101.325, BoilingModel.StarzakMathlouthi)
            - SucroseSolution.BoilingCelsius(percent / 100.0, 101.325));

    [Theory] // temperature to strength to temperature; the solver stops at 1e-11 of the temperature
    [MemberData(nameof(Pressures))]
    public void TheStrengthComesBackFromTheTemperature(double kilopascals) => Assert.All(Enum.GetValues<BoilingModel>(), model =>
    {
        for (int percent = 1; percent <= 98; percent++)
        {
            double fraction = percent / 100.0, celsius = SucroseSolution.BoilingCelsius(fraction, kilopascals, model);
            double back = SucroseSolution.FractionBoilingAt(celsius, kilopascals, model);
            Assert.Equal(fraction, back, 1e-8);
            Assert.Equal(celsius, SucroseSolution.BoilingCelsius(back, kilopascals, model), 1e-8);
            // An activity is worked out to 220 °C.
            if (celsius <= 220)
                Assert.Equal(kilopascals / SaturatedWater.PressureKilopascals(celsius), SucroseSolution.WaterActivity(fraction, celsius, model), 1e-9);
        }
    });

    [Theory]
    [MemberData(nameof(Pressures))]
    public void TheBoilingPointRisesWithStrengthAndPressure(double kilopascals) => Assert.All(Enum.GetValues<BoilingModel>(), model =>
    {
        Assert.Equal(SaturatedWater.BoilingCelsius(kilopascals), SucroseSolution.BoilingCelsius(0, kilopascals, model), 1e-9);
        Assert.Equal(0, SugarSolution.PureWater.BoilingPointElevation(AirPressure.FromKilopascals(kilopascals), model), 1e-9);
        double last = double.MinValue;
        for (int percent = 0; percent <= 98; percent++)
        {
            double celsius = SucroseSolution.BoilingCelsius(percent / 100.0, kilopascals, model);
            Assert.True(celsius > last);
            Assert.True(kilopascals >= 200 || celsius < SucroseSolution.BoilingCelsius(percent / 100.0, kilopascals + 0.5, model));
            last = celsius;
        }
    });

    [Fact] // plain numbers, columns and solutions are the same arithmetic
    public void AColumnAndASolutionGiveTheSame()
    {
        double[] fractions = [.. Enumerable.Range(0, 99).Select(percent => percent / 100.0)], celsius = new double[fractions.Length];
        SucroseSolution.BoilingCelsius(fractions, 84, celsius);
        for (int i = 0; i < fractions.Length; i++)
        {
            Assert.Equal(celsius[i], SucroseSolution.BoilingCelsius(fractions[i], 84));
            Assert.Equal(celsius[i], SugarSolution.OfSucrose(fractions[i]).BoilingCelsius(AirPressure.FromKilopascals(84), BoilingModel.StarzakPeacock), 1e-9);
        }
    }

    // The spread has both models in it, and the two rules for mixtures; it widens where they part.
    [Fact]
    public void TheSpreadHoldsBothModels()
    {
        double last = 0;
        for (int percent = 10; percent <= 97; percent += 3)
        {
            SugarSolution syrup = SugarSolution.OfSucrose(percent / 100.0);
            Spread spread = syrup.BoilingCelsius(AirPressure.SeaLevel);
            Assert.Equal(syrup.BoilingCelsius(AirPressure.SeaLevel, BoilingModel.StarzakPeacock), spread.Likely, 1e-9);
            Assert.All(Enum.GetValues<BoilingModel>(), model => Assert.True(spread.Contains(syrup.BoilingCelsius(AirPressure.SeaLevel, model))));
            Assert.True(spread.High - spread.Low > last);
            last = spread.High - spread.Low;
        }
        // Σ Kᵢ·xᵢ² is weaker than (Σ √Kᵢ·xᵢ)²: a mixture has more below than its 2 %.
        SugarSolution mixture = Syrups.Mixture(0.40, Constituent.Glucose, 0.25);
        Spread mixed = mixture.BoilingCelsius(AirPressure.SeaLevel);
        Assert.True(mixed.Likely - mixed.Low > 0.03 * (mixed.Likely - AirPressure.SeaLevel.WaterBoilsCelsius));
    }

    // The secant once leapt out of the range of water here and gave no number.
    [Theory]
    [InlineData(0.98)]
    [InlineData(0.99)]
    public void AStrongMaltodextrinHasABoilingPoint(double solids)
    {
        SugarSolution dextrin = SugarSolution.Of(IngredientTable.BuiltIn.Get("maltodextrin-de10")).WithSolids(solids);
        foreach (BoilingModel model in Enum.GetValues<BoilingModel>())
        {
            double celsius = dextrin.BoilingCelsius(AirPressure.SeaLevel, model);
            Assert.Equal(101.325, SaturatedWater.PressureKilopascals(celsius) * dextrin.WaterActivityAllDissolved(celsius, model == BoilingModel.StarzakPeacock
                ? WaterActivityModel.StarzakPeacock : WaterActivityModel.StarzakMathlouthi), 1e-7);
        }
    }
}
