using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Textures;

/// <summary>How much air a sort of icing takes up when it is whipped, as an overrun with its range. Few are printed; each says what it rests on.</summary>
public sealed class IcingAir
{
    private static readonly IcingAir[] s_all = ReadBuiltIn();

    private IcingAir(string key, Spread overrun, Provenance provenance)
    {
        Key = key;
        OverrunPercent = overrun;
        Provenance = provenance;
    }

    /// <summary>The sorts.</summary>
    public static IReadOnlyList<IcingAir> All => s_all;

    /// <summary>The key, such as <c>buttercream</c>.</summary>
    public string Key { get; }

    /// <summary>What it gains in volume over its density without air, per cent.</summary>
    public Spread OverrunPercent { get; }

    /// <summary>What that rests on.</summary>
    public Provenance Provenance { get; }

    /// <summary>What icings of this sort were printed to weigh.</summary>
    public IReadOnlyList<PrintedDensity> Printed => [.. PrintedDensity.All.Where(density => density.Sort == Key)];

    /// <summary>The sort of a key.</summary>
    /// <param name="key">The key.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such sort; the message lists those there are.</exception>
    public static IcingAir Get(string key) => Keyed.Get(s_all, key, "sort of whipped icing", "sorts", known => known.Key);

    /// <summary>The sort of a key, where there is one.</summary>
    /// <param name="key">The key.</param>
    /// <param name="air">The sort, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public static bool TryGet(string key, [NotNullWhen(true)] out IcingAir? air) => (air = Keyed.Find(s_all, key, known => known.Key)) is not null;

    /// <summary>How light an icing of this sort is beside what is recommended for it.</summary>
    /// <param name="gramsPerMillilitre">Its density, g/mL, from 0.05 to 2.</param>
    /// <returns>
    /// The verdict; <see langword="null"/> where nothing is recommended for this sort. Worked number: a buttercream of 0.70 is too light, of 0.88 as recommended, of 1.05 dense.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gramsPerMillilitre"/> is outside its range.</exception>
    public IcingLightness? Judge(double gramsPerMillilitre)
    {
        Guard.InRange(gramsPerMillilitre, IcingYield.MinimumDensity, IcingYield.MaximumDensity);
        Spread? good = Printed.FirstOrDefault(one => one.Says == IcingLightness.Recommended)?.GramsPerMillilitre,
            light = Printed.FirstOrDefault(one => one.Says == IcingLightness.TooLight)?.GramsPerMillilitre;
        return good is not Spread wanted ? null : gramsPerMillilitre > wanted.High ? IcingLightness.Dense : gramsPerMillilitre >= wanted.Low ? IcingLightness.Recommended
            : light is Spread low && gramsPerMillilitre <= low.High ? IcingLightness.TooLight : IcingLightness.Light;
    }

    /// <summary>One line, such as <c>buttercream: overrun 35 % (8 to 61), estimated</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Key.Replace('-', ' ')}: overrun {OverrunPercent.Likely:0.#} % ({OverrunPercent.Low:0.#} to {OverrunPercent.High:0.#}), {Provenance.Evidence.ToWord().Replace('-', ' ')}");

    private static IcingAir[] ReadBuiltIn()
    {
        List<IcingAir> all = [];
        EmbeddedTable.Read("icing_airs.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            Provenance provenance = fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"));
            all.Add(new IcingAir(fields.Required("sort"), fields.Spread(0, 1000, provenance.Evidence), provenance));
        });
        return [.. all];
    }
}
