namespace Confectio.Cakes;

/// <summary>What is done with the part of a top that the next tier stands on.</summary>
public enum HiddenTop
{
    /// <summary>It is iced like the rest: each tier is coated on its own board before they are stacked.</summary>
    Coated,

    /// <summary>It is left bare, and the icing saved.</summary>
    Bare,
}
