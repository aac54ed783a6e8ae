using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Formulas;

/// <summary>Makes a line of what stands in JSON, and notes what is wrong with it.</summary>
internal static class FormulaLineReader
{
    public static FormulaLine? Read(JsonFields line, IngredientTable ingredients)
    {
        NameMatch? named = NeededName(line, "ingredient", ingredients);
        Ingredient? ingredient = named?.Ingredient;
        double? grams = line.Number("grams");
        Amount? amount = AmountOf(line);
        if (!line.Has("grams") && !line.Has("amount"))
            line.Wrong(null, "grams or amount is expected", ProblemCodes.Missing);
        MeasuringSystem? system = SystemOf(line, amount);
        // The name may say it: "icing sugar, sifted". For a mass without an amount it says nothing.
        Packing? packing = PackingOf(line) ?? (line.Has("packing") ? null : named?.Packing);
        return line.Make(() => amount is not Amount written ? FormulaLine.Of(ingredient!, grams!.Value)
            : grams is double weighed ? FormulaLine.Of(ingredient!, weighed, written, system!, packing)
            : FormulaLine.Of(ingredient!, written, system!, packing),
            e => e.ParamName == "grams" ? "grams" : e.ParamName == "packing" && packing is not null ? "packing" : "amount");
    }

    /// <summary>An ingredient by a name that must be there.</summary>
    public static Ingredient? NeededIngredient(JsonFields fields, string member, IngredientTable ingredients) =>
        NeededName(fields, member, ingredients)?.Ingredient;

    private static NameMatch? NeededName(JsonFields fields, string member, IngredientTable ingredients)
    {
        if (fields.NeededText(member) is not string name)
            return null;
        NameMatch match = ingredients.MatchName(name);
        if (match.Ingredient is not null)
            return match;
        fields.Wrong(member, Unknown(match, "not an ingredient of this table", ingredients, fields.WantsNearNames),
            ProblemCodes.UnknownName);
        return null;
    }

    private static Amount? AmountOf(JsonFields line)
    {
        if (line.Text("amount") is not string text)
            return null;
        AmountReader reader = new(text, AmountReading.DecimalPoint);
        if (reader.TryReadAll(out Amount amount))
            return amount;
        line.Wrong("amount", reader.Refusal);
        return null;
    }

    private static MeasuringSystem? SystemOf(JsonFields line, Amount? amount)
    {
        if (line.Text("system") is not string text)
        {
            if (amount is { IsVolume: true } && !line.Has("system"))
                line.Missing("system", "a volume needs one of: " + Systems());
            // Masses and pieces are the same everywhere but in US labelling, which has to be named.
            return MeasuringSystem.UsCustomary;
        }
        if (!line.Has("amount"))
            line.Wrong("system", "there is no amount for it");
        if (!MeasuringSystem.TryGet(text, out MeasuringSystem? system))
            line.Wrong("system", $"{Excerpt.Of(text)} is not a measuring system; one of these is expected: {Systems()}",
                ProblemCodes.UnknownName);
        return system;
    }

    private static Packing? PackingOf(JsonFields line)
    {
        if (line.Text("packing") is not string text)
            return null;
        if (!line.Has("amount"))
            line.Wrong("packing", "there is no amount for it");
        if (PackingText.TryRead(text, out Packing packing))
            return packing;
        line.Wrong("packing", $"{Excerpt.Of(text)} is not a packing", ProblemCodes.UnknownName);
        return null;
    }

    /// <summary>That a name is not what it should be; why, where it means more foods than one; and what is near it.</summary>
    public static string Unknown(NameMatch match, string what, IngredientTable ingredients, bool wantsNearNames)
    {
        IReadOnlyList<string> near = wantsNearNames ? ingredients.Suggest(match.Text) : [];
        return $"{Excerpt.Of(match.Text)} is {what}" + (match.IsUnclear ? "; " + match.Reason.TrimEnd('.') : "")
            + (near.Count == 0 ? "" : $"; near names: {string.Join(", ", near)}");
    }

    private static string Systems() => string.Join(", ", MeasuringSystem.All.Select(system => system.Key));
}
