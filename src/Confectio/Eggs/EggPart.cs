namespace Confectio.Eggs;

/// <summary>A part of a hen's egg.</summary>
public enum EggPart
{
    /// <summary>White and yolk, without the shell.</summary>
    Whole,

    /// <summary>The white.</summary>
    White,

    /// <summary>The yolk.</summary>
    Yolk,

    /// <summary>The shell with its membranes.</summary>
    Shell,
}
