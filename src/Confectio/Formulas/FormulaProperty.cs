using Confectio.Ingredients;

namespace Confectio.Formulas;

/// <summary>
/// Something that a formula has and that is no share of its mass: how active its water is, where it boils, how much of its fat is solid,
/// how dense it is. Rooms that know such things make them (<c>SugarProperties</c>, <c>HeatProperties</c>); a problem asks for them
/// (<see cref="Solving.FormulaProblem.WithPropertyTarget"/>, <see cref="Solving.FormulaProblem.WithPropertyLimit"/>).
/// </summary>
/// <remarks>
/// A property is a function of sums Σ mᵢ·cᵢ over the ingredients, less what boils off. Where it is one sum over another
/// (<see cref="IsFraction"/>) a problem with it is solved and proved as one with shares is. Else it is followed by its slope, and no more
/// is claimed than that no small change does better.
/// </remarks>
public abstract class FormulaProperty : IEquatable<FormulaProperty>
{
    private protected FormulaProperty(string word, string name, string unit, double minimum, double maximum, double usualTolerance)
    {
        Word = word;
        Name = name;
        Unit = unit;
        Minimum = minimum;
        Maximum = maximum;
        UsualTolerance = usualTolerance;
    }

    /// <summary>The word in files, such as <c>water-activity</c>.</summary>
    public string Word { get; }

    /// <summary>The name in a sentence, with what it is asked at: <c>water activity as it will stand at 25 °C</c>.</summary>
    public string Name { get; }

    /// <summary>The unit, such as <c>°C</c>; empty where it has none.</summary>
    public string Unit { get; }

    /// <summary>The least that may be asked for, in its unit.</summary>
    public double Minimum { get; }

    /// <summary>The most that may be asked for, in its unit.</summary>
    public double Maximum { get; }

    /// <summary>The miss that counts as one where nothing else is said, in its unit.</summary>
    public double UsualTolerance { get; }

    /// <summary>Whether it is one sum over the ingredients over another, so that what is best can be proved of all formulas.</summary>
    public abstract bool IsFraction { get; }

    /// <summary>What a formula has of it.</summary>
    /// <param name="formula">The formula.</param>
    /// <returns>The likely value in the unit; <see langword="null"/> where it has none, such as the activity of no water.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    public double? ValueOf(Formula formula)
    {
        Guard.NotNull(formula);
        double value = Value(SumsOf([.. formula.Lines.Select(line => line.Ingredient)], [.. formula.Lines.Select(line => line.Grams.Likely)],
            formula.BoiledOffGrams));
        return double.IsFinite(value) ? value : null;
    }

    /// <summary>How well that is known.</summary>
    /// <param name="formula">The formula.</param>
    /// <returns>The value with its range; <see langword="null"/> where it has none, or nobody has said how far off it may be.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    public virtual Spread? SpreadOf(Formula formula)
    {
        Guard.NotNull(formula);
        return null;
    }

    /// <summary>What the figure leaves out or takes for granted, in sentences.</summary>
    /// <param name="formula">The formula.</param>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    public virtual IReadOnlyList<string> CautionsOf(Formula formula)
    {
        Guard.NotNull(formula);
        return [];
    }

    /// <inheritdoc/>
    public virtual bool Equals(FormulaProperty? other) => other is not null && GetType() == other.GetType() && Name == other.Name;

    /// <inheritdoc/>
    public sealed override bool Equals(object? obj) => Equals(obj as FormulaProperty);

    /// <inheritdoc/>
    public sealed override int GetHashCode() => Name.GetHashCode(StringComparison.Ordinal);

    /// <summary>The name in a sentence.</summary>
    public override string ToString() => Name;

    /// <summary>How many sums it is a function of.</summary>
    internal abstract int Sums { get; }

    /// <summary>What a gram of an ingredient adds to each sum.</summary>
    internal abstract void Add(Ingredient ingredient, double grams, Span<double> sums);

    /// <summary>What a gram of water that boils off takes from each sum.</summary>
    internal abstract void BoilOff(double grams, Span<double> sums);

    /// <summary>The value of sums, of which only the proportions matter; not a number where there is none.</summary>
    internal abstract double Value(ReadOnlySpan<double> sums);

    /// <summary>
    /// Why none of these ingredients can have a value, in words after their name; null where they can.
    /// </summary>
    internal abstract string? Lacking(IEnumerable<Ingredient> ingredients);

    /// <summary>How many smooth pieces the value is made of; on each side of a kink it is another.</summary>
    internal virtual int Pieces => 1;

    /// <summary>The value by one piece, which goes on smoothly beyond the kink.</summary>
    internal virtual double ValueOfPiece(int piece, ReadOnlySpan<double> sums) => Value(sums);

    /// <summary>Of two pieces: below 0 the first holds, above 0 the second, at 0 they meet.</summary>
    internal virtual double Side(ReadOnlySpan<double> sums) => -1;

    /// <summary>How much there is of what the value hangs on: steps by which its slope is found are small against that.</summary>
    internal virtual double Size(ReadOnlySpan<double> sums) => 1;

    /// <summary>The sums of a formula.</summary>
    internal double[] SumsOf(IReadOnlyList<Ingredient> ingredients, ReadOnlySpan<double> grams, double boiledOffGrams)
    {
        double[] sums = new double[Sums];
        for (int j = 0; j < grams.Length; j++)
        {
            if (grams[j] != 0)
                Add(ingredients[j], grams[j], sums);
        }
        if (boiledOffGrams != 0)
            BoilOff(boiledOffGrams, sums);
        return sums;
    }

    /// <summary>A property that is one sum over another.</summary>
    internal abstract class Fraction(string word, string name, string unit, double minimum, double maximum, double usualTolerance)
        : FormulaProperty(word, name, unit, minimum, maximum, usualTolerance)
    {
        public sealed override bool IsFraction => true;

        internal sealed override int Sums => 2;

        internal sealed override double Value(ReadOnlySpan<double> sums) => sums[1] > 0 ? sums[0] / sums[1] : double.NaN;

        internal sealed override void Add(Ingredient ingredient, double grams, Span<double> sums)
        {
            sums[0] += grams * Part(ingredient);
            sums[1] += grams * Whole(ingredient);
        }

        internal sealed override void BoilOff(double grams, Span<double> sums)
        {
            sums[0] -= grams * BoiledOffPart;
            sums[1] -= grams * BoiledOffWhole;
        }

        /// <summary>What a gram adds to the sum above the line.</summary>
        internal abstract double Part(Ingredient ingredient);

        /// <summary>What a gram adds to the sum below it.</summary>
        internal abstract double Whole(Ingredient ingredient);

        internal virtual double BoiledOffPart => 0;

        internal virtual double BoiledOffWhole => 0;
    }
}
