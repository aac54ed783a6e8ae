using System.Collections;
using System.Globalization;
using System.Reflection;
using Confectio.Cakes;
using Confectio.Cooking;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Heat;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Vetting;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Attack;

/// <summary>
/// Every public member, called with what a good program has and with what a bad one has: nulls, empty lists, lists with a null, values of no enum, numbers at the ends
/// and beyond. A member answers, with numbers that are numbers, or refuses by an exception that names a parameter of its own.
/// </summary>
/// <remarks>
/// CI makes some thousands of calls; CONFECTIO_ATTACK=1000000 makes a million. Members that take spans cannot be called by reflection; the readers among them
/// have an attack of their own.
/// </remarks>
public sealed class MemberAttackTests(ITestOutputHelper output)
{
    private const int Usual = 6000, MostKept = 6;

    // Calls that spend a stated budget of work by design: a search over how far an icing reaches.
    private static readonly string[] s_slow = ["IcingCover", "LeftOverCover", "ConversionTableVetter.Vet"];

    private static readonly double[] s_numbers =
    [
        double.NaN, double.PositiveInfinity, double.NegativeInfinity, double.MaxValue, double.MinValue, double.Epsilon, 1e-306, -0.0, 0, 1, -1, 0.5, 1e-9, 2, 5, 12, 20, 60, 100, 101.325, 118, 300, 1000, 1e6, 1e9, 1e15, 1e300,
    ];

    private static readonly string?[] s_words = [null, "", " ", "\0", "\u001b[2J\u202e", "egg white", "granulated sugar", "us", "large", "1 cup", "fat", "packed", "9 in", "FENNMARSH", new string('x', 10_000), "İ"];

    private static readonly Type[] s_types = [.. PublicTypes.All.Where(type => !type.IsEnum)];

    [Fact]
    public void EveryMemberAnswersOrNamesItsParameter()
    {
        Random random = new(int.TryParse(Environment.GetEnvironmentVariable("CONFECTIO_ATTACK_SEED"), CultureInfo.InvariantCulture, out int stated) ? stated : 14);
        Dictionary<Type, List<object>> pool = Pool();
        MethodBase[] members = [.. s_types.SelectMany(Members).Where(CanBeCalled).OrderBy(Name, StringComparer.Ordinal)];
        Dictionary<string, (int Count, string Example)> faults = [];
        int answered = 0, refused = 0, skipped = 0, count = Attacks.Count(Usual);
        for (int i = 0; i < count; i++)
        {
            // Each member in turn, so that none is left out by chance.
            MethodBase member = members[i % members.Length];
            object? self = null;
            if (!member.IsStatic && member is MethodInfo && (self = FromPool(member.DeclaringType!, pool, random)) is null)
            {
                skipped++;
                continue;
            }
            object?[] arguments = [.. member.GetParameters().Select(parameter => Argument(parameter, pool, random))];
            string? fault = null;
            object? answer = null;
            try
            {
                answer = member is ConstructorInfo constructor ? constructor.Invoke(arguments) : member.Invoke(self, arguments);
                answered++;
                fault = Attacks.Fault(answer);
            }
            catch (TargetInvocationException thrown)
            {
                refused++;
                Exception inner = thrown.InnerException!;
                // Division by zero is what it is called everywhere.
                if (!Attacks.IsAnswer(inner) && !(inner is DivideByZeroException && member.Name == "op_Division"))
                    fault = $"{inner.GetType().Name}: {inner.Message.Split('\n')[0]}";
                // An amount carries its unit: "pound is not a unit of volume" names that, whoever was given the amount.
                else if (inner is ArgumentException { ParamName: string name } && name is not ("unit" or "piece") && member.GetParameters().All(parameter => parameter.Name != name))
                    fault = $"names '{name}', which is no parameter of its: {inner.Message.Split('\n')[0]}";
            }
            if (fault is not null)
            {
                string key = $"{Name(member)}: {(fault.Length > 90 ? fault[..90] : fault)}";
                faults[key] = (faults.GetValueOrDefault(key).Count + 1, $"({string.Join(", ", arguments.Select(Text))}) {fault}");
                continue;
            }
            foreach (object? made in (answer is string or null ? [] : new[] { answer }).Concat(arguments.Where((_, place) => member.GetParameters()[place].IsOut)))
                Keep(made, pool, random);
        }
        output.WriteLine($"{members.Length} members, {count} calls: {answered} answered, {refused} refused, {skipped} without an object; {faults.Values.Sum(fault => fault.Count)} faults of {faults.Count} kinds");
        Assert.True(faults.Count == 0, string.Join("\n", faults.OrderByDescending(fault => fault.Value.Count).Select(fault => $"{fault.Value.Count} × {fault.Key}\n      {fault.Value.Example}")));
        Assert.True(answered > count / 10 && refused > count / 10);
    }

    private static IEnumerable<MethodBase> Members(Type type) => type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly)
        .Where(method => !method.IsGenericMethod && !method.IsSpecialName || method.Name.StartsWith("op_", StringComparison.Ordinal)).Cast<MethodBase>()
        .Concat(type.GetConstructors(BindingFlags.Public | BindingFlags.Instance).Where(_ => !type.IsAbstract));

    private static bool CanBeCalled(MethodBase member) => !s_slow.Any(slow => Name(member).Contains(slow, StringComparison.Ordinal))
        && !member.GetParameters().Any(parameter => Bare(parameter) is { } type && (type.IsByRefLike || typeof(Delegate).IsAssignableFrom(type) || type == typeof(Stream)
            || type.Namespace?.StartsWith("UnitsNet", StringComparison.Ordinal) == true || type.Namespace?.StartsWith("System.Text.Json", StringComparison.Ordinal) == true
            || type == typeof(IFormatProvider)))
        && (member as MethodInfo)?.ReturnType.IsByRefLike != true && member.Name is not ("GetType" or "Equals" or "GetHashCode");

    private static Type Bare(ParameterInfo parameter) => parameter.ParameterType.IsByRef ? parameter.ParameterType.GetElementType()! : parameter.ParameterType;

    private static object? Argument(ParameterInfo parameter, Dictionary<Type, List<object>> pool, Random random) => parameter.IsOut ? null
        : parameter.HasDefaultValue && random.Next(3) == 0 ? parameter.DefaultValue is null && Bare(parameter).IsValueType && Nullable.GetUnderlyingType(Bare(parameter)) is null ? Activator.CreateInstance(Bare(parameter)) : parameter.DefaultValue
        : Value(Bare(parameter), pool, random);

    private static object? Value(Type type, Dictionary<Type, List<object>> pool, Random random)
    {
        if (Nullable.GetUnderlyingType(type) is Type inner)
            return random.Next(4) == 0 ? null : Value(inner, pool, random);
        if (type == typeof(double))
            return s_numbers[random.Next(s_numbers.Length)];
        if (type == typeof(int) || type == typeof(long))
            return Convert.ChangeType(((int[])[0, 1, -1, 2, 3, 6, 8, 100, int.MaxValue, int.MinValue])[random.Next(10)], type, CultureInfo.InvariantCulture);
        if (type == typeof(bool))
            return random.Next(2) == 0;
        if (type == typeof(string))
            return s_words[random.Next(s_words.Length)];
        if (type.IsEnum)
            return random.Next(8) == 0 ? Enum.ToObject(type, 999) : Enum.GetValues(type).GetValue(random.Next(Enum.GetValues(type).Length));
        if (type == typeof(TextReader))
            return random.Next(8) == 0 ? null : new StringReader(s_words[random.Next(s_words.Length)] ?? "a,b\n1,2\n");
        if (!type.IsValueType && random.Next(12) == 0)
            return null;
        if (FromPool(type, pool, random) is object known && random.Next(10) > 0)
            return known;
        if (typeof(IEnumerable).IsAssignableFrom(type) && (type.IsArray ? type.GetElementType() : type.GetGenericArguments().FirstOrDefault()) is Type element)
        {
            Array list = Array.CreateInstance(element, random.Next(4));
            for (int i = 0; i < list.Length; i++)
                list.SetValue(Value(element, pool, random), i);
            return type.IsInstanceOfType(list) ? list : null;
        }
        return type.IsValueType ? Activator.CreateInstance(type) : null;
    }

    private static object? FromPool(Type type, Dictionary<Type, List<object>> pool, Random random) =>
        pool.TryGetValue(type, out List<object>? known) && known.Count > 0 ? known[random.Next(known.Count)] : null;

    private static void Keep(object? made, Dictionary<Type, List<object>> pool, Random random)
    {
        if (made is null || made.GetType().Assembly != typeof(Ingredient).Assembly)
            return;
        // A member of a closed family is asked for by the name of the family.
        Type type = made.GetType();
        while (!type.IsVisible && type.BaseType is Type family && family.Assembly == type.Assembly)
            type = family;
        if (!pool.TryGetValue(type, out List<object>? known))
            pool[type] = known = [];
        if (known.Count < MostKept)
            known.Add(made);
        else if (random.Next(4) == 0)
            known[random.Next(known.Count)] = made;
    }

    // What a program has: all that stands in static properties, and the answers of the main jobs.
    private static Dictionary<Type, List<object>> Pool()
    {
        Random random = new(7);
        Dictionary<Type, List<object>> pool = [];
        foreach (PropertyInfo property in s_types.SelectMany(type => type.GetProperties(BindingFlags.Public | BindingFlags.Static)).OrderBy(property => property.DeclaringType!.FullName + property.Name, StringComparer.Ordinal))
        {
            object? value = property.GetValue(null);
            foreach (object? item in value is IEnumerable many and not string ? many.Cast<object?>().Take(MostKept) : [value])
                Keep(item, pool, random);
        }
        IngredientTable table = IngredientTable.BuiltIn;
        Formula formula = Formula.Of("Fennmarsh", [FormulaLine.Of(table.Get("egg white"), 300), FormulaLine.Of(table.Get("granulated sugar"), 540), FormulaLine.Of(table.Get("unsalted butter"), 400)]);
        Formula syrup = Formula.Of("Fennmarsh syrup", [FormulaLine.Of(table.Get("granulated sugar"), 600), FormulaLine.Of(table.Get("water"), 200)]);
        FormulaProblem problem = FormulaProblem.StartingFrom(formula).WithTarget(FormulaPart.Fat, 0.3);
        ProbeLog log = ProbeLog.Of([new(0, 20), new(1, 60), new(2, 72)]);
        Cake cake = Cake.Of("Fennmarsh", [CakeTier.Of(CakeBody.HalfBall(Cm(20)))]);
        foreach (object made in (object[])
        [
            .. table.All.Take(MostKept), formula, syrup, .. formula.Lines, Balance.Of(formula), problem, problem.Solve(), log, LethalityJudgement.Of(log, FoodMatrix.EggWhite, new Spread(0.85, 0.86, 0.87)),
            SugarSolution.OfSucrose(0.65), SyrupPot.Of(syrup), cake, PlanShape.Round(Cm(20)), new ThermometerReading(1, 60), AirPressure.SeaLevel, Brix.FromPercent(65), Amount.Parse("1 1/2 cups"),
            IcingOrder.ParseJson("""{"confectioOrder":1,"tiers":[{"shape":"round","diameter":"9 in","height":"10 cm","coats":[{"icing":"a","thickness":"5 mm"}]}],"icings":[{"name":"a","gramsPerMillilitre":0.9}]}""", table),
            ConversionTableVetter.Vet(new StringReader("ingredient,measure,grams\nhoney,1 cup,340\n"), IngredientTable.BuiltIn), new VettingOptions(), new ProbeLogOptions(),
        ])
            Keep(made, pool, random);
        return pool;
    }

    private static string Name(MethodBase member) => $"{member.DeclaringType!.Name}.{member.Name}/{member.GetParameters().Length}";

    private static string Text(object? value)
    {
        try
        {
            string text = value switch { null => "null", string word => $"\"{word}\"", IFormattable number => number.ToString(null, CultureInfo.InvariantCulture), Array list => $"[{string.Join("; ", list.Cast<object?>().Select(Text))}]", _ => value.ToString() ?? "" };
            return text.Length > 80 ? text[..80] + "…" : text;
        }
        catch (Exception e)
        {
            return e.GetType().Name;
        }
    }
}
