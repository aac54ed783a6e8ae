using System.Globalization;
using System.Text.Json;
using Confectio.Cakes;
using Confectio.Numerics;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Cakes;

/// <summary>The exact figures of Oracles/geometry, to 1e-12 of each.</summary>
public sealed class GoldenShapeTests
{
    private const double Exact = 1e-12;

    [Fact]
    public void EveryShapeIsTheExactOne()
    {
        using JsonDocument document = Read("geometry.json");
        int seen = 0;
        foreach (JsonElement entry in document.RootElement.EnumerateArray())
        {
            string shape = entry.GetProperty("shape").GetString()!;
            JsonElement p = entry.GetProperty("params");
            double Of(string name) => Number(p.GetProperty(name));
            void Is(string name, double actual)
            {
                double expected = Number(entry.GetProperty(name));
                Assert.True(Math.Abs(actual - expected) <= Exact * expected, $"{shape}.{name}: {actual:R} is not {expected:R}");
            }
            void Prism(PlanShape plan)
            {
                CakeBody body = CakeBody.Prism(plan, Cm(Of("height")));
                Is("top", body.TopAreaSquareCentimetres);
                Is("side", body.SideAreaSquareCentimetres);
                Is("volume", body.VolumeMillilitres);
                Is("perimeter", plan.PerimeterCentimetres);
                Assert.Equal(body.TopAreaSquareCentimetres, body.FootprintAreaSquareCentimetres);
            }
            switch (shape)
            {
                case "round":
                    Prism(PlanShape.Round(Cm(Of("diameter"))));
                    break;
                case "square":
                    Prism(PlanShape.Square(Cm(Of("side"))));
                    break;
                case "sheet_rounded":
                    Prism(PlanShape.Rectangle(Cm(Of("w")), Cm(Of("l")), Cm(Of("corner_radius"))));
                    break;
                case "regular_5_gon_by_inradius_x2":
                    Prism(PlanShape.RegularPolygonAcrossFlats(5, Cm(Of("twice_apothem"))));
                    break;
                case "regular_6_gon_by_inradius_x2":
                    Prism(PlanShape.RegularPolygonAcrossFlats(6, Cm(Of("twice_apothem"))));
                    break;
                case "heart_square_plus_2_half_discs":
                    PlanShape heart = PlanShape.HeartOfSquare(Cm(Of("s")));
                    Prism(heart);
                    Is("overall_width", heart.WidthCentimetres);
                    Is("overall_height", heart.LengthCentimetres);
                    Prism(PlanShape.Heart(Cm(Number(entry.GetProperty("overall_width")))));
                    break;
                case "petal_4" or "petal_6":
                    PlanShape petal = PlanShape.Petal(shape[^1] - '0', Cm(Of("s")));
                    Prism(petal);
                    Is("across", petal.LengthCentimetres);
                    break;
                case "oval_ellipse":
                    Prism(PlanShape.Oval(Cm(2 * Of("a")), Cm(2 * Of("b"))));
                    Prism(PlanShape.Oval(Cm(2 * Of("b")), Cm(2 * Of("a"))));
                    break;
                case "hemisphere":
                    Is("curved", CakeBody.HalfBall(Cm(2 * Of("R"))).SideAreaSquareCentimetres);
                    Is("volume", CakeBody.HalfBall(Cm(2 * Of("R"))).VolumeMillilitres);
                    break;
                case "ball":
                    Is("curved", CakeBody.Ball(Cm(2 * Of("R"))).CoatedAreaSquareCentimetres);
                    Is("volume", CakeBody.Ball(Cm(2 * Of("R"))).VolumeMillilitres);
                    break;
                case "bead_ring_full_round":
                    Is("volume", PipedLine.FullRoundMillilitres(Cm(2 * Math.PI * Of("ring_radius")), Cm(2 * Of("bead_radius"))));
                    break;
                case "shell_border_hemispheres_touching":
                    Is("volume", PipedLine.ShellsMillilitres(Cm(Of("perimeter")), Cm(2 * Of("bead_radius"))));
                    break;
                case "coat_round_rounded_edge":
                    Is("volume", CakeBody.Prism(PlanShape.Round(Cm(2 * Of("R"))), Cm(Of("h"))).CoatMillilitres(Of("t")));
                    break;
                default:
                    Assert.Fail(shape + " is not known");
                    break;
            }
            seen++;
        }
        Assert.Equal(14, seen);
    }

    [Fact]
    public void ThePerimeterOfAnEllipse()
    {
        using JsonDocument document = Read("geometry_ellipse.json");
        int seen = 0;
        foreach (JsonElement entry in document.RootElement.GetProperty("ellipse_perimeter_a1").EnumerateArray())
        {
            double b = Number(entry.GetProperty("b_over_a")), expected = Number(entry.GetProperty("P"));
            // Full double: a few roundings.
            Assert.Equal(expected, Ellipse.Perimeter(1, b), 1e-15 * 5 * expected);
            Assert.Equal(expected, Ellipse.Perimeter(b, 1), 1e-15 * 5 * expected);
            if (b > 0)
                Assert.Equal(20 * expected, PlanShape.Oval(Cm(40), Cm(40 * b)).PerimeterCentimetres, Exact * 20 * expected);
            seen++;
        }
        Assert.Equal(14, seen);
    }

    // Abramowitz and Stegun 17.3.35 and DLMF 19.12: for m₁ = (b/a)² → 0, E = 1 + m₁/2·(ln(4/√m₁) − 1/2) + O(m₁²·ln m₁).
    [Theory]
    [InlineData(1e-4)]
    [InlineData(1e-7)]
    [InlineData(1e-12)]
    [InlineData(1e-100)]
    [InlineData(1e-300)]
    public void AnEllipseAlmostFlat(double b)
    {
        double expected = 4 * (1 + b * b / 2 * (Math.Log(4 / b) - 0.5));
        // E is 2π·left/mean, and left falls as 1/ln(4a/b): its roundings count ln(4a/b) times, 690 at the last.
        Assert.Equal(expected, Ellipse.Perimeter(1, b), 1e-12);
    }

    // The figures of reports of the coat of a round, R 10, h 12, t 0.6, worked out here from their printed equations.
    [Fact]
    public void TheThreeCoatsOfARound()
    {
        CakeBody body = CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(12));
        double r = 10, h = 12, t = 0.6;
        double rounded = Math.PI * r * r * t + Math.PI * h * (2 * r * t + t * t) + Math.PI * (Math.PI * r * t * t / 2 + 2 * t * t * t / 3);
        Near((Math.PI * r * r + 2 * Math.PI * r * h) * t, body.ThinCoatMillilitres(t), Exact);
        Near(rounded, body.CoatMillilitres(t), Exact);
        Near(Math.PI * (r + t) * (r + t) * (h + t) - Math.PI * r * r * h, body.CoatMillilitres(t, CoatEdge.Sharp), Exact);
        Assert.Equal(640.885, body.ThinCoatMillilitres(t), 5e-4);
        Assert.Equal(672.674, body.CoatMillilitres(t), 5e-4);
        Assert.Equal(677.755, body.CoatMillilitres(t, CoatEdge.Sharp), 5e-4);
    }

    [Fact]
    public void FrustaCapsAndRings()
    {
        CakeBody round = CakeBody.TaperedRound(Cm(20), Cm(16), Cm(6)), square = CakeBody.TaperedSquare(Cm(20), Cm(14), Cm(4)), ring = CakeBody.Ring(Cm(24), Cm(8), Cm(9));
        Near(Math.PI * 18 * Math.Sqrt(40), round.SideAreaSquareCentimetres, Exact);
        Near(Math.PI * 6 * (100 + 80 + 64) / 3, round.VolumeMillilitres, Exact);
        // The mean cylinder is 0.41 % low.
        Assert.Equal(-0.0041, Math.PI * 81 * 6 / round.VolumeMillilitres - 1, 5e-5);
        // Slant 5 by the triangle 3, 4, 5.
        Near(2 * 34 * 5, square.SideAreaSquareCentimetres, Exact);
        Near(4 * (400 + 280 + 196) / 3.0, square.VolumeMillilitres, Exact);
        Near(Math.PI * (144 - 16), ring.TopAreaSquareCentimetres, Exact);
        Near(2 * Math.PI * 16 * 9, ring.SideAreaSquareCentimetres, Exact);
        Near(Math.PI * 128 * 9, ring.VolumeMillilitres, Exact);
        // A ball of 20 on a flat of 12 is 10 + 8 high; with the cap under the flat it is whole.
        CakeBody ball = CakeBody.Ball(Cm(20), Cm(12)), cap = CakeBody.Cap(Cm(10), Cm(2));
        Near(18, ball.HeightCentimetres, Exact);
        Near(4000 * Math.PI / 3, ball.VolumeMillilitres + cap.VolumeMillilitres, Exact);
        Near(400 * Math.PI, ball.SideAreaSquareCentimetres + cap.SideAreaSquareCentimetres, Exact);
        Near(36 * Math.PI, ball.FootprintAreaSquareCentimetres, Exact);
        Near(12, ball.Footprint!.WidthCentimetres, Exact);
        Near(cap.FootprintAreaSquareCentimetres, ball.FootprintAreaSquareCentimetres, Exact);
    }

    [Fact]
    public void BordersAndSwirls()
    {
        // Pappus: 2π(R + 4b/(3π))·πb²/2 at R = 10, b = 0.5.
        Near(2 * Math.PI * (10 + 4 * 0.5 / (3 * Math.PI)) * Math.PI * 0.25 / 2, PipedLine.HalfRoundMillilitres(PlanShape.Round(Cm(20)), Cm(1)), Exact);
        Assert.Equal(25.1976, PipedLine.HalfRoundMillilitres(PlanShape.Round(Cm(20)), Cm(1)), 5e-5);
        Assert.Equal(24.674, PipedLine.HalfRoundMillilitres(Cm(20 * Math.PI), Cm(1)), 5e-4);
        Near(2 * Math.PI * 10.5 * Math.PI / 4, PipedLine.FullRoundMillilitres(PlanShape.Round(Cm(20)), Cm(1)), Exact);
        Near(1.25 * PipedLine.ShellsMillilitres(Cm(60), Cm(1.2)), PipedLine.ShellsMillilitres(Cm(60), Cm(1.2), 1.25), Exact);
        Swirl swirl = Swirl.UpCone(Cm(6), Cm(3.5), 3, Cm(1.2));
        Near(28.96970055432098, swirl.PathCentimetres, Exact);
        Assert.Equal(32.764, swirl.Millilitres, 5e-4);
    }

    // The path added up in short straight steps: no closed form. Their error falls as the square of the step, here 1e-9.
    [Theory]
    [InlineData(3, 3.5, 3)]
    [InlineData(2, 6, 0.5)]
    [InlineData(3, 0, 2)]
    [InlineData(4, 0, 0.3)]
    public void TheSpiralIsItsSteps(double radius, double height, double turns)
    {
        const int Steps = 200_000;
        double sum = 0, x0 = radius, y0 = 0;
        for (int i = 1; i <= Steps; i++)
        {
            double u = (double)i / Steps, r = radius * (1 - u), angle = 2 * Math.PI * turns * u, x = r * Math.Cos(angle), y = r * Math.Sin(angle);
            sum += Math.Sqrt((x - x0) * (x - x0) + (y - y0) * (y - y0) + height * height / Steps / Steps);
            (x0, y0) = (x, y);
        }
        Swirl swirl = height > 0 ? Swirl.UpCone(Cm(2 * radius), Cm(height), turns, Cm(0.2)) : Swirl.Rosette(Cm(2 * radius), turns, Cm(0.2));
        Near(sum, swirl.PathCentimetres, 1e-8);
    }

    private static void Near(double expected, double actual, double share) => Assert.Equal(expected, actual, share * Math.Abs(expected));

    private static JsonDocument Read(string file) => JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Oracles", "geometry", file)));

    private static double Number(JsonElement value)
    {
        if (value.ValueKind == JsonValueKind.Number)
            return value.GetDouble();
        string[] parts = value.GetString()!.Split('/');
        double top = double.Parse(parts[0], CultureInfo.InvariantCulture);
        return parts.Length == 1 ? top : top / double.Parse(parts[1], CultureInfo.InvariantCulture);
    }
}
