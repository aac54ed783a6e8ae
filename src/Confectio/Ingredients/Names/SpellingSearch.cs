using System.Numerics;
using Confectio.Text;

namespace Confectio.Ingredients.Names;

/// <summary>Looks for the words that the unknown words of a name may be slips of. The rest of the name must be read as it stands.</summary>
internal static class SpellingSearch
{
    /// <summary>With more unknown words than this a name is another name.</summary>
    private const int MostUnknown = 2;

    private const int MostCandidates = 5;

    public static IReadOnlyList<NameSuggestion> Of(string name, NameBook book)
    {
        ReadOnlySpan<char> text = name.AsSpan().Trim();
        Span<NameToken> tokens = stackalloc NameToken[NameWords.MostTokens];
        int count = text.Length > NameMatcher.Longest ? -1 : book.Words.Read(text, tokens);
        List<NameToken> unknown = [];
        foreach (NameToken token in tokens[..Math.Max(count, 0)])
        {
            // A word alone that is only part of other names may be a slip too: flower.
            if (token.Kind is NameTokenKind.Word && (token.Id == 0 || count == 1))
                unknown.Add(token);
        }
        if (unknown.Count is 0 or > MostUnknown)
            return [];
        List<(string Text, int Distance)> mended = [(text.ToString(), 0)];
        // From behind, so that places before stay where they are.
        for (int i = unknown.Count - 1; i >= 0; i--)
        {
            NameToken token = unknown[i];
            List<(string Word, int Distance)> candidates = Candidates(text.Slice(token.Start, token.Length), book.Words);
            mended = [.. mended.SelectMany(one => candidates.Select(word =>
                (string.Concat(one.Text.AsSpan(0, token.Start), word.Word, one.Text.AsSpan(token.End)), one.Distance + word.Distance)))];
        }
        Span<NameUse> uses = stackalloc NameUse[NameReader.UsesNeeded];
        Dictionary<Ingredient, NameSuggestion> best = [];
        foreach ((string one, int distance) in mended.OrderBy(one => one.Distance).ThenBy(one => one.Text, StringComparer.Ordinal))
        {
            int words = book.Words.Read(one, tokens);
            if (words > 0 && new NameReader(book, one, tokens[..words], uses).Read().Target is int target)
                best.TryAdd(book.Food(target), new NameSuggestion(book.Food(target), one, distance));
        }
        return [.. best.Values.OrderBy(one => one.Distance)];
    }

    private static List<(string Word, int Distance)> Candidates(ReadOnlySpan<char> written, NameWords words)
    {
        Span<char> folded = stackalloc char[EditDistance.Longest];
        int length = 0;
        foreach (char c in written)
        {
            if (WordFold.Of(c, out _) is char f and not '\0' && length < folded.Length)
                folded[length++] = f;
        }
        ReadOnlySpan<char> word = folded[..WordFold.Singular(folded[..length])];
        int allowed = word.Length < 4 ? 0 : word.Length < 6 ? 1 : 2;
        List<(string Word, int Distance)> found = [];
        uint letters = NameWords.LettersOf(word);
        for (int i = 0; i < words.All.Count && allowed > 0; i++)
        {
            string known = words.All[i];
            uint others = words.Letters[i];
            // Most words have more letters of their own than the slips that are allowed could change.
            if (known.Length < 3 || Math.Abs(known.Length - word.Length) > allowed
                || BitOperations.PopCount(letters & ~others) > allowed || BitOperations.PopCount(others & ~letters) > allowed)
                continue;
            int distance = EditDistance.Of(word, known);
            if (distance > 0 && distance <= allowed)
                found.Add((known, distance));
        }
        return [.. found.OrderBy(one => one.Distance).ThenBy(one => one.Word, StringComparer.Ordinal).Take(MostCandidates)];
    }
}
