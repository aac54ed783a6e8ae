using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>The constituents as places of an array: every array by constituent is filled by key, and none relies on their order.</summary>
internal static class Constituents
{
    /// <summary>All of them.</summary>
    public static readonly Constituent[] All = Checked(Enum.GetValues<Constituent>());

    private static readonly string[] s_words = EnumWords.All<Constituent>('-');

    /// <summary>How many there are.</summary>
    public static int Count => All.Length;

    /// <summary>The place of a constituent in an array.</summary>
    public static int PlaceOf(Constituent constituent) => (int)constituent;

    /// <summary>The constituent of a place.</summary>
    public static Constituent At(int place) => (Constituent)place;

    /// <summary>The word of the tables, such as <c>other-sugars</c>.</summary>
    public static string WordOf(Constituent constituent) => s_words[PlaceOf(constituent)];

    /// <summary>The constituent of a word, or <see langword="null"/>.</summary>
    public static Constituent? Find(string word) =>
        Array.FindIndex(All, known => WordOf(known) == word) is >= 0 and int found ? All[found] : null;

    /// <summary>An array with what a function gives for each.</summary>
    public static T[] ByPlace<T>(Func<Constituent, T> value)
    {
        T[] values = new T[All.Length];
        foreach (Constituent constituent in All)
            values[PlaceOf(constituent)] = value(constituent);
        return values;
    }

    // A place is a number from 0 up without gaps; a bit mask of 32 holds them all (FormulaPart).
    private static Constituent[] Checked(Constituent[] all)
    {
        for (int place = 0; place < all.Length; place++)
        {
            if (PlaceOf(all[place]) != place || place >= 32)
                throw new InvalidOperationException("The constituents are not numbered from 0 up without gaps, or there are more than 32.");
        }
        return all;
    }
}
