using System.Globalization;
using System.Text.RegularExpressions;
using Confectio.Cards;
using Confectio.Formulas;
using Confectio.Ingredients;

namespace Confectio.Vetting;

/// <summary>Percentages against the lines, the lines against the printed sum, the sum against what the card makes, portions against that.</summary>
internal static partial class CardSums
{
    /// <summary>What stays in the bowl and on the spoon, and what is trimmed, at most: a judgement.</summary>
    private const double MostLost = 0.15;

    /// <summary>Of a stated yield that rounds up a little nobody is misled.</summary>
    private const double MostGained = 0.03;

    public static void Judge(CardJudgement judgement)
    {
        Percentages(judgement);
        Sums(judgement);
    }

    // ---- percentages ----

    private static void Percentages(CardJudgement judgement)
    {
        List<(PrintedLine Line, CardFigure Share, double Low, double Likely, double High)> shares = [];
        int without = 0;
        for (int i = 0; i < judgement.Card.Lines.Count; i++)
        {
            PrintedLine line = judgement.Card.Lines[i];
            if (line.Percent is not CardFigure share)
                continue;
            if (judgement.Grams[i] is (double low, double likely, double high) && likely > 0 && share.Low > 0)
                shares.Add((line, share, low, likely, high));
            else
                without++;
        }
        if (without > 0)
            judgement.NotJudged.Add(string.Create(CultureInfo.InvariantCulture, $"{without} {(without == 1 ? "percentage stands" : "percentages stand")} beside no weight"));
        double? scale = null;
        int wrong = 0;
        if (shares.Count >= 3)
        {
            scale = Scale(shares, out int fitting);
            if (fitting * 10 < shares.Count * 6)
            {
                judgement.NotJudged.Add("the percentages fit no one basis: neither the sum nor one line of them is 100 %");
                scale = null;
            }
        }
        if (scale is double gramsPerPercent)
        {
            foreach ((PrintedLine line, CardFigure share, double low, double likely, double high) in shares)
            {
                if (Fits(share.Low, share.Step, low, high, gramsPerPercent))
                    continue;
                wrong++;
                double expected = likely / gramsPerPercent;
                // The weight of a line that does not fit its measure is what is wrong.
                if (judgement.Doubted.TryGetValue(line, out double? grams) && grams is double meant && Fits(share.Low, share.Step, meant * 0.85, meant * 1.15, gramsPerPercent))
                    continue;
                string cause = CardSlips.Cause(share.Low, share.Step, other => Fits(other, share.Step, low, high, gramsPerPercent), expected);
                judgement.Findings.Add(new CardFinding(CardIssue.Percent, FindingSeverity.Error, share.Place, share.Text, Percent(expected, share.Step),
                    $"{Grams(likely)} of {line.Phrase.Ingredient?.Name ?? line.Phrase.Name} is {Percent(expected, share.Step)} where the other lines have theirs, not {Percent(share.Low, share.Step)}; {CardSlips.Words(cause)}", cause));
            }
        }
        else if (shares.Count is > 0 and < 3)
        {
            judgement.NotJudged.Add("one or two percentages alone cannot be held against each other");
        }
        CardFigure? total = judgement.Figure(CardFigureKind.PercentTotal);
        PrintedLine[] all = [.. judgement.Card.Lines.Where(line => line.Percent is not null)];
        if (all.Length < 2)
            return;
        double sum = all.Sum(line => line.Percent!.Low), reach = all.Sum(line => line.Percent!.Step) / 2;
        if (total is CardFigure printed)
        {
            double allowed = Math.Min(reach, 4 * Math.Sqrt(all.Sum(line => line.Percent!.Step * line.Percent.Step) / 12)) + printed.Step / 2 + 1e-9;
            double corrected = sum - shares.Where(share => scale is double s && !Fits(share.Share.Low, share.Share.Step, share.Low, share.High, s)).Sum(share => share.Share.Low - share.Likely / scale!.Value);
            if (Math.Abs(sum - printed.Low) > allowed && (wrong == 0 || Math.Abs(corrected - printed.Low) > allowed + reach))
                Off(judgement, printed, sum, allowed);
        }
        else if (wrong == 0 && sum is > 85 and < 115 && Math.Abs(sum - 100) > reach + 0.051 && scale is double basis && IsOfTotal(judgement, basis))
        {
            CardFigure last = all[^1].Percent!;
            judgement.Findings.Add(new CardFinding(CardIssue.PercentSum, FindingSeverity.Warning, last.Place, last.Text, "100 %",
                string.Create(CultureInfo.InvariantCulture, $"the percentages add up to {sum:0.##} %, not to 100 %"), null));
        }

        static bool IsOfTotal(CardJudgement judgement, double basis) => Array.TrueForAll(judgement.Grams, grams => grams is not null)
            && Math.Abs(judgement.Grams.Sum(grams => grams!.Value.Likely) / basis - 100) < 1;

        static void Off(CardJudgement judgement, CardFigure printed, double sum, double allowed)
        {
            string cause = CardSlips.Cause(printed.Low, printed.Step, other => Math.Abs(sum - other) <= allowed, sum);
            judgement.Findings.Add(new CardFinding(CardIssue.PercentSum, FindingSeverity.Error, printed.Place, printed.Text, Percent(sum, printed.Step),
                $"the percentages add up to {Percent(sum, printed.Step)}, not to {Percent(printed.Low, printed.Step)}; {CardSlips.Words(cause)}", cause));
        }
    }

    private static bool Fits(double percent, double step, double low, double high, double gramsPerPercent) =>
        low * 0.999 <= (percent + step / 2) * gramsPerPercent && high * 1.001 >= Math.Max(0, percent - step / 2) * gramsPerPercent;

    // How many grams a per cent has: the point that lies within the most lines. All that fit it share one basis, the sum or the flour.
    private static double Scale(List<(PrintedLine Line, CardFigure Share, double Low, double Likely, double High)> shares, out int fitting)
    {
        List<double> points = [];
        foreach ((_, CardFigure share, double low, double likely, double high) in shares)
        {
            points.Add(likely / share.Low);
            points.Add(low / (share.Low + share.Step / 2));
            if (share.Low > share.Step / 2)
                points.Add(high / (share.Low - share.Step / 2));
        }
        double best = points[0];
        fitting = 0;
        double nearest = double.PositiveInfinity;
        foreach (double point in points.Take(900))
        {
            int count = shares.Count(share => Fits(share.Share.Low, share.Share.Step, share.Low, share.High, point));
            double miss = shares.Where(share => Fits(share.Share.Low, share.Share.Step, share.Low, share.High, point)).Sum(share => Math.Abs(Math.Log(share.Likely / share.Share.Low / point)));
            if (count > fitting || (count == fitting && miss < nearest))
                (best, fitting, nearest) = (point, count, miss);
        }
        return best;
    }

    // ---- sums ----

    private static void Sums(CardJudgement judgement)
    {
        (double Low, double Likely, double High)?[] grams = judgement.Grams;
        int unweighed = Enumerable.Range(0, grams.Length).Count(i => grams[i] is null && judgement.Card.Lines[i].Phrase is { Amount: not null } or { Ingredient: null });
        double likely = grams.Sum(line => line?.Likely ?? 0);
        double down = Reach(grams, line => line.Likely - line.Low), up = Reach(grams, line => line.High - line.Likely);
        // With what a line should weigh where its weight is doubted.
        double meant = likely;
        for (int i = 0; i < grams.Length; i++)
        {
            if (grams[i] is (_, double own, _) && judgement.Doubted.TryGetValue(judgement.Card.Lines[i], out double? instead) && instead is double right)
                meant += right - own;
        }
        bool whole = unweighed == 0 && likely > 0;
        if (judgement.Figure(CardFigureKind.TotalGrams) is CardFigure total)
        {
            double half = CardJudgement.Custom(total.Low, total.Step) / 2;
            bool fits = Within(total, likely - down - half, likely + up + half), explained = judgement.Doubted.Count > 0
                && Within(total, Math.Min(likely, meant) * 0.9 - down - half, Math.Max(likely, meant) * 1.1 + up + half);
            if (!whole)
                judgement.NotJudged.Add(string.Create(CultureInfo.InvariantCulture, $"the printed sum: {CardJudgement.Lines(unweighed)} no weight"));
            else if (!fits && !explained)
                Wrong(judgement, CardIssue.Total, FindingSeverity.Error, total, likely, down + half, up + half, $"the lines add up to {Grams(likely)}");
        }
        CardFigure? yield = judgement.Figure(CardFigureKind.YieldGrams), portions = judgement.Figure(CardFigureKind.Portions), size = judgement.Figure(CardFigureKind.PortionGrams);
        double water = whole ? Water(judgement) : 0;
        double lost = MostLost * likely + (Cooked().IsMatch(string.Join('\n', judgement.Card.Texts.Select(text => text.Text))) ? water : 0);
        double gained = MostGained * likely, loose = yield?.IsApproximate == true || size?.IsApproximate == true ? 0.1 * likely : 0;
        bool yieldWrong = false;
        if (yield is not null)
        {
            double half = yield.Step / 2;
            if (!whole)
                judgement.NotJudged.Add(string.Create(CultureInfo.InvariantCulture, $"what it makes: {CardJudgement.Lines(unweighed)} no weight"));
            else if (!Within(yield, Math.Min(likely, meant) - down - lost - loose - half, Math.Max(likely, meant) + up + gained + loose + half))
            {
                yieldWrong = true;
                Wrong(judgement, CardIssue.Yield, FindingSeverity.Error, yield, likely, down + lost, up + gained,
                    yield.Low > likely ? $"{Grams(likely)} go in, and {yield.Text} should come out" : $"{Grams(likely)} go in, and only {yield.Text} come out");
            }
        }
        if (judgement.Figure(CardFigureKind.YieldMillilitres) is CardFigure volume)
            judgement.NotJudged.Add($"what it makes by volume, {volume.Text}: how much air is in it the card does not say");
        if (portions is not { Low: > 0 } || size is not { Low: > 0 })
            return;
        double part = portions.Step < 1 ? portions.Step / 2 : portions.Low <= 1 ? 0.1 : 0, low = Math.Max(0, portions.Low - part) * (size.Low - size.Step / 2), 
            // What is less than a whole portion is left over, and no card counts it.
            high = (portions.High + Math.Max(part, portions.High == Math.Floor(portions.High) ? 1 : 0)) * (size.High + size.Step / 2);
        if (yield is not null && !yieldWrong)
        {
            if (high < (yield.Low - yield.Step / 2) * (1 - MostLost) || low > (yield.High + yield.Step / 2) * (1 + MostGained))
                Off(yield.Middle, "are made");
        }
        else if (!whole)
        {
            judgement.NotJudged.Add(string.Create(CultureInfo.InvariantCulture, $"the portions: {CardJudgement.Lines(unweighed)} no weight"));
        }
        else if (yield is null && (high < Math.Min(likely, meant) - down - lost - loose || low > Math.Max(likely, meant) + up + gained + loose))
        {
            Off(likely, "go in");
        }

        void Off(double sum, string how)
        {
            double each = size.Middle, count = portions.Middle;
            bool FitsCount(double other) => other * each >= sum * (1 - MostLost) - lost && other * each <= sum * (1 + MostGained);
            string cause = CardSlips.Cause(portions.Low, portions.Low == Math.Floor(portions.Low) ? 1 : portions.Step, FitsCount, sum * (1 - MostLost / 2) / each);
            if (cause == "unexplained")
                cause = CardSlips.Cause(size.Low / 1, 1, other => FitsCount(count * other / each), sum * (1 - MostLost / 2) / count);
            judgement.Findings.Add(new CardFinding(CardIssue.Portions, FindingSeverity.Error, portions.Place, portions.Text, string.Create(CultureInfo.InvariantCulture, $"about {sum / each:0} of {each:0.#} g"),
                string.Create(CultureInfo.InvariantCulture, $"{portions.Text} portions of {size.Text} are {count * each:0} g, where {sum:0} g {how}; {CardSlips.Words(cause)}"), cause));
        }
    }

    private static void Wrong(CardJudgement judgement, CardIssue issue, FindingSeverity severity, CardFigure printed, double sum, double below, double above, string what)
    {
        // A figure of pounds has its digits in pounds.
        double unit = printed.Step > 0 && Math.Abs(printed.Low / printed.Step - Math.Round(printed.Low / printed.Step)) < 1e-6 ? printed.Step : 1;
        string cause = CardSlips.Cause(printed.Low / unit, 1, other => other * unit >= sum - below && other * unit <= sum + above, sum / unit);
        judgement.Findings.Add(new CardFinding(issue, severity, printed.Place, printed.Text, Grams(sum), $"{what}; {(issue == CardIssue.Total ? $"{printed.Text} is printed; " : "")}{CardSlips.Words(cause)}", cause));
    }

    private static bool Within(CardFigure figure, double low, double high) => figure.High >= low && figure.Low <= high;

    // Rounding adds up by squares, four of its deviations and never more than all together.
    private static double Reach((double Low, double Likely, double High)?[] grams, Func<(double Low, double Likely, double High), double> way)
    {
        double squares = 0, all = 0;
        foreach ((double, double, double)? line in grams)
        {
            if (line is not (double, double, double) known)
                continue;
            double one = way(known);
            squares += one * one;
            all += one;
        }
        return Math.Min(all, 2 * Math.Sqrt(squares));
    }

    private static double Water(CardJudgement judgement)
    {
        double water = 0;
        for (int i = 0; i < judgement.Grams.Length; i++)
            water += (judgement.Grams[i]?.Likely ?? 0) * (judgement.Card.Lines[i].Phrase.Ingredient?.Composition[Constituent.Water] ?? 0);
        return water;
    }

    private static string Grams(double grams) => string.Create(CultureInfo.InvariantCulture, $"{(grams < 10 ? Math.Round(grams, 1) : Math.Round(grams)):0.#} g");

    private static string Percent(double percent, double step) => percent.ToString(step >= 1 ? "0" : step >= 0.1 ? "0.#" : "0.##", CultureInfo.InvariantCulture) + " %";

    [GeneratedRegex(@"\b(?:boil|cook|simmer|bake|baking|baked|reduc|caramel|roast|fry|syrup to|soft ball|firm ball|hard ball|crack|stove|oven|candi)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Cooked();
}
