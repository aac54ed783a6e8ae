// Small checks that .ci/run needs and a shell cannot make without tools that a fresh machine may lack.
//
//   dotnet run .ci/check.cs json FILE MEMBER  the file is one JSON object with this member, which is not empty
//   dotnet run .ci/check.cs package NUPKG     the package and the symbol package beside it hold what they must
//   dotnet run .ci/check.cs recipes PAGE FOLDER [--write]  the recipes of the page print what it shows; the folder holds the built library
//
// Exit status: 0 all is well, 1 something is missing, 2 bad usage.
using System.Diagnostics;
using System.IO.Compression;
using System.Text.Json;
using System.Text.RegularExpressions;

if (args is ["json", string file, string member])
{
    using JsonDocument document = JsonDocument.Parse(File.ReadAllBytes(file));
    JsonElement value = document.RootElement.GetProperty(member);
    int entries = value.ValueKind switch { JsonValueKind.Array => value.GetArrayLength(), JsonValueKind.Object => value.EnumerateObject().Count(), _ => 1 };
    Console.WriteLine($"one JSON {document.RootElement.ValueKind} with {entries} in {member}");
    return document.RootElement.ValueKind == JsonValueKind.Object && entries > 0 ? 0 : 1;
}
if (args is ["recipes", string page, string library, .. string[] more] && more is [] or ["--write"])
    return Recipes(page, Path.GetFullPath(library), more is ["--write"]);
if (args is not ["package", string package])
{
    Console.Error.WriteLine("usage: check.cs json FILE MEMBER | package NUPKG | recipes PAGE FOLDER [--write]");
    return 2;
}

int missing = 0;
using (ZipArchive zip = ZipFile.OpenRead(package))
{
    Need(zip, "README.md");
    Need(zip, "icon.png");
    foreach (string target in (string[])["net8.0", "net10.0"])
    {
        Need(zip, $"lib/{target}/Confectio.dll");
        Need(zip, $"lib/{target}/Confectio.xml");
    }
    using StreamReader reader = new(zip.GetEntry("Confectio.nuspec")!.Open());
    string nuspec = reader.ReadToEnd();
    NeedText(nuspec, "<license type=\"expression\">MIT</license>");
    NeedText(nuspec, "<readme>README.md</readme>");
    NeedText(nuspec, "<icon>icon.png</icon>");
    foreach (string dependency in (string[])["MathNet.Numerics", "Sep", "UnitsNet"])
        NeedText(nuspec, $"<dependency id=\"{dependency}\"");
    foreach (string tool in (string[])["MinVer", "Microsoft.CodeAnalysis.PublicApiAnalyzers"])
    {
        if (nuspec.Contains(tool, StringComparison.Ordinal))
            Missing($"the package depends on {tool}, which is needed only to build it");
    }
}
string symbols = Path.ChangeExtension(package, ".snupkg");
if (!File.Exists(symbols))
{
    Missing("there is no symbol package");
}
else
{
    using ZipArchive zip = ZipFile.OpenRead(symbols);
    foreach (string target in (string[])["net8.0", "net10.0"])
        Need(zip, $"lib/{target}/Confectio.pdb");
}
Console.WriteLine(missing == 0 ? $"{Path.GetFileName(package)} holds what it must" : $"{missing} missing");
return missing == 0 ? 0 : 1;

void Need(ZipArchive zip, string entry)
{
    if (zip.GetEntry(entry) is not { Length: > 0 })
        Missing($"{entry} is missing or empty");
}

void NeedText(string nuspec, string text)
{
    if (!nuspec.Contains(text, StringComparison.Ordinal))
        Missing($"the manifest has no {text}");
}

void Missing(string what)
{
    missing++;
    Console.WriteLine(what);
}

// The recipes of a page: under each heading the files, which go to an empty folder, then the command, and the lines that it must print. The library just
// built, with all it needs beside it, takes the place of the package.
static int Recipes(string page, string library, bool write)
{
    string[] assemblies = [.. Directory.GetFiles(library, "*.dll").Where(file => Path.GetFileName(file) is "Confectio.dll" or "MathNet.Numerics.dll" or "Sep.dll" or "UnitsNet.dll")];
    int wrong = 0, runs = 0;
    string fresh = string.Join("\n## ", File.ReadAllText(page).Split("\n## ").Select(section =>
    {
        string folder = Directory.CreateTempSubdirectory("confectio-recipe").FullName;
        File.WriteAllText(Path.Combine(folder, "Directory.Build.props"),
            $"<Project><ItemGroup>{string.Concat(assemblies.Select(file => $"<Reference Include=\"{file}\" />"))}</ItemGroup></Project>");
        foreach (Match file in Regex.Matches(section, "<!-- (file|cell): (?<name>.*?) -->\n```[a-z]+\n(?<text>.*?)```\n", RegexOptions.Singleline))
        {
            string path = Path.Combine(folder, file.Groups["name"].Value);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            bool isScript = path.EndsWith(".fsx", StringComparison.Ordinal);
            File.AppendAllText(path, file.Groups["text"].Value.Replace("#:package Confectio@*-*\n", "", StringComparison.Ordinal).Replace("#r \"nuget: Confectio, *-*\"\n",
                isScript ? string.Concat(assemblies.Select(assembly => $"#r \"{assembly}\"\n")) : "", StringComparison.Ordinal));
        }
        section = Regex.Replace(section, "(?<head><!-- run: (?<command>dotnet .*?) -->\n```text\n)(?<lines>.*?)```\n", run =>
        {
            runs++;
            string printed = Run(run.Groups["command"].Value, folder);
            // A build says more than what is wrong, and names its files whole.
            string[] lines = [.. printed.Split('\n').Where(line => line.Length > 0 && (!run.Groups["command"].Value.StartsWith("dotnet build", StringComparison.Ordinal)
                || line.Contains(": error ", StringComparison.Ordinal) || line.Contains(": warning ", StringComparison.Ordinal))).Select(line => Regex.Replace(line.Replace(folder + "/", "", StringComparison.Ordinal), @" \[[^]]*\]$", "")).Distinct()];
            return $"{run.Groups["head"].Value}{string.Concat(lines.Select(line => line + "\n"))}```\n";
        }, RegexOptions.Singleline);
        Directory.Delete(folder, recursive: true);
        return section;
    }));
    if (write)
        File.WriteAllText(page, fresh);
    else if (fresh != File.ReadAllText(page))
    {
        wrong++;
        Console.WriteLine($"{page} does not show what its recipes print; run check.cs with --write and see what changed");
        Console.WriteLine(fresh);
    }
    Console.WriteLine($"{runs} recipes, {wrong} wrong");
    return runs > 0 && wrong == 0 ? 0 : 1;
}

static string Run(string command, string folder)
{
    ProcessStartInfo start = new("dotnet", command["dotnet ".Length..]) { WorkingDirectory = folder, RedirectStandardOutput = true };
    start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
    using Process process = Process.Start(start)!;
    string printed = process.StandardOutput.ReadToEnd();
    process.WaitForExit();
    return printed;
}
