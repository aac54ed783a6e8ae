using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sugars;

namespace Confectio.Heat;

/// <summary>
/// Specific heat, density, conductivity and diffusivity of a food without air by what it is made of: Choi and Okos (1986) as in ASHRAE
/// Refrigeration (2006).
/// </summary>
/// <remarks>
/// c = Σ x·cᵢ; 1/ρ = Σ x/ρᵢ; with the volume fractions v, k = Σ v·kᵢ along layers and 1/k = Σ v/kᵢ across them. The mass fractions x are
/// brought to a sum of 1. Every carbohydrate, polyol, acid and what a source leaves over counts as carbohydrate; salt and other minerals as
/// ash. Alcohol and glycerol are no components of Choi and Okos: each is a component of its own with constants from memory, because water
/// or carbohydrate would be off by half; the heat of mixing it with water is left out. From −40 to 150 °C; with water in it from 0 °C, for
/// nothing here freezes; with sucrose crystals in it from 0 to 100 °C, for those have a specific heat of their own. Density and conductivity take crystals as carbohydrate. Above 20 °C fat has a steeper line than
/// theirs, an estimate: theirs puts melted palm oil 1.1 to 1.8 % above the Codex standard, this up to 0.8 %. Fat counts as liquid: what it
/// takes up in melting stands apart, at <see cref="SolidFatCurve"/>. A foam conducts less and weighs less than is said here.
/// </remarks>
public sealed class ThermalProperties
{
    private ThermalProperties(ThermalMatter matter, double celsius, WaterHeat water, SugarState sugar)
    {
        Celsius = celsius;
        double crystals = matter.Crystals(sugar, celsius);
        SpecificHeat = matter.SpecificHeat(water).At(celsius);
        if (crystals > 0)
            SpecificHeat += crystals * (CrystallineSucrose.SpecificHeat(celsius) - ThermalMatter.OfCarbohydrate().At(celsius));
        (double density, ConductivityParallel, ConductivityPerpendicular) = matter.Volumes(celsius);
        GramsPerMillilitre = density / 1000;
    }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>The specific heat, kJ/(kg·K), without what fat takes up in melting.</summary>
    public double SpecificHeat { get; }

    /// <summary>The density without air, g/mL.</summary>
    public double GramsPerMillilitre { get; }

    /// <summary>The conductivity along layers of the components, W/(m·K): the most it can be.</summary>
    public double ConductivityParallel { get; }

    /// <summary>The conductivity across layers of the components, W/(m·K): the least it can be.</summary>
    public double ConductivityPerpendicular { get; }

    /// <summary>The diffusivity k/(ρ·c) along layers, mm²/s.</summary>
    public double DiffusivityParallel => ConductivityParallel / (GramsPerMillilitre * SpecificHeat);

    /// <summary>The diffusivity k/(ρ·c) across layers, mm²/s.</summary>
    public double DiffusivityPerpendicular => ConductivityPerpendicular / (GramsPerMillilitre * SpecificHeat);

    /// <summary>The properties of a composition.</summary>
    /// <param name="composition">The composition.</param>
    /// <param name="celsius">The temperature, °C, from −40 to 150; with water from 0; with sucrose crystals from 0 to 100.</param>
    /// <param name="water">Which printed constant water has.</param>
    /// <param name="sugar">How much of the sucrose is crystals.</param>
    /// <exception cref="ArgumentNullException"><paramref name="composition"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ThermalProperties Of(Composition composition, double celsius, WaterHeat water = WaterHeat.ChoiOkos,
        SugarState sugar = SugarState.AsItsWaterHolds) =>
        Of(ThermalMatter.Of(Guard.NotNull(composition)), celsius, water, sugar);

    /// <summary>The properties of an ingredient.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="celsius">The temperature, °C, from −40 to 150; with water from 0; with sucrose crystals from 0 to 100.</param>
    /// <param name="water">Which printed constant water has.</param>
    /// <param name="sugar">How much of the sucrose is crystals.</param>
    /// <returns>The properties. Worked number: heavy cream at 20 °C has 3.246 kJ/(kg·K) and 0.982 g/mL.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ThermalProperties Of(Ingredient ingredient, double celsius, WaterHeat water = WaterHeat.ChoiOkos,
        SugarState sugar = SugarState.AsItsWaterHolds) =>
        Of(ThermalMatter.Of(Guard.NotNull(ingredient).Composition), celsius, water, sugar);

    /// <summary>The properties of a formula, after what boils off.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="celsius">The temperature, °C, from −40 to 150; with water from 0; with sucrose crystals from 0 to 100.</param>
    /// <param name="water">Which printed constant water has.</param>
    /// <param name="sugar">How much of the sucrose is crystals.</param>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ThermalProperties Of(Formula formula, double celsius, WaterHeat water = WaterHeat.ChoiOkos,
        SugarState sugar = SugarState.AsItsWaterHolds) =>
        Of(ThermalMatter.Of(Guard.NotNull(formula)), celsius, water, sugar);

    /// <summary>One line, such as <c>3.246 kJ/(kg·K), 0.982 g/mL, 0.297 to 0.421 W/(m·K) at 20 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{SpecificHeat:0.000} kJ/(kg·K), {GramsPerMillilitre:0.000} g/mL, {ConductivityPerpendicular:0.000} to "
            + $"{ConductivityParallel:0.000} W/(m·K) at {Celsius:0.#} °C");

    private static ThermalProperties Of(ThermalMatter matter, double celsius, WaterHeat water, SugarState sugar)
    {
        (double low, double high) = matter.Range(Guard.Defined(sugar));
        return new ThermalProperties(matter, Guard.InRange(celsius, low, high), Guard.Defined(water), sugar);
    }
}
