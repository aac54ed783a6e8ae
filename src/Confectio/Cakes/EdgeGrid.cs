namespace Confectio.Cakes;

/// <summary>Answers whether any edge of a plan is nearer to a point than a distance, by looking only at those in the squares round it.</summary>
internal sealed class EdgeGrid
{
    // How many places an edge may have on average. Of an outline of a thousand spikes each crosses half of the plan, and its squares become larger instead.
    private const int PlacesPerEdge = 16;

    private readonly PlanEdge[] _edges;
    private readonly double _distance, _left, _bottom, _cell;
    private readonly int _columns, _rows;

    // The edges of a square: those from its own start to the start of the next.
    private readonly int[] _starts, _places;

    // The edge that was near the last point is the first to be asked about the next: most pieces of a deep notch are dropped at once.
    private int _nearest;

    public EdgeGrid(PlanEdge[] edges, double distance, double size)
    {
        (_edges, _distance) = (edges, distance);
        (double Left, double Bottom, double Right, double Top)[] boxes = [.. edges.Select(edge => edge.Box)];
        (_left, _bottom) = (boxes.Min(box => box.Left), boxes.Min(box => box.Bottom));
        double right = boxes.Max(box => box.Right), top = boxes.Max(box => box.Top);
        // A square as large as the distance: then no edge is missed that is in none of the nine squares round a point.
        for (_cell = Math.Max(distance, size / 256); ; _cell *= 2)
        {
            (_columns, _rows) = (1 + (int)((right - _left) / _cell), 1 + (int)((top - _bottom) / _cell));
            long places = 0;
            foreach ((double Left, double Bottom, double Right, double Top) box in boxes)
            {
                (int from, int to, int low, int high) = Squares(box);
                places += (long)(to - from + 1) * (high - low + 1);
            }
            if (places <= Math.Max(1024, (long)PlacesPerEdge * edges.Length) || (_columns == 1 && _rows == 1))
                break;
        }
        _starts = new int[_columns * _rows + 1];
        ForEach(boxes, (square, _) => _starts[square + 1]++);
        for (int i = 1; i < _starts.Length; i++)
            _starts[i] += _starts[i - 1];
        _places = new int[_starts[^1]];
        int[] next = [.. _starts];
        ForEach(boxes, (square, edge) => _places[next[square]++] = edge);
    }

    /// <summary>Whether any edge is nearer to a point than the distance.</summary>
    public bool IsNear(double x, double y) => IsNear(x, y, null);

    /// <summary>Whether one straight edge is nearer than the distance to both ends of a line, and so to all of it: what is near to it is convex.</summary>
    public bool IsLineNear(double x0, double y0, double x1, double y1) => IsNear(x0, y0, (x1, y1));

    private bool IsNear(double x, double y, (double X, double Y)? end)
    {
        bool Near(in PlanEdge edge) => edge.DistanceTo(x, y) < _distance && (end is not (double alsoX, double alsoY) || (!edge.IsArc && edge.DistanceTo(alsoX, alsoY) < _distance));
        if (Near(_edges[_nearest]))
            return true;
        int column = (int)Math.Floor((x - _left) / _cell), row = (int)Math.Floor((y - _bottom) / _cell);
        for (int r = Math.Max(row - 1, 0); r <= Math.Min(row + 1, _rows - 1); r++)
        {
            for (int c = Math.Max(column - 1, 0); c <= Math.Min(column + 1, _columns - 1); c++)
            {
                int square = r * _columns + c;
                for (int i = _starts[square]; i < _starts[square + 1]; i++)
                {
                    if (!Near(_edges[_places[i]]))
                        continue;
                    _nearest = _places[i];
                    return true;
                }
            }
        }
        return false;
    }

    private (int From, int To, int Low, int High) Squares((double Left, double Bottom, double Right, double Top) box) => (
        (int)((box.Left - _left) / _cell), Math.Min((int)((box.Right - _left) / _cell), _columns - 1),
        (int)((box.Bottom - _bottom) / _cell), Math.Min((int)((box.Top - _bottom) / _cell), _rows - 1));

    private void ForEach((double Left, double Bottom, double Right, double Top)[] boxes, Action<int, int> act)
    {
        for (int i = 0; i < boxes.Length; i++)
        {
            (int from, int to, int low, int high) = Squares(boxes[i]);
            for (int row = low; row <= high; row++)
            {
                for (int column = from; column <= to; column++)
                    act(row * _columns + column, i);
            }
        }
    }
}
