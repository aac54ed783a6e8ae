using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Formulas;

/// <summary>Makes a line of what stands in JSON, and notes what is wrong with it.</summary>
internal static class FormulaLineReader
{
    public static FormulaLine? Read(FormulaDocument.LineDocument? line, string at, IngredientTable ingredients, List<(string Path, string Message)> mistakes)
    {
        if (line is null)
        {
            mistakes.Add((at, "null was read and a line is expected"));
            return null;
        }
        int before = mistakes.Count;
        Ingredient? ingredient = null;
        if (line.Ingredient is null)
            mistakes.Add((at, "ingredient is missing"));
        else if (!ingredients.TryGet(line.Ingredient, out ingredient))
            mistakes.Add((at + ".ingredient", Unknown(line.Ingredient, "not an ingredient of this table", ingredients, mistakes.Count)));
        if (line is { Grams: null, Amount: null })
            mistakes.Add((at, "grams or amount is expected"));
        Amount amount = default;
        if (line.Amount is not null)
        {
            AmountReader reader = new(line.Amount, AmountReading.DecimalPoint);
            if (!reader.TryReadAll(out amount))
                mistakes.Add((at + ".amount", reader.Failure().Message));
        }
        MeasuringSystem? system = SystemOf(line, amount, at, mistakes);
        Packing? packing = PackingOf(line, at, mistakes);
        if (mistakes.Count > before)
            return null;
        try
        {
            return line.Amount is null ? FormulaLine.Of(ingredient!, line.Grams!.Value)
                : line.Grams is double grams ? FormulaLine.Of(ingredient!, grams, amount, system!, packing)
                : FormulaLine.Of(ingredient!, amount, system!, packing);
        }
        catch (ArgumentException e)
        {
            string member = e.ParamName == "grams" ? ".grams" : e.ParamName == "packing" && packing is not null ? ".packing" : ".amount";
            mistakes.Add((at + member, Reason(e)));
            return null;
        }
    }

    /// <summary>What an argument was refused for, without the name of the parameter that the platform adds.</summary>
    public static string Reason(ArgumentException e) => e.Message.Split(" (Parameter")[0];

    private static MeasuringSystem? SystemOf(FormulaDocument.LineDocument line, Amount amount, string at, List<(string, string)> mistakes)
    {
        if (line.System is null)
        {
            if (line.Amount is not null && amount.IsVolume)
                mistakes.Add((at, "system is missing; a volume needs one of: " + Systems()));
            // Masses and pieces are the same everywhere but in US labelling, which has to be named.
            return MeasuringSystem.UsCustomary;
        }
        if (line.Amount is null)
            mistakes.Add((at + ".system", "there is no amount for it"));
        if (!MeasuringSystem.TryGet(line.System, out MeasuringSystem? system))
            mistakes.Add((at + ".system", $"{Excerpt.Of(line.System)} is not a measuring system; one of these is expected: {Systems()}"));
        return system;
    }

    private static Packing? PackingOf(FormulaDocument.LineDocument line, string at, List<(string, string)> mistakes)
    {
        if (line.Packing is null)
            return null;
        if (line.Amount is null)
            mistakes.Add((at + ".packing", "there is no amount for it"));
        if (PackingText.TryRead(line.Packing, out Packing packing))
            return packing;
        mistakes.Add((at + ".packing", $"{Excerpt.Of(line.Packing)} is not a packing"));
        return null;
    }

    /// <summary>That a name is not what it should be, and what is near it. Looking for near names is slow, and no more than 20 mistakes are told.</summary>
    public static string Unknown(string name, string what, IngredientTable ingredients, int told)
    {
        IReadOnlyList<string> near = told < 20 ? ingredients.Suggest(name) : [];
        return $"{Excerpt.Of(name)} is {what}" + (near.Count == 0 ? "" : $"; near names: {string.Join(", ", near)}");
    }

    private static string Systems() => string.Join(", ", MeasuringSystem.All.Select(system => system.Key));
}
