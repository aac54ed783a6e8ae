namespace Confectio.Safety;

/// <summary>What the interaction tables of the Food Code say of a food by its acidity and water activity.</summary>
public enum ControlNeed
{
    /// <summary>By the table the food needs no control of time and temperature.</summary>
    NotByTheTable,

    /// <summary>
    /// The table does not decide: the product must be assessed, and is kept under control of time and temperature until it is.
    /// </summary>
    ProductAssessment,
}
