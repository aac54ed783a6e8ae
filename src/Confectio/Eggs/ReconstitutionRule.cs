using System.Diagnostics.CodeAnalysis;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Eggs;

/// <summary>
/// A rule that kitchens make up dried white by, as parts by mass or as spoons and cups; what it really gives, <see cref="Apply"/> says.
/// </summary>
public sealed class ReconstitutionRule
{
    private static readonly ReconstitutionRule[] s_all = ReadBuiltIn();

    private ReconstitutionRule(string key, string name, double? powderParts, double? waterParts, Amount? powder, Amount? water,
        Amount? replaces, Provenance provenance)
    {
        Key = key;
        Name = name;
        PowderParts = powderParts;
        WaterParts = waterParts;
        Powder = powder;
        Water = water;
        Replaces = replaces;
        Provenance = provenance;
    }

    /// <summary>The rules: <c>twelve-eighty-eight</c>, <c>one-to-seven</c> and <c>spoon-rule</c>.</summary>
    public static IReadOnlyList<ReconstitutionRule> All => s_all;

    /// <summary>The key, such as <c>spoon-rule</c>.</summary>
    public string Key { get; }

    /// <summary>The rule in words, such as <c>12 : 88 by mass</c>.</summary>
    public string Name { get; }

    /// <summary>Parts of powder by mass; <see langword="null"/> of a rule by spoons.</summary>
    public double? PowderParts { get; }

    /// <summary>Parts of water by mass; <see langword="null"/> of a rule by spoons.</summary>
    public double? WaterParts { get; }

    /// <summary>The powder by spoons or cups; <see langword="null"/> of a rule by mass.</summary>
    public Amount? Powder { get; }

    /// <summary>The water by spoons or cups; <see langword="null"/> of a rule by mass.</summary>
    public Amount? Water { get; }

    /// <summary>
    /// What a rule by spoons says that this replaces, such as the white of a US large egg; <see langword="null"/> of a rule by mass, where
    /// it is the sum.
    /// </summary>
    public Amount? Replaces { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The rule of a key or name.</summary>
    /// <param name="name">The key or the name.</param>
    /// <exception cref="ArgumentException">There is no such rule; the message lists those there are.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public static ReconstitutionRule Get(string name) => Keyed.Get(s_all, name, "rule of reconstitution", "rules", known => known.Key,
        known => known.Name);

    /// <summary>The rule of a key or name, where there is one.</summary>
    /// <param name="name">The key or the name.</param>
    /// <param name="rule">The rule, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public static bool TryGet(string name, [NotNullWhen(true)] out ReconstitutionRule? rule) =>
        (rule = Keyed.Find(s_all, name, known => known.Key, known => known.Name)) is not null;

    /// <summary>The rule as it stands: for a white, or for 100 g of whites.</summary>
    /// <param name="powder">The dried white, at the moisture it has (<see cref="EggForm.WithMoisture"/>).</param>
    /// <param name="system">Whose cups and spoons it is followed with.</param>
    /// <returns>
    /// What it gives. Worked number: 12 to 88 with a powder of 8.0 % moisture gives 11.04 % solids, which is pasteurised white and not
    /// fresh.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="powder"/> is no dried white.</exception>
    public ReconstitutionResult Apply(EggForm powder, MeasuringSystem system) => Make(powder, system, null);

    /// <summary>The rule for a mass of whites, everything in proportion.</summary>
    /// <param name="whiteGrams">The whites to be replaced, g, above 0 to 1e9.</param>
    /// <param name="powder">The dried white, at the moisture it has.</param>
    /// <param name="system">Whose cups and spoons it is followed with.</param>
    /// <returns>What it gives. Worked number: 12 to 88 for 100 g: 12 g of powder and 88 g of water.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="powder"/> is no dried white.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="whiteGrams"/> is outside its range.</exception>
    public ReconstitutionResult ApplyTo(double whiteGrams, EggForm powder, MeasuringSystem system) =>
        Make(powder, system, Guard.InRange(whiteGrams, Guard.Trace, 1e9));

    /// <summary>The rule in words.</summary>
    public override string ToString() => Name;

    private ReconstitutionResult Make(EggForm powder, MeasuringSystem system, double? whiteGrams)
    {
        Guard.NotNull(system);
        if (Guard.NotNull(powder) is not { IsDry: true, Part: EggPart.White })
            throw new ArgumentException($"{nameof(powder)} '{powder.Name}' is no dried white.", nameof(powder));
        if (PowderParts is double dry && WaterParts is double wet)
        {
            double whites = whiteGrams ?? 100, grams = whites * dry / (dry + wet);
            return new ReconstitutionResult(this, powder, system, whites, Spread.Exactly(grams), Spread.Exactly(whites - grams));
        }
        double replaces = Conversion.Of(powder.Forms.FreshWhite.Ingredient, system).ToMass(Replaces!.Value).Grams.Likely,
            factor = (whiteGrams ?? replaces) / replaces;
        return new ReconstitutionResult(this, powder, system, whiteGrams ?? replaces,
            Conversion.Of(powder.Ingredient, system).ToMass(Powder!.Value).Grams * factor,
            Conversion.Of(powder.Forms.Needed("water"), system).ToMass(Water!.Value).Grams * factor);
    }

    private static ReconstitutionRule[] ReadBuiltIn()
    {
        List<ReconstitutionRule> rules = [];
        EmbeddedTable.Read("reconstitution_rules.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            rules.Add(new ReconstitutionRule(fields.Required("rule"), fields.Required("name"), fields.Number("powder_parts", 0, 100),
                fields.Number("water_parts", 0, 100),
                AmountOf(fields.Word("powder_amount")), AmountOf(fields.Word("water_amount")), AmountOf(fields.Word("replaces")),
                fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"))));
        });
        return [.. rules];
    }

    private static Amount? AmountOf(string word) => word.Length == 0 ? null : Amount.Parse(word);
}
