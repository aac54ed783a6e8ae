using Xunit;

namespace Confectio.Tests.Examples;

/// <summary>What a hurried hand types to the examples on keeping, consistency and troubles: one line that names what is wrong and what is allowed, and status 2.</summary>
public sealed class KeepingBadInputTests
{
    private const string Why = "needs the built examples in CONFECTIO_EXAMPLES";
    private static readonly string s_meringue = ExampleProgram.Data("fennmarsh-swiss-meringue.json");

    [Theory(Skip = Why, SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    [InlineData("keeping", "--ph 15", "pH from 0 to 14")]
    [InlineData("keeping", "--ph -1", "--ph")]
    [InlineData("keeping", "--ph 6.0..5.2", "lower pH comes first")]
    [InlineData("keeping", "--ph 5,2", "pH from 0 to 14")]
    [InlineData("keeping", "--humidity 120%", "up to 100 %")]
    [InlineData("keeping", "--humidity 0%", "above 0")]
    [InlineData("keeping", "--humidity 60", "such as 70%")]
    [InlineData("keeping", "--room 88C", "from 0 to 50")]
    [InlineData("keeping", "--room 88", "--room 88")]
    [InlineData("keeping", "--room 3C --humidity 60%", "from above 4 to 50")]
    [InlineData("keeping", "--kind icecream", "kinds are")]
    [InlineData("warm-room", "--room 88C", "another scale")]
    [InlineData("warm-room", "--room 88", "--room 88")]
    [InlineData("warm-room", "--room 4C", "from 20 to 40")]
    [InlineData("warm-room", "--room 31C --cake 20", "such as 20x10")]
    [InlineData("warm-room", "--room 31C --start 68C", "from -30 to 50")]
    [InlineData("warm-room", "--room 31C --firm marble", "no such ingredient")]
    [InlineData("warm-room", "--start 18C", "--room")]
    [InlineData("consistency", "--sort royal-icing --to thick", "one of: stiff")]
    [InlineData("consistency", "--sort marmalade", "sorts are")]
    [InlineData("consistency", "--seconds 15", "needs --trials")]
    [InlineData("consistency", "--seconds 15 --trials 20:10,23:20", "trials such as")]
    [InlineData("consistency", "--sort royal-icing --to flood --with marble", "no such ingredient")]
    [InlineData("trouble", "--what flat --humidity 120% --room 24C", "up to 100 %")]
    [InlineData("trouble", "--what flat --humidity 70%", "needs --room")]
    [InlineData("trouble", "--what flat --room 88C", "from -40 to 50")]
    [InlineData("trouble", "--what flat --at mix=244C", "from -40 to 150")]
    [InlineData("trouble", "--what flat --at mix=20", "--at mix=20")]
    [InlineData("trouble", "--what flat --at mix", "butter=8C")]
    [InlineData("trouble", "--what flat --at butter=8C", "there is no butter")]
    [InlineData("trouble", "--what flat --cooked-to 244C", "from 0 to 220")]
    [InlineData("trouble", "--what flat --cup 9kg", "from 0.05 to 2")]
    [InlineData("trouble", "--what flat --minutes 9999", "from 0 to 1440")]
    [InlineData("trouble", "--what delicious", "names no trouble")]
    [InlineData("trouble", "--room 24C", "--what")]
    public void OneLineNamesIt(string program, string options, string says)
    {
        (int status, string output, string error) = ExampleProgram.Run(program, [s_meringue, .. options.Split(' ')]);
        Assert.Equal(2, status);
        Assert.Equal("", output);
        Assert.Contains(says, error, StringComparison.Ordinal);
        Assert.Single(error.TrimEnd('\n').Split('\n'));
    }

    // What is odd and right is answered: the ends of a pH, the dampest air, degrees of the other scale with their letter.
    [Theory(Skip = Why, SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    [InlineData("keeping", "--ph 0")]
    [InlineData("keeping", "--ph 14")]
    [InlineData("keeping", "--room 88F --humidity 100%")]
    [InlineData("trouble", "--what flat --room 88F --humidity 100% --at mix=40F")]
    public void WhatIsOddAndRightIsAnswered(string program, string options) =>
        Assert.InRange(ExampleProgram.Run(program, [s_meringue, .. options.Split(' ')]).Status, 0, 1);

    // A formula without water, without fat, without either: an answer, or a line that says which is lacking.
    [Theory(Skip = Why, SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    [InlineData("100 g white shortening", "no sugars")]
    [InlineData("100 g granulated sugar", "")]
    [InlineData("100 g water", "no sugars")]
    public void AFormulaThatLacksWaterOrFat(string formula, string lacks)
    {
        string file = ExampleProgram.Written(formula);
        Assert.InRange(ExampleProgram.Run("keeping", [file]).Status, 0, 1);
        Assert.InRange(ExampleProgram.Run("trouble", [file, "--what", "runny", "--at", "mix=20C"]).Status, 0, 1);
        (int status, _, string error) = ExampleProgram.Run("consistency", [file]);
        if (lacks.Length > 0)
        {
            Assert.Equal(2, status);
            Assert.Contains("no ", error, StringComparison.Ordinal);
        }
    }
}
