using System.Globalization;
using System.Text;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Labels;

/// <summary>The list of ingredients of a formula in the order of a law, with its allergens emphasised, the parts of compound ingredients, and quantities on request.</summary>
/// <remarks>
/// <para>
/// Order: falling mass as put in at mixing (21 CFR 101.4(a)(1); Regulation (EU) 1169/2011, Article 18(1)). Water that is added counts in the European Union as the finished food less all other
/// ingredients, and is left out up to 5 % of it (Annex VII, part A, from memory); in the United States as put in, and is left out where all of it boils off (101.4(c), from memory).
/// </para>
/// <para>
/// Allergens: in the European Union they stand out in the list (Article 21(1)(b), from memory), here in bold letters, in plain text in capitals; an allergen that the name does not say stands behind
/// it. In the United States a statement follows, <c>Contains: Milk, Egg.</c> (21 USC 343(w)), nuts by their kind. What is often contained, or of which nobody says anything, is told apart
/// (<see cref="Remarks"/>) and is no part of the list; nothing here says that food is free from anything.
/// </para>
/// <para>
/// Quantity: grams as put in for 100 g of the finished food (Article 22, Annex VIII; the arithmetic from memory); above 100 % it is told in grams for 100 g. Worked numbers: 60 g of almonds in 125 g are 48 %;
/// 150 g of fruit in 120 g are <c>prepared with 125 g of fruit per 100 g</c>.
/// </para>
/// A draft from tables and memory: what a label must say the law of the place decides.
/// </remarks>
public sealed class IngredientDeclaration
{
    /// <summary>What stands beside every list that was worked out.</summary>
    public const string Caution = "A draft from the formula and from tables, in part from memory: what a label must say, the packs of your ingredients and the law of the place decide.";

    private const string UnknownParts = "parts not known: read the pack";

    // Added water up to this share of the finished food is not listed in the European Union; what is less than the other may stand behind the rest.
    private const double MostUnlistedWater = 0.05, Small = 0.02;

    private const int MostDepth = 4;

    private readonly DeclarationOptions _options;
    private readonly double _finished;

    private IngredientDeclaration(Formula formula, LabelRules rules, DeclarationOptions options)
    {
        Formula = formula;
        Rules = rules;
        _options = options;
        CompoundIngredient[] apart = [.. options.Compounds.Where(compound => compound.Ingredient is null)];
        _finished = formula.TotalGrams + apart.Sum(compound => compound.Grams);
        List<string> remarks = [];
        Items = ItemsOf(formula, apart, 0, remarks, _finished);
        Formula[] all = [.. AllFormulas(formula, apart, 0)];
        Allergens = AllergensOf(all, options);
        Contains = rules == LabelRules.UnitedStates && Statement(Allergens) is { Length: > 0 } statement ? $"Contains: {statement}." : "";
        Quantities = [.. Items.Where(item => item.Quantity is { Likely: > 100 }).Select(item =>
            string.Create(CultureInfo.InvariantCulture, $"Prepared with {item.Quantity!.Value.Likely:0} g of {item.Name} per 100 g."))];
        Look(all, remarks);
        Remarks = [.. remarks.Select(VisibleText.Of)];
    }

    /// <summary>The formula.</summary>
    public Formula Formula { get; }

    /// <summary>By whose rules.</summary>
    public LabelRules Rules { get; }

    /// <summary>The ingredients in their order.</summary>
    public IReadOnlyList<DeclaredIngredient> Items { get; }

    /// <summary>The allergens of all of it that are to be declared by these rules, in the order of <see cref="Allergen"/>.</summary>
    public IReadOnlyList<Allergen> Allergens { get; }

    /// <summary>The statement of allergens of an American label, such as <c>Contains: Milk, Egg.</c>; empty where there is none, which is no clearance, and in the European Union.</summary>
    public string Contains { get; }

    /// <summary>Sentences of quantities above 100 %.</summary>
    public IReadOnlyList<string> Quantities { get; }

    /// <summary>What the list leaves open: what is often contained, parts that nobody told, an order that measures leave open, sulphites. Not for the label.</summary>
    public IReadOnlyList<string> Remarks { get; }

    /// <summary>The list of ingredients of a formula.</summary>
    /// <param name="formula">The formula as it is made.</param>
    /// <param name="rules">By whose rules.</param>
    /// <param name="options">Compound ingredients, quantities, names.</param>
    /// <returns>The list.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rules"/> is no defined value.</exception>
    /// <exception cref="ArgumentException">
    /// A quantity is asked for of what is not in it, or a compound is told of an ingredient that is not in it or twice, or compounds contain each other.
    /// </exception>
    public static IngredientDeclaration Of(Formula formula, LabelRules rules, DeclarationOptions? options = null)
    {
        Guard.NotNull(formula);
        Guard.Defined(rules);
        DeclarationOptions chosen = options ?? DeclarationOptions.Default;
        Check(formula, chosen, nameof(options));
        return new IngredientDeclaration(formula, rules, chosen);
    }

    /// <summary>The list as plain text, emphasised words in capitals: <c>Ingredients: sugar, butter (MILK), EGG white.</c></summary>
    /// <returns>One line, and one more for each statement, with line feeds.</returns>
    public string ToText() => Write(word => word.IsEmphasised ? VisibleText.Of(word.Text).ToUpperInvariant() : VisibleText.Of(word.Text), VisibleText.Of, "\n");

    /// <summary>The list as Markdown, emphasised words in bold; nothing that a name holds is taken for Markdown or HTML.</summary>
    /// <returns>A paragraph, and one more for each statement.</returns>
    public string ToMarkdown() => Write(word => word.IsEmphasised ? $"**{Markdown(word.Text)}**" : Markdown(word.Text), Markdown, "\n\n");

    /// <summary>The list as a fragment of HTML, emphasised words as <c>&lt;strong&gt;</c>: paragraphs, to be put into a page. All text is escaped.</summary>
    /// <returns>A <c>p</c> element, and one more for each statement.</returns>
    public string ToHtml()
    {
        string[] paragraphs = Write(word => word.IsEmphasised ? $"<strong>{Html(word.Text)}</strong>" : Html(word.Text), Html, "\n").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return string.Concat(paragraphs.Select((words, i) => $"<p class=\"{(i == 0 ? "ingredients" : "statement")}\">{words}</p>\n"));
    }

    /// <summary>The list as plain text.</summary>
    public override string ToString() => ToText().TrimEnd('\n').Replace('\n', ' ');

    private static void Check(Formula formula, DeclarationOptions options, string name)
    {
        HashSet<string> told = [];
        foreach (CompoundIngredient compound in options.Compounds)
        {
            if (compound.Ingredient is Ingredient food && !told.Add(food.Id))
                throw new ArgumentException($"{name} tell the parts of {Excerpt.Of(food.Name)} twice.", name);
        }
        HashSet<Ingredient> all = [.. AllFormulas(formula, options, 0, name).SelectMany(one => one.Lines).Select(line => line.Ingredient)];
        if (options.Compounds.FirstOrDefault(compound => compound.Ingredient is Ingredient food && !all.Contains(food)) is CompoundIngredient stray)
            throw new ArgumentException($"{name} tell the parts of {Excerpt.Of(stray.Name)}, which is not in the formula.", name);
        if (options.Quantified.FirstOrDefault(food => !formula.Lines.Any(line => line.Ingredient == food && line.Grams.Likely > 0)) is Ingredient none)
            throw new ArgumentException($"{name} ask for the quantity of {Excerpt.Of(none.Name)}, which is not put in.", name);
        if (options.QuantifiedParts.FirstOrDefault(part => !options.Compounds.Any(compound => compound.Ingredient is null && compound.Name == part.Trim())) is string lost)
            throw new ArgumentException($"{name} ask for the quantity of {Excerpt.Of(lost)}, which is no part that is made apart.", name);
    }

    private static IEnumerable<Formula> AllFormulas(Formula formula, DeclarationOptions options, int depth, string name)
    {
        if (depth > MostDepth)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name} have compounds more than {MostDepth} deep, or within themselves."), name);
        yield return formula;
        foreach (CompoundIngredient compound in options.Compounds.Where(compound => compound.Formula is not null && (compound.Ingredient is null ? depth == 0 : formula.GramsOf(compound.Ingredient) is > 0)))
        {
            foreach (Formula inner in AllFormulas(compound.Formula!, options, depth + 1, name))
                yield return inner;
        }
    }

    private IEnumerable<Formula> AllFormulas(Formula formula, CompoundIngredient[] apart, int depth) => AllFormulas(formula, _options, depth, "options");

    private List<DeclaredIngredient> ItemsOf(Formula formula, CompoundIngredient[] apart, int depth, List<string> remarks, double finished)
    {
        List<(double Grams, double Doubt, DeclaredIngredient Item)> items = [];
        // Granulated and caster sugar are both sugar, and stand once. What has parts of its own stands for itself.
        foreach (IGrouping<string, FormulaLine> lines in formula.Lines.Where(line => line.Grams.Likely > 0).GroupBy(line => KeyOf(line.Ingredient), StringComparer.Ordinal))
        {
            Ingredient[] foods = [.. lines.Select(line => line.Ingredient).Distinct()];
            Spread grams = lines.Aggregate(Spread.Exactly(0), (sum, line) => sum + line.Grams);
            double counted = foods[0].Id == "water" ? WaterOf(formula, grams.Likely, finished, depth, remarks) : grams.Likely;
            if (counted <= 0)
                continue;
            items.Add((counted, grams.StandardUncertainty, ItemOf(foods, counted, grams, depth, remarks)));
        }
        foreach (CompoundIngredient compound in apart)
        {
            DeclaredIngredient item = new(compound.Name, [], compound.Grams, [new LabelWord(compound.Name, false)])
            {
                Parts = ItemsOf(compound.Formula!, [], depth + 1, remarks, compound.Formula!.TotalGrams),
                Quantity = depth == 0 && _options.QuantifiedParts.Any(part => part.Trim() == compound.Name) ? Spread.Exactly(100 * compound.Grams / finished) : null,
            };
            items.Add((compound.Grams, 0, item));
        }
        items = [.. items.OrderByDescending(item => item.Grams)];
        for (int i = 1; i < items.Count; i++)
        {
            // Two neighbours that measures do not tell apart; those that are weighed alike are in their order.
            (double more, double doubt, DeclaredIngredient before) = items[i - 1];
            if (doubt + items[i].Doubt > 0 && more - items[i].Grams < 2 * double.Hypot(doubt, items[i].Doubt))
                remarks.Add($"Which of {before.Name} and {items[i].Item.Name} comes first cannot be told from cups, spoons or pieces: weigh them.");
        }
        return [.. items.Select(item => item.Item)];
    }

    // What of added water counts in the order; 0 where it is left out.
    private double WaterOf(Formula formula, double putIn, double finished, int depth, List<string> remarks)
    {
        // What boils off is first that which was added.
        double left = Math.Max(0, putIn - formula.BoiledOffGrams);
        if (Rules == LabelRules.UnitedStates)
        {
            // What water leaves behind when it is gone is no water.
            if (left > 0.01 * putIn)
                return putIn;
            remarks.Add("Water is left out: all that was added boils off (21 CFR 101.4(c), from memory).");
            return 0;
        }
        double whole = depth == 0 ? finished : formula.TotalGrams;
        if (left > MostUnlistedWater * whole)
            return left;
        remarks.Add(string.Create(CultureInfo.InvariantCulture, $"Water is left out: {100 * left / whole:0.#} % of the finished food is added water, and up to 5 % is not listed (Annex VII, part A, from memory)."));
        return 0;
    }

    private string KeyOf(Ingredient ingredient) => LabelName.IsOne(ingredient, Rules) && !_options.Compounds.Any(compound => compound.Ingredient == ingredient)
        ? LabelName.Of(ingredient, Rules, _options.Names) : "\0" + ingredient.Id;

    private DeclaredIngredient ItemOf(Ingredient[] foods, double counted, Spread grams, int depth, List<string> remarks)
    {
        Ingredient ingredient = foods[0];
        string name = LabelName.Of(ingredient, Rules, _options.Names);
        CompoundIngredient? told = depth < MostDepth ? _options.Compounds.FirstOrDefault(compound => compound.Ingredient == ingredient) : null;
        IReadOnlyList<DeclaredIngredient> parts = told is null ? [] : told.Formula is Formula inner ? ItemsOf(inner, [], depth + 1, remarks, inner.TotalGrams)
            : [.. told.Parts.Select(part => new DeclaredIngredient(part, [], null, Emphasised(part, AllergenWords.In(part).Allergens)))];
        bool isKnown = told is not null || LabelName.IsOne(ingredient, Rules);
        bool isAsked = depth == 0 && Array.Exists(foods, food => _options.Quantified.Contains(food));
        if (isAsked && ingredient.Id == "water")
            remarks.Add("The quantity of water is that which was put in; a volatile ingredient is declared by what is left of it in the finished food (Annex VIII, from memory).");
        return new DeclaredIngredient(name, foods, counted, Emphasised(name, foods.SelectMany(food => food.Allergens)))
        {
            Parts = parts,
            PartsAreKnown = isKnown,
            Quantity = isAsked ? grams * (100 / _finished) : null,
        };
    }

    // A name in runs of letters, what names an allergen by its law's word emphasised, and what it does not say behind it.
    private List<LabelWord> Emphasised(string name, IEnumerable<Allergen> allergens)
    {
        if (Rules == LabelRules.UnitedStates)
            return [new LabelWord(name, false)];
        Allergen[] declared = [.. LabelAllergens.Declared(allergens, Rules)];
        List<(int Start, int Length)> marks = [];
        List<string> behind = [];
        foreach (Allergen allergen in declared)
        {
            (int Start, int Length)[] found = [.. LabelAllergens.FindIn(name, allergen)];
            marks.AddRange(found);
            if (found.Length == 0)
                behind.Add(LabelAllergens.Word(allergen, Rules));
        }
        List<LabelWord> words = [];
        int at = 0;
        foreach ((int start, int length) in marks.Distinct().OrderBy(mark => mark.Start))
        {
            if (start < at)
                continue;
            if (start > at)
                words.Add(new LabelWord(name[at..start], false));
            words.Add(new LabelWord(name.Substring(start, length), true));
            at = start + length;
        }
        if (at < name.Length)
            words.Add(new LabelWord(name[at..], false));
        for (int i = 0; i < behind.Count; i++)
        {
            words.Add(new LabelWord(i == 0 ? " (" : ", ", false));
            words.Add(new LabelWord(behind[i], true));
        }
        if (behind.Count > 0)
            words.Add(new LabelWord(")", false));
        return words;
    }

    private Allergen[] AllergensOf(Formula[] all, DeclarationOptions options)
    {
        IEnumerable<Allergen> found = all.SelectMany(formula => formula.Allergens)
            .Concat(options.Compounds.SelectMany(compound => compound.Parts).SelectMany(part => AllergenWords.In(part).Allergens));
        return [.. LabelAllergens.Declared(found, Rules).Order()];
    }

    private string Statement(IReadOnlyList<Allergen> allergens) => string.Join(", ", allergens.Select(allergen => LabelAllergens.Word(allergen, Rules)));

    private void Look(Formula[] all, List<string> remarks)
    {
        Ingredient[] foods = [.. all.SelectMany(formula => formula.Lines).Where(line => line.Grams.Likely > 0).Select(line => line.Ingredient).Distinct()];
        string[] unknown = [.. Unknown(Items).Distinct()];
        if (unknown.Length > 0)
            remarks.Add($"Parts not known of {string.Join(", ", unknown)}: read the packs, for their parts and their allergens belong into the list.");
        // Of what its pack or a formula tells, the pack or the formula has spoken.
        HashSet<Ingredient> told = [.. _options.Compounds.Select(compound => compound.Ingredient).OfType<Ingredient>()];
        foreach (Ingredient food in foods.Where(food => !told.Contains(food) && food.OftenContains.Except(Allergens).Any()))
            remarks.Add($"{food.Name} often contains {string.Join(", ", food.OftenContains.Except(Allergens).Select(AllergenWord.Of))}: read its pack. That it is not listed does not say that it is not in there.");
        if (_options.Compounds.SelectMany(compound => compound.Parts).Where(part => AllergenWords.In(part).NutsOfUnknownKind).ToArray() is { Length: > 0 } nuts)
            remarks.Add($"Nuts are declared by their kind, and the pack does not say it: {string.Join(", ", nuts)}.");
        if (foods.Where(food => !food.AllergensAreStated).ToArray() is { Length: > 0 } silent)
            remarks.Add($"Nobody said which allergens {string.Join(", ", silent.Select(food => food.Name))} has: read the pack.");
        if (foods.Any(food => food.Allergens.Contains(Allergen.Gluten) && !food.Allergens.Contains(Allergen.Wheat)) && Rules == LabelRules.EuropeanUnion)
            remarks.Add("Of cereals with gluten the list names the kind: barley, rye, oats.");
        if (foods.Any(food => food.Id.StartsWith("syrup-glucose", StringComparison.Ordinal) || food.Id.StartsWith("dextrose", StringComparison.Ordinal) || food.Id.StartsWith("maltodextrin", StringComparison.Ordinal)))
        {
            remarks.Add(Rules == LabelRules.EuropeanUnion
                ? "Glucose syrup and dextrose of wheat, maltodextrin of wheat and glucose syrup of barley need not stand out (Annex II, 1); of which they are made the pack says."
                : "Glucose syrup, dextrose or maltodextrin of wheat is declared as wheat unless it has no protein (from memory); of which it is made the pack says.");
        }
        if (foods.Any(food => food.Id is "lecithin-soy" or "oil-vegetable" or "shortening-white") && Rules == LabelRules.EuropeanUnion)
            remarks.Add("Fully refined soya oil need not stand out (Annex II, 6); soya lecithin has to.");
        remarks.Add(Rules == LabelRules.EuropeanUnion ? "Sulphur dioxide and sulphites above 10 mg/kg or mg/L of the finished food belong into the list, and how much there is, is not known here: glucose syrup, dried and candied fruit and wine bring some."
            : "Sulfites of 10 parts per million and more are declared (from memory), and how much there is, is not known here.");
        remarks.Add(Confectio.Formulas.Caution.ReadTheLabel);

        static IEnumerable<string> Unknown(IEnumerable<DeclaredIngredient> items) => items.SelectMany(item => (item.PartsAreKnown ? [] : new[] { item.Name }).Concat(Unknown(item.Parts)));
    }

    private string Write(Func<LabelWord, string> word, Func<string, string> plain, string between)
    {
        StringBuilder text = new();
        text.Append(plain("Ingredients: "));
        DeclaredIngredient[] large = Items.ToArray(), small = [];
        if (_options.GathersSmall && Rules == LabelRules.UnitedStates)
        {
            large = [.. Items.Where(item => item.Grams > Small * _finished)];
            small = [.. Items.Where(item => !(item.Grams > Small * _finished))];
        }
        AppendItems(text, large, word, plain, 0);
        if (small.Length > 0)
        {
            text.Append(large.Length > 0 ? plain(", contains 2 % or less of: ") : "");
            AppendItems(text, small, word, plain, 0);
        }
        text.Append(plain("."));
        foreach (string statement in Quantities.Append(Contains).Where(statement => statement.Length > 0))
            text.Append(between).Append(plain(statement));
        return text.Append('\n').ToString();
    }

    private static void AppendItems(StringBuilder text, IReadOnlyList<DeclaredIngredient> items, Func<LabelWord, string> word, Func<string, string> plain, int depth)
    {
        for (int i = 0; i < items.Count; i++)
        {
            DeclaredIngredient item = items[i];
            text.Append(i > 0 ? plain(", ") : "");
            foreach (LabelWord one in item.Words)
                text.Append(word(one));
            if (item.QuantityText.Length > 0)
                text.Append(plain($" {item.QuantityText}"));
            (string open, string close) = depth % 2 == 0 ? ("(", ")") : ("[", "]");
            if (item.Parts.Count > 0)
            {
                text.Append(plain($" {open}"));
                AppendItems(text, item.Parts, word, plain, depth + 1);
                text.Append(plain(close));
            }
            else if (!item.PartsAreKnown)
            {
                text.Append(plain($" {open}{UnknownParts}{close}"));
            }
        }
    }

    private static string Html(string text) => new StringBuilder().AppendEscaped(VisibleText.Of(text)).ToString();

    // Every mark of ASCII that Markdown may take for its own stands behind a backslash; those of a sentence, which it does not take within a line, stand as they are.
    private static string Markdown(string text)
    {
        StringBuilder escaped = new();
        foreach (char c in VisibleText.Of(text))
        {
            if (c is '\\' or '`' or '*' or '_' or '{' or '}' or '[' or ']' or '<' or '>' or '#' or '|' or '~' or '&' or '!' or '@' or '$')
                escaped.Append('\\');
            escaped.Append(c);
        }
        return escaped.ToString();
    }
}
