using System.Globalization;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>A mass as printed: the number, the unit of its last digit, and its digits, because a mistake is made in print.</summary>
internal readonly struct PrintedMass
{
    public static readonly double GramsPerOunce = MeasuringSystem.UsCustomary.GramsPer(KitchenUnit.Ounce);

    private PrintedMass(double value, double resolution, int decimals, bool ounces)
    {
        Value = value;
        Resolution = resolution;
        Decimals = (sbyte)decimals;
        IsOunces = ounces;
    }

    /// <summary>The number in its own unit.</summary>
    public double Value { get; }

    /// <summary>The unit of the last printed digit, in the number's own unit; 1/4 oz for <c>4 1/4</c>.</summary>
    public double Resolution { get; }

    /// <summary>Decimal places; -1 where the number was printed as a fraction.</summary>
    public sbyte Decimals { get; }

    /// <summary>Whether it was printed in ounces.</summary>
    public bool IsOunces { get; }

    public double GramsPerUnit => IsOunces ? GramsPerOunce : 1;

    public double Grams => Value * GramsPerUnit;

    /// <summary>Reads a printed mass; a unit that repeats the column's may follow the number.</summary>
    public static bool TryRead(ReadOnlySpan<char> text, bool ounces, AmountReading reading, out PrintedMass mass, out string problem)
    {
        mass = default;
        problem = "";
        ReadOnlySpan<char> number = WithoutUnit(text, ounces);
        if (!TryReadDecimal(number, ounces, reading, out mass) && !TryReadFraction(number, ounces, reading, out mass, ref problem))
        {
            if (problem.Length == 0)
                problem = $"{Excerpt.Of(text)} is not a mass; a number of {(ounces ? "ounces" : "grams")} was expected";
            return false;
        }
        if (mass.Grams is >= 0.01 and <= 1_000_000)
            return true;
        problem = $"{Excerpt.Of(text)} is outside 0.01 g to 1 000 000 g";
        return false;
    }

    private static ReadOnlySpan<char> WithoutUnit(ReadOnlySpan<char> text, bool ounces)
    {
        text = text.Trim();
        foreach (string unit in ounces ? (ReadOnlySpan<string>)["ounces", "ounce", "oz.", "oz"] : ["grams", "gram", "g.", "g"])
        {
            if (text.EndsWith(unit, StringComparison.OrdinalIgnoreCase))
                return text[..^unit.Length].TrimEnd();
        }
        return text;
    }

    private static bool TryReadDecimal(ReadOnlySpan<char> text, bool ounces, AmountReading reading, out PrintedMass mass)
    {
        mass = default;
        char mark = reading == AmountReading.DecimalComma ? ',' : '.';
        long digits = 0;
        int point = -1;
        if (text.Length is 0 or > 18)
            return false;
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsAsciiDigit(text[i]))
                digits = digits * 10 + (text[i] - '0');
            else if (text[i] == mark && point < 0 && i > 0 && i < text.Length - 1)
                point = i;
            else
                return false;
        }
        int decimals = point < 0 ? 0 : text.Length - point - 1;
        double scale = Math.Pow(10, decimals);
        mass = new PrintedMass(digits / scale, 1 / scale, decimals, ounces);
        return true;
    }

    private static bool TryReadFraction(ReadOnlySpan<char> text, bool ounces, AmountReading reading, out PrintedMass mass, ref string problem)
    {
        mass = default;
        if (text.Length > 40)
            return false;
        // "4 1/4" and "4¼" are amounts of the column's unit.
        AmountReader reader = new($"{text} {(ounces ? "oz" : "g")}", reading);
        if (!reader.TryReadAll(out Amount amount) || amount.PartCount > 1 || amount.IsRange || !amount.IsMass)
        {
            if (text.Contains(',') || text.Contains('.'))
                problem = $"{Excerpt.Of(text)} is not a mass; decimals are read with a {(reading == AmountReading.DecimalComma ? "comma" : "point")} here";
            return false;
        }
        Fraction value = amount.Part(0).Low;
        mass = new PrintedMass(value.ToDouble(), 1.0 / value.Denominator, -1, ounces);
        return true;
    }

    /// <summary>The numbers that would have been printed as this one had two neighbouring digits changed places.</summary>
    public int SwappedDigits(Span<double> values)
    {
        if (Decimals < 0)
            return 0;
        double scale = Math.Pow(10, Decimals);
        long digits = (long)Math.Round(Value * scale);
        int count = 0;
        long place = 1;
        while (digits / place >= 100)
            place *= 10;
        // From the first pair of digits to the last; place is what the second of the pair counts.
        for (bool first = true; digits >= 10 && place > 0 && count < values.Length; place /= 10, first = false)
        {
            long left = digits / (10 * place) % 10, right = digits / place % 10;
            if (left != right && !(first && right == 0))
                values[count++] = (digits + (right - left) * 9 * place) / scale;
        }
        return count;
    }
}
