namespace Confectio.Cards;

/// <summary>What a single figure of a card says.</summary>
public enum CardFigureKind
{
    /// <summary>The share of a line, in per cent.</summary>
    Percent,

    /// <summary>The stated sum of the percentages.</summary>
    PercentTotal,

    /// <summary>The stated sum of the lines, in grams.</summary>
    TotalGrams,

    /// <summary>What the card says it makes, in grams.</summary>
    YieldGrams,

    /// <summary>What the card says it makes, in millilitres: whipped or not, nobody can hold it against grams.</summary>
    YieldMillilitres,

    /// <summary>How many portions or pieces.</summary>
    Portions,

    /// <summary>What a portion weighs, in grams.</summary>
    PortionGrams,

    /// <summary>How high the kitchen is said to be, in metres.</summary>
    AltitudeMetres,

    /// <summary>Energy in kilocalories.</summary>
    Kilocalories,

    /// <summary>Energy in kilojoules.</summary>
    Kilojoules,

    /// <summary>Fat, in grams.</summary>
    Fat,

    /// <summary>Saturated fat, in grams.</summary>
    Saturates,

    /// <summary>Carbohydrate, in grams.</summary>
    Carbohydrate,

    /// <summary>Sugars, in grams.</summary>
    Sugars,

    /// <summary>Fibre, in grams.</summary>
    Fibre,

    /// <summary>Protein, in grams.</summary>
    Protein,

    /// <summary>Salt, in grams.</summary>
    Salt,

    /// <summary>Sodium, in milligrams.</summary>
    Sodium,
}
