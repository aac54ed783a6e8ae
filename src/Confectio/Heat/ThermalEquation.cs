using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Heat;

/// <summary>
/// One thermal property of one component of food over temperature, A + B·t + C·t²: the equations of Choi and Okos (1986), constants from
/// memory of ethanol and glycerol, which they have not, and an estimate for the density of melted fat.
/// </summary>
internal sealed class ThermalEquation
{
    private static readonly ThermalEquation[] s_all = Gather();

    private ThermalEquation(string component, ThermalQuantity quantity, double a, double b, double c, double low, double high,
        Provenance provenance)
    {
        Component = component;
        Quantity = quantity;
        A = a;
        B = b;
        C = c;
        MinimumCelsius = low;
        MaximumCelsius = high;
        Provenance = provenance;
    }

    /// <summary>All of them.</summary>
    public static IReadOnlyList<ThermalEquation> All => s_all;

    /// <summary>
    /// The component: <c>water</c>, <c>water-ashrae</c>, <c>ice</c>, <c>fat</c>, <c>protein</c>, <c>carbohydrate</c>, <c>fibre</c>,
    /// <c>ash</c>, <c>alcohol</c>, <c>glycerol</c> or <c>liquid-fat</c>.
    /// </summary>
    public string Component { get; }

    /// <summary>What it gives.</summary>
    public ThermalQuantity Quantity { get; }

    /// <summary>The value at 0 °C.</summary>
    public double A { get; }

    /// <summary>The slope at 0 °C, per K.</summary>
    public double B { get; }

    /// <summary>The curvature, per K².</summary>
    public double C { get; }

    /// <summary>The lowest temperature it is good for, °C.</summary>
    public double MinimumCelsius { get; }

    /// <summary>The highest temperature it is good for, °C.</summary>
    public double MaximumCelsius { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The equation of a component.</summary>
    /// <param name="component">The component; case does not matter.</param>
    /// <param name="quantity">What it gives.</param>
    /// <exception cref="ArgumentNullException"><paramref name="component"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such equation; the message lists the components that have one.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="quantity"/> is not a defined value.</exception>
    public static ThermalEquation Get(string component, ThermalQuantity quantity)
    {
        Guard.NotNull(component);
        Guard.Defined(quantity);
        return Keyed.Get([.. s_all.Where(known => known.Quantity == quantity)], component, "equation for", "components", known =>
            known.Component);
    }

    /// <summary>The value at a temperature.</summary>
    /// <param name="celsius">The temperature t, °C, from <see cref="MinimumCelsius"/> to <see cref="MaximumCelsius"/>.</param>
    /// <returns>A + B·t + C·t². Worked number: the specific heat of fat at 20 °C is 2.0117 kJ/(kg·K).</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double At(double celsius)
    {
        double t = Guard.InRange(celsius, MinimumCelsius, MaximumCelsius);
        return A + t * (B + t * C);
    }

    /// <summary>One line, such as <c>fat, specific-heat: -40 to 150 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Component}, {EnumWords.Of(Quantity, '-')}: {MinimumCelsius:R} to {MaximumCelsius:R} °C");

    // ASHRAE's constant of water stands beside the original one: it is an equation of its own, and here a component.
    private static ThermalEquation[] Gather() =>
    [
        .. Enum.GetValues<ThermalQuantity>().SelectMany(quantity => Of($"thermal-{EnumWords.Of(quantity, '-')}", quantity, "")),
        .. Of("thermal-specific-heat-ashrae", ThermalQuantity.SpecificHeat, "-ashrae"),
    ];

    private static IEnumerable<ThermalEquation> Of(string equation, ThermalQuantity quantity, string suffix) =>
        CoefficientTable.BuiltIn.Of(equation).Select(set =>
        {
            double[] abc = set.Terms("a", "b", "c");
            return new ThermalEquation(set.Substance.Key + suffix, quantity, abc[0], abc[1], abc[2], set.MinimumCelsius, set.MaximumCelsius,
                set.All[0].Provenance);
        });
}
