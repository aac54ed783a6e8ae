namespace Confectio.Eggs;

/// <summary>The words of the tables of eggs.</summary>
internal static class EggWords
{
    /// <summary>The word of a part, as the tables have it.</summary>
    public static string Word(this EggPart part) => part switch
    {
        EggPart.Whole => "whole egg",
        EggPart.White => "white",
        EggPart.Yolk => "yolk",
        _ => "shell",
    };
}
