using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Sugars;

/// <summary>How sweet one substance is in one table, sucrose being 1.</summary>
internal sealed class SweetnessFigure
{
    internal SweetnessFigure(Constituent constituent, Spread value, Provenance provenance)
    {
        Constituent = constituent;
        Value = value;
        Provenance = provenance;
    }

    /// <summary>The substance.</summary>
    public Constituent Constituent { get; }

    /// <summary>Grams of sucrose that a gram of it is as sweet as.</summary>
    public Spread Value { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The sugar and its sweetness, sucrose being 1.</summary>
    public override string ToString() => $"{Constituent}: {Value}";
}
