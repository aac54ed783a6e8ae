using System.Diagnostics.CodeAnalysis;
using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Eggs;

/// <summary>
/// What is whipped in place of egg white by a ratio of the kitchen, so many spoons a white: meringue powder, aquafaba. Never by solids, which mean nothing here; dried white is made
/// up by its solids (<see cref="EggReplacement"/>). Gelatine and other gums are not here: no ratio of them as a foam in place of white was found.
/// </summary>
/// <remarks>Caution: <see cref="EggCaution.Text"/></remarks>
public sealed class FoamFormer
{
    private static readonly FoamFormer[] s_all = ReadBuiltIn();

    private FoamFormer(string key, string ingredientId, Amount amount, Amount? water, string[] changes, Provenance provenance)
    {
        Key = key;
        IngredientId = ingredientId;
        Amount = amount;
        Water = water;
        Changes = changes;
        Provenance = provenance;
    }

    /// <summary>The foam formers: <c>meringue-powder</c> and <c>aquafaba</c>.</summary>
    public static IReadOnlyList<FoamFormer> All => s_all;

    /// <summary>The key, such as <c>aquafaba</c>.</summary>
    public string Key { get; }

    /// <summary>The id of the ingredient.</summary>
    public string IngredientId { get; }

    /// <summary>How much replaces the white of a US large egg, 33 g, in US spoons.</summary>
    public Amount Amount { get; }

    /// <summary>The water with it, in US spoons; <see langword="null"/> where none is added.</summary>
    public Amount? Water { get; }

    /// <summary>What changes: allergen, heat, stability, whether it is vegan.</summary>
    public IReadOnlyList<string> Changes { get; }

    /// <summary>What the ratio rests on.</summary>
    public Provenance Provenance { get; }

    /// <summary>The foam former of a key.</summary>
    /// <param name="key">The key.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such foam former; the message lists those there are.</exception>
    public static FoamFormer Get(string key) => Keyed.Get(s_all, key, "foam former", "foam formers", known => known.Key);

    /// <summary>The foam former of a key, where there is one.</summary>
    /// <param name="key">The key.</param>
    /// <param name="former">The foam former, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public static bool TryGet(string key, [NotNullWhen(true)] out FoamFormer? former) => (former = Keyed.Find(s_all, key, known => known.Key)) is not null;

    /// <summary>What comes in for so much white.</summary>
    /// <param name="whiteGrams">The white that goes out, g, from 1e-9 to 1e9.</param>
    /// <param name="ingredients">The table of the foods.</param>
    /// <returns>The replacement. Worked number: 33 g of white by meringue powder: 8.6 g of it (6.6 to 11.1) and 29.5 g of water.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredients"/> is null.</exception>
    /// <exception cref="ArgumentException">The table lacks the foam former or water.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="whiteGrams"/> is outside its range.</exception>
    public FoamFormerReplacement Replace(double whiteGrams, IngredientTable ingredients)
    {
        double whites = Guard.InRange(whiteGrams, Guard.Trace, 1e9) / FoamFormerReplacement.WhiteOfALargeEgg;
        Ingredient comesIn = Needed(Guard.NotNull(ingredients), IngredientId);
        Spread grams = Conversion.Of(comesIn, MeasuringSystem.UsCustomary).ToMass(Amount).Grams * whites;
        Ingredient water = Needed(ingredients, "water");
        Spread wet = Water is Amount spoons ? Conversion.Of(water, MeasuringSystem.UsCustomary).ToMass(spoons).Grams * whites : default;
        return new FoamFormerReplacement(this, whiteGrams, comesIn, grams, water, wet);
    }

    /// <summary>The ratio in a line, such as <c>aquafaba: 2 Tbsp a white (common practice)</c>.</summary>
    public override string ToString() => $"{Key.Replace('-', ' ')}: {Amount}{(Water is Amount water ? $" and {water} of water" : "")} a white ({Provenance.Evidence.ToWord().Replace('-', ' ')})";

    private static Ingredient Needed(IngredientTable ingredients, string id) => ingredients.TryGet(id, out Ingredient? known) ? known
        : throw new ArgumentException($"{nameof(ingredients)} has no '{id}', which the replacement needs.", nameof(ingredients));

    // What names no source of its own is of the kind of the row.
    private static string Sourced(string change, Provenance provenance) => change.EndsWith(").", StringComparison.Ordinal) ? change
        : $"{change.TrimEnd('.')} ({provenance.Evidence.ToWord().Replace('-', ' ')}).";

    private static FoamFormer[] ReadBuiltIn()
    {
        List<FoamFormer> all = [];
        EmbeddedTable.Read("foam_formers.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string water = fields.Word("water");
            Provenance provenance = fields.Provenance("source", "kind", "", fields.Word("note"));
            all.Add(new FoamFormer(fields.Required("former"), fields.Required("ingredient"), Amount.Parse(fields.Required("amount")), water.Length > 0 ? Amount.Parse(water) : null,
                [.. fields.Required("changes").Split('|').Select(change => Sourced(change, provenance))], provenance));
        });
        return [.. all];
    }
}
