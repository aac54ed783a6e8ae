using Confectio.Cakes;
using Confectio.Cooking;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Sugars;
using UnitsNet;
using UnitsNet.Units;

namespace Confectio.Units;

// What is cooked, baked and iced.
public static partial class UnitsNetQuantities
{
    /// <summary>Kitchens at a place.</summary>
    /// <param name="kitchen">The kitchen.</param>
    extension(Kitchen kitchen)
    {
        /// <summary>The kitchen at an altitude, in the standard atmosphere.</summary>
        /// <param name="altitude">The altitude, from −500 to 9000 m.</param>
        /// <exception cref="ArgumentOutOfRangeException">The altitude is outside its range.</exception>
        public Kitchen AtAltitude(Length altitude) => Guard.NotNull(kitchen).At(AirPressure.FromAltitude(altitude));

        /// <summary>The kitchen under a pressure.</summary>
        /// <param name="pressure">The pressure there, not reduced to sea level, from 1 to 200 kPa.</param>
        /// <exception cref="ArgumentOutOfRangeException">The pressure is outside its range.</exception>
        public Kitchen At(Pressure pressure) => Guard.NotNull(kitchen).At(AirPressure.From(pressure));
    }

    /// <summary>Pressures of the air as quantities.</summary>
    /// <param name="pressure">The pressure.</param>
    extension(AirPressure pressure)
    {
        /// <summary>A pressure.</summary>
        /// <param name="quantity">The pressure, from 1 to 200 kPa.</param>
        /// <exception cref="ArgumentOutOfRangeException">The pressure is outside its range.</exception>
        public static AirPressure From(Pressure quantity) => quantity.Unit switch
        {
            PressureUnit.Kilopascal => AirPressure.FromKilopascals(quantity.Value),
            PressureUnit.Hectopascal => AirPressure.FromHectopascals(quantity.Value),
            _ => AirPressure.FromKilopascals(quantity.Pascals / 1e3),
        };

        /// <summary>The pressure of the standard atmosphere at an altitude.</summary>
        /// <param name="altitude">The altitude, from −500 to 9000 m.</param>
        /// <exception cref="ArgumentOutOfRangeException">The altitude is outside its range.</exception>
        public static AirPressure FromAltitude(Length altitude) => altitude.Unit == LengthUnit.Foot
            ? AirPressure.FromAltitudeFeet(altitude.Value) : AirPressure.FromAltitudeMetres(altitude.Meters);

        /// <summary>The pressure.</summary>
        public Pressure ToPressure() => new(pressure.Kilopascals, PressureUnit.Kilopascal);

        /// <summary>The altitude that has it in the standard atmosphere.</summary>
        public Length ToAltitude() => new(pressure.StandardAltitudeMetres, LengthUnit.Meter);

        /// <summary>Where water boils.</summary>
        public Temperature ToBoilingPointOfWater() => Celsius(pressure.WaterBoilsCelsius);
    }

    /// <summary>Strengths from densities.</summary>
    /// <param name="strength">The strength.</param>
    extension(Brix strength)
    {
        /// <summary>A strength from a density.</summary>
        /// <param name="density">The density in vacuum, from that of water to that of 100 % at the temperature.</param>
        /// <param name="temperature">The temperature, from 0 to 100 °C.</param>
        /// <returns>The strength. Worked number: 1.28661 g/mL at 20 °C gives 60.00.</returns>
        /// <exception cref="ArgumentOutOfRangeException">A quantity is outside its range.</exception>
        public static Brix FromDensity(Density density, Temperature temperature) =>
            Brix.FromGramsPerMillilitre(GramsPerMillilitre(density), Celsius(temperature));

        /// <summary>The density of a sucrose solution of this strength.</summary>
        /// <param name="temperature">The temperature, from 0 to 100 °C.</param>
        /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
        public Density ToDensity(Temperature temperature) => GramsPerMillilitre(strength.GramsPerMillilitre(Celsius(temperature)));
    }

    /// <summary>Solutions in quantities.</summary>
    /// <param name="solution">The solution.</param>
    extension(SugarSolution solution)
    {
        /// <summary>
        /// Where it boils, likely; for the ends, <c>solution.BoilingCelsius(pressure).In(TemperatureUnit.DegreeCelsius)</c>.
        /// </summary>
        /// <param name="pressure">The pressure of the air.</param>
        /// <exception cref="ArgumentException">The solution boils nowhere in the model.</exception>
        public Temperature ToBoilingPoint(AirPressure pressure) => Celsius(Guard.NotNull(solution).BoilingCelsius(pressure).Likely);

        /// <summary>How far above water it boils, by the default model.</summary>
        /// <param name="pressure">The pressure of the air.</param>
        /// <exception cref="ArgumentException">The solution boils nowhere in the model.</exception>
        public TemperatureDelta ToBoilingPointElevation(AirPressure pressure) =>
            new(Guard.NotNull(solution).BoilingPointElevation(pressure), TemperatureDeltaUnit.Kelvin);

        /// <summary>Its density.</summary>
        /// <param name="temperature">The temperature, in the range of <see cref="SugarSolution.GramsPerMillilitre"/>.</param>
        /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
        public Density ToDensity(Temperature temperature) =>
            GramsPerMillilitre(Guard.NotNull(solution).GramsPerMillilitre(Celsius(temperature)));
    }

    /// <summary>Pots in quantities.</summary>
    /// <param name="pot">The pot.</param>
    extension(SyrupPot pot)
    {
        /// <summary>Cooks the pot to a temperature.</summary>
        /// <param name="temperature">The temperature at which it boils in the end.</param>
        /// <param name="pressure">The pressure of the air.</param>
        /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
        public PotEnd CookTo(Temperature temperature, AirPressure pressure) => Guard.NotNull(pot).CookTo(Celsius(temperature), pressure);
    }

    /// <summary>Thermometers in quantities.</summary>
    /// <param name="thermometer">The thermometer.</param>
    extension(Thermometer thermometer)
    {
        /// <summary>A thermometer by what it shows in boiling water.</summary>
        /// <param name="reading">What it shows, from 60 to 130 °C.</param>
        /// <param name="pressure">The pressure, from the altitude or a barometer.</param>
        /// <exception cref="ArgumentOutOfRangeException">The reading is outside its range.</exception>
        public static Thermometer FromBoilingWater(Temperature reading, AirPressure pressure) =>
            Thermometer.FromBoilingWater(Celsius(reading), pressure);

        /// <summary>What it reads too high; below 0 where it reads too low.</summary>
        public TemperatureDelta ToOffset() => new(Guard.NotNull(thermometer).Offset, TemperatureDeltaUnit.Kelvin);

        /// <summary>The true temperature behind a reading.</summary>
        /// <param name="reading">What it shows, from −50 to 400 °C.</param>
        /// <exception cref="ArgumentOutOfRangeException">The reading is outside its range.</exception>
        public Temperature ToTrue(Temperature reading) => Celsius(Guard.NotNull(thermometer).ToTrue(Celsius(reading)));

        /// <summary>What it shows at a true temperature: where to take the pot off.</summary>
        /// <param name="temperature">The temperature, from −50 to 400 °C.</param>
        /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
        public Temperature ToReading(Temperature temperature) => Celsius(Guard.NotNull(thermometer).ToReading(Celsius(temperature)));
    }

    /// <summary>Rates of inversion.</summary>
    extension(Inversion)
    {
        /// <summary>The rate at which sucrose is inverted.</summary>
        /// <param name="temperature">The temperature, from 0 to 160 °C; measured below 110.</param>
        /// <param name="ph">The pH at room temperature, from 0 to 9.</param>
        /// <param name="water">The water in the syrup, from 0 to 1 g/mL: the density of the syrup times the fraction of water.</param>
        /// <returns>
        /// The share that is inverted in a minute, as long as that is small. Worked number: 100 °C, pH 3 and 0.55 g/mL give 0.0285.
        /// </returns>
        /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
        public static double RatePerMinute(Temperature temperature, double ph, Density water) =>
            Inversion.RatePerMinute(Celsius(temperature), ph, GramsPerMillilitre(water));
    }

    /// <summary>Lines of a mass.</summary>
    extension(HeatLine)
    {
        /// <summary>So much of an ingredient.</summary>
        /// <param name="ingredient">The ingredient.</param>
        /// <param name="mass">How much, from 0 to 1e9 g.</param>
        /// <param name="sugar">How its sugar stands in it.</param>
        /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
        /// <exception cref="ArgumentOutOfRangeException">The mass is outside its range.</exception>
        public static HeatMass Of(Ingredient ingredient, Mass mass, SugarState sugar = SugarState.AsItsWaterHolds) =>
            HeatLine.Of(ingredient, Grams(mass), sugar);
    }

    /// <summary>Masses at a temperature.</summary>
    /// <param name="mass">The mass.</param>
    extension(HeatMass mass)
    {
        /// <summary>The line at a temperature.</summary>
        /// <param name="temperature">The temperature.</param>
        /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
        public HeatLine At(Temperature temperature) => Guard.NotNull(mass).At(Celsius(temperature));
    }

    /// <summary>Bodies that warm or cool, in quantities.</summary>
    /// <param name="body">The body.</param>
    extension(LumpedBody body)
    {
        /// <summary>A body by its size and the coefficient of heat transfer: b = h·A/(ρ·V·c).</summary>
        /// <param name="coefficient">The coefficient h, from 0.001 to 1e6 W/(m²·K).</param>
        /// <param name="area">The area A through which heat passes, from 1e-6 to 1e4 m².</param>
        /// <param name="volume">The volume V, from 1e-6 to 1e6 L.</param>
        /// <param name="density">The density ρ, from 0.01 to 25 g/mL.</param>
        /// <param name="specificHeat">The specific heat c, from 0.01 to 20 kJ/(kg·K).</param>
        /// <param name="start">The temperature at minute 0 as a thermometer in it showed it.</param>
        /// <param name="surroundings">The temperature of the surroundings, from −200 to 1000 °C.</param>
        /// <returns>
        /// The body. Worked number: a glass of milk, 6 cm across and 7 cm high, at 3 °C in water of 60 °C with 120 W/(m²·K) is at 38 °C
        /// after 5.8 minutes.
        /// </returns>
        /// <exception cref="ArgumentOutOfRangeException">A quantity is outside its range.</exception>
        public static LumpedBody FromGeometry(HeatTransferCoefficient coefficient, Area area, Volume volume, Density density,
            SpecificEntropy specificHeat, ThermometerReading start, Temperature surroundings)
        {
            LumpedBody made = LumpedBody.FromGeometry(coefficient.WattsPerSquareMeterKelvin, area.SquareMeters, Millilitres(volume) / 1e3,
                GramsPerMillilitre(density), specificHeat.JoulesPerKilogramKelvin / 1e3, start.Celsius, Celsius(surroundings));
            return LumpedBody.FromRate(made.RatePerMinute, start, made.SurroundingsCelsius);
        }

        /// <summary>
        /// The Biot number h·V/(A·k): up to <see cref="LumpedBody.BiotLimit"/> a body that is not stirred is of one temperature.
        /// </summary>
        /// <param name="coefficient">The coefficient h, from 0 to 1e6 W/(m²·K).</param>
        /// <param name="area">The area A, from 1e-6 to 1e4 m².</param>
        /// <param name="volume">The volume V, from 0 to 1e6 L.</param>
        /// <param name="conductivity">The conductivity k of the body, from 0.001 to 1000 W/(m·K).</param>
        /// <returns>
        /// The number. Worked number: the glass of milk of the geometry above has 2.1, and holds only because it is stirred.
        /// </returns>
        /// <exception cref="ArgumentOutOfRangeException">A quantity is outside its range.</exception>
        public static double Biot(HeatTransferCoefficient coefficient, Area area, Volume volume, ThermalConductivity conductivity) =>
            LumpedBody.Biot(coefficient.WattsPerSquareMeterKelvin, area.SquareMeters, Millilitres(volume) / 1e3,
                conductivity.WattsPerMeterKelvin);

        /// <summary>The temperature after a time.</summary>
        /// <param name="time">The time from minute 0, from −1e6 to 1e6 min.</param>
        /// <exception cref="ArgumentOutOfRangeException">The time is outside its range.</exception>
        public Temperature After(Duration time) => Celsius(Guard.NotNull(body).CelsiusAfter(Minutes(time)));

        /// <summary>The time to a temperature, from minute 0; <see langword="null"/> where it is never reached.</summary>
        /// <param name="temperature">The temperature, from −273.15 to 1e6 °C.</param>
        /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
        public Duration? TimeTo(Temperature temperature) =>
            Guard.NotNull(body).MinutesTo(Celsius(temperature)) is double minutes ? new Duration(minutes, DurationUnit.Minute) : null;
    }

    /// <summary>Holding times as quantities.</summary>
    /// <param name="hold">The holding time.</param>
    extension(HoldTime hold)
    {
        /// <summary>How long it is held.</summary>
        public Duration ToDuration() => new(Guard.NotNull(hold).Seconds, DurationUnit.Second);

        /// <summary>At which temperature.</summary>
        public Temperature ToTemperature() => Celsius(Guard.NotNull(hold).Celsius);
    }

    /// <summary>Lengths of cakes as quantities.</summary>
    /// <param name="length">The length.</param>
    extension(CakeLength length)
    {
        /// <summary>A length.</summary>
        /// <param name="quantity">The length, from 0 to 1e6 cm.</param>
        /// <exception cref="ArgumentOutOfRangeException">The length is outside its range.</exception>
        public static CakeLength From(Length quantity) => quantity.Unit switch
        {
            LengthUnit.Centimeter => CakeLength.FromCentimetres(quantity.Value),
            LengthUnit.Millimeter => CakeLength.FromMillimetres(quantity.Value),
            LengthUnit.Inch => CakeLength.FromInches(quantity.Value),
            _ => CakeLength.FromCentimetres(quantity.Meters * 100),
        };

        /// <summary>The length.</summary>
        public Length ToLength() => new(length.Centimetres, LengthUnit.Centimeter);
    }

    /// <summary>Bodies of cakes as quantities.</summary>
    /// <param name="body">The body.</param>
    extension(CakeBody body)
    {
        /// <summary>What it holds.</summary>
        public Volume ToVolume() => Millilitres(Guard.NotNull(body).VolumeMillilitres);
    }

    /// <summary>Densities of icings.</summary>
    extension(IcingDensity)
    {
        /// <summary>By weighing a measure full of icing: mass over volume.</summary>
        /// <param name="mass">What the icing in the measure weighs, from 0.001 to 1e6 g.</param>
        /// <param name="volume">What the measure holds, from 0.01 to 1e6 mL.</param>
        /// <returns>The density. Worked number: 120 g in a US cup of 236.588 mL: 0.507 g/mL, as of whipped cream in USDA SR.</returns>
        /// <exception cref="ArgumentOutOfRangeException">
        /// A quantity is outside its range, or the density that comes out is not from 0.05 to 2 g/mL.
        /// </exception>
        public static Density FromMeasure(Mass mass, Volume volume) =>
            GramsPerMillilitre(IcingDensity.FromMeasure(Grams(mass), Millilitres(volume)));

        /// <summary>By overrun: what the icing has gained in volume.</summary>
        /// <param name="airFree">The density without air, from 0.5 to 2 g/mL.</param>
        /// <param name="overrunPercent">The overrun, per cent, from 0 to 9900.</param>
        /// <returns>The density. Worked number: 1.288 g/mL whipped to an overrun of 43.1 %: 0.900.</returns>
        /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
        public static Density FromOverrun(Density airFree, double overrunPercent) =>
            GramsPerMillilitre(IcingDensity.FromOverrun(GramsPerMillilitre(airFree), overrunPercent));
    }

    /// <summary>Icings of a density.</summary>
    extension(Icing)
    {
        /// <summary>An icing.</summary>
        /// <param name="name">The name, from 1 to 100 characters.</param>
        /// <param name="density">The density as it is spread, from 0.05 to 2 g/mL.</param>
        /// <param name="formula">What it is made of, where that is known.</param>
        /// <exception cref="ArgumentException">The name is blank or too long.</exception>
        /// <exception cref="ArgumentOutOfRangeException">The density is outside its range.</exception>
        public static Icing Of(string name, Density density, Formula? formula = null) =>
            Icing.Of(name, GramsPerMillilitre(density), formula);
    }

    /// <summary>Bowls of a volume.</summary>
    extension(MixerBowl)
    {
        /// <summary>A bowl.</summary>
        /// <param name="volume">What it holds to the rim, from 100 mL.</param>
        /// <param name="usableFraction">How full it may get while the whisk runs, from 0.05 to 1.</param>
        /// <param name="name">Its name.</param>
        /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
        public static MixerBowl Of(Volume volume, double usableFraction, string? name = null) =>
            MixerBowl.Of(Millilitres(volume), usableFraction, name);
    }
}
