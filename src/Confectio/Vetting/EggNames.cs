using System.Text;
using Confectio.Ingredients;

namespace Confectio.Vetting;

/// <summary>Whether a row's words name egg or a food made with it. In doubt they do: it only brings a sentence of guidance.</summary>
internal sealed class EggNames
{
    // Dishes that are usually made with egg. Common practice; the list is ours, and no list is complete.
    private static readonly string[] s_dishes =
    [
        "yolk", "whites", "albumen", "omelette", "omelet", "meringue", "pavlova", "custard", "creme anglaise", "creme patissiere",
            "pastry cream", "creme brulee", "creme caramel", "flan",
        "curd", "sabayon", "zabaglione", "pate a bombe", "bombe mixture", "mousse", "souffle", "quiche", "frittata", "strata",
            "hollandaise", "bearnaise", "mayonnaise", "aioli",
        "nougat", "divinity", "royal icing", "french buttercream", "swiss buttercream", "italian buttercream", "french toast",
            "bread pudding", "tiramisu", "semifreddo", "parfait",
        "sponge", "genoise", "angel food", "chiffon cake", "macaron", "dacquoise", "choux", "cheesecake",
    ];

    private readonly IngredientTable _table;

    // Each in blanks, so that only whole words are found.
    private readonly string[] _names;

    /// <summary>The names of the dishes, and of what has or may have egg in a table.</summary>
    public EggNames(IngredientTable table)
    {
        _table = table;
        _names =
        [
            .. table.All.Where(HasEgg).SelectMany(ingredient => ingredient.Aliases.Select(alias => alias.Text).Prepend(ingredient.Name))
                .Concat(s_dishes).SelectMany(name => new[] { Words(name), Words(name + "s") }).Distinct(),
        ];
    }

    public bool AreIn(ReadOnlySpan<char> what)
    {
        string words = Words(what.ToString());
        // "Eggnog" and "egg-wash" are egg; "eggplant" is not.
        for (int at = words.IndexOf(" egg", StringComparison.Ordinal); at >= 0; at = words.IndexOf(" egg", at + 1,
            StringComparison.Ordinal))
        {
            if (!words.AsSpan(at).StartsWith(" eggplant", StringComparison.Ordinal))
                return true;
        }
        // However it is printed: "eggs*", "large egg (beaten)".
        if (_table.MatchName(what.ToString()).Ingredient is Ingredient food && HasEgg(food))
            return true;
        return Array.Exists(_names, name => words.Contains(name, StringComparison.Ordinal));
    }

    private static bool HasEgg(Ingredient food) => food.Allergens.Contains(Allergen.Egg) || food.OftenContains.Contains(Allergen.Egg);

    // Folded as names of ingredients are, a blank before and after every word.
    private static string Words(string text)
    {
        StringBuilder words = new(" ");
        foreach (string word in text.Split(s_parting, StringSplitOptions.RemoveEmptyEntries))
            words.Append(NameKey.Of(word)).Append(' ');
        return words.ToString();
    }

    private static readonly char[] s_parting = [.. " ,;:.()/-\t\u00A0'\u2019&+"];
}
