using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Textures;

/// <summary>The strength of a gelatine in bloom, and how much of another takes its place: by two rules of the trade that disagree.</summary>
/// <remarks>
/// Linear: m₂ = m₁·B₁/B₂. By the root: m₂ = m₁·√(B₁/B₂), from a strength that goes with the square of the concentration (a handbook, from memory). Both are in use, and worked tables of
/// both were seen. Leaves are sold as equal leaf for leaf, so that mass × bloom is nearly the same for all of them (400 to 462 g·bloom): leaf for leaf is the linear rule. Weight for weight
/// of powders is argued by the root. Nothing decides between them but a trial: set a spoonful. Worked number: for 10 g of 160 bloom, of 200 bloom 8.00 g by the linear rule and 8.94 g by
/// the root.
/// </remarks>
public sealed class GelatineStrength
{
    /// <summary>The least strength, bloom.</summary>
    public const double MinimumBloom = 50;

    /// <summary>The greatest strength, bloom.</summary>
    public const double MaximumBloom = 325;

    private static readonly GelatineStrength[] s_leaves = ReadBuiltIn();

    private GelatineStrength(string name, Spread bloom, double? gramsOfALeaf, Provenance? provenance)
    {
        Name = name;
        Bloom = bloom;
        GramsOfALeaf = gramsOfALeaf;
        Provenance = provenance;
    }

    /// <summary>The leaves that are sold by the names of metals; common practice, and makers differ.</summary>
    public static IReadOnlyList<GelatineStrength> Leaves => s_leaves;

    /// <summary>The name of a leaf, such as <c>gold</c>; empty where the strength was given.</summary>
    public string Name { get; }

    /// <summary>The strength, bloom.</summary>
    public Spread Bloom { get; }

    /// <summary>The mass of a leaf, g; <see langword="null"/> where it is no leaf.</summary>
    public double? GramsOfALeaf { get; }

    /// <summary>Where it comes from; <see langword="null"/> where the strength was given.</summary>
    public Provenance? Provenance { get; }

    /// <summary>A gelatine of a strength, as its packet has it.</summary>
    /// <param name="bloom">The strength, bloom, from 50 to 325.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bloom"/> is outside its range.</exception>
    public static GelatineStrength OfBloom(double bloom) => new("", Spread.Exactly(Guard.InRange(bloom, MinimumBloom, MaximumBloom)), null, null);

    /// <summary>The leaf of a name: bronze, silver, gold or platinum.</summary>
    /// <param name="name">The name.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such leaf; the message lists those there are.</exception>
    public static GelatineStrength Leaf(string name) => Keyed.Get(s_leaves, name, "leaf of gelatine", "leaves", known => known.Name);

    /// <summary>How much of this one takes the place of another, by the linear rule: leaf for leaf.</summary>
    /// <param name="grams">The mass of the other, g, from 0 to 1e9.</param>
    /// <param name="other">The other.</param>
    /// <returns>g, over the strengths that both may have.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public Spread LinearGramsFor(double grams, GelatineStrength other) => Grams(grams, other, 1);

    /// <summary>The same by the root of the strengths: argued for powders by weight.</summary>
    /// <inheritdoc cref="LinearGramsFor"/>
    public Spread RootGramsFor(double grams, GelatineStrength other) => Grams(grams, other, 0.5);

    /// <summary>Both rules in a sentence, such as <c>8 g by the linear rule (leaf for leaf), 8.94 g by the root</c>.</summary>
    /// <inheritdoc cref="LinearGramsFor"/>
    public string SentenceFor(double grams, GelatineStrength other)
    {
        Spread linear = LinearGramsFor(grams, other), root = RootGramsFor(grams, other);
        return $"{Told(linear)} by the linear rule (leaf for leaf), {Told(root)} by the root of the strengths; both are common practice and they disagree: set a spoonful first";
    }

    /// <summary>The name and the strength, such as <c>gold leaf, 190 to 220 bloom, 2 g</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{(Name.Length > 0 ? Name + " leaf, " : "")}{Bloom.Low:0.#}{(Bloom.High > Bloom.Low ? $" to {Bloom.High:0.#}" : "")} bloom{(GramsOfALeaf is double leaf ? $", {leaf:0.#} g (common practice)" : "")}");

    private static string Told(Spread grams) => string.Create(CultureInfo.InvariantCulture,
        $"{grams.Likely:0.##} g{(grams.High > grams.Low ? $" ({grams.Low:0.##} to {grams.High:0.##})" : "")}");

    private Spread Grams(double grams, GelatineStrength other, double power)
    {
        Guard.InRange(grams, 0, 1e9);
        Spread from = Guard.NotNull(other).Bloom;
        return new Spread(grams * Math.Pow(from.Low / Bloom.High, power), grams * Math.Pow(from.Likely / Bloom.Likely, power),
            grams * Math.Pow(from.High / Bloom.Low, power), Spread.Worse(from.Basis, Bloom.Basis));
    }

    private static GelatineStrength[] ReadBuiltIn()
    {
        List<GelatineStrength> all = [];
        EmbeddedTable.Read("gelatine_leaves.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            double low = fields.RequiredNumber("low_bloom", MinimumBloom, MaximumBloom), high = fields.RequiredNumber("high_bloom", low, MaximumBloom);
            all.Add(new GelatineStrength(fields.Required("leaf"), new Spread(low, (low + high) / 2, high, SpreadBasis.Judged),
                fields.RequiredNumber("grams", 0.5, 10), fields.Provenance("source", "kind", "", fields.Word("note"))));
        });
        return [.. all];
    }
}
