namespace Confectio.Ingredients;

/// <summary>Where a name of an ingredient is used.</summary>
public enum NameRegion
{
    /// <summary>Everywhere.</summary>
    Everywhere,

    /// <summary>The United States.</summary>
    UnitedStates,

    /// <summary>The United Kingdom.</summary>
    UnitedKingdom,

    /// <summary>Australia and New Zealand.</summary>
    Australia,

    /// <summary>Ireland.</summary>
    Ireland,

    /// <summary>South Africa.</summary>
    SouthAfrica,

    /// <summary>Canada.</summary>
    Canada,
}

/// <summary>A name that an ingredient goes by.</summary>
public sealed class IngredientName
{
    internal IngredientName(string text, NameRegion region)
    {
        Text = text;
        Region = region;
    }

    /// <summary>The name.</summary>
    public string Text { get; }

    /// <summary>Where it is used.</summary>
    public NameRegion Region { get; }

    /// <summary>The name.</summary>
    public override string ToString() => Text;
}
