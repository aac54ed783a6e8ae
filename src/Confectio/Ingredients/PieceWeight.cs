using Confectio.Sources;

namespace Confectio.Ingredients;

/// <summary>What one piece of an ingredient weighs, such as a stick of butter or the white of a large egg.</summary>
public sealed class PieceWeight
{
    internal PieceWeight(string piece, WeightFact fact)
    {
        Piece = piece;
        Fact = fact;
        double perPiece = fact.Amount.Part(0).Low.ToDouble();
        double half = Math.Max(fact.RoundingHalfUnit, 2 * (fact.StandardDeviationGrams ?? 0));
        double likely = fact.Grams.Likely;
        Grams = new Spread(Math.Max(0, Math.Min(fact.Grams.Low, likely - half)) / perPiece, likely / perPiece,
            Math.Max(fact.Grams.High, likely + half) / perPiece, fact.Provenance.Evidence.BasisOfRange());
    }

    /// <summary>The word for the piece, such as <c>stick</c>.</summary>
    public string Piece { get; }

    /// <summary>
    /// Grams in one piece: the source's range, or two standard deviations, or half its last printed digit, whichever it gives.
    /// </summary>
    public Spread Grams { get; }

    /// <summary>The figure and its source.</summary>
    public WeightFact Fact { get; }

    /// <summary>The piece and its weight, such as <c>stick: 113 (112.5 to 113.5) g</c>.</summary>
    public override string ToString() => $"{Piece}: {Grams} g";
}
