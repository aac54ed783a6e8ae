using System.Text.RegularExpressions;
using Confectio.Measures;

namespace Confectio.Cards;

/// <summary>Finds what a card says it makes: grams, portions, what a portion weighs; and how high its kitchen stands.</summary>
internal static partial class FigureScanner
{
    private const double MetresPerFoot = 0.3048;

    public static IEnumerable<CardFigure> Of(SourceText source, bool comma)
    {
        string text = source.Text;
        foreach (Match match in Altitude().Matches(text))
        {
            // "Above 3,000 ft take less sugar" says nothing of this kitchen.
            if (match.Groups["number"] is not { Success: true } number || (!Ours().IsMatch(match.Groups["lead"].ValueSpan) && (Elsewhere().IsMatch(text.AsSpan(0, match.Index)) || Elsewhere().IsMatch(match.Groups["lead"].ValueSpan))))
                continue;
            if (Made(source, CardFigureKind.AltitudeMetres, number, default, match.Groups["unit"].Value[0] is 'f' or 'F' or '\'' ? MetresPerFoot : 1, comma, match) is { Low: <= 9000 } altitude)
                yield return altitude;
        }
        if (!text.AsSpan().ContainsAnyInRange('0', '9') || Nutrition.Line().IsMatch(text))
            yield break;
        int taken = -1;
        foreach (Match match in PortionsOf().Matches(text))
        {
            taken = match.Index + match.Length;
            if (Made(source, CardFigureKind.Portions, match.Groups["n"], match.Groups["n2"], 1, comma) is CardFigure portions)
                yield return portions;
            if (Made(source, CardFigureKind.PortionGrams, match.Groups["g"], default, Grams(match.Groups["u"].ValueSpan), comma) is CardFigure size)
                yield return size;
        }
        if (taken < 0)
        {
            foreach (Match match in Portions().Matches(text))
            {
                if (Made(source, CardFigureKind.Portions, match.Groups["n"], match.Groups["n2"], 1, comma) is { Low: >= 1 and <= 100_000 } portions)
                {
                    yield return portions;
                    break;
                }
            }
            foreach (Match match in PortionSize().Matches(text))
            {
                if (Made(source, CardFigureKind.PortionGrams, match.Groups["g"], default, Grams(match.Groups["u"].ValueSpan), comma) is CardFigure size)
                    yield return size;
            }
        }
        foreach (Match match in Yield().Matches(text))
        {
            ReadOnlySpan<char> unit = match.Groups["u"].ValueSpan;
            double grams = Grams(unit);
            CardFigureKind kind = grams == 0 ? CardFigureKind.YieldMillilitres
                : match.Groups["sum"].Success ? CardFigureKind.TotalGrams : CardFigureKind.YieldGrams;
            // "10 lb 8 oz" is one figure.
            if (grams > 400 && OuncesBehind().Match(text, match.Index + match.Length) is { Success: true } more && more.Index == match.Index + match.Length
                && Numbers.Read(match.Groups["g"].ValueSpan, comma) is PrintedNumber pounds && Numbers.Read(more.Groups["o"].ValueSpan, comma) is PrintedNumber ounces)
            {
                double ounce = Grams("oz"), all = pounds.Low * grams + ounces.Low * ounce;
                int start = match.Groups["g"].Index;
                yield return new CardFigure(kind, new PrintedNumber(all, all, ounces.Step * ounce), 1, source.At(start, more.Index + more.Length - start), text[start..(more.Index + more.Length)]) { IsApproximate = About().IsMatch(text.AsSpan(0, start)) };
                yield break;
            }
            if (Made(source, kind, match.Groups["g"], match.Groups["g2"], grams == 0 ? 1 : grams, comma) is CardFigure made)
            {
                yield return made;
                yield break;
            }
        }
    }

    /// <summary>The figure of a total: a cell of a table whose row says total.</summary>
    public static CardFigure? Total(SourceText source, CardFigureKind kind, bool comma)
    {
        Match match = MassOnly().Match(source.Text);
        return match.Success ? Made(source, kind, match.Groups["g"], default, kind == CardFigureKind.PercentTotal ? 1 : Grams(match.Groups["u"].ValueSpan) is > 0 and double unit ? unit : 1, comma) : null;
    }

    /// <summary>Whether a line says only such things, so that it names no ingredient.</summary>
    public static bool IsFact(string text) => Lead().IsMatch(text) || Nutrition.Line().IsMatch(text);

    /// <summary>How many grams a unit of mass has; 0 of another unit.</summary>
    internal static double Grams(ReadOnlySpan<char> unit) => unit.Trim().TrimEnd('.').ToString().ToLowerInvariant() switch
    {
        "g" or "gr" or "gram" or "grams" or "gramme" or "grammes" => 1,
        "kg" or "kgs" or "kilo" or "kilos" or "kilogram" or "kilograms" => 1000,
        "oz" or "ounce" or "ounces" => MeasuringSystem.OfNobody.GramsPer(KitchenUnit.Ounce),
        "lb" or "lbs" or "pound" or "pounds" => MeasuringSystem.OfNobody.GramsPer(KitchenUnit.Pound),
        _ => 0,
    };

    private static CardFigure? Made(SourceText source, CardFigureKind kind, Group low, Group? high, double scale, bool comma, Match? whole = null)
    {
        if (scale == 0 || Numbers.Read(low.ValueSpan, high is { Success: true } ? high.ValueSpan : default, comma) is not PrintedNumber number)
            return null;
        int start = low.Index, end = whole is null ? EndOfUnit(source.Text, high is { Success: true } ? high.Index + high.Length : low.Index + low.Length, kind) : whole.Index + whole.Length;
        return new CardFigure(kind, number, scale, source.At(start, end - start), source.Text[start..end].Trim()) { IsApproximate = About().IsMatch(source.Text.AsSpan(0, start)) };
    }

    private static int EndOfUnit(string text, int end, CardFigureKind kind)
    {
        if (kind == CardFigureKind.Portions)
            return end;
        int at = end;
        while (at < text.Length && text[at] == ' ')
            at++;
        int letters = at;
        while (letters < text.Length && char.IsLetter(text[letters]))
            letters++;
        return letters > at && letters - at < 12 ? letters : end;
    }

    private const string Mass = @"(?<u>kilograms?|kilos?|kgs?|grams?|grammes?|gr|g|ounces?|oz|pounds?|lbs?)\b";

    private const string Pieces = @"(?:portions?|servings?|serves|pieces?|squares?|slices?|cupcakes?|muffins?|cookies|biscuits|macarons?|meringues?|truffles?|bonbons?|bars?|candies|caramels?|marshmallows?|balls?|cakes?|cake|tarts?|scones?|buns?|rounds?|people|guests|units?|pcs|jars?|bags?)";

    [GeneratedRegex(@"(?<n>" + Numbers.Pattern + @")(?:" + Numbers.To + @"(?<n2>" + Numbers.Pattern + @"))?\s+(?:\w+ )?" + Pieces + @"\b\s*[,(]?\s*(?:of|at|x|×|@|à|weighing|each|about|approx\.?|,|\()*\s*(?:(?:about|approx\.?|roughly)\s+)?(?:" + Numbers.Pattern + @"\s*(?:cups?|tbsp|tablespoons?|tsp|teaspoons?)\.?\s*\(\s*)?(?<g>" + Numbers.Pattern + @")\s?" + Mass
        + @"|(?:portions?|servings?|pieces?)\s*[:=]\s*(?<n>" + Numbers.Pattern + @")\s*(?:x|×|@|at|of)\s*(?<g>" + Numbers.Pattern + @")\s?" + Mass
        + @"|\b(?<n>\d{1,5})\s+(?:tins|pans|moulds|molds|layers|trays)\s*(?:of|at|x|×|@|à|with)\s*(?<g>" + Numbers.Pattern + @")\s?" + Mass + @"|\b(?<n>\d{1,5})\s*(?:x|×|@)\s*(?<g>" + Numbers.Pattern + @")\s?" + Mass + @"(?:\s+(?:each|portions?|pieces?|servings?))", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PortionsOf();

    [GeneratedRegex(@"\b(?:serves|servings?|portions?|yields?|makes|gives|enough for|batch|for)\b\s*[:=]?\s*(?:about|approx(?:imately|\.)?|around|roughly|up to|~)?\s*(?<n>" + Numbers.Pattern + @")(?:" + Numbers.To + @"(?<n2>" + Numbers.Pattern + @"))?(?=\s*(?:$|[.;,()|]|people|guests|(?:\w+ )?" + Pieces + @"\b))(?!\s*[.,]\d)|(?<n>" + Numbers.Pattern + @")(?:" + Numbers.To + @"(?<n2>" + Numbers.Pattern + @"))?\s+(?:\w+ )?(?:portions|servings|cupcakes|pieces|squares|people|guests)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Portions();

    [GeneratedRegex(@"\b(?:(?:each|per|one|a)\s+(?:serving|portion|piece|square|slice|cupcake|bar)|(?:serving|portion|piece) (?:size|weight)|(?:serving|portion)s?\s*[:=]?\s*(?:of|is|weighs)?)\s*(?:[:=]|is|of|weighs)?\s*(?:about|approx\.?|~)?\s*(?<g>" + Numbers.Pattern + @")\s?" + Mass + @"(?:\s+each)?|(?<g>" + Numbers.Pattern + @")\s?" + Mass + @"\s+(?:per|a|each)\s+(?:serving|portion|piece|square|slice|cupcake)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PortionSize();

    [GeneratedRegex(@"\b(?:(?<sum>(?:sum|total)(?:\s+(?:weight|mass|of (?:the )?(?:lines|ingredients)|ingredients))?)(?!\s+(?:fat|carb|sugar|yield|time|batch))|yields?|yielding|makes|batch(?:\s+(?:size|weight|yield))?|^[\s*#>•-]*(?:batter|dough|mix|mixture)(?:\s+(?:weight|weighs|in all|total))?|(?:final|finished|net|total)\s+(?:weight|mass|yield|batch)|gives|produces|quantity made)\b[^\d½¼¾;.\n]{0,28}(?<g>" + Numbers.Pattern + @")(?:" + Numbers.To + @"(?<g2>" + Numbers.Pattern + @"))?\s?(?:" + Mass + @"|(?<u>cups?|ml|millilit(?:er|re)s?|lit(?:er|re)s?|l|pints?|quarts?)\b)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Yield();

    [GeneratedRegex(@"\s*(?:,|and|\+)?\s*(?<o>" + Numbers.Pattern + @")\s?(?:ounces?|oz)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OuncesBehind();

    [GeneratedRegex(@"^\s*(?<g>" + Numbers.Pattern + @")\s?(?<u>[A-Za-z]{0,9}|%)\.?\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex MassOnly();

    [GeneratedRegex(@"^[\s*#>•-]*(?:yields?|makes|serves|servings?|portions?|batch|total|sum|altitude|elevation|(?:serving|portion) size|(?:all of the )?(?:batter|dough|mix|mixture)(?:\s+(?:weight|weighs|in all|total))?\s*[:=]?\s*(?=\d))\b|\b(?:yield|makes|batch|portions?|servings?)\s*:?\s*(?:about |approx\.? )?\d|\d\s*(?:servings?|portions?)\b|^[\s*#>•-]*\d{1,5}\s+(?:\w+ )?" + Pieces + @"\s*(?:[,(]?\s*(?:of|at|x|×|@|à|weighing|each)\b|$)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Lead();

    [GeneratedRegex(@"(?<lead>(?:\b\w+\s+){0,2})\b(?:altitude|elevation|above sea level|kitchen (?:is |stands )?at|at an altitude|up at)\b\s*(?:of|is|:|=|about|,)*\s*(?<number>" + Numbers.Pattern + @")\s?(?<unit>m\b|met(?:er|re)s?\b|ft\b|feet\b|foot\b|')|(?<lead>(?:\b\w+\s+){0,2})(?<number>" + Numbers.Pattern + @")\s?(?<unit>m\b|met(?:er|re)s?\b|ft\b|feet\b)\s*(?:,\s*)?(?:above sea level|altitude|elevation|a\.?s\.?l\b|up\b)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Altitude();

    [GeneratedRegex(@"\b(?:our|this|my|here)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Ours();

    [GeneratedRegex(@"\b(?:above|over|every|each|per|for|higher than|more than|from|below|under|if|beyond|high)\s+(?:\w+\s+){0,2}$|\bsea[- ]level\b[^.]*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Elsewhere();

    [GeneratedRegex(@"(?:\b(?:about|approx(?:imately|\.)?|around|roughly|circa|ca\.?|some|up to)|~|≈)\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex About();
}
