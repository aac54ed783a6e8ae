using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Numerics;

namespace Confectio.Vetting;

/// <summary>What the rows of a group have in common.</summary>
internal enum GroupKind
{
    /// <summary>An ingredient with a known bulk density, measured by volume.</summary>
    Density,

    /// <summary>An ingredient's pieces, of known weight.</summary>
    Piece,

    /// <summary>Masses written in two units: nothing is uncertain but the rounding.</summary>
    Mass,

    /// <summary>A name, or a packing, of which no weight is known: its rows can only be held against each other.</summary>
    Unknown,
}

/// <summary>The rows of one ingredient in one stated packing, and the nodes over which their common deviation is summed.</summary>
internal sealed class RowGroup
{
    /// <summary>
    /// Of the spread of a density, the part by which one row of a table differs from the next; the rest the rows share.
    /// An estimate: USDA SR's own cups and spoons of one powder differ by up to 7 %.
    /// </summary>
    private const double OwnShare = 0.35;

    /// <summary>No kitchen scale and cup agree better than this.</summary>
    private const double LeastDeviation = 0.004;

    /// <summary>Spreads nearer to each other than this, in logarithms, are taken for one.</summary>
    private const double Likeness = 0.04;

    /// <summary>Nodes a row's deviation apart: the logarithm of a row's likelihood is a smooth curve of that scale.</summary>
    private const double Spacing = 0.9;

    private readonly double _first;
    private readonly double _step;
    private readonly bool _offsetApplies;
    private readonly double _spoon;
    private List<int>? _byFigure;

    public RowGroup(GroupKind kind, double logWeight = 0, double logUncertainty = 0, bool isPoured = false, IngredientClass? @class = null)
    {
        bool isPowder = @class == IngredientClass.Powder;
        _spoon = @class is IngredientClass known ? SpoonDeviation(known) : 0;
        Kind = kind;
        LogWeight = logWeight;
        Grid = isPoured ? NuisanceGrid.Poured : NuisanceGrid.Packed;
        _offsetApplies = isPowder;
        if (kind == GroupKind.Mass)
        {
            Deviation = 0.0005;
            NodeCount = 1;
        }
        else if (kind == GroupKind.Unknown)
        {
            // Anything from a puff of marshmallow (0.05 g/mL) to salt (2 g/mL).
            Deviation = 0.02;
            _first = Math.Log(0.05);
            _step = Spacing * Deviation;
            NodeCount = (int)Math.Ceiling((Math.Log(2) - _first) / _step) + 1;
        }
        else
        {
            // A spread is known to a few per cent at best; groups of the same shape share their priors.
            logUncertainty = Math.Exp(Math.Round(Math.Log(Math.Max(logUncertainty, LeastDeviation)) / Likeness) * Likeness);
            Deviation = Math.Max(OwnShare * logUncertainty, LeastDeviation);
            Shared = Math.Max(Math.Sqrt(Math.Max(0, logUncertainty * logUncertainty - Deviation * Deviation)), LeastDeviation);
            // The packed grid is the wider one; liquids keep its reach, so that a gross deviation still has a node.
            double reach = 3.5 * NuisanceGrid.Packed.WidestWidth * Shared + (isPowder ? NuisanceGrid.Packed.WidestOffset : 0);
            _step = Spacing * Deviation;
            int half = (int)Math.Ceiling(reach / _step);
            _first = -half * _step;
            NodeCount = 2 * half + 1;
        }
    }

    public GroupKind Kind { get; }

    /// <summary>The logarithm of the likely grams in a millilitre or a piece; 0 where there is none.</summary>
    public double LogWeight { get; }

    /// <summary>How much less well known its density may be: what pours and finds its level is kept near by physics.</summary>
    public NuisanceGrid Grid { get; }

    /// <summary>Where its rows stand in the table, in their order.</summary>
    public List<int> Rows { get; } = [];

    /// <summary>Where its rows stand, in the order of what they say: the same however the table is ordered.</summary>
    public List<int> InOrderOfFigures(IReadOnlyList<TableRow> rows)
    {
        if (_byFigure is null)
        {
            _byFigure = [.. Rows];
            _byFigure.Sort((left, right) =>
            {
                TableRow a = rows[left], b = rows[right];
                int order = a.Printed.Grams.CompareTo(b.Printed.Grams);
                AmountPart one = a.Amount.Part(0), other = b.Amount.Part(0);
                order = order != 0 ? order : one.Unit.CompareTo(other.Unit);
                order = order != 0 ? order : one.Low.ToDouble().CompareTo(other.Low.ToDouble());
                return order != 0 ? order : a.Printed.Resolution.CompareTo(b.Printed.Resolution);
            });
        }
        return _byFigure;
    }

    /// <summary>The standard deviation of a single row about its group.</summary>
    public double Deviation { get; }

    /// <summary>The standard deviation of the group about our likely density.</summary>
    public double Shared { get; }

    /// <summary>The standard uncertainty of our likely density.</summary>
    public double Uncertainty => Math.Sqrt(Deviation * Deviation + Shared * Shared);

    public int NodeCount { get; }

    /// <summary>
    /// The standard deviation of a single row about its group. A spoon is small: what clings to it, stands above its rim or was rounded
    /// on the way is a larger part of it than of a cup.
    /// </summary>
    public double DeviationOf(Amount amount, double factor = 1, double spoonFactor = 1) => _spoon > 0 && amount.IsVolume
        && amount.Part(0).Unit is KitchenUnit.Teaspoon or KitchenUnit.Dessertspoon or KitchenUnit.Tablespoon
            ? Math.Sqrt(factor * factor * Deviation * Deviation + spoonFactor * spoonFactor * _spoon * _spoon) : factor * Deviation;

    // Estimates.
    private static double SpoonDeviation(IngredientClass @class) => @class switch
    {
        IngredientClass.Liquid => 0.012,
        IngredientClass.Syrup or IngredientClass.Fat => 0.025,
        IngredientClass.Crystal or IngredientClass.Paste => 0.03,
        IngredientClass.Powder => 0.04,
        _ => 0.06,
    };

    /// <summary>Into how many parts a step between nodes is cut by interpolation: many rows make a narrow peak, of sixteen witnesses at
    /// most. Points 1.8 of its deviations apart sum a normal density to half a per cent.</summary>
    public int Fine => Rows.Count <= 4 ? 1 : 2;

    public int FineCount => (NodeCount - 1) * Fine + 1;

    /// <summary>Whether nothing is known of t beforehand, so that no width or offset changes its prior.</summary>
    private bool IsFlat => Kind is GroupKind.Mass or GroupKind.Unknown;

    /// <summary>The t of a node.</summary>
    public double Node(int node) => _first + node * _step;

    /// <summary>Of the nodes from first to last, those that the hypothesis reaches; first is beyond last where it reaches none.</summary>
    public (int First, int Last) Reached(NormalSteps steps, in RowHypothesis hypothesis, int first, int last)
    {
        if (NodeCount == 1)
            return (first, last);
        double reach = steps.Reach * hypothesis.Deviation;
        return (Math.Max(first, (int)Math.Ceiling(Math.Min((hypothesis.Low - reach - _first) / _step, NodeCount))),
            Math.Min(last, (int)Math.Floor(Math.Max((hypothesis.High + reach - _first) / _step, -1))));
    }

    /// <summary>Adds weight times the probability of the digits to the nodes from first to last that the hypothesis reaches.</summary>
    public void AddProbability(NormalSteps steps, in RowHypothesis hypothesis, double weight, Span<double> target, int first, int last)
    {
        (first, last) = Reached(steps, in hypothesis, first, last);
        if (first > last)
            return;
        if (NodeCount == 1)
        {
            target[0] += weight * NormalDistribution.Between(hypothesis.Low / hypothesis.Deviation, hypothesis.High / hypothesis.Deviation);
            return;
        }
        double t = _first + first * _step;
        steps.AddBetween(target[first..(last + 1)], weight,
            (hypothesis.Low - t) / hypothesis.Deviation, (hypothesis.High - t) / hypothesis.Deviation, _step / hypothesis.Deviation);
    }

    /// <summary>What the priors of its nodes depend on.</summary>
    public (NuisanceGrid Grid, GroupKind Kind, double Deviation, double Shared, bool HasOffset, int Fine) Shape =>
        (Grid, IsFlat ? Kind : GroupKind.Density, Deviation, Shared, _offsetApplies, Fine);

    /// <summary>Whether two pairings of the grid give t the same prior: without a common offset, all offsets do.</summary>
    public bool HasSamePrior(int pairing, int other) => IsFlat || (!_offsetApplies && Grid.Width(pairing) == Grid.Width(other));

    /// <summary>Fills in the prior weights of the fine points; they add up to 1.</summary>
    public void FillPrior(int pairing, Span<double> prior)
    {
        if (IsFlat)
        {
            prior.Fill(1.0 / prior.Length);
            return;
        }
        // A normal density at equal steps is a product of two geometric series; from its middle on, neither runs out of range.
        double width = Grid.Width(pairing) * Shared, offset = _offsetApplies ? Grid.Offset(pairing) : 0, step = _step / Fine;
        int middle = Math.Clamp((int)Math.Round((offset - _first) / step), 0, prior.Length - 1);
        double z = (_first + middle * step - offset) / width, square = Math.Exp(-step * step / (width * width)), sum = 0;
        for (int direction = -1; direction <= 1; direction += 2)
        {
            double density = Math.Exp(-z * z / 2), ratio = Math.Exp(-direction * z * step / width) * Math.Sqrt(square);
            for (int i = middle; i >= 0 && i < prior.Length; i += direction)
            {
                prior[i] = density;
                density *= ratio;
                ratio *= square;
            }
        }
        foreach (double weight in prior)
            sum += weight;
        SpanLoops.Divide(prior, sum);
    }
}
