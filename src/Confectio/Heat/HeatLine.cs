using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Sugars;

namespace Confectio.Heat;

/// <summary>One thing that goes into a mix with its mass and temperature: an ingredient, a formula that was mixed before, ice, or the bowl.</summary>
/// <remarks>
/// Its heat content is ∫c dt by <see cref="ThermalProperties"/>, less L·S/100 for the fat that is solid (<see cref="SolidFatCurve"/>), less the heat that its sucrose
/// crystals would take up to dissolve. Fat whose melting is not known counts as liquid throughout, and <see cref="FatsWithoutCurve"/> says so.
/// A content depends on nothing but the temperature, so that no heat is lost on the way.
/// </remarks>
public sealed class HeatLine
{
    private const double MostGrams = 1e12;

    // What heats of dissolving are given for.
    private const double DissolvingCelsius = 25;

    private static readonly HeatPolynomial s_carbohydrate = ThermalMatter.OfCarbohydrate(), s_ice = ThermalMatter.OfIce();

    private readonly ThermalMatter? _matter; // of a food
    private readonly HeatPolynomial[] _heats; // by WaterHeat, of a food
    private readonly MeltingFat[] _fats;
    private readonly Spread _bodyHeat; // of a body

    private HeatLine(string name, double grams, double celsius, (double Low, double High) range, ThermalMatter? matter, MeltingFat[] fats, SugarState sugar, Spread bodyHeat, bool isIce)
    {
        Name = name;
        Grams = grams;
        LowestCelsius = range.Low;
        HighestCelsius = range.High;
        Celsius = Guard.InRange(celsius, range.Low, range.High);
        _matter = matter;
        _heats = matter is null ? [] : [matter.SpecificHeat(WaterHeat.ChoiOkos), matter.SpecificHeat(WaterHeat.Ashrae)];
        _fats = fats;
        Sugar = sugar;
        _bodyHeat = bodyHeat;
        IsIce = isIce;
    }

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>The mass, g.</summary>
    public double Grams { get; }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>The lowest temperature the model has for it, °C: −40, and 0 where there is water or crystalline sugar.</summary>
    public double LowestCelsius { get; }

    /// <summary>The highest temperature the model has for it, °C: 150, 100 where there is crystalline sugar, and 0 for ice.</summary>
    public double HighestCelsius { get; }

    /// <summary>How much of its sucrose is crystals.</summary>
    public SugarState Sugar { get; }

    /// <summary>Its sucrose crystals, g.</summary>
    public double CrystalGrams => Grams * (_matter?.Crystals(Sugar, Celsius) ?? 0);

    /// <summary>What has fat in it whose melting is not known: that fat counts as liquid.</summary>
    public IReadOnlyList<string> FatsWithoutCurve => [.. _fats.Where(fat => fat.Curve is null).Select(fat => fat.Name).Distinct(StringComparer.Ordinal)];

    internal bool IsIce { get; }

    internal bool HasSpreadOfVessel => _bodyHeat.High > _bodyHeat.Low;

    internal bool Melts => Array.Exists(_fats, fat => fat.Curve is not null);

    internal double WaterKilograms => Grams / 1000 * (IsIce ? 1 : _matter?.WaterPerGram ?? 0);

    internal double SucroseKilograms => Grams / 1000 * (_matter?.Sucrose ?? 0);

    /// <summary>An ingredient.</summary>
    /// <param name="ingredient">The ingredient. Its milk fat melts as <see cref="SolidFatCurve.MilkFat"/>, its other fat as <see cref="IngredientFat"/> says.</param>
    /// <param name="grams">Its mass, g, from 0 to 1e12.</param>
    /// <param name="celsius">Its temperature, °C, from −40 to 150; with water from 0; with sucrose crystals from 0 to 100.</param>
    /// <param name="sugar">How much of its sucrose is crystals.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static HeatLine Of(Ingredient ingredient, double grams, double celsius, SugarState sugar = SugarState.AsItsWaterHolds)
    {
        ThermalMatter matter = ThermalMatter.Of(Guard.NotNull(ingredient).Composition);
        Guard.InRange(grams, 0, MostGrams);
        List<MeltingFat> fats = [];
        AddFats(fats, ingredient, 1 / ingredient.Composition.Sum);
        return new HeatLine(ingredient.Name, grams, celsius, matter.Range(Guard.Defined(sugar)), matter, [.. fats], sugar, default, isIce: false);
    }

    /// <summary>A formula that was mixed before: all of it, after what boils off.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="celsius">Its temperature, °C, from −40 to 150; with water from 0; with sucrose crystals from 0 to 100.</param>
    /// <param name="sugar">How much of its sucrose is crystals. A syrup that boils above 100 °C is <see cref="SugarState.Dissolved"/>.</param>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static HeatLine Of(Formula formula, double celsius, SugarState sugar = SugarState.AsItsWaterHolds)
    {
        ThermalMatter matter = ThermalMatter.Of(Guard.NotNull(formula));
        List<MeltingFat> fats = [];
        double constituents = formula.Lines.Sum(line => line.Grams * line.Ingredient.Composition.Sum) - formula.BoiledOffGrams;
        foreach (FormulaLine line in formula.Lines)
            AddFats(fats, line.Ingredient, line.Grams / constituents);
        return new HeatLine(formula.Name.Length > 0 ? formula.Name : "formula", formula.TotalGrams, celsius, matter.Range(Guard.Defined(sugar)), matter, [.. fats], sugar, default, isIce: false);
    }

    /// <summary>Ice. In the mix it melts; a mix that is too cold for that has no landing temperature.</summary>
    /// <param name="grams">Its mass, g, from 0 to 1e12.</param>
    /// <param name="celsius">Its temperature, °C, from −40 to 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static HeatLine Ice(double grams, double celsius) =>
        new("ice", Guard.InRange(grams, 0, MostGrams), celsius, (ThermalMatter.LowestCelsius, 0), null, [], SugarState.Dissolved, default, isIce: true);

    /// <summary>A bowl or a pot that takes on the temperature of the mix.</summary>
    /// <param name="material">What it is made of.</param>
    /// <param name="grams">Its mass, g, from 0 to 1e12. Of a large pot count only what touches the mix.</param>
    /// <param name="celsius">Its temperature, °C, from −40 to 150.</param>
    /// <exception cref="ArgumentNullException"><paramref name="material"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static HeatLine Bowl(VesselMaterial material, double grams, double celsius) =>
        Body("bowl of " + Guard.NotNull(material).Key, Guard.InRange(grams, 0, MostGrams), material.SpecificHeat, celsius);

    /// <summary>A bowl, or anything else with one specific heat at all temperatures.</summary>
    /// <param name="grams">Its mass, g, from 0 to 1e12.</param>
    /// <param name="specificHeat">Its specific heat, kJ/(kg·K), above 0 to 20.</param>
    /// <param name="celsius">Its temperature, °C, from −40 to 150.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static HeatLine Bowl(double grams, double specificHeat, double celsius)
    {
        Guard.InRange(grams, 0, MostGrams);
        Guard.InRange(specificHeat, Guard.Trace, 20);
        return Body("bowl", grams, Spread.Exactly(specificHeat), celsius);
    }

    /// <summary>The same at another temperature.</summary>
    /// <param name="celsius">The temperature, °C, from <see cref="LowestCelsius"/> to <see cref="HighestCelsius"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public HeatLine At(double celsius) => new(Name, Grams, celsius, (LowestCelsius, HighestCelsius), _matter, _fats, Sugar, _bodyHeat, IsIce);

    /// <summary>The same with all its fat melting by another curve: butter of winter, a shortening of your own.</summary>
    /// <param name="curve">The curve.</param>
    /// <exception cref="ArgumentNullException"><paramref name="curve"/> is null.</exception>
    public HeatLine WithFat(SolidFatCurve curve)
    {
        Guard.NotNull(curve);
        MeltingFat[] fats = _matter is { FatPerGram: > 0 } ? [new MeltingFat(Name, curve, _matter.FatPerGram)] : _fats;
        return new HeatLine(Name, Grams, Celsius, (LowestCelsius, HighestCelsius), _matter, fats, Sugar, _bodyHeat, IsIce);
    }

    /// <summary>The heat it takes up on the way to another temperature. Its sugar stays as it is.</summary>
    /// <param name="celsius">The temperature, °C, from <see cref="LowestCelsius"/> to <see cref="HighestCelsius"/>.</param>
    /// <param name="water">Which printed constant water has.</param>
    /// <returns>
    /// kJ; below 0 where it gives heat: by its specific heat, and by the melting of its fat. Worked number: 1000 g of unsalted butter from 5 to 25 °C:
    /// 47.9 and 29.5.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public (double SensibleKilojoules, double MeltingKilojoules) HeatTo(double celsius, WaterHeat water = WaterHeat.ChoiOkos)
    {
        Guard.InRange(celsius, LowestCelsius, HighestCelsius);
        HeatChoices choices = new(Guard.Defined(water), SugarDissolves.None);
        double sensible = Sensible(celsius, choices) - Sensible(Celsius, choices), crystals = CrystalGrams / 1000;
        if (crystals > 0)
            sensible += crystals * (CrystalContent(celsius, 0) - CrystalContent(Celsius, 0));
        return (sensible, Solid(Celsius, choices) - Solid(celsius, choices));
    }

    /// <summary>The mass, the name and the temperature, such as <c>250 g unsalted butter at 18 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Grams:0.##} g {Name} at {Celsius:0.##} °C");

    /// <summary>What a kilogram of sucrose crystals has less than if it were dissolved, kJ/kg, below 0.</summary>
    internal static double CrystalContent(double celsius, int side)
    {
        Spread heat = HeatFigure.DissolvingOfSucrose.Value;
        // The specific heat of the crystals is a straight line, so its mean is that of the middle, which is below 100 °C whatever the end is.
        return (celsius - DissolvingCelsius) * CrystallineSucrose.SpecificHeat((celsius + DissolvingCelsius) / 2)
            - (s_carbohydrate.FromZero(celsius) - s_carbohydrate.FromZero(DissolvingCelsius)) - Side(heat, side);
    }

    /// <summary>The heat content at its own temperature, kJ, against water and dissolved sugar and liquid fat at 0 °C.</summary>
    internal double Content(in HeatChoices choices)
    {
        if (IsIce)
            return Grams / 1000 * (s_ice.FromZero(Celsius) - HeatFigure.MeltingOfIce.Value.Likely);
        double crystals = CrystalGrams / 1000, content = Sensible(Celsius, choices) - Solid(Celsius, choices);
        return crystals > 0 ? content + crystals * CrystalContent(Celsius, choices.DissolvingSide) : content;
    }

    /// <summary>The heat content in the mix at a temperature, kJ, as if all its sugar were dissolved and its ice molten.</summary>
    internal double ContentMixed(double celsius, in HeatChoices choices) => IsIce
        ? Grams / 1000 * ThermalMatter.OfWater(choices.Water).FromZero(celsius)
        : Sensible(celsius, choices) - Solid(celsius, choices);

    /// <summary>About its heat capacity, kJ/K.</summary>
    internal double Capacity => Grams / 1000 * (IsIce ? ThermalMatter.OfWater(WaterHeat.ChoiOkos).At(20) : _matter is null ? _bodyHeat.Likely : _heats[0].At(20));

    private static double Side(Spread spread, int side) => side < 0 ? spread.Low : side > 0 ? spread.High : spread.Likely;

    private static HeatLine Body(string name, double grams, Spread specificHeat, double celsius) =>
        new(name, grams, celsius, (ThermalMatter.LowestCelsius, ThermalMatter.HighestCelsius), null, [], SugarState.Dissolved, specificHeat, isIce: false);

    private static void AddFats(List<MeltingFat> fats, Ingredient ingredient, double share)
    {
        Composition composition = ingredient.Composition;
        double milkFat = composition.MilkFat, other = composition[Constituent.Fat] - milkFat;
        if (milkFat > 0)
            fats.Add(new MeltingFat(ingredient.Name, SolidFatCurve.MilkFat, milkFat * share));
        if (other > 0)
            fats.Add(new MeltingFat(ingredient.Name, IngredientFat.TryGet(ingredient, out IngredientFat? fat) ? fat.Curve : null, other * share));
    }

    private double Sensible(double celsius, in HeatChoices choices) => Grams / 1000
        * (IsIce ? s_ice.FromZero(celsius) : _matter is null ? Side(_bodyHeat, choices.VesselSide) * celsius : _heats[(int)choices.Water].FromZero(celsius));

    // What its solid fat has less than liquid, kJ.
    private double Solid(double celsius, in HeatChoices choices)
    {
        double sum = 0;
        foreach (MeltingFat fat in _fats)
        {
            if (fat.Curve is SolidFatCurve curve)
                sum += fat.PerGram * Side(curve.LatentHeat, choices.LatentSide) * curve.SolidFraction(celsius, choices.SolidSide);
        }
        return Grams / 1000 * sum;
    }

    // A fat in the line, by whose it is; no curve where its melting is not known.
    private readonly record struct MeltingFat(string Name, SolidFatCurve? Curve, double PerGram);
}
