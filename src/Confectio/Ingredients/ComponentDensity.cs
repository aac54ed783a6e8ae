using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>The densities of constituents by the table of thermal components, so that a food has one density whoever is asked.</summary>
internal static class ComponentDensity
{
    /// <summary>kg/m³ at 20 °C, in the order of the constituents.</summary>
    public static double[] AtTwenty()
    {
        Dictionary<string, double> densities = [];
        EmbeddedTable.Read("thermal_components.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            if (fields.Required("property") == "density")
                densities.Add(fields.Required("component"), fields.Number("a", 0, 1e4)!.Value + 20 * (fields.Number("b", -10, 10)!.Value + 20 * fields.Number("c", -1, 1)!.Value));
        });
        return [.. Enum.GetValues<Constituent>().Select(constituent => densities[ComponentOf(constituent)])];
    }

    /// <summary>The component that a constituent counts as.</summary>
    public static string ComponentOf(Constituent constituent) => constituent switch
    {
        Constituent.Water => "water",
        Constituent.Fat => "fat",
        Constituent.Protein => "protein",
        Constituent.Fibre => "fibre",
        Constituent.Alcohol => "alcohol",
        Constituent.Glycerol => "glycerol",
        Constituent.Salt or Constituent.OtherAsh => "ash",
        _ => "carbohydrate",
    };
}
