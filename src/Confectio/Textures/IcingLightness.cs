namespace Confectio.Textures;

/// <summary>How light a whipped icing is beside the densities that are printed for its sort, the lightest first.</summary>
public enum IcingLightness
{
    /// <summary>As light as the source calls too light.</summary>
    TooLight,

    /// <summary>Lighter than is recommended.</summary>
    Light,

    /// <summary>Within what is recommended.</summary>
    Recommended,

    /// <summary>Denser than is recommended.</summary>
    Dense,
}
