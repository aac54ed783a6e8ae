using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>The plan of a tin or a cake in a row of a table, by its shape and its sides in inches.</summary>
internal static class TinPlan
{
    private static readonly Dictionary<string, Func<CakeLength, CakeLength?, PlanShape>> s_shapes = new(StringComparer.OrdinalIgnoreCase)
    {
        ["round"] = (width, _) => PlanShape.Round(width),
        ["square"] = (width, _) => PlanShape.Square(width),
        ["rectangle"] = (width, length) => PlanShape.Rectangle(width, length!.Value),
    };

    public static PlanShape Read(RowFields fields)
    {
        CakeLength width = Length(fields, "width_inches")!.Value;
        string word = fields.Required("shape");
        if (!s_shapes.TryGetValue(word, out Func<CakeLength, CakeLength?, PlanShape>? make))
        {
            fields.Problem("shape", $"{Excerpt.Of(word)} is not one of: {string.Join(", ", s_shapes.Keys)}");
            make = s_shapes["round"];
        }
        return make(width, Length(fields, "length_inches"));
    }

    public static CakeLength? Length(RowFields fields, string column) =>
        fields.Number(column, 0.1, 100) is double inches ? CakeLength.FromInches(inches) : null;
}
