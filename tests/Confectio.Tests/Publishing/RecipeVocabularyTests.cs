using System.Text.Json;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Measures;
using Confectio.Publishing;
using Xunit;
using static Confectio.Tests.Publishing.Cards;

namespace Confectio.Tests.Publishing;

/// <summary>
/// The JSON-LD held against the published definitions of schema.org (types Recipe, NutritionInformation, HowToStep and Thing): which properties each has and what each
/// may be. By hand, cards were also held against the vocabulary as types of TypeScript (schema-dts 2.1.0), which finds none wrong and a misspelt property at once.
/// </summary>
public sealed class RecipeVocabularyTests
{
    private static readonly Dictionary<string, Dictionary<string, string>> s_types = new()
    {
        // Recipe: HowTo, CreativeWork, Thing. recipeYield: QuantitativeValue or Text; recipeIngredient: Text; recipeInstructions: CreativeWork, ItemList or Text.
        ["Recipe"] = new() { ["name"] = "Text", ["description"] = "Text", ["inLanguage"] = "Text", ["recipeYield"] = "Text", ["recipeIngredient"] = "Texts", ["recipeInstructions"] = "HowToSteps", ["nutrition"] = "NutritionInformation" },
        ["HowToStep"] = new() { ["text"] = "Text" },
        // Energy and Mass: a number, a blank and a unit.
        ["NutritionInformation"] = new()
        {
            ["description"] = "Text", ["servingSize"] = "Text", ["calories"] = "Energy", ["fatContent"] = "Mass", ["saturatedFatContent"] = "Mass", ["transFatContent"] = "Mass", ["cholesterolContent"] = "Mass",
            ["carbohydrateContent"] = "Mass", ["sugarContent"] = "Mass", ["fiberContent"] = "Mass", ["proteinContent"] = "Mass", ["sodiumContent"] = "Mass",
        },
    };

    public static TheoryData<LabelRules?, bool> Cases => new() { { null, false }, { null, true }, { LabelRules.EuropeanUnion, true }, { LabelRules.UnitedStates, true } };

    [Theory]
    [MemberData(nameof(Cases))]
    public void EveryMemberIsAPropertyOfItsTypeAndHasAValueOfItsKind(LabelRules? rules, bool portions)
    {
        CardOptions options = new() { MeasuringSystems = [MeasuringSystem.UsCustomary], Rules = rules, Portions = portions ? 24 : null, Steps = ["Whip."] };
        foreach (Formula formula in (Formula[])[Buttercream, Formula.Of("", [Line("water", 10)]), Formula.Of("salted", [Line("table salt", 1), Line("unsalted butter", 99)])])
        {
            using JsonDocument json = JsonDocument.Parse(FormulaCard.Of(formula, options).ToJsonLd());
            Assert.Equal("https://schema.org", json.RootElement.GetProperty("@context").GetString());
            Check("Recipe", json.RootElement);
            Assert.Equal(rules is not null, json.RootElement.TryGetProperty("nutrition", out _));
            foreach (string invented in (string[])["author", "datePublished", "image", "aggregateRating", "suitableForDiet", "prepTime"])
                Assert.False(json.RootElement.TryGetProperty(invented, out _));
        }
    }

    [Fact]
    public void FiguresAreThoseOfThePanelForAPortion()
    {
        FormulaCard card = FormulaCard.Of(Buttercream, new CardOptions { Rules = LabelRules.UnitedStates, Portions = 24 });
        JsonElement nutrition = JsonDocument.Parse(card.ToJsonLd()).RootElement.GetProperty("nutrition");
        Assert.Equal("44.8 g", nutrition.GetProperty("servingSize").GetString()); // 1074/24
        Assert.Equal(card.Nutrition![LabelNutrient.Fat]!.PerPortion!.Printed, nutrition.GetProperty("fatContent").GetString());
        Assert.StartsWith(card.Nutrition[LabelNutrient.Kilocalories]!.PerPortion!.Printed.Split(' ')[0] + " ", nutrition.GetProperty("calories").GetString(), StringComparison.Ordinal);
        // No table tells cholesterol: what is not known is no 0.
        Assert.False(nutrition.TryGetProperty("cholesterolContent", out _));
    }

    [Fact]
    public void TheYieldIsPortionsOrGrams()
    {
        Assert.Equal("24 portions", Yield(new CardOptions { Portions = 24 }));
        Assert.Equal("1 portion", Yield(new CardOptions { Portions = 1 }));
        Assert.Equal("1074 g", Yield(new CardOptions()));

        static string? Yield(CardOptions options) => JsonDocument.Parse(FormulaCard.Of(Buttercream, options).ToJsonLd()).RootElement.GetProperty("recipeYield").GetString();
    }

    private static void Check(string type, JsonElement element)
    {
        Assert.Equal(type, element.GetProperty("@type").GetString());
        foreach (JsonProperty member in element.EnumerateObject().Where(member => member.Name[0] != '@'))
        {
            Assert.True(s_types[type].TryGetValue(member.Name, out string? kind), $"{type} has no {member.Name}");
            switch (kind)
            {
                case "Text":
                    Assert.False(string.IsNullOrWhiteSpace(member.Value.GetString()));
                    break;
                case "Texts":
                    Assert.All(member.Value.EnumerateArray(), item => Assert.False(string.IsNullOrWhiteSpace(item.GetString())));
                    break;
                case "Energy":
                    Assert.Matches(@"^\d+ (kcal|kJ)$", member.Value.GetString());
                    break;
                case "Mass":
                    Assert.Matches(@"^\d+(\.\d+)? m?g$", member.Value.GetString());
                    break;
                case "HowToSteps":
                    Assert.All(member.Value.EnumerateArray(), item => Check("HowToStep", item));
                    break;
                default:
                    Check(kind, member.Value);
                    break;
            }
        }
    }
}
