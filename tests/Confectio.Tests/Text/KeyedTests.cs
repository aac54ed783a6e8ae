using System.Globalization;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Text;

/// <summary>Looking a thing up by its key or name.</summary>
public sealed class KeyedTests
{
    private static readonly (string Key, string Name)[] s_pairs = [("soft-ball", "small ball"), ("small-ball", "other")];
    private static readonly Thing[] s_all = [.. s_pairs.Select(pair => new Thing(pair.Key, pair.Name))];

    [Theory]
    [InlineData("soft-ball", "soft-ball")]
    [InlineData("  SOFT ball ", "soft-ball")]
    [InlineData("other", "small-ball")]
    [InlineData("small ball", "small-ball")] // a key stands before a name
    public void CaseBlanksAndHyphensDoNotMatter(string asked, string key)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            // In Turkish an I is not the capital of an i.
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("tr-TR");
            Assert.Equal(key, Keyed.Get(s_all, asked, "stage", "stages", thing => thing.Key, thing => thing.Name).Key);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void WhatIsNotThereIsNamedWithWhatIs()
    {
        string wanted = "warm";
        ArgumentException refused = Assert.Throws<ArgumentException>("wanted", () => Keyed.Get(s_all, wanted, "stage", "stages", thing => thing.Key));
        Assert.StartsWith("There is no stage 'warm'; the stages are: soft-ball, small-ball.", refused.Message, StringComparison.Ordinal);
        Assert.Null(Keyed.Find(s_all, "", thing => thing.Key));
        wanted = null!;
        Assert.Throws<ArgumentNullException>("wanted", () => Keyed.Find(s_all, wanted, thing => thing.Key));
    }

    private sealed record Thing(string Key, string Name);
}
