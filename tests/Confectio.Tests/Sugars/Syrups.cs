using Confectio.Ingredients;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>What several tests of sugar solutions need: a solution of one solute, the names of the handbook, the row furthest off.</summary>
internal static class Syrups
{
    /// <summary>One solute in water.</summary>
    public static SugarSolution Of(Constituent solute, double fraction) =>
        SugarSolution.FromFractions(new Dictionary<Constituent, double> { [solute] = fraction, [Constituent.Water] = 1 - fraction });

    /// <summary>Sucrose and something else in water.</summary>
    public static SugarSolution Mixture(double sucrose, Constituent other, double otherFraction) => SugarSolution.FromFractions(
        new Dictionary<Constituent, double> { [Constituent.Sucrose] = sucrose, [other] = otherFraction, [Constituent.Water] = 1 - sucrose - otherFraction });

    /// <summary>The solute of a row of the CRC Handbook. Polyols stand for mannitol, as they do for sorbitol, and acids for citric acid.</summary>
    public static SugarSolution Of(AqueousRow row) => Of(Named(row.Solute), row.MassPercent / 100);

    public static Constituent Named(string solute) => solute switch
    {
        "citric acid" => Constituent.Acids,
        "D-fructose" => Constituent.Fructose,
        "D-glucose" => Constituent.Glucose,
        "D-mannitol" => Constituent.Polyols,
        "glycerol" => Constituent.Glycerol,
        "lactose" => Constituent.Lactose,
        "maltose" => Constituent.Maltose,
        "sucrose" => Constituent.Sucrose,
        _ => throw new ArgumentOutOfRangeException(nameof(solute), solute, "not in the file"),
    };

    public static double ToCelsius(double fahrenheit) => (fahrenheit - 32) / 1.8;

    public static double ToFahrenheit(double celsius) => celsius * 1.8 + 32;

    /// <summary>No row is off by more than the bound; the message names the one furthest off.</summary>
    public static void Within<T>(double bound, IEnumerable<T> rows, Func<T, double> off)
    {
        (T row, double deviation) = rows.Select(row => (row, off(row))).MaxBy(pair => Math.Abs(pair.Item2));
        Assert.True(Math.Abs(deviation) <= bound, FormattableString.Invariant($"{row} is off by {deviation:G6}; {bound:G6} is allowed"));
    }
}
