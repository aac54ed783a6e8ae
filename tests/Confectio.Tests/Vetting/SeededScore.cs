using Confectio.Ingredients;
using System.Globalization;
using Confectio.Measures;
using Confectio.Vetting;

namespace Confectio.Tests.Vetting;

/// <summary>Counts what the vetter got right over many seeded tables.</summary>
public sealed class SeededScore
{
    public int Tables { get; private set; }

    public int FamilyRight { get; private set; }

    public int SystemRight { get; private set; }

    public int Claims { get; private set; }

    public int ClaimsRight { get; private set; }

    public int Rows { get; private set; }

    public int Mistakes { get; private set; }

    public int Invisible { get; private set; }

    public int Flagged { get; private set; }

    public int FlaggedRight { get; private set; }

    public int ReasonRight { get; private set; }

    public double Precision => (double)FlaggedRight / Flagged;

    public double Recall => (double)FlaggedRight / Mistakes;

    public double ReasonShare => (double)ReasonRight / FlaggedRight;

    public double FamilyShare => (double)FamilyRight / Tables;

    public double FalseAlarmsPerHundredRows => 100.0 * (Flagged - FlaggedRight) / (Rows - Mistakes - Invisible);

    /// <summary>The confusion of reasons: what was done, and what was said.</summary>
    public Dictionary<(Reason Done, Reason Said), int> Reasons { get; } = [];

    public static SeededScore Run(SeededSetting setting, int tables, int seed, VettingOptions? options = null)
    {
        SeededScore score = new();
        SeededTables generator = new(seed);
        for (int i = 0; i < tables; i++)
            score.Add(generator.Next(setting), options);
        return score;
    }

    public void Add(SeededTable table, VettingOptions? options = null)
    {
        TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(table.ToCsv()), IngredientTable.BuiltIn, options);
        Tables++;
        if (verdict.System!.Family == table.System.Family)
            FamilyRight++;
        if (verdict.System.Best == table.System)
            SystemRight++;
        if (verdict.System.IsDistinguishable)
        {
            Claims++;
            ClaimsRight += verdict.System.Best == table.System ? 1 : 0;
        }
        for (int i = 0; i < table.Rows.Count; i++)
        {
            SeededRow truth = table.Rows[i];
            RowFinding said = verdict.Rows[i];
            Rows++;
            if (truth.IsInvisible)
            {
                Invisible++;
                continue;
            }
            bool flagged = said.Verdict is Verdict.Wrong or Verdict.Impossible;
            Mistakes += truth.Error is null ? 0 : 1;
            Flagged += flagged ? 1 : 0;
            if (flagged && truth.Error is Reason done)
            {
                FlaggedRight++;
                ReasonRight += said.Reason == done ? 1 : 0;
                Reasons[(done, said.Reason!.Value)] = Reasons.GetValueOrDefault((done, said.Reason!.Value)) + 1;
            }
        }
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"tables {Tables}, rows {Rows}, mistakes {Mistakes} (+{Invisible} invisible), precision {Precision:0.000}, recall {Recall:0.000}, reason {ReasonShare:0.000}, family {FamilyShare:0.000}, system {(double)SystemRight / Tables:0.000}, claims {(double)Claims / Tables:0.00} ({(double)ClaimsRight / Claims:0.000} right), false alarms {FalseAlarmsPerHundredRows:0.00} per 100");
}
