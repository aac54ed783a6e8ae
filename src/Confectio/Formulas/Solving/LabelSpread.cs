namespace Confectio.Formulas.Solving;

/// <summary>What the spread of a figure of a label counts in.</summary>
public enum LabelSpread
{
    /// <summary>
    /// Its rounding, and what the law lets a food in the pack be away from it: 20 % and less in the middle of the range. These limits are
    /// from memory; in the United States the law has them to one side only, and here they count to both.
    /// </summary>
    RoundingAndTolerance,

    /// <summary>Its rounding alone: all values that would be printed so. The food in the pack may be farther off.</summary>
    Rounding,
}
