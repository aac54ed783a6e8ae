using Confectio.Measures;

namespace Confectio.Ingredients.Names;

/// <summary>Makes a match of a reading.</summary>
internal static class NameMatcher
{
    /// <summary>Longer texts are no names.</summary>
    public const int Longest = 200;

    public static NameMatch Match(IngredientTable table, string name)
    {
        ReadOnlySpan<char> text = name.AsSpan().Trim();
        if (text.IsEmpty)
            return new NameMatch(table, name, NameMiss.Empty, null);
        if (text.Length > Longest)
            return new NameMatch(table, name, NameMiss.TooLong, null);
        if (table.TryGetExact(name, out Ingredient? known))
            return new NameMatch(table, name, NameMiss.None, null) { Ingredient = known };
        NameBook book = table.Names;
        Span<NameToken> tokens = stackalloc NameToken[NameWords.MostTokens];
        int count = book.Words.Read(text, tokens);
        if (count < 0)
            return new NameMatch(table, name, NameMiss.TooLong, null);
        tokens = tokens[..count];
        Span<NameUse> uses = stackalloc NameUse[NameReader.UsesNeeded];
        NameReading reading = new NameReader(book, text, tokens, uses).Read();
        if (reading.Target is int target)
            return Found(table, name, text, tokens, uses, reading, book.Food(target));
        if (reading.Miss is NameMiss.TwoNames)
            return new NameMatch(table, name, reading.Miss, null) { Between = Array.ConvertAll(reading.Between!, book.Food) };
        if (reading.Miss is NameMiss.Unclear)
        {
            UnclearName unclear = UnclearName.All[reading.Unclear];
            return new NameMatch(table, name, reading.Miss, unclear.Reason) { Between = Array.ConvertAll(book.FoodsOf(reading.Unclear),
                book.Food) };
        }
        if (count > 0 && tokens[0].Kind is NameTokenKind.Word
            && UnitWords.TryGet(text.Slice(tokens[0].Start, tokens[0].Length), out _, out _))
            return new NameMatch(table, name, NameMiss.Measure, text.Slice(tokens[0].Start, tokens[0].Length).ToString());
        return new NameMatch(table, name, count == 0 ? NameMiss.Empty : reading.Miss,
            reading.From < 0 ? null : text[tokens[reading.From].Start..tokens[reading.To].End].ToString());
    }

    private static NameMatch Found(IngredientTable table, string name, ReadOnlySpan<char> text, ReadOnlySpan<NameToken> tokens,
        ReadOnlySpan<NameUse> uses,
        NameReading reading, Ingredient food)
    {
        if (reading.Dropped == 0)
            return new NameMatch(table, name, NameMiss.None, null) { Ingredient = food, Packing = reading.Packing };
        List<string>? ignored = null, preparation = null;
        for (int u = 0; u < uses.Length; u++)
        {
            if ((reading.Dropped >> u & 1) == 0)
                continue;
            NameUse use = uses[u];
            Descriptor row = table.Names.RowFor(use.Use, reading.Target!.Value)!;
            if (row.Meaning is DescriptorMeaning.Packing && (row.Packing == reading.Packing || row.Packing is Packing.Whole))
                continue;
            string words = text[tokens[use.First].Start..tokens[use.First + use.Count - 1].End].ToString();
            if (row.Meaning is DescriptorMeaning.Neutral)
                (ignored ??= []).Add(words);
            else
                (preparation ??= []).Add(words);
        }
        return new NameMatch(table, name, NameMiss.None, null)
        {
            Ingredient = food,
            Packing = reading.Packing,
            Ignored = ignored is null ? [] : ignored,
            Preparation = preparation is null ? [] : preparation,
        };
    }
}
