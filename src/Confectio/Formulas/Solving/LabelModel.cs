using Confectio.Ingredients;
using Confectio.Numerics;
using Confectio.Sources;

namespace Confectio.Formulas.Solving;

/// <summary>
/// All foods that a label leaves open: foods of a table in the order of the list, foods that no table knows (any mixture of constituents),
/// water that need not be listed, and water that boiled off. Linear, so that the least and the most of any part are exact.
/// </summary>
internal sealed class LabelModel
{
    /// <summary>Below this an item may stand in any order (Regulation (EU) No 1169/2011, Annex VII, Part A; 21 CFR 101.4(a)(2)), g.</summary>
    private const double AnyOrder = 2;

    /// <summary>Water up to this need not be listed (Regulation (EU) No 1169/2011, Annex VII, Part A), g.</summary>
    private const double UnlistedWater = 5;

    // One constituent and nothing else, so that what nobody knows is a mixture of foods like any other.
    private static readonly Ingredient[] s_pure = Constituents.ByPlace(constituent =>
    {
        double[] fractions = new double[Constituents.Count];
        fractions[Constituents.PlaceOf(constituent)] = 1;
        return FoodLabel.Make("constituent-" + Constituents.WordOf(constituent), Constituents.WordOf(constituent),
            new Composition(fractions, 0), Evidence.Computed);
    });

    private readonly IReadOnlyList<IngredientList.Item> _items;
    private readonly Ingredient?[] _columns;
    private readonly int _shares;
    private readonly double _boilOff;
    private readonly List<(double[] Row, double Low, double High)> _rows = [];
    private readonly bool _compositionsVary;

    /// <summary>A model of the items of a list; without any, of a food of which the list is not known.</summary>
    public LabelModel(IReadOnlyList<IngredientList.Item> items, IReadOnlyList<PanelBound> bounds, double boilOff)
    {
        _items = items;
        _shares = items.Count;
        _boilOff = boilOff;
        bool unknown = items.Count == 0 || items.Any(item => item.Ingredient is null);
        _compositionsVary = items.Count > 0;
        // Shares of the items; water that is not listed; each constituent of what is not known; water that boiled off, below 0.
        _columns = [.. items.Select(item => item.Ingredient), .. items.Count > 0 ? [s_pure[Constituents.PlaceOf(Constituent.Water)]]
            : Array.Empty<Ingredient>(), .. unknown ? s_pure : [], .. boilOff > 0 ? new Ingredient?[1] : []];
        Bounds = bounds;
        HasUnknown = unknown;
    }

    public IReadOnlyList<PanelBound> Bounds { get; }

    private bool HasUnknown { get; }

    private int Variables => _columns.Length;

    private int FirstPure => _shares + (_shares > 0 ? 1 : 0);

    /// <summary>The likely mixture, or null where no food fits. Where the panel is silent, it takes what foods have most of.</summary>
    public double[]? Likely()
    {
        double[] extra = new double[Bounds.Count];
        if (!_compositionsVary)
            return Fitted(within: true, extra, usual: true) ?? Fitted(within: true, extra, usual: false);
        // How far the compositions may be off depends on how much there is of each.
        if (Fitted(within: false, extra, usual: true) is not double[] near)
            return null;
        extra = Extra(near);
        return Fitted(within: true, extra, usual: true) ?? Fitted(within: true, extra, usual: false);
    }

    /// <summary>The least and the most of parts, over all foods that fit; null where none does.</summary>
    public (double Low, double High)[]? Extremes(IReadOnlyList<FormulaPart> parts, IReadOnlyList<int> shares, double[] near)
    {
        LeastSquaresProblem problem = new(Variables);
        Conditions(problem);
        double[] extra = _compositionsVary ? Extra(near) : new double[Bounds.Count];
        for (int k = 0; k < Bounds.Count; k++)
            AddBound(problem, Bounds[k], extra[k]);
        problem.Prior[..Variables].Fill(0.01);
        near.CopyTo(problem.Centre);
        (double Low, double High)[] found = new (double, double)[parts.Count + shares.Count];
        DualActiveSet kernel = new();
        for (int i = 0; i < found.Length; i++)
        {
            double[] cost = new double[Variables];
            if (i < parts.Count)
                cost = Row(parts[i]);
            else
                cost[shares[i - parts.Count]] = 1;
            if (!cost.AsSpan().ContainsAnyExcept(0))
                continue;
            foreach (int sign in stackalloc[] { 1, -1 })
            {
                if (LeastCost.Extreme(kernel, problem, cost, sign) is not double value)
                    return null;
                if (sign > 0)
                    found[i].Low = value;
                else
                    found[i].High = value;
            }
        }
        return found;
    }

    /// <summary>What a mixture is made of, as fractions that add up to 1, and the milk fat in it.</summary>
    public (double[] Fractions, double MilkFat) CompositionOf(double[] x)
    {
        double[] fractions = new double[Constituents.Count];
        double milkFat = 0;
        for (int j = 0; j < Variables; j++)
        {
            if (_columns[j] is Ingredient food)
            {
                foreach (Constituent constituent in Constituents.All)
                    fractions[Constituents.PlaceOf(constituent)] += Math.Max(0, x[j]) * food.Composition[constituent];
                milkFat += Math.Max(0, x[j]) * food.Composition.MilkFat;
            }
            else if (j == Variables - 1 && _boilOff > 0)
            {
                fractions[Constituents.PlaceOf(Constituent.Water)] += x[j];
            }
        }
        for (int i = 0; i < fractions.Length; i++)
            fractions[i] = fractions[i] < 1e-7 ? 0 : fractions[i];
        double sum = fractions.Sum();
        for (int i = 0; i < fractions.Length; i++)
            fractions[i] /= sum;
        return (fractions, Math.Min(milkFat / sum, fractions[Constituents.PlaceOf(Constituent.Fat)]));
    }

    /// <summary>The standard uncertainty that the compositions of the foods bring to a part, g in 100 g.</summary>
    public double Uncertainty(FormulaPart part, double[] x)
    {
        double sum = 0;
        for (int j = 0; j < _shares; j++)
        {
            double one = _columns[j] is Ingredient food ? x[j] * part.StandardUncertaintyIn(food) : 0;
            sum += one * one;
        }
        return Math.Sqrt(sum);
    }

    /// <summary>Grams of a part in 100 g of a mixture.</summary>
    public double GramsOf(FormulaPart part, double[] x)
    {
        double grams = 0;
        double[] row = Row(part);
        for (int j = 0; j < Variables; j++)
            grams += row[j] * x[j];
        return grams;
    }

    private double[] Extra(double[] x) => [.. Bounds.Select(bound => 2 * Math.Max(Uncertainty(bound.Core, x), Uncertainty(bound.Whole, x)))];

    private double[]? Fitted(bool within, double[] extra, bool usual)
    {
        RankedProblem problem = new(Variables);
        Conditions(problem.Conditions);
        if (within)
        {
            for (int k = 0; k < Bounds.Count; k++)
                AddBound(problem.Conditions, Bounds[k], extra[k]);
        }
        for (int j = 0; j < Variables; j++)
        {
            problem.Conditions.Prior[j] = 1;
            problem.Conditions.Centre[j] = j < _shares ? 100.0 / _shares : 0;
        }
        if (HasUnknown && usual)
        {
            // What the panel leaves open is water, starch and sugar of no kind; the rest only where a figure asks for it.
            for (int i = 0; i < Constituents.Count; i++)
            {
                if (!Bounds.Any(bound => bound.IsOf(Constituents.At(i))) && Constituents.At(i) is not (Constituent.Water
                    or Constituent.Starch or Constituent.OtherSugars))
                    problem.Conditions.Upper[FirstPure + i] = 0;
            }
        }
        foreach (PanelBound bound in Bounds.Where(bound => bound.IsTarget))
        {
            double likely = bound.Likely, width = Math.Max(bound.High - bound.Low, 1e-4);
            problem.AddTarget(Row(bound.Core), likely, likely, 2 / width, 1);
        }
        RankedSolver solver = new();
        return solver.Solve(problem) == SolveStatus.Optimal ? solver.Solution.ToArray() : null;
    }

    private void AddBound(LeastSquaresProblem problem, PanelBound bound, double extra)
    {
        if (bound.Core == bound.Whole)
        {
            problem.AddRow(Row(bound.Core), bound.Low - extra, bound.High + extra);
            return;
        }
        problem.AddRow(Row(bound.Core), double.NegativeInfinity, bound.High + extra);
        problem.AddRow(Row(bound.Whole), bound.Low - extra, double.PositiveInfinity);
    }

    private double[] Row(FormulaPart part)
    {
        double[] row = new double[Variables];
        for (int j = 0; j < Variables; j++)
            row[j] = _columns[j] is Ingredient food ? part.FractionIn(food)
                : j == Variables - 1 && _boilOff > 0 ? part.FractionOfBoiledOffWater : 0;
        return row;
    }

    private void Conditions(LeastSquaresProblem conditions)
    {
        if (_rows.Count == 0)
        {
            double[] row = new double[Variables];
            // Everything makes 100 g: foods of the table, the unknown by its constituents, less what boiled off.
            for (int j = 0; j < Variables; j++)
                row[j] = j < _shares && _columns[j] is null ? 0 : 1;
            _rows.Add((row, 100, 100));
            if (HasUnknown && _shares > 0)
            {
                row = new double[Variables];
                for (int j = 0; j < _shares; j++)
                    row[j] = _columns[j] is null ? 1 : 0;
                row.AsSpan(FirstPure, Constituents.Count).Fill(-1);
                _rows.Add((row, 0, 0));
            }
            for (int j = 0; j + 1 < _shares; j++)
            {
                if (_items[j + 1].IsSmall)
                    continue;
                row = new double[Variables];
                (row[j], row[j + 1]) = (1, -1);
                _rows.Add((row, -AnyOrder, double.PositiveInfinity));
            }
            if (_boilOff > 0)
                _rows.Add((Row(FormulaPart.Water), 0, double.PositiveInfinity));
        }
        foreach ((double[] row, double low, double high) in _rows)
            conditions.AddRow(row, low, high);
        conditions.Lower[..Variables].Clear();
        for (int j = 0; j < _shares; j++)
        {
            if (_items[j].Percent is double percent)
            {
                conditions.Lower[j] = Math.Max(0, percent - _items[j].HalfUnit);
                conditions.Upper[j] = percent + _items[j].HalfUnit;
            }
            else if (_items[j].IsSmall)
            {
                conditions.Upper[j] = AnyOrder;
            }
        }
        if (_shares > 0)
            conditions.Upper[_shares] = UnlistedWater;
        if (_boilOff > 0)
            (conditions.Lower[Variables - 1], conditions.Upper[Variables - 1]) = (-_boilOff, 0);
    }
}

/// <summary>What a figure of a panel says of a food, g in 100 g.</summary>
/// <param name="core">What the figure counts for sure; no more than the high end.</param>
/// <param name="whole">With what some makers and tables count too; no less than the low end.</param>
/// <param name="low">The low end.</param>
/// <param name="likely">What is printed.</param>
/// <param name="high">The high end.</param>
/// <param name="named">The constituents that the figure counts for sure.</param>
internal sealed class PanelBound(FormulaPart core, FormulaPart whole, double low, double likely, double high, Constituent[] named)
{
    public FormulaPart Core { get; } = core;

    public FormulaPart Whole { get; } = whole;

    public double Low { get; } = low;

    public double Likely { get; } = likely;

    public double High { get; } = high;

    /// <summary>Whether the likely food is drawn to it; an energy is only a limit.</summary>
    public bool IsTarget { get; init; } = true;

    /// <summary>What the panel calls it; empty of an energy.</summary>
    public string Name { get; init; } = "";

    /// <summary>Whether it is a figure of one constituent and of nothing else; the kinds of sugar are never printed.</summary>
    public bool IsOf(Constituent constituent) => named is [Constituent only] && only == constituent;
}
