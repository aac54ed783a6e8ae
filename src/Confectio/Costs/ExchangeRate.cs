using System.Globalization;

namespace Confectio.Costs;

/// <summary>What one of a currency is worth in another, told by whoever knows: none is built in.</summary>
public sealed class ExchangeRate
{
    private ExchangeRate(Currency from, Currency to, decimal rate)
    {
        From = from;
        To = to;
        Rate = rate;
    }

    /// <summary>The currency that is changed.</summary>
    public Currency From { get; }

    /// <summary>The currency that it is changed into.</summary>
    public Currency To { get; }

    /// <summary>How many of <see cref="To"/> one of <see cref="From"/> is.</summary>
    public decimal Rate { get; }

    /// <summary>A rate.</summary>
    /// <param name="from">The currency that is changed.</param>
    /// <param name="to">The currency that it is changed into.</param>
    /// <param name="rate">How many of the second one of the first is, from 0.000001 to 1000000.</param>
    /// <returns>The rate. It is used in this direction only: a bank does not change back at one over it.</returns>
    /// <exception cref="ArgumentNullException">A currency is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is outside its range.</exception>
    /// <exception cref="ArgumentException">The two currencies are one.</exception>
    public static ExchangeRate Of(Currency from, Currency to, decimal rate)
    {
        Guard.NotNull(from);
        Guard.NotNull(to);
        if (rate is < 0.000001m or > 1_000_000)
            throw new ArgumentOutOfRangeException(nameof(rate), rate, string.Create(CultureInfo.InvariantCulture, $"{nameof(rate)} was {rate}; it must be from 0.000001 to 1000000."));
        return from != to ? new ExchangeRate(from, to, rate) : throw new ArgumentException($"{nameof(to)} was {to}, and so is {nameof(from)}.", nameof(to));
    }

    /// <summary>The rate, such as <c>1 GBP = 1.17 EUR</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"1 {From} = {Rate} {To}");
}
