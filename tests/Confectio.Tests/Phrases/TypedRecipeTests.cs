using System.Globalization;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Xunit;

namespace Confectio.Tests.Phrases;

/// <summary>
/// The recipes of Fennmarsh Hall, read line by line and held against the readings that were written by hand before the reader saw them:
/// the first twenty before there was a reader.
/// </summary>
public sealed class TypedRecipeTests(ITestOutputHelper output)
{
    [Fact]
    public void AtLeastNineteenLinesInTwentyAreReadAndNoneIsReadWrong()
    {
        int lines = 0, right = 0, said = 0;
        List<string> wrong = [], unread = [];
        foreach (TypedRecipe recipe in TypedRecipe.All)
        {
            Dictionary<int, Phrase> read = RecipeText.Read(recipe.Text, IngredientTable.BuiltIn, new PhraseOptions { MeasuringSystem = recipe.System })
                .TryGet(out RecipeText? whole) ? whole.Lines.ToDictionary(line => line.Number, line => line.Phrase) : [];
            foreach (TypedRecipe.Line line in recipe.Lines)
            {
                lines++;
                string place = $"{recipe.Title}:{line.Number} {line.Text}";
                string verdict = Judge(line, read[line.Number], recipe.System);
                if (verdict.Length == 0)
                    right++;
                else if (verdict.StartsWith("said", StringComparison.Ordinal))
                    (said, unread) = (said + 1, [.. unread, place + " => " + verdict]);
                else
                    wrong.Add(place + " => " + verdict);
            }
        }
        output.WriteLine($"{lines} lines, {right} right, {said} unread and said, {wrong.Count} wrong");
        foreach (string one in unread.Concat(wrong))
            output.WriteLine(one);
        Assert.True(lines >= 250, "The recipes are a sample of at least 250 lines.");
        Assert.Empty(wrong);
        Assert.True(right >= 0.95 * lines, string.Create(CultureInfo.InvariantCulture, $"{right} of {lines} lines were read:\n{string.Join('\n', unread)}"));
    }

    /// <summary>Nothing where the line was read as by hand; "said: ..." where a part was not understood and listed; else what is wrong.</summary>
    private static string Judge(TypedRecipe.Line line, Phrase phrase, MeasuringSystem system)
    {
        if (line.Ingredients.Count == 0)
            return phrase.Kind != PhraseKind.Ingredient ? "" : phrase.Ingredient is null && phrase.Unread.Count > 0 ? $"said: a {line.Kind} taken for an ingredient" : $"a {line.Kind} read as {phrase}";
        Phrase? one = phrase;
        foreach (TypedRecipe.Expected expected in line.Ingredients)
        {
            if (one is null)
                return "the second ingredient is lost";
            if (JudgeOne(expected, one, system) is { Length: > 0 } verdict)
                return verdict;
            one = one.Also;
        }
        return one is null ? "" : $"a further ingredient was seen: {one}";
    }

    private static string JudgeOne(TypedRecipe.Expected expected, Phrase phrase, MeasuringSystem system)
    {
        bool said = phrase.Unread.Count > 0;
        string Fault(string text) => (said ? "said: " : "") + text;
        if (phrase.Kind != PhraseKind.Ingredient)
            return $"taken for a {phrase.Kind}";
        if (expected.Id == "?")
        {
            // Nothing may be matched, and what was not understood has to be listed.
            return phrase.Ingredient is not null ? $"matched {phrase.Ingredient.Id}" : !said ? "unread, and nothing is listed"
                : expected.Unread is not null && !phrase.Unread.Any(part => part.Text.Contains(expected.Unread, StringComparison.Ordinal)) ? $"'{expected.Unread}' is not listed"
                : expected.Amount is Amount read && phrase.Amount?.Amount != read ? Fault($"amount {phrase.Amount?.ToString() ?? "none"}") : "";
        }
        if (phrase.Ingredient is null)
            return Fault("no ingredient");
        if (phrase.Ingredient.Id != expected.Id)
            return $"{phrase.Ingredient.Id} instead of {expected.Id}";
        if (expected.HasNoAmount && phrase.Amount is not null)
            return $"amount {phrase.Amount}";
        if (expected.Amount is Amount amount && phrase.Amount?.Amount != amount)
            return phrase.Amount is null ? Fault("no amount") : $"amount {phrase.Amount} instead of {amount}";
        if (!expected.Seconds.SequenceEqual(phrase.SecondAmounts.Select(second => second.Amount)))
            return Fault($"second amounts {string.Join(" & ", phrase.SecondAmounts)}");
        if (expected.Packing != phrase.Packing)
            return phrase.Packing is null ? Fault("no packing") : $"packing {phrase.Packing}";
        if (expected.Preparation.FirstOrDefault(word => !phrase.Preparation.Any(part => part.Contains(word, StringComparison.OrdinalIgnoreCase))) is string missing)
            return Fault($"preparation '{missing}' is missing in: {string.Join(", ", phrase.Preparation)}");
        if (Flags(phrase).Except(expected.Flags).Concat(expected.Flags.Except(["assumed"]).Except(Flags(phrase))).FirstOrDefault() is string flag)
            return Fault($"flag {flag}");
        if (expected.Flags.Contains("assumed") && phrase.Assumed.Count == 0)
            return "something was assumed in silence";
        if (expected.Unread is null ? said : !phrase.Unread.Any(part => part.Text.Contains(expected.Unread, StringComparison.Ordinal)))
            return expected.Unread is null ? $"said: unread '{string.Join("', '", phrase.Unread.Select(part => part.Text))}'" : $"'{expected.Unread}' is not listed";
        if (expected.Grams is (double low, double high))
        {
            if (!phrase.TryToMass(system, out ConvertedMass mass, out string? reason))
                return $"no mass: {reason}";
            if (mass.Grams.Likely < low || mass.Grams.Likely > high)
                return $"{mass}";
        }
        return "";
    }

    private static IEnumerable<string> Flags(Phrase phrase)
    {
        if (phrase.IsOptional)
            yield return "opt";
        if (phrase.IsToTaste)
            yield return "taste";
        if (phrase.HasExtra)
            yield return "extra";
        if (phrase.IsDivided)
            yield return "divided";
        if (phrase.Amount?.IsApproximate == true || (phrase.Amount is null && phrase.Unread.Any(part => part.Text.Contains("few", StringComparison.Ordinal) || part.Text.Contains("handful", StringComparison.Ordinal))))
            yield return "approx";
        if (phrase.Problems.Any(problem => problem.Message.Contains("contradict", StringComparison.Ordinal)))
            yield return "problem";
    }
}
