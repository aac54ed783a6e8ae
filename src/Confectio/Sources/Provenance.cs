namespace Confectio.Sources;

/// <summary>Where one figure comes from: the source, the place in it, and what kind of knowledge it is.</summary>
public sealed class Provenance
{
    internal Provenance(Source source, Evidence evidence, string locator, string note)
    {
        Source = source;
        Evidence = evidence;
        Locator = locator;
        Note = note;
    }

    /// <summary>The source.</summary>
    public Source Source { get; }

    /// <summary>The kind of knowledge.</summary>
    public Evidence Evidence { get; }

    /// <summary>The place in the source (table, page, food number); may be empty.</summary>
    public string Locator { get; }

    /// <summary>Anything odd about the figure; may be empty.</summary>
    public string Note { get; }

    /// <summary>One line for a reader, such as <c>USDA SR, NDB 19336 (compiled)</c>.</summary>
    public override string ToString() => Locator.Length == 0
        ? $"{Source.ShortName} ({Evidence.ToWord()})"
        : $"{Source.ShortName}, {Locator} ({Evidence.ToWord()})";
}
