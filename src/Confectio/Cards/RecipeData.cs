using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Confectio.Text;

namespace Confectio.Cards;

/// <summary>
/// Finds the recipe in structured data of the open schema.org vocabulary (Recipe; recipeIngredient, recipeYield, recipeInstructions,
/// nutrition, suitableForDiet), in the scripts of a page or alone, and makes texts of it.
/// </summary>
internal sealed partial class RecipeData(CardDocument document, ProblemList problems, List<Problem> notUsed)
{
    private const int MostBytes = 4 << 20, MostDepth = 64, MostNodes = 200_000, MostTexts = 10_000;

    private int _texts;

    /// <summary>The texts of a recipe, in the order of the data.</summary>
    public List<SourceText> Texts { get; } = [];

    /// <summary>The members of its nutrition.</summary>
    public List<(string Member, SourceText Source)> Nutrients { get; } = [];

    /// <summary>What it says of diets.</summary>
    public List<SourceText> Diets { get; } = [];

    public string Title { get; private set; } = "";

    /// <summary>The scripts of a page that hold such data: where each begins in the document and how long it is.</summary>
    public static List<(int Start, int Length)> Scripts(string text)
    {
        List<(int, int)> found = [];
        int at = 0;
        while (found.Count < 50 && text.IndexOf("<script", at, StringComparison.OrdinalIgnoreCase) is int open and >= 0)
        {
            int start = text.IndexOf('>', open);
            if (start < 0)
                break;
            int end = text.IndexOf("</script", start, StringComparison.OrdinalIgnoreCase);
            end = end < 0 ? text.Length : end;
            if (text.AsSpan(open, start - open).Contains("ld+json", StringComparison.OrdinalIgnoreCase))
                found.Add((start + 1, end - start - 1));
            at = end;
        }
        return found;
    }

    /// <summary>Reads a JSON text that is a part of the document; whether a recipe was found in it.</summary>
    public bool Read(int start, int length)
    {
        string json = document.Text.Substring(start, length);
        if (Parse(json, start) is not Node root || Find(root, 0) is not Node recipe)
            return false;
        ReadRecipe(recipe);
        return true;
    }

    // ---- the tree, with the place of each value ----

    private sealed class Node(JsonTokenType kind, string value, int offset, string path)
    {
        public JsonTokenType Kind { get; } = kind;

        public string Value { get; } = value;

        public int Offset { get; } = offset;

        public string Path { get; } = path;

        public List<(string Name, Node Value)> Members { get; } = [];

        public IEnumerable<Node> Items => Kind == JsonTokenType.StartArray ? Members.Select(member => member.Value) : [this];

        public bool IsObject => Kind == JsonTokenType.StartObject;

        public Node? this[string name]
        {
            get
            {
                foreach ((string known, Node value) in Members)
                {
                    if (known == name)
                        return value;
                }
                return null;
            }
        }
    }

    private Node? Parse(string json, int start)
    {
        // Comments of old pages round the data are no JSON.
        ReadOnlySpan<char> trimmed = json.AsSpan().TrimStart();
        int skip = json.Length - trimmed.Length;
        if (trimmed.StartsWith("<!--") || trimmed.StartsWith("/*") || trimmed.StartsWith("//"))
            skip = Math.Max(0, json.IndexOfAny(['{', '[']));
        byte[] utf8 = Encoding.UTF8.GetBytes(json[skip..].TrimEnd().TrimEnd(';'));
        if (utf8.Length > MostBytes)
        {
            Refuse(start, null, ProblemCodes.TooLong, string.Create(CultureInfo.InvariantCulture, $"the structured data is longer than {MostBytes} bytes; it was not read"));
            return null;
        }
        JsonWalker walker = new(utf8, MostDepth);
        Stack<Node> open = new();
        Node? root = null;
        string name = "";
        int nodes = 0, bytes = 0, characters = 0;
        while (walker.Read())
        {
            characters += Encoding.UTF8.GetCharCount(utf8.AsSpan(bytes, walker.Offset - bytes));
            bytes = walker.Offset;
            switch (walker.Kind)
            {
                case JsonTokenType.PropertyName:
                    name = walker.Value;
                    break;
                case JsonTokenType.EndObject or JsonTokenType.EndArray:
                    open.Pop();
                    break;
                default:
                    if (++nodes > MostNodes)
                    {
                        Refuse(start, null, ProblemCodes.TooMany, string.Create(CultureInfo.InvariantCulture, $"the structured data has more than {MostNodes} values; it was not read"));
                        return null;
                    }
                    bool isOpen = walker.Kind is JsonTokenType.StartObject or JsonTokenType.StartArray;
                    Node? parent = open.Count > 0 ? open.Peek() : null;
                    StringBuilder path = new(parent?.Path ?? "$");
                    if (parent is { IsObject: true })
                        JsonWalker.AppendMember(path, name);
                    else if (parent is not null)
                        path.Append(CultureInfo.InvariantCulture, $"[{parent.Members.Count}]");
                    Node node = new(walker.Kind, isOpen ? "" : walker.Value, start + skip + characters, path.ToString());
                    parent?.Members.Add((parent.IsObject ? name : "", node));
                    root ??= node;
                    if (isOpen)
                        open.Push(node);
                    break;
            }
        }
        if (walker.Refusal is not string why)
            return root;
        characters += Encoding.UTF8.GetCharCount(utf8.AsSpan(bytes, Math.Max(0, Math.Min(walker.Offset, utf8.Length) - bytes)));
        Refuse(start + skip + characters, walker.Path, ProblemCodes.NotJson, $"the structured data cannot be read: {why}");
        return null;
    }

    // The first object that says it is a recipe, wherever it stands.
    private static Node? Find(Node node, int depth)
    {
        if (node.IsObject && (node["@type"] is Node type && type.Items.Any(one => one.Value is "Recipe" or "https://schema.org/Recipe" or "http://schema.org/Recipe")
            || depth == 0 && (node["recipeIngredient"] ?? node["ingredients"]) is not null))
            return node;
        foreach ((_, Node member) in node.Members)
        {
            if (Find(member, depth + 1) is Node found)
                return found;
        }
        return null;
    }

    private void ReadRecipe(Node recipe)
    {
        foreach ((string name, Node value) in recipe.Members)
        {
            switch (name)
            {
                case "@type" or "@context" or "@id":
                    break;
                case "name":
                    Add(value, SourceKind.Title);
                    Title = Plain(value.Value);
                    break;
                case "recipeIngredient" or "ingredients":
                    foreach (Node item in value.Items)
                    {
                        // Text of several lines in one member, as some pages have it.
                        if (item.Kind == JsonTokenType.String)
                            Add(item, SourceKind.Ingredient);
                        else
                            Refuse(item.Offset, item.Path, ProblemCodes.WrongType, "a text is expected for an ingredient");
                    }
                    break;
                case "recipeYield" or "yield":
                    foreach (Node item in value.Items)
                        ReadYield(item);
                    break;
                case "recipeInstructions" or "step" or "steps":
                    ReadInstructions(value, 0);
                    break;
                case "description" or "headline" or "abstract" or "disambiguatingDescription":
                    Add(value, SourceKind.Instruction);
                    break;
                case "nutrition":
                    ReadNutrition(value);
                    break;
                case "suitableForDiet":
                    foreach (Node item in value.Items)
                    {
                        if (item.Kind == JsonTokenType.String)
                            Diets.Add(Source(item, item.Value, SourceKind.Title));
                    }
                    break;
                default:
                    NotUsed(value, name);
                    break;
            }
        }
        if (_texts > MostTexts)
            Refuse(recipe.Offset, recipe.Path, ProblemCodes.TooMany, string.Create(CultureInfo.InvariantCulture, $"the recipe has more than {MostTexts} texts; the others were not read"));
    }

    private void ReadYield(Node node)
    {
        if (node.Kind is JsonTokenType.String or JsonTokenType.Number)
        {
            Add(node, SourceKind.Yield);
        }
        else if (node.IsObject && node["value"] is { Kind: JsonTokenType.String or JsonTokenType.Number } value)
        {
            string unit = node["unitText"]?.Value ?? node["unitCode"]?.Value ?? "";
            // UN/CEFACT codes of mass: GRM and KGM.
            unit = unit switch { "GRM" => "g", "KGM" => "kg", "ONZ" => "oz", "LBR" => "lb", _ => unit };
            Texts.Add(Source(value, $"{value.Value} {unit}".TrimEnd(), SourceKind.Yield));
            _texts++;
        }
        else
        {
            Refuse(node.Offset, node.Path, ProblemCodes.WrongType, "a text, a number or a value with a unit is expected for a yield");
        }
    }

    private void ReadInstructions(Node node, int depth)
    {
        foreach (Node item in node.Items)
        {
            if (item.Kind == JsonTokenType.String)
                Add(item, SourceKind.Instruction);
            else if (item.IsObject)
            {
                if ((item["text"] ?? item["description"] ?? (item["itemListElement"] is null ? item["name"] : null)) is { Kind: JsonTokenType.String } text)
                    Add(text, SourceKind.Instruction);
                foreach ((string name, Node part) in item.Members)
                {
                    if (name is "itemListElement" or "steps" && depth < 8)
                        ReadInstructions(part, depth + 1);
                    else if (name is not ("@type" or "@id" or "text" or "name" or "description" or "position"))
                        NotUsed(part, name);
                }
            }
            else
            {
                Refuse(item.Offset, item.Path, ProblemCodes.WrongType, "a text or a step is expected for an instruction");
            }
        }
    }

    private void ReadNutrition(Node node)
    {
        foreach (Node one in node.Items)
        {
            if (!one.IsObject)
            {
                Refuse(one.Offset, one.Path, ProblemCodes.WrongType, "an object is expected for the nutrition");
                continue;
            }
            foreach ((string name, Node value) in one.Members)
            {
                if (value.Kind is JsonTokenType.String or JsonTokenType.Number && name is not ("@type" or "@id"))
                    Nutrients.Add((name, Source(value, Plain(value.Value), SourceKind.Free)));
                if (!Nutrition.IsMember(name))
                    NotUsed(value, name);
            }
        }
    }

    private void Add(Node node, SourceKind kind)
    {
        string plain = Plain(node.Value);
        if (plain.Length == 0)
            return;
        foreach (string line in plain.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (++_texts > MostTexts)
                return;
            Texts.Add(Source(node, line, kind));
        }
    }

    private SourceText Source(Node node, string text, SourceKind kind)
    {
        // Where nothing was escaped, each character has its own place.
        int start = node.Kind == JsonTokenType.String ? node.Offset + 1 : node.Offset;
        int[]? at = start + text.Length <= document.Text.Length && document.Text.AsSpan(start, text.Length).SequenceEqual(text)
            ? [.. Enumerable.Range(start, text.Length)] : null;
        return new SourceText(document, text, at, start, kind, node.Path);
    }

    // Entities and tags of a page are found in texts of its data, too.
    private static string Plain(string text)
    {
        string plain = text.Contains('&', StringComparison.Ordinal) ? WebUtility.HtmlDecode(text) : text;
        if (plain.Contains('&', StringComparison.Ordinal))
            plain = WebUtility.HtmlDecode(plain);
        if (plain.Contains('<', StringComparison.Ordinal))
            plain = Tag().Replace(Break().Replace(plain, "\n"), " ");
        return plain.Replace('\r', '\n').Trim();
    }

    private void NotUsed(Node node, string name)
    {
        if (notUsed.Count >= 200)
            return;
        (int line, int column, _) = document.Place(node.Offset);
        notUsed.Add(new Problem(line, column, node.Path, "not-used", $"{Excerpt.Of(name)} says nothing that is judged; it was not read"));
    }

    private void Refuse(int offset, string? path, string code, string message)
    {
        (int line, int column, _) = document.Place(Math.Min(offset, document.Text.Length));
        problems.Add(new Problem(line, column, path, code, message));
    }

    [GeneratedRegex(@"</?[a-zA-Z][^<>]{0,200}>", RegexOptions.CultureInvariant)]
    private static partial Regex Tag();

    [GeneratedRegex(@"<(?:br|/p|/li|/div)[^<>]{0,40}>", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Break();
}
