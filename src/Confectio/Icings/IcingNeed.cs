using System.Globalization;
using Confectio.Cakes;
using Confectio.Eggs;
using Confectio.Sources;

namespace Confectio.Icings;

/// <summary>One icing of a plan: what goes on the cake, what is lost, in which batches it is made and what is left over.</summary>
/// <remarks>
/// Made − left over = taken; taken − waste = planned. The waste is a share of what is taken, for what stays in a bowl or a bag was taken
/// for the cake.
/// </remarks>
public sealed class IcingNeed
{
    // Below this share of its bowl a whisk may not reach the mix. An estimate.
    private const double LeastFill = 0.1;

    internal IcingNeed(Icing icing, double millilitres, double wasteFraction, MixerBowl? bowl)
    {
        Icing = icing;
        Millilitres = millilitres;
        WasteFraction = wasteFraction;
        PlannedGrams = icing.GramsPerMillilitre * millilitres;
        TakenGrams = PlannedGrams.Likely / (1 - wasteFraction);
        // What is bought, or made elsewhere, goes through no bowl here.
        Batches = TakenGrams > 0 ? MakeBatches(icing, TakenGrams, icing.Formula is null ? null : bowl) : [];
        Cautions = Look(bowl);
    }

    /// <summary>The icing.</summary>
    public Icing Icing { get; }

    /// <summary>What goes on the cake, mL.</summary>
    public double Millilitres { get; }

    /// <summary>What goes on the cake, g, as sure as its density is.</summary>
    public Spread PlannedGrams { get; }

    /// <summary>The share of what is taken that is lost in bowls, bags and on the scraper.</summary>
    public double WasteFraction { get; }

    /// <summary>What is taken for the cake, g: planned over 1 − waste.</summary>
    public double TakenGrams { get; }

    /// <summary>What is lost, g.</summary>
    public double WasteGrams => TakenGrams - PlannedGrams.Likely;

    /// <summary>The batches; none where the cake takes nothing of it.</summary>
    public IReadOnlyList<IcingBatch> Batches { get; }

    /// <summary>What is made, g.</summary>
    public double MadeGrams => Batches.Sum(batch => batch.Count * batch.Grams);

    /// <summary>What is left over, g; above 0 where eggs are whole.</summary>
    public double LeftOverGrams => Math.Max(MadeGrams - TakenGrams, 0);

    /// <summary>What to look out for.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>What is left over reaches, with the same waste; <see langword="null"/> where nothing is left.</summary>
    public IcingCover? LeftOverCover => LeftOverGrams >= 0.01 ? Icing.CoverOfAny(LeftOverGrams, WasteFraction) : null;

    /// <summary>What goes on the cake and what is made, such as <c>meringue buttercream: 2315 mL, 1968 g; made 2139 g</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Icing.Name}: {Millilitres:0} mL, {PlannedGrams.Likely:0} g; made {MadeGrams:0} g");

    private static IcingBatch[] MakeBatches(Icing icing, double grams, MixerBowl? bowl)
    {
        // A hair is forgiven: three batches that fit to the last bit are not four.
        double most = bowl is null ? double.MaxValue : bowl.UsableMillilitres / icing.PeakMillilitresPerGram * (1 + 1e-12);
        if (icing.EggSize is null)
        {
            double count = Math.Max(Math.Ceiling(grams / most), 1);
            return count <= IcingPlan.MaximumBatches ? [new IcingBatch(icing, (long)count, grams / count, null)]
                : throw TooMany(icing, bowl!);
        }
        double perEgg = icing.GramsPerEgg, eggs = Math.Max(Math.Ceiling(grams / perEgg * (1 - 1e-12)), 1),
            mostEggs = Math.Floor(most / perEgg);
        if (mostEggs < 1)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(bowl)} was {bowl}; a batch of {icing.Name} with one egg is {perEgg:0.#} g and rises to "
                    + $"{perEgg * icing.PeakMillilitresPerGram:0.#} mL."), nameof(bowl));
        double batches = Math.Ceiling(eggs / mostEggs);
        if (!(batches <= IcingPlan.MaximumBatches && eggs <= 1e12))
            throw TooMany(icing, bowl!);
        long all = (long)eggs, number = (long)batches, fewer = all / number, larger = all % number;
        IcingBatch Batch(long count, long each) => new(icing, count, each * perEgg, each);
        return larger == 0 ? [Batch(number, fewer)] : [Batch(larger, fewer + 1), Batch(number - larger, fewer)];
    }

    private static ArgumentException TooMany(Icing icing, MixerBowl bowl) => new(string.Create(CultureInfo.InvariantCulture,
        $"{nameof(bowl)} was {bowl}; {icing.Name} would take more than {IcingPlan.MaximumBatches} batches."), nameof(bowl));

    private List<string> Look(MixerBowl? bowl)
    {
        List<string> cautions = [];
        if (bowl is not null && Icing.Formula is not null && Batches.Count > 0)
        {
            double smallest = Batches.Min(batch => batch.PeakMillilitres);
            if (smallest < LeastFill * bowl.Millilitres)
                cautions.Add(string.Create(CultureInfo.InvariantCulture, $"{Icing.Name}: a batch fills "
                    + $"{100 * smallest / bowl.Millilitres:0} % of the {bowl.Name} at its highest; the whisk may not reach it."));
        }
        if (Icing.Formula is not null && Icing.Whipped.Count == 0 && Icing.Formula.Lines.Any(line => EggForms.IsWhite(line.Ingredient)))
            cautions.Add($"{Icing.Name} has egg white and no rise is stated: a meringue fills the bowl before the rest comes in.");
        return cautions;
    }
}
