using System.Globalization;
using Confectio.Cakes;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Pictures;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Icings;

/// <summary>A small order costs little, or is refused by the name of the budget it would take: what is measured is what is allocated, and no clock.</summary>
public sealed class OrderWorkTests
{
    private const long MaximumBytes = 50_000_000;

    private static readonly string s_coats = string.Join(",", Enumerable.Repeat("""{"icing":"a","thickness":"1 mm"}""", 100));

    [Fact]
    public void WhatACakeTakesIsWorkedOutOnce()
    {
        Cake cake = Cake.Of("", [CakeTier.Of(CakeBody.Prism(PlanShape.Heart(Cm(25)), Cm(8))).Coated(CakeCoat.Of("a", Cm(0.5)))]);
        Assert.Same(cake.Cover(), cake.Cover());
        IcingOrder order = Read(Order(Petal(5), bowls: """{"litres":4,"usablePercent":70},{"litres":20,"usablePercent":70}"""));
        Assert.All(order.Bowls.Select(order.Plan), plan => Assert.Same(order.Cake.Cover(), plan.Coverage));
    }

    // 189 kB that took more than 100 s, and three such tiers that took 7.2 GB; fewer tiers with as many coats go beyond the steps and not beyond the corners.
    [Theory]
    [InlineData(50, "$.tiers", "50000 corners together; at most 20000")]
    [InlineData(3, "$", "more than 150000000 steps")]
    public void PetalsUnderAHundredCoatsAreRefusedByTheBudget(int tiers, string path, string message)
    {
        string json = Order(string.Join(",", Enumerable.Repeat(Petal(1000, s_coats), tiers)));
        string refused = Refused(json, MaximumBytes);
        Assert.Contains(message, refused, StringComparison.Ordinal);
        Assert.Contains($"({path})", refused, StringComparison.Ordinal);
    }

    // The two of the hostile orders, 418 and 882 lobes: a tier with a filling, two coats, borders, a drip. It took 234 MB; every member of the plan is asked for.
    [Theory]
    [InlineData(418)]
    [InlineData(882)]
    public void ATierOfManyLobesCostsLittle(int lobes)
    {
        string json = Order($$"""
            {"shape":"petal","lobes":{{lobes}},"lobeWidth":"8 cm","height":"10 cm","layers":2,"filling":{"icing":"a","thickness":"4 mm"},
            "coats":[{"icing":"a","thickness":"5 mm"},{"icing":"a","thickness":"2 mm","place":"top"}],"borders":[{"icing":"a","kind":"shells","width":"1 cm"},
            {"icing":"a","kind":"half-round","width":"1 cm","place":"top-edge"}],"drip":{"icing":"a","pool":"2 mm","drips":12} }
            """);
        Costs(MaximumBytes, () =>
        {
            IcingOrder order = Read(json);
            IcingPlan plan = order.Plan();
            IcingCover reach = order.Icings[0].CoverFrom(1400);
            return (plan.Cautions, plan.Needs[0].LeftOverCover, CakePicture.Svg(order.Cake), reach.MaximumScale(order.Cake, "a"), reach.CoatFactor(order.Cake, "a"));
        });
    }

    // A star of many points; of 5000 the way back took more than 200 s. It is answered or refused by name, and either within the bytes.
    [Fact]
    public void TheWayBackOfAStarIsAnsweredOrRefusedByName()
    {
        Cake Cake(int spikes) => Confectio.Cakes.Cake.Of("", [CakeTier.Of(CakeBody.Prism(Star(spikes, 19.9, 20), Cm(10))).Coated(CakeCoat.Of("a", Cm(0.05)))]);
        IcingCover reach = IcingCover.Of(1400);
        Cake small = Cake(40), large = Cake(500);
        // All trials share one budget; here of two million, since the whole takes a test seconds.
        Costs(MaximumBytes, () => Assert.Throws<ArgumentException>("cake", () => reach.CoatFactor(large, "a", new OutlineWork("cake", 2_000_000))));
        string refused = Assert.Throws<ArgumentException>("cake", () => reach.MaximumScale(large, "a", new OutlineWork("cake", 2_000_000))).Message;
        Assert.Contains("more than 2000000 steps", refused, StringComparison.Ordinal);
        // Of fewer points it is answered, and what it answers takes what there is.
        Costs(MaximumBytes, () =>
        {
            Assert.Equal(1400, small.WithCoats("a", reach.CoatFactor(small, "a")!.Value).Cover().TotalMillilitres, 1e-6);
            Assert.Equal(1400, small.Scaled(reach.MaximumScale(small, "a")!.Value).Cover().TotalMillilitres, 1e-6);
            CakeBody body = small.Tiers[0].Body;
            Assert.Equal(1400, body.CoatMillilitres(reach.CoatThicknessCentimetres(body)), 1e-6);
            return null;
        });
    }

    // A few bytes for ten thousand corners each: refused before any of them is made.
    [Fact]
    public void CornersAreCountedBeforeTheyAreMade()
    {
        string tier = """{"shape":"regular-polygon","sides":10000,"acrossFlats":"20 cm","height":"10 cm","raised":true}""";
        Assert.Contains("30000 corners together; at most 20000", Refused(Order(string.Join(",", Enumerable.Repeat(tier, 3))), 10_000_000), StringComparison.Ordinal);
        Costs(MaximumBytes, () => Read(Order($"{tier},{tier}")));
        Assert.Contains("30000 corners", Assert.Throws<ArgumentException>("tiers", () =>
            Cake.Of("", Enumerable.Repeat(CakeTier.Of(CakeBody.Prism(PlanShape.RegularPolygonAcrossFlats(10_000, Cm(20)), Cm(5))).Raised(), 3))).Message, StringComparison.Ordinal);
    }

    // Two outlines of 10 000 corners, one on the other and touching all round: 200 million comparisons, once. A third is refused.
    [Fact]
    public void WhatLiesInWhatIsPartOfTheBudget()
    {
        CakeTier Tier(int corners, double size) => CakeTier.Of(CakeBody.Prism(Star(corners / 2, 0.999 * size, size), Cm(5)));
        Assert.Equal(2, Cake.Of("", [Tier(2000, 20), Tier(2000, 19.99)]).Tiers.Count);
        string message = Assert.Throws<ArgumentException>("tiers", () => Cake.Of("", [Tier(10_000, 20), Tier(9_000, 20 * (1 - 1e-12))])).Message;
        Assert.Matches("steps of comparing edges|does not lie wholly inside", message);
    }

    // 600 kB of nothing, in each list that an order has: one mistake for each list, and not one for each element.
    [Theory]
    [InlineData("coats")]
    [InlineData("fillings")]
    [InlineData("borders")]
    [InlineData("pieces")]
    public void AListThatIsTooLongIsOneMistake(string member)
    {
        string json = Order($$"""{"shape":"round","diameter":"20 cm","height":"10 cm","{{member}}":[{{string.Join(",", Enumerable.Repeat("null", 120_000))}}]}""");
        string refused = Refused(json, MaximumBytes);
        Assert.Contains("there are 120000; at most 100 are expected", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("[19]", refused, StringComparison.Ordinal);
    }

    [Fact]
    public void TooManyPointsBowlsAndNamesAreOneMistakeEach()
    {
        string points = string.Join(",", Enumerable.Repeat("[1]", 19_000));
        Assert.Contains("there are 19000; at most 10000", Refused(Order($$"""{"shape":"polygon","outline":{"unit":"cm","points":[{{points}}]},"height":"1 cm"}"""), MaximumBytes), StringComparison.Ordinal);
        Assert.Contains("there are 21; at most 20", Refused(Order(Petal(5), bowls: string.Join(",", Enumerable.Repeat("""{"litres":4,"usablePercent":70}""", 21))), MaximumBytes), StringComparison.Ordinal);
        // Coats of a thousand icings that are not there: ten are named.
        string tiers = string.Join(",", Enumerable.Range(0, 10).Select(i => $$"""
            {"shape":"half-ball","diameter":"10 cm","raised":true,"coats":[{{string.Join(",", Enumerable.Range(0, 100).Select(j => string.Create(CultureInfo.InvariantCulture, $$"""{"icing":"{{new string('x', 90)}}{{100 * i + j}}","thickness":"1 mm"}""")))}}]}
            """));
        string refused = Refused(Order(tiers), MaximumBytes);
        Assert.Contains(" and 990 more", refused, StringComparison.Ordinal);
        Assert.True(refused.Length < 3000);
    }

    private static void Costs(long bytes, Func<object?> act) => Assert.InRange(Allocated.Least(() => act(), bytes), 0, bytes);

    private static string Refused(string json, long bytes)
    {
        string message = "";
        Costs(bytes, () => message = Assert.Throws<FormatException>(() => Read(json)).Message);
        return message;
    }

    private static IcingOrder Read(string json) => IcingOrder.ParseJson(json, IngredientTable.BuiltIn);

    private static string Petal(int lobes, string coats = """{"icing":"a","thickness":"1 mm"}""") =>
        string.Create(CultureInfo.InvariantCulture, $$"""{"shape":"petal","lobes":{{lobes}},"lobeWidth":"1 mm","height":"8 cm","raised":true,"coats":[{{coats}}]}""");

    private static string Order(string tiers, string bowls = "") =>
        $$"""{"confectioOrder":1,"tiers":[{{tiers}}],"icings":[{"name":"a","gramsPerMillilitre":0.9}],"bowls":[{{bowls}}]}""";

    private static PlanShape Star(int spikes, double inner, double outer) => PlanShape.Polygon(Enumerable.Range(0, 2 * spikes).Select(i =>
        new PlanPoint((i % 2 == 0 ? inner : outer) * Math.Cos(Math.PI * i / spikes), (i % 2 == 0 ? inner : outer) * Math.Sin(Math.PI * i / spikes))));
}
