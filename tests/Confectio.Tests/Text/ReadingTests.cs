using System.Globalization;
using Confectio.Cakes;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Heat;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Safety;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Text;

/// <summary>What is read is a value, or all that is wrong with it at once: with a place, and with a code that nobody needs to look for in a sentence.</summary>
public sealed class ReadingTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    [Fact]
    public void WhatIsRightHasAValueAndNoProblem()
    {
        Reading<Formula> reading = Formula.ReadJson("""{ "confectioFormula": 1, "name": "x", "lines": [{ "ingredient": "water", "grams": 5 }] }""", s_table);
        Assert.True(reading.TryGet(out Formula? formula));
        Assert.True(reading.HasValue);
        Assert.Empty(reading.Problems);
        Assert.Same(formula, reading.OrThrow());
        Assert.Equal(formula.ToString(), reading.ToString());
    }

    // Places and codes by hand. A wrong type, a member too many, an unknown name, a version: none hides another.
    [Fact]
    public void AllMistakesOfAFormulaAreTold()
    {
        Reading<Formula> reading = Formula.ReadJson("""
            { "confectioFormula": 1, "name": 7,
              "lines": [
                { "ingredient": "watr", "grams": "5" },
                { "ingredient": "water", "gramms": 5 },
                { "ingredient": "water", "grams": [5], "packing": "shaken" } ],
              "boilOffGrams": 1 }
            """, s_table);
        Assert.False(reading.TryGet(out Formula? none));
        Assert.Null(none);
        Assert.False(reading.HasValue);
        Assert.Equal([
            (1, 34, "$.name", "wrong-type"), (3, 21, "$.lines[0].ingredient", "unknown-name"), (3, 38, "$.lines[0].grams", "wrong-type"),
            (4, 5, "$.lines[1]", "missing"), (4, 30, "$.lines[1].gramms", "unknown-member"), (5, 39, "$.lines[2].grams", "wrong-type"),
            (5, 55, "$.lines[2].packing", "wrong-value"), (5, 55, "$.lines[2].packing", "unknown-name"), (6, 3, "$.boilOffGrams", "unknown-member")],
            reading.Problems.Select(problem => (problem.Line, problem.Character, problem.Path!, problem.Code)));
        Assert.Equal("line 4, column 30 ($.lines[1].gramms): there is no such member; near names: grams", reading.Problems[4].ToString());
        Assert.Equal("there is no such member; near names: boiledOffGrams", reading.Problems[^1].Message);
        string message = Assert.Throws<FormatException>(reading.OrThrow).Message;
        Assert.Equal(reading.ToString(), message);
        Assert.StartsWith("This cannot be used as a formula: at line 1, column 34 ($.name), a text is expected; at line 3, ", message, StringComparison.Ordinal);
    }

    [Fact]
    public void AllMistakesOfAProblemAreTold()
    {
        Reading<FormulaProblem> reading = FormulaProblem.ReadJson("""
            { "confectioProblem": 1, "name": "x", "totalGramms": 5, "totalIsFree": 1,
              "ingredients": [{ "ingredient": "water", "baseGrams": true }, { "ingredient": "sugarr" }],
              "targets": [{ "part": "fst", "percent": 5, "priority": 1.5 }, 5],
              "boilOff": [], "prefer": "cheap" }
            """, s_table);
        Assert.Equal(["$.totalGramms", "$.totalIsFree", "$.ingredients[0].baseGrams", "$.ingredients[1].ingredient", "$.targets[0].part",
            "$.targets[0].priority", "$.targets[1]", "$.boilOff", "$.prefer"], reading.Problems.Select(problem => problem.Path!));
        // What the builder refuses is told beside a mistake elsewhere.
        Reading<FormulaProblem> refused = FormulaProblem.ReadJson("""
            { "confectioProblem": 1, "ingredients": [{ "ingredient": "water", "baseGrams": 100, "costPerKilogram": -1 }],
              "targets": [{ "part": "fst", "percent": 5 }], "requirements": [{ "part": "water", "percent": 136 }] }
            """, s_table);
        Assert.Equal(["$.ingredients[0].costPerKilogram", "$.targets[0].part", "$.requirements[0].percent"], refused.Problems.Select(problem => problem.Path!));
    }

    [Fact]
    public void AllMistakesOfAnOrderAreTold()
    {
        Reading<IcingOrder> reading = IcingOrder.ReadJson("""
            { "confectioOrder": 1, "wastePercent": "8", "hiddenTop": "coated",
              "tiers": [{ "shape": "round", "diametre": "20 cm", "height": 10, "raised": "yes", "coats": {} }],
              "icings": [{ "name": "cream", "gramsPerMillilitre": "0.8", "whipped": { "rise": 2, "ingredients": [5] } }] }
            """, s_table);
        Assert.Equal([
            ("$.wastePercent", "wrong-type"), ("$.hiddenTop", "unknown-member"), ("$.tiers[0]", "missing"), ("$.tiers[0].diametre", "unknown-member"),
            ("$.tiers[0].height", "wrong-type"), ("$.tiers[0].raised", "wrong-type"), ("$.tiers[0].coats", "wrong-type"),
            ("$.icings[0].gramsPerMillilitre", "wrong-type"), ("$.icings[0].whipped.ingredients[0]", "wrong-type")],
            reading.Problems.Select(problem => (problem.Path!, problem.Code)));
        Assert.Contains("near names: hiddenTops", reading.Problems[1].Message, StringComparison.Ordinal);
        Assert.Contains("near names: diameter", reading.Problems[3].Message, StringComparison.Ordinal);
    }

    // Twenty are told in one message, a thousand are listed, all are counted, whatever the text costs.
    [Fact]
    public void ManyMistakesAreCountedAndNotAllListed()
    {
        string members = string.Join(',', Enumerable.Range(0, 100_000).Select(i => string.Create(CultureInfo.InvariantCulture, $"\"m{i}\":0")));
        long before = GC.GetAllocatedBytesForCurrentThread();
        Reading<Formula> reading = Formula.ReadJson($$"""{"confectioFormula":1,"lines":[{"ingredient":"water","grams":1}],{{members}}}""", s_table);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 200_000_000);
        Assert.Equal(100_000, reading.TotalProblems);
        Assert.Equal(1001, reading.Problems.Count);
        Assert.Equal("more", reading.Problems[^1].Code);
        Assert.EndsWith("; and 99980 more.", reading.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "not-json")]
    [InlineData("{", "not-json")]
    [InlineData("""{ "confectioFormula": 1, "confectioFormula": 1 }""", "not-json")]
    [InlineData("""{ "confectioFormula": 1e999 }""", "not-json")]
    [InlineData("[]", "wrong-type")]
    [InlineData("null", "missing")]
    [InlineData("""{ "confectioFormula": 2 }""", "wrong-version")]
    [InlineData("""{ "confectioFormula": 1 }""", "missing")]
    [InlineData("""{ "confectioFormula": 1, "lines": [] }""", "too-many")]
    public void EachKindHasItsCode(string json, string code) =>
        Assert.Equal(code, Assert.Single(Formula.ReadJson(json, s_table).Problems).Code);

    [Fact]
    public void ATextThatIsTooLongHasNoLine()
    {
        Problem problem = Assert.Single(Formula.ReadJson(new string(' ', 5 << 20), s_table).Problems);
        Assert.Equal((0, "too-long", "it is longer than 4194304 bytes"), (problem.Line, problem.Code, problem.ToString()));
    }

    // The default of a value type is a value: 0 is not nothing.
    [Fact]
    public void AValueTypeIsReadOrNot()
    {
        Reading<int> zero = new(0, "", [], 0), none = Reading<int>.None("This cannot be read", [new Problem(2, "grams", "'x' is no number")], 1);
        Assert.True(zero.TryGet(out int value) && zero.HasValue);
        Assert.Equal((0, 0, "0"), (value, zero.OrThrow(), zero.ToString()));
        Assert.False(none.TryGet(out _) || none.HasValue);
        Assert.Equal("This cannot be read: at line 2, column grams, 'x' is no number.", Assert.Throws<FormatException>(() => none.OrThrow()).Message);
    }

    // No reader hands its problems out beside its value.
    [Fact]
    public void ReadersAnswerWithAReading() => Assert.Empty(
        typeof(Problem).Assembly.GetExportedTypes().SelectMany(type => type.GetMethods())
            .Where(method => method.GetParameters().Any(parameter => parameter.ParameterType == typeof(IReadOnlyList<Problem>).MakeByRefType()))
            .Select(method => method.Name));

    // A layer is there in spite of a row that is not, and says so: who wants all or nothing has OrThrow.
    [Fact]
    public void LayersOfTheTableAnswerWithAReading()
    {
        Reading<IngredientTable> weights = IngredientTable.BuiltIn.LayerWeights(new StringReader(
            "ingredient,amount,packing,grams,kind,source\nwater,100 mL,whipped,99,measured,Fennmarsh Hall\nno such thing,1 cup,,1,measured,x\n"));
        Assert.True(weights.TryGet(out IngredientTable? table));
        Assert.Equal(0.99, table.Get("water").Density(Packing.Whipped).GramsPerMillilitre.Likely, 1e-12);
        Assert.Equal((1, 3), (weights.TotalProblems, weights.Problems[0].Line));
        Assert.StartsWith("These weights cannot all be used: at line 3", Assert.Throws<FormatException>(() => weights.OrThrow()).Message, StringComparison.Ordinal);
        Reading<IngredientTable> none = IngredientTable.Empty.LayerIngredients(new StringReader("no,header\n1,2\n"));
        Assert.True(none.TryGet(out IngredientTable? empty) && empty.All.Count == 0 && none.TotalProblems > 0);
    }

    // Gaps are told apart from what is odd by their code, not by the words of a sentence.
    [Fact]
    public void GapsOfALogHaveACode()
    {
        Assert.NotNull(ProbeLog.Read(new StringReader("minutes,celsius\n0,60\n1,61\n30,62\n31,x\n"),
            new ProbeLogOptions { ConfirmedScale = TemperatureScale.Celsius }).Told(out IReadOnlyList<Problem> problems));
        Assert.Equal(["field", "gap"], problems.Select(problem => problem.Code).Order());
    }

    // By hand: a round of 20 cm by 10 cm is 1000 π millilitres; no icing is known, and none is asked for.
    [Fact]
    public void ACakeIsReadWithoutAnIcing()
    {
        Cake cake = Cake.ReadJson("""
            { "confectioOrder": 1, "name": "x", "icings": [{ "nothing": "of the cake" }], "bowls": 5,
              "tiers": [{ "shape": "round", "diameter": "20 cm", "height": "10 cm", "coats": [{ "icing": "cream", "thickness": "5 mm" }] }] }
            """).OrThrow();
        Assert.Equal(1000 * Math.PI, cake.Tiers[0].Body.VolumeMillilitres, 1e-9);
        Assert.Equal("cream", cake.Tiers[0].Coats[0].Icing);
        Reading<Cake> wrong = Cake.ReadJson("""{ "confectioOrder": 1, "tiers": [{ "shape": "round", "diameter": "20", "height": "10 cm" }], "colour": "red" }""");
        Assert.Equal(["$.tiers[0].diameter", "$.colour"], wrong.Problems.Select(problem => problem.Path!));
        Assert.Contains("This cannot be used as a cake", wrong.ToString(), StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("json", () => Cake.ReadJson((string)null!));
    }
}
