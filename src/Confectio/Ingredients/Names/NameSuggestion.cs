namespace Confectio.Ingredients.Names;

/// <summary>A food that a name may have meant, were some of its letters slips of the finger.</summary>
public sealed class NameSuggestion
{
    internal NameSuggestion(Ingredient ingredient, string name, int distance)
    {
        Ingredient = ingredient;
        Name = name;
        Distance = distance;
    }

    /// <summary>The food.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>The name with the slips mended, such as <c>cream of tartar</c> for "cream of tarter".</summary>
    public string Name { get; }

    /// <summary>How many slips lie between: letters added, left out, changed, or swapped with their neighbour.</summary>
    public int Distance { get; }

    /// <summary>The mended name and how far it is, such as <c>cream of tartar (1)</c>.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Name} ({Distance})");
}
