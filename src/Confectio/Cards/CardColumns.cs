using System.Globalization;
using System.Text.RegularExpressions;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Cards;

/// <summary>What the columns of a card hold, by their headings, and how a row of them is put together as a phrase.</summary>
internal sealed partial class CardColumns
{
    private readonly List<Column> _columns;
    private readonly CellForm _form;

    private CardColumns(List<Column> columns, CellForm form) => (_columns, _form) = (columns, form);

    private enum Role
    {
        Unread,
        Note,
        Name,
        Amount,
        Unit,
        Percent,
    }

    private sealed record Column(Role Role, string Heading, int Start, int End, string Unit, MeasuringSystem? System);

    /// <summary>The headings of columns that are not read.</summary>
    public IEnumerable<string> NotRead => _columns.Where(column => column.Role is Role.Unread or Role.Note && column.Heading.Length > 0).Select(column => column.Heading);

    /// <summary>How the columns were understood.</summary>
    public string Told => "columns: " + string.Join(", ", _columns.Select(column => column.Role switch
    {
        Role.Name => "ingredient",
        Role.Percent => "per cent",
        Role.Unit => "unit",
        Role.Amount => column.System?.Name ?? (column.Unit.Length > 0 ? column.Unit.Trim() : "measure"),
        _ => "not read",
    }));

    /// <summary>Whether its rows are parts of foods, such as water and fat, and no foods.</summary>
    public bool IsOfParts => _columns.Exists(column => column.Role == Role.Name && Parts().IsMatch(column.Heading));

    public bool Takes(CellForm form) => form == _form;

    /// <summary>The columns of a heading; null where the line is none.</summary>
    public static CardColumns? Of(string line, List<CardCell> cells, CellForm form)
    {
        List<Column> columns = [];
        foreach (CardCell cell in cells)
            columns.Add(Read(line.Substring(cell.Start, cell.Length), cell));
        // "Metric" and "Imperial" say whose cups they are only beside a column that does; over grams and ounces they do not.
        if (columns.Exists(column => column.System is not null))
        {
            for (int i = 0; i < columns.Count; i++)
            {
                if (columns[i] is { System: null, Role: Role.Amount } && MeasuringSystem.TryGet(Marks().Replace(columns[i].Heading, "").Trim().ToLowerInvariant(), out MeasuringSystem? also))
                    columns[i] = columns[i] with { System = also };
            }
        }
        int measures = columns.Count(column => column.Role is Role.Amount or Role.Percent), names = columns.Count(column => column.Role == Role.Name);
        if (measures == 0 || columns.Exists(column => column.Role == Role.Unread && column.Heading.AsSpan().ContainsAnyInRange('0', '9')))
            return null;
        if (names == 0)
        {
            // "grams   %" over the columns of figures only, or an empty or unknown heading over the names.
            int first = columns.FindIndex(column => column.Role == Role.Unread);
            if (first == 0)
                columns[0] = columns[0] with { Role = Role.Name };
            else if (first < 0 && measures == columns.Count && (form != CellForm.Bars || measures > 1))
                columns.Insert(0, new Column(Role.Name, "", 0, Math.Max(1, columns[0].Start - 1), "", null));
            else
                return null;
        }
        return columns.Count > 1 ? new CardColumns(columns, form) : null;
    }

    /// <summary>The columns of a row without a heading over it, by what stands in it; null where that does not tell.</summary>
    public static CardColumns? OfRow(string line, List<CardCell> cells, CellForm form)
    {
        List<Column> columns = [];
        int names = 0, amounts = 0;
        foreach (CardCell cell in cells)
        {
            string text = line.Substring(cell.Start, cell.Length);
            Role role = Percent().IsMatch(text) ? Role.Percent : IsAmount(text) ? Role.Amount : Role.Name;
            names += role == Role.Name ? 1 : 0;
            amounts += role == Role.Amount ? 1 : 0;
            columns.Add(new Column(role, "", cell.Start, cell.End, "", null));
        }
        return names == 1 && amounts > 0 && !columns.Find(column => column.Role == Role.Name)!.Heading.Contains(':') ? new CardColumns(columns, form) : null;
    }

    /// <summary>A row as a phrase, with its percentage beside it; null where it holds no figure.</summary>
    public SourceText? Row(CardDocument document, string line, int offset, List<CardCell> cells, bool comma, int[]? at, out List<(CardFigureKind, SourceText)> totals)
    {
        totals = [];
        CardCell?[] placed = Placed(cells);
        Column? nameColumn = _columns.Find(column => column.Role == Role.Name);
        int nameIndex = nameColumn is null ? -1 : _columns.IndexOf(nameColumn);
        if (nameIndex < 0 || placed[nameIndex] is not { } name || name.Length == 0)
            return null;
        string nameText = line.Substring(name.Start, name.Length);
        bool total = Sum().IsMatch(nameText);
        SourceBuilder builder = new(document);
        List<(int, int, MeasuringSystem)> systems = [];
        CardFigure? percent = null;
        List<(CardCell Cell, Column Column, bool IsCount)> amounts = [];
        for (int i = 0; i < _columns.Count; i++)
        {
            if (placed[i] is not CardCell cell || cell.Length == 0)
                continue;
            string text = line.Substring(cell.Start, cell.Length);
            if (_columns[i].Role == Role.Percent && Number().Match(text) is { Success: true } number)
            {
                SourceText source = Piece(document, line, offset, cell, at);
                if (total)
                    totals.Add((CardFigureKind.PercentTotal, source));
                else if (Numbers.Read(number.Groups["n"].ValueSpan, comma) is PrintedNumber share)
                    percent = new CardFigure(CardFigureKind.Percent, share, 1, source.At(0, cell.Length), text);
            }
            else if (_columns[i].Role == Role.Amount && StartsAsAmount().IsMatch(text))
            {
                if (total)
                    totals.Add((CardFigureKind.TotalGrams, Piece(document, line, offset, cell, at, _columns[i].Unit)));
                else
                    amounts.Add((cell, _columns[i], Count().IsMatch(text) && _columns[i].Unit.Length == 0
                        && (UnitBeside(_columns[i], placed) is not CardCell unit || Each().IsMatch(line.AsSpan(unit.Start, unit.Length)))));
            }
        }
        if (total || (amounts.Count == 0 && percent is null))
            return null;
        // A count stands before the name, masses and measures in a bracket behind it, as a cook writes them.
        amounts = [.. amounts.OrderBy(amount => amount.IsCount ? 0 : 1)];
        for (int i = 0; i < amounts.Count; i++)
        {
            (CardCell cell, Column column, bool isCount) = amounts[i];
            if (i > 0)
                builder.Say(i == 1 ? " (" : "; ");
            int from = builder.Length;
            string text = line.Substring(cell.Start, cell.Length);
            int length = isCount && Count().Match(text) is { Success: true } count ? count.Groups["n"].Length : WithReach().Match(text) is { Success: true } reach ? reach.Groups["n"].Length : cell.Length;
            Add(builder, line, offset, new CardCell(cell.Start, length), at);
            if (column.Unit.Length > 0 && !text.AsSpan().ContainsAnyInRange('a', 'z') && !text.AsSpan().ContainsAnyInRange('A', 'Z'))
                builder.Say(column.Unit);
            else if (column.Unit.Length == 0 && Number().IsMatch(text) && UnitBeside(column, placed) is CardCell unit && !Each().IsMatch(line.AsSpan(unit.Start, unit.Length)))
            {
                builder.Say(" ");
                Add(builder, line, offset, unit, at);
            }
            if (column.System is MeasuringSystem system)
                systems.Add((from, builder.Length, system));
        }
        // "egg white 3 large": a count behind the name is one more amount.
        if (amounts.Count > 0 && CountBehind().Match(nameText) is { Success: true } behind)
        {
            builder.Say(amounts.Count > 1 ? "; " : " (");
            Add(builder, line, offset, new CardCell(name.Start + behind.Groups["n"].Index, behind.Groups["n"].Length), at);
            builder.Say(") ");
            name = name with { Length = behind.Index };
        }
        else
        {
            builder.Say(amounts.Count > 1 ? ") " : " ");
        }
        // "dark couverture 55 % whole": how it is packed stands behind the name, as behind a comma.
        int last = line.LastIndexOf(' ', name.End - 1, name.Length);
        if (last > name.Start && PackingText.TryRead(line.AsSpan(last + 1, name.End - last - 1), out _))
        {
            Add(builder, line, offset, name with { Length = last - name.Start }, at);
            builder.Say(",");
            name = new CardCell(last, name.End - last);
        }
        Add(builder, line, offset, name, at);
        return builder.ToText(SourceKind.Ingredient, offset + name.Start, percent, systems, amounts.Count == 0 ? nameText : null);
    }

    // "Qty | Unit": the unit of a number stands in the column behind it.
    private CardCell? UnitBeside(Column column, CardCell?[] placed)
    {
        int at = _columns.IndexOf(column) + 1;
        return at < _columns.Count && _columns[at].Role == Role.Unit && placed[at] is { Length: > 0 } cell ? cell : null;
    }

    private static void Add(SourceBuilder builder, string line, int offset, CardCell cell, int[]? at)
    {
        for (int i = cell.Start; i < cell.End; i++)
        {
            // A backslash of Markdown stands for the sign behind it.
            if (line[i] == '\\' && i + 1 < cell.End && char.IsAscii(line[i + 1]) && !char.IsAsciiLetterOrDigit(line[i + 1]))
                i++;
            builder.Add(line[i], at is null ? offset + i : at[i]);
        }
    }

    private static SourceText Piece(CardDocument document, string line, int offset, CardCell cell, int[]? at, string unit = "")
    {
        SourceBuilder builder = new(document);
        Add(builder, line, offset, cell, at);
        if (unit.Length > 0 && !line.AsSpan(cell.Start, cell.Length).ContainsAnyInRange('a', 'z'))
            builder.Say(unit);
        return builder.ToText(SourceKind.Free, offset + cell.Start);
    }

    // By their order where there are as many as headings; of a row set with blanks each under the heading that it is nearest to.
    private CardCell?[] Placed(List<CardCell> cells)
    {
        CardCell?[] placed = new CardCell?[_columns.Count];
        if (cells.Count >= _columns.Count || _form != CellForm.Blanks)
        {
            for (int i = 0; i < Math.Min(cells.Count, placed.Length); i++)
                placed[i] = cells[i];
            return placed;
        }
        int from = 0;
        foreach (CardCell cell in cells)
        {
            int best = from, distance = int.MaxValue;
            for (int i = from; i < _columns.Count; i++)
            {
                int apart = Math.Min(Math.Abs(cell.Start - _columns[i].Start), Math.Abs(cell.End - _columns[i].End));
                if (apart < distance)
                    (best, distance) = (i, apart);
            }
            if (best >= placed.Length)
                break;
            placed[best] = cell;
            from = best + 1;
        }
        return placed;
    }

    private static Column Read(string heading, CardCell cell)
    {
        string plain = Marks().Replace(heading, "").Trim().ToLowerInvariant();
        Column Made(Role role, string unit = "", MeasuringSystem? system = null) => new(role, heading, cell.Start, cell.End, unit, system);
        if (plain.Length == 0)
            return Made(Role.Unread);
        if (plain.Contains('%') || plain.Contains("percent", StringComparison.Ordinal) || plain.Contains("per cent", StringComparison.Ordinal) || plain.StartsWith("baker", StringComparison.Ordinal))
            return Made(Role.Percent);
        if (plain is "unit" or "units" or "uom")
            return Made(Role.Unit);
        if (plain is "ingredient" or "ingredients" or "item" or "items" or "name" or "what" or "food" or "product" or "component" or "raw material")
            return Made(Role.Name);
        if (plain is "may be" or "range" or "spread" or "low to high" or "note" or "notes" or "remark" or "remarks" or "comment" or "comments" or "cost" or "price" or "allergens" or "method" or "step" or "#" or "no" or "no.")
            return Made(Role.Note);
        if (UnitOf().Match(plain) is { Success: true } unit)
        {
            // "US cups", "Metric cups": a number of cups of a system. "US" and "metric (g)" are told below.
            return Made(Role.Amount, " " + unit.Groups["unit"].Value, SystemOf(plain));
        }
        if (SystemOf(plain) is MeasuringSystem system)
            return Made(Role.Amount, "", system);
        return plain is "amount" or "amounts" or "quantity" or "qty" or "measure" or "measures" or "volume" or "weight" or "mass" or "weights" or "metric" or "us" or "u.s." or "imperial"
            or "cups" or "household" or "american" or "uk" or "each" or "portion" or "scaled" or "by weight" or "by volume" or "us measure" or "spoons and cups" or "cups and spoons"
            || IsMeasures(plain) ? Made(Role.Amount) : Made(Role.Unread);
    }

    // "Cups/spoons", "US measure (approx.)", "Volume - tbsp, tsp": nothing but words for measures, and one of them at least.
    private static bool IsMeasures(string heading)
    {
        bool any = false;
        foreach (string word in Words().Split(heading))
        {
            if (word.Length == 0 || word is "us" or "u" or "s" or "uk" or "approx" or "approximate" or "about" or "in" or "by" or "or" or "and" or "of" or "the" or "level" or "kitchen" or "household" or "american")
                continue;
            if (word is not ("cup" or "cups" or "spoon" or "spoons" or "tablespoons" or "teaspoons" or "tbsp" or "tsp" or "measure" or "measures" or "volume" or "volumes" or "quantity" or "amount" or "weight" or "weights"))
                return false;
            any = true;
        }
        return any;
    }

    // Only a whole name of a system says whose cups they are; "US" over ounces and "metric" over grams say nothing of cups.
    private static MeasuringSystem? SystemOf(string heading)
    {
        string plain = heading.Replace(" cups", "", StringComparison.Ordinal).Replace(" measures", "", StringComparison.Ordinal).Trim();
        foreach (MeasuringSystem system in MeasuringSystem.All)
        {
            if (plain is not ("metric" or "imperial") && (plain == system.Key || plain == system.Key.Replace('-', ' ') || plain.Equals(system.Name, StringComparison.OrdinalIgnoreCase)))
                return system;
        }
        return null;
    }

    private static bool IsAmount(string text) => text.AsSpan().ContainsAny(s_digits)
        && (Amount.TryParse(text, out _) || Amount.TryParse(text, AmountReading.DecimalComma, out _) || Count().IsMatch(text));

    private static readonly System.Buffers.SearchValues<char> s_digits = System.Buffers.SearchValues.Create("0123456789½⅓⅔¼¾⅕⅛⅜⅝⅞");

    [GeneratedRegex(@"^\s*(?<n>" + Numbers.Pattern + @")\s*%\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Percent();

    [GeneratedRegex(@"^\s*(?<n>" + Numbers.Pattern + @")\s*%?\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Number();

    [GeneratedRegex(@"^\s*(?:ea|each|pcs?|pieces?|nos?|no|x|-|–)\.?\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Each();

    [GeneratedRegex(@"^\s*(?<n>\d{1,4})\s*(?:ea\.?|each|pcs?\.?|nos?\.?|×|x)?\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Count();

    [GeneratedRegex(@"^[\W_]*(?:grand\s+)?(?:totals?|sum|together|altogether|in all)\b|^[\W_]*(?:batch|total|finished)\s+(?:weight|total|mass|yield)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Sum();

    [GeneratedRegex(@"^(?:about|approx\.?|~|≈|c\.|ca\.)?\s*[\d½⅓⅔¼¾⅕⅛⅜⅝⅞][^!?]{0,60}$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex StartsAsAmount();

    [GeneratedRegex(@"^[\W_]*(?:parts?|nutrients?|constituents?|nutrition|typical values|portions?)[\W_]*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Parts();

    // "292 g 259 to 330 g": a weight, and how far it may be off.
    [GeneratedRegex(@"^(?<n>" + Numbers.Pattern + @"\s?(?<u>[A-Za-z]{1,9}))\s+" + Numbers.Pattern + Numbers.To + Numbers.Pattern + @"\s?\k<u>$", RegexOptions.CultureInvariant)]
    private static partial Regex WithReach();

    [GeneratedRegex(@"\s(?<n>\d{1,4}\s(?:extra large|large|medium|small|jumbo|sticks?|leaves|sheets))\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CountBehind();

    [GeneratedRegex(@"[^a-z]+", RegexOptions.CultureInvariant)]
    private static partial Regex Words();

    [GeneratedRegex(@"[*_`#:]", RegexOptions.CultureInvariant)]
    private static partial Regex Marks();

    [GeneratedRegex(@"(?:^|\(|\b(?:in|us|metric|imperial|weight|mass|volume)\s+)(?<unit>grams|gram|gr|g|kg|ounces|ounce|oz|lbs?|pounds|ml|cups|tbsp|tsp)\)?$", RegexOptions.CultureInvariant)]
    private static partial Regex UnitOf();
}
