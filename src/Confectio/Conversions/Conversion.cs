using System.Diagnostics.CodeAnalysis;
using System.Numerics;
using System.Runtime.InteropServices;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Conversions;

/// <summary>
/// Turns measures of one ingredient in one packing into grams and back, with the spread, the source and the cautions.
/// Made once and used often: a single conversion allocates nothing.
/// </summary>
/// <remarks>
/// m = V ρ, so in logarithms u(ln m)² = u(ln V)² + u(ln ρ)² (GUM, JCGM 100:2008, 5.1.2 with the logarithm as the model).
/// u(ln ρ) comes with the density, u(ln V) from the tolerance of the measure where <see cref="ConversionOptions"/> asks for it.
/// Low and high are the likely mass × e^∓2u, and never narrower than the published figures.
/// Worked number: 1 1/2 US cups of sifted icing sugar (100 g a cup in USDA SR, 95 g in HERR-41) is 146.2 g, 129.6 to 164.9 g.
/// </remarks>
public sealed class Conversion : IEquatable<Conversion>
{
    /// <summary>A million tonnes: nothing larger is a kitchen's, and no product of it overflows.</summary>
    private const double Largest = 1e12;

    private readonly double _low;
    private readonly double _likely;
    private readonly double _high;

    private Conversion(Ingredient ingredient, BulkDensity density, bool assumed, MeasuringSystem system, ConversionOptions options)
    {
        Ingredient = ingredient;
        Density = density;
        PackingWasAssumed = assumed;
        MeasuringSystem = system;
        Options = options;
        double tool = options.ToolTolerance / Math.Sqrt(3);
        LogUncertainty = Math.Sqrt(density.LogUncertainty * density.LogUncertainty + tool * tool);
        _likely = density.GramsPerMillilitre.Likely;
        Basis = Spread.Worse(SpreadBasis.Coverage, density.GramsPerMillilitre.Basis);
        _low = Math.Min(_likely * Math.Exp(-2 * LogUncertainty), density.GramsPerMillilitre.Low);
        _high = Math.Max(_likely * Math.Exp(2 * LogUncertainty), density.GramsPerMillilitre.High);
    }

    /// <summary>The ingredient.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>The density used, with its sources.</summary>
    public BulkDensity Density { get; }

    /// <summary>Whose cups and spoons.</summary>
    public MeasuringSystem MeasuringSystem { get; }

    /// <summary>What the spread takes in.</summary>
    public ConversionOptions Options { get; }

    /// <summary>
    /// Whether nobody stated the packing, so that the ingredient's usual one was taken. Never of what pours: it finds its own level.
    /// </summary>
    public bool PackingWasAssumed { get; }

    /// <summary>The standard uncertainty of the logarithm of a converted mass.</summary>
    public double LogUncertainty { get; }

    /// <summary>What an interval of this conversion means: no more than that of its density does.</summary>
    internal SpreadBasis Basis { get; }

    /// <summary>What a reader should know before trusting the number; empty where there is nothing.</summary>
    public IReadOnlyList<string> Cautions => field ??= CollectCautions();

    /// <summary>
    /// A conversion in the ingredient's usual packing; where there are others and it does not pour, it says that the packing was assumed.
    /// </summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <param name="options">What the spread takes in; <see langword="null"/> for the density alone.</param>
    /// <returns>The conversion.</returns>
    /// <exception cref="ArgumentException">No density is known in the usual packing.</exception>
    public static Conversion Of(Ingredient ingredient, MeasuringSystem system, ConversionOptions? options = null)
    {
        Guard.NotNull(ingredient);
        return new Conversion(ingredient, ingredient.NearestDensity(ingredient.DefaultPacking), ingredient.Densities.Count > 1
            && !ingredient.FindsItsLevel(ingredient.DefaultPacking),
            Guard.NotNull(system), options ?? ConversionOptions.Default);
    }

    /// <summary>
    /// A conversion in a stated packing; where nobody weighed it, in the nearest that was weighed, widened, and it says so.
    /// </summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="packing">How the measure is filled.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <param name="options">What the spread takes in; <see langword="null"/> for the density alone.</param>
    /// <returns>The conversion.</returns>
    /// <exception cref="ArgumentException">
    /// No density is known in this packing or a near one (<see cref="Ingredient.NearestDensity"/>); the message lists those that are.
    /// </exception>
    public static Conversion Of(Ingredient ingredient, Packing packing, MeasuringSystem system, ConversionOptions? options = null) =>
        new(Guard.NotNull(ingredient), ingredient.NearestDensity(packing), false, Guard.NotNull(system),
            options ?? ConversionOptions.Default);

    /// <summary>The mass of a volume.</summary>
    /// <param name="millilitres">The volume in millilitres, from 0 to 1e12.</param>
    /// <returns>The mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The volume is outside its range.</exception>
    public ConvertedMass ToMass(double millilitres)
    {
        millilitres = Guard.InRange(millilitres, 0, Largest);
        double likely = millilitres * _likely;
        return new ConvertedMass(millilitres * _low, likely, millilitres * _high, likely * LogUncertainty, Basis, this,
            throughDensity: true);
    }

    /// <summary>
    /// The mass of an amount: a volume through the density, a piece through the ingredient's own weight, a mass as it is.
    /// A range such as 2-3 tsp widens the spread by its ends.
    /// </summary>
    /// <param name="amount">The amount.</param>
    /// <returns>The mass.</returns>
    /// <exception cref="ArgumentException">The measuring system lacks the unit, or the ingredient has no such piece.</exception>
    public ConvertedMass ToMass(Amount amount)
    {
        if (amount.IsVolume)
        {
            double low = amount.LowMillilitres(MeasuringSystem), high = amount.IsRange ? amount.HighMillilitres(MeasuringSystem) : low,
                middle = low / 2 + high / 2;
            double width = (high - low) / Math.Sqrt(12) * _likely, mass = middle * _likely;
            return new ConvertedMass(low * _low, mass, high * _high,
                Math.Sqrt(mass * LogUncertainty * (mass * LogUncertainty) + width * width), Basis, this, throughDensity: true);
        }
        if (amount.IsMass)
        {
            double low = amount.LowGrams(MeasuringSystem), high = amount.HighGrams(MeasuringSystem);
            return new ConvertedMass(low, low / 2 + high / 2, high, (high - low) / Math.Sqrt(12), SpreadBasis.Sources, null,
                throughDensity: false);
        }
        return MassOfPieces(Ingredient, amount, this);
    }

    /// <summary>The volume of a mass.</summary>
    /// <param name="grams">The mass in grams, from 0 to 1e12.</param>
    /// <returns>The volume.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is outside its range.</exception>
    public ConvertedVolume ToVolume(double grams)
    {
        grams = Guard.InRange(grams, 0, Largest);
        return new ConvertedVolume(grams / _high, grams / _likely, grams / _low, this);
    }

    /// <summary>The fewest fills of cups and spoons that come near enough to a mass of this ingredient.</summary>
    /// <param name="grams">The mass in grams; its volume must be from 0.01 to 1 000 000 mL.</param>
    /// <param name="tools">The tools to hand, of the same measuring system.</param>
    /// <param name="allowedError">The largest error allowed, as a fraction from 0 to 0.5.</param>
    /// <returns>The measures, or <see langword="null"/> where no filling of these tools comes within the allowed error.</returns>
    /// <exception cref="ArgumentException">The tools are of another measuring system.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public PracticalMeasure? ToMeasures(double grams, MeasuringTools tools, double allowedError = 0.02)
    {
        Guard.InRange(grams, 0.01 * _likely, 1e6 * _likely);
        // The clamp mends the last bit of a limit, which the division may lose.
        return Guard.NotNull(tools).MeasuringSystem == MeasuringSystem
            ? PracticalMeasure.Find(Math.Clamp(grams / _likely, 0.01, 1e6), tools, allowedError)
            : throw new ArgumentException($"The tools are {tools.MeasuringSystem.Name} and the conversion is {MeasuringSystem.Name}.",
                nameof(tools));
    }

    /// <summary>Likely masses of a whole column of volumes.</summary>
    /// <param name="millilitres">Volumes in millilitres. They are not checked one by one: NaN gives NaN.</param>
    /// <param name="grams">Where the masses go; at least as long. May be the same memory.</param>
    /// <exception cref="ArgumentException">
    /// <paramref name="grams"/> is too short, or overlaps the volumes without being the same memory.
    /// </exception>
    public void ToGrams(ReadOnlySpan<double> millilitres, Span<double> grams)
    {
        grams = RoomFor(millilitres, grams, nameof(grams));
        RefuseShift(millilitres, grams, nameof(grams));
        ReadOnlySpan<Vector<double>> whole = MemoryMarshal.Cast<double, Vector<double>>(millilitres);
        // Held in locals of one length, so that the loop neither reads a field nor checks a bound.
        Span<Vector<double>> target = MemoryMarshal.Cast<double, Vector<double>>(grams)[..whole.Length];
        Vector<double> density = new(_likely);
        for (int i = 0; i < whole.Length; i++)
            target[i] = whole[i] * density;
        for (int i = whole.Length * Vector<double>.Count; i < grams.Length; i++)
            grams[i] = millilitres[i] * _likely;
    }

    /// <summary>Likely volumes of a whole column of masses.</summary>
    /// <param name="grams">Masses in grams. They are not checked one by one: NaN gives NaN.</param>
    /// <param name="millilitres">Where the volumes go; at least as long. May be the same memory.</param>
    /// <exception cref="ArgumentException">
    /// <paramref name="millilitres"/> is too short, or overlaps the masses without being the same memory.
    /// </exception>
    public void ToMillilitres(ReadOnlySpan<double> grams, Span<double> millilitres)
    {
        millilitres = RoomFor(grams, millilitres, nameof(millilitres));
        RefuseShift(grams, millilitres, nameof(millilitres));
        ReadOnlySpan<Vector<double>> whole = MemoryMarshal.Cast<double, Vector<double>>(grams);
        Span<Vector<double>> target = MemoryMarshal.Cast<double, Vector<double>>(millilitres);
        // A division and not a product with the reciprocal: every value is to the last bit that of ToVolume.
        Vector<double> density = new(_likely);
        for (int i = 0; i < whole.Length; i++)
            target[i] = whole[i] / density;
        for (int i = whole.Length * Vector<double>.Count; i < millilitres.Length; i++)
            millilitres[i] = grams[i] / _likely;
    }

    /// <summary>The ingredient, packing and system, such as <c>icing sugar, sifted, US customary</c>.</summary>
    public override string ToString() => $"{Ingredient.Name}, {Density.HowPacked}, {MeasuringSystem.Name}";

    /// <summary>Whether another conversion has the same ingredient, density, measuring system and tolerance.</summary>
    /// <param name="other">The other conversion.</param>
    public bool Equals([NotNullWhen(true)] Conversion? other) => other is not null && Ingredient == other.Ingredient
        && MeasuringSystem == other.MeasuringSystem
        && Density.Packing == other.Density.Packing && Density.GramsPerMillilitre == other.Density.GramsPerMillilitre
        && Options.ToolTolerance.Equals(other.Options.ToolTolerance) && PackingWasAssumed == other.PackingWasAssumed;

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => Equals(obj as Conversion);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Ingredient, Density.Packing, _likely);

    /// <summary>That a packing was taken from another that was weighed, and how; null where it was weighed itself.</summary>
    internal static string? TakenSentence(Ingredient ingredient, BulkDensity density) => density.TakenFrom is not Packing known ? null
        : density.RatioFoods == 0
            ? $"Nobody weighed {ingredient.Name} {density.Packing.ToWord()}; the nearest known packing, {known.ToWord()}, was taken, and the "
                + "spread widened."
            : string.Create(global::System.Globalization.CultureInfo.InvariantCulture,
                $"Nobody weighed {ingredient.Name} {density.Packing.ToWord()}; {known.ToWord()} was taken times ")
                + string.Create(global::System.Globalization.CultureInfo.InvariantCulture,
                    $"{density.GramsPerMillilitre.Likely / density.Basis!.GramsPerMillilitre.Likely:0.00}, as {density.RatioFoods} foods ")
                + "that were weighed both ways have it, and the spread widened.";

    // Apart from any one conversion: that needs a density, which an ingredient that is only counted may not have.
    internal static ConvertedMass MassOfPieces(Ingredient ingredient, Amount amount, Conversion? by)
    {
        double low = 0, likely = 0, high = 0;
        SpreadBasis basis = SpreadBasis.Sources;
        for (int i = 0; i < amount.PartCount; i++)
        {
            AmountPart part = amount.Part(i);
            Spread grams = ingredient.Piece(part.Piece!).Grams;
            basis = Spread.Worse(basis, grams.Basis);
            low += part.Low.ToDouble() * grams.Low;
            likely += (part.Low.ToDouble() + part.High.ToDouble()) / 2 * grams.Likely;
            high += part.High.ToDouble() * grams.High;
        }
        return new ConvertedMass(low, likely, high, (high - low) / Math.Sqrt(12), basis, by, throughDensity: false);
    }

    private string[] CollectCautions()
    {
        List<string> cautions = [];
        if (PackingWasAssumed)
            cautions.Add($"The packing was not stated; {Density.Packing.ToWord()} was assumed. Known packings: "
                + $"{string.Join(", ", Ingredient.Densities.Select(known => known.Packing.ToWord()))}.");
        if (TakenSentence(Ingredient, Density) is string taken)
            cautions.Add(taken);
        if (Density.Disagreement is string disagreement)
            cautions.Add(disagreement);
        if (Density.Weighings is { Grams.Count: 1 })
            cautions.Add("One weighing says nothing of how one fill differs from the next; what the class of food brings was taken, an estimate.");
        if (Density.Weighings is { ResolutionWasAssumed: true } weighed)
            cautions.Add(string.Create(global::System.Globalization.CultureInfo.InvariantCulture,
                $"Scales of {weighed.ResolutionGrams:0.###} g were assumed from the digits of your own weighings."));
        if (Density.ContributingFigures.All(voice => voice.Provenance.Evidence is Sources.Evidence.Estimated
            or Sources.Evidence.FromMemory or Sources.Evidence.CommonPractice))
            cautions.Add("No published figure stands behind this density; it is an estimate, from memory or common practice.");
        foreach (KitchenUnit unit in (KitchenUnit[])[KitchenUnit.Tablespoon, KitchenUnit.Cup])
        {
            if (MeasuringSystem.CautionFor(unit) is string caution && !cautions.Contains(caution))
                cautions.Add(caution);
        }
        return [.. cautions];
    }

    private static Span<double> RoomFor(ReadOnlySpan<double> from, Span<double> to, string name) => to.Length >= from.Length
        ? to[..from.Length]
        : throw new ArgumentException(string.Create(global::System.Globalization.CultureInfo.InvariantCulture,
            $"{name} has room for {to.Length} values; {from.Length} are needed."), name);

    // The same memory is read before it is written; memory that begins elsewhere in it would be read after.
    private static void RefuseShift(ReadOnlySpan<double> from, Span<double> to, string name)
    {
        if (from.Overlaps(to, out int offset) && offset != 0)
            throw new ArgumentException($"{name} overlaps the values it is made from, shifted; it may be the same memory or other memory.",
                name);
    }
}
