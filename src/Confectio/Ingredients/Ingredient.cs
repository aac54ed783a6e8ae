using System.Diagnostics.CodeAnalysis;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>An ingredient of the trade: its names, what it is made of, and what it weighs in a measure.</summary>
/// <remarks>
/// An ingredient is its <see cref="Id"/>: two are equal where their ids are, whatever table or layer each comes from, so that a formula
/// finds its butter by anybody's butter. What equal ingredients are made of may differ; within a formula it may not
/// (<c>Formula.Of</c>), and the formula's own figures count.
/// </remarks>
public sealed class Ingredient : IEquatable<Ingredient>
{
    private readonly Func<IngredientRecord>? _readRecord;
    private readonly Func<IReadOnlyList<WeightFact>>? _readWeights;
    private IngredientRecord? _record;
    private IReadOnlyList<WeightFact>? _weights;
    private BulkDensity[]? _densities;
    private PieceWeight[]? _pieces;
    private BulkDensity?[]? _nearest;

    internal Ingredient(IngredientNames names, IngredientRecord record, IReadOnlyList<WeightFact> weights)
    {
        Names = names;
        _record = record;
        _weights = weights;
    }

    /// <summary>
    /// An ingredient that is read when it is first asked what it is made of or what it weighs. Two threads may both read; the first to have
    /// done so is heard, so that everybody has the same objects.
    /// </summary>
    internal Ingredient(IngredientNames names, Func<IngredientRecord> record, Func<IReadOnlyList<WeightFact>> weights)
    {
        Names = names;
        _readRecord = record;
        _readWeights = weights;
    }

    internal IngredientNames Names { get; }

    internal IngredientRecord Record => _record ?? First(ref _record, _readRecord!());

    /// <summary>The key, such as <c>sugar-icing</c>.</summary>
    public string Id => Names.Id;

    /// <summary>The name we use, such as <c>icing sugar</c>.</summary>
    public string Name => Names.Name;

    /// <summary>Other names, with where they are used.</summary>
    public IReadOnlyList<IngredientName> Aliases => Names.Aliases;

    /// <summary>How it behaves in a measure.</summary>
    internal IngredientClass Class => Names.Class;

    /// <summary>The packing that is assumed where nobody states one; a conversion that assumes it says so.</summary>
    public Packing DefaultPacking => Record.DefaultPacking;

    /// <summary>The food number in the USDA Standard Reference; <see langword="null"/> where it has none.</summary>
    public string? StandardReferenceNumber => Record.StandardReferenceNumber;

    /// <summary>What it is made of.</summary>
    public Composition Composition => Record.Composition;

    /// <summary>
    /// The dextrose equivalent (DE) of a glucose syrup or a maltodextrin: its reducing sugars counted as dextrose, in per cent of the
    /// dry solids, above 0 and at most 100. <see langword="null"/> where it is not known, and for what is neither.
    /// </summary>
    /// <remarks>
    /// By definition the number-average molar mass of the dry solids is 18016/DE g/mol, where every molecule has one reducing end:
    /// 100 is dextrose, 180.16 g/mol. Worked number: 42 DE is 18016/42 = 429 g/mol.
    /// It is no better known than the composition and its sugars: where <see cref="CompositionProvenance"/> or
    /// <see cref="SugarsProvenance"/> is recalled or estimated, so is this.
    /// </remarks>
    public double? DextroseEquivalent => Record.DextroseEquivalent;

    /// <summary>Where the composition comes from.</summary>
    public Provenance CompositionProvenance => Record.CompositionProvenance;

    /// <summary>Where the split of the sugars into species comes from, which food tables seldom give.</summary>
    public Provenance SugarsProvenance => Record.SugarsProvenance;

    /// <summary>
    /// How well the figure of one constituent is known: a sugar as the split of the sugars, what was guessed within a published row as
    /// that guess, and everything else as the composition.
    /// </summary>
    /// <param name="constituent">The constituent.</param>
    /// <returns>The kind of evidence. Worked example: the starch of cocoa is estimated, though its water and fat are compiled.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="constituent"/> is not a defined value.</exception>
    public Evidence EvidenceOf(Constituent constituent)
    {
        Guard.Defined(constituent);
        return Record.Guessed is Evidence?[] guesses && guesses[Constituents.PlaceOf(constituent)] is Evidence guessed ? guessed
            : constituent is Constituent.Sucrose or Constituent.Glucose or Constituent.Fructose or Constituent.Lactose
                or Constituent.Maltose or Constituent.OtherSugars ? SugarsProvenance.Evidence
            : CompositionProvenance.Evidence;
    }

    /// <summary>
    /// Constituents of which the source says nothing, as a label says nothing of water: their figure in <see cref="Composition"/> stands in
    /// for what is not known, and <see cref="CompositionSpread.Of"/> says within which limits. Empty of the foods of the table.
    /// </summary>
    public IReadOnlyList<Constituent> NotStated => Record.NotStated;

    /// <summary>
    /// Allergens to declare: what the food has by its nature, or as its source made it. A caution, not a clearance: read the label.
    /// </summary>
    public IReadOnlyList<Allergen> Allergens => Record.Allergens;

    /// <summary>
    /// Allergens that many makes have and others have not, such as the soy of the lecithin in chocolate; none of them is in
    /// <see cref="Allergens"/>. Only the label of the pack says. An allergen in neither list is not said to be absent.
    /// </summary>
    public IReadOnlyList<Allergen> OftenContains => Record.OftenContains;

    /// <summary>
    /// Whether anybody has said which allergens it has, so that none in the lists is an answer. False of a food of one's own without a word
    /// about them, and of a label without a list of ingredients that is wholly understood: who asks for food without an allergen does not get it.
    /// </summary>
    public bool AllergensAreStated => Record.AllergensAreStated;

    /// <summary>Anything odd about the figures; may be empty.</summary>
    public string Note => Record.Note;

    /// <summary>Every figure known for its weight in a measure.</summary>
    public IReadOnlyList<WeightFact> Weights => _weights ?? First(ref _weights, _readWeights!());

    /// <summary>Its bulk densities, one a packing.</summary>
    public IReadOnlyList<BulkDensity> Densities => Known;

    /// <summary>What its pieces weigh.</summary>
    public IReadOnlyList<PieceWeight> Pieces => Counted;

    private BulkDensity[] Known => _densities ?? First(ref _densities, DensitiesOf(Class, Weights));

    private PieceWeight[] Counted => _pieces ?? First(ref _pieces, PiecesOf(Weights));

    /// <summary>The bulk density in a packing, where it is known.</summary>
    /// <param name="packing">The packing.</param>
    /// <param name="density">The density, or <see langword="null"/>.</param>
    /// <returns>Whether it is known.</returns>
    public bool TryGetDensity(Packing packing, [NotNullWhen(true)] out BulkDensity? density)
    {
        density = Array.Find(Known, candidate => candidate.Packing == packing);
        return density is not null;
    }

    /// <summary>The bulk density in a packing.</summary>
    /// <param name="packing">The packing.</param>
    /// <returns>The density.</returns>
    /// <exception cref="ArgumentException">It is not known; the message lists the packings that are.</exception>
    public BulkDensity Density(Packing packing) => TryGetDensity(packing, out BulkDensity? density)
        ? density
        : throw new ArgumentException($"No density of {Name} is known {packing.ToWord()}; " + (Known.Length == 0
            ? "none is known in any packing."
                : $"known packings: {string.Join(", ", Known.Select(known => known.Packing.ToWord()))}."), nameof(packing));

    /// <summary>
    /// The bulk density in a packing, or that of the nearest packing that was weighed, widened; <see cref="BulkDensity.TakenFrom"/>
    /// says which.
    /// </summary>
    /// <remarks>
    /// The rule is the same for every food of a class. Where at least two foods of the class were weighed in both packings (table
    /// packing_ratios.csv), the density is that of the known packing times the geometric mean of their ratios, and u² = u(known)² + v² with v
    /// how far the next food may be from that mean (<see cref="BulkDensity"/>, kitchens). Where nobody has both, the density is that of the
    /// known packing, and v goes by steps. Powders and crystals: a ladder of sifted; loose and spooned; levelled; scooped; packed. Pieces: a
    /// ladder of whole; halved; chopped, sliced, slivered and miniature; flaked and grated; ground. How pieces are filled (levelled, loose,
    /// spooned, scooped, packed) is one step. Fats and pastes: softened is packed, other fillings are one step off, melted is two. A step is
    /// 0.10 (fats and pastes 0.03), the least is half a step; these are estimates. Of several known packings the one is taken that leaves the
    /// least uncertainty, then the usual packing.
    /// Nothing is taken for a packing that makes no sense (sifted butter, melted flour), for air beaten in, nor for a liquid.
    /// Worked number: softened butter is packed butter, about 224 g a US cup, with u = √(u(packed)² + 0.015²); of nuts that were weighed
    /// chopped, ground is 0.668 of it.
    /// </remarks>
    /// <param name="packing">The packing.</param>
    /// <returns>The density.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="packing"/> is not a defined value.</exception>
    /// <exception cref="ArgumentException">No near packing is known, or the packing makes no sense; the message says which.</exception>
    public BulkDensity NearestDensity(Packing packing)
    {
        if (TryGetNearestDensity(packing, out BulkDensity? density))
            return density;
        string known = Known.Length == 0 ? "none is known in any packing"
            : $"known packings: {string.Join(", ", Known.Select(weighed => weighed.Packing.ToWord()))}";
        string why = PackingNearness.WhySenseless(Class, packing) is string reason ? $"{reason}; " : "";
        throw new ArgumentException($"No density of {Name} is known {packing.ToWord()}: {why}{known}.", nameof(packing));
    }

    /// <summary>
    /// The bulk density in a packing or in the nearest that was weighed (<see cref="NearestDensity"/>), where there is one.
    /// </summary>
    /// <param name="packing">The packing.</param>
    /// <param name="density">The density, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="packing"/> is not a defined value.</exception>
    public bool TryGetNearestDensity(Packing packing, [NotNullWhen(true)] out BulkDensity? density)
    {
        if (TryGetDensity(Guard.Defined(packing), out density))
            return true;
        BulkDensity?[] taken = _nearest ?? First(ref _nearest, new BulkDensity?[PackingText.Count]);
        density = taken[(int)packing];
        if (density is not null)
            return true;
        // The same object for everybody who asks: masses by one density share its error.
        BulkDensity? nearest = Known.Select(known => PackingNearness.Take(Class, known, packing)).OfType<BulkDensity>()
            .OrderBy(found => found.LogUncertainty).ThenBy(found => found.TakenFrom != DefaultPacking).FirstOrDefault();
        if (nearest is null)
            return false;
        density = First(ref taken[(int)packing], nearest);
        return true;
    }

    /// <summary>What one piece weighs, where it is known.</summary>
    /// <param name="piece">The word for the piece, such as <c>stick</c>.</param>
    /// <param name="weight">The weight, or <see langword="null"/>.</param>
    /// <returns>Whether it is known.</returns>
    public bool TryGetPiece(string piece, [NotNullWhen(true)] out PieceWeight? weight)
    {
        Guard.NotNull(piece);
        weight = PieceWords.TryGet(piece, out string? word) ? Array.Find(Counted, candidate => candidate.Piece == word) : null;
        return weight is not null;
    }

    /// <summary>What one piece weighs.</summary>
    /// <param name="piece">The word for the piece, such as <c>stick</c>.</param>
    /// <returns>The weight.</returns>
    /// <exception cref="ArgumentException">It is not known; the message lists the pieces that are.</exception>
    public PieceWeight Piece(string piece) => TryGetPiece(piece, out PieceWeight? weight)
        ? weight
        : throw new ArgumentException($"A {Excerpt.Of(piece)} of {Name} is not known; " + (Counted.Length == 0
            ? "it has no pieces." : $"known pieces: {string.Join(", ", Counted.Select(known => known.Piece))}."), nameof(piece));

    /// <summary>Whether the other has the same id.</summary>
    /// <param name="other">The other ingredient, of any table.</param>
    public bool Equals([NotNullWhen(true)] Ingredient? other) => other is not null && Id == other.Id;

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => Equals(obj as Ingredient);

    /// <inheritdoc/>
    public override int GetHashCode() => Id.GetHashCode(StringComparison.Ordinal);

    /// <summary>Whether two ingredients have the same id.</summary>
    public static bool operator ==(Ingredient? left, Ingredient? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two ingredients have different ids.</summary>
    public static bool operator !=(Ingredient? left, Ingredient? right) => !(left == right);

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    /// <summary>Whether it pours and finds its level in a packing: that nobody packed it then says nothing.</summary>
    internal bool FindsItsLevel(Packing packing) => packing == Packing.Levelled && Class is IngredientClass.Liquid or IngredientClass.Syrup;

    /// <summary>
    /// Whether the other is made of the same and declares the same, so that lines of both may be added up. What they weigh in a cup may
    /// differ.
    /// </summary>
    internal bool IsMadeAs(Ingredient other) => ReferenceEquals(Record, other.Record)
        || Composition.HasFractionsOf(other.Composition) && DextroseEquivalent == other.DextroseEquivalent
            && Allergens.SequenceEqual(other.Allergens) && OftenContains.SequenceEqual(other.OftenContains);

    private static T First<T>(ref T? field, T value) where T : class => Interlocked.CompareExchange(ref field, value, null) ?? value;

    // In plain loops: a program that converts one food compiles this before it has an answer, and a query over an enum costs it more than
    // the weights of all foods take to read.
    private static BulkDensity[] DensitiesOf(IngredientClass @class, IReadOnlyList<WeightFact> weights)
    {
        List<WeightFact>?[] byPacking = new List<WeightFact>?[PackingText.Count];
        foreach (WeightFact fact in weights)
        {
            if (fact.Packing is Packing packing)
                (byPacking[(int)packing] ??= []).Add(fact);
        }
        List<BulkDensity> densities = [];
        for (int i = 0; i < byPacking.Length; i++)
        {
            if (byPacking[i] is List<WeightFact> facts && facts.Exists(fact => fact.Votes))
                densities.Add(BulkDensity.FromFacts(@class, (Packing)i, facts.ToArray()));
        }
        return densities.ToArray();
    }

    private static PieceWeight[] PiecesOf(IReadOnlyList<WeightFact> weights)
    {
        List<PieceWeight> pieces = [];
        foreach (WeightFact fact in weights)
        {
            if (fact.Amount.IsPiece && fact.Votes && fact.Amount.Part(0).Piece is string piece
                && !pieces.Exists(known => known.Piece == piece))
                pieces.Add(new PieceWeight(piece, fact));
        }
        return pieces.ToArray();
    }
}
