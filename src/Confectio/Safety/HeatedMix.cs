using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Sugars;

namespace Confectio.Safety;

/// <summary>What a mix is to the kinetics of heat: its water activity.</summary>
public static class HeatedMix
{
    // Grams that a gram of water holds, at room temperature: handbook figure from memory.
    private const double MostSalt = 0.36;

    private static readonly double s_saltStrength = StrengthOfSalt();

    /// <summary>
    /// The water activity of a formula at a temperature, by the sugars and the salt that are dissolved in its water; sucrose beyond
    /// saturation stays as crystals.
    /// </summary>
    /// <param name="formula">The formula, such as egg white and sugar.</param>
    /// <param name="celsius">The temperature up to which it is heated, °C, from 0 to 100.</param>
    /// <returns>
    /// The activity by the default model, and the range over that, Norrish's and Ross's; salt lowers each by a = exp(−2·0.93·m·M_w).
    /// Protein is left out of account, and the ranges of <see cref="KineticSet"/> are drawn by the same reckoning. Worked number: one part
    /// of egg white and two of sugar at 60 °C: 0.83.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no water in it.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">It is stronger than activities are known for.</exception>
    public static Spread WaterActivity(Formula formula, double celsius)
    {
        Spread sugars = SugarSolution.Of(formula).WaterActivityOverModels(celsius);
        return sugars * SaltFactor(formula);
    }

    /// <summary>What the salt of a formula multiplies the activity of its water by; 1 where there is none. More than dissolves does nothing.</summary>
    internal static double SaltFactor(Formula formula)
    {
        Balance balance = Balance.Of(formula);
        double water = balance[FormulaPart.Water].Grams.Likely;
        return water > 0 ? Math.Exp(-s_saltStrength * Math.Min(MostSalt, balance[FormulaPart.Salt].Grams.Likely / water)) : 1;
    }

    // What a gram of salt in a gram of water takes off the logarithm of the activity.
    private static double StrengthOfSalt()
    {
        CoefficientSet salt = CoefficientTable.BuiltIn.Get("activity-salt", Constituent.Salt);
        double kilogramsOfWater = Substance.MolarMassOf(Constituent.Water) / 1000;
        return salt["ions"] * salt["osmotic"] * kilogramsOfWater / Substance.MolarMassOf(Constituent.Salt) * 1000;
    }
}
