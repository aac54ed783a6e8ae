using System.Globalization;
using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>Reads a cake from the members of an order.</summary>
internal static class CakeReader
{
    public const int Version = 1, MaximumBytes = 4 << 20, MostDepth = 16;

    /// <summary>The cake of an order of which the icings, bowls and what is lost are not looked at.</summary>
    public static Cake? ReadAlone(JsonFields fields)
    {
        if (!fields.IsVersion("confectioOrder", Version))
            return null;
        // They are members of an order, and say nothing of the cake.
        foreach (string other in (ReadOnlySpan<string>)["icings", "bowls", "wastePercent"])
            fields.Has(other);
        return Read(fields);
    }

    /// <summary>The cake among the members of an order.</summary>
    public static Cake? Read(JsonFields fields)
    {
        // Before any plan is made of them.
        long corners = fields.Sum("tiers", ShapeFields.Corners);
        if (corners > Cake.MaximumCorners && fields.Count("tiers") <= Cake.MaximumTiers)
        {
            fields.Wrong("tiers", string.Create(CultureInfo.InvariantCulture,
                $"their plans have {corners} corners together; at most {Cake.MaximumCorners} are expected"), ProblemCodes.TooMany);
            fields.GiveUp();
            return null;
        }
        string name = fields.Text("name") ?? "";
        List<CakeTier> tiers = fields.List("tiers", Cake.MaximumTiers, Tier);
        List<Cupcakes> cupcakes = fields.List("cupcakes", Cake.MaximumCupcakeKinds, Cupcakes);
        HiddenTop hidden = fields.Word("hiddenTops", HiddenTop.Coated);
        return fields.Make(() => Cake.Of(name, tiers, cupcakes, hidden));
    }

    private static CakeTier? Tier(JsonFields fields)
    {
        CakeBody? body = ShapeFields.Body(fields);
        List<CakeFilling> fillings = Fillings(fields);
        List<CakeCoat> coats = fields.List("coats", CakeTier.MaximumOfEach, Coat);
        List<CakeBorder> borders = fields.List("borders", CakeTier.MaximumOfEach, Border);
        List<PipedPieces> pieces = fields.List("pieces", CakeTier.MaximumOfEach, Pieces);
        CakeDrip? drip = fields.Object("drip", Drip);
        PlanPoint place = new(fields.SignedCentimetres("right"), fields.SignedCentimetres("back"));
        double turned = fields.Number("turnedDegrees") ?? 0;
        bool isRaised = fields.Flag("raised");
        return fields.Make(() =>
        {
            CakeTier made = CakeTier.Of(body!).Filled(fillings).Coated(coats).Bordered(borders).Piped(pieces).Dripped(drip).Placed(place,
                turned);
            return isRaised ? made.Raised() : made;
        });
    }

    private static Cupcakes? Cupcakes(JsonFields fields)
    {
        string? icing = fields.NeededText("icing");
        int? count = fields.NeededWhole("count");
        if (fields.Has("swirl"))
        {
            if (fields.Has("topDiameter") | fields.Has("thickness") | fields.Has("dome"))
                fields.Wrong(null, "a swirl and a flat coat exclude one another");
            Swirl? swirl = fields.Object("swirl", Swirl);
            return fields.Make(() => Confectio.Cakes.Cupcakes.Swirled(icing!, count!.Value, swirl!));
        }
        CakeLength diameter = fields.Length("topDiameter"), thickness = fields.Length("thickness"), dome = fields.Length("dome", default);
        return fields.Make(() => Confectio.Cakes.Cupcakes.Flat(icing!, count!.Value, diameter, thickness).Domed(dome));
    }

    private static List<CakeFilling> Fillings(JsonFields fields)
    {
        int count = fields.Count("fillings");
        int? layers = fields.Whole("layers");
        if (!fields.Has("filling"))
        {
            List<CakeFilling> all = fields.List("fillings", CakeTier.MaximumOfEach, Filling);
            if (layers is int stated && stated != 1 + count)
                fields.Wrong("layers", string.Create(CultureInfo.InvariantCulture,
                    $"{stated} layers have {Math.Max(stated - 1, 0)} fillings between them, and {count} are there"));
            return all;
        }
        if (fields.Has("fillings"))
            fields.Wrong(null, "filling and fillings exclude one another");
        fields.Need("layers");
        if (layers is < 1 or > CakeTier.MaximumOfEach + 1)
            fields.Wrong("layers", string.Create(CultureInfo.InvariantCulture,
                $"from 1 to {CakeTier.MaximumOfEach + 1} layers are expected"));
        return fields.Object("filling", Filling) is CakeFilling filling && layers is >= 1 and <= CakeTier.MaximumOfEach + 1
            ? [.. Enumerable.Repeat(filling, layers.Value - 1)] : [];
    }

    private static CakeFilling? Filling(JsonFields fields)
    {
        string? icing = fields.NeededText("icing"), dam = fields.Text("damIcing");
        CakeLength thickness = fields.Length("thickness"), width = fields.Length("damWidth", default);
        if (fields.Has("damIcing") != fields.Has("damWidth"))
            fields.Wrong(null, "damIcing and damWidth belong together");
        return fields.Make(() => dam is null ? CakeFilling.Of(icing!, thickness) : CakeFilling.Of(icing!, thickness).InDam(dam, width));
    }

    private static CakeCoat? Coat(JsonFields fields)
    {
        string? icing = fields.NeededText("icing"), name = fields.Text("name");
        CakeLength thickness = fields.Length("thickness");
        CoatEdge edge = fields.Word("edge", CoatEdge.Rounded);
        CoatPlace place = fields.Word("place", CoatPlace.TopAndSide);
        return fields.Make(() => CakeCoat.Of(icing!, thickness, edge, place, name));
    }

    private static CakeBorder? Border(JsonFields fields)
    {
        string? icing = fields.NeededText("icing");
        fields.Need("kind");
        BorderKind kind = fields.Word("kind", BorderKind.HalfRound);
        CakeLength width = fields.Length("width");
        BorderPlace place = fields.Word("place", BorderPlace.Foot);
        double shells = fields.Number("shellsPerWidth") ?? 1;
        return fields.Make(() => CakeBorder.Of(icing!, kind, width, place, shells));
    }

    private static PipedPieces? Pieces(JsonFields fields)
    {
        string? icing = fields.NeededText("icing");
        int? count = fields.NeededWhole("count");
        fields.Need("swirl");
        Swirl? swirl = fields.Object("swirl", Swirl);
        return fields.Make(() => PipedPieces.Of(icing!, swirl!, count!.Value));
    }

    // Up a cone, or a flat rosette where there is no height.
    private static Swirl? Swirl(JsonFields fields)
    {
        CakeLength diameter = fields.Length("diameter"), height = fields.Length("height", default), width = fields.Length("beadWidth");
        double? turns = fields.NeededNumber("turns");
        bool isCone = fields.Has("height");
        return fields.Make(() => isCone ? Confectio.Cakes.Swirl.UpCone(diameter, height, turns!.Value, width)
            : Confectio.Cakes.Swirl.Rosette(diameter, turns!.Value, width), e => e.ParamName == "lineWidth" ? "beadWidth" : null);
    }

    private static CakeDrip? Drip(JsonFields fields)
    {
        string? icing = fields.NeededText("icing");
        CakeLength pool = fields.Length("pool"), width = fields.Length("dripWidth", CakeLength.FromCentimetres(1)),
            length = fields.Length("dripLength", CakeLength.FromCentimetres(5));
        int drips = fields.Whole("drips") ?? 0;
        return fields.Make(() => CakeDrip.Of(icing!, pool, drips, width, length));
    }
}
