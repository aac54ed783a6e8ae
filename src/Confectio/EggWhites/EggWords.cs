using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.EggWhites;

/// <summary>The words of the tables of eggs.</summary>
internal static class EggWords
{
    /// <summary>The word of a part, as the tables have it.</summary>
    public static string Word(this EggPart part) => part switch
    {
        EggPart.Whole => "whole egg",
        EggPart.White => "white",
        EggPart.Yolk => "yolk",
        _ => "shell",
    };

    public static EggPart ReadPart(RowFields fields, string column)
    {
        string word = fields.Required(column);
        foreach (EggPart part in Enum.GetValues<EggPart>())
        {
            if (part.ToString().Equals(word, StringComparison.OrdinalIgnoreCase))
                return part;
        }
        fields.Problem(column, $"{Excerpt.Of(word)} is not a part of an egg; expected one of: whole, white, yolk, shell");
        return default;
    }

    /// <summary>Whether a name asks for a key: the case does not matter, nor whether words are parted by hyphens or spaces.</summary>
    public static bool Asks(string name, string key) => name.Trim().Replace(' ', '-').Equals(key.Replace(' ', '-'), StringComparison.OrdinalIgnoreCase);
}
