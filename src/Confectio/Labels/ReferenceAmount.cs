using System.Diagnostics.CodeAnalysis;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Labels;

/// <summary>
/// What is customarily eaten at once of a kind of food in the United States, from which the serving size of a label is made (21 CFR 101.12(b), Table 2; table
/// reference_amounts.csv). A cup is 240 mL there, a tablespoon 15 and a teaspoon 5 (<see cref="MeasuringSystem.UsLabelling"/>).
/// </summary>
/// <remarks>None of the rows was read in the regulation: what two restatements agree on is told as compiled, the rest is from memory. Check before it is printed.</remarks>
public sealed class ReferenceAmount
{
    private static readonly ReferenceAmount[] s_all = ReadBuiltIn();

    // Footnotes 6 to 8 of the table: grams in a cubic inch of 16.387064 mL.
    private const double HeavyFrom = 10 / CubicInch, MediumFrom = 4 / CubicInch, CubicInch = 16.387064;

    private ReferenceAmount(string category, string name, Amount amount, Provenance provenance)
    {
        Category = category;
        Name = name;
        Amount = amount;
        Provenance = provenance;
    }

    /// <summary>The kinds of food.</summary>
    public static IReadOnlyList<ReferenceAmount> All => s_all;

    /// <summary>The key, such as <c>frosting</c>.</summary>
    public string Category { get; }

    /// <summary>The kind of food in the words of the table, shortened.</summary>
    public string Name { get; }

    /// <summary>The amount: a mass, a volume, or spoons.</summary>
    public Amount Amount { get; }

    /// <summary>Where it comes from, and how it was seen.</summary>
    public Provenance Provenance { get; }

    /// <summary>The amount of a category.</summary>
    /// <param name="category">The key, such as <c>frosting</c>.</param>
    /// <exception cref="ArgumentNullException"><paramref name="category"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such category; the message lists those there are.</exception>
    public static ReferenceAmount Get(string category) => Keyed.Get(s_all, category, "category", "categories", known => known.Category);

    /// <summary>The amount of a category, where there is one.</summary>
    /// <param name="category">The key.</param>
    /// <param name="amount">The amount, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="category"/> is null.</exception>
    public static bool TryGet(string category, [NotNullWhen(true)] out ReferenceAmount? amount) => (amount = Keyed.Find(s_all, category, known => known.Category)) is not null;

    /// <summary>
    /// The class of a cake by its weight: heavy from 10 g in a cubic inch (0.6102 g/mL), medium from 4 (0.2441 g/mL), light below (21 CFR 101.12(b), footnotes 6 to 8). A cake
    /// with at least 35 % fruit, nuts or vegetables, and cheesecake, is heavy whatever it weighs.
    /// </summary>
    /// <param name="gramsPerMillilitre">The density of the baked cake, g/mL, from 0.05 to 3.</param>
    /// <returns>The row of the cake. Worked number: 0.45 g/mL is medium, 80 g.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gramsPerMillilitre"/> is outside its range.</exception>
    public static ReferenceAmount OfCake(double gramsPerMillilitre) => Guard.InRange(gramsPerMillilitre, 0.05, 3) >= HeavyFrom ? Get("cake-heavy")
        : gramsPerMillilitre >= MediumFrom ? Get("cake-medium") : Get("cake-light");

    /// <summary>The mass of the amount of a food of so much density.</summary>
    /// <param name="gramsPerMillilitre">The density of the food, g/mL, from 0.05 to 3; it does nothing where the amount is a mass.</param>
    /// <returns>Grams. Worked number: 2 tablespoons of 15 mL of a buttercream of 1.116 g/mL are 33.5 g.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gramsPerMillilitre"/> is outside its range.</exception>
    public double GramsAt(double gramsPerMillilitre)
    {
        Guard.InRange(gramsPerMillilitre, 0.05, 3);
        return Amount.IsMass ? Amount.Grams(MeasuringSystem.UsLabelling) : Amount.Millilitres(MeasuringSystem.UsLabelling) * gramsPerMillilitre;
    }

    /// <summary>The kind of food and the amount, such as <c>cake frostings or icings: 2 Tbsp</c>, with where it comes from.</summary>
    public override string ToString() => $"{Name}: {Amount} ({Provenance})";

    private static ReferenceAmount[] ReadBuiltIn()
    {
        List<ReferenceAmount> all = [];
        EmbeddedTable.Read("reference_amounts.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            if (!Amount.TryParse(fields.Required("amount"), out Amount amount))
                fields.Problem("amount", "an amount is expected");
            all.Add(new ReferenceAmount(fields.Required("category"), fields.Required("name"), amount, fields.Provenance("source", "kind", "", fields.Word("note"))));
        });
        return [.. all];
    }
}
