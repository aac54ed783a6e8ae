using System.Globalization;

namespace Confectio.Conversions;

/// <summary>What a <see cref="Conversion"/> takes into its spread besides the density.</summary>
public sealed class ConversionOptions
{
    /// <summary>The density alone: the measure holds exactly what its system says.</summary>
    public static ConversionOptions Default { get; } = new();

    /// <summary>The density and a household measure that may hold up to 5 % more or less than it says (from memory).</summary>
    public static ConversionOptions HouseholdTools { get; } = new() { ToolTolerance = Measures.MeasuringSystem.ToolTolerance };

    /// <summary>
    /// How far the measure itself may be off, as a fraction from 0 to 0.2. It is taken as a rectangular distribution:
    /// u(ln V) = tolerance/√3 (GUM 4.3.7).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its range.</exception>
    public double ToolTolerance
    {
        get;
        init => field = Guard.InRange(value, 0, 0.2, nameof(ToolTolerance));
    }

    /// <summary>What the spread takes in.</summary>
    public override string ToString() => ToolTolerance == 0 ? "the density alone"
        : string.Create(CultureInfo.InvariantCulture, $"the density and measures within {100 * ToolTolerance:0.##} %");
}
