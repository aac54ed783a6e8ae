namespace Confectio.Cakes;

/// <summary>Puts lengths into words, in the measures that a reader wants.</summary>
internal interface ISizeWords
{
    /// <summary>One length, such as <c>22.9 cm (9 in)</c>.</summary>
    string Of(double centimetres);

    /// <summary>A width and a length, such as <c>33 × 22.9 cm (13 in × 9 in)</c>.</summary>
    string Pair(double width, double length);
}
