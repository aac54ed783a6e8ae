using Confectio.Ingredients;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>Tables with mistakes: each is reported on its line and in its column, and the good rows are loaded.</summary>
public sealed class BadTableTests
{
    private const string Header = "id,name,us_names,class,default_packing,water_percent,sucrose_percent,allergens,source,kind";
    private const string Good = "good-one,good one,,liquid,levelled,100,,,own,measured";
    private const string WeightHeader = "ingredient,amount,system,packing,grams,low_grams,high_grams,samples,sd_grams,kind,source";
    private const string GoodWeight = "water,1 cup,us-customary,whipped,120,,,,,measured,own";

    private static (IngredientTable Table, IReadOnlyList<Problem> Problems) Foods(string text)
    {
        IngredientTable table = IngredientTable.Empty.LayerIngredients(new StringReader(text)).Told(out IReadOnlyList<Problem> problems)!;
        return (table, problems);
    }

    private static (IngredientTable Table, IReadOnlyList<Problem> Problems) Weights(string text)
    {
        IngredientTable table = IngredientTable.BuiltIn.LayerWeights(new StringReader(text)).Told(out IReadOnlyList<Problem> problems)!;
        return (table, problems);
    }

    private static bool IsLoaded(IngredientTable table) => table.Get("water").TryGetDensity(Packing.Whipped, out _);

    [Theory]
    [InlineData("bad,bad,,liquid,levelled,90,,,own,measured", "water_percent", "90 %")] // does not add up
    [InlineData("bad,bad,,liquid,levelled,,,,own,measured", "water_percent", "0 %")]
    [InlineData("bad,bad,,liquid,levelled,98.9,,,own,measured", "water_percent", "98.9 %")]
    [InlineData("bad,bad,,liquid,levelled,-1,100,,own,measured", "water_percent", "'-1'")]
    [InlineData("bad,bad,,liquid,levelled,0,101,,own,measured", "sucrose_percent", "'101'")]
    [InlineData("bad,bad,,liquid,levelled,NaN,,,own,measured", "water_percent", "'NaN'")]
    [InlineData("bad,bad,,liquid,levelled,Infinity,,,own,measured", "water_percent", "'Infinity'")]
    [InlineData("bad,bad,,liquid,levelled,1e308,,,own,measured", "water_percent", "'1e308'")]
    [InlineData("bad,bad,,liquid,levelled,1e2,,,own,measured", "water_percent", "'1e2'")]
    [InlineData("bad,bad,,liquid,levelled,\"99,5\",,,own,measured", "water_percent", "decimal point")]
    [InlineData("bad,bad,,liquid,levelled,\"1,00\",,,own,measured", "water_percent", "'1,00'")]
    [InlineData("bad,bad,,liquid,levelled,100 %,,,own,measured", "water_percent", "'100 %'")]
    [InlineData("bad,bad,,liquids,levelled,100,,,own,measured", "class", "'liquids'")]
    [InlineData("bad,bad,,,levelled,100,,,own,measured", "class", "expected one of: liquid, syrup")]
    [InlineData("bad,bad,,0,levelled,100,,,own,measured", "class", "'0'")]
    [InlineData("bad,bad,,\"liquid,syrup\",levelled,100,,,own,measured", "class", "'liquid,syrup'")]
    [InlineData("bad,bad,,liquid,heaped,100,,,own,measured", "default_packing", "'heaped'")]
    [InlineData("bad,bad,,liquid,,100,,,own,measured", "default_packing", "''")]
    [InlineData("bad,bad,,liquid,levelled,100,,,own,sworn", "kind", "'sworn'")]
    [InlineData("bad,bad,,liquid,levelled,100,,,own,", "kind", "''")]
    [InlineData("bad,bad,,liquid,levelled,100,,,,measured", "source", "empty")]
    [InlineData("bad,bad,,liquid,levelled,100,,gold,own,measured", "allergens", "'gold'")]
    [InlineData("bad,bad,,liquid,levelled,100,,1,own,measured", "allergens", "'1'")]
    [InlineData("bad,bad,,liquid,levelled,100,,almond,own,measured", "allergens", "'almond'")]
    [InlineData("bad,bad,,liquid,levelled,100,,tree-nut:milk,own,measured", "allergens", "'tree-nut:milk'")]
    [InlineData("bad,bad,,liquid,levelled,100,,tree-nut:,own,measured", "allergens", "'tree-nut:'")]
    [InlineData("bad,bad,,liquid,levelled,100,,\"egg,wheat\",own,measured", "allergens", "'egg,wheat'")]
    [InlineData("bad,bad,,liquid,levelled,100,,egg;wheat,own,measured", "allergens", "'egg;wheat'")]
    [InlineData(",bad,,liquid,levelled,100,,,own,measured", "id", "empty")]
    [InlineData("Bad One,bad,,liquid,levelled,100,,,own,measured", "id", "'Bad One'")]
    [InlineData("bad,,,liquid,levelled,100,,,own,measured", "name", "empty")]
    [InlineData("good-one,another,,liquid,levelled,100,,,own,measured", "id", "line 2")]
    public void ABadIngredientIsReportedOnItsLineAndTheGoodOnesAreLoaded(string row, string column, string says)
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Foods($"{Header}\n{Good}\n\n{row}\nlast-one,last one,,liquid,levelled,100,,,own,measured\n");
        Problem problem = Assert.Single(problems);
        Assert.Equal((4, column), (problem.Line, problem.Column));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.Equal(["good-one", "last-one"], table.All.Select(food => food.Id));
    }

    [Theory]
    [InlineData("0", "'0' is not above 0")]
    [InlineData("0.000", "'0.000' is not above 0")]
    [InlineData("-0", "'-0' is not above 0")]
    [InlineData("-1", "'-1'")]
    [InlineData("100.01", "'100.01'")]
    [InlineData("NaN", "'NaN'")]
    [InlineData("Infinity", "'Infinity'")]
    [InlineData("4e1", "'4e1'")]
    [InlineData("\"42,5\"", "decimal point")]
    [InlineData("42 DE", "'42 DE'")]
    [InlineData("about 42", "'about 42'")]
    public void ADextroseEquivalentThatIsNoneIsReportedAndTheGoodRowsAreLoaded(string field, string says)
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Foods($"{Header},dextrose_equivalent\n{Good},\nbad,bad,,syrup,levelled,100,,,own,measured,{field}\nlast-one,last one,,syrup,levelled,100,,,own,measured,100\n");
        Problem problem = Assert.Single(problems);
        Assert.Equal((3, "dextrose_equivalent"), (problem.Line, problem.Column));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.Equal(["good-one", "last-one"], table.All.Select(food => food.Id));
    }

    [Fact]
    public void ADextroseEquivalentIsReportedBesideTheOtherMistakesOfTheRow() =>
        Assert.Equal(["water_percent", "dextrose_equivalent", "allergens"],
            Foods($"{Header},dextrose_equivalent\nbad,bad,,syrup,levelled,90,,gold,own,measured,0\n").Problems.Select(problem => problem.Column));

    [Fact]
    public void ANameThatBelongsToAnotherRowIsReportedAndBothRowsAreLoaded()
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Foods($"{Header}\n{Good}\nother,Good  One,,liquid,levelled,100,,,own,measured\nthird,third,góod one,liquid,levelled,100,,,own,measured\n");
        Assert.Equal([(3, "name"), (4, "name")], problems.Select(problem => (problem.Line, problem.Column!)));
        Assert.All(problems, problem => Assert.Contains("line 2", problem.Message, StringComparison.Ordinal));
        Assert.Equal(3, table.All.Count);
    }

    [Fact]
    public void EveryMistakeOfARowIsReported()
    {
        (_, IReadOnlyList<Problem> problems) = Foods($"{Header}\nB,,,x,y,-1,,z,,w\n");
        Assert.Equal(["id", "name", "class", "default_packing", "water_percent", "allergens", "source", "kind"], problems.Select(problem => problem.Column));
        Assert.All(problems, problem => Assert.Equal(2, problem.Line));
    }

    [Theory]
    [InlineData("water_percent,id,class,default_packing,source,kind", "name", "missing")]
    [InlineData("id,name,class,default_packing,source,kind,watter_percent", "watter_percent", "not known")]
    [InlineData("id,name,class,default_packing,source,kind,water_percent,WATER_percent", "WATER_percent", "twice")]
    public void AHeaderThatWouldBeMisreadIsRefused(string header, string column, string says)
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Foods(header + "\n" + string.Join(",", header.Split(',').Select(_ => "1")));
        Problem problem = Assert.Single(problems);
        Assert.Equal((1, column), (problem.Line, problem.Column));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.Empty(table.All);
    }

    [Fact]
    public void AProblemOfAHeaderStandsOnItsLine() => Assert.Equal(3, Assert.Single(Foods("\n\nid,name,class,default_packing,source").Problems).Line);

    [Fact]
    public void AnEmptyTableIsAProblemAndAHeaderAloneIsNone()
    {
        Assert.Equal("line 1: the table is empty; a header line with the column names was expected", Assert.Single(Foods("").Problems).ToString());
        Assert.Single(Weights("\r\n").Problems);
        Assert.Empty(Foods(Header).Problems);
        Assert.Empty(Foods(Header + "\n").Table.All);
        Assert.Empty(Weights(WeightHeader + "\r\n").Problems);
    }

    [Theory]
    [InlineData("watr,1 cup,us-customary,whipped,120,,,,,measured,own", "ingredient", "'watr'")]
    [InlineData("WATER,1 cup,us-customary,whipped,120,,,,,measured,own", "ingredient", "'WATER'")]
    [InlineData(",1 cup,us-customary,whipped,120,,,,,measured,own", "ingredient", "empty")]
    [InlineData("water,1/0 cup,us-customary,whipped,120,,,,,measured,own", "amount", "'1/0 cup'")]
    [InlineData("water,0 cup,us-customary,whipped,120,,,,,measured,own", "amount", "above zero")]
    [InlineData("water,2-3 cups,us-customary,whipped,120,,,,,measured,own", "amount", "'2-3 cups'")]
    [InlineData("water,1 cup + 1 tsp,us-customary,whipped,120,,,,,measured,own", "amount", "single volume")]
    [InlineData("water,100 g,,,100,,,,,measured,own", "amount", "'100 g'")]
    [InlineData("water,1 lb,us-customary,whipped,454,,,,,measured,own", "amount", "'1 lb'")]
    [InlineData("water,1 bucket,us-customary,whipped,120,,,,,measured,own", "amount", "'1 bucket'")]
    [InlineData("water,1 cup,us,whipped,120,,,,,measured,own", "system", "us-customary")]
    [InlineData("water,1 cup,,whipped,120,,,,,measured,own", "system", "needs a measuring system")]
    [InlineData("water,1 pint,metric,whipped,120,,,,,measured,own", "system", "has no pint")]
    [InlineData("water,1 cup,us-customary,heaped,120,,,,,measured,own", "packing", "'heaped'")]
    [InlineData("water,1 cup,us-customary,,120,,,,,measured,own", "packing", "needs a packing")]
    [InlineData("water,1 stick,,packed,120,,,,,measured,own", "packing", "no packing")]
    [InlineData("water,1 cup,us-customary,whipped,,,,,,measured,own", "grams", "empty")]
    [InlineData("water,1 cup,us-customary,whipped,-3,,,,,measured,own", "grams", "'-3'")]
    [InlineData("water,1 cup,us-customary,whipped,0,,,,,measured,own", "grams", "'0'")]
    [InlineData("water,1 cup,us-customary,whipped,NaN,,,,,measured,own", "grams", "'NaN'")]
    [InlineData("water,1 cup,us-customary,whipped,1e308,,,,,measured,own", "grams", "'1e308'")]
    [InlineData("water,1 cup,us-customary,whipped,9999999,,,,,measured,own", "grams", "1000000")]
    [InlineData("water,1 cup,us-customary,whipped,\"120,5\",,,,,measured,own", "grams", "'120,5'")]
    [InlineData("water,1 cup,us-customary,whipped,120 g,,,,,measured,own", "grams", "'120 g'")]
    [InlineData("water,1 cup,us-customary,whipped,120,x,,,,measured,own", "low_grams", "'x'")]
    [InlineData("water,1 cup,us-customary,whipped,120,121,,,,measured,own", "low_grams", "rise")]
    [InlineData("water,1 cup,us-customary,whipped,120,,119,,,measured,own", "high_grams", "rise")]
    [InlineData("water,1 cup,us-customary,whipped,120,,,0,,measured,own", "samples", "'0'")]
    [InlineData("water,1 cup,us-customary,whipped,120,,,,-1,measured,own", "sd_grams", "'-1'")]
    [InlineData("water,1 cup,us-customary,whipped,120,,,,,0,own", "kind", "'0'")]
    [InlineData("water,1 cup,us-customary,whipped,120,,,,,measured,", "source", "empty")]
    public void ABadWeightIsReportedOnItsLineAndTheGoodOnesAreLoaded(string row, string column, string says)
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Weights($"{WeightHeader}\r\n\r\n{row}\r\n{GoodWeight}\r\n");
        Problem problem = Assert.Single(problems);
        Assert.Equal((3, column), (problem.Line, problem.Column));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.True(IsLoaded(table));
    }

    [Theory]
    [InlineData("ingredient,amount,gram,kind,source", "grams")]
    [InlineData("ingredient,grams,kind,source", "amount")]
    public void AWeightTableWithoutAColumnItNeedsIsRefused(string header, string column)
    {
        Problem problem = Assert.Single(Weights(header + "\nwater,1,2,3,4\n").Problems);
        Assert.Equal((1, column), (problem.Line, problem.Column));
    }

    [Fact]
    public void AQuoteThatIsNotClosedCostsItsLineOnly()
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Weights($"{WeightHeader}\nwater,\"1 cup,us-customary,sifted,120,,,,,measured,own\n{GoodWeight}\n");
        Assert.True(IsLoaded(table));
        Assert.All(problems, problem => Assert.Equal(2, problem.Line));
        Assert.Contains(problems, problem => problem.Message.Contains("quotation mark", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(',', "\n", "")]
    [InlineData(';', "\r\n", "\uFEFF")]
    [InlineData('\t', "\r", "")]
    [InlineData(';', "\n", "\n\n")]
    public void SeparatorsLineEndsAndMarksOfAllKindsAreRead(char separator, string end, string before)
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Weights(before + (WeightHeader + end + GoodWeight).Replace(',', separator) + end);
        Assert.Empty(problems);
        Assert.True(IsLoaded(table));
    }

    [Fact]
    public void AFieldOfAMillionCharactersIsAShortMessage()
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Weights($"{WeightHeader}\n{new string('x', 1_000_000)},1 cup,us-customary,whipped,120,,,,,measured,own\n{GoodWeight}\n");
        Problem problem = Assert.Single(problems);
        Assert.Equal((2, "ingredient"), (problem.Line, problem.Column));
        Assert.True(problem.ToString().Length < 200);
        Assert.True(IsLoaded(table));
    }

    [Fact]
    public void AMillionColumnsAreRead()
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Weights($"{WeightHeader}\n{GoodWeight}{new string(',', 1_000_000)}\n");
        Assert.Empty(problems);
        Assert.True(IsLoaded(table));

        (_, problems) = Weights(WeightHeader + new string(',', 1_000_000) + "\n" + GoodWeight + "\n");
        Assert.Empty(problems);
    }

    [Fact]
    public void BinaryJunkIsProblemsAndNothingElse()
    {
        Random random = new(20240229);
        byte[] bytes = new byte[200_000];
        random.NextBytes(bytes);
        (IngredientTable table, IReadOnlyList<Problem> problems) = Weights(System.Text.Encoding.Latin1.GetString(bytes));
        Assert.NotEmpty(problems);
        Assert.Equal(IngredientTable.BuiltIn.All.Sum(food => food.Weights.Count), table.All.Sum(food => food.Weights.Count));

        (table, problems) = Weights($"{WeightHeader}\n{System.Text.Encoding.Latin1.GetString(bytes)}\n{GoodWeight}\n");
        Assert.NotEmpty(problems);
        Assert.All(problems, problem => Assert.True(problem.ToString().Length < 400 && !problem.ToString().Any(char.IsControl)));
        Assert.True(IsLoaded(table));
    }

    [Fact]
    public void AMissingReaderIsABadArgument()
    {
        Assert.Throws<ArgumentNullException>("ingredients", () => IngredientTable.BuiltIn.LayerIngredients(null!).Told(out _)!);
        Assert.Throws<ArgumentNullException>("weights", () => IngredientTable.BuiltIn.LayerWeights(null!).Told(out _)!);
    }
}
