namespace Confectio.Text;

/// <summary>The fields of the row that is being read. Whoever reads a text has its own; a row is valid until the next is read.</summary>
internal abstract class RowCells
{
    /// <summary>How many fields the row has.</summary>
    public abstract int Count { get; }

    /// <summary>A field without its quotation marks.</summary>
    public abstract ReadOnlySpan<char> this[int column] { get; }
}
