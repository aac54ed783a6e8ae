using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Labels;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Publishing;

/// <summary>What stands on a card, in the order in which a cook needs it.</summary>
internal static class CardSheet
{
    public static Sheet Of(FormulaCard card, bool isHtml)
    {
        SheetNumbers numbers = SheetNumbers.Of(card.Options.Culture, groups: isHtml);
        // A line that may be read again has no mark between its thousands.
        SheetNumbers plain = SheetNumbers.Of(card.Options.Culture, groups: false);
        List<SheetSection> sections = [Ingredients(card, numbers, plain, isHtml)];
        if (Temperatures(card.Options, numbers) is { Length: > 0 } temperatures)
            sections.Add(new("Temperatures", false, new SheetBlock.Facts(temperatures)));
        if (card.Options.Steps.Count > 0)
            sections.Add(new("Method", false, new SheetBlock.Items([.. card.Options.Steps.Select(step => SafeText.Of(step))], isOrdered: true)));
        sections.Add(Allergens(card.Formula, card.AllergensNotStated));
        if (card.Cautions.Count > 0)
            sections.Add(new("Cautions", true, new SheetBlock.Items(card.Cautions)));
        sections.Add(new("What it is made of", false, BalanceOf(card, numbers)));
        if (card.Nutrition is not null)
            sections.Add(new("Nutrition, an estimate", false, Panel(card, card.Nutrition, numbers), new SheetBlock.Words(NutritionEstimate.Caution)));
        if (About(card, numbers) is { } about)
            sections.Add(about);
        sections.Add(new("Not known", false, new SheetBlock.Items(card.NotKnown)));
        return new Sheet(card.Title, Yield(card, numbers), sections);
    }

    /// <summary>The temperatures that were told, and those of the steps that stand there in one scale alone.</summary>
    public static (string, string)[] Temperatures(CardOptions options, SheetNumbers numbers) =>
    [
        .. options.Temperatures.Select(one => (one.Name, one.Told(numbers))),
        .. options.Steps.SelectMany((step, i) => StepTemperatures.Of(step, numbers).Select(told => ($"Step {numbers.At(i + 1, 0)}", told))),
    ];

    /// <summary>What it contains, what it often contains, and that silence clears nothing.</summary>
    public static SheetSection Allergens(Formula formula, IEnumerable<string> notStated, string title = "Allergens")
    {
        string[] unstated = [.. notStated];
        List<(string, string)> facts = [("Contains", formula.Allergens.Count == 0 ? "none of those that the ingredients are known to have"
            : string.Join(", ", formula.Allergens.Select(FormulaCard.Word)))];
        if (formula.OftenContains.Count > 0)
            facts.Add(("Often contains", string.Join(", ", formula.OftenContains.Select(FormulaCard.Word)) + " (many makes have it: read the label)"));
        if (unstated.Length > 0)
            facts.Add(("Not stated for", string.Join(", ", unstated)));
        return new SheetSection(title, false, new SheetBlock.Facts(facts), new SheetBlock.Words(Caution.ReadTheLabel));
    }

    /// <summary>The measure in a column of its own kitchen: the fractions of print, or that it is to be weighed.</summary>
    public static SheetCell Measured(CardMeasure measure) => measure.Amount is Amount amount ? amount.ToString("V") : new SheetCell("weigh it", measure.Reason);

    /// <summary>The total, to the digits that its surest knowledge leaves.</summary>
    public static string Grams(Spread grams, SheetNumbers numbers) =>
        numbers.At(grams.Likely, grams.LastPlace() is int place ? Math.Max(place, SheetNumbers.FinePlace(grams.Likely)) : SheetNumbers.OwnPlace(grams.Likely)) + " g";

    private static string Yield(FormulaCard card, SheetNumbers numbers)
    {
        Formula formula = card.Formula;
        Spread total = card.PutInGrams;
        string boils = formula.BoiledOffGrams > 0 ? $"{numbers.At(formula.BoiledOffGrams, SheetNumbers.OwnPlace(formula.BoiledOffGrams))} g of water boil off. " : "";
        int place = total.LastPlace() is int sensible ? Math.Max(sensible, SheetNumbers.FinePlace(formula.TotalGrams)) : SheetNumbers.OwnPlace(formula.TotalGrams);
        string makes = $"{boils}Makes {numbers.At(formula.TotalGrams, place)} g ({CardLine.InPounds(formula.TotalGrams / CardLine.GramsPerOunce, -1, numbers)})";
        if (card is not { Portions: double portions, PortionGrams: double grams })
            return makes + ".";
        string each = numbers.At(grams, card.Options.PortionGrams is null ? SheetNumbers.FinePlace(grams) : SheetNumbers.OwnPlace(grams)) + " g";
        if (card.Options.Portions is not null)
            return $"{makes}: {numbers.Short(portions, 2)} {(portions == 1 ? "portion" : "portions")} of {each}.";
        // Nobody serves nine tenths of a portion.
        double left = formula.TotalGrams - card.WholePortions * grams;
        return $"{makes}: {numbers.At(card.WholePortions, 0)} {(card.WholePortions == 1 ? "portion" : "portions")} of {each}{(left >= 0.5 ? $", and {numbers.At(left, 0)} g over" : "")}.";
    }

    private static SheetSection Ingredients(FormulaCard card, SheetNumbers numbers, SheetNumbers plain, bool isHtml)
    {
        List<SheetBlock> blocks = [];
        if (isHtml)
            blocks.Add(LinesOf(card, numbers));
        else
            blocks.Add(new SheetBlock.Items([.. card.Lines.Select(line => line.Phrase(plain))]));
        List<(string, string)> facts = [];
        if (card.Formula.BoiledOffGrams > 0)
            facts.Add(("Put in", Grams(card.PutInGrams, numbers)));
        if (card.Options.ShowsRounding)
            facts.Add(("Rounding", card.Rounding.Told(numbers)));
        if (facts.Count > 0)
            blocks.Add(new SheetBlock.Facts(facts));
        if (!isHtml)
            blocks.Add(Percentages(card, numbers));
        return new SheetSection("Ingredients", false, [.. blocks]);
    }

    private static SheetBlock.Table LinesOf(FormulaCard card, SheetNumbers numbers)
    {
        List<SheetColumn> columns = [new("Ingredient"), new("Grams", true), new("Ounces", true)];
        columns.AddRange(card.Options.MeasuringSystems.Select(system => new SheetColumn(FormulaCard.Capital(system.Name))));
        columns.Add(new("Per cent", true));
        if (card.Options.Basis is FormulaPart basis)
            columns.Add(new($"{FormulaCard.Capital(SafeText.Name(basis.Name))} = 100", true));
        List<SheetCell[]> rows = [];
        foreach (CardLine line in card.Lines)
        {
            // How it is filled says something of cups and spoons alone; what is done to the food belongs to its name.
            string packed = line.Packing is Packing packing && (line.Measures.Any(measure => measure.Amount is not null) || line.Line.Packing is not null) ? packing.ToWord() : "";
            List<SheetCell> cells = [new(line.Name, packed), new(line.Grams(numbers), line.GramsRange(numbers)), line.OuncesText(numbers)];
            cells.AddRange(line.Measures.Select(measure => line.Line.AsWritten is { IsPiece: true } pieces && measure.Amount is null ? new SheetCell(pieces.ToString("V")) : Measured(measure)));
            cells.Add(line.PercentText(numbers));
            if (card.Options.Basis is not null)
                cells.Add(line.BasisText(numbers));
            // The pieces as they are written stand where they are written.
            if (line.Line.AsWritten is { IsPiece: true } count)
                cells[0] = new(line.Name, count.ToString("V"));
            rows.Add([.. cells]);
        }
        SheetCell[] foot = [.. columns.Select(_ => new SheetCell(""))];
        (foot[0], foot[1], foot[2]) = (card.Formula.BoiledOffGrams > 0 ? "Put in" : "Together", Grams(card.PutInGrams, numbers),
            CardLine.InPounds(card.PutInGrams.Likely / CardLine.GramsPerOunce, card.PutInGrams.LastPlace() is null ? -2 : -1, numbers));
        foot[3 + card.Options.MeasuringSystems.Count] = numbers.At(100, -1);
        string caption = card.Options.MeasuringSystems.Count == 0 ? "Weights, and shares of what is put in."
            : $"Weigh where you can: cups and spoons are the nearest that can be filled, within {numbers.Short(100 * card.Options.AllowedError, 1)} %, level.";
        return new SheetBlock.Table(caption, columns, rows, foot);
    }

    private static SheetBlock.Table Percentages(FormulaCard card, SheetNumbers numbers)
    {
        List<SheetColumn> columns = [new("Ingredient"), new("Per cent", true)];
        if (card.Options.Basis is FormulaPart basis)
            columns.Add(new($"{FormulaCard.Capital(SafeText.Name(basis.Name))} = 100", true));
        return new SheetBlock.Table("", columns, [.. card.Lines.Select(line => card.Options.Basis is null ? (SheetCell[])[line.Name, line.PercentText(numbers)]
            : [line.Name, line.PercentText(numbers), line.BasisText(numbers)])]);
    }

    private static SheetBlock.Table BalanceOf(FormulaCard card, SheetNumbers numbers)
    {
        List<SheetCell[]> rows = [];
        foreach (BalanceItem item in card.Balance.Items)
        {
            Spread share = item.Fraction * 100;
            int place = share.Likely >= 1 ? -1 : -2;
            string low = numbers.At(share.Low, place), high = numbers.At(share.High, place), range = low == high ? "" : low.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? $"up to {high}" : $"{low} to {high}";
            rows.Add([IsPartOfAnother(item.Part) ? $"of which {item.Part.Name}" : FormulaCard.Capital(item.Part.Name), new(numbers.Some(item.Grams.Likely, item.Grams.LastPlace() is int sensible ? Math.Max(sensible, SheetNumbers.FinePlace(item.Grams.Likely)) : -1) + " g"),
                numbers.Some(share.Likely, place), range]);
        }
        return new SheetBlock.Table(card.Formula.BoiledOffGrams > 0 ? "Of what it makes, after the water has boiled off." : "",
            [new("Part"), new("Grams", true), new("Per cent", true), new("May be", true)], rows);
    }

    // Milk fat stands behind the fat, and the kinds of sugar behind the sugars.
    private static bool IsPartOfAnother(FormulaPart part) => part == FormulaPart.MilkFat || s_sugars.Contains(part);

    private static readonly HashSet<FormulaPart> s_sugars =
    [
        .. new[] { Constituent.Sucrose, Constituent.Glucose, Constituent.Fructose, Constituent.Lactose, Constituent.Maltose, Constituent.OtherSugars }.Select(FormulaPart.Of),
    ];

    private static SheetBlock.Table Panel(FormulaCard card, NutritionEstimate panel, SheetNumbers numbers)
    {
        bool american = panel.Rules == LabelRules.UnitedStates;
        List<SheetColumn> columns = [new("Nutrient")];
        if (!american)
            columns.Add(new("In 100 g", true));
        if (panel.PortionGrams is double grams)
            columns.Add(new($"In a portion of {numbers.At(grams, SheetNumbers.FinePlace(grams))} g", true));
        columns.Add(new(american ? "% daily value" : "% reference intake", true));
        List<SheetCell[]> rows = [];
        foreach (NutritionLine line in panel.Lines)
        {
            List<SheetCell> cells = [Word(line)];
            if (!american)
                cells.Add(Figure(line.Per100Grams));
            if (line.PerPortion is NutritionFigure portion)
                cells.Add(Figure(portion));
            cells.Add(line.ReferencePercent is int percent ? numbers.At(percent, 0) : "");
            rows.Add([.. cells]);
        }
        return new SheetBlock.Table(american ? "Rounded by 21 CFR 101.9(c)." : "Rounded by the guidance on Regulation (EU) 1169/2011.", columns, rows);

        SheetCell Figure(NutritionFigure figure) => new(Marked(figure.Printed), figure.PrintedLow == figure.PrintedHigh ? "" : $"{Marked(figure.PrintedLow)} to {Marked(figure.PrintedHigh)}");

        // A panel is printed with a point; the page has its own mark.
        string Marked(string printed) => card.Options.Culture is null ? printed : printed.Replace(".", card.Options.Culture.NumberFormat.NumberDecimalSeparator, StringComparison.Ordinal);
    }

    private static string Word(NutritionLine line) => line.Nutrient switch
    {
        LabelNutrient.Kilojoules or LabelNutrient.Kilocalories => "Energy",
        _ when line.IsPartOfAnother => $"of which {EnumWords.Of(line.Nutrient, ' ')}",
        _ => FormulaCard.Capital(EnumWords.Of(line.Nutrient, ' ')),
    };

    private static SheetSection? About(FormulaCard card, SheetNumbers numbers)
    {
        List<SheetBlock> blocks = [];
        if (card.Options.MeasuringSystems.Count > 0)
            blocks.Add(new SheetBlock.Facts([.. card.Options.MeasuringSystems.Select(system => (FormulaCard.Capital(system.Name), MeasuresOf(system, numbers)))]));
        if (card.Assumptions.Count > 0)
            blocks.Add(new SheetBlock.Items(card.Assumptions));
        return blocks.Count == 0 ? null : new SheetSection("About the measures", false, [.. blocks]);
    }

    /// <summary>What a kitchen's cup and spoons hold.</summary>
    public static string MeasuresOf(MeasuringSystem system, SheetNumbers numbers) => string.Join(", ",
        new[] { KitchenUnit.Cup, KitchenUnit.Tablespoon, KitchenUnit.Teaspoon }.Where(system.Defines)
            .Select(unit => $"{unit.ToWord()} {numbers.Short(system.MillilitresPer(unit), 1)} mL"));
}
