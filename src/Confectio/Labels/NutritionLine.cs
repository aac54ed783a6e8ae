using System.Globalization;
using Confectio.Formulas.Solving;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Labels;

/// <summary>One line of a nutrition panel.</summary>
public sealed class NutritionLine
{
    internal NutritionLine(LabelNutrient nutrient, NutritionFigure per100Grams, NutritionFigure? perPortion, int? percent, Provenance? percentProvenance)
    {
        Nutrient = nutrient;
        Per100Grams = per100Grams;
        PerPortion = perPortion;
        ReferencePercent = percent;
        ReferenceProvenance = percentProvenance;
    }

    /// <summary>What it is a figure of.</summary>
    public LabelNutrient Nutrient { get; }

    /// <summary>Whether it is part of the line above that is not: saturates of fat, sugars and fibre of an American carbohydrate.</summary>
    public bool IsPartOfAnother => Nutrient is LabelNutrient.Saturates or LabelNutrient.Sugars or LabelNutrient.Polyols or LabelNutrient.Starch;

    /// <summary>For 100 g.</summary>
    public NutritionFigure Per100Grams { get; }

    /// <summary>For a portion; <see langword="null"/> where none was told.</summary>
    public NutritionFigure? PerPortion { get; }

    /// <summary>
    /// The share of the daily value (United States) or reference intake (European Union) in a portion, or in 100 g where no portion was told, whole per
    /// cent, of the figure that was not rounded; <see langword="null"/> where there is none for it.
    /// </summary>
    public int? ReferencePercent { get; }

    /// <summary>
    /// How far the food may be off this figure in 100 g, g each way, by the guidance to the controls of the European Union (<see cref="LabelTolerance"/>, from memory); <see langword="null"/> of
    /// energy and of an American panel.
    /// </summary>
    public double? ToleranceGrams { get; internal init; }

    /// <summary>Where the daily amount comes from.</summary>
    public Provenance? ReferenceProvenance { get; }

    /// <summary>One line, such as <c>fat: 27 g in 100 g (25 g to 28 g), 8.9 g in a portion (8.4 g to 9.4 g), 13 %</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{EnumWords.Of(Nutrient, ' ')}: {Told(Per100Grams, "100 g")}{(PerPortion is null ? "" : ", " + Told(PerPortion, "a portion"))}")
        + (ReferencePercent is int percent ? string.Create(CultureInfo.InvariantCulture, $", {percent} %") : "");

    private static string Told(NutritionFigure figure, string of) => figure.PrintedLow == figure.PrintedHigh ? $"{figure.Printed} in {of}" : $"{figure.Printed} in {of} ({figure.PrintedLow} to {figure.PrintedHigh})";
}
