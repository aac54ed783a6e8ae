using System.Globalization;
using System.Text;

namespace Confectio.Measures;

/// <summary>Writes an <see cref="Amount"/> so that <see cref="AmountReader"/> reads the same amount back.</summary>
internal static class AmountWriter
{
    private static readonly (Fraction Value, char Character)[] s_vulgar =
    [
        (new(1, 2), '½'), (new(1, 3), '⅓'), (new(2, 3), '⅔'), (new(1, 4), '¼'), (new(3, 4), '¾'), (new(1, 5), '⅕'), (new(2, 5), '⅖'),
        (new(3, 5), '⅗'), (new(4, 5), '⅘'), (new(1, 6), '⅙'), (new(5, 6), '⅚'), (new(1, 7), '⅐'), (new(1, 8), '⅛'), (new(3, 8), '⅜'),
        (new(5, 8), '⅝'), (new(7, 8), '⅞'), (new(1, 9), '⅑'), (new(1, 10), '⅒'),
    ];

    public static bool TryVulgar(char character, out Fraction value)
    {
        // Every vulgar fraction but the three of Latin-1 lies in one small block.
        if (character is '¼' or '½' or '¾' or (>= '⅐' and <= '⅞'))
        {
            foreach ((Fraction candidate, char shape) in s_vulgar)
            {
                if (shape == character)
                {
                    value = candidate;
                    return true;
                }
            }
        }
        value = default;
        return false;
    }

    public static string Write(Amount amount, ReadOnlySpan<char> format)
    {
        bool vulgar = format switch
        {
            "" or "G" or "g" => false,
            "V" or "v" => true,
            _ => throw new FormatException($"{Text.Excerpt.Of(format)} is not a format of an amount; G and V are."),
        };
        StringBuilder text = new();
        for (int i = 0; i < amount.PartCount; i++)
        {
            if (i > 0)
                text.Append(" + ");
            AmountPart part = amount.Part(i);
            AppendQuantity(text, part.Low, part.Unit, vulgar);
            if (part.High != part.Low)
            {
                // "1-1/2" would read back as one and a half, so a range that ends in a bare fraction is spelt out.
                text.Append(part.High < 1 || !part.High.IsWhole ? " to " : "-");
                AppendQuantity(text, part.High, part.Unit, vulgar);
            }
            text.Append(' ').Append(Word(part));
        }
        return text.ToString();
    }

    private static string Word(AmountPart part)
    {
        bool plural = part.High > 1;
        if (part.Unit == KitchenUnit.Piece)
            return plural && PieceWords.TakesPlural(part.Piece!) ? part.Piece + "s" : part.Piece!;
        string word = part.Unit.ToWord();
        return plural && part.Unit is KitchenUnit.Cup or KitchenUnit.Pint or KitchenUnit.Quart or KitchenUnit.Gallon && plural ? word + "s"
            : word;
    }

    private static void AppendQuantity(StringBuilder text, Fraction quantity, KitchenUnit unit, bool vulgar)
    {
        // Scales and jugs are read in decimals, cups and spoons in fractions.
        bool metric = unit is KitchenUnit.Gram or KitchenUnit.Kilogram or KitchenUnit.Millilitre or KitchenUnit.Litre;
        if (metric && TryAppendDecimal(text, quantity))
            return;
        long whole = quantity.Numerator / quantity.Denominator;
        Fraction rest = quantity - new Fraction(whole, 1);
        if (whole != 0 || rest == 0)
            text.Append(CultureInfo.InvariantCulture, $"{whole}");
        if (rest == 0)
            return;
        if (vulgar)
        {
            foreach ((Fraction value, char character) in s_vulgar)
            {
                if (value == rest)
                {
                    text.Append(character);
                    return;
                }
            }
        }
        if (whole != 0)
            text.Append(' ');
        text.Append(CultureInfo.InvariantCulture, $"{rest.Numerator}/{rest.Denominator}");
    }

    private static bool TryAppendDecimal(StringBuilder text, Fraction quantity)
    {
        long denominator = quantity.Denominator;
        int twos = 0, fives = 0;
        for (; denominator % 2 == 0; denominator /= 2)
            twos++;
        for (; denominator % 5 == 0; denominator /= 5)
            fives++;
        int places = Math.Max(twos, fives);
        if (denominator != 1 || places > 9)
            return false;
        decimal value = (decimal)quantity.Numerator / quantity.Denominator;
        text.Append(value.ToString("F" + places.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
        return true;
    }
}
