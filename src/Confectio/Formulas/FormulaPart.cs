using System.Diagnostics.CodeAnalysis;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Formulas;

/// <summary>
/// A part of a formula whose grams can be counted: a constituent, several of them, everything but some of them, the whole mass of chosen
/// ingredients, or the sucrose that its sugars are as sweet as. Two parts are equal when they count the same, whatever they are called.
/// </summary>
/// <remarks>
/// The grams of a part are Σ x·f over the ingredients, less the water that boiled off where the part counts water: x is the mass of
/// an ingredient and f is <see cref="FractionIn"/>. They are linear in the masses, so parts can be added up, targeted and balanced.
/// Worked number: 200 g of unsalted butter (81.11 % fat) has 162.22 g of the part <see cref="Fat"/>.
/// The family is closed: what a part counts is a class of its own, made by a method or had by a name of this one.
/// </remarks>
public abstract partial class FormulaPart : IEquatable<FormulaPart>
{
    private const uint AllSugars = (1u << (int)Constituent.Sucrose) | (1u << (int)Constituent.Glucose) | (1u << (int)Constituent.Fructose)
        | (1u << (int)Constituent.Lactose) | (1u << (int)Constituent.Maltose) | (1u << (int)Constituent.OtherSugars);

    /// <summary>Before the word of an ingredient where a part goes by the same.</summary>
    internal const string IngredientPrefix = "ingredient:";

    private FormulaPart(string name, string word)
    {
        Name = name;
        Word = word;
    }

    /// <summary>The whole mass.</summary>
    public static FormulaPart Everything { get; } = new AllBut("everything", 0);

    /// <summary>Water.</summary>
    public static FormulaPart Water { get; } = Of(Constituent.Water);

    /// <summary>Fat of any kind, milk fat too.</summary>
    public static FormulaPart Fat { get; } = Of(Constituent.Fat);

    /// <summary>Milk fat (<see cref="Composition.MilkFat"/>), which <see cref="Fat"/> counts too.</summary>
    public static FormulaPart MilkFat { get; } = new OfMilkFat();

    /// <summary>All sugars: mono- and disaccharides.</summary>
    public static FormulaPart Sugars { get; } = new SumOf("sugars", AllSugars);

    /// <summary>Protein.</summary>
    public static FormulaPart Protein { get; } = Of(Constituent.Protein);

    /// <summary>Starch.</summary>
    public static FormulaPart Starch { get; } = Of(Constituent.Starch);

    /// <summary>Salt, as sodium × 2.5.</summary>
    public static FormulaPart Salt { get; } = Of(Constituent.Salt);

    /// <summary>Ethanol.</summary>
    public static FormulaPart Alcohol { get; } = Of(Constituent.Alcohol);

    /// <summary>Everything but water and alcohol: what stays when all that dries has dried.</summary>
    public static FormulaPart Solids { get; } = new AllBut("solids", Bit(Constituent.Water) | Bit(Constituent.Alcohol));

    /// <summary>Everything but water, alcohol and fat.</summary>
    public static FormulaPart SolidsNotFat { get; } =
        new AllBut("solids not fat", Bit(Constituent.Water) | Bit(Constituent.Alcohol) | Bit(Constituent.Fat));

    /// <summary>The fat phase of an emulsion: fat.</summary>
    public static FormulaPart FatPhase { get; } = new SumOf("fat phase", Bit(Constituent.Fat));

    /// <summary>
    /// The water phase of an emulsion: water and what dissolves in it, which is taken to be sugars, higher saccharides, polyols,
    /// glycerol, alcohol, acids and salt. Protein, starch and fibre stand in neither phase.
    /// </summary>
    public static FormulaPart WaterPhase { get; } = new SumOf("water phase",
        AllSugars | Bit(Constituent.Water) | Bit(Constituent.HigherSaccharides)
        | Bit(Constituent.Polyols) | Bit(Constituent.Glycerol) | Bit(Constituent.Alcohol) | Bit(Constituent.Acids) | Bit(Constituent.Salt));

    /// <summary>The parts that have a word of their own: those above, and every constituent.</summary>
    public static IReadOnlyList<FormulaPart> All { get; } =
    [
        Everything, Water, Fat, MilkFat, Sugars, Protein, Starch, Salt, Alcohol, Solids, SolidsNotFat, FatPhase, WaterPhase,
        .. Enum.GetValues<Constituent>().Where(constituent => constituent is not (Constituent.Water or Constituent.Fat
            or Constituent.Protein
            or Constituent.Starch or Constituent.Salt or Constituent.Alcohol)).Select(Of),
    ];

    /// <summary>
    /// The solids of milk that are not fat, as the trade counts them: what is neither water nor fat in foods of milk alone, less what was added to
    /// them. Known of a food that is listed without milk (none) and of the foods of the table that traced_solids.csv names; of no other.
    /// </summary>
    /// <remarks>Worked number: skimmed milk powder (water 3.16, fat 0.77 %) has 0.9607.</remarks>
    public static FormulaPart MilkSolidsNotFat { get; } = new TracedPart("milk solids not fat");

    /// <summary>
    /// Dry cocoa solids, cocoa butter counted in: of cocoa powder and mass all that is dry, of couverture the figure of its name. Not known of chocolate
    /// whose name states a range or nothing.
    /// </summary>
    public static FormulaPart CocoaSolids { get; } = new TracedPart("cocoa solids");

    /// <summary>Cocoa butter: the fat of cocoa powder and mass, and what a couverture was mixed with on paper.</summary>
    public static FormulaPart CocoaButter { get; } = new TracedPart("fat of cocoa");

    /// <summary>
    /// Parts that are told food by food, and not known of every food: <see cref="FractionIn"/> refuses a food of which they are not known, by name, and so
    /// does a problem.
    /// </summary>
    public static IReadOnlyList<FormulaPart> Traced { get; } = [MilkSolidsNotFat, CocoaSolids, CocoaButter];

    /// <summary>The name in a sentence, such as <c>milk fat</c>.</summary>
    public string Name { get; }

    /// <summary>The word in files, such as <c>milk-fat</c>; of an ingredient, its id.</summary>
    public string Word { get; }

    /// <summary>Grams of this part in a gram of water that boils off: 1 where water is part of it, else 0.</summary>
    /// <remarks>
    /// Boiling off is a negative mass of water to every part that counts water, the whole mass among them. It takes nothing from a
    /// part of ingredients, which counts what is put in.
    /// </remarks>
    public virtual double FractionOfBoiledOffWater => 0;

    /// <summary>The most of this part that a gram can be, for the end of a spread.</summary>
    internal virtual double MaximumInAGram => 1;

    /// <summary>One constituent.</summary>
    /// <param name="constituent">The constituent.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="constituent"/> is not a defined value.</exception>
    public static FormulaPart Of(Constituent constituent) => new SumOf(EnumWords.Of(Guard.Defined(constituent), ' '), Bit(constituent));

    /// <summary>Several constituents together.</summary>
    /// <param name="name">The name for sentences, such as <c>sweet solids</c>.</param>
    /// <param name="constituents">The constituents, at least one.</param>
    /// <exception cref="ArgumentException">The name is blank, or there is no constituent.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A constituent is not a defined value.</exception>
    public static FormulaPart Of(string name, params ReadOnlySpan<Constituent> constituents)
    {
        if (constituents.IsEmpty)
            throw new ArgumentException($"{nameof(constituents)} is empty; a part has at least one.", nameof(constituents));
        uint bits = 0;
        foreach (Constituent constituent in constituents)
            bits |= Bit(Guard.Defined(constituent, nameof(constituents)));
        return new SumOf(NotBlank(name), bits);
    }

    /// <summary>
    /// The whole mass of an ingredient, as it is put in. Where a part goes by its name (water, lactose) it is called <c>the ingredient water</c>, and
    /// its word is <c>ingredient:water</c>.
    /// </summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    public static FormulaPart OfIngredient(Ingredient ingredient) =>
        new OfMasses(TryRead(Guard.NotNull(ingredient).Name, out _) ? "the ingredient " + ingredient.Name : ingredient.Name,
            TryRead(ingredient.Id, out _) ? IngredientPrefix + ingredient.Id : ingredient.Id, [ingredient]);

    /// <summary>The whole mass of several ingredients, as they are put in: the flours that baker's percentages are counted on.</summary>
    /// <param name="name">The name for sentences, such as <c>flour</c>.</param>
    /// <param name="ingredients">The ingredients, at least one.</param>
    /// <exception cref="ArgumentException">The name is blank, or there is no ingredient.</exception>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static FormulaPart OfIngredients(string name, params IEnumerable<Ingredient> ingredients)
    {
        Ingredient[] distinct = [.. Guard.NotNull(ingredients).Select(ingredient => Guard.NotNull(ingredient,
            nameof(ingredients))).Distinct()];
        return distinct.Length > 0
            ? new OfMasses(NotBlank(name), WordOf(name), distinct)
            : throw new ArgumentException($"{nameof(ingredients)} is empty; a part has at least one.", nameof(ingredients));
    }

    /// <summary>
    /// Reads the word or the name of a part that has one (<see cref="All"/> and <see cref="Traced"/>), such as <c>milk-fat</c>; case does not matter.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="part">The part, or <see langword="null"/>.</param>
    /// <returns>Whether the text is such a word.</returns>
    public static bool TryRead(ReadOnlySpan<char> text, [NotNullWhen(true)] out FormulaPart? part)
    {
        text = text.Trim();
        foreach (FormulaPart candidate in All.Concat(Traced))
        {
            if (text.Equals(candidate.Word, StringComparison.OrdinalIgnoreCase) || text.Equals(candidate.Name, StringComparison.OrdinalIgnoreCase))
            {
                part = candidate;
                return true;
            }
        }
        part = null;
        return false;
    }

    /// <summary>
    /// Grams of this part in a gram of an ingredient, from 0 to the sum of its composition (at most 1.02); of a sweetness it may be more.
    /// </summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <returns>The mass fraction. Worked number: <see cref="Fat"/> in unsalted butter is 0.8111.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    public double FractionIn(Ingredient ingredient) => Fraction(Guard.NotNull(ingredient));

    /// <inheritdoc/>
    public abstract bool Equals([NotNullWhen(true)] FormulaPart? other);

    /// <inheritdoc/>
    public sealed override bool Equals([NotNullWhen(true)] object? obj) => Equals(obj as FormulaPart);

    /// <inheritdoc/>
    public abstract override int GetHashCode();

    /// <summary>Whether two parts count the same.</summary>
    public static bool operator ==(FormulaPart? left, FormulaPart? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two parts count differently.</summary>
    public static bool operator !=(FormulaPart? left, FormulaPart? right) => !(left == right);

    /// <summary>The name in a sentence, such as <c>milk fat</c>.</summary>
    public override string ToString() => Name;

    /// <summary>
    /// Constituents counted by weights, such as by their sweetness; a weight of 0 or more for each <see cref="Constituent"/>.
    /// </summary>
    internal static FormulaPart Weighted(string name, double[] weights) => new WeightedSum(name, weights);

    /// <summary>Whether it is known how much of it a food has.</summary>
    internal virtual bool IsKnownIn(Ingredient ingredient) => true;

    /// <summary>How well that is known, where it is told food by food; else the composition says.</summary>
    internal virtual Evidence EvidenceIn(Ingredient ingredient) => ingredient.CompositionProvenance.Evidence;

    /// <summary>The standard uncertainty of <see cref="FractionIn"/>.</summary>
    internal virtual double StandardUncertaintyIn(Ingredient ingredient) =>
        CompositionSpread.StandardUncertainty(ingredient, FractionIn(ingredient));

    private protected abstract double Fraction(Ingredient ingredient);

    private static uint Bit(Constituent constituent) => 1u << (int)constituent;

    private static string WordOf(string name) => NameKey.Of(name).Replace(' ', '-');

    private static string NotBlank(string name) => string.IsNullOrWhiteSpace(Guard.NotNull(name))
        ? throw new ArgumentException($"{nameof(name)} was {Excerpt.Of(name)}; a part needs a name.", nameof(name))
        : name.Trim();
}
