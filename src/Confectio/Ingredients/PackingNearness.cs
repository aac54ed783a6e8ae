namespace Confectio.Ingredients;

/// <summary>
/// How near two packings of one class of food are, in steps; the rule by which a packing that nobody weighed is taken from one
/// that somebody did. All steps and widths are judgements of this library; where foods were weighed both ways, their ratio is taken
/// instead (<see cref="PackingRatios"/>).
/// </summary>
/// <remarks>
/// Powders and crystals stand on a ladder by how much is pressed in: sifted, then loose and spooned, levelled, scooped, packed.
/// Pieces stand on a ladder by their size: whole, halved, then chopped, sliced, slivered and miniature, then flaked and grated, then
/// ground; how such a measure is filled (levelled, loose, spooned, scooped, packed) is one step from any of them. Fats and pastes
/// hold few gaps, so softened is packed, the other fillings are one step off, and melted (for a paste, puréed too) is two.
/// A step widens by a standard uncertainty of the logarithm of 0.10 for powders, crystals and pieces and 0.03 for fats and pastes:
/// u² = u(known)² + (steps × width)². A fallback is at least half a step, for nobody weighed it.
/// What has air beaten in, what was melted from pieces and what only pours is near to nothing.
/// </remarks>
internal static class PackingNearness
{
    /// <summary>What a step adds to the standard uncertainty of the logarithm.</summary>
    public static double WidthOf(IngredientClass @class) => @class is IngredientClass.Fat or IngredientClass.Paste ? 0.03 : 0.10;

    /// <summary>A density taken for a packing that nobody weighed, widened; null where the one says nothing of the other.</summary>
    public static BulkDensity? Take(IngredientClass @class, BulkDensity known, Packing packing)
    {
        if (Steps(@class, known.Packing, packing) is not double steps)
            return null;
        double width = steps * WidthOf(@class);
        return PackingRatios.TryGet(@class, known.Packing, packing, width, out double ratio, out double measured, out int foods)
            ? known.TakenFor(packing, measured, ratio, foods) : known.TakenFor(packing, width, 0, 0);
    }

    /// <summary>How many steps lie between two packings; <see langword="null"/> where the one says nothing of the other.</summary>
    public static double? Steps(IngredientClass @class, Packing from, Packing to)
    {
        if (WhySenseless(@class, to) is not null || WhySenseless(@class, from) is not null)
            return null;
        double? steps = @class switch
        {
            IngredientClass.Powder or IngredientClass.Crystal => Apart(Pressed(from), Pressed(to)),
            IngredientClass.Pieces => IsFilling(from) || IsFilling(to) ? 1 : Apart(Smallness(from), Smallness(to)),
            IngredientClass.Fat or IngredientClass.Paste => Apart(Softness(from), Softness(to)),
            _ => null,
        };
        return steps is double known ? Math.Max(0.5, known) : null;
    }

    /// <summary>
    /// Why a food of this class is not measured so, or cannot be told from another packing; <see langword="null"/> where it can.
    /// </summary>
    public static string? WhySenseless(IngredientClass @class, Packing packing)
    {
        if (packing == Packing.Whipped)
            return "how much air is beaten in is not known";
        bool sized = packing is Packing.Whole or Packing.Halved or Packing.Chopped or Packing.Sliced or Packing.Slivered or Packing.Ground
            or Packing.Grated or Packing.Flaked or Packing.Miniature;
        return @class switch
        {
            IngredientClass.Liquid or IngredientClass.Syrup => packing == Packing.Levelled ? null
                : "what pours finds its own level, and is measured levelled",
            IngredientClass.Foam => "a foam holds its air only as it was weighed",
            IngredientClass.Powder or IngredientClass.Crystal when packing is Packing.Melted or Packing.Softened or Packing.Pureed =>
                "a powder or crystals are measured dry",
            IngredientClass.Powder or IngredientClass.Crystal when sized => "a powder or crystals are not cut into pieces",
            IngredientClass.Pieces when packing is Packing.Melted or Packing.Softened or Packing.Pureed =>
                "what is melted, softened or pur\u00E9ed closes the gaps between its pieces",
            IngredientClass.Pieces when packing == Packing.Sifted => "pieces do not go through a sieve",
            IngredientClass.Fat or IngredientClass.Paste when packing == Packing.Sifted => "a fat or a paste does not go through a sieve",
            IngredientClass.Fat or IngredientClass.Paste when sized => "pieces of a fat or a paste leave gaps that are not known",
            IngredientClass.Fat when packing == Packing.Pureed => "a fat is not pur\u00E9ed",
            _ => null,
        };
    }

    private static double? Apart(double? from, double? to) => from is double a && to is double b ? Math.Abs(a - b) : null;

    private static bool IsFilling(Packing packing) =>
        packing is Packing.Levelled or Packing.Loose or Packing.Spooned or Packing.Scooped or Packing.Packed;

    private static double? Pressed(Packing packing) => packing switch
    {
        Packing.Sifted => 0,
        Packing.Loose or Packing.Spooned => 1,
        Packing.Levelled => 2,
        Packing.Scooped => 3,
        Packing.Packed => 4,
        _ => null,
    };

    private static double? Smallness(Packing packing) => packing switch
    {
        Packing.Whole => 0,
        Packing.Halved => 1,
        Packing.Chopped or Packing.Sliced or Packing.Slivered or Packing.Miniature => 2,
        Packing.Flaked or Packing.Grated => 3,
        Packing.Ground => 4,
        _ => null,
    };

    private static double? Softness(Packing packing) => packing switch
    {
        Packing.Packed or Packing.Softened => 0,
        Packing.Levelled or Packing.Loose or Packing.Spooned or Packing.Scooped => 1,
        Packing.Melted or Packing.Pureed => -2,
        _ => null,
    };
}
