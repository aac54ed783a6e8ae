using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Keeping;
using Confectio.Sugars;
using Confectio.Text;

namespace Confectio.Comparisons;

/// <summary>Two formulas compared: line by line, by what they are made of, by sweetness, solid fat and water activity, and in a sentence which is sweeter, softer, keeps longer.</summary>
/// <remarks>
/// <para>
/// All is in shares, so that a formula and twice of it are the same. What differs by less than is known is said to be not told apart. A difference has a spread of its own: the
/// butter of both is one butter, the cups of both are filled by one hand, a melting curve that both follow is off in both, and such an error counts only by as much as the one
/// formula has more of it (GUM, JCGM 100:2008, 5.2.2). Comparing the second with the first turns every answer round.
/// </para>
/// <para>
/// Keeping is what <see cref="KeepingAnswer"/> says of each, and never more; a water activity is not turned into days. Softness is solid fat alone, and only where both have the
/// same fats. Worked number: 250 g of butter with 500 g of icing sugar have 27.04 % fat, and
/// with 30 g of milk more 26.12 %: 0.92 less, known to 0.1, though each alone is known to 0.6.
/// </para>
/// </remarks>
public sealed class FormulaComparison
{
    // A sweet thing without a figure may be left out of a sum up to this share of the whole.
    private const double MostUncounted = 0.005;

    private FormulaComparison(Formula first, Formula second, ComparisonOptions options)
    {
        First = first;
        Second = second;
        Options = options;
        FormulaPair pair = new(first, second);
        Balance one = Balance.Of(first), other = Balance.Of(second);
        Lines = LinesOf(pair);
        Parts = [.. one.Items.Concat(other.Items).Select(item => item.Part).Distinct().OrderBy(PlaceOf).Select(part => pair.Part(part, one, other))];
        Sweetness = SweetnessOf(pair, options.Sweetness);
        SolidFatDifference[] fats = [.. options.Celsius.Select(celsius => SolidFatDifference.Of(pair, celsius, options.Fats))];
        SolidFat = [.. fats.Select(fat => fat.Figure)];
        FirstKeeping = KeepingAnswer.Of(first, options.FirstPh, options.FirstFood);
        SecondKeeping = KeepingAnswer.Of(second, options.SecondPh, options.SecondFood);
        WaterActivity = ActivityDifference.Of(pair, FirstKeeping, SecondKeeping);
        (FirstName, SecondName) = NamesOf(first, second);
        Sweeter = SweeterOf();
        Softer = [.. fats.Select((fat, i) => SofterOf(fat, options.Celsius[i]))];
        KeepsLonger = [.. FirstKeeping.Places.Zip(SecondKeeping.Places, LongerOf)];

        int PlaceOf(FormulaPart part) => one.Items.Concat(other.Items).Select((item, i) => (item.Part, i)).First(item => item.Part == part).i;
    }

    /// <summary>The first formula.</summary>
    public Formula First { get; }

    /// <summary>The second formula.</summary>
    public Formula Second { get; }

    /// <summary>By what they were compared.</summary>
    public ComparisonOptions Options { get; }

    /// <summary>What the sentences call the first: its name, or <c>the first</c> where it has none or both have one name.</summary>
    public string FirstName { get; }

    /// <summary>What the sentences call the second.</summary>
    public string SecondName { get; }

    /// <summary>Every ingredient once, those of the first in its order, then those that only the second has.</summary>
    public IReadOnlyList<ComparedLine> Lines { get; }

    /// <summary>The water that boils off, in per cent of what is put in, of the first.</summary>
    public double FirstBoiledOffPercent => 100 * First.BoiledOffGrams / First.PutInGrams;

    /// <summary>The water that boils off, in per cent of what is put in, of the second.</summary>
    public double SecondBoiledOffPercent => 100 * Second.BoiledOffGrams / Second.PutInGrams;

    /// <summary>What both are made of when they are done, in per cent: the parts of which one of them has some, in the order of a balance.</summary>
    public IReadOnlyList<ComparedFigure> Parts { get; }

    /// <summary>Grams of sucrose that 100 g are as sweet as, by the sum of the table.</summary>
    public ComparedFigure Sweetness { get; }

    /// <summary>Solid fat in per cent of the whole, one for each temperature.</summary>
    public IReadOnlyList<ComparedFigure> SolidFat { get; }

    /// <summary>The activity of the water as it will stand, at 25 °C.</summary>
    public ComparedFigure WaterActivity { get; }

    /// <summary>What is known about keeping the first.</summary>
    public KeepingAnswer FirstKeeping { get; }

    /// <summary>What is known about keeping the second.</summary>
    public KeepingAnswer SecondKeeping { get; }

    /// <summary>Which is sweeter.</summary>
    public ComparisonVerdict Sweeter { get; }

    /// <summary>Which is softer, one for each temperature.</summary>
    public IReadOnlyList<ComparisonVerdict> Softer { get; }

    /// <summary>Which keeps longer, one for each place.</summary>
    public IReadOnlyList<ComparisonVerdict> KeepsLonger { get; }

    /// <summary>The cautions that the first deserves.</summary>
    public IReadOnlyList<Caution> FirstCautions => First.Cautions;

    /// <summary>The cautions that the second deserves.</summary>
    public IReadOnlyList<Caution> SecondCautions => Second.Cautions;

    /// <summary>Allergens to declare of the second and not of the first: who serves the second in place of the first has to say so.</summary>
    public IReadOnlyList<Allergen> NewAllergens => [.. Second.Allergens.Except(First.Allergens)];

    /// <summary>Whether the two are one formula, but for how much is made: every share of every ingredient and of what boils off is the same.</summary>
    public bool AreTheSame => Lines.All(line => line.Percent.Answer == ComparedAnswer.Same) && Math.Abs(FirstBoiledOffPercent - SecondBoiledOffPercent) <= 1e-7;

    /// <summary>Compares two formulas.</summary>
    /// <param name="first">The first.</param>
    /// <param name="second">The second.</param>
    /// <param name="options">By what.</param>
    /// <returns>The comparison.</returns>
    /// <exception cref="ArgumentNullException">A formula is null.</exception>
    public static FormulaComparison Of(Formula first, Formula second, ComparisonOptions? options = null) =>
        new(Guard.NotNull(first), Guard.NotNull(second), options ?? ComparisonOptions.Default);

    /// <summary>The three answers.</summary>
    public override string ToString() => string.Join(" ", new[] { Sweeter }.Concat(Softer).Concat(KeepsLonger).Select(verdict => verdict.Sentence));

    private static ComparedLine[] LinesOf(FormulaPair pair)
    {
        // Common practice: baker's percentages are counted on what is milled of cereals, not on ground nuts.
        Ingredient[] flours = [.. pair.Ingredients.Where(food => food.Id.StartsWith("flour-", StringComparison.Ordinal) && FormulaPart.Starch.FractionIn(food) > 0.5)];
        double flourFirst = flours.Sum(flour => pair.First.GramsOf(flour) ?? 0), flourSecond = flours.Sum(flour => pair.Second.GramsOf(flour) ?? 0);
        bool onFlour = flourFirst > Guard.Trace && flourSecond > Guard.Trace;
        return
        [
            .. pair.Ingredients.Select(ingredient =>
            {
                double? first = pair.First.GramsOf(ingredient), second = pair.Second.GramsOf(ingredient);
                double a = (first ?? 0) / pair.First.PutInGrams, b = (second ?? 0) / pair.Second.PutInGrams;
                SharedErrors errors = new(), alone = new(), other = new();
                double Slope(Ingredient food, double share, Formula formula) => 100 * ((food == ingredient ? 1 : 0) - share) / formula.PutInGrams;
                errors.AddMeasures(pair.First, food => -Slope(food, a, pair.First));
                errors.AddMeasures(pair.Second, food => Slope(food, b, pair.Second));
                alone.AddMeasures(pair.First, food => Slope(food, a, pair.First));
                other.AddMeasures(pair.Second, food => Slope(food, b, pair.Second));
                ComparedFigure percent = new(ingredient.Name, "%", Cut(alone.Around(100 * a, pair.Basis)), Cut(other.Around(100 * b, pair.Basis)), errors.Around(100 * (b - a), pair.Basis), "");
                return new ComparedLine(ingredient, first, second, percent, onFlour && first is double x ? 100 * x / flourFirst : null, onFlour && second is double y ? 100 * y / flourSecond : null);
            }),
        ];

        static Spread Cut(Spread value) => value.Low == value.High ? value : new Spread(Math.Max(0, value.Low), value.Likely, Math.Min(100, Math.Max(value.Likely, value.High)), value.Basis);
    }

    // 100 g of both as grams of sucrose: the figures of the table are off in both alike, and so is each ingredient.
    private static ComparedFigure SweetnessOf(FormulaPair pair, SweetnessTable table)
    {
        SharedErrors errors = pair.ErrorsOf(food => 100 * table.Part.FractionIn(food), food => 100 * table.Part.StandardUncertaintyIn(food), 0, out double first, out double second);
        SharedErrors alone = new(), other = new();
        foreach (SweetnessFigure figure in table.Figures)
        {
            FormulaPart part = FormulaPart.Of(figure.Constituent);
            double u = 100 * (figure.Value.High - figure.Value.Low) / 4, a = ShareOf(pair.First, part), b = ShareOf(pair.Second, part);
            errors.Add(figure, (b - a) * u);
            alone.Add(figure, a * u);
            other.Add(figure, b * u);
        }
        Sweetness one = table.Of(pair.First), two = table.Of(pair.Second);
        Constituent[] missing = [.. one.Missing.Concat(two.Missing).Distinct()];
        string why = missing.Length == 0 ? "" : $"no figure of {string.Join(", ", missing.Select(constituent => FormulaPart.Of(constituent).Name))}, which counts nothing";
        bool isOpen = missing.Sum(constituent => Math.Abs(ShareOf(pair.Second, FormulaPart.Of(constituent)) - ShareOf(pair.First, FormulaPart.Of(constituent)))) > MostUncounted;
        return new ComparedFigure("sweetness", "g of sucrose in 100 g", Wide(alone, first), Wide(other, second), errors.Around(second - first, SpreadBasis.Judged), why, isOpen ? ComparedAnswer.CannotBeTold : null);

        Spread Wide(SharedErrors figures, double value) => figures.StandardUncertainty is > 0 and double u ? new Spread(Math.Max(0, value - 2 * u), value, value + 2 * u, SpreadBasis.Judged) : Spread.Exactly(value);

        static double ShareOf(Formula formula, FormulaPart part) => formula.Lines.Sum(line => part.FractionIn(line.Ingredient) * line.Grams.Likely) / formula.TotalGrams;
    }

    private ComparisonVerdict SweeterOf()
    {
        const string Company = "Temperature, fat, acid and salt move what is tasted.";
        string sentence = Sweetness.Answer switch
        {
            ComparedAnswer.Same => $"{FirstName} and {SecondName} are as sweet as each other by the sugars in them: {Sweetness.Text(Sweetness.First)}.",
            ComparedAnswer.CannotBeTold => $"Which is sweeter cannot be told: {Both(Sweetness)}{(Sweetness.Why.Length > 0 ? $"; {Sweetness.Why}" : "")}.",
            _ => $"{Of(Sweetness.Answer)} is sweeter by the sugars in it: {Ranked(Sweetness)}.",
        };
        return new ComparisonVerdict("sweeter", Sweetness.Answer, $"{sentence} {Company}");
    }

    private ComparisonVerdict SofterOf(SolidFatDifference fat, double celsius)
    {
        string question = string.Create(CultureInfo.InvariantCulture, $"softer at {celsius:0.##} °C");
        ComparedFigure figure = fat.Figure;
        if (figure.Answer == ComparedAnswer.NotKnown)
            return new ComparisonVerdict(question, ComparedAnswer.NotKnown, string.Create(CultureInfo.InvariantCulture, $"Which is softer at {celsius:0.##} °C is not known: {Called(fat.WhyNot)}."));
        if (!fat.HaveOneFat && !AreTheSame)
            return new ComparisonVerdict(question, ComparedAnswer.CannotBeTold, string.Create(CultureInfo.InvariantCulture, $"Which is softer at {celsius:0.##} °C cannot be told: {Called(fat.WhyNot)}; solid fat is {Both(figure)}."));
        const string Else = "That is the solid fat alone: water, air and crystals move it too.";
        ComparedAnswer softer = figure.Answer switch { ComparedAnswer.First => ComparedAnswer.Second, ComparedAnswer.Second => ComparedAnswer.First, _ => figure.Answer };
        string evidence = figure.Why.Length > 0 ? $", {figure.Why}" : "";
        return new ComparisonVerdict(question, softer, string.Create(CultureInfo.InvariantCulture, $"At {celsius:0.##} °C ") + softer switch
        {
            ComparedAnswer.Same => $"{FirstName} and {SecondName} are as firm as each other: {figure.Text(figure.First)} of solid fat{evidence}. {Else}",
            ComparedAnswer.CannotBeTold => $"which is softer cannot be told: solid fat is {Both(figure)}{evidence}. {Else}",
            _ => $"{Of(softer)} is softer, with less solid fat: {Ranked(figure)}{evidence}. {Else}",
        });
    }

    private ComparisonVerdict LongerOf(PlaceVerdict one, PlaceVerdict two)
    {
        string place = one.Place switch { KeepingPlace.Counter => "on the counter", KeepingPlace.Refrigerator => "in the refrigerator", _ => "in the freezer" };
        string question = $"keeps longer {place}";
        string Days(double? days) => days is double known ? known == 0 ? "not to be kept there" : string.Create(CultureInfo.InvariantCulture, $"{known:0.#} {(known == 1 ? "day" : "days")} at the strictest") : "no time is printed";
        string both = $"{FirstName}: {Days(one.Days)}; {SecondName}: {Days(two.Days)}";
        if (one.Days is not double first || two.Days is not double second)
            return new ComparisonVerdict(question, ComparedAnswer.NotKnown, $"Which keeps longer {place} is not known: {both}.");
        bool isBound = IsBound(one), isOtherBound = IsBound(two);
        // What keeps no longer than its butter may keep less long than the other.
        if (one.Sentence != two.Sentence && (first >= second && isBound || second >= first && isOtherBound))
        {
            return new ComparisonVerdict(question, ComparedAnswer.CannotBeTold, $"Which keeps longer {place} cannot be told: {both}; "
                + $"{(isBound && isOtherBound ? "both times are those" : $"that of {(isBound ? FirstName : SecondName)} is that")} of an ingredient, and no more than a bound.");
        }
        ComparedAnswer answer = first == second ? ComparedAnswer.Same : first > second ? ComparedAnswer.First : ComparedAnswer.Second;
        return new ComparisonVerdict(question, answer, answer == ComparedAnswer.Same ? first == 0 ? $"Neither {FirstName} nor {SecondName} is to be kept {place} by the strictest rule."
            : $"{FirstName} and {SecondName} keep as long as each other {place} by printed advice: {Days(first)}."
            : $"{Of(answer)} keeps longer {place} by printed advice: {Days(Math.Max(first, second))}, against {(Math.Min(first, second) == 0 ? "not at all" : string.Create(CultureInfo.InvariantCulture, $"{Math.Min(first, second):0.#}"))} of {Of(answer == ComparedAnswer.First ? ComparedAnswer.Second : ComparedAnswer.First)}.");
    }

    // The time of an ingredient by itself, and none of the food.
    private static bool IsBound(PlaceVerdict verdict) => verdict is { Days: > 0, From: { Food.Length: 0 } };

    private string Of(ComparedAnswer answer) => answer == ComparedAnswer.First ? FirstName : SecondName;

    private string Both(ComparedFigure figure) => $"{FirstName} {figure.Text(figure.First)}, {SecondName} {figure.Text(figure.Second)}{(figure.Range() is { Length: > 0 } && figure.Difference is Spread range
        ? $", and the difference may be from {figure.Number(range.Low)} to {figure.Number(range.High)}" : "")}";

    // The larger first, whichever of the two it is.
    private static string Ranked(ComparedFigure figure)
    {
        (Spread? more, Spread? less) = figure.Answer == ComparedAnswer.First ? (figure.First, figure.Second) : (figure.Second, figure.First);
        return $"{figure.Text(more)} against {figure.Number(less?.Likely ?? 0)}, {figure.Number(Math.Abs(figure.Difference!.Value.Likely))} more{figure.Range()}";
    }

    private string Called(string why) => why.Replace("the first", FirstName, StringComparison.Ordinal).Replace("the second", SecondName, StringComparison.Ordinal);

    private static (string First, string Second) NamesOf(Formula first, Formula second)
    {
        string one = VisibleText.Of(first.Name.Trim()), two = VisibleText.Of(second.Name.Trim());
        return one.Length is 0 or > 100 || two.Length is 0 or > 100 || one == two ? ("the first", "the second") : (one, two);
    }
}
