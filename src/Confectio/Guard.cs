using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace Confectio;

/// <summary>
/// The one place where arguments are refused: every message names the parameter, the value and the inclusive range, in invariant text.
/// </summary>
internal static class Guard
{
    /// <summary>
    /// The least of what must be there at all, grams or a fraction. Nothing in a kitchen is smaller, and a quotient by it is still a
    /// number, which one by the smallest double is not.
    /// </summary>
    public const double Trace = 1e-9;

    public static double InRange(double value, double low, double high, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        // Written so that NaN fails: every comparison with NaN is false.
        if (!(value >= low && value <= high))
            ThrowOutOfRange(name, value, low, high);
        // Adding 0 turns -0.0, which passes as 0 and prints as "-0", into 0, and changes nothing else.
        return value + 0.0;
    }

    public static int InRange(int value, int low, int high, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (value < low || value > high)
            ThrowOutOfRange(name, value, low, high);
        return value;
    }

    public static double Finite(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        InRange(value, -double.MaxValue, double.MaxValue, name);

    public static T NotNull<T>([NotNull] T? value, [CallerArgumentExpression(nameof(value))] string name = "") where T : class =>
        value ?? throw new ArgumentNullException(name);

    public static T Defined<T>(T value, [CallerArgumentExpression(nameof(value))] string name = "") where T : struct, Enum
    {
        if (!Enum.IsDefined(value))
            throw new ArgumentOutOfRangeException(name, value, $"{name} is not one of the {typeof(T).Name} values.");
        return value;
    }

    [DoesNotReturn]
    private static void ThrowOutOfRange(string name, double value, double low, double high) =>
        throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture,
            $"{name} was {value:R}; it must be from {Limit(low)} to {Limit(high)}."));

    private static string Limit(double value) => value switch
    {
        double.MaxValue => "the largest finite number",
        -double.MaxValue => "the smallest finite number",
        double.Epsilon => "just above 0",
        _ => value.ToString("R", CultureInfo.InvariantCulture),
    };

    /// <summary>What an argument was refused for, without the name of the parameter that the platform adds.</summary>
    public static string ReasonOf(ArgumentException refused) => refused.Message.Split(" (Parameter")[0];
}
