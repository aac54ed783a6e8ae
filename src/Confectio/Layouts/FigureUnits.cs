namespace Confectio.Layouts;

/// <summary>The words for the units of a column of figures, as headings and cells have them.</summary>
internal static class FigureUnits
{
    private static readonly Dictionary<string, FigureUnit> s_words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["g"] = FigureUnit.Gram, ["gm"] = FigureUnit.Gram, ["gms"] = FigureUnit.Gram, ["gr"] = FigureUnit.Gram, ["grs"] = FigureUnit.Gram,
        ["gram"] = FigureUnit.Gram, ["grams"] = FigureUnit.Gram, ["gramme"] = FigureUnit.Gram, ["grammes"] = FigureUnit.Gram,
        ["gramm"] = FigureUnit.Gram, ["gramos"] = FigureUnit.Gram, ["grammi"] = FigureUnit.Gram, ["grammaa"] = FigureUnit.Gram,
        ["kg"] = FigureUnit.Kilogram, ["kgs"] = FigureUnit.Kilogram, ["kilo"] = FigureUnit.Kilogram, ["kilos"] = FigureUnit.Kilogram,
        ["kilogram"] = FigureUnit.Kilogram, ["kilograms"] = FigureUnit.Kilogram,
        ["oz"] = FigureUnit.Ounce, ["ozs"] = FigureUnit.Ounce, ["ounce"] = FigureUnit.Ounce, ["ounces"] = FigureUnit.Ounce,
        ["lb"] = FigureUnit.Pound, ["lbs"] = FigureUnit.Pound, ["pound"] = FigureUnit.Pound, ["pounds"] = FigureUnit.Pound,
        ["ml"] = FigureUnit.Millilitre, ["mls"] = FigureUnit.Millilitre, ["millilitre"] = FigureUnit.Millilitre,
        ["millilitres"] = FigureUnit.Millilitre, ["milliliter"] = FigureUnit.Millilitre, ["milliliters"] = FigureUnit.Millilitre,
    };

    private const int Longest = 12;

    public static bool TryGet(ReadOnlySpan<char> word, out FigureUnit unit)
    {
        unit = FigureUnit.None;
        return word.Length is > 0 and <= Longest && s_words.TryGetValue(word.ToString(), out unit);
    }

    public static string Word(this FigureUnit unit) => unit switch
    {
        FigureUnit.Gram => "g",
        FigureUnit.Kilogram => "kg",
        FigureUnit.Ounce => "oz",
        FigureUnit.Pound => "lb",
        FigureUnit.Millilitre => "mL",
        _ => "",
    };
}
