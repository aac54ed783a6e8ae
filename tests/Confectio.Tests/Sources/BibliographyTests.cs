using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Sources;

/// <summary>The sources by their keys, and the words for kinds of evidence.</summary>
public sealed class BibliographyTests
{
    [Theory]
    [InlineData("usda-sr")]
    [InlineData("USDA-SR")]
    public void ASourceIsFoundByItsKeyInAnyCase(string key) => Assert.Equal("usda-sr", Bibliography.Get(key).Key);

    [Fact]
    public void AMissNamesTheKey()
    {
        Assert.False(Bibliography.TryGet("no-such", out Source? source));
        Assert.Null(source);
        Assert.Contains("'no-such'", Assert.Throws<ArgumentException>("key", () => Bibliography.Get("no-such")).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("key", () => Bibliography.Get(null!));
    }

    [Fact]
    public void TheListIsInTheOrderOfItsKeys() =>
        Assert.Equal(Bibliography.All.Select(source => source.Key).Order(StringComparer.Ordinal), Bibliography.All.Select(source => source.Key));

    [Fact]
    public void EveryKindOfEvidenceHasAWordThatReadsBack()
    {
        string[] words = ["measured", "compiled", "computed", "fitted", "estimated", "common-practice", "from-memory"];
        Assert.Equal(words, Enum.GetValues<Evidence>().Select(evidence => evidence.ToWord()));
        foreach (Evidence evidence in Enum.GetValues<Evidence>())
        {
            Assert.True(EvidenceText.TryRead(evidence.ToWord().ToUpperInvariant(), out Evidence read));
            Assert.Equal(evidence, read);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("0")]
    [InlineData("CommonPractice")]
    [InlineData("measured,compiled")]
    public void OtherWordsAreNotEvidence(string word) => Assert.False(EvidenceText.TryRead(word, out _));

    [Fact]
    public void AProvenanceIsOneLine()
    {
        Source source = new("key", "Short", "", "", "", "");
        Assert.Equal("Short, p. 3 (measured)", new Provenance(source, Evidence.Measured, "p. 3", "").ToString());
        Assert.Equal("Short (from-memory)", new Provenance(source, Evidence.FromMemory, "", "").ToString());
    }
}
