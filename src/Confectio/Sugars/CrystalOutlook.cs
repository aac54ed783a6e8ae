namespace Confectio.Sugars;

/// <summary>
/// What sucrose does in a syrup of a supersaturation. The limits 1.2 and 1.3 are common practice of sugar boiling and were found for nearly
/// pure sucrose; glucose syrup, invert sugar and thickness widen them.
/// </summary>
public enum CrystalOutlook
{
    /// <summary>Up to 1: no crystal forms, and those there are dissolve.</summary>
    Undersaturated,

    /// <summary>Above 1 to 1.2: crystals that are there grow, new ones hardly form. Clean pots and no stirring keep it clear.</summary>
    Metastable,

    /// <summary>Above 1.2 to 1.3: a crystal or a stir begets new ones.</summary>
    Intermediate,

    /// <summary>
    /// Above 1.3: crystals form of themselves, sooner or later, unless the syrup is so thick that it sets to a glass first.
    /// </summary>
    Labile,

    /// <summary>
    /// Above 1, and a glass even at the low end of its transition (<see cref="GlassTransition"/>): crystals do not grow. Warmed above it,
    /// or once it has taken up water from the air, it grains as the syrup it is.
    /// </summary>
    Glass,
}
