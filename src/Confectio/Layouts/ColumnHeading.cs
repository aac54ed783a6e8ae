using System.Globalization;
using System.Text.RegularExpressions;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>
/// What a heading says of its column, whatever words it takes for it: <c>Item</c>, <c>Weight (g)</c>, <c>½ cup (g)</c>,
/// <c>Grams per cup</c>, <c>Cups per pound</c>, <c>Qty</c>, <c>oz</c>.
/// </summary>
internal sealed partial class ColumnHeading
{
    private static readonly Dictionary<string, ColumnRole> s_words = Words(
        (ColumnRole.Name, "ingredient ingredients item items food foods foodstuff foodstuffs product products name commodity material "
            + "materials substance article what "
            + "zutat zutaten ingrédient ingrédients ingrediente ingredientes aliment aliments produit alimento raaka-aine livsmedel"),
        (ColumnRole.Measure, "measure measures measured volume amount amounts quantity quantities qty measurement measurements portion "
            + "serving household much size spoon spoons "
            + "menge maß mesure mesures quantité cantidad medida mitta mått capacity"),
        (ColumnRole.QuantityUnit, "unit units uom einheit unité unidad yksikkö enhet"),
        (ColumnRole.Mass, "weight weights weighs weigh weighed mass masses wt wt. gewicht poids peso paino vikt"),
        (ColumnRole.Packing, "packing state packed condition preparation form how-packed"),
        (ColumnRole.Note, "note notes no no. nr nr. number # remark remarks comment comments source page ref id row line category "
            + "categories group section class"));

    private ColumnHeading(string text, ColumnRole role, FigureUnit unit = FigureUnit.None, Amount? measure = null,
        bool isBareUnit = false) =>
        (Text, Role, Unit, Measure, IsBareUnit) = (text, role, unit, measure, isBareUnit);

    /// <summary>The heading as printed.</summary>
    public string Text { get; }

    public ColumnRole Role { get; init; }

    /// <summary>The unit of the figures; <see cref="FigureUnit.None"/> where the heading has none.</summary>
    public FigureUnit Unit { get; init; }

    /// <summary>The second unit of "Weight (g / oz)", whose cells have two figures; <see cref="FigureUnit.None"/> elsewhere.</summary>
    public FigureUnit SecondUnit { get; private init; }

    /// <summary>How large the measure is that the heading names, where it says so; its line is not set.</summary>
    public StatedMeasure? Stated { get; private init; }

    /// <summary>The packing of the weights of the column: "Sifted (g)"; <see langword="null"/> where the heading names none.</summary>
    public Packing? Packing { get; private init; }

    /// <summary>The measure that the heading names: <c>1 cup</c> of "½ cup (g)" or of "cups per pound".</summary>
    public Amount? Measure { get; }

    /// <summary>Whether the measure stood without a number: "Cup" may head weights of a cup or numbers of cups.</summary>
    public bool IsBareUnit { get; }

    public static ColumnHeading Read(string text)
    {
        string plain = TableFigure.Unmarked(text).ToString().Replace('\u00A0', ' ').Trim(':', '=', ' ').ToLowerInvariant();
        if (plain.Length is 0 or > 60)
            return new(text, ColumnRole.Unread);

        // "1 cup (250 ml)", "1 Tbsp = 15 ml (g)": the measure, and how large it is here.
        Match sized = SizedMeasure().Match(plain);
        if (sized.Success && TryUnitAmount(sized.Groups["measure"].Value, out Amount ofSize, out _)
            && ofSize is { IsVolume: true, PartCount: 1 } && !ofSize.Part(0).Unit.IsMetric()
            && double.TryParse(sized.Groups["size"].Value.Replace(',', '.'), CultureInfo.InvariantCulture, out double size))
        {
            ColumnHeading rest = Read(sized.Groups["measure"].Value + " " + sized.Groups["rest"].Value);
            if (rest.Measure is not null)
                return new(text, rest.Role, rest.Unit, rest.Measure) { Stated = new StatedMeasure(ofSize.Part(0).Unit,
                    size / ofSize.Part(0).Low.ToDouble(), 0) };
        }

        Match per = MeasuresPerMass().Match(plain);
        if (per.Success && TryUnitAmount(per.Groups["measure"].Value, out Amount each, out _)
            && FigureUnits.TryGet(per.Groups["mass"].Value, out FigureUnit perUnit))
            return new(text, ColumnRole.MeasuresPerMass, perUnit, each);

        per = MassOfMeasure().Match(plain);
        if (per.Success && TryUnitAmount(per.Groups["measure"].Value, out each, out _))
        {
            FigureUnit unit = FigureUnits.TryGet(per.Groups["mass"].Value, out FigureUnit stated) ? stated : UnitIn(plain[per.Length..]);
            return new(text, ColumnRole.MassOfMeasure, unit, each);
        }

        // "1 lb equals" over "2 cups"; "1 cup of" over the foods.
        per = PoundIs().Match(plain);
        if (per.Success && FigureUnits.TryGet(per.Groups["mass"].Value, out FigureUnit pound))
            return new(text, ColumnRole.MeasuresPerMass, pound, Amount.Of(1, KitchenUnit.Cup));
        per = CupOf().Match(plain);
        if (per.Success && TryUnitAmount(per.Groups["measure"].Value, out each, out _) && each.IsVolume)
            return new(text, ColumnRole.Name, FigureUnit.None, each);

        (string body, FigureUnit bracketed) = WithoutUnit(plain);
        if (TryUnitAmount(body, out Amount measure, out bool bare) && measure.IsVolume)
            return new(text, ColumnRole.MassOfMeasure, bracketed, measure, bare);

        ColumnRole role = ColumnRole.Unread;
        FigureUnit found = FigureUnit.None, second = FigureUnit.None;
        foreach (string word in body.Split([' ', '/', ',', '(', ')', '[', ']'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (FigureUnits.TryGet(word.TrimEnd('.'), out FigureUnit unit))
            {
                (found, second) = found == FigureUnit.None ? (unit, second) : (found, unit);
                continue;
            }
            if (!s_words.TryGetValue(word, out ColumnRole meant))
                continue;
            // "Weight unit" and "measure unit" head units; "serving weight" a weight; "measured ingredient" an ingredient.
            role = (role, meant) switch
            {
                (ColumnRole.Mass, ColumnRole.QuantityUnit) or (ColumnRole.QuantityUnit, ColumnRole.Mass) => ColumnRole.MassUnit,
                (ColumnRole.Measure, ColumnRole.QuantityUnit) => ColumnRole.QuantityUnit,
                (ColumnRole.Measure or ColumnRole.Packing or ColumnRole.Note, ColumnRole.Mass or ColumnRole.Name) => meant,
                (ColumnRole.Name, ColumnRole.Note) => meant, // "food group"
                (ColumnRole.Unread, _) => meant,
                _ => role,
            };
        }
        if (found == FigureUnit.None)
            found = bracketed;
        else if (bracketed != found && bracketed != FigureUnit.None)
            second = bracketed;
        if (PackingText.TryRead(body, out Packing packing) && found is not FigureUnit.Millilitre)
            return new(text, found == FigureUnit.None ? ColumnRole.Packing : ColumnRole.Mass, found) { SecondUnit = second,
                Packing = packing };
        if (found is FigureUnit.Millilitre)
            return new(text, ColumnRole.Quantity, found, Amount.Of(1, KitchenUnit.Millilitre));
        if (found != FigureUnit.None && role is ColumnRole.Unread or ColumnRole.Measure or ColumnRole.Mass)
            return new(text, found == FigureUnit.None ? role : ColumnRole.Mass, found) { SecondUnit = second };
        return new(text, role);
    }

    /// <summary>The unit that a piece of text names last in words or brackets: "(weights in ounces)".</summary>
    public static FigureUnit UnitIn(string text)
    {
        FigureUnit found = FigureUnit.None;
        foreach (ValueMatch match in Word().EnumerateMatches(text))
        {
            if (FigureUnits.TryGet(text.AsSpan(match.Index, match.Length), out FigureUnit unit))
                found = unit;
        }
        return found;
    }

    /// <summary>The volume that a title names, as in "Weight of one cup" or "What 1 Tbsp weighs".</summary>
    public static Amount? MeasureIn(string title)
    {
        Match match = TitleMeasure().Match(title.ToLowerInvariant());
        return match.Success && TryUnitAmount(match.Groups["measure"].Value, out Amount measure, out _) ? measure : null;
    }

    private static (string Body, FigureUnit Unit) WithoutUnit(string text)
    {
        Match match = TrailingUnit().Match(text);
        return match.Success && FigureUnits.TryGet(match.Groups["unit"].Value, out FigureUnit unit) && unit != FigureUnit.Millilitre
            ? (text[..match.Index].TrimEnd(' ', ',', '/', '-', '–'), unit) : (text, FigureUnit.None);
    }

    /// <summary>
    /// "1 cup", "½ cup", "cup", "a level tablespoon", "us cup", "metric cup" (which is 250 mL whatever the rest of the table has).
    /// </summary>
    private static bool TryUnitAmount(string text, out Amount amount, out bool bare)
    {
        bare = false;
        text = text.Trim();
        if (text.StartsWith("per ", StringComparison.Ordinal))
            text = text[4..];
        bool metric = false;
        text = text.Replace("level ", "", StringComparison.Ordinal).Replace("us ", "", StringComparison.Ordinal).Replace("u.s. ", "",
            StringComparison.Ordinal).Trim();
        if (text.Contains("metric ", StringComparison.Ordinal))
        {
            metric = true;
            text = text.Replace("metric ", "", StringComparison.Ordinal);
        }
        if (!Amount.TryParse(text, out amount))
        {
            bare = true;
            if (!Amount.TryParse("1 " + text, out amount))
                return false;
        }
        if (amount.PartCount > 1 || amount.IsRange || amount.IsMass)
            return false;
        if (metric && amount.Part(0).Unit == KitchenUnit.Cup)
            amount = Amount.Of(amount.Part(0).Low * 250, KitchenUnit.Millilitre);
        return true;
    }

    private static Dictionary<string, ColumnRole> Words(params (ColumnRole Role, string Words)[] rows) =>
        rows.SelectMany(row => row.Words.Split(' ').Select(word => (word, row.Role))).ToDictionary(row => row.word, row => row.Role,
            StringComparer.Ordinal);

    [GeneratedRegex(@"^(?<measure>[^()=]{1,30}?)[ ,]*[(=]? *(?<size>\d{1,4}(?:[.,]\d)?) ?m(?:l|illilit(?:re|er)s?)\b\)?(?<rest>.*)$",
        RegexOptions.CultureInvariant)]
    private static partial Regex SizedMeasure();

    [GeneratedRegex(@"^(?:(?:no\.?|number) of )?(?<measure>[a-z.]+(?: [a-z.]+)?) *(?:per|in|to|/|=|making|make) *(?:a |an |the |each |one |1 )?(?<mass>lb|pound|kg|kilo|kilogram|oz|ounce)s?\.?$", RegexOptions.CultureInvariant)]
    private static partial Regex MeasuresPerMass();

    [GeneratedRegex(@"^(?:(?:weight|wt\.?|mass) *(?:in|,)? *\(?)?(?<mass>[a-z]+)\.?\)? *(?:per|in|of|for|/) *(?:a |an |each |one )?(?<measure>(?:(?:1 |½ |¼ |1/[2-8] )?(?:level |us |metric )?(?:cup|tablespoon|teaspoon|tbsp|tbs|tsp|dessertspoon|pint|quart|dl|fl oz|litre|liter|l)s?|\d+ ?ml))\b", RegexOptions.CultureInvariant)]
    private static partial Regex MassOfMeasure();

    [GeneratedRegex(@"^(?:1|one|a) *(?<mass>lb|pound|kg|kilo|kilogram)\.? *(?:=|equals|is|makes|of)?$", RegexOptions.CultureInvariant)]
    private static partial Regex PoundIs();

    [GeneratedRegex(@"^(?<measure>(?:1|one|a|½|1/2) (?:level |us |metric )?[a-z]+) of\b[ .…:]*(?:food|ingredient|each)?$",
        RegexOptions.CultureInvariant)]
    private static partial Regex CupOf();

    [GeneratedRegex(@"(?:[ ,/(\[–-]|\bin )+(?<unit>[a-z]+)\.?[)\]]*$", RegexOptions.CultureInvariant)]
    private static partial Regex TrailingUnit();

    [GeneratedRegex(@"\b(?<measure>(?:1|one|a|½|1/2|half a|per) (?:level |us |metric )?(?:cup|tablespoon|teaspoon|tbsp|tsp|dl|decilitre|pint))\b", RegexOptions.CultureInvariant)]
    private static partial Regex TitleMeasure();

    [GeneratedRegex(@"[A-Za-z]+", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
