namespace Confectio.Vetting;

/// <summary>What nobody asked about and everything depends on: how wide the densities are, and a common offset of the powders.</summary>
internal sealed class NuisanceGrid(double[] widths, double[] widthPriors, double[] offsets, double[] offsetPriors)
{
    /// <summary>How much less well known densities are than we think, for what is packed or heaped.</summary>
    public static NuisanceGrid Packed { get; } = new([1, 1.5, 2.2], [0.5, 0.33, 0.17], [-0.12, -0.06, 0, 0.06, 0.12],
        [0.1, 0.2, 0.4, 0.2, 0.1]);

    /// <summary>
    /// The same for liquids, whose densities physics keeps near: a table that is careless with flour still pours oil like any other.
    /// </summary>
    public static NuisanceGrid Poured { get; } = new([1, 1.3, 1.7], [0.5, 0.33, 0.17], [0], [1]);

    public double WidestWidth => widths[^1];

    public double WidestOffset => offsets[^1];

    /// <summary>The number of pairings of a width and an offset.</summary>
    public int Count => widths.Length * offsets.Length;

    public double Width(int pairing) => widths[pairing / offsets.Length];

    public double Offset(int pairing) => offsets[pairing % offsets.Length];

    public double LogPrior(int pairing) => Math.Log(widthPriors[pairing / offsets.Length] * offsetPriors[pairing % offsets.Length]);
}
