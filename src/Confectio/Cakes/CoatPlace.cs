namespace Confectio.Cakes;

/// <summary>Where a coat goes.</summary>
public enum CoatPlace
{
    /// <summary>Over the top and the side.</summary>
    TopAndSide,

    /// <summary>Over the top only, flush with the side, such as on a sheet cake.</summary>
    Top,

    /// <summary>Over the side only, flush with the top, such as where the top is glazed or left bare.</summary>
    Side,
}
