namespace Confectio.Text;

/// <summary>
/// Reads a text line by line without ever holding more than a line of a stated length: a line of any length costs no memory.
/// </summary>
internal static class ShortLines
{
    /// <summary>
    /// The lines, counted from 1, ended by LF, CR or CR LF. A line longer than <paramref name="longest"/> characters comes as its
    /// beginning, and says that it was cut. A byte-order mark is left out.
    /// </summary>
    public static IEnumerable<(int Number, string Text, bool IsCut)> Of(TextReader reader, int longest)
    {
        char[] buffer = new char[4096], line = new char[longest];
        int number = 1, length = 0, got;
        bool isCut = false, afterReturn = false, started = false;
        while ((got = reader.Read(buffer, 0, buffer.Length)) > 0)
        {
            for (int i = 0; i < got; i++)
            {
                char c = buffer[i];
                bool isMark = c == '\uFEFF' && !started, endsReturn = c == '\n' && afterReturn;
                started = true;
                afterReturn = c == '\r';
                if (isMark || endsReturn)
                    continue;
                if (c is '\n' or '\r')
                {
                    yield return (number++, new string(line, 0, length), isCut);
                    length = 0;
                    isCut = false;
                }
                else if (length < longest)
                {
                    line[length++] = c;
                }
                else
                {
                    isCut = true;
                }
            }
        }
        if (length > 0)
            yield return (number, new string(line, 0, length), isCut);
    }
}
