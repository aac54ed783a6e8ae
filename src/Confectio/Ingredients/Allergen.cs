namespace Confectio.Ingredients;

/// <summary>
/// Allergens that must be declared in the United States (21 USC 321(qq)) or the European Union (Regulation (EU) 1169/2011,
/// Annex II), nuts by their kind. A caution, not a clearance: traces and recipes of makers differ, so read the label.
/// </summary>
public enum Allergen
{
    /// <summary>Milk, lactose included.</summary>
    Milk,

    /// <summary>Egg.</summary>
    Egg,

    /// <summary>Wheat.</summary>
    Wheat,

    /// <summary>Cereals with gluten.</summary>
    Gluten,

    /// <summary>Soya.</summary>
    Soy,

    /// <summary>Peanut.</summary>
    Peanut,

    /// <summary>Almond, a tree nut.</summary>
    Almond,

    /// <summary>Hazelnut, a tree nut.</summary>
    Hazelnut,

    /// <summary>Walnut, a tree nut.</summary>
    Walnut,

    /// <summary>Pecan, a tree nut.</summary>
    Pecan,

    /// <summary>Pistachio, a tree nut.</summary>
    Pistachio,

    /// <summary>Cashew, a tree nut.</summary>
    Cashew,

    /// <summary>Macadamia, a tree nut.</summary>
    Macadamia,

    /// <summary>Brazil nut, a tree nut.</summary>
    Brazil,

    /// <summary>Sesame.</summary>
    Sesame,

    /// <summary>Sulphur dioxide and sulphites above 10 mg/kg.</summary>
    Sulphites,

    /// <summary>Fish, fish gelatine included.</summary>
    Fish,

    /// <summary>Crustaceans.</summary>
    Crustaceans,

    /// <summary>Molluscs.</summary>
    Molluscs,

    /// <summary>Celery.</summary>
    Celery,

    /// <summary>Mustard.</summary>
    Mustard,

    /// <summary>Lupin.</summary>
    Lupin,
}
