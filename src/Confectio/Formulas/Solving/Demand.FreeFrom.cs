using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

public abstract partial class Demand
{
    /// <summary>
    /// No ingredient that has an allergen. A caution, not a clearance: that a food is not listed with an allergen does not make it free of it.
    /// </summary>
    public sealed class FreeFrom : Demand
    {
        internal FreeFrom(string word, IReadOnlyList<Allergen> allergens, bool alsoOften)
            : base(double.NegativeInfinity, 0) => (Word, Allergens, AlsoWhatOftenContains) = (word, allergens, alsoOften);

        /// <summary>What is asked, in a word: <c>milk</c>, <c>nuts</c>.</summary>
        public string Word { get; }

        /// <summary>The allergens that the word means.</summary>
        public IReadOnlyList<Allergen> Allergens { get; }

        /// <summary>Whether an ingredient of which only many makes have the allergen is left out too.</summary>
        public bool AlsoWhatOftenContains { get; }

        internal override bool NeverGivesWay => true;

        internal override bool HasMovableEnds => false;

        /// <summary>Whether an ingredient is left out for it.</summary>
        /// <param name="ingredient">The ingredient.</param>
        /// <returns>
        /// True where it has one of the allergens, where many makes have one and that is asked, or where nobody has said what it has.
        /// </returns>
        /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
        public bool LeavesOut(Ingredient ingredient) =>
            Contains(Guard.NotNull(ingredient)) || (AlsoWhatOftenContains && OftenContains(ingredient)) || !ingredient.AllergensAreStated;

        internal override Demand Between(double low, double high) => this;

        internal override double Measure(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams)
        {
            double sum = 0;
            for (int j = 0; j < grams.Length; j++)
                sum += LeavesOut(problem.Candidates[j].Ingredient) ? grams[j] : 0;
            return sum;
        }

        internal override void AddTo(Assembly assembly, bool used)
        {
            foreach (Candidate candidate in assembly.Candidates)
            {
                if (LeavesOut(candidate.Ingredient))
                    assembly.Limit(this, candidate.Ingredient, double.NegativeInfinity, 0);
            }
        }

        // What was left out, by name and why; and what is not thereby said.
        internal string Remark(FormulaProblem problem)
        {
            Ingredient[] left = [.. problem.Ingredients.Where(LeavesOut)];
            List<string> why = [];
            Add(left.Where(Contains), "which contain it");
            Add(left.Where(food => !Contains(food) && AlsoWhatOftenContains && OftenContains(food)), "which many makes contain");
            Add(left.Where(food => !Contains(food) && !(AlsoWhatOftenContains && OftenContains(food))), "of which nobody said what allergens they have");
            string allowed = AlsoWhatOftenContains ? "" : Allowed();
            return $"No {Word}: {(why.Count == 0 ? "none of the ingredients is listed with it, so none is left out" : "left out are " + string.Join("; ", why))}."
                + $"{allowed} {Caution.ReadTheLabel}";

            void Add(IEnumerable<Ingredient> foods, string reason)
            {
                string names = string.Join(", ", foods.Select(food => food.Name));
                if (names.Length > 0)
                    why.Add($"{names}, {reason}");
            }

            string Allowed()
            {
                string names = string.Join(", ", problem.Ingredients.Where(food => !LeavesOut(food) && OftenContains(food)).Select(food => food.Name));
                return names.Length == 0 ? "" : $" Allowed are {names}, of which many makes contain it: only a make without it will do.";
            }
        }

        private bool Contains(Ingredient ingredient) => ingredient.Allergens.Any(Allergens.Contains);

        private bool OftenContains(Ingredient ingredient) => ingredient.OftenContains.Any(Allergens.Contains);

        private protected override string Say(string ends) => $"no {Word}";
    }
}
