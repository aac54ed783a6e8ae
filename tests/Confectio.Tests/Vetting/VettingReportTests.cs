using System.Text.Json;
using Confectio.Cards;
using Confectio.Ingredients;
using Confectio.Tests.Cards;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>Reports in the forms of others: SARIF 2.1.0 (OASIS standard, the sections named beside each check), lines of builds, workflow commands.</summary>
public sealed class VettingReportTests
{
    private static CardVerdict Wrong => CardVetter.Vet(PrintedCardTests.Read("Cake\n1 cup (227 g) honey\n1 cup (200 g) sugar\n1 cup (237 g) water\n1 cup (125 g) all-purpose flour\n\nMethod\n1. Bake at 177°F (350°C).\n"));

    private static TableVerdict Table => ConversionTableVetter.Vet(new StringReader("ingredient,amount,grams\nwater,1 cup,237\nhoney,1 cup,227\ngranulated sugar,1 cup,200\nall-purpose flour,1 cup,125\nmystery,1 cup,\n"), IngredientTable.BuiltIn);

    private static TemperatureVerdict Temperatures => TemperatureTableVetter.Vet(new StringReader("what,fahrenheit,celsius\noven,350,194\noven,350,177\n"), IngredientTable.BuiltIn);

    [Fact]
    public void TheLogHasWhatTheStandardRequires()
    {
        VettingReport report = VettingReport.Of([VettedFile.Of("cards/a b#1.txt", Wrong), VettedFile.Of("sheet.csv", Table), VettedFile.Of("oven.csv", Temperatures)]);
        using JsonDocument log = JsonDocument.Parse(report.ToSarif());
        JsonElement root = log.RootElement;
        // 3.13.2: version is required and is "2.1.0"; 3.13.4: runs is required.
        Assert.Equal("2.1.0", root.GetProperty("version").GetString());
        JsonElement run = Assert.Single(root.GetProperty("runs").EnumerateArray());
        // 3.14.6, 3.18.2, 3.19.8: a run has a tool, a tool a driver, a driver a name.
        JsonElement driver = run.GetProperty("tool").GetProperty("driver");
        Assert.Equal("Confectio", driver.GetProperty("name").GetString());
        // 3.14.17: one of two words.
        Assert.Equal("utf16CodeUnits", run.GetProperty("columnKind").GetString());
        JsonElement[] rules = [.. driver.GetProperty("rules").EnumerateArray()];
        // 3.49.3: every rule has an id; 3.19.23: ids are unique; 3.49.7: a name is an identifier; 3.12: a message string has text.
        Assert.Equal(rules.Length, rules.Select(rule => rule.GetProperty("id").GetString()).Distinct().Count());
        Assert.All(rules, rule => Assert.All((string[])["shortDescription", "fullDescription", "help"], member => Assert.NotEqual("", rule.GetProperty(member).GetProperty("text").GetString())));
        JsonElement[] results = [.. run.GetProperty("results").EnumerateArray()];
        Assert.Equal(["card/measures", "card/temperature", "table/row", "unread", "table/temperature"], results.Select(result => result.GetProperty("ruleId").GetString()));
        JsonElement[] artifacts = [.. run.GetProperty("artifacts").EnumerateArray()];
        Assert.All(results, result =>
        {
            // 3.27.5, 3.27.6: ruleIndex is the place of the rule in the driver's rules.
            Assert.Equal(result.GetProperty("ruleId").GetString(), rules[result.GetProperty("ruleIndex").GetInt32()].GetProperty("id").GetString());
            // 3.27.10: none, note, warning or error.
            Assert.Contains(result.GetProperty("level").GetString(), (string[])["note", "warning", "error"]);
            // 3.27.11: a message is required.
            Assert.NotEqual("", result.GetProperty("message").GetProperty("text").GetString());
            JsonElement physical = Assert.Single(result.GetProperty("locations").EnumerateArray()).GetProperty("physicalLocation");
            JsonElement location = physical.GetProperty("artifactLocation");
            // 3.4.3: a URI reference after RFC 3986; 3.4.5: the index of the artifact.
            Assert.True(Uri.IsWellFormedUriString(location.GetProperty("uri").GetString(), UriKind.Relative));
            Assert.Equal(location.GetProperty("uri").GetString(), artifacts[location.GetProperty("index").GetInt32()].GetProperty("location").GetProperty("uri").GetString());
            // 3.30.5, 3.30.6: lines and columns count from 1; 3.30.8: an end column is behind the start.
            JsonElement region = physical.GetProperty("region");
            Assert.True(region.GetProperty("startLine").GetInt32() >= 1 && region.GetProperty("startColumn").GetInt32() >= 1);
            if (region.TryGetProperty("endColumn", out JsonElement end))
                Assert.True(end.GetInt32() > region.GetProperty("startColumn").GetInt32());
        });
        Assert.Equal("cards/a%20b%231.txt", artifacts[0].GetProperty("location").GetProperty("uri").GetString());
        JsonElement first = results[0].GetProperty("locations")[0].GetProperty("physicalLocation").GetProperty("region");
        Assert.Equal((2, 8, 13), (first.GetProperty("startLine").GetInt32(), first.GetProperty("startColumn").GetInt32(), first.GetProperty("endColumn").GetInt32()));
        Assert.True(report.HasMistakes);
    }

    // RFC 3986, 3.1 to 3.3 and 2.1; file URIs after RFC 8089.
    [Theory]
    [InlineData("cards/x.txt", "cards/x.txt")]
    [InlineData("cards\\x.txt", "cards/x.txt")]
    [InlineData("a:b,c%d.txt", "a%3Ab%2Cc%25d.txt")]
    [InlineData("crème.txt", "cr%C3%A8me.txt")]
    [InlineData("/home/a b/x.txt", "file:///home/a%20b/x.txt")]
    [InlineData("C:\\cards\\x y.txt", "file:///C:/cards/x%20y.txt")]
    public void APathBecomesAUri(string path, string uri)
    {
        using JsonDocument log = JsonDocument.Parse(VettingReport.Of([VettedFile.Of(path, Wrong)]).ToSarif());
        Assert.Equal(uri, log.RootElement.GetProperty("runs")[0].GetProperty("artifacts")[0].GetProperty("location").GetProperty("uri").GetString());
    }

    // The form that builds read: origin(line,column): category code: text, in one line.
    [Fact]
    public void ALineOfABuildHasItsPlaceFirst()
    {
        string[] lines = VettingReport.Of([VettedFile.Of("card.txt", Wrong), VettedFile.Of("sheet.csv", Table)]).ToBuildLines().TrimEnd('\n').Split('\n');
        Assert.Equal(4, lines.Length);
        Assert.StartsWith("card.txt(2,8): error card-measures: ", lines[0], StringComparison.Ordinal);
        Assert.All(lines, line => Assert.Matches(@"^[^()]+\(\d+,\d+\): (error|warning|info) [a-z-]+: \S", line));
    }

    // Properties escape % CR LF : and comma, data % CR LF.
    [Fact]
    public void AWorkflowCommandIsEscaped()
    {
        string command = VettingReport.Of([VettedFile.Of("a,b:c%d\r\n::error::x.txt", Wrong)]).ToWorkflowCommands().Split('\n')[0];
        Assert.StartsWith("::error file=a%2Cb%3Ac%25d\uFFFD\uFFFD%3A%3Aerror%3A%3Ax.txt,line=2,col=8,endColumn=13,title=card/measures::", command, StringComparison.Ordinal);
    }

    [Fact]
    public void NothingOnACardWritesALineOfALog()
    {
        CardVerdict verdict = CardVetter.Vet(PrintedCardTests.Read("Cake\n250 g butter\n\nContains: soy\u001b[31m \u202E nothing\n"));
        VettingReport report = VettingReport.Of([VettedFile.Of("x\u202E\n.txt", verdict)]);
        Assert.All((string[])[report.ToBuildLines(), report.ToWorkflowCommands(), report.ToSarif()], text =>
            Assert.DoesNotContain(text, c => c is '\u001b' or '\u202E' or '\r'));
        Assert.Single(report.ToBuildLines().TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public void AFileThatNobodyReadIsNotRight()
    {
        var reading = PrintedCard.Read("nothing here", IngredientTable.BuiltIn);
        VettedFile file = VettedFile.OfUnread("x.txt", reading.Problems);
        Assert.Equal(reading.Problems.Count, file.Mistakes);
        Assert.True(VettingReport.Of([file]).HasMistakes);
        Assert.False(VettingReport.Of([]).HasMistakes);
        Assert.Equal("path", Assert.Throws<ArgumentException>(() => VettedFile.Of(" ", Wrong)).ParamName);
    }
}
