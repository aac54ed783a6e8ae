using System.Collections;
using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;

namespace Confectio.Tests.Attack;

/// <summary>What both attacks share: how many, which exceptions are answers, and a walk over everything public that an answer shows.</summary>
internal static class Attacks
{
    private const int MostVisited = 400, MostItems = 6, MostDepth = 4;

    private static readonly System.Reflection.Assembly s_library = typeof(Ingredient).Assembly;

    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> s_properties = new();

    /// <summary>How many inputs a reader gets, and how many calls a member: CONFECTIO_ATTACK, or what CI bears.</summary>
    public static int Count(int usual) => int.TryParse(Environment.GetEnvironmentVariable("CONFECTIO_ATTACK"), CultureInfo.InvariantCulture, out int count) ? count : usual;

    /// <summary>Whether an exception is a documented answer to a bad argument or a bad text: it names the parameter, or says what was read.</summary>
    public static bool IsAnswer(Exception thrown) => thrown switch
    {
        ArgumentException bad => !string.IsNullOrEmpty(bad.ParamName) && !bad.Message.Contains("Parameter ''", StringComparison.Ordinal),
        FormatException or InvalidOperationException or OverflowException => thrown.Message.Length > 0 && thrown.GetType() != typeof(ObjectDisposedException),
        _ => false,
    };

    /// <summary>The first thing that is wrong in what an object shows: a property that throws, a number that is none. Null where nothing is.</summary>
    public static string? Fault(object? answer)
    {
        int visited = 0;
        return Fault(answer, "", 0, ref visited, []);
    }

    private static string? Fault(object? value, string path, int depth, ref int visited, HashSet<object> seen)
    {
        switch (value)
        {
            case null or string or Enum or Type:
                return null;
            case double number:
                return double.IsFinite(number) ? null : $"{path} is {number.ToString(CultureInfo.InvariantCulture)}";
        }
        if (++visited > MostVisited || depth > MostDepth)
            return null;
        Type type = value.GetType();
        if (!type.IsValueType && !seen.Add(value))
            return null;
        if (value is IEnumerable many and not IDictionary)
        {
            int place = 0;
            foreach (object? item in many)
            {
                if (place == MostItems)
                    break;
                if (Fault(item, $"{path}[{place++}]", depth + 1, ref visited, seen) is string inside)
                    return inside;
            }
        }
        if (type.Assembly != s_library)
            return null;
        try
        {
            _ = value.ToString();
        }
        catch (Exception e)
        {
            return $"{path}.ToString() throws {e.GetType().Name}: {e.Message}";
        }
        foreach (PropertyInfo property in s_properties.GetOrAdd(type, PropertiesOf))
        {
            object? shown;
            try
            {
                shown = property.GetValue(value);
            }
            catch (TargetInvocationException e)
            {
                return $"{path}.{type.Name}.{property.Name} throws {e.InnerException!.GetType().Name}: {e.InnerException.Message}";
            }
            // An open end of a demand is infinite, and says so.
            if (value is Demand.Share or Demand.IngredientMass or Demand.PartMass or Demand.PropertyValue && shown is double end && double.IsInfinity(end)
                && property.Name is nameof(Demand.Share.LowFraction) or nameof(Demand.Share.HighFraction)
                    or nameof(Demand.IngredientMass.LowGrams) or nameof(Demand.IngredientMass.HighGrams)
                    or nameof(Demand.PropertyValue.Low) or nameof(Demand.PropertyValue.High))
                continue;
            if (Fault(shown, $"{path}.{property.Name}", depth + 1, ref visited, seen) is string fault)
                return fault;
        }
        return null;
    }

    private static PropertyInfo[] PropertiesOf(Type type) => [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .Where(property => property.CanRead && property.GetIndexParameters().Length == 0 && !property.PropertyType.IsByRefLike)];
}
