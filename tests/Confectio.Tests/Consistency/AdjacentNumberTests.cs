using System.Reflection;
using Confectio.Cakes;
using Confectio.Cooking;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Heat;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Sugars;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Consistency;

/// <summary>No public call takes two numbers, or two lengths, side by side that can be swapped without anybody noticing.</summary>
public sealed class AdjacentNumberTests
{
    // Whose swap is caught, and how.
    private static readonly Dictionary<string, string> s_caught = new()
    {
        ["Foam.DensityWithPieces"] = "a density is 3 at most: only under 3 per cent could pass, which hardly moves it",
        ["Foam.OverrunOfCups"] = "what is whipped and heavier than plain is refused",
        ["GritThreshold.AreToldApart"] = "how far two sizes part is the same both ways",
        ["GritThreshold.IsReached"] = "size times concentration: the product is the same",
        ["ConePenetration.Of"] = "a cone has 30 g at least and sinks less than 29.9 mm",
        ["WarmAfternoon.RateOfCake"] = "swapped sides move the low end of a range that is thirteenfold by less than the half; a coat above 30 is refused",
        ["CakeBody.Ball"] = "a flat wider than the ball is refused",
        ["CakeDrip.Of"] = "a drip wider than long is refused",
        ["CakeLength.op"] = "an operator, whose sides are what it compares",
        ["CardTemperature.Between"] = "a low end above the high one is refused",
        ["ConvertedDigits.Place"] = "a relative half unit is at most 1; below it both are a fraction of 1, and that is seen in the digits",
        ["ConvertedDigits.Round"] = "a relative half unit is at most 1; below it both are a fraction of 1, and that is seen in the digits",
        ["ConvertedDigits.Text"] = "a relative half unit is at most 1; below it both are a fraction of 1, and that is seen in the digits",
        ["CookingStage.Of"] = "a low end above the high one is refused",
        ["RoomAir.Beside"] = "a temperature of a cake is no activity, which is at most 1",
        ["RoomAir.Of"] = "a humidity is at most 1, and a room of 1 °C and less is no room",
        ["FormulaProblem.WithBoilOff"] = "a low end above the high one is refused",
        ["FormulaProblem.WithLimit"] = "a low end above the high one is refused",
        ["FormulaProblem.WithSomeOf"] = "fewer at most than at least, or a low end above the high one, is refused",
        ["FormulaProblem.WithMass"] = "a low end above the high one is refused",
        ["FormulaProblem.WithMassTarget"] = "a low end above the high one is refused",
        ["FormulaProblem.WithOptional"] = "a low end above the high one is refused",
        ["FormulaProblem.WithRatioRange"] = "a low end above the high one is refused",
        ["FormulaProblem.WithTotalRange"] = "a low end above the high one is refused",
        ["FormulaProblem.WithPropertyLimit"] = "a low end above the high one is refused",
        ["FormulaProblem.WithPropertyTargetRange"] = "a low end above the high one is refused",
        ["FormulaProblem.WithRequirement"] = "a low end above the high one is refused",
        ["FormulaProblem.WithShareLimit"] = "a low end above the high one is refused",
        ["FormulaProblem.WithTargetRange"] = "a low end above the high one is refused",
        ["Cupcakes.Flat"] = "a coat thicker than the top is wide is a finding of the cake",
        ["Formula.ScaleToPieces"] = "so many times so much: the product is the same",
        ["Fraction..ctor"] = "over and under the line, as a fraction is said",
        ["HeatBalance.IceToAdd"] = "ice is not above 0 °C and a target not below it",
        ["HeatBalance.WaterToAdd"] = "water that is not colder than the target gives no grams, and the reason",
        ["Icing.CoverFrom"] = "1 g at least, and a waste of 0.9 at most",
        ["IcingCover.MaximumRoundCentimetres"] = "a coat thicker than the cake is high is refused",
        ["KineticSet.Between"] = "a low end above the high one is refused",
        ["LabelFigure.Of"] = "a figure that is not 0 is not rounded to more than itself",
        ["MeringueBase.OfPowder"] = "a powder in less than its own weight of water is refused",
        ["MixerBowl.Of"] = "100 mL at least, and a share of 1 at most",
        ["MixerBowl.OfQuarts"] = "1 quart at least, and a share of 1 at most",
        ["PlanPoint..ctor"] = "x before y, as points are written; all swapped, the outline is its mirror image with the same area",
        ["PlanShape.Oval"] = "the same oval turned by a quarter",
        ["PlanShape.Rectangle"] = "the same rectangle turned by a quarter",
        ["Portion.Of"] = "the same portion turned by a quarter",
        ["SolidFatCurve.MeltingKilojoulesPerKilogram"] = "the answer has the other sign",
        ["Spread..ctor"] = "ends that do not rise are refused",
        ["Thermometer.TargetByBoilingWater"] = "target + reading − 100: the sum is the same, or an end is refused",
        ["TimeTemperatureControl.Of"] = "a water activity is 1 at most, and no food has a pH of 1",
        ["TimeTemperatureControl.OfHeatedAndPackaged"] = "a water activity is 1 at most, and no food has a pH of 1",
        ["AirPressure.FromWeatherReport"] = "from 85 to 110 kPa: a height that is in it would be reported as a pressure outside it, but for heights of 85 to 110 m",
    };

    [Fact]
    public void NoNumbersStandSideBySideThatCanBeSwappedUnseen() =>
        Assert.Empty(Adjacent().Except(s_caught.Keys));

    [Fact]
    public void TheListHoldsNothingThatIsGone() => Assert.Empty(s_caught.Keys.Except(Adjacent()));

    [Fact]
    public void ABowlsMassAndTemperatureAreTwoCallsAndSwappedOnesAreRefused()
    {
        Assert.DoesNotContain(typeof(HeatLine).GetMethods(), method => Pairs(method).Any());
        Assert.Equal("1200 g bowl of stainless-steel at 18 °C", HeatLine.Bowl(VesselMaterial.StainlessSteel, 1200).At(18).ToString());
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => HeatLine.Bowl(VesselMaterial.StainlessSteel, 18).At(1200));
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => HeatLine.Of(IngredientTable.BuiltIn.Get("unsalted butter"), 18).At(250));
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => HeatLine.Ice(-5).At(200));
    }

    [Fact]
    public void SwappedLengthsAndSharesAreRefused()
    {
        Icing icing = Icing.Of("cream", 0.85);
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => icing.CoverFrom(0.08, 1400));
        Assert.Throws<ArgumentOutOfRangeException>("wasteFraction", () => icing.CoverFrom(2, 1400));
        Assert.Throws<ArgumentOutOfRangeException>("millilitres", () => MixerBowl.Of(0.7, 4732));
        Assert.Throws<ArgumentOutOfRangeException>("quarts", () => MixerBowl.OfQuarts(0.7, 5));
        Assert.Throws<ArgumentOutOfRangeException>("width", () => PipedLine.HalfRoundMillilitres(Cm(1.2), Cm(60)));
        Assert.Throws<ArgumentOutOfRangeException>("width", () => PipedLine.FullRoundMillilitres(Cm(1.2), Cm(60)));
        Assert.Throws<ArgumentOutOfRangeException>("width", () => PipedLine.ShellsMillilitres(Cm(1.2), Cm(60)));
        Assert.Throws<ArgumentOutOfRangeException>("dripLength", () => CakeDrip.Of("ganache", Cm(0.3), 24, Cm(5), Cm(4)));
        Assert.Throws<ArgumentOutOfRangeException>("thickness", () => IcingCover.Of(1500).MaximumRoundCentimetres(Cm(0.6), Cm(10)));
        Assert.Throws<ArgumentOutOfRangeException>("flatDiameter", () => CakeBody.Ball(Cm(8), Cm(20)));
    }

    // Every pair of a grid, the right way round and swapped: a swap is refused or changes nothing.
    [Fact]
    public void SwappedTemperaturesOfIceAndOfATargetAreRefused()
    {
        HeatBalance warm = HeatBalance.Of([HeatLine.Of(IngredientTable.BuiltIn.Get("water"), 1000).At(90)]);
        foreach (double target in (double[])[0.5, 1, 5, 20, 60])
        {
            foreach (double ice in (double[])[-40, -18, -0.5, 0])
            {
                Assert.NotNull(warm.IceToAdd(target, ice).Value);
                Assert.Throws<ArgumentOutOfRangeException>(ice < 0 ? "targetCelsius" : "iceCelsius", () => warm.IceToAdd(ice, target));
            }
        }
        foreach ((double target, double water) in ((double, double)[])[(60, 8), (30, 29.9), (5, 0)])
        {
            Assert.NotNull(warm.WaterToAdd(target, water).Value);
            HeatAnswer swapped = warm.WaterToAdd(water, target);
            Assert.Null(swapped.Value);
            Assert.Contains("not colder than the target", swapped.ToString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void SwappedPiecesAndReadingsGiveTheSame()
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Formula formula = Formula.Of("ganache", [FormulaLine.Of(table.Get("unsalted butter"), 300), FormulaLine.Of(table.Get("icing sugar"), 400)]);
        foreach ((double pieces, double grams) in ((double, double)[])[(24, 35), (48, 8), (7, 12.5)])
            Assert.Equal(formula.ScaleToPieces(pieces, grams).TotalGrams, formula.ScaleToPieces(grams, pieces).TotalGrams, 1e-9);
        for (int target = 100; target <= 220; target++)
        {
            for (int reading = 60; reading <= 130; reading++)
            {
                if (target <= 130 && reading >= 100)
                    Assert.Equal(Thermometer.TargetByBoilingWater(target, reading), Thermometer.TargetByBoilingWater(reading, target));
                else
                    Assert.Throws<ArgumentOutOfRangeException>(() => Thermometer.TargetByBoilingWater(reading, target));
            }
        }
    }

    // 47 g to the gram, 15.2 g to 0.1 g, 3.5 g to 0.5 g; 6.67 and 3.33 of a serving of 30 g that has 2 g to the gram.
    [Fact]
    public void AFigureIsNotRoundedToMoreThanItself()
    {
        foreach ((double figure, double unit) in ((double, double)[])[(47, 1), (15.2, 0.1), (3.5, 0.5), (6.67, 3.33), (2, 1)])
        {
            Assert.Equal(unit, LabelFigure.Of(FormulaPart.Fat, figure, unit).RoundingUnit);
            Assert.Throws<ArgumentOutOfRangeException>("roundingUnit", () => LabelFigure.Of(FormulaPart.Fat, unit, figure));
        }
        Assert.Equal(0.5, LabelFigure.Of(FormulaPart.Fat, 0, 0.5).RoundingUnit);
        Assert.Throws<ArgumentOutOfRangeException>("roundingUnit", () => LabelFigure.Of(FormulaPart.Fat, 0.5, 0));
        Assert.Equal(3.33, LabelFigure.Of(FormulaPart.Fat, 3.33, 3.34 - 0.01).RoundingUnit);
    }

    [Fact]
    public void ACoatThickerThanItsTopIsWideIsAFindingAndADomeIsACallOfItsOwn()
    {
        Assert.NotEmpty(Cake.Of("", [], [Cupcakes.Flat("cream", 12, Cm(0.5), Cm(6.5))]).Cover().Findings);
        Assert.Empty(Cake.Of("", [], [Cupcakes.Flat("cream", 12, Cm(6.5), Cm(0.5))]).Cover().Findings);
        Cupcakes domed = Cupcakes.Flat("cream", 12, Cm(6.5), Cm(0.5)).Domed(Cm(1));
        Assert.Equal((0.5, 1, 19.78), (domed.ThicknessCentimetres, domed.DomeCentimetres, Math.Round(domed.MillilitresEach, 2)));
        Assert.Throws<ArgumentOutOfRangeException>("dome", () => Cupcakes.Flat("cream", 12, Cm(6.5), Cm(0.5)).Domed(Cm(3.3)));
        Assert.Throws<InvalidOperationException>(() => Cupcakes.Swirled("cream", 12, Swirl.Rosette(Cm(6), 4, Cm(1.2))).Domed(Cm(1)));
    }

    [Fact]
    public void AMeringueSaysItsSugarItsAcidAndItsWaterApart()
    {
        EggForms forms = EggForms.Of(IngredientTable.BuiltIn);
        MeringueBase hard = MeringueBase.Of(forms.FreshWhite, 100).WithAcid(0.5).WithSugar(200);
        Assert.Equal((100, 200, 0.5, 0), (hard.WhiteGrams, hard.SugarGrams, hard.AcidGrams, hard.WaterGrams));
        Assert.Equal(0, MeringueBase.Of(forms.FreshWhite, 100).SugarGrams);
        MeringueBase powder = MeringueBase.OfPowder(forms.DriedWhite, 12, 88).WithSugar(200);
        Assert.Equal((12, 88, 100, 200), (powder.WhiteGrams, powder.WaterGrams, powder.LiquidWhiteGrams, powder.SugarGrams));
        Assert.Throws<ArgumentOutOfRangeException>("waterGrams", () => MeringueBase.OfPowder(forms.DriedWhite, 88, 12));
        Assert.Throws<ArgumentOutOfRangeException>("waterGrams", () => MeringueBase.OfPowder(forms.DriedWhite, 52, 48));
        Assert.Throws<ArgumentException>("white", () => MeringueBase.Of(forms.DriedWhite, 12));
        Assert.Throws<ArgumentException>("powder", () => MeringueBase.OfPowder(forms.Get("fresh-yolk"), 12, 88));
    }

    // D at one temperature, and from there by z: ten times as long z kelvins below.
    [Fact]
    public void AStudySaysItsTimesAsTimesAndItsRangeApart()
    {
        KineticSet set = KineticSet.Of("trial", 60, TimeSpan.FromMinutes(1.5), 5).Between(50, 70).CountedTo(4);
        Assert.Equal(15, set.DecimalReductionMinutes(55)!.Value.Likely, 1e-12);
        Assert.Null(set.DecimalReductionMinutes(49.9));
        Assert.Equal((50, 70, 4), (set.Points[0].Celsius, set.Points[^1].Celsius, set.MeasuredLogs));
        Assert.Equal(set.DecimalReductionMinutes(70), set.DecimalReductionMinutes(80));
        Assert.Throws<ArgumentOutOfRangeException>("highCelsius", () => set.Between(70, 50));
        Assert.Throws<InvalidOperationException>(() => KineticSet.All[0].Between(50, 70));
        Assert.Throws<InvalidOperationException>(() => KineticSet.All[0].CountedTo(7));
        // The two points of a z may be given in either order.
        Assert.Equal(KineticSet.ZKelvin(56, TimeSpan.FromMinutes(6.2), 58, TimeSpan.FromMinutes(3.5)),
            KineticSet.ZKelvin(58, TimeSpan.FromMinutes(3.5), 56, TimeSpan.FromMinutes(6.2)), 1e-12);
    }

    [Fact]
    public void ABodyStartsWithAReading()
    {
        LumpedBody body = LumpedBody.FromRate(Math.Log(2) / 10, new ThermometerReading { Celsius = 100 }, 20);
        Assert.Equal((100, 20), (body.StartCelsius, body.SurroundingsCelsius));
        Assert.Equal(60, body.CelsiusAfter(10), 1e-12);
        // Halved in ten minutes, it had 100 °C ten minutes before it had 60.
        Assert.Equal(100, LumpedBody.FromRate(Math.Log(2) / 10, new ThermometerReading { Minutes = 10, Celsius = 60 }, 20).StartCelsius, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>("reading", () => LumpedBody.FromRate(1e6, new ThermometerReading { Minutes = 10, Celsius = 60 }, 20));
    }

    // A plan lies and a height stands, so that no diameter is given for a height. Figures by hand, from the formulas of a frustum, a cap and
    // a ring: π·6·(100 + 80 + 64)/3, 4·(400 + 280 + 196)/3, π·16·(30 − 4)/3 and π·(144 − 16)·9.
    [Fact]
    public void BodiesOfPlansAreTheOnesOfLengths()
    {
        CakeBody round = CakeBody.Tapered(PlanShape.Round(Cm(20)), PlanShape.Round(Cm(16)), Cm(6));
        Assert.Equal(Math.PI * 6 * 244 / 3, round.VolumeMillilitres, 1e-9);
        Assert.Equal(Math.PI * 100 * 6 / 3, CakeBody.Tapered(PlanShape.Round(Cm(20)), null, Cm(6)).VolumeMillilitres, 1e-9);
        Assert.Equal(4 * 876 / 3.0, CakeBody.Tapered(PlanShape.Square(Cm(20)), PlanShape.Square(Cm(14)), Cm(4)).VolumeMillilitres, 1e-9);
        Assert.Equal(Math.PI * 16 * 26 / 3, CakeBody.Dome(PlanShape.Round(Cm(20)), Cm(4)).VolumeMillilitres, 1e-9);
        Assert.Equal(Math.PI * 128 * 9, CakeBody.Ring(PlanShape.Round(Cm(24)), PlanShape.Round(Cm(8)), Cm(9)).VolumeMillilitres, 1e-9);
        Assert.Throws<ArgumentException>("top", () => CakeBody.Tapered(PlanShape.Round(Cm(20)), PlanShape.Square(Cm(14)), Cm(4)));
        Assert.Throws<ArgumentException>("top", () => CakeBody.Tapered(PlanShape.Heart(Cm(20)), null, Cm(4)));
        Assert.Throws<ArgumentOutOfRangeException>("top", () => CakeBody.Tapered(PlanShape.Square(Cm(14)), PlanShape.Square(Cm(20)), Cm(4)));
        Assert.Throws<ArgumentException>("ball", () => CakeBody.Dome(PlanShape.Square(Cm(20)), Cm(4)));
        Assert.Throws<ArgumentOutOfRangeException>("height", () => CakeBody.Dome(PlanShape.Round(Cm(4)), Cm(20)));
        Assert.Throws<ArgumentOutOfRangeException>("hole", () => CakeBody.Ring(PlanShape.Round(Cm(8)), PlanShape.Round(Cm(24)), Cm(9)));
        Swirl flat = Swirl.Rosette(Cm(6), 4, Cm(1.2)), raised = flat.Raised(Cm(3.5));
        Assert.Equal(Swirl.UpCone(Cm(6), Cm(3.5), 4, Cm(1.2)).Millilitres, raised.Millilitres, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>("height", () => flat.Raised(Cm(0.5)));
        Assert.Throws<ArgumentOutOfRangeException>("lineWidth", () => Swirl.Rosette(Cm(1.2), 4, Cm(6)));
    }

    private static string[] Adjacent() => [.. PublicTypes.All
        .SelectMany(type => type.GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
        .OfType<MethodBase>().Where(method => Pairs(method).Any())
        .Select(method => method.Name.StartsWith("op_", StringComparison.Ordinal) ? $"{method.DeclaringType!.Name}.op"
            : $"{method.DeclaringType!.Name}.{method.Name}").Distinct().Order(StringComparer.Ordinal)];

    private static IEnumerable<(ParameterInfo, ParameterInfo)> Pairs(MethodBase method)
    {
        ParameterInfo[] all = method.GetParameters();
        return all.Zip(all.Skip(1)).Where(pair => Bare(pair.First) is { } type && type == Bare(pair.Second)
            && (type == typeof(double) || type == typeof(CakeLength) || type == typeof(long) || type.IsAssignableTo(typeof(UnitsNet.IQuantity))));
    }

    private static Type Bare(ParameterInfo parameter) => Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType;
}
