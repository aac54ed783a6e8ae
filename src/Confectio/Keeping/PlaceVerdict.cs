using Confectio.Text;

namespace Confectio.Keeping;

/// <summary>The strictest of what is known about a place.</summary>
public sealed class PlaceVerdict
{
    internal PlaceVerdict(KeepingPlace place, double? days, string sentence, KeepingTime? from)
    {
        Place = place;
        Days = days;
        Sentence = sentence;
        From = from;
    }

    /// <summary>The place.</summary>
    public KeepingPlace Place { get; }

    /// <summary>The days of the strictest advice; 0 where the food is not to be kept there; <see langword="null"/> where nobody gives a time.</summary>
    public double? Days { get; }

    /// <summary>What to do, and why.</summary>
    public string Sentence { get; }

    /// <summary>The advice that decided; <see langword="null"/> where a rule did, or none is known.</summary>
    public KeepingTime? From { get; }

    /// <summary>The place and the sentence.</summary>
    public override string ToString() => $"{EnumWords.Of(Place, ' ')}: {Sentence}";
}
