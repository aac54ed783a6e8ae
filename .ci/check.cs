// Small checks that .ci/run needs and a shell cannot make without tools that a fresh machine may lack.
//
//   dotnet run .ci/check.cs json FILE MEMBER  the file is one JSON object with this member, which is not empty
//   dotnet run .ci/check.cs package NUPKG     the package and the symbol package beside it hold what they must
//
// Exit status: 0 all is well, 1 something is missing, 2 bad usage.
using System.IO.Compression;
using System.Text.Json;

if (args is ["json", string file, string member])
{
    using JsonDocument document = JsonDocument.Parse(File.ReadAllBytes(file));
    JsonElement value = document.RootElement.GetProperty(member);
    int entries = value.ValueKind switch { JsonValueKind.Array => value.GetArrayLength(), JsonValueKind.Object => value.EnumerateObject().Count(), _ => 1 };
    Console.WriteLine($"one JSON {document.RootElement.ValueKind} with {entries} in {member}");
    return document.RootElement.ValueKind == JsonValueKind.Object && entries > 0 ? 0 : 1;
}
if (args is not ["package", string package])
{
    Console.Error.WriteLine("usage: check.cs json FILE MEMBER | package NUPKG");
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
