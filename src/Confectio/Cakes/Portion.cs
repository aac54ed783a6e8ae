using System.Globalization;

namespace Confectio.Cakes;

/// <summary>A portion as the trade cuts it: so much of the plan of a tier, whatever its shape, through its whole height.</summary>
/// <remarks>The rule is common practice and meant for tiers of about 4 in (10 cm). A round cannot be cut into such pieces without rests, and counts as if it could.</remarks>
public sealed class Portion
{
    private Portion(string name, double widthCentimetres, double lengthCentimetres)
    {
        Name = name;
        WidthCentimetres = widthCentimetres;
        LengthCentimetres = lengthCentimetres;
    }

    /// <summary>1 by 2 in of a tier 4 in high; common practice.</summary>
    public static Portion Wedding { get; } = new("wedding", CakeLength.CentimetresPerInch, 2 * CakeLength.CentimetresPerInch);

    /// <summary>1½ by 2 in of a tier 4 in high; common practice.</summary>
    public static Portion Party { get; } = new("party", 1.5 * CakeLength.CentimetresPerInch, 2 * CakeLength.CentimetresPerInch);

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>The width, cm.</summary>
    public double WidthCentimetres { get; }

    /// <summary>The length, cm.</summary>
    public double LengthCentimetres { get; }

    /// <summary>The area of the plan that it takes, cm². Worked number: the wedding portion has 12.9032.</summary>
    public double AreaSquareCentimetres => WidthCentimetres * LengthCentimetres;

    /// <summary>A portion of your own.</summary>
    /// <param name="name">What to call it.</param>
    /// <param name="widthCentimetres">The width, cm, from 0.1 to 100.</param>
    /// <param name="lengthCentimetres">The length, cm, from 0.1 to 100.</param>
    /// <returns>The portion.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Portion Of(string name, double widthCentimetres, double lengthCentimetres) =>
        new(Guard.NotNull(name), Guard.InRange(widthCentimetres, 0.1, 100), Guard.InRange(lengthCentimetres, 0.1, 100));

    /// <summary>How many go on the widest cut through a body: its area over that of the portion.</summary>
    /// <param name="body">The body, without its coats, as tins are named.</param>
    /// <returns>The number, not rounded. Worked number: wedding portions of a 10 in round: 39.27; of an 8 in square: 32.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    public double CountOn(CakeBody body) => Guard.NotNull(body).WidestCutSquareCentimetres / AreaSquareCentimetres;

    /// <summary>How many whole ones go on the widest cut through a body.</summary>
    /// <param name="body">The body.</param>
    /// <returns>The number; a hair short of a whole one is forgiven. Worked number: wedding portions of a 10 in round: 39, where trade charts say 38 to 42.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    public long WholeCountOn(CakeBody body) => (long)Math.Floor(CountOn(body) * (1 + 1e-12));

    /// <summary>The name and the size, such as <c>wedding, 2.54 × 5.08 cm</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}, {WidthCentimetres:0.##} × {LengthCentimetres:0.##} cm");
}
