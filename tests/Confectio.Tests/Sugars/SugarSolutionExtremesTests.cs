using System.Collections;
using System.Globalization;
using System.Reflection;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>
/// Every public member of a solution, on solutions of the smallest and the largest masses and with arguments at and beyond the ends of their ranges: an answer of numbers
/// that are numbers, or a refusal that names a parameter of the member, the value and the range.
/// </summary>
public sealed class SugarSolutionExtremesTests
{
    private static readonly double[] s_masses = [0, 5e-324, 1e-306, 1e-200, 1e-12, 1, 1e12];

    private static readonly double[] s_beyond = [-5e-324, -1, 1.0000001e12, 1e300, double.MaxValue, double.NaN, double.PositiveInfinity, double.NegativeInfinity];

    // Fractions, temperatures and their ends, and what is none of them.
    private static readonly double[] s_numbers =
    [
        double.NaN, double.PositiveInfinity, double.NegativeInfinity, double.MinValue, -1, -5e-324, -0.0, 0, 5e-324, 1e-306, 1e-200, 1e-9, 0.5, 0.98, Math.BitDecrement(1), 1, Math.BitIncrement(1), 20, 25,
        Math.BitDecrement(80), 80, Math.BitIncrement(80), 99.9743, 100, Math.BitIncrement(100), 102, 110, 120, 154, 160, 220, Math.BitIncrement(220), 500, 1e12, 1e300, double.MaxValue,
    ];

    private static readonly AirPressure[] s_pressures = [default, AirPressure.FromKilopascals(1), AirPressure.FromKilopascals(200)];

    private static readonly Constituent[] s_solutes = [.. Enum.GetValues<Constituent>().Where(IsSolute)];

    private static bool IsSolute(Constituent constituent) => Try(() => SugarSolution.FromGrams([new(constituent, 1)])) is not null && constituent != Constituent.Water;

    private static SugarSolution? Try(Func<SugarSolution> make)
    {
        try
        {
            return make();
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    [Fact]
    public void TenThingsDissolve() => Assert.Equal(10, s_solutes.Length);

    [Fact]
    public void EveryMemberOfEverySolutionAnswersOrNamesItsParameter()
    {
        List<string> faults = [];
        SugarSolution[] solutions = [.. Solutions()];
        Assert.True(solutions.Length > 300);
        int answered = 0;
        foreach (SugarSolution solution in solutions)
        {
            foreach (PropertyInfo property in typeof(SugarSolution).GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0))
                Called(property.GetMethod!, []);
            foreach (MethodInfo method in typeof(SugarSolution).GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly).Where(method => !method.IsSpecialName || method.Name == "get_Item"))
            {
                foreach (object[] arguments in Arguments(method.GetParameters()))
                    Called(method, arguments);
            }

            void Called(MethodInfo method, object[] arguments)
            {
                string? fault = FaultOf(solution, method, arguments, out bool isAnswer);
                answered += isAnswer ? 1 : 0;
                if (fault is not null && faults.Count < 40)
                    faults.Add($"{method.Name}({string.Join(", ", arguments.Select(argument => Convert.ToString(argument, CultureInfo.InvariantCulture)))}) of {Describe(solution)}: {fault}");
            }
        }
        Assert.Empty(faults);
        Assert.True(answered > 10_000);
    }

    // What is beyond the range of a mass is refused by the name of the list, its value and the range.
    [Fact]
    public void AMassBeyondIsRefusedByNameValueAndRange() => Assert.All(s_beyond, mass => Assert.All(s_solutes.Append(Constituent.Water), constituent =>
    {
        ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>("grams", () => SugarSolution.FromGrams([new(constituent, mass)]));
        Assert.StartsWith(string.Create(CultureInfo.InvariantCulture, $"grams was {mass:R}; it must be from 0 to 1000000000000."), thrown.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("fractions", () => SugarSolution.FromFractions([new(constituent, mass)]));
        Assert.Throws<ArgumentOutOfRangeException>("firstGrams", () => SugarSolution.Mix(SugarSolution.PureWater, mass, SugarSolution.PureWater, 1));
        Assert.Throws<ArgumentOutOfRangeException>("secondGrams", () => SugarSolution.Mix(SugarSolution.PureWater, 1, SugarSolution.PureWater, mass));
        Assert.Throws<ArgumentOutOfRangeException>("higherSaccharidesMolarMass", () => SugarSolution.FromGrams([new(constituent, 1)], mass));
    }));

    [Theory]
    [InlineData(0)]
    [InlineData(5e-324)]
    public void NothingInAllIsRefusedByName(double mass)
    {
        Assert.Throws<ArgumentException>("grams", () => SugarSolution.FromGrams([new(Constituent.Sucrose, 0), new(Constituent.Water, 0)]));
        Assert.Throws<ArgumentException>("firstGrams", () => SugarSolution.Mix(SugarSolution.PureWater, 0, SugarSolution.PureWater, 0));
        Assert.Throws<ArgumentException>("fractions", () => SugarSolution.FromFractions([new(Constituent.Sucrose, mass)]));
    }

    // Whatever the scale, a solution of the same proportions is the same solution.
    [Theory]
    [InlineData(5e-324)]
    [InlineData(1e-306)]
    [InlineData(1e-200)]
    [InlineData(1e12)]
    public void TheScaleIsNothing(double grams)
    {
        SugarSolution made = SugarSolution.FromGrams([new(Constituent.Sucrose, grams), new(Constituent.Water, grams)]);
        Assert.Equal(0.5, made.Solids);
        Assert.Equal(SugarSolution.OfSucrose(0.5).GramsPerMillilitre(20), made.GramsPerMillilitre(20));
        SugarSolution mixed = SugarSolution.Mix(SugarSolution.OfSucrose(1), grams, SugarSolution.PureWater, grams);
        Assert.Equal(0.5, mixed.Solids, 1e-15);
    }

    private static IEnumerable<SugarSolution> Solutions()
    {
        yield return SugarSolution.PureWater;
        foreach (Constituent solute in s_solutes)
        {
            foreach (double mass in s_masses)
            {
                foreach (double water in s_masses)
                {
                    if (mass + water > 0)
                        yield return SugarSolution.FromGrams([new(solute, mass), new(Constituent.Water, water)], solute == Constituent.HigherSaccharides && mass == 1 ? 20_000 : 772);
                }
            }
        }
        // All of them at once, and a trace of each beside the rest.
        foreach (double mass in s_masses.Where(mass => mass > 0))
        {
            yield return SugarSolution.FromGrams(s_solutes.Select(solute => new KeyValuePair<Constituent, double>(solute, mass)).Append(new(Constituent.Water, 1)));
            yield return SugarSolution.Mix(SugarSolution.OfSucrose(0.5), mass, SugarSolution.FromGrams(s_solutes.Select(solute => new KeyValuePair<Constituent, double>(solute, 1))), 1);
            yield return SugarSolution.FromGrams([new(Constituent.Glucose, mass), new(Constituent.Fructose, 3 * Math.Min(mass, 1e11)), new(Constituent.Water, 1)]);
        }
        // Thinned to a trace, from which other members make a syrup again.
        SugarSolution mixture = SugarSolution.FromGrams(s_solutes.Select((solute, i) => new KeyValuePair<Constituent, double>(solute, 1 + i)));
        foreach (double trace in (double[])[5e-324, 2e-323, 1e-306, 1e-300, 1e-200, 1e-150, 1e-12])
        {
            yield return mixture.WithSolids(trace);
            yield return SugarSolution.OfSucrose(trace);
            yield return SugarSolution.Mix(mixture, Math.Max(trace, 1e-306), SugarSolution.PureWater, 1);
            yield return SugarSolution.FromFractions([new(Constituent.Sucrose, trace), new(Constituent.Fructose, trace), new(Constituent.Glycerol, 3e-324), new(Constituent.Water, 1)]);
        }
    }

    // Each number with the rest at a usual value: the ranges do not depend on each other.
    private static IEnumerable<object[]> Arguments(ParameterInfo[] parameters)
    {
        object[][] values = [.. parameters.Select(Values)];
        if (parameters.Length == 0)
            yield return [];
        for (int i = 0; i < parameters.Length; i++)
        {
            foreach (object value in values[i])
                yield return [.. parameters.Select((_, j) => j == i ? value : values[j][values[j].Length / 2])];
        }
    }

    private static object[] Values(ParameterInfo parameter) => parameter.ParameterType == typeof(double) ? [.. s_numbers.Cast<object>()]
        : parameter.ParameterType == typeof(AirPressure) ? [.. s_pressures.Cast<object>()]
        : [.. Enum.GetValues(parameter.ParameterType).Cast<object>(), Enum.ToObject(parameter.ParameterType, -1), Enum.ToObject(parameter.ParameterType, 99)];

    private static string? FaultOf(SugarSolution solution, MethodInfo method, object[] arguments, out bool isAnswer)
    {
        isAnswer = false;
        try
        {
            object? answer = method.Invoke(solution, arguments);
            isAnswer = true;
            return NotANumber(answer);
        }
        catch (TargetInvocationException e) when (e.InnerException is ArgumentException refusal)
        {
            int place = Array.FindIndex(method.GetParameters(), parameter => parameter.Name == refusal.ParamName);
            return place < 0 ? $"names {refusal.ParamName}: {refusal.Message}"
                : !refusal.Message.StartsWith(refusal.ParamName!, StringComparison.Ordinal) ? refusal.Message
                : arguments[place] is double value && !refusal.Message.Contains(string.Create(CultureInfo.InvariantCulture, $"was {value:R}; it must be from "), StringComparison.Ordinal) ? refusal.Message : null;
        }
        catch (TargetInvocationException e) when (e.InnerException is InvalidOperationException refusal)
        {
            // In words, of this solution: no property, for those answer.
            return method.IsSpecialName || refusal.Message.Contains("NaN", StringComparison.Ordinal) || refusal.Message.Contains("(Parameter", StringComparison.Ordinal) || !refusal.Message.EndsWith('.')
                ? refusal.Message : null;
        }
        catch (TargetInvocationException e)
        {
            return e.InnerException!.GetType().Name + ": " + e.InnerException.Message;
        }
    }

    private static string? NotANumber(object? answer) => answer switch
    {
        double number => double.IsFinite(number) ? null : $"{number}",
        Spread spread => double.IsFinite(spread.Low) && double.IsFinite(spread.High) ? null : "a spread of no numbers",
        Brix brix => double.IsFinite(brix.Percent) ? null : "a reading of no number",
        SugarSolution made => Math.Abs(Enum.GetValues<Constituent>().Sum(constituent => made[constituent]) - 1) < 1e-9 && double.IsFinite(made.MeanMolarMass) && double.IsFinite(made.MaximumSolids) && made.Purity is >= 0 and <= 1 + 1e-12
            ? null : $"{made}: its parts add up to {Enum.GetValues<Constituent>().Sum(constituent => made[constituent])}, {made.MeanMolarMass} g/mol, to {made.MaximumSolids}, purity {made.Purity}",
        string text => text.Contains("NaN", StringComparison.Ordinal) || text.Contains('∞', StringComparison.Ordinal) ? text : null,
        null => "null",
        IEnumerable or ValueType => null,
        _ => answer.GetType().Name,
    };

    private static string Describe(SugarSolution solution) => string.Join(" ", Enum.GetValues<Constituent>().Where(constituent => solution[constituent] != 0).Select(constituent =>
        string.Create(CultureInfo.InvariantCulture, $"{constituent} {solution[constituent]:R}")));
}
