using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

public abstract partial class Demand
{
    /// <summary>So many grams of one ingredient to a gram of another.</summary>
    public sealed class Ratio : Demand
    {
        internal Ratio(Ingredient ingredient, Ingredient to, double low, double high)
            : base(low, high)
        {
            Ingredient = ingredient;
            To = to;
        }

        /// <summary>The ingredient.</summary>
        public Ingredient Ingredient { get; }

        /// <summary>The ingredient it is compared with.</summary>
        public Ingredient To { get; }

        /// <summary>The low end: grams of the first ingredient to a gram of the second.</summary>
        public double LowRatio => LowEnd;

        /// <summary>The high end; equal to the low one where one value is asked for.</summary>
        public double HighRatio => HighEnd;

        internal override string UnitText => "";

        internal override string SayMeasure(double? achieved) => achieved is null ? $"there is nothing of {To.Name}"
            : base.SayMeasure(achieved);

        internal override Demand Between(double low, double high) => new Ratio(Ingredient, To, low, high);

        internal override double Measure(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams)
        {
            double first = grams[problem.IndexOf(Ingredient)], second = grams[problem.IndexOf(To)];
            // Nothing of both keeps every ratio.
            return second > 0 ? first / second : first > 0 ? double.PositiveInfinity : double.IsFinite(LowRatio) ? LowRatio : 0;
        }

        internal override void AddTo(Assembly assembly, bool used) => assembly.AddRatio(this);

        private protected override string Say(string ends) => ends switch
        {
            "1" => $"as much {Ingredient.Name} as {To.Name}",
            "at least 1" => $"at least as much {Ingredient.Name} as {To.Name}",
            "at most 1" => $"at most as much {Ingredient.Name} as {To.Name}",
            _ => $"{Ingredient.Name} {ends} times {To.Name}",
        };
    }
}
