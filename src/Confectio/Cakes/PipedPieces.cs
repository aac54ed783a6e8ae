using System.Globalization;

namespace Confectio.Cakes;

/// <summary>So many rosettes or swirls of a kind on a tier.</summary>
public sealed class PipedPieces
{
    /// <summary>The most pieces of a kind.</summary>
    public const int MaximumPieces = 100_000;

    private PipedPieces(string icing, Swirl piece, int count)
    {
        Icing = icing;
        Piece = piece;
        Count = count;
    }

    /// <summary>The name of the icing.</summary>
    public string Icing { get; }

    /// <summary>One of them.</summary>
    public Swirl Piece { get; }

    /// <summary>How many.</summary>
    public int Count { get; }

    /// <summary>What all of them take, mL.</summary>
    public double Millilitres => Count * Piece.Millilitres;

    /// <summary>So many pieces.</summary>
    /// <param name="icing">The name of the icing, from 1 to 100 characters.</param>
    /// <param name="piece">One of them.</param>
    /// <param name="count">How many, from 0 to 100 000.</param>
    /// <returns>The pieces.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="icing"/> is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is outside its range.</exception>
    public static PipedPieces Of(string icing, Swirl piece, int count) =>
        new(IcingName.Check(icing), Guard.NotNull(piece), Guard.InRange(count, 0, MaximumPieces));

    /// <summary>One line, such as <c>12 of buttercream, 15.2 mL each</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Count} of {Icing}, {Piece.Millilitres:0.#} mL each");
}
