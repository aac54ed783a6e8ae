namespace Confectio.Ingredients;

/// <summary>How an ingredient fills the measure.</summary>
public enum Packing
{
    /// <summary>Filled and levelled: liquids and free-flowing crystals.</summary>
    Levelled,

    /// <summary>Sifted into the measure, then levelled.</summary>
    Sifted,

    /// <summary>Spooned into the measure unsifted, then levelled.</summary>
    Spooned,

    /// <summary>The measure dipped into the bin, then levelled.</summary>
    Scooped,

    /// <summary>Filled without pressing, such as brown sugar not packed.</summary>
    Loose,

    /// <summary>Pressed down until no gaps are left.</summary>
    Packed,

    /// <summary>Soft at room temperature.</summary>
    Softened,

    /// <summary>Melted.</summary>
    Melted,

    /// <summary>Whipped.</summary>
    Whipped,

    /// <summary>Whole pieces.</summary>
    Whole,

    /// <summary>Halves.</summary>
    Halved,

    /// <summary>Chopped.</summary>
    Chopped,

    /// <summary>Sliced.</summary>
    Sliced,

    /// <summary>Slivered.</summary>
    Slivered,

    /// <summary>Ground.</summary>
    Ground,

    /// <summary>Grated.</summary>
    Grated,

    /// <summary>Puréed.</summary>
    Pureed,

    /// <summary>Flakes.</summary>
    Flaked,

    /// <summary>Miniature pieces.</summary>
    Miniature,
}
