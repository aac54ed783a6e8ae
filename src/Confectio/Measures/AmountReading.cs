namespace Confectio.Measures;

/// <summary>How numbers in a written amount are read. Reading never depends on the culture of the machine.</summary>
public enum AmountReading
{
    /// <summary>A decimal point: <c>1.5 cups</c>. A comma between digits is refused, because nobody can tell 1,500 from 1.5.</summary>
    DecimalPoint,

    /// <summary>A decimal comma: <c>1,5 dl</c>. A point between digits is refused.</summary>
    DecimalComma,
}
