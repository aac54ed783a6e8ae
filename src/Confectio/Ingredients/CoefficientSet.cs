using System.Globalization;

namespace Confectio.Ingredients;

/// <summary>The coefficients of one equation for one substance. They are looked up by name when a model is made, and never later.</summary>
internal sealed class CoefficientSet(string file, Coefficient[] rows)
{
    private readonly Coefficient[] _rows = rows;

    public Substance Substance => _rows[0].Substance;

    /// <summary>The coefficients, in the order of the table.</summary>
    public IReadOnlyList<Coefficient> All => _rows;

    /// <summary>What the equation holds for: all rows of a set have the same.</summary>
    public double Lowest => Need(_rows[0].Lowest, "low");

    public double Highest => Need(_rows[0].Highest, "high");

    public double MinimumCelsius => Need(_rows[0].MinimumCelsius, "low_celsius");

    public double MaximumCelsius => Need(_rows[0].MaximumCelsius, "high_celsius");

    /// <summary>The value of a coefficient.</summary>
    /// <exception cref="InvalidOperationException">The set has no such coefficient.</exception>
    public double this[string name] => Find(name)?.Value ?? throw Lacks(name);

    public Coefficient? Find(string name) => Array.Find(_rows, row => row.Name == name);

    /// <summary>
    /// The coefficients of these names: the first is there, none is left out before one that is, and there are no others. What is left out
    /// is 0.
    /// </summary>
    public double[] Terms(params ReadOnlySpan<string> names)
    {
        double[] values = new double[names.Length];
        if (_rows.Length > names.Length)
            throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture,
                $"{file}: {_rows[0].EquationKey} of {Substance.Key} has {_rows.Length} coefficients; at most {names.Length} are used."));
        for (int i = 0; i < _rows.Length; i++)
            values[i] = this[names[i]];
        return values;
    }

    /// <summary>The same, with the strengths within which it is held.</summary>
    public HeldPolynomial Held(string letter)
    {
        double[] values = Terms(letter + "0", letter + "1", letter + "2", letter + "3");
        return new HeldPolynomial(values[0], values[1], values[2], values[3], _rows[0].Lowest ?? 0, _rows[0].Highest ?? 1);
    }

    private double Need(double? value, string column) => value ?? throw Lacks(column);

    private InvalidOperationException Lacks(string what) => new($"{file}: {_rows[0].EquationKey} of {Substance.Key} has no {what}.");
}
