using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>Lengths among the members of a JSON object: text with a unit.</summary>
internal static class CakeFields
{
    private const string Expected = "a text is expected, such as \"8 in\" or \"20 cm\"";

    /// <summary>A length with its unit; 1 cm and a mistake where it is missing or cannot be read.</summary>
    public static CakeLength Length(this JsonFields fields, string member)
    {
        fields.Need(member);
        return fields.Length(member, CakeLength.FromCentimetres(1));
    }

    /// <summary>A length with its unit; so much where it is missing.</summary>
    public static CakeLength Length(this JsonFields fields, string member, CakeLength missing) =>
        fields.Text(member, Expected) is string text ? Parse(fields, member, text) : missing;

    /// <summary>A length that may lie on the other side: a minus before it.</summary>
    public static double SignedCentimetres(this JsonFields fields, string member) => fields.Text(member, Expected) is not string text ? 0
        : text.TrimStart() is ['-', .. string rest] ? -Parse(fields, member, rest).Centimetres : Parse(fields, member, text).Centimetres;

    private static CakeLength Parse(JsonFields fields, string member, string text)
    {
        if (CakeLength.TryParse(text, out CakeLength length))
            return length;
        fields.Wrong(member, $"{Excerpt.Of(text)} is no length; a number with its unit is expected, such as 8 in, 8 1/2 in, 20.5 cm or 6 "
            + $"mm");
        return CakeLength.FromCentimetres(1);
    }
}
