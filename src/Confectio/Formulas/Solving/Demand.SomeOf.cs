using System.Globalization;
using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

public abstract partial class Demand
{
    /// <summary>So many of some ingredients and no more: at most two fats, either butter or shortening. Which is found by trying all.</summary>
    public sealed class SomeOf : Demand
    {
        // Which of the ingredients may be used, one list a choice; those of the most ingredients first.
        private readonly int[][] _choices;

        internal SomeOf(Ingredient[] ingredients, int atMost, int atLeast, double lowGrams, double highGrams)
            : base(double.NegativeInfinity, double.PositiveInfinity)
        {
            (Ingredients, AtMost, AtLeast, LowGrams, HighGrams) = (ingredients, atMost, atLeast, lowGrams, highGrams);
            List<int[]> choices = [];
            // Where none of what is used is asked, what may be used may be left out too: then smaller choices are among the largest.
            for (int size = atMost; size >= (lowGrams > 0 ? atLeast : atMost); size--)
                Add(choices, [], 0, size);
            _choices = [.. choices];

            void Add(List<int[]> all, int[] chosen, int from, int size)
            {
                if (chosen.Length == size)
                    all.Add(chosen);
                for (int at = from; chosen.Length < size && at <= ingredients.Length - (size - chosen.Length); at++)
                    Add(all, [.. chosen, at], at + 1, size);
            }
        }

        /// <summary>The ingredients.</summary>
        public IReadOnlyList<Ingredient> Ingredients { get; }

        /// <summary>The most of them that are used.</summary>
        public int AtMost { get; }

        /// <summary>The fewest of them that are used.</summary>
        public int AtLeast { get; }

        /// <summary>At least this much of each that is used, g; 0 where nothing is asked.</summary>
        public double LowGrams { get; }

        /// <summary>At most this much of each, g; infinity where there is no most.</summary>
        public double HighGrams { get; }

        internal override bool IsChoice => true;

        internal override int Alternatives => _choices.Length;

        // How many choices there are of so many ingredients; the largest number where they are too many to count.
        internal static double Count(int ingredients, int atMost, int atLeast, bool hasLow)
        {
            double sum = 0;
            for (int size = hasLow ? atLeast : atMost; size <= atMost; size++)
            {
                double ways = 1;
                for (int k = 0; k < size; k++)
                    ways = ways * (ingredients - k) / (k + 1);
                sum += ways;
            }
            return Math.Round(sum);
        }

        internal override Demand Between(double low, double high) => this;

        internal override double Measure(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams)
        {
            int used = 0;
            foreach (Ingredient ingredient in Ingredients)
                used += grams[problem.IndexOf(ingredient)] > 0 ? 1 : 0;
            return used;
        }

        internal override bool HasRoom(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams, int side) => false;

        internal override void AddTo(Assembly assembly, bool used) => AddChoice(assembly, 0);

        internal override void AddChoice(Assembly assembly, int alternative)
        {
            int[] used = _choices[alternative];
            for (int at = 0; at < Ingredients.Count; at++)
            {
                if (Array.IndexOf(used, at) < 0)
                    assembly.Limit(this, Ingredients[at], 0, 0);
                else if (LowGrams > 0 || double.IsFinite(HighGrams))
                    assembly.Limit(this, Ingredients[at], LowGrams > 0 ? LowGrams : double.NegativeInfinity, HighGrams);
            }
        }

        private protected override string Say(string ends)
        {
            string count = AtLeast == AtMost ? $"exactly {AtMost}" : AtLeast == 0 ? $"at most {AtMost}" : $"{AtLeast} to {AtMost}";
            string names = Ingredients.Count == 1 ? Ingredients[0].Name
                : $"{string.Join(", ", Ingredients.Take(Ingredients.Count - 1).Select(ingredient => ingredient.Name))} and {Ingredients[^1].Name}";
            string each = LowGrams <= 0 && double.IsPositiveInfinity(HighGrams) ? "" : string.Create(CultureInfo.InvariantCulture, $", {(LowGrams <= 0
                ? $"at most {HighGrams:0.####}" : double.IsPositiveInfinity(HighGrams) ? $"at least {LowGrams:0.####}"
                : $"from {LowGrams:0.####} to {HighGrams:0.####}")} g of each that is used");
            return $"{count} of {names}{each}";
        }
    }
}
