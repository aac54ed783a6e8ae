using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>Reads the table of weights; every problem is kept with its line and column, and the good rows are returned.</summary>
internal static class WeightReader
{
    private static readonly string[] s_required = ["ingredient", "amount", "grams", "kind", "source"];

    public static IReadOnlyList<(string Id, WeightFact Fact)> Read(
        TextReader text, IReadOnlyDictionary<string, Ingredient> known, ProblemList problems)
    {
        List<(string, WeightFact)> facts = [];
        DelimitedTable.Read(text, problems, table =>
        {
            if (!TableColumns.Check(table, s_required, [], problems))
                return null;
            return row =>
            {
                RowFields fields = new(table, row, problems);
                string id = fields.Required("ingredient");
                if (id.Length > 0 && !known.ContainsKey(id))
                    fields.Problem("ingredient", $"{Excerpt.Of(id)} is not the id of an ingredient");
                else if (ReadFact(fields) is WeightFact fact)
                    facts.Add((id, fact));
            };
        });
        return facts;
    }

    /// <summary>The fact of a row, or <see langword="null"/> where there were problems.</summary>
    public static WeightFact? ReadFact(RowFields fields)
    {
        long before = fields.ProblemCount;
        string amountText = fields.Required("amount");
        if (!Amount.TryParse(amountText, out Amount amount) || amount.IsMass || amount.IsRange || amount.PartCount > 1
            || amount.Part(0).Low == 0)
            fields.Problem("amount", $"{Excerpt.Of(amountText)} is not a single volume or a count of pieces above zero");

        MeasuringSystem? system = null;
        bool household = amount.IsVolume && amount.Part(0).Unit is not (KitchenUnit.Millilitre or KitchenUnit.Litre);
        string systemText = fields.Word("system");
        if (systemText.Length > 0 && !MeasuringSystem.TryGet(systemText, out system))
            fields.Problem("system", $"{Excerpt.Of(systemText)} is not a measuring system; expected one of: "
                + $"{string.Join(", ", MeasuringSystem.All.Select(known => known.Key))}");
        else if (household && system is null)
            fields.Problem("system", $"{Excerpt.Of(amountText)} needs a measuring system, such as us-customary");
        else if (household && !system!.Defines(amount.Part(0).Unit))
            fields.Problem("system", $"the {system.Name} measuring system has no {amount.Part(0).Unit.ToWord()}");

        Packing? packing = null;
        string packingText = fields.Word("packing");
        if (packingText.Length > 0 && PackingText.TryRead(packingText, out Packing named))
            packing = named;
        else if (packingText.Length > 0)
            fields.Problem("packing", $"{Excerpt.Of(packingText)} is not a packing");
        if (amount.IsVolume && packingText.Length == 0)
            fields.Problem("packing", "a volume needs a packing");
        else if (amount.IsPiece && packingText.Length > 0)
            fields.Problem("packing", "a piece has no packing");

        double? grams = fields.Number("grams", 0.001, 1e6);
        if (grams is null && fields.ProblemCount == before)
            fields.Problem("grams", "the field is empty");
        double low = fields.Number("low_grams", 0.001, 1e6) ?? grams ?? 1, high = fields.Number("high_grams", 0.001, 1e6) ?? grams ?? 1;
        if (grams is double likely && !(low <= likely && likely <= high))
            fields.Problem(low > likely ? "low_grams" : "high_grams", "low_grams, grams and high_grams must rise");
        double? samples = fields.Number("samples", 1, 1e6), deviation = fields.Number("sd_grams", 0, 1e6);
        string votes = fields.Word("votes");
        if (votes is not ("" or "yes" or "no"))
            fields.Problem("votes", $"{Excerpt.Of(votes)} is neither yes nor no");
        // A deviation above the mass itself is no weighing of anything; its spread would have no end.
        if (deviation > grams)
            fields.Problem("sd_grams", "sd_grams is more than grams; a standard deviation is at most the mass it belongs to");
        Provenance provenance = fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"));
        if (fields.ProblemCount > before)
            return null;

        // A density per 100 mL is not a rounded weighing of a cup: only its own digits count.
        return new WeightFact(amount, system, packing, new Spread(low, grams!.Value, high, provenance.Evidence.BasisOfRange()),
            HalfUnit(fields.Word("grams")),
            samples is double count ? (int)count : null, deviation, votes != "no", provenance);
    }

    private static double HalfUnit(string printed)
    {
        int point = printed.IndexOf('.');
        return point < 0 ? 0.5 : 0.5 * Math.Pow(10, point + 1 - printed.Length);
    }
}
