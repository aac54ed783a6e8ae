using Confectio.Cakes;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Cakes;

/// <summary>What a swirl takes, against volumes that know nothing of its formula: cells that the bead sweeps, and the integral over the swept tube.</summary>
public sealed class SwirlTests
{
    // Foot, height (0 for a rosette), turns, bead. Of all of these the turns are apart, or touch and no more: along the slope they are √(R² + H²)/N apart.
    public static TheoryData<double, double, double, double> Apart => new()
    {
        { 6, 3.5, 4, 1.15 }, { 6, 3.5, 3, 1.2 }, { 6, 6, 4, 1.2 }, { 6, 12, 6, 1.2 }, { 4, 8, 5, 0.9 }, { 8, 4, 5, 0.9 }, { 10, 2, 3, 0.8 }, { 3, 5, 2, 1 }, { 6, 3.5, 1, 0.6 },
        { 6, 3.5, 0.5, 0.6 }, { 6, 0, 2, 1 }, { 8, 0, 4, 0.8 }, { 12, 0, 3, 1.6 },
    };

    // The same with turns that lie on one another. The first two were once planned with 32.99 and 19.6 mL, the cone through the middle of the bead.
    public static TheoryData<double, double, double, double> Touching => new()
    {
        { 6, 3.5, 4, 1.2 }, { 5, 3, 3, 1.5 }, { 6, 3.5, 5, 1.2 }, { 6, 3.5, 8, 1 }, { 6, 2, 6, 0.9 }, { 4, 6, 6, 1.6 }, { 6, 0, 4, 1.2 }, { 8, 0, 6, 1 },
    };

    // Cells of a 24th of the bead that are within half of it of the path: the bead with a half ball at either end, which a nozzle does not leave.
    [Theory]
    [MemberData(nameof(Apart))]
    public void TheBeadIsTheRoomItSweeps(double foot, double height, double turns, double bead)
    {
        double swept = Swept(foot, height, turns, bead) - Math.PI * bead * bead * bead / 6;
        Swirl swirl = Of(foot, height, turns, bead);
        Assert.Equal(swept, swirl.Millilitres, 0.01 * swept);
        Assert.False(swirl.IsOverfull);
    }

    // Icing is squeezed, not lost: the cells count once what two turns put there, so the swirl takes more than they, and no more than has room within half a bead.
    [Theory]
    [MemberData(nameof(Touching))]
    public void WhatTouchingTurnsSqueezeAsideCounts(double foot, double height, double turns, double bead)
    {
        double swept = Swept(foot, height, turns, bead) - Math.PI * bead * bead * bead / 6;
        Swirl swirl = Of(foot, height, turns, bead);
        Assert.InRange(swirl.Millilitres, swept * 0.99, double.MaxValue);
        Assert.InRange(swirl.Millilitres, Tube(foot, height, turns, bead) * (1 - 1e-6), Tube(foot, height, turns, bead) * (1 + 1e-6));
        Assert.InRange(swept, 0, swirl.EnclosingMillilitres);
    }

    [Theory]
    [MemberData(nameof(Apart))]
    public void TheBeadIsTheIntegralOverTheTube(double foot, double height, double turns, double bead) =>
        Assert.Equal(Tube(foot, height, turns, bead), Of(foot, height, turns, bead).Millilitres, 1e-6 * Tube(foot, height, turns, bead));

    // The cone, or the disc, moved out by half a bead: random points in its box (fixed seed), each by its distance from the triangle that turns round the axis. The
    // spread of a count with 400 000 points is below 0.2 %.
    [Theory]
    [InlineData(6, 3.5, 1.2)]
    [InlineData(5, 3, 1.5)]
    [InlineData(4, 12, 0.8)]
    [InlineData(6, 0, 1.2)]
    public void TheRoomIsTheConeMovedOutByHalfTheBead(double foot, double height, double bead)
    {
        Random random = new(14);
        const int Points = 400_000;
        double radius = foot / 2, half = bead / 2, wide = radius + half, high = height + bead;
        int inside = 0;
        for (int i = 0; i < Points; i++)
        {
            double x = wide * (2 * random.NextDouble() - 1), y = wide * (2 * random.NextDouble() - 1), r = Math.Sqrt(x * x + y * y), z = high * random.NextDouble() - half;
            inside += IsNear(r, z, radius, height, half) ? 1 : 0;
        }
        double room = 4 * wide * wide * high * inside / Points;
        Assert.Equal(room, Of(foot, height, 2, bead).EnclosingMillilitres, 0.01 * room);
    }

    // The two swirls of which half was planned: by cells with both round ends 43.5 mL, and by length times section.
    [Fact]
    public void TwoSwirlsThatWerePlannedShort()
    {
        Assert.Equal(43.5, Swept(6, 3.5, 4, 1.2), 0.1);
        Assert.Equal(43.27, Swirl.UpCone(Cm(6), Cm(3.5), 4, Cm(1.2)).Millilitres, 0.005);
        Assert.Equal(42.69, Swirl.UpCone(Cm(5), Cm(3), 3, Cm(1.5)).Millilitres, 0.005);
    }

    // 20 turns of 1.2 cm do not go into 6 by 3.5 cm, however they are squeezed: that is said, and the bead is planned.
    [Fact]
    public void WhatHasNoRoomIsSaidAndPlannedAllTheSame()
    {
        Swirl swirl = Swirl.UpCone(Cm(6), Cm(3.5), 20, Cm(1.2));
        Assert.True(swirl.IsOverfull);
        CakeCoverage coverage = Cake.Of("", [], [Cupcakes.Swirled("cream", 48, swirl)]).Cover();
        Assert.Equal(48 * Tube(6, 3.5, 20, 1.2), coverage.TotalMillilitres, 1e-3);
        CakeFinding finding = Assert.Single(coverage.Findings);
        Assert.Equal(CakeFindingKind.SwirlIsOverfull, finding.Kind);
        Assert.Contains("213.4 mL", finding.Text, StringComparison.Ordinal);
        Assert.Empty(Cake.Of("", [], [Cupcakes.Swirled("cream", 48, Swirl.UpCone(Cm(5), Cm(3), 3, Cm(1.5)))]).Cover().Findings);
    }

    private static Swirl Of(double foot, double height, double turns, double bead) =>
        height > 0 ? Swirl.UpCone(Cm(foot), Cm(height), turns, Cm(bead)) : Swirl.Rosette(Cm(foot), turns, Cm(bead));

    private static (double X, double Y, double Z) At(double foot, double height, double turns, double u)
    {
        double r = foot / 2 * (1 - u), angle = 2 * Math.PI * turns * u;
        return (r * Math.Cos(angle), r * Math.Sin(angle), height * u);
    }

    private static double Swept(double foot, double height, double turns, double bead)
    {
        const int CellsPerBead = 24;
        double cell = bead / CellsPerBead, half = bead / 2;
        int wide = (int)Math.Ceiling((foot / 2 + half) / cell) + 1, foundation = (int)Math.Ceiling(half / cell) + 1, high = (int)Math.Ceiling(height / cell) + 2 * foundation, taken = 0;
        bool[,,] isTaken = new bool[2 * wide, 2 * wide, high];
        (double X, double Y, double Z) last = (double.MaxValue, 0, 0);
        for (double u = 0; u <= 1; u += 1e-4 / turns)
        {
            (double x, double y, double z) = At(foot, height, turns, u);
            // A step of a twelfth of the bead leaves out a bow of 0.2 % of its half width.
            if (u < 1 - 1e-4 / turns && Square(x - last.X) + Square(y - last.Y) + Square(z - last.Z) < Square(bead / 12))
                continue;
            last = (x, y, z);
            for (int i = (int)Math.Floor((x - half) / cell); i * cell <= x + half; i++)
            {
                for (int j = (int)Math.Floor((y - half) / cell); j * cell <= y + half; j++)
                {
                    double beside = half * half - Square((i + 0.5) * cell - x) - Square((j + 0.5) * cell - y), up = Math.Sqrt(Math.Max(beside, 0));
                    for (int k = (int)Math.Ceiling((z - up) / cell - 0.5); beside > 0 && (k + 0.5) * cell <= z + up; k++)
                    {
                        taken += isTaken[i + wide, j + wide, k + foundation] ? 0 : 1;
                        isTaken[i + wide, j + wide, k + foundation] = true;
                    }
                }
            }
        }
        return taken * cell * cell * cell;
    }

    // The disc across the path, moved along it in 200 000 straight steps; by Pappus a bent piece has as much as a straight one through its middle.
    private static double Tube(double foot, double height, double turns, double bead)
    {
        const int Steps = 200_000;
        double path = 0;
        (double X, double Y, double Z) last = At(foot, height, turns, 0);
        for (int i = 1; i <= Steps; i++)
        {
            (double X, double Y, double Z) next = At(foot, height, turns, (double)i / Steps);
            path += Math.Sqrt(Square(next.X - last.X) + Square(next.Y - last.Y) + Square(next.Z - last.Z));
            last = next;
        }
        return path * Math.PI * bead * bead / 4;
    }

    // In the half plane of a point: the triangle from the axis, at the foot and at the tip, to the rim.
    private static bool IsNear(double r, double z, double radius, double height, double distance)
    {
        if (z >= 0 && z <= height && r <= radius * (1 - z / height))
            return true;
        double toFoot = r <= radius ? Math.Abs(z) : Math.Sqrt(Square(r - radius) + z * z);
        double along = Math.Clamp(((r - radius) * -radius + z * height) / (radius * radius + height * height), 0, 1);
        return Math.Min(toFoot, Math.Sqrt(Square(r - radius * (1 - along)) + Square(z - height * along))) <= distance;
    }

    private static double Square(double x) => x * x;
}
