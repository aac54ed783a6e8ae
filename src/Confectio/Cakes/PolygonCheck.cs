using System.Globalization;

namespace Confectio.Cakes;

/// <summary>Refuses the sides of a polygon that cross or touch.</summary>
internal static class PolygonCheck
{
    public static void Refuse(PlanEdge[] sides, string name)
    {
        int count = sides.Length;
        double size = 0;
        foreach (PlanEdge side in sides)
            size = Math.Max(size, side.Length);
        for (int i = 0; i < count; i++)
        {
            if (!(sides[i].Length > 1e-12 * size))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"{name}: corners {i + 1} and {(i + 1) % count + 1} are one point."), name);
            // Straight back over itself.
            if (Math.PI - Math.Abs(sides[i].TurnTo(sides[(i + 1) % count])) < 1e-12)
                throw Crossing(name, i, (i + 1) % count);
        }
        int[] order = [.. Enumerable.Range(0, count).OrderBy(i => Math.Min(sides[i].X0, sides[i].X1))];
        for (int i = 0; i < count; i++)
        {
            PlanEdge first = sides[order[i]];
            double right = Math.Max(first.X0, first.X1);
            for (int j = i + 1; j < count && Math.Min(sides[order[j]].X0, sides[order[j]].X1) <= right; j++)
            {
                int apart = Math.Abs(order[i] - order[j]);
                if (apart == 1 || apart == count - 1)
                    continue;
                if (Touch(first, sides[order[j]]))
                    throw Crossing(name, Math.Min(order[i], order[j]), Math.Max(order[i], order[j]));
            }
        }
    }

    private static ArgumentException Crossing(string name, int first, int second) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{name}: side {first + 1} and side {second + 1} cross or touch."), name);

    private static bool Touch(in PlanEdge a, in PlanEdge b)
    {
        if (Math.Max(a.Y0, a.Y1) < Math.Min(b.Y0, b.Y1) || Math.Max(b.Y0, b.Y1) < Math.Min(a.Y0, a.Y1)
            || Math.Max(b.X0, b.X1) < Math.Min(a.X0, a.X1))
            return false;
        int b0 = Side(a, b.X0, b.Y0), b1 = Side(a, b.X1, b.Y1), a0 = Side(b, a.X0, a.Y0), a1 = Side(b, a.X1, a.Y1);
        // On one line the boxes overlap, so the sides do.
        return b0 * b1 <= 0 && a0 * a1 <= 0;
    }

    private static int Side(in PlanEdge line, double x, double y) =>
        Math.Sign((line.X1 - line.X0) * (y - line.Y0) - (line.Y1 - line.Y0) * (x - line.X0));
}
