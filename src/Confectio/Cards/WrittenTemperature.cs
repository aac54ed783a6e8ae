using System.Globalization;

namespace Confectio.Cards;

/// <summary>A temperature of a card in one scale or in both, with the sentence it stands in.</summary>
public sealed class WrittenTemperature
{
    internal WrittenTemperature(TemperatureMark? fahrenheit, TemperatureMark? celsius, bool isDifference, string sentence, int start, int length, CardPlace place)
    {
        FahrenheitMark = fahrenheit;
        CelsiusMark = celsius;
        IsDifference = isDifference;
        Sentence = sentence;
        Start = start;
        Length = length;
        Place = place;
    }

    /// <summary>Degrees Fahrenheit as printed; of a range the low end; <see langword="null"/> where that scale is not printed.</summary>
    public double? Fahrenheit => FahrenheitMark?.Low;

    /// <summary>The high end of a range in degrees Fahrenheit; otherwise <see cref="Fahrenheit"/>.</summary>
    public double? FahrenheitHigh => FahrenheitMark?.High;

    /// <summary>Degrees Celsius as printed; of a range the low end; <see langword="null"/> where that scale is not printed.</summary>
    public double? Celsius => CelsiusMark?.Low;

    /// <summary>The high end of a range in degrees Celsius; otherwise <see cref="Celsius"/>.</summary>
    public double? CelsiusHigh => CelsiusMark?.High;

    /// <summary>Whether its words speak of a difference: 5 °F lower, within 2 °C, for every.</summary>
    public bool IsDifference { get; }

    /// <summary>The sentence in which it stands.</summary>
    public string Sentence { get; }

    /// <summary>Where it stands on the card, both scales together.</summary>
    public CardPlace Place { get; }

    internal TemperatureMark? FahrenheitMark { get; }

    internal TemperatureMark? CelsiusMark { get; }

    /// <summary>Where it begins in <see cref="Sentence"/>.</summary>
    internal int Start { get; }

    internal int Length { get; }

    /// <summary>The whole line or paragraph.</summary>
    internal string Text { get; init; } = "";

    /// <summary>The low end in degrees Celsius, by the scale that is printed first.</summary>
    internal double LowCelsius => FahrenheitMark is TemperatureMark f && (CelsiusMark is not TemperatureMark c || f.Start < c.Start) ? (f.Low - 32) / 1.8 : CelsiusMark!.Value.Low;

    internal double HighCelsius => FahrenheitMark is TemperatureMark f && (CelsiusMark is not TemperatureMark c || f.Start < c.Start) ? (f.High - 32) / 1.8 : CelsiusMark!.Value.High;

    /// <summary>The figures, such as <c>160 °F = 71 °C</c>.</summary>
    public override string ToString() => string.Join(" = ", new[] { Words(FahrenheitMark, "°F"), Words(CelsiusMark, "°C") }.OfType<string>());

    internal static string? Words(TemperatureMark? mark, string unit) => mark is not TemperatureMark one ? null
        : one.Low == one.High ? string.Create(CultureInfo.InvariantCulture, $"{one.Low:0.#} {unit}")
            : string.Create(CultureInfo.InvariantCulture, $"{one.Low:0.#} to {one.High:0.#} {unit}");
}

/// <summary>A temperature in one scale: the ends of a range, or the figure twice, and where it stands in its text.</summary>
internal readonly record struct TemperatureMark(double Low, double High, bool IsFahrenheit, int Start, int Length);
