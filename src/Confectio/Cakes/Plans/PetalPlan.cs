namespace Confectio.Cakes.Plans;

/// <summary>A regular polygon with half a disc on each side, the first at the back. It has notches and no sharp corner.</summary>
internal sealed class PetalPlan : EdgedPlan
{
    /// <param name="lobes">How many lobes.</param>
    /// <param name="radius">The radius of a lobe, cm.</param>
    public PetalPlan(int lobes, double radius)
        : this(Edges(lobes, radius))
    {
    }

    private PetalPlan(PlanEdge[] edges)
        : base(edges)
    {
    }

    public static ShapeWord Word { get; } = ShapeWord.OfPlan("petal", ["lobes", "lobeWidth"],
        sizes => PlanShape.Petal(sizes.Count("lobes", 6), sizes.Length("lobeWidth")));

    public override string Name => "petal";

    private protected override PlanShape With(PlanEdge[] edges) => new PetalPlan(edges);

    private static PlanEdge[] Edges(int lobes, double radius)
    {
        double apothem = radius / Math.Tan(Math.PI / lobes);
        PlanEdge[] edges = new PlanEdge[lobes];
        for (int i = 0; i < lobes; i++)
        {
            double angle = Math.PI / 2 + 2 * Math.PI * i / lobes;
            edges[i] = PlanEdge.Arc(apothem * Math.Cos(angle), apothem * Math.Sin(angle), radius, angle - Math.PI / 2, Math.PI);
        }
        return edges;
    }
}
