namespace Confectio.Comparisons;

/// <summary>Which of two formulas has more of something.</summary>
public enum ComparedAnswer
{
    /// <summary>Neither: what can be told of both is the same.</summary>
    Same,

    /// <summary>The first.</summary>
    First,

    /// <summary>The second.</summary>
    Second,

    /// <summary>There are figures, and they are not sure enough to tell the two apart.</summary>
    CannotBeTold,

    /// <summary>Of one or both nothing is known.</summary>
    NotKnown,
}
