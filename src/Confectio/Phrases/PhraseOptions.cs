using Confectio.Measures;

namespace Confectio.Phrases;

/// <summary>How a phrase is read.</summary>
public sealed class PhraseOptions
{
    /// <summary>A decimal point, nobody's cups in particular, no spelling mistakes taken.</summary>
    public static PhraseOptions Default { get; } = new();

    /// <summary>
    /// Whose cups and spoons two figures of a phrase are compared by. Where it is <see langword="null"/>, they agree if they do in any
    /// system.
    /// </summary>
    public MeasuringSystem? MeasuringSystem { get; init; }

    /// <summary>Whether decimals have a point or a comma.</summary>
    public AmountReading Reading { get; init; }

    /// <summary>How many letters of a name may be slips of the finger, from 0 to 4; what was taken is said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its range.</exception>
    public int AcceptSpelling
    {
        get;
        init => field = Guard.InRange(value, 0, 4, nameof(AcceptSpelling));
    }

    /// <summary>Whether figures that contradict each other are a problem of the line; a card's vetter finds them itself, and says why.</summary>
    internal bool ChecksFigures { get; init; } = true;

    /// <summary>Whose cups, and which decimal mark.</summary>
    public override string ToString() => $"{MeasuringSystem?.Name ?? "any cups"}, "
        + $"{(Reading == AmountReading.DecimalComma ? "decimal comma" : "decimal point")}";
}
