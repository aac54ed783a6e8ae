using System.Globalization;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Publishing;

/// <summary>What a card shows: whose measures, whose names, and what the caller adds to the formula.</summary>
public sealed class CardOptions
{
    /// <summary>The most steps, and the most temperatures.</summary>
    public const int MaximumItems = 200;

    /// <summary>The longest title, and the longest step, in characters.</summary>
    public const int LongestText = 2000;

    /// <summary>Weights only: nobody's cups, the formula's own names, invariant numbers.</summary>
    public static CardOptions Default { get; } = new();

    /// <summary>Whose cups and spoons, a column each; with none, the card has weights alone.</summary>
    /// <exception cref="ArgumentNullException">The list or a system is null.</exception>
    /// <exception cref="ArgumentException">A system stands twice.</exception>
    public IReadOnlyList<MeasuringSystem> MeasuringSystems
    {
        get;
        init
        {
            MeasuringSystem[] all = [.. Guard.NotNull(value, nameof(MeasuringSystems)).Take(MaximumItems).Select(system => Guard.NotNull(system, nameof(MeasuringSystems)))];
            field = all.Distinct().Count() == all.Length ? all
                : throw new ArgumentException($"{nameof(MeasuringSystems)} has {all.GroupBy(system => system).First(group => group.Count() > 1).Key.Key} twice.", nameof(MeasuringSystems));
        }
    } = [];

    /// <summary>The drawers of these systems; of a system without one, the usual cups and spoons (<see cref="MeasuringTools.Usual"/>).</summary>
    /// <exception cref="ArgumentNullException">The list or a drawer is null.</exception>
    /// <exception cref="ArgumentException">Two drawers are of one system.</exception>
    public IReadOnlyList<MeasuringTools> Tools
    {
        get;
        init
        {
            MeasuringTools[] all = [.. Guard.NotNull(value, nameof(Tools)).Take(MaximumItems).Select(tools => Guard.NotNull(tools, nameof(Tools)))];
            field = all.Select(tools => tools.MeasuringSystem).Distinct().Count() == all.Length ? all
                : throw new ArgumentException($"{nameof(Tools)} has two drawers of one measuring system.", nameof(Tools));
        }
    } = [];

    /// <summary>
    /// The table whose names are shown, such as <see cref="IngredientTable.WithAmericanNames"/>; <see langword="null"/> for the formula's own.
    /// Figures are always the formula's.
    /// </summary>
    public IngredientTable? Names { get; init; }

    /// <summary>The title; empty for the name of the formula.</summary>
    /// <exception cref="ArgumentNullException">The title is null.</exception>
    /// <exception cref="ArgumentException">It is longer than 2000 characters.</exception>
    public string Title
    {
        get;
        init => field = Short(Guard.NotNull(value, nameof(Title)), nameof(Title));
    } = "";

    /// <summary>How many portions it makes, from 0.01 to 1e6; <see langword="null"/> where nobody says.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside its range.</exception>
    public double? Portions
    {
        get;
        init => field = value is double portions ? Guard.InRange(portions, 0.01, 1e6, nameof(Portions)) : null;
    }

    /// <summary>The mass of a portion, g, from 0.1 to 1e5; <see langword="null"/> where nobody says. Give this or <see cref="Portions"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside its range.</exception>
    public double? PortionGrams
    {
        get;
        init => field = value is double grams ? Guard.InRange(grams, 0.1, 1e5, nameof(PortionGrams)) : null;
    }

    /// <summary>Temperatures of the work, at most 200.</summary>
    /// <exception cref="ArgumentNullException">The list or a temperature is null.</exception>
    /// <exception cref="ArgumentException">There are too many.</exception>
    public IReadOnlyList<CardTemperature> Temperatures
    {
        get;
        init => field = Few(Guard.NotNull(value, nameof(Temperatures)).Select(one => Guard.NotNull(one, nameof(Temperatures))), nameof(Temperatures));
    } = [];

    /// <summary>
    /// The steps of the work, in the caller's words, at most 200 of 2000 characters each. A temperature that a step tells in one scale alone is
    /// told in both beside the others; no word of a step is changed.
    /// </summary>
    /// <exception cref="ArgumentNullException">The list or a step is null.</exception>
    /// <exception cref="ArgumentException">There are too many, or one is too long.</exception>
    public IReadOnlyList<string> Steps
    {
        get;
        init => field = Few(Guard.NotNull(value, nameof(Steps)).Select(step => Short(Guard.NotNull(step, nameof(Steps)), nameof(Steps))), nameof(Steps));
    } = [];

    /// <summary>What counts as 100 in a second column of percentages, such as the flour; <see langword="null"/> for none.</summary>
    public FormulaPart? Basis { get; init; }

    /// <summary>By whose rules the nutrition panel is rounded; <see langword="null"/> for no panel.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rules are no defined value.</exception>
    public LabelRules? Rules
    {
        get;
        init => field = value is LabelRules rules ? Guard.Defined(rules, nameof(Rules)) : null;
    }

    /// <summary>
    /// Whose decimal mark and groups of digits stand in text, Markdown and HTML; <see langword="null"/> for a decimal point and no groups.
    /// Forms for programs are the same in every culture, and the words of the card are English.
    /// </summary>
    public CultureInfo? Culture { get; init; }

    /// <summary>
    /// How far a filling of cups and spoons may be off, as a fraction from 0 to 0.1. Where none comes as near, the card says to weigh.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The fraction is outside its range.</exception>
    public double AllowedError
    {
        get;
        init => field = Guard.InRange(value, 0, 0.1, nameof(AllowedError));
    } = 0.03;

    /// <summary>Whether the card tells how far the printed weights add up to another total than the exact ones.</summary>
    public bool ShowsRounding { get; init; }

    /// <summary>The systems and the title.</summary>
    public override string ToString() => (Title.Length > 0 ? SafeText.Name(Title) + ": " : "") + (MeasuringSystems.Count == 0 ? "weights" : string.Join(", ", MeasuringSystems));

    /// <summary>The drawer of a system.</summary>
    internal MeasuringTools DrawerOf(MeasuringSystem system) => Tools.FirstOrDefault(tools => tools.MeasuringSystem == system) ?? MeasuringTools.Usual(system);

    /// <summary>The name of an ingredient, in the table whose names are shown.</summary>
    internal string NameOf(Ingredient ingredient) =>
        SafeText.Name(Names is not null && Names.TryGet(ingredient.Id, out Ingredient? named) && named == ingredient ? named.Name : ingredient.Name);

    private static T[] Few<T>(IEnumerable<T> items, string name)
    {
        T[] all = [.. items.Take(MaximumItems + 1)];
        return all.Length <= MaximumItems ? all
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name} has more than {MaximumItems} items, the most a card may have."), name);
    }

    private static string Short(string text, string name) => text.Length <= LongestText ? text
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name} has a text of {text.Length} characters; at most {LongestText} are expected."), name);
}
