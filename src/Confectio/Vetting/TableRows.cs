using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Layouts;

namespace Confectio.Vetting;

/// <summary>Makes the rows to be judged of the rows that were read: each weight that a row prints is one, with the food that its name means.</summary>
internal static class TableRows
{
    public static List<TableRow> Of(TableText table, IngredientTable ingredients)
    {
        Dictionary<string, NameMatch> names = new(StringComparer.Ordinal);
        List<TableRow> rows = new(table.Rows.Count);
        foreach (TableEntry entry in table.Rows)
        {
            if (!names.TryGetValue(entry.Name, out NameMatch? match))
                names.Add(entry.Name, match = ingredients.MatchName(entry.Name));
            int first = rows.Count;
            foreach (TableFigure figure in entry.Figures)
            {
                if (figure.Unit != FigureUnit.Millilitre)
                    rows.Add(new TableRow(entry, match, PrintedMass.Of(figure), figure.Column, first));
            }
        }
        return rows;
    }
}
