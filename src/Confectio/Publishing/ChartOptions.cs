using System.Globalization;
using Confectio.Ingredients;

namespace Confectio.Publishing;

/// <summary>How a chart is rounded, and whose names it shows.</summary>
public sealed class ChartOptions
{
    /// <summary>To the gram, the foods' own names, invariant numbers.</summary>
    public static ChartOptions Default { get; } = new();

    /// <summary>To what weights are rounded.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rounding is no defined value.</exception>
    public ChartRounding Rounding
    {
        get;
        init => field = Guard.Defined(value, nameof(Rounding));
    }

    /// <summary>The table whose names are shown; <see langword="null"/> for the foods' own. Figures are always the foods'.</summary>
    public IngredientTable? Names { get; init; }

    /// <summary>The title; empty for one that says whose measures they are.</summary>
    /// <exception cref="ArgumentNullException">The title is null.</exception>
    /// <exception cref="ArgumentException">It is longer than 2000 characters.</exception>
    public string Title
    {
        get;
        init => field = Guard.NotNull(value, nameof(Title)).Length <= CardOptions.LongestText ? value
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(Title)} has {value.Length} characters; at most {CardOptions.LongestText} are expected."), nameof(Title));
    } = "";

    /// <summary>Whose decimal mark stands in text, Markdown and HTML; <see langword="null"/> for a point. CSV is the same in every culture.</summary>
    public CultureInfo? Culture { get; init; }

    /// <summary>The rounding and the title.</summary>
    public override string ToString() => (Title.Length > 0 ? SafeText.Name(Title) + ": " : "") + Text.EnumWords.Of(Rounding, ' ');
}
