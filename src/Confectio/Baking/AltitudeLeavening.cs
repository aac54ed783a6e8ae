using System.Globalization;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Baking;

/// <summary>
/// A row of the armed forces' table of leavening at heights: so much at sea level is so much at 2000, 4000, 6000 and 8000 feet.
/// </summary>
/// <remarks>
/// The rows do not follow the percentages that stand beside them to the spoon, and two copies of the table differ in three places; the notes say where.
/// Worked number: 1 Tbsp at sea level is 1 tsp at 8000 ft.
/// </remarks>
public sealed class AltitudeLeavening
{
    private static readonly int[] s_feet = [2000, 4000, 6000, 8000];

    private readonly Amount[] _amounts;

    private AltitudeLeavening(Amount seaLevel, Amount[] amounts, Provenance provenance)
    {
        SeaLevel = seaLevel;
        _amounts = amounts;
        Provenance = provenance;
    }

    /// <summary>The rows, the least first.</summary>
    public static IReadOnlyList<AltitudeLeavening> All { get; } = ReadBuiltIn();

    /// <summary>The heights that have a column, feet.</summary>
    public static IReadOnlyList<int> Heights => s_feet;

    /// <summary>The amount at sea level, US spoons.</summary>
    public Amount SeaLevel { get; }

    /// <summary>Where it comes from, with what the copies disagree about.</summary>
    public Provenance Provenance { get; }

    /// <summary>The amount at a height of the table, US spoons.</summary>
    /// <param name="feet">One of <see cref="Heights"/>, feet.</param>
    /// <exception cref="ArgumentOutOfRangeException">The table has no column of this height.</exception>
    public Amount At(int feet) => Array.IndexOf(s_feet, feet) is >= 0 and int place ? _amounts[place]
        : throw new ArgumentOutOfRangeException(nameof(feet), feet, $"{nameof(feet)} was {feet}; 2000, 4000, 6000 or 8000 is expected.");

    /// <summary>The row, such as <c>1 Tbsp: 2 1/2 tsp, 2 tsp, 1 2/3 tsp, 1 tsp at 2000, 4000, 6000, 8000 ft</c>.</summary>
    public override string ToString() => $"{SeaLevel}: {string.Join(", ", _amounts)} at {string.Join(", ", s_feet)} ft";

    private static AltitudeLeavening[] ReadBuiltIn()
    {
        List<AltitudeLeavening> all = [];
        EmbeddedTable.Read("altitude_leavening.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            Amount[] amounts = new Amount[s_feet.Length];
            for (int i = 0; i < amounts.Length; i++)
                amounts[i] = Amount.Parse(fields.Required(string.Create(CultureInfo.InvariantCulture, $"at_{s_feet[i]}_feet")));
            all.Add(new AltitudeLeavening(Amount.Parse(fields.Required("sea_level")), amounts, fields.Provenance("source", "kind", "", fields.Word("note"))));
        });
        return [.. all];
    }
}
