namespace Confectio.Cakes;

/// <summary>
/// What an outline with notches becomes when it grows by a distance on all sides, and what of any outline is left inside such a band.
/// </summary>
/// <remarks>
/// The edge of what has grown is made of the points of the moved edges, and of the circles round the corners, that are no nearer to the
/// plan than the distance. So all of them are cut where they cross, and the pieces that are too near are dropped. What closes up, a notch
/// or a ring, needs no thought of its own. Inward it is the same, with circles round the tips of notches, that run the other way round.
/// That a piece is on the right side needs no test: an edge between it and the one it was moved from would be nearer than the distance.
/// Where a slot with parallel walls is just closed, within rounding of the size, its walls still count in the length and cancel in the
/// area.
/// </remarks>
internal static class MovedOutline
{
    // An extra cut does no harm and a missed one does: crossings just off the end of an edge count.
    private const double Slop = 1e-7;

    // What finding where two edges cross costs beside comparing their boxes.
    private const int StepsPerCut = 16;

    /// <summary>Moved outward by a distance above 0, or inward by one below 0.</summary>
    public static (double Area, double Perimeter) Measure(PlanEdge[] plan, double outward, double size, OutlineWork work)
    {
        // Near a crossing the two pieces differ in distance only a little; a wrong choice there is as small as this. It is kept near
        // rounding, for of an outline of ten thousand corners the pieces that are to be dropped are nearer by no more than the square of a
        // corner's turn.
        double distance = Math.Abs(outward), area = 0, perimeter = 0;
        EdgeGrid grid = work.Grid;
        grid.Set(plan, distance - 1e-13 * Math.Max(distance, size), size);
        work.Take(plan.Length);
        List<(PlanEdge Edge, bool IsReversed)> moved = work.Moved;
        moved.Clear();
        for (int i = 0; i < plan.Length; i++)
        {
            PlanEdge edge = plan[i];
            // Of an arc that is sharper than the distance nothing is left inside.
            if (!edge.IsArc || edge.Radius + outward > 0)
            {
                PlanEdge away = edge.Outward(outward);
                // Where a whole side is too near to another, as deep in a notch, it need not be cut with the rest first.
                if (edge.IsArc || !grid.IsLineNear(away.X0, away.Y0, away.X1, away.Y1))
                    moved.Add((away, false));
            }
            double turn = edge.TurnTo(plan[(i + 1) % plan.Length]);
            if (outward > 0 ? turn > 1e-12 : turn < -1e-12)
            {
                moved.Add(outward > 0 ? (PlanEdge.Arc(edge.X1, edge.Y1, outward, edge.EndDirection - Math.PI / 2, turn), false)
                    : (PlanEdge.Arc(edge.X1, edge.Y1, -outward, edge.EndDirection + Math.PI / 2 + turn, -turn), true));
            }
            work.Take(grid.Compared);
            grid.Compared = 0;
        }

        FindCuts(work);
        int next = 0;
        for (int i = 0; i < moved.Count; i++)
        {
            double from = 0;
            while (from < 1)
            {
                bool isCut = next < work.Cuts.Count && work.Cuts[next].Edge == i;
                double to = isCut ? work.Cuts[next++].Share : 1;
                if (to - from < 1e-13)
                {
                    if (!isCut)
                        break;
                    continue;
                }
                PlanEdge piece = moved[i].Edge.Part(from, to);
                from = to;
                (double x, double y) = piece.At(0.5);
                if (grid.IsNear(x, y))
                    continue;
                area += moved[i].IsReversed ? -piece.Area : piece.Area;
                perimeter += piece.Length;
            }
            work.Take(grid.Compared);
            grid.Compared = 0;
        }
        return (area, perimeter);
    }

    // Sorted by edge and share.
    private static void FindCuts(OutlineWork work)
    {
        List<(PlanEdge Edge, bool IsReversed)> edges = work.Moved;
        List<(double Left, double Bottom, double Right, double Top)> boxes = work.Boxes;
        List<(double Left, int Edge)> order = work.Order;
        boxes.Clear();
        order.Clear();
        work.Cuts.Clear();
        for (int i = 0; i < edges.Count; i++)
        {
            boxes.Add(edges[i].Edge.Box);
            order.Add((boxes[i].Left, i));
        }
        order.Sort();
        for (int i = 0; i < order.Count; i++)
        {
            int first = order[i].Edge, j = i + 1;
            (double _, double bottom, double right, double top) = boxes[first];
            int close = 0;
            for (; j < order.Count && order[j].Left <= right; j++)
            {
                int second = order[j].Edge;
                if (bottom > boxes[second].Top || boxes[second].Bottom > top)
                    continue;
                Cut(edges[first].Edge, edges[second].Edge, new Cutter(work.Cuts, first, second));
                close++;
            }
            work.Take(j - i + (long)StepsPerCut * close);
            work.Hold(work.Cuts.Count);
        }
        work.Cuts.Sort();
    }

    // Notes where two edges cut one another.
    private readonly struct Cutter(List<(int Edge, double Share)> cuts, int a, int b)
    {
        public Cutter Swapped => new(cuts, b, a);

        public void Keep(double shareOfA, double shareOfB)
        {
            if (shareOfA is < -Slop or > 1 + Slop || shareOfB is < -Slop or > 1 + Slop)
                return;
            if (shareOfA is > 0 and < 1)
                cuts.Add((a, shareOfA));
            if (shareOfB is > 0 and < 1)
                cuts.Add((b, shareOfB));
        }
    }

    private static void Cut(in PlanEdge a, in PlanEdge b, Cutter cutter)
    {
        if (!a.IsArc && !b.IsArc)
            CutLines(a, b, cutter);
        else if (a.IsArc && b.IsArc)
            CutArcs(a, b, cutter);
        else if (a.IsArc)
            CutLineAndArc(b, a, cutter.Swapped);
        else
            CutLineAndArc(a, b, cutter);
    }

    private static void CutLines(in PlanEdge a, in PlanEdge b, Cutter cutter)
    {
        double ax = a.X1 - a.X0, ay = a.Y1 - a.Y0, bx = b.X1 - b.X0, by = b.Y1 - b.Y0, cross = ax * by - ay * bx;
        if (Math.Abs(cross) <= 1e-14 * a.Length * b.Length)
            return;
        double dx = b.X0 - a.X0, dy = b.Y0 - a.Y0;
        cutter.Keep((dx * by - dy * bx) / cross, (dx * ay - dy * ax) / cross);
    }

    private static void CutLineAndArc(in PlanEdge line, in PlanEdge arc, Cutter cutter)
    {
        double length = line.Length, ux = (line.X1 - line.X0) / length, uy = (line.Y1 - line.Y0) / length, x = arc.CentreX - line.X0, y =
            arc.CentreY - line.Y0;
        double foot = x * ux + y * uy, beside = x * uy - y * ux, square = arc.Radius * arc.Radius - beside * beside;
        if (square < -1e-9 * arc.Radius * arc.Radius)
            return;
        double half = Math.Sqrt(Math.Max(square, 0));
        foreach (double along in (ReadOnlySpan<double>)[foot - half, foot + half])
            cutter.Keep(along / length, arc.ShareOfAngle(Math.Atan2(along * uy - y, along * ux - x)));
    }

    private static void CutArcs(in PlanEdge a, in PlanEdge b, Cutter cutter)
    {
        double dx = b.CentreX - a.CentreX, dy = b.CentreY - a.CentreY, apart = PlanEdge.Hypotenuse(dx, dy);
        if (apart <= 1e-12 * (a.Radius + b.Radius))
            return;
        double foot = (apart * apart + a.Radius * a.Radius - b.Radius * b.Radius) / (2 * apart), square = a.Radius * a.Radius - foot * foot;
        if (square < -1e-9 * a.Radius * a.Radius)
            return;
        double half = Math.Sqrt(Math.Max(square, 0));
        foreach (double side in (ReadOnlySpan<double>)[-half, half])
        {
            double x = (foot * dx - side * dy) / apart, y = (foot * dy + side * dx) / apart;
            cutter.Keep(a.ShareOfAngle(Math.Atan2(y, x)), b.ShareOfAngle(Math.Atan2(y - dy, x - dx)));
        }
    }
}
