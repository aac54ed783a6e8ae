using Confectio.Formulas.Solving;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Labels;

/// <summary>How much of a nutrient a day counts as the whole, by a law (reference_intakes.csv).</summary>
internal sealed record DailyAmount(LabelRules Rules, LabelNutrient Nutrient, double Amount, Provenance Provenance)
{
    public static IReadOnlyList<DailyAmount> All { get; } = ReadBuiltIn();

    public static DailyAmount? Of(LabelNutrient nutrient, LabelRules rules) => All.FirstOrDefault(amount => amount.Nutrient == nutrient && amount.Rules == rules);

    private static DailyAmount[] ReadBuiltIn()
    {
        List<DailyAmount> all = [];
        EmbeddedTable.Read("reference_intakes.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            all.Add(new DailyAmount(fields.Enum<LabelRules>("rules"), fields.Enum<LabelNutrient>("nutrient"), fields.RequiredNumber("amount", 1, 1e5),
                fields.Provenance("source", "kind", "", fields.Word("note"))));
        });
        return [.. all];
    }
}
