using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sugars;

namespace Confectio.Heat;

/// <summary>A mix as the thermal equations see it: mass fractions of components, which add up to one, and its sucrose.</summary>
internal sealed class ThermalMatter
{
    /// <summary>The range of the equations, °C.</summary>
    public const double MinimumCelsius = -40, MaximumCelsius = 150;

    // The places of the arrays below, in the order in which they are summed.
    private static readonly string[] s_names = ["water", "fat", "protein", "carbohydrate", "fibre", "ash", "alcohol", "glycerol"];

    private static readonly int[] s_places = Constituents.ByPlace(PlaceOf);

    private static readonly int s_water = PlaceOf(Constituent.Water), s_fat = PlaceOf(Constituent.Fat),
        s_sucrose = PlaceOf(Constituent.Sucrose);

    private static readonly ThermalEquation[] s_heat = Equations(ThermalQuantity.SpecificHeat),
        s_density = Equations(ThermalQuantity.Density),
        s_conductivity = Equations(ThermalQuantity.Conductivity);

    private static readonly ThermalEquation s_ashraeWater = ThermalEquation.Get("water-ashrae", ThermalQuantity.SpecificHeat);

    private static readonly ThermalEquation s_ice = ThermalEquation.Get("ice", ThermalQuantity.SpecificHeat);

    private static readonly ThermalEquation s_liquidFat = ThermalEquation.Get("liquid-fat", ThermalQuantity.Density);

    private readonly double[] _shares;

    private ThermalMatter(double[] constituents)
    {
        double sum = constituents.Sum();
        _shares = new double[s_names.Length];
        for (int i = 0; i < constituents.Length; i++)
            _shares[s_places[i]] += constituents[i] / sum;
        Sucrose = constituents[Constituents.PlaceOf(Constituent.Sucrose)] / sum;
        FatPerGram = constituents[Constituents.PlaceOf(Constituent.Fat)] / sum;
    }

    public double Sucrose { get; }

    public double WaterPerGram => _shares[s_water];

    public double FatPerGram { get; }

    public static ThermalMatter Of(Composition composition)
    {
        return new ThermalMatter(Constituents.ByPlace(constituent => composition[constituent]));
    }

    public static ThermalMatter Of(Formula formula)
    {
        double[] constituents = new double[Constituents.Count];
        foreach (FormulaLine line in formula.Lines)
        {
            for (int i = 0; i < constituents.Length; i++)
                constituents[i] += line.Grams.Likely * line.Ingredient.Composition[Constituents.At(i)];
        }
        int water = Constituents.PlaceOf(Constituent.Water);
        constituents[water] = Math.Max(0, constituents[water] - formula.BoiledOffGrams);
        return new ThermalMatter(constituents);
    }

    /// <summary>A + B·t + C·t² of the specific heat of the whole, all sugar counting as dissolved.</summary>
    public HeatPolynomial SpecificHeat(WaterHeat water)
    {
        double a = 0, b = 0, c = 0;
        for (int i = 0; i < _shares.Length; i++)
        {
            ThermalEquation equation = i == s_water && water == WaterHeat.Ashrae ? s_ashraeWater : s_heat[i];
            a += _shares[i] * equation.A;
            b += _shares[i] * equation.B;
            c += _shares[i] * equation.C;
        }
        return new HeatPolynomial(a, b, c);
    }

    /// <summary>The density of water, g/mL.</summary>
    public static double OfWater(double celsius) => s_density[s_water].At(celsius) / 1000;

    public static HeatPolynomial OfWater(WaterHeat water) => HeatPolynomial.Of(water == WaterHeat.Ashrae ? s_ashraeWater : s_heat[s_water]);

    public static HeatPolynomial OfIce() => HeatPolynomial.Of(s_ice);

    /// <summary>The dissolved sugar of the model: what crystals are compared with.</summary>
    public static HeatPolynomial OfCarbohydrate() => HeatPolynomial.Of(s_heat[s_sucrose]);

    /// <summary>Grams of sucrose that a gram of water holds; above 100 °C as at 100, below 0 as at 0.</summary>
    public static double SucrosePerWater(double celsius)
    {
        double fraction = Solubility.Sucrose(Math.Clamp(celsius, Solubility.MinimumCelsius, Solubility.MaximumCelsius));
        return fraction / (1 - fraction);
    }

    /// <summary>The mass fraction of sucrose crystals at a temperature.</summary>
    public double Crystals(SugarState sugar, double celsius) => sugar switch
    {
        SugarState.Dissolved => 0,
        SugarState.Crystals => Sucrose,
        _ => Sucrose > 0 ? Math.Max(0, Sucrose - WaterPerGram * SucrosePerWater(celsius)) : 0,
    };

    /// <summary>
    /// The temperatures for which the model has equations: water must not freeze, and crystals are known from 0 to 100 °C.
    /// </summary>
    public (double Low, double High) Range(SugarState sugar) =>
        (WaterPerGram > 0 || Crystals(sugar, 0) > 0 ? 0 : MinimumCelsius, Crystals(sugar, MaximumCelsius) > 0 ? 100 : MaximumCelsius);

    /// <summary>kg/m³, and the conductivities along and across, W/(m·K).</summary>
    public (double Density, double Parallel, double Perpendicular) Volumes(double celsius)
    {
        double volume = 0, conducting = 0, resisting = 0;
        for (int i = 0; i < _shares.Length; i++)
        {
            if (_shares[i] == 0)
                continue;
            // Choi and Okos let a melted fat shrink too little; the two lines meet where the other begins.
            ThermalEquation density = i == s_fat && celsius > s_liquidFat.MinimumCelsius ? s_liquidFat : s_density[i];
            double part = _shares[i] / density.At(celsius), conductivity = s_conductivity[i].At(celsius);
            volume += part;
            conducting += part * conductivity;
            resisting += part / conductivity;
        }
        double parallel = conducting / volume;
        // The harmonic mean is never above the other; of one component alone rounding may make it so.
        return (1 / volume, parallel, Math.Min(parallel, volume / resisting));
    }

    private static int PlaceOf(Constituent constituent)
    {
        string component = Substance.Of(constituent).ThermalComponent;
        return Array.IndexOf(s_names, component) is >= 0 and int place ? place
            : throw new InvalidOperationException($"{Substance.FileName}: {constituent} counts as '{component}', which is no component.");
    }

    private static ThermalEquation[] Equations(ThermalQuantity quantity) =>
        [.. s_names.Select(name => ThermalEquation.Get(name, quantity))];
}
