using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

public abstract partial class Demand
{
    /// <summary>The mass of an ingredient: within limits, given, or within limits where it is not left out.</summary>
    public sealed class IngredientMass : Demand
    {
        internal IngredientMass(Ingredient ingredient, double low, double high)
            : base(low, high) => Ingredient = ingredient;

        /// <summary>The ingredient.</summary>
        public Ingredient Ingredient { get; }

        /// <summary>The low end, g; minus infinity where there is none.</summary>
        public double LowGrams => LowEnd;

        /// <summary>The high end, g; equal to the low one where one value is asked for, infinity where there is none.</summary>
        public double HighGrams => HighEnd;

        /// <summary>Whether the mass is given, so that rounding leaves it alone.</summary>
        public bool IsFixed { get; internal init; }

        /// <summary>Whether the ingredient may be left out; the ends hold where it is used.</summary>
        public bool MayBeLeftOut { get; internal init; }

        internal override bool IsChoice => MayBeLeftOut;

        internal override bool IsGiven => IsFixed;

        internal override Demand Between(double low, double high) =>
            new IngredientMass(Ingredient, low, high) { IsFixed = IsFixed, MayBeLeftOut = MayBeLeftOut };

        internal override double Measure(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams) =>
            grams[problem.IndexOf(Ingredient)];

        internal override void AddTo(Assembly assembly, bool used) =>
            assembly.Limit(this, Ingredient, used ? LowGrams : 0, used ? HighGrams : 0);

        private protected override string Say(string ends) => HighGrams == 0 ? $"no {Ingredient.Name}" : $"{Ingredient.Name} {(MayBeLeftOut ? "left out or " : "")}{ends}";
    }
}
