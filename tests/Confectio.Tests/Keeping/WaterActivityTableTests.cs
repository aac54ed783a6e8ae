using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Keeping;
using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Keeping;

/// <summary>
/// The table of the guide that holds water activities of ordinary formulas beside published ranges: what stands under "here" is what the models say, and the last column says
/// whether that agrees. What is published is written there with its source and kind, and is no output of ours.
/// </summary>
public sealed partial class WaterActivityTableTests
{
    // Where the models stand outside of what is published, and why: a documented disagreement. One that is new fails, and so does one that is gone.
    private static readonly Dictionary<string, string> s_disagree = new()
    {
        ["the same, grained"] = "the published range is of caramel that has not grained; grain raises the activity",
        ["cookie-dough frosting"] = "0.02 above a single reading: starch, protein and invert of brown sugar are not counted",
        ["the same with half-and-half"] = "0.03 above a single reading, for the same reason",
        ["ganache 1:1"] = "a recalled range; a teaching page of the trade has such a ganache above 0.90, as the models do",
        ["ganache of a laboratory"] = "one sample that reads exactly the legal threshold; no model is near",
        ["Swiss meringue buttercream of a laboratory"] = "one sample that reads exactly the legal threshold; half of its water would have to be gone",
        ["dark chocolate"] = "0.7 % water, which cocoa and milk solids bind: no syrup, and a reading that errs high",
    };

    [GeneratedRegex(@"\d\.\d+")]
    private static partial Regex Figures();

    public static TheoryData<string, string, string, string, string, string> Rows
    {
        get
        {
            TheoryData<string, string, string, string, string, string> rows = [];
            string page = File.ReadAllText(Guide());
            string table = page[page.IndexOf("| food | made of |", StringComparison.Ordinal)..];
            foreach (string line in table.Split('\n').Skip(2).TakeWhile(line => line.StartsWith('|')))
            {
                string[] cells = [.. line.Trim('|', '\r', ' ').Split('|').Select(cell => cell.Trim())];
                rows.Add(cells[0], cells[1], cells[2], cells[3], cells[4], cells[5]);
            }
            return rows;
        }
    }

    [Fact]
    public void ThereAreAtLeastTwelveIcingsAndConfections() => Assert.InRange(Rows.Count, 20, 100);

    [Theory]
    [MemberData(nameof(Rows))]
    public void WhatStandsThereIsWhatTheModelsSay(string food, string made, string published, string source, string here, string verdict)
    {
        Assert.Matches(@"from memory|\((measured|compiled|common practice)\)$", source);
        double boiledOff = 0;
        List<string> lines = [];
        foreach (string part in made.Split("; "))
        {
            if (part.EndsWith(" g boils off", StringComparison.Ordinal))
                boiledOff = double.Parse(part.Split(' ')[0], CultureInfo.InvariantCulture);
            else
                lines.Add(part);
        }
        Formula formula = Formula.ParseText(food, string.Join('\n', lines), IngredientTable.BuiltIn, MeasuringSystem.Metric);
        KeepingAnswer answer = KeepingAnswer.Of(Formula.Of(food, formula.Lines, boiledOff));
        bool isClear = here.EndsWith("not grained", StringComparison.Ordinal);
        Spread activity = (isClear ? answer.WaterActivityUngrained : answer.WaterActivity)!.Value;
        Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"{activity.Likely:0.00} ({activity.Low:0.00} to {activity.High:0.00}), {(isClear ? "not grained" : "as it stands")}"), here);
        double[] ends = [.. Figures().Matches(published).Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture))];
        double low = published.StartsWith("below", StringComparison.Ordinal) || published.StartsWith("at most", StringComparison.Ordinal) ? 0 : ends[0],
            high = published.StartsWith("above", StringComparison.Ordinal) ? 1 : ends[^1];
        Assert.Equal(activity.Likely >= low && activity.Likely <= high ? "within" : activity.High >= low && activity.Low <= high ? "the ranges meet"
            : activity.Low > high ? "higher here" : "lower here", verdict);
        Assert.Equal(s_disagree.ContainsKey(food), verdict is "higher here" or "lower here");
        // Where they part the models err to the cautious side.
        Assert.NotEqual("lower here", verdict);
    }

    private static string Guide([CallerFilePath] string source = "")
    {
        foreach (string? start in new[] { AppContext.BaseDirectory, Path.GetDirectoryName(source), Environment.CurrentDirectory })
        {
            for (DirectoryInfo? at = Directory.Exists(start) ? new DirectoryInfo(start) : null; at is not null; at = at.Parent)
            {
                string page = Path.Combine(at.FullName, "docs", "guide", "keeping.md");
                if (File.Exists(page))
                    return page;
            }
        }
        throw new FileNotFoundException("docs/guide/keeping.md was not found above the tests");
    }
}
