using System.Numerics;

namespace Confectio.Ingredients.Names;

/// <summary>
/// Reads one name. The whole is looked up first; then with as few descriptors dropped as need be, each only where its row is meant for the
/// food that was found. Every other word counts: a word that stands in no name ends the reading.
/// </summary>
/// <remarks>
/// What stands behind a comma is read before what stands before it, as lists are written ("sugar, brown"). Brackets are read so as well,
/// then in their place, then as a second name, which must mean the same food. Slashes and "or" part names, each of which must be a food.
/// The work is bounded by <see cref="NameWords.MostTokens"/> and <see cref="MostDropped"/>, whatever the text.
/// </remarks>
internal ref struct NameReader
{
    /// <summary>With more descriptors than this, the further ones are dropped or the name is none.</summary>
    private const int MostDropped = 8;

    private const int MostUses = 24;
    private const int MostGroups = 3;
    private const int LongestName = 16;
    private const int MostParts = 4;

    private readonly NameBook _book;
    private readonly ReadOnlySpan<char> _text;
    private readonly ReadOnlySpan<NameToken> _tokens;
    private readonly Span<NameUse> _uses;
    private int _useCount;

    /// <summary>The first use that stood between a name and its food.</summary>
    private int _blocking;

    public NameReader(NameBook book, ReadOnlySpan<char> text, ReadOnlySpan<NameToken> tokens, Span<NameUse> uses)
    {
        _book = book;
        _text = text;
        _tokens = tokens;
        _uses = uses;
        _blocking = -1;
    }

    /// <summary>How many uses a reader needs room for.</summary>
    public static int UsesNeeded => MostUses;

    /// <summary>Reads it.</summary>
    public NameReading Read()
    {
        Span<short> outer = stackalloc short[_tokens.Length];
        Span<(int Open, int Close)> groups = stackalloc (int, int)[MostGroups];
        int outerCount = 0, groupCount = 0;
        for (int i = 0; i < _tokens.Length; i++)
        {
            if (_tokens[i].Kind is NameTokenKind.Open)
            {
                int close = i + 1;
                while (close < _tokens.Length && _tokens[close].Kind is not NameTokenKind.Close)
                    close++;
                if (!IsFootnote(i, close) && close > i + 1)
                {
                    if (groupCount == MostGroups)
                        return NameReading.None(NameMiss.NoSuchFood);
                    groups[groupCount++] = (i, close);
                }
                i = close;
            }
            else if (_tokens[i].Kind is not NameTokenKind.Close)
            {
                outer[outerCount++] = (short)i;
            }
        }
        outer = outer[..outerCount];
        groups = groups[..groupCount];
        foreach (short i in outer)
        {
            if (_tokens[i].Kind is NameTokenKind.Word && _tokens[i].Id == 0)
                return Unknown(i);
        }
        foreach ((int open, int close) in groups)
        {
            for (int i = open + 1; i < close; i++)
            {
                if (_tokens[i].Kind is NameTokenKind.Open || _tokens[i].Kind is NameTokenKind.Word && _tokens[i].Id == 0)
                    return Unknown(i);
            }
        }
        FindUses();
        return groups.IsEmpty ? Alternatives(outer) : WithBrackets(outer, groups);
    }

    private readonly NameReading Unknown(int token) =>
        // "2 %" says more than "2".
        token + 1 < _tokens.Length && _tokens[token + 1].Id == _book.Words.PercentId
            ? new NameReading(NameMiss.Percent, token, token + 1) : new NameReading(NameMiss.UnknownWord, token, token);

    /// <summary>"[1]", "(2)", "(a)" and the year of an edition point to a note; "(70)" may be a percentage and does not.</summary>
    private readonly bool IsFootnote(int open, int close)
    {
        if (close != open + 2)
            return false;
        ReadOnlySpan<char> inside = _text.Slice(_tokens[open + 1].Start, _tokens[open + 1].Length);
        return inside.Length == 1 && char.IsAsciiLetterOrDigit(inside[0])
            || inside.Length == 2 && char.IsAsciiDigit(inside[0]) && char.IsAsciiDigit(inside[1]) && _text[_tokens[open].Start] == '['
            || inside.Length == 4 && char.IsAsciiDigit(inside[2]) && char.IsAsciiDigit(inside[3])
                && (inside.StartsWith("17", StringComparison.Ordinal) || inside.StartsWith("18", StringComparison.Ordinal)
                    || inside.StartsWith("19", StringComparison.Ordinal) || inside.StartsWith("20", StringComparison.Ordinal));
    }

    private void FindUses()
    {
        Span<ushort> words = stackalloc ushort[8];
        for (int i = 0; i < _tokens.Length && _useCount < MostUses; i++)
        {
            int longest = Math.Min(_book.LongestFrom(_tokens[i].Id), words.Length), count = 0;
            while (count < longest && i + count < _tokens.Length && _tokens[i + count].Id != 0)
            {
                words[count] = _tokens[i + count].Id;
                count++;
            }
            for (; count > 0; count--)
            {
                if (!_book.TryGetUse(words[..count], out int use))
                    continue;
                _uses[_useCount++] = new NameUse(use, i, count, _book.CanDrop(use));
                i += count - 1;
                break;
            }
        }
    }

    private NameReading WithBrackets(scoped ReadOnlySpan<short> outer, scoped ReadOnlySpan<(int Open, int Close)> groups)
    {
        Span<short> line = stackalloc short[_tokens.Length + MostGroups];
        // "shredded coconut (sweetened)", "butter (melted)": as if behind a comma.
        int count = Join(line, outer, groups, -1);
        NameReading whole = Alternatives(line[..count]);
        if (whole.Target is not null || whole.Miss is NameMiss.TwoReadings)
            return whole;
        int named = -1;
        for (int i = 0; i < groups.Length; i++)
        {
            if (IsDroppable(groups[i].Open + 1, groups[i].Close))
                continue;
            if (named >= 0)
                return whole;
            named = i;
        }
        if (named >= 0)
            return Named(outer, groups, named, whole);
        // "all-purpose (plain) flour": plain is a descriptor, though not of this food.
        for (int i = 0; i < groups.Length; i++)
        {
            if (Named(outer, groups, i, whole) is { Target: >= 0 } found)
                return found;
        }
        return whole;
    }

    /// <summary>One bracket read in its place, and as a second name of the food.</summary>
    private NameReading Named(scoped ReadOnlySpan<short> outer, scoped ReadOnlySpan<(int Open, int Close)> groups, int named,
        NameReading whole)
    {
        Span<short> line = stackalloc short[_tokens.Length + MostGroups];
        (int open, int close) = groups[named];
        // "heavy (whipping) cream": in its place, where something follows.
        int count = 0;
        bool isInside = false;
        for (short i = 0; i < _tokens.Length; i++)
        {
            if (i > open && i < close || outer.Contains(i))
            {
                line[count++] = i;
                isInside |= i > close;
            }
        }
        if (isInside && Alternatives(line[..AppendOthers(line, count, groups, named)]) is { Target: >= 0 } placed)
            return placed;
        // "caster (superfine) sugar", "cornstarch (cornflour)": a second name of the same food.
        count = Join(line, outer, groups, named);
        NameReading name = Alternatives(line[..count]), second = Second(outer, open, close, name);
        if (second.Target is not >= 0 || name.Miss is not NameMiss.Unclear && name.Target is null)
            return second.Target is null ? whole : NameReading.None(NameMiss.PartUnknown);
        if (name.Target == second.Target)
            return name.Packing is null ? name with { Packing = second.Packing } : name;
        return name.Target is int food ? NameReading.OfTwo(food, second.Target.Value)
            : UnclearName.All[name.Unclear].Between.Contains(_book.Food(second.Target.Value).Id) ? second : name;
    }

    private NameReading Second(scoped ReadOnlySpan<short> outer, int open, int close, NameReading first)
    {
        Span<short> line = stackalloc short[_tokens.Length];
        // "vegetable oil (or canola)"
        if (_tokens[open + 1].Kind is NameTokenKind.Slash)
            open++;
        int count = 0;
        for (int i = open + 1; i < close; i++)
            line[count++] = (short)i;
        NameReading found = Alternatives(line[..count]);
        if (found.Target is not null && found.Target == first.Target)
            return found;
        // "icing sugar (confectioners')": the bracket stands for the first words, and only where it comes to the same food.
        for (int kept = 1; kept < outer.Length && first.Target is not null; kept++)
        {
            outer[kept..].CopyTo(line[(close - open - 1)..]);
            NameReading other = Alternatives(line[..(close - open - 1 + outer.Length - kept)]);
            if (other.Target == first.Target)
                return other;
        }
        int before = 0;
        while (before < outer.Length && outer[before] < open)
            before++;
        for (int replaced = 1; replaced <= 3 && replaced <= before
            && _tokens[outer[before - replaced]].Kind is not NameTokenKind.Comma; replaced++)
        {
            count = 0;
            foreach (short i in outer[..(before - replaced)])
                line[count++] = i;
            for (int i = open + 1; i < close; i++)
                line[count++] = (short)i;
            foreach (short i in outer[before..])
                line[count++] = i;
            NameReading instead = Alternatives(line[..count]);
            if (instead.Target is not null && (found.Target is null || instead.Target == first.Target))
                found = instead;
        }
        return found;
    }

    /// <summary>The outer words with the brackets behind commas; one may be left out.</summary>
    private static int Join(Span<short> line, scoped ReadOnlySpan<short> outer, scoped ReadOnlySpan<(int Open, int Close)> groups,
        int without)
    {
        outer.CopyTo(line);
        return AppendOthers(line, outer.Length, groups, without);
    }

    private static int AppendOthers(Span<short> line, int count, scoped ReadOnlySpan<(int Open, int Close)> groups, int without)
    {
        for (int g = 0; g < groups.Length; g++)
        {
            if (g == without)
                continue;
            line[count++] = (short)groups[g].Open; // an opening bracket parts as a comma does
            for (int i = groups[g].Open + 1; i < groups[g].Close; i++)
                line[count++] = (short)i;
        }
        return count;
    }

    /// <summary>Whether every word from one place to another belongs to descriptors that may be dropped, or joins such.</summary>
    private readonly bool IsDroppable(int from, int to)
    {
        for (int i = from; i < to; i++)
        {
            if (_tokens[i].Kind is NameTokenKind.Word && !IsJoiner(_tokens[i].Id) && UseAt(i) is not { CanDrop: true })
                return false;
        }
        return true;
    }

    private readonly NameUse? UseAt(int token)
    {
        foreach (NameUse use in _uses[.._useCount])
        {
            if (token >= use.First && token < use.First + use.Count)
                return use;
        }
        return null;
    }

    private readonly bool IsJoiner(ushort word) =>
        word == _book.Words.AndId || word == _book.Words.ThenId || word == _book.Words.ButId;

    private readonly bool Parts(int token) => _tokens[token].Kind is NameTokenKind.Comma or NameTokenKind.Open;

    /// <summary>A line that may hold a slash: each part is a name, alone or with the words it shares with the others.</summary>
    private NameReading Alternatives(scoped ReadOnlySpan<short> line)
    {
        int slashes = 0, first = -1;
        for (int i = 0; i < line.Length; i++)
        {
            if (_tokens[line[i]].Kind is not NameTokenKind.Slash)
                continue;
            if (first < 0)
                first = i;
            slashes++;
        }
        NameReading whole = Plain(line);
        if (slashes == 0 || whole.Target is not null || whole.Miss is NameMiss.TwoReadings)
            return whole;
        int from = first, to = first;
        while (from > 0 && !Parts(line[from - 1]))
            from--;
        while (to < line.Length && !Parts(line[to]))
            to++;
        Span<(int From, int To)> parts = stackalloc (int, int)[MostParts];
        int count = 0, begin = from;
        for (int i = from; i <= to; i++)
        {
            if (i < to && _tokens[line[i]].Kind is not NameTokenKind.Slash)
                continue;
            if (i > begin)
            {
                if (count == MostParts)
                    return NameReading.None(NameMiss.PartUnknown);
                parts[count++] = (begin, i);
            }
            begin = i + 1;
        }
        // A slash in another part of the text: which alternatives go together is not said.
        for (int i = to; i < line.Length; i++)
        {
            if (_tokens[line[i]].Kind is NameTokenKind.Slash)
                return NameReading.None(NameMiss.TwoReadings);
        }
        // "sugar (or brown)": between what, is not said here.
        if (count < 2)
            return NameReading.None(NameMiss.PartUnknown);
        // The word "or" leaves a choice; a slash may only part two names.
        bool isChoice = false;
        for (int i = from; i < to; i++)
            isChoice |= _tokens[line[i]] is { Kind: NameTokenKind.Slash, Length: > 1 };
        if (!isChoice && OneFood(line, from, to, parts[..count]) is { Target: >= 0 } one)
            return one;
        NameReading answer = default;
        Span<int> targets = stackalloc int[MostParts];
        Span<NameReading> unclear = new NameReading[MostParts];
        int different = 0, unclearCount = 0;
        for (int p = 0; p < count; p++)
        {
            NameReading part = Part(line, from, to, parts[..count], p);
            if (part.Target is not >= 0 && part.Miss is NameMiss.Unclear)
            {
                unclear[unclearCount++] = part;
                continue;
            }
            if (part.Target is not >= 0)
                return part.Miss is NameMiss.TwoReadings ? part : NameReading.None(NameMiss.PartUnknown);
            if (!targets[..different].Contains(part.Target.Value))
                targets[different++] = part.Target.Value;
            answer = answer.Target is null ? part : answer with { Packing = answer.Packing == part.Packing ? part.Packing : null };
        }
        // "cornstarch / corn flour": the clear name says which.
        foreach (NameReading name in unclear[..unclearCount])
        {
            if (different != 1 || !Means(name, targets[0]))
                return NameReading.None(NameMiss.PartUnknown);
        }
        return different switch
        {
            0 => NameReading.None(NameMiss.NoSuchFood),
            1 => answer,
            _ => NameReading.OfSeveral(targets[..different]),
        };
    }

    /// <summary>
    /// "tapioca starch/flour", "caster/superfine sugar": words that the parts share where each part with them is a name of the same food.
    /// </summary>
    private NameReading OneFood(scoped ReadOnlySpan<short> line, int from, int to, scoped ReadOnlySpan<(int From, int To)> parts)
    {
        (int firstStart, int firstEnd) = parts[0];
        (int lastStart, int lastEnd) = parts[^1];
        NameReading first = With(line, from, to, firstStart, firstEnd, 0, 0), last = With(line, from, to, lastStart, lastEnd, 0, 0);
        for (int shared = firstStart + 1; first.Target is >= 0 && shared < firstEnd; shared++)
        {
            bool isOne = true;
            for (int p = 1; isOne && p < parts.Length; p++)
                isOne = !SameWords(line[parts[p].From..parts[p].To], line[shared..firstEnd])
                    && Means(With(line, from, to, firstStart, shared, parts[p].From, parts[p].To), first.Target.Value);
            if (isOne)
                return first;
        }
        for (int shared = lastStart + 1; last.Target is >= 0 && shared < lastEnd; shared++)
        {
            bool isOne = true;
            for (int p = 0; isOne && p < parts.Length - 1; p++)
                isOne = !SameWords(line[parts[p].From..parts[p].To], line[lastStart..shared])
                    && Means(With(line, from, to, parts[p].From, parts[p].To, shared, lastEnd), last.Target.Value);
            if (isOne)
                return last;
        }
        return NameReading.None(NameMiss.NoSuchFood);
    }

    /// <summary>Whether a reading is this food, or a name of which it is one meaning.</summary>
    private readonly bool Means(NameReading reading, int food) => reading.Target == food
        || reading.Miss is NameMiss.Unclear && UnclearName.All[reading.Unclear].Between.Contains(_book.Food(food).Id);

    private NameReading Part(scoped ReadOnlySpan<short> line, int from, int to, scoped ReadOnlySpan<(int From, int To)> parts, int p)
    {
        (int start, int end) = parts[p];
        NameReading found = With(line, from, to, start, end, 0, 0);
        (int firstStart, int firstEnd) = parts[0];
        (int lastStart, int lastEnd) = parts[^1];
        for (int shared = lastStart + 1; p < parts.Length - 1 && shared < lastEnd; shared++)
        {
            // "milk/dark chocolate" is the milk or milk chocolate; "egg/egg white" only repeats its second name.
            if (!SameWords(line[start..end], line[lastStart..shared])
                && !Agree(ref found, With(line, from, to, start, end, shared, lastEnd)))
                return NameReading.None(NameMiss.TwoReadings);
        }
        for (int shared = firstStart + 1; p > 0 && shared < firstEnd; shared++)
        {
            if (!SameWords(line[start..end], line[shared..firstEnd])
                && !Agree(ref found, With(line, from, to, firstStart, shared, start, end)))
                return NameReading.None(NameMiss.TwoReadings);
        }
        return found;
    }

    private readonly bool SameWords(scoped ReadOnlySpan<short> one, scoped ReadOnlySpan<short> other)
    {
        bool same = one.Length == other.Length;
        for (int i = 0; same && i < one.Length; i++)
            same = _tokens[one[i]].Id == _tokens[other[i]].Id;
        return same;
    }

    private static bool Agree(ref NameReading found, NameReading other)
    {
        if (other.Target is not >= 0)
            return true;
        if (found.Target is >= 0)
            return found.Target == other.Target;
        found = other;
        return true;
    }

    /// <summary>
    /// The line with the part between <paramref name="from"/> and <paramref name="to"/> replaced by one or two pieces of it.
    /// </summary>
    private NameReading With(scoped ReadOnlySpan<short> line, int from, int to, int start, int end, int start2, int end2)
    {
        Span<short> one = stackalloc short[line.Length];
        int count = 0;
        foreach (short i in line[..from])
            one[count++] = i;
        foreach (short i in line[start..end])
            one[count++] = i;
        foreach (short i in line[start2..end2])
            one[count++] = i;
        foreach (short i in line[to..])
            one[count++] = i;
        return Plain(one[..count]);
    }

    /// <summary>A line without alternatives: as it stands, then with one descriptor dropped, with two, and so on.</summary>
    private NameReading Plain(scoped ReadOnlySpan<short> line)
    {
        Span<int> droppable = stackalloc int[MostUses];
        // For each place of the line the place among the droppable uses, or -1.
        Span<sbyte> useOf = stackalloc sbyte[line.Length];
        useOf.Fill(-1);
        int count = 0;
        for (int u = 0; u < _useCount; u++)
        {
            if (!_uses[u].CanDrop)
                continue;
            int at = line.IndexOf((short)_uses[u].First);
            bool isWhole = at >= 0 && at + _uses[u].Count <= line.Length;
            for (int k = 1; isWhole && k < _uses[u].Count; k++)
                isWhole = line[at + k] == _uses[u].First + k;
            if (!isWhole)
                continue;
            useOf.Slice(at, _uses[u].Count).Fill((sbyte)count);
            droppable[count++] = u;
        }
        int free = Math.Min(count, MostDropped);
        uint always = count > free ? (uint)((1L << count) - (1L << free)) : 0;
        for (int dropped = 0; dropped <= free; dropped++)
        {
            NameReading found = NameReading.None(NameMiss.NoSuchFood);
            for (uint mask = 0; mask < 1u << free; mask++)
            {
                if (BitOperations.PopCount(mask) != dropped)
                    continue;
                NameReading one = Orders(line, useOf, droppable[..count], mask | always);
                if (one.Target is null && one.Miss is not NameMiss.Unclear)
                    continue;
                if (found.Target is not null && one.Target is not null && found.Target != one.Target)
                    return NameReading.None(NameMiss.TwoReadings);
                if (found.Target is null)
                    found = one;
            }
            if (found.Target is not null || found.Miss is NameMiss.Unclear)
                return found;
        }
        if (_blocking >= 0)
        {
            NameUse use = _uses[_blocking];
            return new NameReading(NameMiss.ChangesFood, use.First, use.First + use.Count - 1);
        }
        foreach (short i in line)
        {
            if (UseAt(i) is NameUse use && _book.Changes(use.Use))
                return new NameReading(NameMiss.ChangesFood, use.First, use.First + use.Count - 1);
        }
        return NameReading.None(NameMiss.NoSuchFood);
    }

    /// <summary>What is left when some descriptors are dropped: one part as it stands; of more, the first comes last.</summary>
    private NameReading Orders(scoped ReadOnlySpan<short> line, scoped ReadOnlySpan<sbyte> useOf, scoped ReadOnlySpan<int> droppable,
        uint mask)
    {
        Span<ushort> words = stackalloc ushort[line.Length];
        Span<(int From, int To)> parts = stackalloc (int, int)[line.Length + 1];
        int count = 0, partCount = 0, from = 0;
        for (int i = 0; i <= line.Length; i++)
        {
            if (i == line.Length || Parts(line[i]))
            {
                if (count > from)
                    parts[partCount++] = (from, count);
                from = count;
            }
            else if (!IsDropped(useOf[i], mask) && !IsJoining(line, useOf, mask, i))
            {
                words[count++] = _tokens[line[i]].Id;
            }
        }
        if (count is 0 or > LongestName)
            return NameReading.None(NameMiss.NoSuchFood);
        NameReading found = partCount == 1 ? Look(words[..count], droppable, mask) : NameReading.None(NameMiss.NoSuchFood);
        if (partCount < 2)
            return found;
        Span<ushort> turned = stackalloc ushort[count];
        int length = 0;
        for (int p = partCount - 1; p >= 0; p--)
        {
            ReadOnlySpan<ushort> part = words[parts[p].From..parts[p].To];
            part.CopyTo(turned[length..]);
            length += part.Length;
        }
        found = Look(turned, droppable, mask);
        if (partCount == 2)
            return found;
        words[parts[0].To..count].CopyTo(turned);
        words[..parts[0].To].CopyTo(turned[(count - parts[0].To)..]);
        NameReading forward = Look(turned, droppable, mask);
        return found.Target is null ? forward
            : forward.Target is null || forward.Target == found.Target ? found : NameReading.None(NameMiss.TwoReadings);
    }

    private static bool IsDropped(sbyte use, uint mask) => use >= 0 && (mask >> use & 1) != 0;

    /// <summary>An "and" between two descriptors belongs to them, and goes where one of them does.</summary>
    private readonly bool IsJoining(scoped ReadOnlySpan<short> line, scoped ReadOnlySpan<sbyte> useOf, uint mask, int at)
    {
        if (!IsJoiner(_tokens[line[at]].Id) || useOf[at] >= 0)
            return false;
        int before = at - 1, after = at + 1;
        while (before >= 0 && Parts(line[before]))
            before--;
        while (after < line.Length && Parts(line[after]))
            after++;
        return before >= 0 && after < line.Length && useOf[before] >= 0 && useOf[after] >= 0
            && (IsDropped(useOf[before], mask) || IsDropped(useOf[after], mask));
    }

    private NameReading Look(scoped ReadOnlySpan<ushort> words, scoped ReadOnlySpan<int> droppable, uint mask)
    {
        if (!_book.TryGetName(words, out int target))
            return NameReading.None(NameMiss.NoSuchFood);
        if (target < 0)
        {
            foreach (int food in _book.FoodsOf(-1 - target))
            {
                if (!Admits(food, droppable, mask, out _))
                    return NameReading.None(NameMiss.NoSuchFood);
            }
            return new NameReading(NameMiss.Unclear, -1, -1) { Unclear = -1 - target };
        }
        if (!Admits(target, droppable, mask, out Packing? packing))
            return NameReading.None(NameMiss.NoSuchFood);
        uint uses = 0;
        for (int i = 0; i < droppable.Length; i++)
        {
            if ((mask >> i & 1) != 0)
                uses |= 1u << droppable[i];
        }
        return new NameReading(NameMiss.None, -1, -1) { Target = target, Dropped = uses, Packing = packing };
    }

    /// <summary>Whether every dropped descriptor is meant for this food, and the packing they say.</summary>
    private bool Admits(int target, scoped ReadOnlySpan<int> droppable, uint mask, out Packing? packing)
    {
        packing = null;
        for (int i = 0; i < droppable.Length; i++)
        {
            if ((mask >> i & 1) == 0)
                continue;
            Descriptor? row = _book.RowFor(_uses[droppable[i]].Use, target);
            if (row is null || row.Meaning is DescriptorMeaning.Food)
            {
                if (_blocking < 0)
                    _blocking = droppable[i];
                return false;
            }
            // Whole gives way: "shelled pistachios, chopped".
            if (row.Packing is Packing said && packing is null or Packing.Whole)
                packing = said;
        }
        return true;
    }
}
