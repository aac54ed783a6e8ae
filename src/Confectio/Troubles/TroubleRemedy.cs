using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Keeping;
using Confectio.Textures;

namespace Confectio.Troubles;

/// <summary>What helps, with its quantity where one follows from the formula. No promise: try a part of it first.</summary>
public sealed class TroubleRemedy
{
    // Warm enough to melt butter and no warmer: what is stirred back must not cook anything.
    private const double WarmPart = 35;

    private const double Workable = 20, LeastWorkable = 15, MostWorkable = 25; // % of the fat, McGee 2004

    // The refrigerator that something is cooled in.
    private const double Refrigerator = 4;

    private TroubleRemedy(string text) => Text = text;

    /// <summary>What to do, with grams and degrees.</summary>
    public string Text { get; }

    /// <summary>What is stirred in; <see langword="null"/> where nothing is.</summary>
    public Ingredient? StirredIn { get; private init; }

    /// <summary>How much is stirred in, g; <see langword="null"/> where nothing is.</summary>
    public Spread? Grams { get; private init; }

    /// <summary>The temperature that the mix is brought to, °C; <see langword="null"/> where it stays as it is.</summary>
    public Spread? Celsius { get; private init; }

    /// <summary>What of the mix is taken out, warmed to 35 °C and stirred back, g; <see langword="null"/> where nothing is.</summary>
    public double? WarmedGrams { get; private init; }

    /// <summary>The ice that melts around the bowl while it cools, g; <see langword="null"/> where it is not cooled.</summary>
    public double? IceGrams { get; private init; }

    /// <summary>Whether it is warmed or boiled.</summary>
    public bool IsHeat => Celsius is not null && IceGrams is null;

    /// <summary>What to do.</summary>
    public override string ToString() => Text;

    internal static TroubleRemedy Of(TroubleCause cause, TroubleSign? sign, TroubleParts parts)
    {
        TroubleRemedy? found = null;
        try
        {
            found = Quantity(cause.Remedy, sign, parts);
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException)
        {
            // Where no quantity can be worked out there are still the words.
        }
        string text = Joined(found?.Text ?? "", cause.Words);
        return new TroubleRemedy(text.Length > 0 ? text : "Nothing that can be counted: see what is to be measured.")
        {
            StirredIn = found?.StirredIn, Grams = found?.Grams, Celsius = found?.Celsius, WarmedGrams = found?.WarmedGrams, IceGrams = found?.IceGrams,
        };
    }

    private static string Joined(string first, string second) => first.Length == 0 ? second : second.Length == 0 ? first : $"{first} {second}";

    private static TroubleRemedy? Quantity(string remedy, TroubleSign? sign, TroubleParts parts)
    {
        string[] words = remedy.Split(':');
        return words[0] switch
        {
            "warm-workable" or "cool-workable" => ToWorkable(parts),
            "warm-to" or "cool-to" => ToCelsius(parts, Spread.Exactly(double.Parse(words[1], CultureInfo.InvariantCulture)), ""),
            "thicken" or "thin" => ToMedium(parts),
            "add" => Add(words[1], sign, parts),
            "dissolve" => Dissolve(parts),
            "wrap" => Wrap(parts),
            "dry-air" => DryAir(parts),
            _ => null,
        };
    }

    // Where 25 to 15 % of its fat is solid, by the curves of its fats.
    private static TroubleRemedy? ToWorkable(TroubleParts parts)
    {
        if (CelsiusOf(MostWorkable) is not double from || CelsiusOf(LeastWorkable) is not double to || CelsiusOf(Workable) is not double likely)
            return null;
        return ToCelsius(parts, new Spread(from, likely, to, SpreadBasis.Judged), string.Create(CultureInfo.InvariantCulture,
            $", where {MostWorkable:0} to {LeastWorkable:0} % of its fat is solid (McGee 2004)"));

        // The share of solid never rises with the temperature.
        double? CelsiusOf(double percent)
        {
            double cold = 0, warm = 45;
            if (Solid(cold) < percent || Solid(warm) > percent)
                return null;
            for (int i = 0; i < 40; i++)
            {
                double middle = (cold + warm) / 2;
                if (Solid(middle) >= percent)
                    cold = middle;
                else
                    warm = middle;
            }
            return Math.Round((cold + warm) / 2, 1);
        }

        double Solid(double celsius) => parts.Formula.SolidFat(celsius).PercentOfFat?.Likely ?? double.NaN;
    }

    private static TroubleRemedy? ToCelsius(TroubleParts parts, Spread target, string where)
    {
        string range = target.High > target.Low ? string.Create(CultureInfo.InvariantCulture, $"between {target.Low:0.#} and {target.High:0.#} °C") : string.Create(CultureInfo.InvariantCulture,
            $"{target.Likely:0.#} °C");
        if (parts.Mix is not Spread mix)
            return new TroubleRemedy($"Measure the mix; it is to be {(target.High > target.Low ? "" : "at ")}{range}{where}.") { Celsius = target };
        double grams = parts.Formula.TotalGrams;
        if (mix.Likely >= target.Low && mix.Likely <= target.High)
            return null;
        // From the colder side to its nearer end is enough, but the middle leaves something for the bowl.
        HeatLine now = HeatLine.Of(parts.Formula).At(mix.Likely);
        Spread kilojoules = HeatBalance.Of([now]).KilojoulesTo(target.Likely).Value!.Value;
        if (kilojoules.Likely >= 0)
        {
            string back = "";
            double? part = null;
            if (target.Likely < WarmPart - 3 && HeatBalance.Of([now]).KilojoulesTo(WarmPart).Value is Spread all && all.Likely > kilojoules.Likely)
            {
                part = grams * kilojoules.Likely / all.Likely;
                back = string.Create(CultureInfo.InvariantCulture, $"; or take out {part:0} g, warm that to {WarmPart:0} °C and beat it back in");
            }
            return new TroubleRemedy(string.Create(CultureInfo.InvariantCulture,
                $"Warm all {grams:0} g from {mix.Likely:0.#} °C to {range}{where}: by some {target.Likely - mix.Likely:0.#} K ({kilojoules.Likely:0.#} kJ), over a bath "
                    + $"that is only warm, stirring{back}.")) { Celsius = target, WarmedGrams = part };
        }
        double ice = -1000 * kilojoules.Likely / HeatFigure.MeltingOfIce.Value.Likely;
        Spread minutes = OutOfTheCold.MinutesTo(parts.Formula, mix.Likely, Math.Max(target.Likely, Refrigerator + 1), Refrigerator);
        return new TroubleRemedy(string.Create(CultureInfo.InvariantCulture,
            $"Cool all {grams:0} g from {mix.Likely:0.#} °C to {range}{where}: {-kilojoules.Likely:0} kJ, which melts {ice:0} g of ice around the bowl, not in it, stirring; or {minutes.Low:0} to "
                + $"{minutes.High:0} minutes in a refrigerator of {Refrigerator:0} °C, stirred now and then (still air, 5 to 15 W/(m²·K), from memory; fat that sets takes longer).")) { Celsius = target, IceGrams = ice };
    }

    private static TroubleRemedy? ToMedium(TroubleParts parts)
    {
        IcingConsistency now = IcingConsistency.Of(parts.Formula, TroubleFigure.SortOf(parts));
        if (Own(parts, "liquid") is not Ingredient liquid || Own(parts, "icing-sugar") is not Ingredient sugar)
            return null;
        ConsistencyStep step = now.To(ConsistencyBand.Medium, liquid, sugar);
        if (step.Grams.Likely > parts.Formula.TotalGrams / 2)
            return new TroubleRemedy($"It would take more than half its weight of {step.StirredIn.Name}: begin another batch, and stir this into it by and by.");
        return step.Grams.High == 0 ? null : new TroubleRemedy($"Beat in {step}, half of it first, for medium; another consistency takes more or less.") { StirredIn = step.StirredIn, Grams = step.Grams };
    }

    // So much of an ingredient of the formula that its figure is where the rule begins.
    private static TroubleRemedy? Add(string role, TroubleSign? sign, TroubleParts parts)
    {
        if (sign?.Figure is not TroubleFigure figure || Own(parts, role) is not Ingredient food || Past(0) is not (> 0 and double now))
            return null;
        double total = parts.Formula.TotalGrams, most = 2 * total, none = 0;
        if (!(Past(most) <= 0))
            return null;
        double enough = most;
        for (int i = 0; i < 60; i++)
        {
            double middle = (none + enough) / 2;
            if (Past(middle) > 0)
                none = middle;
            else
                enough = middle;
        }
        // What takes so much is another formula.
        if (enough > total / 2)
            return new TroubleRemedy($"It would take more than half its weight of {food.Name}: begin another batch, and stir this into it by and by.");
        return new TroubleRemedy(string.Create(CultureInfo.InvariantCulture,
            $"Stir {enough:0.#} g of {food.Name} into the {total:0} g, half of it first: then {figure.Name} is where the rule begins, at {sign.Begins:0.##}{(figure.Unit.Length > 0 ? " " + figure.Unit : "")}."))
            { StirredIn = food, Grams = Spread.Exactly(enough) };

        double? Past(double grams)
        {
            Formula with = grams == 0 ? parts.Formula : Formula.Of(parts.Formula.Name, [.. parts.Formula.Lines, FormulaLine.Of(food, grams)], parts.Formula.BoiledOffGrams);
            TroubleFacts facts = parts.Mix is Spread mix ? TroubleFacts.None.At("mix", mix.Likely) : parts.Facts.RoomCelsius is double room ? TroubleFacts.None.InRoom(room) : TroubleFacts.None;
            return figure.Of(new TroubleParts(with, facts)) is (Spread value, _) ? sign.Past(value).Likely : null;
        }
    }

    private static TroubleRemedy? Dissolve(TroubleParts parts)
    {
        FormulaLine[] lines = parts.WaterPart;
        return lines.Length > 0 && Sugars.Crystallisation.DissolvedAtCelsius(Sugars.SugarSolution.Of(Formula.Of("water part", lines))) is double at
            ? new TroubleRemedy(string.Create(CultureInfo.InvariantCulture,
                $"What has no fat in it yet is warmed to {Math.Ceiling(at):0} °C, stirring: there {string.Join(", ", lines.Select(line => line.Ingredient.Name).Distinct())} "
                    + $"hold all of the sugar.")) { Celsius = Spread.Exactly(Math.Ceiling(at)) } : null;
    }

    private static TroubleRemedy? Wrap(TroubleParts parts)
    {
        if (parts.Facts.Air is not RoomAir air || parts.Mix is not Spread mix)
            return new TroubleRemedy("Leave it wrapped or boxed until its surface is above the dew point of the room.");
        Spread minutes = OutOfTheCold.MinutesTo(parts.Formula, mix.Likely, air.DewPointCelsius, air.Celsius);
        return new TroubleRemedy(string.Create(CultureInfo.InvariantCulture,
            $"Leave it wrapped or boxed until its surface is above the dew point, {air.DewPointCelsius:0.0} °C: {minutes.Low:0} to {minutes.High:0} minutes for {parts.Formula.TotalGrams:0} g in one tub (still "
                + $"air, 5 to 15 W/(m²·K), from memory). What is wet already dries in moving air; do not wipe it."));
    }

    private static TroubleRemedy? DryAir(TroubleParts parts) =>
        parts.Facts.Air is RoomAir air && KeepingAnswer.Of(parts.Formula, roomCelsius: Math.Clamp(air.Celsius, 0, 50)).WaterActivity is Spread activity
            ? new TroubleRemedy(string.Create(CultureInfo.InvariantCulture, $"Keep it in air of less than {100 * activity.Low:0} % humidity at its surface, or closed up; dry it there."))
            : new TroubleRemedy("Keep it in dry air, or closed up.");

    // What the formula has itself: its wettest line without fat of spreads, its icing sugar, its spread, its chocolate, its sugar.
    private static Ingredient? Own(TroubleParts parts, string role)
    {
        IEnumerable<Ingredient> all = parts.Formula.Lines.Where(line => line.Grams.Likely > 0).OrderByDescending(line => line.Grams.Likely).Select(line => line.Ingredient);
        return role switch
        {
            "liquid" => all.Where(food => FormulaPart.Water.FractionIn(food) > 0.5 && FormulaPart.Alcohol.FractionIn(food) < 0.05 && !food.Id.StartsWith("cream-cheese", StringComparison.Ordinal))
                .OrderBy(food => TroubleParts.IsWhite(food)).FirstOrDefault(),
            "icing-sugar" => all.FirstOrDefault(TroubleParts.IsIcingSugar),
            "fat" => all.FirstOrDefault(TroubleParts.IsSpread),
            "chocolate" => all.FirstOrDefault(TroubleParts.IsChocolate),
            "sugar" => all.FirstOrDefault(food => TroubleParts.IsGranulated(food) || TroubleParts.IsIcingSugar(food)),
            _ => null,
        };
    }
}
