using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Keeping;

namespace Confectio.Troubles;

/// <summary>A formula with what is known of it: what it has, the temperatures of its parts, and the temperature of the mix that follows.</summary>
internal sealed class TroubleParts
{
    // What nobody told is somewhere between a refrigerator and a warm kitchen.
    private const double Coldest = 4, WarmKitchen = 30;

    // Of less than this share of the mass told, a balance would be a guess.
    private const double LeastTold = 0.5;

    private static readonly Dictionary<string, Func<TroubleParts, bool>> s_has = new(StringComparer.Ordinal)
    {
        ["spread"] = parts => parts.Contents.FatOfSpreads > 0.1,
        ["egg-white"] = parts => parts.Contents.EggWhite > 0.01,
        ["icing-sugar"] = parts => parts.Contents.IcingSugar > 0.2,
        ["granulated"] = parts => parts.Formula.Lines.Any(line => line.Grams.Likely > 0 && IsGranulated(line.Ingredient)),
        ["chocolate"] = parts => parts.Contents.Chocolate > 0.2,
        ["cream"] = parts => parts.Contents.Cream > 0.1,
        ["mostly-cream"] = parts => parts.Contents.Cream > 0.5,
        ["cheese"] = parts => parts.Contents.CreamCheese > 0.05,
        ["milk-solids"] = parts => parts.Formula.Lines.Any(line => line.Grams.Likely > 0 && Starts(line.Ingredient, "milk-dry", "milk-condensed", "milk-evaporated", "whey-dried", "dulce")),
        ["yolk"] = parts => parts.Formula.Lines.Any(line => line.Grams.Likely > 0 && IsYolk(line.Ingredient)),
        ["gelatine"] = parts => parts.Formula.Lines.Any(line => line.Grams.Likely > 0 && IsGelatine(line.Ingredient)),
        ["boiled"] = parts => parts.Formula.BoiledOffGrams > 0,
    };

    private readonly List<(string Name, FormulaLine[] Lines, double Celsius)> _told = [];

    public TroubleParts(Formula formula, TroubleFacts facts)
    {
        Formula = formula;
        Facts = facts;
        Contents = new FormulaContents(formula);
        Balance = Balance.Of(formula);
        HashSet<FormulaLine> taken = [];
        foreach ((string part, double celsius) in facts.Temperatures)
        {
            if (IsMix(part))
            {
                MeasuredMix = celsius;
                continue;
            }
            FormulaLine[] lines = LinesOf(part);
            if (lines.FirstOrDefault(taken.Contains) is FormulaLine twice)
                throw Refused($"the temperature of {twice.Ingredient.Name} was told twice, the second time as {part}.");
            taken.UnionWith(lines);
            _told.Add((part, lines, celsius));
        }
        NotTold = [.. formula.Lines.Where(line => line.Grams.Likely > 0 && !taken.Contains(line)).Select(line => line.Ingredient.Name).Distinct()];
        (Mix, MixText) = MixOf(taken);
    }

    public Formula Formula { get; }

    public TroubleFacts Facts { get; }

    public FormulaContents Contents { get; }

    public Balance Balance { get; }

    /// <summary>The temperature of the mix; <see langword="null"/> where it is neither measured nor told of enough of its parts.</summary>
    public Spread? Mix { get; }

    /// <summary>How the temperature of the mix is known, or why it is not.</summary>
    public string MixText { get; }

    /// <summary>The same as part of a sentence.</summary>
    public string MixShort => Mix is not Spread mix ? MixText : string.Create(CultureInfo.InvariantCulture, $"the mix is at {mix.Likely:0.#} °C")
        + (mix.High > mix.Low ? string.Create(CultureInfo.InvariantCulture, $" ({mix.Low:0.#} to {mix.High:0.#})") : "");

    /// <summary>The parts whose temperature was not told.</summary>
    public IReadOnlyList<string> NotTold { get; }

    private double? MeasuredMix { get; }

    public static bool IsKnown(string word) => s_has.ContainsKey(word);

    public bool Has(string word) => s_has[word](this);

    /// <summary>The temperature that was told of the fat or of the whites, each by itself or in a part with others.</summary>
    public (double Celsius, string Name)? Told(Func<Ingredient, bool> of)
    {
        foreach ((string name, FormulaLine[] lines, double celsius) in _told)
        {
            if (lines.Any(line => of(line.Ingredient)))
                return (celsius, name);
        }
        return null;
    }

    public static bool IsSpread(Ingredient food) => Starts(food, "butter-", "shortening-", "margarine-");

    public static bool IsWhite(Ingredient food) => Starts(food, "egg-white", "meringue-powder");

    public static bool IsIcingSugar(Ingredient food) => Starts(food, "sugar-icing");

    public static bool IsGranulated(Ingredient food) => Starts(food, "sugar-granulated", "sugar-caster", "sugar-coarse", "sugar-brown", "sugar-muscovado", "sugar-demerara", "sugar-turbinado");

    public static bool IsGelatine(Ingredient food) => food.Id is "gelatine" or "gelatine-leaf";

    public static bool IsChocolate(Ingredient food) => Starts(food, "chocolate-", "couverture-");

    /// <summary>The lines of the water part: whites, sugars, syrups and water, without what has fat.</summary>
    public FormulaLine[] WaterPart => [.. Formula.Lines.Where(line => line.Grams.Likely > 0 && FormulaPart.Fat.FractionIn(line.Ingredient) < 0.005
        && (IsWhite(line.Ingredient) || FormulaPart.Sugars.FractionIn(line.Ingredient) > 0.3 || FormulaPart.Water.FractionIn(line.Ingredient) > 0.5))];

    private static bool IsYolk(Ingredient food) => Starts(food, "egg-yolk", "egg-whole");

    private static bool Starts(Ingredient food, params ReadOnlySpan<string> starts)
    {
        foreach (string start in starts)
        {
            if (food.Id.StartsWith(start, StringComparison.Ordinal))
                return true;
        }
        return false;
    }

    private static bool IsMix(string part) => part.Trim().ToLowerInvariant() is "mix" or "icing" or "all" or "everything" or "it";

    private FormulaLine[] LinesOf(string part)
    {
        FormulaLine[] all = [.. Formula.Lines.Where(line => line.Grams.Likely > 0)];
        FormulaLine[] found = part.Trim().ToLowerInvariant() switch
        {
            "meringue" when Contents.EggWhite > 0 => WaterPart,
            "syrup" when Formula.Lines.Any(line => FormulaPart.Sugars.FractionIn(line.Ingredient) > 0.3) => [.. WaterPart.Where(line => !IsWhite(line.Ingredient))],
            "fat" => [.. all.Where(line => IsSpread(line.Ingredient))],
            _ => Named(all, part),
        };
        return found.Length > 0 ? found
            : throw Refused($"there is no {part} in {(Formula.Name.Length > 0 ? Formula.Name : "the formula")}; it has "
                + $"{string.Join(", ", all.Select(line => line.Ingredient.Name).Distinct())}; mix is all of it.");
    }

    // The one that has this name, or else the one in whose names all the words stand.
    private static FormulaLine[] Named(FormulaLine[] all, string part)
    {
        FormulaLine[] exact = [.. all.Where(line => NamesOf(line.Ingredient).Any(name => name.Equals(part.Trim(), StringComparison.OrdinalIgnoreCase)))];
        if (exact.Length > 0)
            return OfOne(exact, part);
        string[] words = Words(part);
        return words.Length == 0 ? [] : OfOne([.. all.Where(line => NamesOf(line.Ingredient).Any(name => words.All(Words(name).Contains)))], part);
    }

    private static FormulaLine[] OfOne(FormulaLine[] lines, string part) => lines.Select(line => line.Ingredient).Distinct().Count() <= 1 ? lines
        : throw Refused($"{part} may be {string.Join(" or ", lines.Select(line => line.Ingredient.Name).Distinct())}; say which.");

    private static ArgumentException Refused(string reason, Exception? inner = null, string facts = "") => new($"{nameof(facts)}: {reason}", nameof(facts), inner);

    private static IEnumerable<string> NamesOf(Ingredient food) => [food.Id, food.Name, .. food.Aliases.Select(alias => alias.Text)];

    private static string[] Words(string text) => [.. text.ToLowerInvariant().Split([' ', '-', ',', '\''], StringSplitOptions.RemoveEmptyEntries).Select(word => word.TrimEnd('s'))];

    private (Spread?, string) MixOf(HashSet<FormulaLine> taken)
    {
        if (MeasuredMix is double measured)
            return (Spread.Exactly(measured), string.Create(CultureInfo.InvariantCulture, $"the mix is at {measured:0.#} °C, as told"));
        double told = _told.Sum(part => part.Lines.Sum(line => line.Grams.Likely));
        if (_told.Count == 0)
            return (null, "no temperature was told");
        // With a room the rest is at least bounded by it.
        if (told < LeastTold * Formula.PutInGrams && Facts.RoomCelsius is null)
            return (null, string.Create(CultureInfo.InvariantCulture, $"the temperature of {told:0} g of {Formula.PutInGrams:0} g was told, less than half of it, and of no room"));
        if (Formula.BoiledOffGrams > 0)
            return (null, "some of it boils off, and in which part is not known");
        FormulaLine[] rest = [.. Formula.Lines.Where(line => line.Grams.Likely > 0 && !taken.Contains(line))];
        double warmest = Math.Max(Coldest, Facts.RoomCelsius ?? WarmKitchen);
        if (Landing(rest, Coldest) is not Spread low || Landing(rest, warmest) is not Spread high || Landing(rest, (Coldest + warmest) / 2) is not Spread middle)
            return (null, "the parts meet outside of what the heat balance holds for");
        Spread mix = new(Math.Min(low.Low, middle.Likely), middle.Likely, Math.Max(high.High, middle.Likely), rest.Length > 0 ? SpreadBasis.Judged : SpreadBasis.Models);
        string untold = rest.Length == 0 ? "" : string.Create(CultureInfo.InvariantCulture,
            $"; of {string.Join(", ", rest.Select(line => line.Ingredient.Name).Distinct())} nothing was told: taken as anywhere from {Coldest:0.#} °C (a refrigerator) to "
            + $"{warmest:0.#} °C ({(Facts.RoomCelsius is null ? "a warm kitchen" : "the room")})");
        return (mix, string.Create(CultureInfo.InvariantCulture,
            $"the parts meet at {mix.Likely:0.#} °C ({mix.Low:0.#} to {mix.High:0.#}) by the heat balance, without bowl, room and the work of the mixer{untold}"));
    }

    private Spread? Landing(FormulaLine[] rest, double celsius)
    {
        List<HeatLine> lines = [];
        try
        {
            foreach ((string name, FormulaLine[] part, double at) in _told)
                lines.Add(HeatLine.Of(Formula.Of(name, part)).At(at));
            foreach (FormulaLine line in rest)
                lines.Add(HeatLine.Of(line.Ingredient, line.Grams.Likely).At(celsius));
        }
        catch (ArgumentOutOfRangeException e)
        {
            throw Refused(Guard.ReasonOf(e), e);
        }
        return HeatBalance.Of(lines).FinalTemperature.Value;
    }
}
