using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Confectio.Cakes;
using Confectio.Costs;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Icings;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Sugars;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Consistency;

/// <summary>
/// A member stands once in the code, where a reader asks for it, and once in the schema that other programs read. The readers are watched at
/// a document that the schema makes, with everything in it that it knows, and asked for what the schema has, and no more.
/// </summary>
public sealed class SchemaMemberTests
{
    private static readonly Dictionary<string, Action<JsonFields>> s_readers = new()
    {
        ["formula"] = fields => FormulaJson.Read(fields, IngredientTable.BuiltIn),
        ["problem"] = fields => new ProblemReader(IngredientTable.BuiltIn,
            [.. SugarProperties.Kinds(AirPressure.SeaLevel), .. HeatProperties.Kinds, .. FormulaProperties.Kinds]).Read(fields),
        ["order"] = fields => IcingOrderJson.Read(fields, IngredientTable.BuiltIn),
        ["prices"] = fields => PriceReader.Read(fields, IngredientTable.BuiltIn),
    };

    // Asked for to be refused with a sentence of their own: somebody takes a requirement for a target.
    private static readonly Dictionary<string, string[]> s_refused = new()
    {
        ["$.requirements"] = ["priority", "toleranceGrams", "tolerancePercent"],
        ["$.propertyLimits"] = ["priority", "tolerance"],
    };

    [Theory]
    [InlineData("formula")]
    [InlineData("problem")]
    [InlineData("order")]
    [InlineData("prices")]
    public void AReaderAsksForTheMembersOfItsSchemaAndForNoOther(string name)
    {
        Schema schema = new(name);
        Dictionary<string, SortedSet<string>> published = [], asked = [];
        schema.Objects("$", schema.Root, published);
        // A tier has one filling between all its layers, or fillings of its own: where there is the one nobody looks into the others.
        foreach (JsonNode document in (JsonNode[])[schema.Everything(schema.Root), Without(schema.Everything(schema.Root), "filling")])
            Listen(name, document, (path, member) => Add(asked, Regex.Replace(path, @"\[\d+\]", ""), member));
        foreach ((string path, string[] members) in s_refused)
        {
            if (asked.TryGetValue(path, out SortedSet<string>? known))
                Assert.All(members, member => Assert.True(known.Remove(member), member));
        }
        Assert.Equal(Lines(published), Lines(asked));
    }

    // A cake is read without its icings, from the same form: what it passes over is known to it, and nothing else is.
    [Fact]
    public void ACakeAloneAsksForTheMembersOfAnOrder()
    {
        Schema schema = new("order");
        SortedSet<string> asked = [];
        JsonFields.Root(JsonSerializer.SerializeToElement(schema.Everything(schema.Root)),
            new JsonMistakes { Heard = (path, member) => { if (path == "$") asked.Add(member); } }).Read(CakeReader.ReadAlone);
        Assert.Equal(schema.Members(schema.Root).Keys.Order(StringComparer.Ordinal), asked.Order(StringComparer.Ordinal));
    }

    // Of every choice of words the reader takes each, and of another word it lists those of the schema and no more.
    [Theory]
    [InlineData("formula", 1)]
    [InlineData("problem", 5)]
    [InlineData("order", 9)]
    [InlineData("prices", 1)]
    public void AReaderTakesTheWordsOfItsSchemaAndNoOther(string name, int choices)
    {
        Schema schema = new(name);
        List<(string Path, string[] Words)> found = [];
        schema.Choices("$", schema.Root, found);
        Assert.Equal(choices, found.Count);
        Assert.All(found, choice =>
        {
            Assert.All(choice.Words, word => Assert.Empty(Said(word)));
            string told = Assert.Single(Said("no-such-word"));
            string list = Regex.Match(told, "^(?:.*(?:is not one of: |was read; |is expected: ))?(.*?)(?: is expected)?$").Groups[1].Value;
            Assert.Equal(choice.Words.Order(), Regex.Split(list, ", | or ").Order());

            List<string> Said(string word)
            {
                JsonNode document = schema.Everything(schema.Root);
                Assert.True(Put(document, choice.Path.Split('.').AsSpan(1), word));
                List<string> said = [];
                foreach ((string path, string code, string message) in Listen(name, document, (_, _) => { }))
                {
                    if (Regex.Replace(path, @"\[\d+\]", "") == choice.Path)
                        said.Add(message);
                }
                return [.. said.Distinct()];
            }
        });
    }

    private static IReadOnlyList<(string Path, string Code, string Message)> Listen(string name, JsonNode document, Action<string, string> heard)
    {
        JsonMistakes mistakes = new() { Heard = heard };
        JsonFields.Root(JsonSerializer.SerializeToElement(document), mistakes).Read<object>(fields =>
        {
            s_readers[name](fields);
            return fields;
        });
        return mistakes.Kept;
    }

    private static void Add(Dictionary<string, SortedSet<string>> objects, string path, string member)
    {
        if (!objects.TryGetValue(path, out SortedSet<string>? members))
            objects[path] = members = new SortedSet<string>(StringComparer.Ordinal);
        members.Add(member);
    }

    private static string[] Lines(Dictionary<string, SortedSet<string>> objects) =>
        [.. objects.Select(one => $"{one.Key}: {string.Join(", ", one.Value)}").Order(StringComparer.Ordinal)];

    // Puts a word at a path, in every element of the arrays on the way; whether there was a place for it.
    private static bool Put(JsonNode? node, ReadOnlySpan<string> path, string word)
    {
        if (node is JsonArray all)
        {
            bool put = false;
            foreach (JsonNode? element in all)
                put |= Put(element, path, word);
            return put;
        }
        if (node is not JsonObject at)
            return false;
        if (path.Length > 1)
            return Put(at[path[0]], path[1..], word);
        at[path[0]] = word;
        // A system is asked for beside an amount that needs it.
        if (path[0] == "system" && !at.ContainsKey("size"))
            at["amount"] = "1 cup";
        return true;
    }

    private static JsonNode Without(JsonNode node, string member)
    {
        if (node is JsonObject at)
        {
            at.Remove(member);
            foreach (JsonNode? inner in at.Select(one => one.Value).OfType<JsonNode>())
                Without(inner, member);
        }
        foreach (JsonNode? element in node as JsonArray ?? [])
            Without(element!, member);
        return node;
    }

    /// <summary>As much of JSON Schema as ours use, read without the library.</summary>
    private sealed class Schema(string name)
    {
        private readonly Dictionary<string, JsonObject> _files = [];

        public JsonObject Root => File(name);

        /// <summary>The members of an object with those of every form that it may have; none of what is no object.</summary>
        public Dictionary<string, JsonObject> Members(JsonObject schema)
        {
            Dictionary<string, JsonObject> members = [];
            foreach (JsonObject form in Forms(schema))
            {
                foreach ((string member, JsonNode? of) in form["properties"]?.AsObject() ?? [])
                {
                    // What "anyOf" adds to a member is a limit, and no member of its own.
                    if (!members.TryGetValue(member, out JsonObject? known) || known.Count < of!.AsObject().Count)
                        members[member] = of!.AsObject();
                }
            }
            return members;
        }

        public void Objects(string path, JsonObject schema, Dictionary<string, SortedSet<string>> found)
        {
            foreach ((string member, JsonObject of) in Members(schema))
            {
                Add(found, path, member);
                Objects($"{path}.{member}", Inner(of), found);
            }
        }

        public void Choices(string path, JsonObject schema, List<(string, string[])> found)
        {
            foreach ((string member, JsonObject of) in Members(schema))
            {
                string at = $"{path}.{member}";
                if (Inner(of)["enum"] is JsonArray words)
                {
                    if (!found.Any(known => known.Item1 == at))
                        found.Add((at, [.. words.Select(word => word!.GetValue<string>())]));
                }
                else
                {
                    Choices(at, Inner(of), found);
                }
            }
        }

        /// <summary>A document with every member that holds others, once for each form; scalars are left out but for constants.</summary>
        public JsonNode Everything(JsonObject schema) => Documents(Resolve(schema)).First();

        private IEnumerable<JsonNode> Documents(JsonObject schema)
        {
            JsonObject[] forms = [.. schema["oneOf"]?.AsArray().Select(form => Resolve(form!.AsObject())) ?? []];
            foreach (JsonObject? form in forms.Length > 0 ? forms : new JsonObject?[1])
            {
                JsonObject made = [];
                foreach (JsonObject part in form is null ? [schema] : (JsonObject[])[schema, form])
                {
                    foreach ((string member, JsonNode? of) in part["properties"]?.AsObject() ?? [])
                    {
                        JsonObject value = Resolve(of!.AsObject());
                        if (value["const"] is JsonNode constant)
                            made[member] = constant.DeepClone();
                        else if (value["type"]?.GetValue<string>() == "array" && Resolve(value["items"]!.AsObject()) is JsonObject items && IsObject(items))
                            made[member] = new JsonArray([.. Documents(items)]);
                        else if (IsObject(value))
                            made[member] = Documents(value).First();
                    }
                }
                yield return made;
            }
        }

        private IEnumerable<JsonObject> Forms(JsonObject schema)
        {
            JsonObject resolved = Resolve(schema);
            return [resolved, .. (JsonObject[])[.. resolved["oneOf"]?.AsArray().Select(form => Resolve(form!.AsObject())) ?? []]];
        }

        // What an array holds, where it is one.
        private JsonObject Inner(JsonObject schema) => Resolve(schema) is var resolved && resolved["items"] is JsonObject items ? Resolve(items) : resolved;

        private static bool IsObject(JsonObject schema) => schema["properties"] is not null || schema["oneOf"] is not null;

        private JsonObject Resolve(JsonObject schema)
        {
            if (schema["$ref"]?.GetValue<string>() is not string reference)
                return schema;
            string[] parts = reference.Split('#');
            JsonNode at = File(parts[0].Length == 0 ? FileOf(schema) : Path.GetFileNameWithoutExtension(parts[0]));
            foreach (string step in parts.Length > 1 ? parts[1].Split('/', StringSplitOptions.RemoveEmptyEntries) : [])
                at = at[step]!;
            return Resolve(at.AsObject());
        }

        private string FileOf(JsonNode node) => _files.Single(file => file.Value == node.Root).Key;

        private JsonObject File(string file)
        {
            if (!_files.TryGetValue(file, out JsonObject? known))
                _files[file] = known = JsonNode.Parse(System.IO.File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", file + ".json")))!.AsObject();
            return known;
        }
    }
}
