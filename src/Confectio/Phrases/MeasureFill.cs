namespace Confectio.Phrases;

/// <summary>How full a spoon or a cup is said to be.</summary>
public enum MeasureFill
{
    /// <summary>Nothing is said; level is what every table means.</summary>
    NotStated,

    /// <summary>Level with the rim.</summary>
    Level,

    /// <summary>Rounded: about as much above the rim as below.</summary>
    Rounded,

    /// <summary>Heaped: as much as stays on.</summary>
    Heaped,

    /// <summary>Scant: not quite full.</summary>
    Scant,

    /// <summary>Generous: a little more than full.</summary>
    Generous,
}
