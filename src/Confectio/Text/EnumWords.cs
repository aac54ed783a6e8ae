namespace Confectio.Text;

/// <summary>The words in the name of an enum's value.</summary>
internal static class EnumWords
{
    /// <summary>The words in lower case, such as <c>specific-heat</c> for <c>SpecificHeat</c> with a hyphen between.</summary>
    public static string Of<T>(T value, char between) where T : struct, Enum =>
        string.Concat(value.ToString().Select((c, i) => char.IsUpper(c) ? (i > 0 ? between.ToString() : "") + char.ToLowerInvariant(c) : c.ToString()));
}
