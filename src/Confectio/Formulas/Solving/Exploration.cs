using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>The answers along an end of a demand.</summary>
internal static class Exploration
{
    private const int MostPlaces = 1000;

    public static IReadOnlyList<SolvedFormula> Of(FormulaProblem problem, Demand demand, ReadOnlySpan<double> ends, bool ofLowEnd)
    {
        EndOf(problem, demand, ofLowEnd);
        if (ends.Length is 0 or > MostPlaces)
            throw new ArgumentException($"{nameof(ends)} has {ends.Length} places; from 1 to {MostPlaces} are expected.", nameof(ends));
        bool movesLow = ofLowEnd || demand.IsOneValue, movesHigh = !ofLowEnd || demand.IsOneValue;
        (double least, double most) = demand switch
        {
            Demand.Share share => (0, share.Of.Equals(FormulaPart.Everything) ? 1 : FormulaProblem.MaximumShare),
            Demand.PropertyValue property => (property.Asked.Minimum, property.Asked.Maximum),
            _ => (0, FormulaProblem.MaximumGrams),
        };
        double low = movesLow ? least : Math.Max(demand.LowEnd, least), high = movesHigh ? most : demand.HighEnd;
        foreach (double end in ends)
        {
            if (!(end >= low && end <= high))
                throw new ArgumentOutOfRangeException(nameof(ends), end, string.Create(CultureInfo.InvariantCulture,
                    $"The {(ofLowEnd ? "low" : "high")} end of '{demand}' was to be {end * demand.Factor}{demand.UnitText}; from {low * demand.Factor} to {high * demand.Factor}{demand.UnitText} is expected."));
        }
        SolvedFormula[] answers = new SolvedFormula[ends.Length];
        for (int i = 0; i < answers.Length; i++)
            answers[i] = At(problem, demand, movesLow ? ends[i] : demand.LowEnd, movesHigh ? ends[i] : demand.HighEnd).Solve();
        return answers;
    }

    /// <summary>The end of a demand of a problem.</summary>
    public static double EndOf(FormulaProblem problem, Demand demand, bool ofLowEnd)
    {
        if (!problem.Demands.Contains(demand))
            throw new ArgumentException($"{nameof(demand)} '{demand}' is not a demand of the problem.", nameof(demand));
        double at = ofLowEnd ? demand.LowEnd : demand.HighEnd;
        return double.IsFinite(at) && demand.HasMovableEnds ? at
            : throw new ArgumentException($"{nameof(demand)} '{demand}' has no {(ofLowEnd ? "low" : "high")} end.", nameof(demand));
    }

    /// <summary>The problem with the ends of a demand elsewhere.</summary>
    public static FormulaProblem At(FormulaProblem problem, Demand demand, double low, double high) =>
        problem.Replacing(demand, demand.Between(low, high));
}
