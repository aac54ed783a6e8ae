namespace Confectio.Ingredients.Names;

/// <summary>Why a name is no food.</summary>
internal enum NameMiss : byte
{
    None,
    Empty,
    TooLong,
    Measure,
    UnknownWord,
    Percent,
    ChangesFood,
    NoSuchFood,
    Unclear,
    TwoNames,
    TwoReadings,
    PartUnknown,
}
