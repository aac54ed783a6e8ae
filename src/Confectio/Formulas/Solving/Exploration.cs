using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>The answers along an end of a demand.</summary>
internal static class Exploration
{
    private const int MostPlaces = 1000;

    public static IReadOnlyList<SolvedFormula> Of(FormulaProblem problem, Demand demand, ReadOnlySpan<double> ends, bool ofLowEnd)
    {
        MovedEnd moved = new(problem, demand, ofLowEnd);
        if (ends.Length is 0 or > MostPlaces)
            throw new ArgumentException($"{nameof(ends)} has {ends.Length} places; from 1 to {MostPlaces} are expected.", nameof(ends));
        (double least, double most) = demand.EndRange;
        double low = moved.MovesLow ? least : Math.Max(demand.LowEnd, least), high = moved.MovesHigh ? most : demand.HighEnd;
        foreach (double end in ends)
        {
            if (!(end >= low && end <= high))
                throw new ArgumentOutOfRangeException(nameof(ends), end, string.Create(CultureInfo.InvariantCulture,
                    $"The {(ofLowEnd ? "low" : "high")} end of '{demand}' was to be {end * demand.Factor}{demand.UnitText}; from {low * demand.Factor} to {high * demand.Factor}{demand.UnitText} is expected."));
        }
        SolvedFormula[] answers = new SolvedFormula[ends.Length];
        for (int i = 0; i < answers.Length; i++)
            answers[i] = moved.At(ends[i]).Solve();
        return answers;
    }
}
