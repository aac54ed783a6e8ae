using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>Reads the table of ingredients; every problem is kept with its line and column, and the good rows are returned.</summary>
internal static class IngredientReader
{
    // The column of each constituent, such as other_sugars_percent.
    private static readonly string[] s_constituents =
        Array.ConvertAll(EnumWords.All<Constituent>('_'), word => word + "_percent");

    /// <summary>Part of the fat, so no constituent: it takes no part in the closure.</summary>
    private const string MilkFat = "milk_fat_percent";

    /// <summary>Describes the dry solids, so no constituent either.</summary>
    private const string DextroseEquivalent = "dextrose_equivalent";

    private static readonly string[] s_percents = [.. s_constituents, MilkFat];

    private static readonly string[] s_required = ["id", "name", "class", "default_packing", "source", "kind"];

    /// <summary>How far a composition may be from 100 %: food tables themselves are up to half a per cent off.</summary>
    private const double ClosurePercent = 1;

    private static readonly (string Column, NameRegion Region)[] s_aliases =
    [
        ("us_names", NameRegion.UnitedStates), ("uk_names", NameRegion.UnitedKingdom), ("au_names", NameRegion.Australia),
        ("ie_names", NameRegion.Ireland), ("za_names", NameRegion.SouthAfrica), ("ca_names", NameRegion.Canada),
        ("other_names", NameRegion.Everywhere),
    ];

    // By the number of the class.
    private static readonly string[] s_classes = EnumWords.All<IngredientClass>('-');

    public static IReadOnlyList<(IngredientNames Names, IngredientRecord Record)> Read(TextReader text, ProblemList problems)
    {
        List<(IngredientNames, IngredientRecord)> records = [];
        Dictionary<string, int> ids = new(StringComparer.Ordinal);
        Dictionary<string, int> names = new(StringComparer.Ordinal);
        DelimitedTable.Read(text, problems, table =>
        {
            if (!TableColumns.Check(table, s_required, s_percents, problems))
                return null;
            return row =>
            {
                RowFields fields = new(table, row, problems);
                long before = fields.ProblemCount;
                IngredientNames its = ReadNames(fields);
                IngredientRecord? record = ReadRecord(fields, before);
                if (record is null)
                    return;
                if (!ids.TryAdd(its.Id, row.Line))
                {
                    fields.Problem("id", string.Create(CultureInfo.InvariantCulture,
                        $"the id {Excerpt.Of(its.Id)} stands already on line {ids[its.Id]}"));
                    return;
                }
                foreach (string name in its.Aliases.Select(alias => alias.Text).Prepend(its.Name))
                {
                    if (!names.TryAdd(NameKey.Of(name), row.Line) && names[NameKey.Of(name)] != row.Line)
                        fields.Problem("name", string.Create(CultureInfo.InvariantCulture,
                            $"the name {Excerpt.Of(name)} belongs already to line {names[NameKey.Of(name)]}"));
                }
                records.Add((its, record));
            };
        });
        return records;
    }

    /// <summary>What a row is found by; what is wrong with it is noted.</summary>
    public static IngredientNames ReadNames(RowFields fields)
    {
        string id = fields.Required("id");
        if (id.Length > 0 && !IsId(id))
            fields.Problem("id", $"{Excerpt.Of(id)} is not an id; lower-case letters, digits and hyphens are expected");
        string name = fields.Required("name");
        int @class = PlaceOf(fields.Field("class"), s_classes);
        if (@class < 0)
            fields.Problem("class", $"{Excerpt.Of(fields.Word("class"))} is not a class; expected one of: {string.Join(", ", s_classes)}");
        List<IngredientName> aliases = [];
        foreach ((string column, NameRegion region) in s_aliases)
        {
            foreach (string alias in Split(fields.Word(column)))
                aliases.Add(new IngredientName(alias, region));
        }
        return new IngredientNames(id, name, aliases.ToArray(), (IngredientClass)Math.Max(@class, 0));
    }

    /// <summary>The rest of a row, or <see langword="null"/> where there were problems since a count of them.</summary>
    public static IngredientRecord? ReadRecord(RowFields fields, long before)
    {
        if (!PackingText.TryRead(fields.Word("default_packing"), out Packing packing))
            fields.Problem("default_packing", $"{Excerpt.Of(fields.Word("default_packing"))} is not a packing");

        double[] fractions = new double[Constituents.Count];
        double sum = 0;
        for (int i = 0; i < fractions.Length; i++)
        {
            // A blank is a constituent that the ingredient does not have.
            double percent = fields.Number(s_constituents[i], 0, 100) ?? 0;
            fractions[i] = percent / 100;
            sum += percent;
        }
        double milkFat = (fields.Number(MilkFat, 0, 100) ?? 0) / 100, fat = fractions[Constituents.PlaceOf(Constituent.Fat)];
        bool good = fields.ProblemCount == before; // a number that was not read would look like none
        if (good && Math.Abs(sum - 100) > ClosurePercent)
            fields.Problem("water_percent", string.Create(CultureInfo.InvariantCulture,
                $"the constituents add up to {sum:0.##} %; 99 to 101 % is expected"));
        if (good && milkFat > fat)
            fields.Problem(MilkFat, string.Create(CultureInfo.InvariantCulture,
                $"the milk fat, {milkFat * 100:0.######} %, is more than the fat, {fat * 100:0.######} %"));
        double? dextroseEquivalent = fields.Number(DextroseEquivalent, 0, 100);
        if (dextroseEquivalent == 0) // its solids would have no reducing end: blank is what was meant, or the digits are lost
            fields.Problem(DextroseEquivalent,
                $"{Excerpt.Of(fields.Word(DextroseEquivalent))} is not above 0; leave it blank where it is not known");

        Allergen[] allergens = Allergens(fields, "allergens"), often = Allergens(fields, "often_contains");
        if (Array.Exists(often, allergen => Array.IndexOf(allergens, allergen) >= 0))
            fields.Problem("often_contains",
                $"{Excerpt.Of(fields.Word("often_contains"))} repeats an allergen of the column allergens; "
                + "what it always has stands there only");
        Provenance provenance = fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"));
        bool ownSugars = fields.Word("sugars_source").Length > 0;
        Provenance sugars = ownSugars ? fields.Provenance("sugars_source", "sugars_kind", "", "") : provenance;
        Evidence?[]? guessed = Guessed(fields);
        if (fields.ProblemCount > before)
            return null;

        return new IngredientRecord
        {
            DefaultPacking = packing,
            StandardReferenceNumber = fields.Word("ndb") is { Length: > 0 } number ? number : null,
            Composition = new Composition(fractions, milkFat),
            DextroseEquivalent = dextroseEquivalent,
            CompositionProvenance = provenance,
            SugarsProvenance = sugars,
            Allergens = allergens,
            OftenContains = often,
            AllergensAreStated = allergens.Length + often.Length > 0 || fields.HasColumn("allergens"),
            Guessed = guessed,
            Note = fields.Word("note"),
        };
    }

    /// <summary>Words such as <c>starch:estimated</c>; <c>milk_fat</c> is no constituent, and told by the note.</summary>
    private static Evidence?[]? Guessed(RowFields fields)
    {
        Evidence?[]? guessed = null;
        foreach (string word in Split(fields.Word("guessed")))
        {
            int colon = word.IndexOf(':');
            int place = colon < 0 ? -1 : Array.IndexOf(s_constituents, word[..colon] + "_percent");
            if (colon < 0 || place < 0 && word[..colon] + "_percent" != MilkFat
                || !EvidenceText.TryRead(word.AsSpan(colon + 1), out Evidence evidence))
                fields.Problem("guessed", $"{Excerpt.Of(word)} is not a constituent with a kind of evidence, such as starch:estimated");
            else if (place >= 0)
                (guessed ??= new Evidence?[Constituents.Count])[place] = evidence;
        }
        return guessed;
    }

    private static Allergen[] Allergens(RowFields fields, string column)
    {
        string[] words = Split(fields.Word(column));
        Allergen[] allergens = new Allergen[words.Length];
        for (int i = 0; i < words.Length; i++)
        {
            if (!AllergenText.TryRead(words[i], out allergens[i]))
                fields.Problem(column, $"{Excerpt.Of(words[i])} is not an allergen");
        }
        return allergens;
    }

    private static int PlaceOf(ReadOnlySpan<char> word, string[] words)
    {
        for (int i = 0; i < words.Length; i++)
        {
            if (word.Equals(words[i], StringComparison.OrdinalIgnoreCase))
                return i;
        }
        return -1;
    }

    private static string[] Split(string words) => words.Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    internal static bool IsId(string id) => id.Length is > 0 and <= 80 && id.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-');
}
