using Confectio.Conversions;
using Confectio.Cooking;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Uncertainty;
using Xunit;

namespace Confectio.Tests.Uncertainty;

/// <summary>What an interval means is said where it is made, and nothing that is made of it is called surer.</summary>
public sealed class BasisTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    // What each is, in the words of its own documentation: models that part, a fit, an estimate, a decision.
    public static TheoryData<string, Func<Spread>, SpreadBasis> Made() => new()
    {
        { "a weighed line", () => FormulaLine.Of(s_table.Get("sugar-icing"), 100).Grams, SpreadBasis.Exact },
        { "a counted egg", () => EggCount.Of(6, EggSizeSystem.Get("us").Size("large")).Eggs, SpreadBasis.Exact },
        { "boiling, by two models", () => SugarSolution.OfSucrose(0.9).BoilingCelsius(AirPressure.SeaLevel), SpreadBasis.Models },
        { "solids of a stage, by two models", () => CookingStage.Get("firm-ball").At(AirPressure.SeaLevel).Low.Solids!.Value, SpreadBasis.Models },
        { "mass of a pot, by two models", () => Pot().CookTo(116, AirPressure.SeaLevel).FinalGrams, SpreadBasis.Models },
        { "solids of a pot, by two models", () => Pot().CookTo(116, AirPressure.SeaLevel).Solids, SpreadBasis.Models },
        { "glass, by one model at its ends", () => GlassTransition.Of(SugarSolution.OfSucrose(0.97), 20).Above, SpreadBasis.Models },
        { "a landing, by one model at its ends", () => Warm().Value!.Value, SpreadBasis.Models },
        { "a height that no source states", () => Confectio.Cakes.IcingUsage.All.First(usage => usage.HeightCentimetres is { Basis: not SpreadBasis.Exact }).MeanMillimetres, SpreadBasis.Judged },
        { "the pH of anything", () => LethalityJudgement.DefaultPh(FoodMatrix.Food), SpreadBasis.Judged },
    };

    [Theory]
    [MemberData(nameof(Made))]
    public void TheBasisIsWhatItMeans(string what, Func<Spread> make, SpreadBasis basis) => Assert.Equal((what, basis), (what, make().Basis));

    // An estimated density, or one taken from another packing, made a mass that called itself coverage.
    [Fact]
    public void AMassIsNoSurerThanItsDensity()
    {
        bool judged = false, published = false;
        foreach (Ingredient ingredient in s_table.All)
        {
            foreach (Packing packing in Enum.GetValues<Packing>())
            {
                if (ConversionOf(ingredient, packing) is not Conversion conversion)
                    continue;
                bool known = conversion.Density.TakenFrom is null && conversion.Density.ContributingFigures.All(voice => IsPublished(voice.Provenance.Evidence));
                SpreadBasis expected = known ? SpreadBasis.Coverage : SpreadBasis.Judged;
                Assert.Equal(expected, conversion.ToMass(100).Grams.Basis);
                Assert.Equal(expected, conversion.ToVolume(100).Millilitres.Basis);
                judged |= !known;
                published |= known;
            }
        }
        Assert.True(judged && published);
    }

    // A range of which an end is from memory or an estimate is no range of sources.
    [Fact]
    public void ARangeIsNoSurerThanTheEvidenceOfItsEnds()
    {
        Assert.All(s_table.All.SelectMany(one => one.Pieces), piece => Assert.True(piece.Grams.Basis is SpreadBasis.Exact
            || (piece.Grams.Basis == SpreadBasis.Sources) == IsPublished(piece.Fact.Provenance.Evidence), piece.ToString()));
        Assert.All(SolidFatCurve.All.SelectMany(curve => curve.Figures), figure => Assert.True(figure.Percent.Basis is SpreadBasis.Exact
            || (figure.Percent.Basis == SpreadBasis.Sources) == IsPublished(figure.RangeProvenance.Evidence), figure.ToString()));
// Between a point of a source and a judged one the curve is judged.
        Assert.All(SolidFatCurve.All, curve => Assert.All(curve.Figures.Zip(curve.Figures.Skip(1)), pair => Assert.True(
            curve.PercentAt((pair.First.Celsius + pair.Second.Celsius) / 2).Basis is var between && (between is SpreadBasis.Exact
                || (between >= pair.First.Percent.Basis && between >= pair.Second.Percent.Basis)), curve.Key)));
    }

    // The balance of cups is no surer than the cups; of weighed lines it is the coverage of their compositions.
    [Fact]
    public void ABalanceIsNoSurerThanItsLines()
    {
        Ingredient butter = s_table.Get("butter-unsalted"), sugar = s_table.Get("sugar-granulated");
        Assert.Equal(SpreadBasis.Coverage, Balance.Of(Formula.Of("weighed", [FormulaLine.Of(butter, 100), FormulaLine.Of(sugar, 100)]))[FormulaPart.Fat].Grams.Basis);
        FormulaLine pieces = FormulaLine.Of(butter, Amount.Parse("1-2 sticks"), MeasuringSystem.UsCustomary);
        Assert.Equal(SpreadBasis.Sources, Balance.Of(Formula.Of("counted", [pieces, FormulaLine.Of(sugar, 100)]))[FormulaPart.Fat].Grams.Basis);
    }

    // None where the ingredient has no density near enough to the packing.
    private static Conversion? ConversionOf(Ingredient ingredient, Packing packing)
    {
        try
        {
            return Conversion.Of(ingredient, packing, MeasuringSystem.UsCustomary);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static SyrupPot Pot() => SyrupPot.Of(Formula.Of("syrup", [FormulaLine.Of(s_table.Get("sugar-granulated"), 600), FormulaLine.Of(s_table.Get("water"), 200)]));

    private static HeatAnswer Warm() =>
        HeatBalance.Of([HeatLine.Of(s_table.Get("butter-unsalted"), 200).At(5), HeatLine.Of(s_table.Get("water"), 200).At(80)]).FinalTemperature;

    private static bool IsPublished(Evidence evidence) => evidence is Evidence.Measured or Evidence.Compiled or Evidence.Computed or Evidence.Fitted;
}
