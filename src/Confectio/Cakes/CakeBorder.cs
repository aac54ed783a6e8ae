using System.Globalization;

namespace Confectio.Cakes;

/// <summary>A piped border once round a tier.</summary>
public sealed class CakeBorder
{
    private CakeBorder(string icing, BorderKind kind, double width, BorderPlace place, double shellsPerWidth)
    {
        Icing = icing;
        Kind = kind;
        WidthCentimetres = width;
        Place = place;
        ShellsPerWidth = shellsPerWidth;
    }

    /// <summary>The name of the icing.</summary>
    public string Icing { get; }

    /// <summary>The cross-section.</summary>
    public BorderKind Kind { get; }

    /// <summary>The width, cm.</summary>
    public double WidthCentimetres { get; }

    /// <summary>Where it runs.</summary>
    public BorderPlace Place { get; }

    /// <summary>How many shells stand in the width of one.</summary>
    public double ShellsPerWidth { get; }

    /// <summary>A border.</summary>
    /// <param name="icing">The name of the icing, from 1 to 100 characters.</param>
    /// <param name="kind">The cross-section.</param>
    /// <param name="width">The width, cm, from 0.01 to 100.</param>
    /// <param name="place">Where it runs.</param>
    /// <param name="shellsPerWidth">
    /// Of shells, how many stand in the width of one, from 0.1 to 10; more than 1 where each lies on the tail of the last.
    /// </param>
    /// <returns>The border.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="icing"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="icing"/> is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeBorder Of(string icing, BorderKind kind, CakeLength width, BorderPlace place, double shellsPerWidth = 1) => new(
        IcingName.Check(icing), Guard.Defined(kind), width.Within(0.01, 100), Guard.Defined(place), Guard.InRange(shellsPerWidth, 0.1, 10));

    /// <summary>One line, such as <c>shells of buttercream round the foot, 12 mm wide</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{KindName} of {Icing} "
        + $"{(Place == BorderPlace.Foot ? "round the foot" : "on the top edge")}, {10 * WidthCentimetres:0.##} mm wide");

    internal string KindName => Kind switch { BorderKind.HalfRound => "half round", BorderKind.FullRound => "full round", _ => "shells" };

    /// <summary>How far outside the coated outline the middle of its cross-section runs; below 0 inside.</summary>
    internal double MiddleCentimetres => Place == BorderPlace.TopEdge ? -WidthCentimetres / 2 : Kind switch
    {
        // The centroid of a half round lies 4b/(3π) from the wall; that of a shell does not matter, for shells are counted along the wall
        // they sit on.
        BorderKind.HalfRound => 2 * WidthCentimetres / (3 * Math.PI),
        BorderKind.FullRound => WidthCentimetres / 2,
        _ => 0,
    };

    /// <summary>What it takes along a path that a cake has, however long.</summary>
    internal double Millilitres(double path) =>
        path * PipedLine.Section(Kind, WidthCentimetres) * (Kind == BorderKind.Shells ? ShellsPerWidth : 1);
}
