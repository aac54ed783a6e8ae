using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Sugars;

namespace Confectio.Heat;

/// <summary>
/// One thing that goes into a mix with its mass and temperature: an ingredient, a formula that was mixed before, ice, or the bowl.
/// </summary>
/// <remarks>
/// Its heat content is ∫c dt by <see cref="ThermalProperties"/>, less L·S/100 for the fat that is solid (<see cref="SolidFatCurve"/>), less
/// the heat that its sucrose crystals would take up to dissolve. Fat whose melting is not known counts as liquid throughout, and
/// <see cref="FatsWithoutCurve"/> says so. A content depends on nothing but the temperature, so that no heat is lost on the way.
/// </remarks>
public abstract class HeatLine
{
    private protected const double MostGrams = 1e12;

    // What heats of dissolving are given for.
    private const double DissolvingCelsius = 25;

    private static readonly HeatPolynomial s_carbohydrate = ThermalMatter.OfCarbohydrate();

    // Closed: an ingredient or a formula, ice, and a body of one specific heat, each in its own file.
    private protected HeatLine(string name, double grams, double celsius, (double Low, double High) range)
    {
        Name = name;
        Grams = grams;
        MinimumCelsius = range.Low;
        MaximumCelsius = range.High;
        Celsius = Guard.InRange(celsius, range.Low, range.High);
    }

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>The mass, g.</summary>
    public double Grams { get; }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>The lowest temperature the model has for it, °C: −40, and 0 where there is water or crystalline sugar.</summary>
    public double MinimumCelsius { get; }

    /// <summary>The highest temperature the model has for it, °C: 150, 100 where there is crystalline sugar, and 0 for ice.</summary>
    public double MaximumCelsius { get; }

    /// <summary>Its sucrose crystals, g.</summary>
    public virtual double CrystalGrams => 0;

    /// <summary>What has fat in it whose melting is not known: that fat counts as liquid.</summary>
    public virtual IReadOnlyList<string> FatsWithoutCurve => [];

    /// <summary>Whether it melts in the mix, and takes a step of its content to do so.</summary>
    internal virtual bool IsIce => false;

    internal virtual bool HasSpreadOfVessel => false;

    internal virtual bool Melts => false;

    internal virtual double WaterKilograms => 0;

    internal virtual double SucroseKilograms => 0;

    /// <summary>About its heat capacity, kJ/K.</summary>
    internal abstract double Capacity { get; }

    /// <summary>An ingredient.</summary>
    /// <param name="ingredient">
    /// The ingredient. Its milk fat melts as <see cref="SolidFatCurve.MilkFat"/>, its other fat as that of its kind does.
    /// </param>
    /// <param name="grams">Its mass, g, from 0 to 1e12.</param>
    /// <param name="sugar">How much of its sucrose is crystals.</param>
    /// <returns>
    /// It, before its temperature is said: <c>HeatLine.Of(butter, 250).At(18)</c>. From −40 to 150 °C; with water from 0; with sucrose
    /// crystals from 0 to 100.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static HeatMass Of(Ingredient ingredient, double grams, SugarState sugar = SugarState.AsItsWaterHolds)
    {
        Guard.NotNull(ingredient);
        Guard.InRange(grams, 0, MostGrams);
        Guard.Defined(sugar);
        return new HeatMass(ingredient.Name, grams, celsius => HeatMatterLine.Make(ingredient, grams, celsius, sugar));
    }

    /// <summary>A formula that was mixed before: all of it, after what boils off.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="sugar">
    /// How much of its sucrose is crystals. A syrup that boils above 100 °C is <see cref="SugarState.Dissolved"/>.
    /// </param>
    /// <returns>
    /// It, before its temperature is said. From −40 to 150 °C; with water from 0; with sucrose crystals from 0 to 100.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="sugar"/> is not a defined value.</exception>
    public static HeatMass Of(Formula formula, SugarState sugar = SugarState.AsItsWaterHolds)
    {
        Guard.NotNull(formula);
        Guard.Defined(sugar);
        return new HeatMass(formula.Name.Length > 0 ? formula.Name : "formula", formula.TotalGrams,
            celsius => HeatMatterLine.Make(formula, celsius, sugar));
    }

    /// <summary>Ice. In the mix it melts; a mix that is too cold for that has no final temperature.</summary>
    /// <param name="grams">Its mass, g, from 0 to 1e12.</param>
    /// <returns>It, before its temperature is said: from −40 to 0 °C.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public static HeatMass Ice(double grams)
    {
        Guard.InRange(grams, 0, MostGrams);
        return new HeatMass("ice", grams, celsius => new HeatIceLine(grams, celsius));
    }

    /// <summary>A bowl or a pot that takes on the temperature of the mix.</summary>
    /// <param name="material">What it is made of.</param>
    /// <param name="grams">Its mass, g, from 0 to 1e12. Of a large pot count only what touches the mix.</param>
    /// <returns>It, before its temperature is said: <c>HeatLine.Bowl(VesselMaterial.Glass, 800).At(21)</c>, from −40 to 150 °C.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="material"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public static HeatMass Bowl(VesselMaterial material, double grams)
    {
        Guard.NotNull(material);
        Guard.InRange(grams, 0, MostGrams);
        return Body("bowl of " + material.Key, material, grams);
    }

    /// <summary>Any other body that takes on the temperature of the mix: a tin, a slab, a whisk.</summary>
    /// <param name="name">What it is called, such as <c>marble slab</c>.</param>
    /// <param name="material">What it is made of.</param>
    /// <param name="grams">Its mass, g, from 0 to 1e12. Count only what touches the mix.</param>
    /// <returns>
    /// It, before its temperature is said, from −40 to 150 °C. Worked number:
    /// <c>HeatLine.Body("tin", VesselMaterial.StainlessSteel, 300).At(20)</c> reads 300 g tin at 20 °C, and counts as a bowl of that mass.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public static HeatMass Body(string name, VesselMaterial material, double grams)
    {
        if (string.IsNullOrWhiteSpace(Guard.NotNull(name)))
            throw new ArgumentException($"{nameof(name)} is blank; a body has a name.", nameof(name));
        string called = name.Trim();
        Guard.NotNull(material);
        Guard.InRange(grams, 0, MostGrams);
        return new HeatMass(called, grams, celsius => new HeatBodyLine(called, material, grams, celsius));
    }

    /// <summary>The same at another temperature.</summary>
    /// <param name="celsius">The temperature, °C, from <see cref="MinimumCelsius"/> to <see cref="MaximumCelsius"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public abstract HeatLine At(double celsius);

    /// <summary>
    /// The same with all its fat melting by another curve: butter of winter, a shortening of your own. What has no fat stays as it is.
    /// </summary>
    /// <param name="curve">The curve.</param>
    /// <exception cref="ArgumentNullException"><paramref name="curve"/> is null.</exception>
    public virtual HeatLine WithFat(SolidFatCurve curve)
    {
        Guard.NotNull(curve);
        return this;
    }

    /// <summary>The heat it takes up on the way to another temperature. Its sugar stays as it is.</summary>
    /// <param name="celsius">The temperature, °C, from <see cref="MinimumCelsius"/> to <see cref="MaximumCelsius"/>.</param>
    /// <param name="water">Which printed constant water has.</param>
    /// <returns>
    /// kJ; below 0 where it gives heat: by its specific heat, and by the melting of its fat. Worked number: 1000 g of unsalted butter from
    /// 5 to 25 °C: 47.9 and 29.5.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public (double SensibleKilojoules, double MeltingKilojoules) HeatTo(double celsius, WaterHeat water = WaterHeat.ChoiOkos)
    {
        Guard.InRange(celsius, MinimumCelsius, MaximumCelsius);
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
        // The specific heat of the crystals is a straight line, so its mean is that of the middle, which is below 100 °C whatever the end
        // is.
        return (celsius - DissolvingCelsius) * CrystallineSucrose.SpecificHeat((celsius + DissolvingCelsius) / 2)
            - (s_carbohydrate.FromZero(celsius) - s_carbohydrate.FromZero(DissolvingCelsius)) - Side(heat, side);
    }

    /// <summary>The heat content at its own temperature, kJ, against water and dissolved sugar and liquid fat at 0 °C.</summary>
    internal virtual double Content(in HeatChoices choices) => Sensible(Celsius, choices) - Solid(Celsius, choices);

    /// <summary>The heat content in the mix at a temperature, kJ, as if all its sugar were dissolved and its ice molten.</summary>
    internal virtual double ContentMixed(double celsius, in HeatChoices choices) => Sensible(celsius, choices) - Solid(celsius, choices);

    /// <summary>∫c dt from 0 °C, kJ.</summary>
    private protected abstract double Sensible(double celsius, in HeatChoices choices);

    /// <summary>What its solid fat has less than liquid, kJ.</summary>
    private protected virtual double Solid(double celsius, in HeatChoices choices) => 0;

    private protected static double Side(Spread spread, int side) => side < 0 ? spread.Low : side > 0 ? spread.High : spread.Likely;
}
