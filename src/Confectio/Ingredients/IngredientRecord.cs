using Confectio.Sources;

namespace Confectio.Ingredients;

/// <summary>One row of the table of ingredients, before its weights are known.</summary>
internal sealed record IngredientRecord
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required IReadOnlyList<IngredientName> Aliases { get; init; }

    public required IngredientClass Class { get; init; }

    public required Packing DefaultPacking { get; init; }

    public required string? StandardReferenceNumber { get; init; }

    public required Composition Composition { get; init; }

    public required double? DextroseEquivalent { get; init; }

    public required Provenance CompositionProvenance { get; init; }

    public required Provenance SugarsProvenance { get; init; }

    public required IReadOnlyList<Allergen> Allergens { get; init; }

    public required IReadOnlyList<Allergen> OftenContains { get; init; }

    /// <summary>The constituents that are worse known than the row, and how.</summary>
    public IReadOnlyDictionary<Constituent, Evidence> Guessed { get; init; } = new Dictionary<Constituent, Evidence>();

    /// <summary>What is known of each constituent, where the source is no food table; null where the kind of evidence decides.</summary>
    public StatedComposition? Stated { get; init; }

    /// <summary>Constituents of which the source says nothing.</summary>
    public IReadOnlyList<Constituent> NotStated { get; init; } = [];

    public required string Note { get; init; }
}
