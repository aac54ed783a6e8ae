using Confectio.Ingredients;

namespace Confectio.Formulas;

/// <summary>A caution that a formula deserves: a stable code, a sentence, and where it comes from.</summary>
/// <remarks>
/// The identifiers, allergens and constituents of the ingredients decide, never their names. A formula without a caution is not
/// called safe by it: how it is cooked, kept and served is not known here. Local codes and licensed practice decide.
/// </remarks>
public sealed class Caution
{
    private Caution(string code, string text, string source)
    {
        Code = code;
        Text = text;
        Source = source;
    }

    /// <summary>The sentence that belongs beside every list of allergens.</summary>
    public static string ReadTheLabel => "Makers differ: read the label of your own. An allergen that is not listed here is not said to be "
        + "absent.";

    /// <summary>The code, which does not change when the sentence is worded better: <c>raw-egg</c>.</summary>
    public string Code { get; }

    /// <summary>The sentence.</summary>
    public string Text { get; }

    /// <summary>The source, and whether it was read or is recalled.</summary>
    public string Source { get; }

    /// <summary>The sentence.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => Text;

    // Above this share of the finished food by mass the sentence of Annex III is due.
    private const double MostPolyols = 0.1;

    // Ours: below it are foods with a little vanilla extract; a spirit is named whatever its share.
    private const double NotedAlcohol = 0.01;

    // Treated by their maker, and spoiling like fresh egg: liquid, or dry until they are made up.
    private static readonly HashSet<string> s_keptCold = new(StringComparer.Ordinal)
    {
        "egg-white-pasteurised", "egg-yolk-pasteurised", "egg-yolk-sugared",
        "egg-white-dried", "egg-white-dried-flakes", "egg-white-dried-sugar-in", "egg-whole-dried", "egg-yolk-dried", "meringue-powder",
    };

    // Egg that its maker has heat-treated, or a food made with egg by a maker. Whatever else has egg is taken as raw: silence is not
    // consent.
    private static readonly HashSet<string> s_treatedEgg = [.. s_keptCold, "marshmallow-cream"];

    private static readonly HashSet<string> s_rawFlours = new(StringComparer.Ordinal)
    {
        "flour-all-purpose", "flour-bread", "flour-cake", "flour-pastry", "flour-self-raising", "flour-wholemeal", "flour-rice",
        "flour-chickpea", "flour-soy", "flour-chestnut", "flour-buckwheat", "flour-rice-brown", "semolina", "wheat-bran", "wheat-germ",
    };

    // Fruit whose own polyols pass the limit; the sentence of Annex III is due for polyols that were added.
    private static readonly HashSet<string> s_polyolsOfFruit = new(StringComparer.Ordinal) { "apricots-dried" };

    private static readonly HashSet<string> s_colours = new(StringComparer.Ordinal) { "colour-gel", "colour-liquid", "sprinkles" };

    private static readonly HashSet<string> s_spirits = new(StringComparer.Ordinal) { "spirit-rum", "spirit-kirsch", "spirit-40",
        "liqueur-orange", "liqueur-blackcurrant", "liqueur-coffee", "liqueur-coffee-cream" };

    private static readonly Caution s_rawEgg = new("raw-egg",
        "Egg here is raw or not known to be heat-treated, and may carry Salmonella; whipping and sugar do not take it away. Where the food "
            + "is not cooked "
        + "as Food Code 3-401.11 asks, as a meringue may not be, 3-302.13 asks for pasteurised egg in its place.",
        "FDA Food Code 3-302.13 and 3-401.11, recalled; local codes decide");

    private static readonly Caution s_atRisk = new("at-risk",
        "Food with raw or undercooked egg is not for those most at risk: infants and young children, pregnant people, older people, and "
            + "people with "
        + "weakened immunity. Food Code 3-801.11 asks for pasteurised egg where they are served.",
        "FDA Food Code 3-801.11, recalled; local codes decide");

    private static readonly Caution s_twoHours = new("two-hours",
        "Keep egg cold, dried egg from the moment it is made up with water: no more than two hours in the warm in all, and one hour above "
            + "32 C (90 F).",
        "United States household guidance on eggs (FDA, USDA), recalled");

    private static readonly Caution s_honey = new("honey", "Honey, and food with honey, is not for infants under one year: it may carry "
        + "the spores of infant botulism, "
        + "and cooking in a kitchen does not kill them.", "United States public health guidance on infant botulism (CDC), recalled");

    private static readonly Caution s_rawFlour = new("raw-flour",
        "Flour is a raw food: do not eat it, or dough and batter made with it, before it is cooked. "
        + "Toasting it at home is not known to make it safe.", "United States household guidance on flour (FDA), recalled");

    private static readonly Caution s_polyols = new("polyols",
        "Above 10 % polyols: in the European Union the label says \"excessive consumption may produce laxative effects\".",
        "Regulation (EU) 1169/2011, Annex III, 2.4, recalled");

    private static readonly Caution s_sixColours = new("six-colours",
        "Read the label of the colour: with E 102, E 104, E 110, E 122, E 124 or E 129 the label of the food in the European Union names "
            + "it and says "
        + "\"may have an adverse effect on activity and attention in children\".",
        "Regulation (EC) 1333/2008, Annex V, recalled");

    private static readonly Caution s_alcohol = new("alcohol",
        "Contains alcohol, and cooking leaves some of it: tell those who eat it, and do not serve it to children. "
        + "Its vapour burns: keep it away from flames.", "common practice");

    internal static Caution[] Of(Formula formula)
    {
        bool raw = false, cold = false, honey = false, flour = false, colour = false, spirit = false;
        double polyols = 0, alcohol = 0;
        foreach (FormulaLine line in formula.Lines)
        {
            if (line.Grams.Likely == 0)
                continue;
            Ingredient ingredient = line.Ingredient;
            // A dried egg of another moisture is the same food: its identifier is that of the table and the moisture.
            string id = ingredient.Id.Split("-moisture-")[0];
            raw |= ingredient.Allergens.Contains(Allergen.Egg) && !s_treatedEgg.Contains(id);
            cold |= s_keptCold.Contains(id);
            honey |= id == "honey";
            flour |= s_rawFlours.Contains(id);
            colour |= s_colours.Contains(id);
            spirit |= s_spirits.Contains(id);
            polyols += s_polyolsOfFruit.Contains(id) ? 0 : line.Grams.Likely * ingredient.Composition[Constituent.Polyols];
            alcohol += line.Grams.Likely * ingredient.Composition[Constituent.Alcohol];
        }
        List<Caution> cautions = [];
        Add(raw, s_rawEgg);
        Add(raw, s_atRisk);
        Add(raw || cold, s_twoHours);
        Add(honey, s_honey);
        Add(flour, s_rawFlour);
        Add(polyols > MostPolyols * formula.TotalGrams, s_polyols);
        Add(colour, s_sixColours);
        Add(spirit || alcohol > NotedAlcohol * formula.TotalGrams, s_alcohol);
        return [.. cautions];

        void Add(bool deserved, Caution caution)
        {
            if (deserved)
                cautions.Add(caution);
        }
    }
}
