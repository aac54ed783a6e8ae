namespace Confectio.Cakes.Plans;

/// <summary>A regular polygon with a side in front.</summary>
internal sealed class RegularPlan : EdgedPlan
{
    private readonly int _sides;

    /// <param name="sides">How many sides.</param>
    /// <param name="radius">The radius of the circle through the corners, cm.</param>
    public RegularPlan(int sides, double radius)
        : this(sides, Edges(sides, radius))
    {
    }

    private RegularPlan(int sides, PlanEdge[] edges)
        : base(edges) => _sides = sides;

    public static ShapeWord Word { get; } = ShapeWord.OfPlan("regular-polygon", ["sides", "acrossFlats", "acrossCorners"], Read);

    public override string Name => _sides switch
    {
        3 => "triangle",
        4 => "square",
        5 => "pentagon",
        6 => "hexagon",
        8 => "octagon",
        _ => "regular polygon",
    };

    internal override string Size(ISizeWords words) => _sides == 4 ? words.Of(WidthCentimetres) : base.Size(words);

    private protected override PlanShape With(PlanEdge[] edges) => new RegularPlan(_sides, edges);

    private static PlanEdge[] Edges(int sides, double radius)
    {
        PlanPoint[] corners = new PlanPoint[sides];
        for (int i = 0; i < sides; i++)
        {
            double angle = -Math.PI / 2 + (2 * i - 1) * Math.PI / sides;
            corners[i] = new PlanPoint(radius * Math.Cos(angle), radius * Math.Sin(angle));
        }
        return PolygonPlan.Sides(corners);
    }

    private static PlanShape Read(IShapeSizes sizes)
    {
        int sides = sizes.Count("sides", 6);
        if (sizes.Has("acrossFlats") == sizes.Has("acrossCorners"))
            sizes.Wrong("one of acrossFlats and acrossCorners is expected: they differ by up to a third in area");
        return sizes.Has("acrossCorners")
            ? PlanShape.RegularPolygonAcrossCorners(sides, sizes.Length("acrossCorners", CakeLength.FromCentimetres(1)))
            : PlanShape.RegularPolygonAcrossFlats(sides, sizes.Length("acrossFlats", CakeLength.FromCentimetres(1)));
    }
}
