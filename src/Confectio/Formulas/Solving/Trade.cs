using System.Globalization;
using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>
/// Masses of an answer that can be moved together while every target gets what it got and everything that must be kept is kept: so much more
/// of some, so much less of others.
/// </summary>
/// <remarks>
/// The size is made for a scale: of the ingredient that moves least, but for those that move by less than a twentieth of the one that moves
/// most, a round figure (1, 2 or 5, times ten or a tenth), so that none moves by more than a tenth of the whole where that can be. Everything between <see cref="TimesBack"/> trades the other
/// way and <see cref="TimesOn"/> trades is allowed, parts of one too. Worked example: between granulated and icing sugar of the same
/// composition, 100 g for 100 g.
/// </remarks>
public sealed class Trade
{
    // The finest that a kitchen's scale shows, g.
    private const double Weighed = 0.1;

    private readonly double[] _grams;
    private readonly string _untilOn, _untilBack;

    internal Trade(IReadOnlyList<Ingredient> ingredients, double[] grams, double boiledOffGrams, (double Times, string Until) on,
        (double Times, string Until) back)
    {
        Ingredients = ingredients;
        _grams = grams;
        BoiledOffGrams = boiledOffGrams;
        (TimesOn, _untilOn) = on;
        (TimesBack, _untilBack) = back;
    }

    /// <summary>The ingredients that move, in the order of the problem.</summary>
    public IReadOnlyList<Ingredient> Ingredients { get; }

    /// <summary>By how much each of them moves, g: above 0 what is put in, below 0 what is taken out.</summary>
    public IReadOnlyList<double> Grams => _grams;

    /// <summary>How much more water boils off with it, g; below 0 less, 0 where none does.</summary>
    public double BoiledOffGrams { get; }

    /// <summary>How many times the trade can be made before a limit stops it.</summary>
    public double TimesOn { get; }

    /// <summary>How many times it can be made the other way round.</summary>
    public double TimesBack { get; }

    /// <summary>
    /// The trade in a sentence, such as <c>10 g of skimmed milk powder for 85 g of heavy cream: up to 297.5 g of heavy cream out, where
    /// none is left; not the other way: no skimmed milk powder is left</c>.
    /// </summary>
    public string Sentence
    {
        get
        {
            int lead = Enumerable.Range(0, _grams.Length).MaxBy(k => Math.Abs(_grams[k]));
            string into = Side(1), outOf = Side(-1);
            string boil = BoiledOffGrams == 0 ? ""
                : $", with {Figure(Math.Abs(BoiledOffGrams))} g {(BoiledOffGrams > 0 ? "more" : "less")} of water boiled off";
            string[] traces = [.. Ingredients.Where((_, k) => Math.Abs(_grams[k]) < Weighed).Select(food => food.Name)];
            string trace = traces.Length > 0 ? $" (and less than {Weighed.ToString(CultureInfo.InvariantCulture)} g of {Listed(traces)})" : "";
            string what = outOf.Length > 0 ? $"{into} for {outOf}{trace}{boil}" : $"{into} more{trace}{boil}";
            string name = Ingredients[lead].Name, way = _grams[lead] > 0 ? "in" : "out", other = _grams[lead] > 0 ? "out" : "in";
            double size = Math.Abs(_grams[lead]);
            string on = $"up to {Figure(size * TimesOn)} g of {name} {way}, where {_untilOn}";
            string back = TimesBack > 0 ? $"or up to {Figure(size * TimesBack)} g of {name} {other}, where {_untilBack}"
                : $"not the other way: {_untilBack}";
            return $"{what}: {on}; {back}";
        }
    }

    /// <summary>The same as <see cref="Sentence"/>.</summary>
    public override string ToString() => Sentence;

    private string Side(int sign) => Listed([.. Ingredients.Zip(_grams, (ingredient, grams) => (ingredient, grams))
        .Where(one => Math.Sign(one.grams) == sign && Math.Abs(one.grams) >= Weighed)
        .Select(one => $"{Figure(Math.Abs(one.grams))} g of {one.ingredient.Name}")]);

    private static string Listed(string[] all) => all.Length <= 1 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} and {all[^1]}";

    // To a tenth of a gram, as a kitchen's scale shows it; of less than a gram to two digits.
    private static string Figure(double grams) =>
        Math.Round(grams, grams >= 1 || grams <= 0 ? 1 : Math.Min(6, 1 - (int)Math.Floor(Math.Log10(grams))))
            .ToString("0.######", CultureInfo.InvariantCulture);
}
