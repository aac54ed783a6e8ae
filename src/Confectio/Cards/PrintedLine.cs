using Confectio.Measures;
using Confectio.Phrases;

namespace Confectio.Cards;

/// <summary>A line of a card that names an ingredient: what stands on it, every amount with its place, and its percentage.</summary>
public sealed class PrintedLine
{
    private readonly SourceText _source;

    internal PrintedLine(SourceText source, Phrase phrase, CardFigure? percent) => (_source, Phrase, Percent) = (source, phrase, percent);

    internal PrintedLine With(CardFigure percent) => new(_source, Phrase, percent);

    /// <summary>What was read: amounts, name, packing, preparation. Of a row of a table the cells stand in the order of a phrase.</summary>
    public Phrase Phrase { get; }

    /// <summary>Its percentage; <see langword="null"/> where it has none. Of what it is a share the card decides.</summary>
    public CardFigure? Percent { get; }

    /// <summary>Where the line stands.</summary>
    public CardPlace Place => _source.At(0, _source.Text.Length);

    /// <summary>Where an amount of its phrase stands on the card.</summary>
    /// <param name="amount">An amount of <see cref="Phrase"/>.</param>
    public CardPlace PlaceOf(WrittenAmount amount) => _source.At(Math.Clamp(amount.Start, 0, _source.Text.Length),
        Math.Clamp(amount.Length, 0, _source.Text.Length));

    /// <summary>The amount and those that say the same.</summary>
    internal IEnumerable<WrittenAmount> Amounts => Phrase.Amount is WrittenAmount first ? Phrase.SecondAmounts.Prepend(first) : Phrase.SecondAmounts;

    /// <summary>Whose cup an amount is: as its words say, or as the heading over its column does; null where neither says.</summary>
    internal MeasuringSystem? SystemOf(WrittenAmount? amount)
    {
        if (amount is not WrittenAmount written || written.MeasuringSystem is not null)
            return amount?.MeasuringSystem;
        foreach ((int from, int to, MeasuringSystem system) in _source.Systems)
        {
            if (written.Start >= from && written.Start < to)
                return system;
        }
        return null;
    }

    internal CardPlace At(int start, int length) => _source.At(start, length);

    /// <summary>Its place and what was read, such as <c>line 4, column 1: 1 cup unsalted butter, softened</c>.</summary>
    public override string ToString() => $"{Place}: {Phrase}";
}
