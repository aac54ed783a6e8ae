using System.Globalization;
using Confectio.Text;

namespace Confectio.Formulas.Solving;

/// <summary>One figure of a nutrition panel: what was printed, and all values that would be printed so.</summary>
/// <remarks>
/// The values are those that round to what is printed: to the last digit that is printed, or to the coarser step of the rules where the
/// figure is a multiple of it. A panel of the European Union prints 0 for up to 0.5 g (saturates 0.1 g, salt 0.0125 g), one of the United
/// States for less than 0.5 g (sodium 5 mg, 5 kcal). Where two steps meet, the coarser counts. What was less than a figure was from the
/// value that is printed as 0 up to it. Worked numbers: <c>31.6 g</c> is 31.55 to 31.65 g; American <c>4.5 g</c> of fat 4.25 to 4.75 g;
/// <c>less than 1 g</c> of American protein 0.5 to 1 g.
/// Rounding: 21 CFR 101.9(c); European Commission, guidance on tolerances, December 2012, section 6, as restated by others.
/// </remarks>
public sealed class PanelFigure
{
    private PanelFigure(LabelNutrient nutrient, string printed, double value, double low, double high, bool isLimit)
    {
        Nutrient = nutrient;
        Printed = printed;
        Value = value;
        Low = low;
        High = high;
        IsLimit = isLimit;
    }

    /// <summary>What it is a figure of.</summary>
    public LabelNutrient Nutrient { get; }

    /// <summary>The text as it was printed, such as <c>31.6 g</c>.</summary>
    public string Printed { get; }

    /// <summary>The value, in the unit of <see cref="Nutrient"/>; of a limit, such as less than 1 g, the middle of what it may be.</summary>
    public double Value { get; }

    /// <summary>The least value that would be printed so.</summary>
    public double Low { get; }

    /// <summary>The greatest value that would be printed so.</summary>
    public double High { get; }

    /// <summary>Whether the panel has a limit and no value: <c>&lt; 0.5 g</c>, less than 1 g, a trace.</summary>
    public bool IsLimit { get; }

    /// <summary>What is printed and what it may be, such as <c>fat 31.6 g (31.55 to 31.65)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{EnumWords.Of(Nutrient, ' ')} {Printed} ({Low:0.####} to {High:0.####})");

    /// <summary>Reads what is printed; the unit may be left out.</summary>
    internal static bool TryRead(LabelNutrient nutrient, ReadOnlySpan<char> printed, LabelRules rules, out PanelFigure? figure,
        out string expected)
    {
        figure = null;
        expected = "a figure such as 31.6 g, < 0.5 g or less than 1 g";
        ReadOnlySpan<char> text = printed.Trim();
        string kept = text.ToString();
        if (text.Length > 40)
            return false;
        if (Starts(ref text, "traces") || Starts(ref text, "trace"))
        {
            double most = LabelRounding.Zero(nutrient, rules);
            figure = new PanelFigure(nutrient, kept, most / 2, 0, most, isLimit: true);
            return text.Trim().IsEmpty;
        }
        bool limit = Starts(ref text, "less than") || Starts(ref text, "<") || Starts(ref text, "under");
        if (!TryNumber(text, UnitIsSmall(nutrient), out double value, out double digit, out ReadOnlySpan<char> rest))
            return false;
        double scale = Scale(nutrient, rest.Trim());
        if (double.IsNaN(scale))
        {
            expected = $"a figure in {UnitOf(nutrient)}";
            return false;
        }
        (value, digit) = (value * scale, digit * scale);
        double highest = nutrient switch
        {
            LabelNutrient.Kilojoules => 1e6,
            LabelNutrient.Kilocalories => 1e6,
            LabelNutrient.Sodium => 1e7,
            _ => 1e5,
        };
        if (value > highest)
            return false;
        double zero = LabelRounding.Zero(nutrient, rules);
        if (limit)
        {
            double low = value > zero ? zero : 0;
            figure = new PanelFigure(nutrient, kept, (low + value) / 2, low, value, isLimit: true);
        }
        else if (value == 0)
        {
            figure = new PanelFigure(nutrient, kept, 0, 0, zero, isLimit: false);
        }
        else
        {
            double step = LabelRounding.Step(nutrient, rules, value), unit = digit;
            // A multiple of the coarser step was most likely rounded to it; 31.6 was not rounded to whole grams.
            if (step > digit && Math.Abs(value / step - Math.Round(value / step)) < 1e-6)
                unit = step;
            figure = new PanelFigure(nutrient, kept, value, Math.Max(0, value - unit / 2), value + unit / 2, isLimit: false);
        }
        return true;
    }

    /// <summary>A number of the first words of a text, with a decimal point or comma; the value of its last digit; what follows.</summary>
    internal static bool TryNumber(ReadOnlySpan<char> text, bool inThousands, out double value, out double digit,
        out ReadOnlySpan<char> rest)
    {
        text = text.TrimStart();
        int end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end])
            || text[end] is '.' or ',' && end + 1 < text.Length && char.IsAsciiDigit(text[end + 1])))
        {
            end++;
        }
        (value, digit) = (0, 1);
        rest = text[end..];
        string number = text[..end].ToString();
        int comma = number.LastIndexOf(',');
        // 2,278 kJ has a thousands separator; 31,6 g has a decimal comma.
        if (comma >= 0 && inThousands && number.Length - comma == 4)
            number = number.Replace(",", "", StringComparison.Ordinal);
        else if (comma >= 0)
            number = number.Replace(',', '.');
        if (number.Length is 0 or > 15 || !double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value))
            return false;
        int point = number.IndexOf('.');
        if (point >= 0)
            digit = Math.Pow(10, point + 1 - number.Length);
        return true;
    }

    private static bool UnitIsSmall(LabelNutrient nutrient) =>
        nutrient is LabelNutrient.Kilojoules or LabelNutrient.Kilocalories or LabelNutrient.Sodium;

    private static string UnitOf(LabelNutrient nutrient) => nutrient switch
    {
        LabelNutrient.Kilojoules => "kJ",
        LabelNutrient.Kilocalories => "kcal",
        LabelNutrient.Sodium => "mg or g",
        _ => "g or mg",
    };

    // By what a figure in a unit is multiplied; not a number where the unit is another's.
    private static double Scale(LabelNutrient nutrient, ReadOnlySpan<char> unit)
    {
        bool Is(ReadOnlySpan<char> given, string word) => given.Equals(word, StringComparison.OrdinalIgnoreCase);
        if (unit.IsEmpty)
            return 1;
        return nutrient switch
        {
            LabelNutrient.Kilojoules => Is(unit, "kj") ? 1 : double.NaN,
            LabelNutrient.Kilocalories => Is(unit, "kcal") || Is(unit, "cal") || Is(unit, "calories") ? 1 : double.NaN,
            LabelNutrient.Sodium => Is(unit, "mg") ? 1 : Is(unit, "g") ? 1000 : double.NaN,
            _ => Is(unit, "g") || Is(unit, "grams") ? 1 : Is(unit, "mg") ? 0.001 : double.NaN,
        };
    }

    private static bool Starts(ref ReadOnlySpan<char> text, string word)
    {
        if (!text.StartsWith(word, StringComparison.OrdinalIgnoreCase))
            return false;
        text = text[word.Length..].TrimStart();
        return true;
    }
}
