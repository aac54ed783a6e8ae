using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Heat;

/// <summary>What a formula does in the warm.</summary>
public static class FormulaHeat
{
    /// <summary>How much of the fat of a formula is solid at a temperature.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="celsius">The temperature, °C, from −40 to 150; beyond the points of a curve it goes on flat, and the answer says so.</param>
    /// <param name="curves">Whose curves: the built-in ones where none are given.</param>
    /// <returns>The share with its range, what it stands on and what it leaves out. Worked number: butter at 20 °C, 21 % of its fat.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static SolidFat SolidFat(this Formula formula, double celsius, FatCurves? curves = null) =>
        Heat.SolidFat.Of(formula, celsius, curves);

    /// <summary>Whether an icing stands in a room of one temperature, and in which published windows it is.</summary>
    /// <param name="formula">The icing.</param>
    /// <param name="celsius">The temperature of the room, which the icing has taken on, °C, from 20 to 40.</param>
    /// <param name="curves">Whose curves: the built-in ones where none are given.</param>
    /// <returns>Yes, no or doubtful, and why. A direction and no promise.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range: 88 is of another scale.</exception>
    public static WarmRoom InWarmRoom(this Formula formula, double celsius, FatCurves? curves = null) => WarmRoom.Of(formula, celsius, curves);

    /// <summary>Until which temperature an icing stays within a published window of solid fat.</summary>
    /// <param name="formula">The icing.</param>
    /// <param name="window">The window, one of <see cref="FatWindow.All"/>.</param>
    /// <param name="curves">Whose curves: the built-in ones where none are given.</param>
    /// <returns>The temperature with its range, within the 20 to 40 °C that are judged.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static WindowLimit Until(this Formula formula, FatWindow window, FatCurves? curves = null) =>
        WindowLimit.Of(Guard.NotNull(formula), Guard.NotNull(window), curves);

    /// <summary>Whether an icing stands over an afternoon in a room whose temperature changes, and when it may leave off.</summary>
    /// <param name="formula">The icing.</param>
    /// <param name="readings">
    /// The temperature of the room, from 2 to 10 000 readings in order, °C, from −30 to 50. Before the first and after the last nothing is said.
    /// </param>
    /// <param name="startCelsius">The temperature of the icing at the first reading, °C, from −30 to 50.</param>
    /// <param name="ratePerMinute">
    /// The rate at which it follows the room, per minute, from 1e-6 to 100: <see cref="WarmAfternoon.RateOfCake"/>, or that of readings of your own
    /// (<see cref="LumpedBody.FromReadings"/>).
    /// </param>
    /// <param name="curves">Whose curves: the built-in ones where none are given.</param>
    /// <returns>The verdict, when it leaves the window, and with what margin.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> or <paramref name="readings"/> is null.</exception>
    /// <exception cref="ArgumentException">There are too few readings or too many, they are out of order, or one is of no room.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static WarmAfternoon InWarmAfternoon(this Formula formula, IEnumerable<ThermometerReading> readings, double startCelsius, Spread ratePerMinute,
        FatCurves? curves = null) => WarmAfternoon.Of(formula, readings, startCelsius, ratePerMinute, curves);

    /// <summary>The most of a soft fat that still holds at a temperature, at equal fat and water.</summary>
    /// <param name="formula">The icing.</param>
    /// <param name="soft">The fat that gives way, such as butter; it is in the formula.</param>
    /// <param name="firm">The fat that takes its place, such as white shortening.</param>
    /// <param name="water">The water of the table, for what the soft fat brought.</param>
    /// <param name="celsius">The temperature, °C, from 20 to 40.</param>
    /// <param name="surely">Whether it holds by all of the range, and not by the likely curves alone.</param>
    /// <param name="curves">Whose curves: the built-in ones where none are given.</param>
    /// <returns>
    /// The blend, or why there is none. Worked number: of 250 g of unsalted butter in a buttercream, 31 °C lets some 147 g stand beside 83 g of white
    /// shortening by the likely curves.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/>, <paramref name="soft"/>, <paramref name="firm"/> or <paramref name="water"/> is
    /// null.</exception>
    /// <exception cref="ArgumentException">The two fats are one, the soft one is not in the formula, or the water is none.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static HoldingBlend MostThatHolds(this Formula formula, Ingredient soft, Ingredient firm, Ingredient water, double celsius,
        bool surely = false, FatCurves? curves = null) => HoldingBlend.Of(formula, soft, firm, water, celsius, surely, curves);
}
