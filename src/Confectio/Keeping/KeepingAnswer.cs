using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Text;

namespace Confectio.Keeping;

/// <summary>
/// What is known about keeping a formula: its water activity as it will stand, what the Food Code's table says of that, the printed rules and
/// times beside each other, what may grow, and the strictest of it all for every place.
/// </summary>
/// <remarks>
/// Nothing here is a test of a food. The activity is of models, a pH is never guessed, and the times are mostly of quality. A water activity is
/// not turned into days: for one and the same, four books print from 27 to 137.
/// </remarks>
public sealed class KeepingAnswer
{
    // Household guidance on food out of the cold, recalled: two hours, and one above 90 °F.
    private const string NotOnTheCounter = "not kept there: in the cold, and out of it no longer than two hours in all, one hour above 32 °C (90 °F) (United States household guidance, recalled)";

    // The temperature at which water activities are measured and printed: common practice.
    private const double MeasuredCelsius = 25;

    // Ready-to-eat food that needs control is used within seven days, the day of making counted.
    private const double MarkedDays = 7;

    private const string DateMark = "7 days at 5 °C (41 °F) or colder, the day it was made counted, as for food that needs control (Food Code 3-501.17, recalled)";

    private KeepingAnswer(Formula formula, KeptFood? food, string because, Spread? ph, bool isHeatedAndPackaged, double celsius)
    {
        Formula = formula;
        Food = food;
        TakenFor = because;
        Ph = ph;
        IsHeatedAndPackaged = isHeatedAndPackaged;
        Celsius = celsius;
        FormulaContents has = new(formula);
        (WaterActivity, WhyNoActivity, IsSaturated, double brix) = ActivityOf(formula, celsius);
        WaterActivityUngrained = IsSaturated && formula.BoiledOffGrams > 0 ? UngrainedOf(formula, celsius) : null;
        double acidity = ph?.High ?? Acidity.Maximum;
        // An activity that is not known may be any. What a table asks for is of the food, as it is measured, and not of where it is kept: a saturated syrup has
        // more active water in the cold, and no colder place may be judged worse for it.
        Spread? measured = celsius == MeasuredCelsius ? WaterActivity : ActivityOf(formula, MeasuredCelsius).Item1;
        Spread activity = measured ?? Spread.Exactly(1);
        Control = isHeatedAndPackaged ? TimeTemperatureControl.OfHeatedAndPackaged(activity, acidity) : TimeTemperatureControl.Of(activity, acidity);
        Times = food?.Times ?? [];
        IngredientTimes = [.. KeepingTime.All.Where(time => formula.Lines.Any(line => line.Grams.Likely > 0 && time.Ingredients.Contains(line.Ingredient.Id)))];
        Rules = [.. ColdRule.All.Select(rule => new ColdRuleAnswer(rule, rule.Of(has, measured, brix)))];
        MayGrow = [.. GrowthLimit.All.Where(limit => limit.MayGrow(activity, ph))];
        Places = [.. Enum.GetValues<KeepingPlace>().Select(Strictest)];
        Movers = WaterActivity is Spread now ? MoversOf(formula, now.Likely, celsius) : [];
    }

    /// <summary>The formula.</summary>
    public Formula Formula { get; }

    /// <summary>The kind of food it was taken for; <see langword="null"/> where none was told and it looks like none.</summary>
    public KeptFood? Food { get; }

    /// <summary>Why it was taken for that kind, as the end of a sentence; empty where the kind was told or there is none.</summary>
    public string TakenFor { get; }

    /// <summary>The pH that was told; <see langword="null"/> where it is not known. It is never guessed.</summary>
    public Spread? Ph { get; }

    /// <summary>Whether it is packaged after it was heated, so that table A is the one that is read.</summary>
    public bool IsHeatedAndPackaged { get; }

    /// <summary>The temperature of the water activity, °C. The table and the rules go by that at 25 °C, at which it is measured.</summary>
    public double Celsius { get; }

    /// <summary>
    /// The water activity as the formula will stand, with sucrose that does not dissolve out as crystals, and fat and air no part;
    /// <see langword="null"/> where no model gives one.
    /// </summary>
    /// <remarks>
    /// Salt lowers the likely value and the low end, as <see cref="HeatedMix.WaterActivity"/> does, and not the high end, which decides: how it works
    /// among so much sugar is known from two readings of one class (a cookie-dough frosting of salted butter, 0.81 and 0.80, University of
    /// Minnesota 2019; 0.83 here).
    /// </remarks>
    public Spread? WaterActivity { get; }

    /// <summary>
    /// The same as long as none of the sucrose has crystallised, of caramel, marshmallow or hard candy that stays clear; <see langword="null"/> where nothing
    /// boils off, where none would crystallise, and where no model reaches so far. Grain raises it to <see cref="WaterActivity"/>, which is what decides.
    /// </summary>
    public Spread? WaterActivityUngrained { get; }

    /// <summary>Why there is no water activity; empty where there is one.</summary>
    public string WhyNoActivity { get; }

    /// <summary>Whether there is more sucrose than dissolves: then more of it changes nothing.</summary>
    public bool IsSaturated { get; }

    /// <summary>What belongs beside the whole of the answer.</summary>
    public static string Caution => "Times begin when the food is made, and most are about quality: none says that a food may still be eaten. A model is no measurement; a product "
        + "assessment measures the food. Local codes and licensed practice decide.";

    /// <summary>What the table of the Food Code says, by the highest activity at 25 °C and the highest pH that it may have.</summary>
    public ControlNeed Control { get; }

    /// <summary>The same in a sentence that cannot be read two ways.</summary>
    public string ControlSentence
    {
        get
        {
            string by = $"table {(IsHeatedAndPackaged ? 'A' : 'B')} of Food Code 1-201.10"
                + (WaterActivity is null ? ", for the water activity is not known" : Ph is null ? ", the pH being unknown" : "");
            return Control == ControlNeed.NotByTheTable
                ? $"Time and temperature control is not required by this table ({by}). It is about growth only{(HasRawEgg ? ", and says nothing of Salmonella that raw egg brings with it" : "")}; the local code decides."
                : $"Time and temperature control is required unless a product assessment says otherwise ({by}): 5 °C (41 °F) or colder; the local code decides.";
        }
    }

    private bool HasRawEgg => Formula.Cautions.Any(caution => caution.Code == "raw-egg");

    /// <summary>What is printed of this kind of food; empty where the kind is not known.</summary>
    public IReadOnlyList<KeepingTime> Times { get; }

    /// <summary>What is printed of its ingredients by themselves.</summary>
    public IReadOnlyList<KeepingTime> IngredientTimes { get; }

    /// <summary>Every printed rule and what it says of this formula.</summary>
    public IReadOnlyList<ColdRuleAnswer> Rules { get; }

    /// <summary>The limits of growth that neither water activity nor pH is known to pass, source beside source.</summary>
    public IReadOnlyList<GrowthLimit> MayGrow { get; }

    /// <summary>The strictest for each place, in the order of the places.</summary>
    public IReadOnlyList<PlaceVerdict> Places { get; }

    /// <summary>What raises and what lowers the water activity, the strongest first; of what does nothing there is no line.</summary>
    public IReadOnlyList<ActivityMover> Movers { get; }

    /// <summary>Works out what is known.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="ph">The measured pH with its range, 0 to 14; <see langword="null"/> where it is not known, and then it may be any.</param>
    /// <param name="food">The kind of food; <see langword="null"/> to go by what is in it.</param>
    /// <param name="isHeatedAndPackaged">Whether it is packaged after it was heated to destroy vegetative cells, and closed at once.</param>
    /// <param name="roomCelsius">Where it is kept, °C, from 0 to 50: 88 is of another scale.</param>
    /// <returns>The answer. Worked number: icing sugar and butter 2 to 1 by mass is saturated, its water activity some 0.85.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The pH or the temperature is outside its range.</exception>
    public static KeepingAnswer Of(Formula formula, Spread? ph = null, KeptFood? food = null, bool isHeatedAndPackaged = false, double roomCelsius = 25)
    {
        Guard.NotNull(formula);
        Guard.InRange(roomCelsius, 0, RoomAir.MaximumCelsius);
        if (ph is Spread told)
            Acidity.Checked(told);
        (KeptFood Food, string Because)? looks = food is null ? KeptFood.LooksLike(formula) : null;
        return new KeepingAnswer(formula, food ?? looks?.Food, looks?.Because ?? "", ph, isHeatedAndPackaged, roomCelsius);
    }

    /// <summary>What the table says, and the strictest for each place.</summary>
    public override string ToString() => $"{Formula.Name}: {ControlSentence} {string.Join("; ", Places)}. {Caution}";

    // With the soluble solids of the water phase, per cent.
    private static (Spread?, string, bool, double) ActivityOf(Formula formula, double celsius)
    {
        try
        {
            SugarSolution solution = SugarSolution.Of(formula);
            Spread activity = WithSalt(solution.WaterActivity(celsius), formula);
            bool isSaturated = Crystallisation.Of(solution, celsius).CrystalFraction > 0;
            return (activity, "", isSaturated, 100 * solution.Solids);
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException)
        {
            return (null, e.Message, false, 0);
        }
    }

    private static Spread WithSalt(Spread sugars, Formula formula)
    {
        double salt = HeatedMix.SaltFactor(formula);
        return new Spread(sugars.Low * salt, sugars.Likely * salt, sugars.High, sugars.Basis);
    }

    private static Spread? UngrainedOf(Formula formula, double celsius)
    {
        try
        {
            return WithSalt(SugarSolution.Of(formula).WaterActivityUngrained(celsius), formula);
        }
        catch (InvalidOperationException)
        {
            // Stronger than activities are known for.
            return null;
        }
    }

    private static ActivityMover[] MoversOf(Formula formula, double now, double celsius)
    {
        List<ActivityMover> movers = [];
        foreach (Ingredient ingredient in formula.Lines.Where(line => line.Grams.Likely > 0).Select(line => line.Ingredient).Distinct())
        {
            Formula more = Formula.Of(formula.Name, formula.Lines.Select(line => FormulaLine.Of(line.Ingredient,
                line.Grams.Likely * (line.Ingredient.Equals(ingredient) ? 1.1 : 1))), formula.BoiledOffGrams);
            if (ActivityOf(more, celsius).Item1 is Spread moved && Math.Abs(moved.Likely - now) >= 0.0005)
                movers.Add(new ActivityMover(ingredient, moved.Likely - now));
        }
        return [.. movers.OrderByDescending(mover => Math.Abs(mover.Change))];
    }

    // Common practice is its own source; of another that was not read the kind is said.
    private static string Whose(KeepingTime time) => time.Provenance.Evidence switch
    {
        Evidence.CommonPractice => "common practice, from memory",
        Evidence.Compiled or Evidence.Measured => time.Provenance.Source.ShortName,
        _ => $"{time.Provenance.Source.ShortName}, {time.Provenance.Evidence.ToWord()}",
    };

    private PlaceVerdict Strictest(KeepingPlace place)
    {
        ColdRuleAnswer? cold = Rules.FirstOrDefault(rule => rule.Verdict is ColdRuleVerdict.KeepCold), test = Rules.FirstOrDefault(rule => rule.Verdict is ColdRuleVerdict.TestFirst);
        if (place == KeepingPlace.Counter && Control == ControlNeed.ProductAssessment)
            return new PlaceVerdict(place, 0, $"{NotOnTheCounter}, unless an assessment of the product says otherwise", null);
        if (place == KeepingPlace.Counter && (cold ?? test) is ColdRuleAnswer rule)
        {
            ColdRuleAnswer? other = Rules.FirstOrDefault(one => one.Verdict == ColdRuleVerdict.MayStandOut);
            return new PlaceVerdict(place, 0, $"{NotOnTheCounter}, by the strictest rule ({rule})"
                + (other is null ? "" : $"; others let it stand out ({other.Rule.Provenance.Source.ShortName}), so ask which code is yours"), null);
        }
        // Silence of the rules is no consent: what the cautions say of egg that was made up with water holds here too.
        if (place == KeepingPlace.Counter && Formula.Cautions.Any(caution => caution.Code == "two-hours"))
        {
            return new PlaceVerdict(place, 0, $"{NotOnTheCounter}, for it has egg, and dried egg is as egg from the moment it is made up"
                + (Times.FirstOrDefault(time => time.Place == place && time.IsSuitable) is KeepingTime kept ? $"; it is said to keep there beside that: {Said(kept, [])}, so ask which code is yours" : ""), null);
        }
        KeepingTime[] printed = [.. Times.Where(time => time.Place == place), .. place == KeepingPlace.Freezer ? [] : IngredientTimes.Where(time => time.Place == place)];
        if (printed.FirstOrDefault(time => !time.IsSuitable) is KeepingTime unsuited && !printed.Any(time => time.IsSuitable))
            return new PlaceVerdict(place, 0, $"not suited: {unsuited.AsPrinted} ({unsuited.Provenance.Source.ShortName})", unsuited);
        KeepingTime? strictest = printed.Where(time => time is { IsSuitable: true, StrictestDays: not null }).MinBy(time => time.StrictestDays);
        bool isMarked = place == KeepingPlace.Refrigerator && Control == ControlNeed.ProductAssessment;
        if (isMarked && !(strictest?.StrictestDays <= MarkedDays))
            return new PlaceVerdict(place, MarkedDays, $"{DateMark}{(strictest is null ? "" : $"; printed beside it: {Said(strictest, printed)}")}", null);
        if (strictest is null)
        {
            KeepingTime? timeless = printed.FirstOrDefault(time => time.IsSuitable);
            return new PlaceVerdict(place, null, timeless is null ? "no time is printed for it that we know"
                : $"{timeless.AsPrinted} ({timeless.Provenance.Source.ShortName}); no time is printed for it that we know", timeless);
        }
        string despite = printed.FirstOrDefault(time => !time.IsSuitable) is KeepingTime against ? $"; but {against.AsPrinted} ({against.Provenance.Source.ShortName})" : "";
        return new PlaceVerdict(place, strictest.StrictestDays, $"{Said(strictest, printed)}{despite}", strictest);
    }

    // What an ingredient keeps by itself is a bound of what is made of it, and no time of that.
    private string Said(KeepingTime time, KeepingTime[] printed)
    {
        string by = $"({Whose(time)}{(time.Presumes.Length > 0 ? $"; {time.Presumes}" : "")})";
        if (time.Food.Length > 0)
            return $"{time.AsPrinted} {by}";
        string name = Formula.Lines.First(line => time.Ingredients.Contains(line.Ingredient.Id)).Ingredient.Name;
        return $"no longer than its {name}: {time.AsPrinted} {by}"
            + (printed.Any(other => other is { Food.Length: > 0, IsSuitable: true, StrictestDays: not null }) ? "" : "; of the food itself no time is printed that we know");
    }
}
