using System.Text.Json;
using Confectio.Cakes;
using Confectio.Tests.Consistency;
using Xunit;

namespace Confectio.Tests.Cakes;

/// <summary>Plans and bodies are closed families: who reads, covers or draws a cake asks the shape, and never which shape it is.</summary>
public sealed class ShapeFamilyTests
{
    private static readonly Type[] s_members =
    [
        .. typeof(PlanShape).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(PlanShape)) || type.IsSubclassOf(typeof(CakeBody))),
    ];

    // One that has a form of its own makes others of it, and knows the plan that it stands on.
    private static readonly string[] s_makers = [nameof(PlanShape), nameof(CakeBody), "ShapeWord", "CoatedForm", "CoatedPrism"];

    [Fact]
    public void NobodyElseKnowsAShapeByItsClass()
    {
        Assert.True(s_members.Length >= 13);
        string[] knowing =
        [
            .. AssemblyArrows.Of(typeof(PlanShape).Assembly).Where(arrow => s_members.Contains(arrow.To))
                .Select(arrow => Outermost(arrow.From)).Where(type => !s_members.Contains(type) && !s_makers.Contains(type.Name))
                .Select(type => type.Name).Distinct(),
        ];
        Assert.Empty(knowing);
    }

    [Fact]
    public void NoPropertyTellsTheKind() => Assert.DoesNotContain(
        s_members.Concat([typeof(PlanShape), typeof(CakeBody)]).SelectMany(type => type.GetProperties()),
        property => property.PropertyType.IsEnum || property.Name == "Kind");

    // What an order may say, by the schema that we publish for other programs.
    [Fact]
    public void TheWordsAndSizesAreThoseOfTheSchema()
    {
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Docs", "order.json")));
        Dictionary<string, string[]> published = [];
        foreach (JsonElement shape in schema.RootElement.GetProperty("$defs").GetProperty("tier").GetProperty("oneOf").EnumerateArray())
        {
            string word = shape.GetProperty("properties").GetProperty("shape").GetProperty("const").GetString()!;
            IEnumerable<string> sizes = shape.GetProperty("properties").EnumerateObject().Select(size => size.Name)
                .Where(name => name != "shape");
            published[word] = [.. published.GetValueOrDefault(word, []).Union(sizes)];
        }
        Assert.Equal(published.Keys.Order(), ShapeWord.All.Select(shape => shape.Word).Order());
        Assert.All(ShapeWord.All, shape => Assert.Equal(published[shape.Word].Order(), shape.Sizes.Order()));
    }

    private static Type Outermost(Type type) => type.DeclaringType is Type outer ? Outermost(outer) : type;
}
