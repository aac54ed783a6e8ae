namespace Confectio.Formulas;

/// <summary>
/// A kind of property that problems in JSON may ask for by its word, at a condition of their own: solid fat at a temperature, the boiling
/// point under a pressure.
/// </summary>
public sealed class FormulaPropertyKind
{
    private readonly Func<double, FormulaProperty> _make;

    internal FormulaPropertyKind(string word, string condition, double minimum, double maximum, double? usual, Func<double, FormulaProperty> make)
    {
        Word = word;
        Condition = condition;
        Minimum = minimum;
        Maximum = maximum;
        Usual = usual;
        _make = make;
    }

    /// <summary>A property that is asked at nothing.</summary>
    internal FormulaPropertyKind(FormulaProperty property)
        : this(property.Word, "", 0, 0, 0, _ => property)
    {
    }

    /// <summary>The word in files, such as <c>solid-fat</c>.</summary>
    public string Word { get; }

    /// <summary>The member that says at what it is asked, such as <c>celsius</c>; empty of one that is asked at nothing, as energy is.</summary>
    public string Condition { get; }

    /// <summary>The least of the condition.</summary>
    public double Minimum { get; }

    /// <summary>The most of the condition.</summary>
    public double Maximum { get; }

    /// <summary>The condition where none is stated; <see langword="null"/> where one must be.</summary>
    public double? Usual { get; }

    /// <summary>The property at a condition.</summary>
    /// <param name="condition">The condition, from <see cref="Minimum"/> to <see cref="Maximum"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="condition"/> is outside its range.</exception>
    public FormulaProperty At(double condition) => _make(Guard.InRange(condition, Minimum, Maximum));

    /// <summary>The word and the condition, such as <c>solid-fat at celsius</c>.</summary>
    public override string ToString() => Condition.Length > 0 ? $"{Word} at {Condition}" : Word;
}
