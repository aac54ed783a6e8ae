using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Layouts;

namespace Confectio.Vetting;

/// <summary>Makes the rows to be judged of the rows that were read, each with the food that its name means.</summary>
internal static class TableRows
{
    public static List<TableRow> Of(TableText table, IngredientTable ingredients)
    {
        Dictionary<(string, string?), NameMatch> names = [];
        List<TableRow> rows = new(table.Rows.Count);
        foreach (TableEntry entry in table.Rows)
        {
            if (!names.TryGetValue((entry.Name, entry.Section), out NameMatch? match))
                names.Add((entry.Name, entry.Section), match = Match(entry, ingredients));
            rows.Add(Of(entry, match));
        }
        return rows;
    }

    // "Granulated" below "Sugars" is granulated sugar, where the name alone is none and both together are one.
    private static NameMatch Match(TableEntry entry, IngredientTable ingredients)
    {
        NameMatch match = ingredients.MatchName(entry.Name);
        if (match.Ingredient is not null || entry.Section is not string section)
            return match;
        foreach (string heading in (ReadOnlySpan<string>)[section, section.TrimEnd('s')])
        {
            if (ingredients.MatchName($"{entry.Name} {heading}") is { Ingredient: not null } both)
                return both;
        }
        return match;
    }

    // Grams are judged where there are any; ounces, pounds and what stands in a bracket are held against them.
    private static TableRow Of(TableEntry entry, NameMatch match)
    {
        int main = Array.FindIndex(entry.Figures, figure => figure.Unit is FigureUnit.Gram or FigureUnit.Kilogram);
        main = main < 0 ? Array.FindIndex(entry.Figures, figure => figure.Unit != FigureUnit.Millilitre) : main;
        PrintedMass? second = null, third = null;
        for (int i = 0; i < entry.Figures.Length; i++)
        {
            if (i == main || entry.Figures[i].Unit == FigureUnit.Millilitre)
                continue;
            if (second is null)
                second = PrintedMass.Of(entry.Figures[i]);
            else
                third ??= PrintedMass.Of(entry.Figures[i]);
        }
        return new TableRow(entry, match, PrintedMass.Of(entry.Figures[main]),
            entry.Figures[main].Column) { Others = second is PrintedMass other ? new OtherMasses(other, third) : null };
    }
}
