using System.Globalization;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Formulas.Solving;

public sealed partial class FormulaProblem
{
    /// <summary>The most properties with a kink that a problem may ask for: every side of every kink is tried.</summary>
    private const int MaximumKinks = 3;

    /// <summary>Whether something is asked that is neither a sum nor a fraction of sums, so that only what is nearby can be proved.</summary>
    internal bool IsCurved => Curved.Any();

    /// <summary>The demands that are neither a sum nor a fraction of sums.</summary>
    internal IEnumerable<Demand.PropertyValue> Curved => _demands.OfType<Demand.PropertyValue>().Where(demand => !demand.Asked.IsFraction);

    /// <summary>Asks for a property to be hit as well as possible.</summary>
    /// <param name="property">The property, such as that of <c>SugarProperties.WaterActivity(25)</c>.</param>
    /// <param name="value">Its value in its unit, from <see cref="FormulaProperty.Minimum"/> to <see cref="FormulaProperty.Maximum"/>.</param>
    /// <param name="priority">From 1, the first, to 4; shares and properties of one priority are weighed against each other.</param>
    /// <param name="tolerance">
    /// The miss that counts as one, in the unit of the property, above 0; <see cref="FormulaProperty.UsualTolerance"/> unless stated.
    /// </param>
    /// <exception cref="ArgumentNullException"><paramref name="property"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <exception cref="ArgumentException">None of the ingredients can have it, or there are too many demands.</exception>
    public FormulaProblem WithPropertyTarget(FormulaProperty property, double value, int priority = 1, double? tolerance = null) =>
        WithPropertyTargetRange(property, Within(Guard.NotNull(property), value, nameof(value)), value, priority, tolerance);

    /// <summary>Asks for a property within a range as well as possible: inside all places are equally good.</summary>
    /// <param name="property">The property.</param>
    /// <param name="low">The low end in its unit; minus infinity where there is none.</param>
    /// <param name="high">The high end, from <paramref name="low"/>; infinity where there is none.</param>
    /// <param name="priority">From 1, the first, to 4.</param>
    /// <param name="tolerance">The miss that counts as one, in the unit of the property.</param>
    /// <inheritdoc cref="WithPropertyTarget" path="/exception"/>
    public FormulaProblem WithPropertyTargetRange(FormulaProperty property, double low, double high, int priority = 1,
        double? tolerance = null)
    {
        Guard.NotNull(property);
        (low, high) = Ends(property, low, high);
        Guard.InRange(priority, 1, 4);
        double one = property.UsualTolerance;
        return WithProperty(property, new Demand.PropertyValue(property, low, high)
        {
            Tolerance = tolerance is double asked ? Guard.InRange(asked, one / 1e4, one * 1e4, nameof(tolerance)) : one,
            Priority = priority,
        });
    }

    /// <summary>Asks for a property that must be kept.</summary>
    /// <param name="property">The property.</param>
    /// <param name="low">The low end in its unit; minus infinity where there is none.</param>
    /// <param name="high">The high end, from <paramref name="low"/>; infinity where there is none.</param>
    /// <inheritdoc cref="WithPropertyTarget" path="/exception"/>
    public FormulaProblem WithPropertyLimit(FormulaProperty property, double low, double high)
    {
        Guard.NotNull(property);
        (low, high) = Ends(property, low, high);
        return WithProperty(property, new Demand.PropertyValue(property, low, high));
    }

    /// <summary>Keeps a property as it is in the base: as sweet, as active a water, as much solid fat.</summary>
    /// <param name="property">The property. One that is no fraction of sums is kept to a tenth of its usual tolerance, others exactly.</param>
    /// <exception cref="ArgumentNullException"><paramref name="property"/> is null.</exception>
    /// <exception cref="ArgumentException">
    /// The base has none, or one outside what may be asked for; none of the ingredients can have it, or there are too many demands.
    /// </exception>
    public FormulaProblem WithKeptProperty(FormulaProperty property)
    {
        Guard.NotNull(property);
        double value = BaseTotalGrams > 0
            ? property.Value(property.SumsOf(Ingredients, [.. _candidates.Select(candidate => candidate.BaseGrams)], BaseBoiledOffGrams)) : double.NaN;
        if (!(value >= property.Minimum && value <= property.Maximum))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(property)} '{property}': the base has "
                + $"{(double.IsFinite(value) ? $"{value:0.####}; from {property.Minimum} to {property.Maximum} can be kept" : "none, so it cannot be kept")}."), nameof(property));
        double room = property.IsFraction ? 0 : property.UsualTolerance / 10;
        return WithPropertyLimit(property, Math.Max(property.Minimum, value - room), Math.Min(property.Maximum, value + room));
    }

    /// <summary>Reads a problem in JSON that may ask for properties, such as the water activity.</summary>
    /// <param name="json">The text in UTF-8, at most 4 MiB.</param>
    /// <param name="ingredients">The table in which its ingredients are looked up.</param>
    /// <param name="properties">
    /// The kinds that it may ask for: those of <c>SugarProperties.Kinds</c> and <c>HeatProperties.Kinds</c>; the front door
    /// (<c>Kitchen.ReadProblem</c>) hands in both.
    /// </param>
    /// <inheritdoc cref="ReadJson(string, IngredientTable)" path="/returns"/>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Reading<FormulaProblem> ReadJson(ReadOnlySpan<byte> json, IngredientTable ingredients,
        IEnumerable<FormulaPropertyKind> properties) => ProblemJson.Read(json, ingredients, [.. Guard.NotNull(properties)]);

    private FormulaProblem WithProperty(FormulaProperty property, Demand.PropertyValue demand)
    {
        if (property.Lacking(Ingredients) is string lacking)
            throw new ArgumentException($"{nameof(property)} '{property}': {lacking}.", nameof(property));
        if (property.Pieces > 1 && Curved.Select(asked => asked.Asked).Where(asked => asked.Pieces > 1).Append(property).Distinct().Count() > MaximumKinks)
            throw new ArgumentException($"{nameof(property)} '{property}' would be one too many; a problem asks for at most {MaximumKinks} that "
                + "have a kink.", nameof(property));
        return With(demand);
    }

    private static (double Low, double High) Ends(FormulaProperty property, double low, double high)
    {
        if (!double.IsNegativeInfinity(low))
            Within(property, low, nameof(low));
        if (!double.IsPositiveInfinity(high))
            Guard.InRange(high, Math.Max(low, property.Minimum), property.Maximum);
        return (low, high);
    }

    private static double Within(FormulaProperty property, double value, string name) =>
        Guard.InRange(value, property.Minimum, property.Maximum, name);
}
