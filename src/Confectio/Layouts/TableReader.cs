using System.Globalization;
using System.Text.RegularExpressions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Text;

namespace Confectio.Layouts;

/// <summary>Reads a document into the rows of a table: finds its form, its columns and its decimal mark, and then each row.</summary>
internal sealed partial class TableReader
{
    /// <summary>So many rows show what a column holds.</summary>
    private const int Sample = 60;

    /// <summary>More lines of title than this above a heading are another table.</summary>
    private const int MostTitleLines = 6;

    private const string NoWeights = "no column under this heading holds weights (grams, g, oz) of a food and a measure";

    private readonly ProblemList _problems = [];
    private readonly List<TableEntry> _rows = [];
    private readonly List<StatedMeasure> _stated = [];
    private readonly List<FoundAmount> _found = [];
    private readonly Dictionary<string, string> _names = new(StringComparer.Ordinal);
    private readonly HashSet<string> _said = new(StringComparer.Ordinal);
    private readonly AmountReading _reading;
    private readonly DecimalMark _decimals;
    private TableTitle _title;
    private string? _above;
    private bool _gramsAssumed;
    private int _repeatedNames;

    private TableReader(AmountReading reading, DecimalMark decimals) => (_reading, _decimals) = (reading, decimals);

    public static Reading<TableText> Read(string text, DecodedText? decoded, AmountReading? decimals)
    {
        if (NotText(text) is string why)
        {
            ProblemList none = [new Problem(1, null, why)];
            return Reading<TableText>.None("The table could not be read", none, none.Total);
        }
        bool page = HtmlLines.LooksLike(text);
        if (page && HtmlLines.IsTooDeep(text))
        {
            ProblemList deep = [new Problem(1, null, "the elements of the page stand in one another more than 256 deep; it was not read")];
            return Reading<TableText>.None("The page could not be read", deep, deep.Total);
        }
        // Blank lines say nothing to anybody below.
        List<(DocumentForm Form, TableLine[] Lines)> blocks = [];
        if (page)
        {
            foreach ((bool isTable, List<TableLine> lines) in HtmlLines.Of(text))
                blocks.Add((isTable ? DocumentForm.Html : DocumentForm.Typed, Filled(lines)));
        }
        else
        {
            DocumentForm form = FormFinder.Find(text);
            blocks.Add((form, Filled(DocumentLines.Of(text, form))));
        }
        DecimalMark mark = DecimalMark.Of(blocks.SelectMany(block => block.Lines).SelectMany(line => line.Cells).Select(cell => cell.Text));
        TableReader reader = new(decimals ?? mark.Reading, mark);
        foreach ((DocumentForm form, TableLine[] lines) in blocks)
        {
            if (form == DocumentForm.Typed)
                reader.ReadTyped(lines);
            else
                reader.ReadColumns(lines, form);
        }
        return reader.Result(decoded, decimals);
    }

    private static TableLine[] Filled(IEnumerable<TableLine> lines) => [.. lines.Where(line => line.Filled > 0)];

    private static string? NotText(string text)
    {
        if (string.IsNullOrWhiteSpace(text))
            return "the table is empty; a food, a measure such as 1 cup, and a weight were expected on each line";
        int odd = 0;
        ReadOnlySpan<char> start = text.AsSpan(0, Math.Min(text.Length, 64 * 1024));
        foreach (char c in start)
            odd += c == '\uFFFD' || (char.IsControl(c) && c is not ('\n' or '\r' or '\t' or '\f' or '\v')) ? 1 : 0;
        return odd * 10 > start.Length && odd > 3 ? "this is no text: a tenth of it or more are characters that nobody types" : null;
    }

    private Reading<TableText> Result(DecodedText? decoded, AmountReading? decimals)
    {
        List<string> said = [.. _said];
        if (_gramsAssumed)
            said.Add("No unit stands with the weights; they were read as grams.");
        if (_repeatedNames > 0)
            said.Add("A row without a name was read as more of the food above it.");
        if (decimals is null && _decimals.Commas > 0)
        {
            said.Add(_decimals.Commas > _decimals.Points ? "Its decimals have a comma."
                : "Some of its numbers have a decimal comma, most a point; those with a comma were not read.");
            if (_decimals.Points > 0 && _decimals.Commas > _decimals.Points)
                said.Add("Some of its numbers have a decimal point; those were not read.");
        }
        if (decoded is { IsAssumed: true } bytes)
            said.Add($"Its bytes were read as {bytes.Encoding}.");
        _problems.SortByLine();
        if (_rows.Count == 0 && _problems.Count == 0)
            _problems.Add(new Problem(1, null, "no row could be found: a food, a measure such as 1 cup, and a weight were expected on "
                + "each"));
        const string Lead = "The table could not be read whole";
        return _rows.Count == 0 ? Reading<TableText>.None(Lead, _problems, _problems.Total) : new Reading<TableText>(
            new TableText(_rows, string.Join(' ', said), decoded?.Encoding, _reading, _stated), Lead, _problems, _problems.Total);
    }

    // ---- columns ----

    private void ReadColumns(TableLine[] rows, DocumentForm form)
    {
        TableLine? heading = null;
        ColumnPlan? plan = null;
        string?[] lastName = new string?[8];
        int skip = 0;
        for (int i = 0; i < rows.Length; i++)
        {
            TableLine row = rows[i];
            if (row.Flaw is not null)
                _problems.Add(new Problem(row.Line, null, row.Flaw));
            if (skip > 0)
            {
                skip--;
                continue;
            }
            if (Array.TrueForAll(row.Cells, cell => cell.IsBlank || ColumnPlan.IsStatement(cell)))
            {
                foreach (TableCell cell in row.Cells)
                {
                    if (!cell.IsBlank)
                        ReadStatements(cell, row);
                }
                continue;
            }
            if ((plan is null || (!plan.HasWeight(row) && MayBeHeading(row)))
                && ColumnPlan.FromHeading(rows.AsSpan(i, Math.Min(Sample, rows.Length - i)), _reading, _title) is { } found)
            {
                plan = found;
                skip = Math.Max(0, found.HeadingRows - 1);
                Array.Clear(lastName);
                foreach (ColumnHeading column in found.Headings)
                {
                    if (column.Stated is { } stated)
                        _stated.Add(new StatedMeasure(stated.Unit, stated.Millilitres, row.Line));
                }
                Say(found, form);
                continue;
            }
            if (plan is null && row.Filled >= 2 && row.HasDigit && !HeadingFollows(rows, i)
                && ColumnPlan.FromContent(rows.AsSpan(i, Math.Min(Sample, rows.Length - i)), _reading, _title) is { } inferred)
            {
                plan = inferred;
                Say(inferred, form);
            }
            if (plan is null && heading is null && MayBeHeading(row))
                heading = row;
            // "Weigh whenever you can!  Turn over." is set with two blanks, and is no row.
            if (plan is null || row.Filled == 1 || (form == DocumentForm.Blanks && !row.HasDigit))
            {
                ReadLoose(row);
                continue;
            }
            ReadRow(form == DocumentForm.Blanks && plan.Starts is { } starts && row.Cells.Length < starts.Length ? Aligned(row, starts)
                : row, plan, lastName);
        }
        if (plan is null && heading is { } lone && _rows.Count == 0)
            _problems.Add(new Problem(lone.Line, null, NoWeights));
    }

    /// <summary>A title of two cells stands above the heading, and tells nothing of the columns.</summary>
    private bool HeadingFollows(TableLine[] rows, int at)
    {
        for (int i = at + 1; i < Math.Min(rows.Length, at + MostTitleLines); i++)
        {
            if (MayBeHeading(rows[i]) && ColumnPlan.FromHeading(rows.AsSpan(i, Math.Min(Sample, rows.Length - i)), _reading, _title) is not null)
                return true;
        }
        return false;
    }

    // A row set with blanks that lacks a cell in the middle: each cell belongs to the heading it stands below.
    private static TableLine Aligned(TableLine row, TableCell[] headings)
    {
        TableCell[] cells = new TableCell[headings.Length];
        for (int i = 0; i < cells.Length; i++)
            cells[i] = new TableCell(row.Line, headings[i].Column, "");
        int from = 0;
        foreach (TableCell cell in row.Cells)
        {
            int best = from, distance = int.MaxValue;
            for (int i = from; i < headings.Length; i++)
            {
                // Words are set from the left, figures from the right.
                int apart = Math.Min(Math.Abs(cell.Column - headings[i].Column),
                    Math.Abs(cell.Column + cell.Text.Length - headings[i].Column - headings[i].Text.Length));
                if (apart < distance)
                    (best, distance) = (i, apart);
            }
            if (best >= cells.Length)
                break;
            cells[best] = cell;
            from = best + 1;
        }
        return row with { Cells = cells };
    }

    private static bool MayBeHeading(TableLine row) => row.Filled > 1
        && row.Cells.Count(cell => cell.Text.AsSpan().IndexOfAnyInRange('0', '9') >= 0) * 2 <= row.Filled
        && row.Cells.Count(cell => ColumnHeading.Read(cell.Text).Role is not ColumnRole.Unread) >= Math.Min(2, row.Filled);

    // A line of one cell in a table: a title, a heading of a section, a note, or a row that was typed.
    private void ReadLoose(TableLine row)
    {
        TableCell cell = row.Cells.First(candidate => !candidate.IsBlank);
        if (cell.HasDigit)
        {
            if (!ReadStatements(cell, row))
                _title = _title.With(cell.Text);
        }
        else
        {
            _title = _title.With(cell.Text);
            _above = cell.Text.Length <= 40 ? cell.Text.Trim('*', '#', ':', ' ') : null;
        }
    }

    private void ReadRow(TableLine row, ColumnPlan plan, string?[] lastName)
    {
        for (int g = 0; g < plan.Groups.Count; g++)
        {
            ColumnGroup group = plan.Groups[g];
            string name = group.Name < 0 || IsDitto(row[group.Name].Text) ? "" : row[group.Name].Text;
            if (name.Length == 0 && group.Name >= 0 && lastName[Math.Min(g, 7)] is null && row.Filled > 1)
            {
                Unread(row[group.Name], "the field is empty", "ingredient");
                continue;
            }
            if (name.Length > 0)
                lastName[Math.Min(g, 7)] = name;
            if (group.Across.Count > 0)
            {
                ReadAcross(row, group);
                continue;
            }
            bool hasFigure = group.Masses.Concat(group.OfMeasure).Concat(group.PerMass).Any(mass =>
                !TableFigure.IsNone(row[mass.Column].Text));
            if (!hasFigure && (plan.Groups.Count > 1 || group.OfMeasure.Count > 0)
                && (name.Length == 0 || plan.Groups.Count > 1 || group.OfMeasure.All(mass => row[mass.Column].IsBlank)))
                continue;
            if (name.Length == 0 && group.Name >= 0 && lastName[Math.Min(g, 7)] is { } above)
            {
                if (!hasFigure)
                    continue;
                name = above;
                _repeatedNames++;
            }
            foreach (MassColumn column in group.OfMeasure)
            {
                TableCell cell = row[column.Column];
                if (!TableFigure.IsNone(cell.Text))
                    ReadMassOfMeasure(row, name, cell, column, PackingOf(row, group));
            }
            foreach (MassColumn column in group.PerMass)
            {
                TableCell cell = row[column.Column];
                if (!TableFigure.IsNone(cell.Text))
                    ReadPerMass(name, cell, column, PackingOf(row, group));
            }
            if (group.Masses.Count > 0)
                ReadMeasured(row, group, name);
        }
    }

    /// <summary>The marks with which a name is repeated: ", ″, 〃, do., ditto.</summary>
    private static bool IsDitto(string name) => name.Trim('-', '–', '—', ' ', ',').TrimEnd('.').ToLowerInvariant()
        is "\"" or "″" or "〃" or "“" or "”" or "„" or "''" or ",," or "do" or "ditto" or "same";

    private Packing? PackingOf(TableLine row, ColumnGroup group)
    {
        TableCell cell = row[group.Packing];
        if (group.Packing < 0 || cell.IsBlank)
            return null;
        if (PackingText.TryRead(cell.Text, out Packing packing))
            return packing;
        Unread(cell, $"{Excerpt.Of(cell.Text)} is not a packing; it was left out of account", "packing");
        return null;
    }

    private void ReadMeasured(TableLine row, ColumnGroup group, string name)
    {
        Amount measure;
        RoughMeasure? rough = null;
        Packing? packing = null;
        List<TableFigure> beside = [];
        TableCell place = row[group.Measure >= 0 ? group.Measure : Math.Max(group.Quantity, 0)];
        if (group.Quantity >= 0)
        {
            if (!TryQuantity(row, group, out measure))
                return;
        }
        else if (group.Measure >= 0)
        {
            if (place.IsBlank && group.Name >= 0 && !row[group.Name].IsBlank && group.Masses.All(mass => row[mass.Column].IsBlank))
                return; // the heading of a section, or a note
            if (!TryMeasure(place, out measure, out rough, out string words))
                return;
            // "1 cup (7 oz)": a weight in the measure's own cell.
            foreach (FoundAmount found in _found)
            {
                if (found.IsMass && !measure.IsMass && FigureOf(place, place.Text, found) is { } inBracket)
                    beside.Add(inBracket);
            }
            if (words.Length > 0 && PackingText.TryRead(words, out Packing stated))
                packing = stated;
            else if (words.Length > 0 && name.Length == 0)
                name = words;
            else if (words.Length > 0)
                name = name + ", " + words;
        }
        else if (!TryNamedMeasure(row[group.Name], ref name, out measure, out rough))
        {
            return;
        }
        packing = PackingOf(row, group) ?? packing;
        List<TableFigure> figures = [];
        TableCell first = default;
        bool any = false;
        foreach (MassColumn column in group.Masses)
        {
            TableCell cell = row[column.Column];
            if (TableFigure.IsNone(cell.Text))
                continue;
            FigureUnit unit = UnitOf(row, column);
            if (column.Packing is not null)
            {
                // "Sifted" and "Spooned" over two columns make two rows.
                List<TableFigure> own = [];
                if (ReadFigures(cell, unit, own))
                    Add(cell, name, measure, rough, column.Packing, [.. own]);
                any = true;
                continue;
            }
            if (column.SecondUnit != FigureUnit.None && TryTwo(cell, unit, column.SecondUnit, figures))
            {
                first = first.Text is null ? cell : first;
                continue;
            }
            if (!ReadFigures(cell, unit, figures))
                return;
            first = first.Text is null ? cell : first;
        }
        figures.AddRange(beside);
        first = first.Text is null && beside.Count > 0 ? place with { Column = beside[0].Column } : first;
        if (figures.Count == 0 && any)
            return;
        if (figures.Count == 0)
        {
            Unread(place, "the field is empty: no weight stands beside the measure", group.Masses[0].Unit == FigureUnit.Ounce ? "ounces"
                : "grams");
            return;
        }
        Add(first, name, measure, rough, packing, [.. figures]);
    }

    private void ReadMassOfMeasure(TableLine row, string name, TableCell cell, MassColumn column, Packing? packing)
    {
        List<TableFigure> figures = [];
        if (ReadFigures(cell, UnitOf(row, column), figures))
            Add(cell, name, column.Measure!.Value, null, packing, [.. figures]);
    }

    private static FigureUnit UnitOf(TableLine row, MassColumn column) => column.UnitColumn >= 0
        && FigureUnits.TryGet(row[column.UnitColumn].Text.AsSpan().TrimEnd('.'), out FigureUnit stated) ? stated : column.Unit;

    // "Cups per pound: 3 1/2". The pound is exact; what is rounded is the number of cups.
    private void ReadPerMass(string name, TableCell cell, MassColumn column, Packing? packing)
    {
        AmountPart part = column.Measure!.Value.Part(0);
        Amount amount;
        TableFigure count;
        if (Amount.TryParse(cell.Text, _reading, out Amount whole) && whole.IsVolume && !whole.IsRange)
        {
            amount = whole;
            count = TableFigure.Of(1, 0.25, -1, FigureUnit.None, 0, cell);
        }
        else if (TableFigure.TryRead(cell, cell.Text, FigureUnit.None, _reading, out count)
            && count is { Unit: FigureUnit.None, Value: > 0 })
        {
            if (!Fraction.TryMultiply(Exact(cell.Text, count.Value), part.Low, out Fraction measures))
            {
                Unread(cell, $"{Excerpt.Of(cell.Text)} is too large a number", null);
                return;
            }
            amount = Amount.Of(measures, part.Unit);
        }
        else
        {
            Unread(cell, $"{Excerpt.Of(cell.Text)} is not a number of {part.Unit.ToString().ToLowerInvariant()}s", null);
            return;
        }
        Add(cell, name, amount, null, packing, [TableFigure.One(column.Unit, Math.Min(count.Resolution / Math.Max(count.Value, 1e-9), 1),
            cell)]);
    }

    private void ReadAcross(TableLine row, ColumnGroup group)
    {
        Amount measure;
        RoughMeasure? rough = null;
        if (group.Quantity >= 0 ? !TryQuantity(row, group, out measure) : !TryMeasure(row[group.Measure], out measure, out rough, out _))
            return;
        foreach ((int column, string name) in group.Across)
        {
            TableCell cell = row[column];
            List<TableFigure> figures = [];
            if (!TableFigure.IsNone(cell.Text) && ReadFigures(cell, FigureUnit.None, figures))
                Add(cell, name, measure, rough, null, [.. figures]);
        }
    }

    private bool TryQuantity(TableLine row, ColumnGroup group, out Amount measure)
    {
        measure = default;
        TableCell cell = row[group.Quantity];
        Amount unit;
        if (group.QuantityUnitColumn >= 0 && !row[group.QuantityUnitColumn].IsBlank)
        {
            if (!Amount.TryParse("1 " + row[group.QuantityUnitColumn].Text, _reading, out unit))
            {
                Unread(row[group.QuantityUnitColumn], $"{Excerpt.Of(row[group.QuantityUnitColumn].Text)} is not a unit of measures",
                    "unit");
                return false;
            }
        }
        else if (group.QuantityUnit is { } stated)
        {
            unit = stated;
        }
        else
        {
            if (!TryMeasure(cell, out measure, out _, out string words))
                return false;
            if (words.Length > 0)
                Unread(cell, $"{Excerpt.Of(cell.Text)} holds more than a measure: {Excerpt.Of(words)}", "measure");
            return words.Length == 0;
        }
        if (Amount.TryParse(cell.Text, _reading, out Amount whole) && !whole.IsMass)
        {
            measure = whole;
            return true;
        }
        if (!TableFigure.TryRead(cell, cell.Text, FigureUnit.None, _reading, out TableFigure number) || number.Unit != FigureUnit.None
            || number.Value <= 0)
        {
            Unread(cell, cell.IsBlank ? "the field is empty" : $"{Excerpt.Of(cell.Text)} is not a number of measures", "measure");
            return false;
        }
        AmountPart part = unit.Part(0);
        if (!Fraction.TryMultiply(Exact(cell.Text, number.Value), part.Low, out Fraction quantity))
        {
            Unread(cell, $"{Excerpt.Of(cell.Text)} is too large a number", "measure");
            return false;
        }
        measure = part.Piece is null ? Amount.Of(quantity, part.Unit) : Amount.OfPieces(quantity, part.Piece);
        return true;
    }

    // The number as printed where it is a fraction; 1/3 is not 0.3333.
    private Fraction Exact(string text, double value)
    {
        AmountReader reader = new(TableFigure.Unmarked(text), _reading);
        return reader.TryReadQuantity(out Fraction exact) && Math.Abs(exact.ToDouble() - value) < 1e-9 ? exact
            : new Fraction((long)Math.Round(value * 10_000), 10_000);
    }

    private bool TryMeasure(TableCell cell, out Amount measure, out RoughMeasure? rough, out string words)
    {
        words = "";
        rough = null;
        measure = default;
        if (cell.IsBlank)
        {
            Unread(cell, "the field is empty", "measure");
            return false;
        }
        _found.Clear();
        AmountFinder.Find(cell.Text, _reading, _found);
        int first = _found.FindIndex(found => found.IsMeasure);
        first = first < 0 ? _found.FindIndex(found => found.IsMass) : first;
        if (first < 0)
        {
            AmountReader reader = new(cell.Text, _reading);
            reader.TryReadAll(out _);
            Unread(cell, Yield().IsMatch(cell.Text) ? $"{Excerpt.Of(cell.Text)} is no measure: what a fruit gives differs from one to the next"
                : AmountFinder.WhyNone(cell.Text, _reading) ?? reader.Refusal, "measure");
            return false;
        }
        // "1 serving (1/4 cup)" is a quarter cup; "3 ice cubes (3/4 fl oz)" is three of something whose size is not told.
        for (int i = 0; i < first; i++)
        {
            if (_found[i].IsBare && cell.Text.AsSpan(_found[i].Start, _found[i].End - _found[i].Start) is not "1")
            {
                Unread(cell, $"{Excerpt.Of(cell.Text)} counts something that is no measure", "measure");
                return false;
            }
        }
        measure = _found[first].Amount;
        rough = _found[first].Rough;
        // A bracket beside the measure says it again, "(1 stick)", or counts something; any other word says something of the food.
        string rest = cell.Text[.._found[first].Start] + " " + cell.Text[_found[first].End..];
        rest = Bracket().Replace(rest, match => match.ValueSpan.ContainsAny(TableCell.Digits) ? " " : match.Value).Trim(' ', ',', '(', ')',
            '.', '-', '–', '=');
        // "1 Tbsp heaped", "1 Tbsp (rounded)".
        if (FillWords.TryFindNotLevel(rest, out MeasureFill fill, out Range word))
        {
            rough ??= RoughMeasure.Of(fill, measure);
            rest = string.Concat(rest.AsSpan()[..word.Start].TrimEnd("( "), " ", rest.AsSpan()[word.End..].TrimStart(") ")).Trim();
        }
        words = WithoutManner(rest);
        return true;
    }

    private static string WithoutManner(string words) => Manner().Replace(words, "").Trim();

    // "1 cup granulated sugar" under "Ingredient".
    private bool TryNamedMeasure(TableCell cell, ref string name, out Amount measure, out RoughMeasure? rough)
    {
        measure = default;
        rough = null;
        _found.Clear();
        AmountFinder.Find(cell.Text, _reading, _found);
        int first = _found.FindIndex(found => found.IsMeasure);
        if (first < 0)
            first = _found.FindIndex(found => found.IsMass);
        if (first < 0 && _title.Measure is { } titled)
        {
            measure = titled;
            return true;
        }
        if (first < 0)
        {
            Unread(cell, $"no measure stands with {Excerpt.Of(cell.Text)}", "measure");
            return false;
        }
        measure = _found[first].Amount;
        rough = _found[first].Rough;
        name = (cell.Text[.._found[first].Start] + " " + cell.Text[_found[first].End..]).Trim(' ', ',', '-', '–', ':', '.');
        return name.Length > 0;
    }

    /// <summary>One weight, or several of the same: "7 oz (198 g)", "1 lb 2 oz".</summary>
    private bool ReadFigures(TableCell cell, FigureUnit unit, List<TableFigure> figures)
    {
        if (TableFigure.TryRead(cell, cell.Text, unit, _reading, out TableFigure figure))
        {
            Take(figure, figures);
            return true;
        }
        _found.Clear();
        AmountFinder.Find(cell.Text, _reading, _found);
        int before = figures.Count;
        foreach (FoundAmount found in _found)
        {
            if (found.IsMass && FigureOf(cell, cell.Text, found) is { } mass)
                figures.Add(mass);
        }
        if (figures.Count > before)
            return true;
        Unread(cell, cell.IsBlank ? "the field is empty" : $"{Excerpt.Of(cell.Text)} is not a weight{WrongMark(cell.Text)}",
            unit == FigureUnit.Ounce ? "ounces" : "grams");
        return false;
    }

    private string WrongMark(string text) => text.AsSpan().IndexOfAny(',', '.') < 0 ? ""
        : $"; decimals are read with a {(_reading == AmountReading.DecimalComma ? "comma" : "point")} here";

    // "200 / 7" under "Weight (g / oz)".
    private bool TryTwo(TableCell cell, FigureUnit unit, FigureUnit second, List<TableFigure> figures)
    {
        int sign = cell.Text.AsSpan().IndexOfAny('/', '(', '|');
        if (sign <= 0 || !TableFigure.TryRead(cell, cell.Text.AsSpan(0, sign), unit, _reading, out TableFigure one)
            || !TableFigure.TryRead(cell with { Column = cell.Column + sign + 1 }, cell.Text.AsSpan(sign + 1).TrimEnd(')'), second,
                _reading, out TableFigure other))
            return false;
        figures.Add(one);
        figures.Add(other);
        return true;
    }

    private void Take(TableFigure figure, List<TableFigure> figures)
    {
        if (figure.Unit == FigureUnit.None)
        {
            FigureUnit titled = _title.Unit;
            _gramsAssumed |= titled == FigureUnit.None;
            figure = figure with { Unit = titled == FigureUnit.None ? FigureUnit.Gram : titled };
        }
        figures.Add(figure);
    }

    /// <summary>The figure of an amount of mass in a text: its digits are looked up where they stand.</summary>
    private TableFigure? FigureOf(TableCell cell, string text, FoundAmount found)
    {
        TableCell place = cell with { Column = cell.Column + found.Start };
        if (found.Amount.PartCount == 1 && TableFigure.TryRead(place, text.AsSpan(found.Start, found.End - found.Start), FigureUnit.None,
            _reading, out TableFigure figure)
            && figure.Unit is not (FigureUnit.None or FigureUnit.Millilitre))
            return figure;
        // "1 lb 2 oz": in the unit of its last part.
        AmountPart last = found.Amount.Part(found.Amount.PartCount - 1);
        double grams = found.Amount.Grams(MeasuringSystem.OfNobody), unit = MeasuringSystem.OfNobody.GramsPer(last.Unit);
        return TableFigure.Of(grams / unit, 1.0 / last.Low.Denominator, -1, last.Unit switch
        {
            KitchenUnit.Kilogram => FigureUnit.Kilogram,
            KitchenUnit.Ounce => FigureUnit.Ounce,
            KitchenUnit.Pound => FigureUnit.Pound,
            _ => FigureUnit.Gram,
        }, (found.Amount.HighGrams(MeasuringSystem.OfNobody) - found.Amount.LowGrams(MeasuringSystem.OfNobody)) / unit, place);
    }

    // ---- typed lines ----

    private void ReadTyped(TableLine[] lines)
    {
        bool any = false;
        int heading = 0;
        foreach (TableLine line in lines)
        {
            if (heading == 0 && !line.Cells[0].HasDigit && line.Cells[0].Text.Split([',', ';', '\t', '|']) is { Length: > 1 } words
                && words.Any(word => ColumnHeading.Read(word.Trim()).Role is ColumnRole.Name or ColumnRole.Measure or ColumnRole.Mass))
                heading = line.Line;
            int before = _rows.Count;
            if (line.Flaw is not null)
                _problems.Add(new Problem(line.Line, null, line.Flaw));
            foreach (TableLine half in Halves(line))
                ReadLoose(half);
            any |= _rows.Count > before;
        }
        if (!any && heading > 0 && _rows.Count == 0)
            _problems.Add(new Problem(heading, null, NoWeights));
        if (any)
            _said.Add("Each line was read as it is typed: a food, a measure and a weight, in whatever order.");
    }

    /// <summary>Two cards side by side with a bar between: "Sugar ... 200 g | Butter ... 227 g". Each half has a food and a weight.</summary>
    private List<TableLine> Halves(TableLine line)
    {
        TableCell whole = line.Cells[0];
        if (line.Cells.Length > 1 || !whole.HasDigit || !whole.Text.Contains('|', StringComparison.Ordinal))
            return [line];
        List<TableLine> halves = [];
        int start = 0;
        while (start <= whole.Text.Length)
        {
            int end = whole.Text.IndexOf('|', start);
            end = end < 0 ? whole.Text.Length : end;
            int from = start;
            while (from < end && char.IsWhiteSpace(whole.Text[from]))
                from++;
            string half = whole.Text[from..end].TrimEnd();
            if (half.Length > 0)
            {
                _found.Clear();
                AmountFinder.Find(half, _reading, _found);
                if (TypedLine.Incomplete(half, _found) is not { Name.Length: > 0, Masses.Count: > 0 })
                    return [line];
                halves.Add(new TableLine(line.Line, [new TableCell(line.Line, whole.Column + from, half)]));
            }
            start = end + 1;
        }
        return halves;
    }

    /// <summary>Reads a line with a number; answers whether it was a row, an amount without one, or a statement of a measure.</summary>
    private bool ReadStatements(TableCell cell, TableLine row)
    {
        string text = TypedLine.Plain(Bullet().Replace(cell.Text, ""));
        List<LineStatement> statements = TypedLine.Read(text, _reading, _found);
        if (statements.Count == 0 && TypedLine.Incomplete(text, _found) is { } part)
        {
            if (part is { Name.Length: 0, Measure: { } whole, Masses.Count: 0 } && _found.Count == 1 && whole.Amount.IsVolume)
            {
                _title = _title with { Measure = whole.Amount }; // "1 cup of:"
                return true;
            }
            // "1 cup = 227 g" below "Butter"; "sugar 200 g" below "1 cup of:".
            if (part.Name.Length == 0 && part.Measure is not null && part.Masses.Count > 0 && _above is { } above)
            {
                statements.Add(new LineStatement(above, part.Measure.Value, part.Masses));
                _repeatedNames++;
            }
            else if (part.Name.Length > 0 && part.Measure is null && part.Masses.Count > 0 && _title.Measure is { } titled)
            {
                statements.Add(new LineStatement(part.Name, new FoundAmount(0, 0, titled, IsBare: false), part.Masses));
                _said.Add($"Where no measure stands, {titled} was read, as the title says.");
            }
        }
        foreach (LineStatement statement in statements)
        {
            List<TableFigure> figures = [];
            foreach (FoundAmount mass in statement.Masses)
            {
                if (mass.IsBare)
                {
                    if (TableFigure.TryRead(cell with { Column = cell.Column + mass.Start }, text.AsSpan(mass.Start, mass.End - mass.Start),
                        FigureUnit.None, _reading, out TableFigure bare))
                        Take(bare, figures);
                }
                else if (FigureOf(cell, text, mass) is { } figure)
                {
                    figures.Add(figure);
                }
            }
            TableCell place = figures.Count > 0 ? cell with { Column = figures[0].Column } : cell;
            if (figures.Count > 0)
                Add(place, statement.Name, statement.Measure.Amount, statement.Measure.Rough, null, [.. figures]);
        }
        if (statements.Count > 0)
            return true;
        // "1 cup = 250 ml" says what a cup is.
        bool stated = false;
        for (int i = 0; i + 1 < _found.Count; i++)
        {
            if (_found[i].Amount is { IsVolume: true, PartCount: 1 } measure
                && measure.Part(0).Unit is not (KitchenUnit.Millilitre or KitchenUnit.Litre)
                && _found[i + 1].Amount is { IsVolume: true, PartCount: 1 } volume
                    && volume.Part(0).Unit is KitchenUnit.Millilitre or KitchenUnit.Litre)
            {
                double each = volume.Millilitres(MeasuringSystem.OfNobody) / measure.Part(0).Low.ToDouble();
                if (double.IsFinite(each) && each > 0)
                    _stated.Add(new StatedMeasure(measure.Part(0).Unit, each, row.Line));
                stated = true;
            }
        }
        bool amounts = _found.Exists(found => !found.IsBare);
        // "Cup weights (1 cup)", "How many cups is 100 g?"
        if (text.EndsWith('?') || (_rows.Count == 0 && !_found.Exists(found => found.IsMass) && ColumnHeading.MeasureIn(text) is not null && Chart().IsMatch(text)))
            return false;
        if (!stated && amounts)
            Unread(cell, $"{Excerpt.Of(cell.Text)} has an amount but not a food, a measure and a weight", null);
        return stated || amounts;
    }

    // ---- results ----

    private void Add(TableCell place, string name, Amount measure, RoughMeasure? rough, Packing? packing, TableFigure[] figures)
    {
        name = TableFigure.Unmarked(name).ToString().Trim('*', ' ', ':');
        if (name.Length == 0)
        {
            Unread(place, "no food is named", "ingredient");
            return;
        }
        if (rough is not null && !IsJudged(rough, measure))
        {
            Unread(place, rough.IsFill ? $"{Excerpt.Of(name)}: {measure} that is {rough.Word} has no size"
                : $"{Excerpt.Of(name)}: a {rough.Word} is itself a guess of {measure}, so that no figure can be judged by it", "measure");
            return;
        }
        if (figures.Any(figure => figure.Unit != FigureUnit.Millilitre
            && figure.Value * GramsPer(figure.Unit) is not (>= 0.01 and <= 1_000_000)))
        {
            Unread(place, "the weight is outside 0.01 g to 1 000 000 g", "grams");
            return;
        }
        if (figures.All(figure => figure.Unit == FigureUnit.Millilitre))
        {
            Unread(place, "a volume stands where a weight was expected", "grams");
            return;
        }
        if (measure.PartCount == 1 && measure.Part(0).Low == 0)
        {
            Unread(place, $"{measure} is no amount at all", "measure");
            return;
        }
        if (name.Length > 200)
            name = name[..200];
        if (!_names.TryGetValue(name, out string? known))
            _names.Add(name, known = name);
        // "1-2 Tbsp = 8-16 g" says two things: 1 Tbsp is 8 g, and 2 Tbsp are 16 g.
        if (measure.IsRange && rough is null && figures.All(figure => figure.Width > 0))
        {
            AmountPart part = measure.Part(0);
            _rows.Add(new TableEntry(place, known, Amount.Of(part.Low, part.Unit), packing, [.. figures.Select(figure => figure.Ends.Low)],
                _above));
            _rows.Add(new TableEntry(place, known, Amount.Of(part.High, part.Unit), packing,
                [.. figures.Select(figure => figure.Ends.High)], _above));
            return;
        }
        _rows.Add(new TableEntry(place, known, measure, packing, figures, _above) { Rough = rough });
    }

    /// <summary>
    /// A heaped spoon or cup, a scant or generous measure, a pinch and a handful are estimated, with wide ranges. A knob is a mass by itself.
    /// </summary>
    private static bool IsJudged(RoughMeasure rough, Amount measure) => measure is { IsVolume: true, PartCount: 1 };

    internal static double GramsPer(FigureUnit unit) => unit switch
    {
        FigureUnit.Kilogram => 1000,
        FigureUnit.Ounce => MeasuringSystem.OfNobody.GramsPer(KitchenUnit.Ounce),
        FigureUnit.Pound => MeasuringSystem.OfNobody.GramsPer(KitchenUnit.Pound),
        _ => 1,
    };

    private void Unread(TableCell cell, string why, string? column) => _problems.Add(new Problem(cell.Line, column, why));

    private void Say(ColumnPlan plan, DocumentForm form)
    {
        string cells = form switch
        {
            DocumentForm.Comma => "Cells are parted by commas",
            DocumentForm.Semicolon => "Cells are parted by semicolons",
            DocumentForm.Tab => "Cells are parted by tabs",
            DocumentForm.Bar => "Cells are parted by bars",
            DocumentForm.Blanks => "Cells are parted by blanks",
            _ => "A table of a page",
        };
        ColumnGroup group = plan.Groups[0];
        string what = group.Across.Count > 0 ? "a food over each column and a measure on each line"
            : group.OfMeasure.Count > 0 ? $"a food on each line and its weight under "
                + $"{(group.OfMeasure.Count == 1 ? group.OfMeasure[0].Measure.ToString() : "each measure")}"
            : group.PerMass.Count > 0 ? $"how many {group.PerMass[0].Measure?.Part(0).Unit.ToString().ToLowerInvariant()}s of each food "
                + $"make 1 {group.PerMass[0].Unit.Word()}"
            : group.Measure < 0 && group.Quantity < 0 ? "a measure with its food, and a weight"
                : "a food, a measure and a weight on each line";
        _said.Add($"{cells}: {what}{(plan.Groups.Count > 1 ? ", side by side" : "")}"
            + (plan.HeadingRows == 0 ? "; no heading was found, so the columns were told by what they hold" : "") + ".");
        string[] unread = [.. plan.UnreadHeadings];
        if (unread.Length > 0)
            _said.Add($"Not read: {string.Join(", ", unread.Select(heading => Excerpt.Of(heading)))}.");
    }

    [GeneratedRegex(@"^\s*(?:[-*•‣◦▪–—·]\s+|\d{1,3}[.)]\s+(?=\D)|\[[ xX]?\]\s*|☐\s*|☑\s*)+", RegexOptions.CultureInvariant)]
    private static partial Regex Bullet();

    [GeneratedRegex(@"[(\[][^()\[\]]*[)\]]", RegexOptions.CultureInvariant)]
    private static partial Regex Bracket();

    [GeneratedRegex(@"\b(?:1 +)?(?:serving|portion)\b|\b(?:level|about|approx\.?|approximately|each|per|of|us|u\.s\.|c\.)\b\.?",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Manner();

    [GeneratedRegex(@"\b(?:juice|zest|rind|peel) of\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Yield();

    [GeneratedRegex(@"\b(?:weights?|conversions?|table|chart|equivalents?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Chart();
}
