using System.Globalization;
using Confectio.Cakes;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Icings;

/// <summary>
/// An icing as a plan needs it: its name on the cake, its density when it is spread, and, where they are known, its formula, what of it is
/// whipped, and whether its eggs are to be whole. It never changes.
/// </summary>
public sealed class Icing
{
    private const double MostGrams = 1e9;

    private Icing(string name, Spread density, Formula? formula)
    {
        Name = name;
        GramsPerMillilitre = density;
        Formula = formula;
        PeakMillilitresPerGram = 1 / density.Low;
    }

    private Icing(Icing other)
        : this(other.Name, other.GramsPerMillilitre, other.Formula)
    {
        Whipped = other.Whipped;
        Rise = other.Rise;
        PeakMillilitresPerGram = other.PeakMillilitresPerGram;
        EggSize = other.EggSize;
        EggPart = other.EggPart;
    }

    /// <summary>The name by which the cake asks for it.</summary>
    public string Name { get; }

    /// <summary>The density as it is spread, g/mL.</summary>
    public Spread GramsPerMillilitre { get; }

    /// <summary>The formula; <see langword="null"/> where it is bought, or made elsewhere.</summary>
    public Formula? Formula { get; }

    /// <summary>What is whipped before the rest comes in; empty where nothing is.</summary>
    public IReadOnlyList<Ingredient> Whipped { get; private init; } = [];

    /// <summary>To how many times its volume that rises; 1 where nothing is whipped.</summary>
    public Spread Rise { get; private init; } = Spread.Exactly(1);

    /// <summary>The size of the eggs that are to be whole; <see langword="null"/> where eggs are weighed.</summary>
    public EggSize? EggSize { get; private init; }

    /// <summary>The part of those eggs that the formula takes.</summary>
    public EggPart EggPart { get; private init; }

    /// <summary>An icing.</summary>
    /// <param name="name">The name by which the cake asks for it, from 1 to 100 characters.</param>
    /// <param name="gramsPerMillilitre">The density as it is spread, g/mL, from 0.05 to 2: see <see cref="IcingDensity"/>.</param>
    /// <param name="formula">The formula, where there is one.</param>
    /// <returns>The icing.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gramsPerMillilitre"/> is outside its range.</exception>
    public static Icing Of(string name, Spread gramsPerMillilitre, Formula? formula = null)
    {
        IcingName.Check(name);
        Guard.InRange(gramsPerMillilitre.Low, IcingDensity.Minimum, IcingDensity.Maximum, nameof(gramsPerMillilitre));
        Guard.InRange(gramsPerMillilitre.High, IcingDensity.Minimum, IcingDensity.Maximum, nameof(gramsPerMillilitre));
        return new Icing(name, gramsPerMillilitre, formula);
    }

    /// <summary>An icing whose density was weighed, and no spread stated.</summary>
    /// <inheritdoc cref="Of(string, Spread, Formula?)"/>
    public static Icing Of(string name, double gramsPerMillilitre, Formula? formula = null) =>
        Of(name, Spread.Exactly(Guard.InRange(gramsPerMillilitre, IcingDensity.Minimum, IcingDensity.Maximum)), formula);

    /// <summary>The icing, of which some is whipped first and the rest comes after, such as the butter of a meringue buttercream.</summary>
    /// <param name="rise">To how many times its volume it rises, from 1 to 20; whites alone to 6 to 8 times (McKee).</param>
    /// <param name="whipped">What is whipped. Of a powder that is made up with water, the water too.</param>
    /// <returns>The icing.</returns>
    /// <exception cref="ArgumentNullException">An ingredient is null.</exception>
    /// <exception cref="ArgumentException">
    /// There is no formula, or it has none of an ingredient, or none is named, or the density of one is not known.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rise"/> is outside its range.</exception>
    public Icing Whipping(Spread rise, params IEnumerable<Ingredient> whipped)
    {
        Guard.InRange(rise.Low, 1, 20, nameof(rise));
        Guard.InRange(rise.High, 1, 20, nameof(rise));
        Ingredient[] all = [.. Guard.NotNull(whipped).Select(one => Guard.NotNull(one, nameof(whipped))).Distinct()];
        if (all.Length == 0)
            throw new ArgumentException($"{nameof(whipped)} names no ingredient.", nameof(whipped));
        foreach (Ingredient ingredient in all)
        {
            if (Formula?.GramsOf(ingredient) is null or 0)
                throw new ArgumentException($"{nameof(whipped)} has {ingredient.Name}, and "
                    + $"{(Formula is null ? $"{Name} has no formula" : $"the formula of {Name} has none of it")}.", nameof(whipped));
        }
        all = [.. all.Select(Formula!.Own)];
        double liquid = all.Sum(ingredient => Formula.GramsOf(ingredient)!.Value
            / ingredient.NearestDensity(ingredient.DefaultPacking).GramsPerMillilitre.Likely);
        return new Icing(this) { Whipped = all, Rise = rise, PeakMillilitresPerGram = Math.Max(1 / GramsPerMillilitre.Low,
            liquid * rise.High / Formula!.TotalGrams) };
    }

    /// <summary>The icing with whole eggs in every batch, so that none is weighed out.</summary>
    /// <param name="size">The size of the eggs.</param>
    /// <param name="part">The part that the formula takes: whites, yolks or whole eggs.</param>
    /// <returns>The icing.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="size"/> is null.</exception>
    /// <exception cref="ArgumentException">
    /// There is no formula, or it has none of that part, or so little that a batch with one egg is above 1e9 g, or the part is the shell.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="part"/> is not a defined value.</exception>
    public Icing InWholeEggs(EggSize size, EggPart part = EggPart.White)
    {
        Guard.NotNull(size);
        double egg = Formula is null ? 0 : GramsOfFresh(Formula, part);
        if (egg <= 0)
            throw new ArgumentException($"{nameof(part)} was {part}, and "
                + $"{(Formula is null ? $"{Name} has no formula" : $"the formula of {Name} has no {EggForms.FreshId(part)}")}.",
                    nameof(part));
        // With a trace of egg a batch of one egg would be larger than any formula.
        return size.Grams(part).Likely * Formula!.TotalGrams / egg <= MostGrams ? new Icing(this) { EggSize = size, EggPart = part }
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(part)} was {part}, of which the formula of "
                + $"{Name} has {egg:R} g: a batch with one egg would be more than {MostGrams:R} g."), nameof(part));
    }

    /// <summary>What so much of it covers.</summary>
    /// <param name="grams">What there is, g, from 1 to 1e9.</param>
    /// <param name="wasteFraction">The share of it that stays in bowls and bags, from 0 to 0.9.</param>
    /// <returns>What it covers. Worked number: 1400 g at 0.85 g/mL with a waste of 0.08 put 1515 mL on a cake.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public IcingCover CoverFrom(double grams, double wasteFraction = 0) =>
        CoverOfAny(Guard.InRange(grams, 1, 1e9), Guard.InRange(wasteFraction, 0, 0.9));

    /// <summary>The largest factor by which its formula fits a bowl, at the highest it stands on the way: what is whipped, or the whole at its lightest.</summary>
    /// <param name="bowl">The bowl.</param>
    /// <returns>The factor; below 1 where the formula as it is does not fit. Worked number: 788.6 g at 0.5 g/mL fill two thirds of a bowl of 5 US quarts twice: 2.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="bowl"/> is null.</exception>
    /// <exception cref="InvalidOperationException">There is no formula.</exception>
    public double LargestFactorIn(MixerBowl bowl)
    {
        Guard.NotNull(bowl);
        return Formula is null ? throw new InvalidOperationException($"{Name} has no formula to scale.") : bowl.UsableMillilitres / (PeakMillilitresPerGram * Formula.TotalGrams);
    }

    /// <summary>The name and the density, such as <c>meringue buttercream, 0.85 g/mL</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}, {GramsPerMillilitre.Likely:0.###} g/mL");

    /// <summary>
    /// The largest volume that a gram of it takes up in the bowl on the way, mL: what is whipped at its highest, or the whole at its
    /// lightest.
    /// </summary>
    internal double PeakMillilitresPerGram { get; private init; }

    /// <summary>What a mass covers that was worked out, however small or large.</summary>
    internal IcingCover CoverOfAny(double grams, double wasteFraction) =>
        IcingCover.OfAny(grams * (1 - wasteFraction) / GramsPerMillilitre.Likely);

    /// <summary>Grams of icing to an egg.</summary>
    internal double GramsPerEgg => EggSize!.Grams(EggPart).Likely * Formula!.TotalGrams / GramsOfFresh(Formula, EggPart);

    // An egg that is cracked, by its id: whatever table the formula was made with.
    private static double GramsOfFresh(Formula formula, EggPart part)
    {
        string id = EggForms.FreshId(part);
        return formula.Lines.Where(line => line.Ingredient.Id == id).Sum(line => line.Grams.Likely);
    }
}
