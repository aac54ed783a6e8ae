using Confectio.Measures;

namespace Confectio.Phrases;

/// <summary>
/// Finds every amount in a text, with its place, from left to right. What looks like an amount and cannot be read is found too, with the
/// reason. Linear in the length of the text; nothing is allocated for an amount of one part.
/// </summary>
/// <remarks>
/// amount := [about | heaped | ...] number [range] [x] [size] [heaped | level | US | ...] unit [+ part]*. Numbers are those of
/// <see cref="AmountReader"/>. Of a number without a unit only what is counted can be said, so it is found as a count.
/// </remarks>
internal ref struct AmountScanner
{
    /// <summary>"A few" of something small, by a judgement.</summary>
    private static readonly Fraction s_fewLow = 3, s_fewHigh = 6;

    private const int MostParts = 8;

    /// <summary>"about 2 heaped US": three say all that can be said.</summary>
    private const int MostQualifiers = 3;

    /// <summary>Where more spaces than this stand, nothing belongs together any more.</summary>
    private const int MostSpace = 40;

    private readonly ReadOnlySpan<char> _text;
    private readonly AmountReading _reading;
    private int _at;

    public AmountScanner(ReadOnlySpan<char> text, AmountReading reading)
    {
        _text = text;
        _reading = reading;
    }

    private enum Outcome
    {
        None,
        Found,
        Skip,
    }

    /// <summary>The next amount.</summary>
    public bool TryNext(out WrittenAmount found)
    {
        while (_at < _text.Length)
        {
            char c = _text[_at];
            if (c == ' ')
            {
                _at++;
                continue;
            }
            if (char.IsAsciiDigit(c) || AmountWriter.TryVulgar(c, out _) || (c is '~' or '≈' or '.' && DigitAt(_at + 1))
                || (c is '~' or '≈' && !DigitAt(_at + 1)))
            {
                int start = _at;
                switch (TryAmount(_at, out found, out int end))
                {
                    case Outcome.Found:
                        _at = end;
                        return true;
                    case Outcome.Skip:
                        _at = Math.Max(end, start + 1);
                        continue;
                    default:
                        _at = Math.Max(AfterRun(start), start + 1);
                        continue;
                }
            }
            if (char.IsLetter(c))
            {
                int end = AfterRun(_at);
                if (LettersWithDigits(_at, end, out found))
                {
                    _at = found.End;
                    return true;
                }
                if (IsTrigger(Word(_at)) && TryAmount(_at, out found, out int after) == Outcome.Found)
                {
                    _at = after;
                    return true;
                }
                _at = end;
                continue;
            }
            _at++;
        }
        found = default;
        return false;
    }

    // ---- one amount ----

    private readonly Outcome TryAmount(int start, out WrittenAmount found, out int end)
    {
        found = default;
        end = start;
        int at = start;
        MeasureFill fill = MeasureFill.NotStated;
        bool about = false;
        MeasuringSystem? system = null;
        // "a scant 1/2 cup": the article says nothing where a number follows.
        if ((Is(at, "a") || Is(at, "an")) && Skip(AfterRun(at)) is int adjective
            && TryQualifier(adjective, ref fill, ref about, ref system, out int numberFollows)
            && numberFollows < _text.Length && (char.IsAsciiDigit(_text[numberFollows])
                || AmountWriter.TryVulgar(_text[numberFollows], out _)
                || NumberWords.TryPart(Word(numberFollows), out _)))
            at = numberFollows;
        else
            (fill, about, system) = (MeasureFill.NotStated, false, null);
        for (int i = 0; i < MostQualifiers && TryQualifier(at, ref fill, ref about, ref system, out int after); i++)
            at = after;
        if (at >= _text.Length)
            return Outcome.None;

        Fraction low = 1, high = 1;
        int numberAt = at;
        bool stated = false, article = false, numbered = false;
        // "a few drops": three to six of what has a size.
        bool few = IsFew(at, out int roughAt) || ((Is(at, "a") || Is(at, "an")) && IsFew(Skip(AfterRun(at)), out roughAt));
        if (few)
            (low, high, at, about) = (s_fewLow, s_fewHigh, roughAt, true);
        if (IsVague(Word(at)))
            return Vague(start, at, out found, out end);
        if (char.IsLetter(_text[at]) && IsRough(Word(at)))
        {
            // "pinch of salt": one of it.
        }
        else
        {
            article = Is(at, "a") || Is(at, "an");
            AmountReader reader = new(_text[at..], _reading);
            if (!reader.TryReadQuantity(out low))
            {
                if (!char.IsAsciiDigit(_text[at]))
                    return Outcome.None;
                end = AfterNumber(at);
                // The unit behind it belongs to it, so that it is not read as a name.
                int unitAt = Skip(end);
                if (TryUnit(unitAt, out _, out _, out _, out int afterUnit, out _))
                    end = afterUnit;
                found = new WrittenAmount { Start = start, Length = end - start, Reason = reader.Reason ?? "it is not a number" };
                return Outcome.Found;
            }
            at += reader.Position;
            high = low;
            stated = !article;
            numbered = true;
            if (Skip(at) is int vagueAt && IsVague(Word(vagueAt)))
                return Vague(start, vagueAt, out found, out end);
            if (TryRangeSign(at, out int secondAt) && secondAt < _text.Length)
            {
                AmountReader second = new(_text[secondAt..], _reading);
                if ((char.IsAsciiDigit(_text[secondAt]) || _text[secondAt] == '.' || AmountWriter.TryVulgar(_text[secondAt], out _)
                    || NumberWords.TryNumber(Word(secondAt), out _))
                    && second.TryReadQuantity(out Fraction upper))
                {
                    if (upper < low)
                    {
                        // "8 - 4 oz" is no range that anybody means.
                        end = secondAt + second.Position;
                        found = new WrittenAmount { Start = start, Length = end - start, Reason = "the range must not fall" };
                        return Outcome.Found;
                    }
                    high = upper;
                    at = secondAt + second.Position;
                }
            }
        }

        int numberEnd = at;
        // "35 %", "180 °C", "9 x 13 inch": numbers of something else.
        int next = Skip(at);
        if (stated && next < _text.Length && (_text[next] is '%' or '°' or 'º' or '"' or '″' or '€' or '$' or '£'))
        {
            end = next + 1;
            return Outcome.Skip;
        }
        // "10X sugar", "1OO g": letters that touch a number and are no unit.
        if (numbered && at < _text.Length && char.IsLetter(_text[at]) && !TryUnit(at, out _, out _, out _, out _, out _)
            && !(Is(at, "x") && DigitAt(Skip(at + 1))))
        {
            end = AfterRun(at);
            if (!LooksLikeDigits(_text[at..end]))
                return Outcome.Skip;
            int unitAt = Skip(end);
            if (TryUnit(unitAt, out _, out _, out _, out int afterUnit, out _))
                end = afterUnit;
            found = new WrittenAmount { Start = start, Length = end - start, Reason = "a number was expected; there is a letter in it" };
            return Outcome.Found;
        }

        if (numbered && TryMultiple(next, low, high, out Amount product, out int afterProduct, out string? large))
        {
            end = afterProduct;
            found = new WrittenAmount
            {
                Amount = product, Start = start, Length = end - start, Fill = fill, IsApproximate = about, MeasuringSystem = system,
                    Reason = large,
            };
            return Outcome.Found;
        }

        at = next;
        if (at < _text.Length && _text[at] is '-' or '‑' && at == numberEnd && at + 1 < _text.Length && char.IsAsciiLetter(_text[at + 1])
            && TryUnit(at + 1, out _, out _, out _, out _, out _))
            at++;
        for (int i = 0; i < MostQualifiers && TryQualifier(at, ref fill, ref about, ref system, out int after); i++)
            at = after;
        // "1 large knob", "a good pinch": the size of a rough measure says little.
        if ((SizeWord(at) is not null || IsGoodly(Word(at))) && IsRough(Word(Skip(AfterRun(at)))))
        {
            at = Skip(AfterRun(at));
            about = true;
        }
        if (IsVague(Word(at)))
            return Vague(start, at, out found, out end);
        // "a small tin (170 g)"
        if (numbered && SizeWord(at) is not null && Skip(AfterSize(at)) is int boxed
            && TryMultiple(boxed, low, high, out Amount sizedProduct, out int afterSized, out string? tooLarge))
        {
            end = afterSized;
            found = new WrittenAmount
            {
                Amount = sizedProduct, Start = start, Length = end - start, Fill = fill, IsApproximate = about, MeasuringSystem = system,
                    Reason = tooLarge,
            };
            return Outcome.Found;
        }
        if (RoughAt(at) is RoughMeasure rough)
        {
            end = AfterRun(at);
            bool fits = Fraction.TryMultiply(low, rough.ExactLow, out low) & Fraction.TryMultiply(high, rough.ExactHigh, out high);
            found = new WrittenAmount
            {
                Amount = fits ? new Amount(new AmountPart(low, high, rough.Unit, null), null) : default,
                Start = start,
                Length = end - start,
                IsApproximate = true,
                Assumed = rough.Word,
                IsFew = few,
                Reason = fits ? null : "the number is too large",
            };
            return Outcome.Found;
        }
        if (!TryUnit(at, out KitchenUnit unit, out string? piece, out Fraction multiple, out int unitEnd, out string? lone)
            || (unit == KitchenUnit.Cup && low >= 50 && lone is not null))
        {
            if (!stated || (high == 0 && SizeWord(at) is null))
                return Outcome.None;
            if (IsContainer(Word(at)))
            {
                // "1 tin": how much is in it is not said.
                end = SkipDot(AfterRun(at));
                found = new WrittenAmount
                {
                    Start = start, Length = end - start, Reason = "how much is in it is not said", IsOneContainer = low == 1 && high == 1,
                };
                return Outcome.Found;
            }
            // A bare number counts what follows it, if a word does.
            end = numberEnd;
            if (SizeWord(at) is string sized)
            {
                end = AfterSize(at);
                found = new WrittenAmount
                {
                    Amount = new Amount(new AmountPart(low, high, KitchenUnit.Piece, sized), null), Start = start, Length = end - start,
                        IsApproximate = about, Fill = fill,
                };
                return Outcome.Found;
            }
            found = new WrittenAmount { Start = start, Length = end - start, IsCount = true, CountLow = low, CountHigh = high,
                IsApproximate = about, Fill = fill };
            return Outcome.Found;
        }

        if (!Fraction.TryMultiply(low, multiple, out low) || !Fraction.TryMultiply(high, multiple, out high))
        {
            end = unitEnd;
            found = new WrittenAmount { Start = start, Length = end - start, Reason = "the number is too large" };
            return Outcome.Found;
        }
        AmountPart first = new(low, high, unit, piece);
        end = unitEnd;
        AmountPart[]? rest = null;
        if (low == high)
            end = ReadFurther(ref first, ref rest, end, ref lone);
        // "400 g tin": the box says nothing beside its weight.
        if (unit != KitchenUnit.Piece && unit is < KitchenUnit.Teaspoon or KitchenUnit.FluidOunce && Skip(end) is int boxAt
            && IsBox(Word(boxAt)))
            end = SkipDot(AfterRun(boxAt));
        found = new WrittenAmount
        {
            Amount = new Amount(first, rest),
            Start = start,
            Length = end - start,
            Fill = fill,
            IsApproximate = about,
            MeasuringSystem = system,
            Assumed = lone,
        };
        return Outcome.Found;
    }

    private readonly bool IsFew(int at, out int rough)
    {
        rough = at;
        if (!Is(at, "few"))
            return false;
        rough = Skip(AfterRun(at));
        return IsRough(Word(rough));
    }

    /// <summary>"a drizzle", "some": a measure that has no size.</summary>
    private readonly Outcome Vague(int start, int at, out WrittenAmount found, out int end)
    {
        end = AfterRun(at);
        int next = Skip(end);
        if (IsRough(Word(next)) || TryUnit(next, out _, out _, out _, out _, out _))
            end = AfterRun(next);
        found = new WrittenAmount { Start = start, Length = end - start, IsApproximate = true, IsVague = true,
            Reason = "it has no size: no two cooks mean the same by it" };
        return Outcome.Found;
    }

    /// <summary>
    /// The upper end of a range with a unit at both ends, or what is added: "1/4 cup to 1/3 cup", "1 cup plus 2 Tbsp", "1 lb 2 oz".
    /// </summary>
    private readonly int ReadFurther(ref AmountPart first, ref AmountPart[]? rest, int end, ref string? lone)
    {
        if (TryRangeSign(end, out int upperAt) && TryPart(upperAt, out AmountPart upper, out int upperEnd, out _)
            && upper.Unit == first.Unit
            && upper.Piece == first.Piece && upper.Low >= first.Low)
        {
            first = new AmountPart(first.Low, upper.Low, first.Unit, first.Piece);
            return upperEnd;
        }
        AmountPart last = first;
        while ((rest?.Length ?? 0) < MostParts - 1)
        {
            int at = Skip(end);
            bool signed = true, comma = false;
            if (at < _text.Length && _text[at] is '+' or '&')
                at++;
            else if (at < _text.Length && _text[at] == ',')
                (comma, signed, at) = (true, false, at + 1);
            else if (Is(at, "plus") || Is(at, "and"))
                at = AfterRun(at);
            else
                signed = false;
            at = Skip(at);
            if (!TryPart(at, out AmountPart part, out int partEnd, out string? partLone))
                break;
            bool sameKind = part.Unit.IsMass() == first.Unit.IsMass() && part.Unit.IsVolume() == first.Unit.IsVolume()
                && (part.Unit != KitchenUnit.Piece || signed);
            // Without a sign two masses are one amount in two units, unless they are pounds and ounces.
            if (!sameKind || ((!signed || comma) && !AmountReader.Continues(last.Unit, part.Unit)))
                break;
            Array.Resize(ref rest, (rest?.Length ?? 0) + 1);
            rest[^1] = last = part;
            // A T says more than a c.
            lone = partLone is "T" or "t" ? partLone : lone ?? partLone;
            end = partEnd;
        }
        return end;
    }

    /// <summary>A number and its unit, and nothing else.</summary>
    private readonly bool TryPart(int at, out AmountPart part, out int end, out string? lone)
    {
        part = default;
        end = at;
        lone = null;
        if (at >= _text.Length || !(char.IsAsciiDigit(_text[at]) || AmountWriter.TryVulgar(_text[at], out _)
            || (char.IsAsciiLetter(_text[at]) && NumberWords.TryNumber(Word(at), out _) && !Is(at, "a") && !Is(at, "an"))
            || NumberWords.TryPart(Word(at), out _)))
            return false;
        AmountReader reader = new(_text[at..], _reading);
        if (!reader.TryReadQuantity(out Fraction number))
            return false;
        int unitAt = Skip(at + reader.Position);
        if (unitAt < _text.Length && _text[unitAt] == '-')
            unitAt++;
        if (!TryUnit(unitAt, out KitchenUnit unit, out string? piece, out Fraction multiple, out end, out lone)
            || !Fraction.TryMultiply(number, multiple, out number))
            return false;
        part = new AmountPart(number, number, unit, piece);
        return true;
    }

    /// <summary>"1 x 397 g tin", "1 (8 oz) package", "2 14-oz cans", "3 x 15 ml spoons": so many times an amount.</summary>
    private readonly bool TryMultiple(int at, Fraction low, Fraction high, out Amount product, out int end, out string? large)
    {
        product = default;
        end = at;
        large = null;
        if (at >= _text.Length)
            return false;
        // "1 can (14 oz)"
        if (IsContainer(Word(at)) && !TryUnit(at, out _, out _, out _, out _, out _))
        {
            int bracketAt = Skip(SkipDot(AfterRun(at)));
            if (bracketAt >= _text.Length || _text[bracketAt] is not ('(' or '['))
                return false;
            if (!TryPart(Skip(bracketAt + 1), out AmountPart content, out int contentEnd, out _) || content.Unit == KitchenUnit.Piece)
                return false;
            int closing = Skip(contentEnd);
            if (closing < _text.Length && Is(closing, "each"))
                closing = Skip(AfterRun(closing));
            if (closing >= _text.Length || _text[closing] is not (')' or ']'))
                return false;
            end = closing + 1;
            if (!Fraction.TryMultiply(low, content.Low, out low) || !Fraction.TryMultiply(high, content.Low, out high))
                large = "the number is too large";
            else
                product = new Amount(new AmountPart(low, high, content.Unit, null), null);
            return true;
        }
        bool bracket = _text[at] is '(' or '[', times = _text[at] is '×' or '*' || Is(at, "x");
        bool plain = char.IsAsciiDigit(_text[at]);
        if (!bracket && !times && !plain)
            return false;
        int inner = plain ? at : Skip(at + 1);
        if (!TryPart(inner, out AmountPart part, out int partEnd, out _) || part.Unit == KitchenUnit.Piece)
            return false;
        end = partEnd;
        if (bracket)
        {
            int close = Skip(end);
            if (close >= _text.Length || _text[close] is not (')' or ']'))
                return false;
            end = close + 1;
        }
        int boxAt = Skip(end);
        if (IsContainer(Word(boxAt)))
            end = SkipDot(AfterRun(boxAt));
        else if (!times)
            return false;
        if (!Fraction.TryMultiply(low, part.Low, out low) || !Fraction.TryMultiply(high, part.Low, out high))
            large = "the number is too large";
        else
            product = new Amount(new AmountPart(low, high, part.Unit, null), null);
        return true;
    }

    // ---- words ----

    /// <summary>About, heaped, level, US: what stands before a number or between it and its unit.</summary>
    private readonly bool TryQualifier(int at, ref MeasureFill fill, ref bool about, ref MeasuringSystem? system, out int after)
    {
        after = at;
        if (at >= _text.Length)
            return false;
        if (_text[at] is '~' or '≈')
        {
            about = true;
            after = Skip(at + 1);
            return true;
        }
        if (!char.IsAsciiLetter(_text[at]))
            return false;
        Span<char> lower = stackalloc char[LongestWord];
        ReadOnlySpan<char> word = Lower(Word(at), lower);
        MeasureFill says = MeasureFill.NotStated;
        switch (word)
        {
            case "about" or "around" or "approx" or "approximately" or "roughly" or "circa" or "ca" or "nearly" or "almost" or "like"
                or "maybe":
                about = true;
                break;
            case "generous" or "good" or "full" or "big":
                // "2 big eggs" says nothing of a measure.
                if (!char.IsAsciiLetter(_text[at]) || !MeasureFollows(at))
                    return false;
                (says, about) = word is "full" ? (MeasureFill.Level, about) : (MeasureFill.Generous, true);
                break;
            case "us" or "usa" or "american" or "uk" or "imperial" or "british" or "english" or "metric" or "australian" or "aussie"
                or "aus" or "japanese":
                if (!MeasureFollows(at))
                    return false;
                system = word switch
                {
                    "metric" => Measures.MeasuringSystem.Metric,
                    "australian" or "aussie" or "aus" => Measures.MeasuringSystem.Australian,
                    "japanese" => Measures.MeasuringSystem.Japanese,
                    "us" or "usa" or "american" => Measures.MeasuringSystem.UsCustomary,
                    _ => Measures.MeasuringSystem.Imperial,
                };
                break;
            default:
                if (!FillWords.TryGet(word, out says))
                    return false;
                about |= says != MeasureFill.Level;
                break;
        }
        if (says != MeasureFill.NotStated)
            fill = says;
        after = Skip(SkipDot(AfterRun(at)));
        return true;
    }

    private readonly bool MeasureFollows(int at) => TryUnit(Skip(AfterRun(at)), out KitchenUnit unit, out string? piece, out _, out _,
        out _)
        && unit.IsVolume() && piece is null;

    private readonly bool TryUnit(int at, out KitchenUnit unit, out string? piece, out Fraction multiple, out int end, out string? lone)
    {
        piece = lone = null;
        unit = default;
        multiple = 1;
        end = at;
        ReadOnlySpan<char> word = Word(at);
        if (word.IsEmpty || word.Length > LongestWord)
            return false;
        // A word that goes on with a digit, an apostrophe or a letter of another alphabet is another word.
        int after = at + word.Length;
        if (after < _text.Length && (char.IsLetterOrDigit(_text[after]) || _text[after] is '\'' or '’'))
            return false;
        int length = AmountReader.UnitOf(_text[at..], out unit, out piece, out multiple);
        // Eggs, whites and yolks are counted, but the word belongs to the name; a size is no measure.
        if (length == 0 || piece is "egg" or "white" or "yolk" or "small" or "medium" or "large" or "extra large" or "jumbo")
        {
            piece = null;
            return false;
        }
        end = at + length;
        if (word.Length == 1 && (word[0] | 0x20) is 't')
            lone = word[0] == 'T' ? "T" : "t";
        else if (word.Length == 1 && (word[0] | 0x20) is 'c')
            lone = "c";
        return true;
    }

    private readonly string? SizeWord(int at)
    {
        ReadOnlySpan<char> word = Word(at);
        if (word.IsEmpty)
            return null;
        if (word.Equals("extra", StringComparison.OrdinalIgnoreCase) || word.Equals("x", StringComparison.OrdinalIgnoreCase))
        {
            int next = AfterRun(at);
            next = next < _text.Length && _text[next] == '-' ? next + 1 : Skip(next);
            return Is(next, "large") ? "extra large" : null;
        }
        Span<char> lower = stackalloc char[LongestWord];
        return Lower(word, lower) switch { "small" => "small", "medium" => "medium", "large" => "large", "jumbo" => "jumbo", _ => null };
    }

    private readonly int AfterSize(int at)
    {
        int end = AfterRun(at);
        if (!Is(at, "extra") && !Is(at, "x"))
            return end;
        return AfterRun(end < _text.Length && _text[end] == '-' ? end + 1 : Skip(end));
    }

    private static bool IsGoodly(ReadOnlySpan<char> word)
    {
        Span<char> lower = stackalloc char[LongestWord];
        return Lower(word, lower) is "good" or "generous" or "big" or "little" or "tiny" or "healthy" or "fat";
    }

    /// <summary>Words that look like a measure and have no size.</summary>
    internal static bool IsVague(ReadOnlySpan<char> word)
    {
        Span<char> lower = stackalloc char[LongestWord];
        return Lower(word, lower) is "some" or "few" or "drizzle" or "bit"
            or "little" or "touch" or "sprinkling" or "glug" or "bunch" or "couple" or "grating"
            or "tad" or "sprinkle" or "scoop" or "swirl" or "dusting";
    }

    private readonly RoughMeasure? RoughAt(int at)
    {
        Span<char> lower = stackalloc char[LongestWord];
        return RoughMeasure.Find(Singular(Lower(Word(at), lower)));
    }

    private static bool IsRough(ReadOnlySpan<char> word)
    {
        Span<char> lower = stackalloc char[LongestWord];
        return RoughMeasure.Find(Singular(Lower(word, lower))) is not null;
    }

    private static ReadOnlySpan<char> Singular(ReadOnlySpan<char> word) => word switch
    {
        "dashes" or "pinches" or "splashes" => word[..^2],
        [.., 's', 's'] => word,
        [_, _, .., 's'] => word[..^1],
        _ => word,
    };

    private static bool IsTrigger(ReadOnlySpan<char> word)
    {
        Span<char> lower = stackalloc char[LongestWord];
        return Lower(word, lower) is "a" or "an" or "one" or "two" or "three" or "four" or "five" or "six" or "seven" or "eight"
            or "nine" or "ten" or "eleven" or "twelve"
            or "half" or "quarter" or "third" or "about" or "around" or "approx" or "approximately" or "roughly" or "circa" or "ca"
                or "nearly" or "almost" or "like"
            or "maybe" or "level" or "lvl" or "heaped" or "heaping" or "rounded" or "scant" or "generous" or "good"
            or "pinch" or "dash" or "smidgen" or "knob" or "drop" or "drops" or "pinches" or "dashes" or "knobs"
            or "some" or "few" or "handful" or "splash" or "squeeze" or "drizzle" or "dollop" or "glug" or "sprinkling" or "bunch"
                or "couple" or "handfuls" or "splashes" or "dollops";
    }

    /// <summary>A container that is no food and no way to cut one.</summary>
    private static bool IsBox(ReadOnlySpan<char> word) => IsContainer(word) && !PieceWords.TryGet(word, out _);

    private static bool IsContainer(ReadOnlySpan<char> word)
    {
        Span<char> lower = stackalloc char[LongestWord];
        return Lower(word, lower) is "tin" or "tins" or "can" or "cans" or "package" or "packages" or "pkg" or "pkgs" or "pack"
            or "packs" or "packet" or "packets"
            or "carton" or "cartons" or "jar" or "jars" or "bottle" or "bottles" or "box" or "boxes" or "block" or "blocks" or "bag"
                or "bags" or "tub" or "tubs"
            or "pot" or "pots" or "container" or "containers" or "sachet" or "sachets" or "envelope" or "envelopes" or "bar" or "bars"
                or "brick" or "bricks"
            or "spoon" or "spoons" or "tube" or "tubes" or "pouch" or "pouches" or "piece" or "pieces" or "stick" or "sticks" or "sheet"
                or "sheets" or "punnet" or "punnets" or "basket" or "baskets";
    }

    // ---- places ----

    private const int LongestWord = 16;

    private static ReadOnlySpan<char> Lower(ReadOnlySpan<char> word, Span<char> lower)
    {
        if (word.Length > lower.Length)
            return default;
        for (int i = 0; i < word.Length; i++)
            lower[i] = char.IsAsciiLetterUpper(word[i]) ? (char)(word[i] | 0x20) : word[i];
        return lower[..word.Length];
    }

    /// <summary>The letters from here on, at most so many that no known word is longer.</summary>
    private readonly ReadOnlySpan<char> Word(int at)
    {
        int end = at, most = Math.Min(_text.Length, at + LongestWord + 1);
        while (end < most && char.IsAsciiLetter(_text[end]))
            end++;
        return at < end ? _text[at..end] : default;
    }

    private readonly bool Is(int at, string word) => Word(at).Equals(word, StringComparison.OrdinalIgnoreCase);

    private readonly bool DigitAt(int at) => at < _text.Length && char.IsAsciiDigit(_text[at]);

    /// <summary>Behind the letters and digits that stand here.</summary>
    private readonly int AfterRun(int at)
    {
        while (at < _text.Length && (char.IsLetterOrDigit(_text[at]) || _text[at] is '\'' or '’'))
            at++;
        return at;
    }

    private readonly int AfterNumber(int at)
    {
        while (at < _text.Length && (char.IsAsciiDigit(_text[at]) || (_text[at] is '.' or ',' or '/' && DigitAt(at + 1))))
            at++;
        return at;
    }

    private readonly int Skip(int at)
    {
        int most = Math.Min(_text.Length, at + MostSpace);
        while (at < most && char.IsWhiteSpace(_text[at]))
            at++;
        return at;
    }

    private readonly int SkipDot(int at) => at < _text.Length && _text[at] == '.' ? at + 1 : at;

    private readonly bool TryRangeSign(int at, out int after)
    {
        at = Skip(at);
        after = at;
        if (at >= _text.Length)
            return false;
        if (_text[at] is '-' or '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014')
            after = Skip(at + 1);
        else if (Is(at, "to") || Is(at, "or"))
            after = Skip(AfterRun(at));
        else
            return false;
        return true;
    }

    private static bool LooksLikeDigits(ReadOnlySpan<char> letters)
    {
        foreach (char c in letters)
        {
            if (!(c is 'O' or 'o' or 'l' or 'I' or 'i' or 'S' or 'B' or '|' || char.IsAsciiDigit(c)))
                return false;
        }
        return true;
    }

    /// <summary>"l00 g": a number in which a scanner saw letters.</summary>
    private readonly bool LettersWithDigits(int start, int end, out WrittenAmount found)
    {
        found = default;
        if (_text[start] is not ('l' or 'I' or 'O' or 'o') || end - start is < 2 or > 8 || !_text[start..end].ContainsAnyInRange('0', '9')
            || !LooksLikeDigits(_text[start..end]) || !TryUnit(Skip(end), out _, out _, out _, out int afterUnit, out _))
            return false;
        found = new WrittenAmount { Start = start, Length = afterUnit - start, Reason = "a number was expected; there is a letter in it" };
        return true;
    }
}
