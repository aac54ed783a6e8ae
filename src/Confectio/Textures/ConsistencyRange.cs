using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Textures;

/// <summary>A band of a sort of icing: how much water to 100 g of sugars.</summary>
public sealed class ConsistencyRange
{
    internal ConsistencyRange(ConsistencyBand band, double low, double high, Provenance provenance)
    {
        Band = band;
        Low = low;
        High = high;
        Provenance = provenance;
    }

    /// <summary>The band.</summary>
    public ConsistencyBand Band { get; }

    /// <summary>The least water, g to 100 g of sugars.</summary>
    public double Low { get; }

    /// <summary>The most water, g to 100 g of sugars.</summary>
    public double High { get; }

    /// <summary>What it rests on.</summary>
    public Provenance Provenance { get; }

    /// <summary>A line of text: <c>stiff: 16 to 20 g of water to 100 g of sugars (common-practice)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{EnumWords.Of(Band, ' ')}: {Low:0.#} to {High:0.#} g of water to 100 g of sugars ({Provenance.Evidence.ToWord().Replace('-', ' ')})");
}
