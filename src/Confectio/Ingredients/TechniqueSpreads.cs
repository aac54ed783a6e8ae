using System.Globalization;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>What one careful cook to the next brings, by class and packing: the table spreads.csv, all estimates.</summary>
internal static class TechniqueSpreads
{
    private static readonly double[,] s_spreads = ReadBuiltIn();

    /// <summary>The standard uncertainty of the logarithm of a density from technique alone.</summary>
    public static double For(IngredientClass @class, Packing packing) => s_spreads[(int)@class, (int)packing];

    private static double[,] ReadBuiltIn()
    {
        double[,] spreads = new double[Enum.GetValues<IngredientClass>().Length, Enum.GetValues<Packing>().Length];
        EmbeddedTable.Read("spreads.csv", (table, _) =>
        {
            int @class = table.Find("class"), packing = table.Find("packing"), value = table.Find("log_standard_uncertainty");
            return row =>
            {
                int c = (int)Enum.Parse<IngredientClass>(row[@class], ignoreCase: true);
                double u = double.Parse(row[value], CultureInfo.InvariantCulture);
                // A row without a packing is for every packing of the class; rows that name one follow and override.
                if (row[packing].IsEmpty)
                {
                    for (int p = 0; p < spreads.GetLength(1); p++)
                        spreads[c, p] = u;
                }
                else if (PackingText.TryRead(row[packing], out Packing named))
                {
                    spreads[c, (int)named] = u;
                }
            };
        });
        return spreads;
    }
}
