namespace Confectio.Safety;

/// <summary>The words that belong beside every answer about heat and eggs.</summary>
public static class HeatCaution
{
    /// <summary>The caution.</summary>
    public const string Text = "A computed log reduction is no clearance. It holds for the organism, the food, the acidity and the water "
        + "activity of the study that is "
        + "named, and those limits are partly our judgement. It holds for the spot where the probe was, and the coldest spot decides; "
        + "between two readings a straight "
        + "line is assumed. Studies of the same food differ several times over, and sugar protects. "
        + "Local codes and licensed practice decide. For those at risk use egg products that their maker has pasteurised, and keep them "
        + "cold. After Food Code 3-302.13 and 3-801.11, recalled, and the studies that are named.";
}
