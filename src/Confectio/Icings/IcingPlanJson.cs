using System.Text.Json;
using Confectio.Cakes;
using Confectio.Formulas;
using Confectio.Ingredients;

namespace Confectio.Icings;

/// <summary>
/// A plan in JSON for other programs, version 1; the schema stands in docs/schema/plan.json. Millilitres, grams, centimetres.
/// </summary>
internal static class IcingPlanJson
{
    /// <summary>The version that is written.</summary>
    public const int Version = 1;

    /// <summary>Writes a plan as one object.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="writer">Where it goes.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(IcingPlan plan, Utf8JsonWriter writer)
    {
        Guard.NotNull(plan);
        Guard.NotNull(writer);
        CakeCoverage coverage = plan.Coverage;
        writer.WriteStartObject();
        writer.WriteNumber("confectioPlan", Version);
        writer.WriteString("cake", coverage.Cake.Name);
        writer.WriteNumber("sideSquareCentimetres", coverage.SideSquareCentimetres);
        writer.WriteNumber("topSquareCentimetres", coverage.TopSquareCentimetres);
        writer.WriteNumber("hiddenSquareCentimetres", coverage.HiddenSquareCentimetres);
        writer.WriteNumber("exposedSquareCentimetres", coverage.ExposedSquareCentimetres);
        writer.WriteNumber("bodyMillilitres", coverage.BodyMillilitres);
        writer.WriteNumber("hiddenMillilitres", coverage.HiddenMillilitres);
        writer.WriteStartArray("parts");
        foreach (CoveragePart part in coverage.Parts)
            Write(part, writer);
        writer.WriteEndArray();
        if (plan.Bowl is MixerBowl bowl)
        {
            writer.WriteStartObject("bowl");
            writer.WriteString("name", bowl.Name);
            writer.WriteNumber("millilitres", bowl.Millilitres);
            writer.WriteNumber("usableMillilitres", bowl.UsableMillilitres);
            writer.WriteEndObject();
        }
        writer.WriteStartArray("icings");
        foreach (IcingNeed need in plan.Needs)
            Write(need, writer);
        writer.WriteEndArray();
        writer.WriteString("label", Caution.ReadTheLabel);
        writer.WriteStartArray("cautions");
        foreach (string caution in plan.Cautions)
            writer.WriteStringValue(caution);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Write(CoveragePart part, Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        if (part.Tier is int tier)
            writer.WriteNumber("tier", tier);
        writer.WriteString("kind", Text.EnumWords.Of(part.Kind, '-'));
        writer.WriteString("name", part.Name);
        writer.WriteString("icing", part.Icing);
        writer.WriteNumber("millilitres", part.Millilitres);
        if (part.ThicknessCentimetres is double thickness)
            writer.WriteNumber("thicknessCentimetres", thickness);
        if (part.AreaSquareCentimetres is double area)
            writer.WriteNumber("areaSquareCentimetres", area);
        if (part.ThinMillilitres is double thin)
            writer.WriteNumber("thinMillilitres", thin);
        writer.WriteEndObject();
    }

    // Of an icing without a formula nothing is known, which is not none.
    private static void Write(string name, IReadOnlyCollection<Allergen>? allergens, Utf8JsonWriter writer)
    {
        if (allergens is null)
        {
            writer.WriteNull(name);
            return;
        }
        writer.WriteStartArray(name);
        foreach (Allergen allergen in allergens)
            writer.WriteStringValue(Text.EnumWords.Of(allergen, '-'));
        writer.WriteEndArray();
    }

    private static void Write(IcingNeed need, Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("name", need.Icing.Name);
        writer.WriteNumber("millilitres", need.Millilitres);
        writer.WriteNumber("gramsPerMillilitre", need.Icing.GramsPerMillilitre.Likely);
        writer.WriteNumber("plannedGrams", need.PlannedGrams.Likely);
        writer.WriteNumber("lowPlannedGrams", need.PlannedGrams.Low);
        writer.WriteNumber("highPlannedGrams", need.PlannedGrams.High);
        writer.WriteNumber("wasteGrams", need.WasteGrams);
        writer.WriteNumber("takenGrams", need.TakenGrams);
        writer.WriteNumber("madeGrams", need.MadeGrams);
        writer.WriteNumber("leftOverGrams", need.LeftOverGrams);
        Write("contains", need.Icing.Formula?.Allergens, writer);
        Write("oftenContains", need.Icing.Formula?.OftenContains, writer);
        writer.WriteStartArray("batches");
        foreach (IcingBatch batch in need.Batches)
        {
            writer.WriteStartObject();
            writer.WriteNumber("count", batch.Count);
            writer.WriteNumber("grams", batch.Grams);
            writer.WriteNumber("millilitres", batch.Millilitres);
            writer.WriteNumber("peakMillilitres", batch.PeakMillilitres);
            if (batch.Eggs is long eggs)
                writer.WriteNumber("eggs", eggs);
            if (batch.Formula is Formula formula)
            {
                writer.WriteStartArray("lines");
                foreach (FormulaLine line in formula.Lines)
                {
                    writer.WriteStartObject();
                    writer.WriteString("ingredient", line.Ingredient.Id);
                    writer.WriteNumber("grams", line.Grams.Likely);
                    writer.WriteEndObject();
                }
                writer.WriteEndArray();
            }
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteEndObject();
    }
}
