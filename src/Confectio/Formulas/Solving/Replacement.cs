using Confectio.Ingredients;
using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

/// <summary>
/// Some or all of an ingredient replaced by others, so that chosen parts of the formula stay as they were: butter by shortening and
/// water at equal fat and water.
/// </summary>
public sealed class Replacement
{
    private Replacement(Formula before, Formula after, IReadOnlyList<FormulaLine> added, IReadOnlyList<KeptPart> kept)
    {
        Before = before;
        After = after;
        Added = added;
        Kept = kept;
    }

    /// <summary>The formula as it was.</summary>
    public Formula Before { get; }

    /// <summary>The formula with the replacement.</summary>
    public Formula After { get; }

    /// <summary>What was put in; an ingredient that does not help has 0 g.</summary>
    public IReadOnlyList<FormulaLine> Added { get; }

    /// <summary>For each part that was to stay: what the replacement changed after all.</summary>
    public IReadOnlyList<KeptPart> Kept { get; }

    /// <summary>Whether every part stayed, to a billionth of what was taken out.</summary>
    public bool IsExact => Kept.All(part => part.IsKept);

    /// <summary>Replaces.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="outgoing">The ingredient to take out.</param>
    /// <param name="grams">How much of it, g, above 0 up to what the formula has.</param>
    /// <param name="incoming">What to put in instead, from 1 to 50 ingredients, none of them the outgoing one.</param>
    /// <param name="keeping">The parts to keep, from 1 to 4; where not all can be kept, an earlier one comes before a later one.</param>
    /// <remarks>
    /// Among replacements that keep the parts equally well it takes the one of the least masses (least sum of squares).
    /// Worked number: 100 g of unsalted butter (81.11 % fat) against white shortening (100 %) at equal fat takes 81.11 g.
    /// </remarks>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="grams"/> is outside its range, or so much that less water would be left than boils off, or nothing.
    /// </exception>
    /// <exception cref="ArgumentException">
    /// The formula has none of the ingredient or would have more than 1000 lines, or a list is empty, too long, holds a null or names
    /// something twice.
    /// </exception>
    public static Replacement Of(
        Formula formula, Ingredient outgoing, double grams, IReadOnlyList<Ingredient> incoming, IReadOnlyList<FormulaPart> keeping)
    {
        Guard.NotNull(formula);
        Guard.NotNull(outgoing);
        double there = formula.GramsOf(outgoing) ?? 0;
        if (there <= 0)
            throw new ArgumentException($"{nameof(outgoing)} '{outgoing.Name}' is not in the formula.", nameof(outgoing));
        Guard.InRange(grams, Guard.Trace, there);
        if (Guard.NotNull(incoming).Count is < 1 or > 50 || incoming.Contains(outgoing) || incoming.Distinct().Count() < incoming.Count)
            throw new ArgumentException($"{nameof(incoming)} needs 1 to 50 ingredients, none twice and not '{outgoing.Name}' itself.",
                nameof(incoming));
        if (Guard.NotNull(keeping).Count is < 1 or > RankedProblem.MostPriorities)
            throw new ArgumentException($"{nameof(keeping)} has {keeping.Count} parts; from 1 to {RankedProblem.MostPriorities} are "
                + $"expected.", nameof(keeping));
        if (incoming.Any(ingredient => ingredient is null))
            throw new ArgumentException($"{nameof(incoming)} holds a null; each of its ingredients is needed.", nameof(incoming));
        if (keeping.Any(part => part is null))
            throw new ArgumentException($"{nameof(keeping)} holds a null; each of its parts is needed.", nameof(keeping));

        // Of an ingredient that the formula has, the formula's own figures count, whatever table the caller's is from.
        outgoing = formula.Own(outgoing);
        incoming = [.. incoming.Select(formula.Own)];
        double[] shares = Solve(outgoing, incoming, keeping);
        FormulaLine[] added = [.. incoming.Select((ingredient, j) => FormulaLine.Of(ingredient, shares[j] * grams))];
        Formula after = FormulaExchange.Of(formula, [.. Without(formula, outgoing, grams, there),
            .. added.Where(line => line.Grams.Likely > 0)], grams);
        KeptPart[] kept = [.. keeping.Select(part => new KeptPart(part, part.FractionIn(outgoing) * grams,
            added.Sum(line => part.FractionIn(line.Ingredient) * line.Grams.Likely), grams))];
        return new Replacement(formula, after, added, kept);
    }

    // Grams of each incoming ingredient for one gram of the outgoing one.
    private static double[] Solve(Ingredient outgoing, IReadOnlyList<Ingredient> incoming, IReadOnlyList<FormulaPart> keeping)
    {
        RankedProblem problem = new(incoming.Count);
        problem.Conditions.Lower.Clear();
        problem.Conditions.Prior[..incoming.Count].Fill(1);
        for (int k = 0; k < keeping.Count; k++)
        {
            double target = keeping[k].FractionIn(outgoing);
            problem.AddTarget([.. incoming.Select(keeping[k].FractionIn)], target, target, 1, k + 1);
        }
        RankedSolver solver = new();
        return solver.Solve(problem) == SolveStatus.Optimal
            ? solver.Solution.ToArray()
            : throw new InvalidOperationException("The replacement was not decided.");
    }

    // What stays of the outgoing ingredient stays in its lines, in proportion.
    private static IEnumerable<FormulaLine> Without(Formula formula, Ingredient outgoing, double grams, double there)
    {
        foreach (FormulaLine line in formula.Lines)
        {
            if (!line.Ingredient.Equals(outgoing))
                yield return line;
            else if (grams < there)
                yield return FormulaLine.Of(line.Ingredient, line.Grams.Likely * ((there - grams) / there));
        }
    }

    /// <summary>What comes in.</summary>
    public override string ToString() => string.Join(", ", Added);
}
