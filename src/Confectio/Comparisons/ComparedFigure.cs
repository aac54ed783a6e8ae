using System.Globalization;
using Confectio.Text;

namespace Confectio.Comparisons;

/// <summary>A figure of two formulas, and their difference with a spread of its own: an error that both have cancels.</summary>
public sealed class ComparedFigure
{
    internal ComparedFigure(string name, string unit, Spread? first, Spread? second, Spread? difference, string why, ComparedAnswer? answer = null)
    {
        Name = name;
        Unit = unit;
        First = first;
        Second = second;
        Difference = difference;
        Why = VisibleText.Of(why);
        Answer = answer ?? AnswerOf(difference, Math.Max(Math.Abs(first?.Likely ?? 0), Math.Abs(second?.Likely ?? 0)));
    }

    /// <summary>What it is of, such as <c>fat</c>.</summary>
    public string Name { get; }

    /// <summary>Its unit, such as <c>%</c>; empty of a water activity.</summary>
    public string Unit { get; }

    /// <summary>Of the first formula; <see langword="null"/> where it is not known.</summary>
    public Spread? First { get; }

    /// <summary>Of the second formula; <see langword="null"/> where it is not known.</summary>
    public Spread? Second { get; }

    /// <summary>
    /// The second less the first. The butter of both is the same butter, and their cups are filled alike: such an error is counted by what it does to the difference,
    /// and where both have as much of it, that is nothing. <see langword="null"/> where one is not known.
    /// </summary>
    public Spread? Difference { get; }

    /// <summary>Which of them has more.</summary>
    public ComparedAnswer Answer { get; }

    /// <summary>Why it is not known or cannot be told, or what the figure leaves out; may be empty.</summary>
    public string Why { get; }

    /// <summary>One line, such as <c>fat: 27.3 % and 31.5 %, 4.2 more in the second (3.9 to 4.5)</c>.</summary>
    public override string ToString() => $"{VisibleText.Of(Name)}: " + Answer switch
    {
        ComparedAnswer.NotKnown => $"not known{(Why.Length > 0 ? $", {Why}" : "")}",
        ComparedAnswer.Same => $"{Text(First)} in both",
        ComparedAnswer.CannotBeTold => $"{Text(First)} and {Text(Second)}; which has more cannot be told{Told(", the difference being", " and ")}",
        _ => $"{Text(First)} and {Text(Second)}, {Number(Math.Abs(Difference?.Likely ?? 0))} more in the {(Answer == ComparedAnswer.First ? "first" : "second")}{Range()}",
    };

    /// <summary>A figure with its unit.</summary>
    internal string Text(Spread? value) => value is Spread known ? Number(known.Likely) + (Unit.Length > 0 ? " " + Unit : "") : "not known";

    internal string Number(double value) => (value + 0.0).ToString(Unit.Length > 0 ? "0.0" : "0.000", CultureInfo.InvariantCulture) is var text && text.TrimStart('-').Trim('0', '.').Length == 0
        ? text.TrimStart('-') : (value + 0.0).ToString(Unit.Length > 0 ? "0.0" : "0.000", CultureInfo.InvariantCulture);

    /// <summary>The range of how much more; empty where it is exact.</summary>
    internal string Range()
    {
        if (Difference is not Spread known || known.Low == known.High)
            return "";
        (double low, double high) = known.Likely < 0 ? (-known.High, -known.Low) : (known.Low, known.High);
        return $" ({Number(low)} to {Number(high)})";
    }

    private string Told(string lead, string between) => Difference is Spread known ? $"{lead} between {Number(known.Low)}{between}{Number(known.High)}" : "";

    private static ComparedAnswer AnswerOf(Spread? difference, double size)
    {
        if (difference is not Spread known)
            return ComparedAnswer.NotKnown;
        // What is the same but for the last bits of a sum is the same, however far off both may be.
        if (Math.Abs(known.Likely) <= 1e-9 * Math.Max(size, 1e-3))
            return ComparedAnswer.Same;
        return known.Low > 0 ? ComparedAnswer.Second : known.High < 0 ? ComparedAnswer.First : ComparedAnswer.CannotBeTold;
    }
}
