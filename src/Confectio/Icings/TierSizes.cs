using System.Globalization;
using Confectio.Cakes;

namespace Confectio.Icings;

/// <summary>The sizes of the shape of a tier as they stand in an order.</summary>
internal sealed class TierSizes(OrderDocument.TierDocument tier, DocumentFields fields) : IShapeSizes
{
    private readonly OrderDocument.TierDocument _tier = tier;
    private readonly DocumentFields _fields = fields;

    private readonly (string Name, object? Value)[] _sizes =
    [
        ("height", tier.Height), ("diameter", tier.Diameter), ("side", tier.Side), ("width", tier.Width), ("length", tier.Length),
        ("cornerRadius", tier.CornerRadius), ("sides", tier.Sides), ("acrossFlats", tier.AcrossFlats),
            ("acrossCorners", tier.AcrossCorners),
        ("lobes", tier.Lobes), ("lobeWidth", tier.LobeWidth), ("bottomDiameter", tier.BottomDiameter), ("topDiameter", tier.TopDiameter),
        ("bottomSide", tier.BottomSide), ("topSide", tier.TopSide), ("flatDiameter", tier.FlatDiameter), ("ballRadius", tier.BallRadius),
        ("outerDiameter", tier.OuterDiameter), ("innerDiameter", tier.InnerDiameter), ("outline", tier.Outline),
    ];

    /// <summary>Notes every size that a shape does not have.</summary>
    public void RefuseOthersThan(ShapeWord shape)
    {
        foreach ((string name, object? value) in _sizes)
        {
            if (value is not null && !shape.Sizes.Contains(name))
                _fields.Wrong(name, $"a {shape.Word} has no such size; it has {string.Join(", ", shape.Sizes)}");
        }
    }

    public bool Has(string name) => Stated(name) is not null;

    public CakeLength Length(string name) => _fields.Length((string?)Stated(name), name);

    public CakeLength Length(string name, CakeLength missing) => _fields.Length((string?)Stated(name), name, missing);

    public int Count(string name, int instead) => _fields.Number((int?)Stated(name), name, instead);

    public IReadOnlyList<PlanPoint> Outline(string name)
    {
        OrderDocument.OutlineDocument? outline = (OrderDocument.OutlineDocument?)Stated(name);
        if (outline?.Points is null)
            _fields.Wrong($"{name} with its points is missing");
        DocumentFields fields = _fields.In(name);
        double unit = outline?.Unit switch { "cm" => 1, "mm" => 0.1, "in" => CakeLength.CentimetresPerInch, _ => 0 };
        if (unit == 0 && outline is not null)
            fields.Wrong("unit", "cm, mm or in is expected");
        List<PlanPoint> points = [];
        if (outline?.Points?.Count > PlanShape.MostPoints + 1)
        {
            fields.Wrong("points", string.Create(CultureInfo.InvariantCulture,
                $"there are {outline.Points.Count}; at most {PlanShape.MostPoints} are expected"));
            outline = null;
        }
        for (int i = 0; i < outline?.Points?.Count; i++)
        {
            if (outline.Points[i] is [double x, double y])
                points.Add(new PlanPoint(unit * x, unit * y));
            else
                fields.In("points", i).Wrong("two numbers are expected, to the right and to the back");
        }
        return points;
    }

    public void Wrong(string message) => _fields.Wrong(message);

    private object? Stated(string name) => Array.Find(_sizes, size => size.Name == name).Value;
}
