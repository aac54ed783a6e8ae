namespace Confectio.Measures;

/// <summary>The words for units of mass and volume. Only the one-letter T and t depend on case, as the trade writes them.</summary>
internal static class UnitWords
{
    private const int Longest = 16;

    /// <summary>
    /// Reads one word. Centilitres, decilitres and milligrams are kept in millilitres and grams: <paramref name="multiple"/> of
    /// them make one.
    /// </summary>
    public static bool TryGet(ReadOnlySpan<char> word, out KitchenUnit unit, out Fraction multiple)
    {
        multiple = 1;
        unit = default;
        if (word.Length is 0 or > Longest)
            return false;
        if (word is "T")
        {
            unit = KitchenUnit.Tablespoon;
            return true;
        }
        // Words are ASCII letters, so this is all that lower case means, in every culture.
        Span<char> lower = stackalloc char[Longest];
        lower = lower[..word.Length];
        for (int i = 0; i < word.Length; i++)
            lower[i] = (char)(word[i] | 0x20);
        switch (lower)
        {
            case "g" or "gm" or "gms" or "gram" or "grams" or "gramme" or "grammes":
                unit = KitchenUnit.Gram;
                return true;
            case "kg" or "kgs" or "kilo" or "kilos" or "kilogram" or "kilograms":
                unit = KitchenUnit.Kilogram;
                return true;
            case "oz" or "ozs" or "ounce" or "ounces":
                unit = KitchenUnit.Ounce;
                return true;
            case "lb" or "lbs" or "pound" or "pounds":
                unit = KitchenUnit.Pound;
                return true;
            case "ml" or "mls" or "cc" or "millilitre" or "milliliter" or "millilitres" or "milliliters":
                unit = KitchenUnit.Millilitre;
                return true;
            case "l" or "litre" or "liter" or "litres" or "liters":
                unit = KitchenUnit.Litre;
                return true;
            case "t" or "tsp" or "tsps" or "teaspoon" or "teaspoons" or "teaspoonful" or "teaspoonfuls":
                unit = KitchenUnit.Teaspoon;
                return true;
            case "dsp" or "dstsp" or "dessertspoon" or "dessertspoons" or "dessertspoonful" or "dessertspoonfuls":
                unit = KitchenUnit.Dessertspoon;
                return true;
            case "tb" or "tbs" or "tbsp" or "tbsps" or "tblsp" or "tblsps" or "tbl" or "tablespoon" or "tablespoons" or "tablespoonful"
                or "tablespoonfuls":
                unit = KitchenUnit.Tablespoon;
                return true;
            case "floz":
                unit = KitchenUnit.FluidOunce;
                return true;
            case "c" or "cup" or "cups" or "cupful" or "cupfuls":
                unit = KitchenUnit.Cup;
                return true;
            case "pt" or "pts" or "pint" or "pints":
                unit = KitchenUnit.Pint;
                return true;
            case "qt" or "qts" or "quart" or "quarts":
                unit = KitchenUnit.Quart;
                return true;
            case "gal" or "gallon" or "gallons":
                unit = KitchenUnit.Gallon;
                return true;
            case "cl" or "centilitre" or "centilitres" or "centiliter" or "centiliters":
                (unit, multiple) = (KitchenUnit.Millilitre, 10);
                return true;
            case "dl" or "decilitre" or "decilitres" or "deciliter" or "deciliters":
                (unit, multiple) = (KitchenUnit.Millilitre, 100);
                return true;
            case "gill" or "gills":
                // A quarter of a pint, imperial and US alike.
                (unit, multiple) = (KitchenUnit.Pint, new Fraction(1, 4));
                return true;
            case "mg":
                (unit, multiple) = (KitchenUnit.Gram, new Fraction(1, 1000));
                return true;
            default:
                return false;
        }
    }
}
