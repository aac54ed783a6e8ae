using System.Globalization;
using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Text;

namespace Confectio.Formulas.Solving;

/// <summary>
/// Reads a problem member by member. What is asked of the ingredients is remembered as steps and built when all of it has been read, so
/// that one mistake hides no other.
/// </summary>
internal sealed partial class ProblemReader(IngredientTable table, IReadOnlyList<FormulaPropertyKind> properties)
{
    private const double NoLimitGrams = 1e12;

    private const int MaximumGroups = 100;

    private readonly List<(JsonFields At, string? Member, Func<FormulaProblem, FormulaProblem> Add)> _ingredients = [], _demands = [];
    private readonly List<FormulaPart> _groups = [];
    private readonly Dictionary<FormulaPart, IReadOnlyList<Ingredient>> _members = [];
    private readonly List<string> _without = [];
    private readonly HashSet<Ingredient> _named = [];
    private readonly List<Ingredient> _own = [];
    private readonly List<string> _remarks = [];
    private IngredientTable _table = table;
    private double _baseGrams;

    public FormulaProblem? Read(JsonFields fields)
    {
        if (!fields.IsVersion("confectioProblem", ProblemJson.Version))
            return null;
        string name = fields.Text("name") ?? "";
        double boiledOff = fields.Number("baseBoiledOffGrams") ?? 0;
        bool isFree = fields.Flag("totalIsFree");
        double? total = fields.Number("totalGrams");
        fields.List("ownIngredients", MaximumGroups, ReadOwn);
        fields.NeededList("ingredients", FormulaProblem.MaximumIngredients, ReadIngredient);
        ReadFreeFrom(fields);
        fields.List("chooseFrom", MaximumGroups, ReadChooseFrom);
        _ingredients.Add((fields, "baseBoiledOffGrams", problem =>
            isFree ? problem.WithBaseBoiledOff(boiledOff).WithFreeTotal() : problem.WithBaseBoiledOff(boiledOff)));
        if (fields.IsGood && total is null && !(_baseGrams - boiledOff > 0))
            fields.Missing("totalGrams", "and the base has no mass to take it from");
        FormulaProblem? problem = fields.Make(() => FormulaProblem.Of(name, total ?? _baseGrams - boiledOff, []), _ =>
            total is null ? null : "totalGrams");
        Apply(_ingredients, ref problem);
        // Of ingredients that could not be put in, no demand can be met.
        FormulaProblem? built = fields.IsGood ? problem : null;
        fields.List("groups", MaximumGroups, ReadGroup);
        fields.List("targets", FormulaProblem.MaximumDemands, share => ReadShare(share, isTarget: true));
        fields.List("requirements", FormulaProblem.MaximumDemands, share => ReadShare(share, isTarget: false));
        fields.List("propertyTargets", FormulaProblem.MaximumDemands, property => ReadProperty(property, isTarget: true));
        fields.List("propertyLimits", FormulaProblem.MaximumDemands, property => ReadProperty(property, isTarget: false));
        fields.List("ratios", FormulaProblem.MaximumDemands, ReadRatio);
        fields.List("choices", FormulaProblem.MaximumDemands, ReadChoice);
        fields.Object("cost", ReadCost);
        fields.Object("boilOff", ReadBoilOff);
        ReadPreference(fields);
        Apply(_demands, ref built);
        return built is null ? null : _remarks.Aggregate(built, (made, remark) => made.WithRemark(remark));
    }

    private JsonFields ReadIngredient(JsonFields fields)
    {
        Ingredient? ingredient = FormulaLineReader.NeededIngredient(fields, "ingredient", _table);
        double based = fields.Number("baseGrams") ?? 0;
        double? low = fields.Number("lowGrams"), high = fields.Number("highGrams"), given = fields.Number("fixedGrams"),
            cost = fields.Number("costPerKilogram");
        bool mayBeLeftOut = fields.Flag("mayBeLeftOut");
        _baseGrams += based;
        if (ingredient is null)
            return fields;
        _named.Add(ingredient);
        _ingredients.Add((fields, null, problem => problem.WithIngredient(ingredient, based)));
        if (given is double grams)
            _demands.Add((fields, "fixedGrams", problem => problem.WithFixed(ingredient, grams)));
        if (mayBeLeftOut)
            _demands.Add((fields, null, problem => problem.WithOptional(ingredient, low ?? double.NaN, high ?? NoLimitGrams)));
        else if (low is not null || high is not null)
            _demands.Add((fields, null, problem => problem.WithLimit(ingredient, low ?? 0, high ?? NoLimitGrams)));
        if (cost is double price)
            _demands.Add((fields, "costPerKilogram", problem => problem.WithCost(ingredient, price)));
        return fields;
    }

    // A food of one's own beside those of the table, which comes before one of the same name.
    private Ingredient? ReadOwn(JsonFields fields)
    {
        Ingredient? own = OwnIngredientJson.Read(fields);
        if (own is null)
            return null;
        if (_own.Exists(other => other.Id == own.Id || NameKey.Of(other.Name) == NameKey.Of(own.Name)))
        {
            fields.Wrong("name", $"{Excerpt.Of(own.Name)} is an own ingredient already");
            return null;
        }
        if (_table.TryGet(own.Name, out Ingredient? known) || _table.TryGet(own.Id, out known))
            _remarks.Add($"{own.Name} is your own here, not the {known.Name} of the table.");
        if (!own.AllergensAreStated)
            _remarks.Add($"Of {own.Name} nobody said what allergens it has: read its label.");
        _own.Add(own);
        _table = _table.With(own);
        return own;
    }

    private JsonFields ReadShare(JsonFields fields, bool isTarget)
    {
        fields.Need("part");
        bool isKept = !isTarget && fields.Flag("asInBase");
        FormulaPart? part = ReadPart(fields, "part"), of = fields.Has("of") ? ReadPart(fields, "of") : FormulaPart.Everything;
        double? point = fields.Number("percent"), low = fields.Number("lowPercent"), high = fields.Number("highPercent"),
            tolerance = fields.Number("tolerancePercent");
        int? priority = fields.Whole("priority");
        if (fields.Has("grams") | fields.Has("lowGrams") | fields.Has("highGrams") | fields.Has("toleranceGrams"))
            return ReadMass(fields, part, isTarget, priority);
        bool hasEnds = fields.Has("lowPercent") || fields.Has("highPercent");
        if (isKept ? fields.Has("percent") || hasEnds : fields.Has("percent") == hasEnds)
            fields.Wrong(null, "either percent or lowPercent and highPercent is expected" + (isTarget ? "" : ", or asInBase alone"));
        if (!isTarget && (tolerance is not null || priority is not null))
            fields.Wrong(null, "a requirement has no tolerance and no priority; it must be kept");
        // Per cent in the text is per cent in what is said of it.
        bool isOfAll = of?.Equals(FormulaPart.Everything) ?? false;
        double ceiling = 100 * (isOfAll ? 1 : FormulaProblem.MaximumShare);
        foreach ((string member, double? percent) in new[] { ("percent", point), ("lowPercent", low), ("highPercent", high) })
        {
            if (percent is double value && (value < 0 || value > ceiling))
                fields.Wrong(member, string.Create(CultureInfo.InvariantCulture, $"{member} was {percent}; from 0 to {ceiling} per cent "
                    + $"{(isOfAll ? "of everything" : "of another part")} is expected"));
        }
        if (low > high)
            fields.Wrong("highPercent", string.Create(CultureInfo.InvariantCulture, $"highPercent was {high}; at least the lowPercent of {low} is expected"));
        if (fields.IsGood && isKept)
        {
            _demands.Add((fields, null, problem => problem.WithKept(part!, of!)));
        }
        else if (fields.IsGood)
        {
            double least = (point ?? low ?? 0) / 100, most = (point ?? high ?? double.PositiveInfinity) / 100;
            _demands.Add((fields, null, problem => isTarget
                ? problem.WithTargetRange(part!, least, most, of!, (tolerance ?? 1) / 100, priority ?? 1)
                : problem.WithRequirement(part!, least, most, of!)));
        }
        return fields;
    }

    // The grams of a part, in place of its share.
    private JsonFields ReadMass(JsonFields fields, FormulaPart? part, bool isTarget, int? priority)
    {
        double? point = fields.Number("grams"), low = fields.Number("lowGrams"), high = fields.Number("highGrams"),
            tolerance = fields.Number("toleranceGrams");
        if (fields.Has("grams") == (fields.Has("lowGrams") || fields.Has("highGrams")))
            fields.Wrong(null, "either grams or lowGrams and highGrams is expected");
        foreach (string member in (string[])["percent", "lowPercent", "highPercent", "tolerancePercent", "of", "asInBase"])
        {
            if (fields.Has(member))
                fields.Wrong(member, "it asks for a share, where grams are asked for");
        }
        if (!isTarget && (tolerance is not null || priority is not null))
            fields.Wrong(null, "a requirement has no tolerance and no priority; it must be kept");
        if (fields.IsGood)
        {
            double least = point ?? low ?? 0, most = point ?? high ?? double.PositiveInfinity;
            _demands.Add((fields, null, problem => isTarget ? problem.WithMassTarget(part!, least, most, tolerance, priority ?? 1)
                : problem.WithMass(part!, least, most)));
        }
        return fields;
    }

    private JsonFields ReadRatio(JsonFields fields)
    {
        Ingredient? first = FormulaLineReader.NeededIngredient(fields, "ingredient", _table),
            second = FormulaLineReader.NeededIngredient(fields, "to", _table);
        double? point = fields.Number("ratio"), low = fields.Number("lowRatio"), high = fields.Number("highRatio");
        bool isKept = fields.Flag("asInBase"), hasEnds = fields.Has("lowRatio") || fields.Has("highRatio");
        if (isKept ? fields.Has("ratio") || hasEnds : fields.Has("ratio") == hasEnds)
            fields.Wrong(null, "either ratio or lowRatio and highRatio is expected, or asInBase alone");
        if (fields.IsGood && isKept)
            _demands.Add((fields, null, problem => problem.WithKeptRatio(first!, second!)));
        else if (fields.IsGood)
            _demands.Add((fields, null, problem => problem.WithRatioRange(first!, second!, point ?? low ?? 0,
                point ?? high ?? double.PositiveInfinity)));
        return fields;
    }

    // No milk, no nuts: what has them is left out, said by name in the answer.
    private void ReadFreeFrom(JsonFields fields)
    {
        bool oftenIsAllowed = fields.Flag("oftenContainsIsAllowed");
        foreach ((string text, JsonFields at) in fields.Texts("freeFrom", MaximumGroups))
        {
            if (Allergen(text, at) is not string word)
                continue;
            if (!oftenIsAllowed)
                _without.Add(word);
            _demands.Add((at, null, problem => problem.FreeFrom(word, !oftenIsAllowed)));
        }
        if (oftenIsAllowed && !fields.Has("freeFrom"))
            fields.Wrong("oftenContainsIsAllowed", "it says how freeFrom is meant, and there is none");
    }

    private static string? Allergen(string text, JsonFields at)
    {
        if (AllergenWord.TryRead(text, out string? word, out _))
            return word;
        at.Wrong(null, $"{Excerpt.Of(text)} is no allergen; one of these is expected: {AllergenWord.All}", ProblemCodes.UnknownName);
        return null;
    }

    // The table's foods of a kind, to choose among.
    private JsonFields ReadChooseFrom(JsonFields fields)
    {
        fields.Need("kind");
        FoodKind kind = fields.Word("kind", FoodKind.Fats);
        string? name = fields.Text("name");
        List<string> without = [.. _without];
        foreach ((string text, JsonFields at) in fields.Texts("without", MaximumGroups))
        {
            if (Allergen(text, at) is string word)
                without.Add(word);
        }
        List<Ingredient> except = Ingredients(fields, "except");
        int? atMost = fields.Whole("atMost");
        double? low = fields.Number("lowGrams"), high = fields.Number("highGrams");
        if (!fields.IsGood)
            return fields;
        IReadOnlyList<Ingredient>? foods = fields.Make(() => FormulaProblem.FoodsOf(_table, kind, without, except), _ => "kind");
        if (foods is null)
            return fields;
        _ingredients.Add((fields, null, problem => problem.WithFoodsOf(_table, kind, without, except)));
        if (name is not null)
            AddGroup(fields, name, foods);
        if (atMost is int most)
            _demands.Add((fields, "atMost", problem => problem.WithSomeOf(foods, Math.Min(most, foods.Count), 0, low ?? 0, high ?? double.PositiveInfinity)));
        else if (low is not null || high is not null)
            fields.Wrong(low is null ? "highGrams" : "lowGrams", "it holds of those that are used, and atMost says how many are");
        return fields;
    }

    // At most two of these, either this or that.
    private JsonFields ReadChoice(JsonFields fields)
    {
        fields.Need("ingredients");
        List<Ingredient> members = Ingredients(fields, "ingredients");
        int? atMost = fields.NeededWhole("atMost"), atLeast = fields.Whole("atLeast");
        double? low = fields.Number("lowGrams"), high = fields.Number("highGrams");
        if (fields.IsGood)
            _demands.Add((fields, null, problem => problem.WithSomeOf(members, atMost!.Value, atLeast ?? 0, low ?? 0,
                high ?? double.PositiveInfinity)));
        return fields;
    }

    private JsonFields ReadCost(JsonFields fields)
    {
        double? most = fields.Number("mostPerKilogram");
        bool isKept = fields.Flag("asInBase");
        if (isKept == fields.Has("mostPerKilogram"))
            fields.Wrong(null, "either mostPerKilogram or asInBase is expected");
        if (fields.IsGood)
            _demands.Add((fields, isKept ? "asInBase" : "mostPerKilogram", problem => isKept ? problem.WithKeptCost() : problem.WithCostCeiling(most!.Value)));
        return fields;
    }

    private List<Ingredient> Ingredients(JsonFields fields, string member)
    {
        List<Ingredient> members = [];
        foreach ((string word, JsonFields at) in fields.Texts(member, FormulaProblem.MaximumIngredients))
        {
            NameMatch match = _table.MatchName(word);
            if (match.Ingredient is Ingredient ingredient)
                members.Add(ingredient);
            else if (FindGroup(word) is FormulaPart group && member == "ingredients" && _members.TryGetValue(group, out IReadOnlyList<Ingredient>? all))
                members.AddRange(all);
            else
                at.Wrong(null, FormulaLineReader.Unknown(match, "not an ingredient", _table, at.WantsNearNames), ProblemCodes.UnknownName);
        }
        return members;
    }

    private JsonFields ReadBoilOff(JsonFields fields)
    {
        double? low = fields.Number("lowGrams"), high = fields.Number("highGrams");
        if (fields.IsGood)
            _demands.Add((fields, null, problem => problem.WithBoilOff(low ?? 0, high ?? double.NaN)));
        return fields;
    }

    private void ReadPreference(JsonFields fields)
    {
        string? prefer = fields.Text("prefer");
        double? closeness = fields.Number("nearness");
        switch (prefer)
        {
            case null or "targets-first":
                if (closeness is not null && (prefer is not null || !fields.Has("prefer")))
                    fields.Wrong("nearness", "it is only weighed where prefer is nearness-traded");
                break;
            case "nearness-traded":
                _demands.Add((fields, closeness is null ? null : "nearness", problem => problem.TradingCloseness(closeness ?? 0.01)));
                break;
            case "least-cost":
                _demands.Add((fields, "prefer", problem => problem.Preferring(Preference.LeastCost)));
                break;
            default:
                fields.Wrong("prefer", $"{Excerpt.Of(prefer)} was read; targets-first, nearness-traded or least-cost is expected",
                    ProblemCodes.UnknownName);
                break;
        }
    }

    // Ingredients that are asked about together: all flours, cream and milk.
    private JsonFields ReadGroup(JsonFields fields)
    {
        string? name = fields.NeededText("name");
        fields.Need("ingredients");
        List<Ingredient> members = Ingredients(fields, "ingredients");
        if (name is not null)
            AddGroup(fields, name, members);
        return fields;
    }

    private void AddGroup(JsonFields fields, string name, IReadOnlyList<Ingredient> members)
    {
        if (string.IsNullOrWhiteSpace(name))
            fields.Wrong("name", "a group needs a name");
        else if (FormulaPart.TryRead(name, out _) || FindGroup(name) is not null)
            fields.Wrong("name", $"{Excerpt.Of(name)} is a part already; a group has a name of its own");
        else if (members.Count > 0)
        {
            FormulaPart group = FormulaPart.OfIngredients(name, members);
            _groups.Add(group);
            _members[group] = members;
        }
        else if (fields.IsGood)
            fields.Wrong("ingredients", "a group has at least one ingredient");
    }

    private FormulaPart? FindGroup(string word) => _groups.Find(group => group.Name.Equals(word.Trim(), StringComparison.OrdinalIgnoreCase)
        || group.Word.Equals(word.Trim(), StringComparison.OrdinalIgnoreCase));

    // A group and an ingredient are parts too: their whole mass. A word that a part and an ingredient go by means the part, and that is said;
    // the ingredient is then written ingredient:salt.
    private FormulaPart? ReadPart(JsonFields fields, string member)
    {
        if (fields.Text(member) is not string text)
            return null;
        string word = text.Trim(), name = word;
        foreach (string before in (string[])[FormulaPart.IngredientPrefix, "the ingredient "])
        {
            if (word.StartsWith(before, StringComparison.OrdinalIgnoreCase))
                name = word[before.Length..];
        }
        NameMatch match = _table.MatchName(name);
        if (name.Length == word.Length)
        {
            FormulaPart? part = FindGroup(word);
            if (part is not null || FormulaPart.TryRead(word, out part))
            {
                if (match.Ingredient is Ingredient other && _named.Contains(other) && !part.Equals(FormulaPart.OfIngredient(other)))
                    _remarks.Add($"'{word}' was read as {(_groups.Contains(part) ? "the group" : "the constituent, whatever ingredient it is in")}; the ingredient {other.Name} is written {Written(other)}.");
                return part;
            }
        }
        if (match.Ingredient is Ingredient ingredient)
            return FormulaPart.OfIngredient(ingredient);
        fields.Wrong(member, FormulaLineReader.Unknown(match, "neither a part nor an ingredient", _table, fields.WantsNearNames),
            ProblemCodes.UnknownName);
        return null;
    }

    private static string Written(Ingredient ingredient) => FormulaPart.OfIngredient(ingredient).Word is string word
        && word.StartsWith(FormulaPart.IngredientPrefix, StringComparison.Ordinal) ? word : FormulaPart.IngredientPrefix + ingredient.Id;

    // What the builder refuses is a mistake of the text.
    private static void Apply(List<(JsonFields At, string? Member, Func<FormulaProblem, FormulaProblem> Add)> steps,
        ref FormulaProblem? problem)
    {
        foreach ((JsonFields at, string? member, Func<FormulaProblem, FormulaProblem> add) in steps)
        {
            try
            {
                problem = problem is null ? null : add(problem);
            }
            catch (ArgumentException e)
            {
                at.Refused(e, member);
            }
            catch (InvalidOperationException e)
            {
                at.Refused(new ArgumentException(e.Message, e), member);
            }
        }
    }
}
