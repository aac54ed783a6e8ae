using System.Reflection;
using Confectio.Cakes;
using Confectio.Cooking;
using Confectio.Heat;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
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
        ["CakeBody.Ball"] = "a flat wider than the ball is refused",
        ["CakeDrip.Of"] = "a drip wider than long is refused",
        ["CakeLength.op"] = "an operator, whose sides are what it compares",
        ["CookingStage.Of"] = "a low end above the high one is refused",
        ["FormulaProblem.WithBoilOff"] = "a low end above the high one is refused",
        ["FormulaProblem.WithLimit"] = "a low end above the high one is refused",
        ["FormulaProblem.WithOptional"] = "a low end above the high one is refused",
        ["FormulaProblem.WithRatioRange"] = "a low end above the high one is refused",
        ["FormulaProblem.WithRequirement"] = "a low end above the high one is refused",
        ["FormulaProblem.WithShareLimit"] = "a low end above the high one is refused",
        ["FormulaProblem.WithTargetRange"] = "a low end above the high one is refused",
        ["Fraction..ctor"] = "over and under the line, as a fraction is said",
        ["Icing.CoverFrom"] = "1 g at least, and a waste of 0.9 at most",
        ["IcingCover.MaximumRoundCentimetres"] = "a coat thicker than the cake is high is refused",
        ["IcingDensity.FromMeasure"] = "a density outside 0.05 to 2 g/mL is refused; inside, the inverse of a heavy icing is not",
        ["MixerBowl.Of"] = "100 mL at least, and a share of 1 at most",
        ["MixerBowl.OfQuarts"] = "1 quart at least, and a share of 1 at most",
        ["PlanPoint..ctor"] = "x before y, as points are written; all swapped, the outline is its mirror image with the same area",
        ["PlanShape.Oval"] = "the same oval turned by a quarter",
        ["PlanShape.Rectangle"] = "the same rectangle turned by a quarter",
        ["Portion.Of"] = "the same portion turned by a quarter",
        ["SolidFatCurve.MeltingKilojoulesPerKilogram"] = "the answer has the other sign",
        ["Spread..ctor"] = "ends that do not rise are refused",
        ["TimeTemperatureControl.Of"] = "a water activity is 1 at most, and no food has a pH of 1",
        ["TimeTemperatureControl.OfHeatedAndPackaged"] = "a water activity is 1 at most, and no food has a pH of 1",
        ["AirPressure.FromWeatherReport"] = "from 85 to 110 kPa: a height that is in it would be reported as a pressure outside it, but for heights of 85 to 110 m",
    };

    // Whose swap nobody catches yet. The list may only become shorter.
    private static readonly string[] s_notYet =
    [
        "Brix.FromGramsPerMillilitre", "Cupcakes.Flat",
        "EggReplacement.WaterPerGram", "Formula.ScaleToPieces", "HeatBalance.IceToAdd",
        "HeatBalance.WaterToAdd", "Hydrometer.Reading", "Hydrometer.Strength", "IcingDensity.FromOverrun",
        "Inversion.RatePerMinute", "KineticSet.Of", "KineticSet.ZKelvin", "LabelFigure.Of", "LumpedBody.Biot", "LumpedBody.FromGeometry",
        "LumpedBody.FromRate", "LumpedBody.FromTwoReadings", "MeringueBase.Of", "Spread.WithRelativeUncertainty", "Spread.WithUncertainty",
        "ThermometerReading..ctor", "Thermometer.TargetByBoilingWater", "WaterActivity.Norrish",
        "WaterActivity.Zobrist",
    ];

    [Fact]
    public void NoNumbersStandSideBySideThatCanBeSwappedUnseen() =>
        Assert.Empty(Adjacent().Except(s_caught.Keys).Except(s_notYet));

    [Fact]
    public void TheListsHoldNothingThatIsGone() => Assert.Empty(s_caught.Keys.Concat(s_notYet).Except(Adjacent()));

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

    private static string[] Adjacent() => [.. typeof(Ingredient).Assembly.GetExportedTypes()
        .SelectMany(type => type.GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
        .OfType<MethodBase>().Where(method => Pairs(method).Any())
        .Select(method => method.Name.StartsWith("op_", StringComparison.Ordinal) ? $"{method.DeclaringType!.Name}.op"
            : $"{method.DeclaringType!.Name}.{method.Name}").Distinct().Order(StringComparer.Ordinal)];

    private static IEnumerable<(ParameterInfo, ParameterInfo)> Pairs(MethodBase method)
    {
        ParameterInfo[] all = method.GetParameters();
        return all.Zip(all.Skip(1)).Where(pair => Bare(pair.First) is { } type && type == Bare(pair.Second)
            && (type == typeof(double) || type == typeof(CakeLength) || type == typeof(long)));
    }

    private static Type Bare(ParameterInfo parameter) => Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType;
}
