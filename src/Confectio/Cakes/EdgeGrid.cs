using System.Runtime.InteropServices;

namespace Confectio.Cakes;

/// <summary>
/// Answers whether any edge of a plan is nearer to a point than a distance, by looking only at those in the squares round it. It is set
/// anew for each plan.
/// </summary>
internal sealed class EdgeGrid
{
    // How many places an edge may have on average. Of an outline of a thousand spikes each crosses half of the plan, and its squares become
    // larger instead.
    private const int PlacesPerEdge = 48;

    private readonly List<(double Left, double Bottom, double Right, double Top)> _boxes = [];

    // The edges of a square: those from its own start to the start of the next.
    private readonly List<int> _starts = [], _places = [];

    private PlanEdge[] _edges = [];
    private double _distance, _left, _bottom, _cell;
    private int _columns, _rows;

    // The edge that was near the last point is the first to be asked about the next: most pieces of a deep notch are dropped at once.
    private int _nearest;

    /// <summary>How many edges were put into squares, or compared with a point, since this was last set to 0.</summary>
    public long Compared { get; set; }

    public void Set(PlanEdge[] edges, double distance, double size)
    {
        (_edges, _distance, _nearest) = (edges, distance, 0);
        _boxes.Clear();
        double right = -double.MaxValue, top = -double.MaxValue;
        (_left, _bottom) = (double.MaxValue, double.MaxValue);
        foreach (PlanEdge edge in edges)
        {
            (double Left, double Bottom, double Right, double Top) box = edge.Box;
            _boxes.Add(box);
            (_left, _bottom, right, top) =
                (Math.Min(_left, box.Left), Math.Min(_bottom, box.Bottom), Math.Max(right, box.Right), Math.Max(top, box.Top));
        }
        // A square as large as the distance: then no edge is missed that is in none of the nine squares round a point.
        for (_cell = Math.Max(distance, size / 256); ; _cell *= 2)
        {
            (_columns, _rows) = (1 + (int)((right - _left) / _cell), 1 + (int)((top - _bottom) / _cell));
            long places = 0;
            for (int i = 0; i < edges.Length; i++)
            {
                (int low, int high) = Rows(_boxes[i]);
                for (int row = low; row <= high; row++)
                {
                    (int from, int to) = Columns(i, row);
                    places += to - from + 1;
                }
            }
            if (places <= Math.Max(1024, (long)PlacesPerEdge * edges.Length) || (_columns == 1 && _rows == 1))
                break;
        }
        // The starts are counted one further, so that filling the squares moves each to where it belongs.
        CollectionsMarshal.SetCount(_starts, _columns * _rows + 2);
        Span<int> starts = CollectionsMarshal.AsSpan(_starts);
        starts.Clear();
        ForEachSquare(starts[2..], []);
        for (int i = 1; i < starts.Length; i++)
            starts[i] += starts[i - 1];
        Compared += starts[^1];
        CollectionsMarshal.SetCount(_places, starts[^1]);
        ForEachSquare(starts[1..], CollectionsMarshal.AsSpan(_places));
    }

    /// <summary>Whether any edge is nearer to a point than the distance.</summary>
    public bool IsNear(double x, double y) => IsNear(x, y, null);

    /// <summary>
    /// Whether one straight edge is nearer than the distance to both ends of a line, and so to all of it: what is near to it is convex.
    /// </summary>
    public bool IsLineNear(double x0, double y0, double x1, double y1) => IsNear(x0, y0, (x1, y1));

    private bool IsNear(double x, double y, (double X, double Y)? end)
    {
        if (IsNear(_nearest, x, y, end))
            return true;
        int column = (int)Math.Floor((x - _left) / _cell), row = (int)Math.Floor((y - _bottom) / _cell);
        for (int r = Math.Max(row - 1, 0); r <= Math.Min(row + 1, _rows - 1); r++)
        {
            for (int c = Math.Max(column - 1, 0); c <= Math.Min(column + 1, _columns - 1); c++)
            {
                int square = r * _columns + c;
                for (int i = _starts[square]; i < _starts[square + 1]; i++)
                {
                    if (!IsNear(_places[i], x, y, end))
                        continue;
                    _nearest = _places[i];
                    return true;
                }
            }
        }
        return false;
    }

    private bool IsNear(int index, double x, double y, (double X, double Y)? end)
    {
        Compared++;
        ref readonly PlanEdge edge = ref _edges[index];
        return edge.IsNearer(x, y, _distance)
            && (end is not (double alsoX, double alsoY) || (!edge.IsArc && edge.IsNearer(alsoX, alsoY, _distance)));
    }

    private (int Low, int High) Rows((double Left, double Bottom, double Right, double Top) box) =>
        ((int)((box.Bottom - _bottom) / _cell), Math.Min((int)((box.Top - _bottom) / _cell), _rows - 1));

    // Where an edge passes in a row: of an arc the width of its box, of a straight edge what it passes between the lower and the upper end
    // of the row, and a hair more.
    private (int From, int To) Columns(int index, int row)
    {
        (double left, _, double right, _) = _boxes[index];
        ref readonly PlanEdge edge = ref _edges[index];
        if (!edge.IsArc && edge.Y0 != edge.Y1)
        {
            double slope = (edge.X1 - edge.X0) / (edge.Y1 - edge.Y0), low = _bottom + row * _cell;
            double x0 = edge.X0 + (low - edge.Y0) * slope, x1 = x0 + _cell * slope, hair = 1e-6 * _cell;
            (left, right) = (Math.Max(left, Math.Min(x0, x1) - hair), Math.Min(right, Math.Max(x0, x1) + hair));
        }
        return (Math.Max((int)((left - _left) / _cell), 0), Math.Min((int)((right - _left) / _cell), _columns - 1));
    }

    // Counts the edges of each square, and puts them there where there is a place for them.
    private void ForEachSquare(Span<int> counts, Span<int> places)
    {
        for (int i = 0; i < _boxes.Count; i++)
        {
            (int low, int high) = Rows(_boxes[i]);
            for (int row = low; row <= high; row++)
            {
                (int from, int to) = Columns(i, row);
                for (int column = from; column <= to; column++)
                {
                    int next = counts[row * _columns + column]++;
                    if (!places.IsEmpty)
                        places[next] = i;
                }
            }
        }
    }
}
