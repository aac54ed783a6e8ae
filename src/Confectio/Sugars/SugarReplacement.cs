using System.Globalization;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Numerics;

namespace Confectio.Sugars;

/// <summary>
/// Part of the sugar of a formula replaced by another sugar or syrup, the water balancing it: the total, every other line and one thing
/// more stay as they were, the solids, the sweetness or the activity of the water.
/// </summary>
/// <remarks>
/// What keeps the solids or the sweetness is linear in the masses and goes through the formula solver; the activity of the water is not,
/// and is found by Brent over the mass of the incoming sugar. The thing is kept where the formula's water allows it: a dry formula has no
/// water to give up for the water of a syrup. <see cref="IsKept"/> tells.
/// </remarks>
public sealed class SugarReplacement
{
    private const double Celsius = 25;

    private SugarReplacement(Formula before, Formula after, double incomingGrams, double waterGrams, bool isKept)
    {
        Before = before;
        After = after;
        IncomingGrams = incomingGrams;
        WaterGrams = waterGrams;
        IsKept = isKept;
    }

    /// <summary>The formula as it was.</summary>
    public Formula Before { get; }

    /// <summary>The formula with the replacement.</summary>
    public Formula After { get; }

    /// <summary>What comes in of the new sugar, g.</summary>
    public double IncomingGrams { get; }

    /// <summary>The water that comes in with it as a line of its own, g; below 0 where the formula gives up water.</summary>
    public double WaterGrams { get; }

    /// <summary>Whether what was to stay did: to a millionth. Where not, the formula is the closest one.</summary>
    public bool IsKept { get; }

    /// <summary>At equal solids: the same dry substance, and so the same water.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="outgoing">The sugar to take out.</param>
    /// <param name="grams">How much of it, g, above 0 up to what the formula has.</param>
    /// <param name="incoming">The sugar or syrup to put in, another ingredient.</param>
    /// <param name="water">What balances it: water, or another ingredient that is nearly water. The formula need not have any.</param>
    /// <returns>
    /// The replacement. Worked number: 100 g of sugar against glucose syrup of 80.3 % solids: 124.5 g of syrup, and 24.5 g of water less.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The formula has none of the sugar, or two of the three ingredients are the same.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="grams"/> is outside its range, or so much that less water would be left than boils off.
    /// </exception>
    public static SugarReplacement AtEqualSolids(Formula formula, Ingredient outgoing, double grams, Ingredient incoming,
        Ingredient water) =>
        AtEqual(FormulaPart.Solids, Check(formula, outgoing, grams, incoming, water), outgoing, grams, incoming, water);

    /// <summary>At equal sweetness: the sugars together as sweet as they were, by a table.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="outgoing">The sugar to take out.</param>
    /// <param name="grams">How much of it, g, above 0 up to what the formula has.</param>
    /// <param name="incoming">The sugar or syrup to put in, another ingredient.</param>
    /// <param name="water">What balances it: water, or another ingredient that is nearly water. The formula need not have any.</param>
    /// <param name="table">The table of sweetness.</param>
    /// <inheritdoc cref="AtEqualSolids" path="/exception"/>
    /// <exception cref="InvalidOperationException">The formula is sweeter than dry sucrose.</exception>
    public static SugarReplacement AtEqualSweetness(Formula formula, Ingredient outgoing, double grams, Ingredient incoming,
        Ingredient water, SweetnessTable table)
    {
        Guard.NotNull(table);
        Check(formula, outgoing, grams, incoming, water);
        return table.Of(formula).Value.Likely > 0 || table.Of(incoming).Value.Likely > 0
            ? AtEqual(table.Part, formula, outgoing, grams, incoming, water)
            : throw new ArgumentException($"{nameof(table)} {table.Key} has no figure for anything in the formula or in '{incoming.Name}'.",
                nameof(table));
    }

    /// <summary>
    /// At equal activity of the water at 25 °C as the food will stand, so that it keeps as it did: sucrose above saturation is out as
    /// crystals, before and after.
    /// </summary>
    /// <param name="formula">
    /// The formula. What dissolves in it is put in all its water; its fat, protein and salt are left out of account.
    /// </param>
    /// <param name="outgoing">The sugar to take out.</param>
    /// <param name="grams">How much of it, g, above 0 up to what the formula has.</param>
    /// <param name="incoming">The sugar or syrup to put in, another ingredient.</param>
    /// <param name="water">What balances it: water, or another ingredient that is nearly water. The formula need not have any.</param>
    /// <param name="model">The model of the activity.</param>
    /// <returns>
    /// The replacement. Sucrose beyond saturation moves nothing: where many masses keep the activity, or come as near, it is the one that
    /// moves least water. Worked number: 700 g of sugar, 250 g of glucose syrup 42 DE and 80 g of water stand at 0.80; with sugar for the
    /// syrup at 0.85, which <see cref="IsKept"/> denies.
    /// </returns>
    /// <inheritdoc cref="AtEqualSolids" path="/exception"/>
    /// <exception cref="InvalidOperationException">The formula has no solution in it whose activity could be worked out.</exception>
    public static SugarReplacement AtEqualWaterActivity(Formula formula, Ingredient outgoing, double grams, Ingredient incoming,
        Ingredient water,
        WaterActivityModel model = WaterActivityModel.StarzakPeacock) => AtEqualActivity(formula, outgoing, grams, incoming, water, model,
            solution => solution.AsItStands(Celsius));

    /// <summary>
    /// At equal activity of the water at 25 °C while everything is dissolved: for a syrup that is hot or used before it grains. It says
    /// nothing of how a food keeps once crystals are out; ask <see cref="AtEqualWaterActivity"/>.
    /// </summary>
    /// <param name="formula">
    /// The formula. What dissolves in it is taken as dissolved in all its water; its fat, protein and salt are left out of account.
    /// </param>
    /// <param name="outgoing">The sugar to take out.</param>
    /// <param name="grams">How much of it, g, above 0 up to what the formula has.</param>
    /// <param name="incoming">The sugar or syrup to put in, another ingredient.</param>
    /// <param name="water">What balances it: water, or another ingredient that is nearly water. The formula need not have any.</param>
    /// <param name="model">The model of the activity.</param>
    /// <inheritdoc cref="AtEqualSolids" path="/exception"/>
    /// <exception cref="InvalidOperationException">The formula has no solution in it whose activity could be worked out.</exception>
    public static SugarReplacement AtEqualWaterActivityAllDissolved(Formula formula, Ingredient outgoing, double grams, Ingredient incoming,
        Ingredient water,
        WaterActivityModel model = WaterActivityModel.StarzakPeacock) => AtEqualActivity(formula, outgoing, grams, incoming, water, model,
            solution => solution);

    /// <summary>One line, such as <c>124.5 g in, 24.5 g of water out</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{IncomingGrams:0.0} g in, {Math.Abs(WaterGrams):0.0} g of water "
            + $"{(WaterGrams < 0 ? "out" : "in")}{(IsKept ? "" : "; the formula's water does not allow more")}");

    private static SugarReplacement AtEqual(FormulaPart part, Formula formula, Ingredient outgoing, double grams, Ingredient incoming,
        Ingredient water)
    {
        (outgoing, incoming, water) = (formula.Own(outgoing), formula.Own(incoming), formula.Own(water));
        Balance balance = Balance.Of(formula);
        double? before = formula.GramsOf(incoming);
        double wanted = balance[part].Grams.Likely / formula.TotalGrams, room = (formula.GramsOf(water) ?? 0) + grams, there = before ?? 0;
        if (wanted > 1)
            throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture,
                $"A gram of the formula is as sweet as {wanted:0.####} g of sucrose; from 0 to 1 can be kept."));
        FormulaProblem problem = FormulaProblem.StartingFrom(FormulaExchange.Make(formula, outgoing, grams, incoming, 0, water, grams));
        foreach (Ingredient ingredient in problem.Ingredients.Where(ingredient => ingredient != incoming && ingredient != water))
            problem = problem.WithFixed(ingredient, formula.GramsOf(ingredient)!.Value - (ingredient == outgoing ? grams : 0));
        if (before is null or 0)
            problem = problem.WithIngredient(incoming);
        SolvedFormula solved = problem.WithLimit(incoming, there).WithTarget(part, wanted, tolerance: 1e-6).Solve();
        double added = (solved.ToFormula().GramsOf(incoming) ?? 0) - there;
        Formula after = FormulaExchange.Make(formula, outgoing, grams, incoming, added, water, grams - added);
        return new SugarReplacement(formula, after, added, grams - added, solved.Results.All(result => result.IsMet));
    }

    private static SugarReplacement AtEqualActivity(Formula formula, Ingredient outgoing, double grams, Ingredient incoming,
        Ingredient water,
        WaterActivityModel model, Func<SugarSolution, SugarSolution> standing)
    {
        // What the crystals leave flat is flat to rounding, and no wider.
        const double flat = 1e-11;
        Check(formula, outgoing, grams, incoming, water);
        Guard.Defined(model);
        (outgoing, incoming, water) = (formula.Own(outgoing), formula.Own(incoming), formula.Own(water));
        double wanted = standing(SugarSolution.Of(formula)).WaterActivityAllDissolved(Celsius, model),
            most = Math.Min((formula.GramsOf(water) ?? 0) + grams, MostIncoming());
        double nearest = Math.Clamp(0, Rising(0), Math.Max(Rising(0), Rising(most)));
        double least = Roots.Rising(at => Rising(at) - nearest + flat, 0, most),
            highest = Roots.Rising(at => Rising(at) - nearest - flat, 0, most);
        double added = Math.Clamp(grams, least, Math.Max(least, highest));
        Formula after = FormulaExchange.Make(formula, outgoing, grams, incoming, added, water, grams - added);
        return new SugarReplacement(formula, after, added, grams - added, Math.Abs(Rising(added)) <= 1e-6);

        // What boils off must be there.
        double MostIncoming()
        {
            double spare = Formula.WaterOf(FormulaExchange.Make(formula, outgoing, grams, incoming, 0, water, grams).Lines)
                - formula.BoiledOffGrams, dries = FormulaPart.Water.FractionIn(water) - FormulaPart.Water.FractionIn(incoming);
            return dries > 0 ? Math.Max(0, spare / dries * (1 - 1e-9)) : double.MaxValue;
        }

        // With more of the sugar and less of the water the activity falls. Where there is too little water for the model it is next to
        // nothing.
        double Rising(double incomingGrams)
        {
            SugarSolution solution = standing(SugarSolution.Of(FormulaExchange.Make(formula, outgoing, grams, incoming, incomingGrams,
                water, grams - incomingGrams)));
            return solution.Solids <= solution.MaximumSolids ? wanted - solution.WaterActivityAllDissolved(Celsius, model) : wanted;
        }
    }

    private static Formula Check(Formula formula, Ingredient outgoing, double grams, Ingredient incoming, Ingredient water)
    {
        double there = Guard.NotNull(formula).GramsOf(Guard.NotNull(outgoing)) ?? 0;
        if (there <= 0)
            throw new ArgumentException($"{nameof(outgoing)} '{outgoing.Name}' is not in the formula.", nameof(outgoing));
        Guard.InRange(grams, Guard.Trace, there);
        if (Guard.NotNull(incoming) == outgoing)
            throw new ArgumentException($"{nameof(incoming)} '{incoming.Name}' is what is taken out.", nameof(incoming));
        if (Guard.NotNull(water) == outgoing || water == incoming)
            throw new ArgumentException($"{nameof(water)} '{water.Name}' is one of the two sugars; what balances them is a third.",
                nameof(water));
        return formula;
    }
}
