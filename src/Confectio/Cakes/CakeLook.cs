using System.Globalization;

namespace Confectio.Cakes;

/// <summary>The second look at a cake: sizes in the wrong unit, thicknesses nobody spreads, notches that fill up.</summary>
/// <remarks>
/// The limits are estimates of ours. Tins are sold from 4 to 18 in and from 10 to 45 cm; a sheet is 18 by 26 in, 46 by 66 cm.
/// </remarks>
internal static class CakeLook
{
    private const double SmallestTin = 10, SmallStack = 20, LargestTin = 70, TallestTier = 30;

    private const double Thinnest = 0.05, Thickest = 2.5, ThinnestLayer = 0.5;

    public static IReadOnlyList<CakeFinding> At(Cake cake)
    {
        List<CakeFinding> findings = [];
        Sizes(cake, findings);
        for (int i = 0; i < cake.Tiers.Count; i++)
            Tier(cake.Tiers[i], i + 1, findings);
        // Such as a width that was given as the thickness.
        foreach (Cupcakes flat in cake.Cupcakes
            .Where(one => one.ThicknessCentimetres > 0 && one.ThicknessCentimetres is < Thinnest or > Thickest))
            findings.Add(new CakeFinding(CakeFindingKind.UnusualThickness, string.Create(CultureInfo.InvariantCulture,
                $"Cupcakes: a coat of {10 * flat.ThicknessCentimetres:0.###} mm is outside the "
                + $"{10 * Thinnest} to {10 * Thickest} mm that a cake can carry.")));
        foreach (CoveragePart border in cake.Cover().Parts.Where(part => part.Kind == CoverageKind.Border && part.Millilitres == 0))
            findings.Add(new CakeFinding(CakeFindingKind.BorderHasNoRoom,
                string.Create(CultureInfo.InvariantCulture,
                $"Tier {border.Tier}: a {border.Name} of {border.Icing} is too wide for where it runs; nothing of it is planned.")));
        foreach (Swirl swirl in cake.Cupcakes.Select(one => one.Swirl)
            .Concat(cake.Tiers.SelectMany(tier => tier.Pieces).Select(pieces => pieces.Piece)).OfType<Swirl>().Distinct())
        {
            if (swirl.IsOverfull)
                findings.Add(new CakeFinding(CakeFindingKind.SwirlIsOverfull, string.Create(CultureInfo.InvariantCulture,
                    $"The bead of a swirl is {swirl.Millilitres:0.#} mL, and at its sizes there is room "
                    + $"for {swirl.EnclosingMillilitres:0.#} mL: it becomes larger than that, or has fewer turns. "
                    + $"The bead is planned.")));
        }
        return findings;
    }

    private static void Sizes(Cake cake, List<CakeFinding> findings)
    {
        if (cake.Tiers.Count == 0)
            return;
        double widest = cake.Tiers.Max(tier => tier.Body.AcrossCentimetres), tallest = cake.Tiers.Max(tier => tier.Body.HeightCentimetres);
        if (widest < SmallestTin || (cake.Tiers.Count >= 3 && widest < SmallStack))
            findings.Add(new CakeFinding(CakeFindingKind.SmallForCentimetres, string.Create(CultureInfo.InvariantCulture,
                $"The widest of {cake.Tiers.Count} {(cake.Tiers.Count == 1 ? "tier" : "tiers")} is "
                + $"{widest:0.##} cm ({widest / CakeLength.CentimetresPerInch:0.##} in) across, which is small; "
                + $"were {widest:0.##} in meant?")));
        if (widest > LargestTin || tallest > TallestTier)
            findings.Add(new CakeFinding(CakeFindingKind.LargeForInches, string.Create(CultureInfo.InvariantCulture,
                $"A tier is {widest:0.##} cm ({widest / CakeLength.CentimetresPerInch:0.##} in) across "
                + $"or {tallest:0.##} cm ({tallest / CakeLength.CentimetresPerInch:0.##} in) high, which is large; "
                + $"were centimetres meant and inches read?")));
    }

    private static void Tier(CakeTier tier, int number, List<CakeFinding> findings)
    {
        foreach ((string what, double thickness) in tier.Coats.Select(coat => (coat.Name, coat.ThicknessCentimetres))
            .Concat(tier.Fillings.Select(filling => ("filling", filling.ThicknessCentimetres))))
        {
            if (thickness > 0 && thickness is < Thinnest or > Thickest)
                findings.Add(new CakeFinding(CakeFindingKind.UnusualThickness, string.Create(CultureInfo.InvariantCulture,
                    $"Tier {number}: a {what} of {10 * thickness:0.###} mm is outside the "
                    + $"{10 * Thinnest} to {10 * Thickest} mm that a cake can carry.")));
        }
        if (tier.Layers > 1 && tier.LayerCentimetres < ThinnestLayer)
            findings.Add(new CakeFinding(CakeFindingKind.ThinLayers,
                string.Create(CultureInfo.InvariantCulture,
                $"Tier {number}: {tier.Layers} layers would be {10 * tier.LayerCentimetres:0.#} mm each.")));
        if (tier.Body.Notched is not PlanShape plan)
            return;
        double thick = tier.Coats.Where(coat => coat.Place != CoatPlace.Top).Sum(coat => coat.ThicknessCentimetres);
        if (thick == 0)
            return;
        (double area, double length) = plan.Grown(thick);
        double twice = plan.AreaSquareCentimetres + thick * (plan.PerimeterCentimetres + Math.PI * thick) - area;
        findings.Add(new CakeFinding(CakeFindingKind.CoatFillsNotch, string.Create(CultureInfo.InvariantCulture,
            $"Tier {number}: {10 * thick:0.##} mm fill the notches of the {plan.Name} in part or altogether: "
            + $"the outline becomes {length:0.##} cm round and not "
            + $"{plan.PerimeterCentimetres + 2 * Math.PI * thick:0.##}, and {twice:0.##} cm² that would count twice count once.")));
        if (!plan.SharpIsExact && tier.Coats.Any(coat => coat.Edge == CoatEdge.Sharp && coat.Place != CoatPlace.Top))
            findings.Add(new CakeFinding(CakeFindingKind.UpperBound,
                $"Tier {number}: sharp corners of a {plan.Name} with notches may run into one another; "
                + $"the volume of its sharp coats is an upper bound."));
    }
}
