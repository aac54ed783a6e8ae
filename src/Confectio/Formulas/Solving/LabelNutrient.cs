namespace Confectio.Formulas.Solving;

/// <summary>What a line of a nutrition panel is a figure of.</summary>
public enum LabelNutrient
{
    /// <summary>Energy in kJ.</summary>
    Kilojoules,

    /// <summary>Energy in kcal, which American panels call calories.</summary>
    Kilocalories,

    /// <summary>Fat of any kind, g.</summary>
    Fat,

    /// <summary>Saturated fat, g: part of the fat.</summary>
    Saturates,

    /// <summary>Carbohydrate, g: in the European Union without fibre, in the United States with it.</summary>
    Carbohydrate,

    /// <summary>Mono- and disaccharides, g: part of the carbohydrate.</summary>
    Sugars,

    /// <summary>Sugar alcohols, g: part of the carbohydrate.</summary>
    Polyols,

    /// <summary>Starch, g: part of the carbohydrate.</summary>
    Starch,

    /// <summary>Dietary fibre, g.</summary>
    Fibre,

    /// <summary>Protein, g.</summary>
    Protein,

    /// <summary>Salt, g: sodium × 2.5.</summary>
    Salt,

    /// <summary>Sodium, mg.</summary>
    Sodium,

    /// <summary>Water, g. No panel has it; a maker's specification says it as moisture.</summary>
    Water,

    /// <summary>Trans fat, g: part of the fat. No food table at hand tells it.</summary>
    TransFat,

    /// <summary>Cholesterol, mg. No food table at hand tells it.</summary>
    Cholesterol,

    /// <summary>Sugars that were added, g, as an American panel tells them: part of the sugars.</summary>
    AddedSugars,
}
