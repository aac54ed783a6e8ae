using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Formulas;

/// <summary>What a formula is made of when it is done: water, fat, sugars and the rest, each with its spread, and the energy.</summary>
/// <remarks>
/// The grams of a part are G = Σ xᵢ·cᵢ − w·b and its share is F = G/M with M = Σ xᵢ − b: x is the mass of an ingredient, c the fraction of
/// the part in it (<see cref="FormulaPart.FractionIn"/>), b the water that boils off and w
/// <see cref="FormulaPart.FractionOfBoiledOffWater"/>. The spread is that of JCGM 100:2008 (GUM), 5.1.2, with independent inputs: u²(F) = Σ
/// (xᵢ/M)²·u²(cᵢ) + Σ ((cᵢ − F)/M)²·u²(xᵢ) and u²(G) = Σ xᵢ²·u²(cᵢ) + Σ cᵢ²·u²(xᵢ). u(c) is how far the food may be from its printed
/// composition (<see cref="CompositionSpread"/>). The lines of one ingredient are joined first: it is the same butter, so its errors add up
/// in full. u(x) is that of a line measured in cups, spoons or pieces; lines of one density share its error (<see cref="MassTotal"/>), and
/// where that is not the same both ways, 2u(x) is the way from likely to low on the one side and to high on the other, so that a line alone
/// reads here as it reads by itself. A mass that is weighed is exact, because it is a decision, and so is the loss. Low and high are likely
/// ∓ 2u, cut at 0 and, for a share, at 1. Worked number: 500 g of unsalted butter (fat 81.11 %, u = 0.9445 %) and 500 g of granulated
/// sugar, weighed: fat 405.55 g, 40.56 % with u = 0.472 %, so 39.6 to 41.5 %.
/// </remarks>
public sealed class Balance
{
    private readonly Share[] _shares;
    private readonly double _boiledOff;
    private readonly SpreadBasis _basis;

    private Balance(Formula formula)
    {
        Formula = formula;
        _boiledOff = formula.BoiledOffGrams;
        _shares = [.. formula.Lines.GroupBy(line => line.Ingredient).Select(lines => new Share(lines.Key,
            lines.Sum(line => line.Grams.Likely), MassTotal.Reaches(lines.Select(line => line.Measured).OfType<ConvertedMass>())))];
        // How far a food may be from its printed composition is coverage; a measured line may be less sure.
        _basis = formula.Lines.Select(line => line.Grams.Basis).Append(SpreadBasis.Coverage).Aggregate(Spread.Worse);
        Items = [.. s_parts.Where(part => GramsOf(part) > 0).Select(part => this[part])];
        Kilojoules = _shares.Sum(share => share.Grams * share.Ingredient.Composition.KilojoulesPerGram);
        Kilocalories = _shares.Sum(share => share.Grams * share.Ingredient.Composition.KilocaloriesPerGram);
    }

    // The constituents in the order of a label, groups before their members, and the solids last.
    private static readonly FormulaPart[] s_parts =
    [
        FormulaPart.Water, FormulaPart.Fat, FormulaPart.MilkFat, FormulaPart.Sugars,
        FormulaPart.Of(Constituent.Sucrose), FormulaPart.Of(Constituent.Glucose), FormulaPart.Of(Constituent.Fructose),
        FormulaPart.Of(Constituent.Lactose), FormulaPart.Of(Constituent.Maltose), FormulaPart.Of(Constituent.OtherSugars),
        FormulaPart.Of(Constituent.HigherSaccharides), FormulaPart.Protein, FormulaPart.Starch, FormulaPart.Of(Constituent.Fibre),
        FormulaPart.Of(Constituent.Polyols), FormulaPart.Of(Constituent.Glycerol), FormulaPart.Alcohol, FormulaPart.Of(Constituent.Acids),
        FormulaPart.Salt, FormulaPart.Of(Constituent.OtherAsh), FormulaPart.Of(Constituent.Other), FormulaPart.Solids,
    ];

    /// <summary>The formula.</summary>
    public Formula Formula { get; }

    /// <summary>The total after what boils off, in grams.</summary>
    public double TotalGrams => Formula.TotalGrams;

    /// <summary>
    /// Water, fat, milk fat, sugars and each kind of them, higher saccharides, protein, starch, fibre, polyols, glycerol, alcohol,
    /// acids, salt, other ash, what the sources leave over, and solids: those of which there is some. Milk fat counts in fat, and the
    /// kinds of sugar in sugars.
    /// </summary>
    public IReadOnlyList<BalanceItem> Items { get; }

    /// <summary>The energy of the whole in kJ, by the label's factors (<see cref="Composition.KilojoulesPerGram"/>).</summary>
    public double Kilojoules { get; }

    /// <summary>The energy of the whole in kcal, by the label's factors (<see cref="Composition.KilocaloriesPerGram"/>).</summary>
    public double Kilocalories { get; }

    /// <summary>The energy of 100 g of the total in kJ.</summary>
    public double KilojoulesPer100Grams => 100 * Kilojoules / TotalGrams;

    /// <summary>The energy of 100 g of the total in kcal.</summary>
    public double KilocaloriesPer100Grams => 100 * Kilocalories / TotalGrams;

    /// <summary>How much there is of any part; 0 where there is none.</summary>
    /// <param name="part">The part.</param>
    /// <exception cref="ArgumentNullException"><paramref name="part"/> is null.</exception>
    public BalanceItem this[FormulaPart part]
    {
        get
        {
            double grams = GramsOf(Guard.NotNull(part)), fraction = grams / TotalGrams;
            Sum gramsDown = new(), gramsUp = new(), fractionDown = new(), fractionUp = new(), totalUp = new();
            foreach (Share share in _shares)
            {
                double has = part.FractionIn(share.Ingredient),
                    composition = 2 * share.Grams * part.StandardUncertaintyIn(share.Ingredient);
                MassTotal.Reach varies = new(composition, composition);
                gramsDown.Add(1, varies);
                gramsUp.Add(1, varies);
                fractionDown.Add(1, varies);
                fractionUp.Add(1, varies);
                // More of an ingredient that has less of the part than the whole has makes the share smaller.
                bool dilutes = has < fraction;
                gramsDown.Add(has, share.Down);
                gramsUp.Add(has, share.Up);
                fractionDown.Add(has - fraction, dilutes ? share.Up : share.Down);
                fractionUp.Add(has - fraction, dilutes ? share.Down : share.Up);
                totalUp.Add(1, share.Up);
            }
            return new BalanceItem(part, SpreadOf(grams, gramsDown.Reach, gramsUp.Reach,
                part.MaximumInAGram * (TotalGrams + totalUp.Reach)),
                SpreadOf(fraction, fractionDown.Reach / TotalGrams, fractionUp.Reach / TotalGrams, part.MaximumInAGram));
        }
    }

    /// <summary>The balance of a formula.</summary>
    /// <param name="formula">The formula.</param>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    public static Balance Of(Formula formula) => new(Guard.NotNull(formula));

    /// <summary>The parts in one line, such as <c>water: 89.8 g, 9.0 % (8.1 to 9.9); fat: 405.6 g, 40.6 % (39.6 to 41.5)</c>.</summary>
    public override string ToString() => string.Join("; ", Items);

    private double GramsOf(FormulaPart part)
    {
        double grams = -part.FractionOfBoiledOffWater * _boiledOff;
        foreach (Share share in _shares)
            grams += part.FractionIn(share.Ingredient) * share.Grams;
        return grams;
    }

    // A composition that adds up to a little more than 1, and the last bit of a sum, may reach past the limits.
    private Spread SpreadOf(double likely, double down, double up, double most)
    {
        double within = Math.Clamp(likely, 0, most);
        return new Spread(Math.Max(0, within - down), within, Math.Min(most, within + up), _basis);
    }

    /// <summary>A sum of independent ways in one direction: by squares, and never more than all of them in full.</summary>
    private struct Sum
    {
        private double _squares;
        private double _worst;

        public readonly double Reach => Math.Min(Math.Sqrt(_squares), _worst);

        public void Add(double factor, MassTotal.Reach reach)
        {
            _squares += factor * reach.BySquares * (factor * reach.BySquares);
            _worst += Math.Abs(factor) * reach.AtWorst;
        }
    }

    /// <summary>All of one ingredient.</summary>
    private readonly struct Share(Ingredient ingredient, double grams, (double Total, MassTotal.Reach Down, MassTotal.Reach Up) measured)
    {
        public Ingredient Ingredient { get; } = ingredient;

        public double Grams { get; } = grams;

        /// <summary>How far the mass may be below what was counted, and how far above.</summary>
        public MassTotal.Reach Down { get; } = measured.Down;

        public MassTotal.Reach Up { get; } = measured.Up;
    }
}
