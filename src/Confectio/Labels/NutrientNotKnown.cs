using Confectio.Formulas.Solving;
using Confectio.Text;

namespace Confectio.Labels;

/// <summary>A line that a panel may have and this one has not, because it is not known: that is no 0.</summary>
public sealed class NutrientNotKnown
{
    internal NutrientNotKnown(LabelNutrient nutrient, string why)
    {
        Nutrient = nutrient;
        Why = why;
    }

    /// <summary>The nutrient.</summary>
    public LabelNutrient Nutrient { get; }

    /// <summary>Why it is not known, in a sentence.</summary>
    public string Why { get; }

    /// <summary>The nutrient and why.</summary>
    public override string ToString() => $"{EnumWords.Of(Nutrient, ' ')}: {Why}";
}
