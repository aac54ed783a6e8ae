using System.Globalization;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Eggs;

/// <summary>So many eggs of a size, and what their whites, yolks or both weigh and fill; or how many eggs a mass or a cup takes.</summary>
public sealed class EggCount
{
    private const double MostEggs = 1e9, MostGrams = 1e12;

    private EggCount(EggSize size, Spread eggs)
    {
        Size = size;
        Eggs = eggs;
    }

    /// <summary>The size.</summary>
    public EggSize Size { get; }

    /// <summary>
    /// How many eggs: exact where they were counted, and otherwise what the spread of the egg leaves open. A number that was worked out
    /// from a mass need not be whole.
    /// </summary>
    public Spread Eggs { get; }

    /// <summary>How many eggs to break: the likely number rounded up, a hair above a whole number forgiven.</summary>
    public double EggsToBreak => Math.Ceiling(Eggs.Likely - 1e-9 * Math.Max(1, Eggs.Likely));

    /// <summary>Eggs that are counted.</summary>
    /// <param name="eggs">How many, from 0 to 1e9; a half egg is a number too.</param>
    /// <param name="size">Their size.</param>
    /// <exception cref="ArgumentNullException"><paramref name="size"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="eggs"/> is outside its range.</exception>
    public static EggCount Of(double eggs, EggSize size)
    {
        Guard.InRange(eggs, 0, MostEggs);
        return new EggCount(Guard.NotNull(size), Spread.Exactly(eggs));
    }

    /// <summary>The eggs that a mass of a part takes.</summary>
    /// <param name="grams">The mass, g, from 0 to 1e9.</param>
    /// <param name="part">The part.</param>
    /// <param name="size">The size of the eggs.</param>
    /// <returns>The count. Worked number: 250 g of whites take 7.58 US large eggs, 6.2 to 7.7.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="size"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static EggCount FromGrams(double grams, EggPart part, EggSize size)
    {
        Guard.InRange(grams, 0, MostEggs);
        return From(Spread.Exactly(grams), part, size);
    }

    /// <summary>The eggs that a measure of a part takes.</summary>
    /// <param name="amount">A volume, such as <c>1 cup</c>, or a mass.</param>
    /// <param name="form">The egg that is measured, such as <see cref="EggForms.FreshWhite"/>: its part counts, and its density.</param>
    /// <param name="size">The size of the eggs.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <returns>The count. Worked number: 1 US cup of whites takes 7.4 US large eggs.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">
    /// The form is dry, the amount counts pieces, the system lacks the unit, or it is above 1e9 g.
    /// </exception>
    public static EggCount FromAmount(Amount amount, EggForm form, EggSize size, MeasuringSystem system)
    {
        Conversion conversion = ConversionOf(form, system);
        Guard.NotNull(size);
        if (amount.IsPiece)
            throw new ArgumentException($"{nameof(amount)} was {amount}; a volume or a mass is expected.", nameof(amount));
        ConvertedMass mass = conversion.ToMass(amount);
        return mass.Grams.High <= MostEggs ? From(mass.Grams, form.Part, size)
            : throw new ArgumentException($"{nameof(amount)} was {amount}; it must be at most 1E+09 g.", nameof(amount));
    }

    /// <summary>What a part of the eggs weighs.</summary>
    /// <param name="part">The part.</param>
    /// <returns>Grams. Worked number: the whites of 6 US large eggs, 198 g, from 193.9 to 242.6.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="part"/> is not a defined value.</exception>
    public Spread Grams(EggPart part) => Size.Grams(part) * Eggs.Likely;

    /// <summary>What a part of the eggs fills.</summary>
    /// <param name="form">The egg that is measured, such as <see cref="EggForms.FreshWhite"/>: its part counts, and its density.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <returns>Millilitres, the spread of the eggs and of the density together.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="system"/> is null.</exception>
    /// <exception cref="ArgumentException">The form is dry.</exception>
    public Spread Millilitres(EggForm form, MeasuringSystem system)
    {
        Conversion conversion = ConversionOf(form, system);
        Spread grams = Grams(form.Part);
        Spread Volume(double mass) => conversion.ToVolume(Math.Min(mass, MostGrams)).Millilitres;
        Spread likely = Volume(grams.Likely);
        return new Spread(Volume(grams.Low).Low, likely.Likely, Volume(grams.High).High, Spread.Worse(grams.Basis, likely.Basis));
    }

    /// <summary>What a part of the eggs fills, in cups.</summary>
    /// <param name="form">The egg that is measured, such as <see cref="EggForms.FreshWhite"/>: its part counts, and its density.</param>
    /// <param name="system">Whose cups.</param>
    /// <returns>Cups. Worked number: the whites of 6 US large eggs are 0.814 US cups.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="system"/> is null.</exception>
    /// <exception cref="ArgumentException">The form is dry.</exception>
    public Spread Cups(EggForm form, MeasuringSystem system) => Millilitres(form, system) / system.MillilitresPer(KitchenUnit.Cup);

    /// <summary>The fewest cups and spoons that a part of the eggs comes near.</summary>
    /// <param name="form">The egg that is measured, such as <see cref="EggForms.FreshWhite"/>: its part counts, and its density.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <param name="allowedError">The largest error allowed, as a fraction from 0 to 0.5.</param>
    /// <returns>The measures; <see langword="null"/> where there is nothing to measure or no filling comes near enough.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="system"/> is null.</exception>
    /// <exception cref="ArgumentException">The form is dry.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public PracticalMeasure? InMeasures(EggForm form, MeasuringSystem system, double allowedError = 0.02)
    {
        Guard.InRange(allowedError, 0, 0.5);
        return EggMeasures.Find(Millilitres(form, system).Likely, system, allowedError);
    }

    /// <summary>The count and the size, such as <c>6 US large eggs</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Eggs.Likely:0.##} {Size} {(Eggs.Likely == 1 ? "egg" : "eggs")}");

    private static Conversion ConversionOf(EggForm form, MeasuringSystem system) => Guard.NotNull(form).IsDry
        ? throw new ArgumentException($"{nameof(form)} '{form.Name}' is dry; what comes out of a shell is not.", nameof(form))
        : Conversion.Of(form.Ingredient, Guard.NotNull(system));

    private static EggCount From(Spread grams, EggPart part, EggSize size)
    {
        Spread one = Guard.NotNull(size).Grams(part);
        return new EggCount(size, new Spread(grams.Low / one.High, grams.Likely / one.Likely, grams.High / one.Low,
            Spread.Worse(grams.Basis, one.Basis)));
    }
}
