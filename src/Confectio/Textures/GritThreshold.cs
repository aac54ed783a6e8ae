using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Textures;

/// <summary>
/// From which size times concentration half of the people found grains of a medium gritty (Imai, Hatae and Shimada 1995), and what else was found of the size that is felt.
/// </summary>
/// <remarks>
/// The grains of the study do not dissolve, and sugar does: for sugar in an icing none of it is direct, and the product says nothing of a paste that is mostly sugar. Take a size
/// alone there: below 25 to 30 µm it is smooth to most (from memory, and in line with Breen 2019). People differ. Worked number: 30 µm at 1 % are 30, which half of them feel in water
/// (6.0) and not in a hard gel (42.1).
/// </remarks>
public sealed class GritThreshold
{
    /// <summary>By how much two sizes of grains in melted chocolate must part to be told apart at the sizes that are sold, µm (Breen and others 2019).</summary>
    public const double JustNoticeableMicrometres = 5;

    private static readonly GritThreshold[] s_all = ReadBuiltIn();

    private GritThreshold(string medium, double product, Provenance provenance)
    {
        Medium = medium;
        Product = product;
        Provenance = provenance;
    }

    /// <summary>All of them, the thinnest medium first.</summary>
    public static IReadOnlyList<GritThreshold> All => s_all;

    /// <summary>The medium: <c>aqueous</c>, <c>low-viscosity</c>, <c>high-viscosity</c>, <c>soft-gel</c>, <c>hard-gel</c>.</summary>
    public string Medium { get; }

    /// <summary>Size in µm times concentration in per cent that half of the people found gritty.</summary>
    public double Product { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The threshold of a medium.</summary>
    /// <param name="medium">The medium.</param>
    /// <exception cref="ArgumentNullException"><paramref name="medium"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such medium; the message lists those there are.</exception>
    public static GritThreshold Get(string medium) => Keyed.Get(s_all, medium, "medium", "media", known => known.Medium);

    /// <summary>The threshold of a medium, where there is one.</summary>
    /// <param name="medium">The medium.</param>
    /// <param name="threshold">The threshold, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="medium"/> is null.</exception>
    public static bool TryGet(string medium, [NotNullWhen(true)] out GritThreshold? threshold) => (threshold = Keyed.Find(s_all, medium, known => known.Medium)) is not null;

    /// <summary>Whether two sizes of grains in melted chocolate are told apart by most with a fine touch.</summary>
    /// <param name="oneMicrometres">One size, µm, from 0.1 to 1000.</param>
    /// <param name="otherMicrometres">The other, µm, from 0.1 to 1000.</param>
    /// <returns>Whether they part by 5 µm or more. Worked number: 19 and 26 µm do.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static bool AreToldApart(double oneMicrometres, double otherMicrometres) =>
        Math.Abs(Guard.InRange(oneMicrometres, 0.1, 1000) - Guard.InRange(otherMicrometres, 0.1, 1000)) >= JustNoticeableMicrometres;

    /// <summary>Whether half of the people or more find grains gritty in this medium.</summary>
    /// <param name="micrometres">Their size, µm, from 0.1 to 1000.</param>
    /// <param name="massPercent">How much of it they are, per cent by mass, above 0 to 100; most of the study had a few.</param>
    /// <returns>Whether the product reaches the threshold.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public bool IsReached(double micrometres, double massPercent) =>
        Guard.InRange(micrometres, 0.1, 1000) * Guard.InRange(massPercent, Guard.Trace, 100) >= Product;

    /// <summary>One line, such as <c>aqueous: 6 µm·% (Imai et al. 1995, abstract (measured))</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Medium.Replace('-', ' ')}: {Product:0.#} µm·% ({Provenance})");

    private static GritThreshold[] ReadBuiltIn()
    {
        List<GritThreshold> all = [];
        EmbeddedTable.Read("grit_thresholds.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            all.Add(new GritThreshold(fields.Required("medium"), fields.RequiredNumber("product", 0.1, 1000), fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"))));
        });
        return [.. all];
    }
}
