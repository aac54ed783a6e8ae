namespace Confectio.Sources;

/// <summary>A publication, a legal text or a stated judgement that figures come from.</summary>
public sealed class Source
{
    internal Source(string key, string shortName, string citation, string edition, string licence, string note)
    {
        Key = key;
        ShortName = shortName;
        Citation = citation;
        Edition = edition;
        Licence = licence;
        Note = note;
    }

    /// <summary>The key that data tables and machine output use, such as <c>usda-sr</c>.</summary>
    public string Key { get; }

    /// <summary>A name short enough for a line of text, such as <c>USDA SR</c>.</summary>
    public string ShortName { get; }

    /// <summary>The full citation: author or agency, title, year.</summary>
    public string Citation { get; }

    /// <summary>The edition or release used; empty where there is none.</summary>
    public string Edition { get; }

    /// <summary>The terms under which the figures may be used, such as <c>public domain</c>.</summary>
    public string Licence { get; }

    /// <summary>How the figures were seen, and anything odd about them; may be empty.</summary>
    public string Note { get; }

    /// <summary>The short name.</summary>
    public override string ToString() => ShortName;
}
