using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>The shape of a tier, and its sizes, as they stand in JSON.</summary>
internal sealed class ShapeFields(JsonFields fields) : IShapeSizes
{
    private static readonly string[] s_sizes = [.. ShapeWord.All.SelectMany(known => known.Sizes).Distinct()];

    /// <summary>The body of a tier, or the mistakes that keep it from being made.</summary>
    public static CakeBody? Body(JsonFields fields)
    {
        string? word = fields.Text("shape");
        ShapeWord? shape = ShapeWord.Find(word);
        if (!fields.Has("shape"))
            fields.Missing("shape", Expected());
        else if (word is not null && shape is null)
            fields.Wrong("shape", $"{Excerpt.Of(word)} is no shape; {Expected()}", ProblemCodes.UnknownName);
        // Sizes of other shapes are known members, and of no use here.
        foreach (string size in s_sizes)
        {
            if (fields.Has(size) && shape is not null && !shape.Sizes.Contains(size))
                fields.Wrong(size, $"a {shape.Word} has no such size; it has {string.Join(", ", shape.Sizes)}");
        }
        if (shape is null)
            return null;
        bool wasGood = fields.IsGood;
        try
        {
            return shape.Make(new ShapeFields(fields));
        }
        catch (ArgumentException e)
        {
            // After a mistake the sizes are made up, and what is refused of them says nothing.
            if (wasGood && fields.IsGood)
                fields.Refused(e);
            return null;
        }
    }

    /// <summary>How many corners or lobes the plan is to have, before it is made.</summary>
    public static long Corners(JsonFields fields) => Math.Max(Math.Max(1, fields.Whole("sides") ?? 0), Math.Max(fields.Whole("lobes") ?? 0,
        fields.Object("outline", outline => new Counted(outline.Count("points")))?.Count ?? 0));

    public bool Has(string name) => fields.Has(name);

    public CakeLength Length(string name) => fields.Length(name);

    public CakeLength Length(string name, CakeLength missing) => fields.Length(name, missing);

    public int Count(string name, int instead) => fields.NeededWhole(name) ?? instead;

    public IReadOnlyList<PlanPoint> Outline(string name)
    {
        if (!fields.Has(name))
            fields.Missing($"{name} with its points");
        return fields.Object(name, ReadOutline) ?? [];
    }

    public void Wrong(string message) => fields.Wrong(null, message);

    private static List<PlanPoint> ReadOutline(JsonFields outline)
    {
        double unit = outline.Text("unit") switch { "cm" => 1, "mm" => 0.1, "in" => CakeLength.CentimetresPerInch, _ => 0 };
        if (unit == 0 && outline.IsGood)
            outline.Wrong("unit", "cm, mm or in is expected");
        outline.Need("points");
        // The first point may stand once more at the end.
        return [.. outline.Pairs("points", PlanShape.MaximumPoints, 1, "two numbers are expected, to the right and to the back")
            .Select(point => new PlanPoint(unit * point.First, unit * point.Second))];
    }

    private static string Expected() => $"one of these is expected: {string.Join(", ", ShapeWord.All.Select(known => known.Word))}";

    private sealed record Counted(int Count);
}
