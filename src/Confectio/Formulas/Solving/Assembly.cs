using Confectio.Ingredients;
using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

/// <summary>
/// A problem in numbers: which unknown, row and bound stands for which demand. Masses are in units of the total, so that all
/// figures are near one; boiled-off water is one more unknown, pure water from minus the most to minus the least.
/// </summary>
internal sealed partial class Assembly
{
    // A line that the base has none of may still come in: it is held as if the base had a thousandth of the total.
    private const double LeastBaseShare = 0.001;

    private const double HalfOfBase = 0.5;

    // Rounding leaves some 1e-15 of a line that the demands leave nothing: that is no line.
    private const double Nothing = 1e-12;

    private readonly FormulaProblem _problem;
    private readonly int _boilOff;
    private readonly List<Demand> _rows = [];
    private readonly List<(int Variable, Demand Demand, double Lower, double Upper)> _bounds = [];
    private readonly Demand?[] _lowerDemand, _upperDemand;
    private Demand.Total _total = null!;

    private Assembly(FormulaProblem problem, double unitGrams, Linearisation? linearised)
    {
        _problem = problem;
        _linearised = linearised;
        UnitGrams = unitGrams;
        bool boils = problem.BaseBoiledOffGrams > 0 || problem.BoilOff is not null;
        _boilOff = boils ? problem.Candidates.Count : -1;
        Ranked = new RankedProblem(problem.Candidates.Count + (boils ? 1 : 0));
        _lowerDemand = new Demand[Ranked.Conditions.Variables];
        _upperDemand = new Demand[Ranked.Conditions.Variables];
    }

    /// <summary>The problem for the solver.</summary>
    public RankedProblem Ranked { get; }

    /// <summary>How many grams one unit of an unknown is.</summary>
    public double UnitGrams { get; }

    /// <summary>Two demands on one ingredient that leave it nothing; null where there are none.</summary>
    public (Demand AtLeast, Demand AtMost)? Crossing { get; private set; }

    /// <summary>Every demand on one unknown with its ends, in units: limits on one ingredient may be several.</summary>
    public IEnumerable<(Demand Demand, double Lower, double Upper)> Bounds(int variable) =>
        _bounds.Where(bound => bound.Variable == variable).Select(bound => (bound.Demand, bound.Lower, bound.Upper));

    /// <summary>The total in units, where it is one value.</summary>
    public double? TotalUnits => _total.IsOneValue ? _total.HighGrams / UnitGrams : null;

    /// <summary>The row that lets no more water boil off than there is; null where none boils off.</summary>
    public int? WaterRow { get; private set; }

    /// <summary>The demand behind every row; a range of a phase or a ratio takes two.</summary>
    public IReadOnlyList<Demand> Rows => _rows;

    /// <summary>
    /// The demand behind the lower (+1) or upper (-1) bound of an unknown, and which end of the demand that is; null where there is
    /// none but that no mass is below 0.
    /// </summary>
    public (Demand Demand, int Side)? BoundEnd(int variable, int side) =>
        // Boiled-off water is a mass below 0, so its lower bound is the most of it.
        (side > 0 ? _lowerDemand : _upperDemand)[variable] is Demand demand ? (demand, IsBoilOff(variable) ? -side : side) : null;

    /// <summary>
    /// Puts a problem into numbers.
    /// </summary>
    /// <param name="problem">The problem.</param>
    /// <param name="choice">For each demand that is a choice, in order: which of its alternatives; the first where it is empty.</param>
    /// <param name="total">The total: the one asked for, or of a free one its range, or the base's where that is tried.</param>
    /// <param name="linearised">The slopes of what is neither a sum nor a fraction of sums; without them it is left out.</param>
    public static Assembly Of(FormulaProblem problem, ReadOnlySpan<int> choice, Demand.Total total,
        Linearisation? linearised = null)
    {
        Assembly assembly = new(problem, problem.UnitGrams, linearised) { _total = total };
        assembly.AddCandidates();
        int at = 0;
        for (int i = 0; i < problem.Demands.Count; i++)
        {
            Demand demand = problem.Demands[i];
            demand.AddChoice(assembly, demand.IsChoice && choice.Length > 0 ? choice[at++] : 0);
        }
        if (problem.TotalIsFree)
            assembly.AddTotal(total);
        if (assembly._boilOff >= 0)
            assembly.KeepToItsWater();
        assembly.KeepToSides();
        return assembly;
    }

    /// <summary>The grams of every candidate.</summary>
    public double[] Grams(ReadOnlySpan<double> x)
    {
        double[] grams = new double[_problem.Candidates.Count];
        for (int j = 0; j < grams.Length; j++)
            grams[j] = x[j] > Nothing ? x[j] * UnitGrams : 0;
        return grams;
    }

    /// <summary>The grams of water boiled off.</summary>
    public double BoiledOffGrams(ReadOnlySpan<double> x) => _boilOff < 0 ? 0 : Math.Max(0, -x[_boilOff] * UnitGrams);

    /// <summary>Whether an unknown is the water that boils off, which is taken as a mass below 0.</summary>
    public bool IsBoilOff(int variable) => variable == _boilOff;

    /// <summary>How strongly a mass is held, in units: changing it by half of it counts one.</summary>
    public static double Hold(double units) => 1 / (HalfOfBase * Math.Max(Math.Abs(units), LeastBaseShare));

    private double Share(FormulaPart part, int variable) =>
        variable == _boilOff ? part.FractionOfBoiledOffWater : part.FractionIn(_problem.Candidates[variable].Ingredient);

    private void AddCandidates()
    {
        LeastSquaresProblem conditions = Ranked.Conditions;
        double weight = _problem.Preference == Preference.ClosenessTraded ? Math.Sqrt(_problem.Closeness) : 1;
        for (int j = 0; j < conditions.Variables; j++)
        {
            bool isWater = j == _boilOff;
            double grams = isWater ? -_problem.BaseBoiledOffGrams : _problem.Candidates[j].BaseGrams;
            conditions.Centre[j] = grams / UnitGrams;
            conditions.Prior[j] = weight * Hold(grams / UnitGrams);
            if (isWater)
            {
                conditions.Lower[j] = conditions.Upper[j] = grams / UnitGrams;
                continue;
            }
            conditions.Lower[j] = 0;
            conditions.Cost[j] = _problem.Candidates[j].CostPerKilogram / 1000 * UnitGrams;
        }
        Ranked.LastWord = _problem.Preference switch
        {
            Preference.ClosenessTraded => LastWord.TradedAgainstTargets,
            Preference.LeastCost => LastWord.LeastCost,
            _ => LastWord.NearestToCentre,
        };
    }

    /// <summary>The row of the total.</summary>
    public void AddTotal(Demand.Total demand)
    {
        double[] ones = new double[Ranked.Conditions.Variables];
        Array.Fill(ones, 1);
        AddRow(demand, ones, demand.LowGrams / UnitGrams, demand.HighGrams / UnitGrams);
        if (!demand.IsOneValue)
            Ranked.MovingTotal = ones;
    }

    /// <summary>The bounds of the water that boils off, in place of those of the base.</summary>
    public void LimitBoilOff(Demand.BoilOff demand) => Tighten(demand, _boilOff, -demand.HighGrams, -demand.LowGrams, fresh: true);

    /// <summary>Bounds of an ingredient, g.</summary>
    public void Limit(Demand demand, Ingredient ingredient, double low, double high) =>
        Tighten(demand, _problem.IndexOf(ingredient), low, high);

    /// <summary>The ingredients to choose from.</summary>
    public IReadOnlyList<Candidate> Candidates => _problem.Candidates;

    // Limits on one ingredient leave what all of them allow; each end remembers the demand it is from.
    private void Tighten(Demand demand, int variable, double low, double high, bool fresh = false)
    {
        Span<double> lower = Ranked.Conditions.Lower, upper = Ranked.Conditions.Upper;
        low /= UnitGrams;
        high /= UnitGrams;
        _bounds.Add((variable, demand, low, high));
        if (fresh || low > lower[variable])
        {
            lower[variable] = low;
            _lowerDemand[variable] = demand;
        }
        if (fresh || high < upper[variable])
        {
            upper[variable] = high;
            _upperDemand[variable] = demand;
        }
        if (lower[variable] > upper[variable])
            Crossing ??= (_lowerDemand[variable]!, _upperDemand[variable]!);
    }

    /// <summary>A row that keeps one ingredient to another: two where it is a range.</summary>
    public void AddRatio(Demand.Ratio demand)
    {
        int first = _problem.IndexOf(demand.Ingredient), second = _problem.IndexOf(demand.To);
        double[] row = new double[Ranked.Conditions.Variables];
        row[first] = 1;
        if (double.IsFinite(demand.LowRatio))
        {
            row[second] = -demand.LowRatio;
            AddRow(demand, row, 0, demand.IsOneValue ? 0 : double.PositiveInfinity);
        }
        if (demand.IsOneValue || !double.IsFinite(demand.HighRatio))
            return;
        row[second] = -demand.HighRatio;
        AddRow(demand, row, double.NegativeInfinity, 0);
    }

    /// <summary>
    /// part / whole = t is linear as part - t whole = 0; where the whole is the given total, simply as part = t total. A target that
    /// may be missed is linear only there: elsewhere its miss is one of a fraction, and is told to the solver as such.
    /// </summary>
    public void AddShare(Demand.Share demand)
    {
        int n = Ranked.Conditions.Variables;
        double[] part = new double[n], whole = new double[n];
        for (int j = 0; j < n; j++)
        {
            part[j] = Share(demand.Part, j);
            whole[j] = Share(demand.Of, j);
        }
        if (demand.Of.Equals(FormulaPart.Everything) && _total.IsOneValue)
        {
            double scale = _total.HighGrams / UnitGrams;
            if (demand is { Tolerance: double tolerance, Priority: int priority })
                Ranked.AddTarget(part, demand.LowFraction * scale, demand.HighFraction * scale, 1 / (tolerance * scale), priority);
            else
                AddRow(demand, part, demand.LowFraction * scale, demand.HighFraction * scale);
            return;
        }
        AddFraction(demand, part, whole, demand.Tolerance, demand.Priority);
    }

    // One sum over another, as a target or as what must be kept.
    private void AddFraction(Demand demand, double[] part, double[] whole, double? tolerance, int? priority)
    {
        if (tolerance is double one && priority is int level)
        {
            Ranked.AddShare(part, whole, demand.LowEnd, demand.HighEnd, 1 / one, level);
            return;
        }
        double[] row = new double[part.Length];
        bool point = demand.IsOneValue;
        if (double.IsFinite(demand.LowEnd))
        {
            Against(demand.LowEnd);
            AddRow(demand, row, 0, point ? 0 : double.PositiveInfinity);
        }
        if (double.IsFinite(demand.HighEnd) && !point)
        {
            Against(demand.HighEnd);
            AddRow(demand, row, double.NegativeInfinity, 0);
        }

        void Against(double end)
        {
            for (int j = 0; j < row.Length; j++)
                row[j] = part[j] - end * whole[j];
        }
    }

    /// <summary>A row that keeps a sum of masses, or a target of it.</summary>
    public void AddPartMass(Demand.PartMass demand)
    {
        double[] part = new double[Ranked.Conditions.Variables];
        for (int j = 0; j < part.Length; j++)
            part[j] = Share(demand.Part, j);
        double low = demand.LowGrams / UnitGrams, high = demand.HighGrams / UnitGrams;
        if (demand.Aim is (double tolerance, int priority))
            Ranked.AddTarget(part, low, high, UnitGrams / tolerance, priority);
        else
            AddRow(demand, part, low, high);
    }

    /// <summary>cost / whole ≤ c is linear as cost - c whole ≤ 0.</summary>
    public void AddUnitCost(Demand.UnitCost demand)
    {
        double most = demand.MostPerKilogram, size = most;
        foreach (Candidate candidate in _problem.Candidates)
            size = Math.Max(size, candidate.CostPerKilogram);
        // Where nothing costs anything every ceiling is kept.
        if (size == 0)
            return;
        double[] row = new double[Ranked.Conditions.Variables];
        for (int j = 0; j < row.Length; j++)
            row[j] = ((j == _boilOff ? 0 : _problem.Candidates[j].CostPerKilogram) - most) / size;
        AddRow(demand, row, double.NegativeInfinity, 0);
    }

    private void AddRow(Demand demand, double[] row, double low, double high)
    {
        _rows.Add(demand);
        Ranked.Conditions.AddRow(row, low, high);
    }

    // No more water can boil off than there is.
    private void KeepToItsWater()
    {
        double[] row = new double[Ranked.Conditions.Variables];
        for (int j = 0; j < row.Length; j++)
            row[j] = Share(FormulaPart.Water, j);
        Demand? asked = _problem.BoilOff;
        Demand demand = asked ?? new Demand.BoilOff(_problem.BaseBoiledOffGrams, _problem.BaseBoiledOffGrams);
        if (asked is null)
            _bounds.Add((_boilOff, demand, Ranked.Conditions.Lower[_boilOff], Ranked.Conditions.Upper[_boilOff]));
        _lowerDemand[_boilOff] ??= demand;
        _upperDemand[_boilOff] ??= demand;
        WaterRow = _rows.Count;
        AddRow(demand, row, 0, double.PositiveInfinity);
    }
}
