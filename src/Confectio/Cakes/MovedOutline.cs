namespace Confectio.Cakes;

/// <summary>What an outline with notches becomes when it grows by a distance on all sides, and what of any outline is left inside such a band.</summary>
/// <remarks>
/// The edge of what has grown is made of the points of the moved edges, and of the circles round the corners, that are no nearer to the plan than the distance.
/// So all of them are cut where they cross, and the pieces that are too near are dropped. What closes up, a notch or a ring, needs no thought of its own.
/// Inward it is the same, with circles round the tips of notches, that run the other way round. That a piece is on the right side needs no test: an edge between it
/// and the one it was moved from would be nearer than the distance.
/// Where a slot with parallel walls is just closed, within rounding of the size, its walls still count in the length and cancel in the area.
/// </remarks>
internal static class MovedOutline
{
    // An extra cut does no harm and a missed one does: crossings just off the end of an edge count.
    private const double Slop = 1e-7;

    /// <summary>Moved outward by a distance above 0, or inward by one below 0.</summary>
    public static (double Area, double Perimeter) Measure(PlanEdge[] plan, double outward, double size)
    {
        // Near a crossing the two pieces differ in distance only a little; a wrong choice there is as small as this. It is kept near rounding, for of an outline of ten
        // thousand corners the pieces that are to be dropped are nearer by no more than the square of a corner's turn.
        double distance = Math.Abs(outward), area = 0, perimeter = 0;
        EdgeGrid grid = new(plan, distance - 1e-13 * Math.Max(distance, size), size);
        List<PlanEdge> moved = new(2 * plan.Length);
        List<bool> isReversed = new(2 * plan.Length);
        for (int i = 0; i < plan.Length; i++)
        {
            PlanEdge edge = plan[i];
            // Of an arc that is sharper than the distance nothing is left inside.
            if (!edge.IsArc || edge.Radius + outward > 0)
            {
                PlanEdge away = edge.Outward(outward);
                // Where a whole side is too near to another, as deep in a notch, it need not be cut with the rest first.
                if (edge.IsArc || !grid.IsLineNear(away.X0, away.Y0, away.X1, away.Y1))
                {
                    moved.Add(away);
                    isReversed.Add(false);
                }
            }
            double turn = PlanShape.Turn(edge, plan[(i + 1) % plan.Length]);
            if (outward > 0 ? turn > 1e-12 : turn < -1e-12)
            {
                moved.Add(outward > 0 ? PlanEdge.Arc(edge.X1, edge.Y1, outward, edge.EndDirection - Math.PI / 2, turn)
                    : PlanEdge.Arc(edge.X1, edge.Y1, -outward, edge.EndDirection + Math.PI / 2 + turn, -turn));
                isReversed.Add(outward < 0);
            }
        }

        List<double>[] cuts = Cuts(moved);
        for (int i = 0; i < moved.Count; i++)
        {
            cuts[i].Sort();
            double from = 0;
            foreach (double to in cuts[i].Append(1))
            {
                if (to - from < 1e-13)
                    continue;
                PlanEdge piece = moved[i].Part(from, to);
                from = to;
                (double x, double y) = piece.At(0.5);
                if (grid.IsNear(x, y))
                    continue;
                area += isReversed[i] ? -piece.Area : piece.Area;
                perimeter += piece.Length;
            }
        }
        return (area, perimeter);
    }

    private static List<double>[] Cuts(List<PlanEdge> edges)
    {
        List<double>[] cuts = new List<double>[edges.Count];
        (double Left, double Bottom, double Right, double Top)[] boxes = new (double, double, double, double)[edges.Count];
        int[] order = new int[edges.Count];
        for (int i = 0; i < edges.Count; i++)
            (cuts[i], boxes[i], order[i]) = ([], edges[i].Box, i);
        Array.Sort(order, (a, b) => boxes[a].Left.CompareTo(boxes[b].Left));
        for (int i = 0; i < order.Length; i++)
        {
            int first = order[i];
            for (int j = i + 1; j < order.Length && boxes[order[j]].Left <= boxes[first].Right; j++)
            {
                int second = order[j];
                if (boxes[first].Bottom <= boxes[second].Top && boxes[second].Bottom <= boxes[first].Top)
                    Cut(edges[first], edges[second], cuts[first], cuts[second]);
            }
        }
        return cuts;
    }

    private static void Cut(in PlanEdge a, in PlanEdge b, List<double> cutsOfA, List<double> cutsOfB)
    {
        if (!a.IsArc && !b.IsArc)
            CutLines(a, b, cutsOfA, cutsOfB);
        else if (a.IsArc && b.IsArc)
            CutArcs(a, b, cutsOfA, cutsOfB);
        else if (a.IsArc)
            CutLineAndArc(b, a, cutsOfB, cutsOfA);
        else
            CutLineAndArc(a, b, cutsOfA, cutsOfB);
    }

    private static void CutLines(in PlanEdge a, in PlanEdge b, List<double> cutsOfA, List<double> cutsOfB)
    {
        double ax = a.X1 - a.X0, ay = a.Y1 - a.Y0, bx = b.X1 - b.X0, by = b.Y1 - b.Y0, cross = ax * by - ay * bx;
        if (Math.Abs(cross) <= 1e-14 * a.Length * b.Length)
            return;
        double dx = b.X0 - a.X0, dy = b.Y0 - a.Y0;
        Keep((dx * by - dy * bx) / cross, (dx * ay - dy * ax) / cross, cutsOfA, cutsOfB);
    }

    private static void CutLineAndArc(in PlanEdge line, in PlanEdge arc, List<double> cutsOfLine, List<double> cutsOfArc)
    {
        double length = line.Length, ux = (line.X1 - line.X0) / length, uy = (line.Y1 - line.Y0) / length, x = arc.CentreX - line.X0, y = arc.CentreY - line.Y0;
        double foot = x * ux + y * uy, beside = x * uy - y * ux, square = arc.Radius * arc.Radius - beside * beside;
        if (square < -1e-9 * arc.Radius * arc.Radius)
            return;
        double half = Math.Sqrt(Math.Max(square, 0));
        foreach (double along in (ReadOnlySpan<double>)[foot - half, foot + half])
            Keep(along / length, arc.ShareOfAngle(Math.Atan2(along * uy - y, along * ux - x)), cutsOfLine, cutsOfArc);
    }

    private static void CutArcs(in PlanEdge a, in PlanEdge b, List<double> cutsOfA, List<double> cutsOfB)
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
            Keep(a.ShareOfAngle(Math.Atan2(y, x)), b.ShareOfAngle(Math.Atan2(y - dy, x - dx)), cutsOfA, cutsOfB);
        }
    }

    private static void Keep(double shareOfA, double shareOfB, List<double> cutsOfA, List<double> cutsOfB)
    {
        if (shareOfA is < -Slop or > 1 + Slop || shareOfB is < -Slop or > 1 + Slop)
            return;
        if (shareOfA is > 0 and < 1)
            cutsOfA.Add(shareOfA);
        if (shareOfB is > 0 and < 1)
            cutsOfB.Add(shareOfB);
    }
}
