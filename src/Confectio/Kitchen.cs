using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using Confectio.Cards;
using Confectio.Conversions;
using Confectio.Cooking;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Heat;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Publishing;
using Confectio.Sugars;
using Confectio.Text;
using Confectio.Vetting;

namespace Confectio;

/// <summary>
/// A kitchen: whose cups, whose names, which table of ingredients, which tools, whose eggs, and how high it stands. One call a job.
/// </summary>
/// <remarks>
/// A kitchen is a value: it has no state and no clock, and never changes; <see cref="With(IngredientTable)"/>,
/// <see cref="With(MeasuringTools)"/> and <see cref="At(AirPressure)"/> make another. No kitchen is the default: whoever wants one says
/// which. Everything it does can be done without it, one room down, with every choice spelt out.
/// Worked number: <c>Kitchen.UsCustomary.Convert("1 1/2 cups sifted powdered sugar")</c> is 146.2 g (129.6 to 164.9).
/// <para>
/// Jobs that depend on nobody's cups are not here: a probe's log (<see cref="Safety.LethalityJudgement"/>), where a mix lands
/// (<see cref="Heat.HeatBalance"/>), how hard a fat is (<see cref="Heat.SolidFatCurve"/>), what is in a formula
/// (<see cref="Formulas.Balance"/>), a cake that is not in a file (<see cref="Cakes.Cake"/>, <see cref="Icings.IcingPlan"/>).
/// </para>
/// </remarks>
public sealed class Kitchen
{
    private Kitchen(
        MeasuringSystem measuringSystem, IngredientTable ingredients, MeasuringTools tools, AirPressure pressure, EggSizeSystem eggSizes)
    {
        MeasuringSystem = measuringSystem;
        Ingredients = ingredients;
        Tools = tools;
        Pressure = pressure;
        EggSizes = eggSizes;
    }

    /// <summary>US customary cups, American names, US eggs; the built-in table, the usual cups and spoons, at sea level.</summary>
    // Made when it is asked for: nobody else's kitchen needs the table with American names.
    public static Kitchen UsCustomary => field ??= Of(MeasuringSystem.UsCustomary, IngredientTable.BuiltIn.WithAmericanNames(), "us");

    /// <summary>
    /// Metric cups of 250 mL and spoons of 15 and 5, our names, European eggs; the built-in table, the usual cups and spoons, at sea
    /// level.
    /// </summary>
    public static Kitchen Metric { get; } = Of(MeasuringSystem.Metric, IngredientTable.BuiltIn, "eu");

    /// <summary>
    /// Australian cups of 250 mL and tablespoons of 20, our names, European egg classes for want of Australian ones; at sea level.
    /// </summary>
    public static Kitchen Australian { get; } = Of(MeasuringSystem.Australian, IngredientTable.BuiltIn, "eu");

    /// <summary>Imperial measures, our names, the egg classes of the EU, which the United Kingdom kept (recalled); at sea level.</summary>
    public static Kitchen Imperial { get; } = Of(MeasuringSystem.Imperial, IngredientTable.BuiltIn, "eu");

    /// <summary>Japanese cups of 200 mL, our names, Japanese eggs; at sea level.</summary>
    public static Kitchen Japanese { get; } = Of(MeasuringSystem.Japanese, IngredientTable.BuiltIn, "japan");

    /// <summary>Whose cups and spoons.</summary>
    public MeasuringSystem MeasuringSystem { get; }

    /// <summary>The ingredients, under the names that this kitchen uses.</summary>
    public IngredientTable Ingredients { get; }

    /// <summary>The cups and spoons in the drawer.</summary>
    public MeasuringTools Tools { get; }

    /// <summary>The pressure of the air, which decides where water and syrup boil.</summary>
    public AirPressure Pressure { get; }

    /// <summary>Whose egg sizes.</summary>
    public EggSizeSystem EggSizes { get; }

    /// <summary>Whether temperatures are written in Fahrenheit first.</summary>
    public bool IsAmerican => MeasuringSystem.Family == MeasuringSystem.UsCustomary.Family;

    /// <summary>The kitchen with another table: your own ingredients layered over <see cref="Ingredients"/>.</summary>
    /// <param name="ingredients">The table.</param>
    /// <returns>The kitchen.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredients"/> is null.</exception>
    public Kitchen With(IngredientTable ingredients) => new(MeasuringSystem, Guard.NotNull(ingredients), Tools, Pressure, EggSizes);

    /// <summary>The kitchen with another drawer.</summary>
    /// <param name="tools">The cups and spoons, of <see cref="MeasuringSystem"/>.</param>
    /// <returns>The kitchen.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="tools"/> is null.</exception>
    /// <exception cref="ArgumentException">The tools are of another measuring system.</exception>
    public Kitchen With(MeasuringTools tools) => Guard.NotNull(tools).MeasuringSystem == MeasuringSystem
        ? new(MeasuringSystem, Ingredients, tools, Pressure, EggSizes)
        : throw new ArgumentException($"{nameof(tools)} are {tools.MeasuringSystem.Name} and the kitchen is {MeasuringSystem.Name}.",
            nameof(tools));

    /// <summary>The kitchen somewhere else.</summary>
    /// <param name="pressure">The pressure there.</param>
    /// <returns>The kitchen.</returns>
    public Kitchen At(AirPressure pressure) => new(MeasuringSystem, Ingredients, Tools, pressure, EggSizes);

    /// <summary>The kitchen somewhere else, as people say it.</summary>
    /// <param name="place">
    /// An altitude, such as <c>1600 m</c> or <c>5,200 ft</c> (standard atmosphere), or a pressure, such as <c>84 kPa</c> or <c>24.9
    /// inHg</c>.
    /// </param>
    /// <returns>The kitchen. Worked number: at 1600 m water boils at 94.65 °C.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="place"/> is null.</exception>
    /// <exception cref="FormatException">The text is neither, or outside −500 to 9000 m or 1 to 200 kPa.</exception>
    public Kitchen At(string place)
    {
        if (AirPressure.TryParse(Guard.NotNull(place), out AirPressure pressure))
            return At(pressure);
        if (QuantityText.TryParseMetres(place, out double metres)
            && metres is >= AirPressure.MinimumMetres and <= AirPressure.MaximumMetres)
            return At(AirPressure.FromAltitudeMetres(metres));
        throw new FormatException($"{Excerpt.Of(place)} is no place: an altitude from -500 to 9000 m or a pressure from 1 to 200 kPa "
            + "was expected, such as 1600 m, 5200 ft or 84 kPa.");
    }

    /// <summary>
    /// What a line as a cook writes it weighs: <c>1 1/2 cups sifted powdered sugar</c>, <c>2 sticks butter</c>, <c>3 large egg
    /// whites</c>.
    /// </summary>
    /// <param name="line">An amount and an ingredient, with its packing before or behind it.</param>
    /// <returns>
    /// The mass, with its spread, and the conversion with its sources and cautions. Worked number: the first is 146.2 g (129.6 to
    /// 164.9).
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="line"/> is null.</exception>
    /// <exception cref="FormatException">
    /// It cannot be read; the message says what was read and what was expected, with near names.
    /// </exception>
    public ConvertedMass Convert(string line)
    {
        StringReader text = new(Guard.NotNull(line));
        Reading<Formula> reading = Formula.ReadText("", text, Ingredients, MeasuringSystem);
        IReadOnlyList<Problem> problems = reading.Problems;
        return problems.Count == 0 && reading.TryGet(out Formula? formula) && formula is { Lines: [{ Measured: ConvertedMass mass }] }
            ? mass
            : throw new FormatException($"{Excerpt.Of(line)} cannot be converted: "
                + (problems.Count > 0 ? problems[0].Message : "one line with one amount was expected") + ".");
    }

    /// <summary>A mass or a volume of an ingredient as the fewest fills of the cups and spoons in the drawer.</summary>
    /// <param name="amount">The amount, such as <c>340 g</c> or <c>12 oz</c>.</param>
    /// <param name="ingredient">The ingredient, with its packing if you like: <c>powdered sugar, sifted</c>.</param>
    /// <param name="allowedError">The largest error allowed, as a fraction from 0 to 0.5.</param>
    /// <returns>
    /// The measures; <see langword="null"/> where no filling comes near enough. Worked number: 340 g of unsalted butter are 1 1/2 cups.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="FormatException">It cannot be read.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The error is outside its range, or the volume outside 0.01 to 1 000 000 mL.
    /// </exception>
    public PracticalMeasure? Measure(string amount, string ingredient, double allowedError = 0.02)
    {
        Guard.InRange(allowedError, 0, 0.5);
        // Read as a line of a cup of it, so that its packing is understood; then the grams are measured by that density.
        ConvertedMass cup = Convert($"1 cup {Guard.NotNull(ingredient)}");
        return cup.By!.ToMeasures(cup.By.ToMass(Amount.Parse(Guard.NotNull(amount))).Grams.Likely, Tools, allowedError);
    }

    /// <summary>A formula from text, an ingredient a line; every line must be right.</summary>
    /// <param name="name">The name; may be empty.</param>
    /// <param name="text">The lines, such as <c>2 cups granulated sugar</c>.</param>
    /// <returns>The formula.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="FormatException">A line could not be used; the message has all of them, at most 20.</exception>
    public Formula ParseFormula(string name, string text) => Formula.ParseText(name, text, Ingredients, MeasuringSystem);

    /// <summary>A formula as a card in this kitchen's measures and names, and in those of others beside them.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="also">Whose cups and spoons stand beside this kitchen's; its own need not be named.</param>
    /// <returns>The card. With more of a choice: <see cref="FormulaCard.Of"/>.</returns>
    /// <exception cref="ArgumentNullException">An argument or a system is null.</exception>
    public FormulaCard Card(Formula formula, params MeasuringSystem[] also) => FormulaCard.Of(Guard.NotNull(formula), new CardOptions
    {
        MeasuringSystems = [.. Guard.NotNull(also).Select(system => Guard.NotNull(system, nameof(also))).Prepend(MeasuringSystem).Distinct()], Tools = [Tools], Names = Ingredients,
    });

    /// <summary>Judges a printed conversion table: which cup it uses, which rows are wrong, and what probably happened.</summary>
    /// <param name="table">Delimited text with a header line; see <see cref="ConversionTableVetter"/>.</param>
    /// <returns>
    /// The verdict. The measuring system is found from the rows and not taken from the kitchen: the sheet may be somebody else's.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="table"/> is null.</exception>
    public TableVerdict Vet(string table) => ConversionTableVetter.Vet(new StringReader(Guard.NotNull(table)), Ingredients);

    /// <summary>
    /// Judges a recipe card, a page or structured recipe data: measures against weights, temperatures, sums, stages, allergens.
    /// </summary>
    /// <param name="card">The text of the card; see <see cref="Cards.PrintedCard"/>.</param>
    /// <returns>
    /// The verdict. The measuring system is found from the lines and not taken from the kitchen: the card may be somebody else's. A sugar
    /// stage is judged at the height that the card states, and at the pressure of this kitchen where it states none.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="card"/> is null.</exception>
    /// <exception cref="FormatException">Nothing on it is an ingredient; the message says what was read.</exception>
    public CardVerdict VetCard(string card)
    {
        Reading<PrintedCard> reading = PrintedCard.Read(Guard.NotNull(card), Ingredients);
        bool stated = reading.TryGet(out PrintedCard? read) && read.Figures.Any(figure => figure.Kind == CardFigureKind.AltitudeMetres);
        return CardVetter.Vet(reading, new CardVettingOptions { Pressure = stated ? null : Pressure }) ?? throw new FormatException(reading.ToString());
    }

    /// <summary>
    /// A syrup cooked to a stage in this kitchen: the temperature, the sugar there, the water that boils off, what the pot weighs.
    /// </summary>
    /// <param name="formula">What is in the pot.</param>
    /// <param name="stage">The stage, such as <c>soft ball</c>.</param>
    /// <returns>The pot at both ends of the stage. Caution: <see cref="CookingStage.Caution"/></returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">
    /// There is no such stage (the message lists them), or nothing in the formula dissolves.
    /// </exception>
    public PotTarget CookSyrup(Formula formula, string stage) =>
        SyrupPot.Of(Guard.NotNull(formula)).CookTo(CookingStage.Get(stage, nameof(stage)), Pressure);

    /// <summary>Eggs replaced by another form of the same part and water, at equal solids.</summary>
    /// <param name="eggs">
    /// How many eggs of which size, <c>8 large</c>; or a mass or a volume of the part, <c>250 g</c>, <c>1 cup</c>.
    /// </param>
    /// <param name="by">What comes in, such as <c>dried white</c> or <c>dried yolk</c>; see <see cref="EggForms"/>.</param>
    /// <param name="moisturePercent">
    /// The moisture of a powder, per cent, above 0 to 20, from its label; <see langword="null"/> for that of the table.
    /// </param>
    /// <returns>The replacement, with its spread. Caution: <see cref="EggCaution.Text"/></returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There is no such form, or the table has none.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The moisture is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The table of the kitchen lacks fresh egg, a common form of white, or water.</exception>
    /// <exception cref="FormatException">It is neither a count with a size of this kitchen nor a mass or a volume.</exception>
    public EggReplacement ReplaceEggs(string eggs, string by, double? moisturePercent = null)
    {
        if (EggForms.MissingFrom(Ingredients) is string missing)
            throw new InvalidOperationException($"The table of this kitchen has no '{missing}', which the forms of egg need.");
        EggForms forms = EggForms.Of(Ingredients);
        EggForm incoming = forms.Get(by, nameof(by));
        if (moisturePercent is double moisture)
            incoming = incoming.WithMoisture(Guard.InRange(moisture, 1e-7, 20, nameof(moisturePercent)) / 100);
        if (TryReadEggs(Guard.NotNull(eggs), out double count, out EggSize? size))
            return EggReplacement.Of(EggCount.Of(count, size), incoming);
        return Amount.TryParse(eggs.AsSpan().Trim(), out Amount amount) && !amount.IsPiece
            ? EggReplacement.Of(forms.Fresh(incoming.Part), amount, MeasuringSystem, incoming)
            : throw new FormatException(
                $"{Excerpt.Of(eggs)} is neither a count and a size ({EggSizes.Name}), such as 8 large, nor a mass or a volume.");
    }

    /// <summary>A formula times a factor, in the cups and spoons of the drawer: 5 teaspoons twelve times are 1 1/4 cups.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="factor">The factor, such as 60 portions over 12.</param>
    /// <returns>The scaled formula, each measure with its error.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="factor"/> is not above 0, or a line would be above 1e12 g.</exception>
    public ScaledFormula Scale(Formula formula, double factor) => ScaledFormula.Of(formula, factor, Tools);

    /// <summary>A formula scaled so that it takes so many eggs, in the cups and spoons of the drawer.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="eggs">How many of which size of this kitchen: <c>6 large</c>.</param>
    /// <param name="part">The part that is counted: whites, yolks or whole eggs.</param>
    /// <returns>The scaled formula. Worked number: 300 g of white to 12 US large eggs of 33 g is × 1.32.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The formula has none of that part fresh.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The part is not a defined value, or the count outside 0.5 to 1e6.</exception>
    /// <exception cref="FormatException">The text is no count with a size of this kitchen.</exception>
    public ScaledFormula ScaleToEggs(Formula formula, string eggs, EggPart part = EggPart.White) => TryReadEggs(Guard.NotNull(eggs), out double count, out EggSize? size)
        ? ScaledFormula.Of(formula, EggScale.Of(formula, size, part).FactorTo(Guard.InRange(count, 0.5, 1e6, nameof(eggs))), Tools)
        : throw new FormatException($"{Excerpt.Of(eggs)} is not a count and a size ({EggSizes.Name}), such as 6 large.");

    /// <summary>The formula of an icing scaled to the largest batch that fits a bowl, in the cups and spoons of the drawer.</summary>
    /// <param name="icing">The icing, with its formula, its density, and what of it is whipped.</param>
    /// <param name="bowl">The bowl.</param>
    /// <returns>The scaled formula.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="InvalidOperationException">The icing has no formula.</exception>
    public ScaledFormula ScaleToBowl(Icing icing, MixerBowl bowl)
    {
        double factor = Guard.NotNull(icing).LargestFactorIn(bowl);
        return ScaledFormula.Of(icing.Formula!, factor, Tools);
    }

    /// <summary>The formula that meets the demands of a problem best, or which of them collide; with its proof.</summary>
    /// <param name="json">The problem in JSON; see <see cref="FormulaProblem.ReadJson(string, IngredientTable)"/> and docs/schema.</param>
    /// <returns>The answer.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    /// <exception cref="FormatException">The text is no such problem; the message has all mistakes with their paths.</exception>
    public SolvedFormula Balance(string json) => ReadProblem(Encoding.UTF8.GetBytes(Guard.NotNull(json))).OrThrow().Solve();

    /// <summary>
    /// A problem in JSON, with all that it may ask for: shares, masses, and properties such as the water activity, the boiling point under
    /// the air of this kitchen, sweetness, solid fat, density and energy.
    /// </summary>
    /// <param name="json">The text in UTF-8, at most 4 MiB; see docs/schema/problem.json.</param>
    /// <returns>The problem, or every mistake in it with its place.</returns>
    public Reading<FormulaProblem> ReadProblem(ReadOnlySpan<byte> json) =>
        FormulaProblem.ReadJson(json, Ingredients, [.. SugarProperties.Kinds(Pressure), .. HeatProperties.Kinds, .. FormulaProperties.Kinds]);

    /// <summary>
    /// An order of a cake with its icings, to be planned with <see cref="IcingOrder.Plan"/>: how much of each, and in which batches.
    /// </summary>
    /// <param name="json">The order in JSON; see <see cref="IcingOrder.ReadJson(string, IngredientTable)"/> and docs/schema.</param>
    /// <returns>The order.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    /// <exception cref="FormatException">The text is no such order; the message has all mistakes with their paths.</exception>
    public IcingOrder ReadOrder(string json) => IcingOrder.ParseJson(json, Ingredients);

    /// <summary>
    /// A temperature as this kitchen writes it: <c>241 °F (116 °C)</c> in an American one, <c>116 °C (241 °F)</c> elsewhere.
    /// </summary>
    /// <param name="celsius">The temperature, °C, from −273.15 to 10 000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public string Temperature(double celsius)
    {
        Guard.InRange(celsius, -273.15, 10_000);
        string metric = string.Create(CultureInfo.InvariantCulture, $"{celsius:0} °C");
        string american = string.Create(CultureInfo.InvariantCulture, $"{CookingStage.ToFahrenheit(celsius):0} °F");
        return IsAmerican ? $"{american} ({metric})" : $"{metric} ({american})";
    }

    /// <summary>Whose cups and how high, such as <c>US customary kitchen, 84.00 kPa</c>.</summary>
    public override string ToString() => $"{MeasuringSystem.Name} kitchen, {Pressure}";

    // A count and a size, such as 8 large.
    private bool TryReadEggs(string eggs, out double count, [NotNullWhen(true)] out EggSize? size)
    {
        ReadOnlySpan<char> text = eggs.AsSpan().Trim();
        int space = text.IndexOf(' ');
        (count, size) = (0, null);
        return space > 0 && double.TryParse(text[..space], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out count)
            && EggSizes.TryGetSize(text[space..].Trim().ToString(), out size);
    }

    private static Kitchen Of(MeasuringSystem system, IngredientTable ingredients, string eggs) =>
        new(system, ingredients, MeasuringTools.Usual(system), AirPressure.SeaLevel, EggSizeSystem.Get(eggs));
}
