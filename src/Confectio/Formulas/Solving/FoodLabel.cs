using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Formulas.Solving;

/// <summary>
/// A food made of what its pack says: of a nutrition panel and, where there is one, of the list of ingredients in its order. Each
/// constituent comes with all that the label leaves open.
/// </summary>
/// <remarks>
/// <para>
/// A figure of the panel holds all values that would be printed so (<see cref="PanelFigure"/>), and with <see
/// cref="LabelSpread.RoundingAndTolerance"/> what the law lets a food be off besides. The limits of a constituent are exact: its least and
/// its most over all compositions that fit every figure and add up to 100 g. With a list, these are mixtures of its foods in descending
/// order, where what is up to 2 % may stand in any order, up to 5 % of water need not stand at all, and a food that the table does not know
/// may be of anything; how far each food may be from its printed composition (<see cref="CompositionSpread"/>, 2u) counts in. What follows
/// from the panel alone is never given up for the list.
/// </para>
/// <para>
/// Tolerances, all from memory. European Union (guidance of December 2012, Table 1): carbohydrate, sugars, polyols, starch, protein, fibre
/// ±2 g below 10 g, ±20 % to 40 g, ±8 g above; fat ±1.5 g, ±20 %, ±8 g; salt ±0.375 g below 1.25 g, ±20 % above. United States, 21 CFR
/// 101.9(g): 20 %, there to one side only. With rounding alone the energy of a European panel is a limit too, with the factors of Annex XIV.
/// </para>
/// <para>
/// What a panel does not say stands in <see cref="Ingredient.NotStated"/>. Its likely figure is what the others leave: water, and of the
/// carbohydrate that is no sugar, starch; sugars of no known kind are <see cref="Constituent.OtherSugars"/>. These are estimates. Worked
/// number: fat 31.6 g, carbohydrate 57 g, protein 6.0 g, salt 0.11 g in 100 g leave 5.29 g, and with rounding alone water of 0 to 5.9 g.
/// </para>
/// <para>Allergens are read from English words. Makers differ and print in many tongues: the packet wins.</para>
/// </remarks>
public sealed class FoodLabel
{
    private static readonly Constituent[] s_sugars =
    [
        Constituent.Sucrose, Constituent.Glucose, Constituent.Fructose, Constituent.Lactose, Constituent.Maltose, Constituent.OtherSugars,
    ];

    private static readonly Constituent[] s_carbohydrates =
        [.. s_sugars, Constituent.HigherSaccharides, Constituent.Starch, Constituent.Polyols, Constituent.Glycerol];

    // Every single constituent, and the groups that a balance, a label and a syrup ask for.
    private static readonly Constituent[][] s_groups =
    [
        .. Constituents.All.Select(constituent => new[] { constituent }), s_sugars, s_carbohydrates,
        [.. s_carbohydrates, Constituent.Fibre], [Constituent.Water, Constituent.Alcohol],
        [Constituent.Water, Constituent.Alcohol, Constituent.Fat],
        [.. s_sugars, Constituent.Water, Constituent.HigherSaccharides, Constituent.Polyols, Constituent.Glycerol, Constituent.Alcohol,
            Constituent.Acids, Constituent.Salt],
    ];

    private static readonly FormulaPart[] s_parts = [.. s_groups.Select((group, i) => FormulaPart.Of("group " + i, group))];

    private FoodLabel(NutritionPanel panel, Ingredient ingredient, IReadOnlyList<LabelShare> shares, IReadOnlyList<string> unmatched,
        IReadOnlyList<string> remarks)
    {
        Panel = panel;
        Ingredient = ingredient;
        Shares = shares;
        Unmatched = unmatched;
        Remarks = remarks;
    }

    /// <summary>The panel.</summary>
    public NutritionPanel Panel { get; }

    /// <summary>The food. <see cref="CompositionSpread.Of"/> has the limits of each constituent.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>
    /// The foods of the list that the table knows, in their order, with the least and the most of each; empty without a list, and where
    /// list and panel do not fit.
    /// </summary>
    public IReadOnlyList<LabelShare> Shares { get; }

    /// <summary>Items of the list that the table does not know; they may be of anything.</summary>
    public IReadOnlyList<string> Unmatched { get; }

    /// <summary>What was not said, taken or left out, a sentence each. They are the note of the food, too.</summary>
    public IReadOnlyList<string> Remarks { get; }

    /// <summary>Makes a food of its nutrition panel alone.</summary>
    /// <param name="name">What to call it.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="options">How; <see langword="null"/> for the usual.</param>
    /// <returns>The food with its limits. Caution: without a list no allergen is known. The packet wins.</returns>
    /// <exception cref="ArgumentNullException">The name or the panel is null.</exception>
    /// <exception cref="ArgumentException">The name makes no id, or the figures contradict each other.</exception>
    public static FoodLabel Of(string name, NutritionPanel panel, LabelOptions? options = null) =>
        Of(Guard.NotNull(name), Guard.NotNull(panel), null, options ?? LabelOptions.Default);

    /// <summary>Makes a food of its nutrition panel and its list of ingredients.</summary>
    /// <param name="name">What to call it.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="ingredientList">
    /// The list as printed, at most 20 000 characters and 60 ingredients, with percentages and what it says of allergens: <c>sugar, palm
    /// oil, hazelnuts (13 %), emulsifier (soya lecithin). May contain other nuts.</c>
    /// </param>
    /// <param name="table">The foods of which the list is made.</param>
    /// <param name="options">How; <see langword="null"/> for the usual.</param>
    /// <returns>The food with its limits. Caution: allergens are read from English words. The packet wins.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">
    /// The name makes no id, the list has no ingredient or too many, or the figures contradict each other.
    /// </exception>
    public static FoodLabel Of(string name, NutritionPanel panel, string ingredientList, IngredientTable table,
        LabelOptions? options = null)
    {
        Guard.NotNull(name);
        Guard.NotNull(panel);
        Guard.NotNull(ingredientList);
        return Of(name, panel, IngredientList.Read(ingredientList, Guard.NotNull(table), nameof(ingredientList)),
            options ?? LabelOptions.Default);
    }

    /// <summary>The food and what is to be said of it.</summary>
    public override string ToString() => $"{Ingredient.Name}: {Ingredient.Composition}; {string.Join(" ", Remarks)}";

    /// <summary>A food without weights.</summary>
    internal static Ingredient Make(string id, string name, Composition composition, Evidence evidence) => new(
        new IngredientNames(id, name, [], IngredientClass.Paste), new IngredientRecord
    {
        DefaultPacking = Packing.Levelled, StandardReferenceNumber = null,
        Composition = composition, DextroseEquivalent = null,
        CompositionProvenance = new Provenance(Bibliography.Get("confectio"), evidence, "", ""),
        SugarsProvenance = new Provenance(Bibliography.Get("confectio"), evidence, "", ""), Allergens = [], OftenContains = [], Note = "",
    }, []);

    private static FoodLabel Of(string name, NutritionPanel panel, IngredientList? list, LabelOptions options)
    {
        string shown = name.Trim(), id = options.Id ?? IdOf(shown);
        if (!IngredientReader.IsId(id))
            throw new ArgumentException($"{(options.Id is null ? nameof(name) : nameof(options))} was {Excerpt.Of(options.Id ?? name)}; "
                + "it makes no id: a name with a letter or digit from a to z, or an id of such and hyphens, at most 80, was expected.",
                options.Id is null ? nameof(name) : nameof(options));
        List<string> remarks = [];
        bool tolerance = options.Spread == LabelSpread.RoundingAndTolerance;
        remarks.Add(tolerance ? "Spreads count the rounding of the label and the tolerances of the law, which are from memory."
            : "Spreads count the rounding of the label alone; the food in the pack may be farther off.");

        // What follows from the panel alone.
        List<PanelBound> bounds = Bounds(panel, tolerance);
        bool energy = bounds.Exists(bound => !bound.IsTarget);
        LabelModel alone = new([], bounds, 0);
        double[]? likely = alone.Likely();
        if (likely is null && energy)
        {
            bounds.RemoveAll(bound => !bound.IsTarget);
            alone = new LabelModel([], bounds, 0);
            likely = alone.Likely();
            remarks.Add("The energy of the panel does not go with its other figures; it was left out.");
        }
        (double Low, double High)[]? limits = likely is null ? null : alone.Extremes(s_parts, [], likely);
        if (likely is null || limits is null)
            throw new ArgumentException($"{nameof(panel)} contradicts itself: no food of 100 g has {panel}. More than 100 g of them, or a part "
                + "that is more than its whole?", nameof(panel));
        if (panel[LabelNutrient.Saturates] is PanelFigure saturates && panel[LabelNutrient.Fat] is PanelFigure fat && saturates.Low > fat.High)
            remarks.Add($"The panel has more saturates ({saturates.Printed}) than fat ({fat.Printed}).");

        // What the list says besides.
        LabelModel model = alone;
        IReadOnlyList<IngredientList.Item> items = list?.Items ?? [];
        List<LabelShare> shares = [];
        bool listFits = false;
        if (list is not null && items.Any(item => item.Ingredient is not null))
        {
            foreach (double boiled in options.MaximumBoiledOffPercent < 1000
                ? (double[])[options.MaximumBoiledOffPercent, 1000] : [options.MaximumBoiledOffPercent])
            {
                LabelModel listed = new(items, bounds, boiled);
                int[] known = [.. Enumerable.Range(0, items.Count).Where(j => items[j].Ingredient is not null)];
                if (listed.Likely() is not double[] x || listed.Extremes(s_parts, known, x) is not { } ends)
                    continue;
                (model, likely, listFits) = (listed, x, true);
                for (int i = 0; i < s_parts.Length; i++)
                {
                    double u = 2 * listed.Uncertainty(s_parts[i], x);
                    double low = Math.Max(limits[i].Low, ends[i].Low - u), high = Math.Min(limits[i].High, ends[i].High + u);
                    if (low <= high)
                        limits[i] = (low, high);
                }
                for (int k = 0; k < known.Length; k++)
                {
                    (double low, double high) = ends[s_parts.Length + k];
                    double share = Math.Max(0, x[known[k]]);
                    shares.Add(new LabelShare(items[known[k]].Ingredient!, share, new Spread(Math.Max(0, Math.Min(low, share)), share,
                        Math.Max(high, share), SpreadBasis.Models)));
                }
                if (boiled > options.MaximumBoiledOffPercent)
                    remarks.Add("List and panel fit only if water boiled off; that was allowed.");
                break;
            }
        }
        if (list is not null && !listFits)
            remarks.Add(items.All(item => item.Ingredient is null)
                ? "The table knows no ingredient of the list: the composition is that of the panel alone."
                : "No formula of the list, in its order, has the figures of the panel: the composition is that of the panel alone.");

        // What a list makes likely may lie at the edge of what the panel allows: whoever reads the panel beside it is told.
        foreach (PanelBound bound in bounds.Where(bound => listFits && bound.IsTarget))
        {
            double grams = model.GramsOf(bound.Core, likely);
            if (Math.Abs(grams - bound.Likely) > Math.Max(1, 0.05 * bound.Likely))
                remarks.Add(string.Create(CultureInfo.InvariantCulture,
                    $"By the list {bound.Name} is likely {grams:0.#} g in 100 g, where the panel has {bound.Likely:0.#}."));
        }

        (double[] fractions, double milkFat) = model.CompositionOf(likely);
        Composition composition = new(fractions, milkFat);
        Dictionary<uint, (double Low, double High)> intervals = [];
        for (int i = 0; i < s_groups.Length; i++)
        {
            // The solver is exact to some 1e-9 of the whole; a limit that is cut short by it would be too sure.
            intervals[Bits(s_groups[i])] = (Math.Max(0, limits[i].Low / 100 - 1e-8), Math.Min(1, limits[i].High / 100 + 1e-8));
        }
        Constituent[] notStated = [.. NotStated(panel).Where(constituent => !Decided(intervals, constituent, listFits))];
        Evidence worst = listFits ? items.Where(item => item.Ingredient is not null).Select(item => item.Ingredient!.CompositionProvenance.Evidence)
            .Append(Evidence.Computed).MaxBy(Rank) : Evidence.Computed;
        Evidence ofSugars = listFits && !items.Any(item => item.Ingredient is null)
            ? items.Select(item => item.Ingredient!.SugarsProvenance.Evidence).Append(worst).MaxBy(Rank) : Evidence.Estimated;
        Evidence?[] guessed = new Evidence?[Constituents.Count];
        foreach (Constituent constituent in Constituents.All)
        {
            // Figures of the panel are the maker's; everything else is what they leave, unless a list of known foods says what it is.
            bool printed = constituent switch
            {
                Constituent.Fat => panel[LabelNutrient.Fat] is not null,
                Constituent.Protein => panel[LabelNutrient.Protein] is not null,
                Constituent.Fibre => panel[LabelNutrient.Fibre] is not null,
                Constituent.Polyols => panel[LabelNutrient.Polyols] is not null,
                Constituent.Starch => panel[LabelNutrient.Starch] is not null,
                Constituent.Water => panel[LabelNutrient.Water] is not null,
                Constituent.Salt => panel[LabelNutrient.Salt] is not null || panel[LabelNutrient.Sodium] is not null,
                _ => false,
            };
            if (!printed && !s_sugars.Contains(constituent))
                guessed[Constituents.PlaceOf(constituent)] =
                    listFits && !items.Any(item => item.Ingredient is null) ? worst : Evidence.Estimated;
        }

        if (notStated.Length > 0)
            remarks.Add($"The label does not say: {string.Join(", ", notStated.Select(constituent => EnumWords.Of(constituent, ' ')))}. "
                + "What stands for them is what the other figures leave.");
        string[] unmatched = [.. items.Where(item => item.Ingredient is null).Select(item => item.Name)];
        if (unmatched.Length > 0)
            remarks.Add($"The table does not know {string.Join(", ", unmatched.Take(10).Select(name => name.Length <= 60 ? name : Excerpt.Of(name)))}{(unmatched.Length > 10 ? " and more" : "")}; "
                + "that may be of anything.");
        (IReadOnlyList<Allergen> has, IReadOnlyList<Allergen> may, bool isStated) = Allergens(list, remarks);
        Source source = new("label", "Label of " + shown, $"Label of {shown}, as its owner read it.", "", "the owner's own", "");
        Ingredient food = new(new IngredientNames(id, shown, [], IngredientClass.Paste), new IngredientRecord
        {
            DefaultPacking = Packing.Levelled, StandardReferenceNumber = null, Composition = composition, DextroseEquivalent = null,
            CompositionProvenance = new Provenance(source, worst, "nutrition panel" + (list is null ? "" : " and list of ingredients"), ""),
            SugarsProvenance = new Provenance(source, ofSugars, "", ""), Allergens = has, OftenContains = may, Guessed = guessed,
            AllergensAreStated = isStated && unmatched.Length == 0,
            Stated = new StatedComposition(intervals, tolerance || listFits ? SpreadBasis.Judged : SpreadBasis.Sources),
            NotStated = notStated, Note = string.Join(" ", remarks),
        }, []);
        return new FoodLabel(panel, food, shares, unmatched, remarks);
    }

    private static List<PanelBound> Bounds(NutritionPanel panel, bool tolerance)
    {
        List<PanelBound> bounds = [];
        foreach (PanelFigure figure in panel.Figures)
        {
            Constituent[]? core = Counted(figure.Nutrient, panel.Rules, out Constituent[] whole);
            if (core is null || figure.Nutrient == LabelNutrient.Sodium && panel[LabelNutrient.Salt] is not null)
                continue;
            double scale = figure.Nutrient == LabelNutrient.Sodium ? 2.5 / 1000 : 1;
            double low = 100 * scale * figure.Low / panel.HighGrams, high = 100 * scale * figure.High / panel.LowGrams,
                likely = 100 * scale * figure.Value / panel.Grams;
            if (tolerance && figure.Nutrient != LabelNutrient.Water)
            {
                double allowed = Tolerance(figure.Nutrient, panel.Rules, likely);
                (low, high) = (low - allowed, high + allowed);
            }
            if (low > 100)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"{nameof(panel)} has {EnumWords.Of(figure.Nutrient, ' ')} {figure.Printed} in {panel.Grams:0.###} g, which is more than there is."),
                    nameof(panel));
            FormulaPart part = FormulaPart.Of("figure", core), all = FormulaPart.Of("figure", whole);
            bounds.Add(new PanelBound(part, all, Math.Max(0, low), Math.Min(100, likely), Math.Min(100, high), core)
            {
                Name = EnumWords.Of(figure.Nutrient, ' '),
            });
        }
        if (bounds.Count == 0)
            throw new ArgumentException($"{nameof(panel)} has no figure of a constituent; an energy alone says nothing of one.", nameof(panel));
        if (!tolerance && panel.Rules == LabelRules.EuropeanUnion)
            AddEnergy(panel, bounds);
        return bounds;
    }

    // The energy was worked out of the other figures, rounded or not: their rounding counts in. Of fibre that is not printed some makers
    // count the energy and others do not.
    private static void AddEnergy(NutritionPanel panel, List<PanelBound> bounds)
    {
        bool joules = panel[LabelNutrient.Kilojoules] is not null;
        if ((panel[LabelNutrient.Kilojoules] ?? panel[LabelNutrient.Kilocalories]) is not { IsLimit: false } figure
            || panel[LabelNutrient.Fat] is null || panel[LabelNutrient.Carbohydrate] is null || panel[LabelNutrient.Protein] is null)
            return;
        (double fat, double carbohydrate, double polyols, double fibre, double alcohol, double acids) =
            joules ? (37.0, 17.0, 10.0, 8.0, 29.0, 13.0) : (9.0, 4.0, 2.4, 2.0, 7.0, 3.0);
        double Half(LabelNutrient nutrient) => panel[nutrient] is PanelFigure known ? Math.Max(known.High - known.Value, known.Value - known.Low) : 0;
        double slack = fat * Half(LabelNutrient.Fat) + carbohydrate * (Half(LabelNutrient.Carbohydrate) + Half(LabelNutrient.Protein)
            + Half(LabelNutrient.Polyols)) + fibre * Half(LabelNutrient.Fibre);
        double[] least = Weights(false), most = Weights(true);
        bounds.Add(new PanelBound(FormulaPart.Weighted("energy", least), FormulaPart.Weighted("energy", most),
            100 * (figure.Low - slack) / panel.HighGrams / fat, 100 * figure.Value / panel.Grams / fat,
            100 * (figure.High + slack) / panel.LowGrams / fat, []) { IsTarget = false });

        // In parts of the energy of fat, so that all rows of the programme are of one size.
        double[] Weights(bool all)
        {
            double[] weights = new double[Constituents.Count];
            foreach (Constituent constituent in Constituents.All)
            {
                weights[Constituents.PlaceOf(constituent)] = constituent switch
                {
                    Constituent.Fat => 1,
                    Constituent.Protein or Constituent.Starch or Constituent.HigherSaccharides => carbohydrate / fat,
                    Constituent.Polyols or Constituent.Glycerol => polyols / fat,
                    Constituent.Fibre => all || panel[LabelNutrient.Fibre] is not null ? fibre / fat : 0,
                    Constituent.Alcohol => alcohol / fat,
                    Constituent.Acids => acids / fat,
                    Constituent.Other => all ? carbohydrate / fat : 0,
                    _ => s_sugars.Contains(constituent) ? carbohydrate / fat : 0,
                };
            }
            return weights;
        }
    }

    // What a figure counts for sure, and with what some count too: what a table leaves over, and acids, may be carbohydrate by difference.
    internal static Constituent[]? Counted(LabelNutrient nutrient, LabelRules rules, out Constituent[] whole)
    {
        bool american = rules == LabelRules.UnitedStates;
        (Constituent[]? core, whole) = nutrient switch
        {
            LabelNutrient.Fat => Both(Constituent.Fat),
            LabelNutrient.Carbohydrate when american => ([.. s_carbohydrates, Constituent.Fibre],
                [.. s_carbohydrates, Constituent.Fibre, Constituent.Acids, Constituent.Other]),
            LabelNutrient.Carbohydrate => (s_carbohydrates, [.. s_carbohydrates, Constituent.Other]),
            LabelNutrient.Sugars => (s_sugars, s_sugars),
            LabelNutrient.Polyols => ([Constituent.Polyols], [Constituent.Polyols, Constituent.Glycerol]),
            LabelNutrient.Starch => Both(Constituent.Starch),
            LabelNutrient.Fibre => Both(Constituent.Fibre),
            LabelNutrient.Protein => Both(Constituent.Protein),
            LabelNutrient.Salt or LabelNutrient.Sodium => Both(Constituent.Salt),
            LabelNutrient.Water => Both(Constituent.Water),
            _ => ((Constituent[]?)null, []),
        };
        return core;

        static (Constituent[]?, Constituent[]) Both(Constituent constituent) => ([constituent], [constituent]);
    }

    private static double Tolerance(LabelNutrient nutrient, LabelRules rules, double grams)
    {
        if (rules == LabelRules.UnitedStates)
            return 0.2 * grams;
        if (nutrient is LabelNutrient.Salt or LabelNutrient.Sodium)
            return grams < 1.25 ? 0.375 : 0.2 * grams;
        double little = nutrient == LabelNutrient.Fat ? 1.5 : 2;
        return grams < 10 ? little : grams <= 40 ? 0.2 * grams : 8;
    }

    private static IEnumerable<Constituent> NotStated(NutritionPanel panel)
    {
        bool Has(LabelNutrient nutrient) => panel[nutrient] is not null;
        foreach (Constituent constituent in Constituents.All)
        {
            bool said = constituent switch
            {
                Constituent.Water => Has(LabelNutrient.Water),
                Constituent.Fat => Has(LabelNutrient.Fat),
                Constituent.Protein => Has(LabelNutrient.Protein),
                Constituent.Fibre => Has(LabelNutrient.Fibre),
                Constituent.Polyols => Has(LabelNutrient.Polyols),
                Constituent.Starch => Has(LabelNutrient.Starch),
                Constituent.Salt => Has(LabelNutrient.Salt) || Has(LabelNutrient.Sodium),
                // The kinds of sugar are never printed; where their sum is, what is not known is how they share it.
                _ => false,
            };
            if (!said)
                yield return constituent;
        }
    }

    // What the others leave no room for, or what a list of foods fixes to half a gram, is known without being printed.
    private static bool Decided(Dictionary<uint, (double Low, double High)> intervals, Constituent constituent, bool listFits)
    {
        (double low, double high) = intervals[1u << Constituents.PlaceOf(constituent)];
        return high - low <= (listFits ? 0.01 : 0.001);
    }

    // What was published stands before common practice, and that before what was estimated or recalled.
    private static int Rank(Evidence evidence) => evidence switch
    {
        Evidence.FromMemory => 9,
        Evidence.Estimated => 8,
        Evidence.CommonPractice => 7,
        _ => (int)evidence,
    };

    private static (IReadOnlyList<Allergen> Has, IReadOnlyList<Allergen> May, bool IsStated) Allergens(IngredientList? list, List<string> remarks)
    {
        if (list is null)
        {
            remarks.Add("No list of ingredients was given, so no allergen is known, and none is said to be absent. The packet wins.");
            return ([], [], false);
        }
        (IReadOnlyList<Allergen> words, bool nuts) = AllergenWords.In(list.Contains);
        // A list names what it holds; a food of the table that stands for an item brings what its kind always has.
        Allergen[] has = [.. words.Concat(list.Items.SelectMany(item => item.Ingredient?.Allergens ?? [])).Distinct().Order()];
        (IReadOnlyList<Allergen> traces, bool otherNuts) = AllergenWords.In(list.MayContain);
        Allergen[] may = [.. traces.Concat(list.Items.SelectMany(item => item.Ingredient?.OftenContains ?? [])).Distinct()
            .Where(allergen => !has.Contains(allergen)).Order()];
        if (nuts)
            remarks.Add("The list names nuts and not which: take it as any nut.");
        if (otherNuts)
            remarks.Add("The label says that it may contain nuts and not which: take it as any nut.");
        remarks.Add("Allergens were read from the words of the list and of the foods it names; none is said to be absent. The packet wins.");
        return (has, may, !nuts && !otherNuts);
    }

    private static uint Bits(IEnumerable<Constituent> constituents) =>
        constituents.Aggregate(0u, (bits, constituent) => bits | 1u << Constituents.PlaceOf(constituent));

    private static string IdOf(string name) => NameKey.SlugOf(name) is { Length: > 0 } slug ? "label-" + slug : "";
}
