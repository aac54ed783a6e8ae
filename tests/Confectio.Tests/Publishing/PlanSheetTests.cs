using Confectio.Cakes;
using Confectio.Icings;
using Confectio.Measures;
using Confectio.Publishing;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;
using static Confectio.Tests.Publishing.Cards;

namespace Confectio.Tests.Publishing;

/// <summary>The sheet of a cake says what the plan does.</summary>
public sealed class PlanSheetTests
{
    private static readonly Cake s_cake = Cake.Of("Fennmarsh Hall wedding",
    [
        CakeTier.Of(CakeBody.Prism(PlanShape.Round(CakeLength.FromInches(9)), CakeLength.FromInches(4))).Coated(CakeCoat.Of("meringue buttercream", Cm(0.5))).Filled(CakeFilling.Of("raspberry jam", Cm(0.4)), 2),
    ], [Cupcakes.Flat("meringue buttercream", 12, Cm(6), Cm(1))]);

    private static readonly Icing[] s_icings = [Icing.Of("meringue buttercream", 0.85, Buttercream), Icing.Of("raspberry jam", 1.35)];

    private static readonly CardOptions s_options = new() { MeasuringSystems = [MeasuringSystem.UsCustomary, MeasuringSystem.Metric] };

    private static IcingPlan Plan(MixerBowl? bowl) => IcingPlan.Of(s_cake, s_icings, 0.08, bowl);

    [Fact]
    public void EveryFormHasTheFiguresOfThePlan()
    {
        IcingPlan plan = Plan(MixerBowl.OfQuarts(5, 0.7));
        PlanSheet sheet = PlanSheet.Of([plan], s_options);
        IcingNeed need = plan.Need("meringue buttercream");
        foreach (string form in (string[])[sheet.ToText(), sheet.ToMarkdown(), sheet.ToHtml()])
        {
            Assert.Contains("Fennmarsh Hall wedding", form, StringComparison.Ordinal);
            Assert.Contains(FormattableString.Invariant($"{need.TakenGrams:0} g"), form, StringComparison.Ordinal);
            Assert.Contains(FormattableString.Invariant($"{need.MadeGrams:0} g made"), form, StringComparison.Ordinal);
            Assert.Contains("In a 5-quart bowl", form, StringComparison.Ordinal);
            Assert.Contains("22.9 cm", form, StringComparison.Ordinal); // 9 in × 2.54
            Assert.Contains("9 in", form, StringComparison.Ordinal);
            Assert.Contains("milk, egg", form, StringComparison.Ordinal);
            Assert.Contains("What is in raspberry jam: there is no formula, and the allergens are not known. Read the label.", Flat(form), StringComparison.Ordinal);
            Assert.All(Buttercream.Cautions, caution => Assert.Contains(caution.Text, Flat(form), StringComparison.Ordinal));
            // The lines of the batch weigh what the batch does.
            foreach (IcingBatch batch in need.Batches)
                Assert.Contains(FormattableString.Invariant($"{batch.Grams:0} g"), form, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void WithoutABowlItIsMadeAtOnce() => Assert.Contains("Made at once", PlanSheet.Of([Plan(null)]).ToText(), StringComparison.Ordinal);

    [Fact]
    public void PlansOfTwoCakesAreNoSheet()
    {
        Cake other = Cake.Of("other", [CakeTier.Of(CakeBody.HalfBall(Cm(20))).Coated(CakeCoat.Of("raspberry jam", Cm(0.5)))]);
        Assert.Throws<ArgumentException>("plans", () => PlanSheet.Of([Plan(null), IcingPlan.Of(other, s_icings, 0)]));
        Assert.Throws<ArgumentException>("plans", () => PlanSheet.Of([]));
        Assert.Throws<ArgumentException>("options", () => PlanSheet.Of([Plan(null)], new CardOptions { Portions = 4 }));
    }

    private static string Flat(string text) => string.Join(' ', text.Replace("> ", "", StringComparison.Ordinal).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
