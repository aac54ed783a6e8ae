using System.Text.Json.Serialization;

namespace Confectio.Formulas;

/// <summary>A formula as it stands in JSON; docs/schema/formula.json says what each member means.</summary>
internal sealed class FormulaDocument
{
    public int? ConfectioFormula { get; set; }

    public string? Name { get; set; }

    public List<LineDocument?>? Lines { get; set; }

    public double? BoiledOffGrams { get; set; }

    /// <summary>One line.</summary>
    internal sealed class LineDocument
    {
        public string? Ingredient { get; set; }

        public double? Grams { get; set; }

        public string? Amount { get; set; }

        public string? Packing { get; set; }

        public string? System { get; set; }
    }
}

/// <summary>The generated reader of <see cref="FormulaDocument"/>: no reflection, so the library can be compiled ahead of time.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(FormulaDocument))]
internal sealed partial class FormulaJsonContext : JsonSerializerContext;
