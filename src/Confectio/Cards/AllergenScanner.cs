using System.Text.RegularExpressions;
using Confectio.Ingredients;

namespace Confectio.Cards;

/// <summary>Finds what a card says of allergens: what it contains and what it is said to be free from.</summary>
internal static partial class AllergenScanner
{
    /// <param name="source">The text.</param>
    /// <param name="isTitle">Whether it is the title, where any "dairy-free" is a claim.</param>
    public static IEnumerable<AllergenClaim> Of(SourceText source, bool isTitle)
    {
        string text = source.Text;
        foreach (Match match in Contains().Matches(text))
        {
            // "May contain traces" warns, and says nothing of what is in it.
            if (match.Groups["may"].Success)
                continue;
            Group list = match.Groups["list"];
            bool all = match.Groups["none"].Success, no = match.Groups["no"].Success || all;
            if (Claim(source, list.Value, no, match.Index, match.Length, all && AllergenWords.In(list.Value) is { Allergens.Count: 0, NutsOfUnknownKind: false }) is AllergenClaim claim)
                yield return claim;
        }
        foreach (Match match in FreeFrom().Matches(text))
        {
            if (Claim(source, match.Groups["list"].Value, true, match.Index, match.Length, false) is AllergenClaim claim)
                yield return claim;
        }
        // "Suitable for people with a milk allergy", "safe for coeliacs", "made without nuts": the same claim in other words.
        foreach (Match match in SuitableFor().Matches(text))
        {
            string list = match.Groups["list"].Value;
            string people = Coeliac().Replace(Vegan().Replace(list, " milk, egg, "), " gluten, wheat, ");
            if ((people != list || match.Groups["without"].Success || Allergic().IsMatch(list)) && Claim(source, Allergic().Replace(people, " "), true, match.Index, match.Length, false) is AllergenClaim claim)
                yield return claim;
        }
        foreach (Match match in NoneOf().Matches(text))
        {
            if (Claim(source, match.Groups["list"].Value, true, match.Index, match.Length, false) is AllergenClaim claim)
                yield return claim;
        }
        foreach (Match match in Free().Matches(text))
        {
            // "Use a dairy-free butter" says nothing of the card; alone in a sentence of such words it does.
            (int from, int to) = TemperatureScanner.Sentence(text, match.Index, match.Index + match.Length);
            if (!isTitle && !OnlyClaims().IsMatch(text.AsSpan(from, to - from)))
                continue;
            bool vegan = match.Groups["vegan"].Success;
            if (Claim(source, vegan ? "milk, egg" : match.Groups["what"].Value, true, match.Index, match.Length, false) is AllergenClaim claim)
                yield return claim;
        }
        // "Milk, egg." and nothing else.
        if (!isTitle && OnlyWords().Match(text) is { Success: true } alone && alone.Groups["word"].Captures.Count is > 1 and < 12
            && Claim(source, alone.Groups["list"].Value, false, alone.Groups["list"].Index, alone.Groups["list"].Length, false) is AllergenClaim listed)
            yield return listed;
    }

    /// <summary>Whether a line is a claim in words that could name a food.</summary>
    public static bool IsClaim(string line) => SuitableFor().IsMatch(line) || NoneOf().IsMatch(line);

    /// <summary>A list alone, below a heading that says what it is of.</summary>
    public static AllergenClaim? OfList(SourceText source) => source.Text.Length is > 0 and <= 200 ? Claim(source, source.Text, false, 0, source.Text.Length, false) : null;

    /// <summary>What a diet of structured data says.</summary>
    public static AllergenClaim? OfDiet(SourceText source) => source.Text switch
    {
        string diet when diet.EndsWith("GlutenFreeDiet", StringComparison.Ordinal) => Claim(source, "gluten, wheat", true, 0, diet.Length, false),
        string diet when diet.EndsWith("VeganDiet", StringComparison.Ordinal) => Claim(source, "milk, egg", true, 0, diet.Length, false),
        string diet when diet.EndsWith("LowLactoseDiet", StringComparison.Ordinal) => null,
        _ => null,
    };

    private static AllergenClaim? Claim(SourceText source, string words, bool free, int start, int length, bool all)
    {
        // Each of a list by itself: in "almond, milk" nobody means a milk of almonds.
        List<Allergen> named = [];
        bool nuts = false;
        foreach (string word in Parts().Split(words))
        {
            (IReadOnlyList<Allergen> some, bool someNuts) = AllergenWords.In(word.Replace("dairy", "milk", StringComparison.OrdinalIgnoreCase));
            named.AddRange(some);
            nuts |= someNuts;
        }
        Allergen[] allergens = all ? Enum.GetValues<Allergen>() : [.. named.Concat(nuts && free ? AllergenWord.TreeNuts : []).Distinct()];
        if (allergens.Length == 0 && !nuts)
            return null;
        string text = source.Text.Substring(start, length).Trim();
        return new AllergenClaim(free, allergens, nuts, source.At(start, length), text);
    }

    [GeneratedRegex(@"[,;&/+()]|\band\b|\bor\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Parts();

    [GeneratedRegex(@"(?<may>\b(?:may|often|can|might|usually)\s+)?\b(?:contains?|allergens?(?:\s+(?:are|advice|information|warning))?|allergy\s+advice)\b\s*(?:[:\-–=]|\bcontains\b)?\s*(?:(?<none>none\b(?:\s+of\b)?|nothing\b|no\s+(?:major\s+|known\s+)?allergens?\b)|(?<no>no\b))?\s*(?<list>[^.;!?\n|]{0,200})", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Contains();

    [GeneratedRegex(@"\bfree\s+(?:from|of)\b\s*:?\s*(?<list>[^.;!?\n|()]{1,120})", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex FreeFrom();

    [GeneratedRegex(@"(?<!\b(?:not|never|isn't|un)\s*)\b(?:(?:suitable|safe|fine|okay|ok|good|friendly)\s+(?:for|to)|can\s+be\s+(?:eaten|served|given)\s+(?:by|to)|(?<without>made\s+without(?:\s+any)?|(?:has|have|uses?)\s+no))\b(?!\s+(?:raw|more|longer|added))\s*:?\s*(?<list>[^.;!?\n|()]{1,120})", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SuitableFor();

    [GeneratedRegex(@"^[\W_]*no\s+(?<list>" + Word + @"(?:\s*(?:,|and|or|&|\+|/)\s*(?:no\s+)?" + Word + @")*)[\W_]*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NoneOf();

    [GeneratedRegex(@"\b(?:allerg(?:y|ies|ic)|intoleran(?:t|ce|ces)|sensitiv(?:e|ity|ities)|sufferers?|people|persons?|guests|anyone|those|who|with|are|a|an|to|avoid(?:ing)?|diets?|children)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Allergic();

    [GeneratedRegex(@"\bc(?:o)?eliacs?\b(?:\s+disease)?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Coeliac();

    [GeneratedRegex(@"\bvegans?\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Vegan();

    [GeneratedRegex(@"\b(?:(?<what>dairy|milk|lactose|egg|eggs|gluten|wheat|nut|nuts|peanut|tree[- ]nut|soy|soya|sesame|almond|hazelnut|fish)[-\u2010\u2011 ]free|(?<vegan>vegan))\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Free();

    [GeneratedRegex(@"^[\W\d_]*(?:(?:dairy|milk|lactose|egg|eggs|gluten|wheat|nut|nuts|peanut|tree|soy|soya|sesame|almond|hazelnut|fish|free|vegan|vegetarian|and|naturally|suitable|recipe|this|is|it|are|all|also|completely|diet|diets|for|kosher|halal|dietary|allergen|allergens|info|note|notes|no|bake)[\W_]*)+$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OnlyClaims();

    private const string Word = @"(?<word>milk|dairy|eggs?|wheat|gluten|soya?|soybeans?|peanuts?|(?:tree )?nuts|almonds?|hazelnuts?|walnuts?|pecans?|pistachios?|cashews?|sesame|sulphites|sulfites|fish|mustard|celery|lupin)";

    [GeneratedRegex(@"^\s*[-*•]?\s*(?<list>" + Word + @"(?:\s*(?:,|and|&|\+)\s*" + Word + @")*)\s*(?:\.|$)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex OnlyWords();
}
