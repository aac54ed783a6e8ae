using Confectio.Tests.Eggs;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using Confectio.Cakes;
using Confectio.Conversions;
using Confectio.Costs;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Heat;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Sugars;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Consistency;

/// <summary>The habits of the house, read off the types.</summary>
public sealed class ConventionTests
{
    private const BindingFlags Everything = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Type[] s_public = PublicTypes.All;

    // Filled once, the same value whoever fills it: a reader cannot tell.
    private static readonly string[] s_lazyFields = ["CakeCoverage.<Findings>k__BackingField", "Conversion.<Cautions>k__BackingField", "DegreesOfFreedom.<Trades>k__BackingField", "Ingredient._record", "Ingredient._weights", "Ingredient._densities", "Ingredient._pieces", "Ingredient._nearest", "NameMatch._suggestions", "RowFinding.<Explanation>k__BackingField", "SolvedFormula.<DegreesOfFreedom>k__BackingField"];

    // Any finite number is a value of these; they have no range but that.
    private static readonly string[] s_anyFinite = ["Spread.low"];

    // A number that its method takes, for the names of arguments to which 1 is none.
    private static readonly Dictionary<string, double> s_samples = new()
    {
        ["likely"] = 2, ["high"] = 3, ["allowedError"] = 0.02,
        ["kilopascals"] = 60, ["reportedKilopascals"] = 101, ["hectopascals"] = 1000, ["celsius"] = 90, ["readingCelsius"] = 95, ["targetCelsius"] = 110,
        ["lowCelsius"] = 110, ["highCelsius"] = 120, ["madeForCelsius"] = 20, ["fraction"] = 0.5, ["specificGravity"] = 1.2, ["apparentSpecificGravity"] = 1.05,
        ["refractiveIndex"] = 1.4, ["gramsPerMillilitre"] = 1.2, ["degrees"] = 30, ["dextroseEquivalent"] = 42, ["glucose"] = 0.19, ["maltose"] = 0.14,
        ["higherSaccharidesMolarMass"] = 772, ["innerDiameterCentimetres"] = 0.5, ["startCelsius"] = 18, ["freezingCelsius"] = -2, ["endCelsius"] = -18, ["moisture"] = 0.08, ["solids"] = 0.12,
        ["millilitres"] = 200, ["across"] = 20, ["coneGrams"] = 80, ["bloom"] = 200, ["portionGrams"] = 30, ["coat"] = 5, ["roomCelsius"] = 25, ["airFreeGramsPerMillilitre"] = 1.2,
        ["relativeHalfUnit"] = 0.1, ["fahrenheit"] = 200,
    };

    [Fact]
    public void PublicTypesAreSealedClassesStaticClassesEnumsOrReadonlyStructs() =>
        Assert.All(s_public, type => Assert.True(type.IsEnum
            || (type.IsClass && type.IsSealed && !typeof(Delegate).IsAssignableFrom(type))
            || (type.IsValueType && type.IsDefined(typeof(IsReadOnlyAttribute)))
            || IsClosedFamily(type)));

    // An abstract one has members that are sealed in the end.
    [Fact]
    public void TypesThatAreNotPublicAreSealedToo() =>
        Assert.DoesNotContain(typeof(Ingredient).Assembly.GetTypes(), type => type is { IsClass: true, IsVisible: false, IsSealed: false, IsAbstract: false }
            && !type.IsDefined(typeof(CompilerGeneratedAttribute)));

    // Nobody outside can add a member to it. Its members are hidden, or sealed and nested in it where people need their data.
    private static bool IsClosedFamily(Type type) => type is { IsClass: true, IsAbstract: true }
        && type.GetConstructors(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic)
            .All(made => made.IsPrivate || made.IsFamilyAndAssembly)
        && type.Assembly.GetTypes().Where(member => member.IsSubclassOf(type))
            .All(member => !member.IsVisible || (member.IsSealed && member.DeclaringType == type));

    [Fact]
    public void FieldsAreNotPublic() =>
        Assert.Empty(s_public.Where(type => !type.IsEnum)
            .SelectMany(type => type.GetFields(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(field => !field.IsLiteral).Select(Name));

    [Fact]
    public void PropertiesCannotBeSetAfterwards() =>
        Assert.Empty(s_public.SelectMany(type => type.GetProperties(Everything))
            .Where(property => property.SetMethod is { IsPublic: true } set
                && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit)))
            .Select(Name));

    [Fact]
    public void ThereAreNoPositionalRecords() =>
        Assert.DoesNotContain(s_public, type => type.GetMethod("<Clone>$", Everything) is not null || type.GetMethod("Deconstruct", Everything) is not null
            || type.GetMethod("PrintMembers", Everything) is not null);

    [Fact]
    public void NothingPublicIsAsynchronous() =>
        Assert.Empty(s_public.SelectMany(type => type.GetMethods(Everything))
            .Where(method => method.IsPublic && (method.IsDefined(typeof(AsyncStateMachineAttribute)) || IsTask(method.ReturnType)))
            .Select(Name));

    [Fact]
    public void TheDefaultOfEveryStructCanBeWrittenComparedAndHashed()
    {
        Type[] structs = [.. s_public.Where(type => type is { IsValueType: true, IsEnum: false, IsByRefLike: false })];
        Assert.NotEmpty(structs);
        Assert.All(structs, type =>
        {
            object value = Activator.CreateInstance(type)!, again = Activator.CreateInstance(type)!;
            Assert.False(string.IsNullOrEmpty(value.ToString()));
            Assert.Equal(value, again);
            Assert.Equal(value.GetHashCode(), again.GetHashCode());
            foreach (PropertyInfo property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0))
                property.GetValue(value);
        });
    }

    [Fact]
    public void ObjectsOfPublicTypesNeverChange() =>
        Assert.Empty(s_public.Where(type => type is { IsEnum: false })
            .SelectMany(type => type.GetFields(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.DeclaredOnly))
            .Where(field => !field.IsInitOnly).Select(Name).Except(s_lazyFields));

    [Fact]
    public void AFieldFilledOnceIsSeen() => Assert.False(typeof(Conversion)
        .GetField("<Cautions>k__BackingField", BindingFlags.NonPublic | BindingFlags.Instance)!.IsInitOnly);

    [Fact]
    public void StaticFieldsAreNeverReassigned() =>
        Assert.Empty(typeof(Ingredient).Assembly.GetTypes().Where(type => !type.IsDefined(typeof(CompilerGeneratedAttribute)))
            .SelectMany(type => type.GetFields(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.DeclaredOnly))
            // What a thread keeps to read the next line with is emptied before it is kept, and is nobody's state.
            .Where(field => !field.IsInitOnly && !field.IsLiteral && !field.IsDefined(typeof(CompilerGeneratedAttribute))
                && !(field.Name == "t_spare" && field.IsDefined(typeof(ThreadStaticAttribute)))).Select(Name));

    [Fact]
    public void EveryPublicListIsReadOnlyByType() =>
        Assert.Empty(s_public.SelectMany(type => type.GetProperties(Everything))
            .Where(property => property.GetMethod is { IsPublic: true } && (property.PropertyType.IsArray
                || (property.PropertyType.IsGenericType && property.PropertyType.GetGenericTypeDefinition() == typeof(List<>))))
            .Select(Name));

    public static TheoryData<string, string, double> BadNumbers
    {
        get
        {
            TheoryData<string, string, double> data = new();
            foreach (MethodBase method in NumberTakers())
            {
                foreach (ParameterInfo parameter in method.GetParameters().Where(parameter => parameter.ParameterType == typeof(double)))
                {
                    foreach (double bad in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity, -1e308 })
                    {
                        if (bad != -1e308 || !s_anyFinite.Contains($"{method.DeclaringType!.Name}.{parameter.Name}"))
                            data.Add(Name(method) + Signature(method), parameter.Name!, bad);
                    }
                }
            }
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(BadNumbers))]
    public void ABadNumberIsRefusedByNameValueAndRange(string method, string parameter, double bad)
    {
        MethodBase called = NumberTakers().Single(candidate => Name(candidate) + Signature(candidate) == method);
        object?[] arguments = [.. called.GetParameters().Select(argument => argument.Name == parameter ? bad : Sample(argument))];
        TargetInvocationException thrown = Assert.Throws<TargetInvocationException>(() =>
            called is ConstructorInfo constructor ? constructor.Invoke(arguments) : called.Invoke(null, arguments));
        AssertRefusal(thrown.InnerException, parameter, bad);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(-1e308)]
    public void ConversionsRefuseBadNumbers(double bad)
    {
        Conversion conversion = Conversion.Of(IngredientTable.BuiltIn.Get("granulated sugar"), MeasuringSystem.UsCustomary);
        MeasuringTools tools = MeasuringTools.Usual(MeasuringSystem.UsCustomary);
        AssertRefusal(Record.Exception(() => conversion.ToMass(bad)), "millilitres", bad);
        AssertRefusal(Record.Exception(() => conversion.ToVolume(bad)), "grams", bad);
        AssertRefusal(Record.Exception(() => conversion.ToMeasures(bad, tools)), "grams", bad);
        AssertRefusal(Record.Exception(() => conversion.ToMeasures(100, tools, bad)), "allowedError", bad);
        AssertRefusal(Record.Exception(() => PracticalMeasure.Find(bad, tools)), "millilitres", bad);
        AssertRefusal(Record.Exception(() => PracticalMeasure.Find(100, tools, bad)), "allowedError", bad);
        AssertRefusal(Record.Exception(() => new ConversionOptions { ToolTolerance = bad }), "ToolTolerance", bad);
        AssertRefusal(Record.Exception(() => new Spread(1, bad, 3)), "likely", bad);
        AssertRefusal(Record.Exception(() => new Spread(1, 2, bad)), "high", bad);
        if (bad != -1e308)
            AssertRefusal(Record.Exception(() => new Spread(bad, 2, 3)), "low", bad);
    }

    [Fact]
    public void TheMassOrVolumeThatIsTooSmallToMeasureIsRefusedUnderItsOwnName()
    {
        Conversion conversion = Conversion.Of(IngredientTable.BuiltIn.Get("granulated sugar"), MeasuringSystem.UsCustomary);
        AssertRefusal(Record.Exception(() => conversion.ToMeasures(0.0, MeasuringTools.Usual(MeasuringSystem.UsCustomary))), "grams", 0);
        AssertRefusal(Record.Exception(() => conversion.ToMeasures(1e9, MeasuringTools.Usual(MeasuringSystem.UsCustomary))), "grams", 1e9);
    }

    [Theory]
    [InlineData(0.2, true)] // limits are inclusive
    [InlineData(0.0, true)]
    [InlineData(0.2000001, false)]
    public void LimitsAreInclusive(double tolerance, bool accepted) =>
        Assert.Equal(accepted, Record.Exception(() => new ConversionOptions { ToolTolerance = tolerance }) is null);

    [Fact]
    public void AValueOfNoEnumIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>("packing", () => ((Packing)99).ToWord());
        Assert.Throws<ArgumentOutOfRangeException>("evidence", () => ((Evidence)(-1)).ToWord());
        Assert.Throws<ArgumentOutOfRangeException>("constituent", () => IngredientTable.BuiltIn.All[0].Composition[(Constituent)99]);
    }

    private static IEnumerable<MethodBase> NumberTakers() => s_public
        .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly).Cast<MethodBase>()
            .Concat(type.GetConstructors(BindingFlags.Public | BindingFlags.Instance)))
        .Where(method => method.GetParameters().Any(parameter => parameter.ParameterType == typeof(double)))
        .Where(method => !method.GetParameters().Any(parameter => parameter.ParameterType.IsByRefLike)); // reflection cannot pass a span

    // What a debugger, a log and a notebook show of it.
    [Fact]
    public void EveryTypeWritesItself() => Assert.DoesNotContain(s_public, type => !type.IsEnum && !(type.IsAbstract && type.IsSealed)
        && !type.Name.EndsWith("JsonConverter", StringComparison.Ordinal)
        && type.GetMethod(nameof(ToString), Type.EmptyTypes)!.DeclaringType is { } declaring && (declaring == typeof(object) || declaring == typeof(ValueType)));

    /// <summary>A good argument of each kind; a parameter of a new kind asks for a new line here.</summary>
    private static object? Sample(ParameterInfo parameter) => (parameter.ParameterType, parameter.Name) switch
    {
        ({ } type, { } name) when type == typeof(double) && s_samples.TryGetValue(name, out double sample) => sample,
        ({ } type, _) when type == typeof(double) => 1.0,
        ({ } type, _) when type == typeof(AirPressure) => AirPressure.SeaLevel,
        ({ } type, _) when type == typeof(Brix) => Brix.FromPercent(60),
        ({ } type, _) when type == typeof(BaumeScale) => BaumeScale.Modulus145,
        ({ } type, _) when type == typeof(Spread) => Spread.Exactly(0.9),
        ({ } type, _) when type == typeof(SpreadBasis) => SpreadBasis.Sources,
        ({ } type, "solids") when type == typeof(SugarSolution) => null,
        ({ } type, _) when type == typeof(SugarSolution) => SugarSolution.OfSucrose(0.6),
        ({ } type, _) when type == typeof(IEnumerable<KeyValuePair<Constituent, double>>) => new Dictionary<Constituent, double> { [Constituent.Water] = 1 },
        ({ } type, _) when type == typeof(UnitsNet.Density) => UnitsNet.Density.FromGramsPerMilliliter(1),
        ({ } type, _) when type == typeof(UnitsNet.Volume) => UnitsNet.Volume.FromLiters(1),
        ({ } type, _) when type == typeof(UnitsNet.Temperature) => UnitsNet.Temperature.FromDegreesCelsius(20),
        ({ } type, _) when type == typeof(TimeSpan) => TimeSpan.FromMinutes(1),
        ({ } type, _) when type == typeof(ThermometerReading) => new ThermometerReading { Celsius = 60 },
        ({ } type, _) when type == typeof(IEnumerable<ThermometerReading>) => new ThermometerReading[] { new(0, 20), new(10, 110) },
        ({ } type, _) when type == typeof(SweetnessTable) => SweetnessTable.All[0],
        ({ } type, _) when type == typeof(IEnumerable<HeatLine>) => new[] { HeatLine.Of(IngredientTable.BuiltIn.Get("water"), 100).At(20) },
        ({ } type, _) when type == typeof(Composition) => IngredientTable.BuiltIn.Get("water").Composition,
        ({ } type, _) when type == typeof(VesselMaterial) => VesselMaterial.All[0],
        ({ } type, _) when type == typeof(CakeLength) => CakeLength.FromCentimetres(1),
        ({ } type, _) when type == typeof(PlanShape) => PlanShape.Round(Cm(20)),
        ({ } type, _) when type == typeof(CakePan) => CakePan.Measured(2000, Cm(5)),
        ({ } type, "sides" or "lobes" or "count") when type == typeof(int) => 6,
        ({ } type, _) when type == typeof(Cake) => Cake.Of("Fennmarsh Hall", [CakeTier.Of(CakeBody.HalfBall(Cm(20)))]),
        ({ } type, _) when type == typeof(BorderKind) => BorderKind.Shells,
        ({ } type, _) when type == typeof(BorderPlace) => BorderPlace.Foot,
        ({ } type, _) when type == typeof(IEnumerable<Icing>) => Array.Empty<Icing>(),
        ({ } type, _) when type == typeof(EggForm) => Forms.DriedWhite,
        ({ } type, _) when type == typeof(EggSize) => EggSizeSystem.Get("us").Size("large"),
        ({ } type, _) when type == typeof(bool) => false,
        ({ } type, _) when type == typeof(decimal) => 1m,
        ({ } type, _) when type == typeof(Currency) => Currency.Get("EUR"),
        ({ } type, _) when type == typeof(LabelNutrient) => LabelNutrient.Fat,
        ({ } type, _) when type == typeof(LabelRules) => LabelRules.EuropeanUnion,
        ({ } type, _) when type == typeof(EggPart) => EggPart.White,
        ({ } type, _) when type == typeof(Constituent) => Constituent.Sucrose,
        ({ } type, _) when type == typeof(MeasuringTools) => MeasuringTools.Usual(MeasuringSystem.Metric),
        ({ } type, _) when type == typeof(MeasuringSystem) => MeasuringSystem.Metric,
        ({ } type, _) when type == typeof(Ingredient) => IngredientTable.BuiltIn.Get("water"),
        ({ } type, _) when type == typeof(IngredientTable) => IngredientTable.BuiltIn,
        ({ } type, _) when type == typeof(Amount) => Amount.Parse("1 g"),
        ({ } type, _) when type == typeof(IEnumerable<FormulaLine>) => new[] { FormulaLine.Of(IngredientTable.BuiltIn.Get("water"), 1) },
        ({ } type, _) when type == typeof(Formula) => Formula.Of("Fennmarsh Hall", [FormulaLine.Of(IngredientTable.BuiltIn.Get("water"), 100)]),
        ({ } type, _) when type == typeof(FormulaPart) => FormulaPart.Sugars,
        ({ } type, _) when type == typeof(IReadOnlyList<FormulaPart>) => new[] { FormulaPart.Water },
        ({ } type, _) when type == typeof(IReadOnlyList<LabelFigure>) => new[] { LabelFigure.Of(FormulaPart.Sugars, 50, 1) },
        ({ } type, _) when type.IsAssignableFrom(typeof(Ingredient[])) => new[] { IngredientTable.BuiltIn.Get("granulated sugar") },
        ({ } type, _) when type == typeof(string) => "Fennmarsh Hall",
        _ when parameter.IsOut => null,
        _ when parameter.HasDefaultValue => parameter.DefaultValue,
        _ => throw new InvalidOperationException($"There is no sample of {parameter.ParameterType} for {parameter.Member.DeclaringType}.{parameter.Member.Name}."),
    };

    private static void AssertRefusal(Exception? thrown, string parameter, double bad)
    {
        ArgumentException refused = Assert.IsType<ArgumentException>(thrown, exactMatch: false);
        Assert.Equal(parameter, refused.ParamName);
        Assert.Contains(parameter, refused.Message, StringComparison.Ordinal);
        Assert.Contains(bad.ToString("R", CultureInfo.InvariantCulture), refused.Message, StringComparison.Ordinal);
        Assert.Matches("from .+ to .+", refused.Message);
    }

    private static bool IsTask(Type type) => typeof(Task).IsAssignableFrom(type) || type == typeof(ValueTask)
        || (type.IsGenericType && (type.GetGenericTypeDefinition() == typeof(ValueTask<>) || type.GetGenericTypeDefinition() == typeof(IAsyncEnumerable<>)));

    private static string Name(MemberInfo member) => $"{member.DeclaringType!.Name}.{member.Name}";

    private static string Signature(MethodBase method) => $"({string.Join(", ", method.GetParameters().Select(parameter => parameter.ParameterType.Name))})";
}
