using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Sugars;
using Confectio.Text;

namespace Confectio.Textures;

/// <summary>
/// How stiff the water of an icing makes it, and what takes it elsewhere. Grains of sugar in a syrup flow the more easily the more syrup there is;
/// of a buttercream the fat counts besides, and at its working temperature only is this a guide.
/// </summary>
public sealed class IcingConsistency
{
    // The volumes of the parts are of several equations; they part by some per cent.
    private const double VolumeError = 0.05;

    private IcingConsistency(Formula formula, ConsistencySort sort, double water, double sugars)
    {
        Formula = formula;
        Sort = sort;
        WaterGrams = water;
        SugarGrams = sugars;
        WaterPhase = WaterPhaseOf(formula);
    }

    /// <summary>The icing.</summary>
    public Formula Formula { get; }

    /// <summary>The sort of icing it is judged as.</summary>
    public ConsistencySort Sort { get; }

    /// <summary>Grams of water to 100 g of sugars: what the bands are in.</summary>
    public double WaterPer100Sugars => 100 * WaterGrams / SugarGrams;

    /// <summary>
    /// Water and all that dissolves in it at 20 °C, as a share of the volume without air; the grains of sugar that stay are no part of it.
    /// <see langword="null"/> where no solution is known.
    /// </summary>
    public Spread? WaterPhase { get; }

    // The ends of the bands have no more than two digits.
    /// <summary>The band it is in; <see langword="null"/> where it is stiffer or thinner than all of them.</summary>
    public ConsistencyRange? Band => Sort.Bands.FirstOrDefault(band => Math.Round(WaterPer100Sugars, 1) >= band.Low && Math.Round(WaterPer100Sugars, 1) <= band.High);

    /// <summary>The band in words, or how it is outside of them.</summary>
    public string BandText => Band is ConsistencyRange band ? EnumWords.Of(band.Band, ' ')
        : WaterPer100Sugars < Sort.Bands[0].Low ? $"drier than {EnumWords.Of(Sort.Bands[0].Band, ' ')}"
        : $"thinner than {EnumWords.Of(Sort.Bands[^1].Band, ' ')}";

    private double WaterGrams { get; }

    private double SugarGrams { get; }

    /// <summary>Judges an icing by its water.</summary>
    /// <param name="formula">The icing, with sugars and water.</param>
    /// <param name="sort">The sort of icing.</param>
    /// <returns>
    /// The consistency. Worked number: 454 g of icing sugar and 80 g of egg white (70.1 g of water) are at 16 g to 100 g of sugars: stiff royal
    /// icing.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The formula has no sugars or no water: its consistency is not one of these.</exception>
    public static IcingConsistency Of(Formula formula, ConsistencySort sort)
    {
        Guard.NotNull(sort);
        Balance balance = Balance.Of(Guard.NotNull(formula));
        double water = balance[FormulaPart.Water].Grams.Likely, sugars = balance[FormulaPart.Sugars].Grams.Likely;
        return water > 0 && sugars > 0 ? new IcingConsistency(formula, sort, water, sugars)
            : throw new ArgumentException($"{nameof(formula)} has {(water > 0 ? "no sugars" : "no water")}; the consistency of an icing is of its sugars and its "
                + "water.", nameof(formula));
    }

    /// <summary>What takes it to a band: liquid, or where it is too thin already, icing sugar.</summary>
    /// <param name="band">The band.</param>
    /// <param name="liquid">What is stirred in, with water in it.</param>
    /// <param name="sugar">What thickens it, with sugars in it.</param>
    /// <returns>The step; its range is from the nearer end of the band to its farther one, its likely value the middle.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The sort has no such band, or the liquid or the sugar cannot do it.</exception>
    public ConsistencyStep To(ConsistencyBand band, Ingredient liquid, Ingredient sugar)
    {
        Guard.Defined(band);
        ConsistencyRange range = Sort.Bands.FirstOrDefault(known => known.Band == band)
            ?? throw new ArgumentException($"{nameof(band)}: {Sort} has no band {EnumWords.Of(band, ' ')}; it has {string.Join(", ", Sort.Bands.Select(known => EnumWords.Of(known.Band, ' ')))}.", nameof(band));
        return ToWater(range.Low, (range.Low + range.High) / 2, range.High, liquid, sugar);
    }

    /// <summary>What gives it the water of another icing of the same sort.</summary>
    /// <param name="other">The other icing.</param>
    /// <param name="liquid">What is stirred in, with water in it.</param>
    /// <param name="sugar">What thickens it, with sugars in it.</param>
    /// <returns>The step.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The other is of another sort, or the liquid or the sugar cannot do it.</exception>
    public ConsistencyStep ToMatch(IcingConsistency other, Ingredient liquid, Ingredient sugar)
    {
        if (Guard.NotNull(other).Sort != Sort)
            throw new ArgumentException($"{nameof(other)} is of the sort {other.Sort} and this is {Sort}; only icings of one sort compare.", nameof(other));
        return ToWater(other.WaterPer100Sugars, other.WaterPer100Sugars, other.WaterPer100Sugars, liquid, sugar);
    }

    /// <summary>What gives it so much water.</summary>
    /// <param name="waterPer100Sugars">Grams of water to 100 g of sugars, from 1 to 100.</param>
    /// <param name="liquid">What is stirred in, with water in it.</param>
    /// <param name="sugar">What thickens it, with sugars in it.</param>
    /// <returns>The step.</returns>
    /// <exception cref="ArgumentNullException">An ingredient is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="waterPer100Sugars"/> is outside its range.</exception>
    /// <exception cref="ArgumentException">The liquid or the sugar cannot do it.</exception>
    public ConsistencyStep ToWater(double waterPer100Sugars, Ingredient liquid, Ingredient sugar)
    {
        double water = Guard.InRange(waterPer100Sugars, 1, 100);
        return ToWater(water, water, water, liquid, sugar);
    }

    /// <summary>The band, the water and the sort.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Sort}, {BandText}: {WaterPer100Sugars:0.0} g of water to 100 g of sugars");

    private ConsistencyStep ToWater(double low, double likely, double high, Ingredient liquid, Ingredient sugar)
    {
        bool isThin = WaterPer100Sugars > likely;
        Ingredient stirredIn = isThin ? Guard.NotNull(sugar) : Guard.NotNull(liquid);
        double water = FormulaPart.Water.FractionIn(stirredIn), sugars = FormulaPart.Sugars.FractionIn(stirredIn);
        double[] grams = [.. new[] { low, likely, high }.Select(Needed)];
        Array.Sort(grams);
        return new ConsistencyStep(stirredIn, isThin, new Spread(grams[0], grams[1], grams[2], SpreadBasis.Judged), Formula.TotalGrams);

        // (water + w g) / (sugars + s g) = target / 100, and nothing where it is there already.
        double Needed(double target)
        {
            double share = target / 100, need = share * SugarGrams - WaterGrams, gain = water - share * sugars;
            if (need > 0 == isThin && need != 0)
                return 0;
            return need == 0 ? 0 : need / gain is double g and >= 0 && double.IsFinite(g) ? g
                : throw new ArgumentException($"{stirredIn.Name} has {100 * water:0.#} g of water and {100 * sugars:0.#} g of sugars in 100 g; it cannot make this icing "
                    + $"{(isThin ? "stiffer" : "thinner")}.", isThin ? nameof(sugar) : nameof(liquid));
        }
    }

    /// <summary>Water and what dissolves in it at 20 °C as a share of the volume without air; null where no solution is known.</summary>
    internal static Spread? WaterPhaseOf(Formula formula)
    {
        const double celsius = 20;
        double water = Formula.WaterOf(formula.Lines) - formula.BoiledOffGrams;
        if (water <= 0)
            return null;
        try
        {
            SugarSolution all = SugarSolution.Of(formula);
            Crystallisation crystals = Crystallisation.Of(all, celsius);
            double phaseGrams = water / all.Water * (1 - crystals.CrystalFraction);
            double phase = phaseGrams / crystals.Equilibrium.GramsPerMillilitre(celsius), whole = formula.TotalGrams * 1000 / ThermalMatter.Of(formula).Volumes(celsius).Density;
            double share = Math.Min(1, phase / whole);
            return new Spread(share * (1 - VolumeError), share, Math.Min(1, share * (1 + VolumeError)), SpreadBasis.Judged);
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException)
        {
            return null;
        }
    }
}
