using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients.Names;

/// <summary>What a descriptor does to the food whose name it stands in.</summary>
internal enum DescriptorMeaning : byte
{
    /// <summary>Nothing: cold, organic.</summary>
    Neutral,

    /// <summary>It says how the measure is filled: sifted.</summary>
    Packing,

    /// <summary>It says what was done, and is kept: cubed.</summary>
    Preparation,

    /// <summary>It makes another food: low-fat. It is never dropped.</summary>
    Food,
}

/// <summary>One row of descriptors.csv: words, what they do, and to which foods.</summary>
internal sealed class Descriptor
{
    private const string Class = "class:";

    // An enum writes itself anew whenever it is asked.
    private static readonly string[] s_classes = Enum.GetNames<IngredientClass>();

    private static readonly Lazy<Descriptor[]> s_all = new(Read);

    private Descriptor(string words, DescriptorMeaning meaning, Packing? packing, string[] of)
    {
        Words = words;
        Meaning = meaning;
        Packing = packing;
        Of = of;
    }

    public static IReadOnlyList<Descriptor> All => s_all.Value;

    public string Words { get; }

    public DescriptorMeaning Meaning { get; }

    public Packing? Packing { get; }

    /// <summary>The foods that the row is meant for, by id, by the beginning of an id, or by class; empty for every food.</summary>
    public string[] Of { get; }

    /// <summary>Whether the row is meant for this food.</summary>
    public bool IsOf(Ingredient food)
    {
        foreach (string pattern in Of)
        {
            if (Fits(pattern, food))
                return true;
        }
        return Of.Length == 0;
    }

    /// <summary>
    /// Whether a food has this id (<c>honey</c>), an id that begins so (<c>oil-*</c>), or this class (<c>class:powder</c>).
    /// </summary>
    public static bool Fits(string pattern, Ingredient food) => pattern.StartsWith(Class, StringComparison.Ordinal)
        ? pattern.AsSpan(Class.Length).Equals(s_classes[(int)food.Class], StringComparison.OrdinalIgnoreCase)
        : pattern[^1] == '*' ? food.Id.AsSpan().StartsWith(pattern.AsSpan(0, pattern.Length - 1), StringComparison.Ordinal)
            : food.Id == pattern;

    private static Descriptor[] Read()
    {
        List<Descriptor> all = [];
        EmbeddedTable.Read("descriptors.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            DescriptorMeaning meaning = fields.Enum<DescriptorMeaning>("meaning");
            Packing? packing = PackingText.TryRead(fields.Word("packing"), out Packing read) ? read : null;
            if (packing is not null != (meaning == DescriptorMeaning.Packing))
                fields.Problem("packing", "a packing stands where the meaning is packing, and only there");
            all.Add(new Descriptor(fields.Required("words"), meaning, packing,
                fields.Word("of").Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)));
        });
        return [.. all];
    }
}
