using System.Globalization;
using Confectio.Layouts;
using Confectio.Measures;

namespace Confectio.Vetting;

/// <summary>A mass as printed: the number, the unit of its last digit, and its digits, because a mistake is made in print.</summary>
internal readonly struct PrintedMass
{
    public static readonly double GramsPerOunce = MeasuringSystem.OfNobody.GramsPer(KitchenUnit.Ounce);

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

    /// <summary>
    /// The mass of a figure. Kilograms are grams with other digits, pounds are sixteen ounces; a pound is meant to the ounce at least,
    /// however it is written.
    /// </summary>
    public static PrintedMass Of(TableFigure figure) => figure.Unit switch
    {
        FigureUnit.Kilogram => new(figure.Value * 1000, figure.Resolution * 1000,
            Math.Max(figure.Decimals - 3, figure.Decimals < 0 ? -1 : 0), ounces: false),
        FigureUnit.Pound => new(figure.Value * 16, Math.Min(figure.Resolution * 16, Math.Max(1, figure.Width * 16)), -1, ounces: true),
        _ => new(figure.Value, figure.Resolution, figure.Decimals, figure.Unit == FigureUnit.Ounce),
    };

    /// <summary>
    /// The numbers of one digit more, from least to most, that would have been printed as this one had they lost a digit; and of how many of
    /// their digits that is true. 227 loses one of three: 27, by its first or its second; 22, without its last, is a mark that moved. A number
    /// that begins with 0 is none, and what stands behind the decimal mark stays there.
    /// </summary>
    /// <returns>How many there are; 0 where there are more than there is room for.</returns>
    public int WithADigitMore(double least, double most, Span<(double Value, double Share)> values)
    {
        if (Decimals < 0)
            return 0;
        double scale = Math.Pow(10, Decimals);
        long digits = (long)Math.Round(Value * scale);
        int length = 1;
        for (long rest = digits; rest >= 10; rest /= 10)
            length++;
        int count = 0;
        // The new digit before the last digits that count less than place; those behind the mark are as many as before.
        int from = Math.Max(1, (int)Decimals);
        long place = Decimals > 0 ? (long)scale : 10;
        for (int at = from; at <= length; at++, place *= 10)
        {
            for (int digit = at == length ? 1 : 0; digit <= 9; digit++)
            {
                double value = (digits / place * 10 * place + digit * place + digits % place) / scale;
                if (value < least || value > most)
                    continue;
                int same = 0;
                while (same < count && values[same].Value != value)
                    same++;
                if (same == values.Length)
                    return 0;
                values[same] = (value, (same < count ? values[same].Share : 0) + 1.0 / (length + 1));
                count = Math.Max(count, same + 1);
            }
        }
        return count;
    }

    /// <summary>
    /// The numbers that would have been printed as this one had one of their digits been printed twice. A nought more at the end is a mark that
    /// moved, and 22 is 2.2 without its mark rather than 2 twice.
    /// </summary>
    public int WithADigitLess(Span<double> values)
    {
        if (Decimals < 0)
            return 0;
        double scale = Math.Pow(10, Decimals);
        long digits = (long)Math.Round(Value * scale);
        int count = 0;
        for (long place = (long)scale; digits >= 100 && digits / place >= 10 && count < values.Length; place *= 10)
        {
            double value = (digits / (10 * place) * place + digits % place) / scale;
            if (digits / place % 10 == digits / (10 * place) % 10 && digits % (10 * place) != 0 && (count == 0 || values[count - 1] != value))
                values[count++] = value;
        }
        return count;
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
