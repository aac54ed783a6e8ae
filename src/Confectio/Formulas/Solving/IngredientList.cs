using System.Globalization;
using Confectio.Ingredients;
using Confectio.Ingredients.Names;

namespace Confectio.Formulas.Solving;

/// <summary>
/// The list of ingredients of a pack as text, taken apart: the items in their order, each with its food where a table knows it, and the
/// sentences about allergens behind it.
/// </summary>
internal sealed class IngredientList
{
    public const int MostItems = 60, LongestText = 20_000;

    // How a sentence begins that is about traces, or about what is in the food again, and no item.
    private static readonly string[] s_traces =
    [
        "may contain", "may also contain", "can contain", "traces", "made in", "made on", "manufactured in", "manufactured on",
        "produced in", "produced on", "packed in", "packed on", "packaged in", "processed in", "processed on", "handled in", "not suitable for",
        "prepared in",
    ];

    private IngredientList(IReadOnlyList<Item> items, string contains, string mayContain)
    {
        Items = items;
        Contains = contains;
        MayContain = mayContain;
    }

    public IReadOnlyList<Item> Items { get; }

    /// <summary>All words that say what is in it.</summary>
    public string Contains { get; }

    /// <summary>All words that say what may be in it; empty where nothing is said, which is no clearance.</summary>
    public string MayContain { get; }

    /// <summary>Takes a list apart.</summary>
    /// <exception cref="ArgumentException">The text is blank, too long, or has too many items.</exception>
    public static IngredientList Read(string text, IngredientTable table, string name)
    {
        if (string.IsNullOrWhiteSpace(text) || text.Length > LongestText)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{name} has {text.Trim().Length} characters; from 1 to {LongestText} are expected."), name);
        }
        List<string> contains = [], may = [];
        List<Item> items = [];
        bool small = false;
        foreach (string sentence in Pieces(text.Replace('\r', ' ').Replace('\n', ' '), '.'))
        {
            string rest = sentence;
            foreach (string lead in (string[])["ingredients:", "ingredients", "ingredient list:"])
            {
                if (rest.StartsWith(lead, StringComparison.OrdinalIgnoreCase))
                    rest = rest[lead.Length..].TrimStart(' ', ':');
            }
            if (Array.Exists(s_traces, word => rest.StartsWith(word, StringComparison.OrdinalIgnoreCase)))
            {
                may.Add(rest);
                continue;
            }
            contains.Add(rest);
            bool restated = rest.StartsWith("contains", StringComparison.OrdinalIgnoreCase)
                || rest.StartsWith("allergen", StringComparison.OrdinalIgnoreCase)
                || rest.StartsWith("allergy", StringComparison.OrdinalIgnoreCase);
            if (restated && !rest.Contains('%', StringComparison.Ordinal))
                continue;
            // What is after the list begins with words of its own; what a list has is parted by commas.
            foreach (string piece in Pieces(rest, ','))
            {
                string item = piece.TrimStart('*', ' ').TrimEnd('*', ' ');
                if (BelowTwo(ref item))
                    small = true;
                if (item.StartsWith("and ", StringComparison.OrdinalIgnoreCase))
                    item = item[4..];
                if (item.Length == 0)
                    continue;
                if (items.Count == MostItems)
                    throw new ArgumentException($"{name} has more than {MostItems} ingredients; at most {MostItems} are expected.", name);
                items.Add(Read(item, table, small));
            }
        }
        return items.Count > 0 ? new IngredientList(items, string.Join(". ", contains), string.Join(". ", may))
            : throw new ArgumentException($"{name} has no ingredient in it; names parted by commas are expected.", name);
    }

    private static Item Read(string text, IngredientTable table, bool small)
    {
        double? percent = null, half = null;
        string name = text;
        int sign = text.IndexOf('%', StringComparison.Ordinal);
        if (sign > 0)
        {
            int start = sign;
            while (start > 0 && (char.IsAsciiDigit(text[start - 1]) || text[start - 1] is '.' or ',' or ' '))
                start--;
            if (PanelFigure.TryNumber(text.AsSpan(start, sign - start), inThousands: false, out double value, out double digit, out _)
                && value <= 100 && Depth(text, start) <= 1 && !Inner(text, start))
            {
                (percent, half) = (value, digit / 2);
                name = text.Remove(start, sign + 1 - start).Replace("( )", "", StringComparison.Ordinal)
                    .Replace("()", "", StringComparison.Ordinal).Trim();
            }
        }
        NameMatch match = table.MatchName(Short(name));
        if (match.Ingredient is null && name.IndexOf('(', StringComparison.Ordinal) is > 0 and int bracket)
            match = table.MatchName(Short(name[..bracket]));
        return new Item(name.Trim(), match.Ingredient, percent, half ?? 0, small);
    }

    private static string Short(string name) => name.Length <= 200 ? name.Trim() : name[..200];

    // A percentage in a bracket is the item's only where nothing but it stands there: biscuit (wheat flour 40 %, butter) is not 40 %.
    private static bool Inner(string text, int start)
    {
        int open = text.LastIndexOf('(', start);
        int close = text.IndexOf(')', start);
        return open >= 0 && Depth(text, start) == 1
            && (close < 0 || text[(open + 1)..close].Any(char.IsLetter));
    }

    private static int Depth(string text, int place)
    {
        int depth = 0;
        for (int i = 0; i < place; i++)
            depth += text[i] is '(' or '[' ? 1 : text[i] is ')' or ']' ? -1 : 0;
        return depth;
    }

    // "contains 2 % or less of" and "less than 2 % of": what follows is at most that, in any order (21 CFR 101.4(a)(2)).
    private static bool BelowTwo(ref string item)
    {
        int sign = item.IndexOf('%', StringComparison.Ordinal);
        if (sign < 0 || !item.Contains("less", StringComparison.OrdinalIgnoreCase))
            return false;
        int of = item.IndexOf("of", sign, StringComparison.OrdinalIgnoreCase);
        int end = of >= 0 ? of + 2 : sign + 1;
        if (!item[..end].Contains("less", StringComparison.OrdinalIgnoreCase))
            return false;
        item = item[end..].Trim(' ', ':');
        return true;
    }

    // Parts at a mark outside brackets; a mark between digits belongs to the number.
    private static IEnumerable<string> Pieces(string text, char mark)
    {
        int depth = 0, start = 0;
        for (int i = 0; i <= text.Length; i++)
        {
            char c = i < text.Length ? text[i] : mark;
            depth = c is '(' or '[' ? depth + 1 : c is ')' or ']' ? Math.Max(0, depth - 1) : depth;
            bool isMark = c == mark || mark == ',' && c == ';';
            bool inNumber = i > 0 && i + 1 < text.Length && char.IsAsciiDigit(text[i - 1]) && char.IsAsciiDigit(text[i + 1]);
            if (i < text.Length && (!isMark || depth > 0 || inNumber))
                continue;
            string piece = text[start..i].Trim();
            start = i + 1;
            if (piece.Length > 0)
                yield return piece;
        }
    }

    /// <summary>One item of the list.</summary>
    internal sealed class Item(string name, Ingredient? ingredient, double? percent, double halfUnit, bool isSmall)
    {
        public string Name { get; } = name;

        /// <summary>The food of the table; null where the table knows none by this name.</summary>
        public Ingredient? Ingredient { get; } = ingredient;

        /// <summary>The percentage that the list gives (Article 22), where it does.</summary>
        public double? Percent { get; } = percent;

        public double HalfUnit { get; } = halfUnit;

        /// <summary>Whether the list says that it is 2 % or less.</summary>
        public bool IsSmall { get; } = isSmall;
    }
}
