using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Eggs;

/// <summary>
/// A form in which white, yolk or whole egg is bought: fresh, pasteurised, frozen, sugared or dried, with its solids and protein.
/// </summary>
/// <remarks>
/// A form replaces another of the same part: white by white, yolk by yolk. <see cref="EggReplacement"/> says by how much.
/// </remarks>
public sealed class EggForm
{
    /// <summary>The most moisture that a powder may have, as a mass fraction: 0.2. Flakes have 0.15.</summary>
    public const double MaximumMoisture = 0.2;

    internal EggForm(EggForms forms, string key, string name, EggPart part, Ingredient ingredient, bool isDry, string preparation,
        string note,
        Provenance? provenance, double? specifiedMoisture)
    {
        Forms = forms;
        Key = key;
        Name = name;
        Part = part;
        Ingredient = ingredient;
        IsDry = isDry;
        Preparation = preparation;
        Note = note;
        Provenance = provenance;
        SpecifiedMoisture = specifiedMoisture;
    }

    /// <summary>The forms of the same table: the fresh egg and the water that go with this one.</summary>
    public EggForms Forms { get; }

    /// <summary>The key, such as <c>dried-white</c>.</summary>
    public string Key { get; }

    /// <summary>The name, such as <c>dried egg white</c>.</summary>
    public string Name { get; }

    /// <summary>The part of the egg.</summary>
    public EggPart Part { get; }

    /// <summary>The ingredient that it is in a formula, with its composition and densities.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>Whether it is a powder or flakes and has to be made up with water.</summary>
    public bool IsDry { get; }

    /// <summary>What to do before it is used, such as how long a powder stands in its water: common practice. May be empty.</summary>
    public string Preparation { get; }

    /// <summary>What the trade knows of it; may be empty.</summary>
    public string Note { get; }

    /// <summary>
    /// Where the note comes from; <see langword="null"/> of a form of your own. The composition has its own, at the ingredient.
    /// </summary>
    public Provenance? Provenance { get; }

    /// <summary>The water, as a mass fraction; of a powder, its moisture.</summary>
    public double WaterFraction => Ingredient.Composition[Constituent.Water];

    /// <summary>
    /// The most moisture of a purchase specification, as a mass fraction, beside that of the food table; <see langword="null"/> where none
    /// is known, and where the moisture was stated (<see cref="WithMoisture"/>).
    /// </summary>
    public double? SpecifiedMoisture { get; }

    /// <summary>
    /// All that is not water, as a mass fraction, with what the sources leave open: the food table and the purchase specification. It has
    /// no width where there is one source only, or the moisture was stated. Worked numbers: fresh white 0.1243, pasteurised 0.1103, dried
    /// 0.9146. Dried white goes to 0.92: a specification has the most moisture, and a powder that is drier has more solids than the high
    /// end.
    /// </summary>
    public Spread SolidsFraction
    {
        get
        {
            double likely = FormulaPart.Solids.FractionIn(Ingredient), other = 1 - SpecifiedMoisture ?? likely;
            return new Spread(Math.Min(likely, other), likely, Math.Max(likely, other), SpreadBasis.Sources);
        }
    }

    /// <summary>Sugar that was added, as a mass fraction: the sucrose, which an egg does not have.</summary>
    public double AddedSugarFraction => Ingredient.Composition[Constituent.Sucrose];

    /// <summary>The solids of the egg itself: all that is neither water nor added sugar. Worked number: sugared yolk 0.3864.</summary>
    public double EggSolidsFraction => SolidsFraction.Likely - AddedSugarFraction;

    /// <summary>The protein, as a mass fraction.</summary>
    public double ProteinFraction => Ingredient.Composition[Constituent.Protein];

    /// <summary>A form of your own, such as a powder with the composition of its label.</summary>
    /// <param name="name">The name.</param>
    /// <param name="part">The part: whole, white or yolk.</param>
    /// <param name="ingredient">
    /// The ingredient, with egg solids and protein in it. It is dry where its water is at most <see cref="MaximumMoisture"/>.
    /// </param>
    /// <param name="forms">The forms of the table whose fresh egg and water go with it.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">
    /// The name is blank, the part is the shell, or the ingredient has no egg solids or no protein.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="part"/> is not a defined value.</exception>
    public static EggForm Of(string name, EggPart part, Ingredient ingredient, EggForms forms)
    {
        if (string.IsNullOrWhiteSpace(Guard.NotNull(name)))
            throw new ArgumentException($"{nameof(name)} was {Excerpt.Of(name)}; a form needs a name.", nameof(name));
        if (Guard.Defined(part) == EggPart.Shell)
            throw new ArgumentException($"{nameof(part)} was {part}; whole, white or yolk has a form.", nameof(part));
        if (!Guard.NotNull(ingredient).Allergens.Contains(Allergen.Egg))
            throw new ArgumentException($"{nameof(ingredient)} '{ingredient.Name}' is no egg: what its solids do is not what those of egg "
                + $"do, so that equal solids or protein say nothing.", nameof(ingredient));
        EggForm form = new(Guard.NotNull(forms), name.Trim(), name.Trim(), part, ingredient,
            ingredient.Composition[Constituent.Water] <= MaximumMoisture, "", "", null, null);
        return form is { EggSolidsFraction: > 0, ProteinFraction: > 0 } ? form
            : throw new ArgumentException($"{nameof(ingredient)} '{ingredient.Name}' has no egg solids or no protein.", nameof(ingredient));
    }

    /// <summary>The same powder at another moisture, everything else in proportion: x·(1 − m)/(1 − m₀).</summary>
    /// <param name="moisture">
    /// The moisture m as a mass fraction, above 0 to 0.2. A powder without any water is no powder that is sold: 0 is most likely a field
    /// that was not filled in, and is refused.
    /// </param>
    /// <returns>
    /// The form, with an ingredient of its own unless the moisture is that of the table, and <see cref="SolidsFraction"/> of no width: the
    /// moisture is known. Worked number: dried white at 0.08 has 0.92 of solids and 0.8289 of protein.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="moisture"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The form is not dry.</exception>
    public EggForm WithMoisture(double moisture)
    {
        Guard.InRange(moisture, Guard.Trace, MaximumMoisture);
        if (!IsDry)
            throw new InvalidOperationException($"The form '{Name}' is not dry; only a powder or flakes have a moisture to be set.");
        // A percentage and its fraction differ in the last bit.
        if (Math.Abs(moisture - WaterFraction) < 1e-12)
            return SpecifiedMoisture is null ? this : new EggForm(Forms, Key, Name, Part, Ingredient, true, Preparation, Note, Provenance,
                null);
        double factor = (1 - moisture) / (1 - WaterFraction);
        double[] fractions = new double[Constituents.Count];
        for (int i = 0; i < fractions.Length; i++)
            fractions[i] = Ingredient.Composition[Constituents.At(i)] * factor;
        fractions[Constituents.PlaceOf(Constituent.Water)] = moisture;
        string percent = string.Create(CultureInfo.InvariantCulture, $"{100 * moisture:0.######}"), id = Ingredient.Id;
        // An id of its own: nobody must read the formula back with the composition of the table.
        IngredientNames names = new($"{id}-moisture-{percent.Replace('.', '-')}", $"{Ingredient.Name}, {percent} % moisture", [],
            Ingredient.Class);
        Ingredient other = new(names, new IngredientRecord
        {
            DefaultPacking = Ingredient.DefaultPacking,
            StandardReferenceNumber = null,
            Composition = new Composition(fractions, Ingredient.Composition.MilkFat * factor),
            DextroseEquivalent = null,
            CompositionProvenance = new Provenance(Bibliography.Get("confectio"), Evidence.Computed, $"{id} at {percent} % moisture",
                $"From the composition of {Ingredient.CompositionProvenance}, everything but the water in proportion."),
            SugarsProvenance = Ingredient.SugarsProvenance,
            Allergens = Ingredient.Allergens,
            OftenContains = Ingredient.OftenContains,
            Guessed = Ingredient.Record.Guessed,
            Note = Ingredient.Note,
        }, Ingredient.Weights);
        return new EggForm(Forms, Key, $"{Name}, {percent} % moisture", Part, other, true, Preparation, Note, Provenance, null);
    }

    /// <summary>The name and the solids, such as <c>dried egg white (91.46 % solids)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Name} ({100 * SolidsFraction.Likely:0.00} % solids)");

    /// <summary>The form as a formula has it: with the composition of the formula's own ingredient of this id, where it differs.</summary>
    internal EggForm In(Formula formula)
    {
        Ingredient own = formula.Own(Ingredient);
        return own.IsMadeAs(Ingredient) ? this
            : new EggForm(Forms, Key, Name, Part, own, own.Composition[Constituent.Water] <= MaximumMoisture, Preparation, Note, Provenance,
                null);
    }
}
