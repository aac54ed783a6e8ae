using System.Globalization;
using System.Text;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Formulas.Solving;

/// <summary>
/// A formula to be found: the ingredients to choose from, what the formula should hit, what it must keep, and what decides between
/// formulas that do equally well. Each method answers a new problem and leaves this one as it is.
/// </summary>
/// <remarks>
/// <para>
/// Without further words the answer meets the targets as well as what must be kept allows, priority after priority, and changes the
/// base as little as possible beyond that. Changes are relative: 10 g more of 20 g weigh as much as 100 g more of 200 g.
/// </para>
/// <para>Worked example:
/// <c>FormulaProblem.StartingFrom(ganache).WithTarget(FormulaPart.Fat, 0.36).WithLimit(cream, 200, 420).Solve()</c>.</para>
/// </remarks>
public sealed partial class FormulaProblem
{
    /// <summary>The most ingredients a problem may have.</summary>
    public const int MaximumIngredients = 200;

    /// <summary>The most demands a problem may have.</summary>
    public const int MaximumDemands = 400;

    /// <summary>The most ingredients that may be left out: every choice of them is tried.</summary>
    public const int MaximumOptional = 10;

    /// <summary>The most a share of another part may be, as a mass fraction: sugar may be 120 % of the flour.</summary>
    public const double MaximumShare = 1e4;

    internal const double MaximumGrams = 1e12;

    private readonly Candidate[] _candidates;
    private readonly Demand[] _demands;

    private string[] _remarks { get; init; } = [];

    private FormulaProblem(string name, Candidate[] candidates, Demand[] demands)
    {
        Name = name;
        _candidates = candidates;
        _demands = demands;
    }

    private FormulaProblem(FormulaProblem other, Candidate[]? candidates = null, Demand[]? demands = null)
        : this(other.Name, candidates ?? other._candidates, demands ?? other._demands)
    {
        Preference = other.Preference;
        Closeness = other.Closeness;
        BaseBoiledOffGrams = other.BaseBoiledOffGrams;
        _remarks = other._remarks;
        TotalIsFree = other.TotalIsFree;
    }

    /// <summary>The name of the formula to be found.</summary>
    public string Name { get; }

    /// <summary>The ingredients to choose from, in the order they were named.</summary>
    public IReadOnlyList<Ingredient> Ingredients => [.. _candidates.Select(candidate => candidate.Ingredient)];

    /// <summary>What the base has of an ingredient, g; 0 of one that was only added to choose from.</summary>
    /// <param name="ingredient">One of the ingredients.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentException">It is not one of the ingredients.</exception>
    public double BaseGramsOf(Ingredient ingredient) => _candidates[MustBeThere(ingredient, nameof(ingredient))].BaseGrams;

    /// <summary>Everything that is asked, in the order it was asked.</summary>
    public IReadOnlyList<Demand> Demands => _demands;

    /// <summary>What decides between formulas that do equally well.</summary>
    public Preference Preference { get; private init; }

    /// <summary>How much closeness to the base counts where it is traded against the targets; 0.01 unless stated.</summary>
    public double Closeness { get; private init; } = 0.01;

    internal IReadOnlyList<Candidate> Candidates => _candidates;

    /// <summary>The total that is asked for; null where it is free.</summary>
    internal Demand.Total? Total => First<Demand.Total>();

    /// <summary>The water that is asked to boil off; null where only the base says.</summary>
    internal Demand.BoilOff? BoilOff => First<Demand.BoilOff>();

    /// <summary>The demands that are choices of what is used, in the order they were asked.</summary>
    internal IEnumerable<Demand> Choices => _demands.Where(demand => demand.IsChoice);

    /// <summary>How much water the base boils off, g.</summary>
    public double BaseBoiledOffGrams { get; private init; }

    internal bool TotalIsFree { get; private init; }

    /// <summary>How many grams the solver takes as one: the total, or without one what the base makes.</summary>
    internal double UnitGrams
    {
        get
        {
            double grams = Total?.HighGrams ?? Math.Max(BaseTotalGrams, LimitedGrams);
            return grams > 0 ? grams : 1;
        }
    }

    /// <summary>What the base makes.</summary>
    internal double BaseTotalGrams => _candidates.Sum(candidate => candidate.BaseGrams) - BaseBoiledOffGrams;

    /// <summary>How far a free total may go: from a hundredth of what the base makes, or the limits ask for, to a hundred times.</summary>
    internal Demand.Total FreeRange => new(UnitGrams / 100, UnitGrams * 100);

    /// <summary>
    /// Whether the base has of every ingredient what is asked of it in grams: then a free total has no reason to leave the base's but
    /// the shares.
    /// </summary>
    internal bool BaseKeepsItsMasses => BaseTotalGrams > 0 && _demands.OfType<Demand.IngredientMass>().All(demand =>
        demand.MayBeLeftOut || _candidates[IndexOf(demand.Ingredient)].BaseGrams is double grams
            && grams >= demand.LowGrams && grams <= demand.HighGrams)
        && _demands.OfType<Demand.PartMass>().Where(demand => !demand.IsTarget).All(demand =>
            GramsOf(demand.Part, [.. _candidates.Select(candidate => candidate.BaseGrams)], BaseBoiledOffGrams) is double grams
                && grams >= demand.LowGrams && grams <= demand.HighGrams)
        && !_demands.OfType<Demand.FreeFrom>().Any(demand => Array.Exists(_candidates, candidate => candidate.BaseGrams > 0
            && demand.LeavesOut(candidate.Ingredient)));

    private T? First<T>()
        where T : Demand
    {
        foreach (Demand demand in _demands)
        {
            if (demand is T found)
                return found;
        }
        return null;
    }

    private double LimitedGrams => Math.Max(
        _demands.OfType<Demand.IngredientMass>()
            .Where(demand => !demand.MayBeLeftOut && double.IsFinite(demand.LowGrams)).Sum(demand => demand.LowGrams),
        // So much of a part takes at least that much of what holds most of it.
        _demands.OfType<Demand.PartMass>().Where(demand => double.IsFinite(demand.LowGrams)).Select(demand =>
            demand.LowGrams / _candidates.Max(candidate => demand.Part.FractionIn(candidate.Ingredient))).DefaultIfEmpty().Max());

    /// <summary>
    /// A problem with the ingredients of a formula, its masses as the base and its total as the total. What it boils off stays as it
    /// is until <see cref="WithBoilOff"/>.
    /// </summary>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentException">It has more than 200 ingredients.</exception>
    public static FormulaProblem StartingFrom(Formula formula)
    {
        Formula combined = Guard.NotNull(formula).Combined();
        Candidate[] candidates = [.. combined.Lines.Select(line => new Candidate(line.Ingredient, line.Grams.Likely))];
        if (candidates.Length > MaximumIngredients)
            throw new ArgumentException($"{nameof(formula)} has {candidates.Length} ingredients; a problem has at most "
                + $"{MaximumIngredients}.", nameof(formula));
        Demand.Total total = new(formula.TotalGrams, formula.TotalGrams);
        return new FormulaProblem(formula.Name, candidates, [total]) { BaseBoiledOffGrams = formula.BoiledOffGrams };
    }

    /// <summary>A problem without a base: only targets, limits and cost decide.</summary>
    /// <param name="name">The name of the formula to be found.</param>
    /// <param name="totalGrams">Its total after boiling off, g, above 0 up to 1e12.</param>
    /// <param name="ingredients">The ingredients to choose from.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="totalGrams"/> is outside its range.</exception>
    /// <exception cref="ArgumentException">An ingredient comes twice, or there are more than 200.</exception>
    public static FormulaProblem Of(string name, double totalGrams, IEnumerable<Ingredient> ingredients)
    {
        Guard.NotNull(name);
        Guard.InRange(totalGrams, Guard.Trace, MaximumGrams);
        Ingredient[] all = [.. Guard.NotNull(ingredients)];
        if (Array.Exists(all, ingredient => ingredient is null))
            throw new ArgumentException($"{nameof(ingredients)} has a null in it.", nameof(ingredients));
        if (all.Distinct().Count() < all.Length)
            throw new ArgumentException($"{nameof(ingredients)} has an ingredient twice.", nameof(ingredients));
        FormulaProblem problem = new(name, [], [new Demand.Total(totalGrams, totalGrams)]);
        foreach (Ingredient ingredient in all)
            problem = problem.WithIngredient(ingredient);
        return problem;
    }

    /// <summary>Adds an ingredient that the base has none of, or gives it another base mass.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="baseGrams">Its mass in the base, g, from 0 to 1e12.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="baseGrams"/> is outside its range.</exception>
    /// <exception cref="ArgumentException">It is in the problem already, or there are 200.</exception>
    public FormulaProblem WithIngredient(Ingredient ingredient, double baseGrams = 0)
    {
        Guard.NotNull(ingredient);
        Guard.InRange(baseGrams, 0, MaximumGrams);
        if (IndexOf(ingredient) >= 0)
            throw new ArgumentException($"{nameof(ingredient)} '{ingredient.Name}' is in the problem already.", nameof(ingredient));
        if (_candidates.Length == MaximumIngredients)
            throw new ArgumentException($"{nameof(ingredient)} '{ingredient.Name}' would be one too many; a problem has at most "
                + $"{MaximumIngredients}.", nameof(ingredient));
        return new FormulaProblem(this, candidates: [.. _candidates, new Candidate(ingredient, baseGrams)]);
    }

    /// <summary>Asks for another total after boiling off.</summary>
    /// <param name="grams">The total, g, above 0 up to 1e12.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public FormulaProblem WithTotal(double grams) => WithTotalRange(Guard.InRange(grams, Guard.Trace, MaximumGrams), grams);

    /// <summary>Asks for a total within a range: shares, the base and the cost decide where in it.</summary>
    /// <param name="lowGrams">At least this much, g, above 0 up to 1e12.</param>
    /// <param name="highGrams">At most this much, g, from <paramref name="lowGrams"/> to 1e12.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public FormulaProblem WithTotalRange(double lowGrams, double highGrams)
    {
        Guard.InRange(lowGrams, Guard.Trace, MaximumGrams);
        Guard.InRange(highGrams, lowGrams, MaximumGrams);
        return new FormulaProblem(this,
            demands: [.. _demands.Where(demand => demand is not Demand.Total), new Demand.Total(lowGrams, highGrams)])
        {
            TotalIsFree = false,
        };
    }

    /// <summary>
    /// Lets the total go: it stays what the base makes unless a demand moves it, a mass that is asked for or a share that is met better
    /// with another. It stays from a hundredth to a hundred times of what the base makes and the limits ask for.
    /// </summary>
    public FormulaProblem WithFreeTotal() =>
        new(this, demands: [.. _demands.Where(demand => demand is not Demand.Total)]) { TotalIsFree = true };

    /// <summary>Asks for a share to be hit as well as possible.</summary>
    /// <param name="part">The part.</param>
    /// <param name="fraction">Its share, as a mass fraction from 0 to 1, or to 10 000 of another part: sugar is 1.2 of the flour.</param>
    /// <param name="of">
    /// Of what; of everything unless stated. Of what makes up less than a ten-thousandth of the formula no share is taken: the formula
    /// then has at least that much of it, where it can.
    /// </param>
    /// <param name="tolerance">The miss that counts as one, as a mass fraction from 1e-6 to 1; one percentage point unless stated.</param>
    /// <param name="priority">From 1, the first, to 4.</param>
    /// <exception cref="ArgumentNullException"><paramref name="part"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <exception cref="ArgumentException">None of the ingredients can touch it, or there are 400 demands.</exception>
    public FormulaProblem WithTarget(FormulaPart part, double fraction, FormulaPart? of = null, double tolerance = 0.01,
        int priority = 1) =>
        WithTargetRange(part, Guard.InRange(fraction, 0, MaximumOf(of)), fraction, of, tolerance, priority);

    /// <summary>Asks for a share within a range as well as possible: inside all places are equally good.</summary>
    /// <param name="part">The part.</param>
    /// <param name="low">The low end, as a mass fraction from 0 to 1, or to 10 000 of another part.</param>
    /// <param name="high">The high end, from <paramref name="low"/> to as much; infinity where there is none.</param>
    /// <param name="of">Of what; of everything unless stated.</param>
    /// <param name="tolerance">The miss that counts as one, as a mass fraction from 1e-6 to 1.</param>
    /// <param name="priority">From 1, the first, to 4.</param>
    /// <inheritdoc cref="WithTarget" path="/exception"/>
    public FormulaProblem WithTargetRange(FormulaPart part, double low, double high, FormulaPart? of = null, double tolerance = 0.01,
        int priority = 1)
    {
        Guard.NotNull(part);
        Ends(low, high, of);
        Guard.InRange(tolerance, 1e-6, 1);
        Guard.InRange(priority, 1, 4);
        of ??= FormulaPart.Everything;
        MustBeTouched(part, of, nameof(part));
        return With(new Demand.Share(part, of, low, high) { Tolerance = tolerance, Priority = priority });
    }

    /// <summary>Asks for a share that must be kept.</summary>
    /// <param name="part">The part.</param>
    /// <param name="low">The low end, as a mass fraction from 0 to 1, or to 10 000 of another part.</param>
    /// <param name="high">The high end, from <paramref name="low"/> to as much; infinity where there is none.</param>
    /// <param name="of">Of what; of everything unless stated.</param>
    /// <exception cref="ArgumentNullException"><paramref name="part"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <exception cref="ArgumentException">None of the ingredients can touch it, or there are 400 demands.</exception>
    public FormulaProblem WithRequirement(FormulaPart part, double low, double high, FormulaPart? of = null)
    {
        Guard.NotNull(part);
        Ends(low, high, of);
        of ??= FormulaPart.Everything;
        MustBeTouched(part, of, nameof(part));
        // Nothing is below no share and nothing above the whole it is a part of: such an end is none. Of water there may be more
        // than of protein.
        bool isOpen = high == 1 && Array.TrueForAll(_candidates, candidate =>
            part.FractionIn(candidate.Ingredient) <= of.FractionIn(candidate.Ingredient));
        return With(new Demand.Share(part, of, low > 0 ? low : double.NegativeInfinity, isOpen ? double.PositiveInfinity : high));
    }

    /// <summary>Keeps a share as it is in the base: as much sugar to the water, as much milk fat to the fat.</summary>
    /// <param name="part">The part.</param>
    /// <param name="of">Of what; of everything unless stated.</param>
    /// <exception cref="ArgumentNullException"><paramref name="part"/> is null.</exception>
    /// <exception cref="ArgumentException">
    /// None of the ingredients can touch it, the base has none of what it is a share of, or there are 400 demands.
    /// </exception>
    public FormulaProblem WithKept(FormulaPart part, FormulaPart? of = null)
    {
        Guard.NotNull(part);
        of ??= FormulaPart.Everything;
        double[] based = [.. _candidates.Select(candidate => candidate.BaseGrams)];
        double whole = GramsOf(of, based, BaseBoiledOffGrams);
        if (!(whole > 0))
            throw new ArgumentException($"{nameof(of)} '{of}': the base has none of it, so no share of it can be kept.", nameof(of));
        double share = Math.Max(0, GramsOf(part, based, BaseBoiledOffGrams)) / whole;
        return WithRequirement(part, share, share, of);
    }

    /// <summary>Limits an ingredient.</summary>
    /// <param name="ingredient">One of the ingredients.</param>
    /// <param name="lowGrams">At least this much, g, from 0 to 1e12.</param>
    /// <param name="highGrams">At most this much, g, from <paramref name="lowGrams"/> to 1e12, which is no limit.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <exception cref="ArgumentException">It is not one of the ingredients, or there are 400 demands.</exception>
    public FormulaProblem WithLimit(Ingredient ingredient, double lowGrams, double highGrams = MaximumGrams)
    {
        MustBeThere(ingredient, nameof(ingredient));
        Guard.InRange(lowGrams, 0, MaximumGrams);
        Guard.InRange(highGrams, lowGrams, MaximumGrams);
        // Nothing is below 0 g and nothing above the most: such an end is none.
        return With(new Demand.IngredientMass(ingredient, lowGrams > 0 ? lowGrams : double.NegativeInfinity,
            highGrams < MaximumGrams ? highGrams : double.PositiveInfinity));
    }

    /// <summary>Limits an ingredient's share.</summary>
    /// <param name="ingredient">One of the ingredients.</param>
    /// <param name="low">The low end, as a mass fraction from 0 to 1, or to 10 000 of another part.</param>
    /// <param name="high">The high end, from <paramref name="low"/> to as much; infinity where there is none.</param>
    /// <param name="of">Of what; of everything unless stated.</param>
    /// <inheritdoc cref="WithLimit" path="/exception"/>
    public FormulaProblem WithShareLimit(Ingredient ingredient, double low, double high, FormulaPart? of = null)
    {
        MustBeThere(ingredient, nameof(ingredient));
        return WithRequirement(FormulaPart.OfIngredient(ingredient), low, high, of);
    }

    /// <summary>Gives the mass of an ingredient.</summary>
    /// <param name="ingredient">One of the ingredients.</param>
    /// <param name="grams">Its mass, g, from 0 to 1e12.</param>
    /// <inheritdoc cref="WithLimit" path="/exception"/>
    public FormulaProblem WithFixed(Ingredient ingredient, double grams)
    {
        MustBeThere(ingredient, nameof(ingredient));
        Guard.InRange(grams, 0, MaximumGrams);
        return With(new Demand.IngredientMass(ingredient, grams, grams) { IsFixed = true });
    }

    /// <summary>Asks for so many grams of one ingredient to a gram of another.</summary>
    /// <param name="ingredient">One of the ingredients.</param>
    /// <param name="to">Another one.</param>
    /// <param name="ratio">Grams of the first to a gram of the second, from 0 to 1e6.</param>
    /// <inheritdoc cref="WithLimit" path="/exception"/>
    public FormulaProblem WithRatio(Ingredient ingredient, Ingredient to, double ratio) =>
        WithRatioRange(ingredient, to, Guard.InRange(ratio, 0, 1e6), ratio);

    /// <summary>Keeps one ingredient to another within a ratio.</summary>
    /// <param name="ingredient">One of the ingredients.</param>
    /// <param name="to">Another one.</param>
    /// <param name="low">At least this many grams of the first to a gram of the second, from 0 to 1e6.</param>
    /// <param name="high">At most this many, from <paramref name="low"/> to 1e6; infinity where there is no most.</param>
    /// <inheritdoc cref="WithLimit" path="/exception"/>
    public FormulaProblem WithRatioRange(Ingredient ingredient, Ingredient to, double low, double high)
    {
        MustBeThere(ingredient, nameof(ingredient));
        MustBeThere(to, nameof(to));
        if (ingredient.Equals(to))
            throw new ArgumentException($"{nameof(to)} '{to.Name}' is the ingredient itself; a ratio needs two.", nameof(to));
        Guard.InRange(low, 0, 1e6);
        if (!double.IsPositiveInfinity(high))
            Guard.InRange(high, low, 1e6);
        return With(new Demand.Ratio(ingredient, to, low > 0 || low == high ? low : double.NegativeInfinity, high));
    }

    /// <summary>Lets an ingredient be left out; where it is used, then within limits.</summary>
    /// <param name="ingredient">One of the ingredients; at most 10 may be left out.</param>
    /// <param name="lowGrams">At least this much, g, above 0 up to 1e12: less is not worth weighing.</param>
    /// <param name="highGrams">At most this much, g, from <paramref name="lowGrams"/> to 1e12.</param>
    /// <inheritdoc cref="WithLimit" path="/exception"/>
    public FormulaProblem WithOptional(Ingredient ingredient, double lowGrams, double highGrams)
    {
        MustBeThere(ingredient, nameof(ingredient));
        Guard.InRange(lowGrams, Guard.Trace, MaximumGrams);
        Guard.InRange(highGrams, lowGrams, MaximumGrams);
        if (_demands.OfType<Demand.IngredientMass>().Count(demand => demand.MayBeLeftOut) == MaximumOptional)
            throw new ArgumentException($"{nameof(ingredient)} '{ingredient.Name}' would be one too many; at most {MaximumOptional} may be "
                + $"left out.", nameof(ingredient));
        MustBeFew(2, nameof(ingredient));
        return With(new Demand.IngredientMass(ingredient, lowGrams, highGrams) { MayBeLeftOut = true });
    }

    /// <summary>Lets water boil off: how much is found like any mass.</summary>
    /// <param name="lowGrams">At least this much, g, from 0 to 1e12.</param>
    /// <param name="highGrams">At most this much, g, from <paramref name="lowGrams"/> to 1e12.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public FormulaProblem WithBoilOff(double lowGrams, double highGrams)
    {
        Guard.InRange(lowGrams, 0, MaximumGrams);
        Guard.InRange(highGrams, lowGrams, MaximumGrams);
        return new FormulaProblem(this, demands: [.. _demands.Where(demand => demand is not Demand.BoilOff),
            new Demand.BoilOff(lowGrams, highGrams)]);
    }

    /// <summary>Says what an ingredient costs; 0 is a price. An ingredient without one is left out of every cost, and the answer says so.</summary>
    /// <param name="ingredient">One of the ingredients.</param>
    /// <param name="perKilogram">The price of a kilogram, in any currency, from 0 to 1e9.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="perKilogram"/> is outside its range.</exception>
    /// <exception cref="ArgumentException">It is not one of the ingredients.</exception>
    public FormulaProblem WithCost(Ingredient ingredient, double perKilogram)
    {
        int at = MustBeThere(ingredient, nameof(ingredient));
        Candidate[] candidates = [.. _candidates];
        candidates[at] = new Candidate(ingredient, candidates[at].BaseGrams) { PricePerKilogram = Guard.InRange(perKilogram, 0, 1e9) };
        return new FormulaProblem(this, candidates);
    }

    /// <summary>Chooses what decides between formulas that do equally well.</summary>
    /// <param name="preference">The preference.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="preference"/> is not a defined value.</exception>
    public FormulaProblem Preferring(Preference preference) => new(this) { Preference = Guard.Defined(preference) };

    /// <summary>
    /// Trades closeness to the base against the targets: ½ Σ(miss / tolerance)² + ½ weight Σ(change / (half the base mass))² is least.
    /// </summary>
    /// <param name="weight">
    /// From 1e-6 to 1e6; with 0.01, changing a line by half costs as much as missing a target by a tenth of its tolerance.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="weight"/> is outside its range.</exception>
    public FormulaProblem TradingCloseness(double weight = 0.01) =>
        new(this) { Preference = Preference.ClosenessTraded, Closeness = Guard.InRange(weight, 1e-6, 1e6) };

    /// <summary>Finds the formula.</summary>
    /// <exception cref="InvalidOperationException">
    /// There is no ingredient, or the total is free and the base is empty, so that nothing says how much to make.
    /// </exception>
    /// <returns>The answer; its status says whether there is a formula that keeps everything that must be kept.</returns>
    public SolvedFormula Solve() => ProblemSolver.Solve(this);

    // Where an ingredient stands; -1 where it does not.
    internal int IndexOf(Ingredient ingredient) => Array.FindIndex(_candidates, candidate => candidate.Ingredient.Equals(ingredient));

    // The grams of a part in masses of the ingredients.
    internal double GramsOf(FormulaPart part, ReadOnlySpan<double> grams, double boiledOffGrams)
    {
        double sum = -part.FractionOfBoiledOffWater * boiledOffGrams;
        for (int j = 0; j < grams.Length; j++)
            sum += part.FractionIn(_candidates[j].Ingredient) * grams[j];
        return sum;
    }

    internal FormulaProblem WithBaseBoiledOff(double grams) => new(this) { BaseBoiledOffGrams = Guard.InRange(grams, 0, MaximumGrams) };

    internal FormulaProblem Replacing(Demand demand, Demand by) =>
        new(this, demands: [.. _demands.Select(other => ReferenceEquals(other, demand) ? by : other)]);

    private FormulaProblem With(Demand demand)
    {
        if (_demands.Length == MaximumDemands)
            throw new ArgumentException($"{nameof(demand)} '{demand}' would be one too many; a problem has at most {MaximumDemands} "
                + $"demands.", nameof(demand));
        return new FormulaProblem(this, demands: [.. _demands, demand]);
    }

    private static double MaximumOf(FormulaPart? of) => of is null || of.Equals(FormulaPart.Everything) ? 1 : MaximumShare;

    private static void Ends(double low, double high, FormulaPart? of)
    {
        Guard.InRange(low, 0, MaximumOf(of));
        if (!double.IsPositiveInfinity(high))
            Guard.InRange(high, low, MaximumOf(of));
    }

    private int MustBeThere(Ingredient ingredient, string name)
    {
        Guard.NotNull(ingredient, name);
        int at = IndexOf(ingredient);
        return at >= 0 ? at : throw new ArgumentException($"{name} '{ingredient.Name}' is not one of the ingredients of the problem; add "
            + $"it first.", name);
    }

    // A share that no ingredient can move is a slip of the pen, not a wish.
    private void MustBeTouched(FormulaPart part, FormulaPart of, string name)
    {
        foreach ((FormulaPart asked, string word) in new[] { (part, name), (of, "of") })
        {
            string unknown = string.Join(", ", _candidates.Where(candidate => !asked.IsKnownIn(candidate.Ingredient)).Select(candidate => candidate.Ingredient.Name));
            if (unknown.Length > 0)
                throw new ArgumentException($"{word} '{asked}': of {unknown} it is not known how much that is, and what is not known is not zero.", word);
            if (!Array.Exists(_candidates, candidate => asked.FractionIn(candidate.Ingredient) > 0))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"{word} '{asked}': none of the {_candidates.Length} ingredients holds any."), word);
        }
    }

    /// <summary>The name, the ingredients and the demands counted.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{(Name.Length > 0 ? Name + ": " : "")}{_candidates.Length} ingredients, {_demands.Length} demands");

    /// <summary>Reads a problem in JSON, a form of our own, version 1; the schema stands in docs/schema/problem.json.</summary>
    /// <param name="json">The text, at most 4 MiB of UTF-8.</param>
    /// <param name="ingredients">The table in which its ingredients are looked up.</param>
    /// <returns>
    /// The problem; or why it is none: it is not JSON, or not of this form or version, or names ingredients that are not in the table, or
    /// asks for what cannot be asked. Every mistake that can be told from the others has its line, column and path.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Reading<FormulaProblem> ReadJson(string json, IngredientTable ingredients) =>
        ReadJson(Encoding.UTF8.GetBytes(Guard.NotNull(json)), ingredients);

    /// <summary>Reads a problem in JSON from UTF-8.</summary>
    /// <inheritdoc cref="ReadJson(string, IngredientTable)"/>
    public static Reading<FormulaProblem> ReadJson(ReadOnlySpan<byte> json, IngredientTable ingredients) =>
        ProblemJson.Read(json, ingredients, []);

    /// <summary>Reads a problem in JSON from UTF-8, to the end of a stream.</summary>
    /// <inheritdoc cref="ReadJson(string, IngredientTable)"/>
    public static Reading<FormulaProblem> ReadJson(Stream json, IngredientTable ingredients) =>
        ReadJson(JsonGuard.Bytes(json, ProblemJson.MaximumBytes), ingredients);

    /// <summary>A problem from JSON that must be right; see <see cref="ReadJson(string, IngredientTable)"/>.</summary>
    /// <param name="json">The text, at most 4 MiB of UTF-8.</param>
    /// <param name="ingredients">The table in which its ingredients are looked up.</param>
    /// <returns>The problem.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="FormatException">There are mistakes; the message names the first 20 with their places.</exception>
    public static FormulaProblem ParseJson(string json, IngredientTable ingredients) => ReadJson(json, ingredients).OrThrow();
}
