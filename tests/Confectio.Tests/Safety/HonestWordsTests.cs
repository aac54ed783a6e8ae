using System.Globalization;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Safety;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Safety;

/// <summary>
/// No text says of a mix that it is safe, pasteurised or sterile. Every sentence with such a word, in the assembly, its documentation, its tables, the guide and
/// the README, stands in a short list with the reason why it may. A new one fails until somebody has thought about it.
/// </summary>
public sealed partial class HonestWordsTests
{
    // What is bought under such a name: the maker heated it and says so on the label. Taken out of a sentence before it is looked at.
    [GeneratedRegex(@"(in-shell-|frozen[ -])?pasteuri[sz]ed[ -](liquid )?(egg[ -])?(white|yolk)s?|egg (white|yolk), frozen, (sugared, )?pasteuri[sz]ed|egg-(white|yolk)-pasteuri[sz]ed|egg white powder, pasteuri[sz]ed",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Bought();

    // "Unsafe" and "unpasteurised" too: a text that says what is not safe says that the rest is.
    [GeneratedRegex(@"\w*(safe|pasteuri[sz]|steril|germ-free|clears?\b.*salmonella|kills all)\w*", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Promise();

    // The end of a sentence, a cell of a table, a paragraph.
    [GeneratedRegex(@"(?<=[.!?])[)*_""]*\s+|\s*\|\s*|\s+·\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Between();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Blanks();

    // The sentence without the names of what is bought, and why it may stand.
    private static readonly Dictionary<string, string> s_allowed = new(StringComparer.Ordinal)
    {
        ["Nothing here replaces local food-safety codes or licensed practice."] = "README: it promises nothing and sends the reader to the code.",
        ["The interaction tables of pH and water activity in the definition of a time/temperature control for safety food, Food Code 1-201.10."]
            = "The Food Code's own name for a food that needs control.",
        ["Raw and unpasteurised egg carries a risk of Salmonella, and whipping or sugar does not take it away."] = "The caution itself.",
        ["For those at risk use egg products that their maker has pasteurised."] = "The caution itself, of products that are bought.",
        ["For those at risk use egg products that their maker has pasteurised, and keep them cold."] = "The caution itself, of products that are bought.",
        ["Where the food is not cooked as Food Code 3-401.11 asks, as a meringue may not be, 3-302.13 asks for pasteurised egg in its place."]
            = "What the model code asks for, of a product that is bought.",
        ["Food Code 3-801.11 asks for pasteurised egg where they are served."] = "What the model code asks for, of a product that is bought.",
        ["Toasting it at home is not known to make it safe."] = "It says that it does not.",
        ["A formula without a caution is not called safe by it: how it is cooked, kept and served is not known here."] = "It promises nothing.",
        ["The cautions that the ingredients deserve, the gravest first; none for a plain syrup, and that does not call it safe."] = "It promises nothing.",
        ["An allergen that is not listed is not said to be absent, and a formula without a caution is not said to be safe."] = "It promises nothing.",
        ["They are what the trade does, and none of them says that the egg is safe at that temperature."] = "It promises nothing.",
        ["`Confectio.Eggs` was `EggWhites`; what judges heat (logs, studies, holding times, cooling, control) moved from `Confectio.Heat` to `Confectio.Safety`, which does not know it."] = "The name of a room.",
        ["Egg products: minimum pasteurisation temperatures and times of 9 CFR 590.570"] = "The name of a table of the law for plants; its status beside it is: historic.",
        ["pasteurised"] = "A word of names as they are printed, and its American spelling.",
        ["pasteurized"] = "A word of names as they are printed, and its American spelling.",
        ["Safety."] = "The name of a room.",
        ["`Most`, `Least`, `Highest`, `Lowest`, `Greatest` and `Largest` are `Maximum` and `Minimum` in cakes, icings, heat and safety."] = "The name of a room.",
        ["white of eggs pasteurised in the shell"] = "The name of what is bought.",
        ["A form in which white, yolk or whole egg is bought: fresh, pasteurised, frozen, sugared or dried, with its solids and protein."] = "What is bought.",
        ["Worked numbers: fresh white 0.1243, pasteurised 0.1103, dried 0.9146."] = "The solids of what is bought.",
        ["The white that it comes nearer to in solids, fresh or pasteurised."] = "The solids of what is bought.",
        ["safe"] = "A word of cards that is looked for; and of an allergen claim.",
        ["safety"] = "A word that is looked for.",
        ["\\b(?:safe"] = "A word of cards that is looked for, so that a claim is judged.",
        ["safely"] = "A word of cards that is looked for.",
        ["food[- ]safe"] = "A word of cards that is looked for.",
        ["n’t)[^.;:,]{0,40}\\b(?:safe"] = "Words of cards that are looked for.",
        ["\\bunsafe\\b"] = "A word of cards that is looked for.",
        ["unsafe"] = "A word of cards that is looked for.",
        ["That nothing is found does not say that a card is safe: makers differ, read every label."] = "It promises nothing.",
        ["unsafe-temperature"] = "The code of a finding.",
        ["`unsafe-temperature`"] = "The code of a finding.",
        ["Egg is called safe at a temperature that no published household rule calls so: 71 °C (160 °F), or pasteurised egg products."] = "What a finding is: somebody else's claim, contradicted.",
        ["71 °C (160 °F), or pasteurised egg products"] = "What the household guidance asks for, and products that are bought.",
        ["by no published rule is egg safe at"] = "It contradicts a claim.",
        ["That nothing was found does not say that a card is right or its food safe."] = "It promises nothing.",
        ["Times and temperatures that make food safe are decided by local codes and licensed practice."] = "It promises nothing and sends the reader to the code.",
        ["Egg is called safe at a temperature at which no published rule makes it so: unsafe-temperature."] = "What a finding is: somebody else's claim, contradicted.",
        ["That nothing was found does not say that a card is right, or safe: see what was not judged."] = "It promises nothing.",
        ["What is wrong: allergens and safety first, then in the order of the card."] = "The order of findings.",
        ["What could not be judged is said in , and that nothing was found never means that a card is right or safe."] = "It promises nothing.",
        ["egg that is called safe below 71 °C (160 °F): always below 56 °C, and from there on where no time stands beside it; a time is not judged"] = "What a finding is: somebody else's claim, contradicted.",
    };

    [Fact]
    public void NoTextPromisesWhatHeatMayNotHaveDone()
    {
        (string Where, string Sentence)[] found = [.. Texts().SelectMany(text => Promises(text.Text).Select(sentence => (text.Where, sentence)))];
        string[] unknown = [.. found.Where(entry => !s_allowed.ContainsKey(entry.Sentence)).Select(entry => $"{entry.Where}: {entry.Sentence}").Distinct()];
        Assert.True(unknown.Length == 0, string.Join('\n', unknown));
        // And no sentence stays in the list after it has gone from the texts.
        string[] gone = [.. s_allowed.Keys.Except(found.Select(entry => entry.Sentence))];
        Assert.True(gone.Length == 0, "no longer found: " + string.Join('\n', gone));
        Assert.All(s_allowed.Values, Assert.NotEmpty);
    }

    // The rule can fail: what must not be said is found, also beside what may be.
    [Theory]
    [InlineData("The mix is safe.", 1)]
    [InlineData("At 71 °C the Swiss meringue is pasteurised, and keeps: eat it.", 1)]
    [InlineData("Held for 3.5 minutes. That is enough to pasteurize it! Then whip.", 1)]
    [InlineData("| egg white | safely eaten raw | unsafe |", 2)]
    [InlineData("Boiling syrup sterilises the whites; food safety is in your hands.", 1)]
    [InlineData("pasteurised liquid egg white makes a safe buttercream", 1)]
    [InlineData("pasteurised liquid egg white; pasteurized egg whites; egg yolk, frozen, sugared, pasteurized; in-shell-pasteurised-white", 0)]
    [InlineData("For those at risk use egg products that their maker has pasteurised. It is then safe.", 2)]
    [InlineData("6.5 log at 60 °C by Garibaldi et al. 1969", 0)]
    public void WhatMustNotBeSaidIsFound(string text, int sentences) => Assert.Equal(sentences, Promises(text).Count());

    // All the kinds of text are looked at, and not an empty folder.
    [Theory]
    [InlineData("README.md", 20)]
    [InlineData("docs/guide/", 100)]
    [InlineData("docs/tables/", 500)]
    [InlineData("Data.kinetic_sets.csv", 50)]
    [InlineData("Data.hold_times.csv", 100)]
    [InlineData("constant", 3)]
    [InlineData("string", 300)]
    [InlineData("documentation", 1000)]
    [InlineData("judgement", 1000)]
    public void EveryKindOfTextIsLookedAt(string where, int least) => Assert.InRange(Texts().Count(text => text.Where.StartsWith(where, StringComparison.Ordinal)), least, int.MaxValue);

    // The caution that goes with every answer says what the numbers are not.
    [Theory]
    [InlineData("no clearance")]
    [InlineData("the organism, the food, the acidity and the water activity of the study")]
    [InlineData("the coldest spot")]
    [InlineData("differ")]
    [InlineData("sugar protects")]
    [InlineData("Local codes and licensed practice decide")]
    public void TheCautionSays(string words) => Assert.Contains(words, HeatCaution.Text, StringComparison.Ordinal);

    // Every number that a judgement prints has the key of its study before it, and the study has a source.
    [Fact]
    public void NoNumberIsWithoutItsStudy()
    {
        foreach (LethalityFinding finding in Judgements().SelectMany(judgement => judgement.Findings))
        {
            Assert.StartsWith(finding.Set.Key + ": ", finding.ToString(), StringComparison.Ordinal);
            Assert.NotEqual("", finding.Set.Provenance!.Source.Citation);
        }
        Assert.All(Judgements(), judgement => Assert.Equal(judgement.Findings.Count(finding => finding.Applies),
            Regex.Count(judgement.ToString(), @"[\w-]+: [^;]*\d log\b|[\w-]+: [^;]*\) log\b")));
    }

    private static IEnumerable<string> Promises(string text) => Between().Split(Blanks().Replace(text, " "))
        .Select(sentence => Bought().Replace(sentence, "").Trim(' ', '*', '_', '#', '-', ';', ','))
        .Where(sentence => Promise().IsMatch(sentence));

    private static IEnumerable<(string Where, string Text)> Texts()
    {
        Assembly library = typeof(Ingredient).Assembly;
        foreach (string resource in library.GetManifestResourceNames().Where(name => name.EndsWith(".csv", StringComparison.Ordinal)))
        {
            using StreamReader reader = new(library.GetManifestResourceStream(resource)!);
            foreach (Dictionary<string, string> row in Confectio.Tests.Text.Rfc4180.Read(reader))
            {
                foreach ((string column, string field) in row)
                {
                    // The citation of a source is the title of another's work.
                    if (field.Length > 0 && column != "citation")
                        yield return (resource["Confectio.".Length..] + " " + column, field.Replace("|", "; ", StringComparison.Ordinal));
                }
            }
        }
        foreach (FieldInfo constant in library.GetTypes().Where(type => type.IsVisible).SelectMany(type => type.GetFields(BindingFlags.Public | BindingFlags.Static))
            .Where(field => field.IsLiteral && field.FieldType == typeof(string)))
            yield return ("constant " + constant.DeclaringType + "." + constant.Name, (string)constant.GetRawConstantValue()!);
        foreach (string text in UserStrings(library))
            yield return ("string", text);
        // Of what readers can see; a paragraph begins a sentence.
        HashSet<string> visible = [.. library.GetTypes().Where(type => type.IsVisible).Select(type => type.FullName!)];
        foreach (XElement block in XDocument.Load(Path.ChangeExtension(library.Location, ".xml")).Descendants("member").Elements())
        {
            string member = block.Parent!.Attribute("name")!.Value, name = member[2..].Split('(')[0];
            if (visible.Contains(name) || visible.Contains(name[..Math.Max(0, name.LastIndexOf('.'))]))
                yield return ("documentation of " + member, string.Concat(block.DescendantNodes().Select(node => node is XText text ? text.Value : node is XElement { Name.LocalName: "para" } ? ". " : "")));
        }
        DirectoryInfo root = Root();
        foreach (string file in Directory.EnumerateFiles(Path.Combine(root.FullName, "docs"), "*.md", SearchOption.AllDirectories).Append(Path.Combine(root.FullName, "README.md")))
        {
            string where = Path.GetRelativePath(root.FullName, file).Replace('\\', '/');
            if (where.StartsWith("docs/_site", StringComparison.Ordinal))
                continue;
            // A paragraph is one text, and so is a line of a table. The list of sources repeats the table of them, titles and all. The rooms that a sample
            // uses are no sentences.
            foreach (string paragraph in Regex.Split(Regex.Replace(File.ReadAllText(file), @"(?m)^(using|open) Confectio[\w.]*;?\r?$", ""), @"\r?\n\s*\r?\n|\r?\n(?=[|#\-])"))
            {
                if (paragraph.Length > 0 && where != "docs/tables/sources.md")
                    yield return (where, paragraph);
            }
        }
        foreach (LethalityJudgement judgement in Judgements())
        {
            yield return ("judgement", judgement.ToString());
            foreach (LethalityFinding finding in judgement.Findings)
            {
                yield return ("judgement", finding.Why);
                yield return ("judgement", finding.ToString());
            }
        }
        foreach (HoldTimeTable table in HoldTimeTable.All)
        {
            foreach (HoldTime row in table.Rows)
                yield return ("row", row.ToString());
            // The name of the table and its status are fields of the tables above; together they are one sentence of many stops.
            yield return ("table", table.Status);
        }
        foreach (KineticSet set in KineticSet.All)
            yield return ("set", set.ToString());
    }

    private static IEnumerable<LethalityJudgement> Judgements()
    {
        ProbeLog log = Readings.Log((0, 20), (5, 60), (10, 60), (12, 72), (13, 72));
        foreach (FoodMatrix matter in Enum.GetValues<FoodMatrix>())
        {
            for (int i = 0; i <= 50; i++)
                yield return LethalityJudgement.Of(log, matter, new Spread(i / 50.0, i / 50.0, i / 50.0));
        }
    }

    // Every string that the code of the assembly can load: messages, sentences, formats.
    private static List<string> UserStrings(Assembly assembly)
    {
        using PEReader file = new(File.OpenRead(assembly.Location));
        MetadataReader reader = file.GetMetadataReader();
        List<string> strings = [];
        for (UserStringHandle handle = MetadataTokens.UserStringHandle(1); !handle.IsNil; handle = reader.GetNextHandle(handle))
            strings.Add(reader.GetUserString(handle));
        return strings;
    }

    // The repository stands above the tests, whether they were built inside it or elsewhere.
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
        throw new DirectoryNotFoundException("README.md and docs/guide were not found above the tests");
    }
}
