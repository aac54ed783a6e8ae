using System.Reflection;

namespace Confectio.Text;

/// <summary>Opens the tables that the assembly carries.</summary>
internal static class EmbeddedTable
{
    public static TextReader Open(string fileName)
    {
        Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("Confectio.Data." + fileName)
            ?? throw new InvalidOperationException($"The assembly does not carry the table {fileName}.");
        return new StreamReader(stream);
    }
}
