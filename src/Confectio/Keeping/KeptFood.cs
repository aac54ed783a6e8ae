using System.Diagnostics.CodeAnalysis;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Keeping;

/// <summary>
/// A kind of food for which advice on keeping is printed: no agency prints a table by the sorts of buttercream, so a kind is a class of
/// risk and of habit, and an answer by it is no better than that.
/// </summary>
public sealed class KeptFood
{
    private static readonly KeptFood[] s_all = ReadBuiltIn();

    private KeptFood(string key, string name, string note)
    {
        Key = key;
        Name = name;
        Note = note;
        Times = [.. KeepingTime.All.Where(time => time.Food == key)];
    }

    /// <summary>The kinds.</summary>
    public static IReadOnlyList<KeptFood> All => s_all;

    /// <summary>The key, such as <c>meringue-buttercream</c>.</summary>
    public string Key { get; }

    /// <summary>The name in a sentence.</summary>
    public string Name { get; }

    /// <summary>A remark; empty where there is none.</summary>
    public string Note { get; }

    /// <summary>What is printed of it, by agencies and as common practice.</summary>
    public IReadOnlyList<KeepingTime> Times { get; }

    /// <summary>The kind of a key.</summary>
    /// <param name="key">The key.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such kind; the message lists those there are.</exception>
    public static KeptFood Get(string key) => Keyed.Get(s_all, key, "kind of food", "kinds", known => known.Key);

    /// <summary>The kind of a key, where there is one.</summary>
    /// <param name="key">The key.</param>
    /// <param name="food">The kind, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public static bool TryGet(string key, [NotNullWhen(true)] out KeptFood? food)
    {
        food = Keyed.Find(s_all, key, known => known.Key);
        return food is not null;
    }

    /// <summary>The kind that a formula looks like by what is in it, and why; <see langword="null"/> where it looks like none.</summary>
    /// <param name="formula">The formula.</param>
    /// <returns>The kind and the reason as the end of a sentence.</returns>
    /// <remarks>How it is made is not known here: a cooked and a raw meringue have the same ingredients.</remarks>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    public static (KeptFood Food, string Because)? LooksLike(Formula formula)
    {
        FormulaContents has = new(Guard.NotNull(formula));
        (string Key, string Because)? found = has switch
        {
            { CreamCheese: > 0.05 } => ("cream-cheese-frosting", "it has cream cheese"),
            { Chocolate: > 0.2, Cream: > 0.1 } => ("ganache", "it is of chocolate and cream"),
            { EggWhite: > 0.05, FatOfSpreads: > 0.15 } => ("meringue-buttercream", "it has egg white and butter or shortening"),
            { IcingSugar: > 0.6, EggWhite: > 0 } => ("royal-icing", "it is of icing sugar and egg white"),
            { Fondant: > 0.5 } => ("rolled-fondant", "it is mostly fondant"),
            { Marzipan: > 0.5 } => ("marzipan", "it is mostly marzipan"),
            { EggWhite: > 0.1, Sugars: > 0.3, FatOfSpreads: < 0.05, Flour: < 0.02 } => ("boiled-frosting", "it is of egg white and sugar without fat"),
            { Cream: > 0.6 } => ("whipped-cream", "it is mostly cream"),
            { Lemon: > 0.05, Egg: > 0.05, Flour: < 0.02 } => ("fruit-curd", "it has egg and citrus juice"),
            { Milk: > 0.4, Egg: > 0.05, Flour: < 0.12 } => ("cream-filling", "it is of milk and egg"),
            { FatOfSpreads: > 0.1, IcingSugar: > 0.3, Flour: < 0.02 } => ("american-buttercream", "it is of icing sugar and fat"),
            { Flour: > 0.12, Egg: > 0.03 } => ("plain-cake", "it has flour and egg"),
            _ => null,
        };
        return found is (string key, string because) ? (Get(key), because) : null;
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private static KeptFood[] ReadBuiltIn()
    {
        List<KeptFood> foods = [];
        EmbeddedTable.Read("kept_foods.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            foods.Add(new KeptFood(fields.Required("key"), fields.Required("name"), fields.Word("note")));
        });
        return [.. foods];
    }
}
