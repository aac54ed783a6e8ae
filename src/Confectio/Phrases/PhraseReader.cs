using System.Globalization;
using System.Runtime.InteropServices;
using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Phrases;

/// <summary>
/// Reads one line: finds its amounts, parts the rest at commas and brackets into clauses, knows the clauses that are remarks, and asks the
/// table for the name that the others make.
/// </summary>
internal sealed class PhraseReader
{
    private const int MostClauses = 24;

    private const int MostAmounts = 12;

    /// <summary>A reader that has read its line: a recipe has many lines, and what one needs is more than what it finds.</summary>
    [ThreadStatic]
    private static PhraseReader? t_spare;

    private readonly List<WrittenAmount> _amounts = new(2);
    private readonly List<Clause> _clauses = new(2);
    private readonly List<PhrasePart> _parts = new(4);
    private string _text = "";
    private int _from;
    private IngredientTable _table = null!;
    private PhraseOptions _options = null!;
    private int _line;
    private bool _suggests;
    private List<Problem>? _problems;
    private List<string>? _assumed;
    private List<string>? _preparation;
    private List<WrittenAmount>? _seconds;
    private WrittenAmount? _main;

    /// <summary>The amount before another was added to it: what stands in a bracket behind it is the same as this.</summary>
    private WrittenAmount? _unsummed;
    private Ingredient? _ingredient;
    private Packing? _packing;
    private string _name = "";
    private int _to;
    private int _rest;
    private Phrase? _also;
    private NameMatch? _miss;
    private string? _noYield;
    private bool _optional, _taste, _extra, _divided, _about, _verb;

    /// <summary>A reader with nothing read yet.</summary>
    private static PhraseReader Begin(string text, int from, int to, IngredientTable table, PhraseOptions options, int line, bool suggests)
    {
        PhraseReader reader = t_spare ?? new PhraseReader();
        t_spare = null;
        (reader._text, reader._from, reader._to, reader._line) = (text, from, to, line);
        (reader._table, reader._options, reader._suggests) = (table, options, suggests);
        return reader;
    }

    /// <summary>Forgets the line, so that another can be read.</summary>
    private void End()
    {
        _amounts.Clear();
        _clauses.Clear();
        _parts.Clear();
        (_text, _name, _table, _options) = ("", "", null!, null!);
        (_problems, _assumed, _preparation, _seconds) = (null, null, null, null);
        (_main, _unsummed, _ingredient, _packing, _also, _miss, _noYield) = (null, null, null, null, null, null, null);
        (_rest, _optional, _taste, _extra, _divided, _about, _verb) = (0, false, false, false, false, false, false);
        t_spare = this;
    }

    /// <summary>A stretch of text between amounts, commas and brackets.</summary>
    private readonly record struct Clause(int Start, int End, bool InBracket);

    /// <param name="text">The line.</param>
    /// <param name="table">The ingredients.</param>
    /// <param name="options">How it is read.</param>
    /// <param name="line">Its number, for problems.</param>
    /// <param name="suggests">Whether near names are looked for where a name is not known, which is slow beside reading.</param>
    public static Phrase Read(string text, IngredientTable table, PhraseOptions options, int line, bool suggests)
    {
        int from = LineKinds.AfterBullet(text), to = text.Length;
        while (to > from && char.IsWhiteSpace(text[to - 1]))
            to--;
        return Read(text, from, to, table, options, line, suggests);
    }

    private static Phrase Read(string text, int from, int to, IngredientTable table, PhraseOptions options, int line, bool suggests)
    {
        if (to - from > Phrase.LongestText)
        {
            PhrasePart whole = new(PhrasePartKind.Unread, 0, text.Length, text);
            return new Phrase(text, PhraseKind.Note)
            {
                Unread = [whole],
                Parts = [whole],
                Problems = [new Problem(line, null, string.Create(CultureInfo.InvariantCulture,
                    $"the line is longer than {Phrase.LongestText} characters; it was not read"))],
            };
        }
        PhraseReader reader = Begin(text, from, to, table, options, line, suggests);
        Phrase phrase = reader.Read();
        reader.End();
        return phrase;
    }

    private Phrase Read()
    {
        ReadOnlySpan<char> line = _text.AsSpan(_from, _to - _from);
        AmountScanner scanner = new(line, _options.Reading);
        while (_amounts.Count < MostAmounts && scanner.TryNext(out WrittenAmount amount))
            _amounts.Add(amount with { Start = amount.Start + _from });
        bool begins = _amounts.Count > 0 && _amounts[0].Start == _from && (!_amounts[0].IsCount || FollowedByWord(_amounts[0].End));
        PhraseKind? byWords = LineKinds.Of(line, begins);
        // "Invert sugar   120 g" ends with its amount: it is no instruction if that is a food.
        _verb = byWords == PhraseKind.Instruction && _amounts.Count == 1 && _amounts[0].IsRead && _amounts[0].End == _to;
        if (byWords is PhraseKind kind && !_verb)
            return new Phrase(_text, kind);
        if (!TakeYield())
        {
            KeepAmounts();
            CutClauses();
            TakeAmounts();
            TakeRemarks();
            TakeName();
        }
        else
        {
            _amounts.Clear();
            CutClauses();
            TakeRemarks();
            foreach (Clause clause in _clauses)
                TakeTail(clause);
            _clauses.Clear();
        }
        return Finish();
    }

    // ---- amounts ----

    /// <summary>Keeps the amounts that are amounts of this ingredient, and cuts the line where a second ingredient begins.</summary>
    private void KeepAmounts()
    {
        int kept = 0, last = -1;
        for (int i = 0; i < _amounts.Count; i++)
        {
            WrittenAmount amount = _amounts[i];
            bool inBracket = InBracket(amount.Start);
            string? before = WordBefore(amount.Start, out int beforeAt);
            bool joined = !inBracket && last >= 0 && before is "plus" or "and" or "&" or "+" && HasLetters(last, beforeAt);
            if (!inBracket && last >= 0 && before == "or" && FollowedByWord(amount.End) && HasLetters(last, beforeAt))
            {
                // "2 Tbsp honey or 1 cup sugar": the first is taken, and that is said.
                Alternative(beforeAt, _to);
                _to = beforeAt;
                break;
            }
            if (joined && FollowedByName(amount.End))
            {
                int to = _to;
                _to = beforeAt;
                _also = Read(_text, amount.Start, to, _table, _options, _line, _suggests);
                break;
            }
            if (amount.IsCount || amount.IsVague)
            {
                if (amount.Start == _from)
                {
                    // The count stands where an amount does.
                }
                else if (before is "x" or "×" && !FollowedByWord(amount.End))
                {
                    amount = amount with { Start = beforeAt, Length = amount.End - beforeAt };
                }
                else if (last < 0 && amount.IsCount && !inBracket && !FollowedByWord(amount.End) && amount.End >= _to - 1
                    && HasLetters(_from, amount.Start)
                    && _table.MatchName(_text[_from..amount.End]).Ingredient is null)
                {
                    // "Eggs 3"
                }
                else if (inBracket && amount.IsCount && (EggNoun(amount.End) is int end and > 0 || StandsAlone(amount, out end)))
                {
                    amount = amount with
                    {
                        Amount = new Amount(new AmountPart(amount.CountLow, amount.CountHigh, KitchenUnit.Piece, "large"), null),
                            IsCount = false, IsApproximate = true,
                        Length = end - amount.Start,
                    };
                }
                else
                {
                    continue;
                }
            }
            _amounts[kept++] = amount;
            if (!inBracket)
                last = amount.End;
        }
        _amounts.RemoveRange(kept, _amounts.Count - kept);
        while (_to > _from && char.IsWhiteSpace(_text[_to - 1]))
            _to--;
    }

    private void TakeAmounts()
    {
        int main = -1, read = -1;
        bool unread = false;
        for (int i = 0; i < _amounts.Count && main < 0; i++)
        {
            ref readonly WrittenAmount amount = ref AmountAt(i);
            main = (amount.IsRead || amount.IsCount) && !InBracket(amount.Start) ? i : -1;
            read = read < 0 && amount.IsRead ? i : read;
            unread |= amount.Reason is not null;
        }
        // "1 jar marshmallow cream (7 oz)": the bracket says how much is in it.
        bool boxed = main < 0 && read > 0 && _amounts.Count == 2 && _amounts[0].IsOneContainer && !_amounts[1].Amount.IsPiece;
        main = main < 0 && (!unread || boxed) ? read : main;
        for (int i = 0; i < _amounts.Count; i++)
        {
            WrittenAmount amount = _amounts[i];
            if (boxed && amount.IsOneContainer)
            {
                Part(PhrasePartKind.Amount, amount.Start, amount.End);
            }
            else if (amount.Reason is string reason)
            {
                Unread(amount.Start, amount.End);
                Problem(amount.Start, $"{Excerpt.Of(_text.AsSpan(amount.Start, amount.Length))} cannot be read as an amount: {reason}");
            }
            else if (i == main)
            {
                _main = amount;
            }
            else if (main < 0 || amount.IsCount)
            {
                Unread(amount.Start, amount.End);
            }
            else if (InBracket(amount.Start) || OnlySigns(_amounts[i - 1].End, amount.Start))
            {
                if (Each(amount.End) is int end and > 0 && CountOf(_main!.Value) is (Fraction low, Fraction high)
                    && amount.Amount.PartCount == 1
                    && TryTimes(amount.Amount.Part(0), low, high, out AmountPart product))
                {
                    // "2 packets (7 g each)" is 14 g.
                    Part(PhrasePartKind.Amount, _main.Value.Start, _main.Value.End);
                    _main = _main.Value with { Amount = new Amount(product, null), IsCount = false };
                    Part(PhrasePartKind.SecondAmount, amount.Start, end);
                    continue;
                }
                (_seconds ??= []).Add(amount);
                Part(PhrasePartKind.SecondAmount, amount.Start, amount.End);
            }
            else if (WordBefore(amount.Start, out _) is "plus" or "and" or "&" or "+"
                && TrySum(_main!.Value.Amount, amount.Amount, out Amount sum))
            {
                // "1 cup sugar, plus 2 Tbsp for dusting": all of it is sugar.
                Part(PhrasePartKind.SecondAmount, amount.Start, amount.End);
                _unsummed ??= _main;
                _main = _main.Value with { Amount = sum };
                Assume($"{_text.AsSpan(amount.Start, amount.Length)} of the same was added to the amount");
            }
            else
            {
                Unread(amount.Start, amount.End);
                Problem(amount.Start, $"{Excerpt.Of(_text.AsSpan(amount.Start, amount.Length))} is a second amount, and it is not said of "
                    + $"what");
            }
        }
        if (_main is WrittenAmount taken && !BeginsPart(taken.Start))
            Part(PhrasePartKind.Amount, taken.Start, taken.End);
    }

    private ref readonly WrittenAmount AmountAt(int index) => ref CollectionsMarshal.AsSpan(_amounts)[index];

    private bool BeginsPart(int at)
    {
        foreach (PhrasePart part in _parts)
        {
            if (part.Start == at)
                return true;
        }
        return false;
    }

    private bool HasUnread() => FindPart(PhrasePartKind.Unread) >= 0;

    private int FindPart(PhrasePartKind kind)
    {
        for (int i = 0; i < _parts.Count; i++)
        {
            if (_parts[i].Kind == kind)
                return i;
        }
        return -1;
    }

    private static (Fraction Low, Fraction High)? CountOf(WrittenAmount amount) => amount.IsCount ? (amount.CountLow, amount.CountHigh)
        : amount.Amount.IsPiece && amount.Amount.PartCount == 1 ? (amount.Amount.Part(0).Low, amount.Amount.Part(0).High) : null;

    private static bool TryTimes(AmountPart part, Fraction low, Fraction high, out AmountPart product)
    {
        product = default;
        if (!Fraction.TryMultiply(part.Low, low, out Fraction first) || !Fraction.TryMultiply(part.High, high, out Fraction last))
            return false;
        product = new AmountPart(first, last, part.Unit, part.Piece);
        return true;
    }

    private static bool TrySum(Amount first, Amount second, out Amount sum)
    {
        sum = default;
        if (first.IsMass != second.IsMass || first.IsVolume != second.IsVolume || first.IsRange || second.IsRange
            || first.PartCount + second.PartCount > 8)
            return false;
        AmountPart[] rest = new AmountPart[first.PartCount + second.PartCount - 1];
        for (int i = 0; i < rest.Length; i++)
            rest[i] = i + 1 < first.PartCount ? first.Part(i + 1) : second.Part(i + 1 - first.PartCount);
        sum = new Amount(first.Part(0), rest);
        return true;
    }

    /// <summary>"juice of 3 lemons", "zest and juice of 1 orange", "2 lemons, juiced": what a fruit yields.</summary>
    private bool TakeYield()
    {
        int at = _from, nameAt = -1, nameEnd = 0, prepAt = -1, prepEnd = 0;
        string? first = null, second = null;
        (int Start, int End) firstAt = default, secondAt = default;
        while (Word(at, out int start, out int end) is string word)
        {
            if (YieldKind(word) is string kind && second is null)
            {
                (first, second) = first is null ? (kind, null) : (first, kind);
                (firstAt, secondAt) = second is null ? ((start, end), default) : (firstAt, (start, end));
                nameAt = nameAt < 0 ? start : nameAt;
                nameEnd = end;
            }
            else if (first is null && word is "finely" or "freshly" or "grated" or "squeezed" or "strained" or "fresh" or "the"
                or "coarsely")
            {
                if (word is not "the")
                    (prepAt, prepEnd) = (prepAt < 0 ? start : prepAt, end);
            }
            else if (first is null || word is not ("and" or "of" or "from" or "the"))
            {
                break;
            }
            at = end;
        }
        at = SkipSpace(at);
        if (at >= _to)
            return false;
        AmountReader reader = new(_text.AsSpan(at, _to - at), _options.Reading);
        if (!reader.TryReadQuantity(out Fraction number))
            return false;
        int amountAt = at, amountEnd = at + reader.Position;
        at = amountEnd;
        string? fruit = null;
        while (fruit is null && Word(at, out _, out int end) is string word)
        {
            at = end;
            if (word is "large" or "medium" or "small" or "unwaxed" or "ripe" or "juicy" or "organic" or "whole" or "fresh" or "of" or "a")
                continue;
            fruit = word.EndsWith('s') ? word[..^1] : word;
        }
        if (fruit is null || !IsCitrus(fruit))
            return false;
        if (first is null)
        {
            // "2 lemons, juice only", "1 lemon, zested and juiced": what is wanted stands behind.
            int behind = at;
            while (behind < _to && (IsSign(_text[behind]) || _text[behind] is '(' or ')'))
                behind++;
            while (Word(behind, out int start, out int end) is string word)
            {
                if (YieldKind(word) is string kind && second is null)
                {
                    (first, second) = first is null ? (kind, null) : (first, kind);
                    (firstAt, secondAt) = second is null ? ((start, end), default) : (firstAt, (start, end));
                    nameAt = nameAt < 0 ? start : nameAt;
                    nameEnd = end;
                }
                else if (first is null ? word is not ("finely" or "grated" or "the")
                    : word is not ("and" or "only" or "of" or "finely" or "grated"))
                {
                    break;
                }
                behind = end;
            }
            if (first is null)
                return false;
            at = behind;
        }
        RoughMeasure? row = RoughMeasure.Yield(first, fruit), other = second is null ? null : RoughMeasure.Yield(second, fruit);
        if (row is null && other is not null)
        {
            // "zest and juice of 1 lime": of the juice there is a weight.
            (row, other, first, second, firstAt, secondAt) = (other, row, second!, first, secondAt, firstAt);
        }
        if (row is null || !_table.TryGet(row.Ingredient, out Ingredient? taken))
        {
            _noYield = $"no weight of the {first} of a {fruit} is known";
            return false;
        }
        Ingredient? also = null;
        if (other is not null && !_table.TryGet(other.Ingredient, out also))
            return false;
        if (second is not null && other is null)
        {
            Unread(secondAt.Start, secondAt.End);
            Problem(secondAt.Start, $"{Excerpt.Of(_text.AsSpan(secondAt.Start, secondAt.End - secondAt.Start))} is left out: no weight of the {second} of a {fruit} is known");
            (nameAt, nameEnd) = firstAt;
        }
        _ingredient = taken;
        _name = $"{first} of {fruit}";
        Part(PhrasePartKind.Amount, amountAt, amountEnd);
        Part(PhrasePartKind.Name, nameAt, nameEnd);
        if (prepAt >= 0)
            Prepare(prepAt, prepEnd);
        // "juice of 2 lemons (about 80 ml)": what the cook counted on is said, and need not be taken from a table.
        if (other is null && Stated(at) is WrittenAmount stated)
        {
            _main = stated;
            Part(PhrasePartKind.Amount, stated.Start, stated.End);
            _rest = stated.End;
            return true;
        }
        _main = YieldAmount(row, number, amountAt, amountEnd);
        Assume(YieldWords(number, fruit, first, _main.Value, row));
        if (other is not null)
        {
            WrittenAmount amount = YieldAmount(other, number, amountAt, amountEnd);
            _also = new Phrase(_text, PhraseKind.Ingredient)
            {
                Amount = amount, Ingredient = also, Name = $"{second} of {fruit}",
                    Assumed = [YieldWords(number, fruit, second!, amount, other)],
            };
        }
        _rest = at;
        return true;
    }

    /// <summary>The one volume or mass in a bracket that begins here.</summary>
    private WrittenAmount? Stated(int at)
    {
        at = SkipSpace(at);
        if (at >= _to || _text[at] is not ('(' or '['))
            return null;
        WrittenAmount? found = null;
        foreach (WrittenAmount amount in _amounts)
        {
            if (amount.Start < at)
                continue;
            if (found is not null || !amount.IsRead || amount.IsCount || amount.Amount.IsPiece || !OnlySigns(at, amount.Start))
                return null;
            found = amount;
        }
        return found;
    }

    private static string YieldWords(Fraction number, string fruit, string kind, WrittenAmount amount, RoughMeasure row) =>
        $"{number} {fruit}{(number > 1 ? "s give" : " gives")} {amount.Amount} of {kind}: {row.Note}";

    private static bool IsCitrus(string fruit) => fruit is "lemon" or "lime" or "orange" or "grapefruit" or "clementine" or "mandarin"
        or "tangerine" or "satsuma" or "pomelo" or "yuzu" or "bergamot";

    private static string? YieldKind(string word) => word is "juice" or "juiced" ? "juice" : word is "zest" or "zested" or "rind" ? "zest"
        : null;

    private static WrittenAmount YieldAmount(RoughMeasure row, Fraction number, int start, int end)
    {
        AmountPart one = new(row.ExactLow, row.ExactHigh, row.Unit, null);
        return new WrittenAmount
        {
            Amount = TryTimes(one, number, number, out AmountPart product) ? new Amount(product, null) : default, Start = start,
                Length = end - start, IsApproximate = true,
        };
    }

    // ---- clauses ----

    /// <summary>Parts what is no amount at commas, brackets, dashes and dot leaders.</summary>
    private void CutClauses()
    {
        int start = Math.Max(_from, _rest), next = 0, depth = 0;
        for (int at = start; at <= _to; at++)
        {
            while (next < _amounts.Count && _amounts[next].End <= at && at > _amounts[next].Start)
                next++;
            bool amount = next < _amounts.Count && _amounts[next].Start == at;
            if (at < _to && !amount && !Parts(at))
                continue;
            if (_clauses.Count < MostClauses)
                AddClause(start, at, depth > 0);
            if (at < _to && _text[at] is '(' or '[')
                depth++;
            else if (at < _to && _text[at] is ')' or ']')
                depth = Math.Max(0, depth - 1);
            if (amount)
            {
                at = _amounts[next].End - 1;
                next++;
            }
            start = at + 1;
        }
    }

    private bool Parts(int at) => _text[at] switch
    {
        ',' => at == 0 || at + 1 >= _to || !char.IsAsciiDigit(_text[at - 1]) || !char.IsAsciiDigit(_text[at + 1]),
        ';' or '(' or ')' or '[' or ']' or '\t' or '\n' or '\r' or '|' or '…' or '=' => true,
        ':' => at + 1 >= _to || !char.IsAsciiDigit(_text[at + 1]),
        '-' or '–' or '—' => (at == _from || char.IsWhiteSpace(_text[at - 1])) && (at + 1 >= _to || char.IsWhiteSpace(_text[at + 1])),
        '.' => at + 1 < _to && _text[at + 1] == '.',
        _ => false,
    };

    private void AddClause(int start, int end, bool inBracket)
    {
        while (start < end && IsSign(_text[start]))
            start++;
        while (end > start && IsSign(_text[end - 1]))
            end--;
        // "of" and what joins amounts says nothing.
        while (Word(start, out int wordAt, out int wordEnd) is string word && wordAt == start && wordEnd <= end
            && (word is "of" or "or" or "and" or "plus" && (wordEnd == end || word == "of")))
        {
            start = wordEnd;
            while (start < end && IsSign(_text[start]))
                start++;
        }
        if (start < end)
            _clauses.Add(new Clause(start, end, inBracket));
    }

    private static bool IsSign(char c) => char.IsWhiteSpace(c)
        || c is '.' or ',' or ';' or ':' or '/' or '=' or '|' or '–' or '—' or '-' or '…' or '+' or '*' or '_';

    /// <summary>Takes out optional, to taste, for dusting, divided, or another ingredient.</summary>
    private void TakeRemarks()
    {
        for (int i = 0; i < _clauses.Count; i++)
        {
            Clause clause = _clauses[i];
            if (IsTaken(clause.Start, clause.End) || Remark(clause.Start, clause.End) || Origin(clause))
            {
                _clauses.RemoveAt(i--);
                continue;
            }
            // At the end of a clause: "salt to taste", "a knob of butter for the tin", "milk or half and half".
            for (int at = clause.Start + 1; at < clause.End; at++)
            {
                // "icing sugar + extra for rolling"
                if (_text[at - 1] == ' ' && _text[at] == '+' && Word(at + 1, out int extraAt, out _) is "extra" or "more" && Remark(extraAt, clause.End))
                {
                    _clauses[i] = clause with { End = at - 1 };
                    break;
                }
                if (_text[at - 1] == ' ' && _text[at] is 'f' or 't' or 'o' or 'p' or 'i' or 'a' or 'F' or 'T' or 'O' or 'P' or 'I' or 'A'
                    && Word(at, out _, out _) is "for" or "to" or "or" or "plus" or "if" or "as" or "approximately" or "approx"
                        or "optional" or "and" or "on"
                    && !IsPartOfName(clause, at) && Remark(at, clause.End))
                {
                    int end = at;
                    while (end > clause.Start && IsSign(_text[end - 1]))
                        end--;
                    _clauses[i] = clause with { End = end };
                    break;
                }
            }
        }
        if (_clauses.Count > 0 && Word(_clauses[0].Start, out _, out int after) is "extra" && after < _clauses[0].End
            && !_table.TryGet(_text[_clauses[0].Start.._clauses[0].End], out _))
        {
            _extra = true;
            Part(PhrasePartKind.Remark, _clauses[0].Start, after);
            _clauses[0] = _clauses[0] with { Start = SkipSpace(after) };
        }
    }

    /// <summary>
    /// Whether a word belongs to a name: of the whole, or because what stands before an "or" is no name, as in "light or dark brown sugar".
    /// </summary>
    private bool IsPartOfName(Clause clause, int at) => _table.TryGet(_text[clause.Start..clause.End], out _)
        || (Word(at, out _, out int after) is "or" && Word(after, out _, out _) is not ("to" or "as" or "so" or "more" or "less")
            && _table.MatchName(_text[clause.Start..at]).Ingredient is null);

    /// <summary>Whether a part stands there already, such as the "each" of "7 g each".</summary>
    private bool IsTaken(int start, int end)
    {
        foreach (PhrasePart part in _parts)
        {
            if (start < part.End && part.Start < end)
                return true;
        }
        return false;
    }

    private bool Remark(int start, int end)
    {
        string first = Word(start, out _, out int next) ?? "";
        string second = next < end ? Word(next, out _, out int third) ?? "" : "";
        ReadOnlySpan<char> clause = _text.AsSpan(start, end - start);
        bool alone = next >= end;
        switch (first)
        {
            case "optional" or "optionally":
                _optional = true;
                break;
            case "if" when second is "desired" or "liked" or "you" or "u" or "using" or "wanted" or "needed" or "necessary" or "preferred":
                if (second is "needed" or "necessary")
                    _taste = true;
                else
                    _optional = true;
                break;
            case "on" when second is "top":
                break;
            case "to" when second is "taste":
                _taste = true;
                break;
            case "or" when clause.Length > 3:
                if ((second is "to" && clause.EndsWith("taste", StringComparison.OrdinalIgnoreCase)) || second is "as")
                {
                    _taste = true;
                    break;
                }
                if (second is "so" or "more" or "less")
                {
                    _about = true;
                    break;
                }
                Alternative(start, end);
                return true;
            case "as" when second is "needed" or "required" or "desired" or "necessary":
                _taste = true;
                break;
            case "plus" or "and" or "with" when second is "extra" or "more" or "a" or "some":
                _extra = true;
                break;
            case "extra" or "more" when second is "for" or "to":
                _extra = true;
                break;
            case "more" when second is "or":
                _about = true;
                break;
            case "for" or "to" when !alone && second is not "taste":
                break;
            case "divided" when alone:
                _divided = true;
                break;
            case "approximately" or "approx" or "about" when alone:
                _about = true;
                break;
            case { Length: > 0 } when alone && _main is { Amount.IsVolume: true } && FillWords.TryGet(first, out MeasureFill fill):
                _main = _main.Value with { Fill = fill, IsApproximate = _main.Value.IsApproximate || fill != MeasureFill.Level };
                break;
            default:
                return false;
        }
        Part(PhrasePartKind.Remark, start, end);
        return true;
    }

    /// <summary>A bracket that says what it comes from: "(1-2 lemons)", "(from 6 large eggs)", "(about 4)", "(juice of 1 lemon)".</summary>
    private bool Origin(Clause clause)
    {
        if (!clause.InBracket)
            return false;
        int nouns = 0;
        for (int at = clause.Start; at < clause.End;)
        {
            if (char.IsAsciiDigit(_text[at]) || AmountWriter.TryVulgar(_text[at], out _) || IsSign(_text[at]))
                at++;
            else if (Word(at, out _, out int end) is "from" or "about" or "approx" or "approximately" or "of" or "juice" or "the" or "a"
                or "an" or "to" or "or" or "large" or "medium"
                or "small" or "extra" or "whole" or "half" or "one" or "two" or "three" or "four" or "five" or "six")
                at = end;
            else if (Word(at, out _, out end) is "lemon" or "lemons" or "lime" or "limes" or "orange" or "oranges" or "egg" or "eggs"
                or "white" or "whites" or "yolk" or "yolks")
                (at, nouns) = (end, nouns + 1);
            else
                return false;
        }
        // An amount with a size is a second amount, and is none of this.
        if (nouns == 0)
            return false;
        foreach (ref readonly WrittenAmount amount in CollectionsMarshal.AsSpan(_amounts))
        {
            if (amount.IsRead && amount.Start >= clause.Start && amount.Start < clause.End)
                return false;
        }
        Part(PhrasePartKind.Remark, clause.Start, clause.End);
        return true;
    }

    private void Alternative(int start, int end)
    {
        Part(PhrasePartKind.Alternative, start, end);
        Assume($"the first that is named was taken, not {Excerpt.Of(_text.AsSpan(start, end - start))}");
    }

    // ---- the name ----

    private void TakeName()
    {
        if (_clauses.Count == 0)
            return;
        if (Word(_clauses[0].Start, out int eachAt, out int eachEnd) is "each" && eachAt == _clauses[0].Start
            && TakeEach(SkipSpace(eachEnd)))
            return;
        NameMatch? first = null;
        for (int count = _clauses.Count; count > 0; count--)
        {
            string name = Joined(count);
            NameMatch match = _table.MatchName(name, _options.AcceptSpelling);
            first ??= match;
            // "2 sheets gelatine (bronze)"
            if (match.Ingredient is null && _main is { Amount.IsPiece: true, IsCount: false } leaves
                && leaves.Amount.Part(0).Piece is "leaf" or "sheet")
                match = _table.MatchName($"{leaves.Amount.Part(0).Piece} {name}") is { Ingredient: not null } whole ? whole : match;
            if (match.Ingredient is Ingredient ingredient)
            {
                (_ingredient, _packing) = (OfPieces(ingredient, name), match.Packing);
                if (match.SpellingDistance > 0)
                    Assume(string.Create(CultureInfo.InvariantCulture,
                        $"{Excerpt.Of(name)} was taken for {ingredient.Name}, {match.SpellingDistance} letters apart"));
                Place(count, match);
                for (int i = count; i < _clauses.Count; i++)
                    TakeTail(_clauses[i]);
                _clauses.Clear();
                return;
            }
            // Only a clause that changes no food may be taken off.
            if (!ClauseWords.IsHarmless(_text.AsSpan(_clauses[count - 1].Start, _clauses[count - 1].End - _clauses[count - 1].Start)))
                break;
        }
        _miss = first;
        _name = _text[_clauses[0].Start.._clauses[0].End];
    }

    /// <summary>"12 leaves gelatine" is leaf gelatine: the piece belongs to the name where the ingredient has no such piece.</summary>
    private Ingredient OfPieces(Ingredient ingredient, string name)
    {
        if (_main is not { Amount.IsPiece: true, IsCount: false } pieces || pieces.Amount.Part(0) is not { Piece: string piece } part
            || ingredient.TryGetPiece(piece, out _))
            return ingredient;
        Ingredient whole = _table.MatchName($"{piece} {name}").Ingredient ?? ingredient;
        if (!whole.TryGetPiece("piece", out _) || pieces.Amount.PartCount > 1
            || (piece is not ("leaf" or "sheet" or "piece" or "cube") && whole == ingredient))
            return ingredient;
        _main = pieces with { Amount = new Amount(new AmountPart(part.Low, part.High, KitchenUnit.Piece, "piece"), null) };
        return whole;
    }

    /// <summary>"1 tsp each baking powder and salt".</summary>
    private bool TakeEach(int at)
    {
        int end = _clauses[^1].End;
        for (int i = at; i + 5 < end; i++)
        {
            int skip = _text[i] == ' ' && (Word(i + 1, out _, out int after) is "and") ? after
                : _text.AsSpan(i).StartsWith(" & ", StringComparison.Ordinal) ? i + 2 : 0;
            if (skip == 0)
                continue;
            Part(PhrasePartKind.Remark, _clauses[0].Start, _clauses[0].Start + 4);
            PhraseReader other = Begin(_text, SkipSpace(skip), end, _table, _options, _line, _suggests);
            (other._main, other._seconds) = (_main, _seconds is null ? null : [.. _seconds]);
            other.CutClauses();
            other.TakeRemarks();
            other.TakeName();
            _also = other.Finish();
            other.End();
            _clauses.Clear();
            AddClause(at, i, false);
            TakeRemarks();
            TakeName();
            return true;
        }
        return false;
    }

    private string Joined(int count)
    {
        if (count == 1)
            return _text[_clauses[0].Start.._clauses[0].End];
        System.Text.StringBuilder name = new();
        for (int i = 0; i < count; i++)
        {
            Clause clause = _clauses[i];
            if (i > 0)
                name.Append(clause.InBracket ? " (" : ", ");
            name.Append(_text, clause.Start, clause.End - clause.Start);
            if (i > 0 && clause.InBracket)
                name.Append(')');
        }
        return name.ToString();
    }

    /// <summary>Says where the name, the packing and the preparation of the first clauses stand.</summary>
    private void Place(int count, NameMatch match)
    {
        int from = _parts.Count;
        foreach (string words in match.Preparation)
            Prepare(count, words);
        foreach (string words in match.Ignored)
            Prepare(count, words);
        for (int i = 0; i < count; i++)
        {
            Clause clause = _clauses[i];
            // Words of a packing that nobody said yet.
            for (int at = clause.Start; at < clause.End && match.Packing is not null; at = SkipWord(at))
            {
                at = SkipSpace(at);
                int end = ClauseWords.AfterPacking(_text.AsSpan(at, clause.End - at)) + at;
                if (end > at && !(i == 0 && at == clause.Start && end == clause.End))
                    Part(PhrasePartKind.Packing, at, end);
            }
        }
        for (int i = 0; i < count; i++)
        {
            Clause clause = _clauses[i];
            // The longest run of words that are nothing else is the name.
            (int Start, int End) best = (0, 0);
            int start = clause.Start;
            while (start < clause.End)
            {
                int end = clause.End;
                foreach (PhrasePart part in _parts)
                {
                    if (part.Start <= start && start < part.End)
                        (start, end) = (part.End, -1);
                    else if (part.Start > start && part.Start < end)
                        end = part.Start;
                    if (end < 0)
                        break;
                }
                if (end < 0)
                    continue;
                (int first, int last) = Trimmed(start, end);
                if (last - first > best.End - best.Start)
                    best = (first, last);
                start = end;
            }
            if (best.End <= best.Start)
                continue;
            if (_name.Length == 0)
                _name = _text.AsSpan(best.Start, best.End - best.Start).SequenceEqual(match.Text) ? match.Text
                    : _text[best.Start..best.End];
            Part(PhrasePartKind.Name, best.Start, best.End);
        }
        if (_name.Length == 0)
            _name = _text[_clauses[0].Start.._clauses[0].End];
    }

    private (int Start, int End) Trimmed(int start, int end)
    {
        while (start < end && IsSign(_text[start]))
            start++;
        if (Word(start, out _, out int after) is "and" or "the" or "of" && after < end)
            start = SkipSpace(after);
        while (end > start && IsSign(_text[end - 1]))
            end--;
        return (start, end);
    }

    private int SkipWord(int at)
    {
        while (at < _to && !char.IsWhiteSpace(_text[at]))
            at++;
        return at;
    }

    /// <summary>Words of preparation as they stand in one of the first clauses.</summary>
    private void Prepare(int count, string words)
    {
        for (int i = 0; i < count; i++)
        {
            int at = _text.AsSpan(_clauses[i].Start, _clauses[i].End - _clauses[i].Start).IndexOf(words, StringComparison.Ordinal);
            if (at >= 0 && !IsTaken(_clauses[i].Start + at, _clauses[i].Start + at + words.Length))
            {
                Prepare(_clauses[i].Start + at, _clauses[i].Start + at + words.Length);
                return;
            }
        }
        (_preparation ??= []).Add(words);
    }

    /// <summary>
    /// A clause behind the name, of which the table knows nothing: how it is packed or prepared, or what nobody understands.
    /// </summary>
    private void TakeTail(Clause clause)
    {
        ReadOnlySpan<char> words = _text.AsSpan(clause.Start, clause.End - clause.Start);
        int packed = ClauseWords.AfterPacking(words);
        if (packed > 0 && PackingText.TryRead(words[..packed], out Packing packing))
        {
            _packing ??= packing;
            Part(PhrasePartKind.Packing, clause.Start, clause.Start + packed);
            (int start, int end) = Trimmed(clause.Start + packed, clause.End);
            if (start < end)
                Prepare(start, end);
        }
        else if (ClauseWords.IsPreparation(words))
        {
            Prepare(clause.Start, clause.End);
        }
        else
        {
            Unread(clause.Start, clause.End);
        }
    }

    private void Prepare(int start, int end)
    {
        (_preparation ??= []).Add(_text[start..end]);
        Part(PhrasePartKind.Preparation, start, end);
    }

    // ---- the answer ----

    /// <summary>
    /// A cut in which nobody can weigh the ingredient is something done to it: chopped butter. Sifted butter stays a mistake.
    /// </summary>
    private void ForgetSenselessPacking()
    {
        if (_packing is not (Packing packing and >= Packing.Whole and <= Packing.Flaked) || _ingredient is null
            || _ingredient.TryGetNearestDensity(packing, out _))
            return;
        PackingIsPreparation(0);
    }

    /// <summary>The words of a packing that stand from here on are something done to the food.</summary>
    private void PackingIsPreparation(int from)
    {
        _packing = null;
        for (int i = 0; i < _parts.Count; i++)
        {
            if (_parts[i].Kind == PhrasePartKind.Packing && _parts[i].Start >= from)
            {
                (_preparation ??= []).Add(_parts[i].Text);
                _parts[i] = new PhrasePart(PhrasePartKind.Preparation, _parts[i].Start, _parts[i].Length, _text);
            }
        }
    }

    /// <summary>
    /// A word behind the name that changes what a cup of it weighs may be meant before measuring or after. Cream that is whipped, butter
    /// that is melted and fruit that is puréed were measured first (common practice). Sifted, chopped and the like are taken as how the
    /// measure was filled, as tables print them, unless a second figure says otherwise, and that this was taken is said. What is weighed
    /// weighs the same either way.
    /// </summary>
    private void WeighLaterPacking()
    {
        if (_packing is not Packing packing || !packing.IsDone() || _ingredient is null || _main is not WrittenAmount main || !main.IsCount
            && (main.Amount.IsMass || !main.IsRead)
            || packing is Packing.Sifted && !_ingredient.TryGetNearestDensity(packing, out _))
            return;
        int name = FindPart(PhrasePartKind.Name), said = FindPart(PhrasePartKind.Packing);
        if (name < 0 || said < 0 || _parts[said].Start < _parts[name].Start || _parts[said].Start < main.Start)
            return;
        PhrasePart word = _parts[said];
        // A second figure says which: "1 1/2 cups (240 g) icing sugar, sifted" was measured first.
        bool isFirst = packing is Packing.Whipped or Packing.Pureed or Packing.Melted
            || (Contradiction(packing) is not null && Contradiction(null) is null);
        if (!isFirst)
        {
            if (main.Amount.IsVolume && _seconds is null)
                Assume($"{Excerpt.Of(word.Text)} stands behind the name and is taken as how it was measured; a recipe may mean it to be "
                    + $"measured first and {packing.ToWord()} then, as American ones often do");
            return;
        }
        PackingIsPreparation(_parts[name].Start);
        if (main.Amount.IsVolume)
            Assume($"{Excerpt.Of(word.Text)} stands behind the name, so it is measured first, then {packing.ToWord()} (common practice)");
    }

    private Phrase Finish()
    {
        ForgetSenselessPacking();
        WeighLaterPacking();
        if (_verb && _ingredient is null)
            return new Phrase(_text, PhraseKind.Instruction);
        // "(about 20 pieces)"
        if (_ingredient is null && _text[_from] == '(' && _text.AsSpan(_from, _to - _from).IndexOf(')') == _to - _from - 1)
            return new Phrase(_text, PhraseKind.Note);
        if (_ingredient is null && _clauses.Count > 0)
        {
            int start = _clauses[0].Start, end = _clauses[0].End;
            if (_main is null && _amounts.Count == 0 && LineKinds.OfUnknown(_text.AsSpan(_from,
                _to - _from)) is PhraseKind kind and not PhraseKind.Ingredient)
                return new Phrase(_text, kind) { IsKindGuessed = true };
            foreach (Clause clause in _clauses)
                Unread(clause.Start, clause.End);
            Problem(start, Unknown(_text.AsSpan(start, end - start)));
        }
        if (_main is { IsCount: true } count)
            _main = Counted(count);
        // Remarks about nothing.
        if (_ingredient is null && _main is null && !HasUnread())
            return new Phrase(_text, PhraseKind.Note);
        if (_main is WrittenAmount main)
        {
            if (_about && !main.IsApproximate)
                _main = main = main with { IsApproximate = true };
            SayWhatWasTaken(main);
        }
        int suspect = -1;
        // How many pieces it makes says nothing where nobody knows a piece.
        for (int i = (_seconds?.Count ?? 0) - 1; i >= 0 && _ingredient is not null; i--)
        {
            if (_seconds![i].Amount is { IsPiece: true, PartCount: 1 } pieces && !_ingredient.TryGetPiece(pieces.Part(0).Piece!, out _))
            {
                Unread(_seconds[i].Start, _seconds[i].End);
                _seconds.RemoveAt(i);
            }
        }
        if (Contradiction(_packing) is FigureCheck.Contradiction found)
        {
            if (_options.ChecksFigures)
            {
                Problem(found.At, found.Message);
                suspect = found.Suspect;
            }
        }
        _parts.Sort((left, right) => left.Start.CompareTo(right.Start));
        return new Phrase(_text, PhraseKind.Ingredient)
        {
            Amount = _main,
            SecondAmounts = _seconds ?? (IReadOnlyList<WrittenAmount>)[],
            Name = _name,
            Ingredient = _ingredient,
            Packing = _packing,
            Preparation = _preparation ?? (IReadOnlyList<string>)[],
            IsOptional = _optional,
            IsToTaste = _taste,
            HasExtra = _extra,
            IsDivided = _divided,
            Assumed = _assumed ?? (IReadOnlyList<string>)[],
            Unread = HasUnread() ? _parts.FindAll(part => part.Kind == PhrasePartKind.Unread) : [],
            Parts = _parts.ToArray(),
            Problems = _problems ?? (IReadOnlyList<Problem>)[],
            Also = _also,
            Suspect = suspect,
        };
    }

    /// <summary>What of the figures of the line contradicts another, if the food is packed so.</summary>
    private FigureCheck.Contradiction? Contradiction(Packing? packing) => _ingredient is null || _main is null || _seconds is null ? null
        : FigureCheck.Of(_ingredient, packing, _unsummed ?? _main.Value, _seconds, _options.MeasuringSystem);

    private string Unknown(ReadOnlySpan<char> name)
    {
        string why = $"{Excerpt.Of(name)} is not an ingredient of this table";
        if (_noYield is not null)
            return $"{why}: {_noYield}";
        if (_miss is null || !_suggests)
            return _miss is null ? why : why + ": " + _miss.Reason.TrimEnd('.');
        string near = string.Join(", ", _miss.Suggestions.Take(3).Select(suggestion => suggestion.Name));
        return why + ": " + _miss.Reason.TrimEnd('.') + (near.Length == 0 ? "" : "; near names: " + near);
    }

    /// <summary>What so many of the ingredient are: large ones, unless the table knows only one kind of piece.</summary>
    private WrittenAmount? Counted(WrittenAmount count)
    {
        if (_ingredient is null)
        {
            Unread(count.Start, count.End);
            return null;
        }
        string? size = SizeLetter(count.End);
        if (size is not null && _ingredient.TryGetPiece(size, out _))
        {
            Assume($"the letter behind the name was taken for {size}");
            return count with { IsCount = false, Amount = new Amount(new AmountPart(count.CountLow, count.CountHigh, KitchenUnit.Piece, size), null) };
        }
        string? piece = _ingredient.TryGetPiece("large", out _) ? "large" : _ingredient.TryGetPiece("piece", out _) ? "piece" : null;
        if (piece is null)
        {
            Unread(count.Start, count.End);
            Problem(count.Start, $"nobody knows what one of {_ingredient.Name} weighs; a unit was expected after the number");
            return null;
        }
        if (piece == "large")
            Assume(size is null ? "no size is stated; large was taken" : $"no weight of a {size} {_ingredient.Name} is known; large was taken");
        return count with { IsCount = false, Amount = new Amount(new AmountPart(count.CountLow, count.CountHigh, KitchenUnit.Piece, piece),
            null) };
    }

    /// <summary>"2 eggs (M)": the letter of a box of eggs.</summary>
    private string? SizeLetter(int from)
    {
        for (int at = from; at + 1 < _to; at++)
        {
            if (_text[at] is not ('(' or '['))
                continue;
            int end = at + 1;
            while (end < _to && char.IsAsciiLetterUpper(_text[end]))
                end++;
            if (end < _to && char.IsAsciiLetterOrDigit(_text[end]))
                continue;
            switch (_text.AsSpan(at + 1, end - at - 1))
            {
                case "S": return "small";
                case "M": return "medium";
                case "L": return "large";
                case "XL": return "extra large";
            }
        }
        return null;
    }

    private void SayWhatWasTaken(WrittenAmount main)
    {
        if (main.Assumed is "T")
            Assume("T is a tablespoon and t a teaspoon, as the trade writes them");
        else if (main.Assumed is "t")
            Assume("t is a teaspoon and T a tablespoon, as the trade writes them");
        else if (main.Assumed is "c")
            Assume("c is a cup");
        else if (main.Assumed is string rough)
            Assume($"a {rough} was taken for {RoughAmount(rough)} ({RoughMeasure.Find(rough)!.Note})");
        if (main.IsFew)
            Assume("a few was taken for 3 to 6, an estimate");
        if (RoughMeasure.Of(main.Fill, main.Amount) is RoughMeasure fill)
            Assume(string.Create(CultureInfo.InvariantCulture,
                $"{fill.Word} was taken for {fill.Low:0.##} to {fill.High:0.##} times the level measure; no standard says how much it is"));
    }

    private static string RoughAmount(string word)
    {
        RoughMeasure rough = RoughMeasure.Find(word)!;
        return new Amount(new AmountPart(rough.ExactLow, rough.ExactHigh, rough.Unit, null), null).ToString();
    }

    private void Assume(string sentence) => (_assumed ??= []).Add(sentence);

    private void Problem(int at, string message) => (_problems ??= []).Add(new Problem(_line, at + 1, null, "phrase", message));

    /// <summary>What stands there was not understood, even if it was taken for something before.</summary>
    private void Unread(int start, int end)
    {
        for (int i = 0; i < _parts.Count; i++)
        {
            if (_parts[i].Start == start && _parts[i].End == end)
            {
                _parts[i] = new PhrasePart(PhrasePartKind.Unread, start, end - start, _text);
                return;
            }
        }
        Part(PhrasePartKind.Unread, start, end);
    }

    private void Part(PhrasePartKind kind, int start, int end)
    {
        foreach (PhrasePart part in _parts)
        {
            if (start < part.End && part.Start < end)
                return;
        }
        _parts.Add(new PhrasePart(kind, start, end - start, _text));
    }

    // ---- looking at the text ----

    private bool InBracket(int at)
    {
        int depth = 0;
        for (int i = _from; i < at; i++)
        {
            if (_text[i] is '(' or '[')
                depth++;
            else if (_text[i] is ')' or ']' && depth > 0)
                depth--;
        }
        return depth > 0;
    }

    /// <summary>The next word in lower case: letters with hyphens or apostrophes in them; null where none follows but spaces.</summary>
    private string? Word(int at, out int start, out int end)
    {
        at = SkipSpace(at);
        start = end = at;
        while (end < _to && (char.IsLetter(_text[end]) || (end > start && _text[end] is '-' or '\'' or '’' && end + 1 < _to
            && char.IsLetter(_text[end + 1]))))
            end++;
        if (end == start)
            return null;
        ReadOnlySpan<char> word = _text.AsSpan(start, end - start);
        return WordPool.Lower(word);
    }

    private int SkipSpace(int at)
    {
        while (at < _to && char.IsWhiteSpace(_text[at]))
            at++;
        return at;
    }

    private string? WordBefore(int at, out int start)
    {
        while (at > _from && char.IsWhiteSpace(_text[at - 1]))
            at--;
        int end = at;
        while (at > _from && char.IsLetter(_text[at - 1]))
            at--;
        start = at;
        if (at < end)
            return WordPool.Lower(_text.AsSpan(at, end - at));
        if (end > _from && _text[end - 1] is '+' or '&' or '×')
        {
            start = end - 1;
            return _text[end - 1] == '+' ? "+" : _text[end - 1] == '&' ? "&" : "×";
        }
        return null;
    }

    private bool HasLetters(int start, int end)
    {
        for (int i = start; i < end; i++)
        {
            if (char.IsLetter(_text[i]))
                return true;
        }
        return false;
    }

    private bool FollowedByWord(int at)
    {
        at = SkipSpace(at);
        return at < _to && char.IsLetter(_text[at]);
    }

    private bool FollowedByName(int at) => Word(at, out _, out _) is string word
        && word is not ("for" or "to" or "extra" or "more" or "plus" or "or" or "divided");

    /// <summary>Nothing but signs and the words that part two figures of one amount.</summary>
    private bool OnlySigns(int start, int end)
    {
        while (start < end)
        {
            if (IsSign(_text[start]) || _text[start] is ')' or '(' or ']' or '[')
                start++;
            else if (Word(start, out _, out int after) is "or" or "about" or "approx")
                start = after;
            else
                return false;
        }
        return true;
    }

    private int Each(int at) => Word(at, out _, out int end) is "each" or "apiece" ? end : 0;

    /// <summary>A count that is all there is in its bracket: "(about 4)".</summary>
    private bool StandsAlone(WrittenAmount amount, out int end)
    {
        end = amount.End;
        int before = amount.Start - 1;
        while (before > _from && char.IsWhiteSpace(_text[before]))
            before--;
        int after = SkipSpace(amount.End);
        return before >= _from && _text[before] is '(' or '[' && after < _to && _text[after] is ')' or ']';
    }

    private int EggNoun(int at) => EggWords.At(_text.AsSpan(at, _to - at), out int length) is null ? 0 : at + length;
}
