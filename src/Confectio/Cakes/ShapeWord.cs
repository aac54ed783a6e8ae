using Confectio.Cakes.Bodies;
using Confectio.Cakes.Plans;

namespace Confectio.Cakes;

/// <summary>
/// A shape by the word that orders have for it, with the names of the sizes that it has. A new shape comes into the table here.
/// </summary>
internal sealed class ShapeWord
{
    private readonly Func<IShapeSizes, CakeBody> _make;

    private ShapeWord(string word, string[] sizes, Func<IShapeSizes, CakeBody> make) => (Word, Sizes, _make) = (word, sizes, make);

    /// <summary>All shapes.</summary>
    public static IReadOnlyList<ShapeWord> All { get; } =
    [
        RoundPlan.Word, SquarePlan.Word, RectanglePlan.Word, OvalPlan.Word, RegularPlan.Word, HeartPlan.Word, PetalPlan.Word,
            PolygonPlan.Word,
        TaperedRoundBody.Word, TaperedSquareBody.Word, BallBody.HalfWord, BallBody.Word, BallBody.CapWord, RingBody.Word,
    ];

    public string Word { get; }

    /// <summary>The names of the sizes, in the order in which they are told.</summary>
    public IReadOnlyList<string> Sizes { get; }

    /// <summary>A shape with a form of its own.</summary>
    public static ShapeWord OfBody(string word, string[] sizes, Func<IShapeSizes, CakeBody> make) => new(word, sizes, make);

    /// <summary>Straight walls of a height on a plan.</summary>
    public static ShapeWord OfPlan(string word, string[] sizes, Func<IShapeSizes, PlanShape> make) =>
        new(word, [.. sizes, "height"], stated =>
    {
        CakeLength height = stated.Length("height");
        return CakeBody.Prism(make(stated), height);
    });

    /// <summary>The shape of a word; <see langword="null"/> where it is none.</summary>
    public static ShapeWord? Find(string? word) => All.FirstOrDefault(known => known.Word == word);

    /// <summary>The body of the sizes that are stated.</summary>
    /// <exception cref="ArgumentException">No such body can be.</exception>
    public CakeBody Make(IShapeSizes sizes) => _make(sizes);
}
