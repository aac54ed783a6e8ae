using System.Globalization;
using Confectio.Cards;
using Confectio.Layouts;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>Holds the measures of each line against its weights, in one measuring system for the card, and volumes against volumes.</summary>
internal static class CardMeasures
{
    /// <summary>How far the measure behind a weight may be from it: a judgement.</summary>
    private const double MostFill = 0.04;

    public static void Judge(CardJudgement judgement)
    {
        IReadOnlyList<MeasuringSystem> among = Volumes(judgement);
        // Lines whose column names a system are judged by it; all others share one, which is found.
        Dictionary<string, List<(PrintedLine Line, TableEntry Entry)>> tables = [];
        List<(PrintedLine, TableEntry)> free = [];
        foreach (PrintedLine line in judgement.Card.Lines)
        {
            if (line.Phrase.Ingredient is null || line.Phrase.IsToTaste)
                continue;
            foreach ((WrittenAmount measure, List<TableFigure> figures) in Pairs(line))
            {
                TableEntry entry = new(new TableCell(1, 1, ""), line.Phrase.Ingredient.Name, measure.Amount, line.Phrase.Packing, [.. figures], null)
                {
                    Rough = RoughMeasure.Of(measure.Fill, measure.Amount),
                };
                if (line.SystemOf(measure) is MeasuringSystem stated && measure.Amount.IsVolume)
                    (tables.TryGetValue(stated.Key, out var known) ? known : tables[stated.Key] = []).Add((line, entry));
                else
                    free.Add((line, entry));
            }
        }
        HashSet<PrintedLine> judged = [];
        if (free.Count > 0)
        {
            TableVerdict verdict = Vet(judgement, free, judgement.Options.System, among);
            judgement.SystemFound = verdict.System;
            Tell(judgement, free, verdict, judged);
        }
        foreach ((string key, List<(PrintedLine, TableEntry)> rows) in tables)
        {
            MeasuringSystem.TryGet(key, out MeasuringSystem? system);
            TableVerdict verdict = Vet(judgement, rows, judgement.Options.System, [system!]);
            judgement.SystemFound ??= verdict.System;
            Tell(judgement, rows, verdict, judged);
        }
        judgement.JudgedLines = judged.Count;
        int measured = judgement.Card.Lines.Count(line => line.Phrase.Ingredient is not null && line.Phrase.Amount is not null && line.Percent is null && !judged.Contains(line));
        if (measured > 0)
            judgement.NotJudged.Add(string.Create(CultureInfo.InvariantCulture, $"{measured} of {judgement.Card.Lines.Count} lines {(measured == 1 ? "has" : "have")} one figure only, which nothing can be held against"));
        if (judgement.SystemFound is SystemFinding { WasGiven: false } found && found.FamilyProbability < SystemFinding.Sure)
            judgement.NotJudged.Add($"whose cups they are is {found}");
    }

    private static TableVerdict Vet(CardJudgement judgement, List<(PrintedLine Line, TableEntry Entry)> rows, MeasuringSystem? system, IReadOnlyList<MeasuringSystem> among) =>
        ConversionTableVetter.Vet(new Reading<TableText>(new TableText([.. rows.Select(row => row.Entry)], "", null, AmountReading.DecimalPoint, []), "", [], 0), judgement.Card.Ingredients,
            new VettingOptions { System = system, Among = among, HearsNeighbours = false, FalseDiscoveryRate = judgement.Options.FalseDiscoveryRate });

    private static void Tell(CardJudgement judgement, List<(PrintedLine Line, TableEntry Entry)> rows, TableVerdict verdict, HashSet<PrintedLine> judged)
    {
        for (int i = 0; i < rows.Count; i++)
        {
            RowFinding row = verdict.Rows[i];
            PrintedLine line = rows[i].Line;
            if (row.Verdict != Verdict.Unknown)
                judged.Add(line);
            // What is more likely right than not is no finding.
            if (row.Verdict is Verdict.Agrees or Verdict.Unknown || row is { Verdict: Verdict.Doubtful, ProbabilityRight: >= 0.5 } || judgement.Findings.Exists(found => found.Issue == CardIssue.Measures && found.Place.Line == line.Place.Line
                && judgement.Doubted.ContainsKey(line)))
                continue;
            FindingSeverity severity = row.Verdict == Verdict.Doubtful || IsRounded(line, row) ? FindingSeverity.Note : FindingSeverity.Error;
            // A card is not a table: its rows are no copies of each other.
            string expected = row.ExpectedGrams is { } grams ? string.Create(CultureInfo.InvariantCulture, $"{Round(grams.Likely)} g ({Round(grams.Low)} to {Round(grams.High)} g)") : "";
            WrittenAmount at = Blamed(line, row);
            judgement.Findings.Add(new CardFinding(CardIssue.Measures, severity, line.PlaceOf(at), Stands(line, at), expected,
                $"{row.Amount} of {line.Phrase.Ingredient!.Name}: {row.Explanation}", row.Reason?.ToCode(), row.ProbabilityRight));
            if (severity != FindingSeverity.Note)
                judgement.Doubted[line] = row.ExpectedGrams?.Likely;
        }
    }

    // A card has too few rows to show its grid: a figure that rounding to quarter ounces, fives or halves explains is no mistake.
    private static bool IsRounded(PrintedLine line, RowFinding row)
    {
        if (row.ExpectedGrams is not { } expected || (row.OtherPrintedGrams.Count > 0 && row.Suspect is not (null or RowFigure.Measure)))
            return false;
        double printed = row.PrintedGrams, ounce = PrintedMass.GramsPerOunce / 4, reach = 0;
        if (printed >= 14 && Math.Abs(printed - Math.Round(printed / ounce) * ounce) <= 0.51)
            reach = ounce / 2;
        if (printed < 14)
            reach = printed == Math.Floor(printed) ? 0.5 : 0.25;
        else if (printed % 5 == 0 && printed >= 20)
            reach = Math.Max(reach, printed % 10 == 0 && printed >= 100 ? 5 : 2.5);
        // Behind a weight stands the nearest measure that can be filled, which is a few per cent off.
        double fill = line.Phrase.Amount is { Amount.IsMass: true } && !row.Amount.IsMass ? MostFill : 0;
        return printed >= expected.Low * (1 - fill) - reach && printed <= expected.High * (1 + fill) + reach;
    }

    private static WrittenAmount Blamed(PrintedLine line, RowFinding row)
    {
        WrittenAmount[] masses = [.. line.Amounts.Where(amount => amount.Amount.IsMass)];
        WrittenAmount first = masses.Length > 0 ? masses[0] : line.Phrase.Amount!.Value;
        return row.Suspect switch
        {
            RowFigure.Measure => line.Amounts.FirstOrDefault(amount => amount.Amount == row.Amount, first),
            RowFigure.SecondMass when masses.Length > 1 => masses[^1],
            _ => masses.FirstOrDefault(mass => Math.Abs(mass.Amount.Grams(MeasuringSystem.UsCustomary) - row.PrintedGrams) < 1e-6, first),
        };
    }

    private static string Stands(PrintedLine line, WrittenAmount amount) => line.Phrase.Text.Substring(Math.Clamp(amount.Start, 0, line.Phrase.Text.Length),
        Math.Clamp(amount.Length, 0, line.Phrase.Text.Length - Math.Clamp(amount.Start, 0, line.Phrase.Text.Length)));

    // Each measure with all weights of the line; of weights alone the first with the others.
    private static IEnumerable<(WrittenAmount Measure, List<TableFigure> Figures)> Pairs(PrintedLine line)
    {
        List<(WrittenAmount Amount, TableFigure Figure)> masses = [];
        // "24 g + 120 mL cold water": what is added says nothing of what it is added to.
        WrittenAmount[] amounts = [.. line.Amounts.Where(amount => !IsAdded(line.Phrase.Text, amount))];
        foreach (WrittenAmount amount in amounts)
        {
            if (amount.Amount.IsMass && !amount.IsApproximate && Figure(line, amount) is TableFigure figure && figure.Value > 0)
                masses.Add((amount, figure));
        }
        if (masses.Count == 0)
            yield break;
        bool any = false;
        foreach (WrittenAmount amount in amounts)
        {
            if (amount.Amount.IsMass || amount.IsApproximate || !(Size(amount.Amount) > 0))
                continue;
            any = true;
            yield return (amount, [.. masses.OrderBy(mass => mass.Figure.Unit is FigureUnit.Gram or FigureUnit.Kilogram ? 0 : 1).Select(mass => mass.Figure)]);
        }
        if (!any && masses.Count > 1)
            yield return (masses[0].Amount, [.. masses.Skip(1).Select(mass => mass.Figure)]);
    }

    private static bool IsAdded(string text, WrittenAmount amount)
    {
        ReadOnlySpan<char> before = text.AsSpan(0, Math.Clamp(amount.Start, 0, text.Length)).TrimEnd();
        return before.Length > 0 && (before[^1] is '+' or '&' || EndsWithWord(before, "plus") || EndsWithWord(before, "and") || EndsWithWord(before, "with") || EndsWithWord(before, "in"));

        static bool EndsWithWord(ReadOnlySpan<char> before, string word) => before.EndsWith(word, StringComparison.OrdinalIgnoreCase)
            && (before.Length == word.Length || !char.IsLetterOrDigit(before[^(word.Length + 1)]));
    }

    private static double Size(Amount amount) => amount.Part(0).High.ToDouble();

    private static TableFigure? Figure(PrintedLine line, WrittenAmount amount)
    {
        string text = amount.Start + amount.Length <= line.Phrase.Text.Length ? line.Phrase.Text.Substring(amount.Start, amount.Length) : "";
        TableCell cell = new(1, 1, text);
        foreach (AmountReading reading in (ReadOnlySpan<AmountReading>)[AmountReading.DecimalPoint, AmountReading.DecimalComma])
        {
            if (TableFigure.TryRead(cell, text, FigureUnit.None, reading, out TableFigure figure) && figure.Unit is not (FigureUnit.None or FigureUnit.Millilitre)
                && Math.Abs(PrintedMass.Of(figure).Grams - amount.Amount.Grams(MeasuringSystem.UsCustomary)) <= 1e-6 * (1 + PrintedMass.Of(figure).Grams))
                return figure;
        }
        double grams = amount.Amount.Grams(MeasuringSystem.UsCustomary), width = amount.Amount.HighGrams(MeasuringSystem.UsCustomary) - amount.Amount.LowGrams(MeasuringSystem.UsCustomary);
        return grams is > 0 and < 1e9 ? TableFigure.Of(grams, width + CardJudgement.PrintedStep(line, amount), -1, FigureUnit.Gram, width, cell) : null;
    }

    // ---- volumes against volumes ----

    /// <summary>Judges lines with two volumes, and says among which systems the cups of the card can be.</summary>
    private static IReadOnlyList<MeasuringSystem> Volumes(CardJudgement judgement)
    {
        List<(PrintedLine Line, WrittenAmount Measure, WrittenAmount Millilitres)> pairs = [];
        foreach (PrintedLine line in judgement.Card.Lines)
        {
            WrittenAmount[] volumes = [.. line.Amounts.Where(amount => amount.Amount.IsVolume && !amount.IsApproximate && amount.Fill == MeasureFill.NotStated)];
            WrittenAmount? metric = null, kitchen = null;
            foreach (WrittenAmount amount in volumes)
            {
                if (IsMetric(amount.Amount))
                    metric ??= amount;
                else if (line.SystemOf(amount) is null)
                    kitchen ??= amount;
            }
            if (metric is WrittenAmount millilitres && kitchen is WrittenAmount measure && Millilitres(millilitres.Amount) > 0)
                pairs.Add((line, measure, millilitres));
        }
        IReadOnlyList<MeasuringSystem> all = judgement.Options.System is MeasuringSystem given ? [given] : MeasuringSystem.All;
        if (pairs.Count == 0)
            return all;
        int most = all.Max(system => pairs.Count(pair => Fits(pair.Measure, Millilitres(pair.Millilitres.Amount), system)));
        MeasuringSystem[] best = [.. all.Where(system => pairs.Count(pair => Fits(pair.Measure, Millilitres(pair.Millilitres.Amount), system)) == most)];
        foreach ((PrintedLine line, WrittenAmount measure, WrittenAmount millilitres) in pairs)
        {
            double printed = Millilitres(millilitres.Amount);
            if (Array.Exists(best, system => Fits(measure, printed, system)))
                continue;
            // One of two lines is no majority: without a better judge both stand as they are, if any cup fits.
            bool anywhere = MeasuringSystem.All.Any(system => Fits(measure, printed, system));
            if (anywhere && most * 2 <= pairs.Count)
                continue;
            MeasuringSystem own = best[0].Defines(measure.Amount.Part(0).Unit) ? best[0] : MeasuringSystem.UsCustomary;
            double expected = measure.Amount.Millilitres(own);
            string cause = anywhere ? "other-cup" : Fits(measure, printed * 3, own) || Fits(measure, printed / 3, own) ? "spoon-swap"
                : CardSlips.Cause(printed, 1, other => Fits(measure, other, own));
            judgement.Findings.Add(new CardFinding(CardIssue.Volumes, FindingSeverity.Error, line.PlaceOf(millilitres), Stands(line, millilitres),
                string.Create(CultureInfo.InvariantCulture, $"{Round(expected)} mL"),
                string.Create(CultureInfo.InvariantCulture, $"{measure.Amount} is {Round(expected)} mL in {own.Name}, not {Round(printed)} mL; {CardSlips.Words(cause)}"), cause));
        }
        return most > 0 ? best : all;
    }

    private static bool IsMetric(Amount amount)
    {
        for (int i = 0; i < amount.PartCount; i++)
        {
            if (amount.Part(i).Unit is not (KitchenUnit.Millilitre or KitchenUnit.Litre))
                return false;
        }
        return true;
    }

    private static double Millilitres(Amount amount) => amount.Millilitres(MeasuringSystem.Metric);

    private static bool Fits(WrittenAmount measure, double printed, MeasuringSystem system)
    {
        for (int i = 0; i < measure.Amount.PartCount; i++)
        {
            if (!system.Defines(measure.Amount.Part(i).Unit))
                return false;
        }
        double low = measure.Amount.LowMillilitres(system), high = measure.Amount.HighMillilitres(system);
        // 3/4 cup of 177 mL is printed as 175 or 180, a pint of 473 as 475 or 500.
        double step = printed % 50 == 0 && printed >= 400 ? 50 : printed % 10 == 0 ? 10 : printed % 5 == 0 ? 5 : printed == Math.Floor(printed) ? 1 : 0.1;
        double reach = Math.Max(0.02 * high, Math.Min(step / 2, 0.06 * high));
        return printed >= low - reach && printed <= high + reach;
    }

    private static string Round(double value) => value.ToString(value < 10 ? "0.##" : value < 100 ? "0.#" : "0", CultureInfo.InvariantCulture);
}
