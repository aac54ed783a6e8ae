using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Heat;

/// <summary>The fat of a formula that follows one melting curve.</summary>
public sealed class FatOfFormula
{
    internal FatOfFormula(SolidFatCurve curve, double grams, IReadOnlyList<Ingredient> ingredients, double celsius)
    {
        Curve = curve;
        Grams = grams;
        Ingredients = ingredients;
        Percent = curve.PercentAt(celsius);
        (Provenance, Method) = curve.KnownAt(celsius);
        IsBeyond = curve.IsBeyond(celsius);
    }

    /// <summary>The curve.</summary>
    public SolidFatCurve Curve { get; }

    /// <summary>How much of the fat of the formula follows it, g.</summary>
    public double Grams { get; }

    /// <summary>The ingredients whose fat it is.</summary>
    public IReadOnlyList<Ingredient> Ingredients { get; }

    /// <summary>Grams of solid in 100 g of this fat.</summary>
    public Spread Percent { get; }

    /// <summary>The least sure of what the figure stands on.</summary>
    public Provenance Provenance { get; }

    /// <summary>
    /// How it was measured: by NMR, tempered or not; by dilatometry, whose index is another scale; or <c>own</c>. Methods differ.
    /// </summary>
    public string Method { get; }

    /// <summary>Whether the temperature is beyond the points of the curve, where it goes on flat.</summary>
    internal bool IsBeyond { get; }

    /// <summary>One line, such as <c>81.1 g of milk-fat: 11.5 % solid (8.5 to 14.5)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Grams:0.#} g of {Curve.Key}: {Percent.Likely:0.#} % solid ({Percent.Low:0.#} to {Percent.High:0.#}), {Provenance}");
}
