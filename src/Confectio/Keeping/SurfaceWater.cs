namespace Confectio.Keeping;

/// <summary>What the water of the air does at a surface.</summary>
public enum SurfaceWater
{
    /// <summary>The surface gives water off, or none moves.</summary>
    StaysDry,

    /// <summary>No drops settle, but the sugar of the surface is drier than the air there: it takes up water and turns sticky.</summary>
    TakesUpWater,

    /// <summary>The surface is at the dew point or below: drops settle.</summary>
    Sweats,
}
