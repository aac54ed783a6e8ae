using Confectio.Sources;

namespace Confectio.Safety;

/// <summary>
/// The interaction tables of pH and water activity in the definition of a time/temperature control for safety food, Food Code 1-201.10. A
/// lookup: it looks at acidity and water activity only, and the local code decides.
/// </summary>
/// <remarks>
/// The tables are about growth in the food. They say nothing of Salmonella that raw egg brings with it: an icing of raw white may need no
/// control by the table and still carry it. See <see cref="HeatCaution.Text"/>.
/// </remarks>
public static class TimeTemperatureControl
{
    /// <summary>Table A: the food was heated to destroy vegetative cells and then packaged.</summary>
    /// <param name="waterActivity">The water activity as measured, from 0 to 1. Of one that was worked out give the range.</param>
    /// <param name="ph">The pH, from 0 to 14.</param>
    /// <returns>The need. Worked number: 0.93 at pH 5.6 needs none by the table, at 5.61 an assessment.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ControlNeed OfHeatedAndPackaged(double waterActivity, double ph)
    {
        Guard.InRange(waterActivity, 0, 1);
        Acidity.Checked(ph);
        return waterActivity <= 0.92 || ph <= 4.6 || (waterActivity <= 0.95 && ph <= 5.6) ? ControlNeed.NotByTheTable
            : ControlNeed.ProductAssessment;
    }

    /// <summary>Table A by an activity that was worked out: the highest it may be decides.</summary>
    /// <param name="waterActivity">The water activity of the food as it will stand, with crystals out; each end from 0 to 1.</param>
    /// <param name="ph">The pH, from 0 to 14.</param>
    /// <returns>The need. Worked number: 0.90 to 0.93 at pH 6 needs an assessment, though the low end would need none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ControlNeed OfHeatedAndPackaged(Spread waterActivity, double ph) => OfHeatedAndPackaged(Highest(waterActivity), ph);

    /// <summary>Table B: the food was not heated, or was heated and not packaged.</summary>
    /// <param name="waterActivity">The water activity as measured, from 0 to 1. Of one that was worked out give the range.</param>
    /// <param name="ph">The pH, from 0 to 14.</param>
    /// <returns>The need. Worked number: 0.88 at pH 5.0 needs none by the table, at 5.1 an assessment.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ControlNeed Of(double waterActivity, double ph)
    {
        Guard.InRange(waterActivity, 0, 1);
        Acidity.Checked(ph);
        return waterActivity < 0.88 || ph < 4.2 || (waterActivity <= 0.90 && ph <= 5.0) || (waterActivity <= 0.92 && ph <= 4.6)
            ? ControlNeed.NotByTheTable : ControlNeed.ProductAssessment;
    }

    /// <summary>Table B by an activity that was worked out: the highest it may be decides.</summary>
    /// <param name="waterActivity">The water activity of the food as it will stand, with crystals out; each end from 0 to 1.</param>
    /// <param name="ph">The pH, from 0 to 14.</param>
    /// <returns>The need. Worked number: 0.86 to 0.89 at pH 6 needs an assessment, though the low end would need none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ControlNeed Of(Spread waterActivity, double ph) => Of(Highest(waterActivity), ph);

    private static double Highest(Spread waterActivity)
    {
        Guard.InRange(waterActivity.Low, 0, 1, nameof(waterActivity));
        return Guard.InRange(waterActivity.High, 0, 1, nameof(waterActivity));
    }
}
