using System.Globalization;
using Confectio.Cakes;
using Confectio.Formulas;
using Confectio.Text;

namespace Confectio.Icings;

/// <summary>Makes tiers and cupcakes of what stands in an order.</summary>
internal static class TierReader
{
    /// <summary>How many corners or lobes the plan of a tier is to have.</summary>
    public static long Corners(OrderDocument.TierDocument tier) =>
        Math.Max(1L, Math.Max(Math.Max(tier.Sides ?? 0, tier.Lobes ?? 0), tier.Outline?.Points?.Count ?? 0));

    public static CakeTier? Tier(OrderDocument.TierDocument tier, DocumentFields fields)
    {
        int before = fields.Mistakes;
        CakeBody? body = Body(tier, fields);
        List<CakeFilling> fillings = Fillings(tier, fields);
        List<CakeCoat> coats = fields.List(tier.Coats, "coats", Coat);
        List<CakeBorder> borders = fields.List(tier.Borders, "borders", Border);
        List<PipedPieces> pieces = fields.List(tier.Pieces, "pieces", Pieces);
        CakeDrip? drip = tier.Drip is null ? null : Drip(tier.Drip, fields.In("drip"));
        double right = fields.SignedCentimetres(tier.Right, "right"), back = fields.SignedCentimetres(tier.Back, "back");
        return fields.Make(before, () =>
        {
            CakeTier made =
                CakeTier.Of(body!).Filled(fillings).Coated(coats).Bordered(borders).Piped(pieces).Dripped(drip).Placed(new PlanPoint(right,
                back), tier.TurnedDegrees ?? 0);
            return tier.Raised == true ? made.Raised() : made;
        });
    }

    public static Cupcakes? Cupcakes(OrderDocument.CupcakesDocument document, DocumentFields fields)
    {
        int before = fields.Mistakes;
        string icing = fields.Text(document.Icing, "icing");
        int count = fields.Number(document.Count, "count", 0);
        if (document.Swirl is not null)
        {
            if (document.TopDiameter is not null || document.Thickness is not null || document.Dome is not null)
                fields.Wrong("a swirl and a flat coat exclude one another");
            Swirl? swirl = Swirl(document.Swirl, fields.In("swirl"));
            return fields.Make(before, () => Confectio.Cakes.Cupcakes.Swirled(icing, count, swirl!));
        }
        CakeLength diameter = fields.Length(document.TopDiameter, "topDiameter"), thickness =
            fields.Length(document.Thickness, "thickness");
        CakeLength dome = fields.Length(document.Dome, "dome", default);
        return fields.Make(before, () => Confectio.Cakes.Cupcakes.Flat(icing, count, diameter, thickness, dome));
    }

    private static CakeBody? Body(OrderDocument.TierDocument tier, DocumentFields fields)
    {
        int before = fields.Mistakes;
        if (ShapeWord.Find(tier.Shape) is not ShapeWord shape)
        {
            string expected = $"one of these is expected: {string.Join(", ", ShapeWord.All.Select(known => known.Word))}";
            if (tier.Shape is null)
                fields.Wrong($"shape is missing; {expected}");
            else
                fields.Wrong("shape", $"{Excerpt.Of(tier.Shape)} is no shape; {expected}");
            return null;
        }
        TierSizes sizes = new(tier, fields);
        sizes.RefuseOthersThan(shape);
        try
        {
            return shape.Make(sizes);
        }
        catch (ArgumentException e)
        {
            // After a mistake the sizes are made up, and what is refused of them says nothing.
            if (fields.Mistakes == before)
                fields.Wrong(FormulaLineReader.Reason(e));
            return null;
        }
    }

    private static List<CakeFilling> Fillings(OrderDocument.TierDocument tier, DocumentFields fields)
    {
        if (tier.Filling is null)
        {
            List<CakeFilling> all = fields.List(tier.Fillings, "fillings", Filling);
            if (tier.Layers is int stated && stated != 1 + (tier.Fillings?.Count ?? 0))
                fields.Wrong("layers",
                    string.Create(CultureInfo.InvariantCulture,
                    $"{stated} layers have {Math.Max(stated - 1, 0)} fillings between them, and {tier.Fillings?.Count ?? 0} are there"));
            return all;
        }
        if (tier.Fillings is not null)
            fields.Wrong("filling and fillings exclude one another");
        int layers = fields.Number(tier.Layers, "layers", 1);
        if (layers is < 1 or > CakeTier.MostOfEach + 1)
            fields.Wrong("layers", string.Create(CultureInfo.InvariantCulture, $"from 1 to {CakeTier.MostOfEach + 1} layers are expected"));
        return Filling(tier.Filling, fields.In("filling")) is CakeFilling filling && layers is >= 1 and <= CakeTier.MostOfEach + 1
            ? [.. Enumerable.Repeat(filling, layers - 1)] : [];
    }

    private static CakeFilling? Filling(OrderDocument.FillingDocument document, DocumentFields fields)
    {
        int before = fields.Mistakes;
        string icing = fields.Text(document.Icing, "icing");
        CakeLength thickness = fields.Length(document.Thickness, "thickness");
        if (document.DamIcing is null != document.DamWidth is null)
            fields.Wrong("damIcing and damWidth belong together");
        CakeLength width = fields.Length(document.DamWidth, "damWidth", default);
        return fields.Make(before, () => document.DamIcing is null ? CakeFilling.Of(icing, thickness)
            : CakeFilling.Of(icing, thickness).InDam(document.DamIcing, width));
    }

    private static CakeCoat? Coat(OrderDocument.CoatDocument document, DocumentFields fields)
    {
        int before = fields.Mistakes;
        string icing = fields.Text(document.Icing, "icing");
        CakeLength thickness = fields.Length(document.Thickness, "thickness");
        CoatEdge edge = fields.Word(document.Edge, "edge", CoatEdge.Rounded);
        CoatPlace place = fields.Word(document.Place, "place", CoatPlace.TopAndSide);
        return fields.Make(before, () => CakeCoat.Of(icing, thickness, edge, place, document.Name));
    }

    private static CakeBorder? Border(OrderDocument.BorderDocument document, DocumentFields fields)
    {
        int before = fields.Mistakes;
        string icing = fields.Text(document.Icing, "icing");
        fields.Text(document.Kind, "kind");
        BorderKind kind = fields.Word(document.Kind, "kind", BorderKind.HalfRound);
        CakeLength width = fields.Length(document.Width, "width");
        BorderPlace place = fields.Word(document.Place, "place", BorderPlace.Foot);
        return fields.Make(before, () => CakeBorder.Of(icing, kind, width, place, document.ShellsPerWidth ?? 1));
    }

    private static PipedPieces? Pieces(OrderDocument.PieceDocument document, DocumentFields fields)
    {
        int before = fields.Mistakes;
        string icing = fields.Text(document.Icing, "icing");
        int count = fields.Number(document.Count, "count", 0);
        if (document.Swirl is null)
            fields.Wrong("swirl is missing");
        Swirl? swirl = document.Swirl is null ? null : Swirl(document.Swirl, fields.In("swirl"));
        return fields.Make(before, () => PipedPieces.Of(icing, swirl!, count));
    }

    private static Swirl? Swirl(OrderDocument.SwirlDocument document, DocumentFields fields)
    {
        int before = fields.Mistakes;
        CakeLength diameter = fields.Length(document.Diameter, "diameter"), height = fields.Length(document.Height, "height", default);
        double turns = fields.Number(document.Turns, "turns", 1);
        CakeLength bead = fields.Length(document.BeadWidth, "beadWidth");
        return fields.Make(before, () => document.Height is null ? Confectio.Cakes.Swirl.Rosette(diameter, turns, bead)
            : Confectio.Cakes.Swirl.UpCone(diameter, height, turns, bead));
    }

    private static CakeDrip? Drip(OrderDocument.DripDocument document, DocumentFields fields)
    {
        int before = fields.Mistakes;
        string icing = fields.Text(document.Icing, "icing");
        CakeLength pool = fields.Length(document.Pool, "pool"), width =
            fields.Length(document.DripWidth, "dripWidth", CakeLength.FromCentimetres(1));
        CakeLength length = fields.Length(document.DripLength, "dripLength", CakeLength.FromCentimetres(5));
        return fields.Make(before, () => CakeDrip.Of(icing, pool, document.Drips ?? 0, width, length));
    }
}
