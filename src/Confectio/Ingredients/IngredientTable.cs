using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Confectio.Ingredients.Names;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>
/// Ingredients by id, name and alias. The built-in table can be layered over with tables of your own in the same format;
/// a table never changes, a layer makes a new one.
/// </summary>
/// <remarks>
/// Names are compared without regard to case, accents, repeated spaces or the shape of an apostrophe, in every culture alike.
/// A name that is not known is never guessed: the answer is a miss with the nearest names beside it.
/// </remarks>
public sealed class IngredientTable
{
    private static readonly Lazy<IngredientTable> s_builtIn = new(() => new IngredientTable(CarriedFoods.Read()));

    private static readonly Lazy<Dictionary<string, string>> s_american = new(ReadAmericanNames);

    private readonly Dictionary<string, Ingredient> _byId;
    private readonly Dictionary<string, Ingredient> _byName;
    private readonly Lazy<NameBook> _names;

    internal IngredientTable(IEnumerable<Ingredient> ingredients)
    {
        All = [.. ingredients];
        _names = new Lazy<NameBook>(() => new NameBook(All));
        _byId = new Dictionary<string, Ingredient>(All.Count, StringComparer.Ordinal);
        _byName = new Dictionary<string, Ingredient>(All.Count * 6, StringComparer.Ordinal);
        foreach (Ingredient ingredient in All)
        {
            _byId.Add(ingredient.Id, ingredient);
            // Later rows win, so that a layer's names stand before those of what it covers.
            _byName[NameKey.Of(ingredient.Name)] = ingredient;
            foreach (IngredientName alias in ingredient.Aliases)
                _byName[NameKey.Of(alias.Text)] = ingredient;
        }
        foreach (Ingredient ingredient in All)
            _byName[NameKey.Of(ingredient.Id)] = ingredient;
    }

    /// <summary>A table without ingredients, to layer your own on.</summary>
    public static IngredientTable Empty { get; } = new([]);

    /// <summary>The built-in table.</summary>
    public static IngredientTable BuiltIn => s_builtIn.Value;

    /// <summary>All ingredients, in the order of their tables.</summary>
    public IReadOnlyList<Ingredient> All { get; }

    /// <summary>The ingredient of an id, a name or an alias.</summary>
    /// <param name="name">The id, name or alias, such as <c>icing sugar</c>.</param>
    /// <returns>The ingredient.</returns>
    /// <exception cref="ArgumentException">Nothing goes by this name; the message suggests near names.</exception>
    public Ingredient Get(string name)
    {
        if (TryGet(name, out Ingredient? ingredient))
            return ingredient;
        IReadOnlyList<string> near = Suggest(name);
        throw new ArgumentException($"{Excerpt.Of(name)} is not an ingredient of this table" +
            (near.Count == 0 ? "." : $"; near names: {string.Join(", ", near)}."), nameof(name));
    }

    /// <summary>The ingredient of an id, a name or an alias, where there is one.</summary>
    /// <param name="name">The id, name or alias.</param>
    /// <param name="ingredient">The ingredient, or <see langword="null"/>.</param>
    /// <returns>Whether something goes by this name.</returns>
    public bool TryGet(string name, [NotNullWhen(true)] out Ingredient? ingredient) =>
        _byName.TryGetValue(NameKey.Of(Guard.NotNull(name)), out ingredient);

    /// <summary>
    /// What a name means as people print it: with marks, plurals, commas, brackets, slashes and words that change nothing
    /// ("cold", "organic") or say the packing ("sifted"). A word that changes the food is never dropped; in doubt there is none.
    /// </summary>
    /// <remarks>
    /// The words and what they do stand in descriptors.csv, spellings of one word in spellings.csv, names that mean two foods in
    /// unclear_names.csv. Of a longer text than 200 characters, or of more than 40 words and marks, nothing is read. Examples:
    /// "Sugar - granulated" is granulated sugar; "unsalted butter, softened" unsalted butter, softened; "caster (superfine) sugar" caster
    /// sugar; "butter/margarine" means two; "almond milk" and "2% milk" are none.
    /// </remarks>
    /// <param name="name">The id, the name or the alias, with what stands about it.</param>
    /// <param name="acceptSpelling">
    /// How many letters in all may be slips of the finger, from 0 to 4. A food is then taken where exactly one is nearest; the match
    /// says how far it was.
    /// </param>
    /// <returns>The match: a food, two, or none with the reason.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="acceptSpelling"/> is outside its range.</exception>
    public NameMatch MatchName(string name, int acceptSpelling = 0)
    {
        NameMatch match = NameMatcher.Match(this, Guard.NotNull(name));
        if (Guard.InRange(acceptSpelling, 0, 4) == 0 || match.Ingredient is not null || match.Suggestions is not { Count: > 0 } near)
            return match;
        NameSuggestion nearest = near[0];
        if (nearest.Distance > acceptSpelling || near.Count > 1 && near[1].Distance == nearest.Distance)
            return match;
        NameMatch mended = NameMatcher.Match(this, nearest.Name);
        return new NameMatch(this, name, NameMiss.None, null)
        {
            Ingredient = mended.Ingredient, Packing = mended.Packing, Preparation = mended.Preparation, Ignored = mended.Ignored,
            SpellingDistance = nearest.Distance,
        };
    }

    /// <summary>The names as words, made when they are first asked for.</summary>
    internal NameBook Names => _names.Value;

    /// <summary>
    /// The ingredient of an id or a name as it stands. A comma turns the words round, so what has one needs a name with one: "milk,
    /// chocolate" is the drink, and no milk chocolate.
    /// </summary>
    internal bool TryGetExact(string name, [NotNullWhen(true)] out Ingredient? ingredient)
    {
        string key = NameKey.Of(name);
        if (!_byName.TryGetValue(key, out ingredient))
            return false;
        if (!name.AsSpan().ContainsAny(',', ';') || NameKey.Of(ingredient.Name) == key && ingredient.Name.Contains(','))
            return true;
        foreach (IngredientName alias in ingredient.Aliases)
        {
            if (alias.Text.Contains(',') && NameKey.Of(alias.Text) == key)
                return true;
        }
        return false;
    }

    /// <summary>Whether an ingredient has this id, which no alias does for it.</summary>
    internal bool HasId(string id) => _byId.ContainsKey(id);

    /// <summary>The names nearest to one that is not known: same words in another order, or a few letters off.</summary>
    /// <param name="name">The name.</param>
    /// <param name="most">How many names at most, from 1 to 20.</param>
    /// <returns>Display names of different ingredients, the nearest first; empty where nothing is near.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="most"/> is outside its range.</exception>
    public IReadOnlyList<string> Suggest(string name, int most = 3)
    {
        Guard.InRange(most, 1, 20);
        return NearNames.Of(NameKey.Of(Guard.NotNull(name)), _byName, most);
    }

    /// <summary>
    /// A table with rows of your own over this one: an id that is known is replaced (its weights stay), a new id is added.
    /// </summary>
    /// <param name="ingredients">Delimited text in the format of the built-in ingredients.csv.</param>
    /// <returns>The new table, and every row that could not be used, with its line and column; the other rows are in the table.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredients"/> is null.</exception>
    public Reading<IngredientTable> LayerIngredients(TextReader ingredients)
    {
        ProblemList found = [];
        Dictionary<string, Ingredient> read = new(StringComparer.Ordinal);
        foreach ((IngredientNames names, IngredientRecord record) in IngredientReader.Read(Guard.NotNull(ingredients), found))
            read.Add(names.Id, new Ingredient(names, record, _byId.TryGetValue(names.Id, out Ingredient? known) ? known.Weights : []));
        return new Reading<IngredientTable>(new IngredientTable([.. All.Where(known => !read.ContainsKey(known.Id)), .. read.Values]),
            "These ingredients cannot all be used", found, found.Total);
    }

    /// <summary>
    /// A table with one food more, such as one from its label: where its id is known it takes that food's place, and keeps its weights
    /// unless it brings its own.
    /// </summary>
    /// <param name="ingredient">The food.</param>
    /// <returns>The new table. Its names stand before those of the table below.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    public IngredientTable With(Ingredient ingredient)
    {
        Guard.NotNull(ingredient);
        if (!_byId.TryGetValue(ingredient.Id, out Ingredient? known))
            return new IngredientTable([.. All, ingredient]);
        // How a food fills a cup is that of the food whose weights it keeps.
        Ingredient placed = ingredient.Weights.Count > 0 ? ingredient : new Ingredient(
            ingredient.Names with { Class = known.Class }, ingredient.Record with { DefaultPacking = known.DefaultPacking }, known.Weights);
        return new IngredientTable([.. All.Where(other => other.Id != ingredient.Id), placed]);
    }

    /// <summary>
    /// A table with weights of your own over this one. Your figures for a packing or a piece replace the ones known for it.
    /// </summary>
    /// <param name="weights">Delimited text in the format of the built-in weights.csv.</param>
    /// <returns>The new table, and every row that could not be used, with its line and column; the other rows are in the table.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="weights"/> is null.</exception>
    public Reading<IngredientTable> LayerWeights(TextReader weights)
    {
        ProblemList found = [];
        ILookup<string, WeightFact> facts = WeightReader.Read(Guard.NotNull(weights), _byId, found)
            .ToLookup(row => row.Id, row => row.Fact, StringComparer.Ordinal);
        return new Reading<IngredientTable>(new IngredientTable(All.Select(known => facts.Contains(known.Id)
            ? new Ingredient(known.Names, known.Record, [.. known.Weights.Where(old => !facts[known.Id].Any(fact => Covers(fact, old))),
                .. facts[known.Id]])
            : known)), "These weights cannot all be used", found, found.Total);
    }

    /// <summary>
    /// A table in which a kitchen's own weighings of a food stand beside the published figures of its packing, and are combined with them
    /// (<see cref="BulkDensity"/>, rule 6). Own weighings of the same packing that it has already give way.
    /// </summary>
    /// <param name="name">The id, the name or an alias of the food.</param>
    /// <param name="weighings">The weighings.</param>
    /// <returns>
    /// The new table. Worked number: three US cups of sifted icing sugar, 92, 95 and 94 g, beside 100 and 95 g that are published: 94.0 g a
    /// cup. A food without any packing has this one from now on.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">Nothing goes by this name, or a food of its class is not measured so.</exception>
    public IngredientTable With(string name, Weighings weighings)
    {
        Ingredient food = Get(Guard.NotNull(name));
        Guard.NotNull(weighings);
        if (weighings.Packing != Packing.Whipped && food.Densities.All(known => known.Packing != weighings.Packing)
            && food.Densities.Count > 0 && PackingNearness.WhySenseless(food.Class, weighings.Packing) is string why)
            throw new ArgumentException($"{food.Name} is not measured {weighings.Packing.ToWord()}: {why}.", nameof(weighings));
        WeightFact[] weights = [.. food.Weights.Where(fact => fact.Weighings is null || fact.Packing != weighings.Packing), weighings.ToFact(food.Name)];
        Ingredient weighed = new(food.Names, food.Densities.Count > 0 ? food.Record : food.Record with { DefaultPacking = weighings.Packing }, weights);
        return new IngredientTable(All.Select(known => known.Id == food.Id ? weighed : known));
    }

    /// <summary>
    /// This table without the weights that one source gave, so that a table printed from that source can be judged by others.
    /// </summary>
    /// <param name="key">The key of the source, such as <c>usda-sr</c>.</param>
    /// <returns>The new table; an ingredient that no other source weighed has no densities.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public IngredientTable WithoutWeightsFrom(string key)
    {
        Guard.NotNull(key);
        return new IngredientTable(All.Select(known => new Ingredient(known.Names, () => known.Record,
            () => [.. known.Weights.Where(fact => !fact.Provenance.Source.Key.Equals(key, StringComparison.OrdinalIgnoreCase))])));
    }

    /// <summary>
    /// This table with the names that an American kitchen uses where ours is British: powdered sugar, all-purpose flour, baking soda. Every
    /// name is still understood, and an ingredient is the same by its id.
    /// </summary>
    /// <remarks>
    /// The names are those of american_names.csv, each an alias that the ingredient has already; others stay as they are.
    /// </remarks>
    /// <returns>The new table.</returns>
    public IngredientTable WithAmericanNames()
    {
        // In the order of this table, so that a name that two ingredients have means the same one.
        return new IngredientTable(All.Select(known => s_american.Value.TryGetValue(known.Id, out string? name) && name != known.Name
            ? new Ingredient(known.Names with { Name = name,
                Aliases = [.. known.Aliases, new IngredientName(known.Name, NameRegion.UnitedKingdom)] },
                () => known.Record, () => known.Weights)
            : known));
    }

    private static Dictionary<string, string> ReadAmericanNames()
    {
        Dictionary<string, string> names = new(StringComparer.Ordinal);
        EmbeddedTable.Read("american_names.csv", (table, problems) => row =>
        {
            Sources.RowFields fields = new(table, row, problems);
            if (!names.TryAdd(fields.Required("ingredient"), fields.Required("name")))
                fields.Problem("ingredient", "it stands here twice");
        });
        return names;
    }

    private static bool Covers(WeightFact fact, WeightFact old) =>
        fact.Packing == old.Packing && (fact.Packing is not null || fact.Amount.Part(0).Piece == old.Amount.Part(0).Piece);

    /// <summary>How many ingredients.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{All.Count} ingredients");
}
