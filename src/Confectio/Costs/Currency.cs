using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Costs;

/// <summary>A currency by its three letters (ISO 4217), with how many digits its smallest coin has: two of most, none of the yen, three of some dinars.</summary>
/// <remarks>
/// Amounts are <see cref="decimal"/> and are never rounded but where they are printed: to the smallest unit, half to even. The codes and digits are recalled
/// (table currencies.csv).
/// </remarks>
public sealed class Currency
{
    private static readonly Currency[] s_all = ReadBuiltIn();

    // Beyond so many digits a quotient of decimals is off, and a tie would be none.
    private const int SafeDigits = 10;

    private Currency(string code, int minorDigits, Provenance provenance)
    {
        Code = code;
        MinorDigits = minorDigits;
        Provenance = provenance;
    }

    /// <summary>Every currency there is a row of.</summary>
    public static IReadOnlyList<Currency> All => s_all;

    /// <summary>The code, such as <c>EUR</c>.</summary>
    public string Code { get; }

    /// <summary>How many digits stand behind the point: 2 of the euro, 0 of the yen, 3 of the Kuwaiti dinar.</summary>
    public int MinorDigits { get; }

    /// <summary>Where the digits come from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The smallest amount that can be paid, such as 0.01.</summary>
    internal decimal Unit => new(1, 0, 0, false, (byte)MinorDigits);

    /// <summary>The currency of a code.</summary>
    /// <param name="code">The three letters; case does not matter. A sign such as $ is no code: it is that of twenty currencies.</param>
    /// <returns>The currency.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="code"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such currency.</exception>
    public static Currency Get(string code) => TryGet(code, out Currency? currency) ? currency
        : throw new ArgumentException($"{nameof(code)} was {Excerpt.Of(code)}; {Expected}.", nameof(code));

    /// <summary>The currency of a code, where there is one.</summary>
    /// <param name="code">The three letters.</param>
    /// <param name="currency">The currency, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="code"/> is null.</exception>
    public static bool TryGet(string code, [NotNullWhen(true)] out Currency? currency) =>
        (currency = Keyed.Find(s_all, code, known => known.Code)) is not null;

    /// <summary>An amount rounded to what can be paid, half to even.</summary>
    /// <param name="amount">The amount.</param>
    /// <returns>The amount. Worked numbers: 2.345 euros are 2.34, 2.355 are 2.36, and 2.5 yen are 2.</returns>
    public decimal Round(decimal amount) => Math.Round(Math.Round(amount, SafeDigits, MidpointRounding.ToEven), MinorDigits, MidpointRounding.ToEven);

    /// <summary>An amount as it is printed, rounded to what can be paid: <c>EUR 12.30</c>.</summary>
    /// <param name="amount">The amount.</param>
    /// <returns>The code and the amount, with a decimal point whatever the culture.</returns>
    public string Write(decimal amount) => $"{Code} {Digits(amount)}";

    /// <summary>The code.</summary>
    public override string ToString() => Code;

    internal static string Expected => "a code of ISO 4217 such as EUR, GBP or USD is expected";

    /// <summary>The amount without the code.</summary>
    internal string Digits(decimal amount) => Round(amount).ToString("F" + MinorDigits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static Currency[] ReadBuiltIn()
    {
        List<Currency> all = [];
        EmbeddedTable.Read("currencies.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            all.Add(new Currency(fields.Required("code"), (int)fields.RequiredNumber("minor_digits", 0, 4), fields.Provenance("source", "kind", fields.Word("locator"), "")));
        });
        return [.. all];
    }
}
