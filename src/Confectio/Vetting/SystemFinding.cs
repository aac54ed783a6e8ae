using System.Globalization;
using Confectio.Measures;

namespace Confectio.Vetting;

/// <summary>Which measuring system a table uses, and how sure that is.</summary>
public sealed class SystemFinding
{
    /// <summary>A system is claimed only from this probability on; below it the finding says what cannot be told apart.</summary>
    public const double Sure = 0.9;

    internal SystemFinding(IReadOnlyList<MeasuringSystem> systems, double[] probabilities, bool given)
    {
        WasGiven = given;
        Probabilities = [.. systems.Select((system, i) => new SystemProbability(system, probabilities[i]))];
        Best = Probabilities.MaxBy(candidate => candidate.Probability)!.System;
        IGrouping<string, SystemProbability> family = Probabilities.GroupBy(candidate => candidate.System.Family)
            .MaxBy(group => group.Sum(candidate => candidate.Probability))!;
        Family = family.Key;
        FamilyProbability = Math.Min(1, family.Sum(candidate => candidate.Probability));
    }

    /// <summary>The most likely system.</summary>
    public MeasuringSystem Best { get; }

    /// <summary>The most likely family of systems, such as <c>us</c>.</summary>
    public string Family { get; }

    /// <summary>How likely the family is, from 0 to 1.</summary>
    public double FamilyProbability { get; }

    /// <summary>Every system with its probability.</summary>
    public IReadOnlyList<SystemProbability> Probabilities { get; }

    /// <summary>Whether the caller named the system, so that nothing was inferred.</summary>
    public bool WasGiven { get; }

    /// <summary>Whether one system stands out from all others: its probability is at least <see cref="Sure"/>.</summary>
    public bool IsDistinguishable => Probabilities.Any(candidate => candidate.Probability >= Sure);

    /// <summary>The finding in a sentence for a reader.</summary>
    public override string ToString()
    {
        if (WasGiven)
            return $"{Best.Name}, as you said";
        if (IsDistinguishable)
            return string.Create(CultureInfo.InvariantCulture, $"{Best.Name} ({Percent(Probability(Best))} sure)");
        if (FamilyProbability >= Sure)
        {
            return string.Create(CultureInfo.InvariantCulture,
                $"{FamilyName} ({Percent(FamilyProbability)} sure); {FamilyMembers} cannot be told apart by these rows");
        }
        string candidates = string.Join(", ", Probabilities.OrderByDescending(candidate => candidate.Probability).Take(3)
            .Select(candidate => string.Create(CultureInfo.InvariantCulture, $"{candidate.System.Name} {Percent(candidate.Probability)}")));
        return $"not clear from these rows; most likely {candidates}";
    }

    // A hundred per cent would claim more than any model can.
    private static string Percent(double probability) => probability > 0.99 ? "over 99 %"
        : string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %");

    private string FamilyName => Family switch
    {
        "us" => "US-size cup",
        "metric" => "metric 250 mL cup",
        "imperial" => "imperial half-pint cup",
        "decilitre" => "decilitre kitchen",
        _ => "Japanese 200 mL cup",
    };

    private string FamilyMembers => Family == "us" ? "236.6 and 240 mL" : "its tablespoons of 15 and 20 mL";

    private double Probability(MeasuringSystem system) => Probabilities.First(candidate => candidate.System == system).Probability;
}

/// <summary>A measuring system and how likely a table uses it.</summary>
public sealed class SystemProbability
{
    internal SystemProbability(MeasuringSystem system, double probability)
    {
        System = system;
        Probability = probability;
    }

    /// <summary>The system.</summary>
    public MeasuringSystem System { get; }

    /// <summary>From 0 to 1.</summary>
    public double Probability { get; }

    /// <summary>The measuring system and its probability, such as <c>US customary: 0.94</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{System}: {Probability:0.00}");
}
