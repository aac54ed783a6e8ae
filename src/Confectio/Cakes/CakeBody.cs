using System.Globalization;
using Confectio.Numerics;

namespace Confectio.Cakes;

/// <summary>The body of a cake or a tier that stands on a table: its top, its side, its volume, and what a coat of even thickness takes.</summary>
/// <remarks>A coat goes over the top and the side and ends on the table. The base is not coated, and 1 cm³ is 1 mL.</remarks>
public sealed class CakeBody
{
    // A prism; a frustum of a cone or of a square pyramid by its lower and upper width; a slice of a ball by its radius; a ring by its two diameters.
    private readonly Kind _kind;
    private readonly double _lower, _upper, _height;
    private readonly PlanShape? _plan;

    private CakeBody(Kind kind, double lower, double upper, double height, PlanShape? plan = null)
    {
        (_kind, _lower, _upper, _height, _plan) = (kind, lower, upper, height, plan);
        double lowerRadius = lower / 2, upperRadius = upper / 2, half = (lower - upper) / 2, slant = PlanEdge.Hypotenuse(half, height);
        (FootprintAreaSquareCentimetres, TopAreaSquareCentimetres, SideAreaSquareCentimetres, VolumeMillilitres) = kind switch
        {
            Kind.TaperedRound => (Math.PI * lowerRadius * lowerRadius, Math.PI * upperRadius * upperRadius, Math.PI * (lowerRadius + upperRadius) * slant,
                Frustum(lowerRadius, upperRadius, height)),
            Kind.TaperedSquare => (lower * lower, upper * upper, 2 * (lower + upper) * slant, SquareFrustum(lower, upper, height)),
            Kind.Ball => (Math.PI * height * (lower - height), 0, Math.PI * lower * height, BallSlice(lowerRadius, height)),
            Kind.Ring => (Math.PI * (lowerRadius * lowerRadius - upperRadius * upperRadius), Math.PI * (lowerRadius * lowerRadius - upperRadius * upperRadius),
                Math.PI * (lower + upper) * height, Math.PI * (lowerRadius * lowerRadius - upperRadius * upperRadius) * height),
            _ => (plan!.AreaSquareCentimetres, plan.AreaSquareCentimetres, plan.PerimeterCentimetres * height, plan.AreaSquareCentimetres * height),
        };
        Footprint = kind switch
        {
            Kind.Prism => plan,
            Kind.TaperedSquare => PlanShape.OfSquare(lower),
            Kind.Ball => FlatOrNone(2 * Math.Sqrt(FootprintAreaSquareCentimetres / Math.PI)),
            _ => FlatOrNone(lower),
        };
        Top = kind switch
        {
            Kind.Prism => plan,
            Kind.TaperedRound => FlatOrNone(upper),
            Kind.TaperedSquare => upper >= PlanShape.LeastCentimetres ? PlanShape.OfSquare(upper) : null,
            _ => null,
        };
    }

    private enum Kind
    {
        Prism,
        TaperedRound,
        TaperedSquare,
        Ball,
        Ring,
    }

    /// <summary>What it is, such as <c>heart</c>, <c>tapered round</c> or <c>ball</c>.</summary>
    public string Name => _kind switch
    {
        Kind.TaperedRound => "tapered round",
        Kind.TaperedSquare => "tapered square",
        Kind.Ball => _height == _lower / 2 ? "half ball" : _height < _lower / 2 ? "cap" : "ball",
        Kind.Ring => "ring",
        _ => _plan!.Name,
    };

    /// <summary>The height h, cm.</summary>
    public double HeightCentimetres => _height;

    /// <summary>The outline on the table; <see langword="null"/> for a ball on no flat. Of a ring it is the outer round.</summary>
    public PlanShape? Footprint { get; }

    /// <summary>The flat top on which another tier can stand; <see langword="null"/> where there is none, as on a ball, a cone or a ring.</summary>
    public PlanShape? Top { get; }

    /// <summary>The area on the table, cm²; of a ring without its hole.</summary>
    public double FootprintAreaSquareCentimetres { get; }

    /// <summary>The area of the flat top, cm²; 0 for a ball, whose dome is all side.</summary>
    public double TopAreaSquareCentimetres { get; }

    /// <summary>The area of the side, cm²; of a ring the outer and the inner one.</summary>
    public double SideAreaSquareCentimetres { get; }

    /// <summary>The outline of the widest cut through it that lies flat: of a tapered one its wider end, of a ball its middle, of a ring the outer round.</summary>
    internal PlanShape WidestCut => IsBall && _height >= _lower / 2 ? PlanShape.OfRound(_lower)
        : Top is not null && Top.AreaSquareCentimetres > Footprint!.AreaSquareCentimetres ? Top : Footprint!;

    /// <summary>The area of the widest cut through it that lies flat, cm²; of a ring without its hole.</summary>
    internal double WidestCutSquareCentimetres => IsBall && _height >= _lower / 2 ? Math.PI * _lower * _lower / 4 : Math.Max(FootprintAreaSquareCentimetres, TopAreaSquareCentimetres);

    /// <summary>What a coat covers, cm²: top and side.</summary>
    public double CoatedAreaSquareCentimetres => TopAreaSquareCentimetres + SideAreaSquareCentimetres;

    /// <summary>The volume, mL.</summary>
    public double VolumeMillilitres { get; }

    /// <summary>A body with straight walls on any plan: top A, side P·h, volume A·h.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="heightCentimetres">The height h, cm, from 0.001 to 10 000.</param>
    /// <returns>The body. Worked number: a round of 20 cm, 10 cm high: 314.16 cm², 628.32 cm² and 3141.6 mL.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="heightCentimetres"/> is outside its range.</exception>
    public static CakeBody Prism(PlanShape plan, double heightCentimetres)
    {
        Guard.NotNull(plan);
        return new CakeBody(Kind.Prism, 0, 0, Length(heightCentimetres, nameof(heightCentimetres)), plan);
    }

    /// <summary>A round tier with sloping walls: side π(R + r)·√((R − r)² + h²), volume π·h(R² + R·r + r²)/3.</summary>
    /// <param name="bottomDiameterCentimetres">The diameter at the table, cm, from 0.001 to 10 000.</param>
    /// <param name="topDiameterCentimetres">The diameter at the top, cm, from 0 (a cone) to 10 000; a tier may widen upward.</param>
    /// <param name="heightCentimetres">The height h, cm, from 0.001 to 10 000.</param>
    /// <returns>The body. Worked number: 20 and 16 cm, 6 cm high: side 357.65 cm², volume 1533.1 mL; a straight one of 18 cm would have 1526.8 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeBody TaperedRound(double bottomDiameterCentimetres, double topDiameterCentimetres, double heightCentimetres) => new(Kind.TaperedRound,
        Length(bottomDiameterCentimetres, nameof(bottomDiameterCentimetres)), Guard.InRange(topDiameterCentimetres, 0, PlanShape.MostCentimetres),
        Length(heightCentimetres, nameof(heightCentimetres)));

    /// <summary>A square tier with sloping walls: side 2(a + b)·√(((a − b)/2)² + h²), volume h(a² + a·b + b²)/3.</summary>
    /// <param name="bottomSideCentimetres">The side a at the table, cm, from 0.001 to 10 000.</param>
    /// <param name="topSideCentimetres">The side b at the top, cm, from 0 (a pyramid) to that at the table.</param>
    /// <param name="heightCentimetres">The height h, cm, from 0.001 to 10 000.</param>
    /// <returns>The body. Worked number: 20 and 14 cm, 4 cm high: side 340 cm² and volume 1168 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeBody TaperedSquare(double bottomSideCentimetres, double topSideCentimetres, double heightCentimetres) => new(Kind.TaperedSquare,
        Length(bottomSideCentimetres, nameof(bottomSideCentimetres)), Guard.InRange(topSideCentimetres, 0, bottomSideCentimetres),
        Length(heightCentimetres, nameof(heightCentimetres)));

    /// <summary>A half ball on its flat: dome 2π·R², volume 2π·R³/3.</summary>
    /// <param name="diameterCentimetres">The diameter, cm, from 0.001 to 10 000.</param>
    /// <returns>The body. Worked number: 20 cm across: 628.32 cm² and 2094.4 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="diameterCentimetres"/> is outside its range.</exception>
    public static CakeBody HalfBall(double diameterCentimetres)
    {
        Guard.InRange(diameterCentimetres, LeastBall, PlanShape.MostCentimetres);
        return new CakeBody(Kind.Ball, diameterCentimetres, 0, diameterCentimetres / 2);
    }

    /// <summary>A ball that stands on a flat: the whole less the cap under the flat.</summary>
    /// <param name="diameterCentimetres">The diameter of the ball, cm, from 0.002 to 10 000.</param>
    /// <param name="flatDiameterCentimetres">The diameter of the flat it stands on, cm, from 0 to that of the ball.</param>
    /// <returns>The body. Worked number: 20 cm on a flat of 12 cm is 18 cm high, with 1130.97 cm² and 4071.5 mL; on no flat 1256.6 cm² and 4188.8 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeBody Ball(double diameterCentimetres, double flatDiameterCentimetres = 0)
    {
        Guard.InRange(diameterCentimetres, LeastBall, PlanShape.MostCentimetres);
        Guard.InRange(flatDiameterCentimetres, 0, diameterCentimetres);
        double above = Math.Sqrt((diameterCentimetres - flatDiameterCentimetres) * (diameterCentimetres + flatDiameterCentimetres)) / 2;
        return new CakeBody(Kind.Ball, diameterCentimetres, 0, diameterCentimetres / 2 + above);
    }

    /// <summary>A slice of a ball on its flat, such as a dome: dome 2π·R·h, volume π·h²(3R − h)/3.</summary>
    /// <param name="ballRadiusCentimetres">The radius R of the ball, cm, from 0.001 to 5000.</param>
    /// <param name="heightCentimetres">The height h, cm, from 0.001 to twice the radius.</param>
    /// <returns>The body. Worked number: 4 cm of a ball of 10 cm radius stand on 16 cm, with 251.33 cm² and 435.63 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeBody Cap(double ballRadiusCentimetres, double heightCentimetres)
    {
        Guard.InRange(ballRadiusCentimetres, PlanShape.LeastCentimetres, PlanShape.MostCentimetres / 2);
        Guard.InRange(heightCentimetres, PlanShape.LeastCentimetres, 2 * ballRadiusCentimetres);
        return new CakeBody(Kind.Ball, 2 * ballRadiusCentimetres, 0, heightCentimetres);
    }

    /// <summary>A ring with straight walls, from a tube tin: top π(R² − r²), sides 2π(R + r)·h.</summary>
    /// <param name="outerDiameterCentimetres">The diameter outside, cm, from 0.001 to 10 000.</param>
    /// <param name="innerDiameterCentimetres">The diameter of the hole, cm, from 0 to less than that outside.</param>
    /// <param name="heightCentimetres">The height h, cm, from 0.001 to 10 000.</param>
    /// <returns>The body. Worked number: 24 and 8 cm, 9 cm high: top 402.12 cm², sides 904.78 cm², volume 3619.1 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeBody Ring(double outerDiameterCentimetres, double innerDiameterCentimetres, double heightCentimetres)
    {
        Length(outerDiameterCentimetres, nameof(outerDiameterCentimetres));
        Guard.InRange(innerDiameterCentimetres, 0, Math.BitDecrement(outerDiameterCentimetres));
        return new CakeBody(Kind.Ring, outerDiameterCentimetres, innerDiameterCentimetres, Length(heightCentimetres, nameof(heightCentimetres)));
    }

    /// <summary>The same body in another size.</summary>
    /// <param name="factor">What every length is multiplied by, from 0.001 to 1000: areas by its square, the volume by its cube.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="factor"/> is outside its range, or a length of what comes out is.</exception>
    public CakeBody Scaled(double factor)
    {
        Guard.InRange(factor, 0.001, 1000);
        Guard.InRange(factor, ScaleLimits.Low, ScaleLimits.High);
        return new CakeBody(_kind, factor * _lower, factor * _upper, factor * _height, _plan?.Resized(factor));
    }

    /// <summary>What lies below a height: what a tin of this form holds when it is filled so high, or a layer when the cake is cut there.</summary>
    /// <param name="heightCentimetres">The height z over the table, cm, from 0 to that of the body.</param>
    /// <returns>mL. Worked number: of a half ball of 20 cm the lower 5 cm have 1439.9 mL, more than two thirds.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="heightCentimetres"/> is outside its range.</exception>
    public double MillilitresBelow(double heightCentimetres)
    {
        double z = Guard.InRange(heightCentimetres, 0, _height);
        return _kind switch
        {
            Kind.TaperedRound => Frustum(_lower / 2, WidthAt(z) / 2, z),
            Kind.TaperedSquare => SquareFrustum(_lower, WidthAt(z), z),
            Kind.Ball => VolumeMillilitres - BallSlice(_lower / 2, _height - z),
            _ => FootprintAreaSquareCentimetres * z,
        };
    }

    /// <summary>Area times thickness: the usual estimate of a coat, which leaves out the edges: low on any body without notches that does not widen upward.</summary>
    /// <param name="thicknessCentimetres">The thickness t, cm, from 0 to 1000.</param>
    /// <returns>mL. Worked number: a round of 20 cm, 12 cm high, with 0.6 cm: 640.885 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="thicknessCentimetres"/> is outside its range.</exception>
    public double ThinCoatMillilitres(double thicknessCentimetres) => CoatedAreaSquareCentimetres * Guard.InRange(thicknessCentimetres, 0, 1000);

    /// <summary>The volume of a coat of even thickness over top and side, down to the table.</summary>
    /// <param name="thicknessCentimetres">The thickness t, cm, from 0 to 1000.</param>
    /// <param name="edge">How it goes round the edges.</param>
    /// <returns>
    /// mL. For a plan without notches, rounded: A·t + h(P·t + π·t²) + π·P·t²/4 + 2π·t³/3. Worked number: a round of 20 cm, 12 cm high, with 0.6 cm:
    /// 672.674 mL rounded and 677.755 mL sharp; area times thickness is 5.4 % below the latter.
    /// A heart, a petal or a polygon with notches is integrated over the rounding of its top edge: to about 1e-9, or 1e-4 of the edge where a notch closes on
    /// the way. Sharp, a polygon with notches gets an upper bound (<see cref="PlanShape.SharpOffset"/>). The hole of a ring narrows and at last closes.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>
    /// Rounded is what is no farther than t from the body; the foot of a flat dome has a small bulge by that, and sharp it runs on to the table.
    /// Source: Steiner (1840) and Pappus.
    /// </remarks>
    public double CoatMillilitres(double thicknessCentimetres, CoatEdge edge = CoatEdge.Rounded) =>
        CoatMillilitres(Guard.InRange(thicknessCentimetres, 0, 1000), Guard.Defined(edge), new OutlineWork());

    /// <summary>The kind and the size, such as <c>heart, 25.4 × 23.22 cm, 8 cm high</c>.</summary>
    public override string ToString()
    {
        string size = _kind switch
        {
            Kind.Prism => _plan!.ToString(),
            Kind.Ball => string.Create(CultureInfo.InvariantCulture, $"{Name}, {_lower:0.##} cm"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{Name}, {_lower:0.##} and {_upper:0.##} cm"),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{size}, {_height:0.##} cm high");
    }

    /// <summary>The volume of a coat within a budget of work.</summary>
    internal double CoatMillilitres(double t, CoatEdge edge, OutlineWork work)
    {
        if (edge == CoatEdge.Rounded)
            return RoundedMillilitres(t, work);
        return _kind == Kind.Prism ? _plan!.Grown(t, 0, work).Area * (_height + t) - VolumeMillilitres : Grown(t, t).VolumeMillilitres - VolumeMillilitres;
    }

    /// <summary>The plan of a body with straight walls; <see langword="null"/> for all others.</summary>
    internal PlanShape? StraightPlan => _plan;

    /// <summary>The corners or arcs of its plan.</summary>
    internal int Corners => Math.Max(Footprint?.Edges.Length ?? 1, 1);

    /// <summary>Whether it is a ball or a part of one, which has no top apart from its side.</summary>
    internal bool IsBall => _kind == Kind.Ball;

    /// <summary>The diameter of a ball, cm.</summary>
    internal double BallCentimetres => _lower;

    /// <summary>Whether it is a ring, whose top is flat and yet nothing can stand on it.</summary>
    internal bool IsRing => _kind == Kind.Ring;

    /// <summary>The diameter of the hole of a ring, cm; else 0.</summary>
    internal double HoleCentimetres => IsRing ? _upper : 0;

    /// <summary>The outline at a height, of a ring the outer one; <see langword="null"/> where it is narrower than a plan may be.</summary>
    internal PlanShape? PlanAt(double z) => _kind switch
    {
        Kind.Prism => _plan,
        Kind.TaperedRound => FlatOrNone(WidthAt(z)),
        Kind.TaperedSquare => WidthAt(z) >= PlanShape.LeastCentimetres ? PlanShape.OfSquare(WidthAt(z)) : null,
        Kind.Ball => FlatOrNone(2 * Math.Sqrt(Math.Max((_height - z) * (_lower - _height + z), 0))),
        _ => PlanShape.OfRound(_lower),
    };

    /// <summary>The area of a band of a width along the edges at a height: of a dam, in a ring along both of its edges.</summary>
    internal double BandAt(double z, double width, OutlineWork work)
    {
        PlanShape? plan = PlanAt(z);
        if (_kind != Kind.Ring)
            return plan is null ? 0 : plan.AreaSquareCentimetres - plan.Shrunk(width, work).Area;
        double outer = _lower / 2, inner = _upper / 2, half = (outer - inner) / 2;
        return width >= half ? FootprintAreaSquareCentimetres : 2 * Math.PI * width * (outer + inner);
    }

    /// <summary>The factors that keep every length of it within the range of a length.</summary>
    internal (double Low, double High) ScaleLimits
    {
        get
        {
            double largest = Math.Max(Math.Max(_lower, _upper), _height), least = _lower > 0 ? Math.Min(_lower, _height) : _height;
            (double low, double high) = _plan?.ScaleLimits ?? (0, double.MaxValue);
            return (Math.Max(low, Math.Min(1, PlanShape.LeastCentimetres / least)), Math.Min(high, Math.Max(1, PlanShape.MostCentimetres / largest)));
        }
    }

    /// <summary>The body inside a sharp coat, so thick on its side and so thick on its top. Not of straight walls on any plan: those stay a plan and two figures.</summary>
    internal CakeBody Grown(double side, double top)
    {
        if (_kind == Kind.Ring)
            return new CakeBody(Kind.Ring, _lower + 2 * side, Math.Max(_upper - 2 * side, 0), _height + top);
        if (_kind == Kind.Ball)
            return new CakeBody(Kind.Ball, _lower + 2 * side, 0, _height + top);
        double narrows = (_lower - _upper) / 2 / _height, foot = _lower / 2 + side * Math.Sqrt(1 + narrows * narrows), height = _height + top;
        // Over a cone the coat ends in a point below its own flat top.
        if (foot - narrows * height < 0)
            height = foot / narrows;
        return new CakeBody(_kind, 2 * foot, 2 * Math.Max(foot - narrows * height, 0), height);
    }

    /// <summary>A rounded coat over a part of a plan and a height that a sharp coat has made larger before.</summary>
    internal static double RoundedPrism(PlanShape plan, double sharp, double height, double t, OutlineWork work)
    {
        if (t == 0)
            return 0;
        (double area, double perimeter) = plan.Grown(sharp, 0, work);
        if (plan.IsConvex)
            return area * t + height * t * (perimeter + Math.PI * t) + t * t * (Math.PI * perimeter / 4 + 2 * Math.PI * t / 3);
        // At the height t·sin φ over the top the coat reaches t·cos φ beyond the plan.
        double over = Quadrature.GaussLegendre(angle => t * Math.Cos(angle) * plan.Grown(sharp, t * Math.Cos(angle), work).Area, 0, Math.PI / 2, 24);
        return height * (plan.Grown(sharp, t, work).Area - area) + over;
    }

    /// <summary>A rounded coat.</summary>
    internal double RoundedMillilitres(double t, OutlineWork work) => _kind switch
    {
        Kind.TaperedRound => RoundedTaperedRound(t),
        Kind.TaperedSquare => RoundedTaperedSquare(t),
        Kind.Ball => _height >= _lower / 2 ? BallSlice(_lower / 2 + t, _height + t) - VolumeMillilitres : RoundedCap(t),
        Kind.Ring => RoundedRing(t),
        _ => RoundedPrism(_plan!, 0, _height, t, work),
    };

    private const double LeastBall = 2 * PlanShape.LeastCentimetres;

    private static double Length(double value, string name) => Guard.InRange(value, PlanShape.LeastCentimetres, PlanShape.MostCentimetres, name);

    private double WidthAt(double z) => _lower + (_upper - _lower) * (z / _height);

    private static PlanShape? FlatOrNone(double diameter) => diameter >= PlanShape.LeastCentimetres ? PlanShape.OfRound(diameter) : null;

    private static double Frustum(double lowerRadius, double upperRadius, double height) =>
        Math.PI * height * (lowerRadius * lowerRadius + lowerRadius * upperRadius + upperRadius * upperRadius) / 3;

    private static double SquareFrustum(double lower, double upper, double height) => height * (lower * lower + lower * upper + upper * upper) / 3;

    private static double BallSlice(double radius, double height) => Math.PI * height * height * (3 * radius - height) / 3;

    // The integral of π(radius + side·√(t² − u²))²: the discs of the rounding of an edge, at the height u over it.
    private static double Rounding(double radius, double t, double from, double to, int side = 1)
    {
        double Indefinite(double u)
        {
            double bow = u * Math.Sqrt(Math.Max(t * t - u * u, 0)) + t * t * Math.Asin(Math.Clamp(u / t, -1, 1));
            return radius * radius * u + side * radius * bow + t * t * u - u * u * u / 3;
        }
        return t == 0 ? 0 : Math.PI * (Indefinite(to) - Indefinite(from));
    }

    private double RoundedTaperedRound(double t)
    {
        double lower = _lower / 2, upper = _upper / 2, slant = PlanEdge.Hypotenuse(lower - upper, _height), rise = t * (lower - upper) / slant, outward = t * _height / slant;
        // From the table: the rounding of the foot (where it narrows), the side moved outward, the rounding of the top edge. Where it widens, the side and
        // at last the rounding are cut off by the table.
        double sideFrom = Math.Max(rise, 0), sideTo = Math.Max(_height + rise, 0);
        double At(double z) => lower + outward + (upper - lower) * (z - rise) / _height;
        double volume = rise > 0 ? Rounding(lower, t, 0, rise) : 0;
        if (sideTo > sideFrom)
            volume += Frustum(At(sideFrom), At(sideTo), sideTo - sideFrom);
        return volume + Rounding(upper, t, sideTo - _height, t) - VolumeMillilitres;
    }

    private double RoundedTaperedSquare(double t)
    {
        // Faces, edges and corners apart. Up from the table the directions at the corners make up a half ball.
        double half = (_lower - _upper) / 2, lean = Math.Atan2(half, _height), sine = Math.Sin(lean);
        double edges = 4 * _upper * (Math.PI / 2 - lean) + 4 * _lower * lean + 4 * Math.Sqrt(_height * _height + 2 * half * half) * Math.Acos(sine * sine);
        return t * (CoatedAreaSquareCentimetres + t * (edges / 2 + 2 * Math.PI * t / 3));
    }

    private double RoundedCap(double t)
    {
        double radius = _lower / 2, cosine = (radius - _height) / radius, sine = Math.Sqrt(1 - cosine * cosine), foot = radius * sine;
        // The shell over the dome, and at the foot the part of a torus from the last ray of the ball down to the table.
        double shell = 2 * Math.PI * (1 - cosine) * t * (radius * radius + radius * t + t * t / 3);
        return shell + 2 * Math.PI * t * t * (foot * Math.Asin(cosine) / 2 + t * cosine / 3);
    }

    private double RoundedRing(double t)
    {
        double outer = _lower / 2, inner = _upper / 2, left = Math.Max(inner - t, 0);
        // All that is inside the outer coat, less the hole that is left: beside the body, and over it, where a closed hole opens at a height.
        double closed = t > inner ? Math.Sqrt((t - inner) * (t + inner)) : 0;
        double full = Math.PI * outer * outer * _height + Math.PI * (2 * outer + t) * t * _height + Rounding(outer, t, 0, t);
        return full - Math.PI * left * left * _height - Rounding(inner, t, closed, t, -1) - VolumeMillilitres;
    }
}
