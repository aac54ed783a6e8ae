namespace Confectio.Eggs;

/// <summary>The words that belong beside every answer about eggs that are replaced or whipped.</summary>
public static class EggCaution
{
    /// <summary>The caution.</summary>
    public const string Text = "Raw and unpasteurised egg carries a risk of Salmonella, and whipping or sugar does not take it away. Keep "
        + "liquid egg cold, and "
        + "egg that was made up from powder too; use it on the day and follow the packet. For those at risk use egg products that their "
        + "maker has "
        + "pasteurised. Nothing here judges heat treatment: local codes and licensed practice decide. "
        + "After Food Code 3-302.13 and 3-801.11 and United States household guidance on eggs, recalled.";
}
