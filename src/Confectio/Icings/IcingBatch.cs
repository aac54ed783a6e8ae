using System.Globalization;
using Confectio.Formulas;

namespace Confectio.Icings;

/// <summary>So many batches alike.</summary>
public sealed class IcingBatch
{
    internal IcingBatch(Icing icing, long count, double grams, long? eggs)
    {
        Count = count;
        Grams = grams;
        Eggs = eggs;
        Formula = icing.Formula?.ScaleToMass(grams);
        Millilitres = grams / icing.GramsPerMillilitre.Likely;
        PeakMillilitres = grams * icing.PeakMillilitresPerGram;
    }

    /// <summary>How many of them.</summary>
    public long Count { get; }

    /// <summary>What one weighs when it is done, g.</summary>
    public double Grams { get; }

    /// <summary>What one fills when it is done, mL.</summary>
    public double Millilitres { get; }

    /// <summary>
    /// What one fills at its highest on the way, mL, at the high end of its rise and the low end of its density: what the bowl must hold.
    /// </summary>
    public double PeakMillilitres { get; }

    /// <summary>The whole eggs in one; <see langword="null"/> where eggs are weighed.</summary>
    public long? Eggs { get; }

    /// <summary>The formula of one; <see langword="null"/> where the icing has none.</summary>
    public Formula? Formula { get; }

    /// <summary>One line, such as <c>2 batches of 1180 g, 2310 mL at the highest</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Count} {(Count == 1 ? "batch" : "batches")} of {Grams:0} g{(Eggs is long eggs ? $" with {eggs} eggs" : "")}, "
            + $"{PeakMillilitres:0} mL at the highest");
}
