namespace Confectio.Keeping;

/// <summary>Where food is kept.</summary>
public enum KeepingPlace
{
    /// <summary>On the counter, at room temperature.</summary>
    Counter,

    /// <summary>In the refrigerator, at 5 °C (41 °F) or colder.</summary>
    Refrigerator,

    /// <summary>In the freezer, at −18 °C (0 °F) or colder.</summary>
    Freezer,
}
