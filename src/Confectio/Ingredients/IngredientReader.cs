using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>Reads the table of ingredients; every problem is kept with its line and column, and the good rows are returned.</summary>
internal static class IngredientReader
{
    // The column of each constituent, such as other_sugars_percent.
    private static readonly string[] s_constituents =
        Constituents.ByPlace(constituent => Constituents.WordOf(constituent).Replace('-', '_') + "_percent");

    /// <summary>Part of the fat, so no constituent: it takes no part in the closure.</summary>
    private const string MilkFat = "milk_fat_percent";

    /// <summary>Describes the dry solids, so no constituent either.</summary>
    private const string DextroseEquivalent = "dextrose_equivalent";

    private static readonly string[] s_percents = [.. s_constituents, MilkFat];

    private static readonly string[] s_required = ["id", "name", "class", "default_packing", "source", "kind"];

    /// <summary>How far a composition may be from 100 %: food tables themselves are up to half a per cent off.</summary>
    private const double ClosurePercent = 1;

    public static IReadOnlyList<IngredientRecord> Read(TextReader text, ProblemList problems)
    {
        List<IngredientRecord> records = [];
        Dictionary<string, int> ids = new(StringComparer.Ordinal);
        Dictionary<string, int> names = new(StringComparer.Ordinal);
        DelimitedTable.Read(text, problems, table =>
        {
            if (!TableColumns.Check(table, s_required, s_percents, problems))
                return null;
            return row =>
            {
                RowFields fields = new(table, row, problems);
                IngredientRecord? record = ReadRow(fields);
                if (record is null)
                    return;
                if (!ids.TryAdd(record.Id, row.Line))
                {
                    fields.Problem("id", string.Create(CultureInfo.InvariantCulture,
                        $"the id {Excerpt.Of(record.Id)} stands already on line {ids[record.Id]}"));
                    return;
                }
                foreach (string name in record.Aliases.Select(alias => alias.Text).Prepend(record.Name))
                {
                    if (!names.TryAdd(NameKey.Of(name), row.Line) && names[NameKey.Of(name)] != row.Line)
                        fields.Problem("name", string.Create(CultureInfo.InvariantCulture,
                            $"the name {Excerpt.Of(name)} belongs already to line {names[NameKey.Of(name)]}"));
                }
                records.Add(record);
            };
        });
        return records;
    }

    private static IngredientRecord? ReadRow(RowFields fields)
    {
        long before = fields.ProblemCount;
        string id = fields.Required("id");
        if (id.Length > 0 && !IsId(id))
            fields.Problem("id", $"{Excerpt.Of(id)} is not an id; lower-case letters, digits and hyphens are expected");
        string name = fields.Required("name");
        if (!Enum.TryParse(fields.Word("class"), ignoreCase: true, out IngredientClass @class)
            || !fields.Word("class").All(char.IsAsciiLetter))
            fields.Problem("class",
                $"{Excerpt.Of(fields.Word("class"))} is not a class; expected one of: "
                + string.Join(", ", Enum.GetNames<IngredientClass>()).ToLowerInvariant());
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

        List<Allergen> allergens = Allergens(fields, "allergens"), often = Allergens(fields, "often_contains");
        if (often.Exists(allergens.Contains))
            fields.Problem("often_contains",
                $"{Excerpt.Of(fields.Word("often_contains"))} repeats an allergen of the column allergens; "
                + "what it always has stands there only");
        Provenance provenance = fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"));
        bool ownSugars = fields.Word("sugars_source").Length > 0;
        Provenance sugars = ownSugars ? fields.Provenance("sugars_source", "sugars_kind", "", "") : provenance;
        Dictionary<Constituent, Evidence> guessed = Guessed(fields);
        if (fields.ProblemCount > before)
            return null;

        return new IngredientRecord
        {
            Id = id,
            Name = name,
            Aliases = [.. Aliases(fields.Word("us_names"), NameRegion.UnitedStates),
                .. Aliases(fields.Word("uk_names"), NameRegion.UnitedKingdom),
                .. Aliases(fields.Word("au_names"), NameRegion.Australia),
                .. Aliases(fields.Word("ie_names"), NameRegion.Ireland),
                .. Aliases(fields.Word("za_names"), NameRegion.SouthAfrica),
                .. Aliases(fields.Word("ca_names"), NameRegion.Canada),
                .. Aliases(fields.Word("other_names"), NameRegion.Everywhere)],
            Class = @class,
            DefaultPacking = packing,
            StandardReferenceNumber = fields.Word("ndb") is { Length: > 0 } number ? number : null,
            Composition = new Composition(fractions, milkFat),
            DextroseEquivalent = dextroseEquivalent,
            CompositionProvenance = provenance,
            SugarsProvenance = sugars,
            Allergens = allergens,
            OftenContains = often,
            Guessed = guessed,
            Note = fields.Word("note"),
        };
    }

    /// <summary>Words such as <c>starch:estimated</c>; <c>milk_fat</c> is no constituent, and told by the note.</summary>
    private static Dictionary<Constituent, Evidence> Guessed(RowFields fields)
    {
        Dictionary<Constituent, Evidence> guessed = [];
        foreach (string word in Split(fields.Word("guessed")))
        {
            int colon = word.IndexOf(':');
            int place = colon < 0 ? -1 : Array.IndexOf(s_constituents, word[..colon] + "_percent");
            if (colon < 0 || place < 0 && word[..colon] + "_percent" != MilkFat
                || !EvidenceText.TryRead(word.AsSpan(colon + 1), out Evidence evidence))
                fields.Problem("guessed", $"{Excerpt.Of(word)} is not a constituent with a kind of evidence, such as starch:estimated");
            else if (place >= 0)
                guessed[Constituents.At(place)] = evidence;
        }
        return guessed;
    }

    private static List<Allergen> Allergens(RowFields fields, string column)
    {
        List<Allergen> allergens = [];
        foreach (string word in Split(fields.Word(column)))
        {
            if (AllergenText.TryRead(word, out Allergen allergen))
                allergens.Add(allergen);
            else
                fields.Problem(column, $"{Excerpt.Of(word)} is not an allergen");
        }
        return allergens;
    }

    private static IEnumerable<IngredientName> Aliases(string names, NameRegion region) =>
        Split(names).Select(name => new IngredientName(name, region));

    private static string[] Split(string words) => words.Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    internal static bool IsId(string id) => id.Length is > 0 and <= 80 && id.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-');
}
