using System.Text.Json;
using System.Text.Json.Serialization;

namespace Confectio.Formulas.Solving;

/// <summary>A problem as it stands in JSON; docs/schema/problem.json says what each member means.</summary>
internal sealed class ProblemDocument
{
    public int? ConfectioProblem { get; set; }

    public string? Name { get; set; }

    public double? TotalGrams { get; set; }

    public bool? TotalIsFree { get; set; }

    public double? BaseBoiledOffGrams { get; set; }

    public List<IngredientDocument>? Ingredients { get; set; }

    public List<ShareDocument>? Targets { get; set; }

    public List<ShareDocument>? Requirements { get; set; }

    public List<RatioDocument>? Ratios { get; set; }

    public BoilOffDocument? BoilOff { get; set; }

    public string? Prefer { get; set; }

    public double? Nearness { get; set; }

    /// <summary>An ingredient to choose from.</summary>
    internal sealed class IngredientDocument
    {
        public string? Ingredient { get; set; }

        public double? BaseGrams { get; set; }

        public double? LowGrams { get; set; }

        public double? HighGrams { get; set; }

        public double? FixedGrams { get; set; }

        public bool? MayBeLeftOut { get; set; }

        public double? CostPerKilogram { get; set; }
    }

    /// <summary>A share that is a target or a requirement.</summary>
    internal sealed class ShareDocument
    {
        public string? Part { get; set; }

        public string? Of { get; set; }

        public double? Percent { get; set; }

        public double? LowPercent { get; set; }

        public double? HighPercent { get; set; }

        public double? TolerancePercent { get; set; }

        public int? Priority { get; set; }
    }

    /// <summary>Grams of one ingredient to a gram of another.</summary>
    internal sealed class RatioDocument
    {
        public string? Ingredient { get; set; }

        public string? To { get; set; }

        public double? Ratio { get; set; }

        public double? LowRatio { get; set; }

        public double? HighRatio { get; set; }
    }

    /// <summary>Water that may boil off.</summary>
    internal sealed class BoilOffDocument
    {
        public double? LowGrams { get; set; }

        public double? HighGrams { get; set; }
    }
}

/// <summary>The generated reader of <see cref="ProblemDocument"/>: no reflection, so the library can be compiled ahead of time.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(ProblemDocument))]
internal sealed partial class ProblemJsonContext : JsonSerializerContext;
