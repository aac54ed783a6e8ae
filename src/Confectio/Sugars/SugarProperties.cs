using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;

namespace Confectio.Sugars;

/// <summary>
/// What a problem may ask of the syrup of a formula (<see cref="FormulaProperty"/>): how active its water is as it will stand, and where it
/// boils.
/// </summary>
public static class SugarProperties
{
    /// <summary>
    /// The activity of the water as the formula will stand: sucrose above saturation is out as crystals
    /// (<see cref="SugarSolution.WaterActivity"/>).
    /// </summary>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <returns>
    /// The property, from 0.1 to 1, with a usual tolerance of 0.01. More sugar beyond saturation does not lower it. Caution: a computed
    /// activity is no measurement. Worked number: 75 g of sucrose and 25 g of water at 25 °C have 0.85.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static FormulaProperty WaterActivity(double celsius = 25) =>
        new Activity(Guard.InRange(celsius, Solubility.MinimumCelsius, Solubility.MaximumCelsius));

    /// <summary>Where the water of a formula boils with all that is dissolved in it (<see cref="SugarSolution.BoilingCelsius(AirPressure)"/>).</summary>
    /// <param name="pressure">The pressure of the air.</param>
    /// <returns>
    /// The property, in °C, with a usual tolerance of 0.5 K: a formula after what boils off, so that it is the temperature to cook to. Worked
    /// number: 85 % sucrose at sea level boils at 114.0 °C.
    /// </returns>
    public static FormulaProperty BoilingPoint(AirPressure pressure) => new Boiling(pressure);

    /// <summary>How sweet what is made is, by a table (<see cref="SweetnessTable.Of(Formula)"/>); sweetnesses are added up by mass.</summary>
    /// <param name="table">The table; <c>joined</c> unless stated.</param>
    /// <returns>
    /// The property, in grams of sucrose that 100 g are as sweet as, from 0 to 200, with a usual tolerance of 1. Tables disagree; what is sweet
    /// and has no figure counts nothing, and <see cref="FormulaProperty.CautionsOf"/> names it. Worked number: 50 g of sucrose in 100 g have 50.
    /// </returns>
    public static FormulaProperty Sweetness(SweetnessTable? table = null) => new Sweet(table ?? SweetnessTable.Get("joined"));

    /// <summary>The kinds that problems in JSON may ask for.</summary>
    /// <param name="pressure">The pressure under which something boils where a problem does not say.</param>
    public static IReadOnlyList<FormulaPropertyKind> Kinds(AirPressure pressure) =>
    [
        new("water-activity", "celsius", Solubility.MinimumCelsius, Solubility.MaximumCelsius, 25, WaterActivity),
        new("boiling-point", "kilopascals", AirPressure.MinimumKilopascals, AirPressure.MaximumKilopascals, pressure.Kilopascals,
            kilopascals => BoilingPoint(AirPressure.FromKilopascals(kilopascals))),
        new(Sweetness()),
    ];

    private sealed class Sweet(SweetnessTable table)
        : FormulaProperty.Fraction("sweetness", "sweetness", "g of sucrose in 100 g", 0, 200, 1)
    {
        private readonly SweetnessTable _table = table;

        public override bool Equals(FormulaProperty? other) => base.Equals(other) && ReferenceEquals(((Sweet)other!)._table, _table);

        internal override double BoiledOffWhole => 1;

        public override IReadOnlyList<string> CautionsOf(Formula formula)
        {
            IReadOnlyList<Constituent> missing = _table.Of(Guard.NotNull(formula)).Missing;
            return [$"Sweetnesses of the table {_table.Key} are added up by mass, as the trade does; tables disagree, and strength and temperature change them.",
                .. missing.Count == 0 ? (string[])[] : [$"No figure, and counted as nothing: {string.Join(", ", missing.Select(constituent => FormulaPart.Of(constituent).Name))}."]];
        }

        internal override double Part(Ingredient ingredient) => 100 * _table.Part.FractionIn(ingredient);

        internal override double Whole(Ingredient ingredient) => 1;

        internal override string? Lacking(IEnumerable<Ingredient> ingredients) =>
            ingredients.Any(food => Part(food) > 0) ? null : "none of the ingredients is sweet";
    }

    // The grams of what dissolves, of the water, and the moles of the higher saccharides.
    private abstract class OfSyrup(string word, string name, string unit, double minimum, double maximum, double usualTolerance)
        : FormulaProperty(word, name, unit, minimum, maximum, usualTolerance)
    {
        private const int Water = Solutes.Count, HigherMoles = Solutes.Count + 1;

        public override bool IsFraction => false;

        internal override int Sums => Solutes.Count + 2;

        internal override void Add(Ingredient ingredient, double grams, Span<double> sums)
        {
            Composition composition = ingredient.Composition;
            for (int i = 0; i < Solutes.Count; i++)
                sums[i] += grams * composition[Solutes.Constituents[i]];
            sums[Water] += grams * composition[Constituent.Water];
            sums[HigherMoles] += grams * composition[Constituent.HigherSaccharides] / HigherSaccharides.MolarMass(ingredient);
        }

        internal override void BoilOff(double grams, Span<double> sums) => sums[Water] -= grams;

        // Of a little honey in much sugar, a little of the honey.
        internal override double Size(ReadOnlySpan<double> sums) => sums[Water];

        internal override string? Lacking(IEnumerable<Ingredient> ingredients) =>
            ingredients.Any(food => food.Composition[Constituent.Water] > 0) ? null : "none of the ingredients has water";

        /// <summary>The syrup of the sums; null where there is no water.</summary>
        protected static SugarSolution? Syrup(ReadOnlySpan<double> sums) => sums[Water] > 0
            ? SugarSolution.FromSums(sums[..Solutes.Count], sums[Water], sums[HigherMoles]) : null;

        /// <summary>The syrup of a formula; null where it has no water.</summary>
        protected static SugarSolution? Syrup(Formula formula) =>
            Formula.WaterOf(Guard.NotNull(formula).Lines) > formula.BoiledOffGrams ? SugarSolution.Of(formula) : null;
    }

    private sealed class Activity(double celsius) : OfSyrup("water-activity",
        string.Create(CultureInfo.InvariantCulture, $"water activity as it will stand at {celsius:0.##} °C"), "", 0.1, 1, 0.01)
    {
        private readonly double _celsius = celsius;

        // All dissolved, and saturated with sucrose.
        internal override int Pieces => 2;

        public override Spread? SpreadOf(Formula formula) =>
            Syrup(formula) is SugarSolution syrup && double.IsFinite(Of(syrup)) ? syrup.WaterActivity(_celsius) : null;

        public override IReadOnlyList<string> CautionsOf(Formula formula)
        {
            Guard.NotNull(formula);
            return
            [
                "A computed water activity is no measurement: measure it before anything is kept by it, and follow the local code.",
                "Sugars, polyols, glycerol and acids are counted; salt, protein, starch and alcohol are not, and only sucrose is let crystallise.",
            ];
        }

        internal override double Value(ReadOnlySpan<double> sums) => Syrup(sums) is SugarSolution syrup ? Of(syrup) : double.NaN;

        internal override double ValueOfPiece(int piece, ReadOnlySpan<double> sums) => Syrup(sums) is not SugarSolution syrup ? double.NaN
            : piece == 0 ? syrup.ActivityOrNone(_celsius) : syrup.Saturated(_celsius).ActivityOrNone(_celsius);

        internal override double Side(ReadOnlySpan<double> sums) => Syrup(sums) is SugarSolution syrup
            ? syrup[Constituent.Sucrose] - Crystallisation.Of(syrup, _celsius).SaturatedSucrosePerWater * syrup.Water : double.NaN;

        private double Of(SugarSolution syrup) => syrup.AsItStands(_celsius).ActivityOrNone(_celsius);
    }

    private sealed class Boiling(AirPressure pressure) : OfSyrup("boiling-point",
        string.Create(CultureInfo.InvariantCulture, $"boiling point under {pressure.Kilopascals:0.###} kPa"), "°C",
        Math.Round(pressure.WaterBoilsCelsius, 3), 200, 0.5)
    {
        private readonly AirPressure _pressure = pressure;

        public override Spread? SpreadOf(Formula formula) => Syrup(formula) is SugarSolution syrup && double.IsFinite(Of(syrup))
            ? syrup.BoilingCelsius(_pressure) : null;

        public override IReadOnlyList<string> CautionsOf(Formula formula)
        {
            Guard.NotNull(formula);
            return
            [
                "Hot syrup burns deeply: cook to a thermometer that was checked in boiling water, and have nobody lean over the pot.",
                "Sugars, polyols, glycerol and acids are counted; salt, protein, fat and starch are not.",
            ];
        }

        internal override double Value(ReadOnlySpan<double> sums) => Syrup(sums) is SugarSolution syrup ? Of(syrup) : double.NaN;

        private double Of(SugarSolution syrup) => syrup.BoilingOrNone(_pressure);
    }
}
