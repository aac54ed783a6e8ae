using System.Globalization;
using System.Text.Json;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Formulas.Solving;

/// <summary>The answer to a <see cref="FormulaProblem"/>.</summary>
public sealed class SolvedFormula
{
    private readonly double[] _grams;

    internal SolvedFormula(FormulaProblem problem, SolutionStatus status, double[] grams, double boiledOffGrams)
    {
        Problem = problem;
        Status = status;
        _grams = grams;
        BoiledOffGrams = boiledOffGrams;
        Results = DemandResult.Of(problem, grams, boiledOffGrams);
    }

    /// <summary>What was asked.</summary>
    public FormulaProblem Problem { get; }

    /// <summary>Whether there is a formula that keeps everything that must be kept.</summary>
    public SolutionStatus Status { get; }

    /// <summary>The mass of every ingredient of the problem, g, in order; 0 for one that is left out.</summary>
    public IReadOnlyList<double> Grams => _grams;

    /// <summary>Water boiled off, g.</summary>
    public double BoiledOffGrams { get; }

    /// <summary>What each demand got, in the order they were asked.</summary>
    public IReadOnlyList<DemandResult> Results { get; }

    /// <summary>
    /// What the base had of each demand, in the same order: what was wrong with the formula one started from. Empty where the base has no mass.
    /// </summary>
    public IReadOnlyList<DemandResult> BaseResults => !(Problem.BaseTotalGrams > 0) ? []
        : DemandResult.Of(Problem, [.. Problem.Candidates.Select(candidate => candidate.BaseGrams)], Problem.BaseBoiledOffGrams);

    /// <summary>The demands that bind.</summary>
    public IReadOnlyList<BindingDemand> Binding { get; internal init; } = [];

    /// <summary>What the demands do not fix.</summary>
    public DegreesOfFreedom DegreesOfFreedom => field ??= Freedom?.Invoke() ?? new DegreesOfFreedom(0, []);

    /// <summary>What finds it, when somebody asks; null where there is no answer.</summary>
    internal Func<DegreesOfFreedom>? Freedom { get; init; }

    /// <summary>The proof that the answer is the best there is; null unless it is solved.</summary>
    public AnswerCertificate? Certificate { get; internal init; }

    /// <summary>Demands that cannot all be met; null unless it is impossible.</summary>
    public ConflictingDemands? Conflict { get; internal init; }

    /// <summary>
    /// Why it is undecided, with the property that was not kept where it is one; <see langword="null"/> unless it is undecided.
    /// </summary>
    public string? WhyUndecided { get; internal init; }

    /// <summary>What the ingredients cost; 0 where no cost was given.</summary>
    public double Cost => Problem.Candidates.Zip(_grams, (candidate, grams) => candidate.CostPerKilogram * grams / 1000).Sum();

    /// <summary>
    /// What the answer rests on and nobody asked for by name: what was left out for an allergen, and why; which other choice does as well.
    /// </summary>
    public IReadOnlyList<string> Remarks => [.. Problem.Remarks, .. OtherChoices];

    internal IReadOnlyList<string> OtherChoices { get; init; } = [];

    /// <summary>What the ingredients cost in all and for a kilogram, and of which no price was given; null where there are no prices.</summary>
    public FormulaCost? FullCost => FormulaCost.Of(Problem, _grams, BoiledOffGrams);

    /// <summary>The same of the base; null where there are no prices, or the base has no mass.</summary>
    public FormulaCost? BaseCost =>
        FormulaCost.Of(Problem, [.. Problem.Candidates.Select(candidate => candidate.BaseGrams)], Problem.BaseBoiledOffGrams);

    /// <summary>The mass of one ingredient, g.</summary>
    /// <param name="ingredient">One of the ingredients of the problem.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentException">It is not one of them.</exception>
    public double GramsOf(Ingredient ingredient)
    {
        Guard.NotNull(ingredient);
        int at = Problem.IndexOf(ingredient);
        return at >= 0 ? _grams[at]
            : throw new ArgumentException($"{nameof(ingredient)} '{ingredient.Name}' is not one of the ingredients of the problem.",
                nameof(ingredient));
    }

    /// <summary>The answer as a formula: the lines above 0 g.</summary>
    /// <exception cref="InvalidOperationException">
    /// The answer has no mass, or more water would boil off than it has: then no formula meets the demands.
    /// </exception>
    public Formula ToFormula() => FormulaMaker.Make(Problem, _grams, BoiledOffGrams);

    /// <summary>How the answer moves when an end of a demand moves, and for how long that holds.</summary>
    /// <param name="demand">A demand of the problem, as it stands in <see cref="FormulaProblem.Demands"/>.</param>
    /// <param name="ofLowEnd">Which end moves; where the demand asks for one value, both do.</param>
    /// <remarks>
    /// Where only masses and shares of a given total are asked for it comes from the answer as it was solved. With shares of a part, a free
    /// total, ingredients that may be left out, a cost, or where the answer stands at a kink, the problem is solved again at some hundred
    /// places of the end, which takes a millisecond or more.
    /// </remarks>
    /// <exception cref="ArgumentNullException"><paramref name="demand"/> is null.</exception>
    /// <exception cref="ArgumentException">It is not a demand of the problem, or has no such end.</exception>
    /// <exception cref="InvalidOperationException">
    /// The problem is not solved, or asks for a property that is no share, such as the water activity: the pieces of such an answer are not
    /// followed.
    /// </exception>
    public Sensitivity SensitivityTo(Demand demand, bool ofLowEnd = true)
    {
        Guard.NotNull(demand);
        return Problem.Curved.FirstOrDefault() is not Demand.PropertyValue curved ? SensitivitySearch.Of(this, demand, ofLowEnd)
            : throw new InvalidOperationException($"The problem asks for '{curved}', which is no share; how its answer moves is not followed.");
    }

    /// <summary>
    /// The answers along an end of a demand: what 36, 37 and 38 % of fat each cost, in money, in what else was asked, and in grams moved.
    /// </summary>
    /// <param name="demand">A demand of the problem, as it stands in <see cref="FormulaProblem.Demands"/>.</param>
    /// <param name="ends">The places of the end, in the unit of the demand: a fraction for a share, g for a mass, from 1 to 1000 of them.</param>
    /// <param name="ofLowEnd">Which end moves; where the demand asks for one value, both do.</param>
    /// <returns>An answer for every place, in order; one that is impossible says so.</returns>
    /// <remarks>
    /// Every one is an answer of its own, with its proof. Worked example: <c>answer.Explore(fat, [0.36, 0.37, 0.38])</c>.
    /// </remarks>
    /// <exception cref="ArgumentNullException"><paramref name="demand"/> is null.</exception>
    /// <exception cref="ArgumentException">It is not a demand of the problem, has no such end, or there are no places or too many.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A place is below 0, above what the demand allows, or past its other end.</exception>
    public IReadOnlyList<SolvedFormula> Explore(Demand demand, ReadOnlySpan<double> ends, bool ofLowEnd = true) =>
        Exploration.Of(Problem, Guard.NotNull(demand), ends, ofLowEnd);

    /// <summary>
    /// How much the answer changes the base, g: what was added to lines or what was taken from them, whichever is more.
    /// </summary>
    public double MovedGrams
    {
        get
        {
            double added = 0, taken = 0;
            for (int j = 0; j < _grams.Length; j++)
            {
                double change = _grams[j] - Problem.Candidates[j].BaseGrams;
                added += Math.Max(change, 0);
                taken += Math.Max(-change, 0);
            }
            return Math.Max(added, taken);
        }
    }

    /// <summary>
    /// Rounds the answer to practical measures: every line to a step beside it, and of all those formulas the best by what was asked, in
    /// the same order.
    /// </summary>
    /// <param name="grid">The measures.</param>
    /// <exception cref="ArgumentNullException"><paramref name="grid"/> is null.</exception>
    public RoundedFormula Round(RoundingGrid grid) => Rounding.Of(this, Guard.NotNull(grid));

    /// <summary>The status and the masses, such as <c>Solved: 210 g egg white, 385 g granulated sugar</c>.</summary>
    public override string ToString()
    {
        IEnumerable<string> lines = Problem.Ingredients.Zip(_grams,
            (ingredient, grams) => string.Create(CultureInfo.InvariantCulture, $"{grams:0.#} g {ingredient}"));
        return $"{Status}: {string.Join(", ", lines)}";
    }

    /// <summary>Writes the answer as one JSON object, for other programs. Its JSON Schema is docs/schema/answer.json.</summary>
    /// <param name="writer">Where the object goes.</param>
    /// <param name="rounded">The same answer rounded; null where it was not.</param>
    /// <param name="system">Whose cups and spoons stand beside the grams; null for none.</param>
    /// <param name="basis">
    /// What the lines are counted on besides the whole, such as the flours for baker's percentages; null for nothing.
    /// </param>
    /// <exception cref="ArgumentNullException"><paramref name="writer"/> is null.</exception>
    public void WriteTo(Utf8JsonWriter writer, RoundedFormula? rounded = null, MeasuringSystem? system = null, FormulaPart? basis = null) =>
        AnswerJson.Write(this, writer, rounded, system, basis);
}
