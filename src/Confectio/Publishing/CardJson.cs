using System.Text.Json;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Labels;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Publishing;

/// <summary>A card in JSON for other programs, version 1; the schema stands in docs/schema/card.json. Grams, ounces, degrees, per cent.</summary>
internal static class CardJson
{
    /// <summary>The version that is written.</summary>
    public const int Version = 1;

    public static string Write(FormulaCard card) => SheetJson.Write(writer => Write(card, writer));

    private static void Write(FormulaCard card, Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteNumber("confectioCard", Version);
        writer.WriteString("title", card.Title);
        writer.WritePropertyName("formula");
        FormulaJson.Write(card.Formula, writer);
        writer.WriteStartArray("lines");
        foreach (CardLine line in card.Lines)
            Write(line, writer);
        writer.WriteEndArray();
        writer.WriteNumber("putInGrams", card.Formula.PutInGrams);
        writer.WriteNumber("totalGrams", card.Formula.TotalGrams);
        if (card is { Portions: double portions, PortionGrams: double grams })
        {
            writer.WriteNumber("portions", portions);
            writer.WriteNumber("portionGrams", grams);
        }
        writer.WriteStartObject("rounding");
        writer.WriteNumber("worstGrams", card.Rounding.WorstGrams);
        writer.WriteNumber("actualGrams", Math.Round(card.Rounding.ActualGrams, 9));
        writer.WriteEndObject();
        writer.WriteStartArray("temperatures");
        foreach (CardTemperature temperature in card.Options.Temperatures)
        {
            writer.WriteStartObject();
            writer.WriteString("name", SafeText.Of(temperature.Name));
            writer.WriteString("bound", EnumWords.Of(temperature.Bound, '-'));
            writer.WriteNumber("lowCelsius", temperature.LowCelsius);
            writer.WriteNumber("highCelsius", temperature.HighCelsius);
            writer.WriteString("text", SafeText.Of(temperature.ToString()));
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        SheetJson.Texts(writer, "steps", card.Options.Steps.Select(SafeText.Of));
        writer.WriteStartArray("balance");
        foreach (BalanceItem item in card.Balance.Items)
        {
            writer.WriteStartObject();
            writer.WriteString("part", item.Part.Name);
            writer.WriteNumber("grams", item.Grams.Likely);
            writer.WriteNumber("lowPercent", 100 * item.Fraction.Low);
            writer.WriteNumber("percent", 100 * item.Fraction.Likely);
            writer.WriteNumber("highPercent", 100 * item.Fraction.High);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        if (card.Nutrition is NutritionEstimate panel)
            Write(panel, writer);
        SheetJson.Texts(writer, "contains", card.Formula.Allergens.Select(allergen => EnumWords.Of(allergen, '-')));
        SheetJson.Texts(writer, "oftenContains", card.Formula.OftenContains.Select(allergen => EnumWords.Of(allergen, '-')));
        SheetJson.Texts(writer, "allergensNotStated", card.AllergensNotStated);
        writer.WriteString("label", Caution.ReadTheLabel);
        SheetJson.Texts(writer, "cautions", card.Cautions);
        SheetJson.Texts(writer, "assumptions", card.Assumptions);
        SheetJson.Texts(writer, "notKnown", card.NotKnown);
        writer.WriteEndObject();
    }

    private static void Write(CardLine line, Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("name", line.Name);
        writer.WriteString("text", line.ToString());
        writer.WriteNumber("lowGrams", line.Line.Grams.Low);
        writer.WriteNumber("grams", line.Line.Grams.Likely);
        writer.WriteNumber("highGrams", line.Line.Grams.High);
        writer.WriteNumber("printedGrams", line.PrintedGrams);
        writer.WriteNumber("ounces", line.Ounces);
        if (line.Packing is Packing packing)
            writer.WriteString("packing", packing.ToWord());
        writer.WriteStartArray("measures");
        foreach (CardMeasure measure in line.Measures)
        {
            writer.WriteStartObject();
            writer.WriteString("system", measure.MeasuringSystem.Key);
            if (measure.Amount is Amount amount)
            {
                writer.WriteString("amount", amount.ToString());
                writer.WriteNumber("relativeError", Math.Round(measure.RelativeError, 9));
            }
            else
            {
                writer.WriteString("reason", measure.Reason);
            }
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteNumber("percent", line.Percent);
        if (line.BasisPercent is double basis)
            writer.WriteNumber("basisPercent", basis);
        writer.WriteEndObject();
    }

    private static void Write(NutritionEstimate panel, Utf8JsonWriter writer)
    {
        writer.WriteStartObject("nutrition");
        writer.WriteString("rules", EnumWords.Of(panel.Rules, '-'));
        writer.WriteStartArray("lines");
        foreach (NutritionLine line in panel.Lines)
        {
            writer.WriteStartObject();
            writer.WriteString("nutrient", EnumWords.Of(line.Nutrient, '-'));
            writer.WriteString("in100Grams", line.Per100Grams.ToString());
            if (line.PerPortion is NutritionFigure portion)
                writer.WriteString("inPortion", portion.ToString());
            if (line.ReferencePercent is int percent)
                writer.WriteNumber("referencePercent", percent);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        SheetJson.Texts(writer, "notKnown", panel.NotKnown.Select(nutrient => nutrient.ToString()));
        writer.WriteString("caution", NutritionEstimate.Caution);
        writer.WriteEndObject();
    }
}
