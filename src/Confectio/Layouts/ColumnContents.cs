namespace Confectio.Layouts;

/// <summary>What the cells of a column hold, for the most part.</summary>
internal enum ColumnContents
{
    Words,
    Amount,
    Mass,
    Number,

    /// <summary>A weight or a bare number.</summary>
    Figure,
    Packing,
}
