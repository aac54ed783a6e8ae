using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Safety;
using Confectio.Text;

namespace Confectio.Keeping;

/// <summary>
/// What happens to a food that comes out of the refrigerator or the freezer into a room: whether water settles on it, until when it stays
/// wrapped, and how it is thawed.
/// </summary>
/// <remarks>
/// The minutes are of a body of one temperature (<see cref="LumpedBody"/>), a tub as wide as it is high of all that the formula weighs, in still air
/// with 5 to 15 W/(m²·K), from memory. At the short end nothing of it is frozen, at the long end all its water is, and melts at 0 °C at 335 kJ/kg
/// (Earle and Earle). A surface warms before the middle does, so that the long end waits longer than the surface needs; a taller or closed
/// pack takes longer. It is a range to plan with and no measurement: lift the wrapping when a thermometer on it says so. Worked number: 1 kg of butter of 4 °C
/// in a room of 22 °C and 60 % humidity passes the dew point of 13.9 °C after 37 to 110 minutes.
/// </remarks>
public sealed class OutOfTheCold
{
    private const double LeastTransfer = 5, MostTransfer = 15; // W/(m²·K)

    private OutOfTheCold(KeepingAnswer keeping, KeepingPlace from, RoomAir air)
    {
        Keeping = keeping;
        From = from;
        Air = air;
        StartCelsius = from == KeepingPlace.Freezer ? -18 : 4;
        MinutesToDewPoint = MinutesTo(keeping.Formula, StartCelsius, air.DewPointCelsius, air.Celsius, from == KeepingPlace.Freezer);
    }

    /// <summary>What is known about keeping it.</summary>
    public KeepingAnswer Keeping { get; }

    /// <summary>Where it comes from.</summary>
    public KeepingPlace From { get; }

    /// <summary>The room it comes into.</summary>
    public RoomAir Air { get; }

    /// <summary>How cold it is taken to be, °C: 4 out of the refrigerator, −18 out of the freezer.</summary>
    public double StartCelsius { get; }

    /// <summary>Whether water of the air settles on it while it is bare.</summary>
    public bool Sweats => StartCelsius <= Air.DewPointCelsius;

    /// <summary>The minutes until it is above the dew point; 0 where it is from the start.</summary>
    public Spread MinutesToDewPoint { get; }

    /// <summary>Whether drops settle, and until when it stays wrapped.</summary>
    public string CondensationSentence => Sweats ? string.Create(CultureInfo.InvariantCulture,
        $"{(From == KeepingPlace.Freezer ? "Straight out" : "Out")} of the {EnumWords.Of(From, ' ')} ({StartCelsius:0} °C) into {Air}, water settles on it while it is bare. Wrapped or boxed, the "
            + $"drops settle on the wrapping; above {Air.DewPointCelsius:0.0} °C none do, {Minutes(MinutesToDewPoint)} later for {Keeping.Formula.TotalGrams:0} g in one tub in still air (a body of one "
            + $"temperature, 5 to 15 W/(m²·K) from memory; dew point by Alduchov and Eskridge 1996).")
        : string.Create(CultureInfo.InvariantCulture,
            $"Out of the {EnumWords.Of(From, ' ')} ({StartCelsius:0} °C) into {Air}, no water settles on it: it is above the dew point (Alduchov and Eskridge 1996).");

    /// <summary>How it is thawed or left to warm, by whom that is said, and what of that time counts.</summary>
    public string ThawingSentence
    {
        get
        {
            bool isHot = Air.Celsius > 32;
            string counts = Keeping.Control != ControlNeed.ProductAssessment && Keeping.Places[(int)KeepingPlace.Counter].Days != 0 ? ""
                : $" It is a food that is kept cold: it is out no longer than {(isHot ? "one hour in all, above 32 °C (90 °F)" : "two hours in all")} (United States household guidance, recalled)."
                    + (Sweats && MinutesToDewPoint.High > (isHot ? 60 : 120) ? " It may not be above the dew point by then: take it to a cooler or drier room." : "");
            return (From == KeepingPlace.Freezer
                ? "Thaw it wrapped in the refrigerator at 5 °C (41 °F) or colder (Food Code 3-501.13, recalled; a tested recipe for curd gives it 24 hours there, National Center for Home Food "
                    + "Preservation, as quoted), and then let it warm wrapped as out of the refrigerator (common practice)."
                : "Let it warm wrapped, and unwrap it when it is above the dew point (common practice).") + counts + " Local codes and licensed practice decide.";
        }
    }

    /// <summary>Works out what happens.</summary>
    /// <param name="keeping">What is known about keeping the food.</param>
    /// <param name="from">The refrigerator or the freezer.</param>
    /// <param name="air">The room, from 0 °C on.</param>
    /// <returns>The answer.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">It comes from the counter, or the room is below 0 °C.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="from"/> is no place.</exception>
    public static OutOfTheCold Of(KeepingAnswer keeping, KeepingPlace from, RoomAir air)
    {
        Guard.NotNull(keeping);
        if (Guard.Defined(from) == KeepingPlace.Counter)
            throw new ArgumentException($"{nameof(from)} is the counter, which is not cold; refrigerator or freezer is expected.", nameof(from));
        return Guard.NotNull(air).Celsius > 4 ? new OutOfTheCold(keeping, from, air)
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(air)} has {air.Celsius:R} °C; a room that food comes out of the cold into is from above 4 to {RoomAir.MaximumCelsius:R} °C."), nameof(air));
    }

    /// <summary>Both sentences.</summary>
    public override string ToString() => $"{CondensationSentence} {ThawingSentence}";

    /// <summary>
    /// The minutes that a formula in a tub takes in still air to another temperature; not a number ends in none, where it never gets there.
    /// </summary>
    internal static Spread MinutesTo(Formula formula, double start, double target, double surroundings, bool isFrozen = false)
    {
        if ((target - start) * (surroundings - start) <= 0)
            return Spread.Exactly(0);
        ThermalProperties matter = ThermalProperties.Of(formula, Math.Clamp((Math.Max(0, start) + target) / 2, 0, 100));
        double litres = formula.TotalGrams / matter.GramsPerMillilitre / 1000;
        // A tub as wide as it is high has V = π·d³/4 and, with its lid and its bottom, A = 3·π·d²/2.
        double metres = Math.Cbrt(4 * litres / 1000 / Math.PI), area = 1.5 * Math.PI * metres * metres;
        double water = Balance.Of(formula)[FormulaPart.Water].Grams.Likely / 1000;
        double fast = Minutes(MostTransfer, false), slow = Minutes(LeastTransfer, isFrozen);
        return new Spread(fast, (fast + slow) / 2, slow, SpreadBasis.Judged);

        double Minutes(double transfer, bool melts)
        {
            LumpedBody body = LumpedBody.FromGeometry(transfer, area, litres, matter.GramsPerMillilitre, matter.SpecificHeat, start, surroundings);
            double minutes = body.MinutesTo(target) ?? 0;
            // At 0 °C it stands until its ice has melted.
            return melts && start < 0 && target > 0 ? minutes + water * 1000 * HeatFigure.MeltingOfIce.Value.Likely / (transfer * area * surroundings) / 60 : minutes;
        }
    }

    private static string Minutes(Spread minutes) => minutes.High < 120 ? string.Create(CultureInfo.InvariantCulture, $"{minutes.Low:0} to {minutes.High:0} minutes")
        : string.Create(CultureInfo.InvariantCulture, $"{minutes.Low / 60:0.#} to {minutes.High / 60:0.#} hours");
}
