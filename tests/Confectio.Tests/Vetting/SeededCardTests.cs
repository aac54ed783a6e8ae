using Confectio.Tests.Cards;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>
/// How often planted mistakes of every kind are found on made cards, and how often a clean line is called wrong. The second seed was never
/// looked at while the checks were made.
/// </summary>
public sealed class SeededCardTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(20_261_129)]
    public void PlantedMistakesAreFoundWithTheirReasons(int seed)
    {
        SeededCardScore score = SeededCardScore.Of(seed, mistakes: 0.5, cards: 300);
        string told = score.Told() + string.Join('\n', score.Notes.Take(3));
        Assert.True(score.Planted - score.Invisible > 500, told);
        Assert.True(score.Unread == 0, told);
        Assert.True(score.Precision >= 0.97, told);
        Assert.True(score.Recall >= 0.92, told);
        Assert.True(score.Reasons >= 0.90, told);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(911_263)]
    public void CleanCardsRaiseNoAlarm(int seed)
    {
        SeededCardScore score = SeededCardScore.Of(seed, mistakes: 0, cards: 400);
        Assert.Equal(0, score.Planted);
        Assert.True(score.Lines > 2_000);
        Assert.True(score.AlarmsPer100Lines <= 0.5, score.Told() + string.Join('\n', score.Notes.Take(3)));
    }
}
