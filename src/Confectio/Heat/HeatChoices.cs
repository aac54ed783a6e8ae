namespace Confectio.Heat;

/// <summary>
/// What the answers of a balance depend on beside what is mixed. A side is -1 for the low figure, 0 for the likely and 1 for the high one.
/// </summary>
internal readonly record struct HeatChoices(WaterHeat Water, SugarDissolves Sugar, int LatentSide = 0, int SolidSide = 0,
    int DissolvingSide = 0, int VesselSide = 0);
