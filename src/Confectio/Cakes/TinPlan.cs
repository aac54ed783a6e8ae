using Confectio.Sources;

namespace Confectio.Cakes;

/// <summary>The plan of a tin or a cake in a row of a table, by its shape and its sides in inches.</summary>
internal static class TinPlan
{
    private enum Shape
    {
        Round,
        Square,
        Rectangle,
    }

    public static PlanShape Read(RowFields fields)
    {
        double width = Centimetres(fields, "width_inches")!.Value;
        return fields.Enum<Shape>("shape") switch
        {
            Shape.Round => PlanShape.Round(width),
            Shape.Square => PlanShape.Square(width),
            _ => PlanShape.Rectangle(width, Centimetres(fields, "length_inches")!.Value),
        };
    }

    public static double? Centimetres(RowFields fields, string column) =>
        fields.Number(column, 0.1, 100) is double inches ? CakeLength.FromInches(inches).Centimetres : null;
}
