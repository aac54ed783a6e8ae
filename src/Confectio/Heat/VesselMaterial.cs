using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Heat;

/// <summary>What a bowl or a pot is made of, for the heat it takes or gives.</summary>
public sealed class VesselMaterial
{
    private static readonly VesselMaterial[] s_all =
        [.. HeatFigure.All.Where(figure => figure.Quantity == "specific").Select(figure => new VesselMaterial(figure.Key, figure.Value,
            figure.Provenance))];

    private VesselMaterial(string key, Spread specificHeat, Provenance? provenance)
    {
        Key = key;
        SpecificHeat = specificHeat;
        Provenance = provenance;
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

    /// <summary>Where it comes from; <see langword="null"/> of a material of your own.</summary>
    public Provenance? Provenance { get; }

    /// <summary>A material of your own, or any body with one specific heat at all temperatures.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="specificHeat">
    /// Its specific heat, kJ/(kg·K), from 0.05 to 5: metals have 0.1 to 1, plastics up to 2, water 4.2. A mass or a temperature put here by
    /// mistake is outside.
    /// </param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="specificHeat"/> is outside its range.</exception>
    public static VesselMaterial Of(string name, double specificHeat) => string.IsNullOrWhiteSpace(Guard.NotNull(name))
        ? throw new ArgumentException($"{nameof(name)} was {Excerpt.Of(name)}; a material needs a name.", nameof(name))
        : new VesselMaterial(name.Trim(), Spread.Exactly(Guard.InRange(specificHeat, 0.05, 5)), null);

    /// <summary>The material of a key.</summary>
    /// <param name="key">The key; case does not matter.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such material; the message lists those there are.</exception>
    public static VesselMaterial Get(string key) => Keyed.Get(s_all, key, "vessel of", "materials", known => known.Key);

    /// <summary>The key.</summary>
    public override string ToString() => Key;
}
