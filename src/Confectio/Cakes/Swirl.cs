using System.Globalization;

namespace Confectio.Cakes;

/// <summary>A swirl such as on a cupcake: a bead on a spiral up a cone; or a rosette, where the spiral is flat.</summary>
/// <remarks>
/// The middle of the bead goes as r = R(1 − u) and z = H·u with N turns, u from 0 to 1. With c² = R² + H² and a = 2π·N·R its length is
/// L = (√(c² + a²) + (c²/a)·asinh(a/c))/2. Turns that lie on one another share their room, so the bead cannot take more than what encloses it.
/// </remarks>
public sealed class Swirl
{
    private Swirl(double footRadius, double height, double turns, double beadWidth)
    {
        (FootDiameterCentimetres, Turns, BeadWidthCentimetres) = (2 * footRadius, turns, beadWidth);
        double square = footRadius * footRadius + height * height, around = 2 * Math.PI * turns * footRadius;
        PathCentimetres = 0.5 * (Math.Sqrt(square + around * around) + square / around * Math.Asinh(around / Math.Sqrt(square)));
        BeadMillilitres = PathCentimetres * Math.PI * beadWidth * beadWidth / 4;
        EnclosingMillilitres = Math.PI * footRadius * footRadius * (height > 0 ? height / 3 : beadWidth);
        HeightCentimetres = height > 0 ? height : beadWidth;
    }

    /// <summary>The diameter of the outermost turn, from middle to middle of the bead, cm.</summary>
    public double FootDiameterCentimetres { get; }

    /// <summary>The turns.</summary>
    public double Turns { get; }

    /// <summary>The width of the bead, cm.</summary>
    public double BeadWidthCentimetres { get; }

    /// <summary>The height, cm; of a rosette the width of its bead.</summary>
    public double HeightCentimetres { get; }

    /// <summary>The length of the path L, cm.</summary>
    public double PathCentimetres { get; }

    /// <summary>The bead as if its turns did not touch, mL: L·π·d²/4.</summary>
    public double BeadMillilitres { get; }

    /// <summary>The cone that encloses a swirl, π·R²·H/3, or the disc that encloses a rosette, π·R²·d; mL.</summary>
    public double EnclosingMillilitres { get; }

    /// <summary>Whether the turns are so many, or so thick, that what encloses them counts and not the bead.</summary>
    public bool IsFull => BeadMillilitres >= EnclosingMillilitres;

    /// <summary>What it takes, mL: the bead, at most what encloses it.</summary>
    public double Millilitres => Math.Min(BeadMillilitres, EnclosingMillilitres);

    /// <summary>A swirl up a cone.</summary>
    /// <param name="footDiameterCentimetres">The diameter 2R at the foot, cm, from 0.01 to 1000.</param>
    /// <param name="heightCentimetres">The height H, cm, from the width of the bead to 1000.</param>
    /// <param name="turns">The turns N, from 0.1 to 1000.</param>
    /// <param name="beadWidthCentimetres">The width d of the bead, cm, from 0.01 to that of the foot.</param>
    /// <returns>
    /// The swirl. Worked number: 6 cm at the foot, 3.5 cm high, 3 turns of 1.2 cm: a path of 28.970 cm and 32.764 mL, just below the cone of 32.987 mL.
    /// A swirl hardly higher than its bead is no cone: for it <see cref="Rosette"/> is nearer.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Swirl UpCone(double footDiameterCentimetres, double heightCentimetres, double turns, double beadWidthCentimetres)
    {
        Guard.InRange(footDiameterCentimetres, 0.01, 1000);
        Guard.InRange(beadWidthCentimetres, 0.01, footDiameterCentimetres);
        return new Swirl(footDiameterCentimetres / 2, Guard.InRange(heightCentimetres, beadWidthCentimetres, 1000), Guard.InRange(turns, 0.1, 1000), beadWidthCentimetres);
    }

    /// <summary>A flat rosette: a spiral of Archimedes from the edge to the middle.</summary>
    /// <param name="diameterCentimetres">The diameter 2R of the outermost turn, cm, from 0.01 to 1000.</param>
    /// <param name="turns">The turns N, from 0.1 to 1000.</param>
    /// <param name="beadWidthCentimetres">The width d of the bead, cm, from 0.01 to that of the rosette.</param>
    /// <returns>The rosette. Worked number: 6 cm across, 2 turns of 1 cm: a path of 19.3 cm and 15.2 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Swirl Rosette(double diameterCentimetres, double turns, double beadWidthCentimetres)
    {
        Guard.InRange(diameterCentimetres, 0.01, 1000);
        return new Swirl(diameterCentimetres / 2, 0, Guard.InRange(turns, 0.1, 1000), Guard.InRange(beadWidthCentimetres, 0.01, diameterCentimetres));
    }

    /// <summary>The path and the volume, such as <c>29 cm of bead, 32.8 mL</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{PathCentimetres:0.#} cm of bead, {Millilitres:0.#} mL");
}
