using System.Globalization;
using Confectio.Cakes.Bodies;

namespace Confectio.Cakes;

/// <summary>What a cake takes: every filling, coat, border and piece with its volume, and the sums by icing.</summary>
/// <remarks>
/// A coat is what a larger body has more than a smaller one, so that a second coat is larger than the first by what the first has added.
/// With every tier inside the one below, the exposed area is the sum of sides and tops less the footprints that stand on them; those of the
/// tiers without their coats.
/// </remarks>
public sealed class CakeCoverage
{
    private readonly List<CoveragePart> _parts = [];
    private readonly Dictionary<string, double> _sums = new(StringComparer.Ordinal);

    internal CakeCoverage(Cake cake, OutlineWork work)
    {
        Cake = cake;
        SideSquareCentimetres = cake.Tiers.Sum(tier => tier.Body.SideAreaSquareCentimetres);
        TopSquareCentimetres = cake.Tiers.Sum(tier => tier.Body.TopAreaSquareCentimetres);
        BodyMillilitres = cake.Tiers.Sum(tier => tier.Body.VolumeMillilitres);
        for (int i = 0; i < cake.Tiers.Count; i++)
        {
            double hidden = Hidden(i);
            HiddenSquareCentimetres += hidden;
            HiddenMillilitres += hidden * cake.Tiers[i].Coats.Sum(coat => coat.Place == CoatPlace.Side ? 0 : coat.ThicknessCentimetres);
            Cover(i, hidden, work);
        }
        List<string> icings = [];
        foreach (Cupcakes cupcakes in cake.Cupcakes)
            _parts.Add(new CoveragePart(null, CoverageKind.Cupcakes,
                string.Create(CultureInfo.InvariantCulture, $"{cupcakes.Count} cupcakes"), cupcakes.Icing, cupcakes.Millilitres));
        foreach (CoveragePart part in _parts)
        {
            if (_sums.TryAdd(part.Icing, part.Millilitres))
                icings.Add(part.Icing);
            else
                _sums[part.Icing] += part.Millilitres;
        }
        Icings = icings;
    }

    /// <summary>The cake.</summary>
    public Cake Cake { get; }

    /// <summary>The parts, tier by tier from the bottom up, and the cupcakes.</summary>
    public IReadOnlyList<CoveragePart> Parts => _parts;

    /// <summary>The names of the icings, in the order in which they come.</summary>
    public IReadOnlyList<string> Icings { get; }

    /// <summary>The sides of all tiers, cm², without coats.</summary>
    public double SideSquareCentimetres { get; }

    /// <summary>The tops of all tiers, cm², without coats.</summary>
    public double TopSquareCentimetres { get; }

    /// <summary>What the tiers hide of the tops they stand on, cm²: the footprints of the bodies.</summary>
    public double HiddenSquareCentimetres { get; }

    /// <summary>What is seen: sides and tops less what is hidden, cm².</summary>
    public double ExposedSquareCentimetres => SideSquareCentimetres + TopSquareCentimetres - HiddenSquareCentimetres;

    /// <summary>The icing on hidden tops, mL: what is saved by leaving them bare, or was.</summary>
    public double HiddenMillilitres { get; }

    /// <summary>The bodies of all tiers, mL: layers and fillings.</summary>
    public double BodyMillilitres { get; }

    /// <summary>All icings, mL.</summary>
    public double TotalMillilitres => _parts.Sum(part => part.Millilitres);

    /// <summary>What is remarkable about the cake.</summary>
    public IReadOnlyList<CakeFinding> Findings => field ??= CakeLook.At(Cake);

    /// <summary>How much of an icing.</summary>
    /// <param name="icing">The name of the icing.</param>
    /// <returns>mL; 0 where the cake has none of it.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="icing"/> is null.</exception>
    public double Millilitres(string icing) => _sums.GetValueOrDefault(Guard.NotNull(icing));

    /// <summary>The icings and their volumes, such as <c>buttercream 2315 mL, jam 412 mL</c>.</summary>
    public override string ToString() =>
        string.Join(", ", Icings.Select(icing => string.Create(CultureInfo.InvariantCulture, $"{icing} {Millilitres(icing):0} mL")));

    // What the next tier hides of the top of one.
    private double Hidden(int index) => Cake.StandingOn(index)?.Body.FootprintAreaSquareCentimetres ?? 0;

    private void Cover(int index, double hidden, OutlineWork work)
    {
        CakeTier tier = Cake.Tiers[index];
        double bare = Cake.HiddenTops == HiddenTop.Bare ? hidden : 0;
        int number = index + 1;
        Fill(tier, number, work);
        CoatedBody coated = tier.Body.Uncoated();
        double millilitres = tier.Body.VolumeMillilitres;
        foreach (CakeCoat coat in tier.Coats)
            (coated, millilitres) = Coat(tier.Body, coated, millilitres, coat, number, bare, work);
        foreach (CakeBorder border in tier.Borders)
        {
            double middle = border.MiddleCentimetres;
            double path = (border.Place == BorderPlace.Foot ? coated.Foot(middle, work) : coated.TopEdge(middle, work))?.Perimeter ?? 0;
            _parts.Add(new CoveragePart(number, CoverageKind.Border,
                $"{border.KindName} {(border.Place == BorderPlace.Foot ? "round the foot" : "on the top edge")}", border.Icing,
                border.Millilitres(path)));
        }
        foreach (PipedPieces pieces in tier.Pieces)
            _parts.Add(new CoveragePart(number, CoverageKind.Pieces, string.Create(CultureInfo.InvariantCulture, $"{pieces.Count} pieces"),
                pieces.Icing, pieces.Millilitres));
        if (tier.Drip is not CakeDrip drip)
            return;
        // The hole of a ring stays open, as far as its coats leave it.
        double hole = coated.HoleCentimetres / 2, pool = (coated.TopEdge(0, work)?.Area ?? 0) - Math.PI * hole * hole - hidden;
        _parts.Add(new CoveragePart(number, CoverageKind.Drip, string.Create(CultureInfo.InvariantCulture, $"pool and {drip.Drips} drips"),
            drip.Icing,
            Math.Max(pool, 0) * drip.PoolCentimetres + drip.Drips * drip.DripMillilitres));
    }

    private void Fill(CakeTier tier, int number, OutlineWork work)
    {
        for (int i = 0; i < tier.Fillings.Count; i++)
        {
            CakeFilling filling = tier.Fillings[i];
            double from = tier.FillingFrom(i), thickness = filling.ThicknessCentimetres;
            double high = tier.Body.HeightCentimetres;
            double slab = tier.Body.MillilitresBelow(Math.Min(from + thickness, high)) - tier.Body.MillilitresBelow(Math.Min(from, high));
            double dam = filling.DamIcing is null ? 0
                : tier.Body.BandAt(from + thickness / 2, filling.DamWidthCentimetres, work) * thickness;
            string name = string.Create(CultureInfo.InvariantCulture, $"filling {i + 1}");
            _parts.Add(new CoveragePart(number, CoverageKind.Filling, name, filling.Icing, Math.Max(slab - dam, 0), thickness));
            if (filling.DamIcing is string icing)
                _parts.Add(new CoveragePart(number, CoverageKind.Dam, $"dam of {name}", icing, Math.Min(dam, slab), thickness));
        }
    }

    private (CoatedBody After, double Millilitres) Coat(CakeBody body, CoatedBody before, double millilitresBefore, CakeCoat coat,
        int number, double bare, OutlineWork work)
    {
        CoatedBody after = before.With(coat);
        double millilitres = after == before ? millilitresBefore : after.Millilitres(work);
        double t = coat.ThicknessCentimetres, onTop = coat.Place == CoatPlace.Side ? 0 : 1, onSide = coat.Place == CoatPlace.Top ? 0 : 1;
        double area = onTop * (body.TopAreaSquareCentimetres - bare) + onSide * body.SideAreaSquareCentimetres;
        _parts.Add(new CoveragePart(number, CoverageKind.Coat, coat.Name, coat.Icing, millilitres - millilitresBefore - onTop * bare * t, t,
            area, area * t));
        return (after, millilitres);
    }
}
