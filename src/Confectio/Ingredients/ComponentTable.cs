using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>What the table of thermal components has of constituents, so that a food has one density and one specific heat whoever is asked.</summary>
internal static class ComponentTable
{
    /// <summary>kg/m³ at 20 °C, in the order of the constituents.</summary>
    public static double[] DensitiesAtTwenty()
    {
        Dictionary<string, double> densities = Values("density", 20);
        return [.. Enum.GetValues<Constituent>().Select(constituent => densities[ComponentOf(constituent)])];
    }

    /// <summary>One property of every component, in the unit of the table: a + b·t + c·t².</summary>
    public static Dictionary<string, double> Values(string property, double celsius)
    {
        Dictionary<string, double> values = [];
        EmbeddedTable.Read("thermal_components.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            if (fields.Required("property") == property)
                values.Add(fields.Required("component"), fields.Number("a", 0, 1e4)!.Value + celsius * (fields.Number("b", -10, 10)!.Value + celsius * fields.Number("c", -1, 1)!.Value));
        });
        return values;
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
