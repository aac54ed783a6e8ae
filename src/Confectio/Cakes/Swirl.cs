using System.Globalization;

namespace Confectio.Cakes;

/// <summary>A swirl such as on a cupcake: a piped line on a spiral up a cone; or a rosette, where the spiral is flat.</summary>
/// <remarks>
/// The middle of the line goes as r = R(1 − u) and z = H·u with N turns, u from 0 to 1. With c² = R² + H² and a = 2π·N·R its length is
/// L = (√(c² + a²) + (c²/a)·asinh(a/c))/2. What leaves the bag is that length times the section of the line, L·π·d²/4, and all of it
/// counts: where a turn lies on the one before, it is squeezed aside and not lost.
/// </remarks>
public sealed class Swirl
{
    private Swirl(double footRadius, double height, double turns, double lineWidth)
    {
        (FootDiameterCentimetres, Turns, LineWidthCentimetres) = (2 * footRadius, turns, lineWidth);
        double square = footRadius * footRadius + height * height, around = 2 * Math.PI * turns * footRadius, half = lineWidth / 2;
        PathCentimetres = 0.5 * (Math.Sqrt(square + around * around) + square / around * Math.Asinh(around / Math.Sqrt(square)));
        Millilitres = PathCentimetres * Math.PI * half * half;
        // Steiner: V + S·ρ + M·ρ² + 4π/3·ρ³, with M = π·H of the slope and half of 2π·R times the turn of the rim.
        double volume = Math.PI * footRadius * footRadius * height / 3, surface = Math.PI * footRadius * (footRadius + Math.Sqrt(square));
        double bend = Math.PI * (height + footRadius * (Math.PI - Math.Atan2(height, footRadius)));
        EnclosingMillilitres = volume + half * (surface + half * (bend + 4 * Math.PI / 3 * half));
        HeightCentimetres = height > 0 ? height : lineWidth;
    }

    /// <summary>The diameter of the outermost turn, from middle to middle of the line, cm.</summary>
    public double FootDiameterCentimetres { get; }

    /// <summary>The turns.</summary>
    public double Turns { get; }

    /// <summary>The width of the line, cm.</summary>
    public double LineWidthCentimetres { get; }

    /// <summary>The height, cm; of a rosette the width of its line.</summary>
    public double HeightCentimetres { get; }

    /// <summary>The length of the path L, cm.</summary>
    public double PathCentimetres { get; }

    /// <summary>What it takes, mL: L·π·d²/4, whether or not its turns touch.</summary>
    public double Millilitres { get; }

    /// <summary>
    /// The room that it has at its sizes, mL: all that is within half the line of the cone on which its middle goes, or of the disc of a
    /// rosette. Touching turns fill most of it.
    /// </summary>
    public double EnclosingMillilitres { get; }

    /// <summary>
    /// Whether the turns are so many, or so thick, that not even squeezed they have room at these sizes: then it becomes larger than that,
    /// or has fewer turns. The line counts all the same, so that nobody runs short.
    /// </summary>
    public bool IsOverfull => Millilitres > EnclosingMillilitres;

    /// <summary>A swirl up a cone.</summary>
    /// <param name="footDiameter">The diameter 2R at the foot, from middle to middle of the line, cm, from 0.01 to 1000.</param>
    /// <param name="height">The height H that the middle of the line climbs, cm, from the width of the line to 1000.</param>
    /// <param name="turns">The turns N, from 0.1 to 1000.</param>
    /// <param name="lineWidth">The width d of the line, cm, from 0.01 to that of the foot.</param>
    /// <returns>
    /// The swirl. Worked number: 6 cm at the foot, 3.5 cm high, 4 turns of 1.2 cm: a path of 38.261 cm and 43.27 mL, with room for 88.62
    /// mL. A swirl hardly higher than its line is no cone: for it <see cref="Rosette"/> is nearer.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static Swirl UpCone(CakeLength footDiameter, CakeLength height, double turns, CakeLength lineWidth)
    {
        double foot = footDiameter.Within(0.01, 1000), line = lineWidth.Within(0.01, foot);
        return new Swirl(foot / 2, height.Within(line, 1000), Guard.InRange(turns, 0.1, 1000), line);
    }

    /// <summary>A flat rosette: a spiral of Archimedes from the edge to the middle.</summary>
    /// <param name="diameter">The diameter 2R of the outermost turn, from middle to middle of the line, cm, from 0.01 to 1000.</param>
    /// <param name="turns">The turns N, from 0.1 to 1000.</param>
    /// <param name="lineWidth">The width d of the line, cm, from 0.01 to that of the rosette.</param>
    /// <returns>The rosette. Worked number: 6 cm across, 2 turns of 1 cm: a path of 19.3 cm and 15.2 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Swirl Rosette(CakeLength diameter, double turns, CakeLength lineWidth)
    {
        double across = diameter.Within(0.01, 1000);
        return new Swirl(across / 2, 0, Guard.InRange(turns, 0.1, 1000), lineWidth.Within(0.01, across));
    }

    /// <summary>The same spiral up a cone, such as on a cupcake.</summary>
    /// <param name="height">The height H that the middle of the line climbs, cm, from its width to 1000.</param>
    /// <returns>
    /// The swirl. Worked number: a rosette of 6 cm and 4 turns of 1.2 cm, raised by 3.5 cm: a path of 38.261 cm and 43.27 mL, with room for
    /// 88.62 mL. A swirl hardly higher than its line is no cone: for it the rosette is nearer.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="height"/> is outside its range.</exception>
    public Swirl Raised(CakeLength height) => new(FootDiameterCentimetres / 2, height.Within(LineWidthCentimetres, 1000), Turns,
        LineWidthCentimetres);

    /// <summary>The path and the volume, such as <c>29 cm of piped line, 32.8 mL</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{PathCentimetres:0.#} cm of piped line, {Millilitres:0.#} mL");
}
