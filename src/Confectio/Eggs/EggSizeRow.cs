using Confectio.Sources;

namespace Confectio.Eggs;

/// <summary>One row of the table of egg sizes; what is blank there is null here.</summary>
internal sealed class EggSizeRow
{
    // The avoirdupois ounce of 1959, exactly.
    private const double GramsPerOunce = 453.59237 / 16;

    public required string System { get; init; }

    public required string SystemName { get; init; }

    public required string Key { get; init; }

    public required string Name { get; init; }

    public required double? Low { get; init; }

    public required double? High { get; init; }

    public required double? OuncesPerDozen { get; init; }

    public required double? Edible { get; init; }

    public required double? White { get; init; }

    public required double? Yolk { get; init; }

    public required Provenance Class { get; init; }

    public required Provenance Parts { get; init; }

    /// <summary>The low end of the class, g; by the dozen where that is what is printed.</summary>
    public double? LowGrams => OuncesPerDozen * GramsPerOunce / 12 ?? Low;
}
