using System.Text.RegularExpressions;
using Xunit;

namespace Confectio.Tests.Examples;

/// <summary>
/// Every example, run as a program, in text and in JSON: each caution that its answer needs stands there, and none that it does not. What an answer needs follows from
/// what is in the food (egg as it is, egg its maker has pasteurised, none) and from what is done with it; the sources stand beside the sentences in the library.
/// </summary>
public sealed class CautionExamTests
{
    private const string Raw = "may carry Salmonella", AtRisk = "infants and young children", Cold = "no more than two hours in the warm", Label = "read the label of your own";
    private const string Burn = "cool running water for 20 minutes", Packing = "The packing was not stated", Heat = "no clearance", Local = "Local codes and licensed practice";
    private const string Compared = "Only the two units were compared", EggGuidance = "160 °F (71 °C), read with a food thermometer";
    private const string Honey = "infants under one year", Flour = "Flour is a raw food", Alcohol = "Contains alcohol", Polyols = "laxative", Colours = "E 102";
    private static readonly string[] s_ofEgg = [Raw, AtRisk, Cold], s_ofFood = [Raw, AtRisk, Cold, Honey, Flour, Alcohol, Polyols, Colours];

    private static readonly Dictionary<string, Case> s_cases = new()
    {
        ["balance: raw white"] = new("balance", [Data("fennmarsh-shortening-buttercream.json"), "--round", "5g"], 0, [.. s_ofEgg, Label, "egg", "milk"], [Honey, Flour, Alcohol, "soy"]),
        ["balance: couverture, rounded to spoons"] = new("balance", [Data("fennmarsh-chocolate-buttercream.json"), "--round", "spoons"], 1, [.. s_ofEgg, Label, "soy"], [Honey, Flour]),
        ["balance: hot syrup"] = new("balance", [Data("fennmarsh-soft-caramel.json"), "--round", "5g"], 0, [Burn, Label, "milk"], [Honey, Flour, Raw]),
        ["balance: what is not boiled"] = new("balance", [Data("fennmarsh-summer-ganache.json")], 0, [Label, "milk"], [Burn, Raw]),
        ["balance: impossible"] = new("balance", [Data("fennmarsh-impossible-buttercream.json")], 1, [.. s_ofEgg, Label], [Honey]),
        ["balance: pasteurised white"] = new("balance", [Changed("fennmarsh-shortening-buttercream.json", "egg white", "pasteurised liquid egg white")], null, [Cold, Label, "egg"], [Raw, AtRisk]),
        ["balance: dried white"] = new("balance", [Changed("fennmarsh-shortening-buttercream.json", "egg white", "dried egg white")], null, [Cold, Label, "egg"], [Raw, AtRisk]),
        ["balance: no egg"] = new("balance", [Changed("fennmarsh-shortening-buttercream.json", "egg white", "whole milk")], null, [Label, "milk"], [.. s_ofFood, "egg"]),
        ["balance: honey"] = new("balance", [Changed("fennmarsh-shortening-buttercream.json", "granulated sugar", "honey")], null, [Honey, .. s_ofEgg], [Flour]),
        ["balance: flour and no egg"] = new("balance", [Changed("fennmarsh-shortening-buttercream.json", "egg white", "plain flour")], null, [Flour, Label, "wheat"], [Raw, AtRisk, Cold]),
        ["whites: dried"] = new("whites", ["--replace", "8 large", "--system", "us", "--with", "dried"], 0, [Cold, Label, "egg"], [Raw, AtRisk, Honey]),
        ["whites: pasteurised"] = new("whites", ["--replace", "264 g", "--with", "pasteurised"], 0, [Cold, Label, "egg"], [Raw, AtRisk]),
        ["whites: fresh"] = new("whites", ["--replace", "264 g", "--with", "fresh-white"], 0, [.. s_ofEgg, Label, "egg"], [Honey]),
        ["icing: raw white, and jam without a formula"] = new("enough-icing", [Data("fennmarsh-garden-wedding.json")], 0, [.. s_ofEgg, Label, "egg", "milk"], [Honey, Flour]),
        ["icing: left over"] = new("enough-icing", [Data("fennmarsh-garden-wedding.json"), "--left", "1.4 kg"], 0, [.. s_ofEgg, Label], [Honey]),
        ["icing: pasteurised white"] = new("enough-icing", [Ganache("pasteurised liquid egg white")], 0, [Cold, Label, "egg"], [Raw, AtRisk]),
        ["icing: no egg"] = new("enough-icing", [Ganache("heavy cream")], 0, [Label, "milk", "soy"], [.. s_ofFood, "egg"]),
        ["icing: left over of an icing that is not on the cake"] = new("enough-icing", [Ganache("heavy cream"), "--left", "1 kg", "--icing", "spare"], 0, [Honey, Label], [Raw, Cold]),
        ["convert: packing not stated"] = new("convert", ["1 1/2 cups", "icing sugar"], 0, [Packing, Label], s_ofFood),
        ["convert: packing stated"] = new("convert", ["1 1/2 cups", "icing sugar", "--packing", "sifted"], 0, [Label], [Packing]),
        ["convert: to cups"] = new("convert", ["340 g", "icing sugar"], 0, [Packing], []),
        ["convert: water"] = new("convert", ["1 cup", "water"], 0, [Label], [Packing, .. s_ofFood]),
        ["convert: milk"] = new("convert", ["1 cup", "whole milk"], 0, [Label, "milk"], [Packing, .. s_ofFood]),
        ["convert: egg white"] = new("convert", ["1 cup", "egg white"], 0, [.. s_ofEgg, Label, "egg"], [Packing, Honey, Flour]),
        ["convert: pasteurised white"] = new("convert", ["1 cup", "pasteurised liquid egg white"], 0, [Cold, Label, "egg"], [Raw, AtRisk]),
        ["convert: honey"] = new("convert", ["1 cup", "honey"], 0, [Honey, Label], [.. s_ofEgg, Flour]),
        ["convert: flour, to cups"] = new("convert", ["125 g", "plain flour", "--packing", "spooned"], 0, [Flour, Label, "wheat"], [.. s_ofEgg, Honey]),
        ["convert: a stick"] = new("convert", ["1 stick", "unsalted butter"], 0, [Label, "milk"], [Packing]),
        ["recipe: egg, honey, flour, rum"] = new("recipe", [Data("fennmarsh-caramel-cake.txt"), "--in", "metric"], 1, [Raw, AtRisk, Cold, Honey, Flour, Alcohol, "most likely 7 oz is wrong", "a pinch was taken for", Label, "milk"], [Colours, Polyols]),
        ["recipe: no egg"] = new("recipe", [Text("200 g sugar\n100 g butter\n"), "--in", "us-customary"], 0, [Label, "milk"], [.. s_ofFood, "egg"]),
        ["recipe: what cannot be read is listed"] = new("recipe", [Text("200 g sugar\n2 cups unobtainium\na drizzle of honey\n"), "--in", "metric"], 1, [Label, "unobtainium", "a drizzle", "no size"], s_ofFood),
        ["syrup: soft ball"] = new("syrup", ["--sugar", "600g", "--water", "200g", "--to", "soft-ball", "--altitude", "1600m"], 0, [Burn, "boil up"], s_ofFood),
        ["syrup: hard crack"] = new("syrup", ["--sugar", "600g", "--water", "200g", "--glucose-syrup", "60g", "--to", "hard-crack"], 0, [Burn, "boil up"], s_ofFood),
        ["syrup: caramel"] = new("syrup", ["--sugar", "600g", "--water", "200g", "--to", "caramel"], 1, [Burn, "boil up"], s_ofFood),
        ["heat log"] = new("heat-log", [Data("fennmarsh-swiss-log.csv"), "--formula", Data("fennmarsh-swiss-meringue.json")], 0, [Heat, Local, "predicted"], ["reached and kept"]),
        ["heat log: all of it"] = new("heat-log", [Data("fennmarsh-swiss-log.csv"), "--formula", Data("fennmarsh-swiss-meringue.json"), "--all"], 0, [Heat, Local, "predicted"], []),
        ["heat log: no study"] = new("heat-log", [Data("fennmarsh-swiss-log.csv"), "--formula", Data("fennmarsh-swiss-meringue.json"), "--matter", "egg-yolk"], null, [Heat, Local], ["reached and kept"]),
        ["keeping: raw white, out of the cold"] = new("keeping", [Data("fennmarsh-swiss-meringue.json"), "--room", "24C", "--humidity", "70%"], 0, [.. s_ofEgg, Label, Local, "egg", "Food Code 3-501.13", "two hours in all"], [Honey, Flour]),
        ["keeping: no egg"] = new("keeping", [Text("200 g shortening\n400 g icing sugar\n20 g water\n")], null, [Label, Local], s_ofFood),
        ["warm room: butter"] = new("warm-room", [Data("fennmarsh-july-buttercream.txt"), "--room", "31C"], 1, ["no promise", "how long it may be left", Label, "milk"], s_ofFood),
        ["warm room: raw white"] = new("warm-room", [Text("150 g egg white\n300 g sugar\n400 g butter\n"), "--room", "31C"], 1, [.. s_ofEgg, "no promise", Label, "egg", "milk"], [Honey, Flour]),
        ["consistency: raw white"] = new("consistency", [Data("fennmarsh-swiss-meringue.json"), "--sort", "royal-icing", "--to", "stiff"], 0, [.. s_ofEgg, Label, "egg"], [Honey, Burn]),
        ["trouble: raw white that is warmed"] = new("trouble", [Text("150 g egg white\n300 g sugar\n400 g butter\n"), "--what", "curdled", "--at", "mix=12C"], 0, [.. s_ofEgg, Label, Local, "cooks nothing", "two hours in all", "egg", "milk"], [Burn, Honey, Flour]),
        ["trouble: hot syrup"] = new("trouble", [Text("300 g sugar\n200 g heavy cream\n"), "--what", "tough", "--cooked-to", "126C"], 0, [Burn, Label, Local, "milk"], [Raw, AtRisk, Honey]),
        ["trouble: shortening that is warmed"] = new("trouble", [Text("200 g shortening\n400 g icing sugar\n20 g water\n"), "--what", "stiff", "--at", "mix=4C"], null, [Label, Local], [.. s_ofFood, Burn, "two hours in all", "cooks nothing"]),
        ["cost: butter and sugar"] = new("cost", [Data("fennmarsh-july-buttercream.txt"), "--prices", Data("fennmarsh-prices.csv")], 0, [Label, "milk"], [Raw, AtRisk, Honey, Flour]),
        ["cost: raw white without a price of the flour"] = new("cost", [Text("150 g egg white\n300 g sugar\n20 g plain flour\n1 g honey\n"), "--prices", Data("fennmarsh-prices.csv")], 1, [.. s_ofEgg, Honey, Flour, Label, "egg", "at least", "No price is known for honey"], [Alcohol]),
        ["compare: raw white in the second"] = new("compare", [Data("fennmarsh-july-buttercream.txt"), Text("150 g egg white\n300 g sugar\n400 g butter\n")], 1, [.. s_ofEgg, Label, Local, "egg", "milk"], [Honey, Flour]),
        ["compare: no egg"] = new("compare", [Data("fennmarsh-july-buttercream.txt"), Data("fennmarsh-winter-buttercream.txt")], 1, [Label, Local, "milk"], [Raw, AtRisk, Honey, Flour, "egg"]),
        ["card: raw white"] = new("card", [Data("fennmarsh-class-buttercream.txt"), "--systems", "us-customary,metric", "--portions", "24", "--panel", "eu"], 0, [.. s_ofEgg, Label, Local, Packing, "egg", "milk", "not a laboratory analysis"], [Honey, Flour, Burn]),
        ["card: hot syrup"] = new("card", [Text("300 g sugar\n100 g water\n"), "--temperature", "syrup=118 C"], 0, [Burn, Label, Local], s_ofFood),
        ["card: butter and sugar"] = new("card", [Data("fennmarsh-july-buttercream.txt")], 0, [Label, Local, "milk"], [.. s_ofFood, Burn, Packing]),
        ["card: flour, honey, rum, no egg"] = new("card", [Text("200 g plain flour\n50 g honey\n30 g rum\n")], 0, [Honey, Flour, Alcohol, Label, "wheat"], [Raw, AtRisk, Cold]),
        ["card: the plan of a cake"] = new("card", [Data("fennmarsh-garden-wedding.json")], 0, [.. s_ofEgg, Label, "egg", "milk"], [Honey, Flour]),
        ["chart: packings are stated"] = new("chart", ["--foods", "icing sugar, egg white"], 0, [], [Packing, .. s_ofFood]),
        ["chart: a packing that nobody weighed"] = new("chart", ["--foods", "unsalted butter: softened"], 0, ["Nobody weighed unsalted butter softened"], [Packing]),
        ["vet: oven sheet with egg"] = new("vet-table", [Data("fennmarsh-oven-sheet.csv"), "--kind", "temperature"], 1, [Compared, EggGuidance, Local], []),
        ["vet: egg on a row that cannot be read"] = new("vet-table", [Text("what,fahrenheit,celsius\noven,350,180\nlemon curd,hot,70\n"), "--kind", "temperature"], 1, [Compared, EggGuidance, Local], []),
        ["vet: no egg"] = new("vet-table", [Text("what,fahrenheit,celsius\noven,350,180\neggplant bake,350,180\nwhite chocolate,90,32\n"), "--kind", "temperature"], 0, [Compared], [EggGuidance]),
        ["vet: a card"] = new("vet-card", [Data("fennmarsh-found-card.txt")], 1, ["does not say that a card is right", "Local codes", "read every label", "71 °C (160 °F)", "Dairy-free"], []),
        ["vet: measures"] = new("vet-table", [Data("fennmarsh-class-sheet.csv")], 1, [], [Compared, EggGuidance]),
    };

    public static TheoryData<string> Cases => [.. s_cases.Keys];

    [Theory(Skip = "needs the built examples in CONFECTIO_EXAMPLES", SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    [MemberData(nameof(Cases))]
    public void EveryCautionStandsWhereTheAnswerNeedsItAndNowhereElse(string name)
    {
        Case one = s_cases[name];
        foreach (bool json in (ReadOnlySpan<bool>)[false, true])
        {
            (int status, string output, string error) = ExampleProgram.Run(one.Program, json ? [.. one.Arguments, "--json"] : one.Arguments);
            string said = json ? ExampleProgram.Words(output) : output;
            Assert.Equal("", error);
            Assert.InRange(status, one.Status ?? 0, one.Status ?? 1);
            Assert.All(one.Needs, words => Assert.Contains(words, said, StringComparison.OrdinalIgnoreCase));
            // A word such as egg is looked for as an allergen, not within the sentences.
            Assert.All(one.MustNot, words => Assert.DoesNotMatch(words.Length > 4 ? Regex.Escape(words) : $@"(?im)(contains:?.*\b{words}\b|^{words}$)", said));
            Assert.DoesNotMatch(@"(?i)\b(is|are|now|be) safe\b|\bharmless\b|\bguarantee|\bcertified\b", said);
        }
    }

    private static string Data(string name) => ExampleProgram.Data(name);

    private static string Text(string text) => ExampleProgram.Written(text);

    private static string Changed(string file, string from, string to) => Text(File.ReadAllText(Data(file)).Replace(from, to, StringComparison.Ordinal));

    private static string Ganache(string liquid) => Text($$"""
        { "confectioOrder": 1, "tiers": [{ "shape": "round", "diameter": "20 cm", "height": "8 cm", "coats": [{ "icing": "ganache", "thickness": "6 mm" }] }],
          "icings": [
            { "name": "ganache", "gramsPerMillilitre": 1.2, "formula": { "confectioFormula": 1, "name": "x", "lines": [{ "ingredient": "{{liquid}}", "grams": 100 }, { "ingredient": "dark couverture 64 %", "grams": 100 }] } },
            { "name": "spare", "gramsPerMillilitre": 1.3, "formula": { "confectioFormula": 1, "name": "y", "lines": [{ "ingredient": "honey", "grams": 100 }] } }] }
        """);

    private sealed record Case(string Program, string[] Arguments, int? Status, string[] Needs, string[] MustNot);
}
