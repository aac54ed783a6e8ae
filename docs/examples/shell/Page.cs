using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Uncertainty;

namespace Confectio.Examples;

/// <summary>An answer in lines: the same in every culture, and nothing of what was handed in is shown raw.</summary>
public sealed class Page
{
    private readonly StringBuilder _text = new();

    public void Line(FormattableString line) => _text.AppendFormat(CultureInfo.InvariantCulture, line.Format,
        [.. line.GetArguments().Select(part => part is null or IFormattable ? part : Shell.Shown($"{part}"))]).Append('\n');

    /// <summary>Our own words, which may be several lines.</summary>
    public void Words(string words) => _text.Append(words).Append('\n');

    /// <summary>A head and its lines, where there is any; the head may be none.</summary>
    public void Section(string head, IEnumerable<string> lines)
    {
        string[] all = [.. lines];
        if (all.Length > 0 && head.Length > 0)
            _text.Append(head).Append('\n');
        foreach (string line in all)
            Line($"{line}");
    }

    public override string ToString() => _text.ToString();
}

/// <summary>Allergens and cautions of food, said one way by every example.</summary>
public static class Food
{
    /// <summary>A formula from a file: in JSON, or as a text with a line an ingredient.</summary>
    public static Formula Read(string file, MeasuringSystem system)
    {
        string text = File.ReadAllText(file);
        return (text.AsSpan().TrimStart("\uFEFF \t\r\n").StartsWith("{") ? Formula.ReadJson(text, IngredientTable.BuiltIn)
            : Formula.ReadText(Path.GetFileNameWithoutExtension(file), new StringReader(text), IngredientTable.BuiltIn, system)).OrThrow();
    }

    /// <summary>An allergen in words.</summary>
    public static string Word(Allergen allergen) => Key(allergen) + (allergen is >= Allergen.Almond and <= Allergen.Brazil ? " (tree nut)" : "");

    /// <summary>What a formula contains, in a sentence.</summary>
    public static string Contains(Formula made) => $"ontains: {(made.Allergens.Count == 0 ? "none of the listed allergens" : string.Join(", ", made.Allergens.Select(Word)))}"
        + $"{(made.OftenContains.Count == 0 ? "" : $"; often contains: {string.Join(", ", made.OftenContains.Select(Word))}")}. {Caution.ReadTheLabel}";

    /// <summary>The lines that end an answer about a formula.</summary>
    public static void AddFood(this Page page, Formula made)
    {
        page.Line($"\nC{Contains(made)}");
        page.Section("", made.Cautions.Select(caution => $"Caution: {caution} ({caution.Source})"));
    }

    /// <summary>The same as members of an object.</summary>
    public static void AddFood(this JsonObject document, Formula made)
    {
        document["contains"] = Keys(made.Allergens);
        document["oftenContains"] = Keys(made.OftenContains);
        document["label"] = Caution.ReadTheLabel;
        document["cautions"] = Json.Array(made.Cautions, caution => new JsonObject { ["code"] = caution.Code, ["text"] = caution.Text, ["source"] = caution.Source });
    }

    /// <summary>Allergens as words of an array.</summary>
    public static JsonArray Keys(IEnumerable<Allergen> allergens) => Json.Array(allergens, allergen => Key(allergen));

    private static string Key(Allergen allergen) => allergen.ToString().ToLowerInvariant();
}

/// <summary>JSON without reflection.</summary>
public static class Json
{
    public static JsonArray Array<T>(IEnumerable<T> items, Func<T, JsonNode?> of) => new([.. items.Select(of)]);

    /// <summary>What writes itself, as an object that takes more members.</summary>
    public static JsonObject Written(Action<Utf8JsonWriter> write)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter writer = new(bytes))
            write(writer);
        return JsonNode.Parse(bytes.ToArray())!.AsObject();
    }

    /// <summary>An object as a line, or over several lines.</summary>
    public static string Text(JsonObject document, bool isIndented = false)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter writer = new(bytes, new JsonWriterOptions { Indented = isIndented, NewLine = "\n" }))
            document.WriteTo(writer);
        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    /// <summary>A value with its range, rounded to so many digits.</summary>
    public static JsonObject Range(Spread spread, int digits = 3) =>
        new() { ["low"] = Number(spread.Low, digits), ["likely"] = Number(spread.Likely, digits), ["high"] = Number(spread.High, digits) };

    /// <summary>A number rounded to so many digits; what is not known has none.</summary>
    public static JsonNode? Number(double? value, int digits = 3) => value is double number ? Math.Round(number, digits) : null;
}
