using System.Globalization;
using System.Text.RegularExpressions;

namespace Confectio.Publishing;

/// <summary>Temperatures that the words of a step tell in one scale alone, so that a card can tell them in both.</summary>
internal static partial class StepTemperatures
{
    // How far behind a temperature the other scale may stand: "180 °C (fan 160 °C, 350 °F)".
    private const int Near = 40;

    /// <summary>
    /// The temperatures of a step in both scales, in the order of the text; none that has the other scale beside it, and no difference such as
    /// "10 °C warmer", which is another sum.
    /// </summary>
    public static IEnumerable<string> Of(string step, SheetNumbers numbers)
    {
        foreach (Match match in Written().Matches(step))
        {
            bool isFahrenheit = match.Groups["scale"].Value is "F";
            string before = step[Math.Max(0, match.Index - Near)..match.Index], behind = step[(match.Index + match.Length)..Math.Min(step.Length, match.Index + match.Length + Near)];
            Regex other = isFahrenheit ? InCelsius() : InFahrenheit();
            if (other.IsMatch(before) || other.IsMatch(behind) || DifferenceBefore().IsMatch(before) || DifferenceBehind().IsMatch(behind))
                continue;
            double low = Read(match.Groups["low"].ValueSpan), high = match.Groups["high"].Success ? Read(match.Groups["high"].ValueSpan) : low;
            (double least, double most) = isFahrenheit ? (-148.0, 932.0) : (-100.0, 500.0);
            if (low < least || high > most || high < low)
                continue;
            yield return (isFahrenheit ? CardTemperature.BetweenFahrenheit("step", low, high) : CardTemperature.Between("step", low, high)).Told(numbers);
        }
    }

    private static double Read(ReadOnlySpan<char> text) => double.Parse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<![\w.,-])(?<low>-?\d{1,3}(?:\.\d{1,2})?)(?:\s?°?\s?[CF]?\s?(?:-|–|to)\s?(?<high>\d{1,3}(?:\.\d{1,2})?))?\s?(?:°\s?|degrees\s)(?<scale>[CF])\b", RegexOptions.CultureInvariant)]
    private static partial Regex Written();

    [GeneratedRegex(@"\d\s?(?:°\s?|degrees\s)?C\b", RegexOptions.CultureInvariant)]
    private static partial Regex InCelsius();

    [GeneratedRegex(@"\d\s?(?:°\s?|degrees\s)?F\b", RegexOptions.CultureInvariant)]
    private static partial Regex InFahrenheit();

    [GeneratedRegex(@"\b(?:by|within|another|every|a further|plus|minus|±)\s+(?:about\s+)?$|±\s?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex DifferenceBefore();

    [GeneratedRegex(@"^\s*(?:less|more|lower|higher|hotter|warmer|cooler|colder|above|below|either side|apart|difference)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex DifferenceBehind();
}
