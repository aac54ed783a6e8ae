using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Keeping;
using Confectio.Sugars;
using Confectio.Textures;

namespace Confectio.Troubles;

/// <summary>A figure that tells of a cause: worked out from the formula and what is known, or not at all.</summary>
internal sealed class TroubleFigure
{
    // What was warmed and not boiled is no syrup.
    private const double LeastBoiled = 95;

    private static readonly TroubleFigure[] s_all =
    [
        new("mix-celsius", "temperature of the mix", "°C", "the temperature of the mix, with a thermometer in the middle of it (--at mix=)",
            parts => parts.Mix is Spread mix ? (mix, parts.MixShort) : null),
        new("solid-fat", "solid fat of the mix", "% of the fat", "the temperature of the mix (--at mix=), or of its parts when they went in",
            parts => parts.Mix is Spread mix && SolidBetween(parts.Formula, mix) is Spread solid
                ? (solid, $"{parts.MixShort}, with {Percent(solid)} of its fat solid") : null),
        new("fat-part-solid", "solid fat of the fat as it went in", "% of the fat", "the temperature of the fat when it went in",
            parts => parts.Told(TroubleParts.IsSpread) is (double celsius, string name) && SolidBetween(Formula.Of("fat", parts.Formula.Lines.Where(line =>
                line.Grams.Likely > 0 && TroubleParts.IsSpread(line.Ingredient))), Spread.Exactly(celsius)) is Spread solid
                ? (solid, Invariant($"{name} went in at {celsius:0.#} °C, with {Percent(solid)} of its fat solid")) : null),
        new("white-celsius", "temperature of the whites when the fat went in", "°C", "the temperature of the meringue when the fat goes in",
            parts => parts.Told(TroubleParts.IsWhite) is (double celsius, string name) ? (Spread.Exactly(celsius), Invariant($"{name} went in at {celsius:0.#} °C")) : null),
        new("syrup-celsius", "how hot the syrup was boiled", "°C", "how hot the syrup was boiled, with a thermometer (--cooked-to)",
            parts => parts.Facts.CookedCelsius is Spread cooked ? (cooked, $"the syrup was boiled to {parts.Facts.CookedText}") : null),
        new("minutes", "how long it was beaten", "minutes", "how long it was beaten (--minutes)",
            parts => parts.Facts.BeatenMinutes is double minutes ? (Spread.Exactly(minutes), Invariant($"it was beaten for {minutes:0.#} minutes")) : null),
        new("density", "its weight with its air", "g/mL", "what a level cup of it weighs (--cup)",
            parts => parts.Facts.GramsPerMillilitre is double density ? (Spread.Exactly(density), Invariant($"it weighs {density:0.00} g/mL")) : null),
        new("water-percent", "water", "% of the whole", "", parts => Share(parts, FormulaPart.Water, "water")),
        new("fat-percent", "fat", "% of the whole", "", parts => Share(parts, FormulaPart.Fat, "fat")),
        new("gelatine-percent", "gelatine", "% of the whole", "", parts => (Exactly(100 * Grams(parts, TroubleParts.IsGelatine) / parts.Formula.TotalGrams),
            Invariant($"it has {100 * Grams(parts, TroubleParts.IsGelatine) / parts.Formula.TotalGrams:0.0} % gelatine"))),
        new("gelatine-to-water", "gelatine to 100 of water", "", "", parts => Ratio(100 * Grams(parts, TroubleParts.IsGelatine), Of(parts, FormulaPart.Water), "gelatine to 100 of water")),
        new("fat-to-water", "fat to 1 of water", "", "", parts => Ratio(Of(parts, FormulaPart.Fat), Of(parts, FormulaPart.Water), "fat to 1 of water")),
        new("sugar-to-fat", "sugar to 1 of fat", "", "", parts => Ratio(Of(parts, FormulaPart.Sugars), Of(parts, FormulaPart.Fat), "sugar to 1 of fat")),
        new("fat-to-white", "butter or shortening to 1 of white", "", "", parts => Ratio(Grams(parts, TroubleParts.IsSpread), Grams(parts, TroubleParts.IsWhite, dried: false),
            "butter or shortening to 1 of white")),
        new("sugar-to-white", "sugar to 1 of white", "", "", parts => Ratio(Of(parts, FormulaPart.Sugars), Grams(parts, TroubleParts.IsWhite, dried: false), "sugar to 1 of white")),
        new("water-over-medium", "water beyond a medium icing", "g to 100 g of sugars", "", parts => Consistency(parts, over: true)),
        new("water-under-medium", "water short of a medium icing", "g to 100 g of sugars", "", parts => Consistency(parts, over: false)),
        new("short-of-dissolving", "how far the sugar was from dissolving", "K", "how hot the whites or the syrup became with their sugar (--cooked-to)", ShortOfDissolving),
        new("supersaturation", "sucrose over what its water holds", "", "the temperature at which it stands (--at mix=, --room)",
            parts => Standing(parts) is (double at, Crystallisation crystals)
                ? (Exactly(crystals.Supersaturation), Invariant($"it has {crystals.Supersaturation:0.00} times the sucrose that its water holds at {at:0.#} °C")) : null),
        new("lactose-supersaturation", "lactose over what its water holds", "", "the temperature at which it stands (--at mix=, --room)",
            parts => Standing(parts) is (double at, Crystallisation crystals) && crystals.SupersaturationAlone(Constituent.Lactose) is double over and > 0
                ? (Exactly(over), Invariant($"it has {over:0.00} times the lactose that its water holds at {at:0.#} °C")) : null),
        new("dew-gap", "dew point over its temperature", "K", "temperature and humidity of the room, and the temperature of the surface (--room, --humidity, --at mix=)",
            parts => parts.Facts.Air is RoomAir air && parts.Mix is Spread mix
                ? (new Spread(air.DewPointCelsius - mix.High, air.DewPointCelsius - mix.Likely, air.DewPointCelsius - mix.Low, mix.Basis),
                    Invariant($"the room has {air}, and {parts.MixShort}")) : null),
        new("humidity-over-activity", "humidity over its water activity", "points", "temperature and humidity of the room (--room, --humidity)", parts => Humidity(parts, 1)),
        new("activity-over-humidity", "water activity over the humidity", "points", "temperature and humidity of the room (--room, --humidity)", parts => Humidity(parts, -1)),
    ];

    private readonly Func<TroubleParts, (Spread Value, string Told)?> _of;

    private TroubleFigure(string key, string name, string unit, string measure, Func<TroubleParts, (Spread, string)?> of)
    {
        Key = key;
        Name = name;
        Unit = unit;
        Measure = measure;
        _of = of;
    }

    public string Key { get; }

    public string Name { get; }

    public string Unit { get; }

    /// <summary>What to measure or to tell; empty where the formula alone says it.</summary>
    public string Measure { get; }

    public static TroubleFigure? Find(string key) => Array.Find(s_all, figure => figure.Key == key);

    /// <summary>Whether there is such a thing at all: of what has no whites no temperature of them, of whites that were warmed no boiled syrup.</summary>
    public bool IsOf(TroubleParts parts) => Key switch
    {
        "white-celsius" => parts.Has("egg-white"),
        "syrup-celsius" => !(parts.Facts.CookedCelsius?.High < LeastBoiled),
        _ => true,
    };

    /// <summary>The figure and where it is from; nothing where it cannot be told.</summary>
    public (Spread Value, string Told)? Of(TroubleParts parts)
    {
        try
        {
            return _of(parts) is (Spread value, string told) && double.IsFinite(value.Low) && double.IsFinite(value.High) ? (value, told) : null;
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException)
        {
            // A model that does not reach so far tells nothing.
            return null;
        }
    }

    /// <summary>The solid fat at a temperature with its range: most where it is coldest.</summary>
    public static Spread? SolidBetween(Formula formula, Spread celsius)
    {
        if (formula.SolidFat(celsius.Likely).PercentOfFat is not Spread likely || formula.SolidFat(celsius.Low).PercentOfFat is not Spread cold
            || formula.SolidFat(celsius.High).PercentOfFat is not Spread warm)
            return null;
        return new Spread(Math.Min(warm.Low, likely.Likely), likely.Likely, Math.Max(cold.High, likely.Likely), SpreadBasis.Judged);
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static string Percent(Spread of) => Invariant($"{of.Likely:0} % ({of.Low:0} to {of.High:0})");

    private static Spread Exactly(double value) => Spread.Exactly(value);

    private static double Of(TroubleParts parts, FormulaPart part) => parts.Balance[part].Grams.Likely;

    private static double Grams(TroubleParts parts, Func<Ingredient, bool> of, bool dried = true) => parts.Formula.Lines.Where(line => of(line.Ingredient)
        && (dried || FormulaPart.Water.FractionIn(line.Ingredient) > 0.5)).Sum(line => line.Grams.Likely);

    private static (Spread, string)? Share(TroubleParts parts, FormulaPart part, string name)
    {
        Spread percent = parts.Balance[part].Fraction * 100;
        return (percent, Invariant($"it has {percent.Likely:0.#} % {name}"));
    }

    private static (Spread, string)? Ratio(double over, double under, string name) => under > 0 ? (Exactly(over / under), Invariant($"it has {over / under:0.0#} of {name}")) : null;

    /// <summary>The sort by which the water of an icing with icing sugar is judged.</summary>
    public static ConsistencySort SortOf(TroubleParts parts) =>
        ConsistencySort.Get(parts.Has("spread") || parts.Has("cheese") ? "buttercream" : parts.Has("egg-white") ? "royal-icing" : "icing-sugar-glaze");

    private static (Spread, string)? Consistency(TroubleParts parts, bool over)
    {
        IcingConsistency now = IcingConsistency.Of(parts.Formula, SortOf(parts));
        ConsistencyRange medium = now.Sort.Bands.First(band => band.Band == ConsistencyBand.Medium);
        return (Exactly(over ? now.WaterPer100Sugars - medium.High : medium.Low - now.WaterPer100Sugars), Invariant($"it has {now.WaterPer100Sugars:0.#} g of water to 100 g of sugars, and medium {now.Sort} has {medium.Low:0.#} to {medium.High:0.#}"));
    }

    private static (Spread, string)? ShortOfDissolving(TroubleParts parts)
    {
        if (parts.Facts.CookedCelsius is not Spread cooked || parts.WaterPart.Length == 0)
            return null;
        double? dissolved = Crystallisation.DissolvedAtCelsius(SugarSolution.Of(Formula.Of("water part", parts.WaterPart)));
        return dissolved is double at ? (new Spread(at - cooked.High, at - cooked.Likely, at - cooked.Low, cooked.Basis), Invariant($"its sugar is dissolved at {at:0} °C, and it was heated to {parts.Facts.CookedText}")) : null;
    }

    // The temperature at which it stands: that of the mix, or else of the room.
    private static (double Celsius, Crystallisation Crystals)? Standing(TroubleParts parts) =>
        (parts.Mix?.Likely ?? parts.Facts.RoomCelsius) is double celsius ? (celsius, Crystallisation.Of(SugarSolution.Of(parts.Formula), celsius)) : null;

    private static (Spread, string)? Humidity(TroubleParts parts, int sign)
    {
        if (parts.Facts.Air is not RoomAir air || KeepingAnswer.Of(parts.Formula, roomCelsius: Math.Clamp(air.Celsius, 0, 50)).WaterActivity is not Spread activity)
            return null;
        double surface = parts.Mix?.Likely ?? air.Celsius, humidity = Math.Min(1, air.HumidityBeside(surface));
        Spread over = new(100 * (humidity - activity.High), 100 * (humidity - activity.Likely), 100 * (humidity - activity.Low), activity.Basis);
        return (sign > 0 ? over : -over, string.Create(CultureInfo.InvariantCulture,
            $"its water activity is {activity.Likely:0.00} ({activity.Low:0.00} to {activity.High:0.00}), and the air at its surface of {surface:0.#} °C has {humidity:0.00}"));
    }
}
