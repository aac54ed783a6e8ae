using System.Text.Encodings.Web;
using System.Text.Json;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Formulas;

/// <summary>
/// Formulas in JSON, a form of our own, version 1: the lines by ingredient id with grams, an amount as written, or both. The schema
/// stands in docs/schema/formula.json.
/// </summary>
/// <remarks>
/// Where a line has both, the grams are what the formula says and the amount is how the line is measured; what is written reads back
/// as the same formula. A JSON text names ingredients, it does not carry them: read it with the table it was written with.
/// </remarks>
internal static class FormulaJson
{
    /// <summary>The version that is written and read.</summary>
    public const int Version = 1;

    /// <summary>The largest text that is read, in bytes of UTF-8.</summary>
    public const int MaximumBytes = 4 << 20;

    private const int MostDepth = 16;

    /// <summary>Writes a formula.</summary>
    /// <param name="formula">The formula.</param>
    /// <returns>The JSON, indented, with line feeds on every machine.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    public static string Write(Formula formula)
    {
        Guard.NotNull(formula);
        // The form is read by people too: 2 Tbsp + 1 tsp, not 2 Tbsp \u002B 1 tsp. It is not for pasting into a page.
        return IndentedJson.Write(writer => Write(formula, writer), JavaScriptEncoder.UnsafeRelaxedJsonEscaping);
    }

    /// <summary>What <see cref="Formula.ReadJson(ReadOnlySpan{byte}, IngredientTable)"/> says.</summary>
    public static Reading<Formula> Read(ReadOnlySpan<byte> json, IngredientTable ingredients)
    {
        Guard.NotNull(ingredients);
        return JsonGuard.Read(json, MostDepth, MaximumBytes, "a formula", fields => Read(fields, ingredients));
    }

    /// <summary>The formula of an object, which may stand inside another form; <see langword="null"/> with the mistakes noted.</summary>
    internal static Formula? Read(JsonFields fields, IngredientTable ingredients)
    {
        if (!fields.IsVersion("confectioFormula", Version))
            return null;
        string name = fields.Text("name") ?? "";
        double boiledOff = fields.Number("boiledOffGrams") ?? 0;
        List<FormulaLine> lines = fields.NeededList("lines", Formula.MaximumLines, line => FormulaLineReader.Read(line, ingredients));
        return fields.Make(() => Formula.Of(name, lines, boiledOff), e => e.ParamName == "boiledOffGrams" ? "boiledOffGrams" : "lines");
    }

    internal static void Write(Formula formula, Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteNumber("confectioFormula", Version);
        writer.WriteString("name", formula.Name);
        writer.WriteStartArray("lines");
        foreach (FormulaLine line in formula.Lines)
        {
            writer.WriteStartObject();
            writer.WriteString("ingredient", line.Ingredient.Id);
            writer.WriteNumber("grams", line.Grams.Likely);
            if (line.AsWritten is Amount amount)
            {
                writer.WriteString("amount", amount.ToString());
                if (line.Packing is Packing packing)
                    writer.WriteString("packing", packing.ToWord());
                writer.WriteString("system", line.MeasuringSystem!.Key);
            }
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteNumber("boiledOffGrams", formula.BoiledOffGrams);
        writer.WriteEndObject();
    }
}
