using Confectio.Ingredients;
using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

/// <summary>From a problem to its answer: every choice of what is left out, the best of them, and what to say about it.</summary>
internal static class ProblemSolver
{
    // For all choices together: with ten ingredients that may be left out there are a thousand.
    private const int MostBoxes = 3000;

    public static SolvedFormula Solve(FormulaProblem problem)
    {
        if (problem.Candidates.Count == 0)
            throw new InvalidOperationException("The problem has no ingredients to choose from.");
        if (problem.TotalIsFree && problem.Candidates.All(candidate => candidate.BaseGrams == 0))
            throw new InvalidOperationException("The total is free and the base is empty: nothing says how much to make. State a total or "
                + "base masses.");
        if (problem.Demands.Any(demand => demand is Demand.UnitCost) && problem.Unpriced is string names)
            throw new InvalidOperationException(FormulaProblem.Unknown(names) + ".");
        RankedSolver solver = RankedSolver.Take();
        try
        {
            return Solve(problem, solver);
        }
        finally
        {
            solver.GiveBack();
        }
    }

    private static SolvedFormula Solve(FormulaProblem problem, RankedSolver solver)
    {
        solver.BoxesLeft = MostBoxes;
        Attempt? best = null;
        List<Attempt> all = [];
        foreach (int[] choice in Choices(problem))
        {
            Attempt attempt = Try(problem, choice, solver);
            all.Add(attempt);
            if (best is null || IsBetter(attempt, best))
                best = attempt;
        }
        return best!.Status == SolveStatus.Optimal ? Answer(problem, best, all) : NoAnswer(problem, all);
    }

    /// <summary>The demands that bind, in one line: two answers are of one kind where these are the same.</summary>
    public static string Signature(SolvedFormula answer) =>
        string.Join('|', answer.Binding.Select(binding => Index(answer.Problem, binding.Demand) + (binding.AtLowEnd ? "-"
            : "+")).Order(StringComparer.Ordinal))
        + "/" + string.Join('|', answer.Grams.Select(grams => grams == 0 ? '0' : '1'))
        + "/" + string.Join('|', answer.Results.Where(result => result.Demand.Aim is not null)
            .Select(Place));

    // Missed, within, or met at an end of a range, which then holds the answer.
    private static char Place(DemandResult result) => result.MissedBy switch
    {
        null or > 1e-9 => '>',
        < -1e-9 => '<',
        _ when Math.Abs(result.Achieved!.Value - result.Demand.LowEnd) <= 1e-9 => '[',
        _ when Math.Abs(result.Achieved!.Value - result.Demand.HighEnd) <= 1e-9 => ']',
        _ => '=',
    };

    private static int Index(FormulaProblem problem, Demand demand)
    {
        for (int i = 0; i < problem.Demands.Count; i++)
        {
            if (ReferenceEquals(problem.Demands[i], demand))
                return i;
        }
        return -1;
    }

    private static IEnumerable<int[]> Choices(FormulaProblem problem)
    {
        List<int> alternatives = [];
        foreach (Demand demand in problem.Demands)
        {
            if (demand.IsChoice)
                alternatives.Add(demand.Alternatives);
        }
        int[] choice = new int[alternatives.Count];
        // With everything used first: where no choice can be met, that is the one to explain.
        while (true)
        {
            yield return [.. choice];
            int at = 0;
            while (at < choice.Length && ++choice[at] == alternatives[at])
                choice[at++] = 0;
            if (at == choice.Length)
                yield break;
        }
    }

    private static bool IsBetter(Attempt attempt, Attempt than) => Compare(attempt, than, attempt.Objectives.Length) > 0;

    // Above 0 where the first is the better, by so many of the levels.
    private static int Compare(Attempt attempt, Attempt than, int levels)
    {
        if (attempt.Status != SolveStatus.Optimal || than.Status != SolveStatus.Optimal)
            return (attempt.Status == SolveStatus.Optimal ? 1 : 0) - (than.Status == SolveStatus.Optimal ? 1 : 0);
        for (int level = 0; level < levels; level++)
        {
            double size = Math.Max(1e-12, Math.Max(Math.Abs(attempt.Objectives[level]), Math.Abs(than.Objectives[level])));
            double gain = than.Objectives[level] - attempt.Objectives[level];
            if (Math.Abs(gain) > 1e-7 * size + 1e-12)
                return Math.Sign(gain);
        }
        return 0;
    }

    private static Attempt Try(FormulaProblem problem, int[] choice, RankedSolver solver)
    {
        if (!problem.TotalIsFree)
            return Try(problem, choice, solver, problem.Total!);
        Attempt free = Try(problem, choice, solver, problem.FreeRange);
        if (!problem.BaseKeepsItsMasses || problem.Preference == Preference.ClosenessTraded || free.Status != SolveStatus.Optimal)
            return free;
        // A free total stays what the base makes unless a demand moves it: the targets are then met as well with that.
        Attempt kept = Try(problem, choice, solver, new Demand.Total(problem.BaseTotalGrams, problem.BaseTotalGrams));
        if (kept.Status != SolveStatus.Optimal || Compare(free, kept, free.Objectives.Length - 1) > 0)
            return free;
        // Of all formulas of any total none was shown to do better than the free one, and the kept one does as well.
        kept.Shortfall = Math.Max(kept.Shortfall, free.Shortfall);
        return kept;
    }

    private static Attempt Try(FormulaProblem problem, int[] choice, RankedSolver solver, Demand.Total total)
    {
        Assembly assembly = Assembly.Of(problem, choice, total);
        if (assembly.Crossing is not null)
            return new Attempt(assembly, SolveStatus.Infeasible, [], [], solver);
        SolveStatus status = solver.Solve(assembly.Ranked);
        // What the rest of the problem forbids stays forbidden: that is proved without the properties.
        if (status == SolveStatus.Optimal && problem.IsCurved)
            return Curved(problem, choice, solver, total, assembly);
        return new Attempt(assembly, status, solver.Solution.ToArray(), solver.LevelObjectives.ToArray(), solver);
    }

    private static Attempt Curved(FormulaProblem problem, int[] choice, RankedSolver solver, Demand.Total total, Assembly plain)
    {
        int boxes = solver.BoxesLeft;
        CurvedSearch search = new(problem, choice, total, plain, solver);
        SolveStatus status = search.Run();
        double[] objectives = status == SolveStatus.Optimal ? solver.LevelObjectives.ToArray() : [];
        Attempt attempt = new(search.Assembly, status, search.X, objectives, solver) { Search = search };
        // Nothing is known of formulas far away but that no target can be missed by less than not at all.
        if (status == SolveStatus.Optimal)
            attempt.Shortfall = objectives.Take(objectives.Length - 1).Sum();
        solver.BoxesLeft = boxes;
        return attempt;
    }

    private static SolvedFormula Answer(FormulaProblem problem, Attempt attempt, List<Attempt> all)
    {
        // A choice that was not decided might do better, by all that is missed.
        double others = all.Exists(other => other.Status == SolveStatus.Undecided) ? attempt.Objectives.Sum() : 0;
        // And one that was decided only within a bound might still be the best, by what is open of it.
        foreach (Attempt other in all)
        {
            if (other.Status == SolveStatus.Optimal && other.Objectives[0] - other.Shortfall <= attempt.Objectives[0])
                others = Math.Max(others, other.Shortfall);
        }

        Assembly assembly = attempt.Assembly;
        LeastSquaresProblem conditions = assembly.Ranked.Conditions;
        double[] grams = assembly.Grams(attempt.X);
        double boiledOff = assembly.BoiledOffGrams(attempt.X);
        List<BindingDemand> binding = [];
        for (int k = 0; k < conditions.Rows; k++)
        {
            if (attempt.Binds[k] != 0 && !assembly.IsSideRow(k))
                Add(assembly.Rows[k], attempt.Binds[k], attempt.Levels[k]);
        }
        for (int j = 0; j < conditions.Variables; j++)
        {
            int side = attempt.Binds[conditions.Rows + j];
            if (side != 0 && assembly.BoundEnd(j, side) is (Demand demand, int end))
                Add(demand, end, attempt.Levels[conditions.Rows + j]);
        }
        OptimalityCheck check = attempt.Check;
        string[] alike = [.. Alike(problem, attempt, all)];
        double? certain = null;
        if (problem.Preference != Preference.LeastCost && attempt.Search is null)
        {
            double worst = 0;
            for (int j = 0; j < conditions.Variables; j++)
                worst = Math.Max(worst, check.CertainTo(conditions.Prior[j]) * assembly.UnitGrams);
            certain = worst;
        }
        return new SolvedFormula(problem, SolutionStatus.Solved, grams, boiledOff)
        {
            Binding = binding,
            OtherChoices = alike,
            Freedom = () => FreedomSearch.Of(problem, assembly, attempt.X,
                at => attempt.Binds[at] != 0 && attempt.Levels[at] <= assembly.Ranked.LastPriority),
            Certificate = new AnswerCertificate(check.PrimalViolation, Math.Max(check.Stationarity, attempt.Search?.Unsettled ?? 0),
                check.WrongSign, check.Complementarity, check.Gap, Math.Max(attempt.Shortfall, others), certain)
            {
                Better = Better(problem, assembly.Ranked),
                Starts = attempt.Search?.Starts,
                AgreeingStarts = attempt.Search?.Agreeing,
            },
        };

        // Which others of those to choose from meet the targets as well: which of them is taken then hangs on little, and is said.
        static IEnumerable<string> Alike(FormulaProblem problem, Attempt best, List<Attempt> all)
        {
            if (problem.Preference == Preference.LeastCost)
                yield break;
            double[] here = best.Assembly.Grams(best.X);
            foreach (Demand.SomeOf choice in problem.Demands.OfType<Demand.SomeOf>())
            {
                string[] names = [.. choice.Ingredients.Where(ingredient => here[problem.IndexOf(ingredient)] == 0 && all.Exists(other =>
                    other.Status == SolveStatus.Optimal && other.Assembly.Grams(other.X)[problem.IndexOf(ingredient)] > 0
                    && Compare(other, best, other.Objectives.Length - 1) >= 0)).Select(ingredient => ingredient.Name)];
                if (names.Length > 0)
                    yield return $"By the targets and limits these would do as well: {string.Join(", ", names)}. How they taste, set and whip was not asked.";
            }
        }

        void Add(Demand demand, int side, int level)
        {
            // Where there is room nothing binds, whatever rounding left of a pull.
            if (demand.IsGiven || demand.HasRoom(problem, grams, boiledOff, side))
                return;
            BindingDemand one = new(demand, side, level <= assembly.Ranked.LastPriority);
            // A demand on several ingredients holds each of them; it is one thing that binds.
            int known = binding.FindIndex(other => ReferenceEquals(other.Demand, demand) && other.ToString() == one.ToString());
            if (known < 0)
                binding.Add(one);
            else if (one.CostsTargets)
                binding[known] = one;
        }
    }

    // What the proof is of. The last word is proved beside the targets where these are sums; where they are shares of something that moves,
    // other formulas far away may meet them as well.
    private static string Better(FormulaProblem problem, RankedProblem ranked)
    {
        if (problem.Preference == Preference.ClosenessTraded)
            return "does better by the targets and by closeness to the formula it started from together";
        bool isByCost = problem.Preference == Preference.LeastCost && problem.Candidates.Any(candidate => candidate.CostPerKilogram > 0);
        string last = isByCost ? "costs less" : problem.Candidates.Any(candidate => candidate.BaseGrams > 0)
            ? "is nearer to the formula it started from" : "";
        if (ranked.Targets == 0)
            return last.Length > 0 ? last : "makes the masses more even";
        string targets = ranked.LastPriority > 1 ? "meets the targets better in the order of their priorities" : "meets the targets better";
        bool isOfSums = Enumerable.Range(0, ranked.Targets).All(target => !ranked[target].IsShare);
        return last.Length > 0 && isOfSums ? $"{targets}, and of those that meet them as well none {last}" : targets;
    }

    // The closest formula keeps one of the choices: an ingredient that is to be left out or at least 50 g is not 20 g.
    private static SolvedFormula NoAnswer(FormulaProblem problem, List<Attempt> all)
    {
        (double[] grams, double boiledOff, double breach) closest = ([], 0, double.PositiveInfinity);
        foreach (Attempt attempt in all)
        {
            // Where only the limits of properties were not kept, the closest is what was found nearest to them.
            (double[] grams, double boiledOff, double breach) = attempt.Search is CurvedSearch search
                ? (attempt.Assembly.Grams(search.X), attempt.Assembly.BoiledOffGrams(search.X), search.Breach)
                : ClosestFormula.Of(problem, attempt.Assembly);
            if (breach < closest.breach || closest.grams.Length == 0)
                closest = (grams, boiledOff, breach);
        }
        if (all.Exists(attempt => attempt.Status != SolveStatus.Infeasible))
        {
            SolvedFormula nearest = new(problem, SolutionStatus.Undecided, closest.grams, closest.boiledOff);
            return new SolvedFormula(problem, SolutionStatus.Undecided, closest.grams, closest.boiledOff) { WhyUndecided = Why(nearest) };
        }
        ConflictingDemands conflict = ConflictSearch.Of([.. all.Select(attempt => (attempt.Assembly, attempt.RowProof, attempt.BoundProof))]);
        return new SolvedFormula(problem, SolutionStatus.Impossible, closest.grams, closest.boiledOff) { Conflict = conflict };
    }

    private static string Why(SolvedFormula nearest)
    {
        DemandResult[] properties = [.. nearest.Results.Where(result => result.Demand is Demand.PropertyValue { Asked.IsFraction: false })];
        if (Array.Find(properties, result => result.Achieved is null) is DemandResult none)
            return $"No formula was found that has the {((Demand.PropertyValue)none.Demand).Asked} at all: there is too little water for what is "
                + "dissolved in it. That there is none is not proved.";
        DemandResult[] broken = [.. properties.Where(result => !result.IsMet && result.Demand.Aim is null)];
        return broken.Length == 0 ? "Neither a formula nor a conflict could be proved in the digits that a number has."
            : $"No formula was found that keeps '{string.Join("' and '", broken.Select(result => result.Demand.Sentence))}'; the nearest has "
                + $"{string.Join(" and ", broken.Select(result => result.Demand.SayMeasure(result.Achieved)))}. That there is none is not proved.";
    }

    /// <summary>One choice of what is left out, solved; it keeps what the workspace would overwrite.</summary>
    private sealed class Attempt
    {
        public Attempt(Assembly assembly, SolveStatus status, double[] x, double[] objectives, RankedSolver solver)
        {
            Assembly = assembly;
            Status = status;
            X = x;
            Objectives = objectives;
            LeastSquaresProblem conditions = assembly.Ranked.Conditions;
            int count = conditions.Rows + conditions.Variables;
            Binds = new int[count];
            Levels = new int[count];
            if (status == SolveStatus.Infeasible && assembly.Crossing is null)
            {
                RowProof = solver.RowProof[..conditions.Rows].ToArray();
                BoundProof = solver.BoundProof[..conditions.Variables].ToArray();
            }
            if (status != SolveStatus.Optimal)
                return;
            Check = solver.Check;
            Shortfall = solver.Shortfall;
            for (int k = 0; k < conditions.Rows; k++)
                (Binds[k], Levels[k]) = (solver.SideOfRow(k), solver.LevelOfRow(k));
            for (int j = 0; j < conditions.Variables; j++)
                (Binds[conditions.Rows + j], Levels[conditions.Rows + j]) = (solver.SideOfBound(j), solver.LevelOfBound(j));
        }

        public Assembly Assembly { get; }

        public SolveStatus Status { get; }

        public double[] X { get; }

        public double[] Objectives { get; }

        public OptimalityCheck Check { get; }

        /// <summary>How much less the targets could be missed at most.</summary>
        public double Shortfall { get; set; }

        /// <summary>What found it, where properties that are no sums were asked.</summary>
        public CurvedSearch? Search { get; init; }

        public int[] Binds { get; }

        public int[] Levels { get; }

        public double[] RowProof { get; } = [];

        public double[] BoundProof { get; } = [];
    }
}
