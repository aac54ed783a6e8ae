using System.Diagnostics.CodeAnalysis;
using System.Numerics;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Formulas;

/// <summary>
/// A part of a formula whose grams can be counted: a constituent, several of them, everything but some of them, the whole mass of
/// chosen ingredients, or the sucrose that its sugars are as sweet as. Two parts are equal when they count the same, whatever they are called.
/// </summary>
/// <remarks>
/// The grams of a part are Σ x·f over the ingredients, less the water that boiled off where the part counts water: x is the mass of
/// an ingredient and f is <see cref="FractionIn"/>. They are linear in the masses, so parts can be added up, targeted and balanced.
/// Worked number: 200 g of unsalted butter (81.11 % fat) has 162.22 g of the part <see cref="Fat"/>.
/// </remarks>
public sealed class FormulaPart : IEquatable<FormulaPart>
{
    private const uint AllSugars = (1u << (int)Constituent.Sucrose) | (1u << (int)Constituent.Glucose) | (1u << (int)Constituent.Fructose)
        | (1u << (int)Constituent.Lactose) | (1u << (int)Constituent.Maltose) | (1u << (int)Constituent.OtherSugars);

    private readonly uint _constituents; // a bit for each Constituent
    private readonly Kind _kind;
    private readonly Ingredient[] _ingredients;

    private readonly double[] _weights; // of each Constituent, where the kind is Weighted

    private FormulaPart(string name, string word, Kind kind, uint constituents, Ingredient[] ingredients, double[]? weights = null)
    {
        _weights = weights ?? [];
        Name = name;
        Word = word;
        _kind = kind;
        _constituents = constituents;
        _ingredients = ingredients;
    }

    private enum Kind
    {
        Constituents,
        AllButConstituents,
        MilkFat,
        Ingredients,
        Weighted,
    }

    /// <summary>The whole mass.</summary>
    public static FormulaPart Everything { get; } = AllBut("everything", 0);

    /// <summary>Water.</summary>
    public static FormulaPart Water { get; } = Of(Constituent.Water);

    /// <summary>Fat of any kind, milk fat too.</summary>
    public static FormulaPart Fat { get; } = Of(Constituent.Fat);

    /// <summary>Milk fat (<see cref="Composition.MilkFat"/>), which <see cref="Fat"/> counts too.</summary>
    public static FormulaPart MilkFat { get; } = new("milk fat", "milk-fat", Kind.MilkFat, 0, []);

    /// <summary>All sugars: mono- and disaccharides.</summary>
    public static FormulaPart Sugars { get; } = OfBits("sugars", AllSugars);

    /// <summary>Protein.</summary>
    public static FormulaPart Protein { get; } = Of(Constituent.Protein);

    /// <summary>Starch.</summary>
    public static FormulaPart Starch { get; } = Of(Constituent.Starch);

    /// <summary>Salt, as sodium × 2.5.</summary>
    public static FormulaPart Salt { get; } = Of(Constituent.Salt);

    /// <summary>Ethanol.</summary>
    public static FormulaPart Alcohol { get; } = Of(Constituent.Alcohol);

    /// <summary>Everything but water and alcohol: what stays when all that dries has dried.</summary>
    public static FormulaPart Solids { get; } = AllBut("solids", Bit(Constituent.Water) | Bit(Constituent.Alcohol));

    /// <summary>Everything but water, alcohol and fat.</summary>
    public static FormulaPart SolidsNotFat { get; } = AllBut("solids not fat", Bit(Constituent.Water) | Bit(Constituent.Alcohol) | Bit(Constituent.Fat));

    /// <summary>The fat phase of an emulsion: fat.</summary>
    public static FormulaPart FatPhase { get; } = OfBits("fat phase", Bit(Constituent.Fat));

    /// <summary>
    /// The water phase of an emulsion: water and what dissolves in it, which is taken to be sugars, higher saccharides, polyols,
    /// glycerol, alcohol, acids and salt. Protein, starch and fibre stand in neither phase.
    /// </summary>
    public static FormulaPart WaterPhase { get; } = OfBits("water phase", AllSugars | Bit(Constituent.Water) | Bit(Constituent.HigherSaccharides)
        | Bit(Constituent.Polyols) | Bit(Constituent.Glycerol) | Bit(Constituent.Alcohol) | Bit(Constituent.Acids) | Bit(Constituent.Salt));

    /// <summary>The parts that have a word of their own: those above, and every constituent.</summary>
    public static IReadOnlyList<FormulaPart> All { get; } =
    [
        Everything, Water, Fat, MilkFat, Sugars, Protein, Starch, Salt, Alcohol, Solids, SolidsNotFat, FatPhase, WaterPhase,
        .. Enum.GetValues<Constituent>().Where(constituent => constituent is not (Constituent.Water or Constituent.Fat or Constituent.Protein
            or Constituent.Starch or Constituent.Salt or Constituent.Alcohol)).Select(Of),
    ];

    /// <summary>The name in a sentence, such as <c>milk fat</c>.</summary>
    public string Name { get; }

    /// <summary>The word in files, such as <c>milk-fat</c>; of an ingredient, its id.</summary>
    public string Word { get; }

    /// <summary>Grams of this part in a gram of water that boils off: 1 where water is part of it, else 0.</summary>
    /// <remarks>
    /// Boiling off is a negative mass of water to every part that counts water, the whole mass among them. It takes nothing from a
    /// part of ingredients, which counts what is put in.
    /// </remarks>
    public double FractionOfBoiledOffWater => _kind switch
    {
        Kind.Constituents => (_constituents & Bit(Constituent.Water)) != 0 ? 1 : 0,
        Kind.AllButConstituents => (_constituents & Bit(Constituent.Water)) == 0 ? 1 : 0,
        _ => 0,
    };

    /// <summary>One constituent.</summary>
    /// <param name="constituent">The constituent.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="constituent"/> is not a defined value.</exception>
    public static FormulaPart Of(Constituent constituent) => OfBits(EnumWords.Of(Guard.Defined(constituent), ' '), Bit(constituent));

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
        return OfBits(NotBlank(name), bits);
    }

    /// <summary>The whole mass of an ingredient, as it is put in.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    public static FormulaPart OfIngredient(Ingredient ingredient) =>
        new(Guard.NotNull(ingredient).Name, ingredient.Id, Kind.Ingredients, 0, [ingredient]);

    /// <summary>The whole mass of several ingredients, as they are put in: the flours that baker's percentages are counted on.</summary>
    /// <param name="name">The name for sentences, such as <c>flour</c>.</param>
    /// <param name="ingredients">The ingredients, at least one.</param>
    /// <exception cref="ArgumentException">The name is blank, or there is no ingredient.</exception>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static FormulaPart OfIngredients(string name, params IEnumerable<Ingredient> ingredients)
    {
        Ingredient[] distinct = [.. Guard.NotNull(ingredients).Select(ingredient => Guard.NotNull(ingredient, nameof(ingredients))).Distinct()];
        return distinct.Length > 0
            ? new FormulaPart(NotBlank(name), WordOf(name), Kind.Ingredients, 0, distinct)
            : throw new ArgumentException($"{nameof(ingredients)} is empty; a part has at least one.", nameof(ingredients));
    }

    /// <summary>Reads the word of a part that has one (<see cref="All"/>), such as <c>milk-fat</c>; case does not matter.</summary>
    /// <param name="text">The text.</param>
    /// <param name="part">The part, or <see langword="null"/>.</param>
    /// <returns>Whether the text is such a word.</returns>
    public static bool TryRead(ReadOnlySpan<char> text, [NotNullWhen(true)] out FormulaPart? part)
    {
        text = text.Trim();
        foreach (FormulaPart candidate in All)
        {
            if (text.Equals(candidate.Word, StringComparison.OrdinalIgnoreCase))
            {
                part = candidate;
                return true;
            }
        }
        part = null;
        return false;
    }

    /// <summary>Grams of this part in a gram of an ingredient, from 0 to the sum of its composition (at most 1.02); of a sweetness it may be more.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <returns>The mass fraction. Worked number: <see cref="Fat"/> in unsalted butter is 0.8111.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    public double FractionIn(Ingredient ingredient)
    {
        Composition composition = Guard.NotNull(ingredient).Composition;
        return _kind switch
        {
            Kind.Constituents => Sum(composition),
            Kind.AllButConstituents => Math.Max(0, 1 - Sum(composition)),
            Kind.MilkFat => composition.MilkFat,
            Kind.Weighted => WeightedSum(composition),
            _ => Array.IndexOf(_ingredients, ingredient) >= 0 ? 1 : 0,
        };
    }

    /// <inheritdoc/>
    public bool Equals([NotNullWhen(true)] FormulaPart? other) => other is not null && _kind == other._kind && _constituents == other._constituents
        && _weights.AsSpan().SequenceEqual(other._weights) && _ingredients.Length == other._ingredients.Length && _ingredients.All(ingredient => Array.IndexOf(other._ingredients, ingredient) >= 0);

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => Equals(obj as FormulaPart);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        int sum = 0; // whatever the order of the ingredients
        foreach (Ingredient ingredient in _ingredients)
            sum ^= ingredient.GetHashCode();
        return HashCode.Combine(_kind, _constituents, sum);
    }

    /// <summary>Whether two parts count the same.</summary>
    public static bool operator ==(FormulaPart? left, FormulaPart? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two parts count differently.</summary>
    public static bool operator !=(FormulaPart? left, FormulaPart? right) => !(left == right);

    /// <summary>The name in a sentence, such as <c>milk fat</c>.</summary>
    public override string ToString() => Name;

    private static FormulaPart OfBits(string name, uint constituents) => new(name, WordOf(name), Kind.Constituents, constituents, []);

    private static FormulaPart AllBut(string name, uint constituents) => new(name, WordOf(name), Kind.AllButConstituents, constituents, []);

    private static uint Bit(Constituent constituent) => 1u << (int)constituent;

    private static string WordOf(string name) => NameKey.Of(name).Replace(' ', '-');

    private static string NotBlank(string name) => string.IsNullOrWhiteSpace(Guard.NotNull(name))
        ? throw new ArgumentException($"{nameof(name)} was {Excerpt.Of(name)}; a part needs a name.", nameof(name))
        : name.Trim();

    /// <summary>Constituents counted by weights, such as by their sweetness; a weight of 0 or more for each <see cref="Constituent"/>.</summary>
    internal static FormulaPart Weighted(string name, double[] weights) => new(name, WordOf(name), Kind.Weighted, 0, [], weights);

    /// <summary>The most of this part that a gram can be, for the end of a spread.</summary>
    internal double MostInAGram => _kind == Kind.Weighted ? _weights.Max() : 1;

    /// <summary>The standard uncertainty of <see cref="FractionIn"/>; the constituents of a weighted part are taken as independent.</summary>
    internal double StandardUncertaintyIn(Ingredient ingredient)
    {
        // A single constituent may be worse known than the composition: the starch of cocoa is a guess where its fat is compiled.
        if (_kind == Kind.Constituents && BitOperations.IsPow2(_constituents))
            return CompositionSpread.StandardUncertainty(ingredient, (Constituent)BitOperations.TrailingZeroCount(_constituents));
        if (_kind != Kind.Weighted)
            return CompositionSpread.StandardUncertainty(ingredient, FractionIn(ingredient));
        double variance = 0;
        for (int i = 0; i < _weights.Length; i++)
        {
            double u = _weights[i] * CompositionSpread.StandardUncertainty(ingredient, (Constituent)i);
            variance += u * u;
        }
        return Math.Sqrt(variance);
    }

    private double WeightedSum(Composition composition)
    {
        double sum = 0;
        for (int i = 0; i < _weights.Length; i++)
            sum += _weights[i] * composition[(Constituent)i];
        return sum;
    }

    private double Sum(Composition composition)
    {
        double sum = 0;
        for (uint left = _constituents; left != 0; left &= left - 1)
            sum += composition[(Constituent)BitOperations.TrailingZeroCount(left)];
        return sum;
    }
}
