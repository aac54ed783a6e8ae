using Confectio.Ingredients;
using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

/// <summary>What the demands leave open of an answer, and the simplest trades within it.</summary>
internal sealed class FreedomSearch
{
    private const int MostTrades = 3;

    // No ingredient of a trade moves by more than this share of the whole, where a smaller trade is large enough to weigh.
    private const double LargestShare = 0.1;

    // What moves by less than this share of what moves most does not set the size.
    private const double Trace = 0.05;

    // A trade of which nothing can be weighed is none.
    private const double LeastGrams = 0.1;

    // Two limits nearer to each other than this, in units of the total, are met together.
    private const double Meets = 1e-8;

    // What rounding may move a figure that stays, relative to it.
    private const double Stays = 1e-7;

    private readonly FormulaProblem _problem;
    private readonly Assembly _assembly;
    private readonly double[] _x;
    private readonly NullSpace _space;
    private readonly int[] _free;

    private FreedomSearch(FormulaProblem problem, Assembly assembly, double[] x, NullSpace space, int[] free)
    {
        (_problem, _assembly, _x, _space, _free) = (problem, assembly, x, space, free);
    }

    /// <summary>What is open.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="assembly">The same in numbers.</param>
    /// <param name="x">The answer.</param>
    /// <param name="fixes">
    /// Whether a row, or after all rows a bound, keeps a target from being met better; what only keeps the formula from its base or from
    /// costing less leaves a way open.
    /// </param>
    public static DegreesOfFreedom Of(FormulaProblem problem, Assembly assembly, double[] x, Predicate<int> fixes)
    {
        RankedProblem ranked = assembly.Ranked;
        LeastSquaresProblem conditions = ranked.Conditions;
        List<int> free = [];
        for (int j = 0; j < conditions.Variables; j++)
        {
            if (conditions.Lower[j] < conditions.Upper[j] && !fixes(conditions.Rows + j))
                free.Add(j);
        }
        if (free.Count == 0)
            return new DegreesOfFreedom(0, []);
        List<double[]> rows = [];
        for (int k = 0; k < conditions.Rows; k++)
        {
            if (fixes(k) || conditions.RowLow[k] == conditions.RowHigh[k])
                rows.Add(Part(conditions.Row(k)));
        }
        double[] slope = new double[conditions.Variables];
        for (int t = 0; t < ranked.Targets; t++)
        {
            ranked.Slope(t, x, slope);
            rows.Add(Part(slope));
        }
        NullSpace space = NullSpace.Of(rows, free.Count);
        FreedomSearch search = new(problem, assembly, x, space, [.. free]);
        return new DegreesOfFreedom(space.Directions, [.. free.Where((j, at) => space.Moves(at) && j < problem.Candidates.Count)
            .Select(j => problem.Candidates[j].Ingredient)], search.Trades);

        double[] Part(ReadOnlySpan<double> row)
        {
            double[] part = new double[free.Count];
            for (int at = 0; at < part.Length; at++)
                part[at] = row[free[at]];
            return part;
        }
    }

    private List<Trade> Trades()
    {
        List<Trade> trades = [];
        List<double[]> taken = [];
        // Of as few lines, what is in the bowl comes before what would have to be fetched.
        foreach (double[] direction in _space.Simplest().OrderBy(Lines).ThenBy(Fetched))
        {
            if (trades.Count == MostTrades)
                break;
            if (IsNew(direction, taken, out double[] rest) && Sized(direction) is Trade trade)
            {
                trades.Add(trade);
                taken.Add(rest);
            }
        }
        return trades;

        static int Lines(double[] direction) => direction.Count(value => value != 0);

        int Fetched(double[] direction) => direction.Where((value, at) => value != 0 && _x[_free[at]] == 0).Count();
    }

    // What is left of a direction beside those taken; where nothing is, it is made up of them.
    private static bool IsNew(double[] direction, List<double[]> taken, out double[] rest)
    {
        rest = [.. direction];
        foreach (double[] other in taken)
        {
            double along = rest.Zip(other, (a, b) => a * b).Sum();
            for (int j = 0; j < rest.Length; j++)
                rest[j] -= along * other[j];
        }
        double length = Math.Sqrt(rest.Sum(value => value * value));
        if (length <= 1e-6)
            return false;
        for (int j = 0; j < rest.Length; j++)
            rest[j] /= length;
        return true;
    }

    private Trade? Sized(double[] direction)
    {
        double[] d = new double[_x.Length];
        for (int at = 0; at < _free.Length; at++)
            d[_free[at]] = direction[at] * _assembly.UnitGrams;
        (double on, string untilOn) = Room(d);
        (double back, string untilBack) = Room([.. d.Select(value => -value)]);
        int first = Array.FindIndex(d, value => value != 0);
        // The way that has more room; of two that have the same, more of the first ingredient.
        if (back > on * (1 + 1e-9) || (back >= on * (1 - 1e-9) && d[first] < 0) || !d.AsSpan(0, _problem.Candidates.Count).ContainsAnyInRange(double.Epsilon, double.MaxValue))
        {
            (on, back, untilOn, untilBack) = (back, on, untilBack, untilOn);
            d = [.. d.Select(value => -value)];
        }
        double[] moved = [.. d[.._problem.Candidates.Count].Select(Math.Abs).Where(value => value > 0)];
        if (moved.Length == 0 || !Array.Exists(d[.._problem.Candidates.Count], value => value > 0))
            return null;
        double most = moved.Max(), least = moved.Where(value => value >= Trace * most).Min(), whole = _problem.GramsOf(FormulaPart.Everything, _assembly.Grams(_x), 0);
        if (!double.IsFinite(on + back) || !(on * most >= LeastGrams) || !Stand(d, on) || !Stand(d, on / 2) || !Stand(d, -back) || !Stand(d, -back / 2))
            return null;
        double size = RoundFigure(Math.Min(on * least, Math.Max(LargestShare * whole * least / most, Math.Min(LeastGrams, on * least)))) / least;
        back = back * most < LeastGrams ? 0 : back;
        Ingredient[] ingredients = [.. _problem.Candidates.Where((_, j) => d[j] != 0).Select(candidate => candidate.Ingredient)];
        double boiled = 0;
        for (int j = _problem.Candidates.Count; j < d.Length; j++)
            boiled -= d[j] * size;
        return new Trade(ingredients, [.. d[.._problem.Candidates.Count].Where(value => value != 0).Select(value => value * size)], boiled,
            (on / size, untilOn), (back / size, untilBack));
    }

    // The largest of 1, 2 or 5 times a power of ten that is no more than a mass.
    private static double RoundFigure(double grams)
    {
        double decade = Math.Pow(10, Math.Floor(Math.Log10(grams * (1 + 1e-12))));
        double times = grams / decade * (1 + 1e-9);
        double figure = (times >= 5 ? 5 : times >= 2 ? 2 : 1) * decade;
        return Math.Min(figure, grams);
    }

    // How far one can go, and what ends it.
    private (double Times, string Until) Room(double[] d)
    {
        LeastSquaresProblem conditions = _assembly.Ranked.Conditions;
        double unit = _assembly.UnitGrams;
        (double times, string until, double pull) room = (double.PositiveInfinity, "", 0);
        double most = d.Max(Math.Abs);
        for (int j = 0; j < d.Length; j++)
        {
            if (d[j] == 0)
                continue;
            int side = d[j] < 0 ? 1 : -1;
            double end = side > 0 ? conditions.Lower[j] : conditions.Upper[j];
            Narrow(Math.Abs(end - _x[j]) * unit / Math.Abs(d[j]), Math.Abs(d[j]), _assembly.BoundEnd(j, side) is (Demand demand, int at)
                ? $"{demand.SayEnd(at)} stops it" : $"no {_problem.Candidates[j].Ingredient.Name} is left");
        }
        for (int k = 0; k < conditions.Rows; k++)
        {
            if (conditions.RowLow[k] == conditions.RowHigh[k])
                continue;
            ReadOnlySpan<double> row = conditions.Row(k);
            double value = 0, slope = 0, size = 0;
            for (int j = 0; j < d.Length; j++)
            {
                value += row[j] * _x[j] * unit;
                slope += row[j] * d[j];
                size += Math.Abs(row[j] * d[j]);
            }
            if (Math.Abs(slope) <= 1e-9 * size)
                continue;
            double end = (slope < 0 ? conditions.RowLow[k] : conditions.RowHigh[k]) * unit;
            Narrow(Math.Max(0, (end - value) / slope), Math.Abs(slope), k == _assembly.WaterRow ? "no water is left to boil off" : $"{_assembly.Rows[k].SayEnd(slope < 0 ? 1 : -1)} stops it");
        }
        return (room.times, room.until);

        // Of limits that meet in one place the one is named that a trade runs into, and not the one it grazes.
        void Narrow(double times, double pull, string until)
        {
            bool meets = Math.Abs(times - room.times) * most <= Meets * unit;
            if (meets ? pull > room.pull : times < room.times)
                room = (Math.Min(times, room.times), until, pull);
        }
    }

    // Counted anew from the masses: every target gets what it got, and what must be kept is kept. What is no straight line shows here.
    private bool Stand(double[] d, double times)
    {
        double[] here = _assembly.Grams(_x), there = new double[here.Length];
        for (int j = 0; j < there.Length; j++)
            there[j] = Math.Max(0, here[j] + times * d[j]);
        double boiledHere = _assembly.BoiledOffGrams(_x), boiledThere = boiledHere;
        for (int j = here.Length; j < d.Length; j++)
            boiledThere -= times * d[j];
        DemandResult[] before = DemandResult.Of(_problem, here, boiledHere), after = DemandResult.Of(_problem, there, Math.Max(0, boiledThere));
        return before.Zip(after).All(pair => pair.First.Demand.Aim is not null
            ? Nears(pair.First.Achieved, pair.Second.Achieved)
            : !pair.First.IsMet || pair.Second.IsMet || Nears(0, pair.Second.MissedBy));

        static bool Nears(double? one, double? other) => one is double a && other is double b
            ? Math.Abs(a - b) <= Stays * Math.Max(1, Math.Abs(a)) : one is null && other is null;
    }
}
