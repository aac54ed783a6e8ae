using System.Globalization;
using System.Text;

namespace Confectio.Examples;

/// <summary>The edges of an example: its answer leaves in one piece, a failure is one line and a status, and nothing that a file or an argument holds reaches the terminal raw.</summary>
public static class Shell
{
    private const int Failed = 2;

    /// <summary>The files of a folder, those that begin with a dot left out; a file is itself.</summary>
    public static IEnumerable<string> Files(string word) => Directory.Exists(word)
        ? Directory.GetFiles(word).Where(file => !Path.GetFileName(file).StartsWith('.')).Order(StringComparer.Ordinal) : [word];

    /// <summary>The bytes of a file, or of the standard input for <c>-</c>.</summary>
    public static byte[] Bytes(string file)
    {
        if (file != "-")
            return File.ReadAllBytes(file);
        using MemoryStream all = new();
        Console.OpenStandardInput().CopyTo(all);
        return all.ToArray();
    }

    /// <summary>What a file, a disk or an input may do wrong. Anything else is a mistake of ours.</summary>
    public static bool Expected(Exception e) =>
        e is IOException or UnauthorizedAccessException or NotSupportedException or FormatException or ArgumentException or InvalidOperationException;

    /// <summary>The first line of a message, without the name of a parameter that the platform adds.</summary>
    public static string Reason(Exception e) => e.Message.Split('\n')[0].Split(" (Parameter '")[0];

    /// <summary>A text in which what begins a line, moves a cursor, colours a screen, turns the direction of writing round or cannot be seen is shown as what cannot be shown.</summary>
    public static string Shown(string text) => string.Concat(text.Select(c => IsHidden(c) ? '\uFFFD' : c));

    /// <summary>Reads something; what goes wrong is said with its name.</summary>
    public static T Named<T>(string name, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception e) when (Expected(e))
        {
            throw new FormatException($"{name}: {Reason(e)}", e);
        }
    }

    /// <summary>Writes lines of text, as <see cref="Shown"/> but for their ends.</summary>
    public static int Answer(string lines, int status) => Answer(Encoding.UTF8.GetBytes(string.Concat(lines.Select(c => IsHidden(c) && c != '\n' ? '\uFFFD' : c))), status);

    /// <summary>Writes the whole answer at once; where it cannot be written, that is the answer.</summary>
    public static int Answer(byte[] written, int status)
    {
        try
        {
            using Stream output = Console.OpenStandardOutput();
            output.Write(written);
            output.Flush();
            return status;
        }
        catch (Exception e) when (Expected(e))
        {
            return Fail($"the answer could not be written: {Reason(e)}");
        }
    }

    /// <summary>Says in one line of the error stream why there is no answer.</summary>
    public static int Fail(string message, int status = Failed)
    {
        try
        {
            Console.Error.WriteLine(Shown(string.Join("; ", message.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))));
        }
        catch (Exception e) when (Expected(e))
        {
            // There is nowhere left to say it; the status does.
        }
        return status;
    }

    private static bool IsHidden(char c) => char.IsControl(c)
        || CharUnicodeInfo.GetUnicodeCategory(c) is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}
