using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;
using Confectio.Text;

namespace Confectio.Measures;

/// <summary>
/// An amount as a cook writes it: exact, in the unit it was written in, such as <c>1 1/2 cups</c>, <c>2 Tbsp + 1 tsp</c>,
/// <c>2-3 tsp</c>, <c>1 lb 4 oz</c> or <c>1 stick</c>. <see langword="default"/> is <c>0 g</c>.
/// </summary>
/// <remarks>
/// Two amounts are equal when they are written the same in lowest terms: 2/4 cup equals 1/2 cup, but 16 Tbsp does not equal
/// 1 cup, because that depends on the measuring system. For the same reason amounts have no order.
/// A lone capital T is a tablespoon and a small t a teaspoon, as the trade writes them; <c>oz</c> is a mass and <c>fl oz</c> a volume.
/// Worked number: <c>Amount.Parse("1½ c.").Millilitres(MeasuringSystem.UsCustomary)</c> is 354.88235475.
/// </remarks>
[JsonConverter(typeof(AmountJsonConverter))]
public readonly struct Amount : IEquatable<Amount>, ISpanFormattable, ISpanParsable<Amount>
{
    private readonly AmountPart _first;
    private readonly AmountPart[]? _rest;

    internal Amount(AmountPart first, AmountPart[]? rest)
    {
        _first = first;
        _rest = rest;
    }

    /// <summary>How many parts the amount was written in; at least 1.</summary>
    public int PartCount => 1 + (_rest?.Length ?? 0);

    /// <summary>Whether it is a mass.</summary>
    public bool IsMass => _first.Unit.IsMass();

    /// <summary>Whether it is a volume.</summary>
    public bool IsVolume => _first.Unit.IsVolume();

    /// <summary>Whether it is counted in pieces.</summary>
    public bool IsPiece => _first.Unit == KitchenUnit.Piece;

    /// <summary>Whether it is a range such as 2-3 tsp.</summary>
    public bool IsRange => _first.Low != _first.High;

    /// <summary>The first part where it stands: readers of many rows copy none.</summary>
    [UnscopedRef]
    internal ref readonly AmountPart First => ref _first;

    /// <summary>One of the parts.</summary>
    /// <param name="index">From 0 to <see cref="PartCount"/> - 1.</param>
    /// <returns>The part.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such part.</exception>
    public AmountPart Part(int index)
    {
        Guard.InRange(index, 0, PartCount - 1);
        return index == 0 ? _first : _rest![index - 1];
    }

    /// <summary>So many of a unit.</summary>
    /// <param name="quantity">How many, 0 or more.</param>
    /// <param name="unit">A unit of mass or volume.</param>
    /// <returns>The amount.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The quantity is negative.</exception>
    /// <exception cref="ArgumentException">The unit is a piece; use <see cref="OfPieces"/>.</exception>
    public static Amount Of(Fraction quantity, KitchenUnit unit) => quantity >= 0 ? Between(quantity, quantity, unit)
        : throw new ArgumentOutOfRangeException(nameof(quantity), quantity, $"The quantity was {quantity}; it must be 0 or more.");

    /// <summary>A range of a unit, such as 2 to 3 teaspoons.</summary>
    /// <param name="low">The smaller number, 0 or more.</param>
    /// <param name="high">The larger number, not below <paramref name="low"/>.</param>
    /// <param name="unit">A unit of mass or volume.</param>
    /// <returns>The amount.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative, or the range falls.</exception>
    /// <exception cref="ArgumentException">The unit is a piece.</exception>
    public static Amount Between(Fraction low, Fraction high, KitchenUnit unit)
    {
        if (low < 0)
            throw new ArgumentOutOfRangeException(nameof(low), low, $"The quantity was {low}; it must be 0 or more.");
        if (high < low)
            throw new ArgumentOutOfRangeException(nameof(high), high, $"The range went from {low} to {high}; it must not fall.");
        if (Guard.Defined(unit) == KitchenUnit.Piece)
            throw new ArgumentException("A piece needs its word; use OfPieces.", nameof(unit));
        return new Amount(new AmountPart(low, high, unit, null), null);
    }

    /// <summary>So many pieces.</summary>
    /// <param name="quantity">How many, 0 or more.</param>
    /// <param name="piece">A piece that is counted, such as <c>stick</c>, <c>egg</c>, <c>sheet</c> or <c>large</c>.</param>
    /// <returns>The amount.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The quantity is negative.</exception>
    /// <exception cref="ArgumentException">The word is not a known piece.</exception>
    public static Amount OfPieces(Fraction quantity, string piece)
    {
        if (quantity < 0)
            throw new ArgumentOutOfRangeException(nameof(quantity), quantity, $"The quantity was {quantity}; it must be 0 or more.");
        return PieceWords.TryGet(Guard.NotNull(piece), out string? word)
            ? new Amount(new AmountPart(quantity, quantity, KitchenUnit.Piece, word), null)
            : throw new ArgumentException($"{Text.Excerpt.Of(piece)} is not a piece; the pieces are: {string.Join(", ", PieceWords.All)}.",
                nameof(piece));
    }

    /// <summary>The volume in millilitres; of a range, the middle.</summary>
    /// <param name="system">Whose cups and spoons.</param>
    /// <returns>Millilitres.</returns>
    /// <exception cref="ArgumentException">The amount is not a volume, or the system lacks the unit.</exception>
    public double Millilitres(MeasuringSystem system) => Middle(LowMillilitres(system), HighMillilitres(system));

    /// <summary>The volume in millilitres at the low end of a range.</summary>
    /// <param name="system">Whose cups and spoons.</param>
    /// <returns>Millilitres.</returns>
    /// <exception cref="ArgumentException">The amount is not a volume, or the system lacks the unit.</exception>
    public double LowMillilitres(MeasuringSystem system)
    {
        double sum = MillilitresOf(_first.Low, _first.Unit, system);
        if (_rest is not null)
        {
            foreach (AmountPart part in _rest)
                sum += MillilitresOf(part.Low, part.Unit, system);
        }
        return sum;
    }

    /// <summary>The volume in millilitres at the high end of a range.</summary>
    /// <param name="system">Whose cups and spoons.</param>
    /// <returns>Millilitres.</returns>
    /// <exception cref="ArgumentException">The amount is not a volume, or the system lacks the unit.</exception>
    // Only a single part can be a range, so a sum of parts has one value. The larger of the two, because the last bit of two
    // fractions that differ by less must not turn a range round.
    public double HighMillilitres(MeasuringSystem system) => IsRange
        ? Math.Max(LowMillilitres(system), MillilitresOf(_first.High, _first.Unit, system))
        : LowMillilitres(system);

    /// <summary>The mass in grams; of a range, the middle. No ingredient is needed: the amount must be a mass.</summary>
    /// <param name="system">Whose ounce; only US labelling has one of its own (28 g).</param>
    /// <returns>Grams.</returns>
    /// <exception cref="ArgumentException">The amount is not a mass.</exception>
    public double Grams(MeasuringSystem system) => Middle(LowGrams(system), HighGrams(system));

    /// <summary>The mass in grams at the low end of a range.</summary>
    /// <param name="system">Whose ounce.</param>
    /// <returns>Grams.</returns>
    /// <exception cref="ArgumentException">The amount is not a mass.</exception>
    public double LowGrams(MeasuringSystem system)
    {
        Guard.NotNull(system);
        double sum = GramsOf(_first.Low, _first.Unit, system);
        if (_rest is not null)
        {
            foreach (AmountPart part in _rest)
                sum += GramsOf(part.Low, part.Unit, system);
        }
        return sum;
    }

    /// <summary>The mass in grams at the high end of a range.</summary>
    /// <param name="system">Whose ounce.</param>
    /// <returns>Grams.</returns>
    /// <exception cref="ArgumentException">The amount is not a mass.</exception>
    public double HighGrams(MeasuringSystem system)
    {
        Guard.NotNull(system);
        return IsRange ? Math.Max(LowGrams(system), GramsOf(_first.High, _first.Unit, system)) : LowGrams(system);
    }

    /// <summary>Reads an amount, the same in every culture, with a decimal point.</summary>
    /// <param name="text">
    /// The text, such as <c>1 1/2 cups</c>, <c>1½ c.</c>, <c>2 Tbsp + 1 tsp</c>, <c>2-3 tsp</c>, <c>two cups</c>.
    /// </param>
    /// <returns>The amount.</returns>
    /// <exception cref="FormatException">The text is not an amount; the message says what stands where and what was expected.</exception>
    public static Amount Parse(ReadOnlySpan<char> text) => Parse(text, AmountReading.DecimalPoint);

    /// <summary>Reads an amount, the same in every culture.</summary>
    /// <param name="text">The text.</param>
    /// <param name="reading">Whether decimals have a point or a comma.</param>
    /// <returns>The amount.</returns>
    /// <exception cref="FormatException">The text is not an amount.</exception>
    public static Amount Parse(ReadOnlySpan<char> text, AmountReading reading)
    {
        AmountReader reader = new(text, reading);
        return reader.TryReadAll(out Amount amount) ? amount : throw reader.Failure();
    }

    /// <summary>Reads an amount, the same in every culture, with a decimal point.</summary>
    /// <param name="text">The text.</param>
    /// <param name="amount">The amount, or <c>0 g</c>.</param>
    /// <returns>Whether the text is an amount.</returns>
    public static bool TryParse(ReadOnlySpan<char> text, out Amount amount) => TryParse(text, AmountReading.DecimalPoint, out amount);

    /// <summary>Reads an amount, the same in every culture.</summary>
    /// <param name="text">The text.</param>
    /// <param name="reading">Whether decimals have a point or a comma.</param>
    /// <param name="amount">The amount, or <c>0 g</c>.</param>
    /// <returns>Whether the text is an amount.</returns>
    public static bool TryParse(ReadOnlySpan<char> text, AmountReading reading, out Amount amount)
    {
        AmountReader reader = new(text, reading);
        return reader.TryReadAll(out amount);
    }

    // The provider is not used: reading is the same in every culture. The interfaces are implemented explicitly so that nobody is
    // told to pass a culture that would change nothing.
    static Amount IParsable<Amount>.Parse(string s, IFormatProvider? provider) => Parse(Guard.NotNull(s).AsSpan());

    static Amount ISpanParsable<Amount>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Amount>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Amount result) =>
        TryParse(s.AsSpan(), out result);

    static bool ISpanParsable<Amount>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out Amount result) =>
        TryParse(s, out result);

    /// <summary>Invariant text that reads back as the same amount, such as <c>1 1/2 cups</c>.</summary>
    public override string ToString() => AmountWriter.Write(this, default);

    /// <summary>Invariant text that reads back as the same amount.</summary>
    /// <param name="format">
    /// <c>G</c> or <see langword="null"/> for plain fractions (<c>1 1/2 cups</c>), <c>V</c> for vulgar ones where a character exists
    /// (<c>1½ cups</c>).
    /// </param>
    /// <returns>The text.</returns>
    /// <exception cref="FormatException">The format is neither <c>G</c> nor <c>V</c>.</exception>
    public string ToString(string? format) => AmountWriter.Write(this, format);

    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => AmountWriter.Write(this, format);

    bool ISpanFormattable.TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format, IFormatProvider? provider) =>
        SpanText.TryWrite(AmountWriter.Write(this, format), destination, out charsWritten);

    /// <inheritdoc/>
    public bool Equals(Amount other) => _first == other._first && _rest.AsSpan().SequenceEqual(other._rest);

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is Amount other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_first, PartCount);

    /// <summary>Whether two amounts were written the same, in lowest terms.</summary>
    public static bool operator ==(Amount left, Amount right) => left.Equals(right);

    /// <summary>Whether two amounts were written differently.</summary>
    public static bool operator !=(Amount left, Amount right) => !left.Equals(right);

    private static double Middle(double low, double high) => low == high ? low : low / 2 + high / 2;

    // Numerator and denominator are divided once at the end where that is exact, so that 3 x 1/3 cup is one cup to the last bit.
    private static double MillilitresOf(Fraction quantity, KitchenUnit unit, MeasuringSystem system) =>
        quantity.Numerator * Guard.NotNull(system).MillilitresPer(unit) / quantity.Denominator;

    private static double GramsOf(Fraction quantity, KitchenUnit unit, MeasuringSystem system) =>
        quantity.Numerator * system.GramsPer(unit) / quantity.Denominator;
}
