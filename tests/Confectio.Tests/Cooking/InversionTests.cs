using Confectio.Cooking;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Tests.Sugars;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Cooking;

/// <summary>Inversion by acid: Vukov's rate beside measurements that are not his, and its sum over a log of temperatures.</summary>
public sealed class InversionTests
{
    private static readonly AirPressure s_sea = AirPressure.SeaLevel;

    // Guggenheim and Wiseman (1950), read in the abstract: 24.7 °C, 0.1 mol/L of hydrochloric acid, k·10⁴ = 7.13 + 0.97e-2·S in a minute, S in g/L. At
    // 30 g/L that is 7.42e-4. A litre of that solution has about 0.98 kg of water, and the pH is taken as −log c = 1.
    [Fact]
    public void VukovMeetsGuggenheimAndWiseman()
    {
        double published = (7.13 + 0.97e-2 * 30) * 1e-4;
        Assert.Equal(7.42e-4, published, 0.01e-4);
        Assert.Equal(published, Inversion.RatePerMinute(24.7, 1, 0.98), 0.02 * published);
        // Their other equation, k = 6.95e-3·c·10^(B·c) with B = 0.28 for chloride.
        double other = 6.95e-3 * 0.1 * Math.Pow(10, 0.28 * 0.1);
        Assert.Equal(other, Inversion.RatePerMinute(24.7, 1, 0.98), 0.02 * other);
    }

    // A named disagreement: by their measurement more sugar makes it faster, by Vukov less water makes it slower. They meet at 30 g/L; with
    // next to no sugar (0.997 g/mL of water) Vukov is 4 to 5 % above, at 100 g/L (9.65 %, 1.036 g/mL, so 0.936) 13 % below.
    [Theory]
    [InlineData(0, 0.997, 1.04, 1.05)]
    [InlineData(100, 0.936, 0.86, 0.88)]
    public void VukovFallsWithTheSugarWhereTheMeasurementRises(double gramsPerLitre, double water, double low, double high) =>
        Assert.InRange(Inversion.RatePerMinute(24.7, 1, water) / ((7.13 + 0.97e-2 * gramsPerLitre) * 1e-4), low, high);

    [Theory] // Vukov (1965): constants as read, worked out by another program
    [InlineData(24.7, 1.0, 0.98, 7.32e-4, 0.05e-4)]
    [InlineData(100, 3.0, 0.55, 0.0285, 0.0003)]
    public void VukovIsHisEquation(double celsius, double ph, double water, double expected, double tolerance)
    {
        Assert.Equal(expected, Inversion.RatePerMinute(celsius, ph, water), tolerance);
        double written = Math.Pow(10, 16.91 + Math.Log10(water) - 5670 / (celsius + 273.15) - ph);
        Assert.Equal(written, Inversion.RatePerMinute(celsius, ph, water), 2e-4 * written);
    }

    [Theory] // half-lives at 105 °C and 0.55 g/mL, by another program: minutes
    [InlineData(3.0, 15, 0.5)]
    [InlineData(3.5, 48, 0.6)]
    [InlineData(4.0, 150, 4)]
    [InlineData(5.0, 1500, 40)]
    public void HalfLives(double ph, double minutes, double tolerance)
    {
        double half = Math.Log(2) / Inversion.RatePerMinute(105, ph, 0.55);
        Assert.Equal(minutes, half, tolerance);
        Assert.Equal(0.5, Inversion.ShareAfter(Inversion.RatePerMinute(105, ph, 0.55) * half).Likely, 1e-12);
    }

    // Tombari and others (2007) measured 109.2 kJ/mol, a polarimetric study 108; the equation has 108.5.
    [Theory]
    [InlineData(109.2)]
    [InlineData(108)]
    public void TheEnergyOfActivation(double published)
    {
        double slope = Math.Log(Inversion.RatePerMinute(60, 3, 0.5) / Inversion.RatePerMinute(20, 3, 0.5)) / (1 / 293.15 - 1 / 333.15);
        Assert.Equal(published, slope * 8.314462618 / 1000, 0.01 * published);
    }

    // Sale and Skinner (1922), read in the abstract: 0.021 % of tartaric acid, 67 % inverted after 20 minutes of boiling. The pH of 3.1 is
    // reckoned from the acid's constants and not theirs; 0.55 g/mL is a syrup of 55 % sugar. At 105 °C the published share lies in the band of
    // half and twice the rate, above the middle.
    [Fact]
    public void SaleAndSkinnerAfter20MinutesAreInTheBand()
    {
        Spread share = Inversion.ShareAfter(20 * Inversion.RatePerMinute(105, 3.1, 0.55));
        Assert.InRange(0.67, share.Likely, share.High);
        Assert.Equal(2, Inversion.FactorOfDoubt);
    }

    // Named disagreements with the same abstract. After 40 minutes they had 96 %, and the band ends at 94.4. And a syrup that boils at 105 °C at sea level
    // is one of 70 %, with 0.39 g of water in a millilitre: a log of it ends at 64 % after 20 minutes, 3 points short. The measurement is 2.2 times the
    // likely rate in both.
    [Fact]
    public void SaleAndSkinnerAreTwoTimesFasterAndALittleMore()
    {
        Assert.Equal(0.944, Inversion.ShareAfter(40 * Inversion.RatePerMinute(105, 3.1, 0.55)).High, 0.001);
        Assert.InRange(-Math.Log(1 - 0.96) / 40 / Inversion.RatePerMinute(105, 3.1, 0.55), 2.1, 2.3);
        Spread logged = Log(SugarSolution.OfSucrose(0.7), (0, 105), (20, 105)).Inverted(3.1);
        Assert.InRange(logged.High, 0.63, 0.65);
        Assert.InRange(-Math.Log(1 - 0.67) / -Math.Log(1 - logged.Likely), 2.1, 2.3);
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 200)]
    public void TheSpreadIsHalfAndTwiceTheExposure(Share share)
    {
        double exposure = 10 * share.Value;
        Spread inverted = Inversion.ShareAfter(exposure);
        Assert.Equal(1 - Math.Exp(-exposure / 2), inverted.Low, 1e-15);
        Assert.Equal(1 - Math.Exp(-exposure), inverted.Likely, 1e-15);
        Assert.Equal(1 - Math.Exp(-2 * exposure), inverted.High, 1e-15);
        Assert.InRange(inverted.Low, 0, inverted.Likely);
        Assert.InRange(inverted.High, inverted.Likely, 1);
    }

    // 100 g of sucrose take up 5.26 g of water: 105.26 g of invert sugar (2·180.156/342.30; Sale and Skinner have 105). At pH 0 and 95 °C an hour inverts all.
    [Fact]
    public void AllOf100GramsIs105GramsOfInvertSugar()
    {
        CookingLog log = Log(SugarSolution.OfSucrose(0.5), (0, 95), (60, 95));
        Assert.Equal(1, log.Inverted(0).Likely, 1e-12);
        SugarSolution end = log.End(0);
        Assert.Equal(0, end[Constituent.Sucrose], 1e-12);
        Assert.Equal(105.26, (end[Constituent.Glucose] + end[Constituent.Fructose]) * 200, 0.01);
        Assert.Equal(105, (end[Constituent.Glucose] + end[Constituent.Fructose]) * 200, 0.5);
        Assert.Equal(1, end.Water + end[Constituent.Glucose] + end[Constituent.Fructose], 1e-12);
    }

    [Theory]
    [InlineData(0.75, 105, 3.6)]
    [InlineData(0.75, 60, 3.0)]
    [InlineData(0.20, 100.2, 2.5)]
    public void AtOneTemperatureItIsTheRateTimesTheTime(double fraction, double celsius, double ph)
    {
        SugarSolution syrup = SugarSolution.OfSucrose(fraction);
        Assert.True(celsius < syrup.BoilingCelsius(s_sea).Likely);
        double rate = Inversion.RatePerMinute(celsius, ph, syrup.Water * syrup.GramsPerMillilitre(Math.Min(celsius, 100)));
        double expected = 1 - Math.Exp(-rate * 20);
        Assert.Equal(expected, Log(syrup, (5, celsius), (25, celsius)).Inverted(ph).Likely, 1e-12);
        Assert.Equal(expected, Log(syrup, (-15, celsius), (-3, celsius), (5, celsius)).Inverted(ph).Likely, 1e-12);
    }

    // By hand: 75 % sucrose at 100 °C is 1.33103 g/mL (the polynomial of the PTB), 0.33276 g of water; k = 8.12831e16·0.33276·e^(−13055.7/378.15)·10^−3.6
    // = 0.00689; 1 − e^(−20·k) = 0.129, with half and twice of it 0.067 and 0.241.
    [Fact]
    public void WorkedNumber()
    {
        Spread inverted = Log(SugarSolution.OfSucrose(0.75), (0, 105), (20, 105)).Inverted(Inversion.CreamOfTartarPh);
        Assert.Equal(0.067, inverted.Low, 0.0006);
        Assert.Equal(0.129, inverted.Likely, 0.0006);
        Assert.Equal(0.241, inverted.High, 0.0006);
    }

    // Readings put in between on the straight lines change nothing but the steps of the sum: a millionth where what is summed is smooth.
    [Theory]
    [InlineData(0.5, 20, 99)]
    [InlineData(0.7, 107, 118)]
    [InlineData(0.75, 107, 118)]
    [InlineData(0.8, 110, 154)]
    public void MoreReadingsOnTheSameLinesChangeNothing(double fraction, double from, double to) => Assert.All([2, 7, 37], pieces =>
        Assert.Equal(1, Exposure(Log(SugarSolution.OfSucrose(fraction), Resampled(pieces, (0, from), (10, to))))
            / Exposure(Log(SugarSolution.OfSucrose(fraction), (0, from), (10, to))), 1e-6));

    // Named: it is not smooth in three places, and the steps of a kelvin show there. The density is followed to 100 °C only (a corner, some 6e-6); above the
    // strongest syrup the strength stays (9e-5); and a weak syrup thickens within a kelvin or two of where it begins to boil (to 4e-4 for 2 %). All are
    // nothing beside a factor of two.
    [Theory]
    [InlineData(0.50, 20, 116, 1e-5)]
    [InlineData(0.65, 20, 103, 1e-5)]
    [InlineData(0.70, 110, 170, 1e-4)]
    [InlineData(0.20, 20, 118, 1e-4)]
    [InlineData(0.02, 100, 103, 5e-4)]
    public void MoreReadingsChangeALittleAtTheCorners(double fraction, double from, double to, double bound) =>
        Assert.Equal(1, Exposure(Log(SugarSolution.OfSucrose(fraction), Resampled(400, (0, from), (10, to))))
            / Exposure(Log(SugarSolution.OfSucrose(fraction), (0, from), (10, to))), bound);

    // Heated, held at a boil, heated on, cooled: the same by a plain sum of a hundred thousand trapezes to each line, with the strength asked of the solution
    // at every step. Vukov's constants are written down again.
    [Theory]
    [InlineData(0.50)]
    [InlineData(0.75)]
    public void ThePlainSum(double fraction)
    {
        (double Minutes, double Celsius)[] readings = [(0, 20), (12, 107.3), (14, 107.3), (20, 118.7), (25, 80)];
        SugarSolution syrup = SugarSolution.OfSucrose(fraction);
        double expected = Trapezes(syrup, readings, 100_000);
        Assert.Equal(1, Exposure(Log(syrup, readings)) / expected, 1e-5);
    }

    [Fact]
    public void ThePlainSumOfAMixtureInTheMountains()
    {
        SugarSolution syrup = Syrups.Mixture(0.5, Constituent.Glucose, 0.2);
        AirPressure pressure = AirPressure.FromAltitudeMetres(1600);
        (double Minutes, double Celsius)[] readings = [(0, 60), (10, 112)];
        CookingLog log = CookingLog.Of(syrup, pressure, readings.Select(reading => new ThermometerReading(reading.Minutes, reading.Celsius)), NoGapSeconds);
        Assert.Equal(1, Exposure(log) / Trapezes(syrup, readings, 100_000, pressure), 1e-5);
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 60)]
    public void ExposuresAddUp(Share strength, Share first, Share second, Share third)
    {
        SugarSolution syrup = SugarSolution.OfSucrose(0.4 + 0.5 * strength.Value);
        double a = 20 + 125 * first.Value, b = 20 + 125 * second.Value, c = 20 + 125 * third.Value;
        double whole = Exposure(Log(syrup, (0, a), (7, b), (10, c)));
        // The second half begins with the syrup as it had become.
        double hottest = Math.Max(a, b);
        SugarSolution then = hottest > syrup.BoilingCelsius(s_sea).Likely ? syrup.BoilingAt(hottest, s_sea) : syrup;
        double parts = Exposure(Log(syrup, (0, a), (7, b))) + Exposure(Log(then, (7, b), (10, c)));
        Assert.Equal(1, parts / whole, 1e-9);
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 100)]
    public void HotterAndLongerInvertMore(Share warmth, Share more, Share time)
    {
        // Below boiling: a boil that is hotter is also drier, and less water is slower.
        double celsius = 20 + 80 * warmth.Value, hotter = celsius + (100 - celsius) * more.Value, minutes = 1 + 100 * time.Value;
        SugarSolution syrup = SugarSolution.OfSucrose(0.6);
        double here = Exposure(Log(syrup, (0, celsius), (minutes, celsius)));
        // The density falls by 0.0006 a kelvin where the rate rises by a tenth.
        Assert.True(Exposure(Log(syrup, (0, hotter), (minutes, hotter))) >= here * (1 - 1e-12));
        Assert.True(Exposure(Log(syrup, (0, celsius), (minutes, hotter))) >= here * (1 - 1e-12));
        Assert.Equal(2, Exposure(Log(syrup, (0, celsius), (2 * minutes, celsius))) / here, 1e-12);
        Assert.True(Exposure(Log(syrup, (0, celsius), (minutes, celsius), (minutes + 1, 20))) > here);
    }

    [Theory] // as long as the share is small, a tenth of the acid is a tenth of the share; the share itself bends it by half of itself
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7.5)]
    public void APointOfPhIsAFactorOfTen(double ph)
    {
        CookingLog log = Log(SugarSolution.OfSucrose(0.75), (0, 20), (15, 118));
        double share = log.Inverted(ph).Likely;
        Assert.Equal(10, share / log.Inverted(ph + 1).Likely, 10 * share);
        Assert.True(log.Inverted(ph).Likely < log.Inverted(ph - 0.1).Likely);
        // The ends of the spread are half and twice, for the same reason.
        Assert.Equal(0.5, log.Inverted(ph).Low / share, share);
        Assert.Equal(2, log.Inverted(ph).High / share, 2 * share);
    }

    // What boiled off does not come back.
    [Fact]
    public void TheStrengthStaysWhenThePotCools()
    {
        SugarSolution syrup = SugarSolution.OfSucrose(0.6);
        double expected = syrup.BoilingAt(115, s_sea).Solids;
        Assert.Equal(expected, Log(syrup, (0, 20), (10, 115)).End(9).Solids, 1e-6);
        Assert.Equal(expected, Log(syrup, (0, 20), (10, 115), (20, 20)).End(9).Solids, 1e-6);
        Assert.Equal(expected, Log(syrup, (0, 20), (10, 115), (20, 20), (30, 112)).End(9).Solids, 1e-6);
        Assert.True(Log(syrup, (0, 20), (10, 115), (20, 20), (30, 118)).End(9).Solids > expected + 0.005);
        // It has not boiled: as it was.
        Assert.Equal(0.6, Log(syrup, (0, 20), (10, 102)).End(9).Solids, 1e-6);
        // Above what the strongest syrup boils at it is that one.
        Assert.Equal(0.98, Log(syrup, (0, 20), (10, 180)).End(9).Solids, 1e-5);
    }

    [Fact]
    public void TheEndHasTheLikelyShareInverted()
    {
        CookingLog log = Log(SugarSolution.OfSucrose(0.75), (0, 20), (10, 112), (20, 116));
        SugarSolution end = log.End(3.6), plain = SugarSolution.OfSucrose(0.75).BoilingAt(116, s_sea);
        double share = log.Inverted(3.6).Likely, gone = plain[Constituent.Sucrose] * share;
        Assert.InRange(share, 0.05, 0.5);
        Assert.Equal(plain[Constituent.Sucrose] - gone, end[Constituent.Sucrose], 1e-9);
        Assert.Equal(gone * 180.156 / 342.30, end[Constituent.Glucose], 1e-9);
        Assert.Equal(gone * 180.156 / 342.30, end[Constituent.Fructose], 1e-9);
        Assert.Equal(plain.Water - gone * (2 * 180.156 / 342.30 - 1), end.Water, 1e-9);
    }

    [Fact]
    public void ALogKeepsWhatItWasGiven()
    {
        ThermometerReading[] readings = [new(0, 20), new(10, 110), new(12.5, 110)];
        SugarSolution syrup = SugarSolution.OfSucrose(0.7);
        AirPressure pressure = AirPressure.FromKilopascals(90);
        CookingLog log = CookingLog.Of(syrup, pressure, readings);
        Assert.Same(syrup, log.Syrup);
        Assert.Equal(pressure, log.Pressure);
        Assert.Equal(readings, log.Readings);
        readings[0] = new ThermometerReading(1, 1);
        Assert.Equal(new ThermometerReading(0, 20), log.Readings[0]);
        // Water has nothing to invert and nothing to concentrate.
        Assert.Equal(0, Log(SugarSolution.PureWater, (0, 20), (10, 120)).End(3).Solids);
    }

    [Fact]
    public void AReadingIsAValue()
    {
        ThermometerReading reading = new(12.5, 110);
        Assert.Equal("12.5 min: 110 °C", reading.ToString());
        Assert.True(reading == new ThermometerReading(12.5, 110));
        Assert.True(reading != new ThermometerReading(12.5, 110.5));
        Assert.True(reading != new ThermometerReading(12, 110));
        Assert.Equal(reading.GetHashCode(), new ThermometerReading(12.5, 110).GetHashCode());
        Assert.False(reading.Equals("12.5 min"));
        Assert.Equal((0, 0), (default(ThermometerReading).Minutes, default(ThermometerReading).Celsius));
    }

    // The lines between the readings are stated to be straight: what is summed is tested here, and what nobody measured in CookingGapTests.
    private const double NoGapSeconds = 1.2e8;

    private static CookingLog Log(SugarSolution syrup, params (double Minutes, double Celsius)[] readings) =>
        CookingLog.Of(syrup, s_sea, readings.Select(reading => new ThermometerReading(reading.Minutes, reading.Celsius)), NoGapSeconds);

    // At pH 0, from a share that is neither so small nor so near to all that digits are lost.
    private static double Exposure(CookingLog log)
    {
        double ph = 0;
        while (ph < 9 && log.Inverted(ph).Likely > 0.6)
            ph += 0.25;
        return -Math.Log(1 - log.Inverted(ph).Likely) * Math.Pow(10, ph);
    }

    private static (double Minutes, double Celsius)[] Resampled(int pieces, (double Minutes, double Celsius) from, (double Minutes, double Celsius) to) =>
        [.. Enumerable.Range(0, pieces + 1).Select(i => (from.Minutes + (to.Minutes - from.Minutes) * i / pieces, from.Celsius + (to.Celsius - from.Celsius) * i / pieces))];

    private static double Trapezes(SugarSolution syrup, (double Minutes, double Celsius)[] readings, int steps, AirPressure pressure = default)
    {
        double sum = 0, boils = syrup.BoilingCelsius(pressure).Likely;
        SugarSolution now = syrup;
        for (int line = 1; line < readings.Length; line++)
        {
            ((double start, double from), (double end, double to)) = (readings[line - 1], readings[line]);
            double before = double.NaN;
            for (int i = 0; i <= steps; i++)
            {
                double celsius = from + (to - from) * i / steps;
                if (celsius > boils)
                {
                    now = now.BoilingAt(celsius, pressure);
                    boils = celsius;
                }
                double rate = 8.12831e16 * now.Water * now.GramsPerMillilitre(Math.Min(celsius, 100)) * Math.Exp(-13055.7 / (celsius + 273.15));
                if (i > 0)
                    sum += (before + rate) / 2 * (end - start) / steps;
                before = rate;
            }
        }
        return sum;
    }
}
