using System.Globalization;

namespace Confectio.Cakes;

/// <summary>A coat of a tier: which icing, how thick, where, and how it goes round the edges. A crumb coat is simply the first.</summary>
public sealed class CakeCoat
{
    internal const double MaximumCentimetres = 100;

    private CakeCoat(string icing, double thickness, CoatEdge edge, CoatPlace place, string name)
    {
        Icing = icing;
        ThicknessCentimetres = thickness;
        Edge = edge;
        Place = place;
        Name = name;
    }

    /// <summary>The name of the icing.</summary>
    public string Icing { get; }

    /// <summary>The thickness, cm.</summary>
    public double ThicknessCentimetres { get; }

    /// <summary>How it goes round the edges. A coat of the top or the side alone is always flush, that is sharp.</summary>
    public CoatEdge Edge { get; }

    /// <summary>Where it goes.</summary>
    public CoatPlace Place { get; }

    /// <summary>What it is called in answers, such as <c>crumb coat</c>.</summary>
    public string Name { get; }

    /// <summary>A coat.</summary>
    /// <param name="icing">The name of the icing, from 1 to 100 characters.</param>
    /// <param name="thickness">
    /// The thickness, cm, from 0 to 100. Two institutional recipes come to 3 to 4 mm (docs/tables/cakes.md); rolled fondant is usually
    /// 3 mm, a generous buttercream 6 mm (both from memory).
    /// </param>
    /// <param name="edge">How it goes round the edges: rounded like rolled fondant or a glaze, or sharp as with a scraper.</param>
    /// <param name="place">Where it goes.</param>
    /// <param name="name">What to call it; <c>coat</c> where it is missing.</param>
    /// <returns>The coat.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="icing"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="icing"/> is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeCoat Of(
        string icing, CakeLength thickness, CoatEdge edge = CoatEdge.Rounded, CoatPlace place = CoatPlace.TopAndSide, string? name = null)
    {
        IcingName.Check(icing);
        double centimetres = thickness.Within(0, MaximumCentimetres);
        Guard.Defined(edge);
        return new CakeCoat(icing, centimetres, Guard.Defined(place) == CoatPlace.TopAndSide ? edge : CoatEdge.Sharp, place,
            name ?? "coat");
    }

    /// <summary>The same coat in another thickness.</summary>
    /// <param name="thickness">The thickness, cm, from 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="thickness"/> is outside its range.</exception>
    public CakeCoat WithThickness(CakeLength thickness) => new(Icing, thickness.Within(0, MaximumCentimetres), Edge, Place, Name);

    /// <summary>The same coat so many times as thick, which is within the range of a thickness.</summary>
    internal CakeCoat Times(double factor) => new(Icing, factor * ThicknessCentimetres, Edge, Place, Name);

    /// <summary>One line, such as <c>crumb coat of buttercream, 2 mm</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Name} of {Icing}, {10 * ThicknessCentimetres:0.##} mm");
}
