namespace Confectio.Phrases;

/// <summary>What a line of a recipe is.</summary>
public enum PhraseKind
{
    /// <summary>An ingredient, with its amount or without one, understood or not.</summary>
    Ingredient,

    /// <summary>A heading, such as <c>For the syrup:</c>.</summary>
    Heading,

    /// <summary>Something to do.</summary>
    Instruction,

    /// <summary>Anything else: a yield, a time, a remark, an empty line.</summary>
    Note,
}
