using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Layouts;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Text;

namespace Confectio.Cards;

/// <summary>Finds the form of a card, makes texts with places of it, and reads each.</summary>
internal sealed partial class CardReader(string text, IngredientTable ingredients, CardReadingOptions options)
{
    private const int MostLines = 10_000, LongestText = 8_000;

    private const string Lead = "The card could not be read whole";

    private readonly CardDocument _document = new(text.Length <= PrintedCard.MaximumCharacters ? text : "");
    private readonly ProblemList _problems = [];
    private readonly List<Problem> _notUsed = [];
    private readonly List<SourceText> _texts = [];
    private readonly List<(CardFigureKind Kind, SourceText Source)> _sums = [];
    private readonly HashSet<string> _said = new(StringComparer.Ordinal);
    private readonly List<CardCell> _cells = [];
    private CardColumns? _columns;
    private RecipeData? _data;

    public Reading<PrintedCard> Read()
    {
        if (text.Length > PrintedCard.MaximumCharacters)
            return None(1, string.Create(CultureInfo.InvariantCulture, $"the card is longer than {PrintedCard.MaximumCharacters} characters"), ProblemCodes.TooLong);
        if (string.IsNullOrWhiteSpace(text))
            return None(1, "the card is empty", ProblemCodes.Row);
        ReadOnlySpan<char> start = text.AsSpan().TrimStart("\uFEFF \t\r\n");
        CardForm form = CardForm.Text;
        if (start.StartsWith("{") || (start.StartsWith("[") && start[1..].TrimStart() is ['{' or '[', ..]))
        {
            if (start[..Math.Min(start.Length, 8000)].Contains("confectioFormula", StringComparison.Ordinal) && FormulaIn(start.ToString()) is Reading<PrintedCard> own)
                return own;
            RecipeData data = new(_document, _problems, _notUsed);
            if (!data.Read(0, text.Length))
            {
                if (_problems.Total == 0)
                    _problems.Add(new Problem(1, 1, "$", ProblemCodes.WrongType, "there is no recipe in this JSON: an object with \"@type\": \"Recipe\" and recipeIngredient, or a formula, was expected"));
                return Reading<PrintedCard>.None(Lead, _problems, _problems.Total);
            }
            (form, _data) = (CardForm.RecipeData, data);
        }
        else if (RecipeData.Scripts(text) is { Count: > 0 } scripts && scripts.Any(script =>
        {
            RecipeData data = new(_document, _problems, _notUsed);
            _data = _data is null && data.Read(script.Start, script.Length) ? data : _data;
            return _data is not null;
        }))
        {
            form = CardForm.RecipeData;
        }
        else if (HtmlLines.LooksLike(text))
        {
            form = CardForm.Page;
            if (HtmlLines.IsTooDeep(text))
                return None(1, "the elements of the page stand in one another more than 256 deep; it was not read", ProblemCodes.TooMany);
        }
        bool comma = options.Reading is AmountReading stated ? stated == AmountReading.DecimalComma : RecipeText.HasDecimalCommas(text.Length > 200_000 ? text[..200_000] : text);
        switch (form)
        {
            case CardForm.RecipeData:
                _texts.AddRange(_data!.Texts);
                break;
            case CardForm.Page:
                ReadPage(comma);
                break;
            default:
                ReadText(comma);
                break;
        }
        return Result(form, comma);
    }

    internal static Reading<PrintedCard> None(int line, string why, string code) => Reading<PrintedCard>.None(Lead, [new Problem(line, 1, null, code, why)], 1);

    private Reading<PrintedCard>? FormulaIn(string json)
    {
        // A card of ours carries its formula.
        if (OfCard().IsMatch(json))
            json = JsonGuard.RawMember(json, "formula") ?? json;
        Reading<Formula> reading = Formula.ReadJson(json, ingredients);
        if (!reading.TryGet(out Formula? formula))
            return reading.Problems.Any(problem => problem.Code == ProblemCodes.Missing && problem.Message.Contains("confectioFormula", StringComparison.Ordinal)) ? null
                : Reading<PrintedCard>.None(Lead, reading.Problems, reading.TotalProblems);
        List<PrintedLine> lines = [];
        for (int i = 0; i < formula.Lines.Count; i++)
        {
            FormulaLine line = formula.Lines[i];
            string phrase = line.AsWritten is Amount amount && amount.IsVolume
                ? string.Create(CultureInfo.InvariantCulture, $"{amount} ({line.Grams.Likely:0.###} g) {(line.Packing is Packing packing ? packing.ToWord() + " " : "")}{line.Ingredient.Name}")
                : string.Create(CultureInfo.InvariantCulture, $"{line.Grams.Likely:0.######} g {line.Ingredient.Name}");
            SourceText source = new(_document, phrase, null, PlaceOfLine(i), SourceKind.Ingredient, $"$.lines[{i}]")
            {
                Systems = line.MeasuringSystem is MeasuringSystem system ? [(0, phrase.Length, system)] : [],
            };
            lines.Add(new PrintedLine(source, PhraseReader.Read(phrase, ingredients, new PhraseOptions { ChecksFigures = false }, 1, suggests: false), null));
        }
        return new Reading<PrintedCard>(new PrintedCard(CardForm.FormulaJson)
        {
            Title = formula.Name, Layout = string.Create(CultureInfo.InvariantCulture, $"a formula in our JSON, {formula.Lines.Count} lines"), Lines = lines, Formula = formula, Ingredients = ingredients,
        }, Lead, [], 0);
    }

    // The object of a line: the so-manieth "ingredient" of the text. Only a place to point at.
    private int PlaceOfLine(int index)
    {
        int at = -1;
        for (int i = 0; i <= index; i++)
        {
            int next = text.IndexOf("\"ingredient\"", at + 1, StringComparison.Ordinal);
            if (next < 0)
                break;
            at = next;
        }
        return Math.Max(0, at);
    }

    // ---- texts ----

    private void ReadText(bool comma)
    {
        for (int i = 0; i < _document.LineCount; i++)
        {
            if (i == MostLines)
            {
                _problems.Add(new Problem(i + 1, null, string.Create(CultureInfo.InvariantCulture, $"a card has at most {MostLines} lines; from here on nothing was read")));
                return;
            }
            (int offset, int length) = _document.Line(i);
            if (length > LongestText)
            {
                _problems.Add(new Problem(i + 1, null, string.Create(CultureInfo.InvariantCulture, $"the line is longer than {LongestText} characters; it was not read")));
                continue;
            }
            AddLine(text.Substring(offset, length), offset, comma);
        }
    }

    private void AddLine(string line, int offset, bool comma)
    {
        if (line.AsSpan().Trim("\uFEFF \t\u00A0").IsEmpty)
        {
            _texts.Add(new SourceText(_document, "", null, offset, SourceKind.Blank));
            return;
        }
        if (CardCells.IsRule(line))
            return;
        // A backslash of Markdown stands for the sign behind it.
        int[]? at = null;
        if (line.Contains('\\', StringComparison.Ordinal) && !Bar().IsMatch(line))
            (line, at) = Unescaped(line, offset);
        CellForm form = CardCells.Cut(line, _cells);
        if (_cells.Count > 1 && AddRow(line, offset, form, comma, at))
            return;
        if (form is CellForm.Bars or CellForm.Tabs or CellForm.Blanks && _cells.Count > 1 && _columns is null && LooksLikeParts(line))
        {
            // "Marshmallows | Yield 900 g" says two things.
            foreach (CardCell cell in _cells)
                _texts.Add(Text(line, offset, at, cell.Start, cell.Length, SourceKind.Free));
            return;
        }
        _texts.Add(Text(line, offset, at, 0, line.Length, SourceKind.Free));
    }

    private bool AddRow(string line, int offset, CellForm form, bool comma, int[]? at)
    {
        if (TakesHeading(line, form, offset, _document.Place(offset).Line))
            return true;
        CardColumns? columns = _columns is not null && _columns.Takes(form) ? _columns : CardColumns.OfRow(line, _cells, form);
        if (columns is null)
            return false;
        SourceText? row = columns.Row(_document, line, offset, _cells, comma, at, out List<(CardFigureKind, SourceText)> totals);
        _sums.AddRange(totals);
        if (row is not null)
            _texts.Add(row);
        return row is not null || totals.Count > 0;
    }

    // The columns from here on, where the cells are a heading.
    private bool TakesHeading(string line, CellForm form, int offset, int number)
    {
        if (CardColumns.Of(line, _cells, form) is not CardColumns heading)
            return false;
        _columns = heading;
        _texts.Add(new SourceText(_document, "", null, offset, heading.IsOfParts ? SourceKind.Closes : SourceKind.Opens));
        if (!heading.IsOfParts)
            _said.Add(heading.Told);
        foreach (string column in heading.NotRead)
            _notUsed.Add(new Problem(number, null, $"the column {Excerpt.Of(column)} says nothing that is judged; it was not read", "not-used"));
        return true;
    }

    private bool LooksLikeParts(string line) => _cells.Count is > 1 and < 6 && _cells.Exists(cell => FigureScanner.IsFact(line.Substring(cell.Start, cell.Length)));

    private SourceText Text(string line, int offset, int[]? at, int start, int length, SourceKind kind)
    {
        int[] places = new int[length];
        for (int i = 0; i < length; i++)
            places[i] = at is null ? offset + start + i : at[start + i];
        return new SourceText(_document, line.Substring(start, length), places, offset + start, kind);
    }

    private static (string, int[]) Unescaped(string line, int offset)
    {
        StringBuilder plain = new(line.Length);
        List<int> at = [];
        for (int i = 0; i < line.Length; i++)
        {
            if (line[i] == '\\' && i + 1 < line.Length && (char.IsAsciiLetterOrDigit(line[i + 1]) ? false : line[i + 1] < 128))
                i++;
            plain.Append(line[i]);
            at.Add(offset + i);
        }
        return (plain.ToString(), [.. at]);
    }

    private void ReadPage(bool comma)
    {
        foreach ((bool isTable, List<TableLine> lines) in HtmlLines.Of(text))
        {
            if (_texts.Count >= MostLines)
            {
                _problems.Add(new Problem(lines.Count > 0 ? lines[0].Line : 1, null, string.Create(CultureInfo.InvariantCulture, $"a card has at most {MostLines} lines; from here on nothing was read")));
                return;
            }
            _texts.Add(new SourceText(_document, "", null, 0, SourceKind.Blank));
            _columns = isTable ? null : _columns;
            foreach (TableLine line in lines.Take(MostLines))
                AddPageLine(line, isTable, comma);
        }
    }

    private void AddPageLine(TableLine line, bool isTable, bool comma)
    {
        // The cells as one line of our own, so that a row of a page is read as one of Markdown is.
        StringBuilder whole = new();
        _cells.Clear();
        foreach (TableCell cell in line.Cells.Take(24))
        {
            if (whole.Length > 0)
                whole.Append(" | ");
            string words = cell.Text.Length > LongestText ? cell.Text[..LongestText] : cell.Text;
            _cells.Add(new CardCell(whole.Length, words.Length));
            whole.Append(words.Replace('\n', ' ').Replace('\r', ' '));
            if (cell.Text.Length > LongestText)
                _problems.Add(new Problem(cell.Line, null, string.Create(CultureInfo.InvariantCulture, $"the text is longer than {LongestText} characters; the rest was not read")));
        }
        int offset = _document.Offset(line.Cells.Length > 0 ? line.Cells[0].Line : line.Line, line.Cells.Length > 0 ? line.Cells[0].Column : 1);
        string row = whole.ToString();
        if (!isTable || _cells.Count < 2)
        {
            if (row.Trim().Length > 0)
                _texts.Add(new SourceText(_document, row, null, offset, SourceKind.Free));
            return;
        }
        int[] at = new int[row.Length];
        Array.Fill(at, -1);
        for (int i = 0; i < _cells.Count; i++)
        {
            TableCell cell = line.Cells[i];
            int from = _document.Find(row.AsSpan(_cells[i].Start, _cells[i].Length), _document.Offset(cell.Line, cell.Column), 2 * _cells[i].Length + 300);
            for (int j = 0; j < _cells[i].Length; j++)
                at[_cells[i].Start + j] = from < 0 ? _document.Offset(cell.Line, cell.Column) : from + j;
        }
        if (TakesHeading(row, CellForm.Bars, offset, line.Line))
            return;
        CardColumns? columns = _columns ?? CardColumns.OfRow(row, _cells, CellForm.Bars);
        List<(CardFigureKind, SourceText)> totals = [];
        SourceText? made = columns?.Row(_document, row, offset, _cells, comma, at, out totals);
        _sums.AddRange(totals);
        if (made is not null)
            _texts.Add(made);
        else if (totals.Count == 0)
            _texts.AddRange(_cells.Where(cell => cell.Length > 0).Select(cell => new SourceText(_document, row.Substring(cell.Start, cell.Length), at[cell.Start..cell.End], offset, SourceKind.Free)));
    }

    // ---- what stands in them ----

    private Reading<PrintedCard> Result(CardForm form, bool comma)
    {
        AmountReading reading = comma ? AmountReading.DecimalComma : AmountReading.DecimalPoint;
        List<SourceText> texts = Settled(WithoutPercents(comma));
        // Facts stand on lines of their own, or beside a title; the reader of recipes would take some of them for food.
        List<SourceText> read = [];
        StringBuilder recipe = new();
        bool structured = form == CardForm.RecipeData;
        int titleAt = texts.FindIndex(source => source.Kind is SourceKind.Title or SourceKind.Free && source.Text.Trim().Length > 0);
        string title = _data?.Title ?? "";
        if (structured)
        {
            recipe.Append("Ingredients\n");
            read.Add(texts.Count > 0 ? texts[0] : new SourceText(_document, "", null, 0, SourceKind.Blank));
        }
        List<(SourceText Source, Ingredient Food)> shares = [];
        PhraseOptions phrases = new() { MeasuringSystem = options.MeasuringSystem, Reading = reading, ChecksFigures = false };
        for (int i = 0; i < texts.Count; i++)
        {
            SourceText source = texts[i];
            if (structured && source.Kind != SourceKind.Ingredient)
                continue;
            if (source is { ShareOf: string food, Percent: not null } && ingredients.MatchName(food).Ingredient is Ingredient shared)
            {
                shares.Add((source, shared));
                source = new SourceText(_document, "", null, 0, SourceKind.Blank);
            }
            bool fact = source.Kind == SourceKind.Instruction || (source.Kind == SourceKind.Free && IsFact(source.Text, phrases));
            if (i == titleAt && !structured && source.Kind == SourceKind.Free && (fact || !IsIngredient(source.Text, phrases)))
            {
                title = TitleIn(source.Text);
                fact = fact || source.Text.Length > 0;
            }
            recipe.Append(fact ? "" : source.Text.Replace('\n', ' ').Replace('\r', ' ')).Append('\n');
            read.Add(source);
        }
        Reading<RecipeText> lines = RecipeText.Read(recipe.ToString(), ingredients, phrases);
        List<PrintedLine> cardLines = [];
        HashSet<SourceText> asLine = [];
        if (lines.TryGet(out RecipeText? known))
        {
            foreach (RecipeLine line in known.Lines)
            {
                SourceText source = read[line.Number - 1];
                if (line.Phrase.Kind != PhraseKind.Ingredient && source.Kind != SourceKind.Ingredient || (structured && line.Number == 1))
                    continue;
                if (line.Phrase.Kind != PhraseKind.Ingredient)
                {
                    // A heading among the ingredients of structured data: "For the glaze:".
                    if (line.Phrase.Kind != PhraseKind.Heading)
                        Add(source, 0, $"{Excerpt.Of(source.Text)} was not understood as an ingredient");
                    continue;
                }
                asLine.Add(source);
                bool first = true;
                for (Phrase? phrase = line.Phrase; phrase is not null; phrase = phrase.Also, first = false)
                    cardLines.Add(new PrintedLine(source, phrase, first ? source.Percent : null));
            }
            foreach (Problem problem in lines.Problems)
            {
                SourceText? source = problem.Line >= 1 && problem.Line <= read.Count ? read[problem.Line - 1] : null;
                if (source is null || problem.Code == ProblemCodes.More)
                    _problems.Add(problem);
                else
                    Add(source, Math.Max(0, (problem.Character > 0 ? problem.Character : 1) - 1), problem.Message, problem.Code);
            }
        }
        foreach ((SourceText source, Ingredient food) in shares)
        {
            // A table of percentages alone says more of the lines beside it.
            asLine.Add(source);
            int same = cardLines.FindIndex(known => known.Percent is null && known.Phrase.Ingredient == food);
            if (same >= 0)
                cardLines[same] = cardLines[same].With(source.Percent!);
            else
                cardLines.Add(new PrintedLine(source, new Phrase(source.Text, PhraseKind.Ingredient) { Name = source.ShareOf!, Ingredient = food }, source.Percent));
        }
        List<CardFigure> figures = [];
        List<CardFigure> nutrition = [];
        List<WrittenTemperature> temperatures = [];
        List<AllergenClaim> claims = [];
        List<PowderRatio> ratios = [];
        bool? per100 = null;
        List<SourceText> others = [];
        for (int i = 0; i < texts.Count; i++)
        {
            SourceText source = texts[i];
            if (source.Text.Length == 0 || source.Text.Length > LongestText)
                continue;
            bool isLine = asLine.Contains(source);
            temperatures.AddRange(TemperatureScanner.Of(source, comma, needsSign: isLine));
            if (isLine)
                continue;
            others.Add(source);
            if (source.Kind == SourceKind.Yield)
            {
                figures.AddRange(YieldOf(source, comma));
                continue;
            }
            figures.AddRange(FigureScanner.Of(source, comma));
            // "Contains" over its list, as a term over its definition.
            if (ContainsAlone().IsMatch(source.Text) && i + 1 < texts.Count && !texts[i + 1].Text.Contains("contain", StringComparison.OrdinalIgnoreCase) && AllergenScanner.OfList(texts[i + 1]) is AllergenClaim listed)
                claims.Add(listed);
            claims.AddRange(AllergenScanner.Of(source, i == titleAt || source.Kind == SourceKind.Title || source.Text.TrimStart().StartsWith('#')));
            ratios.AddRange(PowderScanner.Of(source, comma));
            per100 = Cards.Nutrition.Basis(source.Text) ?? per100;
            if (!structured && (Cards.Nutrition.Line().IsMatch(source.Text) || nutrition.Count > 0))
                nutrition.AddRange(Cards.Nutrition.Of(source, comma, per100 ?? false));
        }
        if (_data is not null)
            ReadData(_data, comma, figures, nutrition, claims);
        foreach ((CardFigureKind kind, SourceText source) in _sums)
        {
            if (FigureScanner.Total(source, kind, comma) is CardFigure sum)
                figures.Add(sum);
        }
        if (cardLines.Count == 0)
        {
            Problem none = new(1, null, "nothing on the card is an ingredient: a line such as 250 g butter was expected");
            _problems.Add(none);
            return Reading<PrintedCard>.None(Lead, _problems, _problems.Total);
        }
        PrintedCard card = new(form)
        {
            Title = title, Layout = LayoutOf(form, cardLines.Count, comma), Lines = cardLines, Figures = figures, Nutrition = nutrition, Temperatures = temperatures,
            AllergenClaims = claims, PowderRatios = ratios, NotUsed = _notUsed, Texts = others, Ingredients = ingredients,
        };
        _problems.SortByLine();
        return new Reading<PrintedCard>(card, Lead, _problems, _problems.Total);
    }

    private void ReadData(RecipeData data, bool comma, List<CardFigure> figures, List<CardFigure> nutrition, List<AllergenClaim> claims)
    {
        bool per100 = data.Nutrients.Exists(nutrient => nutrient.Member == "servingSize" && Hundred().IsMatch(nutrient.Source.Text));
        foreach ((string member, SourceText source) in data.Nutrients)
        {
            if (member == "servingSize")
            {
                if (!per100 && Weight().Match(source.Text) is { Success: true } size && Numbers.Read(size.Groups["g"].ValueSpan, comma) is PrintedNumber grams)
                    figures.Add(new CardFigure(CardFigureKind.PortionGrams, grams, FigureScanner.Grams(size.Groups["u"].ValueSpan), source.At(size.Index, size.Length), size.Value));
            }
            else if (Cards.Nutrition.OfMember(member, source, comma, per100) is CardFigure figure)
            {
                nutrition.Add(figure);
            }
            else if (Cards.Nutrition.IsMember(member) && member is not ("unsaturatedFatContent" or "transFatContent" or "cholesterolContent"))
            {
                Add(source, 0, $"{Excerpt.Of(source.Text)} was not understood as a nutrient");
            }
        }
        foreach (SourceText diet in data.Diets)
        {
            if (AllergenScanner.OfDiet(diet) is AllergenClaim claim)
                claims.Add(claim);
        }
    }

    private static CardFigure[] YieldOf(SourceText source, bool comma)
    {
        CardFigure[] found = [.. FigureScanner.Of(source, comma)];
        if (found.Length > 0)
            return found;
        Match match = Lone().Match(source.Text);
        if (!match.Success || Numbers.Read(match.Groups["g"].ValueSpan, match.Groups["g2"].ValueSpan, comma) is not PrintedNumber number)
            return [];
        double grams = FigureScanner.Grams(match.Groups["u"].ValueSpan);
        bool volume = Volume().IsMatch(match.Groups["u"].ValueSpan);
        return [new CardFigure(grams > 0 ? CardFigureKind.YieldGrams : volume ? CardFigureKind.YieldMillilitres : CardFigureKind.Portions, number, grams > 0 ? grams : 1,
            source.At(match.Index, match.Length), match.Value.Trim())];
    }

    /// <summary>Percentages behind the names of most lines are shares of the card; in one line alone they belong to a name, as in 70 % chocolate.</summary>
    private List<SourceText> WithoutPercents(bool comma)
    {
        PhraseOptions plain = new() { Reading = comma ? AmountReading.DecimalComma : AmountReading.DecimalPoint, ChecksFigures = false };
        if (!text.Contains('%', StringComparison.Ordinal))
            return _texts;
        List<(int Index, Match Match)> shares = [];
        int lines = 0;
        for (int i = 0; i < _texts.Count; i++)
        {
            if (_texts[i] is not { Percent: null, Kind: SourceKind.Free or SourceKind.Ingredient } source || source.Text.Length > 300 || FigureScanner.IsFact(source.Text) || !WithMass().IsMatch(source.Text))
                continue;
            lines++;
            MatchCollection found = Share().Matches(source.Text);
            // "Milk 2 %" is a name, and is read with its number.
            if (found.Count == 1 && !IsIngredient(source.Text, plain))
                shares.Add((i, found[0]));
        }
        if (shares.Count < 3 || shares.Count * 10 < lines * 6)
            return _texts;
        List<SourceText> texts = [.. _texts];
        foreach ((int index, Match match) in shares)
        {
            SourceText source = texts[index];
            if (Numbers.Read(match.Groups["n"].ValueSpan, comma) is PrintedNumber number)
                texts[index] = source.Without(match.Index, match.Length, new CardFigure(CardFigureKind.Percent, number, 1, source.At(match.Groups["n"].Index, match.Index + match.Length - match.Groups["n"].Index), match.Value.Trim(" (),;[]".ToCharArray())));
        }
        return texts;
    }

    /// <summary>
    /// What stands below a heading such as Method, Allergens or Cautions is no list of ingredients, once there was one, until a heading says so
    /// again. It is still read for temperatures and the like.
    /// </summary>
    private static List<SourceText> Settled(List<SourceText> texts)
    {
        List<SourceText> settled = new(texts.Count);
        bool closed = false, any = false;
        foreach (SourceText source in texts)
        {
            bool own = source.Kind is SourceKind.Free or SourceKind.Ingredient;
            string plain = own && source.Text.Length <= 60 ? source.Text.Trim().Trim('#', '*', '_', ':', '>', '=', ' ', '\u00A0') : "";
            if (source.Kind == SourceKind.Opens)
                closed = false;
            else if (source.Kind == SourceKind.Closes)
                closed = any;
            else if (plain.Length > 0 && Opener().IsMatch(plain))
                closed = false;
            else if (plain.Length > 0 && Closer().IsMatch(plain) && any)
            {
                closed = true;
                settled.Add(source.As(SourceKind.Instruction));
                continue;
            }
            else if (own && closed)
            {
                settled.Add(source.As(SourceKind.Instruction));
                continue;
            }
            any = any || source.Kind == SourceKind.Ingredient || (own && WithMass().IsMatch(source.Text));
            if (source.Kind is not (SourceKind.Opens or SourceKind.Closes))
                settled.Add(source);
        }
        return settled;
    }

    private bool IsFact(string line, PhraseOptions phrases)
    {
        if (!FigureScanner.IsFact(line) && !Statement().IsMatch(line) && !AllergenScanner.IsClaim(line) && !Dried().IsMatch(line))
            return false;
        return !IsIngredient(line, phrases);
    }

    private bool IsIngredient(string line, PhraseOptions phrases)
    {
        if (line.Length > Phrase.LongestText)
            return false;
        Phrase phrase = PhraseReader.Read(line, ingredients, phrases, 1, suggests: false);
        return phrase is { Kind: PhraseKind.Ingredient, Amount: WrittenAmount amount, Ingredient: not null } && amount.Start < 24 && phrase.Unread.Count == 0;
    }

    private void Add(SourceText source, int at, string message, string code = "unread")
    {
        CardPlace place = source.At(Math.Min(at, source.Text.Length), 1);
        _problems.Add(new Problem(place.Line, place.Column, place.Path, code, message));
    }

    private static string TitleIn(string line)
    {
        string title = line.Trim().Trim('#', '*', '_', '=', ' ', '\uFEFF');
        // "Marshmallows | Yield 900 g", "Fudge (elevation 5,280 ft)": what is behind is a fact.
        int bracket = title.IndexOfAny(['(', '|']);
        title = bracket > 3 && FigureScanner.IsFact(title[(bracket + 1)..].Trim()) || bracket > 3 && title[bracket] == '(' ? title[..bracket].Trim() : title;
        return title.Length > 200 ? title[..200] : title;
    }

    private string LayoutOf(CardForm form, int lines, bool comma) => string.Create(CultureInfo.InvariantCulture,
        $"{form switch { CardForm.RecipeData => "structured recipe data", CardForm.Page => "a page", _ => "a text" }}, {lines} {(lines == 1 ? "line" : "lines")} of ingredients{string.Concat(_said.Select(said => "; " + said))}{(comma ? "; decimals have a comma" : "")}");

    [GeneratedRegex(@"^\s*(?<g>" + Numbers.Pattern + @")(?:" + Numbers.To + @"(?<g2>" + Numbers.Pattern + @"))?\s*(?<u>[A-Za-z]{0,20})", RegexOptions.CultureInvariant)]
    private static partial Regex Lone();

    [GeneratedRegex(@"^(?:cups?|ml|l|lit(?:er|re)s?|pints?|quarts?|tbsp|tablespoons?)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Volume();

    [GeneratedRegex(@"(?<!\\)\|", RegexOptions.CultureInvariant)]
    private static partial Regex Bar();

    [GeneratedRegex(@"^\s*\{\s*""confectioCard""", RegexOptions.CultureInvariant)]
    private static partial Regex OfCard();

    [GeneratedRegex(@"^[\W_]*(?:contains|allergens)[\W_]*$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex ContainsAlone();

    [GeneratedRegex(@"^(?:ingredients?\b[^.]{0,40}|for (?:the|a|an|each) [^.,\d]{2,40}|to (?:finish|decorate|serve|assemble|garnish|glaze|coat|dust|fill)|you(?: will|'ll|’ll)? need|what you(?:'ll|’ll| will)? need)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Opener();

    [GeneratedRegex(@"^(?:method|instructions?|directions?|procedure|preparation|steps?|how to [^.\d]{2,30}|(?:chef.?s |cook.?s |recipe |baker.?s )?(?:notes?|tips?)|storage|storing|allergens?|allergy(?: advice| information)?|cautions?|warnings?|safety|nutrition[^.\d]{0,30}|equipment|what it is made of|composition|balance|about [^.\d]{2,30}|not known|sources?|reviews?|comments?|cost|make[- ]ahead|faqs?)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Closer();

    [GeneratedRegex(@"\b100\s?g", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Hundred();

    [GeneratedRegex(@"(?<g>" + Numbers.Pattern + @")\s?(?<u>kilograms?|kg|grams?|g|ounces?|oz|pounds?|lbs?)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Weight();

    [GeneratedRegex(@"\d\s?(?:g|kg|oz|lb|ml|grams?|cups?|tsp|tbsp)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex WithMass();

    [GeneratedRegex(@"[\s(,;\[–—-]*(?<![\d.,])(?<n>" + Numbers.Pattern + @")\s?(?:%|per cent\b|percent\b)(?:\s*[)\],;]|(?=\s|$))", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Share();

    [GeneratedRegex(@"^[\W_]*(?:allergens?|allergy|contains?|may contain|free from|dietary|storage|keeps?)\b|\b(?:dairy|egg|nut|gluten|milk|soy)[- ]free\b|\bvegan\b|\bfree from\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Statement();

    [GeneratedRegex(@"\b(?:powder|dried|albumen)\b.*\bwater\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Dried();
}
