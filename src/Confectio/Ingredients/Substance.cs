using System.Diagnostics.CodeAnalysis;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>
/// What equations have coefficients for: every <see cref="Constituent"/>, and a few things that are none, such as ice and air. The table
/// substances.csv has a row for each.
/// </summary>
internal sealed class Substance
{
    internal const string FileName = "substances.csv";

    private static readonly string[] s_columns =
    [
        "key", "name", "formula", "molar_mass", "low_molar_mass", "high_molar_mass", "thermal_component", "energy_class", "source", "kind",
        "locator", "made_from", "note",
    ];

    private static readonly Substance[] s_all = ReadBuiltIn();

    private static readonly Substance[] s_constituents = Constituents.ByPlace(constituent => Get(Constituents.WordOf(constituent)));

    private Substance(RowFields fields)
    {
        Key = fields.Required("key");
        Name = fields.Required("name");
        ChemicalFormula = fields.Word("formula") is { Length: > 0 } formula ? formula : null;
        Constituent = Constituents.Find(Key);
        MolarMass = fields.Number("molar_mass", 1, 1e6);
        LowestMolarMass = fields.Number("low_molar_mass", 1, 1e6);
        HighestMolarMass = fields.Number("high_molar_mass", 1, 1e6);
        ThermalComponent = fields.Word("thermal_component");
        EnergyClass = fields.Word("energy_class");
        if (MolarMass is not null)
            MolarMassProvenance = fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"));
        if (Constituent is not null && ThermalComponent.Length == 0)
            fields.Problem("thermal_component", "the field is empty; every constituent counts as a component");
        if (MolarMassProvenance is { Evidence: Evidence.Estimated } && !(LowestMolarMass <= MolarMass && MolarMass <= HighestMolarMass))
            fields.Problem("low_molar_mass", "an estimate has a low and a high, and lies between them");
    }

    /// <summary>All of them, in the order of the table.</summary>
    public static IReadOnlyList<Substance> All => s_all;

    /// <summary>The key, such as <c>other-sugars</c>.</summary>
    public string Key { get; }

    /// <summary>The name, and what it is taken as where it is a group: <c>polyols, as sorbitol</c>.</summary>
    public string Name { get; }

    /// <summary>The constituent that it is, where it is one.</summary>
    public Constituent? Constituent { get; }

    /// <summary>The formula of the chemist, such as <c>C12H22O11</c>; <see langword="null"/> of a mixture.</summary>
    public string? ChemicalFormula { get; }

    /// <summary>The molar mass, g/mol; <see langword="null"/> where no equation asks for it.</summary>
    public double? MolarMass { get; }

    /// <summary>Where the molar mass comes from; <see langword="null"/> where there is none.</summary>
    public Provenance? MolarMassProvenance { get; }

    internal double? LowestMolarMass { get; }

    internal double? HighestMolarMass { get; }

    /// <summary>The key of the component that it counts as in the thermal equations; empty of what is no constituent.</summary>
    internal string ThermalComponent { get; }

    /// <summary>The key of the class whose factor its energy has; empty where it has none.</summary>
    internal string EnergyClass { get; }

    /// <summary>The substance of a key.</summary>
    /// <param name="key">The key, such as <c>glucose</c>; case does not matter.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such substance; the message lists those there are.</exception>
    public static Substance Get(string key) => Keyed.Get(s_all, key, "substance", "substances", known => known.Key);

    /// <summary>The substance of a key, where there is one.</summary>
    /// <param name="key">The key.</param>
    /// <param name="substance">The substance, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public static bool TryGet(string key, [NotNullWhen(true)] out Substance? substance) =>
        (substance = Keyed.Find(s_all, key, known => known.Key)) is not null;

    /// <summary>The substance that a constituent is.</summary>
    /// <param name="constituent">The constituent.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="constituent"/> is not a defined value.</exception>
    public static Substance Of(Constituent constituent) => s_constituents[Constituents.PlaceOf(Guard.Defined(constituent))];

    /// <summary>The name, such as <c>fructose</c>.</summary>
    public override string ToString() => Name;

    /// <summary>The molar mass of a substance that must have one, g/mol.</summary>
    internal static double MolarMassOf(Constituent constituent) => Of(constituent).MolarMass
        ?? throw new InvalidOperationException($"{FileName}: {Constituents.WordOf(constituent)} has no molar mass.");

    internal static Substance[] Read(TextReader text)
    {
        List<Substance> all = [];
        EmbeddedTable.Read(text, FileName, (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            Substance made = new(fields);
            if (all.Exists(known => known.Key == made.Key))
                fields.Problem("key", $"the substance {Excerpt.Of(made.Key)} stands twice");
            all.Add(made);
        }, s_columns, problems =>
        {
            foreach (Constituent constituent in Constituents.All.Where(
                constituent => !all.Exists(known => known.Constituent == constituent)))
                problems.Add(new Problem(1, "key",
                    $"there is no row of {Constituents.WordOf(constituent)}; every constituent has one"));
        });
        return [.. all];
    }

    private static Substance[] ReadBuiltIn()
    {
        using TextReader text = EmbeddedTable.Open(FileName);
        return Read(text);
    }
}
