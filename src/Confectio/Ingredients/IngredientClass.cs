namespace Confectio.Ingredients;

/// <summary>How an ingredient behaves in a measure; it decides the spread that technique alone brings.</summary>
internal enum IngredientClass
{
    /// <summary>Pours and finds its level.</summary>
    Liquid,

    /// <summary>Pours slowly and clings.</summary>
    Syrup,

    /// <summary>A plastic or liquid fat.</summary>
    Fat,

    /// <summary>Free-flowing crystals.</summary>
    Crystal,

    /// <summary>A powder that packs and fluffs.</summary>
    Powder,

    /// <summary>A thick mass that is spooned.</summary>
    Paste,

    /// <summary>Nuts, chips, flakes and other pieces with gaps between them.</summary>
    Pieces,

    /// <summary>Full of air.</summary>
    Foam,
}
