using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Ingredients.Names;

/// <summary>What descriptors may do, over the whole table of them, and what nothing may do to a name.</summary>
public sealed class DescriptorTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    private static readonly string[] s_names = [.. s_table.All.SelectMany(food => food.Aliases.Select(alias => alias.Text).Append(food.Name))];

    private static readonly string[] s_words = [.. s_names.Concat(Descriptor.All.Select(row => row.Words)).SelectMany(name => name.Split(' ')).Distinct()
        .Concat(["(", ")", ",", "/", "-", "or", "and", "%", "2", "½", "[1]", "*", "\u0301", "\uD800", "Ǆ", "İ"])];

    [Fact]
    public void EveryRowIsMeantForSomeFood() =>
        Assert.Empty(Descriptor.All.Where(row => !s_table.All.Any(row.IsOf)).Select(row => row.Words));

    [Fact]
    public void EveryPatternIsAFoodOrAClass() => Assert.All(Descriptor.All, row =>
        Assert.All(row.Of, pattern => Assert.Contains(s_table.All, food => Descriptor.Fits(pattern, food))));

    [Fact]
    public void EveryUnclearNameIsUnclearAndNamesFoodsOfTheTable() => Assert.All(UnclearName.All, unclear =>
    {
        NameMatch match = s_table.MatchName(unclear.Name);
        Assert.Null(match.Ingredient);
        Assert.Equal($"It does not say which food: {unclear.Reason}.", match.Reason);
        Assert.Equal(unclear.Between.Order(StringComparer.Ordinal), match.Between.Select(food => food.Id).Order(StringComparer.Ordinal));
    });

    // Every descriptor that is dropped for a food, in front of every name of it, behind a comma and in brackets.
    [Fact]
    public void ADescriptorMeantForAFoodLeavesItThatFood() => Assert.Empty(
        from row in Descriptor.All
        where row.Meaning is not DescriptorMeaning.Food
        from food in s_table.All
        where row == Array.Find(s_table.Names.Use(UseOf(row)), one => one.IsOf(food))
        from text in new[] { $"{row.Words} {food.Name}", $"{food.Name}, {row.Words}", $"{food.Name} ({row.Words})" }
        let match = s_table.MatchName(text)
        where match.Ingredient?.Id != food.Id
        select $"{text} -> {match.Ingredient?.Id} {match.Reason}");

    // A word that only ever changes the food: with it there is another food of that name, or none. It is never among the dropped.
    [Fact]
    public void AWordThatChangesTheFoodIsNeverDropped()
    {
        string[] changing = [.. Descriptor.All.GroupBy(row => row.Words).Where(rows => rows.All(row => row.Meaning is DescriptorMeaning.Food)).Select(rows => rows.Key)];
        Assert.True(changing.Length > 50);
        Assert.Empty(
            from word in changing
            from food in s_table.All
            from text in new[] { $"{word} {food.Name}", $"{food.Name}, {word}", $"{food.Name} ({word})" }
            let match = s_table.MatchName(text)
            where match.Ignored.Concat(match.Preparation).Any(dropped => dropped.Equals(word, StringComparison.OrdinalIgnoreCase))
                || match.Ingredient is not null && match.Packing is null && match.Ingredient == food && match.Ignored.Count + match.Preparation.Count == 0
                    && !HasWords(food, word)
            select $"{text} -> {match}");
    }

    [Property(MaxTest = 500)]
    public Property CaseMarksAndSpacesChangeNothing() => Prop.ForAll(
        ArbMap.Default.GeneratorFor<int>().Zip(ArbMap.Default.GeneratorFor<int>()).ToArbitrary(),
        pair =>
        {
            Random random = new(pair.Item1);
            string name = s_names[random.Next(s_names.Length)];
            string dressed = string.Concat(name.Select(c => (random.Next(2) == 0 ? char.ToUpperInvariant(c) : c) + (c == ' ' ? new string(' ', random.Next(3)) : "")));
            dressed = random.Next(4) switch { 0 => dressed + "*", 1 => "  " + dressed + "\u00B9", 2 => "\u2022 " + dressed + " \u2020 ", _ => dressed + " [1]" };
            return s_table.MatchName(dressed).Ingredient == s_table.MatchName(name).Ingredient;
        });

    [Property(MaxTest = 2000)]
    public Property WordsInAnyOrderGiveAnAnswerOrAReason() => Prop.ForAll(
        ArbMap.Default.GeneratorFor<int>().ToArbitrary(),
        seed =>
        {
            Random random = new(seed);
            string text = string.Join(random.Next(3) == 0 ? "" : " ", Enumerable.Range(0, random.Next(1, 14)).Select(_ => s_words[random.Next(s_words.Length)]));
            NameMatch match = s_table.MatchName(text);
            return match.Ingredient is null == match.Reason.Length > 0 && (match.Between.Count == 0 || match.Ingredient is null)
                && match.Suggestions.All(one => one.Distance > 0) && match.ToString().Length > 0;
        });

    [Property(MaxTest = 500)]
    public bool AnyTextHasAnAnswerOrAReason(string? text)
    {
        NameMatch match = s_table.MatchName(text ?? "", 2);
        return match.Ingredient is null == match.Reason.Length > 0 && match.Text == (text ?? "");
    }

    private static int UseOf(Descriptor row)
    {
        Span<NameToken> tokens = stackalloc NameToken[NameWords.MostTokens];
        int count = s_table.Names.Words.Read(row.Words, tokens);
        ushort[] ids = new ushort[count];
        for (int i = 0; i < count; i++)
            ids[i] = tokens[i].Id;
        return s_table.Names.TryGetUse(ids, out int use) ? use : throw new InvalidOperationException(row.Words);
    }

    private static bool HasWords(Ingredient food, string words) =>
        food.Aliases.Select(alias => alias.Text).Append(food.Name).Any(name => Joined(name).Contains(Joined(words), StringComparison.Ordinal));

    private static string Joined(string name) => NameKey.Of(name).Replace("-", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal);
}
