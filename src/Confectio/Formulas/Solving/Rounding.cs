using Confectio.Ingredients;
using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

/// <summary>
/// Rounds an answer: every line to one of the two steps beside it, and of all these formulas the best by what was asked, in order: what
/// must be kept, the total, values that must be hit, the targets priority by priority, the cost where it counts, and the nearest to the
/// answer. A line goes two steps only where what must be kept would break with one.
/// </summary>
internal static partial class Rounding
{
    // What rounding of numbers may leave of a step, and of what must be kept.
    private const double OfAStep = 1e-9;

    // A value that must be hit and that no grid has: a hundredth of it off counts one.
    private const double Hundredth = 0.01;

    // Spoons and cups cannot make up a total: it is kept to this share.
    private const double TotalBySpoons = 0.01;

    private const int Kept = 0, WholeMass = 1, ToBeHit = 2, FirstPriority = 3;

    public static RoundedFormula Of(SolvedFormula answer, RoundingGrid grid)
    {
        FormulaProblem problem = answer.Problem;
        RoundingGrid.Step[] steps = [.. problem.Candidates.Select((candidate, j) => grid.StepOf(candidate.Ingredient, answer.Grams[j]))];
        int levels = FirstPriority + RankedProblem.MostPriorities + 1;
        (BoxSearch.Measure[] measures, BoxSearch.Loose? loose) = Measures(answer, grid, levels);
        BoxSearch search = Search(1);
        double[] grams = search.Run();
        double finest = steps.Min(step => step.Grams);
        if (search.Key[Kept] > OfAStep || search.Key[WholeMass] > finest)
        {
            BoxSearch wider = Search(2);
            double[] others = wider.Run();
            if (wider.Key[Kept] < search.Key[Kept] - OfAStep
                || (wider.Key[Kept] <= search.Key[Kept] && search.Key[WholeMass] > finest && wider.Key[WholeMass] <= finest))
                (search, grams) = (wider, others);
        }
        return Make(answer, steps, grams, search);

        BoxSearch Search(int reach)
        {
            double[][] masses = [.. problem.Candidates.Select((_, j) => Masses(answer, j, steps[j].Grams, reach))];
            return new BoxSearch(masses, Costs(answer, steps, masses), measures, levels, loose);
        }
    }

    // The steps beside a line that its limits allow; where they allow none, those beside it all the same.
    private static double[] Masses(SolvedFormula answer, int line, double step, int reach)
    {
        double grams = answer.Grams[line];
        Ingredient ingredient = answer.Problem.Candidates[line].Ingredient;
        List<(double Low, double High)> limits = [];
        bool isFixed = false;
        foreach (Demand demand in answer.Problem.Demands)
        {
            if (demand is Demand.IngredientMass mass && mass.Ingredient.Equals(ingredient))
            {
                limits.Add((mass.LowGrams, mass.HighGrams));
                isFixed |= mass.IsFixed;
            }
            else if (demand is Demand.SomeOf some && some.Ingredients.Contains(ingredient))
            {
                limits.Add((some.LowGrams, some.HighGrams));
            }
        }
        if (grams == 0 || isFixed)
            return [grams];
        double below = Math.Floor(grams / step * (1 + OfAStep / 1000)), above = Math.Ceiling(grams / step * (1 - OfAStep / 1000));
        // Tonnes by the milligram have more digits than a number holds: there is nothing to round.
        if (above > 1e12)
            return [grams];
        if (below == above)
            (below, above) = (below - 1, above + 1);
        below = Math.Max(0, below - (reach - 1));
        above += reach - 1;
        double[] all = [.. Enumerable.Range(0, (int)(above - below) + 1).Select(k => (below + k) * step)];
        double[] allowed = [.. all.Where(mass => limits.TrueForAll(limit =>
            mass >= limit.Low * (1 - OfAStep) && mass <= limit.High * (1 + OfAStep)))];
        return allowed.Length > 0 ? allowed : all;
    }

    // How far from the answer, in steps; or where closeness to the base is traded, what that costs.
    private static double[][] Costs(SolvedFormula answer, RoundingGrid.Step[] steps, double[][] masses)
    {
        FormulaProblem problem = answer.Problem;
        double unit = problem.UnitGrams;
        return
        [
            .. masses.Select((choices, j) => choices.Select(mass =>
            {
                bool isTraded = problem.Preference == Preference.ClosenessTraded;
                double based = problem.Candidates[j].BaseGrams;
                double far = isTraded ? Assembly.Hold(based / unit) * (mass - based) / unit : (mass - answer.Grams[j]) / steps[j].Grams;
                return far * far / 2 * (isTraded ? problem.Closeness : 1);
            }).ToArray()),
        ];
    }

    private static (BoxSearch.Measure[] Measures, BoxSearch.Loose? Loose) Measures(SolvedFormula answer, RoundingGrid grid, int levels)
    {
        FormulaProblem problem = answer.Problem;
        List<BoxSearch.Measure> measures = [];
        BoxSearch.Loose? loose = null;
        bool isSolved = answer.Status == SolutionStatus.Solved;
        int last = problem.Demands.Max(demand => demand.Aim?.Priority) ?? 0;
        bool boils = answer.BoiledOffGrams > 0 || problem.BoilOff is not null;
        bool makesUpTotal = boils && !grid.IsOfSpoons && problem.Total is { IsOneValue: true };
        if (answer.BoiledOffGrams > 0 && !makesUpTotal)
        {
            // As much as it was, and it comes off every share.
            loose = new BoxSearch.Loose(measures.Count, 0, answer.BoiledOffGrams, answer.BoiledOffGrams);
            Add(part: null, of: null, double.NegativeInfinity, double.PositiveInfinity, 1, WholeMass, isSquared: false);
        }
        // What boils off to make up the total comes off every share, whenever that was asked.
        foreach (Demand demand in problem.Demands.OrderBy(demand => demand is Demand.Total ? 0 : 1))
        {
            switch (demand)
            {
                case Demand.Total total when makesUpTotal:
                    Demand.BoilOff? asked = problem.BoilOff;
                    loose = new BoxSearch.Loose(measures.Count, total.LowGrams, asked?.LowGrams ?? problem.BaseBoiledOffGrams,
                        asked?.HighGrams ?? problem.BaseBoiledOffGrams);
                    // What goes into the pot, no part of what comes out of it: what boiling cannot make good is what the whole is off by.
                    Add(part: null, of: null, total.LowGrams + loose.Value.Low, total.LowGrams + loose.Value.High, 1, WholeMass, isSquared: false);
                    break;
                case Demand.Total total when grid.IsOfSpoons || !total.IsOneValue:
                    double room = grid.IsOfSpoons ? TotalBySpoons : 0;
                    Add(FormulaPart.Everything, null, total.LowGrams * (1 - room), total.HighGrams * (1 + room),
                        100 / total.HighGrams, Kept, isSquared: false);
                    break;
                case Demand.Total total:
                    double off = OffGrid(answer, grid, total);
                    Add(FormulaPart.Everything, null, total.LowGrams - off, total.HighGrams + off, 1, WholeMass, isSquared: false);
                    break;
                case Demand.Share { IsTarget: true } target when isSolved:
                    Add(target.Part, target.Of, target.LowFraction, target.HighFraction, 1 / target.Tolerance!.Value,
                        LevelOf(target.Priority!.Value), isSquared: true);
                    break;
                case Demand.PartMass { IsTarget: true } target when isSolved:
                    Add(target.Part, null, target.LowGrams, target.HighGrams, 1 / target.ToleranceGrams!.Value,
                        LevelOf(target.Priority!.Value), isSquared: true);
                    break;
                case Demand.PartMass mass when isSolved:
                    Required(mass, mass.Part, null, 100 / problem.UnitGrams);
                    break;
                case Demand.Share share when isSolved:
                    Required(share, share.Part, share.Of, 100);
                    break;
                case Demand.UnitCost cost when isSolved:
                    double size = Math.Max(cost.MostPerKilogram, 1e-6);
                    measures.Add(new BoxSearch.Measure
                    {
                        Part = [.. problem.Candidates.Select(candidate => candidate.CostPerKilogram)],
                        Whole = [.. problem.Candidates.Select(_ => 1.0)], IsShare = true, LooseInPart = 0, LooseInWhole = loose is null ? 0 : 1,
                        Low = double.NegativeInfinity, High = cost.MostPerKilogram + OfAStep * size, Weight = 100 / size, Level = Kept, IsSquared = false,
                    });
                    break;
                case Demand.PropertyValue property when isSolved:
                    if (OfProperty(answer, property, loose is not null, property.Priority is int priority ? LevelOf(priority) : FirstPriority)
                        is BoxSearch.Measure measure)
                        measures.Add(measure);
                    break;
                case Demand.Ratio ratio when isSolved:
                    Required(ratio, FormulaPart.OfIngredient(ratio.Ingredient), FormulaPart.OfIngredient(ratio.To),
                        100 / Math.Max(1e-3, double.IsFinite(ratio.HighRatio) ? ratio.HighRatio : ratio.LowRatio));
                    break;
            }
        }
        if (problem.Preference == Preference.LeastCost)
        {
            double[] cost = [.. problem.Candidates.Select(candidate => candidate.CostPerKilogram / 1000)];
            measures.Add(new BoxSearch.Measure
            {
                Part = cost, Whole = new double[cost.Length], IsShare = false, LooseInPart = 0, LooseInWhole = 0,
                Low = double.NegativeInfinity, High = 0, Weight = 1, Level = levels - 1, IsSquared = false,
            });
        }
        return ([.. measures], loose);

        // Where closeness is traded, the targets of the last priority are weighed together with it.
        int LevelOf(int priority) => problem.Preference == Preference.ClosenessTraded && priority == last ? levels : FirstPriority + priority - 1;

        void Required(Demand demand, FormulaPart part, FormulaPart? of, double weight)
        {
            // No grid hits one value; a range is kept, or else broken least.
            if (demand.IsOneValue)
                Add(part, of, demand.LowEnd, demand.HighEnd, 1 / (Hundredth * Math.Max(1e-6, demand.LowEnd)), ToBeHit, isSquared: true);
            else
                Add(part, of, demand.LowEnd - Slack(demand.LowEnd), demand.HighEnd + Slack(demand.HighEnd), weight, Kept, isSquared: false);
        }

        // Of each end its own: of an end that is none it would leave nothing of the other.
        static double Slack(double end) => double.IsFinite(end) ? OfAStep * Math.Max(1, Math.Abs(end)) : 0;

        void Add(FormulaPart? part, FormulaPart? of, double low, double high, double weight, int level, bool isSquared) =>
            measures.Add(new BoxSearch.Measure
            {
                Part = [.. problem.Candidates.Select(candidate => part?.FractionIn(candidate.Ingredient) ?? 1)],
                Whole = [.. problem.Candidates.Select(candidate => of?.FractionIn(candidate.Ingredient) ?? 0)],
                IsShare = of is not null,
                LooseInPart = loose is null ? 0 : part?.FractionOfBoiledOffWater ?? 0,
                LooseInWhole = loose is null ? 0 : of?.FractionOfBoiledOffWater ?? 0,
                Low = low, High = high, Weight = weight, Level = level, IsSquared = isSquared,
            });
    }

    // A total of 1526 g stands on no grid of 5 g: to half a step of it the whole is what was asked, and no baking powder is moved to make
    // up a gram. What is given line by line comes off first.
    private static double OffGrid(SolvedFormula answer, RoundingGrid grid, Demand.Total total)
    {
        if (grid.StepGrams is not double step)
            return 0;
        double given = answer.Problem.Demands.OfType<Demand.IngredientMass>().Where(mass => mass.IsFixed).Sum(mass => mass.LowGrams);
        double steps = (total.LowGrams - given) / step;
        return Math.Abs(steps - Math.Round(steps)) <= OfAStep * Math.Max(1, Math.Abs(steps)) ? 0 : step / 2;
    }

    private static RoundedFormula Make(SolvedFormula answer, RoundingGrid.Step[] steps, double[] grams, BoxSearch search)
    {
        FormulaProblem problem = answer.Problem;
        List<FormulaLine> lines = [];
        for (int j = 0; j < grams.Length; j++)
        {
            if (grams[j] <= 0)
                continue;
            bool isWhole = Math.Abs(grams[j] / steps[j].Grams - Math.Round(grams[j] / steps[j].Grams)) < OfAStep;
            lines.Add(isWhole ? steps[j].Line(problem.Candidates[j].Ingredient, grams[j])
                : FormulaLine.Of(problem.Candidates[j].Ingredient, grams[j]));
        }
        double boiledOff = BoiledOff(answer, grams);
        // Rounding down may leave less water than was to boil off.
        double boiled = Math.Min(boiledOff, lines.Count > 0 ? Formula.WaterOf(lines) : 0);
        Formula? formula = lines.Sum(line => line.Grams.Likely) - boiled > 0 ? Formula.Of(problem.Name, lines, boiled) : null;
        // What is given is not rounded; of what vanished or is not there no step moves anything.
        double[] moved = [.. problem.Candidates.Select((candidate, j) => answer.Grams[j] == 0 || problem.Demands.OfType<Demand.IngredientMass>()
            .Any(mass => mass.IsFixed && mass.Ingredient.Equals(candidate.Ingredient)) ? 0 : steps[j].Grams)];
        // What was searched by slopes is not proved.
        bool isProven = search.IsProven && !problem.IsCurved;
        return new RoundedFormula(formula, grams, boiled, isProven ? DemandResult.OfRounded(problem, grams, boiled, answer.Results, moved)
                : DemandResult.Of(problem, grams, boiled), isProven,
            [.. problem.Ingredients.Where((_, j) => answer.Grams[j] > 0 && grams[j] == 0)], FormulaCost.Of(problem, grams, boiled));
    }

    // So much as brings what was put in to the total, where a total is given.
    private static double BoiledOff(SolvedFormula answer, double[] grams)
    {
        FormulaProblem problem = answer.Problem;
        Demand.BoilOff? asked = problem.BoilOff;
        if (asked is null || problem.Total is not { IsOneValue: true } total)
            return answer.BoiledOffGrams;
        return Math.Clamp(grams.Sum() - total.LowGrams, asked.LowGrams, asked.HighGrams);
    }
}
