namespace Confectio.Vetting;

/// <summary>What nobody asked about and everything depends on: how wide the densities are, and a common offset of the powders.</summary>
internal sealed class NuisanceGrid(double[] widths, double[] widthPriors, double[] offsets, double[] offsetPriors)
{
    /// <summary>The number of pairings of a width and an offset.</summary>
    public int Count => widths.Length * offsets.Length;

    public double Width(int pairing) => widths[pairing / offsets.Length];

    public double Offset(int pairing) => offsets[pairing % offsets.Length];

    public double LogPrior(int pairing) => Math.Log(widthPriors[pairing / offsets.Length] * offsetPriors[pairing % offsets.Length]);
}
