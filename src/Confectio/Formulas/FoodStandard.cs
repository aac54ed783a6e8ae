using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Formulas;

/// <summary>
/// What a law asks of the composition of a food that goes by a name. Only shares of the composition are here; a law asks more than that, and its text decides.
/// </summary>
public sealed class FoodStandard
{
    private static readonly FoodStandard[] s_all = ReadBuiltIn();

    private readonly Condition[] _conditions;

    private FoodStandard(string key, string food, string name, Condition[] conditions, Provenance provenance)
    {
        Key = key;
        Food = food;
        Name = name;
        _conditions = conditions;
        Provenance = provenance;
    }

    /// <summary>The standards.</summary>
    public static IReadOnlyList<FoodStandard> All => s_all;

    /// <summary>The key, such as <c>us-heavy-cream</c>.</summary>
    public string Key { get; }

    /// <summary>The food that it is about: <c>butter</c>, <c>cream</c>, <c>cocoa</c>, <c>cream-cheese</c>, <c>chocolate-liquor</c>, <c>milk-fat</c>, <c>margarine</c>, <c>condensed-milk</c>.</summary>
    public string Food { get; }

    /// <summary>The name that it protects, such as <c>heavy cream</c>.</summary>
    public string Name { get; }

    /// <summary>What it asks, such as <c>milk fat at least 36 %</c>.</summary>
    public string Asks => string.Join(", ", _conditions.Select(condition => condition.ToString()));

    /// <summary>The law and its section.</summary>
    public Provenance Provenance { get; }

    /// <summary>The standard of a key.</summary>
    /// <param name="key">The key.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such standard; the message lists those there are.</exception>
    public static FoodStandard Get(string key) => Keyed.Get(s_all, key, "standard", "standards", known => known.Key);

    /// <summary>The standard of a key, where there is one.</summary>
    /// <param name="key">The key.</param>
    /// <param name="standard">The standard, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public static bool TryGet(string key, [NotNullWhen(true)] out FoodStandard? standard) => (standard = Keyed.Find(s_all, key, known => known.Key)) is not null;

    /// <summary>The standards for a food that an ingredient of this composition meets.</summary>
    /// <param name="food">The food, such as <c>cream</c>.</param>
    /// <param name="ingredient">The ingredient.</param>
    /// <returns>Those it meets; a standard of which it is not known is not among them. Worked number: cream of 37 % milk fat is cream and heavy cream in the United States.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There is no standard for this food; the message lists the foods.</exception>
    public static IReadOnlyList<FoodStandard> MetBy(string food, Ingredient ingredient)
    {
        FoodStandard[] those = [.. s_all.Where(standard => standard.Food == Guard.NotNull(food))];
        Guard.NotNull(ingredient);
        return those.Length > 0 ? [.. those.Where(standard => standard.IsMetBy(ingredient) == true)]
            : throw new ArgumentException($"There is no standard for {Excerpt.Of(food)}; the foods are: {string.Join(", ", s_all.Select(standard => standard.Food).Distinct())}.", nameof(food));
    }

    /// <summary>Whether the composition of an ingredient is as the standard asks.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <returns>Yes or no; <see langword="null"/> where a part that it asks about is not known of the ingredient.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    public bool? IsMetBy(Ingredient ingredient)
    {
        Guard.NotNull(ingredient);
        bool?[] answers = [.. _conditions.Select(condition => condition.IsMetBy(ingredient))];
        return answers.Contains(false) ? false : answers.Contains(null) ? null : true;
    }

    /// <summary>One line, such as <c>heavy cream: milk fat at least 36 % (21 CFR 131, section 131.150 (compiled))</c>.</summary>
    public override string ToString() => $"{Name}: {Asks} ({Provenance})";

    private static FoodStandard[] ReadBuiltIn()
    {
        List<(string Key, string Food, string Name, Condition Condition, Provenance Provenance)> rows = [];
        EmbeddedTable.Read("food_standards.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            if (!FormulaPart.TryRead(fields.Required("part"), out FormulaPart? part))
                fields.Problem("part", $"{Excerpt.Of(fields.Word("part"))} is no part");
            else
                rows.Add((fields.Required("standard"), fields.Required("food"), fields.Required("name"), new Condition(part, fields.Number("at_least", 0, 100),
                    fields.Number("at_most", 0, 100), fields.Number("below", 0, 100)), fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"))));
        });
        return [.. rows.GroupBy(row => row.Key).Select(group => new FoodStandard(group.Key, group.First().Food, group.First().Name, [.. group.Select(row => row.Condition)],
            group.OrderByDescending(row => row.Provenance.Evidence).First().Provenance))];
    }

    private sealed class Condition(FormulaPart part, double? atLeast, double? atMost, double? below)
    {
        // Percentages of food tables have two decimals; what is added up of them is compared to six.
        public bool? IsMetBy(Ingredient ingredient)
        {
            // All solids that are not fat are a ceiling of those of milk: where they are no more than may be, the part need not be known.
            if (!part.IsKnownIn(ingredient))
                return part == FormulaPart.MilkSolidsNotFat && atLeast is null && 100 * FormulaPart.SolidsNotFat.FractionIn(ingredient) <= atMost + 1e-6 ? true : null;
            double percent = Math.Round(100 * part.FractionIn(ingredient), 6);
            return !(percent < atLeast || percent > atMost || percent >= below);
        }

        public override string ToString() => string.Create(CultureInfo.InvariantCulture,
            $"{part.Name}{(atLeast is double low ? $" at least {low:0.##}" : "")}{(atMost is double high ? $" at most {high:0.##}" : "")}{(below is double less ? $"{(atLeast is null ? "" : " and")} below {less:0.##}" : "")} %");
    }
}
