using System.Globalization;
using Confectio.Heat;
using Confectio.Keeping;
using Confectio.Sugars;

namespace Confectio.Comparisons;

/// <summary>At which temperatures two formulas are compared, by which table of sweetness and whose fats, and what is known of them.</summary>
public sealed class ComparisonOptions
{
    private static readonly double[] s_usual = [24];

    /// <summary>The temperatures at which solid fat is compared, °C, each from −40 to 150; 24 unless stated, at most 24 of them.</summary>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentException">There are none, or more than 24.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A temperature is outside its range.</exception>
    public IReadOnlyList<double> Celsius { get; init => field = Checked(value, nameof(Celsius)); } = s_usual;

    /// <summary>The table of sweetness; <c>joined</c> unless stated.</summary>
    /// <exception cref="ArgumentNullException">The table is null.</exception>
    public SweetnessTable Sweetness { get; init => field = Guard.NotNull(value, nameof(Sweetness)); } = SweetnessTable.Get("joined");

    /// <summary>Whose melting curves: the built-in ones unless stated.</summary>
    /// <exception cref="ArgumentNullException">The curves are null.</exception>
    public FatCurves Fats { get; init => field = Guard.NotNull(value, nameof(Fats)); } = FatCurves.BuiltIn;

    /// <summary>The kind of food of the first; by what is in it where none is told.</summary>
    public KeptFood? FirstFood { get; init; }

    /// <summary>The kind of food of the second; by what is in it where none is told.</summary>
    public KeptFood? SecondFood { get; init; }

    /// <summary>The measured pH of the first; never guessed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside 0 to 14.</exception>
    public Spread? FirstPh { get; init => field = Acidic(value, nameof(FirstPh)); }

    /// <summary>The measured pH of the second; never guessed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside 0 to 14.</exception>
    public Spread? SecondPh { get; init => field = Acidic(value, nameof(SecondPh)); }

    /// <summary>The choices, such as <c>at 24 °C, sweetness by joined</c>.</summary>
    public override string ToString() => $"at {string.Join(", ", Celsius.Select(celsius => celsius.ToString("0.##", CultureInfo.InvariantCulture)))} °C, sweetness by {Sweetness}";

    internal static ComparisonOptions Default { get; } = new();

    private static double[] Checked(IReadOnlyList<double> value, string name)
    {
        Guard.NotNull(value, name);
        if (value.Count is 0 or > 24)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name} has {value.Count} temperatures; from 1 to 24 are expected."), name);
        return [.. value.Select(celsius => Guard.InRange(celsius, SolidFatCurve.MinimumCelsius, SolidFatCurve.MaximumCelsius, name))];
    }

    private static Spread? Acidic(Spread? value, string name)
    {
        if (value is Spread told)
        {
            Guard.InRange(told.Low, 0, 14, name);
            Guard.InRange(told.High, 0, 14, name);
        }
        return value;
    }
}
