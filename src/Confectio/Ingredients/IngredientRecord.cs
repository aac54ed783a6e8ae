using Confectio.Sources;

namespace Confectio.Ingredients;

/// <summary>What an ingredient is found by: all that a table of names asks of it.</summary>
/// <param name="Id">The key.</param>
/// <param name="Name">The name we use.</param>
/// <param name="Aliases">Other names.</param>
/// <param name="Class">How it behaves in a measure: some words about a name are meant for a class.</param>
internal sealed record IngredientNames(string Id, string Name, IReadOnlyList<IngredientName> Aliases, IngredientClass Class);

/// <summary>One row of the table of ingredients but for its names, before its weights are known.</summary>
internal sealed record IngredientRecord
{
    public required Packing DefaultPacking { get; init; }

    public required string? StandardReferenceNumber { get; init; }

    public required Composition Composition { get; init; }

    public required double? DextroseEquivalent { get; init; }

    public required Provenance CompositionProvenance { get; init; }

    public required Provenance SugarsProvenance { get; init; }

    public required IReadOnlyList<Allergen> Allergens { get; init; }

    public required IReadOnlyList<Allergen> OftenContains { get; init; }

    /// <summary>Whether it is a row of the table that the library carries, and not of anybody's own.</summary>
    public bool IsCarried { get; init; }

    /// <summary>Whether anybody has said which allergens it has.</summary>
    public bool AllergensAreStated { get; init; } = true;

    /// <summary>The constituents that are worse known than the row, by place, and how; <see langword="null"/> where none is.</summary>
    public Evidence?[]? Guessed { get; init; }

    /// <summary>What is known of each constituent, where the source is no food table; null where the kind of evidence decides.</summary>
    public StatedComposition? Stated { get; init; }

    /// <summary>Constituents of which the source says nothing.</summary>
    public IReadOnlyList<Constituent> NotStated { get; init; } = [];

    public required string Note { get; init; }
}
