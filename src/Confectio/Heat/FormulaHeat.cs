using Confectio.Formulas;

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
}
