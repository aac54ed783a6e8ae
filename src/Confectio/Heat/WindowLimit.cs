using System.Globalization;
using Confectio.Formulas;

namespace Confectio.Heat;

/// <summary>Up to which temperature an icing stays within a window of solid fat.</summary>
/// <remarks>
/// The window ends where the solid fat falls below its least: low is where all the range, less 2 points for the scales, is still within, high where none
/// of it is. Fat melts as it warms, so that what holds at one temperature holds at every colder one of those judged, from 20 to 40 °C; below 20 °C the
/// scales were not compared (<see cref="WarmRoom"/>). An end at 20 °C means 20 °C or colder, one at 40 °C means 40 °C or warmer.
/// </remarks>
public sealed class WindowLimit
{
    private const int Halvings = 40;

    private WindowLimit(FatWindow window, Spread? untilCelsius, string? notJudgedWhy = null)
    {
        Window = window;
        NotJudgedWhy = notJudgedWhy;
        UntilCelsius = untilCelsius;
    }

    /// <summary>The window.</summary>
    public FatWindow Window { get; }

    /// <summary>The temperature at which it is left, °C, from 20 to 40; <see langword="null"/> where it is not judged.</summary>
    public Spread? UntilCelsius { get; }

    /// <summary>Why nothing is judged; <see langword="null"/> where something is.</summary>
    public string? NotJudgedWhy { get; }

    /// <summary>One line, such as <c>stands: until 27.1 °C (20 or colder, to 31.6)</c>.</summary>
    public override string ToString() => UntilCelsius is not Spread until ? $"{Window.Use}: not judged, {NotJudgedWhy}"
        : $"{Window.Use}: until {End(until.Likely)} °C ({End(until.Low)} to {End(until.High)})";

    internal static string End(double celsius) => celsius <= WarmRoom.MinimumCelsius ? "20 or colder"
        : celsius >= WarmRoom.MaximumCelsius ? "40 or warmer" : celsius.ToString("0.0", CultureInfo.InvariantCulture);

    internal static WindowLimit Of(Formula formula, FatWindow window, FatCurves? curves)
    {
        if (formula.SolidFat(WarmRoom.MinimumCelsius, curves).NotJudgedWhy is string why)
            return new WindowLimit(window, null, why);
        double likely = Leaves(percent => percent.Likely - window.Low);
        return new WindowLimit(window, new Spread(Math.Min(likely, Leaves(percent => percent.Low - window.Low - WarmRoom.ScalesPart)), likely,
            Math.Max(likely, Leaves(percent => percent.High - window.Low + WarmRoom.ScalesPart)), SpreadBasis.Judged));

        // The solid fat falls, so that the room above the window changes its sign once.
        double Leaves(Func<Spread, double> room)
        {
            double within = WarmRoom.MinimumCelsius, outside = WarmRoom.MaximumCelsius;
            if (room(formula.SolidFat(within, curves).PercentOfFat!.Value) < 0)
                return within;
            if (room(formula.SolidFat(outside, curves).PercentOfFat!.Value) >= 0)
                return outside;
            for (int i = 0; i < Halvings; i++)
            {
                double middle = (within + outside) / 2;
                if (room(formula.SolidFat(middle, curves).PercentOfFat!.Value) >= 0)
                    within = middle;
                else
                    outside = middle;
            }
            return within;
        }
    }
}
