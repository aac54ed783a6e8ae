using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Formulas.Solving;

/// <summary>The measures that a formula is rounded to.</summary>
public sealed class RoundingGrid
{
    /// <summary>A step may move a line by no more than this share of it, half a step being the most it moves; else it is made finer.</summary>
    public const double MaximumShareMoved = 0.05;

    /// <summary>The finest step that is taken where the asked one is too coarse for a line, g.</summary>
    public const double FinestGrams = 0.1;

    private readonly double _grams;
    private readonly MeasuringSystem? _system;
    private readonly IReadOnlyDictionary<Ingredient, double> _own;

    private RoundingGrid(double grams, MeasuringSystem? system, IReadOnlyDictionary<Ingredient, double>? own = null)
    {
        _grams = grams;
        _system = system;
        _own = own ?? new Dictionary<Ingredient, double>();
    }

    internal bool IsOfSpoons => _system is not null;

    /// <summary>The step that was asked, g; null for spoons.</summary>
    internal double? StepGrams => _system is null ? _grams : null;

    /// <summary>The measuring system of spoons and cups; null for grams.</summary>
    public MeasuringSystem? MeasuringSystem => _system;

    /// <summary>
    /// Whole multiples of a mass. Where half of it would move a line by more than 5 per cent that line takes a finer step, of 5, 1, 0.5
    /// or 0.1 g: 2 g of salt is weighed to 0.1 g, whatever the butter is weighed to.
    /// </summary>
    /// <param name="step">The mass, g, from 0.001 to 1e6.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="step"/> is outside its range.</exception>
    public static RoundingGrid Grams(double step) => new(Guard.InRange(step, 0.001, 1e6), null);

    /// <summary>
    /// Spoons and cups: below a tablespoon quarter teaspoons, below a quarter of a cup teaspoons, up to two cups tablespoons, above
    /// them quarter cups, by the ingredient's usual packing. What is not measured by volume is rounded to a gram.
    /// </summary>
    /// <param name="system">Whose spoons and cups.</param>
    /// <exception cref="ArgumentNullException"><paramref name="system"/> is null.</exception>
    public static RoundingGrid Spoons(MeasuringSystem system) => new(0, Guard.NotNull(system));

    /// <summary>
    /// The same with a step of its own for one ingredient: an egg, a stick of butter, a sheet of gelatine, a tin. It is taken as it is,
    /// however much it moves the line.
    /// </summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="grams">What one of it weighs, g, from 0.001 to 1e6.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public RoundingGrid WithStep(Ingredient ingredient, double grams) => new(_grams, _system,
        new Dictionary<Ingredient, double>(_own) { [Guard.NotNull(ingredient)] = Guard.InRange(grams, 0.001, 1e6) });

    // The step for a mass of an ingredient.
    internal Step StepOf(Ingredient ingredient, double grams)
    {
        if (_own.TryGetValue(ingredient, out double own))
            return new Step(own, null, null, Fraction.One);
        if (_system is null)
            return new Step(Finer(_grams, grams), null, null, Fraction.One);
        if (!ingredient.TryGetDensity(ingredient.DefaultPacking, out _))
            return new Step(1, null, null, Fraction.One);
        Conversion conversion = Conversion.Of(ingredient, _system);
        double tablespoon = _system.MillilitresPer(KitchenUnit.Tablespoon), cup = _system.Defines(KitchenUnit.Cup)
            ? _system.MillilitresPer(KitchenUnit.Cup) : 200;
        double millilitres = conversion.ToVolume(grams).Millilitres.Likely;
        (Fraction fills, KitchenUnit unit) = millilitres < tablespoon ? (new Fraction(1, 4), KitchenUnit.Teaspoon)
            : millilitres < cup / 4 ? (Fraction.One, KitchenUnit.Teaspoon)
            : millilitres < 2 * cup ? (Fraction.One, KitchenUnit.Tablespoon)
            : _system.Defines(KitchenUnit.Cup) ? (new Fraction(1, 4), KitchenUnit.Cup) : (new Fraction(50, 1), KitchenUnit.Millilitre);
        return new Step(conversion.ToMass(Amount.Of(fills, unit)).Grams.Likely, _system, unit, fills);
    }

    // The asked step, or the largest of 5, 1, 0.5, 0.1 and so on that moves the line little enough: each is a whole part of the one
    // before, so that what one line lacks another can make up.
    private static double Finer(double step, double grams)
    {
        if (step <= FinestGrams || step / 2 <= MaximumShareMoved * grams)
            return step;
        double most = Math.Max(FinestGrams, 2 * MaximumShareMoved * grams) * (1 + 1e-12);
        double decade = Math.Pow(10, Math.Floor(Math.Log10(most)));
        return Math.Min(step, Math.Round(most >= 5 * decade ? 5 * decade : decade, 1));
    }

    /// <summary>One step of a grid: its mass, and what it is called.</summary>
    internal readonly struct Step(double grams, MeasuringSystem? system, KitchenUnit? unit, Fraction fills)
    {
        public double Grams { get; } = grams;

        /// <summary>A line of so many steps.</summary>
        public FormulaLine Line(Ingredient ingredient, double total)
        {
            if (system is null || unit is not KitchenUnit measure)
                return FormulaLine.Of(ingredient, total);
            long steps = (long)Math.Round(total / Grams);
            Amount plain = Amount.Of(new Fraction(steps, 1) * fills, measure);
            // 17 tablespoons are a cup and a tablespoon, where some of the usual tools hold exactly that.
            PracticalMeasure? filled = PracticalMeasure.Find(Math.Clamp(plain.Millilitres(system), 0.01, 1e6), MeasuringTools.Usual(system),
                1e-9);
            return FormulaLine.Of(ingredient, filled?.Amount ?? plain, system);
        }
    }

    /// <summary>Whose spoons, or a grid of grams.</summary>
    public override string ToString() => _system is null ? "a grid of grams" : $"cups and spoons, {_system}";
}
