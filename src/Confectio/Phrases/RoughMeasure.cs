using System.Collections.Frozen;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Phrases;

/// <summary>What a pinch, a knob, a heaped spoon or the juice of a lemon is taken for; the rows of rough_measures.csv.</summary>
internal sealed class RoughMeasure
{
    private static readonly Lazy<RoughMeasure[]> s_all = new(Read);

    private static readonly Lazy<RoughMeasure[]> s_measures = new(() => [.. s_all.Value.Where(row => row.Kind == "measure")]);

    private static readonly Lazy<RoughMeasure?[]> s_fills = new(() => OfKind("fill")), s_cupFills = new(() => OfKind("cup-fill"));

    private RoughMeasure(string kind, string word, string ingredient, double low, double likely, double high, KitchenUnit unit, string evidence,
        string note)
    {
        (Kind, Word, Ingredient, Low, Likely, High) = (kind, word, ingredient, low, likely, high);
        Unit = unit;
        (ExactLow, ExactHigh) = (Fraction.FromDecimal((decimal)low), Fraction.FromDecimal((decimal)high));
        Evidence = evidence switch { "common-practice" => "by common practice", _ => "an estimate" };
        Note = note;
    }

    /// <summary>What sort of row it is: measure, fill, cup-fill, juice, zest.</summary>
    public string Kind { get; }

    /// <summary>Whether it multiplies a level measure, as heaped does.</summary>
    public bool IsFill => Kind is "fill" or "cup-fill";

    public string Word { get; }

    /// <summary>The id of what one piece yields.</summary>
    public string Ingredient { get; }

    public double Low { get; }

    public double Likely { get; }

    public double High { get; }

    public Fraction ExactLow { get; }

    public Fraction ExactHigh { get; }

    public KitchenUnit Unit { get; }

    /// <summary>How it is known, as it stands at the end of a sentence.</summary>
    public string Evidence { get; }

    public string Note { get; }

    /// <summary>The rough measure of a word in the singular, lower case.</summary>
    public static RoughMeasure? Find(ReadOnlySpan<char> word)
    {
        foreach (RoughMeasure measure in s_measures.Value)
        {
            if (word.SequenceEqual(measure.Word))
                return measure;
        }
        return null;
    }

    /// <summary>
    /// By what a level measure is multiplied; <see langword="null"/> where it is level. A heap is as high on a cup as on a spoon is deep:
    /// of a cup it is the smaller part.
    /// </summary>
    public static RoughMeasure? Of(MeasureFill fill, in Amount amount) =>
        (amount.IsVolume && amount.First.Unit is not (KitchenUnit.Teaspoon or KitchenUnit.Dessertspoon or KitchenUnit.Tablespoon)
            ? s_cupFills.Value[(int)fill] : null) ?? s_fills.Value[(int)fill];

    /// <summary>What one piece of a fruit yields.</summary>
    public static RoughMeasure? Yield(ReadOnlySpan<char> kind, ReadOnlySpan<char> fruit)
    {
        foreach (RoughMeasure row in s_all.Value)
        {
            if (kind.SequenceEqual(row.Kind) && fruit.SequenceEqual(row.Word))
                return row;
        }
        return null;
    }

    private static RoughMeasure?[] OfKind(string kind) => [.. Enum.GetValues<MeasureFill>().Select(fill =>
        Array.Find(s_all.Value, row => row.Kind == kind && row.Word.Equals(fill.ToString(), StringComparison.OrdinalIgnoreCase)))];

    private static RoughMeasure[] Read()
    {
        List<RoughMeasure> rows = [];
        EmbeddedTable.Read("rough_measures.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string word = fields.Required("word"), unit = fields.Word("unit"), key = fields.Required("source");
            if (!Bibliography.TryGet(key, out _))
                fields.Problem("source", "there is no such source");
            KitchenUnit measure = default;
            if (unit.Length > 0 && !UnitWords.TryGet(unit, out measure, out _))
                fields.Problem("unit", "it is no unit");
            rows.Add(new RoughMeasure(fields.Required("what"), word, fields.Word("ingredient"), fields.RequiredNumber("low", 0, 1000),
                fields.RequiredNumber("likely", 0, 1000), fields.RequiredNumber("high", 0, 1000), measure, fields.Required("kind"),
                fields.Word("note")));
        });
        return [.. rows];
    }
}
