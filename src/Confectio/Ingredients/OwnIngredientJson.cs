using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>
/// A food of one's own within another document: its name, what it is made of in per cent by mass, and what allergens it has. The members are
/// the columns of a table of one's own, written as JSON writes them.
/// </summary>
internal static class OwnIngredientJson
{
    private const double ClosurePercent = 1;

    // A figure from memory has a source of its own in the tables; here nobody says whose memory.
    private static readonly Evidence[] s_kinds = [.. Enum.GetValues<Evidence>().Where(kind => kind != Evidence.FromMemory)];

    private static readonly string[] s_members = [.. EnumWords.All<Constituent>(' ').Select(Member)];

    public static Ingredient? Read(JsonFields fields)
    {
        string? name = fields.NeededText("name"), id = fields.Text("id");
        Evidence kind = fields.Word("kind", Evidence.Estimated, s_kinds);
        string source = fields.Text("source") ?? "", note = fields.Text("note") ?? "";
        double[] fractions = new double[Constituents.Count];
        double sum = 0;
        for (int i = 0; i < fractions.Length; i++)
        {
            double percent = Percent(fields, s_members[i]) ?? 0;
            fractions[i] = percent / 100;
            sum += percent;
        }
        double? milkFat = Percent(fields, "milkFatPercent");
        List<Allergen> allergens = Allergens(fields, "allergens"), often = Allergens(fields, "oftenContains");
        if (name is not null && string.IsNullOrWhiteSpace(name))
            fields.Wrong("name", "a food needs a name");
        string key = id ?? (name is null ? "" : NameKey.SlugOf(name));
        if (name is not null && !IngredientReader.IsId(key))
            fields.Wrong(id is null ? "name" : "id", $"{Excerpt.Of(id ?? name)} makes no id; a letter or digit from a to z, or an id of such and hyphens, at most 80, is expected");
        if (!fields.IsGood)
            return null;
        if (Math.Abs(sum - 100) > ClosurePercent)
            fields.Wrong(null, string.Create(CultureInfo.InvariantCulture, $"the constituents add up to {sum:0.##} %; 99 to 101 % is expected, and what is "
                + $"left over stands in otherPercent"));
        double fat = 100 * fractions[Constituents.PlaceOf(Constituent.Fat)];
        if (milkFat > fat)
            fields.Wrong("milkFatPercent", string.Create(CultureInfo.InvariantCulture, $"milkFatPercent was {milkFat}; at most the fat, {fat:0.######} %, is expected"));
        if (milkFat is null && fat > 0 && allergens.Contains(Allergen.Milk))
            fields.Missing("milkFatPercent", "of a food with milk and fat: 0 where none of the fat is of milk");
        if (often.Find(allergens.Contains) is Allergen both && often.Exists(allergens.Contains))
            fields.Wrong("oftenContains", $"{AllergenWord.Of(both)} stands in allergens already; what it always has stands there only");
        if (!fields.IsGood)
            return null;
        string shown = name!.Trim();
        Provenance provenance = new(new Source("own", "Own figures", $"Figures of the owner for {shown}{(source.Length > 0 ? ": " + source : "")}.", "", "the owner's own", ""),
            kind, source, note);
        return new Ingredient(new IngredientNames(key, shown, [], IngredientClass.Paste), new IngredientRecord
        {
            DefaultPacking = Packing.Levelled, StandardReferenceNumber = null, Composition = new Composition(fractions, (milkFat ?? 0) / 100),
            DextroseEquivalent = null, CompositionProvenance = provenance, SugarsProvenance = provenance, Allergens = allergens, OftenContains = often,
            AllergensAreStated = fields.Has("allergens"), Note = note,
        }, []);
    }

    private static double? Percent(JsonFields fields, string member)
    {
        if (fields.Number(member) is not double percent)
            return null;
        if (percent is >= 0 and <= 100)
            return percent;
        fields.Wrong(member, string.Create(CultureInfo.InvariantCulture, $"{member} was {percent}; from 0 to 100 is expected"));
        return null;
    }

    private static List<Allergen> Allergens(JsonFields fields, string member)
    {
        List<Allergen> all = [];
        foreach ((string text, JsonFields at) in fields.Texts(member, 100))
        {
            if (AllergenWord.TryRead(text, out _, out IReadOnlyList<Allergen>? allergens))
                all.AddRange(allergens.Where(allergen => !all.Contains(allergen)));
            else
                at.Wrong(null, $"{Excerpt.Of(text)} is no allergen; one of these is expected: {AllergenWord.All}", ProblemCodes.UnknownName);
        }
        all.Sort();
        return all;
    }

    // other sugars: otherSugarsPercent
    private static string Member(string words)
    {
        string[] parts = words.Split(' ');
        return parts[0] + string.Concat(parts[1..].Select(word => char.ToUpperInvariant(word[0]) + word[1..])) + "Percent";
    }
}
