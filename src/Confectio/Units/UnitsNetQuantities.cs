using System.Diagnostics.CodeAnalysis;
using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using UnitsNet;
using UnitsNet.Units;

namespace Confectio.Units;

/// <summary>
/// To and from the quantities of UnitsNet, for programs that use them. This is the only room that knows them: inside, a number has its
/// unit in its name, and no room inside knows this one.
/// </summary>
/// <remarks>
/// A quantity is given in the unit that is kept (g, mL, °C, cm, kPa, min, g/mL), and read from that unit as it stands, so that there and
/// back again nothing changes, to the last bit. From another unit UnitsNet's own factor is taken, by way of its base unit: every other
/// way of reading allocates. A quantity outside its range is refused under the name that says the unit, such as <c>centimetres</c>. Where
/// a member has a number of one unit and no quantity stands here, UnitsNet makes it: <c>Mass.FromGrams(formula.TotalGrams)</c>.
/// </remarks>
[SuppressMessage("Naming", "CA1708", Justification = "Extension blocks have no names that could be taken for one another.")]
public static partial class UnitsNetQuantities
{
    /// <summary>Amounts as quantities.</summary>
    /// <param name="amount">The amount.</param>
    extension(Amount amount)
    {
        /// <summary>The volume of an amount; of a range, the middle.</summary>
        /// <param name="system">Whose cups and spoons.</param>
        /// <exception cref="ArgumentException">The amount is not a volume, or the system lacks the unit.</exception>
        public Volume ToVolume(MeasuringSystem system) => Millilitres(amount.Millilitres(system));

        /// <summary>The mass of an amount; of a range, the middle.</summary>
        /// <param name="system">Whose ounce.</param>
        /// <exception cref="ArgumentException">The amount is not a mass.</exception>
        public Mass ToMass(MeasuringSystem system) => Grams(amount.Grams(system));
    }

    /// <summary>An uncertain number in the unit that its member names, as three quantities.</summary>
    /// <param name="spread">The number.</param>
    extension(Spread spread)
    {
        /// <summary>Low, likely and high as masses: <c>mass.Grams.In(MassUnit.Gram)</c>.</summary>
        /// <param name="unit">The unit of the number.</param>
        public (Mass Low, Mass Likely, Mass High) In(MassUnit unit) =>
            (new(spread.Low, unit), new(spread.Likely, unit), new(spread.High, unit));

        /// <summary>Low, likely and high as volumes: <c>volume.Millilitres.In(VolumeUnit.Milliliter)</c>.</summary>
        /// <param name="unit">The unit of the number.</param>
        public (Volume Low, Volume Likely, Volume High) In(VolumeUnit unit) =>
            (new(spread.Low, unit), new(spread.Likely, unit), new(spread.High, unit));

        /// <summary>Low, likely and high as densities: <c>density.GramsPerMillilitre.In(DensityUnit.GramPerMilliliter)</c>.</summary>
        /// <param name="unit">The unit of the number.</param>
        public (Density Low, Density Likely, Density High) In(DensityUnit unit) =>
            (new(spread.Low, unit), new(spread.Likely, unit), new(spread.High, unit));

        /// <summary>
        /// Low, likely and high as temperatures: <c>syrup.BoilingCelsius(pressure).In(TemperatureUnit.DegreeCelsius)</c>.
        /// </summary>
        /// <param name="unit">The unit of the number.</param>
        public (Temperature Low, Temperature Likely, Temperature High) In(TemperatureUnit unit) =>
            (new(spread.Low, unit), new(spread.Likely, unit), new(spread.High, unit));

        /// <summary>Low, likely and high as differences of temperature.</summary>
        /// <param name="unit">The unit of the number.</param>
        public (TemperatureDelta Low, TemperatureDelta Likely, TemperatureDelta High) In(TemperatureDeltaUnit unit) =>
            (new(spread.Low, unit), new(spread.Likely, unit), new(spread.High, unit));

        /// <summary>Low, likely and high as lengths.</summary>
        /// <param name="unit">The unit of the number.</param>
        public (Length Low, Length Likely, Length High) In(LengthUnit unit) =>
            (new(spread.Low, unit), new(spread.Likely, unit), new(spread.High, unit));

        /// <summary>Low, likely and high as durations: <c>set.DecimalReductionMinutes(60)?.In(DurationUnit.Minute)</c>.</summary>
        /// <param name="unit">The unit of the number.</param>
        public (Duration Low, Duration Likely, Duration High) In(DurationUnit unit) =>
            (new(spread.Low, unit), new(spread.Likely, unit), new(spread.High, unit));
    }

    /// <summary>Readings as quantities.</summary>
    /// <param name="reading">The reading.</param>
    extension(ThermometerReading reading)
    {
        /// <summary>When it was read, since the start of the log.</summary>
        public Duration Time => new(reading.Minutes, DurationUnit.Minute);

        /// <summary>What the thermometer showed.</summary>
        public Temperature Temperature => Celsius(reading.Celsius);

        /// <summary>A reading.</summary>
        /// <param name="time">The time since any start, from −1e6 to 1e6 min.</param>
        /// <param name="temperature">The temperature, from −60 to 220 °C.</param>
        /// <exception cref="ArgumentOutOfRangeException">A quantity is outside its range.</exception>
        public static ThermometerReading Of(Duration time, Temperature temperature) =>
            new() { Minutes = Minutes(time), Celsius = Celsius(temperature) };
    }

    /// <summary>Conversions of quantities.</summary>
    /// <param name="conversion">The conversion.</param>
    extension(Conversion conversion)
    {
        /// <summary>The mass of a volume.</summary>
        /// <param name="volume">The volume, from 0 to 1e12 mL.</param>
        /// <exception cref="ArgumentOutOfRangeException">The volume is outside its range.</exception>
        public ConvertedMass ToMass(Volume volume) => Guard.NotNull(conversion).ToMass(Millilitres(volume));

        /// <summary>The volume of a mass.</summary>
        /// <param name="mass">The mass, from 0 to 1e12 g.</param>
        /// <exception cref="ArgumentOutOfRangeException">The mass is outside its range.</exception>
        public ConvertedVolume ToVolume(Mass mass) => Guard.NotNull(conversion).ToVolume(Grams(mass));
    }

    /// <summary>A converted mass as a quantity.</summary>
    /// <param name="mass">The mass.</param>
    extension(ConvertedMass mass)
    {
        /// <summary>The likely mass; for its ends, <c>mass.Grams.In(MassUnit.Gram)</c>.</summary>
        public Mass ToMass() => Grams(mass.Grams.Likely);
    }

    /// <summary>A converted volume as a quantity.</summary>
    /// <param name="volume">The volume.</param>
    extension(ConvertedVolume volume)
    {
        /// <summary>The likely volume; for its ends, <c>volume.Millilitres.In(VolumeUnit.Milliliter)</c>.</summary>
        public Volume ToVolume() => Millilitres(volume.Millilitres.Likely);
    }

    /// <summary>A density as a quantity.</summary>
    /// <param name="density">The density.</param>
    extension(BulkDensity density)
    {
        /// <summary>The likely density.</summary>
        public Density ToDensity() => GramsPerMillilitre(Guard.NotNull(density).GramsPerMillilitre.Likely);
    }

    /// <summary>Lines of a mass.</summary>
    extension(FormulaLine)
    {
        /// <summary>A line of an ingredient and its mass.</summary>
        /// <param name="ingredient">The ingredient.</param>
        /// <param name="mass">The mass, from 0 to 1e12 g.</param>
        /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
        /// <exception cref="ArgumentOutOfRangeException">The mass is outside its range.</exception>
        public static FormulaLine Of(Ingredient ingredient, Mass mass) => FormulaLine.Of(ingredient, Grams(mass));
    }

    /// <summary>Formulas of a mass.</summary>
    /// <param name="formula">The formula.</param>
    extension(Formula formula)
    {
        /// <summary>What it makes, after what boils off.</summary>
        public Mass ToMass() => Grams(Guard.NotNull(formula).TotalGrams);

        /// <summary>The formula scaled to a total, after what boils off.</summary>
        /// <param name="mass">The total, above 0 to 1e12 g.</param>
        /// <exception cref="ArgumentOutOfRangeException">The mass is outside its range, or a line would be above 1e12 g.</exception>
        public Formula ScaleToMass(Mass mass) => Guard.NotNull(formula).ScaleToMass(Grams(mass));
    }

    private static Mass Grams(double grams) => new(grams, MassUnit.Gram);

    private static double Grams(Mass mass) => mass.Unit == MassUnit.Gram ? mass.Value : 1e3 * mass.Kilograms;

    private static Volume Millilitres(double millilitres) => new(millilitres, VolumeUnit.Milliliter);

    private static double Millilitres(Volume volume) => volume.Unit == VolumeUnit.Milliliter ? volume.Value : 1e6 * volume.CubicMeters;

    private static Density GramsPerMillilitre(double density) => new(density, DensityUnit.GramPerMilliliter);

    private static double GramsPerMillilitre(Density density) =>
        density.Unit == DensityUnit.GramPerMilliliter ? density.Value : density.KilogramsPerCubicMeter / 1e3;

    private static Temperature Celsius(double celsius) => new(celsius, TemperatureUnit.DegreeCelsius);

    // 240 °F by way of kelvins is a few last digits off what everybody works out.
    private static double Celsius(Temperature temperature) => temperature.Unit switch
    {
        TemperatureUnit.DegreeCelsius => temperature.Value,
        TemperatureUnit.DegreeFahrenheit => (temperature.Value - 32) / 1.8,
        _ => temperature.Kelvins - 273.15,
    };

    private static double Minutes(Duration duration) => duration.Unit == DurationUnit.Minute ? duration.Value : duration.Seconds / 60;
}
