using System.Reflection;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Consistency;

/// <summary>A folder of the library is a room, and a room knows only the rooms above it.</summary>
public sealed class RoomTests
{
    /// <summary>What holds the guard of arguments and the helper types of the compiler. Everybody may use it; it knows nobody.</summary>
    private const string Root = "";

    private static readonly Assembly s_library = typeof(Ingredient).Assembly;

    private static readonly IReadOnlyCollection<TypeArrow> s_arrows = AssemblyArrows.Of(s_library);

    private static readonly Dictionary<string, string[]> s_allowed = new()
    {
        [Root] = [],
        // The front door knows every job that it opens, and nobody inside knows the front door.
        [nameof(Kitchen)] = ["Cards", "Conversions", "Cooking", "Eggs", "Formulas", "Heat", "Icings", "Ingredients", "Measures", "Publishing", "Sugars", "Text", "Uncertainty", "Vetting"],
        ["Text"] = [],
        ["Uncertainty"] = ["Text"],
        ["Sources"] = ["Text", "Uncertainty"],
        ["Numerics"] = [],
        ["Measures"] = ["Sources", "Text"],
        ["Ingredients"] = ["Measures", "Sources", "Text", "Uncertainty"],
        ["Phrases"] = ["Ingredients", "Measures", "Sources", "Text", "Uncertainty"],
        ["Conversions"] = ["Ingredients", "Measures", "Phrases", "Sources", "Text", "Uncertainty"],
        ["Formulas"] = ["Conversions", "Ingredients", "Measures", "Numerics", "Phrases", "Sources", "Text", "Uncertainty"],
        ["Sugars"] = ["Formulas", "Ingredients", "Measures", "Numerics", "Sources", "Text", "Uncertainty"],
        ["Cooking"] = ["Formulas", "Ingredients", "Measures", "Numerics", "Sources", "Sugars", "Text", "Uncertainty"],
        ["Safety"] = ["Formulas", "Ingredients", "Measures", "Numerics", "Sources", "Sugars", "Text", "Uncertainty"],
        ["Keeping"] = ["Formulas", "Heat", "Ingredients", "Safety", "Sources", "Sugars", "Text", "Uncertainty"],
        ["Heat"] = ["Formulas", "Ingredients", "Measures", "Numerics", "Sources", "Sugars", "Text", "Uncertainty"],
        ["Labels"] = ["Formulas", "Ingredients", "Measures", "Sources", "Text", "Uncertainty"],
        ["Textures"] = ["Formulas", "Heat", "Ingredients", "Measures", "Sources", "Sugars", "Text", "Uncertainty"],
        ["Troubles"] = ["Cooking", "Formulas", "Heat", "Ingredients", "Keeping", "Sources", "Sugars", "Text", "Textures", "Uncertainty"],
        ["Eggs"] = ["Conversions", "Cooking", "Formulas", "Ingredients", "Measures", "Sources", "Sugars", "Text", "Textures", "Uncertainty"],
        ["Cakes"] = ["Measures", "Numerics", "Sources", "Text", "Uncertainty"],
        ["Baking"] = ["Cakes", "Conversions", "Formulas", "Ingredients", "Measures", "Sources", "Text", "Uncertainty"],
        ["Icings"] = ["Cakes", "Eggs", "Formulas", "Ingredients", "Measures", "Text", "Textures", "Uncertainty"],
        ["Comparisons"] = ["Conversions", "Formulas", "Heat", "Ingredients", "Keeping", "Sources", "Sugars", "Text", "Uncertainty"],
        ["Costs"] = ["Cakes", "Conversions", "Formulas", "Icings", "Ingredients", "Measures", "Sources", "Text", "Uncertainty"],
        ["Pictures"] = ["Cakes", "Formulas", "Heat", "Sources", "Uncertainty"],
        ["Publishing"] = ["Cakes", "Conversions", "Formulas", "Icings", "Ingredients", "Labels", "Measures", "Sources", "Text", "Uncertainty"],
        ["Layouts"] = ["Ingredients", "Measures", "Phrases", "Text"],
        // What programs with UnitsNet see of the others. It stands below all of them, the front door too, so that no room can come to need a quantity.
        ["Units"] = [nameof(Kitchen), "Cakes", "Conversions", "Cooking", "Formulas", "Heat", "Icings", "Ingredients", "Measures", "Safety", "Sugars", "Uncertainty"],
        ["Cards"] = ["Formulas", "Ingredients", "Layouts", "Measures", "Phrases", "Text", "Uncertainty"],
        ["Vetting"] = ["Cards", "Conversions", "Cooking", "Eggs", "Formulas", "Ingredients", "Labels", "Layouts", "Measures", "Numerics", "Phrases", "Sugars", "Text", "Uncertainty"],
    };

    [Fact]
    public void ARoomKnowsOnlyTheRoomsAboveIt() => Assert.Empty(Broken(s_allowed));

    // A permission that nobody uses is an arrow that may come in unseen.
    [Fact]
    public void EveryPermissionIsUsed() => Assert.Empty(s_allowed.SelectMany(room => room.Value.Where(known =>
        Broken(new Dictionary<string, string[]>(s_allowed) { [room.Key] = [.. room.Value.Where(other => other != known)] }).Length == 0)
        .Select(known => $"{room.Key} never uses {known}")));

    [Fact]
    public void ARoomOfTheLibraryStandsInTheTable() =>
        Assert.Empty(s_library.GetTypes().Select(RoomOf).Where(room => !s_allowed.ContainsKey(room)).Distinct());

    [Fact]
    public void TheTableHasNoCircle()
    {
        // Taking away, again and again, the rooms that know nobody left must empty the table.
        HashSet<string> left = [.. s_allowed.Keys];
        while (left.RemoveWhere(room => !s_allowed[room].Any(left.Contains)) > 0)
        {
        }
        Assert.Empty(left);
    }

    // Arrows of every kind that are known to exist: taking one out of the table must fail, or the check sees nothing.
    [Theory]
    [InlineData("Conversions", "Ingredients", nameof(Conversion))] // property, field, signature
    [InlineData("Ingredients", "Measures", nameof(WeightFact))]
    [InlineData("Sources", "Text", nameof(Bibliography))] // only inside method bodies
    [InlineData("Measures", "Sources", nameof(MeasuringSystem))]
    public void AForbiddenArrowIsFound(string from, string to, string type)
    {
        Dictionary<string, string[]> stricter = new(s_allowed) { [from] = [.. s_allowed[from].Where(room => room != to)] };
        Assert.Contains(Broken(stricter), line => line.Contains(from + " -> " + to, StringComparison.Ordinal) && line.Contains(type, StringComparison.Ordinal));
    }

    [Fact]
    public void ArrowsInsideMethodBodiesAndClosuresAreSeen()
    {
        // The bibliography reads its table in a lambda of a static method: no signature or field of it says so.
        Assert.Contains(s_arrows, arrow => arrow.From == typeof(Bibliography) && arrow.To.Name == "EmbeddedTable"
            && arrow.Where.StartsWith("body", StringComparison.Ordinal));
        Assert.Contains(s_arrows, arrow => arrow.From.IsNested && arrow.From.DeclaringType == typeof(Bibliography) && arrow.To.Name == "DelimitedRow");
        Assert.Contains(s_arrows, arrow => arrow.From == typeof(Conversion) && arrow.To.Name == "Guard");
    }

    [Fact]
    public void MathNetIsKnownOnlyInNumericsAndNeverInASignatureThatIsPublic() =>
        AssertOutside("MathNet.Numerics", arrow => RoomOf(arrow.From) == "Numerics" && !IsVisible(arrow.From));

    [Fact]
    public void TheDelimitedTextParserIsKnownOnlyInText()
    {
        AssertOutside("Sep", arrow => RoomOf(arrow.From) == "Text" && !IsVisible(arrow.From));
        Assert.Contains(s_arrows, arrow => AssemblyOf(arrow.To) == "Sep");
    }

    [Fact]
    public void TheParserOfPagesIsKnownOnlyInLayouts()
    {
        AssertOutside("AngleSharp", arrow => RoomOf(arrow.From) == "Layouts" && !IsVisible(arrow.From));
        Assert.Contains(s_arrows, arrow => AssemblyOf(arrow.To) == "AngleSharp");
    }

    // A quantity crosses the edge of one member and goes no further: no field keeps one, and no room inside has one in a signature.
    [Fact]
    public void UnitsNetIsKnownOnlyInUnitsAndNeverKept()
    {
        AssertOutside("UnitsNet", arrow => RoomOf(arrow.From) == "Units" && !arrow.Where.StartsWith("field", StringComparison.Ordinal)
            && !arrow.Where.StartsWith("base", StringComparison.Ordinal));
        Assert.Contains(s_arrows, arrow => AssemblyOf(arrow.To) == "UnitsNet");
        Assert.DoesNotContain(s_arrows, arrow => RoomOf(arrow.To) == "Units" && RoomOf(arrow.From) != "Units");
    }

    // Forms of egg, water, pans, names of egg: all are of the caller's table. Whoever wants the built-in one says so, or takes a kitchen.
    [Fact]
    public void TheBuiltInTableIsReadOnlyWhereItIsMadeAndAtTheFrontDoor()
    {
        MethodInfo builtIn = typeof(IngredientTable).GetProperty(nameof(IngredientTable.BuiltIn))!.GetMethod!;
        // The room of the table itself asks it which food another food table printed a figure for.
        Assert.Equal([typeof(Kitchen)], AssemblyArrows.CallersOf(s_library, builtIn).Where(caller => RoomOf(caller) != "Ingredients"));
        Assert.Contains(typeof(IngredientTable), AssemblyArrows.CallersOf(s_library,
            typeof(IngredientTable).GetField("s_builtIn", BindingFlags.NonPublic | BindingFlags.Static)!));
    }

    [Fact]
    public void NothingElseIsKnown()
    {
        string[] known = ["AngleSharp", "Confectio", "MathNet.Numerics", "Sep", "UnitsNet"];
        Assert.DoesNotContain(s_arrows.Select(arrow => AssemblyOf(arrow.To)).Distinct(),
            name => !known.Contains(name) && !name.StartsWith("System.", StringComparison.Ordinal));
    }

    private static void AssertOutside(string assembly, Func<TypeArrow, bool> allowed) =>
        Assert.Empty(s_arrows.Where(arrow => AssemblyOf(arrow.To) == assembly && !allowed(arrow)).Select(Line));

    private static string[] Broken(Dictionary<string, string[]> allowed) =>
    [
        .. s_arrows.Where(arrow => arrow.To.Assembly == s_library)
            .Select(arrow => (From: RoomOf(arrow.From), To: RoomOf(arrow.To), Arrow: arrow))
            .Where(step => step.From != step.To && step.To != Root && !(allowed.TryGetValue(step.From, out string[]? rooms) && rooms.Contains(step.To)))
            .Select(step => $"{step.From} -> {step.To}: {Line(step.Arrow)}"),
    ];

    private static string Line(TypeArrow arrow) => $"{arrow.From} knows {arrow.To} ({arrow.Where})";

    private static string RoomOf(Type type)
    {
        if ((type.DeclaringType ?? type) == typeof(Kitchen))
            return nameof(Kitchen);
        string[] parts = (type.Namespace ?? "").Split('.');
        return parts[0] == "Confectio" && parts.Length > 1 ? parts[1] : Root;
    }

    private static string AssemblyOf(Type type) => type.Assembly.GetName().Name!;

    private static bool IsVisible(Type type) => type.IsVisible;
}
