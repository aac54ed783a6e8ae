using System.Text.RegularExpressions;

namespace Confectio.Cards;

/// <summary>Finds the figures of a nutrition statement in text and in structured data.</summary>
internal static partial class Nutrition
{
    private static readonly Dictionary<string, CardFigureKind> s_members = new(StringComparer.Ordinal)
    {
        ["calories"] = CardFigureKind.Kilocalories, ["fatContent"] = CardFigureKind.Fat, ["saturatedFatContent"] = CardFigureKind.Saturates,
        ["carbohydrateContent"] = CardFigureKind.Carbohydrate, ["sugarContent"] = CardFigureKind.Sugars, ["fiberContent"] = CardFigureKind.Fibre,
        ["proteinContent"] = CardFigureKind.Protein, ["sodiumContent"] = CardFigureKind.Sodium,
    };

    /// <summary>The figures of a line that is a statement.</summary>
    public static IEnumerable<CardFigure> Of(SourceText source, bool comma, bool per100)
    {
        per100 = Per100().IsMatch(source.Text) || (per100 && !PerPortion().IsMatch(source.Text));
        foreach (Match match in Figure().Matches(source.Text))
        {
            if (KindOf(match.Groups["name"].Value) is not CardFigureKind kind || Numbers.Read(match.Groups["n"].ValueSpan, comma) is not PrintedNumber number)
                continue;
            if (Made(source, kind, number, match.Groups["unit"].Value, match.Groups["n"].Index, match.Index + match.Length, per100) is CardFigure figure)
                yield return figure;
        }
        // "619 kJ / 148 kcal"
        foreach (Match match in Energy().Matches(source.Text))
        {
            if (Numbers.Read(match.Groups["n"].ValueSpan, comma) is PrintedNumber number)
                yield return new CardFigure(match.Groups["unit"].Value[1] is 'J' or 'j' ? CardFigureKind.Kilojoules : CardFigureKind.Kilocalories, number, 1,
                    source.At(match.Index, match.Length), match.Value) { IsPer100Grams = per100 };
        }
    }

    /// <summary>The figure of a member such as <c>fatContent</c>; null where it is none that is known.</summary>
    public static CardFigure? OfMember(string member, SourceText source, bool comma, bool per100)
    {
        if (!s_members.TryGetValue(member, out CardFigureKind kind) || Value().Match(source.Text) is not { Success: true } match
            || Numbers.Read(match.Groups["n"].ValueSpan, comma) is not PrintedNumber number)
            return null;
        return Made(source, kind, number, match.Groups["unit"].Value, match.Groups["n"].Index, match.Index + match.Length, per100);
    }

    public static bool IsMember(string member) => s_members.ContainsKey(member) || member is "servingSize" or "@type" or "unsaturatedFatContent" or "transFatContent" or "cholesterolContent";

    /// <summary>Whether a line says that what follows is of 100 g, or of a portion; null where it says neither.</summary>
    public static bool? Basis(string text) => Per100().IsMatch(text) ? true : PerPortion().IsMatch(text) ? false : null;

    private static CardFigure? Made(SourceText source, CardFigureKind kind, PrintedNumber number, string unit, int start, int end, bool per100)
    {
        unit = unit.ToLowerInvariant();
        double scale = 1;
        if (kind == CardFigureKind.Kilocalories)
        {
            kind = unit == "kj" ? CardFigureKind.Kilojoules : kind;
            if (unit is "g" or "mg")
                return null;
        }
        else if (unit is "kcal" or "kj" or "calories" or "cal")
        {
            return null;
        }
        else if (kind == CardFigureKind.Sodium)
        {
            scale = unit == "g" ? 1000 : 1;
        }
        else if (unit == "mg")
        {
            scale = 0.001;
        }
        return new CardFigure(kind, number, scale, source.At(start, end - start), source.Text[start..end]) { IsPer100Grams = per100 };
    }

    private static CardFigureKind? KindOf(string name)
    {
        name = name.ToLowerInvariant();
        return name.Contains("saturat", StringComparison.Ordinal) ? CardFigureKind.Saturates
            : name.Contains("calorie", StringComparison.Ordinal) || name is "energy" or "kcal" ? CardFigureKind.Kilocalories
            : name.Contains("fat", StringComparison.Ordinal) ? CardFigureKind.Fat
            : name.Contains("carb", StringComparison.Ordinal) ? CardFigureKind.Carbohydrate
            : name.Contains("sugar", StringComparison.Ordinal) ? CardFigureKind.Sugars
            : name.StartsWith("fib", StringComparison.Ordinal) || name.Contains(" fib", StringComparison.Ordinal) ? CardFigureKind.Fibre
            : name.Contains("protein", StringComparison.Ordinal) ? CardFigureKind.Protein
            : name is "salt" ? CardFigureKind.Salt : name is "sodium" ? CardFigureKind.Sodium : null;
    }

    // The words nutrition, calories and energy with a number, or three nutrients with theirs.
    [GeneratedRegex(@"\bnutrition(?:al)?\b|\b(?:calories|energy|kcal)\s*(?:\([^)]*\))?\s*[:=]?\s*\d|\d\s?(?:kcal|kJ)\b|(?:\b(?:fat|saturates|carbohydrates?|carbs|sugars|fib(?:re|er)|protein|salt|sodium)\b\s*[:=]?\s*<?\s*\d+(?:[.,]\d+)?\s?(?:g|mg)\b[^\n]*?){2,}", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Line();

    [GeneratedRegex(@"\b(?<name>(?:total |of which |saturated |trans |added |dietary )*(?:calories|energy|fats?|saturates|saturated|carbohydrates?|carbs|sugars?|fib(?:re|er)|proteins?|salt|sodium))\b\s*(?:content)?\s*(?:\((?:g|mg|kcal|kJ)\))?\s*[:=\-–]?\s*(?<n>" + Numbers.Pattern + @")\s?(?<unit>kcal|kJ|calories|cal|mg|g)?\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Figure();

    [GeneratedRegex(@"(?<!\b(?:energy|calories)\b\s*[:=\-–]?\s*)(?<![\d.,])(?<n>" + Numbers.Pattern + @")\s?(?<unit>kcal|kJ)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Energy();

    [GeneratedRegex(@"^\s*<?\s*(?<n>" + Numbers.Pattern + @")\s?(?<unit>kcal|kJ|calories|cal|milligrams?|mg|grams?|g)?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Value();

    [GeneratedRegex(@"\bper\s+100\s?(?:g|grams?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Per100();

    [GeneratedRegex(@"\b(?:per|each|a|one)\s+(?:serving|portion|piece|slice|cupcake|square)\b|\bamount per\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PerPortion();
}
