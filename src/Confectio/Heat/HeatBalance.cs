using System.Globalization;
using Confectio.Numerics;
using Confectio.Sources;

namespace Confectio.Heat;

/// <summary>
/// Things of different temperatures mixed: where the temperature lands, and what one of them, or how much ice, would make it land where you
/// want it.
/// </summary>
/// <remarks>
/// The heat contents of the lines are added up, the loss is taken off, and the temperature is sought at which the mix has what is left.
/// Contents rise with temperature, so there is one at most, and the order of mixing does not matter. Without loss, ice and dissolving sugar
/// the mix lands between the coldest and the warmest line; melting fat does not change that. Dissolving sugar and ice may take it below.
/// Other sugars than sucrose count as dissolved from the start, and fat whose melting is not known as liquid
/// (<see cref="FatsWithoutCurve"/>). The work of a mixer is heat that comes in: a loss below 0. Water that evaporates from a hot mix takes
/// 2400 kJ/kg or so with it (from memory); count it as a loss. Worked number: 250 g of butter at 12 °C, 250 g of sugar and 250 g of flour
/// at 20 °C, 200 g of egg at 5 °C and a steel bowl of 1 kg at 20 °C land at 12.7 °C if all the sugar dissolves, at 13.6 °C if none does.
/// </remarks>
public sealed class HeatBalance
{
    /// <summary>The most lines of a balance.</summary>
    public const int MaximumLines = 1000;

    private const double Most = 1e12;

    private readonly HeatMixture _mixture;

    private HeatBalance(HeatMixture mixture, double lossKilojoules, WaterHeat water, SugarDissolves sugar)
    {
        _mixture = mixture;
        LossKilojoules = lossKilojoules;
        Water = water;
        Sugar = sugar;
        MinimumCelsius = mixture.HasWater || mixture.CrystalKilograms > 0 ? 0 : ThermalMatter.MinimumCelsius;
        MaximumCelsius = mixture.CrystalsAt(ThermalMatter.MaximumCelsius, 0, sugar) > 0 ? 100 : ThermalMatter.MaximumCelsius;
        FinalTemperature = Land();
    }

    private enum Outcome
    {
        Found,
        Below,
        Above,
    }

    /// <summary>The lines.</summary>
    public IReadOnlyList<HeatLine> Lines => _mixture.Lines;

    /// <summary>The heat that leaves on the way, kJ; below 0 where heat comes in.</summary>
    public double LossKilojoules { get; }

    /// <summary>Which printed constant water has in the likely answers.</summary>
    public WaterHeat Water { get; }

    /// <summary>How much crystalline sugar dissolves in the likely answers.</summary>
    public SugarDissolves Sugar { get; }

    /// <summary>The lowest temperature at which the model has the mix, °C: −40, and 0 where there is water or crystalline sugar.</summary>
    public double MinimumCelsius { get; }

    /// <summary>The highest temperature at which the model has the mix, °C: 150, and 100 where there would still be crystals.</summary>
    public double MaximumCelsius { get; }

    /// <summary>The mass of everything, bowls and all, g.</summary>
    public double TotalGrams => Lines.Sum(line => line.Grams);

    /// <summary>
    /// The temperature that the mix takes on, °C; without one where it is outside the model: still ice in it, or too hot.
    /// </summary>
    public HeatAnswer FinalTemperature { get; }

    /// <summary>
    /// What is left over of the balance at the likely final temperature, kJ: content of the mix + loss − content of the lines. It is 0 but
    /// for rounding; <see langword="null"/> where there is no final temperature.
    /// </summary>
    public double? ResidualKilojoules => FinalTemperature.Value is Spread landing ? _mixture.Excess(landing.Likely, 0, Likely) : null;

    /// <summary>
    /// The sucrose crystals that dissolve on the way to the likely final temperature, g; <see langword="null"/> where there is none.
    /// </summary>
    public double? DissolvingGrams => FinalTemperature.Value is Spread landing
        ? 1000 * (_mixture.CrystalKilograms - _mixture.CrystalsAt(landing.Likely, 0, Sugar)) : null;

    /// <summary>What has fat in it whose melting is not known, and was counted as liquid.</summary>
    public IReadOnlyList<string> FatsWithoutCurve => [.. Lines.SelectMany(line => line.FatsWithoutCurve).Distinct(StringComparer.Ordinal)];

    private HeatChoices Likely => new(Water, Sugar);

    /// <summary>A balance.</summary>
    /// <param name="lines">From 1 to 1000 lines, together above 0 g.</param>
    /// <param name="lossKilojoules">The heat that leaves on the way, kJ, from −1e12 to 1e12; below 0 where heat comes in.</param>
    /// <param name="water">Which printed constant water has.</param>
    /// <param name="sugar">How much crystalline sugar dissolves.</param>
    /// <exception cref="ArgumentNullException"><paramref name="lines"/> or a line is null.</exception>
    /// <exception cref="ArgumentException">There are no lines, or too many, or they weigh nothing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static HeatBalance Of(IEnumerable<HeatLine> lines, double lossKilojoules = 0, WaterHeat water = WaterHeat.ChoiOkos,
        SugarDissolves sugar = SugarDissolves.AsMuchAsCan)
    {
        HeatLine[] all = [.. Guard.NotNull(lines).Take(MaximumLines + 1).Select(line => Guard.NotNull(line, nameof(lines)))];
        if (all.Length is 0 or > MaximumLines)
            throw new ArgumentException(all.Length == 0 ? $"{nameof(lines)} is empty; a balance has at least one line."
                : string.Create(CultureInfo.InvariantCulture,
                    $"{nameof(lines)} has more than {MaximumLines} lines, the most a balance may have."), nameof(lines));
        Guard.InRange(lossKilojoules, -Most, Most);
        Guard.Defined(water);
        Guard.Defined(sugar);
        HeatMixture mixture = new(all, lossKilojoules);
        return mixture.Capacity > 0 ? new HeatBalance(mixture, lossKilojoules, water, sugar)
            : throw new ArgumentException($"{nameof(lines)} weigh nothing; a balance needs a total above 0 g.", nameof(lines));
    }

    /// <summary>
    /// The heat that has to come in beside what the lines bring, to have the mix at a temperature: on a bath, from a torch.
    /// </summary>
    /// <param name="celsius">The temperature, °C, from <see cref="MinimumCelsius"/> to <see cref="MaximumCelsius"/>.</param>
    /// <returns>kJ, the loss included; below 0 where heat has to leave.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public HeatAnswer KilojoulesTo(double celsius)
    {
        Guard.InRange(celsius, MinimumCelsius, MaximumCelsius);
        return Answer("kJ", double.MinValue, double.MaxValue, "", "", choices => (_mixture.Excess(celsius, 0, choices), Outcome.Found));
    }

    /// <summary>The temperature that one of the lines must have for the mix to land on a target.</summary>
    /// <param name="line">The place of the line in <see cref="Lines"/>, from 0.</param>
    /// <param name="targetCelsius">The target, °C, from <see cref="MinimumCelsius"/> to <see cref="MaximumCelsius"/>.</param>
    /// <returns>
    /// °C; without one where the line would have to be outside the range of the model, and the reason says on which side.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public HeatAnswer NeededCelsius(int line, double targetCelsius)
    {
        Guard.InRange(line, 0, Lines.Count - 1);
        Guard.InRange(targetCelsius, MinimumCelsius, MaximumCelsius);
        HeatLine asked = Lines[line];
        double low = asked.MinimumCelsius, high = asked.MaximumCelsius;
        if (asked.Grams == 0)
            return new HeatAnswer(null, "°C", $"there is none of {asked.Name}");
        return Answer("°C", low, high,
            string.Create(CultureInfo.InvariantCulture, $"{asked.Name} would have to be colder than {low:R} °C, the end of the model"),
            string.Create(CultureInfo.InvariantCulture, $"{asked.Name} would have to be hotter than {high:R} °C, the end of the model"),
            // What the lines bring more than the mix has at the target, in kelvins.
            choices => Root(celsius => -_mixture.With(line, celsius).Excess(targetCelsius, 0, choices) / _mixture.Capacity, low, high));
    }

    /// <summary>The ice to add for the mix to land on a target.</summary>
    /// <param name="targetCelsius">The target, °C, from 0 or <see cref="MinimumCelsius"/> to <see cref="MaximumCelsius"/>.</param>
    /// <param name="iceCelsius">The temperature of the ice, °C, from −40 to 0.</param>
    /// <returns>Grams; without them where the mix lands below the target as it is.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public HeatAnswer IceToAdd(double targetCelsius, double iceCelsius = 0)
    {
        Guard.InRange(targetCelsius, Math.Max(0, MinimumCelsius), MaximumCelsius);
        Guard.InRange(iceCelsius, ThermalMatter.MinimumCelsius, 0);
        return ToAdd(targetCelsius, _ => ThermalMatter.OfIce().FromZero(iceCelsius) - HeatFigure.MeltingOfIce.Value.Likely);
    }

    /// <summary>The cold water to add for the mix to land on a target.</summary>
    /// <param name="targetCelsius">The target, °C, from 0 or <see cref="MinimumCelsius"/> to <see cref="MaximumCelsius"/>.</param>
    /// <param name="waterCelsius">The temperature of the water, °C, from 0 to 100.</param>
    /// <returns>Grams; without them where the mix lands below the target as it is, or the water is not colder than the target.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public HeatAnswer WaterToAdd(double targetCelsius, double waterCelsius)
    {
        Guard.InRange(targetCelsius, Math.Max(0, MinimumCelsius), MaximumCelsius);
        Guard.InRange(waterCelsius, 0, 100);
        return waterCelsius < targetCelsius ? ToAdd(targetCelsius, water => water.FromZero(waterCelsius))
            : new HeatAnswer(null, "g", "the water is not colder than the target");
    }

    /// <summary>One line, such as <c>750 g land at 18.4 °C (17.9 to 19.1)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{TotalGrams:0.##} g ")
        + (FinalTemperature.Value is null ? "do not land: " : "land at ") + FinalTemperature;

    private HeatAnswer Land() => Answer("°C", MinimumCelsius, MaximumCelsius,
        _mixture.HasIce ? "there is more ice than melts"
            : string.Create(CultureInfo.InvariantCulture, $"the mix would be colder than {MinimumCelsius:R} °C, the end of the model"),
        string.Create(CultureInfo.InvariantCulture, $"the mix would be hotter than {MaximumCelsius:R} °C, the end of the model"),
        choices => Root(celsius => _mixture.Excess(celsius, 0, choices) / _mixture.Capacity, MinimumCelsius, MaximumCelsius));

    private HeatAnswer ToAdd(double target, Func<HeatPolynomial, double> content) => Answer("g", 0, Most,
        "the mix lands below the target as it is", "it would take more than 1E+12 g", choices =>
        {
            HeatPolynomial water = ThermalMatter.OfWater(choices.Water);
            // What a kilogram takes up on its way to the target; sugar that it dissolves comes on top.
            double slope = water.FromZero(target) - content(water), start = _mixture.Excess(target, 0, choices);
            if (start > 0)
                return (0, Outcome.Below);
            double most = -start / slope;
            if (!(most <= Most / 1000))
                return (Most, Outcome.Above);
            return start == 0 ? (0, Outcome.Found)
                : (1000 * most * Roots.Rising(share => (_mixture.Excess(target, share * most, choices) + share * most * slope) / -start, 0,
                    1), Outcome.Found);
        });

    // The likely answer, and beside it each choice at its other ends.
    private HeatAnswer Answer(string unit, double lowest, double highest, string below, string above, Func<HeatChoices,
        (double Value, Outcome Outcome)> solve)
    {
        (double likely, Outcome outcome) = solve(Likely);
        if (outcome != Outcome.Found)
            return new HeatAnswer(null, unit, outcome == Outcome.Below ? below : above);
        double down = 0, up = 0;
        bool cut = false;
        foreach ((HeatChoices low, HeatChoices high) in Others())
        {
            (double first, Outcome firstOutcome) = solve(low);
            (double second, Outcome secondOutcome) = low == high ? (first, firstOutcome) : solve(high);
            cut |= firstOutcome != Outcome.Found || secondOutcome != Outcome.Found;
            double least = Math.Min(first, second) - likely, most = Math.Max(first, second) - likely;
            if (least < 0)
                down += least * least;
            if (most > 0)
                up += most * most;
        }
        return new HeatAnswer(new Spread(Math.Max(Math.Min(lowest, likely), likely - Math.Sqrt(down)), likely,
            Math.Min(Math.Max(highest, likely), likely + Math.Sqrt(up)),
            SpreadBasis.Models),
            unit, cut ? "the spread goes beyond what can be worked out, and is cut there" : "");
    }

    private IEnumerable<(HeatChoices Low, HeatChoices High)> Others()
    {
        HeatChoices likely = Likely;
        if (_mixture.HasWater)
        {
            HeatChoices other = likely with { Water = Water == WaterHeat.ChoiOkos ? WaterHeat.Ashrae : WaterHeat.ChoiOkos };
            yield return (other, other);
        }
        if (_mixture.Melts)
        {
            yield return (likely with { LatentSide = -1 }, likely with { LatentSide = 1 });
            yield return (likely with { SolidSide = -1 }, likely with { SolidSide = 1 });
        }
        if (_mixture.CrystalKilograms > 0 && Sugar != SugarDissolves.None)
        {
            yield return (likely with { DissolvingSide = -1 }, likely with { DissolvingSide = 1 });
            // Sugar that has not dissolved is one end of it; more than the water holds is none.
            if (Sugar == SugarDissolves.AsMuchAsCan)
                yield return (likely with { Sugar = SugarDissolves.None }, likely with { Sugar = SugarDissolves.None });
        }
        if (_mixture.HasSpreadOfVessel)
            yield return (likely with { VesselSide = -1 }, likely with { VesselSide = 1 });
    }

    // The zero of a rising function, the end where there is none.
    private static (double Value, Outcome Outcome) Root(Func<double, double> function, double low, double high)
    {
        // What stands at the end itself is found there, rounding apart: the unit of the function is a kelvin.
        const double rounding = 1e-10;
        if (function(low) > rounding)
            return (low, Outcome.Below);
        return function(high) < -rounding ? (high, Outcome.Above) : (Roots.Rising(function, low, high), Outcome.Found);
    }
}
