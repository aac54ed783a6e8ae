namespace Confectio.Eggs;

/// <summary>What stays when one form of egg replaces another.</summary>
public enum EggMatch
{
    /// <summary>The solids of the egg: everything but water and added sugar.</summary>
    Solids,

    /// <summary>The protein.</summary>
    Protein,
}
