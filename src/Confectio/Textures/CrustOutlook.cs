namespace Confectio.Textures;

/// <summary>Whether the surface of an icing dries to a crust, the least likely first.</summary>
public enum CrustOutlook
{
    /// <summary>It stays soft.</summary>
    Unlikely,

    /// <summary>It may or may not: rules of thumb and published formulas disagree here.</summary>
    Uncertain,

    /// <summary>It dries to a crust.</summary>
    Likely,
}
