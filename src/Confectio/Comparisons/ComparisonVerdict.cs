using Confectio.Text;

namespace Confectio.Comparisons;

/// <summary>Which of two formulas is sweeter, softer, or keeps longer: in a word, in a sentence, and what it stands on.</summary>
public sealed class ComparisonVerdict
{
    internal ComparisonVerdict(string question, ComparedAnswer answer, string sentence)
    {
        Question = question;
        Answer = answer;
        Sentence = VisibleText.Of(sentence);
    }

    /// <summary>What was asked: <c>sweeter</c>, <c>softer at 24 °C</c>, <c>keeps longer in the refrigerator</c>.</summary>
    public string Question { get; }

    /// <summary>Which of them is.</summary>
    public ComparedAnswer Answer { get; }

    /// <summary>The answer in a sentence, with the figures; or why there is none.</summary>
    public string Sentence { get; }

    /// <summary>The sentence.</summary>
    public override string ToString() => Sentence;
}
