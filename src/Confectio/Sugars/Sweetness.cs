using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Sugars;

/// <summary>How sweet something is by one table, and what of it the table says nothing about.</summary>
public sealed class Sweetness
{
    internal Sweetness(SweetnessTable table, Spread value, IReadOnlyList<Constituent> missing)
    {
        Table = table;
        Value = value;
        Missing = missing;
    }

    /// <summary>The table.</summary>
    public SweetnessTable Table { get; }

    /// <summary>Grams of sucrose that a gram is as sweet as.</summary>
    public Spread Value { get; }

    /// <summary>Sugars and other sweet things that are there and that the table has no figure for; they count nothing.</summary>
    public IReadOnlyList<Constituent> Missing { get; }

    /// <summary>One line, such as <c>0.62 by joined</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value.Likely:0.00} by {Table.Key}");
}
