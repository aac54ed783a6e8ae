using Confectio.Sources;
using Confectio.Textures;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Textures;

/// <summary>Two rules of the trade for gelatine of another strength; both are common practice, and a vetting of tables must know both.</summary>
public sealed class GelatineTests
{
    [Fact] // K11: 10·160/200 and 10·√(160/200)
    public void BothRulesAreTold()
    {
        GelatineStrength strong = GelatineStrength.OfBloom(200), weak = GelatineStrength.OfBloom(160);
        Assert.Equal(8.000, strong.LinearGramsFor(10, weak).Likely, 0.001);
        Assert.Equal(8.944, strong.RootGramsFor(10, weak).Likely, 0.001);
        Assert.Contains("disagree", strong.SentenceFor(10, weak), StringComparison.Ordinal);
    }

    // Leaves are sold as equal: mass times bloom is 400 to 462 for all of them, mass times its root 27 to 39 (worked from the table).
    [Fact]
    public void LeafForLeafIsTheLinearRule()
    {
        Assert.Equal(["bronze", "silver", "gold", "platinum"], GelatineStrength.Leaves.Select(leaf => leaf.Name));
        Assert.All(GelatineStrength.Leaves, leaf =>
        {
            Assert.InRange(leaf.GramsOfALeaf!.Value * leaf.Bloom.Likely, 400, 462);
            Assert.Equal(Evidence.CommonPractice, leaf.Provenance!.Evidence);
            // A leaf for a leaf, by mass: within the strengths that both may have.
            Spread gold = GelatineStrength.Leaf("gold").LinearGramsFor(leaf.GramsOfALeaf.Value, leaf);
            Assert.InRange(2.0, gold.Low * 0.95, gold.High * 1.05);
        });
    }

    [Property(MaxTest = 200)]
    public void ThereAndBackIsTheSame(byte first, byte second, byte mass)
    {
        GelatineStrength one = GelatineStrength.OfBloom(50 + first), other = GelatineStrength.OfBloom(50 + second);
        double grams = 1 + mass, linear = other.LinearGramsFor(grams, one).Likely, root = other.RootGramsFor(grams, one).Likely;
        Assert.Equal(grams, one.LinearGramsFor(linear, other).Likely, 1e-9);
        Assert.Equal(grams, one.RootGramsFor(root, other).Likely, 1e-9);
        // The root is between nothing changed and the linear rule.
        Assert.InRange(root, Math.Min(grams, linear) - 1e-9, Math.Max(grams, linear) + 1e-9);
    }

    [Fact]
    public void BadInputIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>("bloom", () => GelatineStrength.OfBloom(49));
        Assert.Throws<ArgumentException>("name", () => GelatineStrength.Leaf("tin"));
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => GelatineStrength.OfBloom(200).LinearGramsFor(double.NaN, GelatineStrength.OfBloom(160)));
    }
}
