using System.Globalization;
using Confectio.Text;

namespace Confectio.Cards;

/// <summary>A single figure of a card: a percentage, a yield, a portion, a nutrient; with the width in which the meant number lies.</summary>
public sealed class CardFigure
{
    internal CardFigure(CardFigureKind kind, PrintedNumber number, double scale, CardPlace place, string text)
    {
        Kind = kind;
        Low = number.Low * scale;
        High = number.High * scale;
        Step = number.Step * scale;
        Place = place;
        Text = text;
    }

    /// <summary>What it says.</summary>
    public CardFigureKind Kind { get; }

    /// <summary>The number, in the unit of its kind; of a range the low end.</summary>
    public double Low { get; }

    /// <summary>The high end of a range; otherwise the number.</summary>
    public double High { get; }

    /// <summary>What its last digit counts, in the unit of its kind: 0.1 of <c>12.5 %</c>.</summary>
    public double Step { get; }

    /// <summary>Whether it is said of 100 g; a nutrient is otherwise of a portion.</summary>
    public bool IsPer100Grams { get; internal init; }

    /// <summary>Whether the card says about, or a word like it.</summary>
    public bool IsApproximate { get; internal init; }

    /// <summary>Where it stands.</summary>
    public CardPlace Place { get; }

    /// <summary>The figure as printed.</summary>
    public string Text { get; }

    internal double Middle => (Low + High) / 2;

    /// <summary>What it says and the figure as printed, such as <c>yield grams: 1.2 kg</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{EnumWords.Of(Kind, ' ')}: {Text}");
}

/// <summary>A number as printed: the ends of a range, or the number twice, and what the last digit counts.</summary>
internal readonly record struct PrintedNumber(double Low, double High, double Step);
