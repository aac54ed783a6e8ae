using Confectio.Formulas.Solving;
using Confectio.Ingredients;

namespace Confectio.Labels;

/// <summary>Which allergens a law has declared, by which word, and where a name says it.</summary>
internal static class LabelAllergens
{
    // By the law's own names of the substance: a name that says less (butter, semolina, praline) has it behind it.
    private static readonly Dictionary<Allergen, string[]> s_words = new()
    {
        [Allergen.Milk] = ["milk", "buttermilk"],
        [Allergen.Egg] = ["egg", "eggs"],
        [Allergen.Wheat] = ["wheat", "spelt", "khorasan"],
        [Allergen.Gluten] = ["barley", "rye", "oat", "oats"],
        [Allergen.Soy] = ["soya", "soy", "soybean", "soybeans", "soyabean", "soyabeans"],
        [Allergen.Peanut] = ["peanut", "peanuts"],
        [Allergen.Almond] = ["almond", "almonds"],
        [Allergen.Hazelnut] = ["hazelnut", "hazelnuts"],
        [Allergen.Walnut] = ["walnut", "walnuts"],
        [Allergen.Pecan] = ["pecan", "pecans"],
        [Allergen.Pistachio] = ["pistachio", "pistachios"],
        [Allergen.Cashew] = ["cashew", "cashews"],
        [Allergen.Macadamia] = ["macadamia", "macadamias"],
        [Allergen.Brazil] = ["brazil nut", "brazil nuts"],
        [Allergen.Sesame] = ["sesame"],
        [Allergen.Sulphites] = ["sulphites", "sulphur dioxide", "sulfites"],
        [Allergen.Fish] = ["fish"],
        [Allergen.Crustaceans] = ["crustaceans"],
        [Allergen.Molluscs] = ["molluscs"],
        [Allergen.Celery] = ["celery"],
        [Allergen.Mustard] = ["mustard"],
        [Allergen.Lupin] = ["lupin"],
    };

    /// <summary>Those that the law has declared; in the European Union wheat says the gluten of wheat.</summary>
    public static IEnumerable<Allergen> Declared(IEnumerable<Allergen> allergens, LabelRules rules)
    {
        Allergen[] all = [.. allergens.Distinct()];
        return rules == LabelRules.UnitedStates
            // 21 USC 321(qq), sesame since 2023; gluten of other cereals, sulphites, molluscs, celery, mustard and lupin are none of them.
            ? all.Where(allergen => allergen is not (Allergen.Gluten or Allergen.Sulphites or Allergen.Molluscs or Allergen.Celery or Allergen.Mustard or Allergen.Lupin))
            : all.Where(allergen => allergen != Allergen.Gluten || !all.Contains(Allergen.Wheat));
    }

    /// <summary>The word by which it is declared.</summary>
    public static string Word(Allergen allergen, LabelRules rules) => (rules, allergen) switch
    {
        (LabelRules.UnitedStates, Allergen.Milk) => "Milk",
        (LabelRules.UnitedStates, Allergen.Egg) => "Egg",
        (LabelRules.UnitedStates, Allergen.Soy) => "Soy",
        (LabelRules.UnitedStates, Allergen.Peanut) => "Peanuts",
        (LabelRules.UnitedStates, Allergen.Almond) => "Almonds",
        (LabelRules.UnitedStates, Allergen.Hazelnut) => "Hazelnuts",
        (LabelRules.UnitedStates, Allergen.Walnut) => "Walnuts",
        (LabelRules.UnitedStates, Allergen.Pecan) => "Pecans",
        (LabelRules.UnitedStates, Allergen.Pistachio) => "Pistachios",
        (LabelRules.UnitedStates, Allergen.Cashew) => "Cashews",
        (LabelRules.UnitedStates, Allergen.Macadamia) => "Macadamia nuts",
        (LabelRules.UnitedStates, Allergen.Brazil) => "Brazil nuts",
        (LabelRules.UnitedStates, Allergen.Wheat) => "Wheat",
        (LabelRules.UnitedStates, Allergen.Sesame) => "Sesame",
        (LabelRules.UnitedStates, Allergen.Fish) => "Fish (name its kind)",
        (LabelRules.UnitedStates, Allergen.Crustaceans) => "Crustacean shellfish (name its kind)",
        (_, Allergen.Gluten) => "cereal with gluten: name its kind",
        (_, Allergen.Soy) => "soya",
        (_, Allergen.Brazil) => "Brazil nuts",
        _ => s_words[allergen][0] + (allergen == Allergen.Macadamia ? " nuts" : allergen == Allergen.Peanut || AllergenWord.IsTreeNut(allergen) ? "s" : ""),
    };

    /// <summary>Where whole words of a name say it.</summary>
    public static IEnumerable<(int Start, int Length)> FindIn(string name, Allergen allergen)
    {
        foreach (string word in s_words[allergen])
        {
            for (int at = name.IndexOf(word, StringComparison.OrdinalIgnoreCase); at >= 0; at = name.IndexOf(word, at + 1, StringComparison.OrdinalIgnoreCase))
            {
                int end = at + word.Length;
                if ((at == 0 || !char.IsLetterOrDigit(name[at - 1])) && (end == name.Length || !char.IsLetterOrDigit(name[end])))
                    yield return (at, word.Length);
            }
        }
    }
}
