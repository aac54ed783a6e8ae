using System.Diagnostics.CodeAnalysis;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Eggs;

/// <summary>
/// The forms of egg that a table of ingredients has, each with its composition and densities of that table, and the water that a powder
/// is made up with.
/// </summary>
/// <remarks>
/// Whoever layers a table of their own over the built-in one gets forms of their own: <c>EggForms.Of(table).FreshWhite</c> is the white of
/// that table. A form whose ingredient the table lacks is not among them; without fresh egg, the three common whites and water there
/// are no forms.
/// </remarks>
public sealed class EggForms
{
    private static readonly Row[] s_rows = ReadRows();

    // Without these there is nothing to compare with, and nothing to make a powder up with.
    private static readonly string[] s_needed = [.. ((string[])["fresh-white", "pasteurised-white", "dried-white", "fresh-yolk",
        "fresh-whole"])
        .Select(key => Array.Find(s_rows, row => row.Key == key)!.Ingredient), "water"];

    private readonly IngredientTable _ingredients;
    private readonly EggForm[] _all;

    private EggForms(IngredientTable ingredients)
    {
        _ingredients = ingredients;
        _all =
        [
            .. s_rows.Where(row => ingredients.HasId(row.Ingredient)).Select(row => new EggForm(this, row.Key, row.Name, row.Part,
                ingredients.Get(row.Ingredient), row.IsDry, row.Preparation, row.Note, row.Provenance, row.SpecifiedMoisture)),
        ];
    }

    /// <summary>All forms that the table has, white first, then yolk, then whole egg.</summary>
    public IReadOnlyList<EggForm> All => _all;

    /// <summary>Fresh white.</summary>
    public EggForm FreshWhite => Known("fresh-white");

    /// <summary>Pasteurised liquid white.</summary>
    public EggForm PasteurisedWhite => Known("pasteurised-white");

    /// <summary>Dried white, glucose removed.</summary>
    public EggForm DriedWhite => Known("dried-white");

    /// <summary>The forms of a table.</summary>
    /// <param name="ingredients">The table: the built-in one, or one layered over it, or one of your own.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredients"/> is null.</exception>
    /// <exception cref="ArgumentException">The table lacks an ingredient that is needed; the message names it.</exception>
    public static EggForms Of(IngredientTable ingredients)
    {
        Guard.NotNull(ingredients);
        return MissingFrom(ingredients) is not string id ? new EggForms(ingredients)
            : throw new ArgumentException($"{nameof(ingredients)} has no '{id}', which the forms of egg need; layer your own table over "
                + $"one that has it.", nameof(ingredients));
    }

    /// <summary>The first ingredient that the forms need and the table lacks.</summary>
    internal static string? MissingFrom(IngredientTable ingredients) => Array.Find(s_needed, id => !ingredients.HasId(id));

    /// <summary>The form of a key or name.</summary>
    /// <param name="name">The key or the name, such as <c>dried-white</c>.</param>
    /// <exception cref="ArgumentException">The table has no such form; the message lists those it has.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public EggForm Get(string name) => Get(name, nameof(name));

    /// <summary>The same for a caller whose parameter has another name.</summary>
    internal EggForm Get(string name, string parameter) =>
        Keyed.Get(_all, name, "form of egg", "forms", known => known.Key, known => known.Name, parameter);

    /// <summary>The form of a key or name, where there is one.</summary>
    /// <param name="name">The key or the name, such as <c>dried-white</c>.</param>
    /// <param name="form">The form, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public bool TryGet(string name, [NotNullWhen(true)] out EggForm? form) =>
        (form = Keyed.Find(_all, name, known => known.Key, known => known.Name)) is not null;

    /// <summary>How many forms, such as <c>13 forms of egg</c>.</summary>
    public override string ToString() => $"{_all.Length} forms of egg";

    /// <summary>Fresh egg as it comes out of the shell, of a part.</summary>
    internal EggForm Fresh(EggPart part) => Known(FreshKey(part));

    /// <summary>The id of the ingredient that a part of a fresh egg is, in every table.</summary>
    internal static string FreshId(EggPart part) => Array.Find(s_rows, row => row.Key == FreshKey(part))!.Ingredient;

    /// <summary>Whether an ingredient is the white of an egg in one of its forms, in every table.</summary>
    internal static bool IsWhite(Ingredient ingredient) => Array.Exists(s_rows, row => row.Part == EggPart.White
        && row.Ingredient == ingredient.Id);

    /// <summary>An ingredient of the table that the arithmetic needs beside the egg, such as its water.</summary>
    internal Ingredient Needed(string id) => _ingredients.HasId(id) ? _ingredients.Get(id)
        : throw new InvalidOperationException($"The table of ingredients has no '{id}', which is needed beside the egg.");

    private static string FreshKey(EggPart part) => Guard.Defined(part) switch
    {
        EggPart.Whole => "fresh-whole",
        EggPart.White => "fresh-white",
        EggPart.Yolk => "fresh-yolk",
        _ => throw new ArgumentException($"{nameof(part)} was {part}; whole, white or yolk is a form of egg.", nameof(part)),
    };

    private EggForm Known(string key) => Array.Find(_all, form => form.Key == key)!;

    private static Row[] ReadRows()
    {
        List<Row> rows = [];
        EmbeddedTable.Read("egg_forms.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string dry = fields.Required("dry");
            if (dry is not ("yes" or "no"))
                fields.Problem("dry", $"{Excerpt.Of(dry)} is neither yes nor no");
            rows.Add(new Row(fields.Required("form"), fields.Required("name"), fields.Enum<EggPart>("part"), fields.Required("ingredient"),
                dry == "yes", fields.Word("preparation"), fields.Word("note"),
                fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note")),
                fields.Number("specified_moisture_percent", 0, 100 * EggForm.MaximumMoisture) / 100));
        });
        return [.. rows];
    }

    private sealed record Row(string Key, string Name, EggPart Part, string Ingredient, bool IsDry, string Preparation, string Note,
        Provenance Provenance, double? SpecifiedMoisture);
}
