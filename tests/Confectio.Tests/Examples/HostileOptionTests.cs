using Xunit;

namespace Confectio.Tests.Examples;

/// <summary>
/// Hostile options and files to every example: the status is 0, 1 or 2; without an answer there is one line on the error stream and nothing else; never a stack trace,
/// and no control character, whatever was handed in.
/// </summary>
public sealed class HostileOptionTests
{
    private const string Why = "needs the built examples in CONFECTIO_EXAMPLES";
    private static readonly string s_log = ExampleProgram.Data("fennmarsh-swiss-log.csv"), s_meringue = ExampleProgram.Data("fennmarsh-swiss-meringue.json");

    // A good command of each with all its options that go together; each part is then replaced by each hostile value.
    private static readonly Dictionary<string, string[]> s_good = new()
    {
        ["vet-table"] = [ExampleProgram.Data("fennmarsh-class-sheet.csv"), "--system", "us-customary", "--kind", "volume", "--decimal", "point"],
        ["vet-card"] = [ExampleProgram.Data("fennmarsh-found-card.txt"), "--system", "us-customary", "--altitude", "1600m", "--sarif", "cards.sarif"],
        ["enough-icing"] = [ExampleProgram.Data("fennmarsh-garden-wedding.json"), "--system", "metric", "--left", "1.4 kg", "--icing", "meringue buttercream", "--svg", "cake.svg"],
        ["balance"] = [ExampleProgram.Data("fennmarsh-shortening-buttercream.json"), "--round", "5g", "--system", "us-customary"],
        ["cost"] = [ExampleProgram.Data("fennmarsh-july-buttercream.txt"), "--prices", ExampleProgram.Data("fennmarsh-prices.csv"), "--currency", "EUR", "--rate", "GBP=1.17", "--portion-grams", "60g", "--cakes", "2", "--waste", "5%", "--make", "60", "--as-of", "2026-11-29", "--decimal", "point", "--system", "metric"],
        ["cost by eggs"] = [s_meringue, "--prices", ExampleProgram.Data("fennmarsh-prices.csv"), "--portions", "12", "--eggs", "12 large"],
        ["compare"] = [ExampleProgram.Data("fennmarsh-july-buttercream.txt"), ExampleProgram.Data("fennmarsh-winter-buttercream.txt"), "--at", "24C", "--system", "metric"],
        ["card"] = [ExampleProgram.Data("fennmarsh-class-buttercream.txt"), "--as", "html", "--systems", "us-customary,metric", "--from", "us-customary", "--names", "us", "--tools", "full", "--portions", "24", "--panel", "eu", "--temperature", "oven=180 C",
            "--step", "Whip until cool.", "--title", "Buttercream", "--culture", "de-DE"],
        ["card of a cake"] = [ExampleProgram.Data("fennmarsh-garden-wedding.json"), "--as", "html", "--systems", "us-customary,metric", "--temperature", "oven=180 C", "--title", "Wedding", "--culture", "de-DE"],
        ["chart"] = ["--foods", "plain flour, icing sugar: sifted", "--measures", "1 cup, 1 Tbsp", "--system", "metric", "--round", "5g", "--as", "csv", "--names", "us", "--title", "Cups", "--culture", "de-DE"],
        ["explore"] = [ExampleProgram.Data("fennmarsh-chocolate-buttercream.json"), "--vary", "fat 30..38/2"],
        ["keeping"] = [s_meringue, "--ph", "5.2..6.0", "--kind", "meringue-buttercream", "--room", "25C", "--humidity", "60%", "--system", "metric"],
        ["warm-room"] = [ExampleProgram.Data("fennmarsh-july-buttercream.txt"), "--room", "31C", "--afternoon", "9:00 21C, 14:00 31C", "--start", "18C", "--cake", "20x10", "--firm", "white shortening", "--system", "metric"],
        ["consistency"] = [s_meringue, "--sort", "royal-icing", "--to", "stiff", "--with", "milk", "--thicken", "icing sugar", "--trials", "20:40 23:20 26:10", "--system", "metric"],
        ["trouble"] = [s_meringue, "--what", "flat", "--at", "egg white=8C", "--at", "sugar=20C", "--cooked-to", "60C", "--minutes", "12", "--humidity", "70%", "--cup", "190g", "--room", "24C"],
        ["convert"] = ["1 1/2 cups", "icing sugar", "--packing", "sifted", "--system", "us-customary", "--tools", "household", "--decimal", "point"],
        ["recipe"] = [ExampleProgram.Data("fennmarsh-caramel-cake.txt"), "--in", "metric", "--from", "us-customary", "--decimal", "point"],
        ["heat-log"] = [s_log, "--formula", s_meringue, "--matter", "egg-white", "--ph", "8.2", "--gap-seconds", "90", "--unit", "celsius"],
        ["syrup"] = ["--sugar", "600g", "--water", "200g", "--glucose-syrup", "60g", "--cream-of-tartar", "1g", "--to", "soft-ball", "--altitude", "1600m"],
        ["syrup by pressure"] = ["--sugar", "600g", "--water", "200g", "--to", "soft-ball", "--pressure", "84kPa"],
        ["syrup by boiling water"] = ["--sugar", "600g", "--water", "200g", "--to", "soft-ball", "--water-boils", "95C"],
        ["whites"] = ["--replace", "8 large", "--system", "us", "--with", "dried", "--moisture", "8%", "--solids", "12%", "--match", "solids", "--measures", "us-customary"],
    };

    private static readonly string[] s_hostile =
        ["", "NaN", "-0.0 g", new string('9', 400), new string('9', 400) + " kg", "\u001b[2J\u0007\r\nx\u202Ey\u2028z", new string('x', 100_000)];

    public static TheoryData<string> Commands => [.. s_good.Keys];

    public static TheoryData<string, int> Parts
    {
        get
        {
            TheoryData<string, int> parts = [];
            foreach ((string name, string[] arguments) in s_good)
            {
                for (int i = 0; i < arguments.Length; i++)
                {
                    if (!arguments[i].StartsWith("--", StringComparison.Ordinal))
                        parts.Add(name, i);
                }
            }
            return parts;
        }
    }

    // Each is a process of its own, and the machine of CI has two cores.
    private static readonly ParallelOptions s_two = new() { MaxDegreeOfParallelism = 2 };

    [Theory(Skip = Why, SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    [MemberData(nameof(Commands))]
    public void TheGoodCommandsAreGood(string name) => Assert.InRange(Try(name, s_good[name]), 0, 1);

    [Theory(Skip = Why, SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    [MemberData(nameof(Parts))]
    public void AHostileValueIsAnAnswerOrALine(string name, int part)
    {
        // CI has ten minutes: each value meets every other part of a command there, and each part every other value. CONFECTIO_EXAM=all tries all.
        bool all = Environment.GetEnvironmentVariable("CONFECTIO_EXAM") == "all";
        Parallel.ForEach(s_hostile.Where((_, i) => all || (i + part) % 2 == 0), s_two, value =>
        {
            string[] arguments = [.. s_good[name]];
            arguments[part] = value;
            Try(name, arguments);
        });
    }

    [Theory(Skip = Why, SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    [MemberData(nameof(Commands))]
    public void WhatIsNotUnderstoodTwiceOrWithoutItsValueIsTwo(string name)
    {
        string[] good = s_good[name];
        Assert.Equal(2, Try(name, []));
        Assert.Equal(2, Try(name, [.. good, "--bogus"]));
        Assert.Equal(2, Try(name, [.. good, "--\u001b[31mbogus\n"]));
        Assert.Equal(2, Try(name, [.. good, "--"]));
        Assert.Equal(2, Try(name, [.. good, "--json", "--json"]));
        Assert.Equal(2, Try(name, [.. good, "one", "two", "three"]));
        int option = Array.FindLastIndex(good, argument => argument.StartsWith("--", StringComparison.Ordinal));
        Assert.Equal(2, Try(name, [.. good, good[option], good[option + 1]]));
        Assert.Equal(2, Try(name, good[..^1]));
    }

    [Theory(Skip = Why, SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    [InlineData("vet-table", 0)]
    [InlineData("vet-card", 0)]
    [InlineData("enough-icing", 0)]
    [InlineData("balance", 0)]
    [InlineData("explore", 0)]
    [InlineData("cost", 0)]
    [InlineData("compare", 0)]
    [InlineData("compare", 1)]
    [InlineData("cost", 2)]
    [InlineData("card", 0)]
    [InlineData("keeping", 0)]
    [InlineData("warm-room", 0)]
    [InlineData("consistency", 0)]
    [InlineData("trouble", 0)]
    [InlineData("heat-log", 0)]
    [InlineData("heat-log", 2)]
    public void AFileThatIsNoneIsTwo(string name, int part)
    {
        byte[] junk = new byte[100_000];
        new Random(1).NextBytes(junk);
        string binary = ExampleProgram.Written("");
        File.WriteAllBytes(binary, junk);
        string link = Path.Combine(ExampleProgram.Folder, "\u001b[31mred\n" + name + part);
        File.WriteAllText(link, "\u0000\u0001");
        // Of a folder vet-table and vet-card read every file; of one without a file there is nothing to read.
        string folder = name is "vet-table" or "vet-card" ? Directory.CreateDirectory(Path.Combine(ExampleProgram.Folder, "empty")).FullName : ExampleProgram.Folder;
        string[] files =
        [
            "no-such-file", folder, "no\u001b[31m/such\nfile", new string('n', 5000), ExampleProgram.Written(""), ExampleProgram.Written("\uFEFF"), binary, link,
            ExampleProgram.Written(new string('x', 10_000_000)), ExampleProgram.Written("{\"confectioOrder\":1e400,\"name\":\"" + new string('y', 10_000_000) + "\"}"), ExampleProgram.Written(new string('[', 100_000)),
        ];
        Parallel.ForEach(files, s_two, file =>
        {
            string[] arguments = [.. s_good[name]];
            arguments[part] = file;
            Assert.Equal(2, Try(name, arguments));
        });
        Assert.Equal(2, Try(name, [.. s_good[name].Select((argument, i) => i == part ? binary : argument), "--json"]));
    }

    // A slip of a finger is answered with the word that was meant, before all that are allowed.
    [Theory(Skip = Why, SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    [InlineData("convert", "--packing", "sited", "sifted")]
    [InlineData("convert", "--system", "us-costumary", "us-customary")]
    [InlineData("vet-table", "--kind", "temprature", "temperature")]
    [InlineData("enough-icing", "--system", "metrics", "metric")]
    [InlineData("heat-log", "--unit", "celcius", "celsius")]
    [InlineData("whites", "--match", "solid", "solids")]
    public void ANearWordIsNamedFirst(string name, string option, string slip, string meant)
    {
        string[] arguments = [.. s_good[name]];
        arguments[Array.IndexOf(arguments, option) + 1] = slip;
        (int status, string output, string error) = ExampleProgram.Run(name, arguments);
        Assert.Equal((2, ""), (status, output));
        Assert.StartsWith($"{option} {slip}: perhaps {meant}; one of: ", error, StringComparison.Ordinal);

        arguments = [.. s_good[name]];
        string misspelt = option[..3] + option[4..];
        arguments[Array.IndexOf(arguments, option)] = misspelt;
        (status, output, error) = ExampleProgram.Run(name, arguments);
        Assert.Equal((2, ""), (status, output));
        Assert.StartsWith($"{misspelt}: not understood; perhaps {option}; one of: ", error, StringComparison.Ordinal);
    }

    // What is like nothing is not guessed at.
    [Fact(Skip = Why, SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    public void AWordThatIsNearNoneIsNotGuessed()
    {
        string error = ExampleProgram.Run("vet-table", s_good["vet-table"][0], "--kind", "barometer").Error;
        Assert.StartsWith("--kind barometer: one of: volume, temperature.", error, StringComparison.Ordinal);
    }

    [Theory(Skip = Why, SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    [MemberData(nameof(Commands))]
    public void HelpIsAnAnswer(string name)
    {
        name = name.Split(' ')[0];
        (int status, string output, string error) = ExampleProgram.Run(name, "-h");
        Assert.Equal((0, ""), (status, error));
        Assert.Contains($"{name}.cs", output, StringComparison.Ordinal);
        Assert.Contains("Exit status: 0", output, StringComparison.Ordinal);
        Assert.All(s_good[name].Where(word => word.StartsWith("--", StringComparison.Ordinal)), option => Assert.Contains($"  {option} <", output, StringComparison.Ordinal));
        Assert.Equal((0, output, ""), ExampleProgram.Run(name, [.. s_good[name], "--help"]));
    }

    [Fact(Skip = Why, SkipType = typeof(ExampleProgram), SkipUnless = nameof(ExampleProgram.AreBuilt))]
    public void OneRowIsNotRows()
    {
        const string Row = "ingredient,measure,grams\nhoney,1 cup,340\n";
        Assert.Contains(": 1 row, ", ExampleProgram.Run("vet-table", ExampleProgram.Written(Row)).Output, StringComparison.Ordinal);
        Assert.Contains(": 2 rows, ", ExampleProgram.Run("vet-table", ExampleProgram.Written(Row + "butter,1 cup,227\n")).Output, StringComparison.Ordinal);
    }

    private static int Try(string name, string[] arguments)
    {
        (int status, string output, string error) = ExampleProgram.Run(name.Split(' ')[0], arguments);
        string shown = string.Join(' ', arguments.Select(argument => argument.Length > 60 ? argument[..60] + "..." : argument));
        Assert.True(status is 0 or 1 or 2, $"{name} {shown}: status {status}: {error}");
        Assert.True(error.Count(c => c == '\n') == (error.Length > 0 ? 1 : 0), $"{name} {shown}: not one line: {error}");
        Assert.True(error.Length > 0 || (status < 2 && output.Length > 0), $"{name} {shown}: neither an answer nor a line");
        // Of a table without a row that can be read, vet-table lists why beside the line; vet-card answers of the files that it could read.
        Assert.True(error.Length == 0 || output.Length == 0 || (status == 2 && name is "vet-table" or "vet-card"), $"{name} {shown}: an answer and a line: {error}");
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        Assert.DoesNotContain("Unhandled", error, StringComparison.Ordinal);
        Assert.True(!(output + error).Any(c => char.IsControl(c) && c != '\n'), $"{name} {shown}: a control character");
        Assert.True(!(output + error).Contains("NaN", StringComparison.Ordinal) || arguments.Contains("NaN"), $"{name} {shown}: NaN");
        return status;
    }
}
