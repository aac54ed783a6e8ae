using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Formulas.Solving;

public sealed partial class FormulaProblem
{
    /// <summary>Asks for the grams of a part, which must be kept: the two flours together from 300 to 350 g, at least 120 g of fat.</summary>
    /// <param name="part">The part; of a group, <see cref="FormulaPart.OfIngredients"/>.</param>
    /// <param name="lowGrams">At least this much, g, from 0 to 1e12.</param>
    /// <param name="highGrams">At most this much, g, from <paramref name="lowGrams"/> to 1e12; infinity where there is no most.</param>
    /// <exception cref="ArgumentNullException"><paramref name="part"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <exception cref="ArgumentException">None of the ingredients holds any, or there are 400 demands.</exception>
    public FormulaProblem WithMass(FormulaPart part, double lowGrams, double highGrams = double.PositiveInfinity)
    {
        MassEnds(part, lowGrams, highGrams);
        return With(new Demand.PartMass(part, lowGrams > 0 || highGrams == 0 ? lowGrams : double.NegativeInfinity, highGrams));
    }

    /// <summary>Asks for the grams of a part to be hit as well as possible: inside the range all places are equally good.</summary>
    /// <param name="part">The part.</param>
    /// <param name="lowGrams">The low end, g, from 0 to 1e12.</param>
    /// <param name="highGrams">The high end, g, from <paramref name="lowGrams"/> to 1e12; infinity where there is none.</param>
    /// <param name="toleranceGrams">
    /// The miss that counts as one, g, from 1e-6 to 1e12; a hundredth of what the problem makes unless stated, which weighs it as a share.
    /// </param>
    /// <param name="priority">From 1, the first, to 4.</param>
    /// <inheritdoc cref="WithMass" path="/exception"/>
    public FormulaProblem WithMassTarget(FormulaPart part, double lowGrams, double highGrams, double? toleranceGrams = null,
        int priority = 1)
    {
        MassEnds(part, lowGrams, highGrams);
        Guard.InRange(priority, 1, 4);
        double tolerance = toleranceGrams is double given ? Guard.InRange(given, 1e-6, MaximumGrams, nameof(toleranceGrams)) : UnitGrams / 100;
        return With(new Demand.PartMass(part, lowGrams, highGrams) { ToleranceGrams = tolerance, Priority = priority });
    }

    /// <summary>The most choices of what is used that are tried: all of them are.</summary>
    public const int MaximumChoices = 1 << MaximumOptional;

    /// <summary>What the answer rests on and nobody asked for by name: what was left out for an allergen, and why. Empty where there is nothing.</summary>
    public IReadOnlyList<string> Remarks =>
        [.. _remarks, .. TracedRemarks, .. _demands.OfType<Demand.FreeFrom>().Select(demand => demand.Remark(this)).Distinct()];

    internal FormulaProblem WithRemark(string remark) => new(this) { _remarks = [.. _remarks.Append(remark).Distinct()] };

    // Nothing is surer than the worst it was made from.
    private IEnumerable<string> TracedRemarks => _demands.SelectMany(demand => demand switch
    {
        Demand.Share share => (FormulaPart[])[share.Part, share.Of],
        Demand.PartMass mass => [mass.Part],
        _ => [],
    }).Intersect(FormulaPart.Traced).Select(part =>
    {
        Evidence worst = _candidates.Where(candidate => part.FractionIn(candidate.Ingredient) > 0).Select(candidate => part.EvidenceIn(candidate.Ingredient))
            .Append(Evidence.CommonPractice).Max();
        return $"{char.ToUpperInvariant(part.Name[0])}{part.Name[1..]}: counted food by food as the trade counts them, at worst {EvidenceText.ToWord(worst)}; makers differ.";
    });

    /// <summary>How many choices of what is used there are.</summary>
    internal double ChoiceCount => _demands.Aggregate(1.0, (count, demand) => count * demand.Alternatives);

    /// <summary>Allows so many of some ingredients and no more: at most two of these fats, either butter or shortening.</summary>
    /// <param name="ingredients">Ingredients of the problem, at least one.</param>
    /// <param name="atMost">How many of them may be used, from 1 to as many as they are.</param>
    /// <param name="atLeast">
    /// How many are used at the fewest, from 0 to <paramref name="atMost"/>; above 0 only with <paramref name="lowGrams"/>, for nothing of an
    /// ingredient is no use of it.
    /// </param>
    /// <param name="lowGrams">At least this much of each that is used, g, from 0 to 1e12.</param>
    /// <param name="highGrams">At most this much of each, g, from <paramref name="lowGrams"/> to 1e12; infinity where there is no most.</param>
    /// <remarks>Every choice is solved: at most 1024 of them, those of <see cref="WithOptional"/> counted in by multiplying.</remarks>
    /// <exception cref="ArgumentNullException"><paramref name="ingredients"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <exception cref="ArgumentException">
    /// One is not an ingredient of the problem or comes twice, there would be more than 1024 choices, or there are 400 demands.
    /// </exception>
    public FormulaProblem WithSomeOf(IEnumerable<Ingredient> ingredients, int atMost, int atLeast = 0, double lowGrams = 0,
        double highGrams = double.PositiveInfinity)
    {
        Ingredient[] all = [.. Guard.NotNull(ingredients)];
        foreach (Ingredient ingredient in all)
            MustBeThere(ingredient, nameof(ingredients));
        if (all.Length == 0 || all.Distinct().Count() < all.Length)
            throw new ArgumentException($"{nameof(ingredients)} {(all.Length == 0 ? "is empty" : "has an ingredient twice")}; to choose takes "
                + "different ones.", nameof(ingredients));
        Guard.InRange(atMost, 1, all.Length);
        Guard.InRange(atLeast, 0, atMost);
        Guard.InRange(lowGrams, 0, MaximumGrams);
        if (!double.IsPositiveInfinity(highGrams))
            Guard.InRange(highGrams, lowGrams, MaximumGrams);
        if (atLeast > 0 && lowGrams == 0)
            throw new ArgumentException($"{nameof(lowGrams)} was 0; where at least {atLeast} are to be used it is above 0, for nothing of an "
                + "ingredient is no use of it.", nameof(lowGrams));
        MustBeFew(Demand.SomeOf.Count(all.Length, atMost, atLeast, lowGrams > 0), nameof(ingredients));
        return With(new Demand.SomeOf(all, atMost, atLeast, lowGrams, highGrams));
    }

    /// <summary>
    /// Leaves out every ingredient that has an allergen, whenever it is added, and says which (<see cref="Remarks"/>). A caution, not a
    /// clearance: what is not listed with an allergen is not said to be free of it; the label of the product at hand decides.
    /// </summary>
    /// <param name="allergen">The allergen. One of whose allergens nobody has said anything is left out too.</param>
    /// <param name="alsoWhatOftenContains">
    /// Whether an ingredient is left out of which many makes have it, such as the milk of dark chocolate; so unless stated.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="allergen"/> is not a defined value.</exception>
    /// <exception cref="ArgumentException">There are 400 demands.</exception>
    public FormulaProblem FreeFrom(Allergen allergen, bool alsoWhatOftenContains = true) =>
        FreeFrom(AllergenWord.Of(Guard.Defined(allergen)), alsoWhatOftenContains);

    /// <summary>Leaves out every ingredient that has what a kitchen's word means.</summary>
    /// <param name="word">
    /// The word of an allergen; or <c>dairy</c> (milk), <c>nuts</c> (tree nuts and peanuts), <c>tree-nuts</c>, <c>gluten</c> (wheat too),
    /// <c>shellfish</c>.
    /// </param>
    /// <param name="alsoWhatOftenContains">Whether an ingredient is left out of which many makes have it; so unless stated.</param>
    /// <exception cref="ArgumentNullException"><paramref name="word"/> is null.</exception>
    /// <exception cref="ArgumentException">The word names no allergen, or there are 400 demands.</exception>
    /// <inheritdoc cref="FreeFrom(Allergen, bool)" path="/summary"/>
    public FormulaProblem FreeFrom(string word, bool alsoWhatOftenContains = true) =>
        With(Free(Guard.NotNull(word), alsoWhatOftenContains, nameof(word)));

    /// <summary>
    /// Adds the foods of a kind that a table has, to choose from: fats without milk. The base has none of them.
    /// </summary>
    /// <param name="table">The table.</param>
    /// <param name="kind">The kind.</param>
    /// <param name="without">
    /// Words of allergens (<see cref="FreeFrom(string, bool)"/>) that they must not be listed with, nor many of their makes; empty for none.
    /// </param>
    /// <param name="except">Foods that are not wanted.</param>
    /// <returns>The problem; foods that it has already stay as they are.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="kind"/> is not a defined value.</exception>
    /// <exception cref="ArgumentException">A word names no allergen, no food of the table is of the kind, or there would be more than 200.</exception>
    public FormulaProblem WithFoodsOf(IngredientTable table, FoodKind kind, IEnumerable<string> without, IEnumerable<Ingredient>? except = null)
    {
        FormulaProblem problem = this;
        foreach (Ingredient food in FoodsOf(table, kind, without, except ?? []))
        {
            if (problem.IndexOf(food) < 0)
                problem = problem.WithIngredient(food);
        }
        return problem;
    }

    internal static IReadOnlyList<Ingredient> FoodsOf(IngredientTable table, FoodKind kind, IEnumerable<string> without, IEnumerable<Ingredient> except)
    {
        Guard.NotNull(table);
        Guard.Defined(kind);
        Demand.FreeFrom[] free = [.. Guard.NotNull(without).Select(word => Free(Guard.NotNull(word, nameof(without)), true, nameof(without)))];
        Ingredient[] foods = [.. table.All.Where(food => FoodKinds.IsOf(kind, food) && !Array.Exists(free, demand => demand.LeavesOut(food)))
            .Except(except)];
        return foods.Length > 0 ? foods : throw new ArgumentException($"{nameof(kind)} {EnumWords.Of(kind, ' ')}"
            + $"{(free.Length > 0 ? " without " + string.Join(" and ", free.Select(demand => demand.Word)) : "")}: the table has none.", nameof(kind));
    }

    /// <summary>Sets a ceiling on what a kilogram costs, of what is made after boiling off.</summary>
    /// <param name="perKilogram">The most, in the currency of <see cref="WithCost"/>, from 0 to 1e9.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="perKilogram"/> is outside its range.</exception>
    /// <exception cref="ArgumentException">
    /// An ingredient has no price: what is not known is not free. State it first, of water as 0. Or there are 400 demands.
    /// </exception>
    public FormulaProblem WithCostCeiling(double perKilogram)
    {
        Guard.InRange(perKilogram, 0, 1e9);
        return Unpriced is string names ? throw new ArgumentException(Unknown(names), nameof(perKilogram)) : With(new Demand.UnitCost(perKilogram));
    }

    /// <summary>Keeps what a kilogram costs at no more than in the base.</summary>
    /// <exception cref="InvalidOperationException">An ingredient has no price, or the base is empty.</exception>
    /// <exception cref="ArgumentException">There are 400 demands.</exception>
    public FormulaProblem WithKeptCost()
    {
        double whole = BaseTotalGrams;
        if (!(whole > 0))
            throw new InvalidOperationException("The base has no mass, so it has no cost to keep.");
        if (Unpriced is string names)
            throw new InvalidOperationException($"The base has no known cost: {Unknown(names)}.");
        return WithCostCeiling(_candidates.Sum(candidate => candidate.CostPerKilogram * candidate.BaseGrams) / whole);
    }

    /// <summary>Keeps one ingredient to another as it is in the base.</summary>
    /// <param name="ingredient">One of the ingredients.</param>
    /// <param name="to">Another one, of which the base has some.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">One is not an ingredient, they are the same, the base has none of the second, or there are 400 demands.</exception>
    public FormulaProblem WithKeptRatio(Ingredient ingredient, Ingredient to)
    {
        double first = BaseGramsOf(ingredient), second = BaseGramsOf(to);
        if (!(second > 0))
            throw new ArgumentException($"{nameof(to)} '{to.Name}': the base has none of it, so no ratio to it can be kept.", nameof(to));
        return WithRatio(ingredient, to, first / second);
    }

    internal static string Unknown(string names) =>
        $"the cost of a kilogram is not known: {names} {(names.Contains(',') ? "have" : "has")} no price, and what is not known is not free. State it, of water as 0";

    /// <summary>The ingredients without a price, by name; null where all have one.</summary>
    internal string? Unpriced => Array.Exists(_candidates, candidate => candidate.PricePerKilogram is null)
        ? string.Join(", ", _candidates.Where(candidate => candidate.PricePerKilogram is null).Select(candidate => candidate.Ingredient.Name)) : null;

    private static Demand.FreeFrom Free(string word, bool alsoWhatOftenContains, string name) =>
        AllergenWord.TryRead(word, out string? read, out IReadOnlyList<Allergen>? allergens) ? new Demand.FreeFrom(read, allergens, alsoWhatOftenContains)
            : throw new ArgumentException($"{name} {Excerpt.Of(word)} is no allergen; one of these is expected: {AllergenWord.All}.", name);

    private void MustBeFew(double alternatives, string name)
    {
        if (ChoiceCount * alternatives > MaximumChoices)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name} would make {ChoiceCount * alternatives:0} choices of what is used; all "
                + $"are tried, and at most {MaximumChoices} may be."), name);
    }

    private void MassEnds(FormulaPart part, double lowGrams, double highGrams)
    {
        Guard.NotNull(part);
        Guard.InRange(lowGrams, 0, MaximumGrams);
        if (!double.IsPositiveInfinity(highGrams))
            Guard.InRange(highGrams, lowGrams, MaximumGrams);
        MustBeTouched(part, FormulaPart.Everything, nameof(part));
    }
}
