using System.Globalization;
using Confectio.Cards;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Labels;

namespace Confectio.Vetting;

/// <summary>Holds a nutrition statement against itself and against the ingredients.</summary>
internal static class CardNutrition
{
    private const double KilojoulesPerKilocalorie = 4.184;

    /// <summary>How far a statement from tables may be from another: 20 %, as guidance on tolerances of labels has it, from memory.</summary>
    private const double Relative = 0.20;

    public static void Judge(CardJudgement judgement)
    {
        foreach (bool per100 in (ReadOnlySpan<bool>)[false, true])
        {
            CardFigure[] figures = [.. judgement.Card.Nutrition.Where(figure => figure.IsPer100Grams == per100)];
            if (figures.Length > 0)
                Judge(judgement, figures, per100);
        }
    }

    private static void Judge(CardJudgement judgement, CardFigure[] figures, bool per100)
    {
        CardFigure? kilocalories = Of(figures, CardFigureKind.Kilocalories), kilojoules = Of(figures, CardFigureKind.Kilojoules), fat = Of(figures, CardFigureKind.Fat),
            carbohydrate = Of(figures, CardFigureKind.Carbohydrate), protein = Of(figures, CardFigureKind.Protein);
        HashSet<CardFigure> wrong = [];
        bool known = Composition(judgement, figures, per100, wrong);
        // Parts are no more than what they are parts of.
        foreach ((CardFigureKind part, CardFigureKind whole) in (ReadOnlySpan<(CardFigureKind, CardFigureKind)>)[(CardFigureKind.Sugars, CardFigureKind.Carbohydrate), (CardFigureKind.Saturates, CardFigureKind.Fat)])
        {
            if (Of(figures, part) is CardFigure less && Of(figures, whole) is CardFigure more && less.Low - less.Step / 2 > more.High + more.Step / 2 + 1e-9 && !wrong.Contains(less) && !wrong.Contains(more))
            {
                wrong.Add(less);
                judgement.Findings.Add(new CardFinding(CardIssue.Nutrition, FindingSeverity.Error, less.Place, less.Text, $"no more than {more.Text}",
                    $"{less} is more than {more}, of which it is a part", null));
            }
        }
        if (kilocalories is not null && kilojoules is not null)
        {
            double low = (kilojoules.Low - Step(kilojoules) / 2) / (kilocalories.High + Step(kilocalories) / 2), high = (kilojoules.High + Step(kilojoules) / 2) / Math.Max(0.5, kilocalories.Low - Step(kilocalories) / 2);
            // Fat has 37 kJ and 9 kcal, protein 17 and 4: 4.11 to 4.25 kJ to the kcal.
            if ((high < 4.08 || low > 4.29) && kilocalories.High > 3)
            {
                CardFigure blamed = wrong.Contains(kilocalories) ? kilocalories : kilojoules;
                if (!wrong.Contains(kilocalories) || !known)
                {
                    double expected = kilocalories.Middle * KilojoulesPerKilocalorie;
                    string cause = CardSlips.Cause(kilojoules.Low, kilojoules.Step, other => Math.Abs(other - expected) < 0.04 * expected + 2);
                    judgement.Findings.Add(new CardFinding(CardIssue.Energy, FindingSeverity.Error, blamed.Place, blamed.Text, string.Create(CultureInfo.InvariantCulture, $"{expected:0} kJ"),
                        string.Create(CultureInfo.InvariantCulture, $"{kilocalories.Low:0} kcal are {expected:0} kJ at 4.184, not {kilojoules.Low:0} kJ; {CardSlips.Words(cause)}"), cause));
                    wrong.Add(blamed);
                }
            }
        }
        CardFigure? energy = kilocalories ?? kilojoules;
        if (energy is null || fat is null || carbohydrate is null || protein is null || wrong.Contains(energy) || wrong.Contains(fat) || wrong.Contains(carbohydrate) || wrong.Contains(protein))
            return;
        double unit = energy.Kind == CardFigureKind.Kilojoules ? KilojoulesPerKilocalorie : 1;
        double fibre = Of(figures, CardFigureKind.Fibre)?.High ?? 0;
        // Fibre has 2 kcal or none, and may stand in the carbohydrate or beside it.
        double least = (9 * Low(fat) + 4 * Math.Max(0, Low(carbohydrate) - fibre) + 4 * Low(protein)) * 0.95 * unit, most = (9 * High(fat) + 4 * High(carbohydrate) + 4 * High(protein) + 2 * fibre) * 1.05 * unit;
        double half = Step(energy) / 2 + 2 * unit;
        if (energy.High + half >= least && energy.Low - half <= most)
            return;
        double sum = (9 * fat.Middle + 4 * carbohydrate.Middle + 4 * protein.Middle) * unit;
        string slip = CardSlips.Cause(energy.Low, energy.Step, other => other + half >= least && other - half <= most);
        judgement.Findings.Add(new CardFinding(CardIssue.Energy, FindingSeverity.Error, energy.Place, energy.Text, string.Create(CultureInfo.InvariantCulture, $"{sum:0} {(unit == 1 ? "kcal" : "kJ")}"),
            string.Create(CultureInfo.InvariantCulture, $"9 kcal to a gram of fat and 4 to carbohydrate and protein make {sum:0} {(unit == 1 ? "kcal" : "kJ")} of the figures beside it, not {energy.Low:0}; {CardSlips.Words(slip)}"), slip));
    }

    // ---- against the ingredients ----

    private static bool Composition(CardJudgement judgement, CardFigure[] figures, bool per100, HashSet<CardFigure> wrong)
    {
        if (judgement.Formula is not Formula formula || judgement.Doubted.Count > 0)
        {
            judgement.NotJudged.Add("nutrition against the ingredients: not every line can be weighed");
            return false;
        }
        double? portion = per100 ? 100 : Portion(judgement, formula, out string why);
        if (portion is not (> 0.1 and < 1e5))
        {
            judgement.NotJudged.Add("nutrition against the ingredients: what a portion weighs is not told");
            return false;
        }
        // What boils off is not told; a card that is cooked may hold more in 100 g.
        bool whole = judgement.Figure(CardFigureKind.PortionGrams) is null && !per100;
        double dry = whole ? 1 : Concentration(judgement, formula);
        LabelRules[] rules = judgement.Options.NutritionRules is LabelRules told ? [told] : [LabelRules.EuropeanUnion, LabelRules.UnitedStates];
        NutritionEstimate[] estimates = [.. rules.Select(rule => NutritionEstimate.Of(formula, rule, Math.Min(1e5, portion.Value)))];
        foreach (CardFigure figure in figures)
        {
            if (NutrientOf(figure.Kind) is not LabelNutrient nutrient)
                continue;
            double low = double.PositiveInfinity, high = double.NegativeInfinity, likely = 0;
            foreach (NutritionEstimate estimate in estimates)
            {
                LabelNutrient asked = nutrient == LabelNutrient.Salt && estimate.Rules == LabelRules.UnitedStates ? LabelNutrient.Sodium : nutrient == LabelNutrient.Sodium && estimate.Rules == LabelRules.EuropeanUnion ? LabelNutrient.Salt : nutrient;
                if (estimate[asked]?.PerPortion?.Value is not { } value)
                    continue;
                double factor = asked == nutrient ? 1 : nutrient == LabelNutrient.Salt ? 0.0025 : 400;
                low = Math.Min(low, value.Low * factor);
                high = Math.Max(high, value.High * factor);
                likely = value.Likely * factor;
            }
            if (high < low)
                continue;
            double slack = figure.Kind is CardFigureKind.Kilocalories ? 8 : figure.Kind == CardFigureKind.Kilojoules ? 33 : figure.Kind == CardFigureKind.Sodium ? 25 : figure.Kind == CardFigureKind.Salt ? 0.06 : 1;
            double least = low * (1 - Relative) - slack, most = high * dry * (1 + Relative) + slack;
            if (figure.High + Step(figure) / 2 >= least && figure.Low - Step(figure) / 2 <= most)
                continue;
            wrong.Add(figure);
            string cause = CardSlips.Cause(figure.Low, figure.Step, other => other >= least && other <= most);
            judgement.Findings.Add(new CardFinding(CardIssue.Nutrition, FindingSeverity.Warning, figure.Place, figure.Text, string.Create(CultureInfo.InvariantCulture, $"{likely:0.#} ({Math.Max(0, least):0.#} to {most:0.#})"),
                string.Create(CultureInfo.InvariantCulture, $"{figure} of {portion:0.#} g, and the ingredients have {likely:0.#} by tables of food composition ({Math.Max(0, least):0.#} to {most:0.#} with their spread); {CardSlips.Words(cause)}"), cause));
        }
        return true;
    }

    private static double? Portion(CardJudgement judgement, Formula formula, out string why)
    {
        why = "";
        if (judgement.Figure(CardFigureKind.PortionGrams) is CardFigure size)
            return size.Middle;
        return judgement.Figure(CardFigureKind.Portions) is { Low: > 0 } portions && portions.Low == portions.High ? formula.TotalGrams / portions.Low : null;
    }

    private static double Concentration(CardJudgement judgement, Formula formula)
    {
        double left = judgement.Figure(CardFigureKind.YieldGrams)?.Middle is double made && made > 0 && made < formula.TotalGrams ? made
            : judgement.Figure(CardFigureKind.Portions)?.Middle * judgement.Figure(CardFigureKind.PortionGrams)?.Middle is double served && served > 0 && served < formula.TotalGrams ? served : formula.TotalGrams;
        return Math.Clamp(formula.TotalGrams / left, 1, 2);
    }

    private static LabelNutrient? NutrientOf(CardFigureKind kind) => kind switch
    {
        CardFigureKind.Kilocalories => LabelNutrient.Kilocalories,
        CardFigureKind.Kilojoules => LabelNutrient.Kilojoules,
        CardFigureKind.Fat => LabelNutrient.Fat,
        CardFigureKind.Saturates => LabelNutrient.Saturates,
        CardFigureKind.Carbohydrate => LabelNutrient.Carbohydrate,
        CardFigureKind.Sugars => LabelNutrient.Sugars,
        CardFigureKind.Fibre => LabelNutrient.Fibre,
        CardFigureKind.Protein => LabelNutrient.Protein,
        CardFigureKind.Salt => LabelNutrient.Salt,
        CardFigureKind.Sodium => LabelNutrient.Sodium,
        _ => null,
    };

    private static CardFigure? Of(CardFigure[] figures, CardFigureKind kind) => Array.Find(figures, figure => figure.Kind == kind);

    // Energy is printed to 5 or 10 kcal, grams to the gram or the half: 21 CFR 101.9(c), from the rounding of labels.
    private static double Step(CardFigure figure) => figure.Kind is CardFigureKind.Kilocalories or CardFigureKind.Kilojoules && figure.Low % 10 == 0 ? Math.Max(10, figure.Step)
        : figure.Kind is CardFigureKind.Kilocalories && figure.Low % 5 == 0 ? Math.Max(5, figure.Step) : figure.Step;

    private static double Low(CardFigure figure) => Math.Max(0, figure.Low - Step(figure) / 2);

    private static double High(CardFigure figure) => figure.High + Step(figure) / 2;
}
