using Confectio.Heat;
using Confectio.Safety;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Safety;

/// <summary>The printed tables of temperatures and times, typed here a second time; they are lookups with a status and a date.</summary>
public sealed class HoldTimeTests
{
    // 9 CFR 590.570, Table I, before 31 October 2022: minutes of 3.5 and 6.2 at the temperatures in °F.
    public static TheoryData<string, FoodMatrix, int, int> Regulation => new()
    {
        { "albumen, nothing added", FoodMatrix.EggWhite, 134, 132 },
        { "whole egg blends, less than 2 % added", FoodMatrix.WholeEgg, 142, 140 },
        { "fortified whole egg, 24 to 38 % solids, 2 to 12 % added", FoodMatrix.WholeEgg, 144, 142 },
        { "salt whole egg, 2 % salt or more", FoodMatrix.WholeEgg, 146, 144 },
        { "sugar whole egg, 2 to 12 % sugar", FoodMatrix.WholeEgg, 142, 140 },
        { "plain yolk", FoodMatrix.EggYolk, 142, 140 },
        { "sugar yolk, 2 % sugar or more", FoodMatrix.EggYolk, 146, 144 },
        { "salt yolk, 2 to 12 % salt", FoodMatrix.EggYolk, 146, 144 },
    };

    [Theory]
    [MemberData(nameof(Regulation))]
    public void ThePairsOfTheRegulation(string product, FoodMatrix matter, int quick, int slow)
    {
        HoldTime[] rows = Rows("cfr-590-570", product);
        Assert.Equal([(quick, 3.5 * 60), (slow, 6.2 * 60)], rows.Select(row => ((int)row.Fahrenheit, row.Seconds)));
        Assert.All(rows, row => Assert.Equal(matter, row.Matter));
        // Every pair has one z: 2 °F over the logarithm of 6.2/3.5.
        double z = (rows[0].Fahrenheit - rows[1].Fahrenheit) / Math.Log10(rows[1].Seconds / rows[0].Seconds);
        Assert.Equal(8.05, z, 0.005);
        Assert.Equal(z / 1.8, KineticSet.ZKelvin(rows[0].Celsius, TimeSpan.FromSeconds(rows[0].Seconds), rows[1].Celsius, TimeSpan.FromSeconds(rows[1].Seconds)), 1e-9);
    }

    [Fact]
    public void WholeEggHasOneRowAndTheTableNothingElse()
    {
        HoldTime whole = Assert.Single(Rows("cfr-590-570", "whole egg"));
        Assert.Equal((140, 210), ((int)whole.Fahrenheit, (int)whole.Seconds));
        Assert.Equal("whole egg: 140 °F (60.0 °C) for 210 s (9 CFR 590.570)", whole.ToString());
        Assert.Equal(17, HoldTimeTable.Get("cfr-590-570").Rows.Count);
        // No row is of white with sugar: the table says so itself.
        Assert.DoesNotContain(HoldTimeTable.Get("cfr-590-570").Rows, row => row.Matter == FoodMatrix.EggWhite && row.Product.Contains("sugar", StringComparison.Ordinal));
        Assert.Contains("no row for white with sugar", HoldTimeTable.Get("cfr-590-570").Status, StringComparison.Ordinal);
        Assert.StartsWith("historic", HoldTimeTable.Get("cfr-590-570").Status, StringComparison.Ordinal);
        Assert.Equal("before 2022-10-31", HoldTimeTable.Get("cfr-590-570").AsOf);
    }

    // Food Code 3-401.11 as several states adopted it: 15 s at 145 °F for eggs to order; else 3 min at 145, 1 min at 150, 15 s at 155 and less than a second
    // at 158. That editions from 2017 have 17 s at 155 °F is from memory.
    [Fact]
    public void TheFoodCode()
    {
        Assert.Equal([(145.0, 15.0)], Rows("food-code-3-401-11", "eggs broken for immediate service").Select(row => (row.Fahrenheit, row.Seconds)));
        HoldTime[] pooled = Rows("food-code-3-401-11", "other raw eggs, pooled or held");
        Assert.Equal([(145.0, 180.0), (150, 60), (155, 15), (158, 1)], pooled.Select(row => (row.Fahrenheit, row.Seconds)));
        Assert.Contains("from memory", pooled[2].Provenance.Note, StringComparison.Ordinal);
        Assert.Contains("less than one second", pooled[3].Provenance.Note, StringComparison.Ordinal);
        Assert.Equal(5, HoldTimeTable.Get("food-code-3-401-11").Rows.Count);
        Assert.Contains("local", HoldTimeTable.Get("food-code-3-401-11").Status, StringComparison.Ordinal);
    }

    // The rows of the Food Code are no straight line: 10.5 °F from 3 min to 1, 8.3 from 1 min to 15 s. That is why nothing is worked out between rows.
    [Fact]
    public void TheFoodCodeHasNoOneZ()
    {
        HoldTime[] pooled = Rows("food-code-3-401-11", "other raw eggs, pooled or held");
        Assert.Equal(10.5, 5 / Math.Log10(pooled[0].Seconds / pooled[1].Seconds), 0.05);
        Assert.Equal(8.3, 5 / Math.Log10(pooled[1].Seconds / pooled[2].Seconds), 0.05);
    }

    // FSIS and FDA to households, 2001 to 2013: 160 °F.
    [Fact]
    public void TheGuidanceToHouseholdsIsGuidance()
    {
        HoldTimeTable table = HoldTimeTable.Get("consumer-guidance");
        Assert.Equal("guidance and no regulation", table.Status);
        HoldTime row = Assert.Single(table.Rows);
        Assert.Equal(160, row.Fahrenheit);
        Assert.Equal(71.11, row.Celsius, 0.005);
        Assert.Equal(0, row.Seconds);
        Assert.EndsWith("160 °F (71.1 °C), reached (FSIS consumer guidance)", row.ToString(), StringComparison.Ordinal);
        Assert.Contains("no kinetic result", row.Provenance.Note, StringComparison.Ordinal);
        Assert.Contains("rich in sugar", row.Provenance.Note, StringComparison.Ordinal);
    }

    [Theory] // exact: (°F − 32)·5/9
    [InlineData("consumer-guidance", 160, 71.11)]
    [InlineData("food-code-3-401-11", 145, 62.78)]
    [InlineData("fsis-appendix-a", 130, 54.44)]
    public void FahrenheitIsTurned(string table, double fahrenheit, double celsius)
    {
        HoldTime row = HoldTimeTable.Get(table).Rows.First(row => row.Fahrenheit == fahrenheit);
        Assert.Equal(celsius, row.Celsius, 0.005);
        Assert.Equal(Readings.Celsius(fahrenheit), row.Celsius, 1e-12);
    }

    [Fact]
    public void EveryTableHasANameAStatusADateAndRowsWithASource()
    {
        Assert.Equal(["cfr-590-570", "food-code-3-401-11", "consumer-guidance", "fsis-appendix-a"], HoldTimeTable.All.Select(table => table.Key));
        Assert.All(HoldTimeTable.All, table =>
        {
            Assert.NotEqual("", table.Name);
            Assert.NotEqual("", table.Status);
            Assert.NotEqual("", table.AsOf);
            Assert.NotEmpty(table.Rows);
            Assert.Equal($"{table.Name} ({table.AsOf}): {table.Status}", table.ToString());
            Assert.All(table.Rows, row => Assert.Equal(Evidence.Compiled, row.Provenance.Evidence));
        });
        // Every row of the file stands in one table: none is lost by a key that is misspelt.
        Assert.Equal(Data.Tables.Of("hold_times").Count, HoldTimeTable.All.Sum(table => table.Rows.Count));
    }

    [Fact]
    public void ALogHoldsARowOrNot()
    {
        HoldTime row = Rows("cfr-590-570", "whole egg")[0]; // 210 s at 140 °F, which is 60 °C
        Assert.True(row.IsHeldBy(Readings.Log((0, 20), (5, 60), (8.5, 60), (9, 40))));
        Assert.False(row.IsHeldBy(Readings.Log((0, 20), (5, 60), (8.49, 60), (9, 40))));
        Assert.False(row.IsHeldBy(Readings.Log((0, 20), (5, 59.99), (60, 59.99))));
        // Two shorter holds are no long one.
        Assert.False(row.IsHeldBy(Readings.Log((0, 60), (3, 60), (3.1, 55), (3.2, 60), (6.2, 60))));
        // A log read in Fahrenheit meets its own mark.
        Assert.True(row.IsHeldBy(Readings.FahrenheitLog((0, 140), (3.5, 140))));
    }

    [Fact]
    public void ATemperatureToBeReachedIsReachedOrNot()
    {
        HoldTime row = HoldTimeTable.Get("consumer-guidance").Rows[0];
        Assert.True(row.IsHeldBy(Readings.FahrenheitLog((0, 70), (10, 160), (12, 90))));
        Assert.False(row.IsHeldBy(Readings.FahrenheitLog((0, 70), (10, 159.9), (12, 90))));
    }

    // Every row of every table: held by the very log that it asks for, and not by one a second shorter or a tenth of a degree cooler.
    [Fact]
    public void EveryRowIsHeldByTheLogItAsksFor() => Assert.All(HoldTimeTable.All.SelectMany(table => table.Rows), row =>
    {
        double minutes = Math.Max(row.Seconds, 1) / 60;
        Assert.True(row.IsHeldBy(Readings.FahrenheitLog((0, row.Fahrenheit), (minutes, row.Fahrenheit))));
        Assert.False(row.IsHeldBy(Readings.FahrenheitLog((0, row.Fahrenheit - 0.1), (minutes, row.Fahrenheit - 0.1))));
        if (row.Seconds > 1)
            Assert.False(row.IsHeldBy(Readings.FahrenheitLog((0, row.Fahrenheit), (minutes - 1 / 60.0, row.Fahrenheit))));
    });

    [Fact]
    public void AKeyIsFoundInAnyCaseAndAnUnknownOneIsAnsweredWithTheList()
    {
        Assert.Same(HoldTimeTable.Get("consumer-guidance"), HoldTimeTable.Get(" Consumer-Guidance "));
        Assert.False(HoldTimeTable.TryGet("fennmarsh", out HoldTimeTable? none));
        Assert.Null(none);
        ArgumentException thrown = Assert.Throws<ArgumentException>("key", () => HoldTimeTable.Get("fennmarsh"));
        Assert.All(HoldTimeTable.All, table => Assert.Contains(table.Key, thrown.Message, StringComparison.Ordinal));
    }

    private static HoldTime[] Rows(string table, string product) => [.. HoldTimeTable.Get(table).Rows.Where(row => row.Product == product)];
}
