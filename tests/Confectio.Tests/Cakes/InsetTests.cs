using Confectio.Cakes;
using FsCheck.Xunit;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Cakes;

/// <summary>What is left of a plan inside a band along its edge: by hand, by cells, by dense polygons, and by Steiner back from what it grew to.</summary>
public sealed class InsetTests
{
    [Fact]
    public void ByHand()
    {
        Is(Math.PI * 81, 2 * Math.PI * 9, PlanShape.Round(Cm(20)), 1);
        Is(324, 72, PlanShape.Square(Cm(20)), 1);
        Is(18 * 8, 52, PlanShape.Rectangle(Cm(20), Cm(10)), 1);
        // Corners of radius 2 become corners of radius 1, and at 3 cm they are sharp.
        Is(18 * 8 - (4 - Math.PI), 52 - 8 + 2 * Math.PI, PlanShape.Rectangle(Cm(20), Cm(10), Cm(2)), 1);
        Is(14 * 4, 36, PlanShape.Rectangle(Cm(20), Cm(10), Cm(2)), 3);
        Is(6 * 64 * Math.Tan(Math.PI / 6), 12 * 8 * Math.Tan(Math.PI / 6), PlanShape.RegularPolygonAcrossFlats(6, Cm(20)), 2);
        // An L of two arms of 10 cm on 30 cm: inside 1 cm two arms of 8 cm, and the corner between them less sharp by a square of 1 cm without its quarter of a disc.
        PlanShape l = Polygon(0, 0, 30, 0, 30, 10, 10, 10, 10, 30, 0, 30);
        Is(28 * 8 + 8 * 20 + 1 - Math.PI / 4, 28 + 8 + 19 + Math.PI / 2 + 19 + 8 + 28, l, 1);
        // Two squares of 10 cm and a bridge of 2 cm between them: inside 1.5 cm two squares of 7 cm, whose mouths the corners of the bridge do not reach into.
        PlanShape bridge = Polygon(0, 0, 10, 0, 10, 4, 20, 4, 20, 0, 30, 0, 30, 10, 20, 10, 20, 6, 10, 6, 10, 10, 0, 10);
        // Into the mouth of each square reaches the lens between the wall moved 1.5 cm inside and the two circles of 1.5 cm round the corners, 2 cm apart: they
        // touch the moved wall at the heights of the corners and meet between at 1.5 − ... = √(1.5² − 1²) beyond the old wall.
        double reach = Math.Sqrt(1.25), strip = 2 * (1.5 - 0.5 * (reach + 2.25 * Math.Asin(1 / 1.5))), arc = 2 * 1.5 * Math.Asin(1 / 1.5);
        Is(2 * (49 + strip), 2 * (28 - 2 + arc), bridge, 1.5);
        Is(0, 0, PlanShape.Round(Cm(20)), 10);
        Is(0, 0, PlanShape.Square(Cm(20)), 10);
        Is(0, 0, PlanShape.Heart(Cm(20)), 11);
        InsetPlan none = PlanShape.Petal(6, Cm(8)).Inset(0);
        Assert.Equal(0, none.BandSquareCentimetres);
        Assert.Equal("inside 1 cm: 324 cm², 72 cm round", PlanShape.Square(Cm(20)).Inset(1).ToString());
    }

    // Cells of a hundredth of the size, each counted by the distance of its middle from an outline of 300 points, which is within 30 µm of the true one.
    [Theory]
    [InlineData("heart", 1)]
    [InlineData("heart", 4)]
    [InlineData("petal", 1)]
    [InlineData("petal", 5)]
    [InlineData("star", 0.7)]
    [InlineData("star", 2)]
    [InlineData("oval", 3)]
    [InlineData("flat oval", 3)]
    public void WhatTheCellsCount(string name, double t)
    {
        PlanShape plan = name switch
        {
            "heart" => PlanShape.HeartOfSquare(Cm(15)),
            "petal" => PlanShape.Petal(5, Cm(10)),
            "star" => Polygon([.. Enumerable.Range(0, 14).SelectMany(i => (double[])[(i % 2 == 0 ? 12 : 5) * Math.Cos(Math.PI * i / 7), (i % 2 == 0 ? 12 : 5) * Math.Sin(Math.PI * i / 7)])]),
            "oval" => PlanShape.Oval(Cm(20), Cm(14)),
            _ => PlanShape.Oval(Cm(30), Cm(8)),
        };
        IReadOnlyList<PlanPoint> outline = plan.Outline(300);
        double half = Math.Max(plan.WidthCentimetres, plan.LengthCentimetres), cell = half / 100, counted = 0;
        for (double x = -half + cell / 2; x < half; x += cell)
        {
            for (double y = -half + cell / 2; y < half; y += cell)
            {
                if (IsInside(outline, x, y, t))
                    counted += cell * cell;
            }
        }
        // Some 400 cells on the edge count by chance: 0.5·√400 of them, and 4 times that.
        Assert.Equal(counted, plan.Inset(t).AreaSquareCentimetres, 40 * cell * cell);
    }

    // A polygon of 4000 sides on the ellipse is inside it by 3e-7 of its size; what is left of it is another program of ours, but one without the ellipse in it.
    [Theory]
    [InlineData(15, 10, 2)]
    [InlineData(15, 10, 8)]
    [InlineData(15, 4, 1.1)]
    [InlineData(15, 4, 3.9)]
    [InlineData(20, 1, 0.06)]
    [InlineData(20, 1, 0.9)]
    public void AnOvalIsAPolygonOfManySides(double a, double b, double t)
    {
        PlanShape dense = PlanShape.Polygon(Enumerable.Range(0, 4000).Select(i => new PlanPoint(a * Math.Cos(Math.PI * i / 2000), b * Math.Sin(Math.PI * i / 2000))));
        InsetPlan expected = dense.Inset(t), oval = PlanShape.Oval(Cm(2 * a), Cm(2 * b)).Inset(t);
        Assert.Equal(expected.AreaSquareCentimetres, oval.AreaSquareCentimetres, 3e-5 * a);
        Assert.Equal(expected.PerimeterCentimetres, oval.PerimeterCentimetres, 1e-4 * a);
    }

    [Property(MaxTest = 200)]
    public void TheInsetOfWhatGrewIsThePlan(ushort seed)
    {
        Random random = new(seed);
        double t = 0.1 + 3 * random.NextDouble(), w = 8 + 20 * random.NextDouble(), l = 8 + 20 * random.NextDouble();
        // A rectangle grown by t is one with corners of radius t.
        PlanShape grown = PlanShape.Rectangle(Cm(w + 2 * t), Cm(l + 2 * t), Cm(t));
        Is(w * l, 2 * (w + l), grown, t);
    }

    // How fast the area falls is the length round: dA/dt = −P, by differences. And k times as large has k² of the area.
    [Property(MaxTest = 200)]
    public void TheAreaFallsByTheLengthRound(int seed)
    {
        Random random = new(seed);
        int corners = random.Next(3, 12);
        PlanShape plan = PlanShape.Polygon(Enumerable.Range(0, corners).Select(i =>
        {
            double angle = 2 * Math.PI * (i + 0.8 * random.NextDouble()) / corners, radius = 3 + 12 * random.NextDouble();
            return new PlanPoint(radius * Math.Cos(angle), radius * Math.Sin(angle));
        }));
        double t = 3 * random.NextDouble(), k = 0.5 + random.NextDouble(), step = 1e-4;
        InsetPlan here = plan.Inset(t), next = plan.Inset(t + step);
        Assert.True(next.AreaSquareCentimetres <= here.AreaSquareCentimetres);
        // The length changes by at most some 2·Σ tan(turn/2) of the step, and at a sharp corner or where a piece vanishes by more: it lies between the two ends.
        double slope = (here.AreaSquareCentimetres - next.AreaSquareCentimetres) / step;
        Assert.InRange(slope, next.PerimeterCentimetres - 1e-4, here.PerimeterCentimetres + 1e-4 + 1e-9 * plan.AreaSquareCentimetres / step);
        Assert.Equal(plan.AreaSquareCentimetres, here.AreaSquareCentimetres + here.BandSquareCentimetres, 1e-9);
        Assert.Equal(k * k * here.AreaSquareCentimetres, plan.Scaled(k).Inset(k * t).AreaSquareCentimetres, 1e-7 * plan.AreaSquareCentimetres);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1001)]
    public void BadWidthsAreRefused(double bad) => PlanShapeTests.Refused("thicknessCentimetres", bad, () => PlanShape.Round(Cm(20)).Inset(bad));

    private static void Is(double area, double perimeter, PlanShape plan, double t)
    {
        InsetPlan inset = plan.Inset(t);
        Assert.Equal(area, inset.AreaSquareCentimetres, 1e-9 * plan.AreaSquareCentimetres);
        Assert.Equal(perimeter, inset.PerimeterCentimetres, 1e-8 * plan.PerimeterCentimetres);
    }

    private static PlanShape Polygon(params double[] coordinates) =>
        PlanShape.Polygon(coordinates.Chunk(2).Select(point => new PlanPoint(point[0], point[1])));

    private static bool IsInside(IReadOnlyList<PlanPoint> outline, double x, double y, double t)
    {
        bool inside = false;
        double nearest = double.MaxValue;
        for (int i = 0; i < outline.Count; i++)
        {
            PlanPoint a = outline[i], b = outline[(i + 1) % outline.Count];
            double dx = b.XCentimetres - a.XCentimetres, dy = b.YCentimetres - a.YCentimetres;
            double along = Math.Clamp(((x - a.XCentimetres) * dx + (y - a.YCentimetres) * dy) / (dx * dx + dy * dy), 0, 1);
            double fx = x - a.XCentimetres - along * dx, fy = y - a.YCentimetres - along * dy;
            nearest = Math.Min(nearest, fx * fx + fy * fy);
            if (a.YCentimetres > y != b.YCentimetres > y && x < a.XCentimetres + (y - a.YCentimetres) / dy * dx)
                inside = !inside;
        }
        return inside && nearest >= t * t;
    }
}
