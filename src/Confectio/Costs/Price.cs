using System.Globalization;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Costs;

/// <summary>What a pack of an ingredient costs, when it did, and how much of it goes to waste before it is used.</summary>
/// <remarks>
/// A pack is a mass, a volume (through the density of the ingredient) or so many pieces (through what one weighs): its grams are as sure as those are. With P the
/// price, W the grams of the pack and w the share that is waste, a gram costs P/((1 − w)·W). Worked number: a pack of 1 kg at 2.40 with 4 % waste: 2.50 for a
/// kilogram that is used.
/// </remarks>
public sealed class Price
{
    /// <summary>The most that a pack may cost, in any currency.</summary>
    public static decimal MaximumAmount => MostAmount;

    /// <summary>The largest share that may be waste.</summary>
    public const double MaximumWaste = 0.95;

    internal const decimal MostAmount = 1_000_000_000;

    // A gram of saffron is sold; a milligram is a pack of nothing.
    private const double LeastGrams = 0.01, MostGrams = 1e9;

    private Price(Ingredient ingredient, decimal amount, Currency currency, Amount pack, MeasuringSystem system, ConvertedMass mass, DateOnly? date, double waste)
    {
        Ingredient = ingredient;
        Amount = amount;
        Currency = currency;
        Pack = pack;
        MeasuringSystem = system;
        Mass = mass;
        Date = date;
        WasteFraction = waste;
    }

    /// <summary>The ingredient.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>What the pack costs, from 0: what is free has a price of 0.</summary>
    public decimal Amount { get; }

    /// <summary>In which currency.</summary>
    public Currency Currency { get; }

    /// <summary>The pack as it is sold: <c>2.5 kg</c>, <c>1 L</c>, <c>12 large</c>.</summary>
    public Amount Pack { get; }

    /// <summary>Whose litres, pints and ounces the pack is in.</summary>
    public MeasuringSystem MeasuringSystem { get; }

    /// <summary>When it cost that; <see langword="null"/> where nobody says.</summary>
    public DateOnly? Date { get; }

    /// <summary>The share of the pack that is trimmed, peeled, spilt or left in it, from 0 to 0.95.</summary>
    public double WasteFraction { get; }

    /// <summary>The grams of a pack, as sure as the density or the weight of a piece is; of a pack sold by mass exact.</summary>
    public Spread PackGrams => Mass.Grams;

    /// <summary>The grams of a pack that are used.</summary>
    public Spread UsableGrams => Mass.Grams * (1 - WasteFraction);

    /// <summary>What a kilogram that is used costs: the likely figure.</summary>
    public decimal PerKilogram => Of(1000, 1);

    internal ConvertedMass Mass { get; }

    /// <summary>The price of a pack.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="amount">What it costs, from 0 to 1e9.</param>
    /// <param name="currency">In which currency.</param>
    /// <param name="pack">A mass, a volume, or so many pieces of it, from 0.01 g to 1e9 g; a range is none.</param>
    /// <param name="system">Whose litres, pints and ounces.</param>
    /// <param name="date">When it cost that.</param>
    /// <param name="wasteFraction">The share of the pack that is not used, from 0 to 0.95.</param>
    /// <returns>The price.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <exception cref="ArgumentException">The pack is a range, or nobody knows what this volume or this piece of the ingredient weighs.</exception>
    public static Price Of(Ingredient ingredient, decimal amount, Currency currency, Amount pack, MeasuringSystem system, DateOnly? date = null, double wasteFraction = 0)
    {
        Guard.NotNull(ingredient);
        Guard.NotNull(currency);
        Guard.NotNull(system);
        if (amount is < 0 or > MostAmount)
            throw new ArgumentOutOfRangeException(nameof(amount), amount, string.Create(CultureInfo.InvariantCulture, $"{nameof(amount)} was {amount}; it must be from 0 to {MaximumAmount}."));
        Guard.InRange(wasteFraction, 0, MaximumWaste);
        if (pack.IsRange)
            throw new ArgumentException($"{nameof(pack)} was {pack}; one amount and no range is expected.", nameof(pack));
        ConvertedMass mass;
        try
        {
            mass = FormulaMass(ingredient, pack, system);
        }
        catch (ArgumentException e)
        {
            throw new ArgumentException($"{nameof(pack)} was {pack}: {Guard.ReasonOf(e)}", nameof(pack), e);
        }
        return mass.Grams.Low >= LeastGrams && mass.Grams.High <= MostGrams
            ? new Price(ingredient, amount, currency, pack, system, mass, date, wasteFraction)
            : throw new ArgumentOutOfRangeException(nameof(pack), pack, string.Create(CultureInfo.InvariantCulture, $"{nameof(pack)} was {pack}; it must be from {LeastGrams:R} to {MostGrams:R} g."));
    }

    /// <summary>One line: <c>unsalted butter: EUR 6.95 for 1 kg (2026-11-02)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{VisibleText.Of(Ingredient.Name)}: {Currency.Write(Amount)} for {Pack}")
        + (WasteFraction > 0 ? string.Create(CultureInfo.InvariantCulture, $", {100 * WasteFraction:0.##} % waste") : "")
        + (Date is DateOnly date ? $" ({date.ToString("O", CultureInfo.InvariantCulture)})" : ", undated");

    /// <summary>What so many grams that are used cost, at so much of another currency for one of this.</summary>
    internal decimal Of(double grams, decimal rate) => Amount * rate * (decimal)grams / ((decimal)Mass.Grams.Likely * (1 - (decimal)WasteFraction));

    private static ConvertedMass FormulaMass(Ingredient ingredient, Amount pack, MeasuringSystem system)
    {
        if (pack.IsVolume)
            return Conversion.Of(ingredient, system).ToMass(pack);
        if (pack.IsPiece)
            return Conversion.MassOfPieces(ingredient, pack, null);
        double grams = pack.Grams(system);
        return ConvertedMass.Exactly(grams);
    }
}
