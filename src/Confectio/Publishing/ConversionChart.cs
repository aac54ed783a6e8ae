using System.Globalization;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Publishing;

/// <summary>A chart of what cups and spoons of foods weigh, made from the table with its spreads and sources.</summary>
/// <remarks>
/// Every row is the likely weight of the food in the packing that stands beside it, rounded as <see cref="ChartRow"/> has it: a chart to 5 g has
/// finer rows where 5 g would be wrong. No packing is assumed in silence. A food that nobody weighed in a measure has no row and is named in
/// <see cref="NotKnown"/>. Its CSV is what the vetter of conversion tables reads.
/// </remarks>
public sealed class ConversionChart
{
    /// <summary>The most rows of a chart.</summary>
    public const int MaximumRows = 20_000;

    private ConversionChart(ChartRow[] rows, string[] notKnown, MeasuringSystem system, ChartOptions options)
    {
        Rows = rows;
        NotKnown = notKnown;
        MeasuringSystem = system;
        Options = options;
        Title = SafeText.Name(options.Title.Length > 0 ? options.Title : $"What cups and spoons weigh, {system.Name}");
        List<string> cautions = [];
        HashSet<string> ofUnits = [.. new[] { KitchenUnit.Tablespoon, KitchenUnit.Cup }.Select(system.CautionFor).OfType<string>()];
        foreach (ChartRow row in rows)
        {
            if (system.CautionFor(row.Measure.Part(0).Unit) is string caution)
                cautions.Add($"{FormulaCard.Capital(system.Name)}: {caution}");
            cautions.AddRange(row.By.Cautions.Where(own => !ofUnits.Contains(own)).Select(own => $"{row.Name}, {row.By.Density.Packing.ToWord()}: {own}"));
        }
        Cautions = [.. cautions.Distinct()];
    }

    /// <summary>The title.</summary>
    public string Title { get; }

    /// <summary>Whose cups and spoons.</summary>
    public MeasuringSystem MeasuringSystem { get; }

    /// <summary>How it is rounded and named.</summary>
    public ChartOptions Options { get; }

    /// <summary>The rows: of each food its measures, in the order they were given.</summary>
    public IReadOnlyList<ChartRow> Rows { get; }

    /// <summary>What to know before trusting a row.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>What the chart has no row of, and why.</summary>
    public IReadOnlyList<string> NotKnown { get; }

    /// <summary>A chart of foods and measures.</summary>
    /// <param name="foods">The foods, each with its packing.</param>
    /// <param name="measures">The measures, such as <c>1 cup</c>; volumes that the system has.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <param name="options">How it is rounded and named; <see langword="null"/> for grams and the foods' own names.</param>
    /// <returns>The chart. Worked number: 1 US cup of sifted icing sugar is 97 g, 86 to 110.</returns>
    /// <exception cref="ArgumentNullException">An argument other than the options, or a food, is null.</exception>
    /// <exception cref="ArgumentException">
    /// There are no foods or no measures, or more than 20 000 rows would be made; or a measure is no single volume above 0 that the system has.
    /// </exception>
    public static ConversionChart Of(IEnumerable<ChartFood> foods, IEnumerable<Amount> measures, MeasuringSystem system, ChartOptions? options = null)
    {
        ChartFood[] all = [.. Guard.NotNull(foods).Take(MaximumRows + 1).Select(food => Guard.NotNull(food, nameof(foods)))];
        Amount[] amounts = [.. Guard.NotNull(measures).Take(MaximumRows + 1)];
        Guard.NotNull(system);
        options ??= ChartOptions.Default;
        if (all.Length == 0)
            throw new ArgumentException($"{nameof(foods)} is empty; at least one is needed.", nameof(foods));
        if (amounts.Length == 0)
            throw new ArgumentException($"{nameof(measures)} is empty; at least one is needed.", nameof(measures));
        if ((long)all.Length * amounts.Length > MaximumRows)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(foods)} and {nameof(measures)} make more than {MaximumRows} rows, the most a chart may have."), nameof(foods));
        foreach (Amount amount in amounts)
        {
            if (!amount.IsVolume || amount.PartCount != 1 || amount.IsRange || !system.Defines(amount.Part(0).Unit) || amount.Millilitres(system) is not (> 0 and <= 1e6))
                throw new ArgumentException($"{nameof(measures)} has {amount}; a single volume above 0, up to 1000000 mL, that {system.Name} has is expected.", nameof(measures));
        }
        List<ChartRow> rows = [];
        List<string> unknown = [];
        foreach (ChartFood food in all)
        {
            string name = SafeText.Name(options.Names is not null && options.Names.TryGet(food.Ingredient.Id, out Ingredient? named) && named == food.Ingredient ? named.Name : food.Ingredient.Name);
            if (!food.Ingredient.TryGetNearestDensity(food.Packing, out _))
            {
                unknown.Add($"{name}, {food.Packing.ToWord()}: nobody weighed a measure of it.");
                continue;
            }
            Conversion by = Conversion.Of(food.Ingredient, food.Packing, system);
            rows.AddRange(amounts.Select(amount => new ChartRow(name, amount, by, options.Rounding)));
        }
        return new ConversionChart([.. rows], [.. unknown.Distinct()], system, options);
    }

    /// <summary>The chart as plain text.</summary>
    /// <returns>Lines that end in a line feed.</returns>
    public string ToText() => TextSheet.Write(Sheet());

    /// <summary>The chart in Markdown (CommonMark, and tables as GitHub has them).</summary>
    /// <returns>Lines that end in a line feed.</returns>
    public string ToMarkdown() => MarkdownSheet.Write(Sheet());

    /// <summary>The chart as a whole HTML document: no script, nothing from elsewhere; for a screen of any width, the dark, and paper.</summary>
    /// <returns>The document.</returns>
    public string ToHtml() => HtmlSheet.Write(Sheet());

    /// <summary>
    /// The chart as comma-separated values (RFC 4180, lines that end in a line feed), the same in every culture. A cell that a spreadsheet would
    /// take for a formula begins with an apostrophe.
    /// </summary>
    /// <returns>
    /// A heading and a line for each row: <c>ingredient,measure,packing,grams,range,source,evidence</c>, with <c>ounces</c> in place of grams
    /// where the chart is in ounces.
    /// </returns>
    public string ToCsv() => SheetCsv.Write(
        [["ingredient", "measure", "packing", IsOunces ? "ounces" : "grams", "range", "source", "evidence"], .. Rows.Select(row => (string[])
        [
            row.Name, row.Measure.ToString(), row.By.Density.Packing.ToWord(), row.Text(row.Printed, SheetNumbers.Invariant),
            $"{row.Text(row.PrintedLow, SheetNumbers.Invariant)} to {row.Text(row.PrintedHigh, SheetNumbers.Invariant)}", row.Source, row.Evidence.ToWord(),
        ])]);

    /// <summary>
    /// The chart for other programs, version 1, the same in every culture; the schema stands in docs/schema/chart.json. Grams that are not
    /// rounded stand beside what is printed.
    /// </summary>
    /// <returns>The JSON.</returns>
    public string ToJson() => SheetJson.Write(writer =>
    {
        writer.WriteStartObject();
        writer.WriteNumber("confectioChart", 1);
        writer.WriteString("title", Title);
        writer.WriteString("system", MeasuringSystem.Key);
        writer.WriteString("unit", IsOunces ? "oz" : "g");
        writer.WriteStartArray("rows");
        foreach (ChartRow row in Rows)
        {
            writer.WriteStartObject();
            writer.WriteString("ingredient", row.Name);
            writer.WriteString("packing", row.By.Density.Packing.ToWord());
            writer.WriteString("measure", row.Measure.ToString());
            writer.WriteNumber("printed", row.Printed);
            writer.WriteNumber("printedLow", row.PrintedLow);
            writer.WriteNumber("printedHigh", row.PrintedHigh);
            writer.WriteNumber("step", row.Step);
            writer.WriteNumber("lowGrams", row.Grams.Low);
            writer.WriteNumber("grams", row.Grams.Likely);
            writer.WriteNumber("highGrams", row.Grams.High);
            writer.WriteString("source", row.Source);
            writer.WriteString("evidence", row.Evidence.ToWord());
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        SheetJson.Texts(writer, "cautions", Cautions);
        SheetJson.Texts(writer, "notKnown", NotKnown);
        writer.WriteEndObject();
    });

    /// <summary>The title and the number of rows.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Title}: {Rows.Count} {(Rows.Count == 1 ? "row" : "rows")}");

    private bool IsOunces => Options.Rounding == ChartRounding.QuarterOunce;

    private Sheet Sheet()
    {
        SheetNumbers numbers = SheetNumbers.Of(Options.Culture, groups: false);
        SheetColumn[] columns = [new("Food"), new("Filled"), new("Measure"), new(IsOunces ? "Ounces" : "Grams", true), new("May be", true), new("From")];
        List<SheetSection> sections = [];
        if (Rows.Count > 0)
        {
            sections.Add(new("Weights", false, new SheetBlock.Table(
                $"{CardSheet.MeasuresOf(MeasuringSystem, numbers)}, level. May be: about what careful cooks find. Rounded no coarser and no finer than each weight is known.", columns, [.. Rows.Select(row => (SheetCell[])
                [
                    row.Name, row.By.Density.HowPacked, row.Measure.ToString("V"), row.Text(row.Printed, numbers),
                    $"{row.Text(row.PrintedLow, numbers)} to {row.Text(row.PrintedHigh, numbers)}", $"{row.Source} ({row.Evidence.ToWord()})",
                ])])));
        }
        if (Cautions.Count > 0)
            sections.Add(new("Before you trust it", false, new SheetBlock.Items(Cautions)));
        if (NotKnown.Count > 0)
            sections.Add(new("Not known", false, new SheetBlock.Items(NotKnown)));
        return new Sheet(Title, Rows.Count == 0 ? "There is no row: nobody weighed a measure of these." : "", sections);
    }
}
