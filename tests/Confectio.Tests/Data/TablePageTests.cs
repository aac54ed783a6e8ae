using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Data;

/// <summary>
/// The pages in docs/tables are read on a telephone in the kitchen, say what the data say, and lead from every name to its food. That they are
/// what make.cs makes of the data, to the letter, is checked where it is run (.ci/run).
/// </summary>
public sealed partial class TablePageTests
{
    /// <summary>
    /// A telephone shows 360 pixels, of which the page's margins and the cells' padding take some 90; at 16 px a letter of a plain typeface
    /// is half as wide as high on average. A table is as narrow as the longest words of its columns.
    /// </summary>
    private const int WidestLetters = (360 - 90) / 8;

    private static readonly DirectoryInfo s_tables = new(Path.Combine(Root().FullName, "docs", "tables"));

    public static TheoryData<string> Pages => [.. Directory.EnumerateFiles(s_tables.FullName, "*.md", SearchOption.AllDirectories)
        .Select(file => Path.GetRelativePath(s_tables.FullName, file).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Pages))]
    public void NoTableIsWiderThanATelephone(string page)
    {
        string[] lines = Read(page);
        for (int i = 0; i < lines.Length; i++)
        {
            if (!lines[i].StartsWith('|'))
                continue;
            int first = i;
            List<string[]> rows = [];
            for (; i < lines.Length && lines[i].StartsWith('|'); i++)
                rows.Add([.. Bar().Split(lines[i][1..^1]).Select(Shown)]);
            Assert.All(rows, row => Assert.Equal(rows[0].Length, row.Length));
            Assert.True(rows[0].Length <= 3, $"{page}, line {first + 1}: {rows[0].Length} columns");
            rows.RemoveAt(1);
            int width = Enumerable.Range(0, rows[0].Length).Sum(column => rows.Max(row => row[column].Split(' ').Max(word => word.Length)));
            Assert.True(width <= WidestLetters, $"{page}, line {first + 1}: {width} letters wide");
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void WhatIsOpenedIsClosedAndHasAHeading(string page)
    {
        string[] lines = Read(page);
        bool open = false;
        for (int i = 0; i < lines.Length; i++)
        {
            if (lines[i].StartsWith("<details>", StringComparison.Ordinal))
            {
                Assert.False(open);
                Assert.Matches("^<details><summary>[^<>`\\[]+</summary>$", lines[i]);
                // Without an empty line a list is not read as Markdown.
                Assert.Equal("", lines[i + 1]);
                open = true;
            }
            else if (lines[i] == "</details>")
            {
                Assert.True(open);
                Assert.Equal("", lines[i - 1]);
                open = false;
            }
        }
        Assert.False(open);
    }

    // The names of the table itself, and the three that are asked for first.
    [Fact]
    public void EveryNameLeadsToItsFood()
    {
        HashSet<string> index = [.. Read("ingredients.md")];
        foreach (Ingredient food in IngredientTable.BuiltIn.All)
        {
            string link = $"[{food.Name}](foods/{food.Id}.md)";
            Assert.Contains($"- **{link}**", index);
            foreach (IngredientName alias in food.Aliases)
            {
                Assert.True(index.Any(line => line.StartsWith("- " + alias.Text, StringComparison.OrdinalIgnoreCase)
                    && line.EndsWith(link, StringComparison.Ordinal) || line == $"- **{link}**" && alias.Text.Equals(food.Name,
                        StringComparison.OrdinalIgnoreCase)), $"{alias.Text} of {food.Id}");
            }
        }
        foreach (string name in (string[])["powdered sugar", "icing sugar", "confectioners' sugar"])
        {
            Assert.Contains(index, line => Regex.IsMatch(line, $@"^- (\*\*\[)?{name}[\] ]")
                && line.Contains("(foods/sugar-icing.md)", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void EveryFoodHasOnePage() => Assert.Equal(IngredientTable.BuiltIn.All.Select(food => $"foods/{food.Id}.md").Order(StringComparer.Ordinal),
        Pages.Select(page => page.Data).Where(page => page.StartsWith("foods/", StringComparison.Ordinal)));

    [Fact]
    public void APageSaysWhatTheDataSay()
    {
        foreach (Ingredient food in IngredientTable.BuiltIn.All)
        {
            string[] page = Read($"foods/{food.Id}.md");
            Assert.Equal("# " + food.Name, page[0]);
            foreach (Constituent constituent in Enum.GetValues<Constituent>().Where(constituent => food.Composition[constituent] > 0))
            {
                string percent = (100 * food.Composition[constituent]).ToString("0.##", CultureInfo.InvariantCulture);
                Assert.Contains(page, line => line.EndsWith($" | {percent} | {food.EvidenceOf(constituent).ToWord()} |", StringComparison.Ordinal));
            }
            foreach (BulkDensity density in food.Densities)
            {
                // The likely weight of a US cup, 236.5882365 mL, with the digits that stand there.
                string row = Assert.Single(page, line => line.StartsWith($"| {density.Packing.ToWord()} | ", StringComparison.Ordinal));
                string said = row.Split(" | ")[1].Split(' ')[0];
                int digits = said.Contains('.', StringComparison.Ordinal) ? said.Length - said.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
                Assert.Equal(density.GramsPerMillilitre.Likely * 236.5882365, double.Parse(said, CultureInfo.InvariantCulture), 0.5 * Math.Pow(10, -digits) + 1e-9);
            }
            Assert.Equal(food.Densities.Count == 0, page.Any(line => line.StartsWith("Nobody is known to have weighed it", StringComparison.Ordinal)));
            string has = Assert.Single(page, line => line.StartsWith("- Has: ", StringComparison.Ordinal));
            Assert.Equal(food.Allergens.Select(allergen => allergen.ToString().ToLowerInvariant()),
                has["- Has: ".Length..].Split(", ").Where(word => word != "none listed"));
            // What is silent is not cleared.
            Assert.Contains("What is not named here is not said to be absent. Read the label of your own.", page);
        }
    }

    private static string[] Read(string page) => File.ReadAllLines(Path.Combine(s_tables.FullName, page));

    /// <summary>What a reader sees of a cell: of a link its words, of an escaped mark the mark.</summary>
    private static string Shown(string cell) => Link().Replace(cell, "$1").Replace("\\", "", StringComparison.Ordinal)
        .Replace("`", "", StringComparison.Ordinal).Trim();

    [GeneratedRegex(@"(?<!\\)\|")]
    private static partial Regex Bar();

    [GeneratedRegex(@"\[([^\]]*)\]\([^)]*\)")]
    private static partial Regex Link();

    private static DirectoryInfo Root([CallerFilePath] string source = "")
    {
        foreach (string? start in new[] { AppContext.BaseDirectory, Path.GetDirectoryName(source), Environment.CurrentDirectory })
        {
            for (DirectoryInfo? at = Directory.Exists(start) ? new DirectoryInfo(start) : null; at is not null; at = at.Parent)
            {
                if (File.Exists(Path.Combine(at.FullName, "README.md")) && Directory.Exists(Path.Combine(at.FullName, "docs", "guide")))
                    return at;
            }
        }
        throw new InvalidOperationException("The project was not found.");
    }
}
