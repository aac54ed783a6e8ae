using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Sugars;

/// <summary>What the models know of each dissolved substance: its place, its molar mass and its Norrish constant.</summary>
internal static class Solutes
{
    public const int Sucrose = 0, Glucose = 1, Fructose = 2, Lactose = 3, Maltose = 4, OtherSugars = 5, HigherSaccharides = 6,
        Polyols = 7, Glycerol = 8, Acids = 9, Count = 10;

    /// <summary>
    /// The mean molar mass of the saccharides above maltose where nobody says it, that of substances.csv; a constant because it is the
    /// default of arguments.
    /// </summary>
    public const double UsualHigherMolarMass = 772;

    public static readonly double WaterMolarMass = Substance.MolarMassOf(Constituent.Water), SucroseMolarMass =
        Substance.MolarMassOf(Constituent.Sucrose),
        MonosaccharideMolarMass = Substance.MolarMassOf(Constituent.Glucose);

    /// <summary>Norrish's constant of sucrose at 25 °C, against which the others are measured.</summary>
    public static readonly double SucroseNorrish = NorrishOf(Constituent.Sucrose);

    public static readonly double LowestHigherMolarMass = Substance.Of(Constituent.HigherSaccharides).LowestMolarMass!.Value,
        HighestHigherMolarMass = Substance.Of(Constituent.HigherSaccharides).HighestMolarMass!.Value;

    // In the order of the places.
    private static readonly Constituent[] s_constituents =
    [
        Constituent.Sucrose, Constituent.Glucose, Constituent.Fructose, Constituent.Lactose, Constituent.Maltose, Constituent.OtherSugars,
        Constituent.HigherSaccharides, Constituent.Polyols, Constituent.Glycerol, Constituent.Acids,
    ];

    private static readonly double[] s_molarMasses = [.. s_constituents.Select(Substance.MolarMassOf)];

    // The higher saccharides have none of their own: theirs goes with their molar mass.
    private static readonly double[] s_norrish =
        [.. s_constituents.Select(constituent => constituent == Constituent.HigherSaccharides ? double.NaN : NorrishOf(constituent))];

    // The line of Norrish's constant by the number of units: glucose is one, maltose two.
    private static readonly double s_oneUnit = NorrishOf(Constituent.Glucose), s_nextUnit = NorrishOf(Constituent.Maltose) - s_oneUnit;

    private static readonly int[] s_places =
        Ingredients.Constituents.ByPlace(constituent => Array.IndexOf(s_constituents, constituent));

    public static ReadOnlySpan<Constituent> Constituents => s_constituents;

    /// <summary>The place of a constituent; -1 where it does not dissolve, or where no model here counts it.</summary>
    public static int PlaceOf(Constituent constituent) => s_places[Ingredients.Constituents.PlaceOf(Guard.Defined(constituent))];

    public static double MolarMass(int place, double higherMolarMass) => place == HigherSaccharides ? higherMolarMass
        : s_molarMasses[place];

    /// <summary>
    /// Norrish's constant. For the higher saccharides it is the line through glucose (one unit, 2.25) and maltose (two, 4.54) carried
    /// on to their mean number of units: an estimate.
    /// </summary>
    public static double Norrish(int place, double higherMolarMass) => place == HigherSaccharides
        ? s_oneUnit + s_nextUnit * (UnitsOf(higherMolarMass) - 1)
        : s_norrish[place];

    /// <summary>What an equation has for every solute but sucrose, by place.</summary>
    public static HeldPolynomial[] OverSucrose(string equation, string letter) => [.. s_constituents.Select(constituent =>
        constituent == Constituent.Sucrose ? default : CoefficientTable.BuiltIn.Get(equation, constituent).Held(letter))];

    /// <summary>The dissolved substance whose word a field has, such as <c>higher-saccharides</c>; one that is none is noted.</summary>
    public static Constituent Read(RowFields fields, string column)
    {
        string word = fields.Required(column);
        int place = Array.FindIndex(s_constituents, constituent => FormulaPart.Of(constituent).Word == word);
        if (place < 0)
            fields.Problem(column, $"{Excerpt.Of(word)} is nothing that dissolves in a syrup");
        return place < 0 ? Constituent.Other : s_constituents[place];
    }

    private static double UnitsOf(double molarMass) => (molarMass - WaterMolarMass) / (MonosaccharideMolarMass - WaterMolarMass);

    private static double NorrishOf(Constituent constituent) => CoefficientTable.BuiltIn.Get("activity-norrish", constituent)["k"];
}
