using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Vetting;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Vetting;

public sealed class TemperatureTableTests
{
    // Published pairs: candy stages of US extension tables (240 F / 116 C soft ball, 310 F / 154 C hard crack), FDA guidance
    // 160 F / 71 C, Food Code 135 F / 57 C and 41 F / 5 C; oven pairs by common practice (350 F / 180 C is 176.7 C exactly).
    [Theory]
    [InlineData("soft ball", "240", "116")]
    [InlineData("hard crack", "310", "154")]
    [InlineData("egg dishes", "160", "71")]
    [InlineData("hot holding", "135", "57")]
    [InlineData("cold holding", "41", "5")]
    [InlineData("moderate oven", "350", "180")]
    [InlineData("moderate oven", "350", "175")]
    [InlineData("moderate oven", "350", "177")]
    [InlineData("hot oven", "400", "200")]
    [InlineData("freezer", "0", "-18")]
    [InlineData("drop per 1000 ft", "2", "1.1")]
    public void UsualPairsAgree(string what, string fahrenheit, string celsius) => Assert.Equal(Verdict.Agrees, Vet(what, fahrenheit, celsius).Verdict);

    [Theory]
    [InlineData("sponge", "180", "350", TemperatureReason.ColumnsSwapped)]
    [InlineData("syrup", "240", "240", TemperatureReason.OtherUnit)]
    [InlineData("caramel", "340", "189", TemperatureReason.PointAsDifference)] // 340/1.8
    [InlineData("temperature rise", "50", "10", TemperatureReason.DifferenceAsPoint)] // 50 F is 10 C, a rise of 50 F is 27.8 C
    [InlineData("choux", "400", "240", TemperatureReason.DigitsSwapped)]
    [InlineData("fudge", "236", "11.3", TemperatureReason.DecimalShift)]
    [InlineData("cake", "350", "140", TemperatureReason.Unexplained)]
    public void SlipsAreNamed(string what, string fahrenheit, string celsius, TemperatureReason reason)
    {
        TemperatureFinding row = Vet(what, fahrenheit, celsius);
        Assert.Equal(Verdict.Wrong, row.Verdict);
        Assert.Equal(reason, row.Reason);
        Assert.Contains("°C", row.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void ACopiedRowIsNamed()
    {
        TemperatureVerdict verdict = TemperatureTableVetter.Vet(new StringReader("what,fahrenheit,celsius\nsoft ball,240,116\nhard crack,310,116\n"), IngredientTable.BuiltIn);
        Assert.Equal(TemperatureReason.CopiedRow, verdict.Rows[1].Reason);
        Assert.True(verdict.HasMistakes);
    }

    [Theory]
    [InlineData("bake in the oven", "", "350", Verdict.Wrong, TemperatureReason.OtherUnit)] // 350 C is beyond any oven, 350 F is one
    [InlineData("bake in the oven", "180", "", Verdict.Doubtful, TemperatureReason.OtherUnit)] // 82 C or 180 C: both are ovens
    [InlineData("soft ball", "", "240", Verdict.Wrong, TemperatureReason.OtherUnit)]
    [InlineData("soft ball", "240", "", Verdict.Agrees, null)]
    [InlineData("chocolate tempering", "", "31", Verdict.Agrees, null)]
    [InlineData("refrigerator", "", "95", Verdict.Wrong, TemperatureReason.OutsideProcess)]
    [InlineData("something else", "", "95", Verdict.Unknown, null)]
    public void ALoneFigureIsHeldAgainstItsProcess(string what, string fahrenheit, string celsius, Verdict verdict, TemperatureReason? reason)
    {
        TemperatureFinding row = Vet(what, fahrenheit, celsius);
        Assert.Equal(verdict, row.Verdict);
        Assert.Equal(reason, row.Reason);
    }

    [Property(MaxTest = 500)]
    public void AnExactPairAlwaysAgrees(int hundredths)
    {
        // Any Celsius figure from -40 to 300 with its exact Fahrenheit, printed to a tenth.
        decimal celsius = Math.Abs(hundredths % 3400) / 10m - 40;
        decimal fahrenheit = celsius * 1.8m + 32;
        FormattableString row = $"what,fahrenheit,celsius\nanything,{fahrenheit:0.0},{celsius:0.0}\n";
        TemperatureVerdict verdict = TemperatureTableVetter.Vet(new StringReader(FormattableString.Invariant(row)), IngredientTable.BuiltIn);
        Assert.Equal(Verdict.Agrees, Assert.Single(verdict.Rows).Verdict);
    }

    [Theory]
    [InlineData("", 1, null)]
    [InlineData("thing,fahrenheit\noven,350\n", 1, "what")]
    [InlineData("what,kelvin\noven,350\n", 1, "fahrenheit")]
    [InlineData("what,fahrenheit,celsius\noven,NaN,180\noven,350,180\n", 2, "fahrenheit")]
    [InlineData("what,fahrenheit,celsius\noven,1e308,180\noven,350,180\n", 2, "fahrenheit")]
    [InlineData("what,fahrenheit,celsius\noven,\"350,5\",180\noven,350,180\n", 2, "fahrenheit")]
    [InlineData("what,fahrenheit,celsius\noven,,\noven,350,180\n", 2, null)]
    public void BadRowsAreProblems(string csv, int line, string? column)
    {
        TemperatureVerdict verdict = TemperatureTableVetter.Vet(new StringReader(csv), IngredientTable.BuiltIn);
        Assert.Contains(verdict.Problems, problem => problem.Line == line && problem.Column == column);
        Assert.Equal(csv.Contains("oven,350,180", StringComparison.Ordinal), verdict.IsReadable);
    }

    [Fact]
    public void ADecimalCommaIsAnOption()
    {
        TemperatureVerdict verdict = TemperatureTableVetter.Vet(new StringReader("what;celsius;fahrenheit\nsyrup;115,5;239,9\n"), IngredientTable.BuiltIn, AmountReading.DecimalComma);
        Assert.Equal(115.5, Assert.Single(verdict.Rows).Celsius);
    }

    // The words of the ingredient table (egg white, meringue powder, marshmallows often), and dishes by common practice.
    [Theory]
    [InlineData("egg custard, held", true)]
    [InlineData("EGGNOG", true)]
    [InlineData("two yolks and sugar", true)]
    [InlineData("Swiss-meringue bowl", true)]
    [InlineData("cr\u00E8me br\u00FBl\u00E9e", true)]
    [InlineData("lemon curd", true)]
    [InlineData("royal icing (meringue powder)", true)]
    [InlineData("gum paste", true)]
    [InlineData("toasted marshmallows", true)]
    [InlineData("zabaglione", true)]
    [InlineData("whites, whipped", true)]
    [InlineData("", false)]
    [InlineData("eggplant bake", false)]
    [InlineData("white chocolate", false)]
    [InlineData("moderate oven", false)]
    [InlineData("soft ball", false)]
    [InlineData("leggings", false)]
    public void EggIsNamedAlsoOnARowThatCouldNotBeRead(string what, bool named)
    {
        Assert.Equal(named, TemperatureTableVetter.Vet(new StringReader($"what,fahrenheit,celsius\noven,350,180\n\"{what}\",160,71\n"), IngredientTable.BuiltIn).NamesEgg);
        TemperatureVerdict unread = TemperatureTableVetter.Vet(new StringReader($"what,fahrenheit,celsius\noven,350,180\n\"{what}\",hot,71\n"), IngredientTable.BuiltIn);
        Assert.Single(unread.Rows);
        Assert.Equal(named, unread.NamesEgg);
        Assert.Equal(named, TemperatureTableVetter.Vet(new StringReader($"what,fahrenheit,celsius\n\"{what}\",,\n"), IngredientTable.BuiltIn).NamesEgg);
    }

    // What has egg is a matter of the caller's table: a glaze of one's own has it, and in a table without eggs a food's name says nothing.
    [Fact]
    public void TheNamesOfEggAreThoseOfTheCallersTable()
    {
        IngredientTable own = IngredientTable.BuiltIn.LayerIngredients(new StringReader(
            "id,name,class,default_packing,water_percent,protein_percent,allergens,source,kind\n"
            + "hall-gloss,hall gloss,syrup,levelled,90,10,egg,Fennmarsh Hall,measured\n")).OrThrow();
        Assert.False(NamesEgg("hall gloss, warmed", IngredientTable.BuiltIn));
        Assert.True(NamesEgg("hall gloss, warmed", own));
        Assert.True(NamesEgg("warm gum paste", own));
        Assert.False(NamesEgg("warm gum paste", IngredientTable.Empty));
        Assert.True(NamesEgg("warm custard", IngredientTable.Empty));
        Assert.Throws<ArgumentNullException>("ingredients", () => TemperatureTableVetter.Vet(new StringReader(""), null!));

        static bool NamesEgg(string what, IngredientTable table) =>
            TemperatureTableVetter.Vet(new StringReader($"what,celsius\n\"{what}\",60\n"), table).NamesEgg;
    }

    [Fact]
    public void EveryIngredientThatHasEggIsEgg() => Assert.All(
        IngredientTable.BuiltIn.All.Where(one => one.Allergens.Concat(one.OftenContains).Contains(Allergen.Egg)).SelectMany(one => one.Aliases.Select(alias => alias.Text).Prepend(one.Name)),
        name => Assert.True(TemperatureTableVetter.Vet(new StringReader($"what,celsius\n\"warm {name} mix\",60\n"), IngredientTable.BuiltIn).NamesEgg, name));

    [Fact]
    public void ALongNameIsCut()
    {
        TemperatureVerdict verdict = TemperatureTableVetter.Vet(new StringReader($"what,celsius\n{new string('x', 100_000)} egg,60\n"), IngredientTable.BuiltIn);
        Assert.Equal(200, Assert.Single(verdict.Rows).What.Length);
        Assert.True(verdict.NamesEgg);
    }

    [Fact]
    public void TheOvenSheetOfTheExamples()
    {
        using StreamReader sheet = new(Path.Combine(AppContext.BaseDirectory, "Examples", "fennmarsh-oven-sheet.csv"));
        TemperatureVerdict verdict = TemperatureTableVetter.Vet(sheet, IngredientTable.BuiltIn);
        Assert.Equal([5, 8], verdict.Rows.Where(row => row.Verdict == Verdict.Wrong).Select(row => row.Line));
    }

    [Fact]
    public void EveryReasonHasItsCode() => Assert.Equal(
        ["columns-swapped", "other-unit", "point-as-difference", "difference-as-point", "digits-swapped", "decimal-shift", "copied-row", "outside-process", "unexplained"],
        Enum.GetValues<TemperatureReason>().Select(reason => reason.ToCode()));

    private static TemperatureFinding Vet(string what, string fahrenheit, string celsius) =>
        Assert.Single(TemperatureTableVetter.Vet(new StringReader($"what,fahrenheit,celsius\n{what},{fahrenheit},{celsius}\n"), IngredientTable.BuiltIn).Rows);
}
