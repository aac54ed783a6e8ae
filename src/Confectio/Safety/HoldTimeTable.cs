using System.Diagnostics.CodeAnalysis;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Safety;

/// <summary>
/// A published table of temperatures and times: a lookup with its status and date, not a model. Nothing is worked out between its rows.
/// </summary>
public sealed class HoldTimeTable
{
    private static readonly HoldTimeTable[] s_all = ReadBuiltIn();

    private HoldTimeTable(string key, string name, string status, string asOf, double? lowWaterActivity, HoldTime[] rows)
    {
        LowWaterActivity = lowWaterActivity;
        Key = key;
        Name = name;
        Status = status;
        AsOf = asOf;
        Rows = rows;
    }

    /// <summary>The tables.</summary>
    public static IReadOnlyList<HoldTimeTable> All => s_all;

    /// <summary>The key, such as <c>food-code-3-401-11</c>.</summary>
    public string Key { get; }

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>What standing it has: law of the past, model code, guidance.</summary>
    public string Status { get; }

    /// <summary>The date or edition it is of.</summary>
    public string AsOf { get; }

    /// <summary>
    /// The lowest water activity of the products that it is for, by our judgement; <see langword="null"/> where it does not tell products
    /// apart. A table of plain egg says nothing of a mix rich in sugar: do not print that such a mix held a row of it.
    /// </summary>
    public double? LowWaterActivity { get; }

    /// <summary>The rows.</summary>
    public IReadOnlyList<HoldTime> Rows { get; }

    /// <summary>The table of a key.</summary>
    /// <param name="key">The key.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such table; the message lists those there are.</exception>
    public static HoldTimeTable Get(string key) => Keyed.Get(s_all, key, "table", "tables", known => known.Key);

    /// <summary>The table of a key, where there is one.</summary>
    /// <param name="key">The key.</param>
    /// <param name="table">The table, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public static bool TryGet(string key, [NotNullWhen(true)] out HoldTimeTable? table)
    {
        table = Keyed.Find(s_all, key, known => known.Key);
        return table is not null;
    }

    /// <summary>Whether a mix of such a water activity is one that the table is for.</summary>
    /// <param name="waterActivity">The water activity, from 0 to 1: its low end decides.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="waterActivity"/> is outside its range.</exception>
    public bool IsFor(Spread waterActivity) => !(Guard.InRange(waterActivity.Low, 0, 1, nameof(waterActivity)) < LowWaterActivity);

    /// <summary>The rows for a matter, and those for any food with egg.</summary>
    /// <param name="matter">The matter.</param>
    /// <returns>The rows; none where the table has none for it.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="matter"/> is not a defined value.</exception>
    public IReadOnlyList<HoldTime> RowsFor(FoodMatrix matter)
    {
        Guard.Defined(matter);
        return [.. Rows.Where(row => row.Matter == matter || (row.Matter == FoodMatrix.Food && matter != FoodMatrix.Beef))];
    }

    /// <summary>The name, the status and the date.</summary>
    public override string ToString() => $"{Name} ({AsOf}): {Status}";

    private static HoldTimeTable[] ReadBuiltIn()
    {
        List<(string Table, HoldTime Row)> rows = [];
        EmbeddedTable.Read("hold_times.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            rows.Add((fields.Required("table"), new HoldTime(fields.Required("product"), fields.Enum<FoodMatrix>("matter"),
                fields.RequiredNumber("fahrenheit", 100, 250), fields.RequiredNumber("seconds", 0, 1e5),
                fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note")))));
        });
        List<HoldTimeTable> tables = [];
        EmbeddedTable.Read("hold_time_tables.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string key = fields.Required("key");
            tables.Add(new HoldTimeTable(key, fields.Required("name"), fields.Required("status"), fields.Required("as_of"),
                fields.Number("low_water_activity", 0, 1), [.. rows.Where(entry => entry.Table == key).Select(entry => entry.Row)]));
        });
        return [.. tables];
    }
}
