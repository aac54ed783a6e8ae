using System.Globalization;
using System.Text.Json;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Labels;
using Confectio.Text;

namespace Confectio.Publishing;

/// <summary>
/// A card as a Recipe of schema.org. Nothing is said that the card does not know: no author, no date, no picture, no diet.
/// </summary>
internal static class CardJsonLd
{
    private const double SodiumOfSalt = 1 / 2.5;

    private static readonly (LabelNutrient Nutrient, string Property)[] s_properties =
    [
        (LabelNutrient.Kilocalories, "calories"), (LabelNutrient.Fat, "fatContent"), (LabelNutrient.Saturates, "saturatedFatContent"),
        (LabelNutrient.TransFat, "transFatContent"), (LabelNutrient.Cholesterol, "cholesterolContent"), (LabelNutrient.Carbohydrate, "carbohydrateContent"),
        (LabelNutrient.Sugars, "sugarContent"), (LabelNutrient.Fibre, "fiberContent"), (LabelNutrient.Protein, "proteinContent"),
        (LabelNutrient.Sodium, "sodiumContent"),
    ];

    public static string Write(FormulaCard card) => SheetJson.Write(writer => Write(card, writer));

    private static void Write(FormulaCard card, Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("@context", "https://schema.org");
        writer.WriteString("@type", "Recipe");
        writer.WriteString("name", card.Title);
        writer.WriteString("inLanguage", "en");
        writer.WriteString("description", Description(card));
        writer.WriteString("recipeYield", (card.Options.Portions ?? (card.WholePortions >= 1 ? card.WholePortions : null)) is double portions
            ? $"{SheetNumbers.Invariant.Short(portions, 2)} {(portions == 1 ? "portion" : "portions")}" : CardSheet.Grams(Spread.Exactly(card.Formula.TotalGrams), SheetNumbers.Invariant));
        writer.WriteStartArray("recipeIngredient");
        foreach (CardLine line in card.Lines)
            writer.WriteStringValue(line.ToString());
        writer.WriteEndArray();
        if (card.Options.Steps.Count + card.Options.Temperatures.Count > 0)
            Steps(card, writer);
        if (card.Nutrition is not null)
            Nutrition(card.Nutrition, writer);
        writer.WriteEndObject();
    }

    // Recipe has no member for allergens or cautions, and nobody may get the one without the other.
    private static string Description(FormulaCard card)
    {
        Formula formula = card.Formula;
        List<string> words = [formula.Allergens.Count > 0 ? $"Contains: {string.Join(", ", formula.Allergens.Select(FormulaCard.Word))}." : "No listed allergen is known of the ingredients."];
        if (formula.OftenContains.Count > 0)
            words.Add($"Often contains: {string.Join(", ", formula.OftenContains.Select(FormulaCard.Word))}.");
        words.Add(Caution.ReadTheLabel);
        words.AddRange(card.Cautions);
        words.AddRange(card.Options.Temperatures.Select(temperature => SafeText.Of(temperature.ToString()) + "."));
        words.AddRange(card.NotKnown.Select(sentence => "Not known: " + sentence));
        return string.Join(' ', words);
    }

    private static void Steps(FormulaCard card, Utf8JsonWriter writer)
    {
        if (card.Options.Steps.Count == 0)
            return;
        writer.WriteStartArray("recipeInstructions");
        foreach (string step in card.Options.Steps)
        {
            writer.WriteStartObject();
            writer.WriteString("@type", "HowToStep");
            writer.WriteString("text", SafeText.Of(step));
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
    }

    private static void Nutrition(NutritionEstimate panel, Utf8JsonWriter writer)
    {
        writer.WriteStartObject("nutrition");
        writer.WriteString("@type", "NutritionInformation");
        writer.WriteString("description", NutritionEstimate.Caution);
        writer.WriteString("servingSize", panel.PortionGrams is double grams ? SheetNumbers.Invariant.At(grams, SheetNumbers.FinePlace(grams)) + " g" : "100 g");
        foreach ((LabelNutrient nutrient, string property) in s_properties)
        {
            if (Told(panel, nutrient) is string text)
                writer.WriteString(property, text);
        }
        writer.WriteEndObject();
    }

    private static string? Told(NutritionEstimate panel, LabelNutrient nutrient)
    {
        if (panel[nutrient] is NutritionLine line)
        {
            string printed = (line.PerPortion ?? line.Per100Grams).Printed;
            // A number and a unit; "less than 1 g" is a text that no program counts with.
            return char.IsAsciiDigit(printed[0]) ? (printed.EndsWith('g') || printed.EndsWith("kcal", StringComparison.Ordinal) ? printed : printed + " kcal") : null;
        }
        // European panels tell salt, the vocabulary sodium: salt is sodium × 2.5 by definition of the law.
        return nutrient == LabelNutrient.Sodium && panel[LabelNutrient.Salt] is NutritionLine salt
            ? string.Create(CultureInfo.InvariantCulture, $"{1000 * SodiumOfSalt * (salt.PerPortion ?? salt.Per100Grams).Value.Likely:0} mg") : null;
    }
}
