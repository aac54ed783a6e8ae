using System.Globalization;
using Confectio.Text;

namespace Confectio.Costs;

/// <summary>What a cost is shared out on, what is lost on the way, and by when prices are old.</summary>
public sealed class BatchCostOptions
{
    private static readonly ExchangeRate[] s_none = [];

    internal static BatchCostOptions Default { get; } = new();

    /// <summary>How many portions it makes, above 0 to 1e9; <see langword="null"/> where they are not counted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its range.</exception>
    public double? Portions { get; init => field = Above0(value, 1e9, nameof(Portions)); }

    /// <summary>What a portion weighs, g, above 0 to 1e9: instead of <see cref="Portions"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its range.</exception>
    public double? PortionGrams { get; init => field = Above0(value, 1e9, nameof(PortionGrams)); }

    /// <summary>For how many cakes it is; <see langword="null"/> where it is for none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside 1 to 1e6.</exception>
    public int? Cakes { get; init => field = value is int cakes ? Guard.InRange(cakes, 1, 1_000_000, nameof(Cakes)) : null; }

    /// <summary>
    /// The share of what is made that is not served: what stays in bowls and bags, what is cut off. From 0 to 0.95. It costs what the rest does, so that portions and
    /// 100 g cost more.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its range.</exception>
    public double LossFraction { get; init => field = Guard.InRange(value, 0, Price.MaximumWaste, nameof(LossFraction)); }

    /// <summary>The currency of the cost; <see langword="null"/> for that of the prices, where they have one.</summary>
    public Currency? Currency { get; init; }

    /// <summary>The rates at which prices of another currency are changed into it; none is built in.</summary>
    /// <exception cref="ArgumentNullException">The list or a rate is null.</exception>
    public IReadOnlyList<ExchangeRate> Rates { get; init => field = [.. Guard.NotNull(value, nameof(Rates)).Select(rate => Guard.NotNull(rate, nameof(Rates)))]; } = s_none;

    /// <summary>The day of the cost; without one nothing is said of how old a price is. There is no clock in here.</summary>
    public DateOnly? AsOf { get; init; }

    /// <summary>After how many days a price is told as old, from 1 to 36500. 90 is a judgement of ours.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its range.</exception>
    public int OldAfterDays { get; init => field = Guard.InRange(value, 1, 36_500, nameof(OldAfterDays)); } = 90;

    /// <summary>The choices that were made, such as <c>12 portions, 5 % lost</c>.</summary>
    public override string ToString()
    {
        List<string> said = [];
        if (Portions is double portions)
            said.Add(string.Create(CultureInfo.InvariantCulture, $"{portions:0.##} portions"));
        if (PortionGrams is double grams)
            said.Add(string.Create(CultureInfo.InvariantCulture, $"portions of {grams:0.##} g"));
        if (Cakes is int cakes)
            said.Add(string.Create(CultureInfo.InvariantCulture, $"{cakes} {(cakes == 1 ? "cake" : "cakes")}"));
        said.Add(string.Create(CultureInfo.InvariantCulture, $"{100 * LossFraction:0.##} % lost"));
        return string.Join(", ", said);
    }

    private static double? Above0(double? value, double most, string name) => value is double told ? Guard.InRange(told, Guard.Trace, most, name) : null;
}
