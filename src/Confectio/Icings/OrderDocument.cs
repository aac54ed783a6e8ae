using System.Text.Json.Serialization;
using Confectio.Formulas;

namespace Confectio.Icings;

/// <summary>A cake and its icings as they stand in JSON; docs/schema/order.json says what each member means. Lengths are text with a unit.</summary>
internal sealed class OrderDocument
{
    public int? ConfectioOrder { get; set; }

    public string? Name { get; set; }

    public double? WastePercent { get; set; }

    public string? HiddenTops { get; set; }

    public List<TierDocument?>? Tiers { get; set; }

    public List<CupcakesDocument?>? Cupcakes { get; set; }

    public List<IcingDocument?>? Icings { get; set; }

    public List<BowlDocument?>? Bowls { get; set; }

    /// <summary>A tier. Which sizes it has goes by its shape.</summary>
    internal sealed class TierDocument
    {
        public string? Shape { get; set; }

        public string? Height { get; set; }

        public string? Diameter { get; set; }

        public string? Side { get; set; }

        public string? Width { get; set; }

        public string? Length { get; set; }

        public string? CornerRadius { get; set; }

        public int? Sides { get; set; }

        public string? AcrossFlats { get; set; }

        public string? AcrossCorners { get; set; }

        public int? Lobes { get; set; }

        public string? LobeWidth { get; set; }

        public string? BottomDiameter { get; set; }

        public string? TopDiameter { get; set; }

        public string? BottomSide { get; set; }

        public string? TopSide { get; set; }

        public string? FlatDiameter { get; set; }

        public string? BallRadius { get; set; }

        public string? OuterDiameter { get; set; }

        public string? InnerDiameter { get; set; }

        public OutlineDocument? Outline { get; set; }

        public int? Layers { get; set; }

        public FillingDocument? Filling { get; set; }

        public List<FillingDocument?>? Fillings { get; set; }

        public List<CoatDocument?>? Coats { get; set; }

        public List<BorderDocument?>? Borders { get; set; }

        public List<PieceDocument?>? Pieces { get; set; }

        public DripDocument? Drip { get; set; }

        public string? Right { get; set; }

        public string? Back { get; set; }

        public double? TurnedDegrees { get; set; }

        public bool? Raised { get; set; }
    }

    /// <summary>Any outline of straight sides.</summary>
    internal sealed class OutlineDocument
    {
        public string? Unit { get; set; }

        public List<List<double>?>? Points { get; set; }
    }

    /// <summary>A filling.</summary>
    internal sealed class FillingDocument
    {
        public string? Icing { get; set; }

        public string? Thickness { get; set; }

        public string? DamIcing { get; set; }

        public string? DamWidth { get; set; }
    }

    /// <summary>A coat.</summary>
    internal sealed class CoatDocument
    {
        public string? Icing { get; set; }

        public string? Thickness { get; set; }

        public string? Edge { get; set; }

        public string? Place { get; set; }

        public string? Name { get; set; }
    }

    /// <summary>A border.</summary>
    internal sealed class BorderDocument
    {
        public string? Icing { get; set; }

        public string? Kind { get; set; }

        public string? Width { get; set; }

        public string? Place { get; set; }

        public double? ShellsPerWidth { get; set; }
    }

    /// <summary>Rosettes, or swirls where there is a height.</summary>
    internal sealed class PieceDocument
    {
        public string? Icing { get; set; }

        public int? Count { get; set; }

        public SwirlDocument? Swirl { get; set; }
    }

    /// <summary>A swirl up a cone, or a flat rosette where there is no height.</summary>
    internal sealed class SwirlDocument
    {
        public string? Diameter { get; set; }

        public string? Height { get; set; }

        public double? Turns { get; set; }

        public string? BeadWidth { get; set; }
    }

    /// <summary>A glaze.</summary>
    internal sealed class DripDocument
    {
        public string? Icing { get; set; }

        public string? Pool { get; set; }

        public int? Drips { get; set; }

        public string? DripWidth { get; set; }

        public string? DripLength { get; set; }
    }

    /// <summary>Cupcakes: a swirl, or a flat coat.</summary>
    internal sealed class CupcakesDocument
    {
        public string? Icing { get; set; }

        public int? Count { get; set; }

        public SwirlDocument? Swirl { get; set; }

        public string? TopDiameter { get; set; }

        public string? Thickness { get; set; }

        public string? Dome { get; set; }
    }

    /// <summary>An icing: its density in one of three ways, and what it is made of.</summary>
    internal sealed class IcingDocument
    {
        public string? Name { get; set; }

        public double? GramsPerMillilitre { get; set; }

        public double? LowGramsPerMillilitre { get; set; }

        public double? HighGramsPerMillilitre { get; set; }

        public double? SpecificGravity { get; set; }

        public double? AirFreeGramsPerMillilitre { get; set; }

        public double? OverrunPercent { get; set; }

        public FormulaDocument? Formula { get; set; }

        public WhippedDocument? Whipped { get; set; }

        public WholeEggsDocument? WholeEggs { get; set; }
    }

    /// <summary>What is whipped before the rest comes in.</summary>
    internal sealed class WhippedDocument
    {
        public List<string?>? Ingredients { get; set; }

        public double? Rise { get; set; }

        public double? LowRise { get; set; }

        public double? HighRise { get; set; }
    }

    /// <summary>Eggs that are to be whole.</summary>
    internal sealed class WholeEggsDocument
    {
        public string? System { get; set; }

        public string? Size { get; set; }

        public string? Part { get; set; }
    }

    /// <summary>A mixer bowl.</summary>
    internal sealed class BowlDocument
    {
        public string? Name { get; set; }

        public double? Quarts { get; set; }

        public double? Litres { get; set; }

        public double? UsablePercent { get; set; }
    }
}

/// <summary>The generated reader of <see cref="OrderDocument"/>: no reflection, so the library can be compiled ahead of time.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(OrderDocument))]
internal sealed partial class OrderJsonContext : JsonSerializerContext;
