using System.Diagnostics.CodeAnalysis;
using Confectio.Ingredients;
using Confectio.Phrases;

namespace Confectio.Vetting;

/// <summary>Puts the rows of one ingredient in one stated packing together.</summary>
internal static class RowGrouping
{
    public static List<RowGroup> Assign(IReadOnlyList<TableRow> rows)
    {
        List<RowGroup> groups = [];
        Dictionary<(object Who, Packing? Packing, string? Piece, RoughMeasure? Rough), int> known = new(new NameComparer());
        int masses = -1;
        for (int i = 0; i < rows.Count; i++)
        {
            TableRow row = rows[i];
            if (row.Amount.IsMass)
            {
                // Masses share nothing that could deviate, so one group serves them all.
                if (masses < 0)
                {
                    masses = groups.Count;
                    groups.Add(new RowGroup(GroupKind.Mass));
                }
                row.Group = masses;
            }
            else
            {
                (object, Packing?, string?, RoughMeasure?) key = (row.Matched ?? (object)row.Ingredient, row.Packing,
                    row.Amount.Part(0).Piece, row.Rough);
                if (!known.TryGetValue(key, out int group))
                {
                    group = groups.Count;
                    known.Add(key, group);
                    groups.Add(New(row));
                }
                row.Group = group;
            }
            groups[row.Group].Rows.Add(i);
        }
        return groups;
    }

    /// <summary>An ingredient is itself; a name is the same in capitals.</summary>
    private sealed class NameComparer : IEqualityComparer<(object Who, Packing? Packing, string? Piece, RoughMeasure? Rough)>
    {
        public bool Equals((object Who, Packing? Packing, string? Piece, RoughMeasure? Rough) x, (object Who, Packing? Packing,
            string? Piece, RoughMeasure? Rough) y) => x.Packing == y.Packing && x.Piece == y.Piece && x.Rough == y.Rough
            && (x.Who is string name ? y.Who is string other && name.Equals(other, StringComparison.OrdinalIgnoreCase)
                : x.Who.Equals(y.Who));

        public int GetHashCode((object Who, Packing? Packing, string? Piece, RoughMeasure? Rough) key) =>
            HashCode.Combine(key.Who is string name ? name.GetHashCode(StringComparison.OrdinalIgnoreCase) : key.Who.GetHashCode(),
                key.Packing, key.Piece, key.Rough);
    }

    private static RowGroup New(TableRow row)
    {
        if (row.Matched is Ingredient ingredient)
        {
            if (row.Amount.IsPiece && row.Amount.PartCount == 1
                && ingredient.TryGetPiece(row.Amount.Part(0).Piece!, out PieceWeight? weight))
                return new RowGroup(GroupKind.Piece, Math.Log(weight.Grams.Likely),
                    Math.Max(0.01, Math.Log(weight.Grams.High / weight.Grams.Low) / 4));
            if (row.Amount.IsVolume && TryGetDensity(ingredient, row.Packing, out BulkDensity? density))
            {
                if (row.Rough is not null)
                {
                    // Nobody can say what a heaped spoon or a pinch holds: it is judged wide, and tells nothing of the others.
                    (double low, double likely, double high) = FactorsOf(row);
                    double spread = Math.Log(high / low) / 4;
                    return new RowGroup(GroupKind.Density, density.LogLikely + Math.Log(likely),
                        Math.Sqrt(density.LogUncertainty * density.LogUncertainty + spread * spread), @class: ingredient.Class);
                }
                bool pours = ingredient.Class is IngredientClass.Liquid or IngredientClass.Syrup && density.Packing == Packing.Levelled;
                return new RowGroup(GroupKind.Density, density.LogLikely,
                    Math.Max(density.LogUncertainty, LeastUncertainty(ingredient.Class, density.Packing)),
                    isPoured: pours || (ingredient.Class == IngredientClass.Crystal && density.Packing == Packing.Levelled)
                        || (density.Packing == Packing.Melted && density.TakenFrom is null), @class: ingredient.Class);
            }
        }
        return new RowGroup(GroupKind.Unknown);
    }

    /// <summary>
    /// By what a level measure is multiplied: 1.5 to 2.5, likely 2, for a heaped one. The amount of a pinch is a range already, whose
    /// middle is likely.
    /// </summary>
    public static (double Low, double Likely, double High) FactorsOf(TableRow row) => row.Rough is not RoughMeasure rough ? (1, 1, 1)
        : rough.IsFill ? (rough.Low, rough.Likely, rough.High) : (rough.Low / rough.Likely, 1, rough.High / rough.Likely);

    /// <summary>
    /// From one kitchen to the next foams, cut nuts and scooped powders differ by more than the sources of one density do: how far it was
    /// whipped, how finely it was cut, how deep the scoop went. Estimates.
    /// </summary>
    private static double LeastUncertainty(IngredientClass @class, Packing packing) => @class switch
    {
        IngredientClass.Foam => 0.15,
        _ when packing == Packing.Whipped => 0.15,
        IngredientClass.Pieces => 0.1,
        IngredientClass.Powder when packing is Packing.Scooped or Packing.Packed => 0.08,
        _ => 0,
    };

    // A packing that is stated and was never weighed is judged by the nearest one; the usual packing is not taken from another.
    private static bool TryGetDensity(Ingredient ingredient, Packing? stated, [NotNullWhen(true)] out BulkDensity? density) =>
        stated is Packing packing
        ? ingredient.TryGetNearestDensity(packing, out density)
        : ingredient.TryGetDensity(ingredient.DefaultPacking, out density);
}
