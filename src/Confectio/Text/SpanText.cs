namespace Confectio.Text;

/// <summary>Text put where a caller gave room, for the structs that write themselves.</summary>
internal static class SpanText
{
    public static bool TryWrite(string text, Span<char> destination, out int charsWritten)
    {
        bool fits = text.TryCopyTo(destination);
        charsWritten = fits ? text.Length : 0;
        return fits;
    }
}
