using System.Globalization;
using System.Runtime.CompilerServices;
using Confectio.Conversions;
using Confectio.Cooking;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Textures;

namespace Confectio.Eggs;

/// <summary>
/// White, sugar and acid of a meringue in numbers: the ratio, how strong a sugar solution the white's water makes, when the sugar can
/// dissolve, how much acid a white gets, and how much foam the white makes.
/// </summary>
/// <remarks>
/// <para>
/// The solution is sucrose in the water of the white; the protein and the trace of sugar that the white has itself are left out, and the
/// sugar counts as pure. One part of sugar to one of fresh white is 53.3 per cent and two parts are 69.5, where books say 50 and 67 because
/// they count the white as water.
/// </para>
/// <para>Nothing here judges what heat does to bacteria. Caution: <see cref="EggCaution.Text"/></para>
/// </remarks>
public sealed class MeringueBase
{
    private const double MostGrams = 1e9;

    private MeringueBase(EggForm white, double whiteGrams, double sugarGrams, double acidGrams, double waterGrams)
    {
        White = white;
        WhiteGrams = whiteGrams;
        SugarGrams = sugarGrams;
        AcidGrams = acidGrams;
        WaterGrams = waterGrams;
        Solution = SugarSolution.FromGrams([new(Constituent.Sucrose, sugarGrams), new(Constituent.Water, WhiteWaterGrams)]);
    }

    /// <summary>The form of the white.</summary>
    public EggForm White { get; }

    /// <summary>The white, g; of a powder, the powder.</summary>
    public double WhiteGrams { get; }

    /// <summary>The water that a powder is made up with, g; 0 of liquid white.</summary>
    public double WaterGrams { get; }

    /// <summary>The sugar, g.</summary>
    public double SugarGrams { get; }

    /// <summary>The cream of tartar, g.</summary>
    public double AcidGrams { get; }

    /// <summary>The white as it is whipped, g: with the water that a powder is made up with.</summary>
    public double LiquidWhiteGrams => WhiteGrams + WaterGrams;

    /// <summary>The water of the white, g.</summary>
    public double WhiteWaterGrams => WhiteGrams * FormulaPart.Water.FractionIn(White.Ingredient) + WaterGrams;

    /// <summary>Grams of sugar to a gram of white: 1 is the soft meringue of the books, 2 the hard one.</summary>
    public double SugarPerWhite => SugarGrams / LiquidWhiteGrams;

    /// <summary>Sucrose in 100 g of sucrose and water, g. Worked numbers: 53.31 at 1 : 1 of fresh white, 69.55 at 2 : 1.</summary>
    public double SucrosePercent => 100 * SugarGrams / (SugarGrams + WhiteWaterGrams);

    /// <summary>The sugar in the water of the white, as if all of it were dissolved.</summary>
    public SugarSolution Solution { get; }

    /// <summary>
    /// The lowest temperature at which all the sugar can be dissolved, °C, from 0; <see langword="null"/> where even at 100 °C some stays.
    /// It says what is possible, not how long it takes. Worked number: 37.1 at 2 : 1 of fresh white.
    /// </summary>
    public double? DissolvedAtCelsius => Crystallisation.DissolvedAtCelsius(Solution);

    /// <summary>The cream of tartar in 100 g of white, g. Worked number: 1/8 teaspoon on the white of a US large egg is 1.14.</summary>
    public double AcidPercent => 100 * AcidGrams / LiquidWhiteGrams;

    /// <summary>
    /// A base of liquid white; what else is in it is said after it: <c>MeringueBase.Of(white, 100).WithSugar(200).WithAcid(0.5)</c>.
    /// </summary>
    /// <param name="white">The form of the white.</param>
    /// <param name="whiteGrams">How much of it, g, above 0 to 1e9.</param>
    /// <exception cref="ArgumentNullException"><paramref name="white"/> is null.</exception>
    /// <exception cref="ArgumentException">The form is no white, or a powder.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="whiteGrams"/> is outside its range.</exception>
    public static MeringueBase Of(EggForm white, double whiteGrams) => Of(white, whiteGrams, 0);

    /// <summary>A base of powder made up with water.</summary>
    /// <param name="powder">The form of the white.</param>
    /// <param name="powderGrams">How much of it, g, above 0 to 1e9.</param>
    /// <param name="waterGrams">The water, g, from <paramref name="powderGrams"/> to 1e9: in less of it no powder becomes a white.</param>
    /// <exception cref="ArgumentNullException"><paramref name="powder"/> is null.</exception>
    /// <exception cref="ArgumentException">The form is no white.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static MeringueBase OfPowder(EggForm powder, double powderGrams, double waterGrams)
    {
        Guard.InRange(powderGrams, Guard.Trace, MostGrams);
        return Of(IsWhite(powder), powderGrams, 0, 0, Guard.InRange(waterGrams, powderGrams, MostGrams));
    }

    /// <summary>The base with so much sugar.</summary>
    /// <param name="grams">The sugar, g, from 0 to 1e9.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public MeringueBase WithSugar(double grams) => new(White, WhiteGrams, Guard.InRange(grams, 0, MostGrams), AcidGrams, WaterGrams);

    /// <summary>The base with so much cream of tartar.</summary>
    /// <param name="grams">The cream of tartar, g, from 0 to 1e9.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public MeringueBase WithAcid(double grams) => new(White, WhiteGrams, SugarGrams, Guard.InRange(grams, 0, MostGrams), WaterGrams);

    private static EggForm IsWhite(EggForm form, [CallerArgumentExpression(nameof(form))] string name = "") =>
        Guard.NotNull(form, name).Part == EggPart.White ? form
            : throw new ArgumentException($"{name} '{form.Name}' is {form.Part.Word()}; a meringue is made of white.", name);

    internal static MeringueBase Of(EggForm white, double whiteGrams, double sugarGrams, double acidGrams = 0, double waterGrams = 0)
    {
        Guard.InRange(whiteGrams, Guard.Trace, MostGrams);
        Guard.InRange(sugarGrams, 0, MostGrams);
        Guard.InRange(acidGrams, 0, MostGrams);
        Guard.InRange(waterGrams, 0, MostGrams);
        MeringueBase made = new(IsWhite(white), whiteGrams, sugarGrams, acidGrams, waterGrams);
        return made.WhiteWaterGrams >= whiteGrams * white.SolidsFraction.Likely ? made
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(white)} '{white.Name}' has {made.WhiteWaterGrams:0.##} g of water on "
                + $"{whiteGrams * white.SolidsFraction.Likely:0.##} g of solids; make a powder up with water: "
                + $"{nameof(OfPowder)}."), nameof(white));
    }

    /// <summary>Whether all the sugar can be dissolved at a temperature.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public bool CanDissolveAt(double celsius) => Crystallisation.Of(Solution, celsius).Supersaturation <= 1;

    /// <summary>The sugar that stays undissolved at a temperature however long it takes.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <returns>Grams. Worked number: 200 g of sugar on 100 g of fresh white at 20 °C: 24.5.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double UndissolvedGrams(double celsius) => Crystallisation.Of(Solution,
        celsius).CrystalFraction * (SugarGrams + WhiteWaterGrams);

    /// <summary>The cream of tartar in teaspoons.</summary>
    /// <param name="system">Whose teaspoons.</param>
    /// <returns>Teaspoons. Worked number: 0.375 g is 1/8 US teaspoon, at the 3.0 g of the food tables.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="system"/> is null.</exception>
    public Spread AcidTeaspoons(MeasuringSystem system)
    {
        Spread millilitres = Conversion.Of(White.Forms.Needed("cream-of-tartar"), Guard.NotNull(system)).ToVolume(AcidGrams).Millilitres;
        return millilitres / system.MillilitresPer(KitchenUnit.Teaspoon);
    }

    /// <summary>The foam of the white alone, before the sugar, at so many times its volume.</summary>
    /// <param name="times">The volume of the foam over that of the liquid, from 1 to 100. White alone at its most has 6 to 8.</param>
    /// <returns>
    /// The foam; its liquid has the density that the table gives the white, and a powder made up with water that of fresh white.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> is outside its range.</exception>
    internal Foam WhiteFoam(double times) => Foam.Of(WhiteGramsPerMillilitre).ToTimes(times);

    /// <summary>The most foam that the white makes alone, mL: 6 to 8 times its volume, likely the middle.</summary>
    /// <remarks>Fat, powder and old white make less. Worked number: 100 g of fresh white: 681, from 583 to 778.</remarks>
    public Spread FoamMillilitres
    {
        get
        {
            MeringueFigure times = Meringue.French.FiguresOf(MeringueQuantity.FoamVolume)[0];
            double liquid = LiquidWhiteGrams / WhiteGramsPerMillilitre;
            return new Spread(liquid * times.Low, liquid * (times.Low + times.High) / 2, liquid * times.High,
                times.Provenance.Evidence.BasisOfRange());
        }
    }

    /// <summary>
    /// The syrup of an Italian meringue of this base: all its sugar and some water, cooked to the trade's 115 to 121 °C at sea level.
    /// </summary>
    /// <param name="waterGrams">The water put into the pot, g, above 0 to 1e9.</param>
    /// <param name="pressure">The pressure of the kitchen.</param>
    /// <returns>The pot at both ends of the range, at the temperatures that mean the same strength in this kitchen.</returns>
    /// <remarks>Caution: <see cref="CookingStage.Caution"/></remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="waterGrams"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The base has no sugar.</exception>
    public PotTarget ItalianSyrup(double waterGrams, AirPressure pressure)
    {
        MeringueFigure range = Meringue.Italian.FiguresOf(MeringueQuantity.SyrupCelsius)[0];
        return ItalianSyrup(waterGrams, pressure, CookingStage.Of("Italian meringue", range.Low, range.High));
    }

    /// <summary>The syrup of an Italian meringue of this base, cooked to a stage.</summary>
    /// <param name="waterGrams">The water put into the pot, g, above 0 to 1e9.</param>
    /// <param name="pressure">The pressure of the kitchen.</param>
    /// <param name="stage">The stage, such as firm ball.</param>
    /// <returns>The pot at both ends of the stage.</returns>
    /// <remarks>Caution: <see cref="CookingStage.Caution"/></remarks>
    /// <exception cref="ArgumentNullException"><paramref name="stage"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="waterGrams"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The base has no sugar.</exception>
    public PotTarget ItalianSyrup(double waterGrams, AirPressure pressure, CookingStage stage)
    {
        Guard.InRange(waterGrams, Guard.Trace, MostGrams);
        return SugarGrams > 0
            ? SyrupPot.Of(SugarSolution.FromGrams([new(Constituent.Sucrose, SugarGrams), new(Constituent.Water, waterGrams)]),
                SugarGrams + waterGrams).CookTo(Guard.NotNull(stage), pressure)
            : throw new InvalidOperationException("The base has no sugar to boil.");
    }

    /// <summary>
    /// What a cooked syrup makes with the water of the white: the solution of the Italian meringue, before anything dries.
    /// </summary>
    /// <param name="syrup">The cooked syrup, from <see cref="ItalianSyrup(double, AirPressure)"/>.</param>
    /// <exception cref="ArgumentNullException"><paramref name="syrup"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The syrup weighs more than 1e9 g.</exception>
    public SugarSolution WithSyrup(PotEnd syrup)
    {
        Guard.InRange(Guard.NotNull(syrup).FinalGrams.Likely, 0, MostGrams, nameof(syrup));
        return SugarSolution.Mix(syrup.Pot.Solution, syrup.FinalGrams.Likely, SugarSolution.PureWater, WhiteWaterGrams);
    }

    /// <summary>One line, such as <c>100 g fresh egg white, 200 g sugar: 2 : 1, 69.5 % sucrose</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{LiquidWhiteGrams:0.##} g {White.Name}, {SugarGrams:0.##} g sugar: {SugarPerWhite:0.##} : 1, {SucrosePercent:0.0} % sucrose");

    private double WhiteGramsPerMillilitre
    {
        get
        {
            Ingredient liquid = (White.IsDry ? White.Forms.FreshWhite : White).Ingredient;
            return liquid.Density(liquid.DefaultPacking).GramsPerMillilitre.Likely;
        }
    }
}
