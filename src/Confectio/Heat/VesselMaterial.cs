using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Heat;

/// <summary>What a bowl or a pot is made of, for the heat it takes or gives.</summary>
public sealed class VesselMaterial
{
    private static readonly VesselMaterial[] s_all =
        [.. HeatFigure.All.Where(figure => figure.Quantity == "specific").Select(figure => new VesselMaterial(figure))];

    private VesselMaterial(HeatFigure figure)
    {
        Key = figure.Key;
        SpecificHeat = figure.Value;
        Provenance = figure.Provenance;
    }

    /// <summary>The materials.</summary>
    public static IReadOnlyList<VesselMaterial> All => s_all;

    /// <summary>Stainless steel: 0.50 kJ/(kg·K), from memory.</summary>
    public static VesselMaterial StainlessSteel { get; } = Get("stainless-steel");

    /// <summary>Glass: 0.84 kJ/(kg·K), from memory.</summary>
    public static VesselMaterial Glass { get; } = Get("glass");

    /// <summary>Copper: 0.39 kJ/(kg·K), from memory.</summary>
    public static VesselMaterial Copper { get; } = Get("copper");

    /// <summary>The key, such as <c>stainless-steel</c>.</summary>
    public string Key { get; }

    /// <summary>The specific heat, kJ/(kg·K), taken as the same at every temperature.</summary>
    public Spread SpecificHeat { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The material of a key.</summary>
    /// <param name="key">The key; case does not matter.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such material; the message lists those there are.</exception>
    public static VesselMaterial Get(string key) => Keyed.Get(s_all, key, "vessel of", "materials", known => known.Key);

    /// <summary>The key.</summary>
    public override string ToString() => Key;
}
