using Confectio.Measures;

namespace Confectio.Cards;

/// <summary>How a card is read.</summary>
public sealed class CardReadingOptions
{
    /// <summary>Decimals found out from the numbers, nobody's cups in particular.</summary>
    public static CardReadingOptions Default { get; } = new();

    /// <summary>Whose cups and spoons the card is said to use; <see langword="null"/> where that is to be found out.</summary>
    public MeasuringSystem? MeasuringSystem { get; init; }

    /// <summary>
    /// Whether decimals have a point or a comma; <see langword="null"/> (the default) finds out: a comma where one stands that can part no
    /// thousands, and nowhere a point.
    /// </summary>
    public AmountReading? Reading { get; init; }

    /// <summary>Whose cups, and which decimal mark.</summary>
    public override string ToString() => $"{MeasuringSystem?.Name ?? "any cups"}, "
        + Reading switch { AmountReading.DecimalComma => "decimal comma", AmountReading.DecimalPoint => "decimal point", _ => "decimals found out" };
}
