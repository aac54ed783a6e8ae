using Confectio.Cakes;

namespace Confectio.Pictures;

/// <summary>
/// A picture of a cake: cut from left to right and seen from above, at one scale, with its coats, its sizes and its icings.
/// </summary>
public static class CakePicture
{
    /// <summary>The picture as SVG, a text that browsers, notebooks and word processors show.</summary>
    /// <param name="cake">The cake.</param>
    /// <param name="options">How it is drawn; <see cref="CakePictureOptions.Default"/> where nothing is said.</param>
    /// <returns>
    /// SVG 1.1 with lines, arcs and text, no script and no reference to anything outside it. Coats, fillings and borders have their own
    /// thickness at the scale of the cake; each tier is cut through its own middle and shown as wide as it is at its widest. In a notebook
    /// give it to the display of HTML.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="cake"/> is null.</exception>
    /// <remarks>
    /// From above, pieces stand in a row along the edge, since a cake does not say where they stand, and only as many as fit. Tiers that
    /// are raised stand beside the others. Names too long for their place are cut; what a name may hold that no picture can is replaced.
    /// </remarks>
    public static string Svg(Cake cake, CakePictureOptions? options = null)
    {
        options ??= CakePictureOptions.Default;
        return new CakeDrawing(Guard.NotNull(cake), options.Lengths).Draw(options.WidthPixels);
    }
}
