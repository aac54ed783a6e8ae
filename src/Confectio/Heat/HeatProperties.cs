using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;

namespace Confectio.Heat;

/// <summary>
/// What a problem may ask of a formula in the warm (<see cref="FormulaProperty"/>): how much of its fat is solid, and how dense it is without
/// air. Both are one sum over another, so that a problem with them is proved as one with shares is.
/// </summary>
public static class HeatProperties
{
    /// <summary>How much of the fat is solid at a temperature, fat by fat and by mass (<see cref="Heat.SolidFat"/>).</summary>
    /// <param name="celsius">The temperature, °C, from −40 to 150; beyond the points of a curve it goes on flat.</param>
    /// <param name="curves">Whose curves: the built-in ones where none are given.</param>
    /// <returns>
    /// The property, in per cent of the fat whose curve is known, with a usual tolerance of one point: a ceiling where fats soften each
    /// other. Worked number: butter at 20 °C has 21 %.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static FormulaProperty SolidFat(double celsius, FatCurves? curves = null) =>
        new SolidShare(Guard.InRange(celsius, SolidFatCurve.MinimumCelsius, SolidFatCurve.MaximumCelsius), curves ?? FatCurves.BuiltIn);

    // The low ends of the curves, fats of no known curve counted as liquid: the low end of the solid fat before what softens it is taken off.
    internal static FormulaProperty LowSolidFat(double celsius, FatCurves curves) => new SolidShare(celsius, curves, -1);

    /// <summary>The density without air (<see cref="ThermalProperties.GramsPerMillilitre"/>): volumes add up.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <returns>
    /// The property, in g/mL, with a usual tolerance of 0.01. What is whipped is lighter. Worked number: heavy cream at 20 °C has 0.982.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static FormulaProperty DensityWithoutAir(double celsius = 20) => new Density(Guard.InRange(celsius, 0, 100));

    /// <summary>The kinds that problems in JSON may ask for.</summary>
    public static IReadOnlyList<FormulaPropertyKind> Kinds { get; } =
    [
        new("solid-fat", "celsius", SolidFatCurve.MinimumCelsius, SolidFatCurve.MaximumCelsius, null, celsius => SolidFat(celsius)),
        new("density", "celsius", 0, 100, 20, DensityWithoutAir),
    ];

    private sealed class SolidShare(double celsius, FatCurves curves, int side = 0) : FormulaProperty.Fraction(side == 0 ? "solid-fat" : "low-solid-fat",
        string.Create(CultureInfo.InvariantCulture, $"solid fat at {celsius:0.##} °C"), "%", 0, 100, 1)
    {
        private readonly double _celsius = celsius;
        private readonly FatCurves _curves = curves;
        private readonly int _side = side;

        public override Spread? SpreadOf(Formula formula) => formula.SolidFat(_celsius, _curves).PercentOfFat;

        public override IReadOnlyList<string> CautionsOf(Formula formula) => formula.SolidFat(_celsius, _curves).Cautions;

        public override bool Equals(FormulaProperty? other) => base.Equals(other) && ReferenceEquals(((SolidShare)other!)._curves, _curves);

        internal override double Part(Ingredient ingredient) =>
            _curves.Of(ingredient).Sum(fat => fat.Curve is null ? 0 : fat.PerGram * 100 * fat.Curve.SolidFraction(_celsius, _side));

        internal override double Whole(Ingredient ingredient) => _curves.Of(ingredient).Sum(fat => fat.Curve is null ? 0 : fat.PerGram);

        internal override string? Lacking(IEnumerable<Ingredient> ingredients) =>
            ingredients.Any(food => Whole(food) > 0) ? null : "none of the ingredients has fat whose melting curve is known";
    }

    private sealed class Density(double celsius) : FormulaProperty.Fraction("density",
        string.Create(CultureInfo.InvariantCulture, $"density without air at {celsius:0.##} °C"), "g/mL", 0.1, 3, 0.01)
    {
        private readonly double _celsius = celsius;
        private readonly double _ofWater = ThermalMatter.OfWater(celsius);

        internal override double BoiledOffPart => 1;

        internal override double BoiledOffWhole => 1 / _ofWater;

        public override IReadOnlyList<string> CautionsOf(Formula formula)
        {
            Guard.NotNull(formula);
            return ["Without air: what is whipped is lighter. How far the sum of the volumes is off was not published."];
        }

        internal override double Part(Ingredient ingredient) => ingredient.Composition.Sum;

        internal override double Whole(Ingredient ingredient) =>
            1000 * ingredient.Composition.Sum / ThermalMatter.Of(ingredient.Composition).Volumes(_celsius).Density;

        internal override string? Lacking(IEnumerable<Ingredient> ingredients) => null;
    }
}
