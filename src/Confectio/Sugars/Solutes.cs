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

    public const double WaterMolarMass = 18.015, SucroseMolarMass = 342.30, MonosaccharideMolarMass = 180.156;

    /// <summary>Norrish's constant of sucrose at 25 °C, against which the others are measured.</summary>
    public const double SucroseNorrish = 6.47;

    /// <summary>The mean molar mass of the saccharides above maltose in a 42 DE syrup of 19 % glucose and 14 % maltose in the solids.</summary>
    public const double UsualHigherMolarMass = 772;

    public const double LowestHigherMolarMass = 504, HighestHigherMolarMass = 20000;

    // In the order of the places. Polyols count as sorbitol; other sugars as a disaccharide.
    private static readonly Constituent[] s_constituents =
    [
        Constituent.Sucrose, Constituent.Glucose, Constituent.Fructose, Constituent.Lactose, Constituent.Maltose, Constituent.OtherSugars,
        Constituent.HigherSaccharides, Constituent.Polyols, Constituent.Glycerol, Constituent.Acids,
    ];

    private static readonly double[] s_molarMasses = [SucroseMolarMass, MonosaccharideMolarMass, MonosaccharideMolarMass, 342.30, 342.30, 342.30,
        UsualHigherMolarMass, 182.17, 92.094, 192.124];

    private static readonly double[] s_norrish = [SucroseNorrish, 2.25, 2.25, 10.2, 4.54, 4.54, double.NaN, 1.65, 1.16, 6.17];

    private static readonly int[] s_places = PlacesOf(s_constituents);

    public static ReadOnlySpan<Constituent> Constituents => s_constituents;

    /// <summary>The place of a constituent; -1 where it does not dissolve, or where no model here counts it.</summary>
    public static int PlaceOf(Constituent constituent) => s_places[(int)Guard.Defined(constituent)];

    public static double MolarMass(int place, double higherMolarMass) => place == HigherSaccharides ? higherMolarMass : s_molarMasses[place];

    /// <summary>
    /// Norrish's constant. For the higher saccharides it is the line through glucose (one unit, 2.25) and maltose (two, 4.54) carried
    /// on to their mean number of units: an estimate.
    /// </summary>
    public static double Norrish(int place, double higherMolarMass) => place == HigherSaccharides
        ? 2.25 + (4.54 - 2.25) * (UnitsOf(higherMolarMass) - 1)
        : s_norrish[place];

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

    private static int[] PlacesOf(Constituent[] constituents)
    {
        int[] places = new int[Enum.GetValues<Constituent>().Length];
        Array.Fill(places, -1);
        for (int i = 0; i < constituents.Length; i++)
            places[(int)constituents[i]] = i;
        return places;
    }
}
