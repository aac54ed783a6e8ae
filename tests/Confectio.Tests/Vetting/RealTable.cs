using System.Globalization;
using System.Text;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Tests.Text;
using Confectio.Vetting;

namespace Confectio.Tests.Vetting;

/// <summary>A row of a table that somebody else printed: the figure, its unit and its digits.</summary>
public sealed record RealRow(string Ingredient, string Measure, string Packing, string Printed, bool Ounces)
{
    public double Grams => double.Parse(Printed, CultureInfo.InvariantCulture) * (Ounces ? 28.349523125 : 1);
}

/// <summary>
/// The real tables, with the faults that they contain by our own reckoning. The reckoning is written down row by row in
/// <see cref="Faults"/>; it was made from densities, before the model judged them.
/// </summary>
public sealed class RealTable(string name, IReadOnlyList<RealRow> rows, MeasuringSystem[] systems)
{
    public string Name => name;

    public IReadOnlyList<RealRow> Rows => rows;

    /// <summary>The systems that the table may be claimed to use.</summary>
    public IReadOnlyList<MeasuringSystem> Systems => systems;

    public static IReadOnlyList<RealTable> Printed { get; } =
    [
        Read("fineli20", MeasuringSystem.Decilitre), Read("au-manual", MeasuringSystem.Metric, MeasuringSystem.Australian),
        Read("us-historic", MeasuringSystem.UsCustomary, MeasuringSystem.UsLabelling), Read("usda-teamnutrition", MeasuringSystem.UsCustomary, MeasuringSystem.UsLabelling),
    ];

    /// <summary>USDA Standard Reference, Release 28: the rows whose food our table knows by its number and whose measure can be read.</summary>
    public static RealTable StandardReference { get; } = OfStandardReference();

    public static IReadOnlyList<RealTable> All { get; } = [.. Printed, StandardReference];

    public string ToCsv() => ToCsv(rows);

    public static string ToCsv(IEnumerable<RealRow> rows)
    {
        StringBuilder text = new("ingredient,measure,packing,grams,ounces\n");
        foreach (RealRow row in rows)
            text.Append(CultureInfo.InvariantCulture, $"\"{row.Ingredient}\",\"{row.Measure}\",{row.Packing},{(row.Ounces ? "," + row.Printed : row.Printed + ",")}\n");
        return text.ToString();
    }

    private static RealTable Read(string name, params MeasuringSystem[] systems)
    {
        List<RealRow> rows = [];
        foreach (Dictionary<string, string> row in Oracle(name))
        {
            string mass = row["grams"];
            bool ounces = mass.EndsWith(" oz", StringComparison.Ordinal);
            rows.Add(new RealRow(row["canonical"].Length > 0 ? row["canonical"] : row["ingredient"], row["measure"], row["packing"], ounces ? mass[..^3] : mass, ounces));
        }
        return new RealTable(name, rows, systems);
    }

    private static List<Dictionary<string, string>> Oracle(string name)
    {
        using StreamReader text = new(Path.Combine(AppContext.BaseDirectory, "Oracles", "real-tables", name + ".csv"));
        return Rfc4180.Read(text);
    }

    private static RealTable OfStandardReference()
    {
        Dictionary<string, string> names = [];
        foreach (Ingredient ingredient in IngredientTable.BuiltIn.All)
        {
            if (ingredient.StandardReferenceNumber is string number)
                names.TryAdd(number, ingredient.Name);
        }
        List<RealRow> rows = [];
        foreach (Dictionary<string, string> row in (IEnumerable<Dictionary<string, string>>)[.. Data.Tables.HouseholdWeights, .. Oracle("usda-sr28-household-weights")])
        {
            string measure = $"{row["amount"]} {(row.TryGetValue("measure", out string? said) ? said : row["unit"])}".Replace("\"", "", StringComparison.Ordinal);
            if (!names.TryGetValue(row["ndb"], out string? name))
                continue;
            RealRow candidate = new(name, measure, "", row["grams"], false);
            TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(ToCsv([candidate])), IngredientTable.BuiltIn);
            if (verdict.Rows.Count == 1 && verdict.Rows[0].ExpectedGrams is not null)
                rows.Add(candidate);
        }
        return new RealTable("usda-sr28", rows, [MeasuringSystem.UsCustomary]);
    }
}
