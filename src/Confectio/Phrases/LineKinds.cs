namespace Confectio.Phrases;

/// <summary>Tells what a line is before it is read, by what it begins and ends with.</summary>
internal static class LineKinds
{
    /// <summary>Behind bullets, check boxes and the number of a list.</summary>
    public static int AfterBullet(ReadOnlySpan<char> text)
    {
        int at = 0;
        while (at < text.Length)
        {
            if (char.IsWhiteSpace(text[at]) || text[at] is '\uFEFF' or '\u200B' or '\uFE0F' or '>')
                at++;
            else if (text[at] is '•' or '‣' or '▪' or '▫' or '■' or '□' or '☐' or '☑' or '☒' or '✓' or '✔' or '▢' or '◦' or '●' or '○'
                or '·' or '⬜' or '❏' or '◻')
                at++;
            else if (text[at] is '*' or '-' or '–' or '—' or '+'
                && (at + 1 == text.Length || char.IsWhiteSpace(text[at + 1]) || (text[at] == '*' && text[at + 1] != '*')))
                at++;
            else if (text[at] == '[' && at + 2 < text.Length && text[at + 1] is ' ' or 'x' or 'X' && text[at + 2] == ']')
                at += 3;
            else
                break;
        }
        // "1. Melt", "2) 200 g flour", but not "1.5 dl".
        int digits = at;
        while (digits < text.Length && digits - at < 2 && char.IsAsciiDigit(text[digits]))
            digits++;
        if (digits > at && digits + 1 < text.Length && text[digits] is '.' or ')' && char.IsWhiteSpace(text[digits + 1]))
        {
            at = digits + 1;
            while (at < text.Length && char.IsWhiteSpace(text[at]))
                at++;
        }
        return at;
    }

    /// <summary>What a line is by its words alone; <see langword="null"/> where the amount and the name have to say it.</summary>
    /// <param name="line">The line without bullet and space at its ends.</param>
    /// <param name="hasAmount">Whether an amount stands at its beginning.</param>
    public static PhraseKind? Of(ReadOnlySpan<char> line, bool hasAmount)
    {
        if (line.IsEmpty || !HasLetter(line))
            return PhraseKind.Note;
        if (line[0] == '#' || (line.Length > 4 && line.StartsWith("**", StringComparison.Ordinal)
            && line.EndsWith("**", StringComparison.Ordinal)))
            return PhraseKind.Heading;
        if (hasAmount)
            return null;
        // "[Equipment: a tray]"
        if (line.Length > 2 && line[0] is '(' or '[')
            line = line[1..].TrimStart();
        Span<char> lower = stackalloc char[24];
        ReadOnlySpan<char> first = Word(line, 0, lower, out int end);
        Span<char> lowerSecond = stackalloc char[24];
        ReadOnlySpan<char> second = Word(line, end, lowerSecond, out _);
        if (IsNote(first, second, end < line.Length ? line[end] : ' '))
            return PhraseKind.Note;
        if (line[^1] == ':')
            return PhraseKind.Heading;
        if (IsHeading(first, second, line.Length <= end + 1))
            return PhraseKind.Heading;
        if (IsVerb(first) || (IsNounToo(first) && IsArticle(second)) || (IsOpening(first) && line.Length > end + 12))
            return PhraseKind.Instruction;
        return null;
    }

    /// <summary>What a line without an amount is whose name nobody knows.</summary>
    public static PhraseKind OfUnknown(ReadOnlySpan<char> line)
    {
        if (line[^1] is '.' or '!' or '?')
            return PhraseKind.Note;
        int words = 0, capitals = 0, small = 0;
        for (int i = 0; i < line.Length; i++)
        {
            if (!char.IsLetter(line[i]))
                continue;
            int from = i;
            while (i < line.Length && (char.IsLetterOrDigit(line[i]) || line[i] is '\'' or '’' or '-'))
                i++;
            words++;
            capitals += char.IsUpper(line[from]) ? 1 : 0;
            small += !char.IsUpper(line[from]) && i - from <= 3 ? 1 : 0;
        }
        // A title has capitals, but for the, and, of.
        return words is 0 or > 7 ? PhraseKind.Note : words > 1 && capitals > 1 && capitals + small == words ? PhraseKind.Heading
            : PhraseKind.Ingredient;
    }

    /// <summary>Whether what follows a heading is something to do.</summary>
    public static bool OpensMethod(ReadOnlySpan<char> heading) => heading.StartsWith("what to do", StringComparison.OrdinalIgnoreCase)
        || FirstOf(heading) is "how" or "method" or "instructions" or "directions" or "procedure" or "steps" or "step"
        or "notes" or "note";

    /// <summary>Whether what follows a heading is ingredients: it says so, or for what they are.</summary>
    public static bool OpensIngredients(ReadOnlySpan<char> heading) => heading.StartsWith("what you", StringComparison.OrdinalIgnoreCase)
        || heading.StartsWith("you will need", StringComparison.OrdinalIgnoreCase)
            || heading.StartsWith("you'll need", StringComparison.OrdinalIgnoreCase) || FirstOf(heading) is "ingredients" or "for";

    private static string FirstOf(ReadOnlySpan<char> heading)
    {
        heading = heading.TrimStart("#* ");
        int end = 0;
        while (end < heading.Length && char.IsLetter(heading[end]))
            end++;
        return end == 0 ? "" : WordPool.Lower(heading[..end]);
    }

    private static bool HasLetter(ReadOnlySpan<char> line)
    {
        foreach (char c in line)
        {
            if (char.IsLetterOrDigit(c) || Measures.AmountWriter.TryVulgar(c, out _))
                return true;
        }
        return false;
    }

    private static ReadOnlySpan<char> Word(ReadOnlySpan<char> line, int from, Span<char> lower, out int end)
    {
        while (from < line.Length && line[from] == ' ')
            from++;
        end = from;
        while (end < line.Length && char.IsLetter(line[end]))
            end++;
        int length = Math.Min(end - from, lower.Length);
        for (int i = 0; i < length; i++)
            lower[i] = char.ToLowerInvariant(line[from + i]);
        return lower[..length];
    }

    private static bool IsNote(ReadOnlySpan<char> first, ReadOnlySpan<char> second, char after) => first switch
    {
        "serves" or "makes" or "yield" or "yields" or "servings" or "serving" or "prep" or "preparation" or "total" or "author"
            or "print" or "source" or "keeps" or "tip"
            or "recipe" or "www" or "http" or "https" or "rate" or "jump" or "share" or "course" or "cuisine" or "calories" or "batch" =>
                true,
        "cook" or "cooking" or "bake" or "baking" or "chill" or "rest" => second is "time",
        "toppings" or "equipment" or "note" => after == ':',
        _ => false,
    };

    private static bool IsHeading(ReadOnlySpan<char> first, ReadOnlySpan<char> second, bool alone) => first switch
    {
        "ingredients" or "instructions" or "directions" or "method" or "notes" or "procedure" or "steps" or "step" => true,
        "what" => second is "you" or "to" or "i",
        "how" => second is "to" or "you" or "i",
        "for" => second is "the" or "a" or "an" or "each" or "serving" or "dusting" or "decorating" or "decoration",
        "to" => second is "decorate" or "finish" or "serve" or "assemble" or "garnish" or "glaze",
        _ => alone && (first is "crumb" || IsPart(first)),
    };

    /// <summary>Whether a line ends with what a part of a recipe may be called, though it may be a food as well: caramel sauce, marzipan.</summary>
    public static bool EndsAsPart(ReadOnlySpan<char> line)
    {
        ReadOnlySpan<char> word = line[(line.LastIndexOf(' ') + 1)..];
        string last = word.IsEmpty ? "" : WordPool.Lower(word);
        return IsPart(last) || last is "curd" or "cream" or "jam" or "praline" or "marzipan" or "fondant" or "crumble" or "streusel"
            or "mousse" or "jelly" or "compote" or "purée" or "puree" or "paste" or "biscuit" or "biscuits" or "toffee" or "nougat";
    }

    // Words in lower case.
    private static bool IsPart(ReadOnlySpan<char> word) => word is "icing" or "frosting" or "filling" or "topping" or "crust" or "base"
        or "pastry" or "glaze" or "sauce" or "syrup" or "cake" or "sponge" or "dough" or "batter" or "ganache" or "meringue" or "decoration"
        or "custard" or "caramel" or "buttercream";

    private static bool IsArticle(ReadOnlySpan<char> word) =>
        word is "the" or "a" or "an" or "two" or "your" or "together" or "both" or "each" or "in" or "with" or "over"
        or "into" or "all" or "up" or "until" or "it" or "them";

    /// <summary>Verbs that are foods or packings as well.</summary>
    private static bool IsNounToo(ReadOnlySpan<char> word) =>
        word is "butter" or "cream" or "flour" or "dust" or "zest" or "oil" or "sugar" or "ice" or "juice" or "top"
        or "salt" or "grate" or "drizzle" or "dip" or "coat" or "fill" or "cover" or "press" or "test" or "time" or "water";

    /// <summary>Words that open a sentence and no ingredient.</summary>
    private static bool IsOpening(ReadOnlySpan<char> word) =>
        word is "in" or "when" or "while" or "once" or "meanwhile" or "then" or "gently" or "slowly" or "carefully"
        or "using" or "as" or "after" or "before" or "if" or "with" or "on" or "off" or "do" or "next" or "finally" or "quickly"
            or "just" or "immediately" or "lightly"
        or "be" or "now" or "first" or "until" or "at" or "by" or "it" or "this" or "these" or "they" or "you" or "ok";

    private static bool IsVerb(ReadOnlySpan<char> word) => word switch
    {
        "preheat" or "heat" or "mix" or "stir" or "beat" or "whisk" or "fold" or "pour" or "bake" or "cool" or "sift" or "add"
            or "combine" or "line" or "grease"
            or "melt" or "bring" or "boil" or "cook" or "spread" or "roll" or "cut" or "place" or "put" or "remove" or "chill"
                or "leave" or "serve" or "knead"
            or "rub" or "divide" or "transfer" or "whip" or "simmer" or "strain" or "scrape" or "pipe" or "let" or "set" or "turn"
                or "break" or "crack"
            or "allow" or "make" or "take" or "use" or "repeat" or "store" or "keep" or "freeze" or "refrigerate" or "sprinkle"
                or "brush" or "dissolve" or "soak"
            or "drain" or "toast" or "chop" or "slice" or "arrange" or "assemble" or "decorate" or "frost" or "blend" or "process"
                or "pulse" or "warm" or "reduce"
            or "temper" or "swirl" or "wrap" or "prepare" or "position" or "lower" or "stop" or "continue" or "return" or "shape" or "form"
            or "scoop" or "drop" or "tip" or "lay" or "rest" or "prove" or "punch" or "separate" or "wash" or "peel" or "weigh"
                or "measure" or "check" or "invert"
            or "unmould" or "unmold" or "trim" or "finish" or "garnish" or "stand" or "steep" or "infuse" or "crumble" or "crush"
                or "grind" or "blitz" or "beware" => true,
        _ => false,
    };
}
