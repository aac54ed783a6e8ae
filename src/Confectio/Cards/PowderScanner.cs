using System.Text.RegularExpressions;
using Confectio.Measures;

namespace Confectio.Cards;

/// <summary>Finds how a card makes up dried egg with water: <c>1 part powder to 7 parts water</c>, <c>2 tsp powder + 2 Tbsp water per white</c>.</summary>
internal static partial class PowderScanner
{
    public static IEnumerable<PowderRatio> Of(SourceText source, bool comma)
    {
        string text = source.Text;
        if (!text.Contains("water", StringComparison.OrdinalIgnoreCase) || !Egg().IsMatch(text))
            yield break;
        foreach (Match match in Parts().Matches(text))
        {
            if (Numbers.Read(match.Groups["p"].ValueSpan, comma) is PrintedNumber { Low: > 0 } powder && Numbers.Read(match.Groups["w"].ValueSpan, comma) is PrintedNumber { Low: > 0 } water)
                yield return new PowderRatio(powder.Low, water.Low, null, null, false, Name(match), source.At(match.Index, match.Length), match.Value);
        }
        foreach (Match match in Amounts().Matches(text))
        {
            AmountReading reading = comma ? AmountReading.DecimalComma : AmountReading.DecimalPoint;
            if (!Amount.TryParse(match.Groups["p"].Value, reading, out Amount powder) || !Amount.TryParse(match.Groups["w"].Value, reading, out Amount water)
                || powder.IsPiece || water.IsPiece)
                continue;
            (int from, int to) = TemperatureScanner.Sentence(text, match.Index, match.Index + match.Length);
            yield return new PowderRatio(null, null, powder, water, OneWhite().IsMatch(text.AsSpan(from, to - from)), Name(match), source.At(match.Index, match.Length), match.Value);
        }
    }

    private static string Name(Match match) => match.Groups["what"].Value.Trim().ToLowerInvariant();

    private const string Powder = @"(?<what>(?:dried |dry |powdered )?(?:egg[- ]?)?(?:whites?|albumen|albumin|yolks?|eggs?|whole eggs?|meringue)?\s*powder|(?:dried|powdered) (?:egg )?(?:whites?|yolks?|albumen|albumin|eggs?|whole eggs?))";

    [GeneratedRegex(@"\b(?:white|whites|albumen|albumin|egg|eggs|yolk|yolks)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Egg();

    [GeneratedRegex(@"(?<p>" + Numbers.Pattern + @")\s*parts?\s+(?:by weight |by mass |of )?" + Powder + @"[^.;\d]{0,20}?\s*(?:to|and|:|,|with|\+|in)\s*(?<w>" + Numbers.Pattern + @")\s*parts?\s+(?:by weight |by mass |of )?(?:\w+ )?water", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Parts();

    [GeneratedRegex(@"(?<p>" + Numbers.Pattern + @"\s?(?:g|grams?|kg|oz|ounces?|tsp|teaspoons?|tbsp|tablespoons?|cups?|ml)\b)\.?\s+(?:of )?" + Powder + @"[^.;\d]{0,20}?\s*(?:\+|and|with|to|in|dissolved in|,)\s*(?<w>" + Numbers.Pattern + @"\s?(?:g|grams?|kg|oz|ounces?|tsp|teaspoons?|tbsp|tablespoons?|cups?|ml)\b)\.?\s+(?:of )?(?:\w+ )?water", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Amounts();

    [GeneratedRegex(@"\b(?:per|for|each|every|replaces?|equals?|makes?|=)\s+(?:each |every |one |1 |a |an |of )*(?:large |medium |fresh )*(?:egg )?white\b(?!s)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OneWhite();
}
