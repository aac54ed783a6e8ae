using System.Globalization;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>What the trade says a tin of a nominal size holds, beside what the geometry of that size says.</summary>
internal sealed class PanFigure
{
    private static readonly PanFigure[] s_all = ReadBuiltIn();

    private PanFigure(CakePan pan, int pieces, double printedCups, Provenance provenance)
    {
        Pan = pan;
        Pieces = pieces;
        PrintedCups = printedCups;
        Provenance = provenance;
    }

    /// <summary>The tins.</summary>
    public static IReadOnlyList<PanFigure> All => s_all;

    /// <summary>The tin by its nominal size; one cup of a muffin tin.</summary>
    public CakePan Pan { get; }

    /// <summary>How many cups a muffin tin has; else 1.</summary>
    public int Pieces { get; }

    /// <summary>What is printed, US cups, of all pieces.</summary>
    public double PrintedCups { get; }

    /// <summary>What is printed, mL, of all pieces.</summary>
    public double PrintedMillilitres => PrintedCups * MeasuringSystem.UsCustomary.MillilitresPer(KitchenUnit.Cup);

    /// <summary>What the geometry says, mL, of all pieces.</summary>
    public double GeometricMillilitres => Pieces * Pan.BrimMillilitres;

    /// <summary>Printed over geometric. Worked number: 9 by 13 in: 0.86.</summary>
    public double PrintedOverGeometric => PrintedMillilitres / GeometricMillilitres;

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>One line, such as <c>9 in round: 8 cups printed, 2085 mL by geometry</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture,
        $"{Pan.Name}: {PrintedCups:0.##} cups printed, {GeometricMillilitres:0} mL by geometry");

    private static PanFigure[] ReadBuiltIn()
    {
        List<PanFigure> figures = [];
        EmbeddedTable.Read("pans.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            CakeBody inside = CakeBody.Prism(TinPlan.Read(fields), TinPlan.Length(fields, "depth_inches")!.Value);
            figures.Add(new PanFigure(CakePan.Of(inside, fields.Required("pan")), (int)fields.RequiredNumber("pieces", 1, 100),
                fields.RequiredNumber("printed_cups", 0.1, 1000),
                fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"))));
        });
        return [.. figures];
    }
}
