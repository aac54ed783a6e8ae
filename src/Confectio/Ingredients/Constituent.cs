namespace Confectio.Ingredients;

/// <summary>The constituents a composition is kept in, by mass. They do not overlap: together they make up the whole.</summary>
public enum Constituent
{
    /// <summary>Water.</summary>
    Water,

    /// <summary>Fat of any kind.</summary>
    Fat,

    /// <summary>Protein.</summary>
    Protein,

    /// <summary>Sucrose.</summary>
    Sucrose,

    /// <summary>Glucose (dextrose).</summary>
    Glucose,

    /// <summary>Fructose.</summary>
    Fructose,

    /// <summary>Lactose.</summary>
    Lactose,

    /// <summary>Maltose.</summary>
    Maltose,

    /// <summary>Sugars with no column of their own, such as trehalose and galactose.</summary>
    OtherSugars,

    /// <summary>The saccharides of a glucose syrup above maltose, and maltodextrin.</summary>
    HigherSaccharides,

    /// <summary>Starch.</summary>
    Starch,

    /// <summary>Dietary fibre.</summary>
    Fibre,

    /// <summary>Sugar alcohols, such as isomalt and sorbitol.</summary>
    Polyols,

    /// <summary>Glycerol (glycerine).</summary>
    Glycerol,

    /// <summary>Ethanol.</summary>
    Alcohol,

    /// <summary>Organic acids and their acid salts, such as citric acid and cream of tartar.</summary>
    Acids,

    /// <summary>Salt, as sodium x 2.5 (Regulation (EU) 1169/2011, Annex I).</summary>
    Salt,

    /// <summary>Minerals other than salt.</summary>
    OtherAsh,

    /// <summary>What the source's figures leave over.</summary>
    Other,
}
