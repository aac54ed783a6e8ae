using System.Globalization;
using Confectio.Text;

namespace Confectio.Measures;

/// <summary>
/// Reads a written amount. No culture, no allocation for a single part, and nothing is thrown: a failure is kept as a place
/// and a reason until somebody asks for the message.
/// </summary>
/// <remarks>
/// amount := part ("-" | "to" | "or") part | part (("+" | "&amp;" | "and" | "plus") part | ","? smaller part)*, part := number (("-" | "to"
/// | "or") number)? "-"? unit. Without a sign only a smaller unit of the same kind goes on: 1 lb 2 oz is a sum, 115 g 4 oz is one mass in
/// two units. A number is a whole number, a decimal, a fraction, a mixed number (1 1/2, 1-1/2, 1½, one and a half) or a word up to twelve.
/// </remarks>
internal ref struct AmountReader
{
    private const int MostParts = 8;

    private readonly ReadOnlySpan<char> _text;
    private readonly char _decimalMark;
    private int _position;
    private string? _reason;

    public AmountReader(ReadOnlySpan<char> text, AmountReading reading)
    {
        _text = text;
        _decimalMark = reading == AmountReading.DecimalComma ? ',' : '.';
    }

    /// <summary>Where reading stopped.</summary>
    public readonly int Position => _position;

    /// <summary>The failure, in words.</summary>
    public readonly string? Reason => _reason;

    /// <summary>The failure, in words, as the exception to throw.</summary>
    public readonly FormatException Failure() => new(Refusal + ".");

    /// <summary>The same as a problem says it.</summary>
    public readonly string Refusal => string.Create(CultureInfo.InvariantCulture,
        $"{Excerpt.Of(_text)} is not an amount: at character {Math.Min(_position, _text.Length) + 1}, {_reason}");

    /// <summary>Reads an amount that takes the whole text.</summary>
    public bool TryReadAll(out Amount amount)
    {
        if (TryRead(out amount) && _position == _text.Length)
            return true;
        _reason ??= "the end of the amount was expected";
        amount = default;
        return false;
    }

    /// <summary>Reads a number from the start of the text and leaves the rest, which has another unit than those of amounts.</summary>
    public bool TryReadQuantity(out Fraction number)
    {
        SkipSpace();
        return TryReadNumber(out number);
    }

    /// <summary>Reads an amount from the start of the text and leaves the rest, such as the packing in <c>1 cup, sifted</c>.</summary>
    public bool TryRead(out Amount amount)
    {
        amount = default;
        SkipSpace();
        if (!TryReadPart(out AmountPart first))
            return false;
        if (TryReadUpper(ref first))
        {
            amount = new Amount(first, null);
            return true;
        }
        AmountPart[]? rest = null;
        AmountPart last = first;
        while (true)
        {
            int mark = _position;
            bool joined = SkipJoin(out bool signed);
            bool words = _position < _text.Length && char.IsAsciiLetter(_text[_position]);
            if (_position == _text.Length || !StartsNumber())
            {
                if (joined && _position == _text.Length)
                    return Fail("another amount was expected after the sign that joins them");
                _position = joined ? mark : _position;
                break;
            }
            if (!TryReadPart(out AmountPart next))
            {
                // "1 cup one-bowl flour" goes on with a word that is no number of an amount.
                if (signed || !words)
                    return false;
                (_position, _reason) = (mark, null);
                break;
            }
            if (!signed && !Continues(last.Unit, next.Unit))
            {
                _position = mark;
                _reason = "two amounts without a sign between them are no sum";
                break;
            }
            if (next.Unit.IsMass() != first.Unit.IsMass() || next.Unit.IsVolume() != first.Unit.IsVolume())
                return Fail("masses, volumes and pieces cannot be added without an ingredient");
            if (first.Low != first.High || next.Low != next.High)
                return Fail("a range cannot be one part of a sum");
            if ((rest?.Length ?? 0) == MostParts - 1)
                return Fail("an amount has at most 8 parts");
            Array.Resize(ref rest, (rest?.Length ?? 0) + 1);
            rest[^1] = last = next;
        }
        amount = new Amount(first, rest);
        return true;
    }

    /// <summary>Whether a unit goes on with a smaller one without a sign, as pounds do with ounces and cups with spoons.</summary>
    public static bool Continues(KitchenUnit larger, KitchenUnit smaller) => (larger, smaller) switch
    {
        (KitchenUnit.Pound, KitchenUnit.Ounce) or (KitchenUnit.Kilogram, KitchenUnit.Gram) or (KitchenUnit.Litre, KitchenUnit.Millilitre) =>
            true,
        (>= KitchenUnit.Cup and <= KitchenUnit.Gallon, >= KitchenUnit.Teaspoon and <= KitchenUnit.Quart) => smaller < larger,
        (KitchenUnit.Tablespoon, KitchenUnit.Teaspoon) => true,
        _ => false,
    };

    /// <summary>A number and its unit from the start of the text, and nothing else.</summary>
    public bool TryReadOne(out AmountPart part)
    {
        part = default;
        SkipSpace();
        if (!TryReadNumber(out Fraction number))
            return false;
        SkipToUnit();
        if (!TryReadUnit(out KitchenUnit unit, out string? piece, out Fraction multiple)
            || !Fraction.TryMultiply(number, multiple, out number))
            return false;
        part = new AmountPart(number, number, unit, piece);
        return true;
    }

    /// <summary>The unit with which a text begins.</summary>
    /// <returns>How many characters it takes; 0 where it begins with none.</returns>
    public static int UnitOf(ReadOnlySpan<char> text, out KitchenUnit unit, out string? piece, out Fraction multiple)
    {
        AmountReader reader = new(text, AmountReading.DecimalPoint);
        return reader.TryReadUnit(out unit, out piece, out multiple) ? reader._position : 0;
    }

    /// <summary>The upper end of a range that has a unit of its own: "1/4 cup to 1/3 cup".</summary>
    private bool TryReadUpper(ref AmountPart first)
    {
        int mark = _position;
        if (first.Low == first.High && SkipRangeSign() && _position < _text.Length && StartsNumber() && TryReadOne(out AmountPart upper)
            && upper.Unit == first.Unit && upper.Piece == first.Piece && upper.Low >= first.Low)
        {
            first = new AmountPart(first.Low, upper.Low, first.Unit, first.Piece);
            return true;
        }
        _position = mark;
        _reason = null;
        return false;
    }

    /// <summary>The space between a number and its unit, or the hyphen of "14-oz".</summary>
    private void SkipToUnit()
    {
        if (HyphenJoinsUnit())
            _position++;
        else
            SkipSpace();
    }

    private readonly bool HyphenJoinsUnit() => _position + 1 < _text.Length && _text[_position] is '-' or '\u2011'
        && char.IsAsciiLetter(_text[_position + 1])
        && UnitOf(_text[(_position + 1)..], out _, out _, out _) > 0;

    private bool TryReadPart(out AmountPart part)
    {
        part = default;
        if (!TryReadNumber(out Fraction low))
            return false;
        Fraction high = low;
        if (!HyphenJoinsUnit() && SkipRangeSign() && !TryReadNumber(out high))
            return false;
        if (high < low)
            return Fail("the range must not fall");
        SkipToUnit();
        if (!TryReadUnit(out KitchenUnit unit, out string? piece, out Fraction multiple))
            return false;
        if (multiple != 1 && (!Fraction.TryMultiply(low, multiple, out low) || !Fraction.TryMultiply(high, multiple, out high)))
            return Fail("the number is too large");
        part = new AmountPart(low, high, unit, piece);
        return true;
    }

    // ---- numbers ----

    private bool TryReadNumber(out Fraction number)
    {
        if (_position < _text.Length && char.IsAsciiDigit(_text[_position]))
            return TryReadDigits(out number);
        // ".5 tsp" is printed often enough to be read.
        if (_position + 1 < _text.Length && _text[_position] == _decimalMark && char.IsAsciiDigit(_text[_position + 1]))
            return TryReadDecimals(0, out number);
        if (_position < _text.Length && AmountWriter.TryVulgar(_text[_position], out number))
        {
            _position++;
            return true;
        }
        number = default;
        if (_position < _text.Length && char.IsAsciiLetter(_text[_position]))
            return TryReadNumberWords(out number);
        if (_position < _text.Length && _text[_position] == '-')
            return Fail("a number cannot be negative");
        return Fail("a number was expected");
    }

    private bool TryReadDigits(out Fraction number)
    {
        number = default;
        if (!TryReadWhole(out long whole, out _))
            return false;
        if (_position == _text.Length)
        {
            number = new Fraction(whole, 1);
            return true;
        }

        char next = _text[_position];
        if (next is '.' or ',' && _position + 1 < _text.Length && char.IsAsciiDigit(_text[_position + 1]))
        {
            if (next != _decimalMark)
                return Fail(next == ',' ? "a comma stands between digits; decimals are read with a point here"
                    : "a point stands between digits; decimals are read with a comma here");
            return TryReadDecimals(whole, out number);
        }
        if (IsFractionSign(next))
            return TryReadDenominator(whole, out number);
        if (AmountWriter.TryVulgar(next, out Fraction vulgar))
        {
            _position++;
            return TryAdd(whole, vulgar, out number);
        }

        // A mixed number: "1 1/2", "1 ½", "1-1/2" (as printed tables have it), "1-½", "1 and 1/2", "1 & 1/2", "1 and a half". "0-1/2" is a range.
        int mark = _position;
        bool hyphen = next == '-' && whole > 0;
        if (hyphen)
            _position++;
        else
            SkipSpace();
        bool and = !hyphen && _position > mark && (SkipWord("and") || SkipAmpersand());
        if (and)
            SkipSpace();
        if (_position < _text.Length && (hyphen || _position > mark))
        {
            if (AmountWriter.TryVulgar(_text[_position], out vulgar))
            {
                _position++;
                return TryAdd(whole, vulgar, out number);
            }
            if (char.IsAsciiDigit(_text[_position]) && FractionFollows())
            {
                int fractionAt = _position;
                if (!TryReadWhole(out long numerator, out _) || !TryReadDenominator(numerator, out Fraction fraction))
                    return false;
                if (fraction < 1)
                    return TryAdd(whole, fraction, out number);
                if (!hyphen)
                {
                    _position = fractionAt;
                    return Fail("the fraction of a mixed number must be below 1");
                }
            }
            else if (and && TryReadFractionWord(out Fraction word))
            {
                return TryAdd(whole, word, out number);
            }
            else if (!and && !hyphen && char.IsAsciiLetter(_text[_position]) && TryReadNamedFraction(whole, out number))
            {
                return true;
            }
        }
        _position = mark;
        number = new Fraction(whole, 1);
        return true;
    }

    private bool TryReadDecimals(long whole, out Fraction number)
    {
        number = default;
        _position++;
        if (!TryReadWhole(out long decimals, out int places))
            return false;
        if (_position + 1 < _text.Length && _text[_position] is '.' or ',' && char.IsAsciiDigit(_text[_position + 1]))
            return Fail("a number has more than one decimal mark");
        Int128 scale = 1; // 19 places do not fit in 64 bits
        for (int i = 0; i < places; i++)
            scale *= 10;
        return Fraction.TryReduce(whole * scale + decimals, scale, out number) || Fail("the number is too long");
    }

    private bool TryReadDenominator(long numerator, out Fraction number)
    {
        number = default;
        _position++;
        if (_position == _text.Length || !char.IsAsciiDigit(_text[_position]))
            return Fail("a fraction needs a whole number below its line");
        int mark = _position;
        if (!TryReadWhole(out long denominator, out _))
            return false;
        if (denominator == 0)
        {
            _position = mark;
            return Fail("a fraction cannot have 0 below its line");
        }
        number = new Fraction(numerator, denominator);
        return true;
    }

    private bool TryReadWhole(out long value, out int digits)
    {
        ulong sum = 0;
        int start = _position;
        while (_position < _text.Length && char.IsAsciiDigit(_text[_position]))
        {
            // The writer may write any whole number of 64 bits, so the reader takes 19 digits. Leading zeros of a decimal
            // part count as digits, so that the places are right.
            if (_position - start < 19)
                sum = sum * 10 + (ulong)(_text[_position] - '0');
            if (_position - start == 19 || sum > long.MaxValue)
            {
                value = 0;
                digits = 0;
                return Fail("the number is too long");
            }
            _position++;
        }
        value = (long)sum;
        digits = _position - start;
        return true;
    }

    private bool SkipAmpersand()
    {
        if (_position >= _text.Length || _text[_position] != '&')
            return false;
        _position++;
        return true;
    }

    private readonly bool FractionFollows()
    {
        int i = _position;
        while (i < _text.Length && char.IsAsciiDigit(_text[i]))
            i++;
        return i < _text.Length && IsFractionSign(_text[i]);
    }

    private bool TryAdd(long whole, Fraction fraction, out Fraction number) =>
        Fraction.TryReduce((Int128)whole * fraction.Denominator + fraction.Numerator, fraction.Denominator, out number)
        || Fail("the number is too long");

    private bool TryReadNumberWords(out Fraction number)
    {
        ReadOnlySpan<char> word = PeekWord();
        if (TryReadFractionWord(out number))
        {
            SkipOfA();
            return true;
        }
        if (!NumberWords.TryNumber(word, out int whole))
            return Fail("a number was expected");
        _position += word.Length;
        if (TryReadNamedFraction(whole, out number))
            return true;
        int afterWord = _position;
        SkipSpace();
        if (SkipWord("and"))
        {
            SkipSpace();
            if (TryReadFractionWord(out Fraction fraction))
                return TryAdd(whole, fraction, out number);
            if (_position < _text.Length && AmountWriter.TryVulgar(_text[_position], out fraction))
            {
                _position++;
                return TryAdd(whole, fraction, out number);
            }
        }
        _position = afterWord;
        number = whole;
        return true;
    }

    /// <summary>"half", "a half", "one half", "a quarter", "one third"; not "a" alone.</summary>
    private bool TryReadFractionWord(out Fraction fraction)
    {
        int mark = _position;
        if (SkipWord("a") || SkipWord("one"))
        {
            if (_position < _text.Length && _text[_position] == '-')
                _position++;
            SkipSpace();
        }
        ReadOnlySpan<char> word = PeekWord();
        if (NumberWords.TryPart(word, out int parts))
        {
            _position += word.Length;
            fraction = new Fraction(1, parts);
            return true;
        }
        _position = mark;
        fraction = default;
        return false;
    }

    /// <summary>"three quarters", "2 thirds", "two-thirds".</summary>
    private bool TryReadNamedFraction(long count, out Fraction fraction)
    {
        int mark = _position;
        if (_position < _text.Length && _text[_position] == '-')
            _position++;
        SkipSpace();
        ReadOnlySpan<char> word = PeekWord();
        if (NumberWords.TryPart(word, out int parts))
        {
            _position += word.Length;
            SkipOfA();
            fraction = new Fraction(count, parts);
            return true;
        }
        _position = mark;
        fraction = default;
        return false;
    }

    // ---- units ----

    private bool TryReadUnit(out KitchenUnit unit, out string? piece, out Fraction multiple)
    {
        piece = null;
        multiple = 1;
        int mark = _position;
        ReadOnlySpan<char> word = PeekWord();
        if (word.IsEmpty)
        {
            unit = default;
            return Fail("a unit such as cup, Tbsp, tsp, g or oz was expected");
        }
        _position += word.Length;
        if (UnitWords.TryGet(word, out unit, out multiple))
        {
            SkipDot();
            if (unit == KitchenUnit.Ounce)
            {
                // "8 oz fl" is as good as "8 fl oz".
                int after = _position;
                SkipSpace();
                if (SkipWord("fl"))
                {
                    SkipDot();
                    unit = KitchenUnit.FluidOunce;
                }
                else
                {
                    _position = after;
                }
            }
            return true;
        }
        if (word.Equals("fl", StringComparison.OrdinalIgnoreCase) || word.Equals("fluid", StringComparison.OrdinalIgnoreCase))
        {
            SkipDot();
            SkipSpace();
            ReadOnlySpan<char> second = PeekWord();
            if (UnitWords.TryGet(second, out KitchenUnit ounce, out _) && ounce == KitchenUnit.Ounce)
            {
                _position += second.Length;
                SkipDot();
                unit = KitchenUnit.FluidOunce;
                return true;
            }
            return Fail("oz was expected after fl");
        }
        unit = KitchenUnit.Piece;
        multiple = 1;
        if (word.Equals("extra", StringComparison.OrdinalIgnoreCase))
        {
            SkipSpace();
            if (SkipWord("large"))
            {
                piece = "extra large";
                return true;
            }
        }
        if (PieceWords.TryGet(word, out piece))
            return true;
        _position = mark;
        return Fail("the unit is not known");
    }

    // ---- scanning ----

    /// <summary>Whether a number starts here: a figure, or a word but for "a" and "an".</summary>
    private bool StartsNumber()
    {
        char c = _text[_position];
        if (char.IsAsciiDigit(c) || AmountWriter.TryVulgar(c, out _))
            return true;
        return char.IsAsciiLetter(c) && NumberWords.TryNumber(PeekWord(), out _) && PeekWord().Length > 2;
    }

    private bool SkipJoin(out bool signed)
    {
        signed = false;
        SkipSpace();
        if (_position == _text.Length)
            return false;
        bool joined = true;
        signed = false;
        if (_text[_position] is '+' or '&' or ',')
            signed = _text[_position++] != ',';
        else
            joined = signed = SkipWord("and") || SkipWord("plus");
        SkipSpace();
        return joined;
    }

    private bool SkipRangeSign()
    {
        int mark = _position;
        SkipSpace();
        bool found = false;
        if (_position < _text.Length && _text[_position] is '-' or '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014')
        {
            _position++;
            found = true;
        }
        else if (SkipWord("to") || SkipWord("or"))
        {
            found = true;
        }
        if (found)
            SkipSpace();
        else
            _position = mark;
        return found;
    }

    private static bool IsFractionSign(char c) => c is '/' or '\u2044' or '\u2215';

    private readonly ReadOnlySpan<char> PeekWord()
    {
        int end = _position;
        while (end < _text.Length && char.IsAsciiLetter(_text[end]))
            end++;
        return _text[_position..end];
    }

    private bool SkipWord(string word)
    {
        if (!PeekWord().Equals(word, StringComparison.OrdinalIgnoreCase))
            return false;
        _position += word.Length;
        return true;
    }

    /// <summary>"half a cup", "a quarter of a cup", "three quarters of an ounce".</summary>
    private void SkipOfA()
    {
        SkipSpace();
        SkipWord("of");
        SkipSpace();
        if (SkipWord("a") || SkipWord("an"))
            SkipSpace();
    }

    private void SkipSpace()
    {
        while (_position < _text.Length && char.IsWhiteSpace(_text[_position]))
            _position++;
    }

    private void SkipDot()
    {
        if (_position < _text.Length && _text[_position] == '.')
            _position++;
    }

    private bool Fail(string reason)
    {
        _reason = reason;
        return false;
    }
}
