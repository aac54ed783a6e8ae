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
    private static readonly Lazy<Descriptor[]> s_all = new(Read);

    private readonly string[] _of;

    private Descriptor(string words, DescriptorMeaning meaning, Packing? packing, string[] of)
    {
        Words = words;
        Meaning = meaning;
        Packing = packing;
        _of = of;
    }

    public static IReadOnlyList<Descriptor> All => s_all.Value;

    public string Words { get; }

    public DescriptorMeaning Meaning { get; }

    public Packing? Packing { get; }

    /// <summary>Whether the row is meant for this food: every food where the row names none, else by id, the beginning of an id, or class.</summary>
    public bool IsOf(Ingredient food)
    {
        if (_of.Length == 0)
            return true;
        foreach (string pattern in _of)
        {
            if (pattern.StartsWith("class:", StringComparison.Ordinal)
                ? pattern.AsSpan(6).Equals(food.Class.ToString(), StringComparison.OrdinalIgnoreCase)
                : pattern[^1] == '*' ? food.Id.AsSpan().StartsWith(pattern.AsSpan(0, pattern.Length - 1), StringComparison.Ordinal) : food.Id == pattern)
                return true;
        }
        return false;
    }

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
