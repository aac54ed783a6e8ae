using System.Buffers;
using System.Globalization;
using System.Text;
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
public static class FormulaJson
{
    /// <summary>The version that is written and read.</summary>
    public const int Version = 1;

    /// <summary>The largest text that is read, in bytes of UTF-8.</summary>
    public const int MostBytes = 4 << 20;

    private const int MostDepth = 16;
    private const string What = "a formula";

    // The form is read by people too: 2 Tbsp + 1 tsp, not 2 Tbsp \u002B 1 tsp. It is not for pasting into a page.
    private static readonly JsonWriterOptions s_writing = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes a formula.</summary>
    /// <param name="formula">The formula.</param>
    /// <returns>The JSON, indented, with line feeds on every machine.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    public static string Write(Formula formula)
    {
        Guard.NotNull(formula);
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter writer = new(buffer, s_writing))
            Write(formula, writer);
        // The .NET 8 writer knows no line ending but the machine's. Within a name it is escaped, so no other is touched.
        return Encoding.UTF8.GetString(buffer.WrittenSpan).Replace("\r\n", "\n", StringComparison.Ordinal);
    }

    /// <summary>Writes a formula in UTF-8.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="json">Where it goes; it stays open.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(Formula formula, Stream json) => Guard.NotNull(json).Write(Encoding.UTF8.GetBytes(Write(formula)));

    /// <summary>Reads a formula.</summary>
    /// <param name="json">The text, at most 4 MiB of UTF-8.</param>
    /// <param name="ingredients">The table in which the ingredients are looked up.</param>
    /// <returns>The formula.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="FormatException">
    /// It is not JSON, or not of this form or version, or names ingredients that are not in the table, or is no formula. The message
    /// names every mistake that can be told from the others, at most 20, with its line, column and path.
    /// </exception>
    public static Formula Read(string json, IngredientTable ingredients) => Read(Encoding.UTF8.GetBytes(Guard.NotNull(json)), ingredients);

    /// <summary>Reads a formula in UTF-8 to the end of a stream.</summary>
    /// <inheritdoc cref="Read(string, IngredientTable)"/>
    public static Formula Read(Stream json, IngredientTable ingredients)
    {
        Guard.NotNull(json);
        byte[] buffer = new byte[64 * 1024];
        using MemoryStream all = new();
        // One byte too many is enough to be refused.
        while (all.Length <= MostBytes && json.Read(buffer) is int got and > 0)
            all.Write(buffer, 0, got);
        return Read(all.GetBuffer().AsSpan(0, (int)all.Length), ingredients);
    }

    /// <summary>Reads a formula in UTF-8.</summary>
    /// <inheritdoc cref="Read(string, IngredientTable)"/>
    public static Formula Read(ReadOnlySpan<byte> json, IngredientTable ingredients)
    {
        Guard.NotNull(ingredients);
        return JsonGuard.Read(json, MostDepth, MostBytes, What, FormulaJsonContext.Default.FormulaDocument, Expected,
            (FormulaDocument document, List<(string Path, string Message)> mistakes) => Build(document, "$", ingredients, mistakes));
    }

    private static void Write(Formula formula, Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteNumber("confectioFormula", Version);
        writer.WriteString("name", formula.Name);
        writer.WriteStartArray("lines");
        foreach (FormulaLine line in formula.Lines)
        {
            writer.WriteStartObject();
            writer.WriteString("ingredient", line.Ingredient.Id);
            writer.WriteNumber("grams", line.Grams);
            if (line.AsWritten is Amount amount)
            {
                writer.WriteString("amount", amount.ToString());
                if (line.Packing is Packing packing)
                    writer.WriteString("packing", packing.ToWord());
                writer.WriteString("system", line.System!.Key);
            }
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteNumber("boiledOffGrams", formula.BoiledOffGrams);
        writer.WriteEndObject();
    }

    /// <summary>The formula of a document that stands at a path, or <see langword="null"/> with the mistakes noted.</summary>
    internal static Formula? Build(FormulaDocument document, string at, IngredientTable ingredients, List<(string Path, string Message)> mistakes)
    {
        if (document.ConfectioFormula != Version)
        {
            mistakes.Add(document.ConfectioFormula is int other
                ? (at + ".confectioFormula", string.Create(CultureInfo.InvariantCulture, $"version {other} was read and {Version} is expected"))
                : (at, string.Create(CultureInfo.InvariantCulture, $"confectioFormula is missing; an object that begins with {{\"confectioFormula\": {Version} is expected")));
            return null;
        }
        if (document.Lines is not { Count: > 0 and <= Formula.MostLines } lines)
        {
            mistakes.Add(document.Lines is null ? (at, "lines is missing")
                : (at + ".lines", string.Create(CultureInfo.InvariantCulture, $"there are {document.Lines.Count} lines; from 1 to {Formula.MostLines} are expected")));
            return null;
        }
        // What is wrong elsewhere in a document that holds the formula is not its fault.
        int before = mistakes.Count;
        FormulaLine?[] read = [.. lines.Select((line, i) => FormulaLineReader.Read(line, string.Create(CultureInfo.InvariantCulture, $"{at}.lines[{i}]"), ingredients, mistakes))];
        if (mistakes.Count > before)
            return null;
        try
        {
            return Formula.Of(document.Name ?? "", read!, document.BoiledOffGrams ?? 0);
        }
        catch (ArgumentException e)
        {
            mistakes.Add((e.ParamName == "boiledOffGrams" ? at + ".boiledOffGrams" : at + ".lines", FormulaLineReader.Reason(e)));
            return null;
        }
    }

    /// <summary>What is expected at a path.</summary>
    internal static string Expected(string path) => path[(path.LastIndexOf('.') + 1)..] switch
    {
        "$" => "an object is expected",
        "confectioFormula" => string.Create(CultureInfo.InvariantCulture, $"the version is expected, which is {Version}"),
        "name" or "ingredient" or "amount" or "packing" or "system" => "a text is expected",
        "lines" => "an array is expected",
        "grams" or "boiledOffGrams" => "a number is expected",
        ['l', 'i', 'n', 'e', 's', '[', .., >= '0' and <= '9', ']'] => "an object is expected",
        _ => "there is no such member",
    };
}
