using System.Globalization;

namespace Confectio.Cakes;

/// <summary>
/// What moving outlines needs again and again: room that is used anew each time, and a budget of steps, so that a few lines of an order
/// cannot ask for hours. It belongs to one calculation on one thread.
/// </summary>
internal sealed class OutlineWork
{
    // Outlines of as many corners as a cake may have cross themselves far less often once they are moved; each crossing takes up room.
    private const int MostCuts = 400_000;

    private readonly string _name;
    private readonly long _steps;
    private long _left;

    /// <summary>A budget of so many steps, with the name of the argument that is refused where they do not do.</summary>
    public OutlineWork(string name, long steps = Cake.MaximumSteps) => (_name, _steps, _left) = (name, steps, steps);

    /// <summary>For one plan by itself, which is at most 10 000 corners: no budget.</summary>
    public OutlineWork()
        : this("", long.MaxValue)
    {
    }

    /// <summary>The edges of the plan that is moved, by the squares they lie in.</summary>
    public EdgeGrid Grid { get; } = new();

    /// <summary>The moved edges, and whether each runs the other way round.</summary>
    public List<(PlanEdge Edge, bool IsReversed)> Moved { get; } = [];

    /// <summary>Where moved edges cross: at which share of which.</summary>
    public List<(int Edge, double Share)> Cuts { get; } = [];

    /// <summary>The moved edges in the order of their left ends.</summary>
    public List<(double Left, int Edge)> Order { get; } = [];

    /// <summary>The boxes of the moved edges.</summary>
    public List<(double Left, double Bottom, double Right, double Top)> Boxes { get; } = [];

    /// <summary>Counts steps, each of which compares two edges or an edge with a point.</summary>
    /// <exception cref="ArgumentException">There were not so many left.</exception>
    public void Take(long steps)
    {
        _left -= steps;
        if (_left < 0)
            throw Refusal();
    }

    /// <summary>Refuses to hold more crossings than there is room for.</summary>
    /// <exception cref="ArgumentException">There are more.</exception>
    public void Hold(int cuts)
    {
        if (cuts > MostCuts && _name.Length > 0)
            throw Refusal();
    }

    private ArgumentException Refusal() => new(string.Create(CultureInfo.InvariantCulture,
        $"{_name} would take more than {_steps} steps of comparing edges of outlines, the most that are made; "
        + $"outlines with fewer corners or notches, or fewer coats, take fewer."), _name);
}
