using System.Globalization;
using Confectio.Cooking;
using Confectio.Heat;
using Confectio.Keeping;

namespace Confectio.Troubles;

/// <summary>What is known of an icing beside its formula. What is not told is not known, and nothing is put in its place.</summary>
public sealed class TroubleFacts
{
    private TroubleFacts()
    {
    }

    private TroubleFacts(TroubleFacts from)
    {
        Temperatures = from.Temperatures;
        RoomCelsius = from.RoomCelsius;
        Air = from.Air;
        BeatenMinutes = from.BeatenMinutes;
        CookedCelsius = from.CookedCelsius;
        GramsPerMillilitre = from.GramsPerMillilitre;
    }

    /// <summary>Nothing is known.</summary>
    public static TroubleFacts None { get; } = new();

    /// <summary>The temperatures that were told, °C, by what they are of: an ingredient, <c>meringue</c>, <c>syrup</c>, <c>fat</c>, or <c>mix</c> for all of it.</summary>
    public IReadOnlyList<KeyValuePair<string, double>> Temperatures { get; private init; } = [];

    /// <summary>The temperature of the room, °C.</summary>
    public double? RoomCelsius { get; private init; }

    /// <summary>The air of the room; <see langword="null"/> where temperature or humidity is not known.</summary>
    public RoomAir? Air { get; private init; }

    /// <summary>How long it was beaten, minutes.</summary>
    public double? BeatenMinutes { get; private init; }

    /// <summary>How hot the syrup was boiled, or the whites with their sugar were warmed, °C; a range where a stage was told.</summary>
    public Spread? CookedCelsius { get; private init; }

    /// <summary>What a millilitre of it weighs as it is, with its air, g.</summary>
    public double? GramsPerMillilitre { get; private init; }

    /// <summary>With the temperature that a part had when it went in, or <c>mix</c> has now.</summary>
    /// <param name="part">An ingredient of the formula, <c>meringue</c>, <c>syrup</c>, <c>fat</c> or <c>mix</c>.</param>
    /// <param name="celsius">The temperature, °C, from −40 to 150.</param>
    /// <returns>The facts.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="part"/> is null.</exception>
    /// <exception cref="ArgumentException">The part is blank or was told already.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public TroubleFacts At(string part, double celsius)
    {
        string name = Guard.NotNull(part).Trim();
        if (name.Length == 0)
            throw new ArgumentException($"{nameof(part)} is blank; an ingredient, meringue, syrup, fat or mix is expected.", nameof(part));
        if (Temperatures.Any(told => told.Key.Equals(name, StringComparison.OrdinalIgnoreCase)))
            throw new ArgumentException($"{nameof(part)}: {name} was told already; each part has one temperature.", nameof(part));
        return new TroubleFacts(this) { Temperatures = [.. Temperatures, KeyValuePair.Create(name, Guard.InRange(celsius, ThermalMatter.MinimumCelsius, ThermalMatter.MaximumCelsius))] };
    }

    /// <summary>With the room.</summary>
    /// <param name="roomCelsius">The temperature, °C, from −40 to 50: 88 is of another scale.</param>
    /// <returns>The facts.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="roomCelsius"/> is outside its range.</exception>
    public TroubleFacts InRoom(double roomCelsius) =>
        new(this) { RoomCelsius = Guard.InRange(roomCelsius, RoomAir.MinimumCelsius, RoomAir.MaximumCelsius) };

    /// <summary>With the room and its humidity.</summary>
    /// <param name="air">The air.</param>
    /// <returns>The facts.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="air"/> is null.</exception>
    public TroubleFacts InRoom(RoomAir air) => new(this) { RoomCelsius = Guard.NotNull(air).Celsius, Air = air };

    /// <summary>With how long it was beaten.</summary>
    /// <param name="minutes">Minutes, from 0 to 1440.</param>
    /// <returns>The facts.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="minutes"/> is outside its range.</exception>
    public TroubleFacts Beaten(double minutes) => new(this) { BeatenMinutes = Guard.InRange(minutes, 0, 1440) };

    /// <summary>With how hot the syrup was boiled, or the whites with their sugar were warmed.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 220.</param>
    /// <returns>The facts.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public TroubleFacts CookedTo(double celsius) => new(this) { CookedCelsius = Spread.Exactly(Guard.InRange(celsius, 0, 220)) };

    /// <summary>With the stage to which the syrup was boiled, by cold water or by eye: its temperatures at sea level, from end to end.</summary>
    /// <param name="stage">The stage.</param>
    /// <returns>The facts.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="stage"/> is null.</exception>
    public TroubleFacts CookedTo(CookingStage stage) =>
        new(this) { CookedCelsius = new Spread(Guard.NotNull(stage).LowCelsius, (stage.LowCelsius + stage.HighCelsius) / 2, stage.HighCelsius, SpreadBasis.Sources) };

    /// <summary>With what it weighs as it is.</summary>
    /// <param name="gramsPerMillilitre">Grams of a millilitre, from 0.05 to 2: a cup of 180 g is 0.76.</param>
    /// <returns>The facts.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gramsPerMillilitre"/> is outside its range.</exception>
    public TroubleFacts Weighing(double gramsPerMillilitre) => new(this) { GramsPerMillilitre = Guard.InRange(gramsPerMillilitre, 0.05, 2) };

    internal string? CookedText => CookedCelsius is not Spread cooked ? null
        : cooked.High > cooked.Low ? string.Create(CultureInfo.InvariantCulture, $"{cooked.Low:0.#} to {cooked.High:0.#} °C") : string.Create(CultureInfo.InvariantCulture, $"{cooked.Likely:0.#} °C");

    /// <summary>What is known, in a line.</summary>
    public override string ToString()
    {
        List<string> told = [.. Temperatures.Select(part => string.Create(CultureInfo.InvariantCulture, $"{part.Key} at {part.Value:0.#} °C"))];
        if (Air is not null)
            told.Add($"a room of {Air}");
        else if (RoomCelsius is double room)
            told.Add(string.Create(CultureInfo.InvariantCulture, $"a room of {room:0.#} °C"));
        if (BeatenMinutes is double minutes)
            told.Add(string.Create(CultureInfo.InvariantCulture, $"beaten for {minutes:0.#} minutes"));
        if (CookedText is string cooked)
            told.Add("cooked to " + cooked);
        if (GramsPerMillilitre is double density)
            told.Add(string.Create(CultureInfo.InvariantCulture, $"{density:0.00} g/mL"));
        return told.Count > 0 ? string.Join(", ", told) : "nothing beside the formula";
    }
}
