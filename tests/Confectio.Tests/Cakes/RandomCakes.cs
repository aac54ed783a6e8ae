using Confectio.Cakes;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Cakes;

/// <summary>Cakes made up from a seed: one to four tiers of any kind, each inside the one below, with coats of cream and jam.</summary>
internal static class RandomCakes
{
    public static Cake Of(int seed, bool coatsOnly = false)
    {
        Random random = new(seed);
        List<CakeTier> tiers = [];
        double across = 20 + 20 * random.NextDouble();
        for (int i = random.Next(coatsOnly ? 1 : 0, 4); i >= 0; i--)
        {
            // Inside any of these of a width lies any of them of half that width; a ball ends the stack.
            CakeBody body = Body(random, across);
            CakeTier tier = CakeTier.Of(body).Coated(Coats(random, body));
            if (!coatsOnly)
                tier = Rest(random, tier);
            tiers.Add(tier);
            if (body.Top is null)
                break;
            across = 0.4 * Math.Min(body.Top.WidthCentimetres, body.Top.LengthCentimetres);
        }
        Cupcakes[] cupcakes = coatsOnly || random.Next(2) == 0 ? [] : [Cupcakes.Flat("cream", random.Next(40), Cm(6), Cm(0.4))];
        return Cake.Of("made up", tiers, cupcakes, random.Next(2) == 0 ? HiddenTop.Coated : HiddenTop.Bare);
    }

    private static CakeBody Body(Random random, double across)
    {
        double height = 4 + 8 * random.NextDouble();
        return random.Next(9) switch
        {
            0 => CakeBody.Prism(PlanShape.Round(Cm(across)), Cm(height)),
            1 => CakeBody.Prism(PlanShape.Square(Cm(across)), Cm(height)),
            2 => CakeBody.Prism(PlanShape.Rectangle(Cm(across), Cm(0.8 * across), Cm(0.1 * across)), Cm(height)),
            3 => CakeBody.Prism(PlanShape.Oval(Cm(across), Cm(0.8 * across)), Cm(height)),
            4 => CakeBody.Prism(PlanShape.RegularPolygonAcrossFlats(random.Next(5, 9), Cm(across)), Cm(height)),
            5 => CakeBody.TaperedRound(Cm(across), Cm(0.9 * across), Cm(height)),
            6 => CakeBody.TaperedSquare(Cm(across), Cm(0.9 * across), Cm(height)),
            7 => CakeBody.HalfBall(Cm(across)),
            _ => CakeBody.Prism(PlanShape.Petal(6, Cm(across / 2.7320508)), Cm(height)),
        };
    }

    private static IEnumerable<CakeCoat> Coats(Random random, CakeBody body)
    {
        for (int i = random.Next(1, 4); i > 0; i--)
        {
            CoatPlace place = !body.HasTopApart ? CoatPlace.TopAndSide : (CoatPlace)random.Next(3);
            yield return CakeCoat.Of(random.Next(2) == 0 ? "cream" : "jam", Cm(0.1 + 0.6 * random.NextDouble()), (CoatEdge)random.Next(2), place);
        }
    }

    private static CakeTier Rest(Random random, CakeTier tier)
    {
        // Of a small half ball there is not much to fill.
        int layers = tier.Body.HeightCentimetres > 3 ? random.Next(1, 4) : 1;
        tier = tier.Filled(CakeFilling.Of("jam", Cm(0.3 + 0.4 * random.NextDouble())).InDam("cream", Cm(0.5 + random.NextDouble())), layers);
        if (tier.Body.Footprint is not null)
            tier = tier.Bordered(CakeBorder.Of("cream", (BorderKind)random.Next(3), Cm(0.5 + random.NextDouble()), BorderPlace.Foot, 1.2));
        if (tier.Body.Top is null)
            return tier;
        return tier.Bordered(CakeBorder.Of("jam", (BorderKind)random.Next(3), Cm(0.5 + random.NextDouble()), BorderPlace.TopEdge))
            .Piped(PipedPieces.Of("cream", Swirl.Rosette(Cm(3), 1.5, Cm(0.8)), random.Next(9))).Dripped(CakeDrip.Of("glaze", Cm(0.2), random.Next(20)));
    }
}
