using Confectio.Ingredients;
using Confectio.Tests.Text;

namespace Confectio.Tests.Data;

/// <summary>The tables as they stand in the assembly and in the oracles, read without the library's own reader.</summary>
internal static class Tables
{
    public static List<Dictionary<string, string>> Sources { get; } = Embedded("sources.csv");

    public static List<Dictionary<string, string>> Ingredients { get; } = Embedded("ingredients.csv");

    public static List<Dictionary<string, string>> Weights { get; } = Embedded("weights.csv");

    public static List<Dictionary<string, string>> Spreads { get; } = Embedded("spreads.csv");

    public static List<Dictionary<string, string>> CompositionSpreads { get; } = Embedded("composition_spreads.csv");

    /// <summary>USDA Standard Reference, composition.</summary>
    public static List<Dictionary<string, string>> StandardReference { get; } = Oracle("usda-sr-composition.csv");

    /// <summary>USDA Standard Reference, household weights.</summary>
    public static List<Dictionary<string, string>> HouseholdWeights { get; } = Oracle("usda-sr-household-weights.csv");

    /// <summary>Those and the ones of other foods, read in the weight file of Release 28 alone.</summary>
    public static List<Dictionary<string, string>> AllHouseholdWeights { get; } = [.. HouseholdWeights, .. Oracle("usda-sr28-more-household-weights.csv")];

    /// <summary>Ciqual French food composition table, the foods that are taken whole.</summary>
    public static List<Dictionary<string, string>> Ciqual { get; } = Oracle("ciqual-2020-composition.csv", "ciqual");

    public static List<Dictionary<string, string>> Of(string table) => table switch
    {
        "sources" => Sources,
        "ingredients" => Ingredients,
        "weights" => Weights,
        "composition_spreads" => CompositionSpreads,
        "spreads" => Spreads,
        _ => Embedded(table + ".csv"),
    };

    /// <summary>The names of all tables in the assembly.</summary>
    public static IEnumerable<string> Names => typeof(Ingredient).Assembly.GetManifestResourceNames()
        .Where(name => name.EndsWith(".csv", StringComparison.Ordinal)).Select(name => name.Split('.')[^2]);

    /// <summary>The keys of sources that the rows of all tables name, in whatever column.</summary>
    public static IEnumerable<string> SourceKeys => Names.SelectMany(Of).SelectMany(row => row)
        .Where(cell => (cell.Key == "source" || cell.Key.EndsWith("_source", StringComparison.Ordinal)) && cell.Value.Length > 0).Select(cell => cell.Value);

    private static List<Dictionary<string, string>> Embedded(string file)
    {
        using StreamReader text = new(typeof(Ingredient).Assembly.GetManifestResourceStream("Confectio.Data." + file)!);
        return Rfc4180.Read(text);
    }

    private static List<Dictionary<string, string>> Oracle(string file, string room = "usda-sr")
    {
        using StreamReader text = new(Path.Combine(AppContext.BaseDirectory, "Oracles", room, file));
        return Rfc4180.Read(text);
    }
}
