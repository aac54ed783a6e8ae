using Confectio.Formulas;
using Confectio.Sources;
using Confectio.Sugars;

namespace Confectio.Heat;

/// <summary>What a mix is to the kinetics of heat: its water activity.</summary>
public static class HeatedMix
{
    /// <summary>
    /// The water activity of a formula at a temperature, by what dissolves of it: sucrose beyond saturation stays as crystals. Over the default model, Norrish
    /// and Ross. Egg protein and salt lower it a little more, by about 0.01; they are left out of account.
    /// </summary>
    /// <param name="formula">The formula, such as egg white and sugar.</param>
    /// <param name="celsius">The temperature up to which it is heated, °C, from 0 to 100.</param>
    /// <returns>The activity. Worked number: one part of egg white and two of sugar at 60 °C: 0.83.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no water in it.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">It is stronger than activities are known for.</exception>
    public static Spread WaterActivity(Formula formula, double celsius)
    {
        SugarSolution dissolved = Crystallisation.Of(SugarSolution.Of(formula), celsius).Equilibrium;
        double likely = dissolved.WaterActivity(celsius), low = likely, high = likely;
        foreach (WaterActivityModel model in (ReadOnlySpan<WaterActivityModel>)[WaterActivityModel.Norrish, WaterActivityModel.Ross])
        {
            double other = dissolved.WaterActivity(celsius, model);
            low = Math.Min(low, other);
            high = Math.Max(high, other);
        }
        return new Spread(low, likely, high);
    }
}
