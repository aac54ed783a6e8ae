using Confectio.Cakes;
using Confectio.Cakes.Bodies;

namespace Confectio.Pictures;

/// <summary>A tier where it stands: in which stack, how far from the middle of the lowest tier of that stack, and on what height.</summary>
internal sealed class PlacedTier
{
    private PlacedTier(CakeTier tier, int number, int stack, double right, double back, double height)
    {
        (Tier, Number, Stack, Right, Back, Height) = (tier, number, stack, right, back, height);
        List<CoatedBody> coats = [tier.Body.Uncoated()];
        foreach (CakeCoat coat in tier.Coats)
            coats.Add(coats[^1].With(coat));
        Coats = coats;
        Reach = OutlinePath.Reach(tier.Body.WidestCut, tier.TurnedDegrees);
    }

    public CakeTier Tier { get; }

    public int Number { get; }

    public int Stack { get; }

    public double Right { get; }

    public double Back { get; }

    public double Height { get; }

    /// <summary>The bare body, and it with one coat after the other.</summary>
    public IReadOnlyList<CoatedBody> Coats { get; }

    public CoatedBody Coated => Coats[^1];

    /// <summary>How far the bare tier reaches from its own middle.</summary>
    public (double Left, double Right, double Front, double Back) Reach { get; }

    /// <summary>How far the coats reach beyond the body at its foot.</summary>
    public double Outward => Coated.OutwardCentimetres;

    /// <summary>How far coats and borders reach beyond the body.</summary>
    public double Beside => Outward + (Border(BorderPlace.Foot)?.WidthCentimetres ?? 0);

    /// <summary>How high the coated tier is with what is piped and poured on it.</summary>
    public double Top => Height + Coated.HeightCentimetres + Tier.Pieces.Where(pieces => pieces.Count > 0)
        .Select(pieces => pieces.Piece.HeightCentimetres)
        .Append(Border(BorderPlace.TopEdge)?.WidthCentimetres ?? 0).Append(Tier.Drip?.PoolCentimetres ?? 0).Max();

    /// <summary>The widest border at a place; <see langword="null"/> where there is none.</summary>
    public CakeBorder? Border(BorderPlace place) => Tier.Borders
        .Where(border => border.Place == place).MaxBy(border => border.WidthCentimetres);

    /// <summary>All tiers where they stand; a raised one begins a stack of its own.</summary>
    public static IReadOnlyList<PlacedTier> Of(Cake cake)
    {
        List<PlacedTier> placed = [];
        for (int i = 0; i < cake.Tiers.Count; i++)
        {
            CakeTier tier = cake.Tiers[i];
            if (placed.Count == 0 || tier.IsRaised)
            {
                placed.Add(new PlacedTier(tier, i + 1, placed.Count == 0 ? 0 : placed[^1].Stack + 1, 0, 0, 0));
                continue;
            }
            PlacedTier below = placed[^1];
            double on = below.Height
                + (cake.HiddenTops == HiddenTop.Bare ? below.Tier.Body.HeightCentimetres : below.Coated.HeightCentimetres);
            placed.Add(new PlacedTier(tier, i + 1, below.Stack, below.Right + tier.RightCentimetres, below.Back
                + tier.BackCentimetres, on));
        }
        return placed;
    }
}
