using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Sugars;

/// <summary>
/// Water and what is dissolved in it: sucrose, glucose, fructose, lactose, maltose, other sugars, the higher saccharides of a glucose
/// syrup, polyols, glycerol and acids, as mass fractions that add up to one. It never changes; every change makes a new one.
/// </summary>
/// <remarks>
/// Everything is taken as dissolved, whether or not it could be: a syrup that has cooled is often supersaturated.
/// Polyols count as sorbitol, acids as citric acid, other sugars as a disaccharide. Isomalt and
/// maltitol are heavier alcohols than sorbitol, so that their water is more active than is said here.
/// What of an ingredient or a formula is none of these (fat, protein, starch, fibre, salt, ash, alcohol) is left out, and
/// <see cref="LeftOut"/> says how much that was.
/// </remarks>
public sealed class SugarSolution
{
    private const double SumTolerance = 1e-6;

    private static readonly CoefficientSet s_doubt = CoefficientTable.BuiltIn.Get("activity-doubt", Constituent.Water),
        s_heat = CoefficientTable.BuiltIn.Get("specific-heat", Constituent.Sucrose), s_thick = CoefficientTable.BuiltIn.Get("viscosity",
            Constituent.Sucrose);

    private static readonly double s_mostDoubt = s_doubt["most"], s_mostDoubtTo = s_doubt["most-to"], s_lessDoubt = s_doubt["less"],
        s_lessDoubtTo = s_doubt["less-to"], s_scatter = CoefficientTable.BuiltIn.Get("boiling-doubt", Constituent.Water)["share"];

    // Of decimals, and not of what binary makes of them.
    private static readonly double s_lessSpan = Math.Round(1 - s_lessDoubtTo, 12), s_mostSpan = Math.Round(s_lessDoubtTo - s_mostDoubtTo,
        12);

    private static readonly double s_c0 = s_heat["c0"], s_c1 = s_heat["c1"], s_c2 = s_heat["c2"], s_c3 = s_heat["c3"];

    private static readonly double s_x0 = s_thick["x0"], s_x1 = s_thick["x1"], s_f0 = s_thick["f0"], s_f1 = s_thick["f1"],
        s_power = s_thick["power"],
        s_b0 = s_thick["b0"], s_b1 = s_thick["b1"], s_t1 = s_thick["t1"], s_t2 = s_thick["t2"], s_a0 = s_thick["a0"], s_a1 = s_thick["a1"],
        s_p0 = s_thick["p0"], s_p1 = s_thick["p1"], s_thickest = s_thick.Highest;

    // Grams of sucrose that a gram counts as in Grover's rule, by place; the glucose of a glucose syrup has another.
    private static readonly double[] s_grover = GroverFactors();

    private static readonly double s_groverInSyrup = CoefficientTable.BuiltIn.Get("activity-grover",
        Constituent.Glucose)["factor-in-syrup"];

    // At every temperature the same.
    private static readonly double s_glycerolHeat = CoefficientTable.BuiltIn.Get("thermal-specific-heat",
        Constituent.Glycerol).Terms("a")[0];

    private readonly double[] _fractions; // of the solution, in the order of Solutes
    private readonly double _soluteMoles; // in a gram of solution
    private readonly double _strength; // k of ActivityOfWater
    private readonly double _mostSolute;

    private SugarSolution(double[] fractions, double higherMolarMass, double leftOut)
    {
        _fractions = fractions;
        HigherSaccharidesMolarMass = higherMolarMass;
        LeftOut = leftOut;
        double solids = 0, moles = 0, roots = 0;
        for (int i = 0; i < fractions.Length; i++)
        {
            solids += fractions[i];
            double n = fractions[i] / Solutes.MolarMass(i, higherMolarMass);
            moles += n;
            roots += n * Math.Sqrt(Solutes.Norrish(i, higherMolarMass) / Solutes.SucroseNorrish);
        }
        Solids = Math.Min(solids, 1);
        _soluteMoles = moles;
        _strength = moles > 0 ? roots / moles * (roots / moles) : 0;
        // Alone, sucrose is 1; rounding must not make it something else.
        if (Math.Abs(_strength - 1) < 1e-12)
            _strength = 1;
        _mostSolute = ActivityOfWater.MostSoluteFor(_strength);
    }

    /// <summary>Pure water.</summary>
    public static SugarSolution PureWater { get; } = new(new double[Solutes.Count], Solutes.UsualHigherMolarMass, 0);

    /// <summary>What is dissolved, as a mass fraction from 0 to 1: the dry substance.</summary>
    public double Solids { get; }

    /// <summary>The water, as a mass fraction from 0 to 1.</summary>
    public double Water => 1 - Solids;

    /// <summary>The share of sucrose in the solids, from 0 to 1; 1 where there are no solids.</summary>
    public double Purity => Solids > 0 ? _fractions[Solutes.Sucrose] / Solids : 1;

    /// <summary>
    /// The mean molar mass of the saccharides above maltose, g/mol. It comes from the dextrose equivalent of the syrups, where it is known;
    /// otherwise it is 772, that of a 42 DE syrup.
    /// </summary>
    public double HigherSaccharidesMolarMass { get; }

    /// <summary>What was left out of the ingredient or formula, as a mass fraction of it, from 0 to 1.</summary>
    public double LeftOut { get; }

    /// <summary>The mean molar mass of all that is dissolved, g/mol; 0 of pure water.</summary>
    public double MeanMolarMass => _soluteMoles > 0 ? Solids / _soluteMoles : 0;

    /// <summary>The mole fraction of all that is dissolved, from 0 to 1.</summary>
    public double SoluteMoleFraction => _soluteMoles > 0 ? _soluteMoles / (_soluteMoles + Water / Solutes.WaterMolarMass) : 0;

    /// <summary>
    /// The most solids that boiling points and the activity of water are worked out for: where the mole fraction of solutes is that of 98 %
    /// sucrose, the end of the measurements; less for a mix that binds water more strongly than sucrose.
    /// </summary>
    public double MaximumSolids => SolidsAt(_mostSolute);

    internal ReadOnlySpan<double> Fractions => _fractions;

    /// <summary>The mass fraction of one substance in the solution; 0 of one that no solution here can hold.</summary>
    /// <param name="constituent">The substance.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="constituent"/> is not a defined value.</exception>
    public double this[Constituent constituent] => Solutes.PlaceOf(constituent) is >= 0 and int place ? _fractions[place]
        : constituent == Constituent.Water ? Water : 0;

    /// <summary>A solution of sucrose in water.</summary>
    /// <param name="fraction">The mass fraction of sucrose, from 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fraction"/> is outside its range.</exception>
    public static SugarSolution OfSucrose(double fraction)
    {
        double[] fractions = new double[Solutes.Count];
        fractions[Solutes.Sucrose] = Guard.InRange(fraction, 0, 1);
        return new SugarSolution(fractions, Solutes.UsualHigherMolarMass, 0);
    }

    /// <summary>A solution from masses.</summary>
    /// <param name="grams">Grams of water and of what is dissolved, each from 0 to 1e12; together above 0.</param>
    /// <param name="higherSaccharidesMolarMass">The mean molar mass of the saccharides above maltose, g/mol, from 504 to 20 000.</param>
    /// <exception cref="ArgumentNullException"><paramref name="grams"/> is null.</exception>
    /// <exception cref="ArgumentException">A substance is named twice, does not dissolve, or there is nothing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static SugarSolution FromGrams(IEnumerable<KeyValuePair<Constituent, double>> grams, double higherSaccharidesMolarMass =
        Solutes.UsualHigherMolarMass)
    {
        double[] masses = Read(grams, 1e12, nameof(grams), out double water);
        return Make(masses, water, 0, HigherMolarMass(higherSaccharidesMolarMass), nameof(grams));
    }

    /// <summary>A solution from mass fractions that add up to one, within a millionth.</summary>
    /// <param name="fractions">Mass fractions of water and of what is dissolved, each from 0 to 1.</param>
    /// <param name="higherSaccharidesMolarMass">The mean molar mass of the saccharides above maltose, g/mol, from 504 to 20 000.</param>
    /// <exception cref="ArgumentNullException"><paramref name="fractions"/> is null.</exception>
    /// <exception cref="ArgumentException">They do not add up to one, or a substance is named twice or does not dissolve.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static SugarSolution FromFractions(IEnumerable<KeyValuePair<Constituent, double>> fractions, double higherSaccharidesMolarMass =
        Solutes.UsualHigherMolarMass)
    {
        double[] masses = Read(fractions, 1, nameof(fractions), out double water);
        double sum = masses.Sum() + water;
        if (Math.Abs(sum - 1) > SumTolerance)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(fractions)} add up to {sum:R}; they must add up to 1, within {SumTolerance:R}. Use {nameof(FromGrams)} for "
                    + $"masses."),
                nameof(fractions));
        return Make(masses, water, 0, HigherMolarMass(higherSaccharidesMolarMass), nameof(fractions));
    }

    /// <summary>What dissolves of an ingredient, in its own water.</summary>
    /// <param name="ingredient">The ingredient. Its dextrose equivalent gives the molar mass of its higher saccharides.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentException">There is neither water in it nor anything that dissolves here.</exception>
    public static SugarSolution Of(Ingredient ingredient)
    {
        Gathering sum = new();
        sum.Add(Guard.NotNull(ingredient), 1);
        return sum.ToSolution(0, nameof(ingredient));
    }

    /// <summary>What dissolves of a formula, in its water, less what boils off.</summary>
    /// <param name="formula">The formula.</param>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentException">There is neither water in it nor anything that dissolves here.</exception>
    public static SugarSolution Of(Formula formula)
    {
        Gathering sum = new();
        foreach (FormulaLine line in Guard.NotNull(formula).Lines)
            sum.Add(line.Ingredient, line.Grams.Likely);
        return sum.ToSolution(formula.BoiledOffGrams, nameof(formula));
    }

    /// <summary>Two solutions mixed.</summary>
    /// <param name="first">The first.</param>
    /// <param name="firstGrams">Its mass, g, from 0 to 1e12.</param>
    /// <param name="second">The second.</param>
    /// <param name="secondGrams">Its mass, g, from 0 to 1e12; the two together above 0.</param>
    /// <returns>The mixture. Masses add up; nothing crystallises and nothing evaporates.</returns>
    /// <exception cref="ArgumentNullException">A solution is null.</exception>
    /// <exception cref="ArgumentException">Both masses are 0.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A mass is outside its range.</exception>
    public static SugarSolution Mix(SugarSolution first, double firstGrams, SugarSolution second, double secondGrams)
    {
        Guard.NotNull(first);
        Guard.NotNull(second);
        Guard.InRange(firstGrams, 0, 1e12);
        Guard.InRange(secondGrams, 0, 1e12);
        double[] masses = new double[Solutes.Count];
        for (int i = 0; i < masses.Length; i++)
            masses[i] = first._fractions[i] * firstGrams + second._fractions[i] * secondGrams;
        double moles = first._fractions[Solutes.HigherSaccharides] * firstGrams / first.HigherSaccharidesMolarMass
            + second._fractions[Solutes.HigherSaccharides] * secondGrams / second.HigherSaccharidesMolarMass;
        return Make(masses, first.Water * firstGrams + second.Water * secondGrams, 0,
            moles > 0 ? masses[Solutes.HigherSaccharides] / moles : Solutes.UsualHigherMolarMass, nameof(firstGrams));
    }

    /// <summary>The same solids with other water: concentrated or diluted.</summary>
    /// <param name="solids">The mass fraction of solids, from 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="solids"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">This is pure water, and solids are asked for.</exception>
    public SugarSolution WithSolids(double solids)
    {
        Guard.InRange(solids, 0, 1);
        if (solids == Solids)
            return this;
        double[] fractions = new double[Solutes.Count];
        for (int i = 0; i < fractions.Length; i++)
            fractions[i] = solids * PerSolids(i);
        return new SugarSolution(fractions, HigherSaccharidesMolarMass, LeftOut);
    }

    /// <summary>
    /// Part of the sucrose inverted: each gram becomes 180.156·2/342.30 = 1.0526 g of glucose and fructose in equal parts, and takes the
    /// difference from the water, so that the whole mass stays.
    /// </summary>
    /// <param name="share">The share of the sucrose, from 0 to 1.</param>
    /// <returns>The solution. Worked number: all of 100 g of sucrose is 105.26 g of invert sugar.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="share"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">There is less water than the reaction takes.</exception>
    public SugarSolution Inverted(double share)
    {
        double sucrose = _fractions[Solutes.Sucrose] * Guard.InRange(share, 0, 1);
        double taken = sucrose * (2 * Solutes.MonosaccharideMolarMass / Solutes.SucroseMolarMass - 1);
        if (taken > Water)
            throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture,
                $"Inverting {sucrose:0.####} g of sucrose takes {taken:0.####} g of water, ")
                + string.Create(CultureInfo.InvariantCulture, $"and a gram of this solution has {Water:0.####} g."));
        double[] fractions = [.. _fractions];
        fractions[Solutes.Sucrose] -= sucrose;
        fractions[Solutes.Glucose] += (sucrose + taken) / 2;
        fractions[Solutes.Fructose] += (sucrose + taken) / 2;
        return new SugarSolution(fractions, HigherSaccharidesMolarMass, LeftOut);
    }

    /// <summary>
    /// The syrup when all the sucrose has crystallised that will; itself where none does, or where no water could hold any.
    /// </summary>
    internal SugarSolution AsItStands(double celsius) => Water > 0 ? Crystallisation.Of(this, celsius).Equilibrium : this;

    /// <summary>As <see cref="AsItStands"/>, but saturated with sucrose even where there is less of it: the syrup between crystals.</summary>
    internal SugarSolution Saturated(double celsius)
    {
        double[] masses = [.. _fractions];
        masses[Solutes.Sucrose] = Crystallisation.Of(this, celsius).SaturatedSucrosePerWater * Water;
        return Make(masses, Water, 0, HigherSaccharidesMolarMass, nameof(celsius));
    }

    /// <summary>The activity of the water with all of it dissolved; not a number beyond <see cref="MaximumSolids"/>.</summary>
    internal double ActivityOrNone(double celsius) => SoluteMoleFraction <= _mostSolute ? WaterActivityAllDissolved(celsius) : double.NaN;

    /// <summary>Where it boils; not a number beyond <see cref="MaximumSolids"/>, or where it boils nowhere.</summary>
    internal double BoilingOrNone(AirPressure pressure)
    {
        if (SoluteMoleFraction > _mostSolute)
            return double.NaN;
        double kelvin = ActivityOfWater.BoilingKelvin(SoluteMoleFraction, _strength, pressure.Kilopascals, BoilingModel.StarzakPeacock);
        return kelvin < ActivityOfWater.HighestKelvin ? kelvin - SaturatedWater.ZeroCelsius : double.NaN;
    }

    /// <summary>A solution of masses by place, and the moles of the higher saccharides.</summary>
    internal static SugarSolution FromSums(ReadOnlySpan<double> masses, double water, double higherMoles) => Make(masses.ToArray(), water, 0,
        higherMoles > 0 ? Math.Clamp(masses[Solutes.HigherSaccharides] / higherMoles, Solutes.LowestHigherMolarMass,
            Solutes.HighestHigherMolarMass) : Solutes.UsualHigherMolarMass, nameof(masses));

    /// <summary>As <see cref="WaterActivity"/>, with the range over the models alone.</summary>
    internal Spread WaterActivityOverModels(double celsius) =>
        AsItStands(Guard.InRange(celsius, Solubility.MinimumCelsius, Solubility.MaximumCelsius)).OverModels(celsius);

    /// <summary>As <see cref="WaterActivity"/>, as long as nothing has crystallised: of a boiled sugar that stays clear.</summary>
    internal Spread WaterActivityUngrained(double celsius) => WithLeastError(OverModels(celsius));

    private Spread OverModels(double celsius)
    {
        SugarSolution standing = this;
        double likely = standing.WaterActivityAllDissolved(celsius), low = likely, high = likely;
        foreach (WaterActivityModel model in (ReadOnlySpan<WaterActivityModel>)[WaterActivityModel.Norrish, WaterActivityModel.Ross])
        {
            double other = standing.WaterActivityAllDissolved(celsius, model);
            low = Math.Min(low, other);
            high = Math.Max(high, other);
        }
        return new Spread(low, likely, high, SpreadBasis.Models);
    }

    // Half of what models and measurements part by: 0.02 at 0.80 to 0.90 and 0.08 and more below 0.75 (sorption, Sloan and Labuza 1975).
    private static double LeastActivityError(double activity) => activity >= s_lessDoubtTo ? s_lessDoubt * (1 - activity) / s_lessSpan
        : activity >= s_mostDoubtTo ? s_lessDoubt + (s_lessDoubtTo - activity) * (s_mostDoubt - s_lessDoubt) / s_mostSpan : s_mostDoubt;

    /// <summary>What is left when so many grams of sucrose have gone from a gram of it.</summary>
    internal SugarSolution WithoutSucrose(double grams)
    {
        double[] masses = [.. _fractions];
        masses[Solutes.Sucrose] = Math.Max(0, masses[Solutes.Sucrose] - grams);
        return Make(masses, Water, 0, HigherSaccharidesMolarMass, nameof(grams));
    }

    /// <summary>
    /// The density, g/mL: 1/ρ = w/ρ_water + Σ xᵢ·vᵢ, with the polynomial of the PTB for sucrose and apparent volumes for the rest.
    /// </summary>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <returns>
    /// Grams per millilitre. Of sucrose and water it is the polynomial itself, of which up to 85 % was measured; against the tables of the
    /// National Bureau of Standards it is within 0.0007 to 95 %. Of the others it was fitted at 20 °C, and the heat is taken to expand them
    /// as it does sucrose. A food without air by its composition (Choi and Okos) is another model: at 20 °C the two are one for glycerine
    /// and within 0.5 % for syrups to 70 %; at 100 °C glycerine is 1.8 % heavier here, and dry sucrose, which is no solution any more, 2.6
    /// % lighter at 20 °C. Worked number: 65 % sucrose at 20 °C is 1.31656.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double GramsPerMillilitre(double celsius) => SolutionDensity.GramsPerMillilitre(this, Guard.InRange(celsius, 0, 100));

    /// <summary>The refractive index for the sodium D line, by Lorentz and Lorenz: (n² − 1)/(n² + 2) = ρ·Σ xᵢ·rᵢ.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 80.</param>
    /// <returns>
    /// n. Of sucrose at 20 °C it is a polynomial fitted to the ICUMSA table of 1974. Worked number: 65 % sucrose at 20 °C gives 1.45348.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double RefractiveIndex(double celsius = 20) => Refraction.Index(this, Guard.InRange(celsius, 0, 80));

    /// <summary>
    /// What a refractometer with a sugar scale shows, in degrees Brix: the strength of the sucrose solution that bends light as much at
    /// this temperature. The instrument corrects for temperature, as one with that switched on does.
    /// </summary>
    /// <param name="celsius">The temperature, °C, from 0 to 80.</param>
    /// <returns>
    /// The reading. Above the true solids where there is glucose syrup: <see cref="Brix.Percent"/> less 100·<see cref="Solids"/> is the
    /// error. Worked number: 60 % solids of glucose syrup 42 DE read about 62.5.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">It bends light more than 95 % sucrose, where the scale ends.</exception>
    public Brix RefractometerReading(double celsius = 20) => Refraction.Reading(this, Guard.InRange(celsius, 0, 80));

    /// <summary>
    /// The specific heat, kJ/(kg·K): c = 4.1868 − 0.0297·B + 4.6e-5·B·P + 7.5e-5·B·t with the solids B and the purity P in per cent and t
    /// in °C. Glycerol is no solid of a sugar house: it has the constant of a food's composition (2.38, from memory), by its mass, and B
    /// and P are those of the rest.
    /// </summary>
    /// <param name="celsius">The temperature, °C, from 0 to 120.</param>
    /// <returns>
    /// kJ/(kg·K); three published equations of syrups agree within 0.7 %. Choi and Okos, by a food's composition, are below them: 5.5 % for
    /// 60 % sucrose at 20 °C. Worked number: 60 % sucrose at 20 °C gives 2.771.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double SpecificHeat(double celsius)
    {
        Guard.InRange(celsius, 0, 120);
        double glycerol = _fractions[Solutes.Glycerol], rest = 1 - glycerol, sugars = Math.Max(0, Solids - glycerol);
        // B of the rest is sugars/rest; the rest has its share of the whole, so that the two meet.
        double ofSucrose = 100 * (100 * s_c2) * _fractions[Solutes.Sucrose];
        return rest * s_c0 + 100 * sugars * (s_c1 + s_c3 * celsius) + ofSucrose + glycerol * s_glycerolHeat;
    }

    /// <summary>
    /// The viscosity, mPa·s, by Génotelle: log₁₀ η = 22.46·X − 0.114 + Φ·(1.1 + 43.1·A·X^1.25) with X = B'/(1900 − 18·B'),
    /// Φ = (30 − t)/(91 + t), A = 0.85 + 0.15·P and B' = B·(0.962 + 0.038·P), P the purity.
    /// </summary>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <returns>
    /// Millipascal seconds; within 3.1 % of the handbook at 20 °C, 14 % above it at 0 °C and 60 %. The terms with P are for liquors of a
    /// sugar house; for glucose syrups they are a guess, and syrups of low dextrose equivalent are far thicker. Worked number: 60 % sucrose
    /// at 20 °C gives 59.7.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The solids are above 85 %, where the equation ends.</exception>
    public double ViscosityMillipascalSeconds(double celsius)
    {
        Guard.InRange(celsius, 0, 100);
        if (Solids > s_thickest)
            throw Beyond("viscosity", s_thickest);
        double purity = Purity, percent = 100 * Solids * (s_p0 + s_p1 * purity), x = percent / (s_b0 - s_b1 * percent);
        double phi = (s_t1 - celsius) / (s_t2 + celsius);
        return Math.Pow(10, s_x1 * x + s_x0 + phi * (s_f0 + s_f1 * (s_a0 + s_a1 * purity) * Math.Pow(x, s_power)));
    }

    /// <summary>
    /// The boiling point by one model, °C: the temperature T at which a(T)·p°(T) is the pressure, with the activity a of the water and the
    /// vapour pressure p° of pure water. Over the models, see <see cref="BoilingCelsius(AirPressure)"/>.
    /// </summary>
    /// <param name="pressure">The pressure.</param>
    /// <param name="model">The model of the activity.</param>
    /// <returns>Degrees Celsius. Worked number: 85 % sucrose at sea level gives 114.0.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="model"/> is not a defined value.</exception>
    /// <exception cref="InvalidOperationException">The solids are above <see cref="MaximumSolids"/>.</exception>
    public double BoilingCelsius(AirPressure pressure, BoilingModel model)
    {
        Guard.Defined(model);
        double kelvin = ActivityOfWater.BoilingKelvin(CheckedSolute(), _strength, pressure.Kilopascals, model);
        return kelvin < ActivityOfWater.HighestKelvin ? kelvin - SaturatedWater.ZeroCelsius : throw BoilsNowhere();
    }

    /// <summary>How much above water it boils, K.</summary>
    /// <inheritdoc cref="BoilingCelsius(AirPressure, BoilingModel)" path="/param"/>
    /// <inheritdoc cref="BoilingCelsius(AirPressure, BoilingModel)" path="/exception"/>
    /// <returns>Kelvins. Worked number: 60 % sucrose at sea level gives 2.94.</returns>
    public double BoilingPointElevation(AirPressure pressure, BoilingModel model = BoilingModel.StarzakPeacock) =>
        BoilingCelsius(pressure, model) - pressure.WaterBoilsCelsius;

    /// <summary>
    /// The boiling point, °C, with an honest spread: over both models, over the two rules for mixtures, and 2 % of the elevation more on
    /// either side for what the measurements scatter (an estimate). Above 90 % the models differ by kelvins.
    /// </summary>
    /// <param name="pressure">The pressure.</param>
    /// <returns>
    /// Degrees Celsius; likely is the default model. Worked number: 95 % sucrose at sea level gives 139.4, from 136.5 to 140.2.
    /// </returns>
    /// <exception cref="InvalidOperationException">
    /// The solids are above <see cref="MaximumSolids"/>, or by one model it boils nowhere below the critical point of water.
    /// </exception>
    public Spread BoilingCelsius(AirPressure pressure)
    {
        double x = CheckedSolute(), water = SaturatedWater.BoilingKelvin(pressure.Kilopascals), other = WeakStrength();
        double likely = 0, low = double.MaxValue, high = double.MinValue;
        foreach (BoilingModel model in (ReadOnlySpan<BoilingModel>)[BoilingModel.StarzakPeacock, BoilingModel.StarzakMathlouthi])
        {
            double kelvin = ActivityOfWater.BoilingKelvin(x, _strength, pressure.Kilopascals, model);
            double weak = ActivityOfWater.BoilingKelvin(x, other, pressure.Kilopascals, model);
            if (model == BoilingModel.StarzakPeacock)
                likely = kelvin;
            low = Math.Min(low, Math.Min(kelvin, weak));
            high = Math.Max(high, Math.Max(kelvin, weak));
        }
        if (high >= ActivityOfWater.HighestKelvin)
            throw BoilsNowhere();
        return new Spread(low - s_scatter * (low - water) - SaturatedWater.ZeroCelsius, likely - SaturatedWater.ZeroCelsius,
            high + s_scatter * (high - water) - SaturatedWater.ZeroCelsius, SpreadBasis.Models);
    }

    /// <summary>
    /// The same solids with as much water as is left when the syrup boils at a temperature: from the thermometer to the strength.
    /// </summary>
    /// <param name="celsius">The temperature, °C, from where water boils at the pressure to where <see cref="MaximumSolids"/> do.</param>
    /// <param name="pressure">The pressure.</param>
    /// <param name="model">The model of the activity.</param>
    /// <returns>The solution. Worked number: sucrose at 115.56 °C (240 °F) and sea level is 86.2 %.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <exception cref="InvalidOperationException">This is pure water.</exception>
    public SugarSolution BoilingAt(double celsius, AirPressure pressure, BoilingModel model = BoilingModel.StarzakPeacock)
    {
        Guard.Defined(model);
        if (_soluteMoles == 0)
            throw new InvalidOperationException("Pure water has no solids to be concentrated.");
        Guard.InRange(celsius, pressure.WaterBoilsCelsius - ActivityOfWater.SlackKelvin, MaximumBoilingCelsius(pressure,
            model) + ActivityOfWater.SlackKelvin);
        return WithSolids(SolidsAt(ActivityOfWater.SoluteBoilingAt(celsius + SaturatedWater.ZeroCelsius, _strength, pressure.Kilopascals,
            model, _mostSolute)));
    }

    /// <summary>The highest temperature at which these solids are followed, °C: where <see cref="MaximumSolids"/> boil.</summary>
    /// <param name="pressure">The pressure.</param>
    /// <param name="model">The model of the activity.</param>
    /// <returns>Degrees Celsius. Worked number: sucrose at sea level, 154.2.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="model"/> is not a defined value.</exception>
    public double MaximumBoilingCelsius(AirPressure pressure, BoilingModel model = BoilingModel.StarzakPeacock) =>
        ActivityOfWater.BoilingKelvin(_soluteMoles > 0 ? _mostSolute : 0, _strength, pressure.Kilopascals,
            Guard.Defined(model)) - SaturatedWater.ZeroCelsius;

    /// <summary>
    /// The activity of the water as the syrup will stand: sucrose above saturation is out as crystals, and the water is that of the syrup
    /// between them.
    /// </summary>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <returns>
    /// The activity by the default model. The range is over that, Norrish's and Ross's, and never narrower than what models and
    /// measurements part by: 0.08 to either side up to 0.75 (sorption of amorphous sugars, Sloan and Labuza 1975), 0.02 at 0.80 and nothing
    /// at 1, straight between: an estimate. Worked number: 80 % sucrose at 25 °C is 0.85, whatever <see cref="WaterActivityAllDissolved"/>
    /// says (0.69). Only sucrose is let crystallise. Where glucose, lactose or a polyol crystallises too, the water is more active than is
    /// said here.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">
    /// There is no water, or the syrup between the crystals has solids above <see cref="MaximumSolids"/>.
    /// </exception>
    public Spread WaterActivity(double celsius = 25) => WithLeastError(WaterActivityOverModels(celsius));

    private static Spread WithLeastError(Spread models)
    {
        double likely = models.Likely, half = LeastActivityError(likely);
        return new Spread(Math.Max(0, Math.Min(models.Low, likely - half)), likely, Math.Min(1, Math.Max(models.High, likely + half)),
            SpreadBasis.Models);
    }

    /// <summary>
    /// The activity of the water with all that is there taken as dissolved, whether or not it stays so: its vapour pressure over that of
    /// pure water at the same temperature, from 0 to 1. By one model, without a range. For keeping, ask <see cref="WaterActivity"/>:
    /// crystals bind no water.
    /// </summary>
    /// <param name="celsius">
    /// The temperature, °C, from 0 to 220; the models of boiling points were fitted to 150. Those with constants of 25 °C do not move with
    /// it. Near freezing the default rises again by 0.0003 above 97.8 % sucrose.
    /// </param>
    /// <param name="model">The model.</param>
    /// <returns>The activity. Worked number: 60 % sucrose at 25 °C gives 0.895.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <exception cref="InvalidOperationException">
    /// The solids are above <see cref="MaximumSolids"/>, or outside what a rule of the trade is for.
    /// </exception>
    public double WaterActivityAllDissolved(double celsius = 25, WaterActivityModel model = WaterActivityModel.StarzakPeacock)
    {
        Guard.InRange(celsius, 0, 220);
        double x = CheckedSolute();
        switch (Guard.Defined(model))
        {
            case WaterActivityModel.StarzakPeacock:
                return ActivityOfWater.Of(x, _strength, celsius + SaturatedWater.ZeroCelsius, BoilingModel.StarzakPeacock);
            case WaterActivityModel.StarzakMathlouthi:
                return ActivityOfWater.Of(x, _strength, celsius + SaturatedWater.ZeroCelsius, BoilingModel.StarzakMathlouthi);
            case WaterActivityModel.Norrish:
                return ActivityOfWater.Norrish(x, _strength * Solutes.SucroseNorrish);
            case WaterActivityModel.Ross:
                return Ross();
            case WaterActivityModel.MoneyBorn:
                return Sugars.WaterActivity.MoneyBorn(100 * _soluteMoles / Water);
            default:
                return Grover();
        }
    }

    /// <summary>Strength and sugars in a line, such as <c>85 % solids: sucrose 76.5, glucose 8.5, water 15</c>.</summary>
    public override string ToString()
    {
        List<string> parts = [];
        for (int i = 0; i < _fractions.Length; i++)
        {
            if (_fractions[i] > 0)
                parts.Add(string.Create(CultureInfo.InvariantCulture,
                    $"{FormulaPart.Of(Solutes.Constituents[i]).Name} {100 * _fractions[i]:0.##}"));
        }
        parts.Add(string.Create(CultureInfo.InvariantCulture, $"water {100 * Water:0.##}"));
        return string.Create(CultureInfo.InvariantCulture, $"{100 * Solids:0.##} % solids: {string.Join(", ", parts)}");
    }

    /// <summary>The share of one solute in the solids.</summary>
    private double PerSolids(int place) => Solids > 0 ? _fractions[place] / Solids
        : throw new InvalidOperationException("Pure water has no solids to be concentrated.");

    private double MolesPerGram(int place) => _fractions[place] / Solutes.MolarMass(place, HigherSaccharidesMolarMass);

    private static double[] Read(IEnumerable<KeyValuePair<Constituent, double>> entries, double most, string name, out double water)
    {
        double[] masses = new double[Solutes.Count];
        HashSet<Constituent> seen = [];
        water = 0;
        foreach ((Constituent constituent, double mass) in Guard.NotNull(entries, name))
        {
            int place = Solutes.PlaceOf(constituent);
            if (place < 0 && constituent != Constituent.Water)
                throw new ArgumentException($"{name} names {constituent}, which is no part of a sugar solution.", name);
            if (!seen.Add(constituent))
                throw new ArgumentException($"{name} names {constituent} twice.", name);
            Guard.InRange(mass, 0, most, name);
            if (place < 0)
                water = mass;
            else
                masses[place] = mass;
        }
        return masses;
    }

    private static double HigherMolarMass(double higherSaccharidesMolarMass) =>
        Guard.InRange(higherSaccharidesMolarMass, Solutes.LowestHigherMolarMass, Solutes.HighestHigherMolarMass);

    private static SugarSolution Make(double[] masses, double water, double leftOut, double higherMolarMass, string name)
    {
        double sum = masses.Sum() + water, whole = sum + leftOut;
        if (!(sum > 0))
            throw new ArgumentException($"{name} has neither water nor anything dissolved; a solution is above 0 g.", name);
        return new SugarSolution([.. masses.Select(mass => mass / sum)], higherMolarMass, leftOut / whole);
    }

    private double SolidsAt(double moleFraction)
    {
        if (_soluteMoles == 0)
            return 0;
        double solutes = moleFraction * MeanMolarMass;
        return solutes / (solutes + (1 - moleFraction) * Solutes.WaterMolarMass);
    }

    private double CheckedSolute()
    {
        double x = SoluteMoleFraction;
        // A solution that was made to hold just the most may be beyond it by its last bits.
        return x <= _mostSolute * (1 + 1e-12) ? x : throw Beyond("boiling point and activity of water", MaximumSolids);
    }

    private InvalidOperationException Beyond(string what, double most) => new(string.Create(CultureInfo.InvariantCulture,
        $"The solution has {100 * Solids:0.####} % solids; its {what} can be worked out from 0 to {100 * most:0.####} %."));

    private static InvalidOperationException BoilsNowhere() =>
        new("The solution binds water so strongly that it boils nowhere below the critical point of water, 374 °C.");

    // Σ Kᵢ·xᵢ² for (Σ √Kᵢ·xᵢ)²: as if unlike solutes did not know of each other.
    private double WeakStrength()
    {
        double sum = 0;
        for (int i = 0; i < _fractions.Length; i++)
        {
            double share = _soluteMoles > 0 ? MolesPerGram(i) / _soluteMoles : 0;
            sum += share * share * Solutes.Norrish(i, HigherSaccharidesMolarMass) / Solutes.SucroseNorrish;
        }
        return sum;
    }

    private double Ross()
    {
        double product = 1, water = Water / Solutes.WaterMolarMass;
        for (int i = 0; i < _fractions.Length; i++)
        {
            double moles = MolesPerGram(i);
            product *= ActivityOfWater.Norrish(moles / (water + moles), Solutes.Norrish(i, HigherSaccharidesMolarMass));
        }
        return product;
    }

    private double Grover()
    {
        double sum = 0;
        for (int i = 0; i < _fractions.Length; i++)
            sum += _fractions[i] * GroverFactor(i);
        double e = sum / Water;
        return e is >= 0.41 and <= 11 ? Sugars.WaterActivity.Grover(e)
            : throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture,
                $"Grover's sum is {e:0.####} g in a gram of water; his rule is from 0.41 to 11."));
    }

    // A glucose syrup has one factor as a whole; its glucose and maltose are not counted apart, so that they have it too.
    private double GroverFactor(int place) => place == Solutes.Glucose && _fractions[Solutes.HigherSaccharides] > 0
        && _fractions[Solutes.Fructose] == 0
        ? s_groverInSyrup : s_grover[place];

    private static double[] GroverFactors()
    {
        double[] factors = new double[Solutes.Count];
        for (int i = 0; i < factors.Length; i++)
            factors[i] = CoefficientTable.BuiltIn.Get("activity-grover", Solutes.Constituents[i])["factor"];
        return factors;
    }

    /// <summary>The masses of lines of ingredients, added up.</summary>
    private sealed class Gathering
    {
        private readonly double[] _masses = new double[Solutes.Count];
        private double _water, _leftOut, _higherMoles;

        public void Add(Ingredient ingredient, double grams)
        {
            Composition composition = ingredient.Composition;
            double kept = composition[Constituent.Water];
            _water += kept * grams;
            for (int i = 0; i < _masses.Length; i++)
            {
                double fraction = composition[Solutes.Constituents[i]];
                _masses[i] += fraction * grams;
                kept += fraction;
            }
            _leftOut += Math.Max(0, 1 - kept) * grams;
            _higherMoles += composition[Constituent.HigherSaccharides] * grams / HigherSaccharides.MolarMass(ingredient);
        }

        public SugarSolution ToSolution(double boiledOffGrams, string name) => Make(_masses, Math.Max(0, _water - boiledOffGrams), _leftOut,
            _higherMoles > 0 ? _masses[Solutes.HigherSaccharides] / _higherMoles : Solutes.UsualHigherMolarMass, name);
    }
}
