using System.Diagnostics;
using System.Text.Json;
using Xunit;

namespace Confectio.Tests.Examples;

/// <summary>
/// The examples as programs. Their built assemblies are named by the environment variable CONFECTIO_EXAMPLES, parted as paths are; without it these tests are skipped,
/// for building seven programs takes longer than all other tests.
/// </summary>
public static class ExampleProgram
{
    private static readonly string[] s_built = (Environment.GetEnvironmentVariable("CONFECTIO_EXAMPLES") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Whether there is something to run.</summary>
    public static bool AreBuilt => s_built.Length > 0;

    /// <summary>An empty folder where the programs run, and may leave what they write.</summary>
    public static string Folder { get; } = Directory.CreateTempSubdirectory("confectio-examples").FullName;

    /// <summary>A file of docs/examples/data.</summary>
    public static string Data(string name) => Path.Combine(AppContext.BaseDirectory, "Examples", name);

    /// <summary>A file of its own with this text.</summary>
    public static string Written(string text)
    {
        string path = Path.Combine(Folder, Guid.NewGuid().ToString("N"));
        File.WriteAllText(path, text);
        return path;
    }

    public static (int Status, string Output, string Error) Run(string name, params IEnumerable<string> arguments)
    {
        ProcessStartInfo start = new("dotnet", [s_built.Single(path => Path.GetFileNameWithoutExtension(path) == name), .. arguments])
        {
            WorkingDirectory = Folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
            StandardErrorEncoding = System.Text.Encoding.UTF8,
        };
        start.Environment["DOTNET_TieredPGO"] = "0"; // it starts sooner
        start.Environment["LC_ALL"] = "tr_TR.UTF-8"; // no answer depends on the country, and this one is the hardest
        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        Task<string> output = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        Task.WaitAll(output, error);
        process.WaitForExit();
        return (process.ExitCode, output.Result, error.Result);
    }

    /// <summary>All texts and names of a JSON object, with nothing escaped.</summary>
    public static string Words(string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        return string.Join('\n', Of(document.RootElement));

        static IEnumerable<string> Of(JsonElement element) => element.ValueKind switch
        {
            JsonValueKind.Object => element.EnumerateObject().SelectMany(member => Of(member.Value).Prepend(member.Name)),
            JsonValueKind.Array => element.EnumerateArray().SelectMany(Of),
            _ => [element.ToString()],
        };
    }
}
