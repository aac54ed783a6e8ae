using System.Globalization;
using System.Text.RegularExpressions;
using Confectio.Cards;
using Confectio.Cooking;
using Confectio.Ingredients;
using Confectio.Sugars;

namespace Confectio.Vetting;

/// <summary>Temperatures in both scales, against their process, sugar stages at the height of the kitchen, and egg that is called safe.</summary>
internal static partial class CardTemperatures
{
    /// <summary>Below this height a stage moves by less than a thermometer shows.</summary>
    private const double LowKitchen = 300;

    /// <summary>How far a thermometer and a table of stages may be apart, °C: a judgement.</summary>
    private const double StageSlack = 1.2;

    // Common practice: wide on purpose. Words that name the food as well as the process are not among them.
    private static readonly (Regex Word, double Low, double High, string What)[] s_processes =
    [
        (Oven(), 60, 300, "an oven"), (Fridge(), -3, 12, "a refrigerator"), (Freezer(), -45, -5, "a freezer"), (Room(), 12, 33, "a room"),
        (Temper(), 24, 58, "tempering chocolate"), (Whites(), 40, 95, "egg over hot water"),
    ];

    public static void Judge(CardJudgement judgement)
    {
        double metres = judgement.Options.Pressure is AirPressure stated ? Math.Clamp(stated.StandardAltitudeMetres, -500, 9000) : judgement.Figure(CardFigureKind.AltitudeMetres)?.Low ?? 0;
        AirPressure pressure = judgement.Options.Pressure ?? AirPressure.FromAltitudeMetres(Math.Clamp(metres, AirPressure.MinimumMetres, AirPressure.MaximumMetres));
        int alone = 0;
        foreach (WrittenTemperature temperature in judgement.Card.Temperatures)
        {
            bool paired = temperature.Fahrenheit is not null && temperature.Celsius is not null;
            if (paired && !Agree(temperature))
            {
                Pair(judgement, temperature);
                continue;
            }
            if (temperature.IsDifference)
                continue;
            if (!Stage(judgement, temperature, pressure, metres) && !Process(judgement, temperature) && !paired)
                alone++;
            Egg(judgement, temperature);
        }
        if (alone > 0)
            judgement.NotJudged.Add(string.Create(CultureInfo.InvariantCulture, $"{alone} {(alone == 1 ? "temperature stands" : "temperatures stand")} in one scale beside no process that is known"));
    }

    // ---- pairs ----

    private static bool Agree(WrittenTemperature temperature)
    {
        double offset = temperature.IsDifference ? 0 : 32;
        TemperatureMark f = temperature.FahrenheitMark!.Value, c = temperature.CelsiusMark!.Value;
        bool low = TemperatureTableVetter.Agrees(f.Low, c.Low, offset), high = TemperatureTableVetter.Agrees(f.High, c.High, offset);
        // A range beside one figure holds it.
        if (f.Low == f.High && c.Low != c.High)
            return f.Low >= c.Low * 1.8 + offset - 4 && f.Low <= c.High * 1.8 + offset + 4;
        if (c.Low == c.High && f.Low != f.High)
            return c.Low * 1.8 + offset >= f.Low - 4 && c.Low * 1.8 + offset <= f.High + 4;
        return low && high;
    }

    private static void Pair(CardJudgement judgement, WrittenTemperature temperature)
    {
        TemperatureMark fMark = temperature.FahrenheitMark!.Value, cMark = temperature.CelsiusMark!.Value;
        double offset = temperature.IsDifference ? 0 : 32;
        bool first = !TemperatureTableVetter.Agrees(fMark.Low, cMark.Low, offset);
        double f = first ? fMark.Low : fMark.High, c = first ? cMark.Low : cMark.High;
        List<PrintedTemperature> row = [new PrintedTemperature(1, "", f, c, temperature.IsDifference)];
        TemperatureReason reason = TemperatureTableVetter.PairReason(row, 0, f, c);
        // The scale that the process cannot have is the wrong one.
        double expected = (f - offset) / 1.8;
        string right = string.Create(CultureInfo.InvariantCulture, $"{f:0.#} °F {(temperature.IsDifference ? "of difference " : "")}is {expected:0.#} °C, not {c:0.#} °C");
        string cause = TemperatureTableVetter.Cause(reason).Replace("the two columns changed", "the two figures changed", StringComparison.Ordinal).Replace("stands in both columns", "stands for both", StringComparison.Ordinal);
        judgement.Findings.Add(new CardFinding(CardIssue.Temperature, FindingSeverity.Error, temperature.Place, temperature.ToString(),
            string.Create(CultureInfo.InvariantCulture, $"{f:0.#} °F = {expected:0.#} °C, or {c * 1.8 + offset:0.#} °F = {c:0.#} °C"), $"{right}; {cause}", reason.ToCode()));
    }

    // ---- stages ----

    private static bool Stage(CardJudgement judgement, WrittenTemperature temperature, AirPressure pressure, double metres)
    {
        if (StageBeside(temperature) is not CookingStage stage)
            return false;
        double low = temperature.LowCelsius, high = temperature.HighCelsius;
        (double seaLow, double seaHigh) = Window(stage);
        double fall = 0;
        bool isHigh = metres > LowKitchen;
        if (isHigh)
        {
            StageTarget here = stage.At(pressure);
            fall = (stage.LowCelsius - here.Low.Celsius + stage.HighCelsius - here.High.Celsius) / 2;
        }
        bool Has(double l, double h, double by) => h >= seaLow - by - StageSlack && l <= seaHigh - by + StageSlack;
        if (Has(low, high, fall))
            return true;
        string window = string.Create(CultureInfo.InvariantCulture, $"{seaLow - fall:0} to {seaHigh - fall:0} °C ({(seaLow - fall) * 1.8 + 32:0} to {(seaHigh - fall) * 1.8 + 32:0} °F)");
        if (isHigh && Has(low, high, 0))
        {
            judgement.Findings.Add(new CardFinding(CardIssue.StageAltitude, FindingSeverity.Error, temperature.Place, temperature.ToString(), window,
                string.Create(CultureInfo.InvariantCulture, $"{temperature} is {stage.Name} at sea level; at {metres:0} m, where water boils at {pressure.WaterBoilsCelsius:0.0} °C, that syrup has {window}, and the printed figure is cooked too far"), null));
            return true;
        }
        bool other = temperature.Fahrenheit is null ? Has((low - 32) / 1.8, (high - 32) / 1.8, fall) : temperature.Celsius is null && Has(low * 1.8 + 32, high * 1.8 + 32, fall);
        string cause = other ? "other-unit" : CardSlips.Cause(temperature.Fahrenheit ?? temperature.Celsius!.Value, 1, one => Has(Celsius(one), Celsius(one), fall));
        judgement.Findings.Add(new CardFinding(CardIssue.Stage, FindingSeverity.Error, temperature.Place, temperature.ToString(), window,
            string.Create(CultureInfo.InvariantCulture, $"{temperature} is not {stage.Name}, which has {window}{(isHigh ? $" at {metres:0} m" : "")}; {CardSlips.Words(cause)}"), cause));
        return true;

        double Celsius(double one) => temperature.Fahrenheit is null ? one : (one - 32) / 1.8;
    }

    private static (double Low, double High) Window(CookingStage stage)
    {
        double low = stage.LowFahrenheit, high = stage.HighFahrenheit;
        foreach (StageFigure figure in stage.Figures)
        {
            low = Math.Min(low, figure.LowFahrenheit);
            high = Math.Max(high, figure.HighFahrenheit ?? figure.LowFahrenheit);
        }
        return ((low - 32) / 1.8, (high - 32) / 1.8);
    }

    private static CookingStage? StageBeside(WrittenTemperature temperature)
    {
        CookingStage? nearest = null;
        int best = 40;
        foreach (Match match in StageName().Matches(temperature.Sentence))
        {
            int apart = match.Index >= temperature.Start + temperature.Length ? match.Index - temperature.Start - temperature.Length : temperature.Start - match.Index - match.Length;
            if (apart < best && !Numbered().IsMatch(Between(temperature, match)) && CookingStage.TryGet(match.Groups["name"].Value.ToLowerInvariant().Replace('-', ' '), out CookingStage? stage))
                (nearest, best) = (stage, apart);
        }
        return nearest;
    }

    // Between a stage and its temperature stands no other temperature.
    private static string Between(WrittenTemperature temperature, Match match)
    {
        int from = Math.Min(temperature.Start + temperature.Length, match.Index + match.Length), to = Math.Max(temperature.Start, match.Index);
        return to > from && to <= temperature.Sentence.Length ? temperature.Sentence[from..to] : "";
    }

    // ---- processes ----

    private static bool Process(CardJudgement judgement, WrittenTemperature temperature)
    {
        string clause = Clause(temperature, out int at);
        (double Low, double High, string What)? process = null;
        int best = int.MaxValue;
        bool several = false;
        foreach ((Regex word, double low, double high, string what) in s_processes)
        {
            foreach (Match match in word.Matches(clause))
            {
                int apart = match.Index >= at ? match.Index - at : at - match.Index - match.Length;
                several |= process is not null && process.Value.What != what;
                if (apart < best)
                    (process, best) = ((low, high, what), apart);
            }
        }
        if (process is not (double least, double most, string name) || several || best > 60)
            return false;
        double printedLow = temperature.LowCelsius, printedHigh = temperature.HighCelsius;
        if (printedHigh >= least && printedLow <= most)
            return true;
        bool paired = temperature.Fahrenheit is not null && temperature.Celsius is not null;
        double figure = temperature.Fahrenheit ?? temperature.Celsius!.Value, asOther = temperature.Fahrenheit is null ? (figure - 32) / 1.8 : figure;
        string cause = !paired && asOther >= least && asOther <= most ? "other-unit"
            : CardSlips.Cause(figure, 1, one => (temperature.Fahrenheit is null ? one : (one - 32) / 1.8) is var c && c >= least && c <= most);
        judgement.Findings.Add(new CardFinding(CardIssue.Process, FindingSeverity.Error, temperature.Place, temperature.ToString(),
            string.Create(CultureInfo.InvariantCulture, $"{least:0} to {most:0} °C ({least * 1.8 + 32:0} to {most * 1.8 + 32:0} °F)"),
            string.Create(CultureInfo.InvariantCulture, $"{temperature} is nothing that {name} has, {least:0} to {most:0} °C; {CardSlips.Words(cause)}"), cause));
        return true;
    }

    // From the comma before to the comma behind, but for one between digits.
    private static string Clause(WrittenTemperature temperature, out int at)
    {
        string sentence = temperature.Sentence;
        int from = Math.Clamp(temperature.Start, 0, sentence.Length), to = Math.Clamp(temperature.Start + temperature.Length, 0, sentence.Length);
        while (from > 0 && !(sentence[from - 1] == ',' && (from == sentence.Length || !char.IsAsciiDigit(sentence[from]))))
            from--;
        while (to < sentence.Length && sentence[to] != ',')
            to++;
        at = Math.Max(0, temperature.Start - from);
        return sentence[from..to];
    }

    // ---- egg ----

    private static void Egg(CardJudgement judgement, WrittenTemperature temperature)
    {
        if (!Safe().IsMatch(temperature.Text) || Unsafe().IsMatch(temperature.Text) || !EggWord().IsMatch(temperature.Text + " " + judgement.Card.Title)
            && !judgement.Card.Lines.Any(line => line.Phrase.Ingredient?.Allergens.Contains(Allergen.Egg) == true))
            return;
        double celsius = temperature.LowCelsius;
        // A cold room is no heat treatment, and 71 °C is what household guidance asks for; a degree is rounding.
        if (celsius is < 30 or >= 70)
            return;
        bool timed = Time().IsMatch(temperature.Text);
        if (celsius >= 56 && timed)
            return;
        judgement.Findings.Add(new CardFinding(CardIssue.UnsafeTemperature, FindingSeverity.Error, temperature.Place, temperature.ToString(), "71 °C (160 °F), or pasteurised egg products",
            $"by no published rule is egg safe at {temperature}{(celsius < 56 ? "" : " without a time beside it, and none stands there")}: the household guidance for dishes with egg is 71 °C (160 °F) by a food thermometer. Local codes and licensed practice decide", null));
    }

    [GeneratedRegex(@"\b(?:oven|ovens|preheat|preheated|bake|bakes|baked|baking)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Oven();

    [GeneratedRegex(@"\b(?:refrigerator|refrigerate|refrigerated|fridge)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Fridge();

    [GeneratedRegex(@"\b(?:freezer|deep[- ]freeze)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Freezer();

    [GeneratedRegex(@"\b(?:room[- ]temperature|room temp)\b(?=[^.;]{0,12}$)|\b(?:room[- ]temperature|room temp)\s*[,(]", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Room();

    [GeneratedRegex(@"\b(?:temper|tempered|tempering|re-?warm|working temperature)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Temper();

    [GeneratedRegex(@"\b(?:bain[- ]marie|double boiler|simmering water|swiss meringue)\b|\b(?:heat|warm|whisk)\b[^,;.]{0,30}\b(?:whites|egg whites)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Whites();

    [GeneratedRegex(@"\b(?<name>soft[- ]ball|firm[- ]ball|hard[- ]ball|soft[- ]crack|hard[- ]crack)\b|\b(?<name>thread)\s+stage\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex StageName();

    [GeneratedRegex(@"\d", RegexOptions.CultureInvariant)]
    private static partial Regex Numbered();

    [GeneratedRegex(@"\b(?:safe|safely|pasteuri[sz]e[sd]?|kills?|killed|no longer raw|salmonella|food[- ]safe|sanitary)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Safe();

    [GeneratedRegex(@"(?:\b(?:not|never|no)\b|n't|n’t)[^.;:,]{0,40}\b(?:safe|pasteuri[sz]e[sd]?|kills?)\b|\bunsafe\b|\b(?:use|with|of)\s+pasteuri[sz]ed\b|\bpasteuri[sz]ed\s+(?:egg|white|liquid)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Unsafe();

    [GeneratedRegex(@"\b(?:eggs?|whites?|yolks?|meringue|custard)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex EggWord();

    [GeneratedRegex(@"\d\s*(?:-|–|to)?\s*\d*\s*(?:s|sec|seconds?|min|mins|minutes?|h|hours?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Time();
}
