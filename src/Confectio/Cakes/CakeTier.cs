using System.Globalization;

namespace Confectio.Cakes;

/// <summary>
/// One tier of a cake: its body, how it is cut and filled, its coats from the inside out, its borders, what is piped on it and what runs
/// down it. It never changes; every method makes a new one.
/// </summary>
public sealed class CakeTier
{
    /// <summary>The most of each: fillings, coats, borders and kinds of pieces.</summary>
    public const int MaximumOfEach = 100;

    private CakeTier(CakeBody body) => Body = body;

    private CakeTier(CakeTier other)
    {
        Body = other.Body;
        Fillings = other.Fillings;
        Coats = other.Coats;
        Borders = other.Borders;
        Pieces = other.Pieces;
        Drip = other.Drip;
        RightCentimetres = other.RightCentimetres;
        BackCentimetres = other.BackCentimetres;
        TurnedDegrees = other.TurnedDegrees;
        IsRaised = other.IsRaised;
    }

    /// <summary>The body without its coats: the layers and what is between them.</summary>
    public CakeBody Body { get; }

    /// <summary>The fillings from the bottom up: one fewer than the layers.</summary>
    public IReadOnlyList<CakeFilling> Fillings { get; private init; } = [];

    /// <summary>The coats from the inside out.</summary>
    public IReadOnlyList<CakeCoat> Coats { get; private init; } = [];

    /// <summary>The borders.</summary>
    public IReadOnlyList<CakeBorder> Borders { get; private init; } = [];

    /// <summary>What is piped on it.</summary>
    public IReadOnlyList<PipedPieces> Pieces { get; private init; } = [];

    /// <summary>What is poured over it; <see langword="null"/> where nothing is.</summary>
    public CakeDrip? Drip { get; private init; }

    /// <summary>How far its middle is to the right of that of the tier below, cm.</summary>
    public double RightCentimetres { get; private init; }

    /// <summary>How far its middle is behind that of the tier below, cm.</summary>
    public double BackCentimetres { get; private init; }

    /// <summary>How far it is turned counter-clockwise, degrees.</summary>
    public double TurnedDegrees { get; private init; }

    /// <summary>Whether it stands by itself, on pillars, a stand or beside: it hides nothing of another tier.</summary>
    public bool IsRaised { get; private init; }

    /// <summary>How many layers of cake.</summary>
    public int Layers => Fillings.Count + 1;

    /// <summary>The height of one layer, cm: what the fillings leave of the body, shared equally.</summary>
    public double LayerCentimetres => (Body.HeightCentimetres - Fillings.Sum(filling => filling.ThicknessCentimetres)) / Layers;

    /// <summary>A bare tier of one layer.</summary>
    /// <param name="body">The body, with its full height: layers and fillings together.</param>
    /// <returns>The tier.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    public static CakeTier Of(CakeBody body) => new(Guard.NotNull(body));

    /// <summary>The tier cut into equal layers with the same filling between them. What it was filled with before is replaced.</summary>
    /// <param name="filling">The filling.</param>
    /// <param name="layers">How many layers, from 1 to 101.</param>
    /// <returns>The tier. Worked number: 3 layers in 10 cm with fillings of 0.6 cm are 2.93 cm each.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="filling"/> is null.</exception>
    /// <exception cref="ArgumentException">The fillings leave no height for the layers.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="layers"/> is outside its range.</exception>
    public CakeTier Filled(CakeFilling filling, int layers)
    {
        Guard.NotNull(filling);
        return Filled(Added([], Enumerable.Repeat(filling, Guard.InRange(layers, 1, MaximumOfEach + 1) - 1), nameof(layers)),
            nameof(layers));
    }

    /// <summary>The tier cut into equal layers with these fillings between them. What it was filled with before is replaced.</summary>
    /// <param name="fillings">At most 100 fillings from the bottom up.</param>
    /// <returns>The tier.</returns>
    /// <exception cref="ArgumentNullException">The list or one of it is null.</exception>
    /// <exception cref="ArgumentException">There are too many, or they leave no height for the layers.</exception>
    public CakeTier Filled(params IEnumerable<CakeFilling> fillings) => Filled(Added([], fillings, nameof(fillings)), nameof(fillings));

    /// <summary>The tier with more coats, each over those before.</summary>
    /// <param name="coats">The coats from the inside out; at most 100 in all.</param>
    /// <returns>The tier.</returns>
    /// <exception cref="ArgumentNullException">The list or one of it is null.</exception>
    /// <exception cref="ArgumentException">
    /// There are too many, or a coat of the top or side alone is to go on a ball, which has no top apart from its side.
    /// </exception>
    public CakeTier Coated(params IEnumerable<CakeCoat> coats)
    {
        CakeTier tier = new(this) { Coats = Added(Coats, coats, nameof(coats)) };
        return Body.HasTopApart || tier.Coats.All(coat => coat.Place == CoatPlace.TopAndSide) ? tier
            : throw new ArgumentException(
                $"{nameof(coats)} has one of the top or side alone; a {Body.Name} has no top apart from its side.", nameof(coats));
    }

    /// <summary>The tier with more borders.</summary>
    /// <param name="borders">The borders; at most 100 in all.</param>
    /// <returns>The tier.</returns>
    /// <exception cref="ArgumentNullException">The list or one of it is null.</exception>
    /// <exception cref="ArgumentException">
    /// There are too many, or one has nowhere to run: a ball has no top edge, and on no flat no foot.
    /// </exception>
    public CakeTier Bordered(params IEnumerable<CakeBorder> borders)
    {
        CakeTier tier = new(this) { Borders = Added(Borders, borders, nameof(borders)) };
        foreach (CakeBorder border in tier.Borders)
        {
            if (border.Place == BorderPlace.TopEdge ? Body.TopRim is null : Body.Footprint is null)
                throw new ArgumentException($"{nameof(borders)} has {border}; a {Body.Name} has no such edge.", nameof(borders));
        }
        return tier;
    }

    /// <summary>The tier with more rosettes or swirls.</summary>
    /// <param name="pieces">The pieces; at most 100 kinds in all.</param>
    /// <returns>The tier.</returns>
    /// <exception cref="ArgumentNullException">The list or one of it is null.</exception>
    /// <exception cref="ArgumentException">There are too many kinds.</exception>
    public CakeTier Piped(params IEnumerable<PipedPieces> pieces) => new(this) { Pieces = Added(Pieces, pieces, nameof(pieces)) };

    /// <summary>The tier with a glaze poured over it, or none.</summary>
    /// <param name="drip">The glaze.</param>
    /// <returns>The tier.</returns>
    /// <exception cref="ArgumentException">The tier has no flat top for a pool.</exception>
    public CakeTier Dripped(CakeDrip? drip) => drip is null || Body.TopRim is not null ? new(this) { Drip = drip }
        : throw new ArgumentException($"{nameof(drip)} was {drip}; a {Body.Name} has no flat top for its pool.", nameof(drip));

    /// <summary>The tier at another place on the tier below.</summary>
    /// <param name="at">
    /// Where its middle is, seen from that of the tier below: to the right and to the back, each from −10 000 to 10 000 cm.
    /// </param>
    /// <param name="turnedDegrees">How far it is turned counter-clockwise, degrees, from −360 to 360.</param>
    /// <returns>The tier.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public CakeTier Placed(PlanPoint at, double turnedDegrees = 0)
    {
        Guard.InRange(at.XCentimetres, -PlanShape.MaximumCentimetres, PlanShape.MaximumCentimetres, nameof(at));
        Guard.InRange(at.YCentimetres, -PlanShape.MaximumCentimetres, PlanShape.MaximumCentimetres, nameof(at));
        Guard.InRange(turnedDegrees, -360, 360);
        return new(this) { RightCentimetres = at.XCentimetres, BackCentimetres = at.YCentimetres, TurnedDegrees = turnedDegrees };
    }

    /// <summary>The tier standing by itself, on pillars, a stand or beside the others.</summary>
    /// <returns>The tier.</returns>
    public CakeTier Raised() => new(this) { IsRaised = true };

    /// <summary>The tier with a larger or smaller body; its fillings, coats and borders keep their thickness.</summary>
    /// <param name="factor">What every length of the body and its place is multiplied by, from 0.001 to 1000.</param>
    /// <returns>The tier.</returns>
    /// <exception cref="ArgumentException">The fillings leave no height for the layers.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="factor"/> is outside its range, or a length of what comes out is.
    /// </exception>
    public CakeTier Scaled(double factor) => new CakeTier(this, Body.Scaled(factor))
    {
        RightCentimetres = factor * RightCentimetres,
        BackCentimetres = factor * BackCentimetres,
    }.Filled([.. Fillings], nameof(factor));

    /// <summary>The tier with the coats of one icing in another thickness.</summary>
    /// <param name="icing">The name of the icing.</param>
    /// <param name="factor">What their thickness is multiplied by, from 0 to 1000.</param>
    /// <returns>The tier.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="icing"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="factor"/> is outside its range, or a thickness that comes out is.
    /// </exception>
    public CakeTier WithCoats(string icing, double factor)
    {
        Guard.NotNull(icing);
        Guard.InRange(factor, 0, 1000);
        if (Coats.FirstOrDefault(coat => coat.Icing == icing
            && factor * coat.ThicknessCentimetres > CakeCoat.MaximumCentimetres) is CakeCoat thick)
            throw new ArgumentOutOfRangeException(nameof(factor), factor, string.Create(CultureInfo.InvariantCulture,
                $"{nameof(factor)} was {factor:R}; it must be from 0 "
                + $"to {CakeCoat.MaximumCentimetres / thick.ThicknessCentimetres:R}, or {thick} "
                + $"becomes thicker than {CakeCoat.MaximumCentimetres} cm."));
        return new(this) { Coats = [.. Coats.Select(coat => coat.Icing == icing ? coat.Times(factor) : coat)] };
    }

    /// <summary>One line, such as <c>round, 20 × 20 cm, 10 cm high, in 3 layers</c>.</summary>
    public override string ToString() => Layers == 1 ? Body.ToString()
        : string.Create(CultureInfo.InvariantCulture, $"{Body}, in {Layers} layers");

    /// <summary>Where the fillings lie: the height of the lower face of each over the foot of the body.</summary>
    internal double FillingFrom(int index) => (index + 1) * LayerCentimetres + Fillings.Take(index)
        .Sum(filling => filling.ThicknessCentimetres);

    private CakeTier Filled(CakeFilling[] fillings, string name)
    {
        CakeTier tier = new(this) { Fillings = fillings };
        return tier.LayerCentimetres > 0 ? tier : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
            $"{name}: the fillings are {fillings.Sum(filling => filling.ThicknessCentimetres):0.###} cm together, "
            + $"and the tier is {Body.HeightCentimetres:0.###} cm high; "
            + $"they must leave a height for the layers."), name);
    }

    private CakeTier(CakeTier other, CakeBody body)
        : this(other) => Body = body;

    private static T[] Added<T>(IReadOnlyList<T> before, IEnumerable<T> more, string name) where T : class
    {
        T[] all = [.. before, .. Guard.NotNull(more, name).Take(MaximumOfEach + 1).Select(one => Guard.NotNull(one, name))];
        return all.Length <= MaximumOfEach ? all
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name}: a tier has at most {MaximumOfEach}."),
                name);
    }
}
