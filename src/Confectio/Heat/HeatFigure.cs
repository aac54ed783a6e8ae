using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Heat;

/// <summary>
/// A constant of heat work: the heat of melting of a fat or of ice, the heat of dissolving sucrose, the specific heat of a vessel.
/// </summary>
internal sealed class HeatFigure
{
    private static readonly HeatFigure[] s_all = ReadBuiltIn();

    private HeatFigure(string key, string quantity, Spread value, Provenance provenance, Provenance rangeProvenance)
    {
        Key = key;
        Quantity = quantity;
        Value = value;
        Provenance = provenance;
        RangeProvenance = rangeProvenance;
    }

    /// <summary>All of them.</summary>
    public static IReadOnlyList<HeatFigure> All => s_all;

    /// <summary>Of what it is, such as <c>milk-fat</c>.</summary>
    public string Key { get; }

    /// <summary>What it is: <c>melting</c> and <c>dissolving</c> in kJ/kg, <c>specific</c> in kJ/(kg·K).</summary>
    public string Quantity { get; }

    /// <summary>The figure.</summary>
    public Spread Value { get; }

    /// <summary>Where the likely figure comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>Where the low and the high come from; of milk fat, a remembered range stands about a measurement.</summary>
    public Provenance RangeProvenance { get; }

    /// <summary>The heat that ice takes up when it melts: 335 kJ/kg, Earle and Earle.</summary>
    public static HeatFigure MeltingOfIce { get; } = Find("ice", "melting")!;

    /// <summary>
    /// The heat that sucrose crystals take up when they dissolve in much water at 25 °C: 17 kJ/kg, from 16 to 18, from memory. At another
    /// temperature it differs by what the specific heats differ.
    /// </summary>
    public static HeatFigure DissolvingOfSucrose { get; } = Find("sucrose", "dissolving")!;

    /// <summary>One line, such as <c>ice, melting: 335 kJ/kg</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Key}, {Quantity}: {Value.Likely:R} {(Quantity == "specific" ? "kJ/(kg·K)" : "kJ/kg")}");

    internal static HeatFigure? Find(string key, string quantity) =>
        Array.Find(s_all, figure => figure.Key == key && figure.Quantity == quantity);

    private static HeatFigure[] ReadBuiltIn()
    {
        List<HeatFigure> all = [];
        EmbeddedTable.Read("heats.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string quantity = fields.Required("quantity");
            if (quantity is not ("melting" or "dissolving" or "specific"))
                fields.Problem("quantity", $"{Excerpt.Of(quantity)} is no heat; expected one of: melting, dissolving, specific");
            Provenance provenance = fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"));
            Provenance range = fields.Word("range_source").Length > 0 ? fields.Provenance("range_source", "range_kind", "", "")
                : provenance;
            all.Add(new HeatFigure(fields.Required("key"), quantity, fields.Spread(0, 500, range.Evidence), provenance, range));
        });
        return [.. all];
    }
}
