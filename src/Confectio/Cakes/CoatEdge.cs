namespace Confectio.Cakes;

/// <summary>How a coat of even thickness goes round a corner.</summary>
public enum CoatEdge
{
    /// <summary>Rounded: everywhere as thick as on the faces, such as rolled fondant or a glaze.</summary>
    Rounded,

    /// <summary>Sharp: the faces of the coat go on until they meet, such as buttercream drawn off with a scraper. It takes more.</summary>
    Sharp,
}
