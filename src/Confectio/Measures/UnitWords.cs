namespace Confectio.Measures;

/// <summary>The words for units of mass and volume. Only the one-letter T and t depend on case, as the trade writes them.</summary>
internal static class UnitWords
{
    private const int Longest = 16;

    private static readonly Entry?[] s_entries = Build();

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
        for (Entry? entry = s_entries[SlotOf(lower)]; entry is not null; entry = entry.Next)
        {
            if (lower.SequenceEqual(entry.Word))
            {
                (unit, multiple) = (entry.Unit, entry.Multiple);
                return true;
            }
        }
        return false;
    }

    private static int SlotOf(ReadOnlySpan<char> word) => word.Length << 5 | word[0] & 0x1F;

    // A table and no switch over a hundred strings: that takes longer to compile than all tables take to read.
    private static Entry?[] Build()
    {
        Entry?[] entries = new Entry?[Longest + 1 << 5];
        Add(KitchenUnit.Gram, "g gm gms gram grams gramme grammes");
        Add(KitchenUnit.Kilogram, "kg kgs kilo kilos kilogram kilograms");
        Add(KitchenUnit.Ounce, "oz ozs ounce ounces");
        Add(KitchenUnit.Pound, "lb lbs pound pounds");
        Add(KitchenUnit.Millilitre, "ml mls cc millilitre milliliter millilitres milliliters");
        Add(KitchenUnit.Litre, "l litre liter litres liters");
        Add(KitchenUnit.Teaspoon, "t tsp tsps tspn tspns teaspoon teaspoons teaspoonful teaspoonfuls");
        Add(KitchenUnit.Dessertspoon, "dsp dstsp dessertspoon dessertspoons dessertspoonful dessertspoonfuls");
        Add(KitchenUnit.Tablespoon,
            "tb tbs tbsp tbsps tblsp tblsps tbl tbls tbspn tbspns tblspn tblspns tablespoon tablespoons tablespoonful tablespoonfuls");
        Add(KitchenUnit.FluidOunce, "floz");
        Add(KitchenUnit.Cup, "c cup cups cupful cupfuls");
        Add(KitchenUnit.Pint, "pt pts pint pints");
        Add(KitchenUnit.Quart, "qt qts quart quarts");
        Add(KitchenUnit.Gallon, "gal gallon gallons");
        AddMultiple(KitchenUnit.Millilitre, 10, "cl centilitre centilitres centiliter centiliters");
        AddMultiple(KitchenUnit.Millilitre, 100, "dl decilitre decilitres deciliter deciliters");
        // A quarter of a pint, imperial and US alike.
        AddMultiple(KitchenUnit.Pint, new Fraction(1, 4), "gill gills");
        AddMultiple(KitchenUnit.Gram, new Fraction(1, 1000), "mg");
        return entries;

        void Add(KitchenUnit unit, string words) => AddMultiple(unit, 1, words);

        void AddMultiple(KitchenUnit unit, Fraction multiple, string words)
        {
            foreach (string word in words.Split(' '))
                entries[SlotOf(word)] = new Entry(word, unit, multiple, entries[SlotOf(word)]);
        }
    }

    private sealed class Entry(string word, KitchenUnit unit, Fraction multiple, Entry? next)
    {
        public string Word => word;

        public KitchenUnit Unit => unit;

        public Fraction Multiple => multiple;

        public Entry? Next => next;
    }
}
