using Confectio.Measures;

namespace Confectio.Vetting;

/// <summary>
/// What the units of a table say of its measuring system before anything is weighed: nobody in a decilitre kitchen writes pints.
/// </summary>
/// <remarks>All shares are judgements: how often a table of that kitchen has the unit at least once; of ounces
/// alone, how often it has no gram at all: where cups are metric, so are the scales.</remarks>
internal static class SystemClues
{
    private static readonly string[] s_keys = ["us-customary", "us-labelling", "metric", "australian", "imperial", "japanese", "decilitre"];

    private static readonly double[]
        s_priors = [0.34, 0.24, 0.17, 0.08, 0.06, 0.07, 0.04],
        s_cups = [1, 1, 1, 1, 1, 1, 0.001],
        s_decilitres = [1e-6, 1e-6, 0.01, 0.003, 1e-6, 0.01, 0.95],
        s_pints = [0.15, 0.01, 0.02, 0.01, 0.4, 0.002, 0.002],
        s_fluidOunces = [0.15, 0.15, 0.03, 0.03, 0.3, 0.002, 0.002],
        s_dessertspoons = [0.002, 0.001, 0.05, 0.05, 0.15, 0.001, 0.002],
        s_sticks = [0.2, 0.1, 0.005, 0.005, 0.005, 0.005, 0.002],
        s_ounces = [0.3, 0.1, 0.05, 0.05, 0.3, 0.005, 0.002],
        s_onlyOunces = [0.15, 0.03, 0.004, 0.004, 0.15, 0.0005, 0.0002];

    /// <summary>From so many rows on it is no accident that none is in grams.</summary>
    private const int FewestOnlyOunces = 3;

    /// <summary>The prior share of every system, given the units that occur; they add up to 1.</summary>
    public static double[] Priors(IReadOnlyList<TableRow> rows, IReadOnlyList<MeasuringSystem> systems)
    {
        bool cups = false, decilitres = false, pints = false, fluidOunces = false, dessertspoons = false, sticks = false, ounces = false, onlyOunces = rows.Count >= FewestOnlyOunces;
        foreach (TableRow row in rows)
        {
            ounces |= row.Printed.IsOunces;
            onlyOunces &= row.Printed.IsOunces;
            for (int i = 0; i < row.Amount.PartCount; i++)
            {
                AmountPart part = row.Amount.Part(i);
                cups |= part.Unit == KitchenUnit.Cup;
                // A decilitre is read as a hundred millilitres.
                decilitres |= part.Unit == KitchenUnit.Millilitre && part.Low.Denominator == 1 && part.Low.Numerator % 100 == 0
                    && part.Low.Numerator is > 0 and <= 500;
                pints |= part.Unit is KitchenUnit.Pint or KitchenUnit.Quart or KitchenUnit.Gallon;
                fluidOunces |= part.Unit == KitchenUnit.FluidOunce;
                dessertspoons |= part.Unit == KitchenUnit.Dessertspoon;
                sticks |= part.Piece == "stick";
                ounces |= part.Unit is KitchenUnit.Ounce or KitchenUnit.Pound;
            }
        }
        double[] priors = new double[systems.Count];
        double sum = 0;
        for (int k = 0; k < priors.Length; k++)
        {
            int key = Array.IndexOf(s_keys, systems[k].Key);
            priors[k] = s_priors[key] * (cups ? s_cups[key] : 1) * (decilitres ? s_decilitres[key] : 1) * (pints ? s_pints[key]
                : 1) * (fluidOunces ? s_fluidOunces[key] : 1)
                * (dessertspoons ? s_dessertspoons[key] : 1) * (sticks ? s_sticks[key] : 1) * (onlyOunces ? s_onlyOunces[key] : ounces ? s_ounces[key] : 1);
            sum += priors[k];
        }
        return Array.ConvertAll(priors, prior => prior / sum);
    }

    /// <summary>
    /// Whether the rows can tell 236.6 from 240 mL, which is 1.4 %: at least two of a liquid whose density is known to less than that, as
    /// printed.
    /// </summary>
    public static bool TellsUsCups(IReadOnlyList<TableRow> rows, IReadOnlyList<RowGroup> groups, RoundingGrid grid)
    {
        int telling = 0;
        foreach (TableRow row in rows)
        {
            RowGroup group = groups[row.Group];
            if (group.Kind != GroupKind.Density || group.Grid != NuisanceGrid.Poured || group.Uncertainty > 0.0135 || !row.Amount.IsVolume
                || row.Amount.Part(0).Unit is KitchenUnit.Millilitre or KitchenUnit.Litre)
                continue;
            (double low, double high) = grid.LogInterval(row);
            if (high - low <= 0.0135 && ++telling >= 2)
                return true;
        }
        return false;
    }
}
