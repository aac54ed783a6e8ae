namespace Confectio.Cakes;

/// <summary>The sizes of a shape as an order states them, by name. What is missing or wrong is noted, and a harmless value given.</summary>
internal interface IShapeSizes
{
    /// <summary>Whether something stands under a name.</summary>
    bool Has(string name);

    /// <summary>A length that must be there.</summary>
    CakeLength Length(string name);

    /// <summary>A length; so much where it is missing.</summary>
    CakeLength Length(string name, CakeLength missing);

    /// <summary>A whole number that must be there; instead of it so many.</summary>
    int Count(string name, int instead);

    /// <summary>The corners of an outline that must be there.</summary>
    IReadOnlyList<PlanPoint> Outline(string name);

    /// <summary>Notes what is wrong with the shape as a whole.</summary>
    void Wrong(string message);
}
