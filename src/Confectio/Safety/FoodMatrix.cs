namespace Confectio.Safety;

/// <summary>What is heated: kinetics of one matter say nothing of another.</summary>
public enum FoodMatrix
{
    /// <summary>Egg white, alone or with sugar: a meringue.</summary>
    EggWhite,

    /// <summary>Egg yolk, alone or with sugar.</summary>
    EggYolk,

    /// <summary>Whole egg, or white and yolk together.</summary>
    WholeEgg,

    /// <summary>Any food: kinetics that were gathered over many.</summary>
    Food,

    /// <summary>Beef: tables for cooked meat stand here for reference, and apply to nothing with egg.</summary>
    Beef,
}
