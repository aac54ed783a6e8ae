namespace Confectio.Cakes;

/// <summary>
/// Piped borders: a cross-section drawn along a path. By Pappus the volume is the area of the cross-section times the path of its centroid.
/// </summary>
/// <remarks>
/// Round a cake the centroid travels farther than the wall is long: a half round of radius b has it 4b/(3π) from the wall.
/// </remarks>
internal static class PipedLine
{
    /// <summary>A half round, flat side down, along a path such as a straight line or the top of a cake.</summary>
    /// <param name="path">The length of the path, cm, from 0 to 1e6.</param>
    /// <param name="width">The width 2b of the flat side, cm, from 0 to 1000, and no more than the path.</param>
    /// <returns>mL: π·b²/2 times the path. Worked number: 60 cm, 1.2 cm wide: 33.93 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double HalfRoundMillilitres(CakeLength path, CakeLength width) =>
        path.Centimetres * Section(BorderKind.HalfRound, width.Within(0, Widest(path)));

    /// <summary>A half round, flat side against the wall, once round a cake.</summary>
    /// <param name="plan">The plan of the cake.</param>
    /// <param name="width">The width 2b of the flat side, cm, from 0 to 1000.</param>
    /// <returns>
    /// mL: π·b²/2·(P + 8b/3). Worked number: 1 cm wide round a cake of 20 cm: 25.198 mL; along the wall itself it would be 24.674. In a
    /// notch the length round at the centroid counts (<see cref="PlanShape.Offset"/>), which is near and not exact.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="width"/> is outside its range.</exception>
    public static double HalfRoundMillilitres(PlanShape plan, CakeLength width)
    {
        Guard.NotNull(plan);
        double wide = width.Within(0, 1000);
        return plan.Grown(2 * wide / (3 * Math.PI)).Perimeter * Section(BorderKind.HalfRound, wide);
    }

    /// <summary>A full round along a path of its middle.</summary>
    /// <param name="path">The length of the path, cm, from 0 to 1e6.</param>
    /// <param name="width">The width 2b, cm, from 0 to 1000, and no more than the path.</param>
    /// <returns>mL: π·b² times the path. Worked number: 1 cm wide on a circle of 20 cm: 49.348 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double FullRoundMillilitres(CakeLength path, CakeLength width) =>
        path.Centimetres * Section(BorderKind.FullRound, width.Within(0, Widest(path)));

    /// <summary>A full round that lies against the foot of a cake, once round it.</summary>
    /// <param name="plan">The plan of the cake.</param>
    /// <param name="width">The width 2b, cm, from 0 to 1000.</param>
    /// <returns>mL: π·b²·(P + 2π·b). Worked number: 1 cm wide round a cake of 20 cm: 51.815 mL.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="width"/> is outside its range.</exception>
    public static double FullRoundMillilitres(PlanShape plan, CakeLength width)
    {
        Guard.NotNull(plan);
        double wide = width.Within(0, 1000);
        return plan.Grown(wide / 2).Perimeter * Section(BorderKind.FullRound, wide);
    }

    /// <summary>A row of shells, each taken as a half ball.</summary>
    /// <param name="path">The length of the path, cm, from 0 to 1e6.</param>
    /// <param name="width">The width 2b of a shell, cm, from 0.01 to 1000, and no more than the path.</param>
    /// <param name="shellsPerWidth">
    /// How many shells stand in the width of one, from 0.1 to 10: 1 where they touch, more where each tail lies under the next. It is yours
    /// to count on a border of your own; half balls that overlap are not as large as this, but piped shells are squeezed and not cut.
    /// </param>
    /// <returns>
    /// mL: π·b²/3 times the path. Worked number: 60 cm of touching shells, 1.2 cm wide: 22.619 mL, two thirds of a half round.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double ShellsMillilitres(CakeLength path, CakeLength width, double shellsPerWidth = 1) =>
        path.Centimetres * Section(BorderKind.Shells, width.Within(0.01, Widest(path))) * Guard.InRange(shellsPerWidth, 0.1, 10);

    // A line wider than long is a width given for a path.
    private static double Widest(CakeLength path) => Math.Min(1000, path.Centimetres);

    /// <summary>The area of a cross-section, cm²; of touching shells the mean along the path.</summary>
    internal static double Section(BorderKind kind, double width) =>
        Math.PI * width * width / 4 / kind switch { BorderKind.HalfRound => 2, BorderKind.FullRound => 1, _ => 3 };
}
