using System.Globalization;
using System.Text;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Vetting;

namespace Confectio.Tests.Vetting;

/// <summary>Counts what the vetter made of real tables with planted mistakes.</summary>
public sealed class RealTableScore
{
    private readonly int[] _fifthRows = new int[5];
    private readonly int[] _fifthRight = new int[5];
    private readonly double[] _fifthSum = new double[5];

    public int Planted { get; private set; }

    public int Invisible { get; private set; }

    public int Found { get; private set; }

    public int Named { get; private set; }

    public int FalseAlarms { get; private set; }

    public int RealFaults { get; private set; }

    public int Clean { get; private set; }

    public double Precision => (double)(Found + RealFaults) / (Found + RealFaults + FalseAlarms);

    public double Recall => (double)Found / Planted;

    public double ReasonShare => (double)Named / Found;

    public Dictionary<(Reason Done, Reason? Said), int> Reasons { get; } = [];

    public Dictionary<string, int> Alarms { get; } = [];

    public Dictionary<string, int> Misses { get; } = [];

    /// <summary>The rows, by what they are and whether they are right, that stood in the three middle fifths: how often, and the sum of their P(right).</summary>
    public Dictionary<string, (int Times, double Sum)> Middle { get; } = [];

    public List<string> Misnamed { get; } = [];

    /// <summary>In each fifth of P(right): how many rows, their mean P(right), and the share that is right.</summary>
    public IEnumerable<(int Rows, double Said, double Right)> Reliability => Enumerable.Range(0, 5)
        .Select(i => (_fifthRows[i], _fifthSum[i] / Math.Max(1, _fifthRows[i]), (double)_fifthRight[i] / Math.Max(1, _fifthRows[i])));

    public void Add(RealTable table, IReadOnlyList<PlantedRow> rows, IngredientTable? ingredients = null)
    {
        TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(RealTable.ToCsv(rows.Select(row => row.Row))), ingredients ?? IngredientTable.BuiltIn);
        foreach (RowFinding said in verdict.Rows)
        {
            if (said.Verdict == Verdict.Unknown)
                continue;
            PlantedRow row = rows[(int)said.Line - 2];
            bool flagged = said.Verdict is Verdict.Wrong or Verdict.Impossible;
            bool fault = RealFault.In(table.Name, row.Row with { Printed = table.Rows[(int)said.Line - 2].Printed }) is not null;
            if (row.Done is null)
            {
                int fifth = Math.Min(4, (int)(5 * said.ProbabilityRight));
                Count(fifth, said.ProbabilityRight, !fault);
                NoteMiddle(fifth, said, $"{(fault ? "fault" : "right")} {table.Name}: {said.Ingredient} {said.Amount} {row.Row.Packing} = {row.Row.Printed}");
                if (fault)
                {
                    RealFaults += flagged ? 1 : 0;
                }
                else
                {
                    Clean++;
                    FalseAlarms += flagged ? 1 : 0;
                    if (flagged)
                        Note(Alarms, $"{table.Name}: {said.Ingredient} {said.Amount} {row.Row.Packing} = {row.Row.Printed} ({said.Reason})");
                }
                continue;
            }
            if (fault)
                continue;
            if (IsInvisible(said, row))
            {
                Invisible++;
                continue;
            }
            int place = Math.Min(4, (int)(5 * said.ProbabilityRight));
            Count(place, said.ProbabilityRight, false);
            NoteMiddle(place, said, $"planted {row.Done} {table.Name}: {said.Ingredient} {said.Amount} {row.Row.Packing} = {row.Row.Printed}");
            Planted++;
            if (!flagged)
            {
                Note(Misses, $"{row.Done} {table.Name}: {said.Ingredient} {said.Amount} {row.Row.Packing} {row.Before:0.#} -> {row.Row.Printed} P={said.ProbabilityRight:0.00} {said.ExpectedGrams}");
                continue;
            }
            Found++;
            if (said.Reason != row.Done) Misnamed.Add($"{row.Done} called {said.Reason}: {table.Name}: {said.Ingredient} {said.Amount} {row.Row.Packing} {row.Before:0.#} -> {row.Row.Printed} {said.ExpectedGrams}");
            Named += said.Reason == row.Done ? 1 : 0;
            Reasons[(row.Done.Value, said.Reason)] = Reasons.GetValueOrDefault((row.Done.Value, said.Reason)) + 1;
        }
    }

    /// <summary>
    /// Nobody could see the mistake: the figure lies within two standard deviations of the one before (what is known of this
    /// ingredient, and the rounding of its last digit), or within what some packing may weigh where the row states none.
    /// </summary>
    private static bool IsInvisible(RowFinding said, PlantedRow row)
    {
        if (said.Matched is null || !said.Amount.IsVolume)
            return Math.Abs(Math.Log(row.Row.Grams / row.Before)) <= 0.05;
        double grams = row.Row.Grams, density = 0;
        if (said.Packing is null && said.Matched.Densities.Count > 1)
        {
            double millilitres = said.Amount.Millilitres(MeasuringSystem.Metric.Defines(said.Amount.Part(0).Unit) && said.Amount.Part(0).Unit is not KitchenUnit.Cup ? MeasuringSystem.Metric : MeasuringSystem.UsCustomary);
            density = grams / millilitres;
            if (density >= said.Matched.Densities.Min(known => known.GramsPerMillilitre.Low) && density <= said.Matched.Densities.Max(known => known.GramsPerMillilitre.High))
                return true;
        }
        double deviation = said.Matched.TryGetNearestDensity(said.Packing ?? said.Matched.DefaultPacking, out BulkDensity? nearest) ? nearest.LogUncertainty : 0.03;
        return Math.Abs(Math.Log(grams / row.Before)) <= Math.Max(2 * deviation, 0.06);
    }

    private void Count(int fifth, double probability, bool right)
    {
        _fifthRows[fifth]++;
        _fifthSum[fifth] += probability;
        _fifthRight[fifth] += right ? 1 : 0;
    }

    private void NoteMiddle(int fifth, RowFinding said, string what)
    {
        if (fifth is 0 or 4)
            return;
        string key = $"fifth {fifth} {what}{(said.Reason is Reason reason ? $" ({reason})" : "")}";
        (int times, double sum) = Middle.GetValueOrDefault(key);
        Middle[key] = (times + 1, sum + said.ProbabilityRight);
    }

    private static void Note(Dictionary<string, int> notes, string text) => notes[text] = notes.GetValueOrDefault(text) + 1;

    public string Details()
    {
        StringBuilder text = new();
        text.AppendLine("alarms:");
        foreach ((string what, int times) in Alarms.OrderByDescending(pair => pair.Value))
            text.AppendLine(CultureInfo.InvariantCulture, $"  {times} {what}");
        text.AppendLine("misses:");
        foreach ((string what, int times) in Misses.OrderBy(pair => pair.Key, StringComparer.Ordinal))
            text.AppendLine(CultureInfo.InvariantCulture, $"  {times} {what}");
        text.AppendLine("middle:");
        foreach ((string what, (int times, double sum)) in Middle.OrderBy(pair => pair.Key[..7], StringComparer.Ordinal).ThenByDescending(pair => pair.Value.Times))
            text.AppendLine(CultureInfo.InvariantCulture, $"  {times} of {sum / times:0.00} {what}");
        text.AppendLine("reasons:");
        foreach (string named in Misnamed.Order(StringComparer.Ordinal)) text.AppendLine("  " + named);
        foreach (((Reason done, Reason? said), int times) in Reasons.OrderByDescending(pair => pair.Value).Where(pair => pair.Key.Done != pair.Key.Said))
            text.AppendLine(CultureInfo.InvariantCulture, $"  {times} {done} called {said}");
        return text.ToString();
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"planted {Planted} (+{Invisible} invisible), precision {Precision:0.000} ({FalseAlarms} false, {RealFaults} real), recall {Recall:0.000}, reason {ReasonShare:0.000}; ")
        + string.Join(", ", Reliability.Select(fifth => string.Create(CultureInfo.InvariantCulture, $"{fifth.Rows} rows said {fifth.Said:0.00} are {fifth.Right:0.00}")));
}
