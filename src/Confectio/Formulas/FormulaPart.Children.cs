using System.Diagnostics.CodeAnalysis;
using System.Numerics;
using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Formulas;

// What each kind of part counts. The sets of constituents are a bit for each Constituent.
public abstract partial class FormulaPart
{
    /// <summary>One or several constituents together.</summary>
    private sealed class SumOf(string name, uint constituents) : FormulaPart(name, WordOf(name))
    {
        private readonly uint _constituents = constituents;

        public override double FractionOfBoiledOffWater => (_constituents & Bit(Constituent.Water)) != 0 ? 1 : 0;

        public override bool Equals([NotNullWhen(true)] FormulaPart? other) => other is SumOf sum && _constituents == sum._constituents;

        public override int GetHashCode() => HashCode.Combine(nameof(SumOf), _constituents);

        // A single constituent may be worse known than the composition: the starch of cocoa is a guess where its fat is compiled.
        internal override double StandardUncertaintyIn(Ingredient ingredient) => BitOperations.IsPow2(_constituents)
            ? CompositionSpread.StandardUncertainty(ingredient, (Constituent)BitOperations.TrailingZeroCount(_constituents))
            : CompositionSpread.StandardUncertainty(ingredient, FractionIn(ingredient), _constituents);

        private protected override double Fraction(Ingredient ingredient) => ingredient.Composition.Together(_constituents);
    }

    /// <summary>Everything but some constituents.</summary>
    private sealed class AllBut(string name, uint constituents) : FormulaPart(name, WordOf(name))
    {
        private readonly uint _constituents = constituents;

        public override double FractionOfBoiledOffWater => (_constituents & Bit(Constituent.Water)) == 0 ? 1 : 0;

        public override bool Equals([NotNullWhen(true)] FormulaPart? other) => other is AllBut rest && _constituents == rest._constituents;

        public override int GetHashCode() => HashCode.Combine(nameof(AllBut), _constituents);

        internal override double StandardUncertaintyIn(Ingredient ingredient) =>
            CompositionSpread.StandardUncertainty(ingredient, FractionIn(ingredient), _constituents);

        private protected override double Fraction(Ingredient ingredient) => Math.Max(0, 1 - ingredient.Composition.Together(_constituents));
    }

    /// <summary>The fat that is from milk.</summary>
    private sealed class OfMilkFat() : FormulaPart("milk fat", "milk-fat")
    {
        public override bool Equals([NotNullWhen(true)] FormulaPart? other) => other is OfMilkFat;

        public override int GetHashCode() => HashCode.Combine(nameof(OfMilkFat));

        private protected override double Fraction(Ingredient ingredient) => ingredient.Composition.MilkFat;
    }

    /// <summary>Solids that are told food by food.</summary>
    private sealed class TracedPart(string name) : FormulaPart(name, WordOf(name))
    {
        public override bool Equals([NotNullWhen(true)] FormulaPart? other) => other is TracedPart part && part.Word == Word;

        public override int GetHashCode() => HashCode.Combine(nameof(TracedPart), Word);

        internal override bool IsKnownIn(Ingredient ingredient) => TracedSolids.FractionIn(Word, ingredient) is not null;

        internal override Evidence EvidenceIn(Ingredient ingredient) => TracedSolids.EvidenceOf(Word, ingredient);

        private protected override double Fraction(Ingredient ingredient) => TracedSolids.FractionIn(Word, ingredient)
            ?? throw new ArgumentException($"{nameof(ingredient)} '{ingredient.Name}': its {Name} are not known, and what is not known is not zero.", nameof(ingredient));
    }

    /// <summary>The whole mass of some ingredients, as they are put in.</summary>
    private sealed class OfMasses(string name, string word, Ingredient[] ingredients) : FormulaPart(name, word)
    {
        private readonly Ingredient[] _ingredients = ingredients;

        public override bool Equals([NotNullWhen(true)] FormulaPart? other) => other is OfMasses masses
            && _ingredients.Length == masses._ingredients.Length && Array.TrueForAll(_ingredients, masses.Counts);

        public override int GetHashCode()
        {
            int sum = 0; // whatever the order of the ingredients
            foreach (Ingredient ingredient in _ingredients)
                sum ^= ingredient.GetHashCode();
            return HashCode.Combine(nameof(OfMasses), sum);
        }

        private protected override double Fraction(Ingredient ingredient) => Counts(ingredient) ? 1 : 0;

        private bool Counts(Ingredient ingredient) => Array.IndexOf(_ingredients, ingredient) >= 0;
    }

    /// <summary>Constituents counted by weights, one for each <see cref="Constituent"/>; they are taken as independent.</summary>
    private sealed class WeightedSum(string name, double[] weights) : FormulaPart(name, WordOf(name))
    {
        private readonly double[] _weights = weights;

        internal override double MaximumInAGram => _weights.Max();

        public override bool Equals([NotNullWhen(true)] FormulaPart? other) =>
            other is WeightedSum sum && _weights.AsSpan().SequenceEqual(sum._weights);

        public override int GetHashCode()
        {
            HashCode hash = new();
            foreach (double weight in _weights)
                hash.Add(weight);
            return hash.ToHashCode();
        }

        internal override double StandardUncertaintyIn(Ingredient ingredient)
        {
            double variance = 0;
            for (int i = 0; i < _weights.Length; i++)
            {
                double u = _weights[i] * CompositionSpread.StandardUncertainty(ingredient, (Constituent)i);
                variance += u * u;
            }
            return Math.Sqrt(variance);
        }

        private protected override double Fraction(Ingredient ingredient)
        {
            double sum = 0;
            for (int i = 0; i < _weights.Length; i++)
                sum += _weights[i] * ingredient.Composition[(Constituent)i];
            return sum;
        }
    }
}
