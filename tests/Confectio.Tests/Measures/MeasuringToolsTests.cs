using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Measures;

/// <summary>Which tools make a set.</summary>
public sealed class MeasuringToolsTests
{
    [Fact]
    public void TheUsualSetIsWhatMostKitchensHave()
    {
        Assert.Equal(["100 mL", "50 mL", "1 Tbsp", "1 tsp", "1/2 tsp", "1/4 tsp", "1/8 tsp"], MeasuringTools.Usual(MeasuringSystem.Decilitre).Tools.Select(tool => tool.ToString()));
        foreach (MeasuringSystem system in MeasuringSystem.All.Where(system => system.Defines(KitchenUnit.Cup)))
        {
            MeasuringTools usual = MeasuringTools.Usual(system);
            Assert.Same(system, usual.MeasuringSystem);
            Assert.Equal(["1 cup", "1/2 cup", "1/3 cup", "1/4 cup", "1 Tbsp", "1 tsp", "1/2 tsp", "1/4 tsp", "1/8 tsp"], usual.Tools.Select(tool => tool.ToString()));
        }
    }

    [Fact]
    public void TheFullSetStandsFromTheLargestToTheSmallest()
    {
        string[] expected =
        [
            "1 cup", "3/4 cup", "2/3 cup", "1/2 cup", "1/3 cup", "1/4 cup", "1/8 cup", "1 Tbsp", "1/2 Tbsp",
            "1 tsp", "3/4 tsp", "1/2 tsp", "1/4 tsp", "1/8 tsp",
        ];
        Assert.Equal(["500 mL", "100 mL", "50 mL", "1 Tbsp", "1/2 Tbsp", "1 tsp", "3/4 tsp", "1/2 tsp", "1/4 tsp", "1/8 tsp"],
            MeasuringTools.Full(MeasuringSystem.Decilitre).Tools.Select(tool => tool.ToString()));
        foreach (MeasuringSystem system in MeasuringSystem.All.Where(system => system.Defines(KitchenUnit.Cup)))
            Assert.Equal(expected, MeasuringTools.Full(system).Tools.Select(tool => tool.ToString()));
    }

    [Fact]
    public void ASetOfOnesOwnIsSorted()
    {
        MeasuringTools own = MeasuringTools.Of(MeasuringSystem.UsCustomary, Amount.Parse("1 tsp"), Amount.Parse("1 quart"), Amount.Parse("50 mL"));
        Assert.Equal(["1 quart", "50 mL", "1 tsp"], own.Tools.Select(tool => tool.ToString()));
    }

    [Theory]
    [InlineData("1 oz", "not a single volume")]
    [InlineData("1 stick", "not a single volume")]
    [InlineData("1 cup + 1 Tbsp", "not a single volume")]
    [InlineData("1-2 cups", "not a single volume")]
    [InlineData("0 cups", "0.01")]
    [InlineData("0.009 mL", "0.01")]
    [InlineData("1001 L", "1000000")]
    [InlineData("1 pint", "has no pint")]
    [InlineData("1/999999999999 kg", "not a single volume")]
    public void RefusesWhatIsNoTool(string text, string words)
    {
        ArgumentException thrown = Assert.Throws<ArgumentException>(() => MeasuringTools.Of(MeasuringSystem.Metric, Amount.Parse(text)));
        Assert.Contains(words, thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void RefusesTwoToolsThatHoldTheSame()
    {
        ArgumentException thrown = Assert.Throws<ArgumentException>("tools",
            () => MeasuringTools.Of(MeasuringSystem.UsCustomary, Amount.Parse("1 cup"), Amount.Parse("1 tsp"), Amount.Parse("8 fl oz")));
        Assert.Contains("1 cup", thrown.Message, StringComparison.Ordinal);
        Assert.Contains("8 fl oz", thrown.Message, StringComparison.Ordinal);
        // Two spoons of one size in one system are two sizes in another.
        Assert.Equal(2, MeasuringTools.Of(MeasuringSystem.UsLabelling, Amount.Parse("1 Tbsp"), Amount.Parse("16 mL")).Tools.Count);
    }

    [Fact]
    public void RefusesSizesThatHaveNothingInCommon()
    {
        ArgumentException thrown = Assert.Throws<ArgumentException>("tools", () => MeasuringTools.Of(MeasuringSystem.UsCustomary,
            Amount.Parse("1000000007/999999937 cup"), Amount.Parse("998244353/999999893 cup"), Amount.Parse("999999797/999999883 tsp")));
        Assert.Contains("common part", thrown.Message, StringComparison.Ordinal);
        // One odd size by itself is fine, and so is a set of cups and millilitres.
        Assert.Single(MeasuringTools.Of(MeasuringSystem.UsCustomary, Amount.Parse("1000000007/999999937 cup")).Tools);
        Assert.Equal(3, MeasuringTools.Of(MeasuringSystem.UsCustomary, Amount.Parse("1/3 cup"), Amount.Parse("1/8 tsp"), Amount.Parse("2.5 mL")).Tools.Count);
    }

    [Fact]
    public void TakesOneToSixtyFourTools()
    {
        Amount[] many = [.. Enumerable.Range(1, 65).Select(i => Amount.Of(i, KitchenUnit.Millilitre))];
        Assert.Equal(64, MeasuringTools.Of(MeasuringSystem.Metric, many[..64]).Tools.Count);
        Assert.Contains("65", Assert.Throws<ArgumentException>("tools", () => MeasuringTools.Of(MeasuringSystem.Metric, many)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("tools", () => MeasuringTools.Of(MeasuringSystem.Metric));
        Assert.Throws<ArgumentNullException>("tools", () => MeasuringTools.Of(MeasuringSystem.Metric, null!));
        Assert.Throws<ArgumentNullException>("system", () => MeasuringTools.Of(null!, many[0]));
        Assert.Throws<ArgumentNullException>("system", () => MeasuringTools.Usual(null!));
        Assert.Throws<ArgumentNullException>("system", () => MeasuringTools.Full(null!));
    }
}
