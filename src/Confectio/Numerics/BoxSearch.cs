namespace Confectio.Numerics;

/// <summary>
/// The best of a box of choices: for every line a few masses to choose from, and several sums and shares that are to come out near or
/// inside what is asked, in order. What comes first is as good as any choice can make it, then what comes second, and so on; last, the
/// lines cost what each choice of theirs costs.
/// </summary>
/// <remarks>
/// A search into depth, line after line. Of the lines still open every sum is known to lie between that of their least and that of their
/// greatest masses, so what a measure costs is bounded; a branch that cannot come before the best found is left. The best to start with
/// is the nearest masses, improved by changing one line or two.
/// </remarks>
internal sealed class BoxSearch
{
    /// <summary>How many choices are looked at before the search stops and says so.</summary>
    public const int MostNodes = 300_000;

    private const double Tolerance = 1e-12;

    private readonly double[][] _masses; // of every line, from least to greatest
    private readonly double[][] _costs;  // what the choice of a mass costs, for the last level
    private readonly Measure[] _measures;
    private readonly int _levels;
    private readonly Loose? _loose;
    private readonly int[] _order;
    private readonly double[] _parts, _wholes, _partLow, _partHigh, _wholeLow, _wholeHigh;
    private readonly double[] _leastCost;
    private readonly double[][] _keys;
    private readonly int[] _chosen, _best;
    private readonly double[] _bestKey;

    public BoxSearch(double[][] masses, double[][] costs, Measure[] measures, int levels, Loose? loose)
    {
        (_masses, _costs, _measures, _levels, _loose) = (masses, costs, measures, levels, loose);
        int n = masses.Length, m = measures.Length;
        _chosen = new int[n];
        _best = new int[n];
        _bestKey = new double[levels + 1];
        // The line that moves most comes first: what it decides the others cannot mend.
        _order = [.. Enumerable.Range(0, n).OrderByDescending(j => masses[j][^1] - masses[j][0])];
        _parts = new double[m];
        _wholes = new double[m];
        int all = (n + 1) * m;
        (_partLow, _partHigh, _wholeLow, _wholeHigh) = (new double[all], new double[all], new double[all], new double[all]);
        _leastCost = new double[n + 1];
        _keys = [.. Enumerable.Range(0, n + 1).Select(_ => new double[levels + 1])];
        for (int depth = n - 1; depth >= 0; depth--)
        {
            int line = _order[depth];
            _leastCost[depth] = _leastCost[depth + 1] + costs[line].Min();
            for (int k = 0; k < m; k++)
            {
                Range(measures[k].Part[line], masses[line], out double low, out double high);
                _partLow[depth * m + k] = _partLow[(depth + 1) * m + k] + low;
                _partHigh[depth * m + k] = _partHigh[(depth + 1) * m + k] + high;
                Range(measures[k].Whole[line], masses[line], out low, out high);
                _wholeLow[depth * m + k] = _wholeLow[(depth + 1) * m + k] + low;
                _wholeHigh[depth * m + k] = _wholeHigh[(depth + 1) * m + k] + high;
            }
        }
    }

    /// <summary>How many choices were looked at.</summary>
    public int Nodes { get; private set; }

    /// <summary>Whether the search came to its end: then no choice of the box is better.</summary>
    public bool IsProven => Nodes < MostNodes;

    /// <summary>What the best costs, level by level.</summary>
    public IReadOnlyList<double> Key => _bestKey;

    /// <summary>The best masses.</summary>
    public double[] Run()
    {
        Improve();
        Descend(0, 0);
        return [.. _best.Select((choice, line) => _masses[line][choice])];
    }

    private static void Range(double coefficient, double[] masses, out double low, out double high)
    {
        (low, high) = (coefficient * masses[0], coefficient * masses[^1]);
        if (low > high)
            (low, high) = (high, low);
    }

    private void Descend(int depth, double cost)
    {
        if (Nodes >= MostNodes)
            return;
        Nodes++;
        double[] key = _keys[depth];
        Bound(depth, cost, key);
        if (!ComesBefore(key, _bestKey))
            return;
        if (depth == _order.Length)
        {
            Keep(key);
            return;
        }
        int line = _order[depth];
        int first = Nearest(line);
        for (int k = 0; k < _masses[line].Length; k++)
        {
            // The nearest first.
            int choice = k == 0 ? first : k <= first ? k - 1 : k;
            Put(line, choice, 1);
            _chosen[line] = choice;
            Descend(depth + 1, cost + _costs[line][choice]);
            Put(line, choice, -1);
        }
        // Taking out again what was put in leaves rounding behind, which adds up over many branches.
        if (depth == 0)
        {
            Array.Clear(_parts);
            Array.Clear(_wholes);
        }
    }

    private int Nearest(int line)
    {
        int nearest = 0;
        for (int k = 1; k < _costs[line].Length; k++)
        {
            if (_costs[line][k] < _costs[line][nearest])
                nearest = k;
        }
        return nearest;
    }

    private void Put(int line, int choice, double sign)
    {
        double mass = sign * _masses[line][choice];
        for (int k = 0; k < _measures.Length; k++)
        {
            _parts[k] += _measures[k].Part[line] * mass;
            _wholes[k] += _measures[k].Whole[line] * mass;
        }
    }

    // What every level costs at least, with the lines from here on still open.
    private void Bound(int depth, double cost, double[] key)
    {
        Array.Clear(key);
        int m = _measures.Length;
        double looseLow = 0, looseHigh = 0;
        if (_loose is Loose loose)
        {
            int all = loose.Measure;
            looseLow = Math.Clamp(_parts[all] + _partLow[depth * m + all] - loose.Total, loose.Low, loose.High);
            looseHigh = Math.Clamp(_parts[all] + _partHigh[depth * m + all] - loose.Total, loose.Low, loose.High);
        }
        for (int k = 0; k < m; k++)
        {
            ref readonly Measure measure = ref _measures[k];
            double low = _parts[k] + _partLow[depth * m + k] - Math.Max(measure.LooseInPart * looseLow, measure.LooseInPart * looseHigh);
            double high = _parts[k] + _partHigh[depth * m + k] - Math.Min(measure.LooseInPart * looseLow, measure.LooseInPart * looseHigh);
            if (measure.IsShare)
            {
                double wholeLow = _wholes[k] + _wholeLow[depth * m + k] - measure.LooseInWhole * looseHigh;
                double wholeHigh = _wholes[k] + _wholeHigh[depth * m + k] - measure.LooseInWhole * looseLow;
                (low, high) = wholeLow > 0 ? (low / wholeHigh, high / wholeLow) : wholeHigh > 0 ? (0, double.PositiveInfinity)
                    : (double.PositiveInfinity, double.PositiveInfinity);
            }
            double outside = Math.Max(0, Math.Max(measure.Low - high, low - measure.High));
            double miss = measure.Weight * outside;
            key[measure.Level] += measure.IsSquared ? miss * miss / 2 : miss;
        }
        key[_levels] += cost + _leastCost[depth];
    }

    private static bool ComesBefore(double[] key, double[] than)
    {
        for (int level = 0; level < key.Length; level++)
        {
            double size = Math.Max(Math.Abs(key[level]), Math.Abs(than[level]));
            bool isInfinite = double.IsPositiveInfinity(than[level]) != double.IsPositiveInfinity(key[level]);
            if (isInfinite || Math.Abs(than[level] - key[level]) > Tolerance + 1e-10 * size)
                return key[level] < than[level];
        }
        return false;
    }

    private void Keep(double[] key)
    {
        key.CopyTo(_bestKey, 0);
        _chosen.CopyTo(_best, 0);
    }

    // The nearest masses, and then one line or two changed as long as that helps.
    private void Improve()
    {
        int n = _masses.Length;
        double cost = 0;
        for (int line = 0; line < n; line++)
        {
            _chosen[line] = Nearest(line);
            Put(line, _chosen[line], 1);
            cost += _costs[line][_chosen[line]];
        }
        double[] key = _keys[n];
        Bound(n, cost, key);
        Keep(key);
        bool helped = true;
        for (int pass = 0; helped && pass < 50; pass++)
        {
            helped = false;
            for (int a = 0; a < n; a++)
            {
                for (int b = a; b < (n <= 40 ? n : a + 1); b++)
                    helped |= TryOther(a, b, ref cost, key);
            }
        }
        Array.Clear(_parts);
        Array.Clear(_wholes);
    }

    private bool TryOther(int a, int b, ref double cost, double[] key)
    {
        bool helped = false;
        for (int i = 0; i < _masses[a].Length; i++)
        {
            for (int j = 0; j < (a == b ? 1 : _masses[b].Length); j++)
            {
                if (i == _chosen[a] || (a != b && j == _chosen[b]))
                    continue;
                int beforeA = _chosen[a], beforeB = _chosen[b];
                double before = cost;
                Change(a, i, ref cost);
                if (a != b)
                    Change(b, j, ref cost);
                Bound(_masses.Length, cost, key);
                if (ComesBefore(key, _bestKey))
                {
                    Keep(key);
                    helped = true;
                    continue;
                }
                Change(a, beforeA, ref cost);
                if (a != b)
                    Change(b, beforeB, ref cost);
                cost = before;
            }
        }
        return helped;
    }

    private void Change(int line, int choice, ref double cost)
    {
        Put(line, _chosen[line], -1);
        cost += _costs[line][choice] - _costs[line][_chosen[line]];
        _chosen[line] = choice;
        Put(line, choice, 1);
    }

    /// <summary>A sum of masses, or the share of one sum in another, and what it costs to be outside of what is asked.</summary>
    internal readonly struct Measure
    {
        public required double[] Part { get; init; }

        /// <summary>The whole; zeros where the part is a sum by itself.</summary>
        public required double[] Whole { get; init; }

        public required bool IsShare { get; init; }

        /// <summary>How much of a gram of what is loose comes off the part.</summary>
        public required double LooseInPart { get; init; }

        /// <summary>How much of it comes off the whole; not below 0.</summary>
        public required double LooseInWhole { get; init; }

        public required double Low { get; init; }

        public required double High { get; init; }

        public required double Weight { get; init; }

        public required int Level { get; init; }

        public required bool IsSquared { get; init; }
    }

    /// <summary>
    /// A mass that comes off, as water does in boiling, and is not weighed: so much as brings a sum to its total, within limits.
    /// </summary>
    internal readonly record struct Loose(int Measure, double Total, double Low, double High);
}
