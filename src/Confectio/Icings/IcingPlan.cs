using System.Text.Json;
using System.Globalization;
using Confectio.Cakes;
using Confectio.Formulas;
using Confectio.Text;

namespace Confectio.Icings;

/// <summary>
/// How much of each icing to make for a cake: its volume on the cake, grams through the density as it is spread, the waste, and batches
/// that fit a bowl at their highest.
/// </summary>
public sealed class IcingPlan
{
    /// <summary>The most batches of an icing.</summary>
    public const long MaximumBatches = 1_000_000;

    // A thousand tonnes; a formula is scaled to no more than a thousand times that.
    private const double MostGrams = 1e9;

    private const int MostListed = 10;

    private IcingPlan(CakeCoverage coverage, IcingNeed[] needs, MixerBowl? bowl)
    {
        Coverage = coverage;
        Needs = needs;
        Bowl = bowl;
    }

    /// <summary>What the cake takes.</summary>
    public CakeCoverage Coverage { get; }

    /// <summary>The icings, in the order in which the cake takes them.</summary>
    public IReadOnlyList<IcingNeed> Needs { get; }

    /// <summary>The bowl; <see langword="null"/> where each icing is one batch.</summary>
    public MixerBowl? Bowl { get; }

    /// <summary>What to look out for, and the cautions that the formulas deserve.</summary>
    public IReadOnlyList<string> Cautions =>
    [
        .. Coverage.Findings.Select(finding => finding.Text), .. Needs.SelectMany(need => need.Cautions),
        .. Needs.SelectMany(need => need.Icing.Formula?.Cautions ?? []).Select(caution => caution.Text).Distinct(),
    ];

    /// <summary>Plans the icings of a cake.</summary>
    /// <param name="cake">The cake.</param>
    /// <param name="icings">Every icing that the cake asks for, by name; more do no harm.</param>
    /// <param name="wasteFraction">The share of what is taken that is lost in bowls, bags and on the scraper, from 0 to 0.9.</param>
    /// <param name="bowl">The bowl that batches must fit at their highest; without one each icing is one batch.</param>
    /// <returns>The plan.</returns>
    /// <exception cref="ArgumentNullException">An argument other than the bowl, or an icing, is null.</exception>
    /// <exception cref="ArgumentException">
    /// The cake asks for an icing that is not there, two have one name, or the bowl is so small that a batch with one egg does not fit, or
    /// more than 1 000 000 batches would be needed, or more than 1e9 g of an icing.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="wasteFraction"/> is outside its range.</exception>
    public static IcingPlan Of(Cake cake, IEnumerable<Icing> icings, double wasteFraction, MixerBowl? bowl = null)
    {
        CakeCoverage coverage = Guard.NotNull(cake).Cover();
        Dictionary<string, Icing> known = new(StringComparer.Ordinal);
        foreach (Icing icing in Guard.NotNull(icings))
        {
            if (!known.TryAdd(Guard.NotNull(icing, nameof(icings)).Name, icing))
                throw new ArgumentException($"{nameof(icings)} has two of the name {icing.Name}.", nameof(icings));
        }
        Guard.InRange(wasteFraction, 0, 0.9);
        string[] missing = [.. coverage.Icings.Where(name => !known.ContainsKey(name))];
        if (missing.Length > 0)
            throw new ArgumentException($"{nameof(icings)} lacks {Listed(missing)}, which the cake asks for.", nameof(icings));
        List<IcingNeed> needs = [];
        foreach (string name in coverage.Icings)
        {
            double grams = known[name].GramsPerMillilitre.Likely * coverage.Millilitres(name) / (1 - wasteFraction);
            if (!(grams <= MostGrams))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"{nameof(cake)} takes {grams:R} g of {name}; at most {MostGrams:R} g are planned."), nameof(cake));
            needs.Add(new IcingNeed(known[name], coverage.Millilitres(name), wasteFraction, bowl));
        }
        return new IcingPlan(coverage, [.. needs], bowl);
    }

    /// <summary>What is planned of one icing.</summary>
    /// <param name="icing">Its name.</param>
    /// <exception cref="ArgumentNullException"><paramref name="icing"/> is null.</exception>
    /// <exception cref="ArgumentException">The cake does not ask for it.</exception>
    public IcingNeed Need(string icing)
    {
        Guard.NotNull(icing);
        return Needs.FirstOrDefault(need => need.Icing.Name == icing)
            ?? throw new ArgumentException($"{nameof(icing)} was {Excerpt.Of(icing)}; the cake asks for {Listed([.. Coverage.Icings])}.",
                nameof(icing));
    }

    private static string Listed(string[] names) => string.Join(", ", names.Take(MostListed))
        + (names.Length > MostListed ? string.Create(CultureInfo.InvariantCulture, $" and {names.Length - MostListed} more") : "");

    /// <summary>The cake and the number of icings, such as <c>garden wedding, 3 tiers: 3 icings</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Coverage.Cake}: {Needs.Count} icings");

    /// <summary>
    /// Writes the plan, in millilitres, grams and centimetres, as one JSON object, for other programs. The form is described in
    /// docs/schema/plan.json.
    /// </summary>
    /// <param name="writer">Where the object goes.</param>
    /// <exception cref="ArgumentNullException"><paramref name="writer"/> is null.</exception>
    public void WriteTo(Utf8JsonWriter writer) => IcingPlanJson.Write(this, writer);
}
